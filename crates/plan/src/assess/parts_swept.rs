//! The bands that arm and brace sweep, with heights as levels over level zero.

use std::f64::consts::PI;

use super::assessment::{Part, SweptPart};
use super::swept::{HeightBand, SweptBand};
use crate::catalog::{BraceKind, FootFrom, ResolvedUnit};
use crate::geometry::frame::Frame;
use crate::geometry::turns::Turns;

/// A straight part as seen along the arm: from one point to another, distances from the mast axis (behind it negative)
/// and heights over the underside of the base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    /// Which part.
    pub part: Part,
    /// Distance of its first end from the mast axis; negative behind it.
    pub from_out_m: f64,
    /// Height of the first end's axis.
    pub from_up_m: f64,
    /// Distance of its second end from the mast axis; negative behind it.
    pub to_out_m: f64,
    /// Height of the second end's axis.
    pub to_up_m: f64,
    /// Depth of its section in the plane of mast and arm.
    pub depth_m: f64,
    /// Width of its section across that plane.
    pub width_m: f64,
    /// Whether it turns with the arm.
    pub turns: bool,
}

/// The profiles of arm and brace of a unit, the arm in two: before and behind the mast.
pub fn profiles(unit: &ResolvedUnit) -> Vec<Profile> {
    let height = unit.mast.height_m;
    let (depth_m, width_m) = (unit.arm.tube.section.depth_m(), unit.arm.tube.section.width_m());
    let arm = |to_out_m: f64| Profile {
        part: Part::Arm,
        from_out_m: 0.0,
        from_up_m: height,
        to_out_m,
        to_up_m: height,
        depth_m,
        width_m,
        turns: true,
    };
    let mut all = vec![arm(unit.arm.outreach_m)];
    if unit.arm.tail_m > 0.0 {
        all.push(arm(-unit.arm.tail_m));
    }
    all.extend(brace_profile(unit));
    all
}

fn brace_profile(unit: &ResolvedUnit) -> Option<Profile> {
    let brace = unit.brace.as_ref()?;
    let height = unit.mast.height_m;
    let section = brace.tube.section;
    let profile = |part, from: (f64, f64), to: (f64, f64), turns| Profile {
        part,
        from_out_m: from.0,
        from_up_m: from.1,
        to_out_m: to.0,
        to_up_m: to.1,
        depth_m: section.depth_m(),
        width_m: section.width_m(),
        turns,
    };
    Some(match brace.kind {
        BraceKind::RearToMast { tail_at_m, below_arm_m } => {
            profile(Part::RearBrace, (0.0, height - below_arm_m), (-tail_at_m, height), true)
        }
        BraceKind::RearToBase { tail_at_m, base_at_m } => {
            profile(Part::RearBrace, (-base_at_m, 0.0), (-tail_at_m, height), true)
        }
        BraceKind::Front { arm_at_m, below_arm_m } => {
            profile(Part::FrontBrace, (0.0, height - below_arm_m), (arm_at_m, height), true)
        }
        BraceKind::RearFoot { from, distance_m, .. } => {
            let head = match from {
                FootFrom::MastHead => (0.0, height),
                FootFrom::ArmTail => (-unit.arm.tail_m, height),
            };
            profile(Part::FootStrut, head, (-distance_m, unit.foot_level_m), false)
        }
    })
}

impl Profile {
    /// Its band: distances counted outward from the mast axis, heights as levels.
    fn band(&self, level_m: f64) -> HeightBand {
        let (r_from, r_to) = (self.from_out_m.abs(), self.to_out_m.abs());
        let run = (r_to - r_from).abs();
        let rise = (self.to_up_m - self.from_up_m).abs();
        // Half the section measured upright: (d/2)/cos β; never more than half the part's own height and half the section.
        let half_up =
            if run > 0.0 { self.depth_m / 2.0 * run.hypot(rise) / run } else { rise / 2.0 + self.depth_m / 2.0 };
        let half_up = half_up.min(rise / 2.0 + self.depth_m / 2.0);
        let (near, far) = if r_from <= r_to {
            ((r_from, self.from_up_m), (r_to, self.to_up_m))
        } else {
            ((r_to, self.to_up_m), (r_from, self.from_up_m))
        };
        HeightBand {
            r0_m: near.0,
            r1_m: far.0,
            low_at_r0_m: level_m + near.1 - half_up,
            low_at_r1_m: level_m + far.1 - half_up,
            high_at_r0_m: level_m + near.1 + half_up,
            high_at_r1_m: level_m + far.1 + half_up,
            half_width_m: self.width_m / 2.0,
        }
    }

    /// Whether it lies behind the mast.
    fn is_behind(&self) -> bool {
        self.from_out_m.min(self.to_out_m) < 0.0
    }
}

/// The swept bands of a unit. Slews are in the base's axes; bands are in plan directions.
pub fn swept_parts(unit: &ResolvedUnit, frame: &Frame, loaded: &Turns, serving: &Turns) -> Vec<SweptPart> {
    let rest = loaded.minus(serving);
    profiles(unit)
        .into_iter()
        .filter_map(|profile| {
            let turned = if profile.is_behind() { frame.outward_rad + PI } else { frame.outward_rad };
            let (serving, rest) = if profile.turns {
                (serving.rotated(turned), rest.rotated(turned))
            } else {
                (Turns::at([turned + unit.foot_bearing_rad]), Turns::none())
            };
            let band = SweptBand::new(frame.at, serving, profile.band(frame.level_m)).ok()?;
            let turned_rad = profile.turns.then_some(turned);
            Some(SweptPart { part: profile.part, turned_rad, rest: band.through(rest), serving: band })
        })
        .collect()
}
