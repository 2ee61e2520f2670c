//! Bases that bring the same to the structure: same parts, same reactions. Their sets are printed once.

use std::sync::Arc;

use gantline_plan::assess::{Assessment, UnitAssessment};
use gantline_plan::document::{Placement, PlacementId, Plan};

/// Bases that bring the same.
pub struct Group<'a> {
    /// Its units, in their order.
    pub members: Vec<(PlacementId, &'a Placement)>,
    /// What is computed about the first of them; the same for all but for its place.
    pub unit: &'a UnitAssessment,
}

impl Group<'_> {
    /// Tags of its units, one after another.
    pub fn tags(&self) -> String {
        let tags: Vec<&str> = self.members.iter().map(|(_, placement)| placement.tag.0.as_str()).collect();
        tags.join(", ")
    }
}

/// All groups, in the order of their first units.
pub fn groups<'a>(plan: &'a Plan, assessment: &'a Assessment) -> Vec<Group<'a>> {
    let mut groups: Vec<Group<'a>> = Vec::new();
    for (&id, placement) in &plan.placements {
        let Some(unit) = assessment.units.get(&id) else { continue };
        let same = groups.iter_mut().find(|group| {
            let first = group.members.first();
            first.is_some_and(|(_, first)| first.make_up.gives_the_same_as(&placement.make_up))
                && have_same_reactions(group.unit, unit)
        });
        match same {
            Some(group) => group.members.push((id, placement)),
            None => groups.push(Group { members: vec![(id, placement)], unit }),
        }
    }
    groups
}

fn have_same_reactions(one: &UnitAssessment, other: &UnitAssessment) -> bool {
    match (&one.reactions, &other.reactions) {
        (Some(one), Some(other)) => Arc::ptr_eq(one, other) || one == other,
        (None, None) => true,
        _ => false,
    }
}
