//! Resistances of an aluminum member and the interaction of what acts: EN 1999-1-1 6.2 and 6.3.

use std::f64::consts::PI;

use super::super::design::CheckedMember;
use super::super::{En1999Factors, InternalForces, SpanMaxima, Welds};
use super::class::{Class, class, epsilon};
use crate::buckling::{chi_en1999, euler_load_n, relative_slenderness};
use crate::material::{BucklingClass, HazFactors};
use crate::member::check::NotChecked;
use crate::member::shear_use::beside_shear;
use crate::section::Section;

/// Exponent of biaxial bending of hollow and solid sections: 6.2.9.2 (6.43), 6.3.3.1(4) (6.62).
const BIAXIAL_EXPONENT: f64 = 1.7;

/// ψ_c of 6.3.3.1(4) for hollow sections, its safe value.
const PSI_C: f64 = 0.8;

/// Resistances. Forces in N, moments in N·m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Strength {
    pub shape: Shape,
    pub rho_c: f64,
    /// A·f_o/γ_M1
    pub n_t_rd: f64,
    /// A_eff·f_o/γ_M1
    pub n_c_rd: f64,
    pub m_y_rd: f64,
    pub m_z_rd: f64,
    pub v_y_rd: f64,
    pub v_z_rd: f64,
    pub t_rd: f64,
    /// ω_0: what a weld across the member leaves of axial and bending resistance.
    pub omega_0: f64,
    /// ρ_o,haz: what it leaves of shear and torsion resistance.
    pub haz_proof: f64,
    /// ρ_u,haz: what it leaves of the net section's strength to fracture.
    pub haz_ultimate: f64,
    pub slenderness: f64,
    pub chi: f64,
    pub shear_buckling: Option<NotChecked>,
    pub lateral_torsional: Option<LateralTorsional>,
    pub net: Option<NetSection>,
    /// Whether any weld lies across the member, which the buckling check then assumes at the worst place.
    pub welds: Welds,
}

/// The axis whose bending may make the member buckle sideways, and why that is not checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LateralTorsional {
    pub about_y: bool,
    pub why: NotChecked,
}

/// What of a shape the interaction formulas tell apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    RoundTube,
    RectTube,
    SolidRound,
    SolidRect,
}

/// Resistances of the section through a pin hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NetSection {
    /// 0.9·A_net·f_u/γ_M2
    pub n_fracture: f64,
    /// A_net·min(f_o/γ_M1, f_u/γ_M2)
    pub n_elastic: f64,
    pub m_y: f64,
    pub m_z: f64,
}

impl Strength {
    pub(super) fn new(
        checked: &CheckedMember,
        buckling_class: BucklingClass,
        haz: HazFactors,
        factors: &En1999Factors,
    ) -> Self {
        let (member, gross) = (&checked.member, &checked.gross);
        let (fo, fu) = (member.material.yield_pa, member.material.ultimate_pa);
        let (design, fracture) = (fo / factors.gamma_m1, fu / factors.gamma_m2);
        let tau = design / 3.0_f64.sqrt();
        let class = class(&member.section, fo, buckling_class, member.welds == Welds::Across);
        let (w_y, w_z, rho_c) = match class {
            Class::Plastic => (gross.w_pl_y_m3, gross.w_pl_z_m3, 1.0),
            Class::Elastic => (gross.w_el_y_m3, gross.w_el_z_m3, 1.0),
            Class::Slender { rho_c } => (rho_c * gross.w_el_y_m3, rho_c * gross.w_el_z_m3, rho_c),
        };
        let shape = Shape::of(&member.section);
        let (a_v_y, a_v_z) = shear_areas(&member.section, gross.area_m2);
        let squash = rho_c * gross.area_m2 * fo;
        let slender =
            |i: f64, length: f64| relative_slenderness(squash, euler_load_n(member.material.elastic_pa * i, length));
        let slenderness =
            slender(gross.i_y_m4, member.buckling_length_y_m).max(slender(gross.i_z_m4, member.buckling_length_z_m));
        let elastic = design.min(fracture);
        Self {
            shape,
            rho_c,
            n_t_rd: gross.area_m2 * design,
            n_c_rd: rho_c * gross.area_m2 * design,
            m_y_rd: w_y * design,
            m_z_rd: w_z * design,
            v_y_rd: a_v_y * tau,
            v_z_rd: a_v_z * tau,
            t_rd: gross.w_t_m3 * tau,
            omega_0: (haz.ultimate * fracture / design).min(1.0),
            haz_proof: haz.proof,
            haz_ultimate: haz.ultimate,
            slenderness,
            chi: chi_en1999(slenderness, buckling_class),
            shear_buckling: shear_buckling(&member.section, fo, class),
            lateral_torsional: lateral_torsional(checked, class, w_y * fo, w_z * fo),
            net: checked.net.map(|net| NetSection {
                n_fracture: 0.9 * net.area_m2 * fracture,
                n_elastic: net.area_m2 * elastic,
                m_y: net.w_el_y_m3 * elastic,
                m_z: net.w_el_z_m3 * elastic,
            }),
            welds: member.welds,
        }
    }

