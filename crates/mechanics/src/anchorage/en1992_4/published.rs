//! Worked numbers of others, each with its source; tolerances are the rounding of the source.

use super::super::*;
use super::samples::*;

/// "B9": public technical brief on EN 1992-4, example 1: four M24 8.8 cast-in, h_ef 300, 300 × 300, C30/37, no edges.
#[test]
fn four_cast_in_bolts_bear_what_the_brief_says() {
    let group = group(headed(0.024, 353e-6, 0.3, 0.044), &[[0.0, 0.0], [0.3, 0.0], [0.0, 0.3], [0.3, 0.3]]);
    let around = member(&group, FAR, 2.0);
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

/// "B10": the same brief, example 2: two M16 125 deep, 100 from an edge, 150 apart, h 250, C25/30.
#[test]
fn two_fasteners_at_an_edge_bear_what_the_brief_says() {
    let mut rod = bonded(0.016, 157e-6, 0.125, [8e6, 10e6, 10e6]);
    rod.kind = FastenerKind::Undercut;
    rod.product.en.pull_out_cracked = Some(PullOut::NotDecisive);
    let group = group(rod, &[[0.0, 0.0], [0.0, 0.15]]);
    let around = member(&group, [0.1, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.25);
    let told = records(&group, &concrete(25.0), &around, &acting(&[0.0; 2], &[[5e3, 0.0]; 2]));
    let edge = only(&told, Mode::ConcreteEdge);
    close(symbol(edge, "alpha"), 0.1118, 0.00005 / 0.1118);
    close(symbol(edge, "beta"), 0.0693, 0.00005 / 0.0693);
    close(symbol(edge, "V0Rk,c"), 16.2e3, 0.05 / 16.2);
    close(symbol(edge, "Ac,V") / symbol(edge, "A0c,V"), 1.5, 1e-12);
    close(symbol(edge, "VRk,c"), 24.3e3, 0.05 / 24.3);
    close(edge.resistance_n.unwrap(), 16.2e3, 0.05 / 16.2);
    let pry = only(&told, Mode::PryOut);
    // The brief rounds N⁰ to 53.8 before it goes on.
    close(symbol(pry, "NRk,c"), 49.7e3, 0.1 / 49.7);
    close(symbol(pry, "VRk,cp"), 99.4e3, 0.1 / 99.4);
}

/// A general finite element library (xc, GPL, verif test_fastener_check_01, EN 1992-4:2018): bars of 16 mm 300 deep in C30:
/// half a group of three, 0.32 m from first to last, whose area ends 0.225 m and 0.45 m off; its stored value is a third.
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

/// The same test of the library: a single one pries out at 2·253.3/1.5 kN.
#[test]
fn a_single_fastener_pries_out_as_in_the_library() {
    let group = group(headed(0.016, 201e-6, 0.3, 0.044), &[[0.0, 0.0]]);
    let around = member(&group, FAR, 1.0);
    let told = records(&group, &concrete(30.0), &around, &acting(&[0.0], &[[3.3e3, 0.0]]));
    close(only(&told, Mode::PryOut).resistance_n.unwrap(), 337731.2541059829, 1e-12);
}
