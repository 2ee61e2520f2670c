//! Single fasteners and small groups by hand, mode by mode, in numbers written out beside them.

use super::super::*;
use super::samples::*;
use super::{Aci318Factors, Prepared};

/// M16 cast in 150 mm deep, f'c 30 MPa, 120 mm from one edge, 100 mm from another, thickness 150 mm.
#[test]
fn shear_at_a_corner_of_a_thin_slab_is_the_hand_calculation() {
    let group = group(headed(0.016, 157e-6, 0.15, 4e-4, 400e6, 240e6), &[[0.0, 0.0]]);
    let inf = f64::INFINITY;
    let around = member(&group, [0.12, inf, 0.1, inf], 0.15);
    let told = records(&group, &Concrete::plain(30e6), &around, &acting(&[0.0], &[[10e3, 0.0]]));
    let edge = |index| told.iter().find(|r| r.mode == Mode::ConcreteEdge && r.about == About::Edge(index)).unwrap();
    // ℓe = min(150; 128) = 128: 0.6·8^0.2·√16 = 3.6377 < 3.7; Vb = 3.6377·√30·120^1.5 = 26191.6 N.
    // AVc = (100 + 180)·150 = 42000, AVco = 64800; ψed = 0.7 + 0.3·100/180 = 0.86667; ψh = √(180/150) = 1.09545.
    close(symbol(edge(0), "Vb"), 26_191.6, 1e-5);
    close(symbol(edge(0), "AVc"), 42_000e-6, 1e-9);
    // 26191.6·0.648148·0.866667·1.095445 = 16116.8 N; φ 0.70.
    close(symbol(edge(0), "Vcbg"), 16_116.8, 1e-5);
    close(edge(0).utilization().unwrap(), 10e3 / (0.7 * 16_116.8), 1e-5);
    // Along the other edge, c 100: Vb = 3.6377·√30·1000 = 19924.5; AVc = (120 + 150)·150 = 40500 of 45000;
    // ψh = 1 at 150/150; twice, ψed = 1: 2·19924.5·0.9 = 35864 N.
    close(symbol(edge(1), "Vcbg,along"), 35_864.0, 1e-4);
    close(edge(1).utilization().unwrap(), 10e3 / (0.7 * 35_864.0), 1e-4);
}

/// Two adhesive M16, 125 mm deep, 150 mm apart, τ 6 and 10 MPa.
#[test]
fn bond_of_two_is_the_hand_calculation() {
    let group = group(bonded(0.125, 6e6, 10e6), &[[0.0, 0.0], [0.15, 0.0]]);
    let around = member(&group, FAR, 0.25);
    let told = records(&group, &Concrete::plain(30e6), &around, &acting(&[5e3; 2], &[[0.0; 2]; 2]));
    let bond = only(&told, Mode::Bond);
    // cNa = 160·√(10/7.6) = 183.533 mm; Nba = 6·π·16·125 = 37699 N; ANa/ANao = (367.065 + 150)/367.065 = 1.40865.
    close(symbol(bond, "cNa"), 0.183_533, 1e-5);
    close(symbol(bond, "Nba"), 37_699.1, 1e-5);
    close(symbol(bond, "Nag"), 53_104.7, 1e-5);
    // Category 1 without supplementary reinforcement: 0.65.
    close(bond.utilization().unwrap(), 10e3 / (0.65 * 53_104.7), 1e-5);
    // Sustained: 0.3·5 kN over 0.55·0.65·37699 N.
    close(only(&told, Mode::SustainedBond).utilization().unwrap(), 1.5e3 / (0.55 * 0.65 * 37_699.1), 1e-5);
}

