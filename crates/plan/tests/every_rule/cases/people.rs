//! Room and protection for people.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::document::Plan;

use crate::case::{Case, Wanted};
use crate::site::Site;

const CAUTION: Wanted = Wanted::Fails(Severity::Caution);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = room();
    all.extend(guard());
    all
}

/// A roof so narrow that only the strip straight behind a front-braced unit is left, which stands 0.75 m from the edge.
///
/// - The operator's square of 0.70 m begins behind the socket's half diameter, 0.10 m, and 0.15 m for hands: 0.75 + 0.25 +
///   0.70 = 1.70 m.
/// - The mast is laid down over its 1.45 m: 0.75 + 1.45 = 2.20 m.
fn room() -> Vec<Case> {
    let standing = Code::StandingPlaceFree;
    let erection = Code::ErectionStripInboard;
    vec![
        Case::new(standing, "1 mm short", narrow(0.8, 1.699), CAUTION),
        Case::new(standing, "1 mm to spare", narrow(0.8, 1.701), Wanted::Meets),
        Case::new(erection, "1 mm short", narrow(0.9, 2.199), CAUTION),
        Case::new(erection, "1 mm to spare", narrow(0.9, 2.201), Wanted::Meets),
    ]
}

fn narrow(width_m: f64, depth_m: f64) -> Plan {
    let site = Site::with_front_strut();
    Site { size_m: (width_m, depth_m), along_m: width_m / 2.0, parapet_m: 0.0, ..site }.plan()
}

/// 1.10 m over the finish, which lies 0.15 m over the slab.
fn guard() -> Vec<Case> {
    let parapet = |parapet_m: f64| Site { parapet_m, build_up_m: 0.15, ..Site::with_rear_tie() }.plan();
    let code = Code::GuardNearEdge;
    vec![
        Case::new(code, "1 mm too low", parapet(1.249), CAUTION).measures(1.099),
        Case::new(code, "1 mm higher than asked", parapet(1.251), Wanted::Meets).measures(1.101),
    ]
}
