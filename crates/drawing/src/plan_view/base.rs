//! A base in plan, by its kind: what it covers, its plate with anchors, its socket; marked where it is used beyond its
//! resistance or was not wholly checked.

use gantline_plan::assess::UnitAssessment;
use gantline_plan::assess::anchorage::BaseState;
use gantline_plan::catalog::{Base, BaseKind, BraceKind, Fixing, PedestalBody, ResolvedUnit, WallSide};
use gantline_plan::geometry::frame::Frame;
use glam::DVec2;

use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;

/// Anchors smaller than this on paper are left out: the plate alone says that there are some, mm.
const LEAST_ANCHOR_MM: f64 = 0.25;

const PART: Fill = Fill::Hatch(Hatch::Part);

/// Where a plate lies in the plan: its origin and the turn of its x axis.
#[derive(Clone, Copy)]
struct Lies {
    at: DVec2,
    turn_rad: f64,
}

impl Lies {
    fn point(self, local: DVec2) -> DVec2 {
        self.at + DVec2::from_angle(self.turn_rad).rotate(local)
    }

    fn ring(self, corners: &[DVec2]) -> Vec<DVec2> {
        corners.iter().map(|&corner| self.point(corner)).collect()
    }
}

/// Draws the base.
pub(super) fn draw_base(pencil: &mut Pencil, unit: &ResolvedUnit, result: &UnitAssessment, frame: &Frame) {
    let base = &unit.base;
    let lies = Lies { at: frame.at, turn_rad: frame.outward_rad };
    let fill = fill_of(result);
    let radius_m = base.socket_diameter_m / 2.0;
    match &base.kind {
        BaseKind::Pedestal { body: PedestalBody::Plinth { corners_m }, .. } => {
            let concrete = if fill == PART { Fill::Hatch(Hatch::Parapet) } else { fill };
            pencil.area(Layer::Unit, concrete, Some(Pen::Outline), lies.ring(corners_m));
            pencil.area(Layer::Unit, PART, Some(Pen::Edge), lies.ring(&base.plate_m));
        }
        BaseKind::WallSocket { side, eccentricity_m, .. } => {
            draw_on_wall(pencil, base, lies, (*side, *eccentricity_m), fill);
        }
        _ => pencil.area(Layer::Unit, fill, Some(Pen::Outline), lies.ring(&base.plate_m)),
    }
    if !matches!(base.kind, BaseKind::WallSocket { .. }) {
        draw_anchors(pencil, base, unit.fixing.as_ref(), lies);
    }
    pencil.disc(Layer::Unit, PART, Some(Pen::Edge), frame.at, radius_m);
    match &base.kind {
        BaseKind::FlushPlate { hold_down, .. } => {
            let pin_m = (hold_down.radius_m * 0.05).max(pencil.scale.m(0.2));
            for pin in 0..hold_down.pins {
                let turn = std::f64::consts::TAU * f64::from(pin) / f64::from(hold_down.pins);
                let at = lies.point(DVec2::from_angle(turn) * hold_down.radius_m);
                pencil.disc(Layer::Unit, Fill::Ink(Pen::Edge), None, at, pin_m);
            }
        }
        BaseKind::CastInSleeve { drained: Some(true), .. } => {
            pencil.disc(Layer::Unit, Fill::Ink(Pen::Edge), None, frame.at, radius_m * 0.15);
        }
        BaseKind::OnSteel => {
            // The flange below it runs on, hidden under plate and roof.
            let half_m = base.plate_half_m();
            for side in [-half_m, half_m] {
                let ends = [-2.0 * half_m, 2.0 * half_m].map(|along| lies.point(DVec2::new(side * 0.8, along)));
                pencil.line(Layer::Unit, Pen::Hidden, ends);
            }
        }
        _ => {}
    }
}

/// Draws a foot of its own.
pub(super) fn draw_foot(pencil: &mut Pencil, unit: &ResolvedUnit, frame: &Frame) {
    let (Some(foot), Some(lies)) = (&unit.foot, foot_lies(unit, frame)) else { return };
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), lies.ring(&foot.base.plate_m));
    draw_anchors(pencil, &foot.base, foot.fixing.as_ref(), lies);
}

/// Its x axis points to the mast.
fn foot_lies(unit: &ResolvedUnit, frame: &Frame) -> Option<Lies> {
    let BraceKind::RearFoot { distance_m, .. } = unit.brace.as_ref()?.kind else { return None };
    let turn_rad = frame.outward_rad + unit.foot_bearing_rad;
    Some(Lies { at: frame.at - DVec2::from_angle(turn_rad) * distance_m, turn_rad })
}

/// How the ground of the base tells what came of its checks.
fn fill_of(result: &UnitAssessment) -> Fill {
    let Some(base) = &result.base else { return Fill::Hatch(Hatch::BaseUnchecked) };
    match base.state() {
        BaseState::Over => Fill::Hatch(Hatch::BaseOver),
        BaseState::Holds => PART,
        BaseState::NotChecked | BaseState::InPart => Fill::Hatch(Hatch::BaseUnchecked),
    }
}

/// What a tag says of the base: always where it is used beyond its resistance, of the others where it is asked for.
pub(super) fn base_words(result: &UnitAssessment, is_asked_for: bool) -> Option<String> {
    let base = result.base.as_ref()?;
    if base.state() != BaseState::Over && !is_asked_for {
        return None;
    }
    Some(base.used_words())
}

fn draw_anchors(pencil: &mut Pencil, base: &Base, fixing: Option<&Fixing>, lies: Lies) {
    let (Some(anchors), Some(fixing)) = (&base.anchors, fixing) else { return };
    if pencil.scale.mm(fixing.diameter_m) < LEAST_ANCHOR_MM {
        return;
    }
    for &at in &anchors.at_m {
        pencil.disc(Layer::Unit, Fill::Ink(Pen::Edge), None, lies.point(at), fixing.diameter_m / 2.0);
    }
}

/// A plate on the face of a wall, and the brackets that reach from it to the socket.
fn draw_on_wall(pencil: &mut Pencil, base: &Base, lies: Lies, (side, eccentricity_m): (WallSide, f64), fill: Fill) {
    let toward = match side {
        WallSide::WallInFront => 1.0,
        WallSide::WallBehind => -1.0,
    };
    let half_m = base.plate_m.iter().fold(0.0, |far: f64, corner| far.max(corner.x.abs()));
    let rectangle = |near: f64, far: f64, half: f64| {
        lies.ring(&[(near, -half), (far, -half), (far, half), (near, half)].map(|(x, y)| DVec2::new(x * toward, y)))
    };
    let plate = rectangle(eccentricity_m - base.plate_thickness_m, eccentricity_m, half_m);
    let bracket = rectangle(0.0, eccentricity_m - base.plate_thickness_m, base.socket_diameter_m * 0.3);
    pencil.area(Layer::Unit, PART, Some(Pen::Edge), bracket);
    pencil.area(Layer::Unit, fill, Some(Pen::Outline), plate);
}
