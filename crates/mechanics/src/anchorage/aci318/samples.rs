//! Groups, concrete and actions for the tests here.

pub(super) use super::super::samples::*;
use super::super::*;
use super::{Aci318Factors, Prepared};

/// In pounds and inches.
pub(super) const INCH: f64 = 0.0254;
pub(super) const KIP: f64 = 4448.2216;
pub(super) const PSI: f64 = 6894.757;

/// A coefficient of a formula coefficient·√f'c·length^power in pounds and inches, as one for N, mm and MPa.
///
/// ACI prints both with two digits; dividing a US source's number by this and multiplying by the printed SI coefficient leaves only
/// the source's own rounding.
pub(super) fn in_si(us: f64, power: f64) -> f64 {
    us * KIP * 1e-3 / (PSI * 1e-6).sqrt() / (INCH * 1e3).powf(power)
}

/// Diameter, stress area, embedment and bearing area of the head, SI: a cast-in bolt of this steel, ductile.
pub(super) fn headed(d: f64, area: f64, embedment: f64, head: f64, ultimate: f64, yields: f64) -> Fastener {
    let head_diameter = (head * 4.0 / std::f64::consts::PI + d * d).sqrt();
    Fastener {
        kind: FastenerKind::CastIn(Head { diameter_m: head_diameter, thickness_m: head_diameter }),
        diameter_m: d,
        outside_diameter_m: d,
        stress_area_m2: area,
        grade: Grade { ultimate_pa: ultimate, yield_pa: yields, rupture_elongation: Some(0.2) },
        embedment_m: embedment,
        product: Product {
            least: LeastDistances { spacing_m: Some(1e-3), edge_m: Some(1e-3), thickness_m: Some(1e-3) },
            ..Product::default()
        },
    }
}

/// A bonded rod M16 of these bond stresses, cracked and uncracked, Pa, category 1, with all that bond asks for.
pub(super) fn bonded(embedment: f64, cracked: f64, uncracked: f64) -> Fastener {
    let mut rod = headed(0.016, 157e-6, embedment, 4e-4, 500e6, 300e6);
    rod.kind = FastenerKind::Bonded;
    rod.product.aci = AciProduct {
        category: Some(AciCategory::One),
        bond_cracked_pa: Some(cracked),
        bond_uncracked_pa: Some(uncracked),
        ..AciProduct::default()
    };
    with_bond_conditions(&mut rod);
    rod
}

pub(super) fn records(group: &Group, concrete: &Concrete, around: &dyn Around, actions: &GroupActions) -> Vec<Record> {
    Prepared::new(group, concrete, &Aci318Factors::STANDARD, around).unwrap().records(actions).unwrap()
}
