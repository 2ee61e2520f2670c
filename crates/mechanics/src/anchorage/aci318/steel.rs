//! Steel of one fastener, ACI 318-19 17.6.1 and 17.7.1.

use super::super::group::{Group, Seating};
use super::super::line::{newtons, number, pascals, square_meters};
use super::super::record::{NotChecked, Symbol};
use super::factors::Aci318Factors;

/// Elongation from which steel counts as ductile (2.3). That definition also asks for 30 % reduction of area, which is not
/// among the data; nuts and rods of the usual grades with 14 % have it.
const DUCTILE: f64 = 0.14;
/// Most f_uta, Pa (17.6.1.2).
const MOST_PA: f64 = 860e6;

/// What the steel bears.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Steel {
    futa_pa: f64,
    area_m2: f64,
    grout: f64,
    phi_tension: f64,
    phi_shear: f64,
    /// Why shear can't be checked, if it can't.
    pub shear: Result<(), NotChecked>,
}

impl Steel {
    pub(super) fn new(group: &Group, factors: &Aci318Factors) -> Self {
        let fastener = &group.fastener;
        let grade = &fastener.grade;
        let ductile = grade.rupture_elongation.is_some_and(|elongation| elongation >= DUCTILE);
        let (phi_tension, phi_shear) = if ductile {
            (factors.ductile_tension, factors.ductile_shear)
        } else {
            (factors.brittle_tension, factors.brittle_shear)
        };
        let shear = match (group.fixture.hole_diameter_m, group.fixture.seating) {
            (None, _) => Err(NotChecked::MissingData { field: "hole_diameter_m" }),
            (_, Seating::StoodOff { .. }) => {
                Err(NotChecked::StructuralEngineer { what: "shear of anchors stood off without grout" })
            }
            (Some(_), Seating::OnConcrete | Seating::OnGrout { .. }) => Ok(()),
        };
        Self {
            futa_pa: grade.ultimate_pa.min(1.9 * grade.yield_pa).min(MOST_PA),
            area_m2: fastener.stress_area_m2,
            grout: if matches!(group.fixture.seating, Seating::OnGrout { .. }) { 0.8 } else { 1.0 },
            phi_tension,
            phi_shear,
            shear,
        }
    }

    /// N_sa = A_se,N·f_uta, f_uta ≤ min(1.9·f_ya; 860 MPa), (17.6.1.2), N.
    pub(super) fn tension_n(&self) -> f64 {
        self.area_m2 * self.futa_pa
    }

    /// V_sa = 0.6·A_se,V·f_uta, (17.7.1.2b), times 0.8 on grout (17.7.1.2.1), N.
    pub(super) fn shear_n(&self) -> f64 {
        0.6 * self.area_m2 * self.futa_pa * self.grout
    }

    /// φ·N_sa, N.
    pub(super) fn tension_design_n(&self) -> f64 {
        self.phi_tension * self.tension_n()
    }

    /// φ·V_sa, N.
    pub(super) fn shear_design_n(&self) -> f64 {
        self.phi_shear * self.shear_n()
    }

    pub(super) fn tension_symbols(&self) -> [Symbol; 4] {
        [
            square_meters("Ase,N", self.area_m2),
            pascals("futa", self.futa_pa),
            newtons("Nsa", self.tension_n()),
            number("phi", self.phi_tension),
        ]
    }

    pub(super) fn shear_symbols(&self) -> [Symbol; 5] {
        [
            square_meters("Ase,V", self.area_m2),
            pascals("futa", self.futa_pa),
            number("factor on grout", self.grout),
            newtons("Vsa", self.shear_n()),
            number("phi", self.phi_shear),
        ]
    }
}
