//! Whole assessments of small plans, with hand values.

use std::sync::Arc;

use gantline_plan::assess::{Against, Code, Memo, Outcome, Over, Part, Severity, Way, assess, assess_on};
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::catalog::{Family, MakeUp};
use gantline_plan::change::{Change, EdgePatch, History, PlacementPatch};
use gantline_plan::document::{
    EdgeEnd, EdgeId, FacadeFoot, Obstacle, PartId, PlacementId, Plan, RoofId, Standing, Station, ThingId,
};
use gantline_plan::file::read;
use glam::DVec2;

fn heron() -> Family {
    serde_json::from_str(include_str!("../../../assets/families/heron.json")).unwrap()
}

/// A roof 30 × 20 m at +24 m with 1.10 m parapets; its edges are south, east, north, west.
fn rectangle() -> History {
    let mut history = History::new(Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode()));
    history.change("family", &Change::AddFamily(Box::new(heron()))).unwrap();
    let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    history.change("roof", &Change::AddRoof { name: "Roof".into(), level_m: 24.0, outline }).unwrap();
    history
}

fn edges(plan: &Plan) -> Vec<EdgeId> {
    plan.edges().map(|place| place.edge().id).collect()
}

fn make_up(plan: &Plan, mast: &str, arm: &str, brace: &str) -> MakeUp {
    let (&family, data) = plan.families.iter().next().unwrap();
    let mut make_up = data.make_ups(family).remove(0);
    make_up.mast = PartId::new(mast);
    make_up.arm = PartId::new(arm);
    make_up.brace = Some(PartId::new(brace));
    make_up.base = PartId::new("floor-socket");
    make_up
}

fn place(history: &mut History, edge: EdgeId, along_m: f64, setback_m: f64, make_up: MakeUp) -> PlacementId {
    let station = Station { from: EdgeEnd::Start, distance_m: along_m };
    let stands = Standing::OnEdge { edge, station, setback_m, turn_rad: 0.0 };
    let done = history.change("place", &Change::Place { make_up, stands, tag: None }).unwrap();
    let ThingId::Placement(id) = done.made[0] else { panic!("a unit was placed") };
    id
}

#[test]
fn a_unit_on_a_plain_roof_serves_its_facade_where_geometry_says() {
    let mut history = rectangle();
    let south = edges(history.plan())[0];
    let make_up = make_up(history.plan(), "mast-190", "arm-145-rear", "rear-tie-long");
    let id = place(&mut history, south, 10.0, 0.9, make_up);
    let assessment = assess(history.plan(), &mut Memo::new());
    let unit = &assessment.units[&id];
    assert_eq!(unit.serves.len(), 1);
    let served = &unit.serves[0];
    // Tip 1.45 − 0.90 = 0.55 m outside the facade at slew 0; it serves while 1.45·cos ψ − 0.9 ≥ 0.15, so to
    // ψ = acos(1.05/1.45) (hand calculation), on either side: feet reach 1.45·sin ψ to each side of 10 m.
    assert!((served.stand_off_m - 0.55).abs() < 1e-12);
    let turn = served.slew.intervals()[0];
    let widest = (1.05_f64 / 1.45).acos();
    assert!((turn.to_rad - widest).abs() < 1e-9 && (turn.from_rad + widest).abs() < 1e-9);
    let feet: Vec<_> = served.feet.iter().collect();
    assert!((feet[0].from_m - (10.0 - 1.45 * widest.sin())).abs() < 1e-9);
    // Harness at the top of the parapet hangs 1.90 − 1.10 = 0.80 m below the tip: nearer than the 0.9 m of device and slings,
    // so the uppermost 0.10 m is out of reach and there is no stretch covered over the whole height.
    assert!((served.top_below_tip_m - 0.8).abs() < 1e-12);
    assert!(served.full_height.is_empty());
    assert!(served.any_depth.length_m() > 5.0);
}

