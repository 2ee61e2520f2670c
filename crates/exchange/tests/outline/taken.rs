//! Outlines taken into a plan: roofs with holes, lower roofs, obstacles, with the drawing's grid kept.

use gantline_exchange::outline::{
    Asked, Heights, KeptPlace, OutlineFault, Outlines, Role, TakeFault, place_to_keep, read,
};
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::change::{History, Refused, apply};
use gantline_plan::document::Plan;
use gantline_plan::file;
use glam::DVec2;

use super::given::{all, drawing, outlines, ring, with_entities};

const HEIGHTS: Heights =
    Heights { roof_level_m: 24.0, lower_roof_level_m: 6.0, obstacle_from_m: 0.0, obstacle_to_m: 2.4 };

fn blank() -> Plan {
    Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode())
}

/// A podium with a tower on it; the tower has a courtyard with a pavilion, and plant stands beside the courtyard.
fn site() -> Outlines {
    let rings = [
        ring("SLAB", &[(-20., -20.), (60., -20.), (60., 50.), (-20., 50.)]),
        ring("SLAB", &[(0., 0.), (0., 30.), (40., 30.), (40., 0.)]),
        ring("SLAB", &[(5., 5.), (25., 5.), (25., 25.), (5., 25.)]),
        ring("SLAB", &[(10., 10.), (18., 10.), (18., 18.), (10., 18.)]),
        ring("PLANT", &[(30., 10.), (35., 10.), (35., 15.), (30., 15.)]),
    ];
    outlines(&with_entities(&rings.concat()))
}

#[test]
fn roofs_holes_and_obstacles_are_made_in_one_step() {
    let found = site();
    let areas: Vec<f64> = found.loops.iter().map(|one| one.area_m2).collect();
    assert_eq!(areas, [5600.0, 1200.0, 400.0, 64.0, 25.0]);
    let roles = [Role::LowerRoof, Role::Roof, Role::Hole, Role::LowerRoof, Role::Obstacle];
    let mut history = History::new(blank());
    let change = found.change(history.plan(), &roles, &HEIGHTS).unwrap();
    history.change("outline", &change).unwrap();
    let plan = history.plan().clone();
    let roofs: Vec<(&str, f64, f64)> =
        plan.roofs.values().map(|roof| (roof.name.as_str(), roof.level_m, roof.area_m2())).collect();
    assert_eq!(roofs, [("Lower roof 1", 6.0, 5600.0), ("Roof 2", 24.0, 800.0), ("Lower roof 3", 6.0, 64.0)]);
    let obstacle = plan.obstacles.values().next().unwrap();
    assert_eq!((plan.roofs[&obstacle.roof].name.as_str(), obstacle.to_m), ("Roof 2", 2.4));
    assert_eq!(file::read(file::write(&plan).unwrap().as_bytes()).unwrap(), *plan);
    assert!(history.undo());
    assert_eq!(**history.plan(), blank());
}

#[test]
fn the_usual_roles_are_roof_hole_and_roof_again() {
    use Role::{Hole, LeaveOut, Roof};
    assert_eq!(site().usual_roles(), [Roof, Hole, Roof, Hole, Roof]);
    // What stands on another layer than the slab is not guessed at.
    assert_eq!(site().cautious_roles(), [Roof, Hole, Roof, Hole, LeaveOut]);
    let crossed = [
        ring("A", &[(0., 0.), (30., 0.), (30., 30.), (0., 30.)]),
        ring("A", &[(20., 20.), (40., 20.), (40., 40.), (20., 40.)]),
    ];
    assert_eq!(outlines(&with_entities(&crossed.concat())).usual_roles(), [Roof, LeaveOut]);
}

#[test]
fn what_can_not_be_taken_is_named_with_its_place_and_changes_nothing() {
    let found = site();
    let plan = blank();
    let alone = [Role::LeaveOut, Role::LeaveOut, Role::LeaveOut, Role::LeaveOut, Role::Hole];
    let fault = found.change(&plan, &alone, &HEIGHTS).unwrap_err();
    assert!(matches!(fault, TakeFault::OnNoRoof { what: "hole", at } if at == DVec2::new(30.0, 10.0)), "{fault}");
    assert_eq!(found.change(&plan, &[Role::LeaveOut; 5], &HEIGHTS).unwrap_err(), TakeFault::Nothing);
    let too_high = Heights { roof_level_m: 1e6, ..HEIGHTS };
    let fault = found.change(&plan, &found.usual_roles(), &too_high).unwrap_err();
    assert!(matches!(fault, TakeFault::Refused(Refused::OutOfRange { field: "level_m", .. })), "{fault}");
    // A hole inside of a hole of the same roof.
    let twice = [Role::LeaveOut, Role::Roof, Role::Hole, Role::Hole, Role::LeaveOut];
    assert!(found.change(&plan, &twice, &HEIGHTS).unwrap_err().place().is_some());
}

