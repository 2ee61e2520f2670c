//! Project, units of measure, site, building, and a storey for each level of roofs.

use std::collections::BTreeMap;

use gantline_plan::document::{Datum, Plan, Roof, RoofId};
use glam::{DVec2, DVec3};

use super::guid::Identities;
use super::step::{NONE, Ref, Step, label, label_if, list, real};
use crate::documents::Imprint;

/// What stands above all elements.
#[derive(Debug)]
pub struct Project {
    /// The project itself.
    pub whole: Ref,
    /// The building.
    pub building: Ref,
    /// The context of bodies.
    pub body: Ref,
    /// Storeys by the roof that lies in them.
    pub storeys: BTreeMap<RoofId, Storey>,
}

/// A storey: all roofs of one level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Storey {
    /// The storey.
    pub storey: Ref,
    /// Its placement; its z is 0 on the structural slab.
    pub placement: Ref,
}

/// Levels nearer than this are one storey, m.
const ONE_STOREY_M: f64 = 0.001;

/// Writes the project.
pub fn project(step: &mut Step, ids: &Identities, plan: &Plan, imprint: &Imprint) -> Project {
    let units = units(step);
    let origin = step.axes(DVec3::ZERO, DVec3::Z, DVec3::X);
    let north = DVec2::Y.rotate(DVec2::from_angle(plan.datum.north_rad));
    let north = step.add("IFCDIRECTION", &format!("({},{})", real(north.x), real(north.y)));
    let context =
        step.add("IFCGEOMETRICREPRESENTATIONCONTEXT", &format!("{NONE},'Model',3,{},{origin},{north}", real(1e-5)));
    in_grid(step, &plan.datum, context);
    let body = step.add(
        "IFCGEOMETRICREPRESENTATIONSUBCONTEXT",
        &format!("'Body','Model',*,*,*,*,{context},{NONE},.MODEL_VIEW.,{NONE}"),
    );
    let job = if imprint.plan.job.is_empty() { "Job without a name" } else { &imprint.plan.job };
    let project = step.add(
        "IFCPROJECT",
        &format!(
            "{},{NONE},{},{},{NONE},{},{},({context}),{units}",
            ids.of_thing("project"),
            label(job),
            label(crate::documents::imprint::CAUTION),
            label(&imprint.line()),
            label_if(&imprint.plan.revision)
        ),
    );
    let within = |step: &mut Step, parent: &str, z_m: f64| {
        let axes = step.axes(DVec3::Z * z_m, DVec3::Z, DVec3::X);
        step.add("IFCLOCALPLACEMENT", &format!("{parent},{axes}"))
    };
    let site_at = within(step, NONE, 0.0);
    let site = step.add(
        "IFCSITE",
        &format!(
            "{},{NONE},{},{},{NONE},{site_at},{NONE},{NONE},.ELEMENT.,{NONE},{NONE},{NONE},{NONE},{NONE}",
            ids.of_thing("site"),
            label(if imprint.address.is_empty() { "Site" } else { &imprint.address }),
            label_if(&plan.datum.level_zero)
        ),
    );
    let building_at = within(step, &site_at.to_string(), 0.0);
    let building = step.add(
        "IFCBUILDING",
        &format!(
            "{},{NONE},{},{NONE},{NONE},{building_at},{NONE},{NONE},.ELEMENT.,{NONE},{NONE},{NONE}",
            ids.of_thing("building"),
            label(job)
        ),
    );
    let mut storeys = BTreeMap::new();
    let mut all = Vec::new();
    for level in levels(plan) {
        let names: Vec<&str> = level.iter().map(|(_, roof)| roof.name.as_str()).collect();
        let Some((first, roof)) = level.first() else { continue };
        let placement = within(step, &building_at.to_string(), roof.level_m);
        let storey = step.add(
            "IFCBUILDINGSTOREY",
            &format!(
                "{},{NONE},{},{NONE},{NONE},{placement},{NONE},{NONE},.ELEMENT.,{}",
                ids.of_thing(&format!("storey of {first}")),
                label(&names.join(", ")),
                real(roof.level_m)
            ),
        );
        all.push(storey);
        storeys.extend(level.iter().map(|&(id, _)| (id, Storey { storey, placement })));
    }
    aggregates(step, ids, "site in project", project, &[site]);
    aggregates(step, ids, "building in site", site, &[building]);
    aggregates(step, ids, "storeys in building", building, &all);
    Project { whole: project, building, body, storeys }
}

