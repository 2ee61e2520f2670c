//! Finds the reactions of a make-up: for each combination of the basis every extreme with all that acts at the same time.

use gantline_mechanics::envelope::{
    Actions, Component as Part, Envelope, EnvelopeFault, Extreme, Sense as End, Slack, SlewRange, base_envelope,
    brace_envelope, foot_envelope, joint_uplift, movement_envelope,
};
use gantline_mechanics::stability::alpha_cr;
use gantline_mechanics::unit::{Brace, Joint, UnitModel};

use super::actions_of::{CombinationActions, NoActions, actions_of, slew_range};
use super::in_parts::{in_parts, threads_of_this_machine};
use super::member_phase;
use super::reactions::{
    CombinationResult, Component, FootExtreme, ForceExtreme, JointUse, ReactionSet, Reactions, Sense, Unavailable,
};
use super::worth_searching::worth_searching;
use crate::basis::{DesignCode, LoadBasis, LoadLevel};
use crate::catalog::{ResolvedUnit, Retention, to_mechanics};

/// The reactions of a make-up under a basis, on this machine's threads.
pub fn reactions(unit: &ResolvedUnit, basis: &LoadBasis, code: &DesignCode) -> Reactions {
    reactions_on(threads_of_this_machine(), unit, basis, code)
}

/// The reactions of a make-up under a basis; the same on any number of threads. What can't be computed says why in its
/// place.
pub(super) fn reactions_on(threads: usize, unit: &ResolvedUnit, basis: &LoadBasis, code: &DesignCode) -> Reactions {
    let model = to_mechanics::unit(unit)
        .map_err(|fault| fault.to_string())
        .and_then(|unit| UnitModel::new(&unit).map_err(|fault| fault.to_string()));
    let range = slew_range(unit.slew_stops);
    let mut found = Reactions::default();
    let mut acting: Vec<Option<CombinationActions>> = Vec::new();
    let indices: Vec<usize> = (0..basis.combinations.len()).collect();
    for (one, actions) in in_parts(threads, COMBINATIONS_WORTH_A_THREAD, &indices, |&index| {
        of_combination(unit, basis, model.as_ref().map_err(String::as_str), &range, index)
    }) {
        take_in(&mut found, one);
        acting.push(actions);
    }
    if let Ok(model) = &model {
        let searched = worth_searching(basis, &acting);
        let asked = joints_of(unit);
        // The critical load factor takes as long as all joints together.
        let mut halves = in_parts(threads, 1, &[true, false], |&first| {
            if first {
                (least_alpha_cr(model, &searched), Vec::new())
            } else {
                (None, asked.iter().filter_map(|joint| worst_uplift(model, joint, &range, &searched)).collect())
            }
        })
        .into_iter();
        found.alpha_cr = halves.next().and_then(|(factor, _)| factor);
        found.joints = halves.next().map_or_else(Vec::new, |(_, joints)| joints);
        member_phase::members(threads, unit, (basis, code), model, &range, &searched, &mut found);
    }
    found
}

/// Fewer combinations than this to a thread are not worth starting it.
const COMBINATIONS_WORTH_A_THREAD: usize = 3;

/// What one combination brings by itself, and its actions where there are figures.
fn of_combination(
    unit: &ResolvedUnit,
    basis: &LoadBasis,
    model: Result<&UnitModel, &str>,
    range: &SlewRange,
    index: usize,
) -> (Reactions, Option<CombinationActions>) {
    let combined = &basis.combinations[index];
    let mut found = Reactions::default();
    let mut result = CombinationResult {
        name: combined.name.clone(),
        level: combined.level,
        inside: String::new(),
        pull_n: 0.0,
        sets: Vec::new(),
        brace_axial: None,
        foot: Vec::new(),
        unavailable: None,
    };
    let actions = match actions_of(combined, basis, unit) {
        Ok(actions) => {
            result.inside.clone_from(&actions.inside);
            result.pull_n = actions.pull_n;
            let computed = match model {
                Ok(model) => compute(model, &actions, range, index, &mut result, &mut found),
                Err(what) => Err(what.to_owned()),
            };
            match computed {
                Ok(()) => Some(actions),
                Err(what) => {
                    result.sets.clear();
                    result.unavailable = Some(Unavailable::Missing(what));
                    None
                }
            }
        }
        Err(NoActions::Missing(what)) => {
            result.unavailable = Some(Unavailable::Missing(what));
            None
        }
        Err(NoActions::DoesNotApply(why)) => {
            result.unavailable = Some(Unavailable::DoesNotApply(why));
            None
        }
    };
    found.combinations.push(result);
    (found, actions)
}

