//! Groups, concrete and actions for the tests here.

use std::collections::BTreeSet;

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
    rod.product.bond_cover = Some(BondCover {
        long_term_c: 50.0,
        short_term_c: 80.0,
        drilling: BTreeSet::from([Drilling::Hammer]),
        holes: BTreeSet::from([HoleCondition::Dry]),
        orientations: BTreeSet::from([Orientation::Down]),
    });
    rod.product.bond_use = BondUse {
        long_term_c: Some(24.0),
        short_term_c: Some(40.0),
        drilling: Some(Drilling::Hammer),
        hole: Some(HoleCondition::Dry),
        orientation: Some(Orientation::Down),
    };
    rod
}

/// Fasteners under a plate on the concrete.
pub(super) fn group(fastener: Fastener, anchors_m: &[[f64; 2]]) -> Group {
    let fixture = Fixture {
        thickness_m: 0.02,
        hole_diameter_m: Some(fastener.diameter_m + 0.002),
        annulus: Annulus::Open,
        seating: Seating::OnConcrete,
        restraint: Restraint::Free,
    };
    Group { fastener, anchors_m: anchors_m.to_vec(), fixture }
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

pub(super) const FAR: [f64; 4] = [f64::INFINITY; 4];

pub(super) fn records(group: &Group, concrete: &Concrete, around: &dyn Around, actions: &GroupActions) -> Vec<Record> {
    Prepared::new(group, concrete, &Aci318Factors::STANDARD, around).unwrap().records(actions).unwrap()
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