/// Says where the plan's origin lies in the grid of the drawing that its outline came from: true to size, parallel axes, heights
/// as they are. Whose grid it is, a drawing does not say.
fn in_grid(step: &mut Step, datum: &Datum, context: Ref) {
    if !datum.has_grid() {
        return;
    }
    let (name, geodetic) = match datum.local_plane {
        Some(plane) => (format!("Plane that touches WGS 84 at {plane}"), label("WGS84")),
        None => ("Grid of the site drawing".to_owned(), NONE.to_owned()),
    };
    let grid = step.add("IFCPROJECTEDCRS", &format!("{},{NONE},{geodetic},{NONE},{NONE},{NONE},{NONE}", label(&name)));
    let [east, north] = datum.grid_origin_m.to_array().map(real);
    let zero = real(0.0);
    step.add("IFCMAPCONVERSION", &format!("{context},{grid},{east},{north},{zero},{},{zero},{}", real(1.0), real(1.0)));
}

/// Roofs by level, the lowest first.
fn levels(plan: &Plan) -> Vec<Vec<(RoofId, &Roof)>> {
    let mut roofs: Vec<(RoofId, &Roof)> = plan.roofs.iter().map(|(&id, roof)| (id, roof)).collect();
    roofs.sort_by(|a, b| a.1.level_m.total_cmp(&b.1.level_m).then(a.0.cmp(&b.0)));
    let is_same = |a: &(RoofId, &Roof), b: &(RoofId, &Roof)| b.1.level_m - a.1.level_m < ONE_STOREY_M;
    roofs.chunk_by(is_same).map(<[_]>::to_vec).collect()
}

/// Says that parts make a whole.
pub fn aggregates(step: &mut Step, ids: &Identities, thing: &str, whole: Ref, parts: &[Ref]) {
    if !parts.is_empty() {
        let parts = list(parts.iter().copied());
        step.add("IFCRELAGGREGATES", &format!("{},{NONE},{NONE},{NONE},{whole},{parts}", ids.of_thing(thing)));
    }
}

/// SI without prefixes, but for kilograms.
fn units(step: &mut Step) -> Ref {
    let mut si = |kind: &str, prefix: &str, name: &str| step.add("IFCSIUNIT", &format!("*,.{kind}.,{prefix},.{name}."));
    let meter = si("LENGTHUNIT", NONE, "METRE");
    let newton = si("FORCEUNIT", NONE, "NEWTON");
    let all = [
        meter,
        newton,
        si("AREAUNIT", NONE, "SQUARE_METRE"),
        si("VOLUMEUNIT", NONE, "CUBIC_METRE"),
        si("PLANEANGLEUNIT", NONE, "RADIAN"),
        si("MASSUNIT", ".KILO.", "GRAM"),
        si("PRESSUREUNIT", NONE, "PASCAL"),
    ];
    let of_newton = step.add("IFCDERIVEDUNITELEMENT", &format!("{newton},1"));
    let of_meter = step.add("IFCDERIVEDUNITELEMENT", &format!("{meter},1"));
    let moment = step.add("IFCDERIVEDUNIT", &format!("({of_newton},{of_meter}),.TORQUEUNIT.,{NONE}"));
    step.add("IFCUNITASSIGNMENT", &list(all.into_iter().chain([moment])))
}
