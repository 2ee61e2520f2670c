//! Groups, concrete and actions for the tests of any code.

use std::collections::BTreeSet;

use super::*;

/// What bond asks for: hammer-drilled dry and wet holes that point down, up to 50 °C for long and 80 °C for short.
pub(crate) fn with_bond_conditions(rod: &mut Fastener) {
    rod.product.bond_cover = Some(BondCover {
        long_term_c: 50.0,
        short_term_c: 80.0,
        drilling: BTreeSet::from([Drilling::Hammer]),
        holes: BTreeSet::from([HoleCondition::Dry, HoleCondition::Wet]),
        orientations: BTreeSet::from([Orientation::Down]),
    });
    rod.product.bond_use = BondUse {
        long_term_c: Some(24.0),
        short_term_c: Some(40.0),
        drilling: Some(Drilling::Hammer),
        hole: Some(HoleCondition::Dry),
        orientation: Some(Orientation::Down),
    };
}

/// Fasteners under a plate on the concrete, with holes 2 mm wider than they are.
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

/// No edge anywhere.
pub(super) const FAR: [f64; 4] = [f64::INFINITY; 4];

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
