//! Cross-section resistance of a steel member: EN 1993-1-1 6.2.

use super::super::design::CheckedMember;
use super::super::{En1993Factors, InternalForces};
use super::class::{Class, class, shear_buckling};
use crate::member::check::NotChecked;
use crate::member::shear_use::beside_shear;
use crate::section::Section;

/// Exponent of biaxial bending for rectangular tubes without axial force: EN 1993-1-1 6.2.9.1(6).
const BIAXIAL_EXPONENT: f64 = 1.66;

/// Resistances of the gross and the net section. Forces in N, moments in N·m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct CrossSection {
    pub shape: Shape,
    pub class: Result<Class, NotChecked>,
    pub shear_buckling: Option<NotChecked>,
    pub n_rd: f64,
    pub m_y_rd: f64,
    pub m_z_rd: f64,
    pub v_y_rd: f64,
    pub v_z_rd: f64,
    pub t_rd: f64,
    pub net: Option<NetSection>,
}

/// What of a shape the interaction formulas tell apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Shape {
    /// Tube or bar without a preferred axis.
    Round,
    /// Rectangular tube; `slope` = the larger of 1 − 0.5·a_w and 1 − 0.5·a_f of 6.2.9.1(5).
    RectTube { slope: f64 },
    /// Flat or square bar.
    SolidRect,
}

/// Resistances of the section through a pin hole, elastic.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NetSection {
    /// 0.9·A_net·f_u/γ_M2 of 6.2.3(2).
    pub n_fracture: f64,
    /// A_net·f_y/γ_M0.
    pub n_yield: f64,
    pub m_y: f64,
    pub m_z: f64,
}

impl CrossSection {
    pub(super) fn new(checked: &CheckedMember, factors: &En1993Factors) -> Self {
        let (member, gross) = (&checked.member, &checked.gross);
        let (fy, fu) = (member.material.yield_pa, member.material.ultimate_pa);
        let design = fy / factors.gamma_m0;
        let tau = design / 3.0_f64.sqrt();
        let class = class(&member.section, fy);
        let (w_y, w_z) = match class {
            Ok(Class::Plastic) => (gross.w_pl_y_m3, gross.w_pl_z_m3),
            Ok(Class::Elastic) | Err(_) => (gross.w_el_y_m3, gross.w_el_z_m3),
        };
        Self {
            shape: Shape::of(&member.section, gross.area_m2),
            class,
            shear_buckling: shear_buckling(&member.section, fy),
            n_rd: gross.area_m2 * design,
            m_y_rd: w_y * design,
            m_z_rd: w_z * design,
            v_y_rd: gross.shear_area_y_m2 * tau,
            v_z_rd: gross.shear_area_z_m2 * tau,
            t_rd: gross.w_t_m3 * tau,
            net: checked.net.map(|net| NetSection {
                n_fracture: 0.9 * net.area_m2 * fu / factors.gamma_m2,
                n_yield: net.area_m2 * design,
                m_y: net.w_el_y_m3 * design,
                m_z: net.w_el_z_m3 * design,
            }),
        }
    }

    /// |T|/T_Rd: 6.2.7(1) with St. Venant torsion only.
    pub(super) fn torsion_use(&self, f: &InternalForces) -> f64 {
        f.t_nm.abs() / self.t_rd
    }

    /// Shear with torsion. 6.2.7(9) asks V ≤ (1 − τ_t/τ_Rd)·V_Rd, the same as V/V_Rd + τ_t/τ_Rd ≤ 1. In a round or a
    /// solid section both shear forces share one area, in a rectangular tube each has walls of its own.
    pub(super) fn shear_use(&self, f: &InternalForces) -> f64 {
        let (y, z) = (f.v_y_n.abs() / self.v_y_rd, f.v_z_n.abs() / self.v_z_rd);
        let shear = match self.shape {
            Shape::Round | Shape::SolidRect => y.hypot(z),
            Shape::RectTube { .. } => y.max(z),
        };
        shear + self.torsion_use(f)
    }

    /// Axial force with biaxial bending. Proportional to the forces.
    ///
    /// Round: N/N_Rd + √(M_y² + M_z²)/M_Rd, 6.2.1(7) about the axis of the resultant. Rectangular tube of class 1
    /// or 2: m = (m_y^1.66 + m_z^1.66)^(1/1.66), the larger of m and n + slope·m: 6.2.9.1(5), (6.39), (6.40) and (6.41).
    /// Others: the linear sum 6.2.1(7), (6.2). With much shear less strength is left for all of it, 6.2.8, 6.2.10.
    pub(super) fn section_use(&self, f: &InternalForces) -> f64 {
        let n = f.n_n.abs() / self.n_rd;
        let (y, z) = (f.m_y_nm.abs() / self.m_y_rd, f.m_z_nm.abs() / self.m_z_rd);
        let plain = match (self.shape, self.class) {
            (Shape::Round, _) => n + y.hypot(z),
            (Shape::RectTube { slope }, Ok(Class::Plastic)) => {
                let m = biaxial(y, z);
                m.max(n + slope * m)
            }
            (Shape::RectTube { .. } | Shape::SolidRect, _) => n + y + z,
        };
        beside_shear(plain, self.shear_use(f))
    }

    /// The section through the pin hole: elastic sum of stresses, and fracture of the net section when pulled.
    pub(super) fn net_use(&self, net: &NetSection, f: &InternalForces) -> f64 {
        let (y, z) = (f.m_y_nm.abs() / net.m_y, f.m_z_nm.abs() / net.m_z);
        let bending = match self.shape {
            Shape::Round => y.hypot(z),
            Shape::RectTube { .. } | Shape::SolidRect => y + z,
        };
        let elastic = beside_shear(f.n_n.abs() / net.n_yield + bending, self.shear_use(f));
        elastic.max(f.n_n / net.n_fracture)
    }
}

impl Shape {
    fn of(section: &Section, area_m2: f64) -> Self {
        match *section {
            Section::RoundTube { .. } | Section::SolidRound { .. } => Self::Round,
            Section::RectTube { depth_m, width_m, wall_m, .. } => {
                // a_w and a_f of 6.2.9.1(5): the webs' and the flanges' share of the area, at most one half.
                let webs = ((area_m2 - 2.0 * width_m * wall_m) / area_m2).clamp(0.0, 0.5);
                let flanges = ((area_m2 - 2.0 * depth_m * wall_m) / area_m2).clamp(0.0, 0.5);
                Self::RectTube { slope: 1.0 - 0.5 * webs.min(flanges) }
            }
            Section::SolidRect { .. } => Self::SolidRect,
        }
    }
}

/// (y^1.66 + z^1.66)^(1/1.66), with the two common cases of bending about one axis kept exact and quick.
fn biaxial(y: f64, z: f64) -> f64 {
    if z == 0.0 {
        y
    } else if y == 0.0 {
        z
    } else {
        (y.powf(BIAXIAL_EXPONENT) + z.powf(BIAXIAL_EXPONENT)).powf(1.0 / BIAXIAL_EXPONENT)
    }
}
