//! Anchors in a slab as the plan measures it bear what they bear in the plain rectangle that mechanics knows.

use gantline_mechanics::anchorage::aci318::{Aci318Factors, Prepared as Aci};
use gantline_mechanics::anchorage::en1992_4::{En1992Factors, Prepared as En};
use gantline_mechanics::anchorage::{
    Annulus, Around, Concrete, EnProduct, Fastener, FastenerKind, Fixture, Grade, Group, GroupActions, Head,
    LeastDistances, Product, RectangularMember, Restraint, Seating, Verdict,
};
use gantline_plan::geometry::concrete_around::{PlateFrame, Setting};
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

/// Four headed bolts M16, 120 mm deep, 200 mm apart.
fn four_bolts() -> Group {
    let product = Product {
        least: LeastDistances { spacing_m: Some(0.06), edge_m: Some(0.06), thickness_m: Some(0.15) },
        en: EnProduct { splitting_edge_m: Some(0.18), splitting_spacing_m: Some(0.36), ..EnProduct::default() },
        ..Product::default()
    };
    let fastener = Fastener {
        kind: FastenerKind::CastIn(Head { diameter_m: 0.03, thickness_m: 0.01 }),
        diameter_m: 0.016,
        outside_diameter_m: 0.016,
        stress_area_m2: 157e-6,
        grade: Grade { ultimate_pa: 800e6, yield_pa: 640e6, rupture_elongation: Some(0.14) },
        embedment_m: 0.12,
        product,
    };
    let fixture = Fixture {
        thickness_m: 0.02,
        hole_diameter_m: Some(0.018),
        annulus: Annulus::Open,
        seating: Seating::OnConcrete,
        restraint: Restraint::Free,
    };
    Group { fastener, anchors_m: vec![[-0.1, -0.1], [0.1, -0.1], [0.1, 0.1], [-0.1, 0.1]], fixture }
}

fn verdicts(group: &Group, around: &dyn Around) -> [Verdict; 2] {
    let concrete = Concrete::plain(30e6);
    let actions = GroupActions {
        tension_n: vec![0.0, 9e3, 6e3, 0.0],
        shear_n: vec![[800.0, 200.0], [900.0, 0.0], [800.0, -300.0], [700.0, 100.0]],
        ..GroupActions::none(4)
    };
    let aci = Aci::new(group, &concrete, &Aci318Factors::STANDARD, around).unwrap().judge(&actions).unwrap();
    let en = En::new(group, &concrete, &En1992Factors::RECOMMENDED, around).unwrap().judge(&actions).unwrap();
    [aci, en]
}

#[test]
fn both_codes_judge_a_measured_slab_as_the_same_rectangle() {
    let group = four_bolts();
    for (right, upper) in [(0.25, 4.0), (0.18, 0.3), (0.5, 0.2)] {
        let (low, high) = ([-4.0, -5.0], [right, upper]);
        let member = RectangularMember::new(&group.anchors_m, low, high, 0.22).unwrap();
        // The plate stands turned in a roof far from the origin.
        let plate = PlateFrame { origin_m: DVec2::new(31.0, -12.0), turn_rad: 0.7 };
        let corners = Polygon::rectangle(DVec2::from(low), DVec2::from(high)).outer;
        let turned = corners.iter().map(|p| DVec2::from_angle(plate.turn_rad).rotate(*p) + plate.origin_m);
        let outline = Polygon::simple(turned.collect());
        let setting = Setting {
            outline: &outline,
            thickness_m: 0.22,
            zones: &[],
            foreign_m: &[],
            plate,
            anchors_m: &group.anchors_m,
            influence_m: 0.18,
            reach_m: 10.0,
        };
        let around = setting.measure().unwrap();
        for (here, there) in verdicts(&group, &around).into_iter().zip(verdicts(&group, &member)) {
            assert_eq!((here.mode, here.not_checked), (there.mode, there.not_checked));
            // Turned coordinates of up to 40 m are right to 1e-14 m, areas of 0.05 m² to 1e-13.
            assert!((here.utilization / there.utilization - 1.0).abs() < 1e-11);
        }
    }
}

#[test]
fn another_base_beside_takes_its_part() {
    let group = four_bolts();
    let outline = Polygon::rectangle(DVec2::splat(-5.0), DVec2::splat(5.0));
    let share = |foreign_m: &[DVec2]| {
        let setting = Setting {
            outline: &outline,
            thickness_m: 0.22,
            zones: &[],
            foreign_m,
            plate: PlateFrame { origin_m: DVec2::ZERO, turn_rad: 0.0 },
            anchors_m: &group.anchors_m,
            influence_m: 0.18,
            reach_m: 10.0,
        };
        let around = setting.measure().unwrap();
        (around.sharing_neighbors(), around.projected_area_m2(&[1, 2], 0.18))
    };
    let alone = share(&[]);
    // By hand: 0.36 by 0.56; a mirror image 0.2 m away: the line halfway cuts 0.08 by 0.56 off.
    assert!((alone.1 - 0.36 * 0.56).abs() < 1e-12);
    let mirrored = share(&[DVec2::new(0.3, -0.1), DVec2::new(0.3, 0.1)]);
    assert_eq!((alone.0, mirrored.0), (0, 2));
    assert!((mirrored.1 - (0.36 - 0.08) * 0.56).abs() < 1e-12, "{}", mirrored.1);
}
