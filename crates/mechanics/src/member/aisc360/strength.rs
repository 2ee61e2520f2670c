//! Available strengths of a hollow steel section: AISC 360 chapters D, E, F7, F8, G4, G5, H3.1.

use std::f64::consts::PI;

use super::super::Aisc360Factors;
use super::super::design::CheckedMember;
use crate::buckling::{chi_aisc360, euler_load_n, relative_slenderness};
use crate::member::check::NotChecked;
use crate::section::Section;

/// Available strengths (resistance factors included). Forces in N, moments in N·m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Strength {
    pub is_round: bool,
    /// φ_t·F_y·A_g
    pub tension: f64,
    /// φ_c·F_y·A_g
    pub squash: f64,
    /// φ_c·F_cr·A_g by E3
    pub compression: f64,
    pub euler_y: f64,
    pub euler_z: f64,
    pub m_y: f64,
    pub m_z: f64,
    /// With lateral-torsional buckling.
    pub m_y_sideways: f64,
    pub m_z_sideways: f64,
    pub v_y: f64,
    pub v_z: f64,
    pub torsion: f64,
    /// Slender walls in compression, E7.
    pub slender_compression: Option<NotChecked>,
    /// Slender walls in bending, F7.2 c).
    pub slender_bending: Option<NotChecked>,
    /// Walls beyond the range of H3.1.
    pub slender_torsion: Option<NotChecked>,
    pub net: Option<NetSection>,
}

/// Strengths of the section through a pin hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NetSection {
    /// φ_t·F_u·A_n of D2 (b), shear lag factor 1: the whole section is in the force's path.
    pub rupture: f64,
    /// A_n·F_y with the factor of tension yielding
    pub elastic: f64,
    pub m_y: f64,
    pub m_z: f64,
}

/// Bending strength of one axis by its wall's slenderness.
struct Flexure {
    nominal: f64,
    slender: Option<NotChecked>,
}

impl Strength {
    pub(super) fn new(checked: &CheckedMember, factors: &Aisc360Factors) -> Result<Self, NotChecked> {
        let (member, gross) = (&checked.member, &checked.gross);
        let (e, fy, fu) = (member.material.elastic_pa, member.material.yield_pa, member.material.ultimate_pa);
        let walls = Walls::of(&member.section)?;
        let flexure_y = walls.flexure_y(gross.w_pl_y_m3, gross.w_el_y_m3, e, fy);
        let flexure_z = walls.flexure_z(gross.w_pl_z_m3, gross.w_el_z_m3, e, fy);
        let (sideways_y, sideways_z) = sideways(checked);
        let squash = gross.area_m2 * fy;
        let euler_y = euler_load_n(e * gross.i_y_m4, member.buckling_length_y_m);
        let euler_z = euler_load_n(e * gross.i_z_m4, member.buckling_length_z_m);
        let chi = chi_aisc360(relative_slenderness(squash, euler_y.min(euler_z)));
        let (v_y, v_z) = walls.shear(gross.area_m2, e, fy);
        let (torsion, slender_torsion) = walls.torsion(e, fy);
        Ok(Self {
            is_round: matches!(walls, Walls::Round { .. }),
            tension: factors.tension_yield * squash,
            squash: factors.compression * squash,
            compression: factors.compression * chi * squash,
            euler_y,
            euler_z,
            m_y: factors.bending * flexure_y.nominal,
            m_z: factors.bending * flexure_z.nominal,
            m_y_sideways: factors.bending * flexure_y.nominal.min(sideways_y),
            m_z_sideways: factors.bending * flexure_z.nominal.min(sideways_z),
            v_y: factors.shear * v_y,
            v_z: factors.shear * v_z,
            torsion: factors.torsion * torsion,
            slender_compression: walls.slender_compression(e, fy),
            slender_bending: flexure_y.slender.or(flexure_z.slender),
            slender_torsion,
            net: checked.net.map(|net| NetSection {
                rupture: factors.tension_rupture * net.area_m2 * fu,
                elastic: factors.tension_yield * net.area_m2 * fy,
                m_y: factors.bending * net.w_el_y_m3 * fy,
                m_z: factors.bending * net.w_el_z_m3 * fy,
            }),
        })
    }
}

