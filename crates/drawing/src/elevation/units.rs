//! Units in an elevation: mast and arm over the coping, the rope down in front of the face, the tag above.

use gantline_plan::assess::{Assessment, FacadeAssessment, UnitAssessment};
use gantline_plan::catalog::ResolvedUnit;
use gantline_plan::document::{Placement, Plan, ThingId};
use gantline_plan::geometry::frame::Frame;
use glam::DVec2;

use super::options::ElevationOptions;
use crate::hatch::Hatch;
use crate::label::{Label, LabelKind, Row};
use crate::layer::Layer;
use crate::mark::{Fill, Mark};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::TextStyle;

/// Marks of all units that serve a facade, their tags to be placed, and where they stand along it.
pub(super) struct Units {
    pub marks: Vec<Mark>,
    pub tags: Vec<Label>,
    /// Mast axes along the facade, m.
    pub stations: Vec<f64>,
}

/// Draws the units that serve a facade.
pub(super) fn units(
    plan: &Plan,
    assessment: &Assessment,
    found: &FacadeAssessment,
    options: &ElevationOptions,
) -> Units {
    let mut drawn = Units { marks: Vec::new(), tags: Vec::new(), stations: Vec::new() };
    for &id in &found.served_by {
        let (Some(placement), Some(unit)) = (plan.placements.get(&id), assessment.units.get(&id)) else { continue };
        let (Some(frame), Ok(resolved)) = (unit.frame, &unit.resolved) else { continue };
        let thing = ThingId::Placement(id);
        let mut pencil = Pencil::about(options.scale, thing, options.stress(thing));
        draw_unit(&mut pencil, found, placement, resolved, &frame);
        draw_rope(&mut pencil, found, placement, unit, resolved, &frame);
        drawn.marks.extend(pencil.done());
        let along = found.facade.line.along_m(frame.at);
        drawn.stations.push(along);
        drawn.tags.push(tag(thing, placement, resolved, &frame, along, options));
    }
    drawn
}

/// Mast and arm as seen from outside: an arm square to the facade shows its end.
fn draw_unit(pencil: &mut Pencil, found: &FacadeAssessment, placement: &Placement, unit: &ResolvedUnit, frame: &Frame) {
    let line = found.facade.line;
    let mast = line.along_m(frame.at);
    let axis = frame.level_m + unit.mast.height_m;
    let half = unit.mast.tube.section.width_m() / 2.0;
    let part = Fill::Hatch(Hatch::Part);
    let rectangle = |low: DVec2, high: DVec2| [low, DVec2::new(high.x, low.y), high, DVec2::new(low.x, high.y)];
    let coping = found.facade.top_level_m;
    let foot = DVec2::new(mast - half, coping.min(axis));
    pencil.area(Layer::Unit, part, Some(Pen::Outline), rectangle(foot, DVec2::new(mast + half, axis)));
    for side in [-half, half] {
        let x = mast + side;
        pencil.line(Layer::Unit, Pen::Hidden, [DVec2::new(x, frame.level_m), DVec2::new(x, coping)]);
    }
    let direction = frame.direction(placement.make_up.drawn_slew_rad);
    let ends = [frame.at - direction * unit.arm.tail_m, frame.at + direction * unit.arm.outreach_m];
    let (depth, width) = (unit.arm.tube.section.depth_m() / 2.0, unit.arm.tube.section.width_m() / 2.0);
    let [a, b] = ends.map(|end| line.along_m(end));
    let low = DVec2::new(a.min(b) - width, axis - depth);
    let high = DVec2::new(a.max(b) + width, axis + depth);
    pencil.area(Layer::Unit, part, Some(Pen::Outline), rectangle(low, high));
}

/// The rope from the tip at its drawn slew if that serves this facade, else dashed from where it could.
fn draw_rope(
    pencil: &mut Pencil,
    found: &FacadeAssessment,
    placement: &Placement,
    result: &UnitAssessment,
    unit: &ResolvedUnit,
    frame: &Frame,
) {
    let slew = placement.make_up.drawn_slew_rad;
    let point = unit.arm.points.first();
    let (out, side, drop) =
        point.map_or((unit.arm.outreach_m, 0.0, 0.0), |point| (point.out_m, point.sideways_m, point.drop_m));
    let tip = frame.at + DVec2::from_angle(frame.outward_rad + slew).rotate(DVec2::new(out, side));
    let high = frame.level_m + unit.mast.height_m - drop;
    for served in result.serves.iter().filter(|served| served.facade == found.facade.key) {
        let (x, pen) = if served.slew.contains(slew) {
            (found.facade.line.along_m(tip), Pen::Rope)
        } else {
            let Some(span) = served.feet.iter().next() else { continue };
            (span.from_m.midpoint(span.to_m), Pen::Ghost)
        };
        pencil.line(Layer::Load, pen, [DVec2::new(x, high), DVec2::new(x, found.facade.foot_level_m)]);
    }
}

fn tag(
    thing: ThingId,
    placement: &Placement,
    unit: &ResolvedUnit,
    frame: &Frame,
    along_m: f64,
    options: &ElevationOptions,
) -> Label {
    let top = frame.level_m + unit.mast.height_m + unit.arm.tube.section.depth_m() / 2.0;
    Label {
        key: (thing, LabelKind::Tag),
        point: DVec2::new(along_m, top),
        prefers: DVec2::Y,
        away_mm: 1.5,
        rows: vec![Row::words(placement.tag.0.clone(), TextStyle::Tag)],
        pen: Pen::TagFrame,
        stress: options.stress(thing),
        optional: false,
    }
}
