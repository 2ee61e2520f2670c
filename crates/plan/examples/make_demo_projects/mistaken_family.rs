//! A family with mistakes made on purpose, so that rules about parts have something to find.

use gantline_plan::catalog::{BraceAction, Combination, Family, Rating, Retention};
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
