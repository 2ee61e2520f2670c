//! Points of the compass, for naming facades.

use std::f64::consts::{FRAC_PI_2, TAU};

const WORDS: [&str; 8] = ["north", "northwest", "west", "southwest", "south", "southeast", "east", "northeast"];

/// The nearest of eight points of the compass for a direction in the plan.
///
/// `direction_rad` is counter-clockwise from the plan's x axis, `north_rad` the direction of north counter-clockwise from
/// the plan's y axis.
pub fn compass_word(direction_rad: f64, north_rad: f64) -> &'static str {
    let from_north = (direction_rad - FRAC_PI_2 - north_rad).rem_euclid(TAU);
    let eighth = (from_north / (TAU / 8.0)).round() as usize % 8;
    WORDS[eighth]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_facade_that_looks_down_the_sheet_is_the_south_one_unless_north_is_turned() {
        assert_eq!(compass_word(-FRAC_PI_2, 0.0), "south");
        assert_eq!(compass_word(0.0, 0.0), "east");
        // North a quarter turn to the left of the sheet's top: what looks right looks south.
        assert_eq!(compass_word(0.0, FRAC_PI_2), "south");
        assert_eq!(compass_word(FRAC_PI_2 - 0.8, 0.0), "northeast");
    }
}