#[test]
fn the_front_brace_over_the_parapet_is_blocked_by_one_millimeter() {
    // Front strut of the demonstration family: from the mast 0.60 m below the arm's axis to the arm 0.55 m in front; tube
    // 70 mm; mast 1.45 m. The unit stands 0.75 m behind the edge with a parapet 0.20 m thick: its inner face is 0.55 m in
    // front of the mast, the pin on the arm likewise, so that with 0.10 m around and 35 mm half width the strut comes over
    // the parapet from r = 0.55 − 0.135 = 0.415 m. Underside there: 0.85 + 0.415·(0.60/0.55) − 0.035/cos β, with
    // tan β = 0.60/0.55, 1/cos β = sqrt(1 + (12/11)²) = 1.479891.
    let underside = 0.85 + 0.415 * (0.60 / 0.55) - 0.035 * (1.0_f64 + (12.0_f64 / 11.0).powi(2)).sqrt();
    let limit = underside - 0.10;
    let mut history = rectangle();
    let south = edges(history.plan())[0];
    let make_up = make_up(history.plan(), "mast-145", "arm-115-front", "front-strut");
    let id = place(&mut history, south, 15.0, 0.75, make_up);
    for (change_m, blocked) in [(-0.001, false), (0.001, true)] {
        let patch = EdgePatch { parapet_height_m: Some(limit + change_m), ..EdgePatch::default() };
        history.change("parapet", &Change::SetEdges(vec![south], patch)).unwrap();
        let assessment = assess(history.plan(), &mut Memo::new());
        let unit = &assessment.units[&id];
        let pair = unit
            .clearances
            .iter()
            .find(|pair| {
                pair.part == Part::FrontBrace && pair.against == Against::Parapet(south) && pair.over == Over::Serving
            })
            .unwrap();
        assert_eq!(pair.way, Way::Height);
        // A hair of a nanometer is left out of the clearance around, times the slope of the strut.
        assert!((pair.clear_m - (0.10 - change_m)).abs() < 1e-8, "{}", pair.clear_m);
        assert_eq!(pair.conflict, blocked);
        let found = unit
            .checks
            .iter()
            .any(|check| check.code == Code::BraceClearsParapet && check.outcome == Outcome::Fails(Severity::Blocking));
        assert_eq!(found, blocked);
    }
}

#[test]
fn a_memo_changes_no_bit_of_the_assessment() {
    let mut history = rectangle();
    let all = edges(history.plan());
    let mut memo = Memo::new();
    let rear = make_up(history.plan(), "mast-190", "arm-115-rear", "rear-tie-long");
    let mut units = Vec::new();
    for step in 0..12 {
        let edge = all[step % all.len()];
        units.push(place(&mut history, edge, 1.0 + step as f64, 0.7, rear.clone()));
        assert_eq!(assess(history.plan(), &mut memo), assess(history.plan(), &mut Memo::new()));
    }
    for (step, &unit) in units.iter().enumerate() {
        let patch = PlacementPatch { along_m: Some(2.0 + step as f64 * 1.3), ..PlacementPatch::default() };
        history.change("move", &Change::SetPlacements(vec![unit], patch)).unwrap();
        assert_eq!(assess(history.plan(), &mut memo), assess(history.plan(), &mut Memo::new()));
    }
    history.undo();
    assert_eq!(assess(history.plan(), &mut memo), assess(history.plan(), &mut Memo::new()));
    history.change("remove", &Change::RemovePlacements(vec![units[3]])).unwrap();
    assert_eq!(assess(history.plan(), &mut memo), assess(history.plan(), &mut Memo::new()));
}

