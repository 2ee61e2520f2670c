//! Plans to text and back, changes and undo to the byte, and files that can't be read.

use gantline_plan::basis::{AnchorageCode, DesignCode, presets};
use gantline_plan::catalog::Family;
use gantline_plan::change::{Change, EdgePatch, History, PlacementPatch, Refused};
use gantline_plan::document::{Datum, EdgeEnd, EdgeId, GeoPlace, PlacementId, Plan, Standing, Station, ThingId};
use gantline_plan::file::{ReadError, read, schema, write};
use gantline_plan::geometry::frame::Frame;
use glam::DVec2;
use proptest::prelude::*;

fn sketched() -> History {
    let mut history = History::new(Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode()));
    let family: Family = serde_json::from_str(include_str!("../../../assets/families/heron.json")).unwrap();
    history.change("family", &Change::AddFamily(Box::new(family))).unwrap();
    let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    history.change("roof", &Change::AddRoof { name: String::new(), level_m: 24.0, outline }).unwrap();
    history
}

fn edge(history: &History, index: usize) -> EdgeId {
    history.plan().edges().nth(index).unwrap().edge().id
}

fn place(history: &mut History, edge: EdgeId, along_m: f64) -> PlacementId {
    let (&family, data) = history.plan().families.iter().next().unwrap();
    let make_up = data.make_ups(family).remove(0);
    let station = Station { from: EdgeEnd::Start, distance_m: along_m };
    let stands = Standing::OnEdge { edge, station, setback_m: 0.8, turn_rad: 0.0 };
    let done = history.change("place", &Change::Place { make_up, stands, tag: None }).unwrap();
    let ThingId::Placement(id) = done.made[0] else { panic!("a unit was placed") };
    id
}

fn frame(history: &History, id: PlacementId) -> Frame {
    Frame::of(history.plan(), &history.plan().placements[&id].stands).unwrap()
}

#[test]
fn a_plan_reads_back_equal_and_writes_the_same_bytes() {
    let mut history = sketched();
    let south = edge(&history, 0);
    place(&mut history, south, 4.0);
    let text = write(history.plan()).unwrap();
    let again = read(text.as_bytes()).unwrap();
    assert_eq!(again, **history.plan());
    assert_eq!(write(&again).unwrap(), text);
    assert!(text.starts_with("{\n  \"format\": \"gantline-plan\",\n  \"version\": 2,\n  \"title\""));
    assert!(text.contains("\"at\": [30.0,20.0]"), "points stay on one line");
    assert!(schema()["properties"].get("placements").is_some());
}

#[test]
fn the_origin_in_the_drawings_grid_is_kept_to_the_digit_and_written_only_where_there_is_one() {
    let mut history = sketched();
    assert!(!write(history.plan()).unwrap().contains("grid_origin_m"));
    let grid_origin_m = DVec2::new(412_340.125, 5_654_320.000_001);
    let datum = Datum { grid_origin_m, ..history.plan().datum.clone() };
    history.change("datum", &Change::SetDatum(datum.clone())).unwrap();
    let again = read(write(history.plan()).unwrap().as_bytes()).unwrap();
    assert_eq!(again.datum, datum);
    assert_eq!(again.datum.in_grid(DVec2::new(0.875, 1.0)), DVec2::new(412_341.0, 5_654_321.000_001));
    let nowhere = Datum { grid_origin_m: DVec2::new(f64::NAN, 0.0), ..datum };
    assert!(matches!(history.change("datum", &Change::SetDatum(nowhere)), Err(Refused::OutOfRange { .. })));
    let text = write(&again).unwrap().replace("5654320.000001", "1e300");
    assert!(matches!(read(text.as_bytes()), Err(ReadError::Part { path, .. }) if path == "datum"));
}

#[test]
fn the_plane_of_degrees_is_kept_and_a_place_that_is_none_is_named() {
    let mut history = sketched();
    assert!(!write(history.plan()).unwrap().contains("local_plane"));
    let local_plane = Some(GeoPlace { lon_deg: 10.000_500_1, lat_deg: -60.1 });
    let datum = Datum { local_plane, ..history.plan().datum.clone() };
    history.change("datum", &Change::SetDatum(datum.clone())).unwrap();
    let text = write(history.plan()).unwrap();
    assert_eq!(read(text.as_bytes()).unwrap().datum, datum);
    let text = text.replace("-60.1", "-90.1");
    assert!(matches!(read(text.as_bytes()), Err(ReadError::Part { path, .. }) if path == "datum"));
}

