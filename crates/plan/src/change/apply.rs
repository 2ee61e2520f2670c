//! Applies a change to a plan: a new plan, or why not. Nothing is clamped, nothing deleted unasked.

use std::sync::Arc;

use glam::DVec2;

use super::anchor_bars::check_anchor_bars;
use super::{Change, EdgePatch, Refused, RoofPatch, place, ring_edit, underlay};
use crate::document::title::FARTHEST_GRID_M;
use crate::document::{
    Datum, Edge, EdgeId, FacadeFoot, FacadeStep, FamilyId, Obstacle, ObstacleId, Plan, Roof, RoofId, Slab, Standing,
    ThingId, ring,
};

/// A changed plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Applied {
    /// The plan after the change.
    pub plan: Plan,
    /// Things made by it, in order.
    pub made: Vec<ThingId>,
    /// What should be said about it, such as data dropped where two edges became one.
    pub said: Vec<String>,
}

/// Greatest distance of anything from the plan's origin, m.
pub const FARTHEST_M: f64 = 1.0e5;

/// Applies a change. The plan given stays as it is.
pub fn apply(plan: &Plan, change: &Change) -> Result<Applied, Refused> {
    let mut applied = Applied { plan: plan.clone(), made: Vec::new(), said: Vec::new() };
    carry_out(&mut applied, change)?;
    Ok(applied)
}

fn carry_out(applied: &mut Applied, change: &Change) -> Result<(), Refused> {
    let plan = &mut applied.plan;
    match change {
        Change::All(changes) => return changes.iter().try_for_each(|one| carry_out(applied, one)),
        Change::SetTitle(title) => plan.title = title.clone(),
        Change::SetDatum(datum) => {
            check_datum(datum)?;
            plan.datum = datum.clone();
        }
        Change::SetBasis(basis) => {
            basis.check()?;
            plan.basis = (**basis).clone();
        }
        Change::SetCode(code) => plan.code = code.clone(),
        Change::AddRoof { name, level_m, outline } => add_roof(applied, name, *level_m, outline)?,
        Change::AddHole { roof, outline } => {
            let made = ring_edit::add_hole(plan, *roof, outline)?;
            applied.made.push(ThingId::Edge(made));
        }
        Change::RemoveRoof(roof) => remove_roof(plan, *roof)?,
        Change::RemoveHole(edge) => remove_hole(plan, *edge)?,
        Change::SetRoof(roof, patch) => set_roof(plan, *roof, patch)?,
        Change::MoveCorner { edge, to } => ring_edit::move_corner(plan, *edge, *to)?,
        Change::MoveEdge { edge, by } => ring_edit::move_edge(plan, *edge, *by)?,
        Change::MoveRoof { roof, by } => move_roof(plan, *roof, *by)?,
        Change::InsertCorner { edge, at } => {
            let made = ring_edit::insert_corner(plan, *edge, *at)?;
            applied.made.push(ThingId::Edge(made));
        }
        Change::RemoveCorner { edge } => {
            let said = ring_edit::remove_corner(plan, *edge)?;
            applied.said.extend(said);
        }
        Change::SetEdges(edges, patch) => set_edges(plan, edges, patch)?,
        Change::AddObstacle(obstacle) => {
            let obstacle = checked_obstacle(plan, obstacle)?;
            let id = ObstacleId::from_number(plan.mint());
            plan.obstacles.insert(id, obstacle);
            applied.made.push(ThingId::Obstacle(id));
        }
        Change::SetObstacle(id, obstacle) => {
            let obstacle = checked_obstacle(plan, obstacle)?;
            *plan.obstacles.get_mut(id).ok_or(Refused::NoSuchThing(ThingId::Obstacle(*id)))? = obstacle;
        }
        Change::RemoveObstacle(id) => {
            plan.obstacles.remove(id).ok_or(Refused::NoSuchThing(ThingId::Obstacle(*id)))?;
        }
        Change::AddFamily(family) => {
            if !plan.families.values().any(|known| **known == **family) {
                let id = FamilyId::from_number(plan.mint());
                plan.families.insert(id, Arc::new((**family).clone()));
            }
        }
        Change::Place { make_up, stands, tag } => {
            let id = place::place(plan, make_up, stands, tag.as_ref())?;
            applied.made.push(ThingId::Placement(id));
        }
        Change::SetStanding(id, standing) => place::set_standing(plan, *id, standing)?,
        Change::SetPlacements(ids, patch) => place::set_placements(plan, ids, patch)?,
        Change::SetFixing(ids, fixing) => place::set_fixing(plan, ids, fixing.as_ref())?,
        Change::RemovePlacements(ids) => place::remove(plan, ids)?,
        Change::AddUnderlay { underlay, attachment } => {
            let id = underlay::add(plan, underlay, attachment)?;
            applied.made.push(ThingId::Underlay(id));
        }
        Change::MoveUnderlay { underlay, by } => underlay::move_by(plan, *underlay, *by)?,
        Change::ScaleUnderlay { underlay, from, to, length_m } => {
            underlay::scale(plan, *underlay, *from, *to, *length_m)?;
        }
        Change::TurnUnderlay { underlay, from, to, direction_rad } => {
            underlay::turn(plan, *underlay, *from, *to, *direction_rad)?;
        }
        Change::SetUnderlay(id, patch) => underlay::set(plan, *id, patch)?,
        Change::RemoveUnderlay(id) => underlay::remove(plan, *id)?,
    }
    Ok(())
}

