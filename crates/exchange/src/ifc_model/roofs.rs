//! Roofs: slabs with their holes, parapets as walls, obstacles.

use gantline_plan::document::{Plan, Ring, Roof, RoofId};
use gantline_plan::geometry::mass::parapet_strip;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::quantity::Kind;

use super::file::Writing;
use super::look::Look;
use super::project::Storey;
use super::properties::{Value, figure, set};
use super::step::{NONE, Ref, label, label_if};

/// Writes what belongs to a roof; returns the elements that its storey contains.
pub fn roof(writing: &mut Writing<'_>, plan: &Plan, id: RoofId, roof: &Roof, storey: Storey) -> Vec<Ref> {
    let mut elements = vec![slab(writing, id, roof, storey)];
    for ring in roof.rings() {
        for index in 0..ring.len() {
            elements.extend(parapet(writing, ring, index, storey));
        }
    }
    let standing = plan.obstacles.iter().filter(|(_, obstacle)| obstacle.roof == id);
    for (obstacle_id, obstacle) in standing {
        let outline = Polygon::simple(obstacle.outline.clone());
        let mut scene = writing.scene();
        let solids: Vec<Ref> =
            scene.prism(&outline, obstacle.from_m, obstacle.to_m, Look::Obstacle).into_iter().collect();
        let shape = scene.swept_shape(&solids);
        elements.push(writing.step.add(
            "IFCBUILDINGELEMENTPROXY",
            &format!(
                "{},{NONE},{},{NONE},'Obstacle',{},{shape},{},.ELEMENT.",
                writing.ids.of_thing(&obstacle_id.to_string()),
                label(if obstacle.name.is_empty() { "Obstacle" } else { &obstacle.name }),
                storey.placement,
                label(&obstacle_id.to_string())
            ),
        ));
    }
    elements
}

fn slab(writing: &mut Writing<'_>, id: RoofId, roof: &Roof, storey: Storey) -> Ref {
    let outline = Polygon { outer: roof.outer.points(), holes: roof.holes.iter().map(Ring::points).collect() };
    let mut scene = writing.scene();
    let solids: Vec<Ref> = scene.prism(&outline, -roof.slab.thickness_m, 0.0, Look::Structure).into_iter().collect();
    let shape = scene.swept_shape(&solids);
    let slab = writing.step.add(
        "IFCSLAB",
        &format!(
            "{},{NONE},{},{},{NONE},{},{shape},{},.ROOF.",
            writing.ids.of_thing(&id.to_string()),
            label(if roof.name.is_empty() { "Roof" } else { &roof.name }),
            label_if(&roof.slab.under),
            storey.placement,
            label(&id.to_string())
        ),
    );
    let is_confirmed = Value::Words(if roof.slab.confirmed { "yes" } else { "no" }.to_owned());
    let properties = [
        figure("Structural thickness", Kind::Length, roof.slab.thickness_m),
        figure("Build-up over the slab", Kind::Length, roof.build_up_m),
        roof.slab.cylinder_strength_pa.and_then(|value| figure("Cylinder strength fck", Kind::Stress, value)),
        roof.slab.specified_strength_pa.and_then(|value| figure("Specified strength f'c", Kind::Stress, value)),
        Some(("Data of the slab confirmed".to_owned(), is_confirmed)),
    ];
    let properties: Vec<_> = properties.into_iter().flatten().collect();
    set(writing.step, writing.ids, &id.to_string(), "Gantline_Roof", &properties, &[slab]);
    slab
}

fn parapet(writing: &mut Writing<'_>, ring: &Ring, index: usize, storey: Storey) -> Option<Ref> {
    let edge = ring.edge(index);
    if edge.parapet.thickness_m <= 0.0 {
        return None;
    }
    let strip = Polygon::simple(parapet_strip(ring, index));
    let mut scene = writing.scene();
    let solid = scene.prism(&strip, 0.0, edge.parapet.height_m, Look::Structure)?;
    let shape = scene.swept_shape(&[solid]);
    Some(writing.step.add(
        "IFCWALL",
        &format!(
            "{},{NONE},'Parapet',{NONE},{NONE},{},{shape},{},.PARAPET.",
            writing.ids.of_thing(&edge.id.to_string()),
            storey.placement,
            label(&edge.id.to_string())
        ),
    ))
}
