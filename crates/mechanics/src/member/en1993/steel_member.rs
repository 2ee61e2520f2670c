//! One steel member under EN 1993-1-1: which mode is asked of which resistance, and with which terms it is reported.

use super::super::check::{ByMode, Mode, NotChecked, Outcome, Term, newton_meters, newtons, number};
use super::super::design::CheckedMember;
use super::super::{En1993Factors, MemberActions};
use super::buckling::Buckling;
use super::class::Class;
use super::cross_section::{CrossSection, Shape};
use crate::material::Forming;

/// Resistances of a steel member.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in super::super) struct En1993Member {
    section: CrossSection,
    buckling: Buckling,
}

impl En1993Member {
    pub(in super::super) fn new(checked: &CheckedMember, forming: Forming, factors: &En1993Factors) -> Self {
        let section = CrossSection::new(checked, factors);
        let class = section.class.unwrap_or(Class::Elastic);
        Self { section, buckling: Buckling::new(checked, forming, class, factors) }
    }

    pub(in super::super) fn by_mode(&self, actions: &MemberActions) -> ByMode {
        ByMode([
            self.section_outcome(actions),
            self.net_outcome(actions),
            self.shear_outcome(actions),
            self.torsion_outcome(actions),
            self.stability_outcome(actions),
        ])
    }

    /// Slender walls matter as soon as anything compresses them.
    fn walls(&self, actions: &MemberActions) -> Result<(), NotChecked> {
        let f = &actions.station;
        let only_pulled = f.n_n >= 0.0 && f.m_y_nm == 0.0 && f.m_z_nm == 0.0;
        match self.section.class {
            Err(why) if !only_pulled => Err(why),
            _ => Ok(()),
        }
    }

    fn section_outcome(&self, actions: &MemberActions) -> Outcome {
        match self.walls(actions) {
            Err(why) => Outcome::NotChecked(why),
            Ok(()) => Outcome::Utilization(self.section.section_use(&actions.station)),
        }
    }

    fn net_outcome(&self, actions: &MemberActions) -> Outcome {
        if !actions.at.is_drilled() {
            return Outcome::NotApplicable;
        }
        match (&self.section.net, self.walls(actions)) {
            (None, _) => Outcome::NotChecked(NotChecked::NoPinHole),
            (_, Err(why)) => Outcome::NotChecked(why),
            (Some(net), Ok(())) => Outcome::Utilization(self.section.net_use(net, &actions.station)),
        }
    }

    fn shear_outcome(&self, actions: &MemberActions) -> Outcome {
        let f = &actions.station;
        if f.v_y_n == 0.0 && f.v_z_n == 0.0 {
            return Outcome::NotApplicable;
        }
        match self.section.shear_buckling {
            Some(why) => Outcome::NotChecked(why),
            None => Outcome::Utilization(self.section.shear_use(f)),
        }
    }

    fn torsion_outcome(&self, actions: &MemberActions) -> Outcome {
        if actions.station.t_nm == 0.0 {
            return Outcome::NotApplicable;
        }
        match self.section.shear_buckling {
            Some(why) => Outcome::NotChecked(why),
            None => Outcome::Utilization(self.section.torsion_use(&actions.station)),
        }
    }

    pub(in super::super) fn stability_outcome(&self, actions: &MemberActions) -> Outcome {
        let span = &actions.span;
        let sideways = self.buckling.lateral_torsional_use(span).filter(|value| *value > 0.0);
        if span.compression_n <= 0.0 {
            return sideways.map_or(Outcome::NotApplicable, Outcome::Utilization);
        }
        match self.section.class {
            Err(why) => Outcome::NotChecked(why),
            Ok(class) => {
                let round = matches!(self.section.shape, Shape::Round);
                let value = self.buckling.stability_use(round, class, span);
                Outcome::Utilization(value.max(sideways.unwrap_or(0.0)))
            }
        }
    }

