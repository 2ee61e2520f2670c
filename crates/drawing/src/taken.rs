//! What is taken on paper: boxes in a coarse grid, so that a free place among hundreds is found quickly.

use std::collections::BTreeMap;

use gantline_plan::geometry::segments::segments_meet;
use glam::DVec2;

use crate::mark::{Mark, Shape};
use crate::scale::Scale;

/// Side of a cell of the grid, paper mm: about the width of a tag.
const CELL_MM: f64 = 12.0;
/// Free paper around texts, mm.
const AROUND_TEXT_MM: f64 = 0.6;
/// Longest piece of a line that is taken as one box, paper mm.
const PIECE_MM: f64 = 8.0;
/// Most pieces of one line.
const MOST_PIECES: f64 = 400.0;
/// A box of more cells than this is kept aside and asked for each time.
const MOST_CELLS: i64 = 64;

/// An upright box on paper, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TakenBox {
    min: DVec2,
    max: DVec2,
}

impl TakenBox {
    /// A box around its center.
    pub fn around(center_mm: DVec2, size_mm: DVec2) -> Self {
        Self { min: center_mm - size_mm / 2.0, max: center_mm + size_mm / 2.0 }
    }

    /// The box around points of a drawing.
    pub fn of(points: &[DVec2], scale: Scale) -> Option<Self> {
        let first = *points.first()? / scale.m_per_mm;
        let all = points.iter().map(|&point| point / scale.m_per_mm);
        Some(all.fold(Self { min: first, max: first }, |b, p| Self { min: b.min.min(p), max: b.max.max(p) }))
    }

    /// The same box, wider to all sides.
    fn grown(self, by_mm: f64) -> Self {
        Self { min: self.min - DVec2::splat(by_mm), max: self.max + DVec2::splat(by_mm) }
    }

    /// Whether two boxes share area; touching does not count.
    pub fn meets(&self, other: &Self) -> bool {
        self.min.x < other.max.x && other.min.x < self.max.x && self.min.y < other.max.y && other.min.y < self.max.y
    }

    fn contains(&self, point: DVec2) -> bool {
        point.cmpge(self.min).all() && point.cmple(self.max).all()
    }

    fn is_crossed(&self, a: DVec2, b: DVec2) -> bool {
        let (c, d) = (DVec2::new(self.min.x, self.max.y), DVec2::new(self.max.x, self.min.y));
        let sides = [(self.min, self.max), (c, d)];
        self.contains(a) || self.contains(b) || sides.iter().any(|&(p, q)| segments_meet(a, b, p, q).is_some())
    }

    fn cells(&self) -> (i64, i64, i64, i64) {
        let cell = |mm: f64| (mm / CELL_MM).floor() as i64;
        (cell(self.min.x), cell(self.max.x), cell(self.min.y), cell(self.max.y))
    }
}

/// Boxes that are taken.
#[derive(Debug, Clone, Default)]
pub struct Taken {
    boxes: Vec<TakenBox>,
    grid: BTreeMap<(i64, i64), Vec<u32>>,
    large: Vec<u32>,
}

impl Taken {
    /// Nothing taken.
    pub fn new() -> Self {
        Self::default()
    }

    /// The boxes of all texts among marks.
    pub fn by_texts<'a>(marks: impl IntoIterator<Item = &'a Mark>, scale: Scale) -> Self {
        let mut taken = Self::new();
        for mark in marks {
            if let Shape::Text(text) = &mark.shape
                && let Some(one) = TakenBox::of(&text.corners(scale), scale)
            {
                taken.add(one.grown(AROUND_TEXT_MM));
            }
        }
        taken
    }

    /// Takes a box. One without a place is left out.
    pub fn add(&mut self, one: TakenBox) {
        if !(one.min.is_finite() && one.max.is_finite()) {
            return;
        }
        let Ok(index) = u32::try_from(self.boxes.len()) else { return };
        self.boxes.push(one);
        let (left, right, low, high) = one.cells();
        if (right - left + 1).saturating_mul(high - low + 1) > MOST_CELLS {
            self.large.push(index);
            return;
        }
        for x in left..=right {
            for y in low..=high {
                self.grid.entry((x, y)).or_default().push(index);
            }
        }
    }

    /// Takes the box around points of a drawing.
    pub fn add_points(&mut self, points: &[DVec2], scale: Scale) {
        if let Some(one) = TakenBox::of(points, scale) {
            self.add(one);
        }
    }

    /// Takes the box around points of a drawing if it is free, and says whether it was.
    pub fn take_if_free(&mut self, points: &[DVec2], scale: Scale) -> bool {
        let Some(one) = TakenBox::of(points, scale) else { return false };
        let free = self.is_free(&one);
        if free {
            self.add(one);
        }
        free
    }

    /// Takes a straight line, in pieces, so that a slanting one does not take the whole box around it.
    pub fn add_line(&mut self, from: DVec2, to: DVec2, scale: Scale) {
        let pieces = (scale.mm(from.distance(to)) / PIECE_MM).ceil().clamp(1.0, MOST_PIECES);
        for piece in 0..pieces as u32 {
            let at = |index: u32| from.lerp(to, f64::from(index) / pieces);
            self.add_points(&[at(piece), at(piece + 1)], scale);
        }
    }

    /// Whether a box meets nothing taken.
    pub fn is_free(&self, one: &TakenBox) -> bool {
        self.near(one).all(|other| !other.meets(one))
    }

    /// Whether a line on paper runs through nothing taken, but for what lies near its beginning.
    pub fn line_is_free(&self, from_mm: DVec2, to_mm: DVec2, near_mm: f64) -> bool {
        let along = (to_mm - from_mm).normalize_or_zero();
        let begin = from_mm + along * near_mm;
        let around = TakenBox { min: begin.min(to_mm), max: begin.max(to_mm) };
        self.near(&around).all(|other| !other.is_crossed(begin, to_mm))
    }

    fn near(&self, one: &TakenBox) -> impl Iterator<Item = &TakenBox> {
        let (left, right, low, high) = one.cells();
        let cells = (left..=right).flat_map(move |x| (low..=high).map(move |y| (x, y)));
        let in_cells = cells.filter_map(|cell| self.grid.get(&cell)).flatten();
        in_cells.chain(&self.large).map(|&index| &self.boxes[index as usize])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_past_a_box_is_free_and_one_through_it_is_not() {
        let mut taken = Taken::new();
        taken.add(TakenBox::around(DVec2::new(20.0, 0.0), DVec2::new(10.0, 4.0)));
        assert!(!taken.line_is_free(DVec2::ZERO, DVec2::new(40.0, 0.0), 2.0));
        assert!(taken.line_is_free(DVec2::new(0.0, 3.0), DVec2::new(40.0, 3.0), 2.0));
    }

    #[test]
    fn boxes_found_by_the_grid_are_those_found_one_by_one() {
        let place = |n: u32| DVec2::new(f64::from(n * 37 % 211), f64::from(n * 53 % 97));
        let boxes: Vec<TakenBox> = (0..60).map(|n| TakenBox::around(place(n), DVec2::new(9.0, 4.0))).collect();
        let mut taken = Taken::new();
        for one in &boxes {
            taken.add(*one);
        }
        for n in 100..400 {
            let asked = TakenBox::around(place(n) + DVec2::splat(1.5), DVec2::new(14.0, 6.0));
            assert_eq!(taken.is_free(&asked), boxes.iter().all(|one| !one.meets(&asked)));
        }
    }
}
