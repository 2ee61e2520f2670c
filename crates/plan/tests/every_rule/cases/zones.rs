//! What arm and brace pass, and whether the arm can be slewed out.

use std::f64::consts::FRAC_PI_2;

use gantline_plan::assess::{Code, Severity};
use gantline_plan::basis::NeighborRule;
use gantline_plan::catalog::SlewStops;
use gantline_plan::change::{Change, EdgePatch};
use gantline_plan::document::{Obstacle, Plan};

use crate::case::{Case, Wanted};
use crate::site::{Built, LEVEL_M, Site, rectangle};

const BLOCKING: Wanted = Wanted::Fails(Severity::Blocking);

/// A millimeter less than what is left free, then one more.
const HAIRS: [(f64, &str); 2] = [(0.001, "1 mm too near"), (-0.001, "1 mm farther than asked")];

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = arm();
    all.extend(arm_and_unit());
    all.extend(brace());
    all.extend(brace_and_unit());
    all.extend(way_out());
    all
}

/// 0.10 m must stay free. `plan` makes a plan in which something is this much nearer than that.
fn pair(code: Code, plan: impl Fn(f64) -> Plan) -> [Case; 2] {
    HAIRS.map(|(nearer_m, says)| {
        let wanted = if nearer_m > 0.0 { BLOCKING } else { Wanted::Meets };
        // A hair of a nanometer is left out of the clearance around, times the slope of a brace.
        Case::new(code, says, plan(nearer_m), wanted).measures_within(0.1 - nearer_m, 1e-8)
    })
}

fn add_box(built: &mut Built, outline: [f64; 4], from_m: f64, to_m: f64) {
    let [x0, y0, x1, y1] = outline;
    let outline = rectangle(x0, y0, x1, y1);
    built.change(&Change::AddObstacle(Obstacle { name: "Box".into(), roof: built.roof, outline, from_m, to_m }));
}

/// The arm's axis is 1.90 m over the slab and the arm 160 mm deep: underside 1.82 m, top 1.98 m.
fn arm() -> Vec<Case> {
    let parapet = |nearer: f64| Site { parapet_m: 1.72 + nearer, ..Site::with_rear_tie() }.plan();
    let beam = |nearer: f64| {
        let mut built = Site::with_rear_tie().build();
        add_box(&mut built, [14.0, 0.3, 16.0, 1.4], 2.08 - nearer, 2.5);
        built.plan()
    };
    // The unit stands half a meter from a roof that begins where the south edge ends: while the arm serves it comes over it.
    let roof = |nearer: f64| {
        let mut built = Site { along_m: 29.5, parapet_m: 0.0, ..Site::with_rear_tie() }.build();
        built.add_roof(LEVEL_M + 1.72 + nearer, rectangle(30.0, 0.0, 50.0, 20.0));
        built.plan()
    };
    let mut all = Vec::from(pair(Code::ArmClearsParapet, parapet));
    all.extend(pair(Code::ArmClearsObstacle, beam));
    all.extend(pair(Code::ArmClearsHigherRoof, roof));
    all
}

/// Two units beside each other, both standing, the mast of each as high as the arm of the other. The arm ends, rounded, half
/// its 100 mm beyond its 1.15 m; the mast is taken as wide as the socket, 200 mm; 0.10 m must stay free: 1.40 m apart.
/// There the arm passes while it doesn't serve. Run into each other they overlap from the arm's underside at 1.82 m
/// to the top of the other's head at 1.98 m.
fn arm_and_unit() -> Vec<Case> {
    let code = Code::ArmClearsUnit;
    let caution = Wanted::Fails(Severity::Caution);
    vec![
        Case::new(code, "1 mm too near", two(1.399), caution).measures(-0.16),
        Case::new(code, "1 mm farther than asked", two(1.401), Wanted::Meets).measures_within(0.101, 1e-8),
    ]
}

fn two(apart_m: f64) -> Plan {
    let mut site = Site::with_rear_tie();
    site.basis.rules.neighbors = NeighborRule::Any;
    let mut built = site.build();
    built.place(15.0 + apart_m, 0.7);
    built.plan()
}

/// Undersides by hand, tubes 70 mm, with half the tube and 0.10 m around: what begins at r is met from r − 0.135 m on.
///
/// - Front strut: from 0.60 m below the arm's axis at 1.45 m up to it 0.55 m in front; the parapet's inner face is 0.55 m in
///   front of the mast: met from 0.415 m; 0.85 + 0.415·(0.60/0.55) − 0.035/cos β.
/// - Rear tie: from 0.95 m below the arm's axis at 1.90 m up to it 0.70 m behind; box and roof begin 0.35 m behind the mast:
///   met from 0.215 m; 0.95 + 0.215·(0.95/0.70) − 0.035/cos β.
fn brace() -> Vec<Case> {
    let upright = |slope: f64| 0.035 * (1.0 + slope * slope).sqrt();
    let front = 0.60 / 0.55;
    let front_m = 0.85 + 0.415 * front - upright(front) - 0.10;
    let rear = 0.95 / 0.70;
    let rear_m = 0.95 + 0.215 * rear - upright(rear) - 0.10;
    let parapet = |nearer: f64| {
        let mut built = Site::with_front_strut().build();
        built.patch(&[0], EdgePatch { parapet_height_m: Some(front_m + nearer), ..EdgePatch::default() });
        built.plan()
    };
    let plant = |nearer: f64| {
        let mut built = Site::with_rear_tie().build();
        add_box(&mut built, [13.0, 1.05, 17.0, 3.0], 0.0, rear_m + nearer);
        built.plan()
    };
    let roof = |nearer: f64| {
        let mut built = Site { size_m: (30.0, 1.05), parapet_m: 0.0, ..Site::with_rear_tie() }.build();
        built.add_roof(LEVEL_M + rear_m + nearer, rectangle(0.0, 1.05, 30.0, 20.0));
        built.plan()
    };
    let mut all = Vec::from(pair(Code::BraceClearsParapet, parapet));
    all.extend(pair(Code::BraceClearsObstacle, plant));
    all.extend(pair(Code::BraceClearsHigherRoof, roof));
    all
}

/// Two units beside each other as above: the tie ends, rounded, 35 mm beyond its pin at 0.70 m; 0.70 + 0.035 + 0.10 + 0.10
/// = 0.935 m apart. It passes there while the arm doesn't serve.
fn brace_and_unit() -> Vec<Case> {
    let code = Code::BraceClearsUnit;
    vec![
        Case::new(code, "1 mm too near", two(0.934), Wanted::Fails(Severity::Caution)),
        Case::new(code, "1 mm farther than asked", two(0.936), Wanted::Meets).measures_within(0.101, 1e-8),
    ]
}

/// Inboard begins a quarter turn from straight out: stops a thousandth short of it leave no way.
fn way_out() -> Vec<Case> {
    let stops = |share: f64| {
        let stop = FRAC_PI_2 * share;
        let slew_stops = SlewStops::Between { from_rad: -stop, to_rad: stop };
        Site { slew_stops, ..Site::with_rear_tie() }.plan()
    };
    let code = Code::WayOutFromInboard;
    vec![
        Case::new(code, "stops short of inboard", stops(0.999), BLOCKING),
        Case::new(code, "stops just inboard", stops(1.001), Wanted::Meets),
    ]
}
