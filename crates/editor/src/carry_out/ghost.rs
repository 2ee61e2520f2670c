//! The ghost of the unit in hand: the plan as it would be after a click, and which make-up is in hand.

use std::sync::Arc;

use gantline_plan::assess::{Assessment, Tally};
use gantline_plan::catalog::MakeUp;
use gantline_plan::change::{Change, apply};
use gantline_plan::document::{EdgeId, Plan, Standing, ThingId};

use super::gesture;
use crate::app::App;
use crate::session::Ghost;
use crate::tools::ToolKind;
use crate::tools::gesture::in_steps;

/// Shows the plan as it would be, or takes the ghost away.
pub fn show(app: &mut App, change: Option<Change>) {
    let Some(change) = change else {
        app.session.ghost = None;
        return;
    };
    let Some(document) = &app.document else {
        return;
    };
    let settled = Arc::clone(document.settled());
    if let Some(edge) = edge_of(&change)
        && !app.session.hand.chosen
        && app.session.hand.for_edge != Some(edge)
    {
        choose_for(app, &settled, edge, &change);
        gesture::renew(app);
        return;
    }
    match apply(&settled, &change) {
        Ok(applied) => {
            let serial = app.session.ghost.as_ref().map_or(0, |ghost| ghost.serial + 1);
            let thing = applied.made.first().copied();
            app.session.ghost = Some(Ghost { plan: Arc::new(applied.plan), thing, serial });
        }
        Err(_) => app.session.ghost = None,
    }
}

/// Takes the ghost away, as the plan below it is about to change.
pub fn drop(app: &mut App) {
    app.session.ghost = None;
}

/// Shows the ghost anew after the plan has changed.
pub fn renew(app: &mut App) {
    if app.session.tool.kind() == ToolKind::Unit {
        gesture::renew(app);
    }
}

/// The unit tool was taken: a make-up is in hand from the beginning.
pub fn begin(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let hand = &mut app.session.hand;
    hand.make_up = hand.make_up_or_first(document.plan());
    if hand.make_up.is_none() {
        "The plan has no family of parts to place.".clone_into(&mut app.session.said);
    }
    gesture::renew(app);
}

/// Someone chose a make-up.
pub fn take_in_hand(app: &mut App, make_up: MakeUp) {
    app.session.hand.make_up = Some(make_up);
    app.session.hand.chosen = true;
    renew(app);
}

fn edge_of(change: &Change) -> Option<EdgeId> {
    match change {
        Change::Place { stands: Standing::OnEdge { edge, .. }, .. } => Some(*edge),
        _ => None,
    }
}

/// Further back than the least setback, m: where a parapet or a stand-off asks for it.
const FURTHER_BACK_M: [f64; 5] = [0.0, 0.15, 0.30, 0.50, 0.80];

/// Takes in hand the first listed make-up without a blocking finding at this place, else the one with the fewest.
fn choose_for(app: &mut App, plan: &Arc<Plan>, edge: EdgeId, place: &Change) {
    let Change::Place { stands: Standing::OnEdge { station, turn_rad, .. }, .. } = place else {
        return;
    };
    app.session.hand.for_edge = Some(edge);
    let mut best: Option<(usize, usize, MakeUp, f64)> = None;
    let make_ups: Vec<MakeUp> = plan.families.iter().flat_map(|(&id, family)| family.make_ups(id)).collect();
    'search: for make_up in make_ups {
        app.session.hand.make_up = Some(make_up.clone());
        app.session.hand.setback_m = None;
        let least_m = app.session.hand.setback_m(plan, Some(edge));
        for further_m in FURTHER_BACK_M {
            let setback_m = in_steps(least_m + further_m, 0.001);
            let stands = Standing::OnEdge { edge, station: *station, setback_m, turn_rad: *turn_rad };
            let Some((blocking, caution)) = tried(app, plan, &make_up, stands) else {
                continue;
            };
            if best.as_ref().is_none_or(|found| (blocking, caution) < (found.0, found.1)) {
                best = Some((blocking, caution, make_up.clone(), setback_m));
            }
            if blocking == 0 {
                break 'search;
            }
        }
    }
    if let Some((blocking, _, make_up, setback_m)) = best {
        app.session.hand.make_up = Some(make_up);
        app.session.hand.setback_m = Some(setback_m);
        if blocking > 0 {
            let words = "No make-up of the plan's families stands here without a blocking finding.";
            words.clone_into(&mut app.session.said);
        }
    }
}

/// Blocking findings and cautions of a unit that stands there.
fn tried(app: &mut App, plan: &Plan, make_up: &MakeUp, stands: Standing) -> Option<(usize, usize)> {
    let change = Change::Place { make_up: make_up.clone(), stands, tag: None };
    let applied = apply(plan, &change).ok()?;
    let Some(ThingId::Placement(id)) = applied.made.first().copied() else {
        return None;
    };
    let assessment: Assessment = app.assessed.tried(&applied.plan);
    let tally = Tally::of(&assessment.units.get(&id)?.checks);
    Some((tally.blocking, tally.caution))
}
