//! Whether every part of a facade is reached, and whether its data are right.

use super::meets_or;
use crate::assess::assessment::FacadeAssessment;
use crate::assess::check::{Amount, Check, Limit, Outcome, Place, Severity};
use crate::assess::code::Code;
use crate::document::{Plan, ThingId};
use crate::quantity::Kind;

/// Gaps smaller than this are rounding, m².
const GAP_HAIR_M2: f64 = 1.0e-6;
/// Covered area and gaps make up the facade within this share of it, or their union was not found.
const SUM_SHARE: f64 = 1.0e-3;

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
    if (result.covered_m2 + gap_m2 - result.area_m2).abs() > SUM_SHARE * result.area_m2 {
        return check(result, Code::FacadeCovered, Outcome::NotChecked("what the units cover together".to_owned()));
    }
    let mut made = check(result, Code::FacadeCovered, meets_or(gap_m2 <= GAP_HAIR_M2, Severity::Caution));
    made.measured = Some(Amount { kind: Kind::Area, value: gap_m2 });
    made.limit = Some(Limit {
        amount: Amount { kind: Kind::Area, value: 0.0 },
        is_least: false,
        source: "every meter of facade is to be reached".to_owned(),
    });
    if gap_m2 > GAP_HAIR_M2 {
        made.at = widest_gap(result).or(made.at);
        let count = result.gaps.len();
        let regions = if count == 1 { "region" } else { "regions" };
        made.detail = format!("not reached: {count} {regions}, {:.0} % of the facade", 100.0 * gap_m2 / result.area_m2);
        "Set units nearer to each other, or reach the rest in another way.".clone_into(&mut made.way_out);
    }
    made
}

/// The place on the facade's line before the largest gap.
fn widest_gap(result: &FacadeAssessment) -> Option<Place> {
    let gap = result.gaps.iter().max_by(|a, b| a.area_m2.total_cmp(&b.area_m2))?;
    let ends = gap.outline.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), p| (lo.min(p.x), hi.max(p.x)));
    Some(Place { at: result.facade.line.point(f64::midpoint(ends.0, ends.1), 0.0), level_m: None })
}

fn confirmed(plan: &Plan, result: &FacadeAssessment) -> Check {
    let edges = &result.facade.edges;
    let stands = |edge| plan.find_edge(edge).is_some_and(|place| place.edge().confirmed);
    let open: Vec<ThingId> =
        edges.iter().filter(|part| !stands(part.edge)).map(|part| ThingId::Edge(part.edge)).collect();
    let mut made = check(result, Code::EdgeDataConfirmed, meets_or(open.is_empty(), Severity::Caution));
    if !open.is_empty() {
        made.detail = format!("{} of {} edges", open.len(), edges.len());
        made.about = open;
        "Look at parapet and facade data of the edge and confirm them.".clone_into(&mut made.way_out);
    }
    made
}
