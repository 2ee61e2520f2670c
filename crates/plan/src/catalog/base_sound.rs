//! Whether the data of a base can be computed with: a plate that is one, anchors within it, positive embedment.

use glam::DVec2;

use super::resolved::{field, not_negative, positive};
use super::{Anchors, Base, BaseKind, Bearing, Fixing, MakeUpFault, PedestalBody};
use crate::document::ring::check_outline;
use crate::geometry::rings::ring_contains;

/// Checks the base's own numbers; those of the socket against the mast are checked with the mast.
pub(super) fn check(base: &Base, fixing: Option<&Fixing>) -> Result<(), MakeUpFault> {
    polygon("base.plate_m", &base.plate_m)?;
    positive("base.plate_thickness_m", base.plate_thickness_m)?;
    positive("base.engaged_m", base.engaged_m)?;
    positive("base.socket_diameter_m", base.socket_diameter_m)?;
    not_negative("base.mass_kg", base.mass_kg)?;
    positive_if_given("base.least_slab_m", base.least_slab_m)?;
    positive_if_given("base.collar_m", base.collar_m)?;
    kind(base)?;
    match base.bearing {
        Bearing::OnConcrete => {}
        Bearing::OnGrout { thickness_m, strength_pa } => {
            positive("base.bearing.thickness_m", thickness_m)?;
            positive("base.bearing.strength_pa", strength_pa)?;
        }
        Bearing::OnLevelingNuts { gap_m, .. } => positive("base.bearing.gap_m", gap_m)?,
    }
    if let Some(anchors) = &base.anchors {
        check_anchors(anchors, &base.plate_m)?;
    }
    fixing.map_or(Ok(()), check_fixing)
}

fn polygon(name: &str, corners: &[DVec2]) -> Result<(), MakeUpFault> {
    check_outline(corners).map_err(|fault| MakeUpFault::Outline { field: name.to_owned(), fault })
}

fn kind(base: &Base) -> Result<(), MakeUpFault> {
    match &base.kind {
        BaseKind::SurfaceSocket | BaseKind::CastInCage | BaseKind::OnSteel | BaseKind::BraceFoot => Ok(()),
        BaseKind::FlushPlate { stack_height_m, hold_down } => {
            positive("base.stack_height_m", *stack_height_m)?;
            let pins = f64::from(hold_down.pins);
            field("base.hold_down.pins", pins, hold_down.pins >= 3, "three or more on a circle")?;
            positive("base.hold_down.radius_m", hold_down.radius_m)?;
            positive_if_given("base.hold_down.resistance_n", hold_down.resistance_n)
        }
        BaseKind::Pedestal { height_m, body } => {
            positive("base.height_m", *height_m)?;
            match body {
                PedestalBody::SteelStub => Ok(()),
                PedestalBody::Plinth { corners_m } => polygon("base.plinth.corners_m", corners_m),
            }
        }
        BaseKind::CastInSleeve { depth_m, cover_m, .. } => {
            positive("base.depth_m", *depth_m)?;
            not_negative("base.cover_m", *cover_m)
        }
        BaseKind::WallSocket {
            eccentricity_m, plate_middle_m, least_wall_m, least_to_top_m, least_to_ends_m, ..
        } => {
            positive("base.eccentricity_m", *eccentricity_m)?;
            field("base.plate_middle_m", *plate_middle_m, true, "a number")?;
            not_negative("base.least_wall_m", *least_wall_m)?;
            not_negative("base.least_to_top_m", *least_to_top_m)?;
            not_negative("base.least_to_ends_m", *least_to_ends_m)
        }
    }
}

fn check_anchors(anchors: &Anchors, plate: &[DVec2]) -> Result<(), MakeUpFault> {
    let count = anchors.at_m.len();
    field("base.anchors.at_m count", count as f64, (1..=MOST_ANCHORS).contains(&count), "1 to 64 anchors")?;
    positive("base.anchors.embedment_m", anchors.embedment_m)?;
    positive_if_given("base.anchors.hole_m", anchors.hole_m)?;
    for (index, &at) in anchors.at_m.iter().enumerate() {
        if !(at.is_finite() && ring_contains(plate, at)) {
            return Err(MakeUpFault::AnchorOutside { index: index + 1, x_m: at.x, y_m: at.y });
        }
    }
    Ok(())
}

/// So many anchors as mechanics takes under one plate.
const MOST_ANCHORS: usize = gantline_mechanics::anchorage::MAX_ANCHORS;

fn check_fixing(fixing: &Fixing) -> Result<(), MakeUpFault> {
    positive("fixing.diameter_m", fixing.diameter_m)?;
    positive("fixing.stress_area_m2", fixing.stress_area_m2)?;
    positive("fixing.yield_pa", fixing.yield_pa)?;
    let ultimate = fixing.ultimate_pa;
    field("fixing.ultimate_pa", ultimate, ultimate >= fixing.yield_pa, "at least the yield strength")?;
    positive_if_given("fixing.outside_diameter_m", fixing.outside_diameter_m)?;
    positive_if_given("fixing.weld_throat_m", fixing.weld_throat_m)?;
    positive_if_given("fixing.validated_design_n", fixing.validated_design_n)?;
    if let Some(head) = fixing.head {
        let wider = head.diameter_m > fixing.diameter_m;
        field("fixing.head.diameter_m", head.diameter_m, wider, "wider than the shank")?;
        positive("fixing.head.thickness_m", head.thickness_m)?;
    }
    Ok(())
}

fn positive_if_given(name: &str, value: Option<f64>) -> Result<(), MakeUpFault> {
    value.map_or(Ok(()), |value| positive(name, value))
}
