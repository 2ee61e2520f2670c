//! Worked numbers of others, each with its source; tolerances are the rounding of the source.
//!
//! "Brief": a public, unsigned technical brief on EN 1992-4, section 10 (reference cases B9 and B10). "Note": a public,
//! unsigned note on column bases. "Library": xc, a general finite element library under the GPL, its verification test
//! test_fastener_check_01 of EN 1992-4:2018, stored values. None is the standard's own text.

use super::super::*;
use super::samples::*;
use super::{En1992Factors, Prepared};

/// Four M24 8.8 cast in, 300 deep, heads of 44 mm, far from edges in C30/37.
fn four_of_the_brief(spacing: f64) -> Group {
    group(headed(0.024, 353e-6, 0.3, 0.044), &[[0.0, 0.0], [spacing, 0.0], [0.0, spacing], [spacing, spacing]])
}

/// Two M16 125 deep, 100 from an edge, 150 apart along it; h 250, C25/30.
fn two_of_the_brief() -> (Group, RectangularMember) {
    let mut rod = bonded(0.016, 157e-6, 0.125, [8.5e6, 10e6, 10e6]);
    rod.grade = Grade { ultimate_pa: 500e6, yield_pa: 400e6, rupture_elongation: Some(0.1) };
    let group = group(rod, &[[0.0, 0.0], [0.0, 0.15]]);
    let around = member(&group, [0.1, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.25);
    (group, around)
}

/// Brief, example 1, steps 1 to 3: 188.3 and 160.2 kN a bolt, 300.3 kN the four.
#[test]
fn four_cast_in_bolts_bear_what_the_brief_says() {
    let group = four_of_the_brief(0.3);
    let around = member(&group, FAR, 0.8);
    let told = records(&group, &concrete(30.0), &around, &acting(&[50e3; 4], &[[0.0; 2]; 4]));
    let steel = only(&told, Mode::SteelTension);
    close(symbol(steel, "NRk,s"), 282.4e3, 1e-9);
    close(steel.resistance_n.unwrap(), 188.3e3, 0.05 / 188.3);
    let pull_out = only(&told, Mode::PullOut);
    close(symbol(pull_out, "Ah"), 1068e-6, 0.5 / 1068.0);
    close(symbol(pull_out, "NRk,p"), 240.3e3, 0.05 / 240.3);
    close(pull_out.resistance_n.unwrap(), 160.2e3, 0.05 / 160.2);
    let cone = only(&told, Mode::ConcreteCone);
    close(symbol(cone, "N0Rk,c"), 253.3e3, 0.05 / 253.3);
    // The brief multiplies on with the ratio 1.778, rounded up from 16/9: 0.1 kN.
    close(symbol(cone, "NRk,c"), 450.4e3, 0.15 / 450.4);
    close(cone.resistance_n.unwrap(), 300.3e3, 0.1 / 300.3);
}

/// Brief, example 1, step 6: 900 mm apart the four bear 675.6 kN.
#[test]
fn four_bolts_at_the_characteristic_spacing_bear_four_times_one() {
    let group = four_of_the_brief(0.9);
    let around = member(&group, FAR, 0.8);
    let told = records(&group, &concrete(30.0), &around, &acting(&[50e3; 4], &[[0.0; 2]; 4]));
    // The brief goes on with the rounded 1013 kN: 0.3 kN.
    let cones = told.iter().filter(|r| r.mode == Mode::ConcreteCone);
    close(cones.filter_map(|r| r.resistance_n).sum(), 675.6e3, 0.3 / 675.6);
}

/// Brief, example 1, step 7: four legs of 10 mm a bolt, α_1 0.7, f_bd 3.0: 546.5/4 kN by yield; anchored 200 mm 26.9 kN
/// a leg, 250 mm 33.7 kN a leg.
#[test]
fn stirrups_beside_a_bolt_bear_what_the_brief_says() {
    let group = four_of_the_brief(0.3);
    let around = member(&group, FAR, 0.8);
    for (anchored_m, a_leg) in [(0.2, 26.9e3), (0.25, 33.7e3)] {
        let bars = BarSet {
            count: 4,
            diameter_m: 0.01,
            yield_pa: 500e6,
            anchored_m,
            bond_pa: 3.0e6,
            alpha: 0.7,
            end: BarEnd::Hooked,
            distance_m: 0.225,
        };
        let concrete = Concrete { tension_bars: Some(TensionBars { bars }), ..concrete(30.0) };
        let told = records(&group, &concrete, &around, &acting(&[120e3; 4], &[[0.0; 2]; 4]));
        let bars = only(&told, Mode::TensionBars);
        // The brief takes 314 mm² for the four legs of 314.16 and rounds 1256.6 up to 1257.
        close(symbol(bars, "NRd,re"), 546.5e3 / 4.0, 0.2 / 546.5);
        close(symbol(bars, "NRd,a") / 4.0, a_leg, 0.05e3 / a_leg);
        close(bars.resistance_n.unwrap(), 4.0 * a_leg, 0.05e3 / a_leg);
    }
}

/// Brief, example 2, step 1: 37.7 kN a rod of class 5.8.
#[test]
fn a_rod_of_class_5_8_shears_at_what_the_brief_says() {
    let (group, around) = two_of_the_brief();
    let told = records(&group, &concrete(25.0), &around, &acting(&[0.0; 2], &[[5e3, 0.0]; 2]));
    let steel = only(&told, Mode::SteelShear);
    close(symbol(steel, "V0Rk,s"), 47.1e3, 1e-9);
    close(steel.resistance_n.unwrap(), 37.7e3, 0.05 / 37.7);
}

/// Brief, example 2, step 2: 16.2 kN the pair toward the edge.
#[test]
fn two_fasteners_at_an_edge_bear_what_the_brief_says() {
    let (group, around) = two_of_the_brief();
    let told = records(&group, &concrete(25.0), &around, &acting(&[0.0; 2], &[[5e3, 0.0]; 2]));
    let edge = only(&told, Mode::ConcreteEdge);
    close(symbol(edge, "alpha"), 0.1118, 0.00005 / 0.1118);
    close(symbol(edge, "beta"), 0.0693, 0.00005 / 0.0693);
    close(symbol(edge, "V0Rk,c"), 16.2e3, 0.05 / 16.2);
    close(symbol(edge, "Ac,V") / symbol(edge, "A0c,V"), 1.5, 1e-12);
    close(symbol(edge, "VRk,c"), 24.3e3, 0.05 / 24.3);
    close(edge.resistance_n.unwrap(), 16.2e3, 0.05 / 16.2);
}

/// Brief, example 2, step 3: the cone of the pair 49.7 kN, pry-out 99.4 and 66.3 kN.
#[test]
fn two_fasteners_pry_out_at_what_the_brief_says() {
    let (mut group, around) = two_of_the_brief();
    group.fastener.kind = FastenerKind::Undercut;
    group.fastener.product.en.pull_out_cracked = Some(PullOut::NotDecisive);
    let told = records(&group, &concrete(25.0), &around, &acting(&[0.0; 2], &[[5e3, 0.0]; 2]));
    let pry = only(&told, Mode::PryOut);
    // The brief rounds N⁰ to 53.8 and the ratio to 1.073 before it goes on.
    close(symbol(pry, "NRk,c"), 49.7e3, 0.1 / 49.7);
    close(symbol(pry, "VRk,cp"), 99.4e3, 0.1 / 99.4);
    close(pry.resistance_n.unwrap(), 66.3e3, 0.1 / 66.3);
}

/// Brief, example 2, step 3: the bond of one rod 53.4 kN.
#[test]
fn one_bonded_rod_bears_what_the_brief_says() {
    let (pair, around) = two_of_the_brief();
    let told = records(&pair, &concrete(25.0), &around, &acting(&[5e3, 0.0], &[[0.0; 2]; 2]));
    close(symbol(only(&told, Mode::Bond), "N0Rk,p"), 53.4e3, 0.05 / 53.4);
}

/// Brief, example 2, step 5: 40 kN with e_s 60 and z 178.5 pull 53.4 kN in the stirrups; four legs of 8 mm bear 87.4 kN.
#[test]
fn stirrups_toward_an_edge_bear_what_the_brief_says() {
    let (group, around) = two_of_the_brief();
    let bars = BarSet {
        count: 4,
        diameter_m: 0.008,
        yield_pa: 500e6,
        anchored_m: 1.0,
        bond_pa: 3.0e6,
        alpha: 0.7,
        end: BarEnd::Hooked,
        distance_m: 0.05,
    };
    let shear_bars = Some(ShearBars { bars, edge: 0, offset_m: 0.06, lever_m: 0.1785 });
    let concrete = Concrete { shear_bars, ..concrete(25.0) };
    let told = records(&group, &concrete, &around, &acting(&[0.0; 2], &[[20e3, 0.0]; 2]));
    let bars = only(&told, Mode::ShearBars);
    // The brief goes on with the factor 1.336.
    close(bars.action_n.unwrap(), 53.4e3, 0.06 / 53.4);
    close(bars.resistance_n.unwrap(), 87.4e3, 0.05 / 87.4);
}

/// Note, section 4: six M20 120 deep, 156 apart one way and twice 81 the other, k_1 7.7, C30/37: area 516 × 522, ratio
/// 2.078, 76.8 kN together.
#[test]
fn six_bolts_close_together_bear_what_the_note_says() {
    let mut bolt = headed(0.02, 245e-6, 0.12, 0.04);
    bolt.kind = FastenerKind::Undercut;
    bolt.product.en.gamma_inst = Some(1.0);
    bolt.product.en.pull_out_cracked = Some(PullOut::NotDecisive);
    let places: Vec<[f64; 2]> = [0.0, 0.156].into_iter().flat_map(|x| [0.0, 0.081, 0.162].map(|y| [x, y])).collect();
    let group = group(bolt, &places);
    let around = member(&group, FAR, 0.4);
    let told = records(&group, &concrete(30.0), &around, &acting(&[5e3; 6], &[[0.0; 2]; 6]));
    let cone = only(&told, Mode::ConcreteCone);
    close(symbol(cone, "Ac,N"), 0.269352, 1e-9);
    close(symbol(cone, "Ac,N") / symbol(cone, "A0c,N"), 2.078, 0.0005 / 2.078);
    close(cone.resistance_n.unwrap(), 76.8e3, 0.05 / 76.8);
}

/// Note, section 3: embedments at which the cone bears as much as the steel, C30/37 cracked, k_1 7.7: M20 4.6 175 mm,
/// M20 8.8 278 mm. (Its third, M24 8.8 358 mm, does not follow from its formula: 355 mm.)
#[test]
fn the_cone_bears_as_much_as_the_steel_at_the_notes_depths() {
    for (f_uk, area, depth) in [(400e6, 245e-6, 0.175), (800e6, 245e-6, 0.278)] {
        let mut bolt = headed(0.02, area, depth, 0.04);
        bolt.kind = FastenerKind::Undercut;
        bolt.grade = Grade { ultimate_pa: f_uk, yield_pa: 0.6 * f_uk, rupture_elongation: None };
        bolt.product.en.gamma_inst = Some(1.0);
        bolt.product.en.pull_out_cracked = Some(PullOut::NotDecisive);
        let group = group(bolt, &[[0.0, 0.0]]);
        let around = member(&group, FAR, 1.0);
        let told = records(&group, &concrete(30.0), &around, &acting(&[5e3], &[[0.0; 2]]));
        let (cone, steel) = (only(&told, Mode::ConcreteCone), only(&told, Mode::SteelTension));
        // Depths are whole millimeters, rounded down: up to 1 mm, whose share is 1.5/depth.
        close(symbol(cone, "NRk,c"), symbol(steel, "NRk,s"), 1.5 * 0.001 / depth);
    }
}

/// Note, section 5: an M20 8.8 on 30 mm of grout shears at 10.4 kN with the plate free to turn, 20.8 kN with it kept. The
/// note counts e_1 to the plate's underside; here the grout is thinner by half the plate, so that l_a is the same 40 mm.
#[test]
fn a_bolt_through_thick_grout_bears_what_the_note_says() {
    for (restraint, v_rd) in [(Restraint::Free, 10.4e3), (Restraint::Full, 20.8e3)] {
        let mut group = group(headed(0.02, 245e-6, 0.2, 0.04), &[[0.0, 0.0]]);
        group.fixture.restraint = restraint;
        group.fixture.seating = Seating::OnGrout { thickness_m: 0.02, strength_pa: 40e6 };
        let around = member(&group, FAR, 0.5);
        let told = records(&group, &concrete(30.0), &around, &acting(&[0.0], &[[1e3, 0.0]]));
        close(only(&told, Mode::SteelShearLeverArm).resistance_n.unwrap(), v_rd, 0.05e3 / v_rd);
    }
}

/// Library: bars of 16 mm 300 deep in C30, half a group of three, 0.32 m from first to last, whose area ends 0.225 m and
/// 0.45 m off; its stored value is a third.
#[test]
fn half_a_group_of_three_has_the_librarys_cone() {
    let group = group(headed(0.016, 201e-6, 0.3, 0.044), &[[0.0, 0.0], [0.0, 0.16], [0.0, 0.32]]);
    let around = member(&group, [f64::INFINITY, 0.225, f64::INFINITY, f64::INFINITY], 1.0);
    let told = records(&group, &concrete(30.0), &around, &acting(&[10e3; 3], &[[0.0; 2]; 3]));
    let cone = only(&told, Mode::ConcreteCone);
    // The library knows no edge at the plate's middle: its factor of disturbance is 1.
    let without_edge = symbol(cone, "N0Rk,c") * symbol(cone, "Ac,N") / symbol(cone, "A0c,N") / 1.5;
    close(without_edge / 3.0, 57226.68472351378, 1e-12);
}

/// Library: a single one pries out at 2·253.3/1.5 kN.
#[test]
fn a_single_fastener_pries_out_as_in_the_library() {
    let group = group(headed(0.016, 201e-6, 0.3, 0.044), &[[0.0, 0.0]]);
    let around = member(&group, FAR, 1.0);
    let told = records(&group, &concrete(30.0), &around, &acting(&[0.0], &[[3.3e3, 0.0]]));
    close(only(&told, Mode::PryOut).resistance_n.unwrap(), 337731.2541059829, 1e-12);
}

/// Factors of the Danish annex of 2024, as the brief's section 2 reads it: γ_c 1.45 lowers nothing but the divisor.
#[test]
fn another_annexes_factors_are_data() {
    let group = four_of_the_brief(0.3);
    let around = member(&group, FAR, 0.8);
    let concrete = concrete(30.0);
    let danish = En1992Factors { gamma_c: 1.45, steel_tension_least: 1.5, ..En1992Factors::RECOMMENDED };
    let told = Prepared::new(&group, &concrete, &danish, &around)
        .unwrap()
        .records(&acting(&[50e3; 4], &[[0.0; 2]; 4]))
        .unwrap();
    close(only(&told, Mode::ConcreteCone).resistance_n.unwrap(), 450.4e3 / 1.45, 0.15 / 450.4);
}
