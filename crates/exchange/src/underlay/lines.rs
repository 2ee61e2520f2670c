//! Lines of a drawing: drawn under the plan, and found near a place so that a sketch can snap to them.

use std::collections::BTreeMap;

use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::segments::distance_to_segment;
use glam::DVec2;

use super::fault::UnderlayFault;
use super::limits::MOST_SEGMENTS;
use super::pixels::Extent;
use crate::outline::LineWork;

/// Lines of a drawing, curves as chords, in the drawing's own unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Lines {
    /// The box around them.
    pub extent: Extent,
    /// Meters in one unit, where the file says so.
    pub stated_m_per_unit: Option<f64>,
    segments: Vec<Segment>,
    cells: BTreeMap<(i32, i32), Vec<u32>>,
    cell: f64,
}

/// A straight piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment {
    /// Its start.
    pub from: DVec2,
    /// Its end.
    pub to: DVec2,
    /// Whether its start and its end are points of the drawing; ends of chords inside of a curve are not.
    pub is_point: (bool, bool),
}

/// Cells along the longer side of the drawing.
const CELLS: f64 = 400.0;

/// Chords leave curves by at most this share of the drawing's size.
const CHORD_SHARE: f64 = 2.0e-5;

impl Lines {
    /// The lines of the layers that the file shows; whoever made it has put the others away.
    pub fn of(work: &LineWork) -> Result<Self, UnderlayFault> {
        let is_shown = |layer: usize| work.layers.get(layer).is_none_or(|layer| layer.shown);
        let traces = || work.traces.iter().filter(|trace| is_shown(trace.layer));
        let corners = traces().flat_map(|trace| {
            std::iter::once(trace.start).chain(trace.pieces.iter().map(|piece| piece.to)).filter(|at| at.is_finite())
        });
        let corners = Bounds::of(corners).ok_or(UnderlayFault::NoLine)?;
        let tolerance = (corners.size_m().max_element() * CHORD_SHARE).max(1e-9);
        let mut segments: Vec<Segment> = Vec::new();
        for trace in traces() {
            let room = MOST_SEGMENTS.saturating_sub(segments.len()) + 1;
            let points = trace.chords(tolerance, room).ok_or(UnderlayFault::TooManyLines { most: MOST_SEGMENTS })?;
            let mut ends = std::iter::once(trace.start).chain(trace.pieces.iter().map(|piece| piece.to)).peekable();
            let mut is_point = Vec::with_capacity(points.len());
            for &at in &points {
                let is_end = ends.next_if(|&end| end == at).is_some();
                is_point.push(is_end);
            }
            for (pair, is) in points.windows(2).zip(is_point.windows(2)) {
                if pair[0] != pair[1] && pair[0].is_finite() && pair[1].is_finite() {
                    segments.push(Segment { from: pair[0], to: pair[1], is_point: (is[0], is[1]) });
                }
            }
            if segments.len() > MOST_SEGMENTS {
                return Err(UnderlayFault::TooManyLines { most: MOST_SEGMENTS });
            }
        }
        let bounds = Bounds::of(segments.iter().flat_map(|one| [one.from, one.to])).ok_or(UnderlayFault::NoLine)?;
        let cell = (bounds.size_m().max_element() / CELLS).max(1e-9);
        let extent = Extent { min: bounds.min_m, max: bounds.max_m };
        let stated_m_per_unit = work.stated_unit().map(crate::outline::LengthUnit::in_m);
        let mut lines = Self { extent, stated_m_per_unit, segments, cells: BTreeMap::new(), cell };
        lines.sort_into_cells();
        Ok(lines)
    }

    fn cell_of(&self, at: DVec2) -> (i32, i32) {
        let cell = ((at - self.extent.min) / self.cell).floor();
        (cell.x as i32, cell.y as i32)
    }

    /// A segment is sorted into the cells that its points meet, walked in steps of half a cell.
    fn sort_into_cells(&mut self) {
        let mut cells: BTreeMap<(i32, i32), Vec<u32>> = BTreeMap::new();
        for (index, segment) in self.segments.iter().enumerate() {
            let steps = (segment.from.distance(segment.to) / self.cell * 2.0).ceil().max(1.0) as usize;
            for step in 0..=steps {
                let at = segment.from.lerp(segment.to, step as f64 / steps as f64);
                let all = cells.entry(self.cell_of(at)).or_default();
                if all.last() != Some(&(index as u32)) {
                    all.push(index as u32);
                }
            }
        }
        self.cells = cells;
    }

    /// Straight pieces.
    pub fn segments(&self) -> &[Segment] {
        &self.segments
    }

    /// Pieces that come within a radius of a place, at most `most` of them, the nearest first.
    pub fn near(&self, at: DVec2, radius: f64, most: usize) -> Vec<Segment> {
        /// A search over more than this many cells is no longer one near a place.
        const WIDEST_CELLS: f64 = 40.0;
        let radius = radius.min(self.cell * WIDEST_CELLS);
        // Walking in steps of half a cell can miss a cell whose corner is cut: one more all round finds it.
        let (x0, y0) = self.cell_of(at - radius - self.cell);
        let (x1, y1) = self.cell_of(at + radius + self.cell);
        let cells = (x0..=x1).flat_map(|x| self.cells.range((x, y0)..=(x, y1)));
        let mut found: Vec<u32> = cells.flat_map(|(_, indices)| indices.iter().copied()).collect();
        found.sort_unstable();
        found.dedup();
        let distance = |index: u32| {
            let segment = self.segments.get(index as usize)?;
            let distance = distance_to_segment(at, segment.from, segment.to);
            (distance <= radius).then_some((distance, *segment))
        };
        let mut near: Vec<(f64, Segment)> = found.into_iter().filter_map(distance).collect();
        near.sort_by(|one, other| one.0.total_cmp(&other.0));
        near.into_iter().take(most).map(|(_, segment)| segment).collect()
    }
}
