//! The space that an arm or a brace takes while it slews: a band of heights along a radius, swept over a set of directions.
//!
//! Along the radius from the mast axis the underside and the top are straight lines, level for an arm and steep for a brace.
//! To either side of its center line the band is `half_width_m` wide, and its end is taken as round: a little more than a
//! square end at the corners' expense, on the safe side straight ahead.

use crate::geometry::bounds::Bounds;
use crate::geometry::turns::Turns;
use crate::geometry::wedge::Wedge;
use glam::DVec2;
use thiserror::Error;

/// Underside and top of a member over the distance from the mast axis; heights in the levels of the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeightBand {
    /// Where it begins, m from the mast axis; not negative. What lies behind the mast is a band of its own, swept over
    /// the opposite directions.
    pub r0_m: f64,
    /// Where it ends, m from the mast axis.
    pub r1_m: f64,
    /// Underside at the beginning, m.
    pub low_at_r0_m: f64,
    /// Underside at the end, m.
    pub low_at_r1_m: f64,
    /// Top at the beginning, m.
    pub high_at_r0_m: f64,
    /// Top at the end, m.
    pub high_at_r1_m: f64,
    /// Half of its width, m.
    pub half_width_m: f64,
}

impl HeightBand {
    /// Underside at a radius, m.
    pub fn low_m(&self, r_m: f64) -> f64 {
        self.between(r_m, self.low_at_r0_m, self.low_at_r1_m)
    }

    /// Top at a radius, m.
    pub fn high_m(&self, r_m: f64) -> f64 {
        self.between(r_m, self.high_at_r0_m, self.high_at_r1_m)
    }

    fn between(&self, r_m: f64, at_r0: f64, at_r1: f64) -> f64 {
        let length = self.r1_m - self.r0_m;
        let t = if length > 0.0 { (r_m - self.r0_m) / length } else { 0.0 };
        at_r0 * (1.0 - t) + at_r1 * t
    }

    fn check(&self) -> Result<(), BandFault> {
        let numbers = [
            ("r0_m", self.r0_m),
            ("r1_m", self.r1_m),
            ("low_at_r0_m", self.low_at_r0_m),
            ("low_at_r1_m", self.low_at_r1_m),
            ("high_at_r0_m", self.high_at_r0_m),
            ("high_at_r1_m", self.high_at_r1_m),
            ("half_width_m", self.half_width_m),
        ];
        if let Some(&(field, value_m)) = numbers.iter().find(|(_, value)| !value.is_finite()) {
            return Err(BandFault::BadLength { field, value_m });
        }
        for (field, value_m) in [("r0_m", self.r0_m), ("half_width_m", self.half_width_m)] {
            if value_m < 0.0 {
                return Err(BandFault::BadLength { field, value_m });
            }
        }
        let reversed = [
            ("r1_m", self.r0_m, self.r1_m),
            ("high_at_r0_m", self.low_at_r0_m, self.high_at_r0_m),
            ("high_at_r1_m", self.low_at_r1_m, self.high_at_r1_m),
        ];
        match reversed.into_iter().find(|&(_, least, value)| value < least) {
            Some((field, least_m, value_m)) => Err(BandFault::Reversed { field, value_m, least_m }),
            None => Ok(()),
        }
    }
}

/// Why numbers make no band.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum BandFault {
    /// A length that is not finite, or negative where it must not be.
    #[error("{field} of a band is {value_m} m")]
    BadLength {
        /// Which field.
        field: &'static str,
        /// As given, m.
        value_m: f64,
    },
    /// An end before its beginning or a top below its underside.
    #[error("{field} of a band is {value_m} m, below {least_m} m")]
    Reversed {
        /// Which field.
        field: &'static str,
        /// As given, m.
        value_m: f64,
        /// What it must not be below, m.
        least_m: f64,
    },
    /// The mast axis is no place.
    #[error("the pivot of a band is ({x_m}, {y_m})")]
    NoPlace {
        /// x as given, m.
        x_m: f64,
        /// y as given, m.
        y_m: f64,
    },
}

/// A band that goes round a mast axis through a set of directions on the plan.
#[derive(Debug, Clone, PartialEq)]
pub struct SweptBand {
    pivot: DVec2,
    sweep: Turns,
    band: HeightBand,
    wedges: Vec<Wedge>,
}

impl SweptBand {
    /// A band about `pivot`, swept through directions on the plan (not slews: turn those by the unit's outward direction).
    /// No direction at all is allowed: such a band takes no space.
    pub fn new(pivot: DVec2, sweep: Turns, band: HeightBand) -> Result<Self, BandFault> {
        if !pivot.is_finite() {
            return Err(BandFault::NoPlace { x_m: pivot.x, y_m: pivot.y });
        }
        band.check()?;
        let wedges = Wedge::of(&sweep);
        Ok(Self { pivot, sweep, band, wedges })
    }

    /// The same band through other directions: only the serving range, or only the rest of the turn.
    #[must_use]
    pub fn through(&self, sweep: Turns) -> Self {
        let wedges = Wedge::of(&sweep);
        Self { pivot: self.pivot, sweep, band: self.band, wedges }
    }

    /// The mast axis, m.
    pub fn pivot(&self) -> DVec2 {
        self.pivot
    }

    /// The directions swept.
    pub fn sweep(&self) -> &Turns {
        &self.sweep
    }

    /// The band itself.
    pub fn band(&self) -> &HeightBand {
        &self.band
    }

    pub(crate) fn wedges(&self) -> &[Wedge] {
        &self.wedges
    }

    /// A box that holds the band at every direction of the whole turn, so that it need not be renewed while slewing.
    pub fn bounds(&self) -> Bounds {
        Bounds::around(self.pivot, self.band.r1_m + self.band.half_width_m)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn band() -> HeightBand {
        HeightBand {
            r0_m: 0.5,
            r1_m: 2.5,
            low_at_r0_m: 1.0,
            low_at_r1_m: 3.0,
            high_at_r0_m: 1.2,
            high_at_r1_m: 3.2,
            half_width_m: 0.1,
        }
    }

    #[test]
    fn heights_run_straight_from_the_beginning_to_the_end() {
        assert_eq!((band().low_m(0.5), band().low_m(1.5), band().high_m(2.5)), (1.0, 2.0, 3.2));
    }

    #[test]
    fn a_band_without_sense_is_refused_by_the_name_of_the_field() {
        let new = |band| SweptBand::new(DVec2::ZERO, Turns::whole(), band);
        let fault = new(HeightBand { r0_m: -0.1, ..band() });
        assert_eq!(fault, Err(BandFault::BadLength { field: "r0_m", value_m: -0.1 }));
        let fault = new(HeightBand { high_at_r1_m: 2.9, ..band() });
        assert_eq!(fault, Err(BandFault::Reversed { field: "high_at_r1_m", value_m: 2.9, least_m: 3.0 }));
        assert!(matches!(new(HeightBand { half_width_m: f64::NAN, ..band() }), Err(BandFault::BadLength { .. })));
        let nowhere = SweptBand::new(DVec2::NAN, Turns::whole(), band());
        assert!(matches!(nowhere, Err(BandFault::NoPlace { .. })));
    }
}
