//! Turns a stored base with its fixing into the plate and the group of fasteners that mechanics computes with.

use gantline_mechanics::anchorage::{
    AciCategory as Category, AciProduct, Annulus, BondCover as Cover, BondUse, Drilling as Drill, EnProduct, Fastener,
    FastenerKind, Fixture, Grade, Group, Head, HoleCondition as Hole, LeastDistances as Least, Orientation as Way,
    Product, PullOut as Pull, Restraint, Seating,
};
use gantline_mechanics::plate::{Bearing as PlateBearing, Plate, PlateAnchor};

use super::fixing::{AciCategory, BondCover, Drilling, Fixing, FixingKind, HoleCondition, Orientation, PullOut};
use super::{Anchors, Base, BaseKind, Bearing};
use crate::basis::BondDefaults;

/// The widest hole in which an anchor of this diameter takes shear, m: 1 mm wider up to 8 mm, 2 mm up to 24 mm, 3 mm above.
/// Source: EN 1992-4 Table 6.1 (M8 9, M10 12, M24 26, M30 33 mm), second-hand.
fn widest_hole_m(diameter_m: f64) -> f64 {
    let wider_mm = match diameter_m * 1e3 {
        ..=8.001 => 1.0,
        ..=24.001 => 2.0,
        _ => 3.0,
    };
    diameter_m + wider_mm * 1e-3
}

/// So little wider a hole is still as wide as asked, m.
const HOLE_HAIR_M: f64 = 1e-7;

/// The plate with its anchors, for one modular ratio. An anchor is as stiff as if it held at the surface.
pub fn plate(base: &Base, anchors: &Anchors, fixing: &Fixing, modular_ratio: f64) -> Plate {
    let wide = anchors.hole_m.is_some_and(|hole| hole > widest_hole_m(fixing.diameter_m) + HOLE_HAIR_M);
    let takes_shear = anchors.gap_filled || !wide;
    Plate {
        outline: base.plate_m.clone(),
        thickness_m: base.plate_thickness_m,
        anchors: anchors
            .at_m
            .iter()
            .map(|&at| PlateAnchor { takes_shear, ..PlateAnchor::new(at, fixing.stress_area_m2) })
            .collect(),
        bearing: match base.bearing {
            Bearing::OnConcrete => PlateBearing::Concrete,
            Bearing::OnGrout { .. } => PlateBearing::Grout,
            Bearing::OnLevelingNuts { .. } => PlateBearing::LevelingNuts,
        },
        modular_ratio,
    }
}

/// The fasteners under the plate; or what is missing in the fixing's data.
///
/// A bonded product that states no bond strength gets the defaults of the design code, and what they stand for.
pub fn group(base: &Base, anchors: &Anchors, fixing: &Fixing, bond: &BondDefaults) -> Result<Group, String> {
    Ok(Group {
        fastener: Fastener {
            kind: fastener_kind(fixing)?,
            diameter_m: fixing.diameter_m,
            outside_diameter_m: fixing.outside_diameter_m.unwrap_or(fixing.diameter_m),
            stress_area_m2: fixing.stress_area_m2,
            grade: Grade {
                ultimate_pa: fixing.ultimate_pa,
                yield_pa: fixing.yield_pa,
                rupture_elongation: fixing.rupture_elongation,
            },
            embedment_m: anchors.embedment_m,
            product: product(base, anchors, fixing, bond),
        },
        anchors_m: anchors.at_m.iter().map(glam::DVec2::to_array).collect(),
        fixture: Fixture {
            thickness_m: base.plate_thickness_m,
            hole_diameter_m: anchors.hole_m,
            annulus: if anchors.gap_filled { Annulus::Filled } else { Annulus::Open },
            seating: match base.bearing {
                Bearing::OnConcrete => Seating::OnConcrete,
                Bearing::OnGrout { thickness_m, strength_pa } => Seating::OnGrout { thickness_m, strength_pa },
                Bearing::OnLevelingNuts { gap_m, clamped } => Seating::StoodOff { gap_m, clamped },
            },
            restraint: Restraint::Free,
        },
    })
}

