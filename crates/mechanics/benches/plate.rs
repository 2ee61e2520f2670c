//! How long one plate takes: eight anchors on a circle, bent about both axes with a small push.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_mechanics::plate::{Bearing, Plate, PlateAnchor, PreparedPlate};
use glam::DVec2;

fn plate(corners: u32) -> PreparedPlate {
    let around = |count: u32, radius: f64| {
        (0..count).map(move |i| DVec2::from_angle(std::f64::consts::TAU * f64::from(i) / f64::from(count)) * radius)
    };
    let plate = Plate {
        outline: around(corners, 0.22).collect(),
        thickness_m: 0.025,
        anchors: around(8, 0.16).map(|at| PlateAnchor::new(at, 245e-6)).collect(),
        bearing: Bearing::Concrete,
        modular_ratio: 7.0,
    };
    PreparedPlate::new(plate).expect("a plate")
}

fn plates(criterion: &mut Criterion) {
    for corners in [4, 16] {
        let plate = plate(corners);
        criterion.bench_function(&format!("one plate of {corners} corners and 8 anchors"), |bencher| {
            bencher.iter(|| black_box(&plate).solve(black_box(-12e3), black_box(-21e3), black_box(17e3)));
        });
    }
}

criterion_group!(benches, plates);
criterion_main!(benches);
