//! Coefficients of uncracked concrete and the limits of validity, each by a hand value from the clause.

use super::super::*;
use super::samples::*;

const FREE: f64 = f64::INFINITY;

fn uncracked(fck_mpa: f64) -> Concrete {
    Concrete { cracking: Cracking::Uncracked, ..concrete(fck_mpa) }
}

/// By hand, headed M24, h_ef 200, d_h 44, C25/30, c_1 60: k_1 12.7, k_2 10.5, k_5 12.2, k_9 2.4.
#[test]
fn uncracked_concrete_has_its_own_coefficients() {
    let bolts = group(headed(0.024, 353e-6, 0.2, 0.044), &[[0.0, 0.0]]);
    let around = member(&bolts, [0.06, FREE, FREE, FREE], 0.5);
    let told = records(&bolts, &uncracked(25.0), &around, &acting(&[10e3], &[[1e3, 0.0]]));
    let head = std::f64::consts::FRAC_PI_4 * (44.0 * 44.0 - 24.0 * 24.0);
    close(symbol(only(&told, Mode::ConcreteCone), "N0Rk,c"), 12.7 * 5.0 * 200f64.powf(1.5), 1e-12);
    close(symbol(only(&told, Mode::PullOut), "NRk,p"), 10.5 * head * 25.0, 1e-12);
    close(symbol(only(&told, Mode::BlowOut), "N0Rk,cb"), 12.2 * 60.0 * head.sqrt() * 5.0, 1e-12);
    let (alpha, beta) = (0.1 * (200.0f64 / 60.0).sqrt(), 0.1 * (24.0f64 / 60.0).powf(0.2));
    let one = 2.4 * 24f64.powf(alpha) * 200f64.powf(beta) * 5.0 * 60f64.powf(1.5);
    close(symbol(only(&told, Mode::ConcreteEdge), "V0Rk,c"), one, 1e-12);
}

/// By hand, two bonded M16, h_ef 125, 150 apart, τ_Rk,ucr 10 and 9 in C20/25: N⁰ = 11.0·5·125^1.5; τ_Rk,c =
/// 11.0/(π·16)·√(125·25) = 12.23; ψ⁰_g = √2 − (√2 − 1)·(10/12.23)^1.5 = 1.1081; s_cr,Np = 7.3·16·3 = 350.4.
#[test]
fn bonded_rods_in_uncracked_concrete() {
    let rods = group(bonded(0.016, 157e-6, 0.125, [6e6, 10e6, 9e6]), &[[0.0, 0.0], [0.15, 0.0]]);
    let around = member(&rods, [FREE; 4], 0.5);
    let told = records(&rods, &uncracked(25.0), &around, &acting(&[10e3; 2], &[[0.0; 2]; 2]));
    close(symbol(only(&told, Mode::ConcreteCone), "N0Rk,c"), 11.0 * 5.0 * 125f64.powf(1.5), 1e-12);
    let bond = only(&told, Mode::Bond);
    close(symbol(bond, "scr,Np"), 0.3504, 1e-12);
    close(symbol(bond, "psi0_g,Np"), 1.1081, 0.00005);
    close(symbol(bond, "N0Rk,p"), 10.0 * std::f64::consts::PI * 16.0 * 125.0, 1e-12);
}

/// By hand: s_cr,Np is not above 3·h_ef: 7.3·16·√16 = 467 > 375.
#[test]
fn strong_bond_reaches_no_farther_than_the_cone() {
    let rods = group(bonded(0.016, 157e-6, 0.125, [6e6, 10e6, 16e6]), &[[0.0, 0.0]]);
    let around = member(&rods, [FREE; 4], 0.5);
    let told = records(&rods, &concrete(25.0), &around, &acting(&[10e3], &[[0.0; 2]]));
    close(symbol(only(&told, Mode::Bond), "scr,Np"), 0.375, 1e-12);
}

