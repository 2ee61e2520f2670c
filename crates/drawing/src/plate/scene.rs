//! What a picture of a plate is drawn from.

use gantline_plan::assess::anchorage::{BaseUse, Fixed, PlateState};
use gantline_plan::assess::{Assessment, UnitAssessment};
use gantline_plan::catalog::{Base, BaseKind, Fixing, ResolvedUnit};
use gantline_plan::document::{Placement, PlacementId, Plan, ThingId};
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use super::options::PlateOptions;

/// Everything a picture of a plate is drawn from.
pub(super) struct Scene<'a> {
    pub plan: &'a Plan,
    pub thing: ThingId,
    pub placement: &'a Placement,
    pub result: &'a UnitAssessment,
    pub base: &'a Base,
    pub fixing: Option<&'a Fixing>,
    /// The look that is shown; none when nothing was computed.
    pub used: Option<&'a BaseUse>,
    /// The box round plate and anchors.
    pub bounds: Bounds,
    /// Turn of the plate's axes from the base's, rad; none for a plate on a wall.
    pub turn_rad: Option<f64>,
    pub options: &'a PlateOptions,
}

impl<'a> Scene<'a> {
    /// None when the unit is not on the plan, lacks a part, or has no such plate.
    pub fn of(plan: &'a Plan, assessment: &'a Assessment, id: PlacementId, options: &'a PlateOptions) -> Option<Self> {
        let placement = plan.placements.get(&id)?;
        let result = assessment.units.get(&id)?.as_ref();
        let unit = result.resolved.as_ref().ok()?.as_ref();
        let (base, fixing) = plate_of(unit, options.of)?;
        let used = result.base.as_ref().and_then(|found| {
            let mut here = found.uses.iter().filter(|used| used.of == options.of);
            match options.look {
                Some(look) => here.find(|used| used.look == look),
                None => here
                    .filter(|used| used.share().is_some())
                    .reduce(|worst, next| if next.share() > worst.share() { next } else { worst }),
            }
        });
        let anchors = base.anchors.iter().flat_map(|anchors| &anchors.at_m);
        let bounds = Bounds::of(base.plate_m.iter().chain(anchors).copied())?;
        let turn_rad = match (options.of, &base.kind) {
            (Fixed::Base, BaseKind::WallSocket { .. }) => None,
            (Fixed::Base, _) => Some(0.0),
            (Fixed::Foot, _) => Some(unit.foot_bearing_rad),
        };
        let thing = ThingId::Placement(id);
        Some(Self { plan, thing, placement, result, base, fixing, used, bounds, turn_rad, options })
    }

    /// The state that is shown.
    pub fn state(&self) -> Option<&PlateState> {
        self.used?.state.as_deref()
    }

    /// A direction or place of the base's axes in those of the plate; none for a plate on a wall.
    pub fn seen_from_base(&self, there: DVec2) -> Option<DVec2> {
        Some(DVec2::from_angle(-self.turn_rad?).rotate(there))
    }

    /// A direction of the plan in the axes of the plate; none for a plate on a wall or a unit without a place.
    pub fn seen_from_plan(&self, there: DVec2) -> Option<DVec2> {
        let frame = self.result.frame?;
        self.seen_from_base(DVec2::from_angle(-frame.outward_rad).rotate(there))
    }
}

fn plate_of(unit: &ResolvedUnit, of: Fixed) -> Option<(&Base, Option<&Fixing>)> {
    match of {
        Fixed::Base => Some((&unit.base, unit.fixing.as_ref())),
        Fixed::Foot => unit.foot.as_ref().map(|foot| (&foot.base, foot.fixing.as_ref())),
    }
}
