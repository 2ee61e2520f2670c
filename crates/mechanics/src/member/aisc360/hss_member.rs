//! One hollow steel member under AISC 360: combined forces by H1 and H3, and the terms they are reported with.

use super::super::check::{ByMode, Mode, NotChecked, Outcome, Term, newton_meters, newtons, number};
use super::super::design::CheckedMember;
use super::super::{Aisc360Factors, InternalForces, MemberActions, SpanMaxima};
use super::strength::{NetSection, Strength};

/// Share of the torsional strength up to which torsion is left out of the interaction (H3.2).
const TORSION_LEFT_OUT: f64 = 0.2;

/// A moment is never amplified beyond the inverse of this, so that a utilization stays a finite number.
const LEAST_DENOMINATOR: f64 = 1e-3;

/// Available strengths of a hollow steel member.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in super::super) struct Aisc360Member {
    strength: Strength,
    c_my: f64,
    c_mz: f64,
    second_order: f64,
}

impl Aisc360Member {
    pub(in super::super) fn new(checked: &CheckedMember, factors: &Aisc360Factors) -> Result<Self, NotChecked> {
        Ok(Self {
            strength: Strength::new(checked, factors)?,
            c_my: checked.member.moment_shape_y.equivalent_aisc(),
            c_mz: checked.member.moment_shape_z.equivalent_aisc(),
            second_order: factors.second_order,
        })
    }

    pub(in super::super) fn by_mode(&self, actions: &MemberActions) -> ByMode {
        let f = &actions.station;
        let moments = f.m_y_nm != 0.0 || f.m_z_nm != 0.0;
        ByMode([
            self.outcome(f.n_n < 0.0, moments, f.t_nm != 0.0, || self.section_use(f)),
            self.net_outcome(actions),
            if f.v_y_n == 0.0 && f.v_z_n == 0.0 {
                Outcome::NotApplicable
            } else {
                Outcome::Utilization(self.shear_use(f))
            },
            if f.t_nm == 0.0 {
                Outcome::NotApplicable
            } else {
                self.outcome(false, false, true, || self.torsion_use(f))
            },
            self.stability_outcome(actions),
        ])
    }

    /// A value, unless walls are too slender for what acts.
    fn outcome(&self, pressed: bool, bent: bool, twisted: bool, value: impl Fn() -> f64) -> Outcome {
        let s = &self.strength;
        let why = [(pressed, s.slender_compression), (bent, s.slender_bending), (twisted, s.slender_torsion)]
            .into_iter()
            .find_map(|(acts, why)| why.filter(|_| acts));
        why.map_or_else(|| Outcome::Utilization(value()), Outcome::NotChecked)
    }

    fn net_outcome(&self, actions: &MemberActions) -> Outcome {
        let f = &actions.station;
        if !actions.at.is_drilled() {
            return Outcome::NotApplicable;
        }
        match &self.strength.net {
            None => Outcome::NotChecked(NotChecked::NoPinHole),
            Some(net) => {
                let bent = f.m_y_nm != 0.0 || f.m_z_nm != 0.0;
                self.outcome(f.n_n < 0.0, bent, f.t_nm != 0.0, || self.net_use(net, f))
            }
        }
    }

    pub(in super::super) fn stability_outcome(&self, actions: &MemberActions) -> Outcome {
        let (s, span) = (&self.strength, &actions.span);
        let goes_sideways = s.m_y_sideways < s.m_y || s.m_z_sideways < s.m_z;
        let bent = span.m_y_nm != 0.0 || span.m_z_nm != 0.0;
        if span.compression_n <= 0.0 && !(goes_sideways && bent) {
            return Outcome::NotApplicable;
        }
        self.outcome(span.compression_n > 0.0, bent, actions.station.t_nm != 0.0, || {
            self.stability_use(span, &actions.station)
        })
    }

    fn torsion_use(&self, f: &InternalForces) -> f64 {
        f.t_nm.abs() / self.strength.torsion
    }

    fn plain_shear_use(&self, f: &InternalForces) -> f64 {
        let (y, z) = (f.v_y_n.abs() / self.strength.v_y, f.v_z_n.abs() / self.strength.v_z);
        if self.strength.is_round { y.hypot(z) } else { y.max(z) }
    }

    /// Shear with torsion as H3.2 adds them; torsion is not left out here, which is safe.
    fn shear_use(&self, f: &InternalForces) -> f64 {
        self.plain_shear_use(f) + self.torsion_use(f)
    }

    fn section_use(&self, f: &InternalForces) -> f64 {
        let s = &self.strength;
        let p = f.n_n.abs() / if f.n_n < 0.0 { s.squash } else { s.tension };
        let m = self.bending(f.m_y_nm.abs() / s.m_y, f.m_z_nm.abs() / s.m_z);
        self.combined(p, m, f)
    }

    /// Moments about the axis of their resultant in a round tube, else added (H1-1).
    fn bending(&self, y: f64, z: f64) -> f64 {
        if self.strength.is_round { y.hypot(z) } else { y + z }
    }