/// Takes in what one combination brings: the largest of each, and the worst that was said of a slack brace.
fn take_in(found: &mut Reactions, one: Reactions) {
    let larger = |known: Option<f64>, new: Option<f64>| match (known, new) {
        (Some(known), Some(new)) => Some(known.max(new)),
        (known, new) => known.or(new),
    };
    found.combinations.extend(one.combinations);
    found.tip_deflection_m = larger(found.tip_deflection_m, one.tip_deflection_m);
    found.twist_nm = larger(found.twist_nm, one.twist_nm);
    if let Some(new) = one.slack
        && found.slack.as_ref().is_none_or(|known| new.is_mechanism && !known.is_mechanism)
    {
        found.slack = Some(new);
    }
}

fn compute(
    model: &UnitModel,
    actions: &CombinationActions,
    range: &SlewRange,
    index: usize,
    result: &mut CombinationResult,
    found: &mut Reactions,
) -> Result<(), String> {
    let fault = |fault: EnvelopeFault| fault.to_string();
    for one in &actions.with_weight {
        let base = base_envelope(model, one, range).map_err(fault)?;
        note_slack(found, &base);
        if base.extremes.is_empty() {
            return Err("forces that hold the unit: its brace goes slack and nothing else holds the arm".to_owned());
        }
        for extreme in &base.extremes {
            keep_set(result, extreme, index, one.weight_factor);
        }
        if !matches!(model.unit().brace, Brace::None) {
            keep_brace(result, &brace_envelope(model, one, range).map_err(fault)?);
        }
        if model.depends_on_slew() {
            keep_foot(result, &foot_envelope(model, one, range).map_err(fault)?);
        }
    }
    if result.level == LoadLevel::Service && result.pull_n > 0.0 {
        for one in &actions.with_weight {
            let movement = movement_envelope(model, 0, one, range).map_err(fault)?;
            let largest = movement.extremes.iter().map(|extreme| extreme.value.abs()).fold(0.0, f64::max);
            found.tip_deflection_m = Some(found.tip_deflection_m.unwrap_or(0.0).max(largest));
        }
    } else if result.level != LoadLevel::Service {
        let twist = result.largest(Component::Mz);
        found.twist_nm = Some(found.twist_nm.unwrap_or(0.0).max(twist));
    }
    Ok(())
}

fn note_slack(found: &mut Reactions, envelope: &Envelope) {
    let (said, is_mechanism) = match envelope.slack {
        Slack::Never => return,
        Slack::StandsWithout { axial_n, slew_rad } => (
            format!(
                "pressed by up to {:.3} kN at slew {:.1}°; the unit stands without it",
                axial_n / 1e3,
                slew_rad.to_degrees()
            ),
            false,
        ),
        Slack::Mechanism { axial_n, slew_rad } => (
            format!(
                "pressed by up to {:.3} kN at slew {:.1}°; then nothing holds the arm",
                axial_n / 1e3,
                slew_rad.to_degrees()
            ),
            true,
        ),
    };
    if found.slack.as_ref().is_none_or(|known| is_mechanism && !known.is_mechanism) {
        found.slack = Some(super::reactions::SlackBrace { said, is_mechanism });
    }
}

pub(super) fn component(part: Part) -> Option<Component> {
    Some(match part {
        Part::Fx => Component::Fx,
        Part::Fy => Component::Fy,
        Part::Fz => Component::Fz,
        Part::Mx => Component::Mx,
        Part::My => Component::My,
        Part::Mz => Component::Mz,
        Part::V => Component::V,
        Part::M => Component::M,
        Part::Axial | Part::Ux | Part::Uy | Part::Uz | Part::U => return None,
    })
}

pub(super) const fn sense(end: End) -> Sense {
    match end {
        End::Max => Sense::Max,
        End::Min => Sense::Min,
    }
}