/// One adhesive M16 in uncracked concrete near an edge: ψ_cp with c_ac of the table.
#[test]
fn splitting_lowers_bond_and_breakout_in_uncracked_concrete() {
    let group = group(bonded(0.125, 6e6, 10e6), &[[0.0, 0.0]]);
    let inf = f64::INFINITY;
    let around = member(&group, [0.1, inf, inf, inf], 0.25);
    let concrete = Concrete { cracking: Cracking::Uncracked, ..Concrete::plain(30e6) };
    let told = records(&group, &concrete, &around, &acting(&[5e3], &[[0.0; 2]]));
    let cone = only(&told, Mode::ConcreteCone);
    // cac = 2·125 = 250; ψcp = max(100; 187.5)/250 = 0.75; ψed = 0.7 + 0.3·100/187.5 = 0.86; ψc 1.4;
    // Nb = 7·√30·125^1.5 = 53582 N; ANc/ANco = 287.5/375 = 0.766667: 53582·0.766667·0.86·1.4·0.75 = 37094 N.
    close(symbol(cone, "psi_cp,N"), 0.75, 1e-12);
    close(symbol(cone, "Ncbg"), 37_094.0, 2e-4);
    let bond = only(&told, Mode::Bond);
    // max(100; 183.533)/250 = 0.734131.
    close(symbol(bond, "psi_cp,Na"), 0.734_131, 1e-5);
    let held = Concrete { splitting_bars: SplittingBars::LimitsCracks, ..concrete };
    let told = records(&group, &held, &around, &acting(&[5e3], &[[0.0; 2]]));
    close(symbol(only(&told, Mode::ConcreteCone), "psi_cp,N"), 1.0, 1e-12);
}

/// Heads at 60 mm from an edge, 200 mm deep: blow-out of two 150 mm apart, and of one at a corner.
#[test]
fn blow_out_is_the_hand_calculation() {
    let bolt = headed(0.024, 353e-6, 0.2, 1068e-6, 400e6, 240e6);
    let inf = f64::INFINITY;
    let pair = group(bolt.clone(), &[[0.0, 0.0], [0.0, 0.15]]);
    let around = member(&pair, [0.06, inf, inf, inf], 0.4);
    let told = records(&pair, &Concrete::plain(30e6), &around, &acting(&[5e3; 2], &[[0.0; 2]; 2]));
    let row = only(&told, Mode::BlowOut);
    // Nsb = 13·60·√1068·√30 = 139618 N; (1 + 150/360)·Nsb = 197792 N; φ 0.70.
    close(symbol(row, "Nsb"), 139_617.8, 1e-5);
    close(symbol(row, "Nsbg"), 197_791.9, 1e-5);
    close(row.utilization().unwrap(), 10e3 / (0.7 * 197_791.9), 1e-5);
    let single = group(bolt, &[[0.0, 0.0]]);
    let around = member(&single, [0.06, inf, 0.09, inf], 0.4);
    let told = records(&single, &Concrete::plain(30e6), &around, &acting(&[5e3], &[[0.0; 2]]));
    // (1 + 90/60)/4 = 0.625; the other edge at 90 mm is not near: 2.5·90 > 200.
    close(symbol(only(&told, Mode::BlowOut), "Nsbg"), 0.625 * 139_617.8, 1e-5);
}

/// Unequal pulls and pry-out of four cast-in bolts.
#[test]
fn an_eccentric_pull_and_pry_out_are_the_hand_calculation() {
    let bolt = headed(0.016, 157e-6, 0.1, 4e-4, 400e6, 240e6);
    let group = group(bolt, &[[0.0, 0.0], [0.2, 0.0]]);
    let around = member(&group, FAR, 0.3);
    let told = records(&group, &Concrete::plain(25e6), &around, &acting(&[15e3, 5e3], &[[4e3, 0.0]; 2]));
    let cone = only(&told, Mode::ConcreteCone);
    // e'N = 50; ψec = 1/(1 + 50/150) = 0.75; ANc/ANco = 500·300/90000 = 1.66667; Nb = 10·5·1000 = 50 kN: 62.5 kN.
    close(symbol(cone, "psi_ec,N"), 0.75, 1e-12);
    close(symbol(cone, "Ncbg"), 62.5e3, 1e-9);
    // Pry-out: no eccentricity in shear: 2·83.333 kN, φ 0.70.
    let pry = only(&told, Mode::PryOut);
    close(pry.resistance_n.unwrap(), 0.7 * 2.0 * 83_333.33, 1e-6);
    close(pry.action_n.unwrap(), 8e3, 1e-12);
}

#[test]
fn torsion_does_not_cancel_in_pry_out() {
    let bolt = headed(0.016, 157e-6, 0.1, 4e-4, 400e6, 240e6);
    let group = group(bolt, &[[0.0, 0.0], [0.2, 0.0]]);
    let around = member(&group, FAR, 0.3);
    let told = records(&group, &Concrete::plain(25e6), &around, &acting(&[0.0; 2], &[[0.0, 4e3], [0.0, -4e3]]));
    close(only(&told, Mode::PryOut).action_n.unwrap(), 8e3, 1e-12);
}

