//! Where an input was entered, as words along the way to its field: "unit B-07 › setback".

use crate::catalog::ResolvedUnit;
use crate::document::{EdgeId, ObstacleId, Plan, RoofId};

fn way(words: &[&str]) -> String {
    words.join(" › ")
}

/// A field of a unit.
pub fn of_unit(tag: &str, field: &str) -> String {
    way(&[&format!("unit {tag}"), field])
}

/// A datum of a part in its family.
pub fn of_part(unit: &ResolvedUnit, part: &str, field: &str) -> String {
    way(&["families", &unit.family, part, field])
}

/// A value of the load basis.
pub fn of_basis(field: &str) -> String {
    way(&["basis", field])
}

/// A value of a case of the load basis.
pub fn of_case(case: &str, field: &str) -> String {
    way(&["basis", "cases", case, field])
}

/// A field of a roof.
pub fn of_roof(plan: &Plan, roof: RoofId, field: &str) -> String {
    let name = plan.roofs.get(&roof).map_or_else(|| roof.to_string(), |found| found.name.clone());
    way(&["roofs", &name, field])
}

/// A field of an edge.
pub fn of_edge(plan: &Plan, edge: EdgeId, field: &str) -> String {
    let roof = plan.find_edge(edge).map_or("", |place| place.roof.name.as_str());
    way(&["roofs", roof, &edge.to_string(), field])
}

/// A field of an obstacle.
pub fn of_obstacle(plan: &Plan, obstacle: ObstacleId, field: &str) -> String {
    let name = plan.obstacles.get(&obstacle).map_or_else(|| obstacle.to_string(), |found| found.name.clone());
    way(&["obstacles", &name, field])
}