    pub(in super::super) fn terms(&self, mode: Mode, actions: &MemberActions) -> (Vec<Term>, &'static str) {
        let (s, f) = (&self.section, &actions.station);
        match mode {
            Mode::Section => (self.section_terms(actions), "EN 1993-1-1 6.2.9.1, 6.2.1(7), 6.2.8, 6.2.10"),
            Mode::NetSection => (self.net_terms(actions), "EN 1993-1-1 6.2.3(2) b), 6.2.1(5)"),
            Mode::Shear => (
                vec![
                    newtons("V_y,Ed", f.v_y_n),
                    newtons("V_pl,y,Rd", s.v_y_rd),
                    newtons("V_z,Ed", f.v_z_n),
                    newtons("V_pl,z,Rd", s.v_z_rd),
                    number("T_Ed/T_Rd", s.torsion_use(f)),
                ],
                "EN 1993-1-1 6.2.6, 6.2.7(9)",
            ),
            Mode::Torsion => (vec![newton_meters("T_Ed", f.t_nm), newton_meters("T_Rd", s.t_rd)], "EN 1993-1-1 6.2.7"),
            Mode::Stability => (self.stability_terms(actions), "EN 1993-1-1 6.3.3, Table B.1; 6.3.2.2"),
        }
    }

    fn section_terms(&self, actions: &MemberActions) -> Vec<Term> {
        let (s, f) = (&self.section, &actions.station);
        let mut terms = vec![
            newtons("N_Ed", f.n_n),
            newtons("N_pl,Rd", s.n_rd),
            newton_meters("M_y,Ed", f.m_y_nm),
            newton_meters("M_c,y,Rd", s.m_y_rd),
            newton_meters("M_z,Ed", f.m_z_nm),
            newton_meters("M_c,z,Rd", s.m_z_rd),
            number("V_Ed/V_Rd + T_Ed/T_Rd", s.shear_use(f)),
        ];
        if let Shape::RectTube { slope } = s.shape {
            terms.push(number("1 - 0.5a", slope));
        }
        terms
    }

    fn net_terms(&self, actions: &MemberActions) -> Vec<Term> {
        let f = &actions.station;
        let mut terms =
            vec![newtons("N_Ed", f.n_n), newton_meters("M_y,Ed", f.m_y_nm), newton_meters("M_z,Ed", f.m_z_nm)];
        if let Some(net) = &self.section.net {
            terms.extend([
                newtons("N_u,Rd", net.n_fracture),
                newtons("A_net*f_y/gamma_M0", net.n_yield),
                newton_meters("W_net,y*f_y/gamma_M0", net.m_y),
                newton_meters("W_net,z*f_y/gamma_M0", net.m_z),
            ]);
        }
        terms
    }

    fn stability_terms(&self, actions: &MemberActions) -> Vec<Term> {
        let (b, span) = (&self.buckling, &actions.span);
        let k = b.interaction(self.section.class.unwrap_or(Class::Elastic), span.compression_n.max(0.0));
        vec![
            newtons("N_Ed", span.compression_n),
            number("lambda_y", b.slenderness_y),
            number("chi_y", b.chi_y),
            newtons("N_b,y,Rd", b.n_b_y_rd),
            number("lambda_z", b.slenderness_z),
            number("chi_z", b.chi_z),
            newtons("N_b,z,Rd", b.n_b_z_rd),
            newton_meters("M_y,Ed", span.m_y_nm),
            number("chi_LT,y", b.chi_lt_y),
            newton_meters("M_b,y,Rd", b.m_b_y_rd),
            newton_meters("M_z,Ed", span.m_z_nm),
            number("chi_LT,z", b.chi_lt_z),
            newton_meters("M_b,z,Rd", b.m_b_z_rd),
            number("C_my", b.c_my),
            number("C_mz", b.c_mz),
            number("k_yy", k.yy),
            number("k_yz", k.yz),
            number("k_zy", k.zy),
            number("k_zz", k.zz),
        ]
    }
}
