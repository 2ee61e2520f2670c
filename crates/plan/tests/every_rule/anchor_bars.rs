//! Bars for anchors that a plan tells of, by hand: a weightless unit whose arm points straight out over a rope that hangs straight
//! down, on four headed bolts M24, h_ef 0.2 m, on nuts, so that each of the rear two has T·(1/0.56 − 1/4).

use gantline_plan::assess::anchorage::{BaseUse, Fixed, Look, Mode, Used};
use gantline_plan::assess::{Assessment, Code, Memo, Outcome, assess};
use gantline_plan::basis::AnchorageCode;
use gantline_plan::catalog::SlewStops;
use gantline_plan::change::{Change, RoofPatch};
use gantline_plan::document::{AnchorBars, EdgeAnchorBars, Plan, Slab, SlabBars};
use gantline_plan::file::{ReadError, read, write};

use crate::cases::base_holds::{on_slab, pull_for_cone_n, site};
use crate::site::{Site, set};

/// Four hooked bars of 12 mm beside each anchor, 0.12 m of each in the cone.
const BARS: AnchorBars = AnchorBars {
    count: 4,
    diameter_m: 0.012,
    yield_pa: 500e6,
    anchored_m: 0.12,
    bond_pa: 2.7e6,
    alpha: 0.7,
    hooked: true,
    distance_m: 0.15,
};

/// A rope under which the cone is used beyond its resistance by a twentieth: see `pull_for_cone_n`.
fn pull_n() -> f64 {
    pull_for_cone_n(1.05)
}

fn straight_out() -> Site {
    Site { slew_stops: SlewStops::Between { from_rad: 0.0, to_rad: 0.0 }, ..site("cast-in-24", pull_n(), |_| {}) }
}

fn with_bars(site: &Site, tension: Option<AnchorBars>, shear: Option<EdgeAnchorBars>) -> Plan {
    let mut plan = on_slab(site);
    for roof in plan.roofs.values_mut() {
        roof.slab.bars = SlabBars { tension, shear, ..roof.slab.bars };
    }
    plan
}

fn assessed(plan: &Plan) -> Assessment {
    assess(plan, &mut Memo::new())
}

fn used(assessment: &Assessment, mode: Mode) -> BaseUse {
    let base = assessment.units.values().next().unwrap().base.as_ref().unwrap();
    let wanted = |used: &&BaseUse| used.of == Fixed::Base && used.look == Look::Anchors(mode);
    base.uses.iter().find(wanted).unwrap().clone()
}

fn outcomes(assessment: &Assessment) -> Vec<Outcome> {
    assessment.checks().filter(|check| check.code == Code::AnchorsHold).map(|check| check.outcome.clone()).collect()
}

fn close(found: f64, by_hand: f64) {
    assert!((found / by_hand - 1.0).abs() < 1e-6, "{found}, by hand {by_hand}");
}

/// EN 1992-4 (7.33): anchored in the cone 4·0.12·π·0.012·2.7 MPa/0.7 = 69.80 kN; (7.31): 4·113.1 mm²·500/1.15 = 196.7 kN.
#[test]
fn a_base_whose_cone_fails_holds_by_the_bars_beside_its_anchors() {
    let without = assessed(&with_bars(&straight_out(), None, None));
    close(used(&without, Mode::ConcreteCone).share().unwrap(), 1.05);
    assert!(matches!(outcomes(&without)[..], [Outcome::Fails(_)]), "{:?}", outcomes(&without));

    let with = assessed(&with_bars(&straight_out(), Some(BARS), None));
    let anchor_n = pull_n() * (1.0 / 0.56 - 0.25);
    let bars = used(&with, Mode::TensionBars);
    let record = bars.record.as_ref().unwrap();
    close(record.action_n.unwrap(), anchor_n);
    close(record.resistance_n.unwrap(), 4.0 * 0.12 * std::f64::consts::PI * 0.012 * 2.7e6 / 0.7);
    close(bars.share().unwrap(), anchor_n / record.resistance_n.unwrap());
    let cone = used(&with, Mode::ConcreteCone).outcome;
    assert_eq!(cone, Used::NotApplicable("supplementary bars take the tension".to_owned()));
    assert_eq!(outcomes(&with), [Outcome::Meets]);
}

/// EN 1992-4 (7.31): four bars of 8 mm break first: 4·50.27 mm²·500/1.15 = 87.42 kN, anchored 0.16 m with 5 MPa and 0.7: 114.9 kN.
#[test]
fn bars_that_are_long_enough_are_held_by_their_steel() {
    let thin = AnchorBars { diameter_m: 0.008, anchored_m: 0.16, bond_pa: 5e6, ..BARS };
    let found = used(&assessed(&with_bars(&straight_out(), Some(thin), None)), Mode::TensionBars);
    let steel_n = 4.0 * std::f64::consts::PI * 0.004 * 0.004 * 500e6 / 1.15;
    close(found.record.unwrap().resistance_n.unwrap(), steel_n);
}

#[test]
fn bars_that_nobody_has_described_yet_never_hold() {
    let told = assessed(&with_bars(&straight_out(), Some(AnchorBars::UNSAID), Some(EdgeAnchorBars::UNSAID)));
    assert!(matches!(used(&told, Mode::TensionBars).outcome, Used::NotChecked(_)));
    close(used(&told, Mode::ConcreteCone).share().unwrap(), 1.05);
    // Nor do bars that lie farther from the anchor than 0.75·h_ef = 0.15 m, or shorter than 4·φ.
    for bars in [AnchorBars { distance_m: 0.151, ..BARS }, AnchorBars { anchored_m: 0.047, ..BARS }] {
        let told = assessed(&with_bars(&straight_out(), Some(bars), None));
        assert!(matches!(used(&told, Mode::TensionBars).outcome, Used::NotChecked(_)));
        assert!(outcomes(&told).iter().all(|outcome| *outcome != Outcome::Meets), "{:?}", outcomes(&told));
    }
}

