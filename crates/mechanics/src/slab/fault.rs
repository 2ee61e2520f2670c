//! Why a slab can't be looked at: the field and what was found there.

use thiserror::Error;

/// Why punching gives no answer.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum SlabFault {
    /// A value is zero, negative, infinite or not a number.
    #[error("slab {field} must be a positive number, found {value}")]
    NotPositive { field: &'static str, value: f64 },
    /// A value is infinite or not a number.
    #[error("slab {field} must be a number, found {value}")]
    NotFinite { field: &'static str, value: f64 },
    /// The depth to the reinforcement exceeds the slab.
    #[error("slab {field} {depth_m} m must be below the thickness {thickness_m} m")]
    DepthBeyondThickness { field: &'static str, depth_m: f64, thickness_m: f64 },
    /// The loaded area is no convex polygon with its corners counter-clockwise.
    #[error(
        "slab loaded_m must be a convex polygon counter-clockwise, corner {corner} turns the other way or not at all"
    )]
    NotConvex { corner: usize },
    /// The loaded area reaches over a free edge.
    #[error("the loaded area reaches {beyond_m} m beyond free edge {edge}")]
    BeyondEdge { edge: usize, beyond_m: f64 },
    /// Edges and openings leave no control perimeter.
    #[error("edges and openings leave no control perimeter at {distance_m} m from the loaded area")]
    NoPerimeter { distance_m: f64 },
}

/// A positive finite number, or the fault that names it.
pub(super) fn positive(field: &'static str, value: f64) -> Result<(), SlabFault> {
    if value.is_finite() && value > 0.0 { Ok(()) } else { Err(SlabFault::NotPositive { field, value }) }
}

/// A finite number, or the fault that names it.
pub(super) fn finite(field: &'static str, value: f64) -> Result<(), SlabFault> {
    if value.is_finite() { Ok(()) } else { Err(SlabFault::NotFinite { field, value }) }
}
