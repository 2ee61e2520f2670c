//! Groups, concrete and actions for the tests here.

pub(super) use super::super::samples::*;
use super::super::*;
use super::{En1992Factors, Prepared};

/// Steel of property class 8.8 with 12 % elongation.
pub(super) const CLASS_8_8: Grade = Grade { ultimate_pa: 800e6, yield_pa: 640e6, rupture_elongation: Some(0.12) };

/// Diameter, stress area, embedment, head diameter: a cast-in bolt with all product data that any mode needs.
pub(super) fn headed(d: f64, area: f64, h_ef: f64, d_h: f64) -> Fastener {
    Fastener {
        kind: FastenerKind::CastIn(Head { diameter_m: d_h, thickness_m: 0.02 }),
        diameter_m: d,
        outside_diameter_m: d,
        stress_area_m2: area,
        grade: CLASS_8_8,
        embedment_m: h_ef,
        product: Product {
            least: LeastDistances { spacing_m: Some(0.001), edge_m: Some(0.001), thickness_m: Some(0.001) },
            en: EnProduct {
                splitting_edge_m: Some(1.5 * h_ef),
                splitting_spacing_m: Some(3.0 * h_ef),
                ..EnProduct::default()
            },
            ..Product::default()
        },
    }
}

/// A bonded rod with bond strengths, Pa: cracked, uncracked and uncracked C20/25.
pub(super) fn bonded(d: f64, area: f64, h_ef: f64, tau: [f64; 3]) -> Fastener {
    let mut fastener = Fastener { kind: FastenerKind::Bonded, ..headed(d, area, h_ef, 2.0 * d) };
    fastener.product.en = EnProduct {
        gamma_inst: Some(1.0),
        bond_cracked_pa: Some(tau[0]),
        bond_uncracked_pa: Some(tau[1]),
        bond_uncracked_c20_pa: Some(tau[2]),
        sustained_ratio: Some(0.6),
        k8: Some(2.0),
        ..fastener.product.en
    };
    with_bond_conditions(&mut fastener);
    fastener
}

/// Concrete of this strength without dense bars near the surface.
pub(super) fn concrete(fck_mpa: f64) -> Concrete {
    Concrete { surface_bars: SurfaceBars::Wide, ..Concrete::plain(fck_mpa * 1e6) }
}

/// All records.
pub(super) fn records(group: &Group, concrete: &Concrete, around: &dyn Around, actions: &GroupActions) -> Vec<Record> {
    Prepared::new(group, concrete, &En1992Factors::RECOMMENDED, around).unwrap().records(actions).unwrap()
}
