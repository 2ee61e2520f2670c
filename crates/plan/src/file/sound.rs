//! Whether a plan just read hangs together: references lead somewhere, rings turn the right way, values are in range.

use std::collections::BTreeSet;

use super::limits;
use crate::change::apply::{check_datum, check_point, check_profile, check_slab};
use crate::change::ring_edit::check_rings;
use crate::change::underlay;
use crate::document::{FacadeFoot, Plan, Ring, RoofId, Standing, ring::check_outline};

/// A part of a plan that does not hang together with the rest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unsound {
    /// Where in the file.
    pub path: String,
    /// What is wrong there.
    pub what: String,
}

fn at(path: &[&str], what: impl Into<String>) -> Unsound {
    Unsound { path: path.join(" › "), what: what.into() }
}

/// Checks a plan just read.
pub fn check(plan: &Plan) -> Result<(), Unsound> {
    check_sizes(plan)?;
    check_ids(plan)?;
    check_datum(&plan.datum).map_err(|refused| at(&["datum"], refused.to_string()))?;
    for &id in plan.roofs.keys() {
        check_roof(plan, id)?;
    }
    for (id, obstacle) in &plan.obstacles {
        let name = id.to_string();
        if !plan.roofs.contains_key(&obstacle.roof) {
            return Err(at(&["obstacles", &name, "roof"], format!("{} is not in the file", obstacle.roof)));
        }
        check_outline(&obstacle.outline).map_err(|f| at(&["obstacles", &name, "outline"], f.to_string()))?;
        let heights = obstacle.from_m.is_finite() && obstacle.to_m.is_finite() && obstacle.to_m >= obstacle.from_m;
        if !heights {
            let what = format!("{} to {} m is no height range", obstacle.from_m, obstacle.to_m);
            return Err(at(&["obstacles", &name, "to_m"], what));
        }
    }
    for (id, placement) in &plan.placements {
        check_standing(plan, &id.to_string(), &placement.stands)?;
        if !plan.families.contains_key(&placement.make_up.family) {
            let what = format!("{} is not in the file", placement.make_up.family);
            return Err(at(&["placements", &id.to_string(), "make_up", "family"], what));
        }
    }
    check_underlays(plan)?;
    plan.basis.check().map_err(|fault| at(&["basis", "combinations"], fault.to_string()))
}

fn check_sizes(plan: &Plan) -> Result<(), Unsound> {
    let in_roofs: usize = plan.roofs.values().flat_map(|roof| roof.rings().map(Ring::len)).sum();
    let in_obstacles: usize = plan.obstacles.values().map(|obstacle| obstacle.outline.len()).sum();
    let corners = in_roofs + in_obstacles;
    if corners > limits::MOST_CORNERS {
        return Err(at(&["roofs"], format!("{corners} corners; at most {} are read", limits::MOST_CORNERS)));
    }
    let units = plan.placements.len();
    if units > limits::MOST_PLACEMENTS {
        return Err(at(&["placements"], format!("{units} units; at most {} are read", limits::MOST_PLACEMENTS)));
    }
    Ok(())
}

/// Underlays show attachments of the file, and these are what they say they are.
fn check_underlays(plan: &Plan) -> Result<(), Unsound> {
    for (hash, attachment) in &plan.attachments {
        if attachment.hash() != *hash {
            let what = format!("its content has the hash {}: it is not what was attached", attachment.hash());
            return Err(at(&["attachments", &hash.to_string()], what));
        }
    }
    for (id, one) in &plan.underlays {
        let name = id.to_string();
        underlay::check(one).map_err(|refused| at(&["underlays", &name], refused.to_string()))?;
        if !plan.attachments.contains_key(&one.attachment) {
            let what = format!("{} is not in the file", one.attachment);
            return Err(at(&["underlays", &name, "attachment"], what));
        }
        if let Some(roof) = one.roof.filter(|roof| !plan.roofs.contains_key(roof)) {
            return Err(at(&["underlays", &name, "roof"], format!("{roof} is not in the file")));
        }
    }
    underlay::check_sizes(plan).map_err(|refused| at(&["underlays"], refused.to_string()))
}