/// By hand: M16: 12·16 = 192; M30: max(240; 300) = 300; M42: max(336; 300) = 336; h_ef 500 each.
#[test]
fn deep_fasteners_bear_on_the_edge_with_a_limited_length() {
    for (d, length) in [(0.016, 0.192), (0.03, 0.3), (0.042, 0.336)] {
        let bolts = group(headed(d, 0.6 * d * d, 0.5, 2.0 * d), &[[0.0, 0.0]]);
        let around = member(&bolts, [0.3, FREE, FREE, FREE], 1.0);
        let told = records(&bolts, &concrete(25.0), &around, &acting(&[0.0], &[[1e3, 0.0]]));
        close(symbol(only(&told, Mode::ConcreteEdge), "lf"), length, 1e-12);
    }
}

/// By hand: 1.4 with edge bar and stirrups in cracked concrete; 1 with the bar alone, and in uncracked concrete.
#[test]
fn stirrups_along_the_edge_count_in_cracked_concrete_only() {
    let bolts = group(headed(0.016, 157e-6, 0.1, 0.03), &[[0.0, 0.0]]);
    let around = member(&bolts, [0.1, FREE, FREE, FREE], 0.5);
    let psi = |edge_bars, cracking| {
        let concrete = Concrete { cracking, edge_bars, ..concrete(25.0) };
        let told = records(&bolts, &concrete, &around, &acting(&[0.0], &[[1e3, 0.0]]));
        symbol(only(&told, Mode::ConcreteEdge), "psi_re,V")
    };
    close(psi(EdgeBars::WithStirrups, Cracking::Cracked), 1.4, 1e-12);
    close(psi(EdgeBars::Straight, Cracking::Cracked), 1.0, 1e-12);
    close(psi(EdgeBars::WithStirrups, Cracking::Uncracked), 1.0, 1e-12);
}

/// By hand: M16 8.8, h_ef 70 < 5·16 in C16/20: 0.8·62.8 kN; at 80, or in C20/25, all of it.
#[test]
fn short_bolts_in_weak_concrete_shear_at_less() {
    for (h_ef, fck, one) in [(0.07, 16.0, 0.8 * 62.8e3), (0.08, 16.0, 62.8e3), (0.07, 20.0, 62.8e3)] {
        let bolts = group(headed(0.016, 157e-6, h_ef, 0.03), &[[0.0, 0.0]]);
        let around = member(&bolts, [FREE; 4], 0.5);
        let told = records(&bolts, &concrete(fck), &around, &acting(&[0.0], &[[1e3, 0.0]]));
        close(symbol(only(&told, Mode::SteelShear), "V0Rk,s"), one, 1e-12);
    }
}

/// By hand: clearances of Table 6.1: 2 mm up to M24, 3 mm at M30; a hair more is not covered, unless filled.
#[test]
fn wide_holes_share_no_shear() {
    for (d, clearance) in [(0.008, 0.001), (0.024, 0.002), (0.03, 0.003)] {
        let mut bolts = group(headed(d, 0.6 * d * d, 0.2, 2.0 * d), &[[0.0, 0.0]]);
        let around = member(&bolts, [FREE; 4], 0.5);
        let mut is_checked = |more: f64, annulus: Annulus| {
            bolts.fixture.hole_diameter_m = Some(d + clearance + more);
            bolts.fixture.annulus = annulus;
            let told = records(&bolts, &concrete(25.0), &around, &acting(&[0.0], &[[1e3, 0.0]]));
            only(&told, Mode::SteelShear).utilization().is_some()
        };
        assert!(is_checked(0.0, Annulus::Open));
        assert!(!is_checked(1e-5, Annulus::Open));
        assert!(is_checked(1e-5, Annulus::Filled));
    }
}

