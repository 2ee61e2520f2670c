//! What every chapter is given: the plan, its assessment, the units of its figures, and which things are alike.

use std::collections::BTreeMap;

use gantline_plan::assess::{Assessment, UnitAssessment};
use gantline_plan::document::{PlacementId, Plan, ThingId};
use gantline_plan::explain::{FigureId, Trace, explain_in};
use gantline_plan::quantity::UnitSystem;

use super::blocks;
use super::kinds::{AlikeBases, UnitKind, alike_bases, unit_kinds};
use crate::answers::names::name_of;
use crate::paper::Block;

/// So many tags stand in one paragraph.
const TAGS_IN_PARAGRAPH: usize = 40;

/// What every chapter is given.
pub struct Given<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Its assessment.
    pub assessment: &'a Assessment,
    /// Units of all figures.
    pub units: UnitSystem,
    /// Units of one make-up, judged alike.
    pub kinds: Vec<UnitKind>,
    /// Bases that are alike in make-up and surroundings.
    pub bases: Vec<AlikeBases>,
    tags: BTreeMap<PlacementId, String>,
}

impl<'a> Given<'a> {
    /// Looks for what is alike.
    pub fn of(plan: &'a Plan, assessment: &'a Assessment, units: UnitSystem) -> Self {
        let kinds = unit_kinds(assessment);
        let bases = alike_bases(plan, assessment, &kinds);
        Self { plan, assessment, units, kinds, bases, tags: tags(plan) }
    }

    /// A unit's results.
    pub fn unit(&self, id: PlacementId) -> Option<&'a UnitAssessment> {
        self.assessment.units.get(&id).map(AsRef::as_ref)
    }

    /// A unit's tag; with its id where the tag alone does not say which unit is meant.
    pub fn tag(&self, id: PlacementId) -> String {
        self.tags.get(&id).cloned().unwrap_or_else(|| id.to_string())
    }

    /// Tags of several units, in order.
    pub fn tags(&self, ids: &[PlacementId]) -> String {
        ids.iter().map(|&id| self.tag(id)).collect::<Vec<_>>().join(", ")
    }

    /// Many tags after some words: so many in a paragraph that none is cut off.
    pub fn tag_list(&self, lead: &str, ids: &[PlacementId]) -> Vec<Block> {
        let lines = ids.chunks(TAGS_IN_PARAGRAPH).enumerate();
        let told = lines.map(|(index, ids)| {
            let lead = if index == 0 { lead } else { "and" };
            blocks::paragraph(&format!("{lead} {}.", self.tags(ids)))
        });
        told.collect()
    }

    /// A thing by the name that people use.
    pub fn name(&self, thing: ThingId) -> String {
        match thing {
            ThingId::Placement(id) => self.tag(id),
            other => name_of(self.plan, other),
        }
    }

    /// How a figure came about.
    pub fn explain(&self, figure: &FigureId) -> Option<Trace> {
        explain_in(self.plan, self.assessment, figure)
    }

    /// The name of a combination of the basis.
    pub fn combination(&self, index: usize) -> String {
        let name = self.plan.basis.combinations.get(index).map_or("", |combined| combined.name.as_str());
        blocks::named(name)
    }

    /// The same with its level.
    pub fn combination_with_level(&self, index: usize) -> String {
        let found = self.plan.basis.combinations.get(index);
        let level = found.map_or_else(String::new, |combined| format!(", {}", super::figures::level(combined.level)));
        format!("{}{level}", self.combination(index))
    }
}

/// The tag of each unit; where it is empty the id, where others have the same, the id beside it.
fn tags(plan: &Plan) -> BTreeMap<PlacementId, String> {
    let shown: Vec<(PlacementId, String)> =
        plan.placements.iter().map(|(&id, placement)| (id, blocks::tag(&placement.tag.0))).collect();
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for (_, tag) in &shown {
        *counts.entry(tag).or_insert(0) += 1;
    }
    let told = |(id, tag): &(PlacementId, String)| match counts.get(tag.as_str()) {
        _ if tag.is_empty() => (*id, id.to_string()),
        Some(1) => (*id, tag.clone()),
        _ => (*id, format!("{tag} ({id})")),
    };
    shown.iter().map(told).collect()
}
