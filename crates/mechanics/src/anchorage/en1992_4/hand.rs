//! Single fasteners and small groups worked by hand from the standard's formulas.

use super::super::*;
use super::samples::*;
use super::{En1992Factors, Prepared};

/// Published case "V1" (own derivation of the reference set, checked by another script): two bonded M16, h_ef 125, 150 apart.
#[test]
fn two_bonded_rods_far_from_edges() {
    let group = group(bonded(0.016, 157e-6, 0.125, [8e6, 8e6, 8e6]), &[[0.0, 0.0], [0.15, 0.0]]);
    let around = member(&group, FAR, 0.3);
    let told = records(&group, &concrete(25.0), &around, &acting(&[10e3; 2], &[[0.0; 2]; 2]));
    let bond = only(&told, Mode::Bond);
    close(symbol(bond, "scr,Np"), 0.330360288, 1e-9);
    close(symbol(bond, "psi0_g,Np"), 1.0401973101176714, 1e-9);
    close(symbol(bond, "psi_g,Np"), 1.0131110712698752, 1e-9);
    close(symbol(bond, "NRk,p"), 74046.77992934534, 1e-9);
}

/// "V2": ψ_sus by hand.
#[test]
fn a_large_sustained_share_lowers_the_bond() {
    let group = group(bonded(0.016, 157e-6, 0.125, [8e6, 8e6, 8e6]), &[[0.0, 0.0]]);
    let around = member(&group, FAR, 0.3);
    for (share, psi) in [(0.5, 1.0), (0.6, 1.0), (0.8, 0.8), (1.0, 0.6)] {
        let actions = GroupActions { sustained_share: Some(share), ..acting(&[10e3], &[[0.0; 2]]) };
        let told = records(&group, &concrete(25.0), &around, &actions);
        close(symbol(only(&told, Mode::Bond), "psi_sus"), psi, 1e-12);
    }
}

