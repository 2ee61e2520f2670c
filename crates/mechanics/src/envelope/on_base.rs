//! All that may act on a unit's base under one set of actions, state by state, for whoever asks more than single extremes.
//!
//! A state is a slew, what has become of the brace, and what pulls and blows. It is found as the one that makes most of a
//! weighted sum of the six components, or by moving another one a little.

use std::f64::consts::{PI, TAU};

use glam::{DMat3, DVec2, DVec3};

use super::actions::{Actions, SlewRange};
use super::case::{BraceState, Case};
use super::engine::{Axes, BracePlan, Engine, brace_plan};
use super::extreme::{Causes, Slack};
use super::fault::EnvelopeFault;
use super::joined::JoinedPulls;
use super::observed::Base;
use super::prepared::Prepared;
use super::slews::Slews;
use super::state::State;
use crate::unit::{UnitModel, turned};
use crate::wrench::Wrench;

/// How far below 0 what a state of the brace asks for may be by rounding, N.
const ROUNDING_N: f64 = 1e-6;
/// Slews to a whole turn at which a sum is looked at before its top is sought.
const GRID: usize = 12;
/// How many parabolas are laid over the best of them, each so many times closer.
const PARABOLAS: usize = 2;
const CLOSER: f64 = 0.2;

/// One set of actions, checked, with its ropes joined at their points.
pub(crate) struct ActionsOnBase<'a> {
    prepared: Prepared<'a>,
    joined: JoinedPulls,
    slews: Slews,
    plan: BracePlan,
    slack: Slack,
}

/// The answers of the base to one set of actions, remembered slew by slew.
pub(crate) struct OnBase<'e> {
    actions: &'e ActionsOnBase<'e>,
    engine: Engine<'e, 6, Base>,
}

/// A way in which a state can be moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Way {
    /// The whole picture about the mast axis, rad.
    Turn,
    /// The arm alone.
    Slew,
    /// One of the joined ropes across its own vertical plane.
    Across(usize),
    /// One of them up in that plane.
    Up(usize),
    /// Wind and tether about the mast axis.
    Aside,
}

/// A state with the action on the base, structure axes.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct StateOnBase {
    pub slew_rad: f64,
    pub causes: Causes,
    pub action: Wrench,
}

impl<'a> ActionsOnBase<'a> {
    pub fn new(model: &'a UnitModel, actions: &'a Actions, range: &SlewRange) -> Result<Self, EnvelopeFault> {
        let slews = Slews::new(range, model)?;
        // The pulls as given are checked before they are joined, so that a fault names the right one.
        Prepared::new(model, actions)?;
        let joined = JoinedPulls::new(&actions.pulls);
        let prepared = Prepared::of_pulls(model, actions, &joined.pulls)?;
        // Only a brace with a foot of its own takes anything off the base.
        let (plan, slack) = if model.depends_on_slew() {
            brace_plan(model, actions, &prepared, &slews)?
        } else {
            (BracePlan { two_states: false, may_lose_foot: false }, Slack::Never)
        };
        Ok(Self { prepared, joined, slews, plan, slack })
    }

    /// Whether a brace with a foot of its own goes slack.
    pub const fn slack(&self) -> Slack {
        self.slack
    }

    pub fn on_base(&self) -> Result<OnBase<'_>, EnvelopeFault> {
        let engine = Engine::new(&self.prepared, Base, Axes::Structure, self.slews.clone(), self.plan)?;
        Ok(OnBase { actions: self, engine })
    }

    /// Slews spread over the range, `count` to a whole turn.
    pub fn spread(&self, count: usize) -> Vec<f64> {
        self.slews.spread(count)
    }

    fn state_of(&self, causes: &Causes, slew: f64) -> State {
        let pulls_n = self.joined.together(&causes.pulls_n).into_iter().map(|pull| turned(pull, -slew)).collect();
        let to_arm = DVec2::from_angle(-slew);
        let leg = |index: usize| self.joined.leg_n(index, &causes.second_legs_n);
        State {
            pulls_n,
            legs_n: (0..self.joined.pulls.len()).map(leg).collect(),
            wind: to_arm.rotate(causes.wind),
            tether: to_arm.rotate(causes.tether),
        }
    }

    fn causes_of(&self, state: &State, slew: f64, brace: BraceState) -> Causes {
        let pulls: Vec<DVec3> = state.pulls_n.iter().map(|pull| turned(*pull, slew)).collect();
        let to_structure = DVec2::from_angle(slew);
        Causes {
            pulls_n: self.joined.apart(&pulls),
            second_legs_n: self.joined.legs_apart(&state.legs_n),
            wind: to_structure.rotate(state.wind),
            tether: to_structure.rotate(state.tether),
            foot_lost: brace == BraceState::FootLost,
            brace_slack: brace == BraceState::Slack,
        }
    }
}

