//! Of the states that a search found those that can govern at some place: the worst by each of many measures that no place
//! changes. Where a base stands they are judged by the code, and the search goes on from the worst of them.

use std::collections::BTreeSet;
use std::f64::consts::TAU;

use gantline_mechanics::anchorage::GroupActions;
use glam::DVec2;

use super::states::State;

/// Directions in the plate that are looked in: edges may lie in any.
const DIRECTIONS: u32 = 16;
/// So many of the worst by each measure are kept.
const EACH: usize = 3;

/// The states worth judging, in their order; those that nothing resists all.
pub(super) fn worth_judging(states: Vec<State>, anchors_m: &[[f64; 2]]) -> Vec<State> {
    let mut kept: BTreeSet<usize> = (0..states.len()).filter(|&at| states[at].anchors.is_none()).collect();
    let acting: Vec<(usize, &GroupActions)> =
        states.iter().enumerate().filter_map(|(at, state)| Some((at, state.anchors.as_ref()?))).collect();
    let mut keep = |measure: &dyn Fn(&GroupActions) -> f64| {
        let mut order: Vec<(f64, usize)> = acting.iter().map(|&(at, actions)| (measure(actions), at)).collect();
        let by_measure = |a: &(f64, usize), b: &(f64, usize)| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1));
        if order.len() > EACH {
            order.select_nth_unstable_by(EACH, by_measure);
        }
        kept.extend(order.into_iter().take(EACH).map(|(_, at)| at));
    };
    keep(&GroupActions::total_tension_n);
    for anchor in 0..anchors_m.len() {
        keep(&|actions| actions.tension_n[anchor]);
        keep(&|actions| actions.shear_of_n(anchor));
        keep(&|actions| actions.tension_n[anchor] + actions.shear_of_n(anchor));
    }
    for step in 0..DIRECTIONS {
        let way = DVec2::from_angle(TAU * f64::from(step) / f64::from(DIRECTIONS));
        let along = |at: [f64; 2]| DVec2::from(at).dot(way);
        let pulled = |actions: &GroupActions| {
            actions.tension_n.iter().zip(anchors_m).map(|(tension, &at)| tension * along(at)).sum::<f64>()
        };
        let pushed = |actions: &GroupActions| along(actions.total_shear_n());
        let reach = anchors_m.iter().map(|&at| along(at)).fold(f64::MIN_POSITIVE, f64::max);
        keep(&pulled);
        keep(&pushed);
        // Both at once, as where anchors near an edge are pulled and pushed over it.
        keep(&|actions| pulled(actions) / reach + pushed(actions));
        keep(&|actions| actions.total_tension_n() + 2.0 * pushed(actions));
    }
    let mut at = 0;
    let mut states = states;
    states.retain(|_| {
        at += 1;
        kept.contains(&(at - 1))
    });
    states
}
