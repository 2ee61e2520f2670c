//! Punching held against hand calculations, symmetry and monotony.

use super::SlabFault;
use super::{AciPunching, EnPunching, FreeEdge, PunchingCheck, PunchingCode, PunchingDesign, SlabActions, SlabDepth};
use std::f64::consts::{FRAC_PI_2, PI};

const EN: PunchingCode = PunchingCode::En1992(EnPunching::RECOMMENDED);
const ACI: PunchingCode = PunchingCode::Aci318(AciPunching::STANDARD);

fn design(edges: Vec<FreeEdge>) -> PunchingDesign {
    let depth = SlabDepth { effective_m: 0.2, bars: None };
    PunchingDesign {
        loaded_m: vec![[-0.2, -0.2], [0.2, -0.2], [0.2, 0.2], [-0.2, 0.2]],
        thickness_m: 0.25,
        down: depth,
        up: SlabDepth { effective_m: 0.15, bars: None },
        strength_pa: 30e6,
        lightweight: 1.0,
        edges,
        openings_m: Vec::new(),
    }
}

fn prepared(edges: Vec<FreeEdge>, code: PunchingCode) -> PunchingCheck {
    design(edges).prepare(code).unwrap()
}

const fn actions(fz_n: f64, mx_nm: f64, my_nm: f64) -> SlabActions {
    SlabActions { fz_n, mx_nm, my_nm }
}

#[test]
fn force_and_moment_in_the_field_are_the_hand_calculation() {
    // By hand, d 0.2: u = 1.6 + 0.8π = 4.11327; W = 0.08 + 0.16 + 0.32 + 0.64 + 0.16π = 1.70265 m² (6.41 with c = 0.4).
    // v = 20e3/(4.11327·0.2) + 0.6·30e3/(1.70265·0.2) = 24.311 + 52.859 = 77.171 kPa over 542.218 kPa = 0.142324.
    let found = prepared(Vec::new(), EN).judge(&actions(-20e3, 0.0, 30e3))[0];
    // Chords: 1e-4.
    assert!((found.control / 0.142_324 - 1.0).abs() < 2e-4, "{}", found.control);
    // At the face: 77.171·4.11327/1.6 = 198.39 kPa over 0.4·0.528·20 MPa = 4.224 MPa.
    assert!((found.face / (198.39e3 / 4.224e6) - 1.0).abs() < 3e-4, "{}", found.face);
}

#[test]
fn a_pure_moment_is_finite_and_punches_both_ways() {
    for code in [EN, ACI] {
        let [down, up] = prepared(Vec::new(), code).judge(&actions(0.0, 0.0, 30e3));
        assert!(down.control.is_finite() && down.control > 0.0);
        // The anchors have less depth above them.
        assert!(up.control > down.control);
    }
}

#[test]
fn an_american_section_with_moment_is_the_hand_calculation() {
    // By hand: b = 0.6, b0 = 2.4 m; J/c as a line: (2·0.6·0.3² + 2·0.6³/12)/0.3 = 0.48 m²; γv 0.4.
    // v = 20e3/(2.4·0.2) + 0.4·30e3/(0.48·0.2) = 41.667 + 125 = 166.667 kPa;
    // φ·0.33·√30·√(2/1.8→1) = 0.75·1.80748 = 1.35561 MPa.
    let found = prepared(Vec::new(), ACI).judge(&actions(-20e3, 0.0, 30e3))[0];
    assert!((found.control - 166.667e3 / 1.355_61e6).abs() < 1e-6, "{}", found.control);
}

#[test]
fn turning_everything_by_a_quarter_changes_nothing() {
    let edge = FreeEdge { outward_rad: 0.0, distance_m: 0.35 };
    let turned = FreeEdge { outward_rad: FRAC_PI_2, ..edge };
    for code in [EN, ACI] {
        // A moment about y leans toward x; turned by 90° it is a moment about −x leaning toward y.
        let plain = prepared(vec![edge], code).judge(&actions(-20e3, 5e3, 30e3));
        let round = prepared(vec![turned], code).judge(&actions(-20e3, -30e3, 5e3));
        for (a, b) in plain.into_iter().zip(round) {
            assert!((a.control - b.control).abs() < 1e-9 && (a.face - b.face).abs() < 1e-9);
        }
    }
}

#[test]
fn an_edge_that_comes_nearer_never_helps() {
    for code in [EN, ACI] {
        for load in [actions(-20e3, 0.0, 0.0), actions(-20e3, 0.0, 30e3), actions(15e3, 8e3, -30e3)] {
            let mut before = 0.0_f64;
            for step in 0..30 {
                let edge = FreeEdge { outward_rad: 0.0, distance_m: 1.7 - 0.05 * f64::from(step) };
                let used = prepared(vec![edge], code).judge(&load).map(|way| way.control);
                let worst = used[0].max(used[1]);
                assert!(worst >= before - 1e-12, "{code:?} {load:?} {step}: {worst} after {before}");
                before = worst;
            }
        }
    }
}

#[test]
fn the_record_reproduces_what_is_judged() {
    let check = prepared(vec![FreeEdge { outward_rad: PI, distance_m: 0.3 }], EN);
    let load = actions(-12e3, 3e3, 25e3);
    for record in check.records(&load) {
        let term = |symbol: &str| record.terms.iter().find(|t| t.symbol == symbol).unwrap().value;
        let d = term("d");
        let by_hand = term("V") / (term("u") * d)
            + term("k_x") * term("M_x").abs() / (term("W_x") * d)
            + term("k_y") * term("M_y").abs() / (term("W_y") * d);
        assert!((by_hand.max(0.0) / term("v_Rd,c") - record.used.control).abs() < 1e-12);
    }
    assert_eq!(check.records(&load).map(|r| r.used), check.judge(&load));
}

#[test]
fn not_a_number_never_holds() {
    let found = prepared(Vec::new(), EN).judge(&actions(f64::NAN, 0.0, 0.0));
    assert!(found.iter().all(|way| !way.holds()));
}

#[test]
fn faults_name_the_field() {
    let thin = PunchingDesign { thickness_m: 0.2, ..design(Vec::new()) };
    assert!(matches!(thin.prepare(EN), Err(SlabFault::DepthBeyondThickness { field: "down.effective_m", .. })));
    let weak = PunchingDesign { strength_pa: f64::NAN, ..design(Vec::new()) };
    assert!(matches!(weak.prepare(EN), Err(SlabFault::NotPositive { field: "strength_pa", .. })));
    let beyond = design(vec![FreeEdge { outward_rad: 0.0, distance_m: 0.1 }]);
    assert!(matches!(beyond.prepare(EN), Err(SlabFault::BeyondEdge { edge: 0, .. })));
    let mut clockwise = design(Vec::new());
    clockwise.loaded_m.reverse();
    assert!(matches!(clockwise.prepare(EN), Err(SlabFault::NotConvex { .. })));
}
