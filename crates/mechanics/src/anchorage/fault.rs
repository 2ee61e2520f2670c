//! Why an anchorage gives no answer at all: a number that can't be, named with its field.

use thiserror::Error;

/// A wrong number or list in the description of an anchorage or its actions.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum AnchorageFault {
    /// Zero, negative, infinite or not a number.
    #[error("anchorage {field} must be a positive number, found {value}")]
    NotPositive { field: &'static str, value: f64 },
    /// Infinite or not a number.
    #[error("anchorage {field} must be a finite number, found {value}")]
    NotFinite { field: &'static str, value: f64 },
    /// Below what it must at least be.
    #[error("anchorage {field} must be at least {least}, found {value}")]
    TooSmall { field: &'static str, value: f64, least: f64 },
    /// Outside 0..1.
    #[error("anchorage {field} must lie between 0 and 1, found {value}")]
    NotARatio { field: &'static str, value: f64 },
    /// A list that has another length than the group has fasteners.
    #[error("anchorage {field} must have one entry for each of {anchors} fasteners, found {found}")]
    Length { field: &'static str, found: usize, anchors: usize },
    /// No fastener, or more than can be dealt with.
    #[error("an anchorage must have between 1 and {most} fasteners, found {found}")]
    Count { found: usize, most: usize },
    /// Two fasteners at one place.
    #[error("fasteners {first} and {second} stand at the same place")]
    SamePlace { first: usize, second: usize },
    /// A name that stands for nothing here.
    #[error("anchorage {field} names {index}, but there are only {count}")]
    NoSuch { field: &'static str, index: usize, count: usize },
}

pub(super) fn positive(field: &'static str, value: f64) -> Result<(), AnchorageFault> {
    if value.is_finite() && value > 0.0 { Ok(()) } else { Err(AnchorageFault::NotPositive { field, value }) }
}

pub(super) fn finite(field: &'static str, value: f64) -> Result<(), AnchorageFault> {
    if value.is_finite() { Ok(()) } else { Err(AnchorageFault::NotFinite { field, value }) }
}

pub(super) fn least(field: &'static str, value: f64, least: f64) -> Result<(), AnchorageFault> {
    finite(field, value)?;
    if value >= least { Ok(()) } else { Err(AnchorageFault::TooSmall { field, value, least }) }
}

pub(super) fn positive_if_given(field: &'static str, value: Option<f64>) -> Result<(), AnchorageFault> {
    value.map_or(Ok(()), |value| positive(field, value))
}

pub(super) fn ratio(field: &'static str, value: f64) -> Result<(), AnchorageFault> {
    if (0.0..=1.0).contains(&value) { Ok(()) } else { Err(AnchorageFault::NotARatio { field, value }) }
}

pub(super) fn ratio_if_given(field: &'static str, value: Option<f64>) -> Result<(), AnchorageFault> {
    value.map_or(Ok(()), |value| ratio(field, value))
}
