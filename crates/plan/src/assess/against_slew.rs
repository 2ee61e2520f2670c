//! Reactions of one unit against its slew: for each combination the largest and smallest value of every component while
//! the arm stands at one slew and the rope pulls in any direction.

use std::f64::consts::PI;

use gantline_mechanics::envelope::{EnvelopeFault, SlewRange, base_envelope};
use gantline_mechanics::unit::UnitModel;

use super::actions_of::{CombinationActions, NoActions, actions_of};
use super::assessment::Assessment;
use super::lean::basis_for;
use super::reaction_phase::{component, sense};
use super::reactions::{Component, Sense};
use crate::basis::{LoadBasis, LoadLevel};
use crate::catalog::{ResolvedUnit, to_mechanics};
use crate::document::{PlacementId, Plan};
use crate::geometry::turns::Turns;

/// Slews are looked at in steps of at most this, rad (5°); the slews of the extremes are looked at beside them, so that
/// each curve reaches its extreme.
const STEP_RAD: f64 = PI / 36.0;

/// A combination against slew.
#[derive(Debug, Clone, PartialEq)]
pub struct AgainstSlew {
    /// Its index in the basis.
    pub combination: usize,
    /// Its name.
    pub name: String,
    /// Its level.
    pub level: LoadLevel,
    /// Stretches of loaded slew, each in rising order; or why there are none.
    pub stretches: Result<Vec<Vec<AtSlew>>, String>,
}

/// All components at one slew.
#[derive(Debug, Clone, PartialEq)]
pub struct AtSlew {
    /// The slew, in the base's axes.
    pub slew_rad: f64,
    /// The largest and smallest value of each component, N or N·m; of V and M the largest only.
    pub values: Vec<(Component, Sense, f64)>,
}

impl AtSlew {
    /// One of the values.
    pub fn value(&self, component: Component, sense: Sense) -> Option<f64> {
        self.values.iter().find(|value| (value.0, value.1) == (component, sense)).map(|value| value.2)
    }
}

/// Every combination of the basis against the slew of a unit; empty when the unit has no parts.
pub fn against_slew(plan: &Plan, assessment: &Assessment, id: PlacementId) -> Vec<AgainstSlew> {
    let Some(found) = assessment.units.get(&id) else { return Vec::new() };
    let Ok(unit) = &found.resolved else { return Vec::new() };
    let basis = basis_for(&plan.basis, found, assessment);
    let model = to_mechanics::unit(unit)
        .map_err(|fault| fault.to_string())
        .and_then(|described| UnitModel::new(&described).map_err(|fault| fault.to_string()));
    let extremes_at = |combination: usize| -> Vec<f64> {
        let result = found.reactions.as_ref().and_then(|reactions| reactions.combinations.get(combination));
        result.map_or_else(Vec::new, |result| result.sets.iter().map(|set| set.slew_rad).collect())
    };
    let of_combination = |(index, combined): (usize, &crate::basis::Combined)| AgainstSlew {
        combination: index,
        name: combined.name.clone(),
        level: combined.level,
        stretches: actions(unit, &basis, index).and_then(|actions| {
            let model = model.as_ref().map_err(Clone::clone)?;
            let slews = stretches(&found.loaded, &extremes_at(index));
            slews.into_iter().map(|slews| along(model, &actions, slews)).collect()
        }),
    };
    basis.combinations.iter().enumerate().map(of_combination).collect()
}

/// The actions of a combination, or why there are none.
pub(super) fn actions(unit: &ResolvedUnit, basis: &LoadBasis, index: usize) -> Result<CombinationActions, String> {
    let combined =
        basis.combinations.get(index).ok_or_else(|| format!("the basis has no combination {}", index + 1))?;
    actions_of(combined, basis, unit).map_err(|none| match none {
        NoActions::Missing(what) => format!("missing: {what}"),
        NoActions::DoesNotApply(why) => why,
    })
}

/// Slews to look at in each stretch.
fn stretches(loaded: &Turns, also: &[f64]) -> Vec<Vec<f64>> {
    let of_stretch = |turn: crate::geometry::turns::Turn| {
        let span = turn.to_rad - turn.from_rad;
        let steps = (span / STEP_RAD).ceil().max(1.0) as u32;
        let mut slews: Vec<f64> =
            (0..=steps).map(|step| turn.from_rad + span * f64::from(step) / f64::from(steps)).collect();
        let turned = |slew: &f64| turn.from_rad + (slew - turn.from_rad).rem_euclid(2.0 * PI);
        slews.extend(also.iter().map(turned).filter(|slew| *slew <= turn.to_rad));
        slews.sort_by(f64::total_cmp);
        slews.dedup();
        slews
    };
    loaded.intervals().into_iter().map(of_stretch).collect()
}

fn along(model: &UnitModel, actions: &CombinationActions, slews: Vec<f64>) -> Result<Vec<AtSlew>, String> {
    slews.into_iter().map(|slew_rad| at(model, actions, slew_rad).map_err(|fault| fault.to_string())).collect()
}

fn at(model: &UnitModel, actions: &CombinationActions, slew_rad: f64) -> Result<AtSlew, EnvelopeFault> {
    let mut values: Vec<(Component, Sense, f64)> = Vec::new();
    for one in &actions.with_weight {
        for extreme in base_envelope(model, one, &SlewRange::At(vec![slew_rad]))?.extremes {
            let (Some(component), sense) = (component(extreme.component), sense(extreme.sense)) else { continue };
            match values.iter_mut().find(|known| (known.0, known.1) == (component, sense)) {
                Some(known) if sense == Sense::Max => known.2 = known.2.max(extreme.value),
                Some(known) => known.2 = known.2.min(extreme.value),
                None => values.push((component, sense, extreme.value)),
            }
        }
    }
    Ok(AtSlew { slew_rad, values })
}
