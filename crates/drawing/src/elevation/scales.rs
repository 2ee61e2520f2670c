//! Scales of an elevation: levels at the left, depth below the top at the right, dimensions below.

use gantline_plan::assess::FacadeAssessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity;
use glam::DVec2;

use super::options::ElevationOptions;
use crate::dimension::{DimensionLine, Measured, ROW_MM, chain};
use crate::layer::Layer;
use crate::level_mark::level_mark;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::{Anchor, Text, TextStyle, width_mm};

/// From the face to levels and depths, paper mm.
const AWAY_MM: f64 = 5.0;
/// Least distance between two marks of the depth scale, paper mm.
const LEAST_STEP_MM: f64 = 7.0;
/// Least distance between two levels written under each other, paper mm.
const LEAST_LEVEL_MM: f64 = 4.0;

/// Levels of the foot, the slab and the top of the coping, from below; one that would stand in another is left out.
pub(super) fn draw_levels(pencil: &mut Pencil, plan: &Plan, found: &FacadeAssessment, options: &ElevationOptions) {
    let facade = &found.facade;
    let slab = plan.roofs.get(&facade.roof).map(|roof| roof.level_m);
    let mut levels = vec![facade.top_level_m, facade.foot_level_m];
    levels.extend(slab);
    let scale = pencil.scale;
    let mut written: Vec<f64> = Vec::new();
    for level in levels {
        if written.iter().any(|other| (other - level).abs() < scale.m(LEAST_LEVEL_MM)) {
            continue;
        }
        written.push(level);
        let words = quantity::level(level, options.units);
        let left = -scale.m(AWAY_MM + width_mm(&words, TextStyle::Note) + 4.5);
        pencil.line(Layer::Lettering, Pen::Dimension, [DVec2::new(left, level), DVec2::new(-scale.m(1.0), level)]);
        level_mark(pencil, Layer::Lettering, DVec2::new(left, level), &words);
    }
}

/// Depths below the top, at the right.
pub(super) fn draw_depths(pencil: &mut Pencil, found: &FacadeAssessment, options: &ElevationOptions) {
    let facade = &found.facade;
    let scale = pencil.scale;
    let x = facade.line.length_m + scale.m(AWAY_MM);
    let point = |depth: f64, right_mm: f64| DVec2::new(x + scale.m(right_mm), facade.top_level_m - depth);
    let height = facade.height_m();
    if height <= 0.0 {
        return;
    }
    pencil.line(Layer::Dimension, Pen::Dimension, [point(0.0, 0.0), point(height, 0.0)]);
    let step = round_step(scale.m(LEAST_STEP_MM));
    let count = (height / step).floor().min(500.0) as u32;
    for index in 0..=count {
        let depth = f64::from(index) * step;
        pencil.line(Layer::Dimension, Pen::Dimension, [point(depth, -0.8), point(depth, 0.8)]);
        let words = if index == 0 { "depth 0".to_owned() } else { quantity::length(depth, options.units) };
        let text = Text::new(words, point(depth, 1.6), Anchor::START_MIDDLE, TextStyle::Note, Pen::Dimension);
        pencil.lettering(Layer::Dimension, text);
    }
}

/// The next of 1, 2, 5, 10, 20, 50 … m that is not smaller.
fn round_step(least_m: f64) -> f64 {
    let power = 10.0_f64.powf(least_m.log10().floor());
    [1.0, 2.0, 5.0].into_iter().map(|factor| factor * power).find(|step| *step >= least_m).unwrap_or(10.0 * power)
}

/// Distances along the facade between its ends and the masts, and its whole length.
pub(super) fn draw_distances(
    pencil: &mut Pencil,
    found: &FacadeAssessment,
    stations: &[f64],
    options: &ElevationOptions,
) {
    let facade = &found.facade;
    let (length, low) = (facade.line.length_m, facade.foot_level_m);
    let mut places: Vec<f64> = stations.iter().copied().filter(|at| (0.0..=length).contains(at)).collect();
    places.extend([0.0, length]);
    places.sort_by(f64::total_cmp);
    places.dedup_by(|a, b| (*a - *b).abs() < 0.0005);
    let point = |x: f64| DVec2::new(x, low);
    let line = |row: f64| DimensionLine { through: point(0.0) - DVec2::Y * pencil.scale.m(row), along: DVec2::X };
    let words = |length: f64| quantity::length(length, options.units);
    let between: Vec<Measured> =
        places.windows(2).map(|pair| Measured::new(point(pair[0]), point(pair[1]), words(pair[1] - pair[0]))).collect();
    let mut row = ROW_MM;
    let first = line(row);
    let whole = Measured::new(point(0.0), point(length), words(length));
    if between.len() > 1 {
        row += ROW_MM + crate::dimension::depth_mm(pencil.scale, first, &between);
        let second = line(row);
        chain(pencil, Layer::Dimension, first, &between);
        chain(pencil, Layer::Dimension, second, &[whole]);
    } else {
        chain(pencil, Layer::Dimension, first, &[whole]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_of_the_depth_scale_are_round() {
        let steps = [0.3, 0.5, 0.7, 1.0, 1.4, 3.0, 6.0, 30.0].map(round_step);
        assert_eq!(steps, [0.5, 0.5, 1.0, 1.0, 2.0, 5.0, 10.0, 50.0]);
    }
}
