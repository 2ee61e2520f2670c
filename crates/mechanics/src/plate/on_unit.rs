//! From what may act on a unit to the worst that it does to the plate of its base.

use std::f64::consts::TAU;

use super::axes::PlateAxes;
use super::covered::uncovered;
use super::looks;
use super::search::{Candidate, Judge, Search, Searched};
use super::solve::PreparedPlate;
use crate::envelope::{Actions, ActionsOnBase, Causes, EnvelopeFault, OnBase, Slack, SlewRange, StateOnBase};
use crate::unit::UnitModel;
use crate::wrench::Wrench;

/// A unit with all that may act on it, seen from the plate of its base.
///
/// Ropes at one point count as one rope with their summed tension, in the widest of their cones; ropes at different points
/// are each turned by themselves. Wind and tether blow and pull from every side. A brace with a foot of its own counts in
/// place, with its foot lost and, where it only pulls, slack, as in [`crate::envelope`].
pub struct UnitOnPlate<'a> {
    axes: PlateAxes,
    /// What each component on the base does to the plate.
    columns: [Wrench; 6],
    /// Of each set of actions that counts, with its index in the list that was given.
    sets: Vec<(usize, ActionsOnBase<'a>)>,
    given: usize,
}

impl<'a> UnitOnPlate<'a> {
    /// Checks everything and leaves out each set of actions that does nothing that another one doesn't do and more.
    ///
    /// So judges must not tell sets of actions apart: what is judged by other measures is another search.
    pub fn new(
        model: &'a UnitModel,
        actions: &'a [Actions],
        slews: &SlewRange,
        axes: PlateAxes,
    ) -> Result<Self, EnvelopeFault> {
        if let Some((field, value)) = axes.not_finite() {
            return Err(EnvelopeFault::Number { field: field.to_owned(), value });
        }
        let sets = actions.iter().map(|set| ActionsOnBase::new(model, set, slews));
        let sets = sets.collect::<Result<Vec<_>, _>>()?;
        let counts = uncovered(&sets, model.unit().mast_height_m)?;
        let sets = sets.into_iter().enumerate().filter(|(index, _)| counts.contains(index)).collect();
        Ok(Self { axes, columns: axes.columns(), sets, given: actions.len() })
    }

    /// Which of the sets of actions are looked at, by their index in the list that was given.
    pub fn looked_at(&self) -> impl Iterator<Item = usize> {
        self.sets.iter().map(|set| set.0)
    }

    /// Whether a brace with a foot of its own goes slack under any of the sets that are looked at: the worst that is known.
    #[must_use]
    pub fn slack(&self) -> Slack {
        let rank = |slack: &Slack| match slack {
            Slack::Never => 0,
            Slack::StandsWithout { .. } => 1,
            Slack::Mechanism { .. } => 2,
        };
        self.sets.iter().map(|set| set.1.slack()).max_by_key(rank).unwrap_or(Slack::Never)
    }

    /// Searches for what each judge calls worst over all actions.
    ///
    /// Errors: a foot that can't be lost, a leg that ends at its own point at some slew.
    pub fn search(&self, plate: &PreparedPlate, judges: &[&Judge<'_>]) -> Result<Searched, EnvelopeFault> {
        let mut search = Search::new(self, plate)?;
        looks::around(&mut search)?;
        for judge in judges {
            search.refine(judge)?;
        }
        Ok(search.searched(judges))
    }

    /// Goes on from what was solved before for another judge, as the concrete at another place: judges all of it, climbs from
    /// the worst with at most `more` solutions, and gives the worst, kept or new, with its value.
    pub fn worst_for(
        &self,
        plate: &PreparedPlate,
        kept: &[Candidate],
        judge: &Judge<'_>,
        more: usize,
    ) -> Result<Option<(Candidate, f64)>, EnvelopeFault> {
        Search::new(self, plate)?.worst_for(kept, judge, more)
    }

    /// The action on the plate, in its axes, that a set of actions makes at a slew with these causes; none where that set is
    /// not looked at, or nothing holds the unit so.
    pub fn action(&self, actions: usize, slew_rad: f64, causes: &Causes) -> Result<Option<Wrench>, EnvelopeFault> {
        let Some((_, set)) = self.sets.iter().find(|set| set.0 == actions) else { return Ok(None) };
        let state = set.on_base()?.again(causes, slew_rad)?;
        Ok(state.map(|state| self.axes.action(state.action)))
    }

    /// How many sets of actions were given.
    #[must_use]
    pub const fn given(&self) -> usize {
        self.given
    }

    pub(super) fn answers(&self) -> Result<Vec<(usize, OnBase<'_>)>, EnvelopeFault> {
        self.sets.iter().map(|(index, set)| Ok((*index, set.on_base()?))).collect()
    }

    pub(super) fn slews(&self, count: usize) -> Vec<f64> {
        self.sets.first().map(|set| set.1.spread(count)).unwrap_or_default()
    }

    pub(super) fn on_plate(&self, state: &StateOnBase) -> Wrench {
        self.axes.action(state.action)
    }

    /// The weights on the base of a weighted sum of the components on the plate.
    pub(super) fn weights_on_base(&self, on_plate: Wrench) -> Wrench {
        Wrench::from_six(self.columns.each_ref().map(|column| column.dot(&on_plate)))
    }
}

/// The weights of the moment that presses a plate toward the direction `side_rad` from its x.
pub(super) fn tilting(side_rad: f64) -> Wrench {
    let (sin, cos) = side_rad.rem_euclid(TAU).sin_cos();
    Wrench::from_six([0.0, 0.0, 0.0, -sin, cos, 0.0])
}