/// The rope leans by 30° toward φ from along the edge: V = T/2, and V·cos φ at 1 m twists the plate. Each anchor takes V/4 and,
/// 0.14/(8·0.14²) = 0.8929 times the twist both ways. The two in front feel along the edge 2·(1/4 + 0.8929/m)·V·cos φ, and
/// toward it, one being drawn back, V·(0.8929/m·cos φ + sin φ/4). The largest root of the sum of both squares over all φ is
/// that of the larger eigenvalue. (6.6): e_s 30 mm, z 150 mm, so that the bars take 1.2 times that.
#[test]
fn bars_toward_the_edge_in_front_take_the_shear_toward_it() {
    let mut site = Site { setback_m: 0.45, ..straight_out() };
    site.basis.cone.half_angle_rad = set(30.0_f64.to_radians());
    site.basis.cone.lean = None;
    let shear = EdgeAnchorBars { bars: BARS, offset_m: 0.03, lever_m: 0.15 };
    let found = used(&assessed(&with_bars(&site, None, Some(shear))), Mode::ShearBars).record.unwrap();
    let twist: f64 = 1.0 / (8.0 * 0.14);
    let (cos_cos, cos_sin, sin_sin) = ((0.5 + 2.0 * twist).powi(2) + twist.powi(2), twist / 4.0, 1.0 / 16.0);
    let larger = f64::midpoint(cos_cos, sin_sin) + ((cos_cos - sin_sin) / 2.0).hypot(cos_sin);
    let by_hand = 1.2 * pull_n() / 2.0 * larger.sqrt();
    let action_n = found.action_n.unwrap();
    // The cone's rim is looked at in steps, and the worst is held to a thousandth.
    assert!(action_n <= by_hand * (1.0 + 1e-9) && action_n > by_hand * (1.0 - 1e-3), "{action_n}, by hand {by_hand}");
    close(found.resistance_n.unwrap(), 4.0 * 0.12 * std::f64::consts::PI * 0.012 * 2.7e6 / 0.7);
    let none = used(&assessed(&with_bars(&site, None, None)), Mode::ShearBars);
    assert_eq!((none.share(), none.record), (None, None));
}

#[test]
fn under_aci_bars_change_no_share_and_are_said_not_to_count() {
    let aci = |mut plan: Plan| {
        plan.code.anchorage = AnchorageCode::Aci318;
        plan
    };
    let shear = EdgeAnchorBars { bars: BARS, offset_m: 0.03, lever_m: 0.15 };
    let without = assessed(&aci(with_bars(&straight_out(), None, None)));
    let with = assessed(&aci(with_bars(&straight_out(), Some(BARS), Some(shear))));
    assert!(used(&with, Mode::ConcreteCone).share().is_some());
    for mode in Mode::ALL {
        let same = |assessment: &Assessment| {
            let base = assessment.units.values().next().unwrap().base.as_ref().unwrap();
            let all = base.uses.iter().filter(|used| used.look == Look::Anchors(mode));
            all.map(|used| used.outcome.clone()).collect::<Vec<_>>()
        };
        assert_eq!(same(&with), same(&without));
    }
    for mode in [Mode::TensionBars, Mode::ShearBars] {
        let Used::NotApplicable(why) = used(&with, mode).outcome else { panic!("ACI counted bars") };
        assert!(why.contains("not counted"), "{why}");
    }
}

#[test]
fn a_plan_with_bars_for_anchors_reads_back_equal_and_a_wrong_number_is_named() {
    let shear = EdgeAnchorBars { bars: BARS, offset_m: 0.03, lever_m: 0.15 };
    let plan = with_bars(&straight_out(), Some(BARS), Some(shear));
    let text = write(&plan).unwrap();
    assert_eq!(read(text.as_bytes()).unwrap(), plan);
    assert_eq!(write(&read(text.as_bytes()).unwrap()).unwrap(), text);

    let roof = *plan.roofs.keys().next().unwrap();
    let spoiled = |spoil: fn(&mut serde_json::Value)| {
        let mut value: serde_json::Value = serde_json::from_str(&text).unwrap();
        spoil(&mut value["roofs"][roof.to_string()]["slab"]["bars"]);
        read(value.to_string().as_bytes())
    };
    let wrong = spoiled(|bars| bars["tension"]["diameter_m"] = 12.into()).unwrap_err();
    let ReadError::Part { path, .. } = &wrong else { panic!("{wrong:?}") };
    assert!(path.contains(&roof.to_string()) && wrong.to_string().contains("slab.bars.tension.diameter_m"), "{wrong}");
    assert!(spoiled(|bars| bars["shear"]["lever_m"] = serde_json::Value::Null).is_err(), "nothing is made up");
    // A file from before says nothing of such bars.
    let before = spoiled(|bars| {
        bars.as_object_mut().unwrap().retain(|key, _| !["tension", "shear"].contains(&key.as_str()));
    });
    assert_eq!(before.unwrap(), with_bars(&straight_out(), None, None));
}

#[test]
fn a_change_to_bars_that_can_not_be_meant_is_refused() {
    let mut built = straight_out().build();
    let bars = SlabBars { tension: Some(AnchorBars { count: 0, ..BARS }), ..SlabBars::default() };
    let patch = RoofPatch { slab: Some(Slab { bars, ..Slab::default() }), ..RoofPatch::default() };
    let refused = built.history.change("bars", &Change::SetRoof(built.roof, patch)).unwrap_err();
    assert_eq!(refused.to_string(), "slab.bars.tension.count = 0 is outside 1 to 100");
}