    /// ω_0 at a station: (6.64), 1 away from welds.
    pub(super) fn omega(&self, welded: bool) -> f64 {
        if welded { self.omega_0 } else { 1.0 }
    }

    fn proof_kept(&self, welded: bool) -> f64 {
        if welded { self.haz_proof } else { 1.0 }
    }

    /// |T|/T_Rd, 6.2.7.2; in a heat-affected zone over ρ_o,haz of the strength.
    pub(super) fn torsion_use(&self, f: &InternalForces, welded: bool) -> f64 {
        f.t_nm.abs() / (self.proof_kept(welded) * self.t_rd)
    }

    /// Shear, 6.2.6, with torsion in the form V/V_Rd + τ/τ_Rd ≤ 1 of 6.2.7.3.
    pub(super) fn shear_use(&self, f: &InternalForces, welded: bool) -> f64 {
        let (y, z) = (f.v_y_n.abs() / self.v_y_rd, f.v_z_n.abs() / self.v_z_rd);
        let shear = match self.shape {
            Shape::RectTube => y.max(z),
            Shape::RoundTube | Shape::SolidRound | Shape::SolidRect => y.hypot(z),
        };
        shear / self.proof_kept(welded) + self.torsion_use(f, welded)
    }

    /// Axial force with biaxial bending: N/(ω_0·N_Rd) + m ≤ 1, beside shear (6.2.8, 6.2.10).
    ///
    /// 6.2.9.2 (6.43) takes (N/(ω_0·N_Rd))^ψ + [(M_y/(ω_0·M_y,Rd))^1.7 + (…)^1.7]^0.6 ≤ 1 with ψ from 1 to 2. Here ψ = 1
    /// and m = [m_y^1.7 + m_z^1.7]^(1/1.7): nowhere smaller up to the limit, the same for bending alone, and
    /// proportional to the forces.
    pub(super) fn section_use(&self, f: &InternalForces, welded: bool) -> f64 {
        let omega = self.omega(welded);
        let n_rd = if f.n_n < 0.0 { self.n_c_rd } else { self.n_t_rd };
        let n = f.n_n.abs() / (omega * n_rd);
        let m = self.bending_use(f.m_y_nm.abs() / (omega * self.m_y_rd), f.m_z_nm.abs() / (omega * self.m_z_rd));
        beside_shear(n + m, self.shear_use(f, welded))
    }

    /// [m_y^1.7 + m_z^1.7]^(1/1.7); about the axis of the resultant where the section is round.
    fn bending_use(&self, y: f64, z: f64) -> f64 {
        match self.shape {
            Shape::RoundTube | Shape::SolidRound => y.hypot(z),
            Shape::RectTube | Shape::SolidRect if z == 0.0 => y,
            Shape::RectTube | Shape::SolidRect if y == 0.0 => z,
            Shape::RectTube | Shape::SolidRect => {
                (y.powf(BIAXIAL_EXPONENT) + z.powf(BIAXIAL_EXPONENT)).powf(1.0 / BIAXIAL_EXPONENT)
            }
        }
    }

    /// The section through the pin hole: elastic sum of stresses, and fracture of the net section when pulled
    /// (6.2.3(2), 6.2.5.1(2)).
    pub(super) fn net_use(&self, net: &NetSection, f: &InternalForces, welded: bool) -> f64 {
        let (y, z) = (f.m_y_nm.abs() / net.m_y, f.m_z_nm.abs() / net.m_z);
        let bending = match self.shape {
            Shape::RoundTube | Shape::SolidRound => y.hypot(z),
            Shape::RectTube | Shape::SolidRect => y + z,
        };
        let plain = (f.n_n.abs() / net.n_elastic + bending) / self.omega(welded);
        let elastic = beside_shear(plain, self.shear_use(f, welded));
        let fracture = if welded { self.haz_ultimate } else { 1.0 } * net.n_fracture;
        elastic.max(f.n_n / fracture)
    }

