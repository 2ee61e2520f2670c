//! The demonstration plans: made by their program to the byte, and as rich as they are said to be.

use std::collections::BTreeSet;

use gantline_plan::assess::{Assessment, Code, Memo, Outcome, assess};
use gantline_plan::catalog::BraceKind;
use gantline_plan::document::Plan;
use gantline_plan::file::{read, write};

#[path = "../../examples/make_demo_projects/courtyard_building.rs"]
mod courtyard_building;
#[path = "../../examples/make_demo_projects/drafting_table.rs"]
mod drafting_table;
#[path = "../../examples/make_demo_projects/large_complex.rs"]
mod large_complex;
#[path = "../../examples/make_demo_projects/mistaken_family.rs"]
mod mistaken_family;
#[path = "../../examples/make_demo_projects/small_roof.rs"]
mod small_roof;

const SMALL: &str = include_str!("../../../../demo-projects/small-roof.json");
const COURTYARD: &str = include_str!("../../../../demo-projects/courtyard-building.json");
const LARGE: &str = include_str!("../../../../demo-projects/large-complex.json");

fn assessed(text: &str) -> (Plan, Assessment) {
    let plan = read(text.as_bytes()).unwrap();
    let assessment = assess(&plan, &mut Memo::new());
    (plan, assessment)
}

#[test]
fn the_stored_plans_are_what_their_program_draws() {
    let again = "make them again: cargo run -p gantline-plan --example make_demo_projects";
    for (stored, drawn) in
        [(SMALL, small_roof::plan()), (COURTYARD, courtyard_building::plan()), (LARGE, large_complex::plan())]
    {
        let drawn = drawn.unwrap();
        assert!(write(&drawn).unwrap() == stored, "{}: {again}", drawn.title.job);
    }
}

#[test]
fn the_stored_plans_read_back_to_the_byte_and_say_that_they_are_invented() {
    for stored in [SMALL, COURTYARD, LARGE] {
        let plan = read(stored.as_bytes()).unwrap();
        assert!(write(&plan).unwrap() == stored);
        assert!(
            plan.title.job.contains("invented scenario") && plan.title.remark.contains("not a plan of any building")
        );
        assert!(plan.families.values().all(|family| family.name.contains("invented")));
    }
}

#[test]
fn nothing_blocks_on_the_small_roof_and_its_facades_are_reached() {
    let (plan, assessment) = assessed(SMALL);
    let blocking: Vec<_> = assessment.findings().into_iter().filter(|check| check.rank() == 0).collect();
    assert!(blocking.is_empty(), "{blocking:?}");
    assert!((3..=12).contains(&plan.placements.len()));
    let served = assessment.facades.values().filter(|found| found.facade.data.needs_access);
    for found in served {
        assert!(found.gaps.is_empty() && found.full_height_gaps.is_empty(), "{}", found.facade.key);
    }
}

/// Rules that can't fail: either they are met, or they could not be looked at.
const NEVER_FAIL: [Code; 3] = [Code::CombinationComputed, Code::MastInSocket, Code::LeftOpen];

#[test]
fn every_rule_finds_something_in_the_courtyard_building() {
    let (_, assessment) = assessed(COURTYARD);
    let failed: BTreeSet<Code> = assessment
        .checks()
        .filter(|check| matches!(check.outcome, Outcome::Fails(_)))
        .map(|check| check.code)
        .collect();
    let open: BTreeSet<Code> = assessment
        .checks()
        .filter(|check| matches!(check.outcome, Outcome::NotChecked(_)))
        .map(|check| check.code)
        .collect();
    for code in Code::ALL {
        let found = if NEVER_FAIL.contains(&code) { open.contains(&code) } else { failed.contains(&code) };
        assert!(found, "{} finds nothing", code.name());
    }
}

#[test]
fn the_large_complex_has_three_hundred_units_of_many_kinds_on_two_levels() {
    let (plan, assessment) = assessed(LARGE);
    assert_eq!(plan.placements.len(), 300);
    assert!(assessment.facades.values().filter(|found| !found.served_by.is_empty()).count() >= 12);
    let levels: BTreeSet<u64> = plan.roofs.values().map(|roof| roof.level_m.to_bits()).collect();
    assert_eq!(levels.len(), 2);
    let mut kinds = BTreeSet::new();
    let mut make_ups = BTreeSet::new();
    for unit in assessment.units.values() {
        let parts = unit.resolved.as_ref().unwrap();
        make_ups.insert((&parts.mast.name, &parts.arm.name, parts.brace.as_ref().map(|brace| &brace.name)));
        kinds.insert(match parts.brace.as_ref().map(|brace| brace.kind) {
            None => "none",
            Some(BraceKind::RearToMast { .. }) => "rear to mast",
            Some(BraceKind::RearToBase { .. }) => "rear to base",
            Some(BraceKind::Front { .. }) => "front",
            Some(BraceKind::RearFoot { .. }) => "rear foot",
        });
    }
    assert_eq!(kinds.len(), 5, "{kinds:?}");
    assert!(make_ups.len() >= 6, "{make_ups:?}");
    let pitches: BTreeSet<u64> = assessment
        .units
        .values()
        .filter_map(|unit| unit.setting_out?.after)
        .map(|(_, pitch_m)| (pitch_m * 1000.0).round() as u64)
        .collect();
    assert!(pitches.len() >= 5, "units stand unevenly: {pitches:?} mm");
}
