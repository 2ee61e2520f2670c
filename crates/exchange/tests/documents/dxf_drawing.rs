//! The drawing for CAD, read back by another library: unit, layers, blocks with their attributes, true coordinates.

use std::collections::{BTreeMap, BTreeSet};
use std::io::Cursor;

use dxf::Drawing;
use dxf::entities::EntityType;
use dxf::enums::Units;
use gantline_exchange::documents::{DocumentKind, Wanted};
use gantline_exchange::dxf_drawing::DrawingUnit;
use gantline_plan::document::Tag;
use gantline_plan::quantity::{UnitSystem, length};
use glam::DVec2;

use super::worked::{COURTYARD, SMALL, Worked};

fn read(worked: &Worked, drawing_unit: DrawingUnit) -> Drawing {
    let wanted = Wanted { kinds: vec![DocumentKind::Drawing], drawing_unit, ..Wanted::all(UnitSystem::Si) };
    let bytes = worked.documents(&wanted).remove(0).bytes;
    Drawing::load(&mut Cursor::new(bytes)).unwrap()
}

/// Corners of all closed polylines on a layer.
fn rings(drawing: &Drawing, layer: &str) -> Vec<Vec<DVec2>> {
    let on_layer = drawing.entities().filter(|entity| entity.common.layer == layer);
    let rings = on_layer.filter_map(|entity| match &entity.specific {
        EntityType::LwPolyline(line) => {
            Some(line.vertices.iter().map(|vertex| DVec2::new(vertex.x, vertex.y)).collect())
        }
        _ => None,
    });
    rings.collect()
}

#[test]
fn every_base_is_a_reference_with_its_attributes_at_its_place() {
    for text in [SMALL, COURTYARD] {
        let worked = Worked::of(text);
        let drawing = read(&worked, DrawingUnit::Meters);
        assert_eq!(drawing.header.default_drawing_units, Units::Meters);
        let blocks: BTreeSet<String> = drawing.blocks().map(|block| block.name.clone()).collect();
        let mut seen = 0;
        for entity in drawing.entities() {
            let EntityType::Insert(insert) = &entity.specific else { continue };
            seen += 1;
            assert!(blocks.contains(&insert.name), "{}", insert.name);
            let value = |tag: &str| {
                let found = insert.attributes().find(|attribute| attribute.attribute_tag == tag);
                found.map(|attribute| attribute.value.clone()).unwrap()
            };
            let id = value("ID").parse().unwrap();
            let (placement, unit) = (&worked.plan.placements[&id], &worked.assessment.units[&id]);
            let frame = unit.frame.unwrap();
            assert_eq!(value("TAG"), placement.tag.0);
            assert!((insert.location.x - frame.at.x).abs() < 1e-6 && (insert.location.y - frame.at.y).abs() < 1e-6);
            let turn = (insert.rotation.to_radians() - frame.outward_rad).sin();
            assert!(turn.abs() < 1e-6);
            if let Some(out) = unit.setting_out {
                assert_eq!(value("SETBACK"), length(out.setback_m, UnitSystem::Si));
            }
        }
        assert_eq!(seen, worked.assessment.units.values().filter(|unit| unit.frame.is_some()).count());
    }
}

/// Witness: the plan's own corners.
#[test]
fn outlines_are_true_to_size_in_meters_and_millimeters() {
    let worked = Worked::of(SMALL);
    let corners = worked.plan.roofs.values().next().unwrap().outer.points();
    for (unit, per_m) in [(DrawingUnit::Meters, 1.0), (DrawingUnit::Millimeters, 1000.0)] {
        let drawing = read(&worked, unit);
        let found = rings(&drawing, "GL-OUTLINE-SLABEDGE").concat();
        for &corner in &corners {
            assert!(found.iter().any(|&at| at.distance(corner * per_m) < 1e-6 * per_m), "{corner} is not drawn");
        }
    }
}

#[test]
fn bases_that_look_alike_share_a_block() {
    let worked = Worked::of(SMALL);
    let drawing = read(&worked, DrawingUnit::Meters);
    let own = drawing.blocks().filter(|block| block.name.starts_with("GL-BASE-")).count();
    // What a unit looks like in its base's own axes: its make-up with its slew, and how its base came out.
    let mut looks: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for entity in drawing.entities() {
        let EntityType::Insert(insert) = &entity.specific else { continue };
        let id = insert.attributes().find(|one| one.attribute_tag == "ID").unwrap().value.parse().unwrap();
        let (placement, unit) = (&worked.plan.placements[&id], &worked.assessment.units[&id]);
        let look = format!("{:?} {:?}", placement.make_up, unit.base.as_ref().map(|base| base.state()));
        looks.entry(look).or_default().insert(insert.name.clone());
    }
    assert!(looks.values().all(|blocks| blocks.len() == 1), "units that look alike have one block: {looks:?}");
    assert_eq!(looks.len(), own, "units that do not have one each");
    assert!(own < worked.plan.placements.len());
}

#[test]
fn tags_in_any_letters_read_back() {
    let mut worked = Worked::of(SMALL);
    let tags = ["Dach-Ä %%c", "屋根\\1", "a\u{7}b^c"];
    for (placement, tag) in worked.plan.placements.values_mut().zip(tags) {
        placement.tag = Tag(tag.to_owned());
    }
    let worked = Worked::from(worked.plan);
    let wanted = Wanted { kinds: vec![DocumentKind::Drawing], ..Wanted::all(UnitSystem::Si) };
    let bytes = worked.documents(&wanted).remove(0).bytes;
    let holds = |part: &[u8]| bytes.windows(part.len()).any(|window| window == part);
    assert!(holds(b"Dach-\xc4 %%%%%%c"), "code page 1252, and signs of the format doubled");
    assert!(holds(b"\\U+5C4B\\U+6839\\U+005C1"), "letters beyond the code page by their number");
    assert!(holds(b"a b^ c"), "nothing ends a line");
    assert!(Drawing::load(&mut Cursor::new(bytes)).is_ok());
}