    /// Buckling with bending of a hollow section, 6.3.3.1(4) (6.62): (N/(χ_min·ω_x·N_Rd))^0.8 + (1/ω_0)·[…]^0.6 ≤ 1,
    /// with the moments' part as in `section_use`.
    ///
    /// ω_x is taken as ω_0, its least value, wherever a weld lies. Without any moment the plain share N/(χ·ω·N_Rd) of
    /// 6.3.1.1 is given.
    pub(super) fn stability_use(&self, span: &SpanMaxima) -> f64 {
        let omega = self.omega(self.welds == Welds::Across);
        let n = span.compression_n / (self.chi * omega * self.n_c_rd);
        if span.m_y_nm == 0.0 && span.m_z_nm == 0.0 {
            return n;
        }
        n.max(n.powf(PSI_C)) + self.bending_use(span.m_y_nm / self.m_y_rd, span.m_z_nm / self.m_z_rd) / omega
    }
}

impl Shape {
    const fn of(section: &Section) -> Self {
        match section {
            Section::RoundTube { .. } => Self::RoundTube,
            Section::RectTube { .. } => Self::RectTube,
            Section::SolidRound { .. } => Self::SolidRound,
            Section::SolidRect { .. } => Self::SolidRect,
        }
    }

    pub(super) const fn is_solid(self) -> bool {
        matches!(self, Self::SolidRound | Self::SolidRect)
    }
}

/// Shear areas for forces along y and z, 6.2.6(2): the walls along the force between the others for a rectangular
/// tube, 0.6·A for a round tube, 0.8·A for a solid bar.
fn shear_areas(section: &Section, area_m2: f64) -> (f64, f64) {
    match *section {
        Section::RectTube { depth_m, width_m, wall_m, .. } => {
            (2.0 * (width_m - 2.0 * wall_m) * wall_m, 2.0 * (depth_m - 2.0 * wall_m) * wall_m)
        }
        Section::RoundTube { .. } => (0.6 * area_m2, 0.6 * area_m2),
        Section::SolidRound { .. } | Section::SolidRect { .. } => (0.8 * area_m2, 0.8 * area_m2),
    }
}

/// Nothing, or why shear buckling would have to be looked at: h_w/t > 39·ε (6.2.6(2), 6.5.5); a slender round tube.
fn shear_buckling(section: &Section, proof_pa: f64, class: Class) -> Option<NotChecked> {
    let (ratio, limit) = match (*section, class) {
        (Section::RectTube { depth_m, width_m, wall_m, .. }, _) => {
            ((depth_m.max(width_m) - 2.0 * wall_m) / wall_m, 39.0 * epsilon(proof_pa))
        }
        (Section::RoundTube { diameter_m, wall_m }, Class::Slender { .. }) => (diameter_m / wall_m, 0.0),
        _ => return None,
    };
    (ratio > limit).then_some(NotChecked::ShearBuckling { ratio, limit })
}

/// Nothing while λ̄_LT of the stronger axis stays within the plateau of 6.3.2.2: 0.6 for class 1 and 2, 0.4 beyond.
/// M_cr = (π/L)·√(E·I_weak·G·J): even moment, free warping.
fn lateral_torsional(checked: &CheckedMember, class: Class, m_y: f64, m_z: f64) -> Option<LateralTorsional> {
    let (member, gross) = (&checked.member, &checked.gross);
    let (depth, width) = (member.section.depth_m(), member.section.width_m());
    if depth == width || member.unbraced_length_m == 0.0 {
        return None;
    }
    let about_y = depth > width;
    let (i_weak, m) = if about_y { (gross.i_z_m4, m_y) } else { (gross.i_y_m4, m_z) };
    let torsion = member.material.shear_pa * gross.j_m4;
    let critical = PI / member.unbraced_length_m * (member.material.elastic_pa * i_weak * torsion).sqrt();
    let slenderness = (m / critical).sqrt();
    let limit = if matches!(class, Class::Plastic) { 0.6 } else { 0.4 };
    (slenderness > limit)
        .then_some(LateralTorsional { about_y, why: NotChecked::LateralTorsional { slenderness, limit } })
}
