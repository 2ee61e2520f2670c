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
    let kept = {
        let mut measured = Measured::of(&states);
        measured.keep(State::pressure_pa);
        measured.keep(|state| state.action.force_n.z);
        measured.keep(|state| -state.action.force_n.z);
        measured.keep(total_tension_n);
        for anchor in 0..anchors_m.len() {
            measured.keep(|state| pulled_n(state, anchor));
            measured.keep(|state| sheared_n(state, anchor));
            measured.keep(|state| pulled_n(state, anchor) + sheared_n(state, anchor));
        }
        for step in 0..DIRECTIONS {
            measured.keep_toward(DVec2::from_angle(TAU * f64::from(step) / f64::from(DIRECTIONS)), anchors_m);
        }
        measured.kept
    };
    states.into_iter().enumerate().filter(|(at, _)| kept.contains(at)).map(|(_, state)| state).collect()
}

/// States that are measured, and which of them are kept.
struct Measured<'a> {
    states: Vec<(usize, &'a State)>,
    kept: BTreeSet<usize>,
}

impl<'a> Measured<'a> {
    fn of(states: &'a [State]) -> Self {
        let all = states.iter().enumerate();
        let (acting, unresisted): (Vec<_>, Vec<_>) = all.partition(|(_, state)| state.anchors.is_some());
        Self { states: acting, kept: unresisted.into_iter().map(|(at, _)| at).collect() }
    }

    /// Keeps the worst by a measure.
    fn keep(&mut self, measure: impl Fn(&State) -> f64) {
        let mut order: Vec<(f64, usize)> = self.states.iter().map(|&(at, state)| (measure(state), at)).collect();
        let by_measure = |a: &(f64, usize), b: &(f64, usize)| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1));
        if order.len() > EACH {
            order.select_nth_unstable_by(EACH, by_measure);
        }
        self.kept.extend(order.into_iter().take(EACH).map(|(_, at)| at));
    }

    /// Keeps what tilts, pulls and pushes most toward one side of the plate.
    fn keep_toward(&mut self, way: DVec2, anchors_m: &[[f64; 2]]) {
        let along = |at: [f64; 2]| DVec2::from(at).dot(way);
        let reach_m = anchors_m.iter().map(|&at| along(at)).fold(f64::MIN_POSITIVE, f64::max);
        let pulled = |state: &State| {
            anchors_m.iter().enumerate().map(|(anchor, &at)| pulled_n(state, anchor) * along(at)).sum::<f64>()
        };
        let pushed = |state: &State| state.action.force_n.truncate().dot(way);
        // A moment M_x, M_y presses toward (M_y, −M_x).
        self.keep(|state| DVec2::new(state.action.moment_nm.y, -state.action.moment_nm.x).dot(way));
        self.keep(pulled);
        self.keep(pushed);
        // Both at once, as where anchors near an edge are pulled and pushed over it.
        self.keep(|state| pulled(state) / reach_m + pushed(state));
        self.keep(|state| total_tension_n(state) + 2.0 * pushed(state));
    }
}

fn pulled_n(state: &State, anchor: usize) -> f64 {
    state.anchors.as_ref().and_then(|anchors| anchors.tension_n.get(anchor)).copied().unwrap_or(0.0)
}

fn sheared_n(state: &State, anchor: usize) -> f64 {
    let anchors = state.anchors.as_ref().filter(|anchors| anchor < anchors.shear_n.len());
    anchors.map_or(0.0, |anchors| anchors.shear_of_n(anchor))
}

fn total_tension_n(state: &State) -> f64 {
    state.anchors.as_ref().map_or(0.0, GroupActions::total_tension_n)
}
