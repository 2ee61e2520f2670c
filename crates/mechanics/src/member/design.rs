//! A member as its designer describes it: section, material, buckling lengths, welds, pin hole.

use thiserror::Error;

use super::code::{FactorFault, MemberCode};
use super::pin_hole::{NetProperties, PinHole, PinHoleFault};
use super::resistance::MemberResistance;
use crate::material::{Material, MaterialFault};
use crate::section::{Section, SectionFault, SectionProperties};

/// All that the resistance of a straight member of even section depends on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Member {
    /// Shape.
    pub section: Section,
    /// Metal.
    pub material: Material,
    /// Buckling length for bending about y, m. A cantilever mast of height H has at least 2H.
    pub buckling_length_y_m: f64,
    /// Buckling length for bending about z, m.
    pub buckling_length_z_m: f64,
    /// Length between points held against twisting, m, for lateral-torsional buckling.
    pub unbraced_length_m: f64,
    /// Shape of the M_y diagram.
    pub moment_shape_y: MomentShape,
    /// Shape of the M_z diagram.
    pub moment_shape_z: MomentShape,
    /// Welds across the member, wherever along its length.
    pub welds: Welds,
    /// The pin hole at stations marked with one.
    pub pin_hole: Option<PinHole>,
}

/// Shape of a moment diagram between the ends that hold the member, for the equivalent uniform moment factor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MomentShape {
    /// Even, or not known: factor 1.
    Uniform,
    /// The member's ends move sideways when it buckles, as a cantilever mast does: 0.9 (EN 1993-1-1 Table B.3, note).
    Sway,
    /// Straight from end to end; `ratio` = smaller over larger end moment, −1 to 1, negative when they differ in sign.
    Straight { ratio: f64 },
}

/// Whether there are welds across the member.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Welds {
    /// None.
    None,
    /// Across the member somewhere along its length.
    Across,
}

/// Why a member has no resistance.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum MemberFault {
    /// The shape is wrong.
    #[error(transparent)]
    Section(#[from] SectionFault),
    /// The material is wrong.
    #[error(transparent)]
    Material(#[from] MaterialFault),
    /// The pin hole is wrong.
    #[error(transparent)]
    PinHole(#[from] PinHoleFault),
    /// A partial or resistance factor is wrong.
    #[error(transparent)]
    Factor(#[from] FactorFault),
    /// A length is negative, infinite or not a number.
    #[error("member {field} must be zero or a positive length, found {value} m")]
    Length { field: &'static str, value: f64 },
    /// The ratio of end moments is outside −1..1.
    #[error("member {field} ratio of end moments must lie between -1 and 1, found {value}")]
    MomentRatio { field: &'static str, value: f64 },
}

impl Member {
    /// A member without welds and holes that has the same length for every kind of buckling and an even moment.
    pub const fn plain(section: Section, material: Material, length_m: f64) -> Self {
        Self {
            section,
            material,
            buckling_length_y_m: length_m,
            buckling_length_z_m: length_m,
            unbraced_length_m: length_m,
            moment_shape_y: MomentShape::Uniform,
            moment_shape_z: MomentShape::Uniform,
            welds: Welds::None,
            pin_hole: None,
        }
    }

    /// Everything that does not depend on the forces, worked out once.
    pub fn resistance(&self, code: &MemberCode) -> Result<MemberResistance, MemberFault> {
        code.check()?;
        Ok(MemberResistance::new(&self.checked()?, code))
    }

    fn checked(&self) -> Result<CheckedMember, MemberFault> {
        let gross = self.section.properties()?;
        self.material.check()?;
        for (field, value) in [
            ("buckling_length_y_m", self.buckling_length_y_m),
            ("buckling_length_z_m", self.buckling_length_z_m),
            ("unbraced_length_m", self.unbraced_length_m),
        ] {
            if !(value.is_finite() && value >= 0.0) {
                return Err(MemberFault::Length { field, value });
            }
        }
        self.moment_shape_y.check("moment_shape_y")?;
        self.moment_shape_z.check("moment_shape_z")?;
        let net = match &self.pin_hole {
            Some(hole) => Some(hole.net(&self.section, &gross)?),
            None => None,
        };
        Ok(CheckedMember { member: *self, gross, net })
    }
}

/// A member whose numbers are known to be sound.
#[derive(Debug, Clone, Copy)]
pub(super) struct CheckedMember {
    pub member: Member,
    pub gross: SectionProperties,
    pub net: Option<NetProperties>,
}

impl MomentShape {
    fn check(self, field: &'static str) -> Result<(), MemberFault> {
        match self {
            Self::Straight { ratio } if !(-1.0..=1.0).contains(&ratio) => {
                Err(MemberFault::MomentRatio { field, value: ratio })
            }
            Self::Uniform | Self::Sway | Self::Straight { .. } => Ok(()),
        }
    }

    /// C_m of EN 1993-1-1 Table B.3: 1 for an even moment, 0.9 with sway, 0.6 + 0.4ψ ≥ 0.4 for a straight diagram.
    pub(super) fn equivalent_en(self) -> f64 {
        match self {
            Self::Uniform => 1.0,
            Self::Sway => 0.9,
            Self::Straight { ratio } => (0.6 + 0.4 * ratio).max(0.4),
        }
    }

    /// C_m of AISC 360 Appendix 8 (A-8-4), 0.6 − 0.4·(M1/M2) with the specification's opposite sign of the ratio,
    /// not taken below 0.4; 1 where nothing better is known, and with sway, whose moments come amplified.
    pub(super) fn equivalent_aisc(self) -> f64 {
        match self {
            Self::Uniform | Self::Sway => 1.0,
            Self::Straight { ratio } => (0.6 + 0.4 * ratio).max(0.4),
        }
    }
}
