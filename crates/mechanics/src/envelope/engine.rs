//! Extremes of observed numbers: the states of the brace at every slew, each searched, the best reported.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use super::actions::{Actions, FootCase};
use super::case::{BraceState, Case};
use super::extreme::{Causes, Component, Extreme, Sense, Slack};
use super::fault::EnvelopeFault;
use super::hunt::{Found, Hunt};
use super::observed::{BraceAxial, Observed};
use super::prepared::Prepared;
use super::rows::Rows;
use super::search::within_turn;
use super::slews::Slews;
use crate::unit::{UnitModel, turned};

/// A brace pressed by no more than this is not pressed: rounding of kilonewtons, N.
const SLACK_N: f64 = 1e-6;

/// In which axes components are reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Axes {
    Structure,
    Arm,
}

/// What makes a component of the N numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// One of them.
    Row(usize),
    /// hypot of this one and the next.
    Resultant(usize),
}

/// Cases by the bits of their slew.
type Seen<const N: usize> = RefCell<HashMap<u64, Rc<[Case<N>]>>>;

/// A search for extremes of what is observed.
pub(super) struct Engine<'a, const N: usize, O> {
    pub prepared: &'a Prepared<'a>,
    observed: O,
    pub axes: Axes,
    pub slews: Slews,
    plan: BracePlan,
    /// The cases, where they are the same at every slew.
    same: Option<Rc<[Case<N>]>>,
    /// The cases at slews that were looked at before: with the foot, and with the foot lost.
    seen: [Seen<N>; 2],
    /// Directions of resultants that were searched before, with their first row and states.
    pub longest: RefCell<Vec<(usize, &'static [BraceState], f64)>>,
}

/// Which states of the brace count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct BracePlan {
    /// It goes slack somewhere, so both states are looked at.
    pub two_states: bool,
    pub may_lose_foot: bool,
}

impl<'a, const N: usize, O: Observed<N>> Engine<'a, N, O> {
    pub fn new(
        prepared: &'a Prepared<'a>,
        observed: O,
        axes: Axes,
        slews: Slews,
        plan: BracePlan,
    ) -> Result<Self, EnvelopeFault> {
        let mut engine = Self {
            prepared,
            observed,
            axes,
            slews,
            plan,
            same: None,
            seen: <[Seen<N>; 2]>::default(),
            longest: RefCell::default(),
        };
        let cases_turn = plan.two_states && prepared.is_cut();
        if prepared.turns_with_the_arm() && !cases_turn {
            engine.same = Some(engine.footed_at(engine.slews.any())?.into());
        }
        Ok(engine)
    }

    /// The extreme of a component; `None` if no state holds at any slew.
    pub fn extreme(&self, component: Component, part: Part, sense: Sense) -> Result<Option<Extreme>, EnvelopeFault> {
        let mut best: Option<Extreme> = None;
        for states in self.plan.hunts() {
            let Some(found) = Hunt::new(self, states).find(part, sense)? else {
                continue;
            };
            let extreme = self.report(component, part, sense, found);
            let beats = |other: &Extreme| match sense {
                Sense::Max => extreme.value > other.value,
                Sense::Min => extreme.value < other.value,
            };
            if best.as_ref().is_none_or(beats) {
                best = Some(extreme);
            }
        }
        Ok(best)
    }

    /// Whether all answers in these states turn with the arm and no cone is cut: then a slew only turns
    /// components.
    pub fn turns_freely(&self, states: &[BraceState]) -> bool {
        let footless = states == [BraceState::FootLost] && self.prepared.loads_turn_with_the_arm();
        !self.prepared.is_cut() && (self.same.is_some() || footless)
    }

    fn report(&self, component: Component, part: Part, sense: Sense, found: Found<N>) -> Extreme {
        let mut numbers = found.numbers;
        if self.axes == Axes::Structure {
            turn(&mut numbers, found.slew);
        }
        let value = match part {
            Part::Row(row) => numbers[row],
            Part::Resultant(row) => numbers[row].hypot(numbers[row + 1]),
        };
        let mut concurrent = [0.0; 6];
        concurrent[..N].copy_from_slice(&numbers);
        let to_structure = glam::DVec2::from_angle(found.slew);
        let pulls_n: Vec<_> = found.state.pulls_n.iter().map(|p| turned(*p, found.slew)).collect();
        Extreme {
            component,
            sense,
            value,
            concurrent,
            pull_direction: pulls_n.iter().find_map(|p| p.try_normalize()),
            slew_rad: if self.slews == Slews::Turn { within_turn(found.slew) } else { found.slew },
            causes: Causes {
                pulls_n,
                second_legs_n: found.state.legs_n,
                wind: to_structure.rotate(found.state.wind),
                tether: to_structure.rotate(found.state.tether),
                foot_lost: found.brace == BraceState::FootLost,
                brace_slack: found.brace == BraceState::Slack,
            },
        }
    }

    /// All states of the brace at a slew.
    pub fn cases(&self, slew: f64) -> Result<Rc<[Case<N>]>, EnvelopeFault> {
        let footed = self.footed(slew)?;
        if !self.plan.may_lose_foot {
            return Ok(footed);
        }
        let lost = self.footless(slew)?;
        Ok(footed.iter().chain(lost.iter()).cloned().collect())
    }

