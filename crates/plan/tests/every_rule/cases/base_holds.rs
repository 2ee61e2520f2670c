//! Whether anchors, plate, slab, sleeve and bolts hold: a weightless unit under a rope that hangs straight down 1 m out, so that
//! F_z = −T and M = T·1 m toward the arm's tip.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::catalog::{Anchors, Base, BaseKind, Bearing, BondSetting, SlewStops};
use gantline_plan::change::{Change, RoofPatch};
use gantline_plan::document::{PartId, Plan, Slab, SlabBars};
use glam::DVec2;

use crate::case::{Case, Wanted};
use crate::site::{Site, rigid_arm};

/// The search over slews is held to a thousandth.
const SEARCHED: f64 = 1e-3;

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = anchors();
    all.extend(plate());
    all.extend(punching());
    all.extend(sleeve());
    all.extend(bolts());
    all
}

/// Four anchors at ±0.14 m under a plate on leveling nuts: nothing presses, so that each has −F_z/4 ± M/(4·0.14 m).
pub fn site(fixing: &str, pull_n: f64, edit: impl FnOnce(&mut Base)) -> Site {
    let mut family = rigid_arm();
    let base = family.bases.values_mut().next().unwrap();
    base.plate_material = Some("steel".into());
    base.bearing = Bearing::OnLevelingNuts { gap_m: 0.02, clamped: false };
    base.anchors = Some(Anchors {
        at_m: [(0.14, -0.14), (0.14, 0.14), (-0.14, 0.14), (-0.14, -0.14)].map(DVec2::from).to_vec(),
        fixing: PartId::new(fixing),
        embedment_m: 0.2,
        hole_m: Some(0.026),
        gap_filled: true,
        setting: BondSetting::default(),
    });
    edit(base);
    family.fixings.extend(serde_json::from_str::<gantline_plan::catalog::Family>(TERN).unwrap().fixings);
    Site::weightless(family, pull_n)
}

const TERN: &str = include_str!("../../../../../assets/families/tern.json");

/// Cracked concrete C25/30 of 0.25 m, bars 50 mm in.
pub fn on_slab(site: &Site) -> Plan {
    let mut built = site.build();
    let slab = Slab {
        thickness_m: 0.25,
        cylinder_strength_pa: Some(25e6),
        specified_strength_pa: Some(25e6),
        bars: SlabBars { axis_depth_m: Some(0.05), ..SlabBars::default() },
        ..Slab::default()
    };
    let roof = built.roof;
    built.change(&Change::SetRoof(roof, RoofPatch { slab: Some(slab), ..RoofPatch::default() }));
    built.plan()
}

/// The pull at which the two rear anchors use this share of their cone, the arm straight out. M24 headed, h_ef 0.2 m,
/// EN 1992-4 7.2.1.4: N0_Rk,c = 8.9·√25·200^1.5 = 125.9 kN; two side by side 0.28 m apart: A = (0.28 + 0.6)·0.6 m² by
/// 0.36 m²: 184.6 kN/1.5 = 123.1 kN against 2·(T/0.56 − T/4) = 3.0714·T.
pub fn pull_for_cone_n(share: f64) -> f64 {
    let cone_n = 8.9 * 5.0 * 200.0_f64.powf(1.5) * (0.88 / 0.6) / 1.5;
    share * cone_n / (2.0 / 0.56 - 0.5)
}

/// The arm straight out.
fn anchors() -> Vec<Case> {
    let pulled = |share: f64| {
        let pull_n = pull_for_cone_n(share);
        let site = site("cast-in-24", pull_n, |_| {});
        on_slab(&Site { slew_stops: SlewStops::Between { from_rad: 0.0, to_rad: 0.0 }, ..site })
    };
    let code = Code::AnchorsHold;
    vec![
        Case::new(code, "a hundredth too much", pulled(1.01), Wanted::Fails(Severity::Blocking))
            .measures_within(1.01, 1e-6),
        Case::new(code, "a hundredth less", pulled(0.99), Wanted::Meets).measures_within(0.99, 1e-6),
    ]
}

