//! Names of things as people know them, with the id that the file has for them.

use gantline_plan::document::{Plan, ThingId};

/// A thing by the name people use and its id.
pub fn name_of(plan: &Plan, thing: ThingId) -> String {
    let named = |name: Option<&str>, id: String| match name {
        Some(name) if !name.is_empty() => format!("{name} ({id})"),
        _ => id,
    };
    match thing {
        ThingId::Plan => "the plan".to_owned(),
        ThingId::Roof(id) => named(plan.roofs.get(&id).map(|roof| roof.name.as_str()), id.to_string()),
        ThingId::Edge(id) => id.to_string(),
        ThingId::Underlay(id) => named(plan.underlays.get(&id).map(|one| one.name.as_str()), id.to_string()),
        ThingId::Obstacle(id) => named(plan.obstacles.get(&id).map(|one| one.name.as_str()), id.to_string()),
        ThingId::Placement(id) => named(plan.placements.get(&id).map(|one| one.tag.0.as_str()), id.to_string()),
    }
}
