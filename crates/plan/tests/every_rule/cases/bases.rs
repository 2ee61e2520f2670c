//! What a base asks of roof, slab and wall; its pins and its test. Limits are data of the cases themselves.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::basis::{ProofTest, TestDuty};
use gantline_plan::catalog::{Base, BaseKind, FixingKind, HoldDown, PedestalBody, WallSide};
use gantline_plan::change::{Change, RoofPatch};
use gantline_plan::document::{NoDrillZone, PartId, Plan, Slab, SlabZone};
use glam::DVec2;

use crate::case::{Case, Wanted};
use crate::site::{Site, rigid_arm, set};

const BLOCKING: Wanted = Wanted::Fails(Severity::Blocking);
const CAUTION: Wanted = Wanted::Fails(Severity::Caution);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = build_up();
    all.extend(slab());
    all.extend(no_drill());
    all.extend(water());
    all.extend(confirmed());
    all.extend(wall());
    all.extend(pins());
    all.extend(proof());
    all
}

/// The floor socket of the demonstration family with something else about it.
fn with_base(edit: impl FnOnce(&mut Base)) -> Site {
    let mut site = Site::with_rear_tie();
    edit(site.family.bases.get_mut(&PartId::new("floor-socket")).unwrap());
    site
}

/// A build-up of 65 mm.
fn build_up() -> Vec<Case> {
    let built = |kind: BaseKind| Site { build_up_m: 0.065, ..with_base(|base| base.kind = kind) }.plan();
    let flush = |stack_height_m: f64| {
        built(BaseKind::FlushPlate {
            stack_height_m,
            hold_down: HoldDown { pins: 8, radius_m: 0.15, resistance_n: Some(1e6) },
        })
    };
    let raised = |height_m: f64| built(BaseKind::Pedestal { height_m, body: PedestalBody::SteelStub });
    let code = Code::BaseFitsBuildUp;
    vec![
        Case::new(code, "a stack 1 mm too high", flush(0.066), CAUTION).measures(0.066),
        Case::new(code, "a stack 1 mm lower", flush(0.064), Wanted::Meets).measures(0.064),
        Case::new(code, "a pedestal 1 mm too low", raised(0.064), CAUTION).measures(0.064),
        Case::new(code, "a pedestal 1 mm higher", raised(0.066), Wanted::Meets).measures(0.066),
    ]
}

/// The unit with its plate of 360 mm from (14.82, 0.52) to (15.18, 0.88) m on a slab.
fn on(site: &Site, slab: Slab) -> Plan {
    let mut built = site.build();
    let roof = built.roof;
    built.change(&Change::SetRoof(roof, RoofPatch { slab: Some(slab), ..RoofPatch::default() }));
    built.plan()
}

fn rectangle(x0: f64, x1: f64) -> Vec<DVec2> {
    [(x0, 0.0), (x1, 0.0), (x1, 2.0), (x0, 2.0)].map(DVec2::from).to_vec()
}

/// The floor socket asks for 240 mm; a sleeve 200 mm deep with 50 mm of cover for 250 mm.
fn slab() -> Vec<Case> {
    let floor = Site::with_rear_tie();
    let sleeve = with_base(|base| {
        base.anchors = None;
        base.least_slab_m = None;
        base.kind = BaseKind::CastInSleeve { depth_m: 0.2, cover_m: 0.05, drained: Some(true), capped: Some(true) };
    });
    let thick = |thickness_m: f64| Slab { thickness_m, ..Slab::default() };
    // A thinner zone that begins 1 mm inside, or 1 mm past, the plate's side.
    let zone = |from_m: f64| Slab {
        thickness_m: 0.3,
        zones: vec![SlabZone { outline: rectangle(from_m, 20.0), thickness_m: 0.2 }],
        ..Slab::default()
    };
    let code = Code::SlabThickEnough;
    vec![
        Case::new(code, "1 mm too thin", on(&floor, thick(0.239)), BLOCKING).measures(0.239),
        Case::new(code, "1 mm thicker", on(&floor, thick(0.241)), Wanted::Meets).measures(0.241),
        Case::new(code, "a thin zone 1 mm under the plate", on(&floor, zone(15.179)), BLOCKING).measures(0.2),
        Case::new(code, "a thin zone 1 mm beside it", on(&floor, zone(15.181)), Wanted::Meets).measures(0.3),
        Case::new(code, "1 mm too thin for a sleeve", on(&sleeve, thick(0.249)), BLOCKING).measures(0.249),
        Case::new(code, "1 mm thicker than a sleeve needs", on(&sleeve, thick(0.251)), Wanted::Meets),
    ]
}

fn no_drill() -> Vec<Case> {
    let site = Site::with_rear_tie();
    let zone = |from_m: f64| Slab {
        no_drill: vec![NoDrillZone { outline: rectangle(from_m, 20.0), reason: "post-tensioned".into() }],
        ..Slab::default()
    };
    let code = Code::DrillingAllowed;
    vec![
        Case::new(code, "1 mm in the zone", on(&site, zone(15.179)), BLOCKING),
        Case::new(code, "1 mm beside the zone", on(&site, zone(15.181)), Wanted::Meets),
    ]
}

