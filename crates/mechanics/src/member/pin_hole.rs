//! A pin hole through both walls of a member, and what it leaves of the section.

use thiserror::Error;

use crate::section::{Section, SectionProperties};

/// A round hole drilled right through the middle of a member.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinHole {
    /// Diameter of the hole, m.
    pub diameter_m: f64,
    /// Which way the pin runs.
    pub axis: HoleAxis,
}

/// Direction of a pin hole in the section's axes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HoleAxis {
    /// Along y (horizontal in an arm): it pierces the two walls square to y.
    AlongY,
    /// Along z (upright in an arm): it pierces the two walls square to z.
    AlongZ,
}

/// Why a hole can't be in a section.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum PinHoleFault {
    /// Zero, negative, infinite or not a number.
    #[error("pin hole diameter_m must be a positive length, found {value}")]
    NotPositive { value: f64 },
    /// The hole leaves nothing of the walls it pierces.
    #[error("pin hole diameter_m {diameter_m} leaves nothing of a wall {across_m} m wide")]
    TooWide { diameter_m: f64, across_m: f64 },
}

/// What a hole leaves: area and elastic moduli.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NetProperties {
    /// Net area, m².
    pub area_m2: f64,
    /// Net elastic modulus about y, m³.
    pub w_el_y_m3: f64,
    /// Net elastic modulus about z, m³.
    pub w_el_z_m3: f64,
}

impl PinHole {
    /// Area and elastic moduli left by the hole.
    ///
    /// The removed strips are taken as rectangles of the hole's diameter by the metal's thickness, at the wall's
    /// middle: A_net = A − Σ d·t, I_net = I − Σ (own + d·t·arm²), W_net = I_net over the gross section's outermost
    /// fiber. For a round tube the strip lies on the wall's mean radius, which removes slightly too much: safe.
    pub(super) fn net(&self, section: &Section, gross: &SectionProperties) -> Result<NetProperties, PinHoleFault> {
        let d = self.diameter_m;
        if !(d.is_finite() && d > 0.0) {
            return Err(PinHoleFault::NotPositive { value: d });
        }
        let (along, across) = match self.axis {
            HoleAxis::AlongY => (section.width_m(), section.depth_m()),
            HoleAxis::AlongZ => (section.depth_m(), section.width_m()),
        };
        let removed = removed(section, d, along);
        let across_m = match *section {
            Section::RectTube { wall_m, .. } | Section::RoundTube { wall_m, .. } => across - 2.0 * wall_m,
            Section::SolidRound { .. } | Section::SolidRect { .. } => across,
        };
        if d >= across_m {
            return Err(PinHoleFault::TooWide { diameter_m: d, across_m });
        }
        let (i_y, i_z) = match self.axis {
            HoleAxis::AlongY => (removed.i_along_pin, removed.i_across_pin),
            HoleAxis::AlongZ => (removed.i_across_pin, removed.i_along_pin),
        };
        Ok(NetProperties {
            area_m2: gross.area_m2 - removed.area,
            w_el_y_m3: (gross.i_y_m4 - i_y) / (0.5 * section.depth_m()),
            w_el_z_m3: (gross.i_z_m4 - i_z) / (0.5 * section.width_m()),
        })
    }
}

/// What the drill takes out: area, and second moments about the pin's axis and about the axis across it.
struct Removed {
    area: f64,
    i_along_pin: f64,
    i_across_pin: f64,
}

fn removed(section: &Section, d: f64, along: f64) -> Removed {
    match *section {
        Section::RoundTube { wall_m: t, .. } | Section::RectTube { wall_m: t, .. } => {
            let arm = 0.5 * (along - t);
            Removed {
                area: 2.0 * d * t,
                i_along_pin: 2.0 * t * d.powi(3) / 12.0,
                i_across_pin: 2.0 * (d * t.powi(3) / 12.0 + d * t * arm * arm),
            }
        }
        Section::SolidRound { .. } | Section::SolidRect { .. } => {
            Removed { area: d * along, i_along_pin: along * d.powi(3) / 12.0, i_across_pin: d * along.powi(3) / 12.0 }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hole_through_a_square_tube_takes_two_strips() {
        // By hand, 100 × 100 × 5 sharp, hole 20 along y: A = 1900 − 2·20·5 = 1700 mm²;
        // I_y = 2865833.3 − 2·5·20³/12 = 2859166.7; I_z = 2865833.3 − 2·(20·5³/12 + 100·47.5²) = 2414166.7 mm⁴.
        let tube = Section::RectTube { depth_m: 0.1, width_m: 0.1, wall_m: 0.005, outer_radius_m: 0.0 };
        let gross = tube.properties().unwrap();
        let hole = PinHole { diameter_m: 0.02, axis: HoleAxis::AlongY };
        let net = hole.net(&tube, &gross).unwrap();
        assert!((net.area_m2 - 1700e-6).abs() < 1e-15);
        assert!((net.w_el_y_m3 - 2859166.6667e-12 / 0.05).abs() < 1e-13);
        assert!((net.w_el_z_m3 - 2414166.6667e-12 / 0.05).abs() < 1e-13);
        // Turned, the two moduli change places.
        let turned = PinHole { diameter_m: 0.02, axis: HoleAxis::AlongZ }.net(&tube, &gross).unwrap();
        assert_eq!((net.w_el_y_m3, net.w_el_z_m3), (turned.w_el_z_m3, turned.w_el_y_m3));
    }

    #[test]
    fn a_hole_as_wide_as_the_tube_is_refused() {
        let tube = Section::RoundTube { diameter_m: 0.06, wall_m: 0.005 };
        let gross = tube.properties().unwrap();
        let hole = PinHole { diameter_m: 0.05, axis: HoleAxis::AlongZ };
        assert!(matches!(hole.net(&tube, &gross), Err(PinHoleFault::TooWide { .. })));
        let nothing = PinHole { diameter_m: f64::NAN, axis: HoleAxis::AlongZ };
        assert!(matches!(nothing.net(&tube, &gross), Err(PinHoleFault::NotPositive { .. })));
    }
}
