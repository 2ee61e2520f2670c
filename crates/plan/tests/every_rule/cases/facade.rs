//! Facades: what is reached of them, and their data.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::change::EdgePatch;
use gantline_plan::document::{FacadeFoot, Plan};

use crate::case::{Case, Wanted};
use crate::site::Site;

const CAUTION: Wanted = Wanted::Fails(Severity::Caution);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = covered();
    all.extend(height());
    all.extend(confirmed());
    all
}

/// A facade of 2.9 m below one unit with a mast of 2.35 m. Device and slings take 0.90 m below the tip: a coping higher than
/// 1.45 m leaves its uppermost stretch out of reach. Sideways even there: feet to ±√(1.15² − 0.85²) = ±0.77 m and arms of
/// 0.70 m, more than half the facade.
fn covered() -> Vec<Case> {
    let coping = |parapet_m: f64| {
        let parts = ["mast-235", "arm-115-rear", "rear-tie-long", "floor-socket"];
        let mut built = Site { parts, size_m: (2.9, 20.0), along_m: 1.45, parapet_m, ..Site::with_rear_tie() }.build();
        built.patch(&[1, 2, 3], EdgePatch { needs_access: Some(false), ..EdgePatch::default() });
        built.plan()
    };
    let code = Code::FacadeCovered;
    vec![
        // The gap is 1 mm high and 2.9 m long; the polygons of gaps are cut on a grid of nanometers.
        Case::new(code, "1 mm at the top is out of reach", coping(1.451), CAUTION).measures_within(0.0029, 1e-7),
        Case::new(code, "1 mm to spare at the top", coping(1.449), Wanted::Meets).measures(0.0),
    ]
}

/// The top of the parapet is at 24.00 + 1.10 m.
fn height() -> Vec<Case> {
    let ending = |level_m: f64| {
        let mut built = Site::with_rear_tie().build();
        built.patch(&[0], EdgePatch { ends_at: Some(FacadeFoot::LevelM(level_m)), ..EdgePatch::default() });
        built.plan()
    };
    let code = Code::FacadeHasHeight;
    vec![
        Case::new(code, "ends 1 mm above its top", ending(25.101), Wanted::Fails(Severity::Blocking)).measures(-0.001),
        Case::new(code, "ends 1 mm below its top", ending(25.099), Wanted::Meets).measures(0.001),
    ]
}

/// Yes or no.
fn confirmed() -> Vec<Case> {
    let confirming = |edges: &[usize]| -> Plan {
        let mut built = Site::with_rear_tie().build();
        built.patch(edges, EdgePatch { confirmed: Some(true), ..EdgePatch::default() });
        built.plan()
    };
    let code = Code::EdgeDataConfirmed;
    vec![
        Case::new(code, "one edge is left", confirming(&[0, 1, 3]), CAUTION),
        Case::new(code, "all are confirmed", confirming(&[0, 1, 2, 3]), Wanted::Meets),
    ]
}
