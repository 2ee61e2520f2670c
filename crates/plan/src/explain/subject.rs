//! The unit that a figure is about, with what its traces ask for again and again.

use std::borrow::Cow;
use std::sync::Arc;

use gantline_mechanics::envelope::{Actions, Extreme, SlewRange};
use gantline_mechanics::unit::UnitModel;

use super::entered;
use crate::assess::actions_of::{actions_of, slew_range};
use crate::assess::lean::basis_for;
use crate::assess::reactions::Reactions;
use crate::assess::{Amount, Assessment, Sense, UnitAssessment};
use crate::basis::{Combined, LoadBasis};
use crate::catalog::{ResolvedUnit, to_mechanics};
use crate::document::{PlacementId, Plan};
use crate::geometry::frame::Frame;
use crate::quantity::Kind;

/// A unit with its place, parts and results.
pub struct Subject<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Its assessment.
    pub assessment: &'a Assessment,
    /// The unit's id.
    pub id: PlacementId,
    /// Its tag.
    pub tag: &'a str,
    /// What was computed about it.
    pub result: &'a UnitAssessment,
    /// Its axes.
    pub frame: Frame,
    /// Its parts.
    pub unit: &'a ResolvedUnit,
    /// The basis as it holds for this unit: without limits of lean where they don't.
    pub basis: Cow<'a, LoadBasis>,
}

impl<'a> Subject<'a> {
    /// The unit; none when its place or its parts are not known.
    pub fn of(plan: &'a Plan, assessment: &'a Assessment, id: PlacementId) -> Option<Self> {
        let result: &UnitAssessment = assessment.units.get(&id)?;
        let frame = result.frame?;
        let unit = result.resolved.as_ref().ok()?;
        let basis = basis_for(&plan.basis, result, assessment);
        let tag = plan.placements.get(&id)?.tag.0.as_str();
        Some(Self { plan, assessment, id, tag, result, frame, unit, basis })
    }

    /// Its reactions.
    pub fn reactions(&self) -> Option<&Arc<Reactions>> {
        self.result.reactions.as_ref()
    }

    /// A combination of the basis.
    pub fn combined(&self, index: usize) -> Option<&Combined> {
        self.basis.combinations.get(index)
    }

    /// The unit as mechanics sees it, and the slews at which a person may hang.
    pub fn model(&self) -> Option<(UnitModel, SlewRange)> {
        let model = UnitModel::new(&to_mechanics::unit(self.unit).ok()?).ok()?;
        Some((model, slew_range(self.unit.slew_stops)))
    }

    /// What acts in a combination, once for each factor on self-weight.
    pub fn actions(&self, combination: usize) -> Option<Vec<Actions>> {
        Some(actions_of(self.combined(combination)?, &self.basis, self.unit).ok()?.with_weight)
    }

    /// A field of this unit.
    pub fn entered(&self, field: &str) -> String {
        entered::of_unit(self.tag, field)
    }

    /// A datum of its mast.
    pub fn of_mast(&self, field: &str) -> String {
        entered::of_part(self.unit, &self.unit.mast.name, field)
    }

    /// A datum of its arm.
    pub fn of_arm(&self, field: &str) -> String {
        entered::of_part(self.unit, &self.unit.arm.name, field)
    }

    /// A datum of its base.
    pub fn of_base(&self, field: &str) -> String {
        entered::of_part(self.unit, &self.unit.base.name, field)
    }

    /// A datum of its brace.
    pub fn of_brace(&self, field: &str) -> String {
        let name = self.unit.brace.as_ref().map_or("brace", |brace| brace.name.as_str());
        entered::of_part(self.unit, name, field)
    }
}

/// The most extreme of several looks, each with what acted.
pub fn most_extreme(looks: impl IntoIterator<Item = (Actions, Extreme)>, sense: Sense) -> Option<(Actions, Extreme)> {
    looks.into_iter().reduce(|known, other| {
        let beyond = match sense {
            Sense::Max => other.1.value > known.1.value,
            Sense::Min => other.1.value < known.1.value,
        };
        if beyond { other } else { known }
    })
}

/// A force, N.
pub const fn force(value: f64) -> Amount {
    Amount { kind: Kind::Force, value }
}

/// A moment, N·m.
pub const fn moment(value: f64) -> Amount {
    Amount { kind: Kind::Moment, value }
}

/// An angle, rad.
pub const fn angle(value: f64) -> Amount {
    Amount { kind: Kind::Angle, value }
}

/// An area, m².
pub const fn area(value: f64) -> Amount {
    Amount { kind: Kind::Area, value }
}

/// A bare number.
pub const fn number(value: f64) -> Amount {
    Amount { kind: Kind::Number, value }
}