impl OnBase<'_> {
    /// For each state of the brace that can be at a slew, what makes most of the weighted sum of (Fx, Fy, Fz, Mx, My, Mz) in
    /// structure axes.
    pub fn toward(&self, weights: Wrench, slew: f64) -> Result<Vec<StateOnBase>, EnvelopeFault> {
        let weights = weights.slewed(-slew).six();
        let cases = self.engine.cases(slew)?;
        let state = |case: &Case<6>| {
            let state = case.state(&self.actions.prepared, &weights, slew)?;
            Some(self.written(case, &state, slew))
        };
        Ok(cases.iter().filter_map(state).collect())
    }

    /// The state of one brace case that makes most of the weighted sum, at the best slew of all, or of those within a reach of
    /// one. The slew is found on a grid and by parabolas: near enough for whoever judges what it finds.
    pub fn greatest(
        &self,
        weights: Wrench,
        foot_lost: bool,
        around: Option<(f64, f64)>,
    ) -> Result<Option<StateOnBase>, EnvelopeFault> {
        let slews = match around {
            None => self.actions.slews.clone(),
            Some((slew, reach)) => self.actions.slews.around(slew, reach),
        };
        let support = |slew: f64| -> Result<f64, EnvelopeFault> {
            let own = weights.slewed(-slew).six();
            let of = |case: &Case<6>| case.support(&self.actions.prepared, &own, slew, f64::NEG_INFINITY);
            let value = self.cases_where(foot_lost, slew)?.iter().filter_map(of).reduce(f64::max);
            Ok(value.unwrap_or(f64::NEG_INFINITY))
        };
        let first: Vec<f64> = match around {
            None => slews.spread(GRID),
            Some((_, reach)) => slews.spread((1.5 * TAU / reach).ceil() as usize),
        };
        let mut best = (0.0, f64::NEG_INFINITY);
        for slew in first {
            let value = support(slew)?;
            if value > best.1 {
                best = (slew, value);
            }
        }
        if best.1 == f64::NEG_INFINITY {
            return Ok(None);
        }
        let mut step = around.map_or(TAU / GRID as f64, |(_, reach)| reach / 2.0);
        for _ in 0..PARABOLAS {
            let [back, ahead] = [slews.moved(best.0, -step), slews.moved(best.0, step)];
            let (below, above) = (support(back)?, support(ahead)?);
            let bend = 2.0 * best.1 - below - above;
            let top = if bend > 0.0 { (0.5 * (above - below) / bend).clamp(-1.0, 1.0) } else { 0.0 };
            let vertex = slews.moved(best.0, top * step);
            for (slew, value) in [(back, below), (ahead, above), (vertex, support(vertex)?)] {
                if value > best.1 {
                    best = (slew, value);
                }
            }
            step *= CLOSER;
        }
        let slew = best.0;
        let own = weights.slewed(-slew).six();
        let mut worst: Option<(f64, StateOnBase)> = None;
        for case in self.cases_where(foot_lost, slew)?.iter() {
            let Some(state) = case.state(&self.actions.prepared, &own, slew) else { continue };
            let state = self.written(case, &state, slew);
            let value = weights.dot(&state.action);
            if worst.as_ref().is_none_or(|known| value > known.0) {
                worst = Some((value, state));
            }
        }
        Ok(worst.map(|found| found.1))
    }

    fn cases_where(&self, foot_lost: bool, slew: f64) -> Result<std::rc::Rc<[Case<6>]>, EnvelopeFault> {
        if foot_lost { self.engine.footless(slew) } else { self.engine.footed(slew) }
    }

    /// A state on the way from one to another under the same set of actions, at a share of it; none where that can't be. Ropes
    /// that are slack at either end are so up to there.
    pub fn between(
        &self,
        from: &StateOnBase,
        to: &StateOnBase,
        share: f64,
    ) -> Result<Option<StateOnBase>, EnvelopeFault> {
        let gap = (to.slew_rad - from.slew_rad + PI).rem_euclid(TAU) - PI;
        let slew = self.actions.slews.moved(from.slew_rad, gap * share);
        let mut state = self.actions.state_of(&from.causes, slew);
        let other = self.actions.state_of(&to.causes, slew);
        for (index, (pull, other)) in state.pulls_n.iter_mut().zip(&other.pulls_n).enumerate() {
            let (here, there) = (pull.length(), other.length());
            if here > 0.0 && there > 0.0 {
                let tension = here + (there - here) * share;
                let toward = (*pull / here) * (1.0 - share) + (*other / there) * share;
                *pull = self.actions.prepared.nearest(index, toward, slew) * tension;
            }
        }
        for (leg, other) in state.legs_n.iter_mut().zip(&other.legs_n) {
            *leg += (other - *leg) * share;
        }
        let turned_part = |from: DVec2, to: DVec2| {
            if from == DVec2::ZERO || to == DVec2::ZERO {
                return from;
            }
            DVec2::from_angle(from.angle_to(to) * share).rotate(from)
        };
        state.wind = turned_part(state.wind, other.wind);
        state.tether = turned_part(state.tether, other.tether);
        self.evaluated(&state, slew, from.causes.foot_lost)
    }

    /// The same with every rope pulling the least that it may; empty where there are no ropes, as [`OnBase::toward`] has it all.
    pub fn toward_unloaded(&self, weights: Wrench, slew: f64) -> Result<Vec<StateOnBase>, EnvelopeFault> {
        let mut states = Vec::new();
        if self.actions.joined.pulls.is_empty() {
            return Ok(states);
        }
        let weights = weights.slewed(-slew).six();
        for case in self.engine.cases(slew)?.iter() {
            let state = self.actions.prepared.state(&case.rows, &weights, slew);
            let state = self.actions.prepared.slackened(state);
            states.extend(self.evaluated(&state, slew, case.brace == BraceState::FootLost)?);
        }
        Ok(states)
    }

    /// The greatest weighted sum at a slew; none where nothing holds the unit.
    pub fn support(&self, weights: Wrench, slew: f64) -> Result<Option<f64>, EnvelopeFault> {
        let weights = weights.slewed(-slew).six();
        let cases = self.engine.cases(slew)?;
        let support = |case: &Case<6>| case.support(&self.actions.prepared, &weights, slew, f64::NEG_INFINITY);
        Ok(cases.iter().filter_map(support).reduce(f64::max))
    }

    /// The state that these causes make at a slew; none where the brace can't be so, or nothing holds the unit.
    pub fn again(&self, causes: &Causes, slew: f64) -> Result<Option<StateOnBase>, EnvelopeFault> {
        self.evaluated(&self.actions.state_of(causes, slew), slew, causes.foot_lost)
    }

    /// The ways in which a state can be moved to others.
    pub fn ways(&self, of: &StateOnBase) -> Vec<Way> {
        let mut ways = Vec::with_capacity(5);
        let pulls = self.actions.joined.together(&of.causes.pulls_n);
        let beside = of.causes.wind != DVec2::ZERO || of.causes.tether != DVec2::ZERO;
        let pulled = |index: usize| pulls.get(index).is_some_and(|pull| *pull != DVec3::ZERO);
        if !matches!(self.actions.slews, Slews::At(_)) {
            if beside || (0..pulls.len()).any(pulled) {
                ways.push(Way::Turn);
            }
            ways.push(Way::Slew);
        }
        for index in (0..pulls.len()).filter(|index| pulled(*index)) {
            ways.extend([Way::Across(index), Way::Up(index)]);
        }
        if beside {
            ways.push(Way::Aside);
        }
        ways
    }

    /// A state moved by steps along its ways, rad; none where they lead nowhere or to what can't be.
    pub fn moved(&self, from: &StateOnBase, steps: &[(Way, f64)]) -> Result<Option<StateOnBase>, EnvelopeFault> {
        let by = |wanted: Way| -> f64 { steps.iter().filter(|step| step.0 == wanted).map(|step| step.1).sum() };
        let (turn, aside) = (by(Way::Turn), by(Way::Aside));
        let slew = self.actions.slews.moved(from.slew_rad, turn + by(Way::Slew));
        let mut causes = from.causes.clone();
        let mut moved = slew != from.slew_rad;
        for side in [&mut causes.wind, &mut causes.tether] {
            if *side != DVec2::ZERO && turn + aside != 0.0 {
                *side = DVec2::from_angle(turn + aside).rotate(*side);
                moved = true;
            }
        }
        let mut state = self.actions.state_of(&causes, slew);
        for (index, pull) in state.pulls_n.iter_mut().enumerate() {
            let before = turned(*pull, slew);
            let tension_n = before.length();
            if tension_n == 0.0 {
                continue;
            }
            let along = DMat3::from_rotation_z(turn) * (before / tension_n);
            let across = along.cross(DVec3::Z).try_normalize().unwrap_or(DVec3::X);
            let up = across.cross(along);
            let to = along + across * by(Way::Across(index)) + up * by(Way::Up(index));
            // The direction of the cone nearest to where the steps lead is the one that makes most of it.
            *pull = self.actions.prepared.nearest(index, turned(to, -slew), slew) * tension_n;
            moved |= turned(*pull, slew).distance_squared(before) > 1e-16 * tension_n * tension_n;
        }
        if moved { self.evaluated(&state, slew, causes.foot_lost) } else { Ok(None) }
    }

    fn evaluated(&self, state: &State, slew: f64, foot_lost: bool) -> Result<Option<StateOnBase>, EnvelopeFault> {
        let cases = self.cases_where(foot_lost, slew)?;
        let holds = |case: &&Case<6>| case.condition.as_ref().is_none_or(|c| c.of(state)[0] >= -ROUNDING_N);
        Ok(cases.iter().find(holds).map(|case| self.written(case, state, slew)))
    }

    fn written(&self, case: &Case<6>, state: &State, slew: f64) -> StateOnBase {
        StateOnBase {
            slew_rad: slew,
            causes: self.actions.causes_of(state, slew, case.brace),
            action: Wrench::from_six(case.rows.of(state)).slewed(slew),
        }
    }
}
