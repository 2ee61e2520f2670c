//! Why an envelope can't be made, with the field and the value to blame.

use thiserror::Error;

use super::extreme::Component;
use crate::cone::ConeFault;
use crate::unit::UnitFault;

/// Why an envelope can't be made.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum EnvelopeFault {
    /// A number is not finite, or negative where it must not be.
    #[error("{field} is {value}; it must be a finite number, not negative")]
    Number {
        /// Name of the field, with its index where it has one.
        field: String,
        /// The value found.
        value: f64,
    },
    /// The least tension is above the greatest.
    #[error("pulls[{pull}].least_n is {least_n}, above tension_n = {most_n}")]
    TensionOrder {
        /// Index of the pull.
        pull: usize,
        /// The least tension, N.
        least_n: f64,
        /// The greatest tension, N.
        most_n: f64,
    },
    /// The ratios of a second leg are out of order.
    #[error("pulls[{pull}].second_leg.ratio runs from {least} to {most}; it must not fall")]
    RatioOrder {
        /// Index of the pull.
        pull: usize,
        /// The first ratio.
        least: f64,
        /// The second ratio.
        most: f64,
    },
    /// A second leg's anchor lies at the rope point itself at some slew.
    #[error("pulls[{pull}].second_leg.anchor_m lies at the rope point at slew {slew_rad} rad")]
    AnchorAtPoint {
        /// Index of the pull.
        pull: usize,
        /// The slew, rad.
        slew_rad: f64,
    },
    /// The cone of a pull can't be.
    #[error("pulls[{pull}].cone: {fault}")]
    Cone {
        /// Index of the pull.
        pull: usize,
        /// What is wrong with it.
        fault: ConeFault,
    },
    /// The range of slew has no slew in it, or runs backward.
    #[error("the slew range is empty or runs from {from_rad} back to {to_rad} rad")]
    SlewRange {
        /// First slew, rad.
        from_rad: f64,
        /// Last slew, rad.
        to_rad: f64,
    },
    /// The range goes beyond what the brace's own foot allows.
    #[error("slew {slew_rad} rad is more than brace.allowed_turn_rad = {allowed_rad} off the foot")]
    BeyondFoot {
        /// The slew, rad.
        slew_rad: f64,
        /// The allowed turn to either side of the bearing, rad.
        allowed_rad: f64,
    },
    /// Asked for a brace, a foot or a joint that the unit doesn't have.
    #[error("the unit has no {part}")]
    NotThere {
        /// What was asked for.
        part: &'static str,
    },
    /// The case of the lost foot was asked for, but the unit falls without it.
    #[error("without its foot the arm swings freely: the lost foot has no reactions")]
    FallsWithoutFoot,
    /// Loads or stiffnesses are so great or so small that their products are no numbers.
    #[error("{component:?} comes out as no number: loads or stiffnesses are beyond all measure")]
    BeyondMeasure {
        /// The first component concerned.
        component: Component,
    },
    /// The unit itself is at fault.
    #[error(transparent)]
    Unit(#[from] UnitFault),
}