/// Yes or no.
fn water() -> Vec<Case> {
    let sleeve = |drained: bool, capped: bool| {
        let kind = BaseKind::CastInSleeve { depth_m: 0.2, cover_m: 0.05, drained: Some(drained), capped: Some(capped) };
        with_base(|base| base.kind = kind).plan()
    };
    let code = Code::SleeveKeepsWaterOut;
    vec![
        Case::new(code, "no drain", sleeve(false, true), CAUTION),
        Case::new(code, "no cap", sleeve(true, false), CAUTION),
        Case::new(code, "drain and cap", sleeve(true, true), Wanted::Meets),
    ]
}

/// Yes or no.
fn confirmed() -> Vec<Case> {
    let slab = |confirmed: bool| on(&Site::with_rear_tie(), Slab { confirmed, ..Slab::default() });
    let code = Code::SlabDataConfirmed;
    vec![
        Case::new(code, "nobody stands behind it", slab(false), CAUTION),
        Case::new(code, "someone does", slab(true), Wanted::Meets),
    ]
}

/// A plate 300 × 400 mm with its middle 0.50 m up, on a parapet 1.10 m high and 200 mm thick on the outline; the mast axis
/// 0.15 m behind its face, so that the setback is 0.35 m.
fn wall() -> Vec<Case> {
    let base = |least: [f64; 3], along_m: f64, setback_m: f64| {
        let site = with_base(|base| {
            base.plate_m = [(0.15, -0.2), (0.15, 0.2), (-0.15, 0.2), (-0.15, -0.2)].map(DVec2::from).to_vec();
            base.anchors = None;
            base.kind = BaseKind::WallSocket {
                side: WallSide::WallInFront,
                eccentricity_m: 0.15,
                plate_middle_m: 0.5,
                least_wall_m: least[0],
                least_to_top_m: least[1],
                least_to_ends_m: least[2],
            };
        });
        Site { along_m, setback_m, ..site }.plan()
    };
    let code = Code::WallTakesBase;
    vec![
        Case::new(code, "a wall 1 mm too thin", base([0.201, 0.3, 0.3], 15.0, 0.35), BLOCKING).measures(0.2),
        Case::new(code, "a wall 1 mm thicker", base([0.199, 0.3, 0.3], 15.0, 0.35), Wanted::Meets).measures(0.2),
        // 1.10 − 0.50 − 0.20 m.
        Case::new(code, "1 mm too near to the top", base([0.2, 0.401, 0.3], 15.0, 0.35), BLOCKING).measures(0.4),
        Case::new(code, "1 mm farther from the top", base([0.2, 0.399, 0.3], 15.0, 0.35), Wanted::Meets),
        // 0.45 m along less half the plate.
        Case::new(code, "1 mm too near to the end", base([0.2, 0.3, 0.301], 0.45, 0.35), BLOCKING).measures(0.3),
        Case::new(code, "1 mm farther from the end", base([0.2, 0.3, 0.299], 0.45, 0.35), Wanted::Meets),
        // 2 mm are allowed.
        Case::new(code, "3 mm off the face", base([0.2, 0.3, 0.3], 15.0, 0.353), BLOCKING).measures(0.003),
        Case::new(code, "1 mm off the face", base([0.2, 0.3, 0.3], 15.0, 0.351), Wanted::Meets).measures(0.001),
    ]
}

/// 10 kN straight down 1 m out: M = 10 kN·m, nothing lifts. Eight pins at 0.15 m: 2·10 kN·m/(8·0.15 m) = 16.667 kN.
fn pins() -> Vec<Case> {
    let pull_n = 2.0 * 10e3 / (8.0 * 0.15);
    let held = |share: f64| {
        let mut family = rigid_arm();
        let hold_down = HoldDown { pins: 8, radius_m: 0.15, resistance_n: Some(pull_n * share) };
        family.bases.values_mut().next().unwrap().kind = BaseKind::FlushPlate { stack_height_m: 0.05, hold_down };
        Site::weightless(family, 10e3).plan()
    };
    let code = Code::HoldDownPins;
    vec![
        Case::new(code, "pins a thousandth too weak", held(0.999), BLOCKING).measures(pull_n),
        Case::new(code, "pins a thousandth stronger", held(1.001), Wanted::Meets).measures(pull_n),
    ]
}

/// The bonded anchor's validated design load is 45 kN.
fn proof() -> Vec<Case> {
    let tested = |load_n: f64| {
        let mut site = Site::with_rear_tie();
        let proof = ProofTest {
            load_n: set(load_n),
            share: set(1.0),
            hold_s: set(180.0),
            direction: "along the anchor".into(),
            interval: "by the engineer's decision".into(),
        };
        let duty = gantline_plan::basis::Sourced::default_from(TestDuty::Proof(Box::new(proof)), "this test");
        site.basis.tests.insert(FixingKind::Bonded, duty);
        site.plan()
    };
    let code = Code::ProofLoad;
    vec![
        Case::new(code, "a thousandth too much", tested(45_045.0), CAUTION).measures(45_045.0),
        Case::new(code, "a thousandth less", tested(44_955.0), Wanted::Meets).measures(44_955.0),
    ]
}