/// By hand: M20: 10 mm of grout of 30 MPa and no weaker than the concrete leave no lever arm.
#[test]
fn thin_strong_grout_needs_no_lever_arm() {
    for (thickness_m, strength_pa, fck, has_arm) in
        [(0.01, 40e6, 40.0, false), (0.0101, 40e6, 40.0, true), (0.01, 39e6, 40.0, true), (0.01, 29e6, 25.0, true)]
    {
        let mut bolts = group(headed(0.02, 245e-6, 0.2, 0.04), &[[0.0, 0.0]]);
        bolts.fixture.seating = Seating::OnGrout { thickness_m, strength_pa };
        let around = member(&bolts, [FREE; 4], 0.5);
        let told = records(&bolts, &concrete(fck), &around, &acting(&[0.0], &[[1e3, 0.0]]));
        assert_eq!(told.iter().any(|r| r.mode == Mode::SteelShearLeverArm), has_arm);
    }
}

/// By hand: supplementary bars take a quarter off the pry-out; h_ef 50 has k_8 = 1.
#[test]
fn pry_out_has_its_factors() {
    let bolts = |h_ef| group(headed(0.016, 157e-6, h_ef, 0.03), &[[0.0, 0.0]]);
    let deep = bolts(0.1);
    let around = member(&deep, [FREE; 4], 0.5);
    let shear = acting(&[0.0], &[[1e3, 0.0]]);
    let bars = BarSet {
        count: 2,
        diameter_m: 0.01,
        yield_pa: 500e6,
        anchored_m: 0.1,
        bond_pa: 2.7e6,
        alpha: 0.7,
        end: BarEnd::Hooked,
        distance_m: 0.05,
    };
    let with_bars = Concrete { tension_bars: Some(TensionBars { bars }), ..concrete(25.0) };
    let told = records(&deep, &with_bars, &around, &shear);
    close(symbol(only(&told, Mode::PryOut), "VRk,cp"), 0.75 * 2.0 * 8.9 * 5.0 * 1000.0, 1e-12);
    let told = records(&bolts(0.05), &concrete(25.0), &around, &shear);
    close(symbol(only(&told, Mode::PryOut), "VRk,cp"), 8.9 * 5.0 * 50f64.powf(1.5), 1e-12);
}

/// By hand: shears 3 and 1 kN, 0.2 m apart across them, h_ef 100: e_V = 50, ψ_ec = 1/(1 + 100/300) = 0.75, area 500·300.
#[test]
fn an_eccentric_shear_pries_out_sooner() {
    let bolts = group(headed(0.016, 157e-6, 0.1, 0.03), &[[0.0, 0.0], [0.2, 0.0]]);
    let around = member(&bolts, [FREE; 4], 0.5);
    let told = records(&bolts, &concrete(25.0), &around, &acting(&[0.0; 2], &[[0.0, 3e3], [0.0, 1e3]]));
    close(symbol(only(&told, Mode::PryOut), "NRk,c"), 8.9 * 5.0 * 1000.0 * (5.0 / 3.0) * 0.75, 1e-12);
}

/// By hand: splitting goes unchecked at c = c_cr,sp for one, 1.2·c_cr,sp for a pair, and h = h_min.
#[test]
fn splitting_goes_unchecked_only_far_from_edges_in_thick_concrete() {
    let is_checked = |places: &[[f64; 2]], c: f64, h_min: f64| {
        let mut bolt = headed(0.016, 157e-6, 0.1, 0.03);
        bolt.product.least.thickness_m = Some(h_min);
        let bolts = group(bolt, places);
        let around = member(&bolts, [c, FREE, FREE, FREE], 0.3);
        let told =
            records(&bolts, &concrete(25.0), &around, &acting(&vec![1e3; places.len()], &vec![[0.0; 2]; places.len()]));
        only(&told, Mode::Splitting).utilization().is_some()
    };
    let (one, two) = ([[0.0, 0.0]], [[0.0, 0.0], [0.0, 0.2]]);
    assert!(!is_checked(&one, 0.1501, 0.3));
    assert!(is_checked(&one, 0.1499, 0.3));
    assert!(is_checked(&one, 0.1501, 0.301));
    assert!(is_checked(&two, 0.17, 0.3));
    assert!(!is_checked(&two, 0.1801, 0.3));
}