/// Walls of a hollow section as the specification sees them.
enum Walls {
    Round { diameter: f64, wall: f64 },
    Rect { depth: f64, width: f64, wall: f64, flat_depth: f64, flat_width: f64 },
}

impl Walls {
    fn of(section: &Section) -> Result<Self, NotChecked> {
        match *section {
            Section::RoundTube { diameter_m, wall_m } => Ok(Self::Round { diameter: diameter_m, wall: wall_m }),
            Section::RectTube { depth_m, width_m, wall_m, outer_radius_m } => {
                let corners = 2.0 * wall_m.max(outer_radius_m);
                Ok(Self::Rect {
                    depth: depth_m,
                    width: width_m,
                    wall: wall_m,
                    flat_depth: depth_m - corners,
                    flat_width: width_m - corners,
                })
            }
            Section::SolidRound { .. } | Section::SolidRect { .. } => Err(NotChecked::Shape { what: "solid bars" }),
        }
    }

    /// Table B4.1a: D/t ≤ 0.11·E/F_y, b/t ≤ 1.40·√(E/F_y).
    fn slender_compression(&self, e: f64, fy: f64) -> Option<NotChecked> {
        let (ratio, limit) = match *self {
            Self::Round { diameter, wall } => (diameter / wall, 0.11 * e / fy),
            Self::Rect { wall, flat_depth, flat_width, .. } => {
                (flat_depth.max(flat_width) / wall, 1.40 * (e / fy).sqrt())
            }
        };
        (ratio > limit).then_some(NotChecked::SlenderWalls { ratio, limit })
    }

    fn flexure_y(&self, plastic: f64, elastic: f64, e: f64, fy: f64) -> Flexure {
        match *self {
            Self::Round { diameter, wall } => round_flexure(diameter / wall, plastic, elastic, e, fy),
            Self::Rect { wall, flat_depth, flat_width, .. } => {
                rect_flexure(flat_width / wall, flat_depth / wall, [plastic, elastic], e, fy)
            }
        }
    }

    fn flexure_z(&self, plastic: f64, elastic: f64, e: f64, fy: f64) -> Flexure {
        match *self {
            Self::Round { diameter, wall } => round_flexure(diameter / wall, plastic, elastic, e, fy),
            Self::Rect { wall, flat_depth, flat_width, .. } => {
                rect_flexure(flat_depth / wall, flat_width / wall, [plastic, elastic], e, fy)
            }
        }
    }

    /// Nominal shear along y and z. G5: V_n = F_cr·A_g/2, F_cr = 0.78·E/(D/t)^1.5 ≤ 0.6·F_y, the branch that needs no
    /// length; G4: V_n = 0.6·F_y·2·h·t·C_v2 with k_v = 5.
    fn shear(&self, area: f64, e: f64, fy: f64) -> (f64, f64) {
        match *self {
            Self::Round { diameter, wall } => {
                let critical = (0.78 * e / (diameter / wall).powf(1.5)).min(0.6 * fy);
                (0.5 * critical * area, 0.5 * critical * area)
            }
            Self::Rect { wall, flat_depth, flat_width, .. } => {
                let along = |h: f64| 0.6 * fy * 2.0 * h * wall * shear_coefficient(h / wall, e, fy);
                (along(flat_width), along(flat_depth))
            }
        }
    }

    /// Nominal torsion T_n = F_cr·C of H3.1. Round: C = π·(D − t)²·t/2, F_cr = 0.60·E/(D/t)^1.5 ≤ 0.6·F_y.
    /// Rectangular: C = 2·(B − t)·(H − t)·t − 4.5·(4 − π)·t³, F_cr by h/t, to h/t = 260.
    fn torsion(&self, e: f64, fy: f64) -> (f64, Option<NotChecked>) {
        match *self {
            Self::Round { diameter, wall } => {
                let critical = (0.60 * e / (diameter / wall).powf(1.5)).min(0.6 * fy);
                (critical * PI * (diameter - wall).powi(2) * wall / 2.0, None)
            }
            Self::Rect { depth, width, wall, flat_depth, flat_width } => {
                let c = 2.0 * (width - wall) * (depth - wall) * wall - 4.5 * (4.0 - PI) * wall.powi(3);
                let ratio = flat_depth.max(flat_width) / wall;
                let root = (e / fy).sqrt();
                let critical = if ratio <= 2.45 * root {
                    0.6 * fy
                } else if ratio <= 3.07 * root {
                    0.6 * fy * 2.45 * root / ratio
                } else {
                    0.458 * PI * PI * e / (ratio * ratio)
                };
                let beyond = (ratio > 260.0).then_some(NotChecked::SlenderWalls { ratio, limit: 260.0 });
                (critical * c, beyond)
            }
        }
    }
}

