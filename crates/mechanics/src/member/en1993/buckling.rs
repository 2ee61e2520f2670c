//! Buckling of a steel member with bending: EN 1993-1-1 6.3.3 with the interaction factors of Annex B, Table B.1.

use std::f64::consts::PI;

use super::super::design::CheckedMember;
use super::super::{En1993Factors, SpanMaxima};
use super::class::Class;
use crate::buckling::{SteelCurve, chi_en1993, euler_load_n, relative_slenderness};
use crate::material::Forming;
use crate::section::Section;

/// Resistances to buckling. Forces in N, moments in N·m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Buckling {
    pub slenderness_y: f64,
    pub slenderness_z: f64,
    pub chi_y: f64,
    pub chi_z: f64,
    /// χ_y·N_Rk/γ_M1
    pub n_b_y_rd: f64,
    /// χ_z·N_Rk/γ_M1
    pub n_b_z_rd: f64,
    pub chi_lt_y: f64,
    pub chi_lt_z: f64,
    /// χ_LT·M_y,Rk/γ_M1
    pub m_b_y_rd: f64,
    /// χ_LT·M_z,Rk/γ_M1
    pub m_b_z_rd: f64,
    pub c_my: f64,
    pub c_mz: f64,
}

/// Interaction factors k_ij.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Interaction {
    pub yy: f64,
    pub yz: f64,
    pub zy: f64,
    pub zz: f64,
}

impl Buckling {
    pub(super) fn new(checked: &CheckedMember, forming: Forming, class: Class, factors: &En1993Factors) -> Self {
        let (member, gross) = (&checked.member, &checked.gross);
        let (e, fy) = (member.material.elastic_pa, member.material.yield_pa);
        let curve = curve(&member.section, forming, fy);
        let squash = gross.area_m2 * fy;
        let slender = |i: f64, length: f64| relative_slenderness(squash, euler_load_n(e * i, length));
        let slenderness_y = slender(gross.i_y_m4, member.buckling_length_y_m);
        let slenderness_z = slender(gross.i_z_m4, member.buckling_length_z_m);
        let (w_y, w_z) = match class {
            Class::Plastic => (gross.w_pl_y_m3, gross.w_pl_z_m3),
            Class::Elastic => (gross.w_el_y_m3, gross.w_el_z_m3),
        };
        let (chi_lt_y, chi_lt_z) = lateral_torsional(checked, w_y * fy, w_z * fy);
        let (chi_y, chi_z) = (chi_en1993(slenderness_y, curve), chi_en1993(slenderness_z, curve));
        Self {
            slenderness_y,
            slenderness_z,
            chi_y,
            chi_z,
            n_b_y_rd: chi_y * squash / factors.gamma_m1,
            n_b_z_rd: chi_z * squash / factors.gamma_m1,
            chi_lt_y,
            chi_lt_z,
            m_b_y_rd: chi_lt_y * w_y * fy / factors.gamma_m1,
            m_b_z_rd: chi_lt_z * w_z * fy / factors.gamma_m1,
            c_my: member.moment_shape_y.equivalent_en(),
            c_mz: member.moment_shape_z.equivalent_en(),
        }
    }

    /// Factors of Table B.1 for hollow sections (and solid bars), for compression N > 0.
    ///
    /// Class 1, 2: k_ii = C_mi·(1 + (λ̄_i − 0.2)·n_i) ≤ C_mi·(1 + 0.8·n_i), cross terms 0.6 of the other axis's own.
    /// Class 3: k_ii = C_mi·(1 + 0.6·λ̄_i·n_i) ≤ C_mi·(1 + 0.6·n_i), k_yz = k_zz, k_zy = 0.8·k_yy.
    /// n_i = N/(χ_i·N_Rk/γ_M1). λ̄ below 0.2 is taken as 0.2, which is safe.
    pub(super) fn interaction(&self, class: Class, compression: f64) -> Interaction {
        let (n_y, n_z) = (compression / self.n_b_y_rd, compression / self.n_b_z_rd);
        let own = |c_m: f64, slenderness: f64, n: f64| match class {
            Class::Plastic => c_m * (1.0 + (slenderness - 0.2).clamp(0.0, 0.8) * n),
            Class::Elastic => c_m * (1.0 + 0.6 * slenderness.min(1.0) * n),
        };
        let yy = own(self.c_my, self.slenderness_y, n_y);
        let zz = own(self.c_mz, self.slenderness_z, n_z);
        match class {
            Class::Plastic => Interaction { yy, yz: 0.6 * zz, zy: 0.6 * yy, zz },
            Class::Elastic => Interaction { yy, yz: zz, zy: 0.8 * yy, zz },
        }
    }

