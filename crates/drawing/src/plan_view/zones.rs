//! Clear zones in plan: what arm and brace sweep while they serve, hatched by kind; the rest of the turn in outline only.

use std::f64::consts::TAU;

use gantline_plan::assess::swept::SweptBand;
use gantline_plan::assess::{Part, UnitAssessment};
use gantline_plan::document::{PlacementId, ThingId};
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::geometry::turns::Turn;
use glam::DVec2;

use super::options::PlanViewOptions;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::{Fill, Mark, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;

/// Marks of what one unit sweeps. Beside a selected unit others show the outline of their serving slew only.
pub fn zone_marks(id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Vec<Mark> {
    let thing = ThingId::Placement(id);
    let in_full = options.speaks_of(thing);
    let mut pencil = Pencil::about(options.scale, thing, Stress::Plain);
    for swept in &unit.swept {
        let hatch = match swept.part {
            Part::Arm => Hatch::ClearZoneArm,
            Part::FrontBrace | Part::RearBrace | Part::FootStrut => Hatch::ClearZoneBrace,
        };
        for polygon in sectors(&pencil, &swept.serving) {
            let fill = in_full.then_some(Fill::Hatch(hatch));
            zone(&mut pencil, fill, polygon);
        }
        if in_full {
            for polygon in sectors(&pencil, &swept.rest) {
                zone(&mut pencil, None, polygon);
            }
        }
    }
    pencil.done()
}

fn zone(pencil: &mut Pencil, fill: Option<Fill>, polygon: Polygon) {
    if let Some(fill) = fill {
        pencil.polygon(Layer::ClearZone, fill, Some(Pen::ClearZone), polygon);
    } else {
        for ring in polygon.rings() {
            pencil.ring(Layer::ClearZone, Pen::ClearZone, ring);
        }
    }
}

/// The areas that a band sweeps in plan. A single direction gives the part itself.
fn sectors(pencil: &Pencil, swept: &SweptBand) -> Vec<Polygon> {
    let (pivot, band) = (swept.pivot(), swept.band());
    if band.r1_m <= 0.0 {
        return Vec::new();
    }
    if swept.sweep().is_whole() {
        return vec![ring_between(pencil, pivot, band.r0_m, band.r1_m)];
    }
    let sector = |turn: Turn| {
        if turn.span_rad() <= 0.0 {
            let along = DVec2::from_angle(turn.from_rad);
            let side = along.perp() * band.half_width_m;
            let (near, far) = (pivot + along * band.r0_m, pivot + along * band.r1_m);
            return Polygon::simple(vec![near - side, far - side, far + side, near + side]);
        }
        let mut outer = pencil.arc(pivot, band.r1_m, turn.from_rad, turn.to_rad);
        if band.r0_m > 0.0 {
            outer.extend(pencil.arc(pivot, band.r0_m, turn.to_rad, turn.from_rad));
        } else {
            outer.push(pivot);
        }
        Polygon::simple(outer)
    };
    swept.sweep().intervals().into_iter().map(sector).collect()
}

fn ring_between(pencil: &Pencil, center: DVec2, inner_m: f64, outer_m: f64) -> Polygon {
    let circle = |radius: f64| {
        let mut ring = pencil.arc(center, radius, 0.0, TAU);
        ring.pop();
        ring
    };
    let holes = if inner_m > 0.0 { vec![circle(inner_m)] } else { Vec::new() };
    Polygon { outer: circle(outer_m), holes }
}

/// Marks of the room that people need at one unit.
pub fn room_marks(id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Vec<Mark> {
    let Some(room) = &unit.room else { return Vec::new() };
    let thing = ThingId::Placement(id);
    let mut pencil = Pencil::about(options.scale, thing, Stress::Plain);
    let hatched = |hatch| Fill::Hatch(hatch);
    pencil.area(Layer::Standing, hatched(Hatch::Erection), Some(Pen::Standing), room.erection.clone());
    pencil.area(Layer::Standing, hatched(Hatch::Standing), Some(Pen::Standing), room.standing.clone());
    pencil.done()
}
