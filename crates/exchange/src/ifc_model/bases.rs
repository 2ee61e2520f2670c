//! Bases: what stays in the roof, with its fixing, its test, its findings and its reactions as properties.

use std::collections::BTreeMap;

use gantline_plan::assess::{Outcome, Severity, UnitAssessment};
use gantline_plan::catalog::{Base, BaseKind, ResolvedUnit};
use gantline_plan::document::{Placement, PlacementId, Plan};
use gantline_plan::geometry::frame::Frame;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::quantity::Kind;
use glam::DVec3;

use super::anchorage;
use super::file::Writing;
use super::look::Look;
use super::project::Storey;
use super::properties::{Property, count, figure, in_grid, set, words};
use super::reactions::{not_computed, sets_of_levels};
use super::shapes::Scene;
use super::step::{NONE, Ref, label, label_if};

/// Reactions that bases have in common: bases alike share a set.
#[derive(Debug, Default)]
pub struct Shared(BTreeMap<String, SharedSet>);

#[derive(Debug)]
struct SharedSet {
    name: String,
    properties: Vec<Property>,
    first: PlacementId,
    bases: Vec<Ref>,
}

/// Writes a base, whether or not its parts are known: where one is meant to stand must be seen.
pub fn base(
    writing: &mut Writing<'_>,
    shared: &mut Shared,
    plan: &Plan,
    (id, placement): (PlacementId, &Placement),
    (unit, frame): (&UnitAssessment, Frame),
    storey: Storey,
) -> Ref {
    let mut scene = writing.scene();
    let at = scene.placement(storey.placement, frame.at.extend(0.0), frame.outward_rad);
    let solids = unit.resolved.as_ref().map_or_else(|_| Vec::new(), |unit| solids(&mut scene, &unit.base));
    let shape = scene.swept_shape(&solids);
    let name = unit.resolved.as_ref().map_or("parts not known", |unit| &unit.base.name);
    let base = writing.step.add(
        "IFCDISCRETEACCESSORY",
        &format!(
            "{},{NONE},{},{},'Base of a portable mast',{at},{shape},{},.USERDEFINED.",
            writing.ids.of_thing(&id.to_string()),
            label(&format!("Base {}", placement.tag)),
            label_if(name),
            label(&placement.tag.0)
        ),
    );
    let properties = properties(plan, id, placement, unit, &frame);
    set(writing.step, writing.ids, &id.to_string(), "Gantline_Base", &properties, &[base]);
    let judged = anchorage::properties(plan, unit);
    set(writing.step, writing.ids, &id.to_string(), "Gantline_Anchorage", &judged, &[base]);
    for (name, properties) in unit.reactions.iter().flat_map(|reactions| sets_of_levels(reactions)) {
        let key = format!("{name} {properties:?}");
        let new = || SharedSet { name, properties, first: id, bases: Vec::new() };
        shared.0.entry(key).or_insert_with(new).bases.push(base);
    }
    base
}

impl Shared {
    /// Writes the sets.
    pub fn write(self, writing: &mut Writing<'_>) {
        for one in self.0.into_values() {
            set(writing.step, writing.ids, &one.first.to_string(), &one.name, &one.properties, &one.bases);
        }
    }
}

fn solids(scene: &mut Scene<'_>, base: &Base) -> Vec<Ref> {
    let plate = Polygon::simple(base.footprint_m());
    let (from_m, to_m) = match base.kind {
        // The plate stands upright on the wall's face.
        BaseKind::WallSocket { plate_middle_m, .. } => {
            let half_m = base.plate_m.iter().fold(0.0_f64, |far, corner| far.max(corner.y.abs()));
            (plate_middle_m - half_m, plate_middle_m + half_m)
        }
        _ => (0.0, base.plate_thickness_m),
    };
    let foot_m = match base.kind {
        BaseKind::CastInSleeve { depth_m, .. } => -depth_m,
        BaseKind::WallSocket { .. } => from_m,
        _ => to_m,
    };
    let plate = scene.prism(&plate, from_m, to_m, Look::Base);
    let socket = scene.cylinder(base.socket_diameter_m, foot_m, base.socket_top_m, Look::Base);
    plate.into_iter().chain(socket).collect()
}

fn properties(
    plan: &Plan,
    id: PlacementId,
    placement: &Placement,
    unit: &UnitAssessment,
    frame: &Frame,
) -> Vec<Property> {
    let mut all = vec![
        words("Tag", placement.tag.0.clone()),
        words("Id in the plan", id.to_string()),
        figure("x", Kind::Length, frame.at.x),
        figure("y", Kind::Length, frame.at.y),
        figure("Level of the structural slab", Kind::Length, frame.level_m),
        figure("Looks toward", Kind::Angle, frame.outward_rad),
    ];
    if plan.datum.has_grid() {
        let at = plan.datum.in_grid(frame.at);
        all.extend([in_grid("x in the drawing's grid", at.x), in_grid("y in the drawing's grid", at.y)].map(Some));
    }
    if let Some(out) = unit.setting_out {
        all.extend([
            words("Edge", out.edge.to_string()),
            figure("Along the edge from its start", Kind::Length, out.from_start_m),
            figure("Setback", Kind::Length, out.setback_m),
        ]);
    }
    match &unit.resolved {
        Ok(unit) => all.extend(parts(plan, unit)),
        Err(fault) => all.push(words("Not checked", fault.to_string())),
    }
    all.extend(unit.reactions.iter().map(|reactions| not_computed(reactions)));
    let checks = |which: fn(&Outcome) -> bool| unit.checks.iter().filter(|one| which(&one.outcome)).count();
    all.extend(
        [
            count("Checks that block", checks(|outcome| *outcome == Outcome::Fails(Severity::Blocking))),
            count("Checks that could not be made", checks(|outcome| matches!(outcome, Outcome::NotChecked(_)))),
        ]
        .map(Some),
    );
    all.into_iter().flatten().collect()
}

fn parts(plan: &Plan, unit: &ResolvedUnit) -> Vec<Option<Property>> {
    let brace = unit.brace.as_ref().map_or("none", |brace| &brace.name);
    let kind = unit.fixing_kind();
    let duty = kind.map(|kind| plan.basis.test_words(kind));
    let invented = if unit.invented { " (invented for demonstration)" } else { "" };
    let mut all = vec![
        words("Family", format!("{}{invented}", unit.family)),
        words("Mast", unit.mast.name.clone()),
        words("Arm", unit.arm.name.clone()),
        words("Brace", brace),
        words("Base", unit.base.name.clone()),
        words("Kind of base", unit.base.kind.words()),
        words("Fixing", unit.fixing.as_ref().map_or("", |fixing| &fixing.name)),
        words("Kind of fixing", kind.map_or("not known", |kind| kind.words())),
        words("Test duty", duty.unwrap_or_default()),
        figure("Mass of the base", Kind::Mass, unit.base.mass_kg),
    ];
    if let Some(anchors) = &unit.base.anchors {
        all.push(Some(count("Anchors", anchors.at_m.len())));
        all.push(figure("Embedment", Kind::Length, anchors.embedment_m));
    }
    all
}

/// Where a unit's own axes stand: the base's, in the storey.
pub fn unit_placement(writing: &mut Writing<'_>, frame: &Frame, storey: Storey) -> Ref {
    writing.scene().placement(storey.placement, DVec3::new(frame.at.x, frame.at.y, 0.0), frame.outward_rad)
}
