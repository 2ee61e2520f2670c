//! The envelopes that can be asked for.

use super::actions::{Actions, SlewRange};
use super::engine::{Axes, Engine, Part, brace_plan};
use super::extreme::{Component, Envelope, Extreme, Sense};
use super::fault::EnvelopeFault;
use super::observed::{AtJoint, Base, BraceAxial, Foot, Movement, Observed};
use super::prepared::Prepared;
use super::slews::Slews;
use crate::unit::{Brace, Joint, UnitModel};

const SIX: [(Component, Part); 8] = [
    (Component::Fx, Part::Row(0)),
    (Component::Fy, Part::Row(1)),
    (Component::Fz, Part::Row(2)),
    (Component::Mx, Part::Row(3)),
    (Component::My, Part::Row(4)),
    (Component::Mz, Part::Row(5)),
    (Component::V, Part::Resultant(0)),
    (Component::M, Part::Resultant(3)),
];

const FORCE: [(Component, Part); 4] = [
    (Component::Fx, Part::Row(0)),
    (Component::Fy, Part::Row(1)),
    (Component::Fz, Part::Row(2)),
    (Component::V, Part::Resultant(0)),
];

const MOVEMENT: [(Component, Part); 4] = [
    (Component::Ux, Part::Row(0)),
    (Component::Uy, Part::Row(1)),
    (Component::Uz, Part::Row(2)),
    (Component::U, Part::Resultant(0)),
];

/// Extremes of the action of the unit on the structure at the base, structure axes, about the base's
/// reference point: Fx … Mz greatest and least, and the greatest V and M. Mz of a slewing unit is the
/// torque that must hold its slew. A foot of its own takes its share elsewhere: [`foot_envelope`].
pub fn base_envelope(model: &UnitModel, actions: &Actions, range: &SlewRange) -> Result<Envelope, EnvelopeFault> {
    envelope(model, actions, range, Base, Axes::Structure, &SIX)
}

/// Extremes of the brace's axial force, tension positive. A brace that only pulls has none below 0.
pub fn brace_envelope(model: &UnitModel, actions: &Actions, range: &SlewRange) -> Result<Envelope, EnvelopeFault> {
    has_brace(model)?;
    let wanted = [(Component::Axial, Part::Row(0))];
    envelope(model, actions, range, BraceAxial, Axes::Arm, &wanted)
}

/// Extremes of the force on the structure at the brace's own foot, structure axes; Fz > 0 is uplift.
pub fn foot_envelope(model: &UnitModel, actions: &Actions, range: &SlewRange) -> Result<Envelope, EnvelopeFault> {
    if !model.depends_on_slew() {
        return Err(EnvelopeFault::NotThere { part: "foot of its own" });
    }
    envelope(model, actions, range, Foot, Axes::Structure, &FORCE)
}

/// Extremes of the action at a joint, arm axes, about the joint (see [`Joint`]); Fz > 0 is uplift.
pub fn joint_envelope(
    model: &UnitModel,
    joint: Joint,
    actions: &Actions,
    range: &SlewRange,
) -> Result<Envelope, EnvelopeFault> {
    if matches!(joint, Joint::BraceUpper | Joint::BraceLower) {
        has_brace(model)?;
    }
    envelope(model, actions, range, AtJoint(joint), Axes::Arm, &SIX)
}

/// The greatest uplift at a joint alone, as [`joint_envelope`] has it, for a fraction of the
/// work. The action at a joint is in arm axes; Fz > 0 parts it.
pub fn joint_uplift(
    model: &UnitModel,
    joint: Joint,
    actions: &Actions,
    range: &SlewRange,
) -> Result<Option<Extreme>, EnvelopeFault> {
    if matches!(joint, Joint::BraceUpper | Joint::BraceLower) {
        has_brace(model)?;
    }
    let slews = Slews::new(range, model)?;
    let prepared = Prepared::new(model, actions)?;
    let (plan, _) = brace_plan(model, actions, &prepared, &slews)?;
    let engine = Engine::new(&prepared, AtJoint(joint), Axes::Arm, slews, plan)?;
    let uplift = engine.extreme(Component::Fz, Part::Row(2), Sense::Max)?;
    match uplift.as_ref().filter(|e| !e.concurrent.iter().all(|v| v.is_finite())) {
        Some(bad) => Err(EnvelopeFault::BeyondMeasure { component: bad.component }),
        None => Ok(uplift),
    }
}

/// Extremes of the displacement of a rope point, arm axes.
pub fn movement_envelope(
    model: &UnitModel,
    point: usize,
    actions: &Actions,
    range: &SlewRange,
) -> Result<Envelope, EnvelopeFault> {
    model.rope_point(point)?;
    envelope(model, actions, range, Movement(point), Axes::Arm, &MOVEMENT)
}

fn has_brace(model: &UnitModel) -> Result<(), EnvelopeFault> {
    match model.unit().brace {
        Brace::None => Err(EnvelopeFault::NotThere { part: "brace" }),
        _ => Ok(()),
    }
}

fn envelope<const N: usize>(
    model: &UnitModel,
    actions: &Actions,
    range: &SlewRange,
    observed: impl Observed<N>,
    axes: Axes,
    wanted: &[(Component, Part)],
) -> Result<Envelope, EnvelopeFault> {
    let slews = Slews::new(range, model)?;
    let prepared = Prepared::new(model, actions)?;
    let (plan, slack) = brace_plan(model, actions, &prepared, &slews)?;
    let engine = Engine::new(&prepared, observed, axes, slews, plan)?;
    let mut extremes: Vec<Extreme> = Vec::with_capacity(2 * wanted.len());
    for &(component, part) in wanted {
        extremes.extend(engine.extreme(component, part, Sense::Max)?);
        if let Part::Row(_) = part {
            extremes.extend(engine.extreme(component, part, Sense::Min)?);
        }
    }
    match extremes.iter().find(|e| !e.concurrent.iter().all(|v| v.is_finite())) {
        Some(bad) => Err(EnvelopeFault::BeyondMeasure { component: bad.component }),
        None => Ok(Envelope { extremes, slack }),
    }
}
