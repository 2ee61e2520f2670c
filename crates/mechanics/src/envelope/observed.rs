//! What of a unit is observed: base, brace, foot, a joint, the movement of a rope point.

use crate::unit::{Column, Influence, Joint};
use crate::wrench::Wrench;

/// N numbers that answer linearly to loads, in arm axes.
pub(super) trait Observed<const N: usize> {
    /// Their answer to a load on the unit.
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; N];

    /// Their answer to a load straight on the base, about its reference point.
    fn of_base(&self, _load: Wrench) -> [f64; N] {
        [0.0; N]
    }
}

/// Action on the structure at the base.
pub(super) struct Base;

/// Axial force of the brace.
pub(super) struct BraceAxial;

/// Force on the structure at the brace's own foot.
pub(super) struct Foot;

/// Action at a joint.
pub(super) struct AtJoint(pub Joint);

/// Displacement of a rope point.
pub(super) struct Movement(pub usize);

impl Observed<6> for Base {
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; 6] {
        at.base(load).six()
    }

    fn of_base(&self, load: Wrench) -> [f64; 6] {
        load.six()
    }
}

impl Observed<1> for BraceAxial {
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; 1] {
        [at.brace(load)]
    }
}

impl Observed<3> for Foot {
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; 3] {
        at.foot(load).to_array()
    }
}

impl Observed<6> for AtJoint {
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; 6] {
        at.joint(self.0, load).six()
    }
}

impl Observed<3> for Movement {
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; 3] {
        at.displacement(self.0, load).to_array()
    }
}
