//! Files of older versions made into the form of today, step by step, before they are read.

use serde_json::{Map, Value, json};

/// The members of a file of this version in the form of today.
pub fn migrate(members: &mut Map<String, Value>, from_version: u64) {
    if from_version < 2 {
        square_plates_to_corners(members);
        anchorage_beside_members(members);
    }
}

/// Version 1 knew square plates by their side.
fn square_plates_to_corners(members: &mut Map<String, Value>) {
    let families = members.get_mut("families").and_then(Value::as_object_mut);
    let bases =
        families.into_iter().flat_map(Map::values_mut).filter_map(|family| family.get_mut("bases")?.as_object_mut());
    for base in bases.flat_map(Map::values_mut).filter_map(Value::as_object_mut) {
        let Some(side_m) = base.get("plate_side_m").and_then(Value::as_f64) else { continue };
        base.remove("plate_side_m");
        let half = side_m / 2.0;
        base.insert("plate_m".to_owned(), json!([[half, -half], [half, half], [-half, half], [-half, -half]]));
    }
}

/// Version 1 had a code for members alone: anchors go by the code of the same family.
fn anchorage_beside_members(members: &mut Map<String, Value>) {
    let Some(code) = members.get_mut("code").and_then(Value::as_object_mut) else { return };
    let anchorage = match code.get("members").and_then(Value::as_str) {
        Some("eurocode") => "en1992_4",
        Some("aisc360") => "aci318",
        _ => return,
    };
    code.entry("anchorage").or_insert_with(|| json!(anchorage));
}
