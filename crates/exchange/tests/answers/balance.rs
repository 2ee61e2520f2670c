//! Answers against laws: areas add up, a set reproduces its own extreme, resultants are those of their components.

use gantline_exchange::answers::combination::SetAnswer;
use gantline_exchange::answers::figure::{Amount, Figure};
use gantline_exchange::answers::finding::FindingOutcome;

use super::plans::{PLANS, answers};

/// Nine digits of a value, of its components and of their sum.
const NINE_DIGITS: f64 = 3.0e-8;

fn near(a: f64, b: f64, size: f64) -> bool {
    (a - b).abs() <= NINE_DIGITS * size.abs().max(1.0)
}

#[test]
fn what_is_reached_and_what_is_not_make_up_the_area_that_needs_access() {
    let mut seen_gaps = false;
    for text in PLANS {
        let (check, _) = answers(text);
        for facade in check.facades {
            let gaps: f64 = facade.gaps.iter().map(|gap| gap.area_m2.value()).sum();
            let whole = facade.area_needing_access_m2.value();
            // Polygons are cut on a grid of their own size divided by 2³⁰: 1e-6 of the whole is a thousand times that.
            assert!((facade.covered_area_m2.value() + gaps - whole).abs() <= 1e-6 * whole.max(1.0), "{}", facade.key);
            seen_gaps |= gaps > 1.0 && facade.covered_area_m2.value() > 1.0;
        }
    }
    assert!(seen_gaps, "some facade is reached in part");
}

fn value(amount: Amount) -> f64 {
    amount.figure_and_unit().0.value()
}

/// The component of a set's own six that it says is extreme.
fn reproduced(set: &SetAnswer) -> f64 {
    let six = set.concurrent;
    let hypot = |a: Figure, b: Figure| a.value().hypot(b.value());
    match set.component.as_str() {
        "Fx" => six.fx_n.value(),
        "Fy" => six.fy_n.value(),
        "Fz" => six.fz_n.value(),
        "Mx" => six.mx_nm.value(),
        "My" => six.my_nm.value(),
        "Mz" => six.mz_nm.value(),
        "V" => hypot(six.fx_n, six.fy_n),
        "M" => hypot(six.mx_nm, six.my_nm),
        other => panic!("no component is called {other}"),
    }
}

#[test]
fn every_set_reproduces_its_own_extreme() {
    let mut sets = 0;
    for text in PLANS {
        let (_, reactions) = answers(text);
        for combination in reactions.units.iter().flat_map(|unit| &unit.combinations) {
            assert_eq!(combination.sets.is_empty(), combination.unavailable.is_some(), "{}", combination.name);
            for set in &combination.sets {
                let (said, found) = (value(set.value), reproduced(set));
                assert!(near(said, found, said), "{} {}: {said} and {found}", combination.name, set.component);
                sets += 1;
            }
        }
    }
    assert!(sets > 1000, "{sets} sets");
}

#[test]
fn the_tally_counts_what_is_found() {
    for text in PLANS {
        let (check, _) = answers(text);
        let tally = check.tally;
        assert_eq!(tally.checks, tally.meets + tally.fails + tally.not_checked + tally.not_applicable);
        assert_eq!(tally.fails, tally.fails_blocking + tally.fails_caution + tally.fails_note);
        let failed = check.findings.iter().filter(|one| matches!(one.outcome, FindingOutcome::Fails(_))).count();
        assert_eq!((failed, check.findings.len() - failed), (tally.fails, tally.not_checked));
    }
}

#[test]
fn a_unit_whose_parts_are_missing_says_so_and_has_no_reactions() {
    let (_, reactions) = answers(PLANS[1]);
    let without: Vec<_> = reactions.units.iter().filter(|unit| unit.make_up.is_none()).collect();
    assert_eq!(without.len(), 1, "one unit asks for a mast that is not there");
    assert!(without[0].make_up_fault.as_ref().unwrap().contains("mast-300"));
    assert!(without[0].combinations.is_empty() && !without[0].not_checked.is_empty());
}

#[test]
fn what_the_program_does_not_look_at_is_said_and_never_nothing() {
    for text in PLANS {
        let (_, reactions) = answers(text);
        for effect in ["fatigue", "earthquake", "vortex", "corrosion", "fire"] {
            let said =
                |outcome: &FindingOutcome| matches!(outcome, FindingOutcome::NotChecked(what) if what.contains(effect));
            assert!(reactions.not_checked.iter().any(|finding| said(&finding.outcome)), "{effect}");
        }
    }
}