/// By hand: ψ_sus 0.6 lowers what splitting starts from: 0.6·8·π·16·125 = 30.16 kN, below the cone's 53.8 kN.
#[test]
fn a_large_sustained_share_lowers_the_splitting_too() {
    let group = group(bonded(0.016, 157e-6, 0.125, [8e6, 8e6, 8e6]), &[[0.0, 0.0]]);
    let around = member(&group, [0.1, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.3);
    let actions = GroupActions { sustained_share: Some(1.0), ..acting(&[10e3], &[[0.0; 2]]) };
    let told = records(&group, &concrete(25.0), &around, &actions);
    close(symbol(only(&told, Mode::Splitting), "N0sp"), 0.6 * 8.0 * std::f64::consts::PI * 16.0 * 125.0, 1e-12);
}

/// "V3": two heads 60 mm from an edge, 200 deep: 175.4 kN.
#[test]
fn two_heads_near_an_edge_blow_the_side_out() {
    let mut bolt = headed(0.024, 353e-6, 0.2, 0.044);
    bolt.kind = FastenerKind::CastIn(Head {
        diameter_m: (4.0 * 1068.0e-6 / std::f64::consts::PI + 0.024f64.powi(2)).sqrt(),
        thickness_m: 0.02,
    });
    let group = group(bolt, &[[0.0, 0.0], [0.0, 0.15]]);
    let around = member(&group, [0.06, f64::INFINITY, f64::INFINITY, f64::INFINITY], 1.0);
    let told = records(&group, &concrete(30.0), &around, &acting(&[10e3; 2], &[[0.0; 2]; 2]));
    close(symbol(only(&told, Mode::BlowOut), "NRk,cb"), 175418.82794278956, 1e-9);
}

/// By hand: c_1 = 100 = 0.5·h_ef is far enough, a hair less is not.
#[test]
fn blow_out_begins_below_half_the_embedment() {
    let group = group(headed(0.024, 353e-6, 0.2, 0.044), &[[0.0, 0.0]]);
    for (c1, applies) in [(0.1, false), (0.0999, true)] {
        let around = member(&group, [c1, f64::INFINITY, f64::INFINITY, f64::INFINITY], 1.0);
        let told = records(&group, &concrete(30.0), &around, &acting(&[10e3], &[[0.0; 2]]));
        assert_eq!(only(&told, Mode::BlowOut).utilization().is_some(), applies);
    }
}

/// By hand, one headed M20 at a corner, h_ef 150, c 100 and 120, C25/30 cracked: N⁰ = 8.9·5·150^1.5 = 81.75 kN;
/// A = (100 + 225)·(120 + 225)/450² = 0.5537; ψ_s = 0.7 + 0.3·100/225 = 0.8333: 37.72 kN.
#[test]
fn one_bolt_at_a_corner_has_a_cut_cone() {
    let group = group(headed(0.02, 245e-6, 0.15, 0.04), &[[0.0, 0.0]]);
    let around = member(&group, [0.1, f64::INFINITY, 0.12, f64::INFINITY], 0.5);
    let told = records(&group, &concrete(25.0), &around, &acting(&[10e3], &[[0.0; 2]]));
    let cone = only(&told, Mode::ConcreteCone);
    let expected = 8.9 * 5.0 * 150f64.powf(1.5) * (325.0 * 345.0 / 202500.0) * (0.7 + 0.3 * 100.0 / 225.0);
    close(symbol(cone, "NRk,c"), expected, 1e-12);
    close(symbol(cone, "NRk,c"), 37.72e3, 0.005 / 37.72);
}

/// By hand: dense bars and h_ef 80: ψ_re = 0.5 + 80/200 = 0.9.
#[test]
fn dense_bars_let_a_shallow_shell_spall() {
    let group = group(headed(0.012, 84.3e-6, 0.08, 0.03), &[[0.0, 0.0]]);
    let around = member(&group, FAR, 0.3);
    let dense = Concrete { surface_bars: SurfaceBars::Dense, ..concrete(25.0) };
    let told = records(&group, &dense, &around, &acting(&[5e3], &[[0.0; 2]]));
    close(symbol(only(&told, Mode::ConcreteCone), "psi_re,N"), 0.9, 1e-12);
}

/// By hand: tensions 30 and 10 kN 0.2 m apart, h_ef 150: e = 50 mm, ψ_ec = 1/(1 + 100/450).
#[test]
fn unequal_pulls_lower_the_cone() {
    let group = group(headed(0.02, 245e-6, 0.15, 0.04), &[[0.0, 0.0], [0.2, 0.0]]);
    let around = member(&group, FAR, 0.5);
    let told = records(&group, &concrete(25.0), &around, &acting(&[30e3, 10e3], &[[0.0; 2]; 2]));
    close(symbol(only(&told, Mode::ConcreteCone), "psi_ec,N"), 450.0 / 550.0, 1e-12);
}

/// "V6": ψ_M,N for h_ef 100; 1 with less pressure than 0.8 of the tension, and near an edge.
#[test]
fn pressure_beside_the_cone_holds_it_down() {
    let group = group(headed(0.016, 157e-6, 0.1, 0.03), &[[0.0, 0.0]]);
    let far = member(&group, FAR, 0.5);
    let near = member(&group, [0.149, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.5);
    let psi = |around: &RectangularMember, z: f64, c: f64| {
        let compression = Some(Compression { resultant_n: c, lever_arm_m: z });
        let actions = GroupActions { compression, ..acting(&[10e3], &[[0.0; 2]]) };
        symbol(only(&records(&group, &concrete(25.0), around, &actions), Mode::ConcreteCone), "psi_M,N")
    };
    for (z, expected) in [(0.05, 5.0 / 3.0), (0.1, 4.0 / 3.0), (0.15, 1.0), (0.2, 1.0)] {
        close(psi(&far, z, 10e3), expected, 1e-12);
    }
    close(psi(&far, 0.05, 7.9e3), 1.0, 1e-12);
    close(psi(&near, 0.05, 10e3), 1.0, 1e-12);
}

/// By hand, three edges nearer than 1.5·h_ef = 300: distances 150, 150 and 180, h_ef 200: h'_ef = 180/300·200 = 120,
/// s'_cr = 360, whole square but for 150 < 180 twice: A = (150 + 180)·(150 + 180).
#[test]
fn a_narrow_member_shrinks_the_cone() {
    let group = group(headed(0.02, 245e-6, 0.2, 0.04), &[[0.0, 0.0]]);
    let around = member(&group, [0.15, 0.18, 0.15, f64::INFINITY], 0.5);
    let told = records(&group, &concrete(25.0), &around, &acting(&[10e3], &[[0.0; 2]]));
    let cone = only(&told, Mode::ConcreteCone);
    close(symbol(cone, "hef"), 0.12, 1e-12);
    close(symbol(cone, "Ac,N"), 0.33 * 0.33, 1e-12);
    close(symbol(cone, "N0Rk,c"), 8.9 * 5.0 * 120f64.powf(1.5), 1e-12);
}

/// By hand: two bolts 0.5 m apart with s_cr = 450 stand alone: two lines, ratio 1 each.
#[test]
fn bolts_far_apart_stand_alone() {
    let group = group(headed(0.02, 245e-6, 0.15, 0.04), &[[0.0, 0.0], [0.5, 0.0]]);
    let around = member(&group, FAR, 0.5);
    let told = records(&group, &concrete(25.0), &around, &acting(&[30e3, 10e3], &[[0.0; 2]; 2]));
    let cones: Vec<_> = told.iter().filter(|r| r.mode == Mode::ConcreteCone).collect();
    assert_eq!(cones.len(), 2);
    for cone in cones {
        close(symbol(cone, "Ac,N"), 0.45 * 0.45, 1e-12);
        close(symbol(cone, "psi_ec,N"), 1.0, 1e-12);
    }
}

/// "B12": ψ_α 1, 1.2649 and 2 for 0°, 45° and 90°.
#[test]
fn shear_along_an_edge_counts_half() {
    let group = group(headed(0.016, 157e-6, 0.125, 0.03), &[[0.0, 0.0]]);
    let around = member(&group, [0.1, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.25);
    for (shear, psi) in [([1e3, 0.0], 1.0), ([1e3, 1e3], 1.2649110640673515), ([0.0, 1e3], 2.0)] {
        let told = records(&group, &concrete(25.0), &around, &acting(&[0.0], &[shear]));
        close(symbol(only(&told, Mode::ConcreteEdge), "psi_alpha,V"), psi, 1e-12);
    }
    let told = records(&group, &concrete(25.0), &around, &acting(&[0.0], &[[-1e3, 0.0]]));
    assert!(matches!(only(&told, Mode::ConcreteEdge).outcome, Outcome::NotApplicable(_)));
}

/// By hand: corner and thin slab: c_1 120, c_2 100, h 150: A = (100 + 180)·150/(4.5·120²); ψ_s = 0.7 + 0.3·100/180;
/// ψ_h = √(180/150).
#[test]
fn a_corner_in_a_thin_slab_takes_less() {
    let group = group(headed(0.016, 157e-6, 0.12, 0.03), &[[0.0, 0.0]]);
    let around = member(&group, [0.12, f64::INFINITY, 0.1, f64::INFINITY], 0.15);
    let told = records(&group, &concrete(30.0), &around, &acting(&[0.0], &[[1e3, 0.0]]));
    let edge = told.iter().find(|r| r.mode == Mode::ConcreteEdge && r.about == About::Edge(0)).unwrap();
    close(symbol(edge, "Ac,V") / symbol(edge, "A0c,V"), 280.0 * 150.0 / 64800.0, 1e-12);
    close(symbol(edge, "psi_s,V"), 0.7 + 0.3 / 1.8, 1e-12);
    close(symbol(edge, "psi_h,V"), 1.2f64.sqrt(), 1e-12);
}

/// By hand: c_1 200 between sides 120 and 150 off, h 180, both below 300: c'_1 = max(150/1.5; 180/1.5) = 120.
#[test]
fn a_narrow_thin_member_shrinks_the_edge_body() {
    let group = group(headed(0.016, 157e-6, 0.12, 0.03), &[[0.0, 0.0]]);
    let around = member(&group, [0.2, f64::INFINITY, 0.15, 0.12], 0.18);
    let told = records(&group, &concrete(30.0), &around, &acting(&[0.0], &[[1e3, 0.0]]));
    let edge = told.iter().find(|r| r.mode == Mode::ConcreteEdge && r.about == About::Edge(0)).unwrap();
    close(symbol(edge, "c1"), 0.12, 1e-12);
    close(symbol(edge, "Ac,V"), (0.15 + 0.12) * 0.18, 1e-12);
}

/// By hand: a pure torsion of two bolts at an edge leaves one of them the load of one: the product of area ratio and ψ_ec is
/// (1 + s/3c)/(1 + s/3c) = 1.
#[test]
fn torsion_alone_leaves_the_edge_one_bolt() {
    let group = group(headed(0.016, 157e-6, 0.125, 0.03), &[[0.0, 0.0], [0.0, 0.15]]);
    let around = member(&group, [0.1, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.4);
    let told = records(&group, &concrete(25.0), &around, &acting(&[0.0; 2], &[[1e3, 0.0], [-1e3, 0.0]]));
    let edge = only(&told, Mode::ConcreteEdge);
    close(edge.action_n.unwrap(), 1e3, 1e-12);
    close(symbol(edge, "VRk,c"), symbol(edge, "V0Rk,c"), 1e-9);
}

/// By hand: opposed shears, two bolts 200 apart, h_ef 100: cell (150 + 100)·300 of 300², ψ_s = 0.7 + 0.3·100/150 = 0.9.
#[test]
fn opposed_shears_pry_out_one_bolt_between_virtual_edges() {
    let group = group(headed(0.016, 157e-6, 0.1, 0.03), &[[0.0, 0.0], [0.2, 0.0]]);
    let around = member(&group, FAR, 0.4);
    let told = records(&group, &concrete(25.0), &around, &acting(&[0.0; 2], &[[0.0, 1e3], [0.0, -1e3]]));
    let pry = told.iter().find(|r| r.mode == Mode::PryOut).unwrap();
    close(symbol(pry, "NRk,c"), 8.9 * 5.0 * 1000.0 * (250.0 / 300.0) * 0.9, 1e-12);
    close(pry.action_n.unwrap(), 1e3, 1e-12);
}

/// "V5": lever arm, with the moment of the full diameter given as the product's: 15.46 kN characteristic.
#[test]
fn a_plate_stood_off_bends_its_bolts() {
    let mut group = group(headed(0.016, 157e-6, 0.15, 0.03), &[[0.0, 0.0]]);
    group.fastener.product.en.steel_moment_nm = Some(386.03890527311375);
    group.fixture.seating = Seating::StoodOff { gap_m: 0.02, clamped: false };
    group.fixture.restraint = Restraint::Full;
    let around = member(&group, FAR, 0.5);
    let told = records(&group, &concrete(25.0), &around, &acting(&[20e3], &[[1e3, 0.0]]));
    let bent = only(&told, Mode::SteelShearLeverArm);
    close(symbol(bent, "la"), 0.038, 1e-12);
    // The case rounds N_Rd,s to 83.7 kN; 157·800/1.5 = 83.73: half a per mille of a quarter.
    close(symbol(bent, "VRk,s,M"), 15462.917855685939, 2e-4);
}

/// By hand: V⁰ = 0.5·157·800 = 62.8 kN; brittle steel in a group 0.8 of it; γ 1.25.
#[test]
fn brittle_steel_in_a_group_shears_at_less() {
    let mut pair = group(headed(0.016, 157e-6, 0.15, 0.03), &[[0.0, 0.0], [0.3, 0.0]]);
    let around = member(&pair, FAR, 0.5);
    let actions = acting(&[0.0; 2], &[[1e3, 0.0]; 2]);
    let resistance =
        |pair: &Group| only(&records(pair, &concrete(25.0), &around, &actions), Mode::SteelShear).resistance_n.unwrap();
    close(resistance(&pair), 62.8e3 / 1.25, 1e-12);
    pair.fastener.grade.rupture_elongation = Some(0.07);
    close(resistance(&pair), 0.8 * 62.8e3 / 1.25, 1e-12);
    pair.fastener.grade.rupture_elongation = None;
    close(resistance(&pair), 0.8 * 62.8e3 / 1.25, 1e-12);
}

/// By hand: headed M16, h 250, h_min 160, c_1 100, h_ef 110 ("V4"): the limit of CEN/TS 1992-4 governs: 1.2365.
#[test]
fn the_lower_limit_of_thickness_holds_against_splitting() {
    let mut bolt = headed(0.016, 157e-6, 0.11, 0.04);
    bolt.product.least.thickness_m = Some(0.16);
    let group = group(bolt, &[[0.0, 0.0]]);
    let around = member(&group, [0.1, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.25);
    let told = records(&group, &concrete(25.0), &around, &acting(&[10e3], &[[0.0; 2]]));
    close(symbol(only(&told, Mode::Splitting), "psi_h,sp"), 1.2365218608121753, 1e-12);
}

/// By hand: β 0.5 and 0.6: 0.25 + 0.36 in steel; in concrete 1.1/1.2 = 0.917 against 0.354 + 0.465 = 0.818.
#[test]
fn the_more_favorable_interaction_counts() {
    use super::interaction::{BarsIn, concrete_share, steel_share};
    close(steel_share(0.5, 0.6), 0.61, 1e-12);
    close(concrete_share(0.5, 0.6, BarsIn::NoneOrBoth), 0.5f64.powf(1.5) + 0.6f64.powf(1.5), 1e-12);
    close(concrete_share(0.6, 0.6, BarsIn::NoneOrBoth), 2.0 * 0.6f64.powf(1.5), 1e-12);
    close(concrete_share(0.9, 0.3, BarsIn::NoneOrBoth), 1.0, 1e-12);
    // Each alone at most 1, though 1.02 + 0.1 is below 1.2.
    close(concrete_share(1.02, 0.1, BarsIn::NoneOrBoth), 1.02, 1e-12);
    close(concrete_share(0.125, 0.125, BarsIn::OneDirection), 0.5, 1e-12);
}

/// By hand: two 10 mm bars a fastener, hooked, l_1 80, f_bd 2.7, α 0.7: 2·78.54·500/1.15 = 68.3 kN, anchored
/// 2·80·π·10·2.7/0.7 = 19.39 kN.
#[test]
fn bars_take_the_tension_in_place_of_the_cone() {
    let group = group(headed(0.02, 245e-6, 0.15, 0.04), &[[0.0, 0.0]]);
    let around = member(&group, FAR, 0.5);
    let bars = BarSet {
        count: 2,
        diameter_m: 0.01,
        yield_pa: 500e6,
        anchored_m: 0.08,
        bond_pa: 2.7e6,
        alpha: 0.7,
        end: BarEnd::Hooked,
        distance_m: 0.1,
    };
    let with = |bars| Concrete { tension_bars: Some(TensionBars { bars }), ..concrete(25.0) };
    let told = records(&group, &with(bars), &around, &acting(&[10e3], &[[0.0; 2]]));
    close(only(&told, Mode::TensionBars).resistance_n.unwrap(), 160.0 * std::f64::consts::PI * 27.0 / 0.7, 1e-12);
    assert!(matches!(only(&told, Mode::ConcreteCone).outcome, Outcome::NotApplicable(_)));
    // Farther than 0.75·h_ef they don't count, and the cone stands again.
    let told = records(&group, &with(BarSet { distance_m: 0.12, ..bars }), &around, &acting(&[10e3], &[[0.0; 2]]));
    assert!(matches!(only(&told, Mode::TensionBars).outcome, Outcome::NotChecked(_)));
    assert!(only(&told, Mode::ConcreteCone).utilization().is_some());
}

/// (6.6) by hand: e_s 30, z 150: the bars toward the edge take 1.2 of the shear.
#[test]
fn bars_below_the_shear_take_more_than_the_shear() {
    let group = group(headed(0.02, 245e-6, 0.15, 0.04), &[[0.0, 0.0]]);
    let around = member(&group, [0.15, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.5);
    let bars = BarSet {
        count: 4,
        diameter_m: 0.012,
        yield_pa: 500e6,
        anchored_m: 0.1,
        bond_pa: 2.7e6,
        alpha: 0.7,
        end: BarEnd::Hooked,
        distance_m: 0.1,
    };
    let shear_bars = Some(ShearBars { bars, edge: 0, offset_m: 0.03, lever_m: 0.15 });
    let told = records(&group, &Concrete { shear_bars, ..concrete(25.0) }, &around, &acting(&[0.0], &[[10e3, 0.0]]));
    close(only(&told, Mode::ShearBars).action_n.unwrap(), 12e3, 1e-12);
}

#[test]
fn what_is_missing_is_not_checked_and_never_holds() {
    let places = [[0.0, 0.0], [0.2, 0.0]];
    let actions = acting(&[1e3; 2], &[[100.0, 0.0]; 2]);
    let whole = group(bonded(0.016, 157e-6, 0.125, [8e6, 8e6, 8e6]), &places);
    let around = member(&whole, [0.5, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.4);
    let judged = |group: &Group, concrete: &Concrete, actions: &GroupActions| {
        Prepared::new(group, concrete, &En1992Factors::RECOMMENDED, &around).unwrap().judge(actions).unwrap()
    };
    assert!(judged(&whole, &concrete(25.0), &actions).holds());
    type Spoil = (&'static str, fn(&mut Group, &mut Concrete, &mut GroupActions));
    let spoils: [Spoil; 14] = [
        ("gamma_inst", |g, _, _| g.fastener.product.en.gamma_inst = None),
        ("bond strength", |g, _, _| g.fastener.product.en.bond_cracked_pa = None),
        ("bond C20", |g, _, _| g.fastener.product.en.bond_uncracked_c20_pa = None),
        ("k8", |g, _, _| g.fastener.product.en.k8 = None),
        ("splitting edge", |g, _, _| g.fastener.product.en.splitting_edge_m = None),
        ("least spacing", |g, _, _| g.fastener.product.least.spacing_m = None),
        ("least edge", |g, _, _| g.fastener.product.least.edge_m = None),
        ("least thickness", |g, _, _| g.fastener.product.least.thickness_m = None),
        ("drilling", |g, _, _| g.fastener.product.bond_use.drilling = None),
        ("temperature", |g, _, _| g.fastener.product.bond_use.long_term_c = Some(60.0)),
        ("hole", |g, _, _| g.fixture.hole_diameter_m = None),
        ("strength", |_, c, _| c.fck_pa = None),
        ("light", |_, c, _| c.lightweight = 0.85),
        ("sustained", |_, _, a| a.sustained_share = None),
    ];
    for (what, spoil) in spoils {
        let (mut group, mut concrete, mut actions) = (whole.clone(), concrete(25.0), actions.clone());
        spoil(&mut group, &mut concrete, &mut actions);
        let verdict = judged(&group, &concrete, &actions);
        assert!(!verdict.holds() && verdict.not_checked.is_some(), "{what}: {verdict:?}");
    }
}

#[test]
fn through_bolts_and_sleeves_are_checked_in_steel_only() {
    for kind in [FastenerKind::ThroughBolt, FastenerKind::Sleeve] {
        let group = group(Fastener { kind, ..headed(0.02, 245e-6, 0.2, 0.04) }, &[[0.0, 0.0]]);
        let around = member(&group, [0.3, f64::INFINITY, f64::INFINITY, f64::INFINITY], 0.2);
        let told = records(&group, &concrete(25.0), &around, &acting(&[10e3], &[[1e3, 0.0]]));
        assert!(only(&told, Mode::SteelTension).utilization().is_some());
        for mode in [Mode::ConcreteCone, Mode::PryOut, Mode::ConcreteEdge] {
            assert!(matches!(only(&told, mode).outcome, Outcome::NotChecked(NotChecked::StructuralEngineer { .. })));
        }
    }
}

#[test]
fn service_values_are_not_held_against_design_resistances() {
    let group = group(headed(0.02, 245e-6, 0.15, 0.04), &[[0.0, 0.0]]);
    let around = member(&group, FAR, 0.5);
    let actions = GroupActions { level: ActionLevel::Service, ..acting(&[1.0], &[[0.0; 2]]) };
    let concrete = concrete(25.0);
    let mut prepared = Prepared::new(&group, &concrete, &En1992Factors::RECOMMENDED, &around).unwrap();
    assert!(!prepared.judge(&actions).unwrap().holds());
}

#[test]
fn numbers_that_cannot_be_are_named() {
    let sound = group(headed(0.02, 245e-6, 0.15, 0.04), &[[0.0, 0.0], [0.2, 0.0]]);
    let around = member(&sound, FAR, 0.5);
    type Spoil = (&'static str, fn(&mut Group, &mut Concrete, &mut En1992Factors));
    let spoils: [Spoil; 8] = [
        ("embedment_m", |g, _, _| g.fastener.embedment_m = 0.0),
        ("stress_area_m2", |g, _, _| g.fastener.stress_area_m2 = f64::NAN),
        ("outside_diameter_m", |g, _, _| g.fastener.outside_diameter_m = 0.01),
        ("head diameter_m", |g, _, _| {
            g.fastener.kind = FastenerKind::CastIn(Head { diameter_m: 0.015, thickness_m: 0.01 });
        }),
        ("same place", |g, _, _| g.anchors_m[1] = [0.0, 0.0]),
        ("fck_pa", |_, c, _| c.fck_pa = Some(-1.0)),
        ("gamma_c", |_, _, f| f.gamma_c = 0.0),
        ("anchors_m x", |g, _, _| g.anchors_m[0][0] = f64::INFINITY),
    ];
    for (what, spoil) in spoils {
        let (mut group, mut concrete, mut factors) = (sound.clone(), concrete(25.0), En1992Factors::RECOMMENDED);
        spoil(&mut group, &mut concrete, &mut factors);
        let fault = Prepared::new(&group, &concrete, &factors, &around).err().unwrap();
        assert!(fault.to_string().contains(what), "{what}: {fault}");
    }
    let concrete = concrete(25.0);
    let mut prepared = Prepared::new(&sound, &concrete, &En1992Factors::RECOMMENDED, &around).unwrap();
    assert!(prepared.judge(&acting(&[f64::NAN, 0.0], &[[0.0; 2]; 2])).is_err());
    assert!(prepared.judge(&acting(&[-1.0, 0.0], &[[0.0; 2]; 2])).is_err());
    assert!(prepared.judge(&acting(&[1.0], &[[0.0; 2]])).is_err());
}