/// A value inside its range, or a refusal that names it.
pub(crate) fn in_range(field: &'static str, value: f64, least: f64, most: f64) -> Result<(), Refused> {
    if value >= least && value <= most { Ok(()) } else { Err(Refused::OutOfRange { field, value, least, most }) }
}

pub(crate) fn check_point(point: DVec2) -> Result<(), Refused> {
    in_range("x_m", point.x, -FARTHEST_M, FARTHEST_M)?;
    in_range("y_m", point.y, -FARTHEST_M, FARTHEST_M)
}

/// Checks that the origin of the grid and the place of its plane are places.
pub(crate) fn check_datum(datum: &Datum) -> Result<(), Refused> {
    let at = datum.grid_origin_m;
    in_range("grid_origin_m.x", at.x, -FARTHEST_GRID_M, FARTHEST_GRID_M)?;
    in_range("grid_origin_m.y", at.y, -FARTHEST_GRID_M, FARTHEST_GRID_M)?;
    let Some(plane) = datum.local_plane else { return Ok(()) };
    in_range("local_plane.lon_deg", plane.lon_deg, -180.0, 180.0)?;
    in_range("local_plane.lat_deg", plane.lat_deg, -90.0, 90.0)
}

fn add_roof(applied: &mut Applied, name: &str, level_m: f64, outline: &[DVec2]) -> Result<(), Refused> {
    in_range("level_m", level_m, -500.0, 2000.0)?;
    let plan = &mut applied.plan;
    let outer = ring_edit::new_ring(plan, outline, true, None)?;
    let id = RoofId::from_number(plan.mint());
    let name = if name.is_empty() { format!("Roof {}", plan.roofs.len() + 1) } else { name.to_owned() };
    plan.roofs.insert(
        id,
        Roof { name, level_m, build_up_m: 0.0, slab: Slab::default(), outer, holes: Vec::new(), locked: false },
    );
    applied.made.push(ThingId::Roof(id));
    Ok(())
}

pub(super) fn roof_mut(plan: &mut Plan, id: RoofId) -> Result<&mut Roof, Refused> {
    let roof = plan.roofs.get_mut(&id).ok_or(Refused::NoSuchThing(ThingId::Roof(id)))?;
    Ok(roof)
}

fn remove_roof(plan: &mut Plan, id: RoofId) -> Result<(), Refused> {
    let roof = plan.roofs.get(&id).ok_or(Refused::NoSuchThing(ThingId::Roof(id)))?.clone();
    let edges: Vec<EdgeId> = roof.rings().flat_map(|ring| ring.corners().iter().map(|c| c.edge.id)).collect();
    plan.roofs.remove(&id);
    plan.obstacles.retain(|_, obstacle| obstacle.roof != id);
    // A drawing shows more than one roof: it stays, under every level.
    plan.underlays.values_mut().filter(|one| one.roof == Some(id)).for_each(|one| one.roof = None);
    forget_edges(plan, &edges);
    plan.placements.retain(|_, placement| !matches!(placement.stands, Standing::Free { roof, .. } if roof == id));
    for other in plan.roofs.values_mut() {
        for edge in other.rings_mut().flat_map(crate::document::Ring::edges_mut) {
            if edge.facade.ends_at == FacadeFoot::Roof(id) {
                edge.facade.ends_at = FacadeFoot::LevelM(roof.level_m);
            }
        }
    }
    Ok(())
}

