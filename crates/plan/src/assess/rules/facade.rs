//! Whether every part of a facade is reached, and whether its data are right.

use super::meets_or;
use crate::assess::assessment::FacadeAssessment;
use crate::assess::check::{Amount, Check, Limit, Outcome, Place, Severity};
use crate::assess::code::Code;
use crate::document::{Plan, ThingId};
use crate::quantity::Kind;

/// Gaps smaller than this are rounding, m².
const GAP_HAIR_M2: f64 = 1.0e-6;

/// Checks of one facade.
pub fn checks(plan: &Plan, result: &FacadeAssessment) -> Vec<Check> {
    vec![has_height(result), covered(result), confirmed(plan, result)]
}

fn about(result: &FacadeAssessment) -> Vec<ThingId> {
    result.facade.edges.iter().map(|part| ThingId::Edge(part.edge)).collect()
}

fn check(result: &FacadeAssessment, code: Code, outcome: Outcome) -> Check {
    let line = &result.facade.line;
    let at = Some(Place { at: line.start.midpoint(line.end), level_m: None });
    Check { about: about(result), at, ..Check::new(code, ThingId::Edge(result.facade.key), outcome) }
}

fn has_height(result: &FacadeAssessment) -> Check {
    let facade = &result.facade;
    if !facade.data.needs_access {
        let why = "the facade is marked as not needing access".to_owned();
        return check(result, Code::FacadeHasHeight, Outcome::NotApplicable(why));
    }
    let holds = facade.top_level_m > facade.foot_level_m;
    let mut made = check(result, Code::FacadeHasHeight, meets_or(holds, Severity::Blocking));
    made.measured = Some(Amount::length(facade.top_level_m - facade.foot_level_m));
    if !holds {
        "Set the roof's level, or where the facade ends.".clone_into(&mut made.way_out);
    }
    made
}

fn covered(result: &FacadeAssessment) -> Check {
    if !result.facade.data.needs_access {
        let why = "the facade is marked as not needing access".to_owned();
        return check(result, Code::FacadeCovered, Outcome::NotApplicable(why));
    }
    if result.area_m2 <= 0.0 {
        return check(result, Code::FacadeCovered, Outcome::NotChecked("height of the facade".to_owned()));
    }
    let gap_m2: f64 = result.gaps.iter().map(|gap| gap.area_m2).sum();
    let mut made = check(result, Code::FacadeCovered, meets_or(gap_m2 <= GAP_HAIR_M2, Severity::Caution));
    made.measured = Some(Amount { kind: Kind::Area, value: gap_m2 });
    made.limit = Some(Limit {
        amount: Amount { kind: Kind::Area, value: 0.0 },
        is_least: false,
        source: "every meter of facade is to be reached".to_owned(),
    });
    if gap_m2 > GAP_HAIR_M2 {
        let count = result.gaps.len();
        let regions = if count == 1 { "region" } else { "regions" };
        made.detail = format!("not reached: {count} {regions}, {:.0} % of the facade", 100.0 * gap_m2 / result.area_m2);
        "Set units nearer to each other, or reach the rest in another way.".clone_into(&mut made.way_out);
    }
    made
}

fn confirmed(plan: &Plan, result: &FacadeAssessment) -> Check {
    let open = result
        .facade
        .edges
        .iter()
        .filter(|part| plan.find_edge(part.edge).is_some_and(|place| !place.edge().confirmed))
        .count();
    let mut made = check(result, Code::EdgeDataConfirmed, meets_or(open == 0, Severity::Caution));
    if open > 0 {
        made.detail = format!("{open} of {} edges", result.facade.edges.len());
        "Look at parapet and facade data of the edge and confirm them.".clone_into(&mut made.way_out);
    }
    made
}
