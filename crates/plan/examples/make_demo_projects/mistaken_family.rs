//! A family with mistakes made on purpose, so that rules about parts have something to find.

use gantline_plan::catalog::{
    BaseKind, Bearing, BraceAction, Combination, Family, FixingKind, HoldDown, Rating, Retention,
};
use gantline_plan::document::PartId;

use super::drafting_table::Drawn;

/// A rating below the weight of one person with tools.
const TOO_LOW_N: f64 = 1_000.0;
/// A rating that the parts don't hold.
const TOO_HIGH_N: f64 = 16_000.0;
/// Less than a person tied to an eye may pull.
const WEAK_EYE_N: f64 = 3_000.0;

/// The family, made from another one.
pub fn mistaken(sound: &Family) -> Drawn<Family> {
    let mut family = sound.clone();
    "Demonstration family Magpie (invented, with mistakes on purpose)".clone_into(&mut family.name);
    let no_part = "the family to start from lacks a part";
    let base = family.bases.get_mut(&PartId::new("floor-socket")).ok_or(no_part)?;
    base.takes = vec![PartId::new("mast-145")];
    base.eye.as_mut().ok_or(no_part)?.person_n = Some(WEAK_EYE_N);
    wrong_fixings(&mut family)?;
    family.arms.get_mut(&PartId::new("arm-115-front")).ok_or(no_part)?.retention = Retention::Nothing;
    family.braces.get_mut(&PartId::new("front-strut")).ok_or(no_part)?.action = BraceAction::PullOnly;
    let rated = |combination: &mut Combination, rated_n: f64| {
        combination.rating =
            Some(Rating { rated_n, persons: 1, declared_by: "nobody: a mistake made on purpose".to_owned() });
    };
    for combination in &mut family.combinations {
        match combination.arm.0.as_str() {
            "arm-085-rear" => rated(combination, TOO_LOW_N),
            "arm-115-rear" => rated(combination, TOO_HIGH_N),
            _ => {}
        }
    }
    Ok(family)
}

/// A flush plate higher than any build-up with weak pins, a sleeve without drain, an anchor validated for less than the
/// proof test pulls, bolts in steel too thin for what pulls them.
fn wrong_fixings(family: &mut Family) -> Drawn<()> {
    let no_part = "the family to start from lacks a fixing";
    family.fixings.get_mut(&PartId::new("bonded-20")).ok_or(no_part)?.validated_design_n = Some(4_000.0);
    let mut sleeve = family.bases.get(&PartId::new("floor-socket")).ok_or(no_part)?.clone();
    "Sleeve without a drain".clone_into(&mut sleeve.name);
    sleeve.kind = BaseKind::CastInSleeve { depth_m: 0.2, cover_m: 0.04, drained: Some(false), capped: Some(true) };
    sleeve.anchors = None;
    sleeve.takes = Vec::new();
    family.bases.insert(PartId::new("wet-sleeve"), sleeve);
    let mut steel = family.bases.get(&PartId::new("floor-socket")).ok_or(no_part)?.clone();
    "Socket on steel, thin bolts".clone_into(&mut steel.name);
    (steel.kind, steel.takes, steel.bearing) = (BaseKind::OnSteel, Vec::new(), Bearing::OnConcrete);
    let anchors = steel.anchors.as_mut().ok_or(no_part)?;
    (anchors.fixing, anchors.hole_m) = (PartId::new("thin-bolt"), Some(0.009));
    anchors.at_m = anchors.at_m.iter().copied().step_by(2).collect();
    family.bases.insert(PartId::new("steel-thin"), steel);
    let mut bolt = family.fixings.get(&PartId::new("through-20")).ok_or(no_part)?.clone();
    "Bolt M8 in steel (invented)".clone_into(&mut bolt.name);
    (bolt.kind, bolt.diameter_m, bolt.stress_area_m2) = (FixingKind::SteelBolts, 0.008, 36.6e-6);
    family.fixings.insert(PartId::new("thin-bolt"), bolt);
    let flush = family.bases.get_mut(&PartId::new("flush-plate")).ok_or(no_part)?;
    let hold_down = HoldDown { pins: 4, radius_m: 0.12, resistance_n: Some(8_000.0) };
    flush.kind = BaseKind::FlushPlate { stack_height_m: 0.14, hold_down };
    Ok(())
}