fn forget_edges(plan: &mut Plan, edges: &[EdgeId]) {
    plan.placements
        .retain(|_, placement| !matches!(&placement.stands, Standing::OnEdge { edge, .. } if edges.contains(edge)));
    for placement in plan.placements.values_mut() {
        if let Standing::Free { serves, .. } = &mut placement.stands {
            serves.retain(|edge| !edges.contains(edge));
        }
    }
}

fn remove_hole(plan: &mut Plan, edge: EdgeId) -> Result<(), Refused> {
    let no_hole = Refused::NoSuchThing(ThingId::Edge(edge));
    let (roof_id, index) = plan
        .roofs
        .iter()
        .find_map(|(&id, roof)| roof.holes.iter().position(|hole| hole.index_of(edge).is_some()).map(|i| (id, i)))
        .ok_or(no_hole)?;
    let hole = roof_mut(plan, roof_id)?.holes.remove(index);
    let edges: Vec<EdgeId> = hole.corners().iter().map(|corner| corner.edge.id).collect();
    forget_edges(plan, &edges);
    Ok(())
}

fn set_roof(plan: &mut Plan, id: RoofId, patch: &RoofPatch) -> Result<(), Refused> {
    let roof = roof_mut(plan, id)?;
    if let Some(level_m) = patch.level_m {
        in_range("level_m", level_m, -500.0, 2000.0)?;
        roof.level_m = level_m;
    }
    if let Some(build_up_m) = patch.build_up_m {
        in_range("build_up_m", build_up_m, 0.0, 3.0)?;
        roof.build_up_m = build_up_m;
    }
    if let Some(slab) = &patch.slab {
        check_slab(slab)?;
        roof.slab = slab.clone();
    }
    if let Some(name) = &patch.name {
        roof.name.clone_from(name);
    }
    if let Some(locked) = patch.locked {
        roof.locked = locked;
    }
    Ok(())
}

/// Weakest and strongest concrete that is taken for real, Pa.
const STRENGTHS_PA: (f64, f64) = (5.0e6, 150.0e6);

fn check_strengths(field: &'static str, fck_pa: Option<f64>, specified_pa: Option<f64>) -> Result<(), Refused> {
    let (least, most) = STRENGTHS_PA;
    fck_pa.into_iter().chain(specified_pa).try_for_each(|strength| in_range(field, strength, least, most))
}

/// Checks the data of a slab.
pub(crate) fn check_slab(slab: &Slab) -> Result<(), Refused> {
    in_range("slab.thickness_m", slab.thickness_m, 0.02, 5.0)?;
    check_strengths("slab strength", slab.cylinder_strength_pa, slab.specified_strength_pa)?;
    if let Some(depth_m) = slab.bars.axis_depth_m {
        in_range("slab.bars.axis_depth_m", depth_m, 0.005, slab.thickness_m / 2.0)?;
    }
    if let Some(ratio) = slab.bars.ratio {
        in_range("slab.bars.ratio", ratio, 0.0, 0.1)?;
    }
    check_anchor_bars(&slab.bars)?;
    for zone in &slab.zones {
        in_range("slab.zones.thickness_m", zone.thickness_m, 0.02, 5.0)?;
        ring::check_outline(&zone.outline)?;
    }
    slab.no_drill.iter().try_for_each(|zone| Ok(ring::check_outline(&zone.outline)?))
}

fn move_roof(plan: &mut Plan, id: RoofId, by: DVec2) -> Result<(), Refused> {
    let roof = roof_mut(plan, id)?;
    if roof.locked {
        return Err(Refused::Locked(ThingId::Roof(id)));
    }
    for ring in roof.rings_mut() {
        let moved: Vec<DVec2> = ring.points().iter().map(|&p| p + by).collect();
        moved.iter().try_for_each(|&p| check_point(p))?;
        *ring = ring.with_points(&moved)?;
    }
    for zone in &mut roof.slab.zones {
        zone.outline.iter_mut().for_each(|p| *p += by);
    }
    for zone in &mut roof.slab.no_drill {
        zone.outline.iter_mut().for_each(|p| *p += by);
    }
    for obstacle in plan.obstacles.values_mut().filter(|obstacle| obstacle.roof == id) {
        obstacle.outline.iter_mut().for_each(|p| *p += by);
    }
    for placement in plan.placements.values_mut() {
        if let Standing::Free { roof, at, .. } = &mut placement.stands
            && *roof == id
        {
            *at += by;
        }
    }
    Ok(())
}

