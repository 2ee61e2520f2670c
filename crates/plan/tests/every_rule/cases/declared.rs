//! What is declared: ratings, and the eye of the base.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::basis::load_case::GRAVITY_M_S2;
use gantline_plan::basis::{CaseLoad, LoadLevel, Tension};
use gantline_plan::catalog::{Eye, Rating};
use gantline_plan::document::Plan;

use super::members::arm_limit_n;
use crate::case::{Case, Wanted};
use crate::site::{Site, add_case, alone, pulling, rigid_arm, set};

const BLOCKING: Wanted = Wanted::Fails(Severity::Blocking);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = covers();
    all.extend(supported());
    all.extend(eye());
    all
}

/// One person of 130 kg, without jerks and without load factor at the design level, on a rigid arm with this rating.
fn rated(rated_n: f64) -> Site {
    let mut family = rigid_arm();
    family.combinations[0].rating = Some(Rating { rated_n, persons: 1, declared_by: "this test".into() });
    let tension = Tension::Service { mass_kg: set(130.0), dynamic: set(1.0), load_factor: set(1.0) };
    Site { basis: pulling(tension, LoadLevel::Ultimate), ..Site::weightless(family, 0.0) }
}

/// 130 kg × 9.80665 m/s² = 1274.8645 N.
fn covers() -> Vec<Case> {
    let load_n = 1274.8645;
    let code = Code::RatingCoversLoad;
    vec![
        Case::new(code, "a thousandth too little", rated(load_n * 0.999).plan(), BLOCKING).measures(load_n),
        Case::new(code, "a thousandth to spare", rated(load_n * 1.001).plan(), Wanted::Meets)
            .measures(130.0 * GRAVITY_M_S2),
    ]
}

/// The arm is used up at [`arm_limit_n`].
fn supported() -> Vec<Case> {
    let code = Code::RatingSupported;
    let declared = |share: f64| rated(arm_limit_n() * share).plan();
    vec![
        Case::new(code, "a thousandth more than holds", declared(1.001), BLOCKING).measures(1.001),
        Case::new(code, "a thousandth less", declared(0.999), Wanted::Meets).measures(0.999),
    ]
}

/// A tether of 6 kN.
fn eye() -> Vec<Case> {
    let declared = |person_n: f64| -> Plan {
        let mut family = rigid_arm();
        family.bases.values_mut().next().unwrap().eye = Some(Eye { height_m: 0.3, person_n: Some(person_n) });
        let mut site = Site::weightless(family, 1000.0);
        let tension = Tension::Ultimate { anchor_load_n: set(6000.0) };
        add_case(&mut site.basis, "tether", CaseLoad::Tether { tension });
        site.basis.combinations.push(alone("tether", LoadLevel::Ultimate));
        site.plan()
    };
    let code = Code::EyeHoldsTether;
    vec![
        Case::new(code, "a thousandth too weak", declared(5994.0), BLOCKING).measures(6000.0),
        Case::new(code, "a thousandth to spare", declared(6006.0), Wanted::Meets).measures(6000.0),
    ]
}
