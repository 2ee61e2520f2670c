//! The legend: a sample of every hatch that a drawing uses, with its word.

use std::collections::BTreeSet;

use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use crate::drawing::Drawing;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::{Fill, Mark, Shape};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::text::{Anchor, TextStyle, width_mm};

/// Size of a sample, paper mm.
const SAMPLE_MM: DVec2 = DVec2::new(8.0, 4.0);
/// From one row to the next, paper mm.
const ROW_MM: f64 = 6.0;
/// Between the columns, paper mm.
const COLUMN_MM: f64 = 5.0;

/// Hatches of a drawing that a legend explains, each once, in order.
pub fn entries(drawing: &Drawing) -> Vec<Hatch> {
    let used: BTreeSet<Hatch> = drawing
        .marks
        .iter()
        .filter_map(|mark| match &mark.shape {
            Shape::Area(area) => match area.fill {
                Fill::Hatch(hatch) => Some(hatch),
                Fill::Paper | Fill::Ink(_) => None,
            },
            Shape::Line(_) | Shape::Text(_) => None,
        })
        .collect();
    used.into_iter().filter(|hatch| !hatch.lines().is_empty()).collect()
}

/// Marks of a legend whose upper left corner is here, in columns of at most so many rows.
pub fn legend_marks(entries: &[Hatch], at: DVec2, rows: usize, scale: Scale) -> Vec<Mark> {
    let mut pencil = Pencil::new(scale);
    let mut left_mm = 0.0;
    for column in entries.chunks(rows.max(1)) {
        let mut widest_mm = 0.0_f64;
        let mut down_mm = 0.0;
        for &hatch in column {
            let corner = at + scale.shift(DVec2::new(left_mm, -down_mm - SAMPLE_MM.y));
            let sample = Polygon::rectangle(corner, corner + scale.shift(SAMPLE_MM));
            pencil.polygon(Layer::Sheet, Fill::Hatch(hatch), Some(Pen::Edge), sample);
            let beside = corner + scale.shift(DVec2::new(SAMPLE_MM.x + 1.5, SAMPLE_MM.y / 2.0));
            pencil.text(Layer::Sheet, hatch.word(), beside, Anchor::START_MIDDLE, TextStyle::Note);
            widest_mm = widest_mm.max(width_mm(hatch.word(), TextStyle::Note));
            down_mm += ROW_MM;
        }
        left_mm += SAMPLE_MM.x + 1.5 + widest_mm + COLUMN_MM;
    }
    pencil.done()
}