/// The arm toward a corner: the nut there is pushed with T·√2/0.56 + T/4. It bends a strip as wide as twice its reach r past the
/// tube's bending line: σ = T_a·r/(2·r·t²/6) = 3·T_a/t², against 355 MPa.
fn plate() -> Vec<Case> {
    let bent = |share: f64| {
        let pull_n = 40e3;
        let anchor_n = pull_n * (2.0_f64.sqrt() / 0.56 + 0.25);
        let thickness_m = (3.0 * anchor_n / (share * 355e6)).sqrt();
        on_slab(&site("cast-in-24", pull_n, |base| base.plate_thickness_m = thickness_m))
    };
    let code = Code::PlateHolds;
    vec![
        Case::new(code, "a hundredth too thin", bent(1.01), Wanted::Fails(Severity::Blocking))
            .measures_within(1.01, SEARCHED),
        Case::new(code, "a hundredth thicker", bent(0.99), Wanted::Meets).measures_within(0.99, SEARCHED),
    ]
}

/// EN 1992-1-1 6.4, plate 0.36 m square, d 0.2 m, no bars known: v_min = 0.035·2^1.5·√25 = 0.495 MPa; u1 = 4·0.36 + 2π·0.4 =
/// 3.953 m, W1 = c²/2 + c² + 4·c·d + 16·d² + 2π·d·c = 1.5748 m², k 0.6. The arm toward a corner, the two moments
/// added: v = T/(u1·d) + 0.6·√2·T/(W1·d).
fn punching() -> Vec<Case> {
    let (c, d) = (0.36, 0.2);
    let u1 = 4.0 * c + std::f64::consts::TAU * 2.0 * d;
    let w1 = 1.5 * c * c + 4.0 * c * d + 16.0 * d * d + std::f64::consts::TAU * d * c;
    let per_newton = 1.0 / (u1 * d) + 0.6 * 2.0_f64.sqrt() / (w1 * d);
    let v_min = 0.035 * 2.0_f64.powf(1.5) * 5.0 * 1e6;
    // So far from the edge that no shorter way round ends on it.
    let punched =
        |share: f64| on_slab(&Site { setback_m: 3.0, ..site("cast-in-24", share * v_min / per_newton, |_| {}) });
    let code = Code::SlabPunching;
    vec![
        Case::new(code, "a hundredth too much", punched(1.01), Wanted::Fails(Severity::Caution))
            .measures_within(1.01, SEARCHED),
        Case::new(code, "a hundredth less", punched(0.99), Wanted::Meets).measures_within(0.99, SEARCHED),
    ]
}

/// σ = 6·M/(d·L²) against 25/1.5 MPa; d 0.34 m, L 0.2 m.
fn sleeve() -> Vec<Case> {
    let pull_n = 1.01 * 25e6 / 1.5 * 0.34 * 0.04 / 6.0;
    let site = site("cast-in-24", pull_n, |base| {
        base.anchors = None;
        base.kind = BaseKind::CastInSleeve { depth_m: 0.2, cover_m: 0.05, drained: Some(true), capped: Some(true) };
    });
    let fails = Wanted::Fails(Severity::Blocking);
    vec![Case::new(Code::SleeveHolds, "a hundredth too much", on_slab(&site), fails).measures_within(1.01, SEARCHED)]
}

/// M20 8.8: F_t,Rd = 0.9·800·245/1.25 = 141.12 kN against T·(√2/0.56 − 1/4).
fn bolts() -> Vec<Case> {
    let pulled = |share: f64| {
        let pull_n = share * 141.12e3 / (2.0_f64.sqrt() / 0.56 - 0.25);
        on_slab(&site("steel-bolt-20", pull_n, |base| {
            base.kind = BaseKind::OnSteel;
            base.plate_thickness_m = 0.04;
            base.anchors.as_mut().unwrap().hole_m = Some(0.022);
        }))
    };
    let code = Code::SteelFixingHolds;
    vec![
        Case::new(code, "a hundredth too much", pulled(1.01), Wanted::Fails(Severity::Blocking))
            .measures_within(1.01, SEARCHED),
        Case::new(code, "a hundredth less", pulled(0.99), Wanted::Meets).measures_within(0.99, SEARCHED),
    ]
}
