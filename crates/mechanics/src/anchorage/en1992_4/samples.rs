//! Groups, concrete and actions for the tests here.

use std::collections::BTreeSet;

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
    fastener.product.bond_cover = Some(BondCover {
        long_term_c: 50.0,
        short_term_c: 80.0,
        drilling: BTreeSet::from([Drilling::Hammer]),
        holes: BTreeSet::from([HoleCondition::Dry, HoleCondition::Wet]),
        orientations: BTreeSet::from([Orientation::Down]),
    });
    fastener.product.bond_use = BondUse {
        long_term_c: Some(24.0),
        short_term_c: Some(40.0),
        drilling: Some(Drilling::Hammer),
        hole: Some(HoleCondition::Dry),
        orientation: Some(Orientation::Down),
    };
    fastener
}

/// Fasteners under a plate on the concrete, with holes 2 mm wide of them.
pub(super) fn group(fastener: Fastener, anchors_m: &[[f64; 2]]) -> Group {
    let hole = fastener.diameter_m + 0.002;
    Group {
        fastener,
        anchors_m: anchors_m.to_vec(),
        fixture: Fixture {
            thickness_m: 0.02,
            hole_diameter_m: Some(hole),
            annulus: Annulus::Open,
            seating: Seating::OnConcrete,
            restraint: Restraint::Free,
        },
    }
}

/// Concrete of this strength without dense bars near the surface.
pub(super) fn concrete(fck_mpa: f64) -> Concrete {
    Concrete { surface_bars: SurfaceBars::Wide, ..Concrete::plain(fck_mpa * 1e6) }
}

/// Tensions, N, and shears, N.
pub(super) fn acting(tension: &[f64], shear: &[[f64; 2]]) -> GroupActions {
    GroupActions {
        tension_n: tension.to_vec(),
        shear_n: shear.to_vec(),
        sustained_share: Some(0.3),
        ..GroupActions::none(tension.len())
    }
}

/// A rectangle of four edge distances from the first fastener: +x, −x, +y, −y.
pub(super) fn member(group: &Group, edges: [f64; 4], thickness: f64) -> RectangularMember {
    let [x, y] = group.anchors_m[0];
    RectangularMember::new(&group.anchors_m, [x - edges[1], y - edges[3]], [x + edges[0], y + edges[2]], thickness)
        .unwrap()
}

/// No edge anywhere.
pub(super) const FAR: [f64; 4] = [f64::INFINITY; 4];

/// All records.
pub(super) fn records(group: &Group, concrete: &Concrete, around: &dyn Around, actions: &GroupActions) -> Vec<Record> {
    Prepared::new(group, concrete, &En1992Factors::RECOMMENDED, around).unwrap().records(actions).unwrap()
}

/// The only record of a mode.
pub(super) fn only(records: &[Record], mode: Mode) -> &Record {
    let mut found = records.iter().filter(|record| record.mode == mode);
    let first = found.next().unwrap_or_else(|| panic!("no {mode:?}"));
    assert!(found.next().is_none(), "{mode:?} twice");
    first
}

/// A symbol's value in a record.
pub(super) fn symbol(record: &Record, name: &str) -> f64 {
    record.symbols.iter().find(|s| s.symbol == name).unwrap_or_else(|| panic!("no {name} in {record:?}")).value
}

/// Equal to within a share of the expected value.
#[track_caller]
pub(super) fn close(found: f64, expected: f64, share: f64) {
    assert!((found - expected).abs() <= share * expected.abs(), "found {found}, expected {expected}");
}