/// The witness is the form of version 1 itself: a square plate by its side, no code for anchors, no fixings.
#[test]
fn a_file_of_version_1_reads_with_its_square_plates_and_is_written_as_of_today() {
    let mut history = sketched();
    let south = edge(&history, 0);
    place(&mut history, south, 4.0);
    let mut value: serde_json::Value = serde_json::from_str(&write(history.plan()).unwrap()).unwrap();
    value["version"] = 1.into();
    value["code"].as_object_mut().unwrap().retain(|key, _| !["anchorage", "bond_defaults"].contains(&key.as_str()));
    value["basis"].as_object_mut().unwrap().remove("tests");
    for family in value["families"].as_object_mut().unwrap().values_mut() {
        family.as_object_mut().unwrap().remove("fixings");
        for base in family["bases"].as_object_mut().unwrap().values_mut() {
            let base = base.as_object_mut().unwrap();
            base.retain(|key, _| !["kind", "plate_m", "plate_material", "anchors", "bearing"].contains(&key.as_str()));
            base.insert("plate_side_m".into(), 0.36.into());
        }
    }
    let plan = read(value.to_string().as_bytes()).unwrap();
    assert_eq!(plan.code.anchorage, AnchorageCode::En1992Part4);
    for base in plan.families.values().next().unwrap().bases.values() {
        assert_eq!(base.plate_m, [(0.18, -0.18), (0.18, 0.18), (-0.18, 0.18), (-0.18, -0.18)].map(DVec2::from));
        assert_eq!(base.anchors, None, "what an old file does not say is not made up");
    }
    assert!(write(&plan).unwrap().contains("\"version\": 2"));
}

#[test]
fn a_split_and_joined_edge_keeps_its_units_in_place() {
    let mut history = sketched();
    let south = edge(&history, 0);
    let units: Vec<PlacementId> = [3.0, 12.0, 20.0, 28.5].map(|along| place(&mut history, south, along)).to_vec();
    let before: Vec<Frame> = units.iter().map(|&id| frame(&history, id)).collect();
    let bytes = write(history.plan()).unwrap();
    let done = history.change("split", &Change::InsertCorner { edge: south, at: DVec2::new(15.0, -2.0) }).unwrap();
    let ThingId::Edge(second) = done.made[0] else { panic!("an edge was made") };
    for (id, old) in units.iter().zip(&before) {
        let new = frame(&history, *id);
        assert!(new.at.distance(old.at) < 1e-9, "{id} moved by {}", new.at.distance(old.at));
        assert!((new.outward_rad - old.outward_rad).abs() < 1e-9);
    }
    let on_second = |id: &PlacementId| matches!(history.plan().placements[id].stands, Standing::OnEdge { edge, .. } if edge == second);
    assert_eq!(units.iter().map(on_second).collect::<Vec<_>>(), [false, false, true, true]);
    let patch = EdgePatch { parapet_height_m: Some(0.6), ..EdgePatch::default() };
    history.change("parapet", &Change::SetEdges(vec![second], patch)).unwrap();
    let done = history.change("join", &Change::RemoveCorner { edge: second }).unwrap();
    assert_eq!(done.said.len(), 1, "dropped data are said");
    for (id, old) in units.iter().zip(&before) {
        assert!(frame(&history, *id).at.distance(old.at) < 1e-9);
    }
    assert!(history.undo() && history.undo() && history.undo());
    assert_eq!(write(history.plan()).unwrap(), bytes, "undo gives the same bytes");
    assert!(history.redo());
    assert!(history.undo());
    assert_eq!(write(history.plan()).unwrap(), bytes);
}

#[test]
fn a_moved_corner_keeps_stations_and_a_moved_edge_takes_its_units_along() {
    let mut history = sketched();
    let (south, east) = (edge(&history, 0), edge(&history, 1));
    let near_start = place(&mut history, south, 3.0);
    let near_end = place(&mut history, south, 28.0);
    history.change("corner", &Change::MoveCorner { edge: east, to: DVec2::new(36.0, 0.0) }).unwrap();
    // Placed by its distance from the start, so it keeps that and not its distance from the moved corner.
    assert_eq!(frame(&history, near_start).at, DVec2::new(3.0, 0.8));
    assert_eq!(frame(&history, near_end).at, DVec2::new(28.0, 0.8));
    history.change("edge", &Change::MoveEdge { edge: south, by: DVec2::new(0.0, -1.5) }).unwrap();
    assert_eq!(frame(&history, near_start).at, DVec2::new(3.0, -0.7));
}