#[test]
fn a_second_drawing_of_the_same_grid_lies_beside_the_first() {
    let work = read(&drawing("far_from_the_origin.dxf")).unwrap();
    let first = all(&work, None).unwrap();
    let plan = blank();
    assert_eq!(place_to_keep(&plan), None);
    let plan = apply(&plan, &first.change(&plan, &first.usual_roles(), &HEIGHTS).unwrap()).unwrap().plan;
    assert_eq!(plan.datum.grid_origin_m, DVec2::new(412_340.0, 5_654_320.0));
    let corner = plan.edges().next().unwrap().ring.ends(0).0;
    assert!((plan.datum.in_grid(corner) - DVec2::new(412_345.678, 5_654_321.098)).length() < 0.01);
    // Seven digits before the point and microns behind it are kept in the file.
    let text = file::write(&plan).unwrap();
    assert_eq!(file::read(text.as_bytes()).unwrap(), plan);
    // Taken again as an obstacle, it lies on the roof; with an origin of its own it is refused.
    let asked =
        Asked { layers: [0].into(), unit: None, tolerance_m: 0.005, chord_m: 0.005, place: place_to_keep(&plan) };
    let again = work.outlines(&asked).unwrap();
    assert_eq!(again.loops[0].corners, first.loops[0].corners);
    let at_zero = KeptPlace { origin_m: DVec2::ZERO, plane: None };
    let shifted = work.outlines(&Asked { place: Some(at_zero), ..asked });
    assert!(matches!(shifted, Err(OutlineFault::FarFromPlan { .. })), "so far from the plan's origin nothing can lie");
    let elsewhere = Outlines { origin_m: DVec2::ONE, ..again };
    let fault = elsewhere.change(&plan, &[Role::Roof], &HEIGHTS).unwrap_err();
    assert!(matches!(fault, TakeFault::OtherOrigin { .. }), "{fault}");
    assert!(fault.to_string().contains("412340.000 m") && fault.to_string().contains("(1.000 m, 1.000 m)"), "{fault}");
}

/// A square of some 55 m from a corner in degrees.
fn in_degrees(lon: f64, lat: f64) -> String {
    let (east, north) = (lon + 0.001, lat + 0.0005);
    format!(
        r#"{{"type":"Polygon","coordinates":[[[{lon},{lat}],[{east},{lat}],[{east},{north}],[{lon},{north}],[{lon},{lat}]]]}}"#
    )
}

/// Witness: each file alone is true to a plane of its own; the distance of their corners by the radii of curvature at 60° north
/// (M = 6383.454 km, N cos φ = 3197.105 km): 0.002° of longitude are 111.600 m.
#[test]
fn a_second_file_in_degrees_lies_on_the_plane_of_the_first() {
    let first = read(in_degrees(10.0, 60.0).as_bytes()).unwrap();
    let plan = blank();
    let found = all(&first, None).unwrap();
    let plan = apply(&plan, &found.change(&plan, &found.usual_roles(), &HEIGHTS).unwrap()).unwrap().plan;
    assert!(plan.datum.local_plane.is_some_and(|plane| (plane.lon_deg - 10.0005).abs() < 1e-9));
    assert_eq!(file::read(file::write(&plan).unwrap().as_bytes()).unwrap(), plan);
    let second = read(in_degrees(10.002, 60.0).as_bytes()).unwrap();
    let asked =
        Asked { layers: [0].into(), unit: None, tolerance_m: 0.005, chord_m: 0.005, place: place_to_keep(&plan) };
    let found = second.outlines(&asked).unwrap();
    let plan = apply(&plan, &found.change(&plan, &[Role::Roof], &HEIGHTS).unwrap()).unwrap().plan;
    let west: Vec<f64> =
        plan.roofs.values().map(|roof| roof.outer.points().iter().map(|at| at.x).fold(f64::MAX, f64::min)).collect();
    assert!((west[1] - west[0] - 111.600).abs() < 0.003, "{west:?}");
}

#[test]
fn degrees_beside_the_grid_of_a_drawing_are_refused_and_both_places_named() {
    let first = read(&drawing("far_from_the_origin.dxf")).unwrap();
    let found = all(&first, None).unwrap();
    let plan = blank();
    let plan = apply(&plan, &found.change(&plan, &found.usual_roles(), &HEIGHTS).unwrap()).unwrap().plan;
    let second = read(in_degrees(10.0, 60.0).as_bytes()).unwrap();
    let asked =
        Asked { layers: [0].into(), unit: None, tolerance_m: 0.005, chord_m: 0.005, place: place_to_keep(&plan) };
    let fault = second.outlines(&asked).unwrap_err();
    assert!(matches!(fault, OutlineFault::DegreesBesideGrid { .. }), "{fault}");
    for part in ["412340.000 m", "10.0005000° east", "new plan"] {
        assert!(fault.to_string().contains(part), "{fault}");
    }
    // Put together alone, they have a plane that the plan has not.
    let alone = all(&second, None).unwrap();
    let fault = alone.change(&plan, &[Role::Roof], &HEIGHTS).unwrap_err();
    assert!(matches!(fault, TakeFault::OtherOrigin { .. }), "{fault}");
}
