//! Rules: each looks at one demand and gives checks with one of four outcomes.

pub mod base_fixing;
mod base_holds;
pub mod base_place;
pub mod clear_of_things;
mod declared;
pub mod facade;
mod fixing_test;
pub mod handling;
mod joints;
pub mod make_up;
pub mod people;
pub mod plan;
pub mod serving;
pub mod strength;
mod wall_base;

use super::assessment::UnitAssessment;
use super::check::{Amount, Check, Limit, Outcome, Place, Severity};
use super::clear_zones::Neighbor;
use super::code::Code;
use super::standing::FoundRoom;
use super::surroundings::Surroundings;
use crate::basis::Sourced;
use crate::catalog::ResolvedUnit;
use crate::document::{PlacementId, Plan, ThingId};
use crate::geometry::frame::Frame;

/// Everything a rule about one unit may look at.
pub struct UnitContext<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The unit.
    pub id: PlacementId,
    /// What was computed about it.
    pub unit: &'a UnitAssessment,
    /// Room for people, with whether it is free.
    pub rooms: Option<&'a FoundRoom>,
    /// Units near it.
    pub neighbors: &'a [Neighbor],
    /// What stands still.
    pub surroundings: &'a Surroundings,
}

impl UnitContext<'_> {
    /// The unit as a thing.
    pub fn thing(&self) -> ThingId {
        ThingId::Placement(self.id)
    }

    /// Frame and parts, when both are known.
    pub fn known(&self) -> Option<(&Frame, &ResolvedUnit)> {
        Some((self.unit.frame.as_ref()?, self.unit.resolved.as_ref().ok()?))
    }

    /// A check about this unit at its place.
    pub fn check(&self, code: Code, outcome: Outcome) -> Check {
        let at = self.unit.frame.map(|frame| Place { at: frame.at, level_m: Some(frame.level_m) });
        Check { at, ..Check::new(code, self.thing(), outcome) }
    }

    /// Checks that could not be made because something is missing. What is not looked at is never left out.
    pub fn not_checked(&self, codes: &[Code], missing: &str) -> Vec<Check> {
        codes.iter().map(|&code| self.check(code, Outcome::NotChecked(missing.to_owned()))).collect()
    }
}

/// What is missing where a unit has no place or its parts are not known.
pub(super) const PLACE_OR_PARTS: &str = "place or parts of the unit";

/// All rules about one unit.
pub fn unit_checks(context: &UnitContext<'_>) -> Vec<Check> {
    let mut checks = make_up::checks(context);
    checks.extend(base_place::checks(context));
    checks.extend(base_fixing::checks(context));
    checks.extend(wall_base::checks(context));
    checks.extend(fixing_test::checks(context));
    checks.extend(base_holds::checks(context));
    checks.extend(serving::checks(context));
    checks.extend(clear_of_things::checks(context));
    checks.extend(people::checks(context));
    checks.extend(strength::checks(context));
    checks.extend(handling::checks(context));
    checks
}

/// Meets, or fails with this severity.
pub(super) fn meets_or(holds: bool, severity: Severity) -> Outcome {
    if holds { Outcome::Meets } else { Outcome::Fails(severity) }
}

/// A limit from a sourced value: the measured value must not be above it.
pub(super) fn at_most(value: &Sourced<f64>, amount: impl Fn(f64) -> Amount) -> Limit {
    Limit { amount: amount(value.value), is_least: false, source: value.source.clone() }
}

/// A limit from a sourced value: the measured value must not be below it.
pub(super) fn at_least(value: &Sourced<f64>, amount: impl Fn(f64) -> Amount) -> Limit {
    Limit { amount: amount(value.value), is_least: true, source: value.source.clone() }
}

/// A tenth of a micrometer: lengths nearer than this to a limit meet it, so that typed values meet limits they equal.
pub(super) const LENGTH_HAIR_M: f64 = 1.0e-7;