/// More places of one make-up than a memo keeps: each base is judged, at first and again, as with a new memo.
#[test]
fn more_places_than_a_memo_keeps_leave_no_base_out() {
    let mut history = rectangle();
    let outline = [(0.0, 50.0), (1000.0, 50.0), (1000.0, 70.0), (0.0, 70.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    history.change("roof", &Change::AddRoof { name: "Long".into(), level_m: 24.0, outline }).unwrap();
    let long = edges(history.plan())[4];
    let rear = make_up(history.plan(), "mast-190", "arm-115-rear", "rear-tie-long");
    let ids: Vec<PlacementId> = (0..300)
        .map(|index| {
            place(&mut history, long, 5.0 + 3.2 * f64::from(index), 0.7 + 0.0005 * f64::from(index), rear.clone())
        })
        .collect();
    let mut memo = Memo::new();
    let first = assess(history.plan(), &mut memo);
    for (id, unit) in &first.units {
        let base = unit.base.as_ref().unwrap();
        assert!(base.uses.iter().any(|used| used.share().is_some()), "{id:?}");
    }
    let patch = PlacementPatch { along_m: Some(6.0), ..PlacementPatch::default() };
    history.change("move", &Change::SetPlacements(vec![ids[0]], patch)).unwrap();
    let again = assess(history.plan(), &mut memo);
    assert_eq!(again, assess(history.plan(), &mut Memo::new()));
    assert_eq!(again.units[&ids[200]], first.units[&ids[200]]);
}

/// One thread is the witness of many; the demonstration plans have units, make-ups and facades enough for several.
#[test]
fn the_number_of_threads_changes_no_bit_of_the_assessment() {
    for text in [
        include_str!("../../../demo-projects/small-roof.json"),
        include_str!("../../../demo-projects/courtyard-building.json"),
    ] {
        let plan = read(text.as_bytes()).unwrap();
        let mut moved = History::new(plan.clone());
        let units: Vec<PlacementId> = plan.placements.keys().copied().collect();
        let patch = PlacementPatch { along_m: Some(3.0), ..PlacementPatch::default() };
        moved.change("move", &Change::SetPlacements(units[..1].to_vec(), patch)).unwrap();
        let mut alone = Memo::new();
        let (before, after) = (assess_on(1, &plan, &mut alone), assess_on(1, moved.plan(), &mut alone));
        for threads in [2, 3, 7] {
            let mut memo = Memo::new();
            assert_eq!(assess_on(threads, &plan, &mut memo), before, "{threads} threads");
            assert_eq!(assess_on(threads, moved.plan(), &mut memo), after, "{threads} threads");
        }
    }
}

#[test]
fn a_joint_in_the_parapet_is_no_gap_in_the_reach() {
    let mut history = rectangle();
    let south = edges(history.plan())[0];
    let rear = make_up(history.plan(), "mast-235", "arm-115-rear", "rear-tie-long");
    for along in [12.0, 14.0, 16.0, 18.0] {
        place(&mut history, south, along, 0.7, rear.clone());
    }
    let before = assess(history.plan(), &mut Memo::new());
    history.change("split", &Change::InsertCorner { edge: south, at: DVec2::new(15.0, 0.0) }).unwrap();
    let second = edges(history.plan())[1];
    let patch = EdgePatch { parapet_height_m: Some(0.9), ..EdgePatch::default() };
    history.change("parapet", &Change::SetEdges(vec![second], patch)).unwrap();
    let after = assess(history.plan(), &mut Memo::new());
    let (before, after) = (&before.facades[&south], &after.facades[&south]);
    assert_eq!(after.facade.edges.len(), 2);
    assert_eq!(before.full_height, after.full_height);
    assert!(!before.full_height.is_empty());
}

#[test]
fn a_unit_on_a_low_roof_meets_the_wall_of_the_high_one_and_the_high_facade_ends_on_the_low_roof() {
    let mut history = rectangle();
    // A lower roof south of the high one, sharing its edge.
    let outline = [(0.0, -15.0), (30.0, -15.0), (30.0, 0.0), (0.0, 0.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    let done = history.change("roof", &Change::AddRoof { name: "Low".into(), level_m: 8.0, outline }).unwrap();
    let ThingId::Roof(low) = done.made[0] else { panic!("a roof was made") };
    let high_south = edges(history.plan())[0];
    let patch = EdgePatch { ends_at: Some(FacadeFoot::Roof(low)), ..EdgePatch::default() };
    history.change("foot", &Change::SetEdges(vec![high_south], patch)).unwrap();
    let rear = make_up(history.plan(), "mast-190", "arm-115-rear", "rear-tie-long");
    // Stands free on the low roof, half a meter from the wall: its arm runs into the wall on the rest of its turn.
    let stands = Standing::Free {
        roof: low,
        at: DVec2::new(15.0, -0.5),
        outward_rad: -std::f64::consts::FRAC_PI_2,
        serves: vec![],
    };
    let done = history.change("place", &Change::Place { make_up: rear, stands, tag: None }).unwrap();
    let ThingId::Placement(id) = done.made[0] else { panic!("a unit was placed") };
    let assessment = assess(history.plan(), &mut Memo::new());
    let high = history.plan().roofs.keys().next().copied().unwrap_or(RoofId::from_number(0));
    assert!(
        assessment.units[&id].clearances.iter().any(|pair| pair.against == Against::HigherRoof(high) && pair.conflict)
    );
    // 24.0 + 1.1 m parapet down to the low roof's 8.0 m (no build-up).
    assert!((assessment.facades[&high_south].facade.height_m() - 17.1).abs() < 1e-12);
    // With 0.12 m of build-up on the low roof the facade ends on its finish.
    let patch = gantline_plan::change::RoofPatch { build_up_m: Some(0.12), ..Default::default() };
    history.change("build-up", &Change::SetRoof(low, patch)).unwrap();
    let assessment = assess(history.plan(), &mut Memo::new());
    assert!((assessment.facades[&high_south].facade.height_m() - 16.98).abs() < 1e-12);
}

#[test]
fn an_obstacle_hung_above_the_arm_is_passed_under() {
    let mut history = rectangle();
    let south = edges(history.plan())[0];
    let rear = make_up(history.plan(), "mast-190", "arm-115-rear", "rear-tie-long");
    let id = place(&mut history, south, 15.0, 0.7, rear);
    let roof = *history.plan().roofs.keys().next().unwrap();
    let outline = [(14.0, 0.3), (16.0, 0.3), (16.0, 1.4), (14.0, 1.4)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    let beam =
        |from_m: f64| Obstacle { name: "Beam".into(), roof, outline: outline.clone(), from_m, to_m: from_m + 0.3 };
    // Arm 160 mm deep at 1.90 m: top at 1.98 m; with 0.10 m of room the beam's underside must be 2.08 m up.
    for (from_m, blocked) in [(2.081, false), (2.079, true)] {
        let done = history.change("beam", &Change::AddObstacle(beam(from_m))).unwrap();
        let ThingId::Obstacle(obstacle) = done.made[0] else { panic!("an obstacle was made") };
        let assessment = assess(history.plan(), &mut Memo::new());
        let arm_hit = assessment.units[&id]
            .clearances
            .iter()
            .any(|pair| pair.part == Part::Arm && pair.against == Against::Obstacle(obstacle) && pair.conflict);
        assert_eq!(arm_hit, blocked, "underside at {from_m} m");
        history.undo();
    }
}

#[test]
fn equal_make_ups_share_one_result() {
    let mut history = rectangle();
    let all = edges(history.plan());
    let rear = make_up(history.plan(), "mast-190", "arm-115-rear", "rear-tie-long");
    let one = place(&mut history, all[0], 5.0, 0.7, rear.clone());
    let other = place(&mut history, all[2], 9.0, 0.9, rear);
    let assessment = assess(history.plan(), &mut Memo::new());
    let resolved = |id| Arc::as_ptr(assessment.units[&id].resolved.as_ref().unwrap());
    assert_eq!(resolved(one), resolved(other));
}
