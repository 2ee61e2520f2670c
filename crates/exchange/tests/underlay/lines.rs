//! Drawings as lines: where they lie, and which of them are near a place.

use std::fmt::Write as _;
use std::time::Instant;

use gantline_exchange::underlay::{Extent, Wanted, attach};
use glam::DVec2;

/// A DXF of lines and a quarter circle, in millimeters.
fn dxf(lines: &[[f64; 4]]) -> Vec<u8> {
    let mut text = "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n".to_owned();
    for [x0, y0, x1, y1] in lines {
        write!(text, "0\nLINE\n8\nWALLS\n10\n{x0}\n20\n{y0}\n11\n{x1}\n21\n{y1}\n").unwrap();
    }
    text.push_str("0\nARC\n8\nWALLS\n10\n0.0\n20\n0.0\n40\n5000.0\n50\n0.0\n51\n90.0\n0\nENDSEC\n0\nEOF\n");
    text.into_bytes()
}

#[test]
fn lines_of_a_drawing_are_found_near_a_place() {
    let (_, source) = attach(dxf(&[[0.0, 0.0, 20_000.0, 0.0], [20_000.0, 0.0, 20_000.0, 9000.0]])).unwrap();
    let lines = source.lines().unwrap();
    assert_eq!(lines.stated_m_per_unit, Some(0.001));
    let whole = Extent { min: DVec2::ZERO, max: DVec2::new(20_000.0, 9000.0) };
    assert!(lines.extent.holds(&whole) && whole.holds(&lines.extent));
    let corner = lines.near(DVec2::new(19_950.0, 40.0), 100.0, 20);
    assert_eq!(corner.len(), 2);
    assert!(corner.iter().all(|segment| segment.is_point == (true, true)));
    assert_eq!(lines.near(DVec2::new(10_000.0, 60.0), 100.0, 20).len(), 1);
    assert!(lines.near(DVec2::new(10_000.0, 600.0), 100.0, 20).is_empty());
    let pixels = source.pixels(1, &Wanted { part: whole, px_per_unit: 0.02 }).unwrap().unwrap();
    let opacity = |x: f64, y: f64| {
        let px = (DVec2::new(x - pixels.part.min.x, pixels.part.max.y - y) * pixels.px_per_unit).floor();
        pixels.rgba[(px.y as usize * pixels.width + px.x as usize) * 4 + 3]
    };
    assert!(opacity(10_000.0, 20.0) > 100, "the lower line");
    assert!(opacity(19_980.0, 5000.0) > 100, "the line to the right");
    assert_eq!(opacity(10_000.0, 5000.0), 0, "nothing between");
}

/// The circle's own law: chords lie on it, and only its ends are points of the drawing.
#[test]
fn a_curve_has_points_at_its_ends_only() {
    let (_, source) = attach(dxf(&[])).unwrap();
    let lines = source.lines().unwrap();
    assert!(lines.segments().iter().all(|one| (one.from.length() - 5000.0).abs() < 1e-6));
    let ends = lines.segments().iter().map(|one| usize::from(one.is_point.0) + usize::from(one.is_point.1));
    assert_eq!(ends.sum::<usize>(), 2);
}

/// Brute force is the witness: every line within the radius is found, and no other.
#[test]
fn no_line_within_the_radius_is_missed() {
    let number =
        |seed: u64| (seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407) >> 33) as f64;
    let coordinate = |seed: u64| number(seed * 7919 + 13) / f64::from(1 << 31) * 40_000.0;
    let given: Vec<[f64; 4]> = (0..400_u64).map(|one| [0, 1, 2, 3].map(|axis| coordinate(one * 4 + axis))).collect();
    let (_, source) = attach(dxf(&given)).unwrap();
    let lines = source.lines().unwrap();
    for place in 0..200_u64 {
        let at = DVec2::new(coordinate(9000 + place), coordinate(20_000 + place));
        for radius in [30.0, 400.0] {
            let distance =
                |from: DVec2, to: DVec2| gantline_plan::geometry::segments::distance_to_segment(at, from, to);
            let expected = lines.segments().iter().filter(|one| distance(one.from, one.to) <= radius).count();
            assert_eq!(lines.near(at, radius, usize::MAX).len(), expected, "at {at} within {radius}");
        }
    }
}

#[test]
fn what_is_near_is_found_at_once_among_many_lines() {
    let given: Vec<[f64; 4]> = (0..100_000)
        .map(|one| (f64::from(one % 400) * 50.0, f64::from(one / 400) * 80.0))
        .map(|(x, y)| [x, y, x + 40.0, y + 30.0])
        .collect();
    let (_, source) = attach(dxf(&given)).unwrap();
    let lines = source.lines().unwrap();
    let started = Instant::now();
    let found: usize =
        (0..1000_u32).map(|step| lines.near(DVec2::new(f64::from(step) * 19.0, 5000.0), 100.0, 40).len()).sum();
    assert!(found > 10_000);
    assert!(started.elapsed().as_secs_f64() < 1.0, "a thousand searches took {:?}", started.elapsed());
}