/// Whether a bonded fixing states no bond strength of its own for the state of the concrete under a code.
pub fn uses_default_bond(fixing: &Fixing) -> bool {
    let en = &fixing.en;
    let aci = &fixing.aci;
    fixing.kind == FixingKind::Bonded
        && en.bond_cracked_pa.is_none()
        && en.bond_uncracked_pa.is_none()
        && aci.bond_cracked_pa.is_none()
        && aci.bond_uncracked_pa.is_none()
}

fn fastener_kind(fixing: &Fixing) -> Result<FastenerKind, String> {
    Ok(match fixing.kind {
        FixingKind::Bonded => FastenerKind::Bonded,
        FixingKind::Undercut => FastenerKind::Undercut,
        FixingKind::CastInBolt | FixingKind::Cage => {
            let head = fixing.head.ok_or_else(|| format!("head of the bolt \"{}\"", fixing.name))?;
            FastenerKind::CastIn(Head { diameter_m: head.diameter_m, thickness_m: head.thickness_m })
        }
        // In steel there is no concrete to be judged; only their steel is.
        FixingKind::ThroughBolt | FixingKind::SteelBolts | FixingKind::Weld => FastenerKind::ThroughBolt,
        FixingKind::Sleeve => FastenerKind::Sleeve,
    })
}

fn product(base: &Base, anchors: &Anchors, fixing: &Fixing, bond: &BondDefaults) -> Product {
    let mut en = EnProduct {
        steel_tension_n: fixing.en.steel_tension_n,
        steel_shear_n: fixing.en.steel_shear_n,
        steel_moment_nm: fixing.en.steel_moment_nm,
        gamma_inst: fixing.en.gamma_inst,
        pull_out_cracked: fixing.en.pull_out_cracked.map(pull_out),
        pull_out_uncracked: fixing.en.pull_out_uncracked.map(pull_out),
        bond_cracked_pa: fixing.en.bond_cracked_pa,
        bond_uncracked_pa: fixing.en.bond_uncracked_pa,
        bond_uncracked_c20_pa: fixing.en.bond_uncracked_c20_pa,
        sustained_ratio: fixing.en.sustained_ratio,
        splitting_spacing_m: fixing.en.splitting_spacing_m,
        splitting_edge_m: fixing.en.splitting_edge_m,
        k8: fixing.en.k8,
    };
    let mut aci = AciProduct {
        category: fixing.aci.category.map(|category| match category {
            AciCategory::One => Category::One,
            AciCategory::Two => Category::Two,
            AciCategory::Three => Category::Three,
        }),
        bond_cracked_pa: fixing.aci.bond_cracked_pa,
        bond_uncracked_pa: fixing.aci.bond_uncracked_pa,
        pull_out_cracked: fixing.aci.pull_out_cracked.map(pull_out),
        pull_out_uncracked: fixing.aci.pull_out_uncracked.map(pull_out),
        critical_edge_m: fixing.aci.critical_edge_m,
        bearing_length_m: fixing.aci.bearing_length_m,
    };
    let mut bond_cover = fixing.bond_cover.as_ref().map(cover);
    if uses_default_bond(fixing) {
        let (cracked, uncracked) = (Some(bond.cracked_pa.value), Some(bond.uncracked_pa.value));
        (en.bond_cracked_pa, en.bond_uncracked_pa, en.bond_uncracked_c20_pa) = (cracked, uncracked, uncracked);
        (aci.bond_cracked_pa, aci.bond_uncracked_pa) = (cracked, uncracked);
        bond_cover = Some(default_cover());
    }
    let orientation = if matches!(base.kind, BaseKind::WallSocket { .. }) { Way::Horizontal } else { Way::Down };
    Product {
        least: Least {
            spacing_m: fixing.least.spacing_m,
            edge_m: fixing.least.edge_m,
            thickness_m: fixing.least.thickness_m,
        },
        en,
        aci,
        bond_cover,
        bond_use: BondUse {
            long_term_c: anchors.setting.long_term_c,
            short_term_c: anchors.setting.short_term_c,
            drilling: anchors.setting.drilling.map(drill),
            hole: anchors.setting.hole.map(hole),
            orientation: Some(orientation),
        },
    }
}

/// What the least bond strengths of ACI 318-19 Table 17.6.5.2.5 stand for, outdoors: 79 °C (175 °F), hammer-drilled, dry holes.
/// From memory, to be confirmed.
fn default_cover() -> Cover {
    Cover {
        long_term_c: 79.0,
        short_term_c: 79.0,
        drilling: [Drill::Hammer].into(),
        holes: [Hole::Dry].into(),
        orientations: [Way::Down, Way::Horizontal].into(),
    }
}

