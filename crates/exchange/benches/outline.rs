//! How long a large drawing takes: 200,000 lines and light polylines on thirteen layers, read and put together.

use std::fmt::Write as _;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_exchange::outline::{Asked, read};

/// Lines that make closed squares, light polylines with a bulge, and arcs, far from the origin.
fn large_drawing() -> String {
    let mut text = String::from(
        "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n",
    );
    for index in 0..200_000_u32 {
        let (square, side, layer) = (index / 4, index % 4, index / 16_000);
        let (x, y) = (412_000_000 + square % 400 * 700, 565_000_000 + square / 400 * 700);
        let ends = [(0, 0), (500, 0), (500, 500), (0, 500), (0, 0)];
        let ((ax, ay), (bx, by)) = (ends[side as usize], ends[side as usize + 1]);
        let _ = match index % 50 {
            7 => write!(
                text,
                "0\nLWPOLYLINE\n5\n{index:X}\n8\nLAYER-{layer}\n90\n2\n70\n0\n10\n{}.25\n20\n{}.5\n42\n0.1\n10\n{}.25\n20\n{}.5\n",
                x + ax,
                y + ay,
                x + bx,
                y + by
            ),
            _ => write!(
                text,
                "0\nLINE\n5\n{index:X}\n100\nAcDbEntity\n8\nLAYER-{layer}\n100\nAcDbLine\n10\n{}.25\n20\n{}.5\n30\n0.0\n11\n{}.25\n21\n{}.5\n31\n0.0\n",
                x + ax,
                y + ay,
                x + bx,
                y + by
            ),
        };
    }
    text.push_str("0\nENDSEC\n0\nEOF\n");
    text
}

fn outline(bench: &mut Criterion) {
    let text = large_drawing();
    bench.bench_function("a drawing of 200,000 entities, read", |bench| {
        bench.iter(|| read(black_box(text.as_bytes())).map(|work| work.traces.len()));
    });
    let Ok(work) = read(text.as_bytes()) else { return };
    let asked = Asked { layers: [0].into(), unit: None, tolerance_m: 0.005, chord_m: 0.005, place: None };
    bench.bench_function("one of its layers of 16,000 lines put together", |bench| {
        bench.iter(|| work.outlines(black_box(&asked)).map(|found| found.loops.len()));
    });
}

criterion_group!(benches, outline);
criterion_main!(benches);
