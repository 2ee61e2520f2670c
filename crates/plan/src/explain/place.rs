//! Where a unit stands: distances along its edge, and the protection beside the operator.

use super::MeasuredFrom;
use super::entered::{of_edge, of_roof, of_unit};
use super::subject::Subject;
use super::trace::{Symbol, Trace};
use crate::assess::standing::edges_near;
use crate::assess::{Amount, Code};
use crate::document::{EdgeEnd, PlacementId, Plan, Standing, Station};
use crate::geometry::frame::EdgeLine;

fn station(plan: &Plan, id: PlacementId) -> Option<(Station, EdgeLine)> {
    match plan.placements.get(&id)?.stands {
        Standing::OnEdge { edge, station, .. } => Some((station, EdgeLine::of(plan, edge)?)),
        Standing::Free { .. } => None,
    }
}

/// Distance along the edge: the station as entered, from the corner it is measured from.
pub fn setting_out(subject: &Subject<'_>, from: MeasuredFrom) -> Option<Trace> {
    let (own, line) = station(subject.plan, subject.id)?;
    let out = subject.result.setting_out?;
    let length = Amount::length;
    let from_corner = match own.from {
        EdgeEnd::Start => "from the edge's start",
        EdgeEnd::End => "from the edge's end",
    };
    let along_m = own.along_m(line.length_m);
    let mut symbols = vec![
        Symbol::entered("s", from_corner, length(own.distance_m), subject.entered("distance along the edge")),
        Symbol::entered("L", "length of the edge", length(line.length_m), of_edge(subject.plan, out.edge, "corners")),
    ];
    let is_from_start = own.from == EdgeEnd::Start;
    let other = |id: PlacementId| {
        let (other, _) = station(subject.plan, id)?;
        let tag = &subject.plan.placements.get(&id)?.tag.0;
        let at_m = other.along_m(line.length_m);
        let path = of_unit(tag, "distance along the edge");
        Some((at_m, Symbol::entered("x₂", "the other unit, from the edge's start", length(at_m), path)))
    };
    let own_x = || Symbol::computed("x₁", "this unit, from the edge's start", length(along_m));
    let (formula, value_m) = match from {
        MeasuredFrom::Start => (if is_from_start { "x = s" } else { "x = L − s" }, along_m),
        MeasuredFrom::End => (if is_from_start { "x = L − s" } else { "x = s" }, line.length_m - along_m),
        MeasuredFrom::UnitBefore => {
            let (at_m, symbol) = other(out.before?.0)?;
            symbols.extend([own_x(), symbol]);
            ("x = x₁ − x₂", along_m - at_m)
        }
        MeasuredFrom::UnitAfter => {
            let (at_m, symbol) = other(out.after?.0)?;
            symbols.extend([own_x(), symbol]);
            ("x = x₂ − x₁", at_m - along_m)
        }
    };
    Some(Trace {
        title: format!("Setting-out of unit {}", subject.tag),
        formula: formula.to_owned(),
        symbols,
        sums: Vec::new(),
        result: length(value_m),
        source: "distances along the edge's line".to_owned(),
    })
}

/// g = h − u: the lowest parapet near the standing place over the finish; none where no edge is near.
pub fn guard(subject: &Subject<'_>) -> Option<Trace> {
    let made = subject.result.checks.iter().find(|check| check.code == Code::GuardNearEdge)?;
    made.measured?;
    let plan = subject.plan;
    let standing = &subject.result.room.as_ref()?.standing;
    let within_m = plan.basis.rules.people.near_edge_m.value;
    let near = edges_near(plan, subject.frame.roof, standing, within_m);
    let parapet_m = |edge| plan.find_edge(edge).map(|place| place.edge().parapet.height_m);
    let lowest = near.into_iter().filter_map(|(_, edge)| Some((parapet_m(edge)?, edge)));
    let (height_m, edge) = lowest.min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)))?;
    let build_up_m = plan.roofs.get(&subject.frame.roof)?.build_up_m;
    let length = Amount::length;
    Some(Trace {
        title: format!("Guard near the standing place of unit {}", subject.tag),
        formula: "g = h − u".to_owned(),
        symbols: vec![
            Symbol::entered("h", "parapet over the slab", length(height_m), of_edge(plan, edge, "parapet height")),
            Symbol::entered(
                "u",
                "finish over the slab",
                length(build_up_m),
                of_roof(plan, subject.frame.roof, "build-up"),
            ),
        ],
        sums: Vec::new(),
        result: length(height_m - build_up_m),
        source: "levels".to_owned(),
    })
}
