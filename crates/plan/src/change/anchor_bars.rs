//! Whether the numbers of bars for anchors can be meant.

use super::Refused;
use super::apply::in_range;
use crate::document::{AnchorBars, SlabBars};

/// What a number of a set of bars may be, with its names for tension and for shear. Ranges are wide: what a code does not count
/// it says itself.
struct Range {
    of: fn(&AnchorBars) -> f64,
    least: f64,
    most: f64,
    tension: &'static str,
    shear: &'static str,
}

/// α_1 and α_2 are each 0.7 to 1 (EN 1992-1-1 table 8.2, from memory), and so from 0.49 to 1 together.
const LEAST_ALPHA: f64 = 0.7 * 0.7;
/// f_bd reaches 4.65 MPa with the strength of C60/75, beyond which none is counted (EN 1992-1-1 8.4.2, from memory).
const MOST_BOND_PA: f64 = 6.0e6;

const RANGES: [Range; 7] = [
    Range {
        of: |bars| f64::from(bars.count),
        least: 1.0,
        most: 100.0,
        tension: "slab.bars.tension.count",
        shear: "slab.bars.shear.bars.count",
    },
    Range {
        of: |bars| bars.diameter_m,
        least: 0.004,
        most: 0.05,
        tension: "slab.bars.tension.diameter_m",
        shear: "slab.bars.shear.bars.diameter_m",
    },
    Range {
        of: |bars| bars.yield_pa,
        least: 200.0e6,
        most: 1000.0e6,
        tension: "slab.bars.tension.yield_pa",
        shear: "slab.bars.shear.bars.yield_pa",
    },
    Range {
        of: |bars| bars.anchored_m,
        least: 0.01,
        most: 2.0,
        tension: "slab.bars.tension.anchored_m",
        shear: "slab.bars.shear.bars.anchored_m",
    },
    Range {
        of: |bars| bars.bond_pa,
        least: 0.1e6,
        most: MOST_BOND_PA,
        tension: "slab.bars.tension.bond_pa",
        shear: "slab.bars.shear.bars.bond_pa",
    },
    Range {
        of: |bars| bars.alpha,
        least: LEAST_ALPHA,
        most: 1.0,
        tension: "slab.bars.tension.alpha",
        shear: "slab.bars.shear.bars.alpha",
    },
    Range {
        of: |bars| bars.distance_m,
        least: 0.0,
        most: 2.0,
        tension: "slab.bars.tension.distance_m",
        shear: "slab.bars.shear.bars.distance_m",
    },
];

impl Range {
    fn check(&self, bars: &AnchorBars, field: &'static str) -> Result<(), Refused> {
        in_range(field, (self.of)(bars), self.least, self.most)
    }
}

/// Checks the bars for anchors of a slab; names the first number that can't be meant.
pub(super) fn check_anchor_bars(bars: &SlabBars) -> Result<(), Refused> {
    if let Some(tension) = &bars.tension {
        RANGES.iter().try_for_each(|range| range.check(tension, range.tension))?;
    }
    let Some(shear) = &bars.shear else { return Ok(()) };
    RANGES.iter().try_for_each(|range| range.check(&shear.bars, range.shear))?;
    in_range("slab.bars.shear.offset_m", shear.offset_m, 0.0, 1.0)?;
    in_range("slab.bars.shear.lever_m", shear.lever_m, 0.02, 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::EdgeAnchorBars;

    fn refused(bars: SlabBars) -> Option<&'static str> {
        match check_anchor_bars(&bars) {
            Err(Refused::OutOfRange { field, .. }) => Some(field),
            other => {
                assert_eq!(other, Ok(()));
                None
            }
        }
    }

    #[test]
    fn what_a_form_begins_with_can_be_stored() {
        let bars =
            SlabBars { tension: Some(AnchorBars::UNSAID), shear: Some(EdgeAnchorBars::UNSAID), ..SlabBars::default() };
        assert_eq!(refused(bars), None);
        assert_eq!(refused(SlabBars::default()), None);
    }

    #[test]
    fn a_number_of_bars_that_can_not_be_meant_is_named() {
        type Spoil = (&'static str, fn(&mut AnchorBars));
        let spoils: [Spoil; 12] = [
            ("count", |bars| bars.count = 0),
            ("count", |bars| bars.count = 101),
            ("diameter_m", |bars| bars.diameter_m = 12.0),
            ("diameter_m", |bars| bars.diameter_m = f64::NAN),
            ("yield_pa", |bars| bars.yield_pa = 500.0),
            ("anchored_m", |bars| bars.anchored_m = -0.1),
            ("anchored_m", |bars| bars.anchored_m = 120.0),
            ("bond_pa", |bars| bars.bond_pa = 27.0e6),
            ("bond_pa", |bars| bars.bond_pa = 0.0),
            ("alpha", |bars| bars.alpha = 0.48),
            ("alpha", |bars| bars.alpha = 1.01),
            ("distance_m", |bars| bars.distance_m = f64::INFINITY),
        ];
        for (field, spoil) in spoils {
            let mut bars = AnchorBars::UNSAID;
            spoil(&mut bars);
            let tension = SlabBars { tension: Some(bars), ..SlabBars::default() };
            assert_eq!(refused(tension), Some(format!("slab.bars.tension.{field}")).as_deref());
            let shear = Some(EdgeAnchorBars { bars, ..EdgeAnchorBars::UNSAID });
            let shear = SlabBars { shear, ..SlabBars::default() };
            assert_eq!(refused(shear), Some(format!("slab.bars.shear.bars.{field}")).as_deref());
        }
        let beside = |shear| refused(SlabBars { shear: Some(shear), ..SlabBars::default() });
        let found = beside(EdgeAnchorBars { offset_m: -0.01, ..EdgeAnchorBars::UNSAID });
        assert_eq!(found, Some("slab.bars.shear.offset_m"));
        let found = beside(EdgeAnchorBars { lever_m: 0.0, ..EdgeAnchorBars::UNSAID });
        assert_eq!(found, Some("slab.bars.shear.lever_m"));
    }
}