/// Both shares 0.6: 1.2/1.2; a share of 0.2 leaves the other whole.
#[test]
fn interaction_is_three_straight_lines() {
    use super::interaction::share;
    close(share(0.6, 0.6), 1.0, 1e-12);
    close(share(0.2, 1.0), 1.0, 1e-12);
    close(share(1.0, 0.15), 1.0, 1e-12);
    close(share(0.3, 0.9), 1.0, 1e-12);
    close(share(0.3, 0.95), 1.25 / 1.2, 1e-12);
    close(share(0.25, 1.1), 1.35 / 1.2, 1e-12);
}

/// M16: 0.6·157·400 = 37680 N, ductile 0.65; on grout 0.8 of it; brittle 0.60.
#[test]
fn steel_in_shear_is_the_hand_calculation() {
    let shear = |fastener: Fastener, seating: Seating| {
        let mut group = group(fastener, &[[0.0, 0.0]]);
        group.fixture.seating = seating;
        let around = member(&group, FAR, 0.3);
        let told = records(&group, &Concrete::plain(25e6), &around, &acting(&[0.0], &[[4e3, 0.0]]));
        only(&told, Mode::SteelShear).resistance_n.unwrap()
    };
    let bolt = headed(0.016, 157e-6, 0.1, 4e-4, 400e6, 240e6);
    close(shear(bolt.clone(), Seating::OnConcrete), 0.65 * 37_680.0, 1e-9);
    let grout = Seating::OnGrout { thickness_m: 0.02, strength_pa: 40e6 };
    close(shear(bolt.clone(), grout), 0.65 * 0.8 * 37_680.0, 1e-9);
    let mut brittle = bolt;
    brittle.grade.rupture_elongation = None;
    close(shear(brittle, Seating::OnConcrete), 0.60 * 37_680.0, 1e-9);
}

fn verdict(group: &Group, concrete: &Concrete) -> Verdict {
    let around = member(group, FAR, 0.3);
    let actions = acting(&vec![1e3; group.anchors_m.len()], &vec![[1e3, 0.0]; group.anchors_m.len()]);
    Prepared::new(group, concrete, &Aci318Factors::STANDARD, &around).unwrap().judge(&actions).unwrap()
}

#[test]
fn what_is_missing_is_never_a_pass() {
    let whole = || group(bonded(0.125, 6e6, 10e6), &[[0.0, 0.0]]);
    let concrete = Concrete::plain(30e6);
    assert!(verdict(&whole(), &concrete).holds());
    let lacking = |change: fn(&mut Group), mode: Mode| {
        let mut group = whole();
        change(&mut group);
        let found = verdict(&group, &concrete);
        assert!(!found.holds(), "{mode:?}");
        assert_eq!(found.not_checked.unwrap().0, mode);
    };
    lacking(|g| g.fastener.product.aci.category = None, Mode::ConcreteCone);
    lacking(|g| g.fastener.product.aci.bond_cracked_pa = None, Mode::Bond);
    lacking(|g| g.fastener.product.aci.bond_uncracked_pa = None, Mode::Bond);
    lacking(|g| g.fastener.product.bond_use.long_term_c = None, Mode::Bond);
    lacking(|g| g.fastener.product.least.thickness_m = None, Mode::LeastThickness);
    lacking(|g| g.fixture.hole_diameter_m = None, Mode::SteelShear);
    lacking(|g| g.fixture.seating = Seating::StoodOff { gap_m: 0.05, clamped: true }, Mode::SteelShearLeverArm);
    lacking(|g| g.fastener.kind = FastenerKind::Undercut, Mode::PullOut);
    lacking(|g| g.fastener.kind = FastenerKind::ThroughBolt, Mode::LeastThickness);
    let without = Concrete { specified_pa: None, ..concrete.clone() };
    assert!(!verdict(&whole(), &without).holds());
}

#[test]
fn weak_concrete_and_rods_too_long_for_their_diameter_are_not_checked() {
    let concrete = Concrete::plain(30e6);
    let rod = |embedment: f64| verdict(&group(bonded(embedment, 6e6, 10e6), &[[0.0, 0.0]]), &concrete).not_checked;
    assert_eq!(rod(0.32), None);
    assert!(rod(0.33).is_some() && rod(0.06).is_some());
    let weak = group(bonded(0.125, 6e6, 10e6), &[[0.0, 0.0]]);
    assert!(verdict(&weak, &Concrete::plain(16e6)).not_checked.is_some());
}

