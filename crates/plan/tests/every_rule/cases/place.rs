//! Where the base stands, what the unit serves and how long the drop is.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::document::Plan;

use crate::case::{Case, Wanted};
use crate::site::{Site, set};

const BLOCKING: Wanted = Wanted::Fails(Severity::Blocking);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = base();
    all.extend(serves());
    all.extend(drop_length());
    all
}

fn at(along_m: f64, setback_m: f64, parapet_m: f64) -> Plan {
    Site { parapet_m, along_m, setback_m, ..Site::with_rear_tie() }.plan()
}

/// A plate of 360 mm on a roof 30 m long with parapets 200 mm thick.
fn base() -> Vec<Case> {
    let past = Code::StandsPastEdgeEnd;
    let two = |apart_m: f64| {
        let mut built = Site::with_rear_tie().build();
        built.place(15.0 + apart_m, 0.7);
        built.plan()
    };
    let clear = Code::BaseClearOfObstacles;
    vec![
        Case::new(past, "1 mm past the end", at(30.001, 0.7, 0.0), BLOCKING).measures(0.001),
        Case::new(past, "1 mm before the end", at(29.999, 0.7, 0.0), Wanted::Meets).measures(0.0),
        Case::new(past, "1 mm before the start", at(-0.001, 0.7, 0.0), BLOCKING).measures(0.001),
        // Half a plate is 180 mm.
        Case::new(Code::BaseOnRoof, "1 mm over the edge", at(15.0, 0.179, 0.0), BLOCKING),
        Case::new(Code::BaseOnRoof, "1 mm behind the edge", at(15.0, 0.181, 0.0), Wanted::Meets),
        // The parapet's inner face stands 200 mm behind the edge.
        Case::new(clear, "1 mm in the parapet", at(15.0, 0.379, 1.1), BLOCKING),
        Case::new(clear, "1 mm behind the parapet", at(15.0, 0.381, 1.1), Wanted::Meets),
        // Plates in one line share whole sides as soon as they meet.
        Case::new(clear, "plates 1 mm into each other", two(0.359), BLOCKING),
        Case::new(clear, "plates 1 mm apart", two(0.361), Wanted::Meets),
        Case::new(clear, "one base on another", two(0.0), BLOCKING),
    ]
}

/// The tip, 1.15 m out, must hang 0.15 m outside: the setback is at most 1.00 m.
fn serves() -> Vec<Case> {
    let caution = Wanted::Fails(Severity::Caution);
    vec![
        Case::new(Code::ServesFacade, "tip 1 mm too near", at(15.0, 1.001, 1.1), caution),
        Case::new(Code::ServesFacade, "tip 1 mm farther than asked", at(15.0, 0.999, 1.1), Wanted::Meets),
    ]
}

/// The rope hangs from 24.00 + 1.90 m down to level zero.
fn drop_length() -> Vec<Case> {
    let limited = |limit_m: f64| {
        let mut site = Site::with_rear_tie();
        site.basis.rules.longest_drop_m = Some(set(limit_m));
        site.plan()
    };
    let code = Code::DropLength;
    vec![
        Case::new(code, "drop 1 mm too long", limited(25.899), BLOCKING).measures(25.9),
        Case::new(code, "drop 1 mm shorter than allowed", limited(25.901), Wanted::Meets).measures(25.9),
    ]
}