#[test]
fn a_gesture_is_one_step_and_abandoning_it_changes_no_byte() {
    let mut history = sketched();
    let south = edge(&history, 0);
    let unit = place(&mut history, south, 4.0);
    let before = write(history.plan()).unwrap();
    let drag =
        |along_m| Change::SetPlacements(vec![unit], PlacementPatch { along_m: Some(along_m), ..Default::default() });
    history.begin("move");
    for step in 0..60 {
        history.preview(&drag(4.0 + f64::from(step) * 0.1)).unwrap();
    }
    history.abandon();
    assert_eq!(write(history.plan()).unwrap(), before);
    history.begin("move");
    for step in 0..60 {
        history.preview(&drag(4.0 + f64::from(step) * 0.1)).unwrap();
    }
    history.commit();
    assert!(history.undo());
    assert_eq!(write(history.plan()).unwrap(), before);
    history.begin("nothing");
    history.commit();
    assert_eq!(history.redo_name(), Some("move"), "a gesture that changes nothing is no step");
}

#[test]
fn outlines_that_cross_and_holes_that_leave_the_roof_are_refused_with_their_place() {
    let mut history = sketched();
    let east = edge(&history, 1);
    let refused = history.change("corner", &Change::MoveCorner { edge: east, to: DVec2::new(15.0, 30.0) }).unwrap_err();
    assert_eq!(refused.place(), Some(DVec2::new(10.0, 20.0)), "{refused}");
    let roof = *history.plan().roofs.keys().next().unwrap();
    let hole = [(25.0, 5.0), (35.0, 5.0), (35.0, 9.0), (25.0, 9.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    let refused = history.change("hole", &Change::AddHole { roof, outline: hole }).unwrap_err();
    assert!(matches!(refused, Refused::HoleLeavesRoof { at } if at.x == 30.0), "{refused}");
    let inside = [(10.0, 5.0), (18.0, 5.0), (18.0, 12.0), (10.0, 12.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    history.change("hole", &Change::AddHole { roof, outline: inside }).unwrap();
    // 30 × 20 less 8 × 7 (hand value).
    assert_eq!(history.plan().roofs[&roof].area_m2(), 600.0 - 56.0);
    assert!(history.plan().roofs[&roof].holes[0].signed_area_m2() < 0.0, "a hole runs clockwise");
}

#[test]
fn files_that_cannot_be_read_say_where_and_why() {
    let mut history = sketched();
    let south = edge(&history, 0);
    let unit = place(&mut history, south, 4.0);
    let good = write(history.plan()).unwrap();
    let told = |text: &str| read(text.as_bytes()).unwrap_err().to_string();
    assert!(matches!(read(b"{"), Err(ReadError::NotJson { line: 1, .. })));
    assert!(matches!(read(b"{}"), Err(ReadError::OtherFormat { .. })));
    let newer = good.replace("\"version\": 2", "\"version\": 7");
    assert_eq!(read(newer.as_bytes()), Err(ReadError::Newer { found: 7 }));
    let lost_edge = good.replace(&format!("\"edge\": \"{south}\""), "\"edge\": \"edge-999\"");
    assert_eq!(told(&lost_edge), format!("placements › {unit} › stands › edge: edge-999 is not in the file"));
    let wrong_kind = good.replace("\"setback_m\": 0.8", "\"setback_m\": \"far\"");
    assert!(told(&wrong_kind).starts_with(&format!("placements › {unit} › stands: ")), "{}", told(&wrong_kind));
    let crossed = good.replace("[30.0,0.0]", "[15.0,30.0]");
    assert!(told(&crossed).contains("cross"), "{}", told(&crossed));
    let truncated = &good[..good.len() / 2];
    assert!(matches!(read(truncated.as_bytes()), Err(ReadError::NotJson { .. })));
}

proptest! {
    /// Whatever bytes come, reading ends with a plan or an error.
    #[test]
    fn no_file_makes_the_reader_panic(cut in 0_usize..4000, byte: u8) {
        let history = sketched();
        let mut bytes = write(history.plan()).unwrap().into_bytes();
        let at = cut % bytes.len();
        bytes[at] = byte;
        let _ = read(&bytes);
    }
}
