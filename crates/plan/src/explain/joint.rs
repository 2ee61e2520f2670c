//! What parts a joint: everything that the carried part brings, less what the brace takes.

use gantline_mechanics::envelope::{Component as Row, Sense as End, joint_envelope};
use gantline_mechanics::unit::Joint;
use glam::DVec3;

use super::acting::{Load, On, Pins, loads, total_n};
use super::inside;
use super::reaction::added_up;
use super::subject::{Subject, force, most_extreme};
use super::trace::{Symbol, Trace};
use crate::assess::worth_searching::design_actions;
use crate::assess::{Component, Sense};

/// Joints as they are shown.
fn named(name: &str) -> Option<Joint> {
    Some(match name {
        "arm on mast" => Joint::ArmOnMast,
        "mast in socket" => Joint::MastOnBase,
        "upper pin of the brace" => Joint::BraceUpper,
        "lower pin of the brace" => Joint::BraceLower,
        _ => return None,
    })
}

/// The trace of a joint's largest uplift: Fz = Σ Fz of what it carries − N·n_z, with N the force in the brace and n_z its slope.
/// Source: equilibrium of the carried part. For a front brace under a rope straight down it is T·(a/x_b − 1).
pub fn trace(subject: &Subject<'_>, row: usize) -> Option<Trace> {
    let found = subject.reactions()?.joints.get(row)?;
    let joint = named(found.joint)?;
    let (model, range) = subject.model()?;
    let looks = design_actions(&subject.basis, subject.unit).into_iter().filter_map(|(index, actions)| {
        let envelope = joint_envelope(&model, joint, &actions, &range).ok()?;
        let extreme = envelope.get(Row::Fz, End::Max)?.clone();
        (index == found.combination).then_some((actions, extreme))
    });
    let (actions, extreme) = most_extreme(looks, Sense::Max)?;
    let (causes, slew) = (&extreme.causes, extreme.slew_rad);
    let pins = Pins::of(model.unit(), slew);
    let carried = |load: &Load| match joint {
        Joint::ArmOnMast => load.on == On::Arm,
        Joint::MastOnBase => matches!(load.on, On::Arm | On::Mast),
        Joint::BraceUpper | Joint::BraceLower => false,
    };
    let mut acting = loads(model.unit(), &actions, causes, slew);
    acting.retain(carried);
    let mut symbols = inside::symbols(subject, found.combination, &actions, causes, slew);
    let here = DVec3::new(extreme.concurrent[0], extreme.concurrent[1], extreme.concurrent[2]);
    if let Some(pins) = pins.filter(|pins| takes_part(joint, pins)) {
        let along_n = here - total_n(&acting);
        symbols.push(Symbol::computed(
            "N",
            "force in the brace, tension positive",
            force(axial_n(joint, &pins, along_n)),
        ));
        let at = if joint == Joint::BraceLower { pins.lower } else { pins.upper };
        let force_n = pins.axis() * along_n.dot(pins.axis());
        acting.push(Load { says: "brace".into(), on: On::Arm, force_n, at });
    }
    let name = &subject.combined(found.combination)?.name;
    let title = format!("Uplift of unit {}: {}, {name}", subject.tag, found.joint);
    let source = "equilibrium of the part that the joint carries".to_owned();
    Some(Trace { source, ..added_up(&title, Component::Fz, symbols, &acting) })
}

/// Whether the brace's force goes past or through this joint.
fn takes_part(joint: Joint, pins: &Pins) -> bool {
    match joint {
        Joint::ArmOnMast => pins.upper_on == On::Arm,
        Joint::MastOnBase => matches!(pins.lower_on, On::Base | On::Foot),
        Joint::BraceUpper | Joint::BraceLower => true,
    }
}

/// Tension of the brace from its force on the joint.
fn axial_n(joint: Joint, pins: &Pins, along_n: DVec3) -> f64 {
    let along = along_n.dot(pins.axis());
    if joint == Joint::BraceLower { along } else { -along }
}
