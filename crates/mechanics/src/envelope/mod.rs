//! Extremes of what a unit does to its base, brace, foot and joints, over every rope direction and slew.
//!
//! All answers are linear in the loads, and loads are a sum of independent bodies: each rope pull is
//! a cone of directions times a tension from 0 to T, tether and wind are disks, weight and fixed
//! forces are points. So the greatest value of a component at a slew is the sum of the bodies' own
//! support functions, in closed form; over slew, and over the direction of a resultant, it is a
//! search in one dimension with refinement (in two where slew and direction don't turn together).
//!
//! A brace that only pulls makes two linear states that meet where its force vanishes; the extreme of
//! each is that of a linear function under one linear condition, found by its multiplier. There the
//! rope's tension may take any value up to T; for cones beyond 90° the convex hull of the pulls is
//! taken, which errs on the safe side.

mod actions;
mod answers;
mod case;
mod engine;
mod extreme;
mod fault;
mod hunt;
mod joined;
mod members;
mod observed;
mod on_base;
mod prepared;
mod rows;
mod search;
mod slews;
mod stability;
mod state;

pub use actions::{
    Actions, FixedForce, FootCase, ForceAxes, ForceOn, Pull, SecondLeg, SlewHold, SlewRange, Tether, WindLump,
    WindOnUnit,
};
pub use answers::{base_envelope, brace_envelope, foot_envelope, joint_envelope, joint_uplift, movement_envelope};
pub use extreme::{Causes, Component, Envelope, Extreme, Sense, Slack};
pub use fault::EnvelopeFault;
pub use members::{
    Mark, MemberAbove, MemberEnvelope, MemberPart, MemberUse, SecondOrder, TooSoft, member_above, member_envelope,
};
pub(crate) use on_base::{ActionsOnBase, OnBase, StateOnBase, Way};
pub use stability::{CriticalFactor, least_critical_factor};
