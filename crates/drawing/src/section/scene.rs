//! What a section is drawn from: the plan, the unit with its parts, the plane, and the window that is drawn.

use gantline_plan::assess::{Assessment, UnitAssessment};
use gantline_plan::catalog::{BraceKind, ResolvedUnit};
use gantline_plan::document::{Placement, PlacementId, Plan, Roof, ThingId};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::frame::Frame;
use gantline_plan::geometry::rings::ring_contains;
use glam::DVec2;

use super::facade::{Crossing, crossings};
use super::options::SectionOptions;
use super::plane::SectionPlane;

/// Roof shown behind what stands farthest back, m.
const BEHIND_M: f64 = 0.7;
/// Air shown in front of what reaches farthest out, m.
const BEFORE_M: f64 = 0.45;
/// Facade shown below the slab, paper mm.
const BELOW_MM: f64 = 9.0;
/// The same where loads need room for their arrows, paper mm.
const BELOW_WITH_LOADS_MM: f64 = 22.0;
/// A facade farther in front of the mast than this is not drawn, m.
const FARTHEST_M: f64 = 8.0;

/// Everything a section is drawn from.
pub(super) struct Scene<'a> {
    pub plan: &'a Plan,
    pub thing: ThingId,
    pub placement: &'a Placement,
    pub result: &'a UnitAssessment,
    pub unit: &'a ResolvedUnit,
    pub roof: &'a Roof,
    pub frame: Frame,
    pub plane: SectionPlane,
    /// What is drawn of the building, in drawing coordinates.
    pub window: Bounds,
    /// Where the plane crosses edges of roofs.
    pub crossings: Vec<Crossing>,
    pub options: &'a SectionOptions,
}

impl<'a> Scene<'a> {
    /// None when the unit is not on the plan, its roof is gone or its make-up lacks something.
    pub fn of(
        plan: &'a Plan,
        assessment: &'a Assessment,
        id: PlacementId,
        options: &'a SectionOptions,
    ) -> Option<Self> {
        let placement = plan.placements.get(&id)?;
        let result = assessment.units.get(&id)?.as_ref();
        let frame = result.frame?;
        let unit = result.resolved.as_ref().ok()?.as_ref();
        let roof = plan.roofs.get(&frame.roof)?;
        let along = frame.direction(placement.make_up.drawn_slew_rad);
        let plane = SectionPlane { at: frame.at, along, level_m: frame.level_m };
        let slab_m = roof.level_m - frame.level_m;
        let deepest_m = roof.slab.thickness_m.max(thickness_at_m(roof, frame.at));
        let mut window = window_of(unit, deepest_m - slab_m, options);
        let crossings = crossings(plan, assessment, &plane, (window.min_m.x - 2.0, FARTHEST_M));
        let front = crossings.iter().find(|crossing| crossing.is_front(frame.roof));
        if let Some(face) = front.map(Crossing::farthest_face_m) {
            window.max_m.x = window.max_m.x.max(face + BEFORE_M);
        }
        let thing = ThingId::Placement(id);
        Some(Self { plan, thing, placement, result, unit, roof, frame, plane, window, crossings, options })
    }

    /// The edge in front of the mast that the arm reaches over.
    pub fn front(&self) -> Option<&Crossing> {
        self.crossings.iter().find(|crossing| crossing.is_front(self.frame.roof))
    }

    /// The tip: where the rope leaves, in drawing coordinates.
    pub fn tip(&self) -> DVec2 {
        let point = self.unit.arm.points.first();
        let (out, drop) = point.map_or((self.unit.arm.outreach_m, 0.0), |point| (point.out_m, point.drop_m));
        DVec2::new(out, self.unit.mast.height_m - drop)
    }

    /// The foot of a strut of its own, in drawing coordinates: seen square to the plane.
    pub fn foot(&self) -> Option<DVec2> {
        let BraceKind::RearFoot { distance_m, .. } = self.unit.brace.as_ref()?.kind else { return None };
        let direction = self.frame.direction(std::f64::consts::PI + self.unit.foot_bearing_rad);
        Some(DVec2::new(direction.dot(self.plane.along) * distance_m, self.slab_m() + self.unit.foot_level_m))
    }

    /// The top of the structural slab: 0, or below it where a plinth raises the unit.
    pub fn slab_m(&self) -> f64 {
        self.roof.level_m - self.plane.level_m
    }

    /// The underside of the structural slab, or of a thicker part of it under the mast.
    pub fn soffit_m(&self) -> f64 {
        self.slab_m() - self.roof.slab.thickness_m.max(self.thickness_m(0.0))
    }

    /// Thickness of the slab at a distance from the mast axis along the plane, m.
    pub fn thickness_m(&self, x_m: f64) -> f64 {
        thickness_at_m(self.roof, self.plane.in_plan(x_m))
    }

    /// Direction of the arm as drawn, in the base's axes.
    pub fn along_arm(&self) -> DVec2 {
        DVec2::from_angle(self.placement.make_up.drawn_slew_rad)
    }
}

/// Thickness of a roof's slab at a point of the plan, m: where zones overlap that of the thinnest.
pub(super) fn thickness_at_m(roof: &Roof, at: DVec2) -> f64 {
    let zones = roof.slab.zones.iter().filter(|zone| ring_contains(&zone.outline, at));
    zones.map(|zone| zone.thickness_m).reduce(f64::min).unwrap_or(roof.slab.thickness_m)
}

/// Farthest that what the base covers reaches from the mast axis, m.
fn footprint_m(unit: &ResolvedUnit) -> f64 {
    unit.base.footprint_m().iter().map(|corner| corner.length()).fold(0.0, f64::max)
}

fn window_of(unit: &ResolvedUnit, soffit_depth_m: f64, options: &SectionOptions) -> Bounds {
    let foot = match unit.brace.as_ref().map(|brace| brace.kind) {
        Some(BraceKind::RearFoot { distance_m, .. }) => distance_m,
        _ => 0.0,
    };
    let back = unit.arm.tail_m.max(foot).max(2.0 * unit.base.plate_half_m()).max(footprint_m(unit) - BEHIND_M / 2.0);
    let below_mm = if options.base_actions().is_some() { BELOW_WITH_LOADS_MM } else { BELOW_MM };
    let low = -soffit_depth_m - options.scale.m(below_mm);
    Bounds {
        min_m: DVec2::new(-back - BEHIND_M, low),
        max_m: DVec2::new(unit.arm.outreach_m + BEFORE_M, unit.mast.height_m + 0.3),
    }
}