    /// H1-1a and H1-1b, of which the larger is always the one that holds at the limit; with torsion above a fifth of
    /// its strength also H3-6, (P + M) + (V + T)² ≤ 1, solved for the common factor of all forces that reaches 1.
    fn combined(&self, p: f64, m: f64, f: &InternalForces) -> f64 {
        let h1 = (p + 8.0 / 9.0 * m).max(0.5 * p + m);
        let t = self.torsion_use(f);
        if t <= TORSION_LEFT_OUT {
            return h1;
        }
        let (straight, square) = (p + m, self.plain_shear_use(f) + t);
        h1.max(0.5 * (straight + (straight * straight + 4.0 * square * square).sqrt()))
    }

    fn net_use(&self, net: &NetSection, f: &InternalForces) -> f64 {
        let m = self.bending(f.m_y_nm.abs() / net.m_y, f.m_z_nm.abs() / net.m_z);
        let p = f.n_n.abs() / net.elastic;
        let with_torsion = if self.torsion_use(f) > TORSION_LEFT_OUT { self.combined(p, m, f) } else { 0.0 };
        (p + m).max(with_torsion).max(f.n_n / net.rupture)
    }

    /// B_1 = C_m/(1 − α·P/P_e1) ≥ 1, Appendix 8 (A-8-3).
    fn amplifier(&self, c_m: f64, compression: f64, euler: f64) -> f64 {
        let left = (1.0 - self.second_order * compression / euler).max(LEAST_DENOMINATOR);
        (c_m / left).max(1.0)
    }

    fn amplifiers(&self, span: &SpanMaxima) -> (f64, f64) {
        let compression = span.compression_n.max(0.0);
        (
            self.amplifier(self.c_my, compression, self.strength.euler_y),
            self.amplifier(self.c_mz, compression, self.strength.euler_z),
        )
    }

    fn stability_use(&self, span: &SpanMaxima, f: &InternalForces) -> f64 {
        let s = &self.strength;
        let (b_y, b_z) = self.amplifiers(span);
        let (y, z) = (span.m_y_nm / s.m_y_sideways, span.m_z_nm / s.m_z_sideways);
        let m = if s.is_round { b_y.max(b_z) * y.hypot(z) } else { b_y * y + b_z * z };
        self.combined(span.compression_n.max(0.0) / s.compression, m, f)
    }

    pub(in super::super) fn terms(&self, mode: Mode, actions: &MemberActions) -> (Vec<Term>, &'static str) {
        let (s, f) = (&self.strength, &actions.station);
        match mode {
            Mode::Section => (
                vec![
                    newtons("P_r", f.n_n),
                    newtons("P_c", if f.n_n < 0.0 { s.squash } else { s.tension }),
                    newton_meters("M_ry", f.m_y_nm),
                    newton_meters("M_cy", s.m_y),
                    newton_meters("M_rz", f.m_z_nm),
                    newton_meters("M_cz", s.m_z),
                    number("T_r/T_c", self.torsion_use(f)),
                ],
                "AISC 360 H1.1, H1.2, H3.2",
            ),
            Mode::NetSection => (self.net_terms(f), "AISC 360 D2 (b); elastic net section"),
            Mode::Shear => (
                vec![
                    newtons("V_ry", f.v_y_n),
                    newtons("V_cy", s.v_y),
                    newtons("V_rz", f.v_z_n),
                    newtons("V_cz", s.v_z),
                    number("T_r/T_c", self.torsion_use(f)),
                ],
                "AISC 360 G4, G5, H3.2",
            ),
            Mode::Torsion => (vec![newton_meters("T_r", f.t_nm), newton_meters("T_c", s.torsion)], "AISC 360 H3.1"),
            Mode::Stability => (self.stability_terms(actions), "AISC 360 E3, F7.4, H1.1, H3.2, Appendix 8"),
        }
    }

    fn net_terms(&self, f: &InternalForces) -> Vec<Term> {
        let mut terms = vec![newtons("P_r", f.n_n), newton_meters("M_ry", f.m_y_nm), newton_meters("M_rz", f.m_z_nm)];
        if let Some(net) = &self.strength.net {
            terms.extend([
                newtons("P_c,rupture", net.rupture),
                newtons("P_c,net", net.elastic),
                newton_meters("M_cy,net", net.m_y),
                newton_meters("M_cz,net", net.m_z),
            ]);
        }
        terms
    }

    fn stability_terms(&self, actions: &MemberActions) -> Vec<Term> {
        let (s, span) = (&self.strength, &actions.span);
        let (b_y, b_z) = self.amplifiers(span);
        vec![
            newtons("P_r", span.compression_n),
            newtons("P_c", s.compression),
            newtons("P_e1,y", s.euler_y),
            newtons("P_e1,z", s.euler_z),
            number("B_1,y", b_y),
            number("B_1,z", b_z),
            newton_meters("M_ry", span.m_y_nm),
            newton_meters("M_cy", s.m_y_sideways),
            newton_meters("M_rz", span.m_z_nm),
            newton_meters("M_cz", s.m_z_sideways),
            number("T_r/T_c", self.torsion_use(&actions.station)),
        ]
    }
}