    /// Moment uses M_i/(χ_LT·M_i,Rk/γ_M1).
    pub(super) fn moment_uses(&self, span: &SpanMaxima) -> (f64, f64) {
        (span.m_y_nm / self.m_b_y_rd, span.m_z_nm / self.m_b_z_rd)
    }

    /// The larger of (6.61) and (6.62).
    ///
    /// A round section has no axes of its own: the moment is taken about the axis of its resultant, where the other
    /// moment is nil, with the smaller χ and the larger k.
    pub(super) fn stability_use(&self, round: bool, class: Class, span: &SpanMaxima) -> f64 {
        let (n_y, n_z) = (span.compression_n / self.n_b_y_rd, span.compression_n / self.n_b_z_rd);
        let (m_y, m_z) = self.moment_uses(span);
        let k = self.interaction(class, span.compression_n);
        if round {
            return n_y.max(n_z) + k.yy.max(k.zz) * m_y.hypot(m_z);
        }
        (n_y + k.yy * m_y + k.yz * m_z).max(n_z + k.zy * m_y + k.zz * m_z)
    }

    /// Lateral-torsional buckling without axial force, 6.3.2.1; `None` where it can't happen.
    pub(super) fn lateral_torsional_use(&self, span: &SpanMaxima) -> Option<f64> {
        let (m_y, m_z) = self.moment_uses(span);
        if self.chi_lt_y < 1.0 {
            Some(m_y)
        } else if self.chi_lt_z < 1.0 {
            Some(m_z)
        } else {
            None
        }
    }
}

/// Curve of EN 1993-1-1 Table 6.2: hot-finished tubes a (a0 from S460 on), cold-formed tubes c, solid bars c.
fn curve(section: &Section, forming: Forming, yield_pa: f64) -> SteelCurve {
    match (section, forming) {
        (Section::RoundTube { .. } | Section::RectTube { .. }, Forming::HotFinished) => {
            if yield_pa >= 460e6 {
                SteelCurve::A0
            } else {
                SteelCurve::A
            }
        }
        _ => SteelCurve::C,
    }
}

/// χ_LT for bending about y and z. Only the stronger axis of an oblong section can buckle sideways.
///
/// M_cr = (π/L)·√(E·I_weak·G·J) for an even moment and free warping, the safe diagram; curve d of Table 6.4 for "other
/// cross-sections" in the general case 6.3.2.2. χ_LT is 1 up to λ̄_LT = 0.2, and for round and square sections
/// (6.3.2.1(2)).
fn lateral_torsional(checked: &CheckedMember, m_y_rk: f64, m_z_rk: f64) -> (f64, f64) {
    let (member, gross) = (&checked.member, &checked.gross);
    let (depth, width) = (member.section.depth_m(), member.section.width_m());
    if depth == width || member.unbraced_length_m == 0.0 {
        return (1.0, 1.0);
    }
    let torsion = member.material.shear_pa * gross.j_m4;
    let chi = |i_weak: f64, m_rk: f64| {
        let critical = PI / member.unbraced_length_m * (member.material.elastic_pa * i_weak * torsion).sqrt();
        chi_en1993((m_rk / critical).sqrt(), SteelCurve::D)
    };
    if depth > width { (chi(gross.i_z_m4, m_y_rk), 1.0) } else { (1.0, chi(gross.i_y_m4, m_z_rk)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_interaction_factor_is_another_programs() {
        // A public program's benchmark of (6.61) with Annex B, class 1: C_my 0.64, λ̄_y 0.475345627,
        // χ_y·N_Rk/γ_M1 942042.368857 N, N 200000 N: k_yy = 0.677412585; the formula is the same for hollow sections.
        let buckling = Buckling {
            slenderness_y: 0.475345627,
            slenderness_z: 0.475345627,
            chi_y: 0.931755785,
            chi_z: 0.931755785,
            n_b_y_rd: 942_042.368857,
            n_b_z_rd: 942_042.368857,
            chi_lt_y: 1.0,
            chi_lt_z: 1.0,
            m_b_y_rd: 1.0,
            m_b_z_rd: 1.0,
            c_my: 0.64,
            c_mz: 0.64,
        };
        let k = buckling.interaction(Class::Plastic, 200e3);
        assert!((k.yy - 0.677412585).abs() < 1e-9);
        assert!((k.zy - 0.6 * k.yy).abs() < 1e-15 && (k.yz - 0.6 * k.zz).abs() < 1e-15);
        // Class 3 by hand: 0.64·(1 + 0.6·0.475345627·0.212304676) = 0.678752.
        let k = buckling.interaction(Class::Elastic, 200e3);
        assert!((k.yy - 0.678752).abs() < 1e-6);
        assert!((k.zy - 0.8 * k.yy).abs() < 1e-15 && k.yz == k.zz);
    }
}
