//! How long a base's fasteners take: 400 sets of actions judged to EN 1992-4 and ACI 318-19, geometry included and not.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_mechanics::anchorage::aci318::{self, Aci318Factors};
use gantline_mechanics::anchorage::en1992_4::{En1992Factors, Prepared};
use gantline_mechanics::anchorage::{
    Annulus, Concrete, EnProduct, Fastener, FastenerKind, Fixture, Grade, Group, GroupActions, Head, LeastDistances,
    Product, RectangularMember, Restraint, Seating,
};

/// Eight headed bolts on a circle, 120 mm and 180 mm from a corner's edges.
fn eight_bolts() -> Group {
    let product = Product {
        least: LeastDistances { spacing_m: Some(0.06), edge_m: Some(0.06), thickness_m: Some(0.2) },
        en: EnProduct { splitting_edge_m: Some(0.3), splitting_spacing_m: Some(0.6), ..EnProduct::default() },
        ..Product::default()
    };
    Group {
        fastener: Fastener {
            kind: FastenerKind::CastIn(Head { diameter_m: 0.04, thickness_m: 0.015 }),
            diameter_m: 0.02,
            outside_diameter_m: 0.02,
            stress_area_m2: 245e-6,
            grade: Grade { ultimate_pa: 800e6, yield_pa: 640e6, rupture_elongation: Some(0.12) },
            embedment_m: 0.2,
            product,
        },
        anchors_m: (0..8)
            .map(|i| {
                let (sin, cos) = (std::f64::consts::FRAC_PI_4 * f64::from(i)).sin_cos();
                [0.15 * cos, 0.15 * sin]
            })
            .collect(),
        fixture: Fixture {
            thickness_m: 0.02,
            hole_diameter_m: Some(0.022),
            annulus: Annulus::Open,
            seating: Seating::OnConcrete,
            restraint: Restraint::Free,
        },
    }
}

/// Bending from 400 directions: half of the bolts pulled, all sheared, some torsion.
fn turning_loads(group: &Group) -> Vec<GroupActions> {
    (0..400)
        .map(|k| {
            let (sin, cos) = (0.157 * f64::from(k)).sin_cos();
            GroupActions {
                tension_n: group.anchors_m.iter().map(|a| (1e5 * (a[0] * cos + a[1] * sin) - 2e3).max(0.0)).collect(),
                shear_n: group.anchors_m.iter().map(|a| [800.0 * cos - 1e3 * a[1], 800.0 * sin + 1e3 * a[0]]).collect(),
                ..GroupActions::none(8)
            }
        })
        .collect()
}

fn judge(c: &mut Criterion) {
    let (group, concrete) = (eight_bolts(), Concrete::plain(30e6));
    let loads = turning_loads(&group);
    let Ok(around) = RectangularMember::new(&group.anchors_m, [-9.0; 2], [0.27, 0.33], 0.3) else { return };
    let factors = En1992Factors::RECOMMENDED;
    let Ok(mut prepared) = Prepared::new(&group, &concrete, &factors, &around) else { return };
    let worst = |prepared: &mut Prepared<'_>| {
        loads.iter().filter_map(|set| prepared.judge(black_box(set)).ok()).map(|v| v.utilization).fold(0.0, f64::max)
    };
    c.bench_function("anchorage/en1992-4/400 sets judged again", |b| b.iter(|| worst(&mut prepared)));
    c.bench_function("anchorage/en1992-4/400 sets judged from nothing", |b| {
        b.iter(|| Prepared::new(&group, &concrete, &factors, &around).map(|mut prepared| worst(&mut prepared)));
    });
    let standard = Aci318Factors::STANDARD;
    let judged = || {
        aci318::Prepared::new(&group, &concrete, &standard, &around).map(|mut prepared| {
            let verdicts = loads.iter().filter_map(|set| prepared.judge(black_box(set)).ok());
            verdicts.map(|v| v.utilization).fold(0.0, f64::max)
        })
    };
    c.bench_function("anchorage/aci318/400 sets judged from nothing", |b| b.iter(judged));
}

criterion_group!(benches, judge);
criterion_main!(benches);
