//! What is alike: units of one make-up that are judged alike, and bases alike in make-up and surroundings. Each is printed once,
//! with all its tags.

use std::sync::Arc;

use gantline_plan::assess::anchorage::BaseAssessment;
use gantline_plan::assess::{Assessment, Check, Code, UnitAssessment};
use gantline_plan::document::{PlacementId, Plan};

/// Units whose parts and reactions are the same to the bit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnitKind {
    /// All of them in order; never empty.
    pub all: Vec<PlacementId>,
    /// The first of them, which stands for all.
    pub first: PlacementId,
}

/// Bases whose records are the same to the bit, but for tag and place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AlikeBases {
    /// Which kind of unit stands in them, by its place in the list of kinds; none where a make-up is not whole.
    pub kind: Option<usize>,
    /// All of them in order; never empty.
    pub all: Vec<PlacementId>,
    /// The first of them, which stands for all.
    pub first: PlacementId,
}

/// Units with parts, by kind. Those whose make-up is not whole have none.
pub fn unit_kinds(assessment: &Assessment) -> Vec<UnitKind> {
    let mut kinds: Vec<(&UnitAssessment, UnitKind)> = Vec::new();
    for (&id, unit) in &assessment.units {
        if unit.resolved.is_err() {
            continue;
        }
        match kinds.iter_mut().find(|(known, _)| is_same_kind(known, unit)) {
            Some((_, kind)) => kind.all.push(id),
            None => kinds.push((unit, UnitKind { all: vec![id], first: id })),
        }
    }
    kinds.into_iter().map(|(_, kind)| kind).collect()
}

fn is_same_kind(one: &UnitAssessment, other: &UnitAssessment) -> bool {
    let (Ok(a), Ok(b)) = (&one.resolved, &other.resolved) else { return false };
    let reactions = match (&one.reactions, &other.reactions) {
        (Some(a), Some(b)) => Arc::ptr_eq(a, b) || a == b,
        (None, None) => true,
        _ => false,
    };
    reactions && (Arc::ptr_eq(a, b) || a == b)
}

/// Bases by what was found of them, in the order of the units.
pub fn alike_bases(plan: &Plan, assessment: &Assessment, kinds: &[UnitKind]) -> Vec<AlikeBases> {
    let mut groups: Vec<(&UnitAssessment, AlikeBases)> = Vec::new();
    for (&id, unit) in assessment.units.iter().filter(|(id, _)| plan.placements.contains_key(id)) {
        let kind = kinds.iter().position(|kind| kind.all.contains(&id));
        let known = groups.iter_mut().find(|(known, group)| {
            // A make-up that is not whole is told of each unit by itself.
            kind.is_some() && group.kind == kind && is_judged_alike(known, unit)
        });
        match known {
            Some((_, group)) => group.all.push(id),
            None => groups.push((unit, AlikeBases { kind, all: vec![id], first: id })),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

fn is_judged_alike(one: &UnitAssessment, other: &UnitAssessment) -> bool {
    let bases = match (&one.base, &other.base) {
        (Some(a), Some(b)) => Arc::ptr_eq(a, b) || is_alike(a, b),
        (None, None) => true,
        _ => false,
    };
    bases && test_of(one) == test_of(other)
}

/// Everything but where the edges lie on the plan.
fn is_alike(one: &BaseAssessment, other: &BaseAssessment) -> bool {
    let BaseAssessment { uses, governs, edges, thickness_m, sustained_share, bond_is_default, handed_on } = one;
    let distances =
        |base: &BaseAssessment| -> Vec<u64> { base.edges.iter().map(|edge| edge.distance_m.to_bits()).collect() };
    edges.len() == other.edges.len()
        && distances(one) == distances(other)
        && (thickness_m, sustained_share, bond_is_default)
            == (&other.thickness_m, &other.sustained_share, &other.bond_is_default)
        && governs == &other.governs
        && handed_on == &other.handed_on
        && uses == &other.uses
}

/// What the rule about tests says of a unit's fixing.
pub fn test_of(unit: &UnitAssessment) -> Option<(&str, String)> {
    let check: &Check = unit.checks.iter().find(|check| check.code == Code::ProofLoad)?;
    Some((check.detail.as_str(), super::findings::state(check)))
}
