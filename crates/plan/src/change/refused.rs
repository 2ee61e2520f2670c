//! Why a change can't be made, in fields, with the place of the trouble where there is one.

use glam::DVec2;

use crate::document::{FamilyId, RingFault, RoofId, ThingId};

/// A change that leaves the plan as it is.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Refused {
    /// The thing is not on the plan.
    #[error("{} is not on the plan", name(.0))]
    NoSuchThing(ThingId),
    /// The family is not in the plan.
    #[error("{0} is not in the plan")]
    NoSuchFamily(FamilyId),
    /// The outline would not be one.
    #[error(transparent)]
    Outline(#[from] RingFault),
    /// A hole that leaves its roof or meets another ring.
    #[error("the hole touches or leaves the outline of its roof at ({:.3}, {:.3}) m", .at.x, .at.y)]
    HoleLeavesRoof {
        /// Where.
        at: DVec2,
    },
    /// A value outside its range.
    #[error("{field} = {value} is outside {least} to {most}")]
    OutOfRange {
        /// The field.
        field: &'static str,
        /// The value asked for.
        value: f64,
        /// Least value allowed.
        least: f64,
        /// Largest value allowed.
        most: f64,
    },
    /// A facade profile whose steps are not in order.
    #[error("facade step {step} must begin deeper than the one before it, the first at depth 0")]
    ProfileOrder {
        /// Which step, counted from 1.
        step: usize,
    },
    /// A facade that would end on its own roof.
    #[error("a facade can't end on its own roof ({0})")]
    EndsOnItself(RoofId),
    /// Something locked.
    #[error("{} is locked", name(.0))]
    Locked(ThingId),
    /// A unit that does not stand on an edge was asked for its place along it.
    #[error("{} stands free: it has no place along an edge", name(.0))]
    StandsFree(ThingId),
    /// Two places that are to tell a length or a direction are the same.
    #[error("the two points lie on each other at ({:.3}, {:.3}) m: they tell neither a length nor a direction", .at.x, .at.y)]
    PlacesCoincide {
        /// Where.
        at: DVec2,
    },
    /// More attached than a plan takes in.
    #[error("the files under the plan would have {has} bytes together; a plan takes in at most {most}")]
    TooMuchAttached {
        /// Bytes together.
        has: usize,
        /// Bytes that are taken in.
        most: usize,
    },
    /// The loads of a basis can't be combined as it says.
    #[error(transparent)]
    Basis(#[from] crate::basis::CombinedFault),
}

impl Refused {
    /// The place of the trouble in the plan, where there is one.
    pub fn place(&self) -> Option<DVec2> {
        match self {
            Self::Outline(fault) => fault.place(),
            Self::HoleLeavesRoof { at } | Self::PlacesCoincide { at } => Some(*at),
            _ => None,
        }
    }
}

fn name(thing: &ThingId) -> String {
    match thing {
        ThingId::Plan => "the plan".to_owned(),
        ThingId::Roof(id) => id.to_string(),
        ThingId::Edge(id) => id.to_string(),
        ThingId::Obstacle(id) => id.to_string(),
        ThingId::Placement(id) => id.to_string(),
        ThingId::Underlay(id) => id.to_string(),
    }
}
