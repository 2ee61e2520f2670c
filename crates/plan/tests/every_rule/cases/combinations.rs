//! Whether combinations can be computed.

use gantline_plan::assess::Code;
use gantline_plan::basis::{LoadLevel, Tension};
use gantline_plan::catalog::Rating;
use gantline_plan::document::Plan;

use crate::case::{Case, Wanted};
use crate::site::{Site, pulling, rigid_arm, set};

/// Four times a rating that is declared, or is not.
pub fn cases() -> Vec<Case> {
    let rated = |rating: Option<Rating>| -> Plan {
        let mut family = rigid_arm();
        family.combinations[0].rating = rating;
        let basis = pulling(Tension::MultipleOfRated { times: set(4.0) }, LoadLevel::MultipleOfRated);
        Site { basis, ..Site::weightless(family, 0.0) }.plan()
    };
    let declared = Rating { rated_n: 1000.0, persons: 1, declared_by: "this test".into() };
    let code = Code::CombinationComputed;
    vec![
        Case::new(code, "nothing is declared", rated(None), Wanted::NotChecked),
        Case::new(code, "a rating is declared", rated(Some(declared)), Wanted::Meets),
    ]
}
