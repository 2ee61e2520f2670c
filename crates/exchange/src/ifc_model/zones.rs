//! Clear zones: the space that arm and brace sweep, see-through and on a layer of their own, so that a clash is found.

use gantline_plan::assess::swept::SweptBand;
use gantline_plan::assess::{Part, UnitAssessment};
use gantline_plan::document::{Placement, PlacementId};
use glam::DVec3;

use super::file::Writing;
use super::look::Look;
use super::mesh::{Mesh, meshes};
use super::project::Storey;
use super::step::{NONE, Ref, label, real};

/// Writes what a unit sweeps; returns the elements. Their representations go on the layer of clear zones.
pub fn zones(
    writing: &mut Writing<'_>,
    (id, placement): (PlacementId, &Placement),
    unit: &UnitAssessment,
    level_m: f64,
    storey: Storey,
) -> Vec<Ref> {
    let mut elements = Vec::new();
    for (index, swept) in unit.swept.iter().enumerate() {
        for (band, over) in [(&swept.serving, "serving slew"), (&swept.rest, "rest of the turn")] {
            let what = format!("{} over {over}", swept.part.word());
            let key = format!("clear zone {index} of {id}, {over}");
            elements.extend(zone(
                writing,
                &key,
                &format!("{}: clear zone, {what}", placement.tag),
                (swept.part, band),
                level_m,
                storey,
            ));
        }
    }
    elements
}

fn zone(
    writing: &mut Writing<'_>,
    key: &str,
    name: &str,
    (part, band): (Part, &SweptBand),
    level_m: f64,
    storey: Storey,
) -> Option<Ref> {
    let look = if part == Part::Arm { Look::ZoneOfArm } else { Look::ZoneOfBrace };
    let solids: Vec<Ref> = meshes(band).iter().map(|mesh| tessellated(writing, mesh, level_m, look)).collect();
    let mut scene = writing.scene();
    let at = scene.placement(storey.placement, band.pivot().extend(0.0), 0.0);
    let (shape, body) = scene.shape(&solids, "Tessellation")?;
    writing.of_zones.push(body);
    let values = format!(
        "{},{NONE},{},{NONE},'Clear zone of a portable unit',{at},{shape},{NONE},.PROVISIONFORSPACE.",
        writing.ids.of_thing(key),
        label(name)
    );
    Some(writing.step.add("IFCBUILDINGELEMENTPROXY", &values))
}

/// A surface in the storey's heights.
fn tessellated(writing: &mut Writing<'_>, mesh: &Mesh, level_m: f64, look: Look) -> Ref {
    let point = |at: &DVec3| format!("({},{},{})", real(at.x), real(at.y), real(at.z - level_m));
    let points: Vec<String> = mesh.points.iter().map(point).collect();
    let points = writing.step.add("IFCCARTESIANPOINTLIST3D", &format!("({})", points.join(",")));
    // Points are counted from 1.
    let triangle = |[a, b, c]: &[usize; 3]| format!("({},{},{})", a + 1, b + 1, c + 1);
    let triangles: Vec<String> = mesh.triangles.iter().map(triangle).collect();
    let values = format!("{points},{NONE},.T.,({}),{NONE}", triangles.join(","));
    let solid = writing.step.add("IFCTRIANGULATEDFACESET", &values);
    writing.looks.put_on(writing.step, solid, look);
    solid
}