/// Every id is used once and lies below the counter.
fn check_ids(plan: &Plan) -> Result<(), Unsound> {
    let mut edges = BTreeSet::new();
    for place in plan.edges() {
        if !edges.insert(place.edge().id) {
            return Err(at(&["roofs", &place.roof_id.to_string()], format!("{} stands there twice", place.edge().id)));
        }
    }
    let highest = edges
        .iter()
        .map(|id| id.number())
        .chain(plan.roofs.keys().map(|id| id.number()))
        .chain(plan.obstacles.keys().map(|id| id.number()))
        .chain(plan.families.keys().map(|id| id.number()))
        .chain(plan.placements.keys().map(|id| id.number()))
        .chain(plan.underlays.keys().map(|id| id.number()))
        .max()
        .unwrap_or(0);
    if plan.next_id <= highest {
        return Err(at(&["next_id"], format!("{} must be above {highest}, the highest number in use", plan.next_id)));
    }
    Ok(())
}

fn check_roof(plan: &Plan, id: RoofId) -> Result<(), Unsound> {
    let roof = &plan.roofs[&id];
    let name = id.to_string();
    if !(roof.level_m.is_finite() && roof.build_up_m.is_finite() && roof.build_up_m >= 0.0) {
        return Err(at(&["roofs", &name], "level_m and build_up_m must be numbers, build_up_m not negative"));
    }
    check_slab(&roof.slab).map_err(|refused| at(&["roofs", &name, "slab"], refused.to_string()))?;
    if roof.outer.signed_area_m2() < 0.0 {
        return Err(at(&["roofs", &name, "outer"], "the outline must run counter-clockwise"));
    }
    if roof.holes.iter().any(|hole| hole.signed_area_m2() > 0.0) {
        return Err(at(&["roofs", &name, "holes"], "holes must run clockwise"));
    }
    check_rings(roof).map_err(|refused| at(&["roofs", &name, "holes"], refused.to_string()))?;
    for corner in roof.rings().flat_map(Ring::corners) {
        let edge = corner.edge.id.to_string();
        let path = ["roofs", &name, &edge];
        check_point(corner.at).map_err(|refused| at(&path, refused.to_string()))?;
        check_profile(&corner.edge.facade.profile).map_err(|refused| at(&path, refused.to_string()))?;
        let parapet = corner.edge.parapet;
        let numbers = [parapet.height_m, parapet.thickness_m, parapet.inset_m];
        if numbers.iter().any(|value| !value.is_finite() || *value < 0.0) {
            return Err(at(&path, "the parapet's height, thickness and inset must be zero or positive numbers"));
        }
        match corner.edge.facade.ends_at {
            FacadeFoot::Roof(other) if other == id => {
                return Err(at(&path, "its facade can't end on its own roof"));
            }
            FacadeFoot::Roof(other) if !plan.roofs.contains_key(&other) => {
                return Err(at(&path, format!("its facade ends on {other}, which is not in the file")));
            }
            FacadeFoot::LevelM(level_m) if !level_m.is_finite() => {
                return Err(at(&path, "the level where its facade ends must be a number"));
            }
            FacadeFoot::Roof(_) | FacadeFoot::LevelM(_) | FacadeFoot::Ground => {}
        }
    }
    Ok(())
}

fn check_standing(plan: &Plan, name: &str, stands: &Standing) -> Result<(), Unsound> {
    match stands {
        Standing::OnEdge { edge, station, setback_m, turn_rad } => {
            let path = ["placements", name, "stands", "edge"];
            if plan.find_edge(*edge).is_none() {
                return Err(at(&path, format!("{edge} is not in the file")));
            }
            if !(station.distance_m.is_finite() && setback_m.is_finite() && turn_rad.is_finite()) {
                return Err(at(&path[..3], "station, setback and turn must be numbers"));
            }
        }
        Standing::Free { roof, at: place, outward_rad, serves } => {
            if !plan.roofs.contains_key(roof) {
                return Err(at(&["placements", name, "stands", "roof"], format!("{roof} is not in the file")));
            }
            if !(place.is_finite() && outward_rad.is_finite()) {
                return Err(at(&["placements", name, "stands"], "place and direction must be numbers"));
            }
            if let Some(edge) = serves.iter().find(|&&edge| plan.find_edge(edge).is_none()) {
                return Err(at(&["placements", name, "stands", "serves"], format!("{edge} is not in the file")));
            }
        }
    }
    Ok(())
}