#[test]
fn chords_of_a_round_hole_make_no_narrow_member() {
    /// Three edges that look 20° apart beside one anchor.
    struct Chords(Vec<EdgeSeen>);
    impl Around for Chords {
        fn thickness_m(&self) -> f64 {
            0.3
        }
        fn projected_area_m2(&self, _: &[usize], half_side_m: f64) -> f64 {
            4.0 * half_side_m * half_side_m
        }
        fn edges(&self) -> &[EdgeSeen] {
            &self.0
        }
        fn side_area_m2(&self, _: usize, _: &[usize], _: f64, _: f64) -> f64 {
            1.0
        }
        fn shear_area_m2(&self, _: usize, _: &[usize], half_width_m: f64, depth_m: f64) -> f64 {
            2.0 * half_width_m * depth_m
        }
    }
    let edge = |degrees: f64| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let far = vec![f64::INFINITY];
        EdgeSeen {
            outward: [cos, sin],
            distance_m: vec![0.12],
            corner_before_m: far.clone(),
            corner_after_m: far,
            thickness_m: 0.3,
        }
    };
    let depth = |directions: [f64; 3]| {
        let group = group(headed(0.016, 157e-6, 0.1, 4e-4, 400e6, 240e6), &[[0.0, 0.0]]);
        let around = Chords(directions.map(edge).to_vec());
        let told = records(&group, &Concrete::plain(25e6), &around, &acting(&[5e3], &[[0.0; 2]]));
        symbol(only(&told, Mode::ConcreteCone), "hef")
    };
    close(depth([-20.0, 0.0, 20.0]), 0.1, 1e-12);
    // Three real sides: h' = 120/1.5 = 80 mm.
    close(depth([0.0, 90.0, 180.0]), 0.08, 1e-12);
}

#[test]
fn sustained_share_is_asked_for_and_service_values_are_not_judged() {
    let group = group(bonded(0.125, 6e6, 10e6), &[[0.0, 0.0]]);
    let (concrete, around) = (Concrete::plain(30e6), member(&group, FAR, 0.3));
    let mut prepared = Prepared::new(&group, &concrete, &Aci318Factors::STANDARD, &around).unwrap();
    let actions = GroupActions { sustained_share: None, ..acting(&[1e3], &[[0.0; 2]]) };
    assert_eq!(prepared.judge(&actions).unwrap().not_checked.unwrap().0, Mode::SustainedBond);
    let service = GroupActions { level: ActionLevel::Service, ..acting(&[1e3], &[[0.0; 2]]) };
    let found = prepared.judge(&service).unwrap();
    assert_eq!(found.not_checked.unwrap().1, NotChecked::NotDesignLevel);
    assert!(!found.holds());
}

#[test]
fn faults_name_the_field() {
    let good = group(bonded(0.125, 6e6, 10e6), &[[0.0, 0.0]]);
    let (concrete, around) = (Concrete::plain(30e6), member(&good, FAR, 0.3));
    let mut bad = good.clone();
    bad.fastener.embedment_m = 0.0;
    let fault = |group: &Group, factors: &Aci318Factors| Prepared::new(group, &concrete, factors, &around).err();
    let standard = Aci318Factors::STANDARD;
    assert!(matches!(fault(&bad, &standard), Some(AnchorageFault::NotPositive { field: "embedment_m", .. })));
    let factors = Aci318Factors { pry_out: 1.2, ..standard };
    assert!(matches!(fault(&good, &factors), Some(AnchorageFault::NotARatio { field: "phi pry_out", .. })));
    let mut prepared = Prepared::new(&good, &concrete, &standard, &around).unwrap();
    let lost = acting(&[f64::NAN], &[[0.0; 2]]);
    assert!(matches!(prepared.judge(&lost), Err(AnchorageFault::NotFinite { field: "tension_n", .. })));
}

#[test]
fn an_anchor_deeper_than_the_slab_never_holds() {
    let mut deep = headed(0.016, 157e-6, 0.25, 4e-4, 400e6, 240e6);
    deep.product.least.thickness_m = None;
    let group = group(deep, &[[0.0, 0.0]]);
    let around = member(&group, FAR, 0.2);
    let concrete = Concrete::plain(30e6);
    let mut prepared = Prepared::new(&group, &concrete, &Aci318Factors::STANDARD, &around).unwrap();
    let found = prepared.judge(&acting(&[1.0], &[[0.0; 2]])).unwrap();
    assert_eq!((found.mode, found.utilization), (Some(Mode::LeastThickness), 1.25));
}
