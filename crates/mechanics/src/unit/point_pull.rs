//! A given rope pull at a given point of the unit, and the load case it makes with the weight.

use glam::DVec3;

use super::build_frame::FrameOfUnit;
use super::column::Forces;
use super::fault::UnitFault;
use super::model::UnitModel;
use crate::frame::LoadCase;

/// A force at a rope point, in arm axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PointPull {
    /// Index of the rope point.
    pub point: usize,
    /// Force on the unit, N.
    pub force_n: DVec3,
}

impl UnitModel {
    /// Pulls and self-weight (times `weight_factor`) as a load case of a frame of this unit. The
    /// half of a brace's weight that goes straight to base or foot is not in it.
    pub fn load_case(
        &self,
        frame: &FrameOfUnit,
        pulls: &[PointPull],
        weight_factor: f64,
    ) -> Result<LoadCase, UnitFault> {
        let mut case = LoadCase::default();
        for pull in pulls {
            let point = self.rope_point(pull.point)?;
            let part = frame.load_case(&Forces::pull(point, pull.force_n));
            case.nodal.extend(part.nodal);
            case.members.extend(part.members);
        }
        for (factor, column) in self.weight_parts(frame.slew_rad)? {
            let mut weight = column.forces.clone();
            weight.scale(weight_factor * factor);
            let part = frame.load_case(&weight);
            case.nodal.extend(part.nodal);
            case.members.extend(part.members);
        }
        Ok(case)
    }
}