fn cover(stored: &BondCover) -> Cover {
    Cover {
        long_term_c: stored.long_term_c,
        short_term_c: stored.short_term_c,
        drilling: stored.drilling.iter().copied().map(drill).collect(),
        holes: stored.holes.iter().copied().map(hole).collect(),
        orientations: stored.orientations.iter().copied().map(way).collect(),
    }
}

fn pull_out(stored: PullOut) -> Pull {
    match stored {
        PullOut::Resistance { resistance_n } => Pull::Characteristic(resistance_n),
        PullOut::NotDecisive => Pull::NotDecisive,
    }
}

fn drill(stored: Drilling) -> Drill {
    match stored {
        Drilling::Hammer => Drill::Hammer,
        Drilling::HollowBit => Drill::HollowBit,
        Drilling::Diamond => Drill::Diamond,
        Drilling::DiamondRoughened => Drill::DiamondRoughened,
    }
}

fn hole(stored: HoleCondition) -> Hole {
    match stored {
        HoleCondition::Dry => Hole::Dry,
        HoleCondition::Wet => Hole::Wet,
        HoleCondition::Flooded => Hole::Flooded,
    }
}

fn way(stored: Orientation) -> Way {
    match stored {
        Orientation::Down => Way::Down,
        Orientation::Horizontal => Way::Horizontal,
        Orientation::Overhead => Way::Overhead,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::Family;
    use crate::document::PartId;
    use gantline_mechanics::anchorage::NotChecked;

    fn heron() -> Family {
        serde_json::from_str(include_str!("../../../../assets/families/heron.json")).unwrap()
    }

    fn socket() -> (Base, Anchors, Fixing) {
        let family = heron();
        let base = family.bases[&PartId::new("floor-socket")].clone();
        let anchors = base.anchors.clone().unwrap();
        let fixing = family.fixings[&anchors.fixing].clone();
        (base, anchors, fixing)
    }

    #[test]
    fn a_product_without_bond_strengths_gets_the_defaults_and_what_they_stand_for() {
        let (base, anchors, mut fixing) = socket();
        let bond = BondDefaults::outdoor();
        let own = group(&base, &anchors, &fixing, &bond).unwrap();
        assert_eq!(own.fastener.product.en.bond_cracked_pa, Some(9e6));
        (fixing.en.bond_cracked_pa, fixing.en.bond_uncracked_pa) = (None, None);
        // A value for the other code still counts as a stated one: nothing is mixed.
        assert!(!uses_default_bond(&fixing));
        (fixing.aci.bond_cracked_pa, fixing.aci.bond_uncracked_pa) = (None, None);
        let planned = group(&base, &anchors, &fixing, &bond).unwrap();
        assert_eq!(planned.fastener.product.en.bond_cracked_pa, Some(0.55e6));
        assert_eq!(planned.fastener.product.bond_not_covered(), None);
        // A hole full of water is not what they stand for.
        let mut wet = anchors.clone();
        wet.setting.hole = Some(HoleCondition::Flooded);
        let found = group(&base, &wet, &fixing, &bond).unwrap().fastener.product.bond_not_covered();
        assert_eq!(found, Some(NotChecked::NotCovered { what: "condition of the hole" }));
    }

    #[test]
    fn anchors_in_wide_open_holes_take_no_shear() {
        let (base, mut anchors, fixing) = socket();
        anchors.gap_filled = false;
        let takes = |anchors: &Anchors| plate(&base, anchors, &fixing, 7.0).anchors[0].takes_shear;
        // M20: 22 mm is the widest hole of Table 6.1.
        assert!(takes(&anchors));
        anchors.hole_m = Some(0.0221);
        assert!(!takes(&anchors));
        anchors.gap_filled = true;
        assert!(takes(&anchors));
    }

    #[test]
    fn a_cast_in_bolt_without_a_head_is_named() {
        let (base, anchors, mut fixing) = socket();
        fixing.kind = FixingKind::CastInBolt;
        let missing = group(&base, &anchors, &fixing, &BondDefaults::outdoor()).unwrap_err();
        assert_eq!(missing, "head of the bolt \"Bonded anchor M20 (invented)\"");
    }
}