/// Whether a value goes beyond another in this sense.
fn beyond(sense: Sense, value: f64, other: f64) -> bool {
    match sense {
        Sense::Max => value > other,
        Sense::Min => value < other,
    }
}

fn keep_set(result: &mut CombinationResult, extreme: &Extreme, combination: usize, weight_factor: f64) {
    let Some(component) = component(extreme.component) else { return };
    let set = ReactionSet {
        combination,
        level: result.level,
        component,
        sense: sense(extreme.sense),
        value: extreme.value,
        concurrent: extreme.concurrent,
        pull: extreme.pull_direction,
        slew_rad: extreme.slew_rad,
        weight_factor,
    };
    match result.sets.iter_mut().find(|known| known.component == component && known.sense == set.sense) {
        Some(known) if beyond(set.sense, set.value, known.value) => *known = set,
        Some(_) => {}
        None => result.sets.push(set),
    }
}

fn keep_brace(result: &mut CombinationResult, envelope: &Envelope) {
    let force = |end| {
        envelope.get(Part::Axial, end).map(|extreme| ForceExtreme {
            value: extreme.value,
            pull: extreme.pull_direction,
            slew_rad: extreme.slew_rad,
        })
    };
    let (Some(most), Some(least)) = (force(End::Max), force(End::Min)) else { return };
    let kept = result.brace_axial.get_or_insert([most, least]);
    if most.value > kept[0].value {
        kept[0] = most;
    }
    if least.value < kept[1].value {
        kept[1] = least;
    }
}

fn keep_foot(result: &mut CombinationResult, envelope: &Envelope) {
    for extreme in &envelope.extremes {
        let Some(component) = component(extreme.component) else { continue };
        let [x, y, z, ..] = extreme.concurrent;
        let made = FootExtreme {
            component,
            sense: sense(extreme.sense),
            value: extreme.value,
            concurrent: glam::DVec3::new(x, y, z),
            pull: extreme.pull_direction,
            slew_rad: extreme.slew_rad,
        };
        match result.foot.iter_mut().find(|known| known.component == component && known.sense == made.sense) {
            Some(known) if beyond(made.sense, made.value, known.value) => *known = made,
            Some(_) => {}
            None => result.foot.push(made),
        }
    }
}

/// The smallest critical load factor at the design level; none where nothing could be looked at.
fn least_alpha_cr(model: &UnitModel, searched: &[(usize, Actions)]) -> Option<f64> {
    let heaviest = searched.iter().map(|(_, actions)| {
        let pull = actions.pulls.iter().map(|pull| pull.tension_n).sum::<f64>();
        (pull, actions.weight_factor, actions)
    });
    // Larger pulls and weight along the same directions press more: the heaviest case has the smallest factor.
    let (_, _, actions) = heaviest.max_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)))?;
    alpha_cr(model, actions).ok()
}

/// A joint with its name and what holds it.
type AskedJoint = (Joint, &'static str, Retention);

/// The joints of a unit.
fn joints_of(unit: &ResolvedUnit) -> Vec<AskedJoint> {
    let mut asked = vec![
        (Joint::ArmOnMast, "arm on mast", unit.arm.retention),
        (Joint::MastOnBase, "mast in socket", unit.mast.retention),
    ];
    if let Some(brace) = &unit.brace {
        asked.push((Joint::BraceUpper, "upper pin of the brace", brace.retention));
        asked.push((Joint::BraceLower, "lower pin of the brace", brace.retention));
    }
    asked
}

/// The largest uplift of a joint at the design level.
fn worst_uplift(
    model: &UnitModel,
    &(joint, name, held_by): &AskedJoint,
    range: &SlewRange,
    searched: &[(usize, Actions)],
) -> Option<JointUse> {
    let mut worst: Option<JointUse> = None;
    for (index, actions) in searched {
        let Ok(Some(extreme)) = joint_uplift(model, joint, actions, range) else { continue };
        if worst.as_ref().is_none_or(|known| extreme.value > known.uplift_n) {
            worst = Some(JointUse { joint: name, held_by, uplift_n: extreme.value, combination: *index });
        }
    }
    worst
}
