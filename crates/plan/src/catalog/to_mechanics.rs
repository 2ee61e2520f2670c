//! The only place where stored parts become the types that mechanics computes with.

use gantline_mechanics::material::{BucklingClass, Forming, HazFactors, Material as Metal, MaterialKind as MetalKind};
use gantline_mechanics::member::{HoleAxis, Member, MomentShape, PinHole, Welds};
use gantline_mechanics::retention::Retention as Held;
use gantline_mechanics::section::Section;
use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace as BraceModel, BraceAction as Action, FootFrom as From, HeadJoint, PinOffsets, RopePoint, Unit,
};

use super::{
    BraceAction, BraceKind, FootFrom, Head, Material, MaterialKind, ResolvedUnit, Retention, SectionShape, Tube,
};
use crate::basis::load_case::GRAVITY_M_S2;

/// A part whose stored data mechanics refuses.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{part}: {what}")]
pub struct PartFault {
    /// Mast, arm or brace.
    pub part: &'static str,
    /// What is wrong with it.
    pub what: String,
}

/// The cross-section of a stored part.
pub fn section(shape: SectionShape) -> Section {
    match shape {
        SectionShape::RoundTube { diameter_m, wall_m } => Section::RoundTube { diameter_m, wall_m },
        SectionShape::RectTube { depth_m, width_m, wall_m, outer_radius_m } => {
            Section::RectTube { depth_m, width_m, wall_m, outer_radius_m }
        }
    }
}

/// The metal of a stored part.
pub fn metal(material: &Material) -> Metal {
    let kind = match material.kind {
        MaterialKind::Steel { cold_formed: true } => MetalKind::Steel { forming: Forming::ColdFormed },
        MaterialKind::Steel { cold_formed: false } => MetalKind::Steel { forming: Forming::HotFinished },
        MaterialKind::Aluminum { heat_treated, weld_softening } => {
            let kept = weld_softening.unwrap_or(1.0);
            MetalKind::Aluminum {
                buckling_class: if heat_treated { BucklingClass::A } else { BucklingClass::B },
                haz: HazFactors { proof: kept, ultimate: kept },
            }
        }
    };
    Metal {
        kind,
        elastic_pa: material.elastic_pa,
        shear_pa: material.shear_pa,
        density_kg_m3: material.density_kg_m3,
        yield_pa: material.yield_pa,
        ultimate_pa: material.ultimate_pa,
    }
}

/// Stiffness of a part; its weight is the stored mass, spread over its length, and not what the tube alone would weigh.
fn bar(
    part: &'static str,
    tube: &Tube,
    material: &Material,
    mass_kg: f64,
    length_m: f64,
) -> Result<BarStiffness, PartFault> {
    let plain = section(tube.section)
        .stiffness(&metal(material))
        .map_err(|fault| PartFault { part, what: fault.to_string() })?;
    Ok(BarStiffness { weight_n_per_m: mass_kg * GRAVITY_M_S2 / length_m, ..plain })
}

/// The unit as mechanics sees it.
pub fn unit(resolved: &ResolvedUnit) -> Result<Unit, PartFault> {
    let (mast, arm) = (&resolved.mast, &resolved.arm);
    let points = if arm.points.is_empty() {
        vec![RopePoint { x_m: arm.outreach_m, sideways_m: 0.0, drop_m: 0.0 }]
    } else {
        let point = |p: &super::RopePoint| RopePoint { x_m: p.out_m, sideways_m: p.sideways_m, drop_m: p.drop_m };
        arm.points.iter().map(point).collect()
    };
    Ok(Unit {
        mast: bar("mast", &mast.tube, &resolved.mast_material, mast.mass_kg, mast.height_m)?,
        mast_height_m: mast.height_m,
        base: BaseFixity::Rigid,
        arm: bar("arm", &arm.tube, &resolved.arm_material, arm.mass_kg, arm.outreach_m + arm.tail_m)?,
        outreach_m: arm.outreach_m,
        tail_m: arm.tail_m,
        head: match arm.head {
            Head::Pinned => HeadJoint::Pinned,
            Head::Rigid => HeadJoint::Rigid,
        },
        brace: brace(resolved)?,
        pins: PinOffsets::default(),
        points,
        lumps: Vec::new(),
    })
}

fn brace(resolved: &ResolvedUnit) -> Result<BraceModel, PartFault> {
    let (Some(brace), Some(material)) = (&resolved.brace, &resolved.brace_material) else {
        return Ok(BraceModel::None);
    };
    let height = resolved.mast.height_m;
    let action = match brace.action {
        BraceAction::PullAndPush => Action::Both,
        BraceAction::PullOnly => Action::PullOnly,
    };
    let length_m = brace_length_m(resolved, brace.kind);
    let bar = bar("brace", &brace.tube, material, brace.mass_kg, length_m)?;
    Ok(match brace.kind {
        BraceKind::RearToMast { tail_at_m, below_arm_m } => {
            BraceModel::RearToMast { tail_at_m, mast_at_m: height - below_arm_m, bar, action }
        }
        BraceKind::RearToBase { tail_at_m, base_at_m } => BraceModel::RearToBase { tail_at_m, base_at_m, bar, action },
        BraceKind::Front { arm_at_m, below_arm_m } => {
            BraceModel::Front { arm_at_m, mast_at_m: height - below_arm_m, bar, action }
        }
        BraceKind::RearFoot { from, distance_m, allowed_turn_rad } => BraceModel::RearFoot {
            from: match from {
                FootFrom::MastHead => From::MastHead,
                FootFrom::ArmTail => From::ArmTail { at_m: resolved.arm.tail_m },
            },
            distance_m,
            foot_level_m: resolved.foot_level_m,
            bearing_rad: resolved.foot_bearing_rad,
            allowed_turn_rad,
            foot_spring_n_per_m: None,
            bar,
            action,
        },
    })
}

/// Length of a brace between its pins, m.
pub fn brace_length_m(resolved: &ResolvedUnit, kind: BraceKind) -> f64 {
    let height = resolved.mast.height_m;
    match kind {
        BraceKind::RearToMast { tail_at_m, below_arm_m } => tail_at_m.hypot(below_arm_m),
        BraceKind::RearToBase { tail_at_m, base_at_m } => (tail_at_m - base_at_m).hypot(height),
        BraceKind::Front { arm_at_m, below_arm_m } => arm_at_m.hypot(below_arm_m),
        BraceKind::RearFoot { from, distance_m, .. } => {
            let from_m = match from {
                FootFrom::MastHead => 0.0,
                FootFrom::ArmTail => resolved.arm.tail_m,
            };
            (distance_m - from_m).hypot(height - resolved.foot_level_m)
        }
    }
}

/// A straight part as a member to be judged. `buckling_length_m` is that of both axes.
pub fn member(tube: &Tube, material: &Material, buckling_length_m: f64, shape: MomentShape) -> Member {
    Member {
        moment_shape_y: shape,
        moment_shape_z: shape,
        welds: if tube.welds.is_empty() { Welds::None } else { Welds::Across },
        pin_hole: tube.pin_holes.as_ref().map(|holes| PinHole { diameter_m: holes.diameter_m, axis: HoleAxis::AlongY }),
        ..Member::plain(section(tube.section), metal(material), buckling_length_m)
    }
}

/// What keeps a joint together.
pub fn held(retention: Retention) -> Held {
    match retention {
        Retention::Nothing => Held::Nothing,
        Retention::Gravity => Held::Gravity,
        Retention::Pin { resistance_n } => Held::Pin { resistance_n },
        Retention::Locked { resistance_n } => Held::Locked { resistance_n },
    }
}
