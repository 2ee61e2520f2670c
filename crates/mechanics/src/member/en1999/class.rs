//! Slenderness of an aluminum section's walls and its class: EN 1999-1-1 6.1.4, local buckling 6.1.5.

use crate::material::BucklingClass;
use crate::section::Section;

/// What a section can reach before its walls buckle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Class {
    /// Class 1 or 2: the plastic moment.
    Plastic,
    /// Class 3: proof strength in the outermost fiber.
    Elastic,
    /// Class 4: the walls count with ρ_c of their thickness.
    Slender { rho_c: f64 },
}

/// Limits β/ε of Table 6.2 for internal parts, and the constants of (6.12), by buckling class and welds.
struct Limits {
    plastic: f64,
    elastic: f64,
    c1: f64,
    c2: f64,
}

impl Limits {
    const fn of(buckling_class: BucklingClass, is_welded: bool) -> Self {
        match (buckling_class, is_welded) {
            (BucklingClass::A, false) => Self { plastic: 16.0, elastic: 22.0, c1: 32.0, c2: 220.0 },
            (BucklingClass::A, true) => Self { plastic: 13.0, elastic: 18.0, c1: 29.0, c2: 198.0 },
            (BucklingClass::B, false) => Self { plastic: 16.5, elastic: 18.0, c1: 29.0, c2: 198.0 },
            (BucklingClass::B, true) => Self { plastic: 13.5, elastic: 15.0, c1: 25.0, c2: 150.0 },
        }
    }
}

/// ε = √(250/f_o), f_o in MPa (Table 6.2).
pub(super) fn epsilon(proof_pa: f64) -> f64 {
    (250e6 / proof_pa).sqrt()
}

/// β: flat width over thickness of the wider wall, evenly compressed (6.1.4.3 a); 3·√(D_m/t) for a round tube, D_m its
/// mean diameter (6.1.4.3 e); `None` for solid bars, which don't buckle locally.
pub(super) fn wall_slenderness(section: &Section) -> Option<f64> {
    match *section {
        Section::RoundTube { diameter_m, wall_m } => Some(3.0 * ((diameter_m - wall_m) / wall_m).sqrt()),
        Section::RectTube { depth_m, width_m, wall_m, outer_radius_m } => {
            Some((depth_m.max(width_m) - 2.0 * wall_m.max(outer_radius_m)) / wall_m)
        }
        Section::SolidRound { .. } | Section::SolidRect { .. } => None,
    }
}

/// Class of a section: Table 6.2; ρ_c = C1/(β/ε) − C2/(β/ε)² of 6.1.5 (6.12), for internal parts and round tubes.
pub(super) fn class(section: &Section, proof_pa: f64, buckling_class: BucklingClass, is_welded: bool) -> Class {
    let Some(beta) = wall_slenderness(section) else {
        return Class::Plastic;
    };
    let limits = Limits::of(buckling_class, is_welded);
    let slenderness = beta / epsilon(proof_pa);
    if slenderness <= limits.plastic {
        Class::Plastic
    } else if slenderness <= limits.elastic {
        Class::Elastic
    } else {
        Class::Slender { rho_c: limits.c1 / slenderness - limits.c2 / (slenderness * slenderness) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_square_tube_is_slender() {
        // Published case D13 (TALAT Lecture 2301, example 5.1): 70 × 1.9, f_o 200: β = 34.8, ε = 1.118, ρ_c = 0.80.
        let tube = Section::RectTube { depth_m: 0.07, width_m: 0.07, wall_m: 0.0019, outer_radius_m: 0.0 };
        assert!((wall_slenderness(&tube).unwrap() - 34.8).abs() < 0.05);
        assert!((epsilon(200e6) - 1.118).abs() < 5e-4);
        let Class::Slender { rho_c } = class(&tube, 200e6, BucklingClass::A, false) else {
            panic!("the book calls this section slender");
        };
        assert!((rho_c - 0.80).abs() < 5e-3);
    }

    #[test]
    fn local_buckling_starts_from_nothing_at_the_class_3_limit() {
        // ρ_c of each pair of constants is 1 at its own class 3 limit: a check on constants taken from memory.
        for class in [BucklingClass::A, BucklingClass::B] {
            for is_welded in [false, true] {
                let limits = Limits::of(class, is_welded);
                let rho = limits.c1 / limits.elastic - limits.c2 / (limits.elastic * limits.elastic);
                assert!((rho - 1.0).abs() < 1e-12, "{rho}");
            }
        }
    }
}
