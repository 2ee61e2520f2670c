//! What is declared for a unit against what is asked of it: its rating, and the eye of its base.

use super::strength::{FULL_USE, force, full_use, share};
use super::{UnitContext, meets_or};
use crate::assess::check::{Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::assess::reactions::Reactions;
use crate::basis::load_case::GRAVITY_M_S2;
use crate::basis::{CaseLoad, Tension};
use crate::catalog::{Rating, ResolvedUnit};

/// Checks of rating and eye.
pub(super) fn checks(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Vec<Check> {
    let mut checks = rating_covers_load(context, unit);
    checks.push(rating_supported(context, unit, reactions));
    checks.push(eye(context, unit));
    checks
}

/// The largest pull of persons as they are, without jerks and load factors, against the declared rating; and whether more
/// persons are to hang than anything is declared for.
fn rating_covers_load(context: &UnitContext<'_>, unit: &ResolvedUnit) -> Vec<Check> {
    let Some(rating) = &unit.rating else {
        return context.not_checked(&[Code::RatingCoversLoad], "a declared rating of this combination");
    };
    let loads: Vec<(u32, f64)> = context.plan.basis.cases.values().filter_map(|case| persons_n(&case.load)).collect();
    let covered = loads.iter().filter(|(persons, _)| *persons <= rating.persons).map(|&(_, load_n)| load_n);
    let mut checks = match covered.reduce(f64::max) {
        Some(largest_n) => vec![rating_check(context, rating, largest_n)],
        None => context.not_checked(&[Code::RatingCoversLoad], "a load of persons as they are, in the basis"),
    };
    let most = loads.iter().map(|&(persons, _)| persons).max().unwrap_or(0);
    if most > rating.persons {
        let missing = format!("a declared rating for {most} persons on the rope");
        checks.extend(context.not_checked(&[Code::RatingCoversLoad], &missing));
    }
    checks
}

/// Persons on a rope as they are: how many, and their weight with tools and rope, N.
fn persons_n(load: &CaseLoad) -> Option<(u32, f64)> {
    match load {
        CaseLoad::Rope { persons, tension: Tension::Service { mass_kg, .. } } => {
            Some((*persons, mass_kg.value * GRAVITY_M_S2))
        }
        _ => None,
    }
}

fn rating_check(context: &UnitContext<'_>, rating: &Rating, largest_n: f64) -> Check {
    let holds = largest_n <= rating.rated_n;
    let mut check = context.check(Code::RatingCoversLoad, meets_or(holds, Severity::Blocking));
    check.measured = Some(force(largest_n));
    check.limit = Some(Limit {
        amount: force(rating.rated_n),
        is_least: false,
        source: format!("declared by {}", rating.declared_by),
    });
    check.detail =
        format!("rating for {} on the rope", if rating.persons == 1 { "one person" } else { "several persons" });
    if !holds {
        "Choose a combination with a higher rating, or reduce the load.".clone_into(&mut check.way_out);
    }
    check
}

/// The calculated utilization at the declared rating, with the basis' own factors.
fn rating_supported(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Check {
    if unit.rating.is_none() {
        return context.check(Code::RatingSupported, Outcome::NotApplicable("nothing is declared".to_owned()));
    }
    let Some(at_rating) = &reactions.at_rating else {
        let missing =
            Outcome::NotChecked("a load of persons as they are, in the basis, whose factors to use".to_owned());
        return context.check(Code::RatingSupported, missing);
    };
    let holds = at_rating.utilization <= FULL_USE;
    let outcome = if at_rating.all_checked || !holds {
        meets_or(holds, Severity::Blocking)
    } else {
        Outcome::NotChecked("some modes of failure of some members".to_owned())
    };
    let mut check = context.check(Code::RatingSupported, outcome);
    // Where nothing could be checked there is no figure: 0 % would read as a pass.
    check.measured = (at_rating.all_checked || at_rating.utilization > 0.0).then(|| share(at_rating.utilization));
    check.limit = Some(full_use("members at the declared rating with the factors of the basis"));
    check.detail.clone_from(&at_rating.inside);
    if !holds {
        "The calculation does not support the declared rating: ask whoever declares it.".clone_into(&mut check.way_out);
    }
    check
}

/// The hardest pull of a tether against what the base's eye is declared for.
fn eye(context: &UnitContext<'_>, unit: &ResolvedUnit) -> Check {
    let tensions: Vec<&Tension> = context
        .plan
        .basis
        .cases
        .values()
        .filter_map(|case| if let CaseLoad::Tether { tension } = &case.load { Some(tension) } else { None })
        .collect();
    let person_n = unit.base.eye.and_then(|eye| eye.person_n);
    let (false, Some(person_n)) = (tensions.is_empty(), person_n) else {
        let why = "no person is tied to this base's eye".to_owned();
        return context.check(Code::EyeHoldsTether, Outcome::NotApplicable(why));
    };
    let pull_n = |tension: &Tension| match tension {
        Tension::Service { .. } => tension.service_n(),
        Tension::Ultimate { anchor_load_n } => Some(anchor_load_n.value),
        Tension::MultipleOfRated { times } => unit.rating.as_ref().map(|rating| times.value * rating.rated_n),
    };
    let pulls: Option<Vec<f64>> = tensions.into_iter().map(pull_n).collect();
    let Some(load_n) = pulls.into_iter().flatten().reduce(f64::max) else {
        let missing = Outcome::NotChecked("a declared rating, of which the tether's pull is a multiple".to_owned());
        return context.check(Code::EyeHoldsTether, missing);
    };
    let holds = load_n <= person_n;
    let mut check = context.check(Code::EyeHoldsTether, meets_or(holds, Severity::Blocking));
    check.measured = Some(force(load_n));
    check.limit = Some(Limit { amount: force(person_n), is_least: false, source: "datum of the base".to_owned() });
    if !holds {
        "Tie nobody to this eye, or choose a base with a stronger one.".clone_into(&mut check.way_out);
    }
    check
}