/// By hand: bars that keep cracks at 0.3 mm spare it in cracked design only.
#[test]
fn splitting_bars_count_in_cracked_design() {
    let bolts = group(headed(0.016, 157e-6, 0.1, 0.03), &[[0.0, 0.0]]);
    let around = member(&bolts, [0.1, FREE, FREE, FREE], 0.3);
    for (cracking, is_checked) in [(Cracking::Cracked, false), (Cracking::Uncracked, true)] {
        let concrete = Concrete { splitting_bars: SplittingBars::LimitsCracks, cracking, ..concrete(25.0) };
        let told = records(&bolts, &concrete, &around, &acting(&[1e3], &[[0.0; 2]]));
        assert_eq!(only(&told, Mode::Splitting).utilization().is_some(), is_checked);
    }
}

/// By hand: 120 needed and 100 there: 1.2 each.
#[test]
fn less_than_the_least_distance_fails() {
    let mut bolt = headed(0.016, 157e-6, 0.08, 0.03);
    bolt.product.least = LeastDistances { spacing_m: Some(0.12), edge_m: Some(0.12), thickness_m: Some(0.12) };
    let bolts = group(bolt, &[[0.0, 0.0], [0.0, 0.1]]);
    let around = member(&bolts, [0.1, FREE, FREE, FREE], 0.1);
    let told = records(&bolts, &concrete(25.0), &around, &acting(&[0.0; 2], &[[0.0; 2]; 2]));
    for mode in [Mode::LeastSpacing, Mode::LeastEdgeDistance, Mode::LeastThickness] {
        close(only(&told, mode).utilization().unwrap(), 1.2, 1e-9);
    }
}

/// By hand: heads 60 from the edge pulled 30 and 10 kN, 100 apart along it: e = 25, ψ_ec = 1/(1 + 50/240).
#[test]
fn unequal_pulls_blow_the_side_out_sooner() {
    let bolts = group(headed(0.024, 353e-6, 0.2, 0.044), &[[0.0, 0.0], [0.0, 0.1]]);
    let around = member(&bolts, [0.06, FREE, FREE, FREE], 0.5);
    let told = records(&bolts, &concrete(25.0), &around, &acting(&[30e3, 10e3], &[[0.0; 2]; 2]));
    close(symbol(only(&told, Mode::BlowOut), "psi_ec,Nb"), 240.0 / 290.0, 1e-12);
}

/// By hand: the corner 80 from the heads, c_1 60: ψ_s = 0.7 + 0.3·80/120 = 0.9; face 80 + 120 wide, 240 high.
#[test]
fn a_corner_beside_the_heads_counts() {
    let bolts = group(headed(0.024, 353e-6, 0.2, 0.044), &[[0.0, 0.0]]);
    let around = member(&bolts, [0.06, FREE, 0.08, FREE], 0.5);
    let told = records(&bolts, &concrete(25.0), &around, &acting(&[30e3], &[[0.0; 2]]));
    let row = told.iter().find(|r| r.mode == Mode::BlowOut && r.about == About::Edge(0)).unwrap();
    close(symbol(row, "psi_s,Nb"), 0.9, 1e-12);
    close(symbol(row, "Ac,Nb"), 0.2 * 0.24, 1e-12);
}

