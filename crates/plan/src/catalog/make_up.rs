//! A make-up: the chosen mast, arm, brace and base, with the slew it is allowed.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{ResolvedUnit, resolved};
use crate::document::{FamilyId, PartId, Plan, RingFault};

/// The chosen parts of one unit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MakeUp {
    /// The family.
    pub family: FamilyId,
    /// The mast.
    pub mast: PartId,
    /// The arm.
    pub arm: PartId,
    /// The brace, if any.
    pub brace: Option<PartId>,
    /// The base.
    pub base: PartId,
    /// Another fixing product than the one the base names; none: the base's.
    #[serde(default)]
    pub fixing: Option<PartId>,
    /// Slew at which a person may hang.
    pub slew_stops: SlewStops,
    /// The slew at which the unit is drawn; it changes no result.
    #[serde(default)]
    pub drawn_slew_rad: f64,
    /// Bearing of a rear foot from straight behind the base, counter-clockwise.
    #[serde(default)]
    pub foot_bearing_rad: f64,
    /// Level of a rear foot over the structural slab.
    #[serde(default)]
    pub foot_level_m: f64,
}

impl MakeUp {
    /// Whether all results of the two are the same: they differ at most in the slew at which they are drawn.
    pub fn gives_the_same_as(&self, other: &Self) -> bool {
        let Self {
            family,
            mast,
            arm,
            brace,
            base,
            slew_stops,
            drawn_slew_rad: _,
            foot_bearing_rad,
            foot_level_m,
            fixing,
        } = self;
        (family, mast, arm, brace, base, fixing)
            == (&other.family, &other.mast, &other.arm, &other.brace, &other.base, &other.fixing)
            && *slew_stops == other.slew_stops
            && (*foot_bearing_rad, *foot_level_m) == (other.foot_bearing_rad, other.foot_level_m)
    }
}

/// Angles of slew at which a person may hang.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SlewStops {
    /// Any.
    WholeTurn,
    /// From one angle counter-clockwise to another.
    Between {
        /// First angle.
        from_rad: f64,
        /// Last angle.
        to_rad: f64,
    },
}

/// Why a make-up can't be resolved.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum MakeUpFault {
    /// The plan has no such family.
    #[error("the plan has no {family}")]
    NoFamily {
        /// The family asked for.
        family: FamilyId,
    },
    /// The family has no such part.
    #[error("the family \"{family}\" has no {what} \"{part}\"")]
    NoPart {
        /// The family's name.
        family: String,
        /// Mast, arm, brace, base or fixing.
        what: &'static str,
        /// The part asked for.
        part: PartId,
    },
    /// The family has no such material.
    #[error("the family \"{family}\" has no material \"{material}\"")]
    NoMaterial {
        /// The family's name.
        family: String,
        /// The material asked for.
        material: String,
    },
    /// An outline that is none.
    #[error("{field} is no outline: {fault}")]
    Outline {
        /// Part and field, such as `base.plate_m`.
        field: String,
        /// What is wrong with it.
        fault: RingFault,
    },
    /// An anchor that does not stand within its plate.
    #[error("base.anchors.at_m: anchor {index} at ({x_m:.3}, {y_m:.3}) m stands outside base.plate_m")]
    AnchorOutside {
        /// Which one, counted from 1.
        index: usize,
        /// Where.
        x_m: f64,
        /// Where.
        y_m: f64,
    },
    /// A datum that can't be used.
    #[error("{field} = {value} can't be used: {needs}")]
    Field {
        /// Part and field, such as `mast.height_m`.
        field: String,
        /// The value found.
        value: f64,
        /// What is needed.
        needs: &'static str,
    },
}

impl MakeUp {
    /// Every length, section and mass used, or what is missing.
    pub fn resolve(&self, plan: &Plan) -> Result<ResolvedUnit, MakeUpFault> {
        let family = plan.families.get(&self.family).ok_or(MakeUpFault::NoFamily { family: self.family })?;
        resolved::resolve(self, family)
    }
}
