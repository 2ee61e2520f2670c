//! A `Material` is what resistance and stiffness formulas need of a metal; names and grades stay in the catalog.

use thiserror::Error;

/// Standard acceleration of free fall, m/s² (ISO 80000-3).
pub const STANDARD_GRAVITY_M_S2: f64 = 9.80665;

/// A metal as the formulas see it. Strengths are characteristic values; partial factors come with the design code.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Material {
    /// Which family of rules applies, with the data only that family asks for.
    pub kind: MaterialKind,
    /// Modulus of elasticity E, Pa.
    pub elastic_pa: f64,
    /// Shear modulus G, Pa.
    pub shear_pa: f64,
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Yield strength f_y of steel, 0.2 % proof strength f_o of aluminum, Pa.
    pub yield_pa: f64,
    /// Ultimate tensile strength f_u, Pa.
    pub ultimate_pa: f64,
}

/// Steel or aluminum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MaterialKind {
    /// Steel; how the section was formed chooses its buckling curve.
    Steel { forming: Forming },
    /// Aluminum; buckling class of the alloy and temper, and what welding leaves of its strength.
    Aluminum { buckling_class: BucklingClass, haz: HazFactors },
}

/// How a steel section got its shape (EN 1993-1-1 Table 6.2).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Forming {
    /// Hot-finished hollow section.
    HotFinished,
    /// Cold-formed hollow section.
    ColdFormed,
    /// Rolled or machined solid bar.
    SolidBar,
}

/// Buckling class of an aluminum alloy and temper (EN 1999-1-1 Table 3.2).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BucklingClass {
    /// Heat-treated alloys such as the T6 tempers.
    A,
    /// The others.
    B,
}

/// What a weld leaves of an aluminum's strength near it (EN 1999-1-1 Table 3.2): ratios above 0, at most 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HazFactors {
    /// ρ_o,haz: proof strength in the heat-affected zone over that of the parent metal.
    pub proof: f64,
    /// ρ_u,haz: ultimate strength in the heat-affected zone over that of the parent metal.
    pub ultimate: f64,
}

/// Why a material can't be used.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum MaterialFault {
    /// A value is zero, negative, infinite or not a number.
    #[error("material {field} must be positive, found {value}")]
    NotPositive { field: &'static str, value: f64 },
    /// The ultimate strength lies below the yield strength.
    #[error("material ultimate_pa {ultimate_pa} lies below yield_pa {yield_pa}")]
    UltimateBelowYield { yield_pa: f64, ultimate_pa: f64 },
    /// A heat-affected-zone factor is not in (0, 1].
    #[error("material {field} must be above 0 and at most 1, found {value}")]
    HazFactor { field: &'static str, value: f64 },
}

impl Material {
    /// Structural steel with the constants of EN 1993-1-1 3.2.6: E = 210 GPa, ν = 0.3, so G = E/2.6; 7850 kg/m³
    /// (EN 1991-1-1 Table A.4).
    pub const fn steel(yield_pa: f64, ultimate_pa: f64, forming: Forming) -> Self {
        Self {
            kind: MaterialKind::Steel { forming },
            elastic_pa: 210e9,
            shear_pa: 210e9 / 2.6,
            density_kg_m3: 7850.0,
            yield_pa,
            ultimate_pa,
        }
    }

    /// Structural aluminum with the constants of EN 1999-1-1 3.2.5: E = 70 GPa, G = 27 GPa, 2700 kg/m³.
    pub const fn aluminum(proof_pa: f64, ultimate_pa: f64, buckling_class: BucklingClass, haz: HazFactors) -> Self {
        Self {
            kind: MaterialKind::Aluminum { buckling_class, haz },
            elastic_pa: 70e9,
            shear_pa: 27e9,
            density_kg_m3: 2700.0,
            yield_pa: proof_pa,
            ultimate_pa,
        }
    }

    /// Nothing, or the first field that is wrong.
    pub fn check(&self) -> Result<(), MaterialFault> {
        for (field, value) in [
            ("elastic_pa", self.elastic_pa),
            ("shear_pa", self.shear_pa),
            ("density_kg_m3", self.density_kg_m3),
            ("yield_pa", self.yield_pa),
            ("ultimate_pa", self.ultimate_pa),
        ] {
            if !(value.is_finite() && value > 0.0) {
                return Err(MaterialFault::NotPositive { field, value });
            }
        }
        if self.ultimate_pa < self.yield_pa {
            return Err(MaterialFault::UltimateBelowYield { yield_pa: self.yield_pa, ultimate_pa: self.ultimate_pa });
        }
        if let MaterialKind::Aluminum { haz, .. } = self.kind {
            for (field, value) in [("haz.proof", haz.proof), ("haz.ultimate", haz.ultimate)] {
                if !(value > 0.0 && value <= 1.0) {
                    return Err(MaterialFault::HazFactor { field, value });
                }
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wrong_material_names_its_field() {
        let mut steel = Material::steel(355e6, 470e6, Forming::ColdFormed);
        assert_eq!(steel.check(), Ok(()));
        steel.density_kg_m3 = -1.0;
        assert_eq!(steel.check(), Err(MaterialFault::NotPositive { field: "density_kg_m3", value: -1.0 }));
        let swapped = Material::steel(470e6, 355e6, Forming::ColdFormed);
        assert!(matches!(swapped.check(), Err(MaterialFault::UltimateBelowYield { .. })));
        let haz = HazFactors { proof: 0.5, ultimate: 1.2 };
        let aluminum = Material::aluminum(240e6, 270e6, BucklingClass::A, haz);
        assert_eq!(aluminum.check(), Err(MaterialFault::HazFactor { field: "haz.ultimate", value: 1.2 }));
    }
}
