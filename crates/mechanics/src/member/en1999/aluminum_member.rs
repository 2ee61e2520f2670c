//! One aluminum member under EN 1999-1-1: which mode is asked of which resistance, and with which terms it is reported.

use super::super::check::{ByMode, Mode, NotChecked, Outcome, Term, newton_meters, newtons, number};
use super::super::design::CheckedMember;
use super::super::{En1999Factors, MemberActions, Welds};
use super::strength::Strength;
use crate::material::{BucklingClass, HazFactors};

/// Resistances of an aluminum member.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in super::super) struct En1999Member {
    strength: Strength,
}

impl En1999Member {
    pub(in super::super) fn new(
        checked: &CheckedMember,
        buckling_class: BucklingClass,
        haz: HazFactors,
        factors: &En1999Factors,
    ) -> Self {
        Self { strength: Strength::new(checked, buckling_class, haz, factors) }
    }

    pub(in super::super) fn by_mode(&self, actions: &MemberActions) -> ByMode {
        let (s, f, welded) = (&self.strength, &actions.station, actions.at.is_welded());
        ByMode([
            Outcome::Utilization(s.section_use(f, welded)),
            self.net_outcome(actions),
            shear_outcome(s, f.v_y_n != 0.0 || f.v_z_n != 0.0, || s.shear_use(f, welded)),
            shear_outcome(s, f.t_nm != 0.0, || s.torsion_use(f, welded)),
            self.stability_outcome(actions),
        ])
    }

    fn net_outcome(&self, actions: &MemberActions) -> Outcome {
        if !actions.at.is_drilled() {
            return Outcome::NotApplicable;
        }
        match &self.strength.net {
            None => Outcome::NotChecked(NotChecked::NoPinHole),
            // Effective walls and a hole together are not covered: the thinned section's net properties are not known.
            Some(_) if self.strength.rho_c < 1.0 => {
                Outcome::NotChecked(NotChecked::Shape { what: "pin holes in slender walls" })
            }
            Some(net) => Outcome::Utilization(self.strength.net_use(net, &actions.station, actions.at.is_welded())),
        }
    }

    pub(in super::super) fn stability_outcome(&self, actions: &MemberActions) -> Outcome {
        let (s, span) = (&self.strength, &actions.span);
        if let Some(sideways) = &s.lateral_torsional {
            let moment = if sideways.about_y { span.m_y_nm } else { span.m_z_nm };
            if moment != 0.0 {
                return Outcome::NotChecked(sideways.why);
            }
        }
        if span.compression_n <= 0.0 {
            return Outcome::NotApplicable;
        }
        if s.shape.is_solid() && (span.m_y_nm != 0.0 || span.m_z_nm != 0.0) {
            return Outcome::NotChecked(NotChecked::Shape { what: "solid aluminum bars pressed and bent" });
        }
        Outcome::Utilization(s.stability_use(span))
    }

    pub(in super::super) fn terms(&self, mode: Mode, actions: &MemberActions) -> (Vec<Term>, &'static str) {
        let (s, f, welded) = (&self.strength, &actions.station, actions.at.is_welded());
        match mode {
            Mode::Section => (self.section_terms(actions), "EN 1999-1-1 6.2.9.2, 6.2.8, 6.2.10"),
            Mode::NetSection => (self.net_terms(actions), "EN 1999-1-1 6.2.3(2), 6.2.5.1(2)"),
            Mode::Shear => (
                vec![
                    newtons("V_y,Ed", f.v_y_n),
                    newtons("V_y,Rd", s.v_y_rd),
                    newtons("V_z,Ed", f.v_z_n),
                    newtons("V_z,Rd", s.v_z_rd),
                    number("rho_o,haz", if welded { s.haz_proof } else { 1.0 }),
                    number("T_Ed/T_Rd", s.torsion_use(f, welded)),
                ],
                "EN 1999-1-1 6.2.6, 6.2.7.3",
            ),
            Mode::Torsion => (
                vec![
                    newton_meters("T_Ed", f.t_nm),
                    newton_meters("T_Rd", s.t_rd),
                    number("rho_o,haz", if welded { s.haz_proof } else { 1.0 }),
                ],
                "EN 1999-1-1 6.2.7.2",
            ),
            Mode::Stability => (self.stability_terms(actions), "EN 1999-1-1 6.3.3.1(4), 6.3.3.2"),
        }
    }

    fn section_terms(&self, actions: &MemberActions) -> Vec<Term> {
        let (s, f, welded) = (&self.strength, &actions.station, actions.at.is_welded());
        vec![
            newtons("N_Ed", f.n_n),
            newtons("N_Rd", if f.n_n < 0.0 { s.n_c_rd } else { s.n_t_rd }),
            newton_meters("M_y,Ed", f.m_y_nm),
            newton_meters("M_y,Rd", s.m_y_rd),
            newton_meters("M_z,Ed", f.m_z_nm),
            newton_meters("M_z,Rd", s.m_z_rd),
            number("rho_c", s.rho_c),
            number("omega_0", s.omega(welded)),
            number("V_Ed/V_Rd + T_Ed/T_Rd", s.shear_use(f, welded)),
        ]
    }

    fn net_terms(&self, actions: &MemberActions) -> Vec<Term> {
        let f = &actions.station;
        let mut terms =
            vec![newtons("N_Ed", f.n_n), newton_meters("M_y,Ed", f.m_y_nm), newton_meters("M_z,Ed", f.m_z_nm)];
        if let Some(net) = &self.strength.net {
            terms.extend([
                newtons("N_u,Rd", net.n_fracture),
                newtons("N_net,Rd", net.n_elastic),
                newton_meters("M_net,y,Rd", net.m_y),
                newton_meters("M_net,z,Rd", net.m_z),
                number("omega_0", self.strength.omega(actions.at.is_welded())),
            ]);
        }
        terms
    }

    fn stability_terms(&self, actions: &MemberActions) -> Vec<Term> {
        let (s, span) = (&self.strength, &actions.span);
        vec![
            newtons("N_Ed", span.compression_n),
            number("lambda", s.slenderness),
            number("chi_min", s.chi),
            newtons("N_Rd", s.n_c_rd),
            newton_meters("M_y,Ed", span.m_y_nm),
            newton_meters("M_y,Rd", s.m_y_rd),
            newton_meters("M_z,Ed", span.m_z_nm),
            newton_meters("M_z,Rd", s.m_z_rd),
            number("rho_c", s.rho_c),
            number("omega_x", s.omega(s.welds == Welds::Across)),
        ]
    }
}

fn shear_outcome(strength: &Strength, acts: bool, value: impl Fn() -> f64) -> Outcome {
    match (acts, strength.shear_buckling) {
        (false, _) => Outcome::NotApplicable,
        (true, Some(why)) => Outcome::NotChecked(why),
        (true, None) => Outcome::Utilization(value()),
    }
}