/// From memory of product assessments: strength counts up to 50 MPa for post-installed fasteners, 60 MPa for cast-in ones,
/// and none below 12 MPa.
#[test]
fn concrete_strength_counts_within_limits() {
    let actions = acting(&[1e3], &[[0.0; 2]]);
    let strength = |fastener: Fastener, fck: f64| {
        let bolts = group(fastener, &[[0.0, 0.0]]);
        let told = records(&bolts, &concrete(fck), &member(&bolts, [FREE; 4], 0.5), &actions);
        only(&told, Mode::ConcreteCone).symbols.iter().find(|s| s.symbol == "fck").map(|s| s.value)
    };
    let rod = || bonded(0.016, 157e-6, 0.125, [6e6, 10e6, 9e6]);
    assert_eq!(strength(rod(), 70.0), Some(50e6));
    assert_eq!(strength(headed(0.016, 157e-6, 0.1, 0.03), 70.0), Some(60e6));
    assert_eq!(strength(headed(0.016, 157e-6, 0.1, 0.03), 11.9), None);
}

/// By hand: a thin flat head counts up to 6·t_h + d = 6·4 + 20 = 44 of its 80 mm.
#[test]
fn a_thin_head_counts_in_part() {
    let mut bolt = headed(0.02, 245e-6, 0.1, 0.08);
    bolt.kind = FastenerKind::CastIn(Head { diameter_m: 0.08, thickness_m: 0.004 });
    close(bolt.head_area_m2().unwrap(), std::f64::consts::FRAC_PI_4 * (0.044f64.powi(2) - 0.0004), 1e-12);
}

/// By hand: M16, h_ef 100, c_cr,sp 150, s_cr,sp 300, c 100, h = h_min, C25/30: the head of 40 mm bears 7.5·1055.6·25 =
/// 197.9 kN, so that N⁰ is the cone's 44.5 kN; area (100 + 150)·300/300², ψ_s = 0.7 + 0.3·100/150 = 0.9, ψ_h,sp = 1.
#[test]
fn splitting_near_an_edge() {
    let mut bolt = headed(0.016, 157e-6, 0.1, 0.04);
    bolt.product.least.thickness_m = Some(0.3);
    let bolts = group(bolt, &[[0.0, 0.0]]);
    let around = member(&bolts, [0.1, FREE, FREE, FREE], 0.3);
    let told = records(&bolts, &concrete(25.0), &around, &acting(&[1e3], &[[0.0; 2]]));
    close(symbol(only(&told, Mode::Splitting), "NRk,sp"), 44.5e3 * 250.0 / 300.0 * 0.9, 1e-9);
}

/// By hand: a row of three, 280 apart with s_cr 300, is one group though its ends are 560 apart: (560 + 300)·300.
#[test]
fn a_row_holds_together_through_its_middle() {
    let bolts = group(headed(0.016, 157e-6, 0.1, 0.03), &[[0.0, 0.0], [0.56, 0.0], [0.28, 0.0]]);
    let around = member(&bolts, [FREE; 4], 0.5);
    let told = records(&bolts, &concrete(25.0), &around, &acting(&[1e3; 3], &[[0.0; 2]; 3]));
    close(symbol(only(&told, Mode::ConcreteCone), "Ac,N"), 0.86 * 0.3, 1e-12);
}

/// By hand: torsion shears the front row along the edge and the rear row back: the sum is nothing, the front row's 2 kN act.
#[test]
fn torsion_shears_the_front_row_along_the_edge() {
    let places = [[0.0, 0.0], [0.0, 0.1], [-0.2, 0.0], [-0.2, 0.1]];
    let bolts = group(headed(0.016, 157e-6, 0.1, 0.03), &places);
    let around = member(&bolts, [0.1, FREE, FREE, FREE], 0.5);
    let shear = [[0.0, 1e3], [0.0, 1e3], [0.0, -1e3], [0.0, -1e3]];
    let told = records(&bolts, &concrete(25.0), &around, &acting(&[0.0; 4], &shear));
    let edge = only(&told, Mode::ConcreteEdge);
    close(edge.action_n.unwrap(), 2e3, 1e-12);
    close(symbol(edge, "psi_alpha,V"), 2.0, 1e-12);
}