/// F8: M_p while D/t ≤ 0.07·E/F_y; (0.021·E/(D/t) + F_y)·S to 0.31·E/F_y; 0.33·E/(D/t)·S beyond; to D/t = 0.45·E/F_y.
fn round_flexure(ratio: f64, plastic: f64, elastic: f64, e: f64, fy: f64) -> Flexure {
    let nominal = if ratio <= 0.07 * e / fy {
        fy * plastic
    } else if ratio <= 0.31 * e / fy {
        ((0.021 * e / ratio + fy) * elastic).min(fy * plastic)
    } else {
        0.33 * e / ratio * elastic
    };
    let limit = 0.45 * e / fy;
    Flexure { nominal, slender: (ratio > limit).then_some(NotChecked::SlenderWalls { ratio, limit }) }
}

/// F7.1 to F7.3: yielding; flanges noncompact from 1.12·√(E/F_y) to 1.40, webs from 2.42 to 5.70. Slender walls are
/// not covered.
fn rect_flexure(flange: f64, web: f64, [plastic, elastic]: [f64; 2], e: f64, fy: f64) -> Flexure {
    let root = (e / fy).sqrt();
    let (m_p, m_y) = (fy * plastic, fy * elastic);
    let by_flange = m_p - (m_p - m_y) * (3.57 * flange / root - 4.0).max(0.0);
    let by_web = m_p - (m_p - m_y) * (0.305 * web / root - 0.738).max(0.0);
    let slender = if flange > 1.40 * root {
        Some(NotChecked::SlenderWalls { ratio: flange, limit: 1.40 * root })
    } else if web > 5.70 * root {
        Some(NotChecked::SlenderWalls { ratio: web, limit: 5.70 * root })
    } else {
        None
    };
    Flexure { nominal: by_flange.min(by_web), slender }
}

/// C_v2 of G2.2 with k_v = 5.
fn shear_coefficient(ratio: f64, e: f64, fy: f64) -> f64 {
    let root = (5.0 * e / fy).sqrt();
    if ratio <= 1.10 * root {
        1.0
    } else if ratio <= 1.37 * root {
        1.10 * root / ratio
    } else {
        1.51 * root * root / (ratio * ratio)
    }
}

/// Nominal moments about y and z with lateral-torsional buckling, F7.4, C_b = 1; infinite for the weaker axis and for
/// square and round tubes.
///
/// L_p = 0.13·E·r·√(J·A)/M_p, L_r = 2·E·r·√(J·A)/(0.7·F_y·S), straight between M_p and 0.7·F_y·S, beyond it
/// 2·E·√(J·A)/(L_b/r); r about the weaker axis.
fn sideways(checked: &CheckedMember) -> (f64, f64) {
    let (member, gross) = (&checked.member, &checked.gross);
    let (depth, width) = (member.section.depth_m(), member.section.width_m());
    let nominal = |r: f64, plastic: f64, elastic: f64| {
        let (e, fy, length) = (member.material.elastic_pa, member.material.yield_pa, member.unbraced_length_m);
        let stiff = e * r * (gross.j_m4 * gross.area_m2).sqrt();
        let (m_p, m_r) = (fy * plastic, 0.7 * fy * elastic);
        let (l_p, l_r) = (0.13 * stiff / m_p, 2.0 * stiff / m_r);
        if length <= l_p {
            f64::INFINITY
        } else if length <= l_r {
            m_p - (m_p - m_r) * (length - l_p) / (l_r - l_p)
        } else {
            2.0 * stiff / length
        }
    };
    if depth > width {
        (nominal(gross.gyration_z_m, gross.w_pl_y_m3, gross.w_el_y_m3), f64::INFINITY)
    } else if width > depth {
        (f64::INFINITY, nominal(gross.gyration_y_m, gross.w_pl_z_m3, gross.w_el_z_m3))
    } else {
        (f64::INFINITY, f64::INFINITY)
    }
}
