//! The parts of a unit with every length, section and mass that was computed with.

use gantline_plan::catalog::{Arm, Base, Brace, Mast, Material, Rating, ResolvedUnit, SlewStops, to_mechanics};
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::Figure;

/// A resolved make-up: data as stored, and lengths that follow from them.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MakeUpAnswer {
    /// The family's name.
    pub family: String,
    /// Whether the family is made up for demonstration.
    pub is_invented: bool,
    /// The mast.
    pub mast: Mast,
    /// Its material.
    pub mast_material: Material,
    /// The arm.
    pub arm: Arm,
    /// Its material.
    pub arm_material: Material,
    /// The brace, if any.
    pub brace: Option<Brace>,
    /// Its material.
    pub brace_material: Option<Material>,
    /// Length of the brace between its pins.
    pub brace_length_m: Option<Figure>,
    /// The base.
    pub base: Base,
    /// Slew at which a person may hang.
    pub slew_stops: SlewStops,
    /// Bearing of a rear foot from straight behind the base, counter-clockwise.
    pub foot_bearing_rad: Figure,
    /// Level of a rear foot over the structural slab.
    pub foot_level_m: Figure,
    /// What is declared for the combination; null when nothing is.
    pub declared_rating: Option<Rating>,
    /// Whether the family lists the combination.
    pub is_listed: bool,
    /// Height of the arm's underside over the underside of the base.
    pub clear_height_m: Figure,
    /// Mass of mast, arm and brace together.
    pub portable_mass_kg: Figure,
}

impl MakeUpAnswer {
    /// The answer about a resolved make-up.
    pub fn of(unit: &ResolvedUnit) -> Self {
        let brace_length = |brace: &Brace| Figure::of(to_mechanics::brace_length_m(unit, brace.kind));
        Self {
            family: unit.family.clone(),
            is_invented: unit.invented,
            mast: unit.mast.clone(),
            mast_material: unit.mast_material.clone(),
            arm: unit.arm.clone(),
            arm_material: unit.arm_material.clone(),
            brace: unit.brace.clone(),
            brace_material: unit.brace_material.clone(),
            brace_length_m: unit.brace.as_ref().map(brace_length),
            base: unit.base.clone(),
            slew_stops: unit.slew_stops,
            foot_bearing_rad: Figure::of(unit.foot_bearing_rad),
            foot_level_m: Figure::of(unit.foot_level_m),
            declared_rating: unit.rating.clone(),
            is_listed: unit.listed,
            clear_height_m: Figure::of(unit.clear_height_m()),
            portable_mass_kg: Figure::of(unit.portable_mass_kg()),
        }
    }
}