fn set_edges(plan: &mut Plan, edges: &[EdgeId], patch: &EdgePatch) -> Result<(), Refused> {
    for &edge in edges {
        let owner = plan.find_edge(edge).map(|place| place.roof_id).ok_or(Refused::NoSuchThing(ThingId::Edge(edge)))?;
        if let Some(FacadeFoot::Roof(roof)) = patch.ends_at {
            if roof == owner {
                return Err(Refused::EndsOnItself(roof));
            }
            roof_mut(plan, roof)?;
        }
        let found = roof_mut(plan, owner)?
            .rings_mut()
            .flat_map(crate::document::Ring::edges_mut)
            .find(|candidate| candidate.id == edge)
            .ok_or(Refused::NoSuchThing(ThingId::Edge(edge)))?;
        patch_edge(found, patch)?;
    }
    Ok(())
}

fn patch_edge(edge: &mut Edge, patch: &EdgePatch) -> Result<(), Refused> {
    if let Some(height_m) = patch.parapet_height_m {
        in_range("parapet.height_m", height_m, 0.0, 20.0)?;
        edge.parapet.height_m = height_m;
    }
    if let Some(thickness_m) = patch.parapet_thickness_m {
        in_range("parapet.thickness_m", thickness_m, 0.0, 5.0)?;
        edge.parapet.thickness_m = thickness_m;
    }
    if let Some(inset_m) = patch.parapet_inset_m {
        in_range("parapet.inset_m", inset_m, 0.0, 20.0)?;
        edge.parapet.inset_m = inset_m;
    }
    if let Some(concrete) = patch.parapet_concrete {
        if let Some(concrete) = concrete {
            check_strengths("parapet.concrete", concrete.cylinder_strength_pa, concrete.specified_strength_pa)?;
        }
        edge.parapet.concrete = concrete;
    }
    if let Some(needs_access) = patch.needs_access {
        edge.facade.needs_access = needs_access;
    }
    if let Some(profile) = &patch.profile {
        check_profile(profile)?;
        edge.facade.profile.clone_from(profile);
    }
    if let Some(ends_at) = patch.ends_at {
        if let FacadeFoot::LevelM(level_m) = ends_at {
            in_range("facade.ends_at.level_m", level_m, -500.0, 2000.0)?;
        }
        edge.facade.ends_at = ends_at;
    }
    if let Some(confirmed) = patch.confirmed {
        edge.confirmed = confirmed;
    }
    Ok(())
}

/// Checks that a facade's steps go down from depth 0.
pub(crate) fn check_profile(profile: &[FacadeStep]) -> Result<(), Refused> {
    if profile.first().is_none_or(|step| step.from_depth_m != 0.0) {
        return Err(Refused::ProfileOrder { step: 1 });
    }
    for step in profile {
        in_range("facade.profile.offset_m", step.offset_m, -20.0, 20.0)?;
        in_range("facade.profile.from_depth_m", step.from_depth_m, 0.0, 2000.0)?;
    }
    match profile.windows(2).position(|pair| pair[1].from_depth_m <= pair[0].from_depth_m) {
        Some(index) => Err(Refused::ProfileOrder { step: index + 2 }),
        None => Ok(()),
    }
}

fn checked_obstacle(plan: &Plan, obstacle: &Obstacle) -> Result<Obstacle, Refused> {
    if !plan.roofs.contains_key(&obstacle.roof) {
        return Err(Refused::NoSuchThing(ThingId::Roof(obstacle.roof)));
    }
    ring::check_outline(&obstacle.outline)?;
    obstacle.outline.iter().try_for_each(|&p| check_point(p))?;
    in_range("from_m", obstacle.from_m, -100.0, 500.0)?;
    in_range("to_m", obstacle.to_m, obstacle.from_m, 1000.0)?;
    let mut turned = obstacle.clone();
    if crate::geometry::rings::signed_area_m2(&turned.outline) < 0.0 {
        turned.outline.reverse();
    }
    Ok(turned)
}
