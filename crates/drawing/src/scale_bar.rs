//! The scale bar: round lengths in two rows of black and white fields.

use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::quantity::{self, UnitSystem};
use glam::DVec2;

use crate::layer::Layer;
use crate::mark::{Fill, Mark};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::text::{Anchor, TextStyle};

/// Longest bar, paper mm.
const LONGEST_MM: f64 = 60.0;
/// Height of the bar, paper mm.
const HIGH_MM: f64 = 1.6;
/// Fields of the bar.
const FIELDS: u32 = 4;

/// The longest round length that is not longer than this, m: 1, 2 or 5 times a power of ten, of meters or of feet; below
/// a foot 6, 3, 2 or 1 inches, then tenths of an inch.
pub fn round_at_most_m(most_m: f64, units: UnitSystem) -> f64 {
    const FOOT_M: f64 = 0.3048;
    match units {
        UnitSystem::Si => decimal_at_most(most_m),
        UnitSystem::UsCustomary if most_m >= FOOT_M => decimal_at_most(most_m / FOOT_M) * FOOT_M,
        UnitSystem::UsCustomary => {
            let inches = most_m / FOOT_M * 12.0;
            [6.0, 3.0, 2.0, 1.0].into_iter().find(|round| *round <= inches).unwrap_or_else(|| decimal_at_most(inches))
                * FOOT_M
                / 12.0
        }
    }
}

fn decimal_at_most(most: f64) -> f64 {
    let power = 10.0_f64.powf(most.log10().floor());
    [5.0, 2.0].into_iter().map(|factor| factor * power).find(|round| *round <= most).unwrap_or(power)
}

fn field_m(scale: Scale, units: UnitSystem) -> f64 {
    round_at_most_m(scale.m(LONGEST_MM) / f64::from(FIELDS), units)
}

/// Length of the bar, m.
pub fn length_m(scale: Scale, units: UnitSystem) -> f64 {
    field_m(scale, units) * f64::from(FIELDS)
}

/// Marks of a scale bar whose lower left corner is here.
pub fn scale_bar_marks(at: DVec2, scale: Scale, units: UnitSystem) -> Vec<Mark> {
    let mut pencil = Pencil::new(scale);
    let (field, high) = (field_m(scale, units), scale.m(HIGH_MM));
    for index in 0..FIELDS {
        let low = at + DVec2::X * field * f64::from(index);
        let fill = if index % 2 == 0 { Fill::Ink(Pen::Outline) } else { Fill::Paper };
        let rectangle = Polygon::rectangle(low, low + DVec2::new(field, high));
        pencil.polygon(Layer::Sheet, fill, Some(Pen::Edge), rectangle);
    }
    for (fields, words) in [
        (0, "0".to_owned()),
        (FIELDS / 2, quantity::length(field * f64::from(FIELDS / 2), units)),
        (FIELDS, quantity::length(field * f64::from(FIELDS), units)),
    ] {
        let over = at + DVec2::new(field * f64::from(fields), high + scale.m(1.0));
        pencil.text(Layer::Sheet, words, over, Anchor::OVER, TextStyle::Note);
    }
    pencil.done()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_is_round_and_at_most_sixty_millimeters_long() {
        for (one_to, length) in [(20.0, 0.8), (50.0, 2.0), (100.0, 4.0), (150.0, 8.0), (200.0, 8.0), (500.0, 20.0)] {
            let scale = Scale::one_to(one_to);
            let long = length_m(scale, UnitSystem::Si);
            assert!((long - length).abs() < 1e-9, "1:{one_to} {long}");
            assert!(scale.mm(long) <= LONGEST_MM + 1e-9);
        }
    }

    #[test]
    fn in_feet_and_inches_the_bar_is_round_in_feet_and_inches() {
        for (most_m, words) in [(0.09, "3\""), (0.2, "6\""), (1.0, "2' 0\""), (3.0, "5' 0\""), (16.0, "50' 0\"")] {
            let round = round_at_most_m(most_m, UnitSystem::UsCustomary);
            assert!(round <= most_m);
            assert_eq!(quantity::length(round, UnitSystem::UsCustomary), words);
        }
    }
}
