//! The smallest clearance of a swept part: in height its underside less the top of what it passes, or beside it the distance
//! in plan less half its width.

use glam::DVec2;

use super::entered;
use super::subject::Subject;
use super::trace::{Symbol, Trace};
use crate::assess::clear_zones::plate_outline;
use crate::assess::swept::SweptBand;
use crate::assess::{Against, Amount, Over, PairClearance, Way};
use crate::catalog::ResolvedUnit;
use crate::document::{PlacementId, Ring};
use crate::geometry::frame::Frame;
use crate::geometry::mass::parapet_strip;
use crate::geometry::polygons::Polygon;

/// What is passed: its plan and its levels, each with where it was entered.
struct Thing {
    plan: Plan,
    from: Option<(f64, String)>,
    to: (f64, String),
}

enum Plan {
    Polygon(Polygon),
    Disc { center: DVec2, radius_m: f64 },
}

/// The trace of a pair of part and thing.
pub fn trace(subject: &Subject<'_>, row: usize) -> Option<Trace> {
    let pair = subject.result.clearances.get(row)?;
    let bands = subject.result.swept.iter().filter(|swept| swept.part == pair.part);
    let bands = bands.map(|swept| if pair.over == Over::Serving { &swept.serving } else { &swept.rest });
    let thing = thing(subject, pair.against)?;
    let made = bands.map(|band| match pair.way {
        Way::Height => in_height(subject, pair, band, &thing),
        Way::Around => around(subject, pair, band, &thing),
    });
    // The arm before the mast and its tail are two bands: the pair is that of the tighter one.
    made.min_by(|a, b| (a.result.value - pair.clear_m).abs().total_cmp(&(b.result.value - pair.clear_m).abs()))
}

fn title(subject: &Subject<'_>, pair: &PairClearance) -> String {
    format!("Clearance of the {} of unit {}", pair.part.word(), subject.tag)
}

/// c = underside − top of the thing, or underside of the thing − top: whichever is larger at the place.
fn in_height(subject: &Subject<'_>, pair: &PairClearance, band: &SweptBand, thing: &Thing) -> Trace {
    let profile = band.band();
    let radius_m = pair.at.distance(band.pivot()).clamp(profile.r0_m, profile.r1_m);
    let (low_m, high_m) = (profile.low_m(radius_m), profile.high_m(radius_m));
    let over_m = low_m - thing.to.0;
    let under_m = thing.from.as_ref().map_or(f64::NEG_INFINITY, |from| from.0 - high_m);
    let length = Amount::length;
    let mut symbols = vec![Symbol::computed("r", "distance of the place from the mast axis", length(radius_m))];
    let formula = match &thing.from {
        Some((from_m, entered)) if under_m > over_m => {
            symbols.push(Symbol::entered(
                "z_from",
                "level of the underside of what is passed",
                length(*from_m),
                entered.clone(),
            ));
            symbols.push(Symbol::computed("z_high", "level of the part's top there", length(high_m)));
            "c = z_from − z_high(r)"
        }
        _ => {
            symbols.push(Symbol::computed("z_low", "level of the part's underside there", length(low_m)));
            symbols.push(Symbol::entered(
                "z_to",
                "level of the top of what is passed",
                length(thing.to.0),
                thing.to.1.clone(),
            ));
            "c = z_low(r) − z_to"
        }
    };
    Trace {
        title: title(subject, pair),
        formula: formula.to_owned(),
        symbols,
        sums: Vec::new(),
        result: length(over_m.max(under_m)),
        source: "geometry: heights along the radius are straight lines, the tightest place of the sweep".to_owned(),
    }
}

/// c = distance in plan from the part's axis to the thing − half the part's width.
fn around(subject: &Subject<'_>, pair: &PairClearance, band: &SweptBand, thing: &Thing) -> Trace {
    let half_m = band.band().half_width_m;
    let apart_m = match &thing.plan {
        Plan::Polygon(polygon) => polygon.distance_m(pair.at),
        Plan::Disc { center, radius_m } => (center.distance(pair.at) - radius_m).max(0.0),
    };
    let symbols = vec![
        Symbol::computed("d", "distance in plan from the part's axis to what is passed", Amount::length(apart_m)),
        Symbol::computed("b/2", "half the part's width", Amount::length(half_m)),
    ];
    Trace {
        title: title(subject, pair),
        formula: "c = d − b/2".to_owned(),
        symbols,
        sums: Vec::new(),
        result: Amount::length(apart_m - half_m),
        source: "geometry in plan, the tightest place of the sweep".to_owned(),
    }
}

fn thing(subject: &Subject<'_>, against: Against) -> Option<Thing> {
    let plan = subject.plan;
    match against {
        Against::Parapet(edge) => {
            let place = plan.find_edge(edge)?;
            let polygon = Polygon::simple(parapet_strip(place.ring, place.index));
            let to_m = place.roof.level_m + place.edge().parapet.height_m;
            let to = (to_m, entered::of_edge(plan, edge, "parapet height"));
            let from = (place.roof.level_m, entered::of_roof(plan, place.roof_id, "level"));
            Some(Thing { plan: Plan::Polygon(polygon), from: Some(from), to })
        }
        Against::Obstacle(id) => {
            let obstacle = plan.obstacles.get(&id)?;
            let level_m = plan.roofs.get(&obstacle.roof)?.level_m;
            Some(Thing {
                plan: Plan::Polygon(Polygon::simple(obstacle.outline.clone())),
                from: Some((level_m + obstacle.from_m, entered::of_obstacle(plan, id, "underside"))),
                to: (level_m + obstacle.to_m, entered::of_obstacle(plan, id, "top")),
            })
        }
        Against::HigherRoof(id) => {
            let roof = plan.roofs.get(&id)?;
            let holes = roof.holes.iter().map(Ring::points).collect();
            let polygon = Polygon { outer: roof.outer.points(), holes };
            Some(Thing {
                plan: Plan::Polygon(polygon),
                from: None,
                to: (roof.level_m, entered::of_roof(plan, id, "level")),
            })
        }
        Against::Base(id) => {
            let (frame, unit) = neighbor(subject, id)?;
            let to =
                (frame.level_m + unit.base.socket_top_m, entered::of_part(unit, &unit.base.name, "top of the socket"));
            let polygon = Polygon::simple(plate_outline(unit, &frame));
            Some(Thing { plan: Plan::Polygon(polygon), from: Some((frame.level_m, to.1.clone())), to })
        }
        Against::StandingUnit(id) => {
            let (frame, unit) = neighbor(subject, id)?;
            let to_m = frame.level_m + unit.mast.height_m + unit.arm.tube.section.depth_m() / 2.0;
            let to = (to_m, entered::of_part(unit, &unit.mast.name, "height"));
            let plan = Plan::Disc { center: frame.at, radius_m: unit.base.socket_diameter_m / 2.0 };
            Some(Thing { plan, from: Some((frame.level_m, to.1.clone())), to })
        }
    }
}

fn neighbor<'a>(subject: &'a Subject<'_>, id: PlacementId) -> Option<(Frame, &'a ResolvedUnit)> {
    let result = subject.assessment.units.get(&id)?;
    Some((result.frame?, result.resolved.as_ref().ok()?))
}
