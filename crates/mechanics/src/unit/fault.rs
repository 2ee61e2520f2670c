//! Why a unit can't be computed, with the field and the value to blame.

use thiserror::Error;

use crate::frame::FrameFault;

/// Why a unit can't be computed.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum UnitFault {
    /// A number is NaN or infinite.
    #[error("{field} is {value}, not a finite number")]
    NotFinite {
        /// Name of the field, with its index where it has one.
        field: String,
        /// The value found.
        value: f64,
    },
    /// A number must be greater than zero.
    #[error("{field} is {value}; it must be greater than 0")]
    NotPositive {
        /// Name of the field.
        field: String,
        /// The value found.
        value: f64,
    },
    /// A number must not be negative.
    #[error("{field} is {value}; it must not be negative")]
    Negative {
        /// Name of the field.
        field: String,
        /// The value found.
        value: f64,
    },
    /// A place lies off its member.
    #[error("{field} is {value}; it must lie between {least} and {most} ({bound_by})")]
    OutOfRange {
        /// Name of the field.
        field: String,
        /// The value found.
        value: f64,
        /// Least value allowed.
        least: f64,
        /// Greatest value allowed.
        most: f64,
        /// What sets the bounds.
        bound_by: &'static str,
    },
    /// The arm swings on its pin and nothing holds it.
    #[error("the arm is pinned to the mast (head) and nothing holds it (brace): it swings freely")]
    ArmSwings,
    /// The brace points at the pin of the arm, or across its plane, and can't hold it.
    #[error("the brace has no lever about the arm's pin at slew {slew_rad} rad (brace): the arm swings")]
    BraceWithoutLever {
        /// Slew at which that is so, rad.
        slew_rad: f64,
    },
    /// Both pins of the brace lie at one place.
    #[error("the brace has no length at slew {slew_rad} rad (brace, pins)")]
    BraceWithoutLength {
        /// Slew at which that is so, rad.
        slew_rad: f64,
    },
    /// A rope point that the unit doesn't have.
    #[error("rope point {index} does not exist; the unit has {count}")]
    UnknownPoint {
        /// Index asked for.
        index: usize,
        /// How many there are.
        count: usize,
    },
    /// The frame of the unit can't be solved.
    #[error(transparent)]
    Frame(#[from] FrameFault),
}
