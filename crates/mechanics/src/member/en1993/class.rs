//! Section class of EN 1993-1-1 Table 5.2, taken for even compression, which is the worst that can happen to a wall.

use super::super::check::NotChecked;
use crate::section::Section;

/// What a section can reach before its walls buckle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in super::super) enum Class {
    /// Class 1 or 2: the plastic moment.
    Plastic,
    /// Class 3: yield in the outermost fiber.
    Elastic,
}

/// Class of a section, or the reason why class 4 is not covered.
///
/// ε² = 235/f_y (MPa). Round tubes: D/t ≤ 70ε² plastic, ≤ 90ε² elastic. Flat walls in compression: c/t ≤ 38ε
/// plastic, ≤ 42ε elastic, with c the flat width between corners. Solid bars don't buckle locally.
pub(super) fn class(section: &Section, yield_pa: f64) -> Result<Class, NotChecked> {
    let epsilon_squared = 235e6 / yield_pa;
    let (ratio, plastic, elastic) = match *section {
        Section::RoundTube { diameter_m, wall_m } => {
            (diameter_m / wall_m, 70.0 * epsilon_squared, 90.0 * epsilon_squared)
        }
        Section::RectTube { depth_m, width_m, wall_m, outer_radius_m } => {
            let flat = depth_m.max(width_m) - 2.0 * wall_m.max(outer_radius_m);
            let epsilon = epsilon_squared.sqrt();
            (flat / wall_m, 38.0 * epsilon, 42.0 * epsilon)
        }
        Section::SolidRound { .. } | Section::SolidRect { .. } => return Ok(Class::Plastic),
    };
    if ratio <= plastic {
        Ok(Class::Plastic)
    } else if ratio <= elastic {
        Ok(Class::Elastic)
    } else {
        Err(NotChecked::SlenderWalls { ratio, limit: elastic })
    }
}

/// Nothing, or the reason why shear buckling would have to be looked at: h_w/t > 72·ε/η of EN 1993-1-1 6.2.6(6), with
/// η = 1, its safe value. A round tube of class 1 to 3 is taken as stocky in shear.
pub(super) fn shear_buckling(section: &Section, yield_pa: f64) -> Option<NotChecked> {
    match *section {
        Section::RectTube { depth_m, width_m, wall_m, .. } => {
            let ratio = (depth_m.max(width_m) - 2.0 * wall_m) / wall_m;
            let limit = 72.0 * (235e6 / yield_pa).sqrt();
            (ratio > limit).then_some(NotChecked::ShearBuckling { ratio, limit })
        }
        Section::RoundTube { .. } => class(section, yield_pa).err(),
        Section::SolidRound { .. } | Section::SolidRect { .. } => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn round_tubes_are_classed_by_diameter_over_wall() {
        // By hand for f_y = 235: ε = 1, limits 70 and 90.
        let tube = |ratio: f64| Section::RoundTube { diameter_m: 0.1, wall_m: 0.1 / ratio };
        assert_eq!(class(&tube(69.9), 235e6), Ok(Class::Plastic));
        assert_eq!(class(&tube(70.1), 235e6), Ok(Class::Elastic));
        assert!(matches!(class(&tube(90.1), 235e6), Err(NotChecked::SlenderWalls { .. })));
        // Published program: 114.3 × 8 in S275 is class 1 with d/t = 14.3.
        assert_eq!(class(&Section::RoundTube { diameter_m: 0.1143, wall_m: 0.008 }, 275e6), Ok(Class::Plastic));
    }

    #[test]
    fn flat_walls_are_classed_by_flat_width_over_wall() {
        // c = 3 mm wall × ratio between corners of outside radius 1.5t: width = ratio·t + 3t.
        let tube = |ratio: f64| Section::RectTube {
            depth_m: (ratio + 3.0) * 0.003,
            width_m: 0.05,
            wall_m: 0.003,
            outer_radius_m: 0.0045,
        };
        let epsilon = (235.0f64 / 355.0).sqrt();
        assert_eq!(class(&tube(37.9 * epsilon), 355e6), Ok(Class::Plastic));
        assert_eq!(class(&tube(38.1 * epsilon), 355e6), Ok(Class::Elastic));
        assert!(class(&tube(42.1 * epsilon), 355e6).is_err());
        assert_eq!(shear_buckling(&tube(42.1 * epsilon), 355e6), None);
        assert!(shear_buckling(&tube(73.0 * epsilon), 355e6).is_some());
    }
}