    /// The states at a slew in which the brace's foot, if it has one, holds.
    pub fn footed(&self, slew: f64) -> Result<Rc<[Case<N>]>, EnvelopeFault> {
        if let Some(cases) = &self.same {
            return Ok(Rc::clone(cases));
        }
        remembered(&self.seen[0], slew, || self.footed_at(slew))
    }

    /// The state at a slew in which the foot is lost.
    pub fn footless(&self, slew: f64) -> Result<Rc<[Case<N>]>, EnvelopeFault> {
        remembered(&self.seen[1], slew, || {
            let lost = self.without_brace(slew, BraceState::FootLost, None)?;
            Ok(vec![lost.ok_or(EnvelopeFault::FallsWithoutFoot)?])
        })
    }

    fn footed_at(&self, slew: f64) -> Result<Vec<Case<N>>, EnvelopeFault> {
        let braced = self.prepared.model.influence(slew)?;
        let rows = self.prepared.rows(&braced, &self.observed)?;
        let mut cases = vec![Case { rows, condition: None, brace: BraceState::Holds }];
        if self.plan.two_states {
            let axial = self.prepared.rows(&braced, &BraceAxial)?;
            if self.prepared.support(&axial, &[-1.0], slew) > SLACK_N {
                // Where the foot may be lost, the unit without its brace is looked at under no condition at all.
                if !self.plan.may_lose_foot {
                    cases.extend(self.without_brace(slew, BraceState::Slack, Some(axial.along(&[-1.0])))?);
                }
                cases[0].condition = Some(axial);
            }
        }
        Ok(cases)
    }

    /// `None` if the unit doesn't stand so.
    fn without_brace(
        &self,
        slew: f64,
        brace: BraceState,
        condition: Option<Rows<1>>,
    ) -> Result<Option<Case<N>>, EnvelopeFault> {
        let Some(at) = self.prepared.model.influence_without_brace(slew) else {
            return Ok(None);
        };
        Ok(Some(Case { rows: self.prepared.rows(&at, &self.observed)?, condition, brace }))
    }
}

/// What was found at a slew before, or is found now and kept.
fn remembered<const N: usize>(
    seen: &Seen<N>,
    slew: f64,
    find: impl FnOnce() -> Result<Vec<Case<N>>, EnvelopeFault>,
) -> Result<Rc<[Case<N>]>, EnvelopeFault> {
    if let Some(cases) = seen.borrow().get(&slew.to_bits()) {
        return Ok(Rc::clone(cases));
    }
    let cases: Rc<[Case<N>]> = find()?.into();
    seen.borrow_mut().insert(slew.to_bits(), Rc::clone(&cases));
    Ok(cases)
}

impl BracePlan {
    /// Which states are searched at once. Where two meet, their best has kinks that a search may stumble
    /// over; one by itself may hold only in a narrow range of slew that a search may step over. So where
    /// there are two, both ways are gone.
    const fn hunts(self) -> &'static [&'static [BraceState]] {
        use BraceState::{FootLost, Holds, Slack};
        match (self.two_states, self.may_lose_foot) {
            (false, false) => &[&[Holds]],
            (_, true) => &[&[Holds], &[FootLost]],
            (true, false) => &[&[Holds, Slack], &[Holds], &[Slack]],
        }
    }
}

/// Components in arm axes become components in structure axes.
fn turn(numbers: &mut [f64], slew: f64) {
    let (sin, cos) = slew.sin_cos();
    for triple in numbers.chunks_exact_mut(3) {
        let (x, y) = (triple[0], triple[1]);
        triple[0] = cos * x - sin * y;
        triple[1] = sin * x + cos * y;
    }
}

/// Which states of the brace count, and whether it goes slack: looked at once, by the least axial
/// force that the brace would have if it could be pressed.
pub(super) fn brace_plan(
    model: &UnitModel,
    actions: &Actions,
    prepared: &Prepared<'_>,
    slews: &Slews,
) -> Result<(BracePlan, Slack), EnvelopeFault> {
    let has_foot = model.depends_on_slew();
    let mut plan = BracePlan { two_states: false, may_lose_foot: has_foot && actions.foot == FootCase::HoldsOrLost };
    if !model.unit().brace.pulls_only() {
        return Ok((plan, Slack::Never));
    }
    let one_state = BracePlan { two_states: false, may_lose_foot: false };
    let engine = Engine::new(prepared, BraceAxial, Axes::Arm, slews.clone(), one_state)?;
    let least = engine.extreme(Component::Axial, Part::Row(0), Sense::Min)?;
    let Some(least) = least.filter(|e| e.value < -SLACK_N) else {
        return Ok((plan, Slack::Never));
    };
    plan.two_states = true;
    let (slew_rad, axial_n) = (least.slew_rad, least.value);
    let stands = model.influence_without_brace(slew_rad).is_some();
    let slack =
        if stands { Slack::StandsWithout { slew_rad, axial_n } } else { Slack::Mechanism { slew_rad, axial_n } };
    Ok((plan, slack))
}
