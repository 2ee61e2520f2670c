//! Who stands near: a uniform grid over boxes, so that clear zones look at neighbors and not at everything.

use super::bounds::Bounds;
use glam::DVec2;

/// Boxes filed by the cells of a grid, numbered in the order in which they were given.
///
/// A box that has no finite place, or covers very many cells, is filed apart and offered to every question: better looked at
/// too often than never.
#[derive(Debug, Clone)]
pub struct Neighbors {
    boxes: Vec<Bounds>,
    corner: DVec2,
    cell_m: f64,
    columns: usize,
    rows: usize,
    cells: Vec<Vec<usize>>,
    everywhere: Vec<usize>,
}

/// A box on more cells than this is filed apart.
const MOST_CELLS_OF_A_BOX: usize = 64;

impl Neighbors {
    /// Files boxes. The cell is as large as the boxes are on average, and never so small that there are more than about four
    /// cells a box.
    pub fn of(boxes: Vec<Bounds>) -> Self {
        let finite: Vec<&Bounds> = boxes.iter().filter(|b| b.is_finite()).collect();
        let all = Bounds::of(finite.iter().flat_map(|b| [b.min_m, b.max_m]));
        let extent = all.map_or(DVec2::ZERO, |b| b.size_m());
        let count = finite.len().max(1) as f64;
        let average = finite.iter().map(|b| b.size_m().max_element()).sum::<f64>() / count;
        let sparse = (extent.x * extent.y / (4.0 * count)).sqrt().max(extent.max_element() / (4.0 * count));
        let cell_m = average.max(sparse).max(1e-3);
        let columns = (extent.x / cell_m) as usize + 1;
        let rows = (extent.y / cell_m) as usize + 1;
        let corner = all.map_or(DVec2::ZERO, |b| b.min_m);
        let mut grid = Self {
            boxes,
            corner,
            cell_m,
            columns,
            rows,
            cells: vec![Vec::new(); columns * rows],
            everywhere: Vec::new(),
        };
        grid.file_all();
        grid
    }

    fn file_all(&mut self) {
        for index in 0..self.boxes.len() {
            let (columns, rows) = self.cells_of(&self.boxes[index]);
            let covered = columns.clone().count() * rows.clone().count();
            if !self.boxes[index].is_finite() || covered > MOST_CELLS_OF_A_BOX {
                self.everywhere.push(index);
                continue;
            }
            for row in rows {
                for column in columns.clone() {
                    self.cells[row * self.columns + column].push(index);
                }
            }
        }
    }

    fn cells_of(&self, b: &Bounds) -> (std::ops::RangeInclusive<usize>, std::ops::RangeInclusive<usize>) {
        // Casting saturates: below the grid is cell 0, above it the last, no number is cell 0.
        let cell = |along: f64, count: usize| ((along / self.cell_m) as usize).min(count - 1);
        let (low, high) = (b.min_m - self.corner, b.max_m - self.corner);
        let columns = cell(low.x, self.columns)..=cell(high.x, self.columns);
        (columns, cell(low.y, self.rows)..=cell(high.y, self.rows))
    }

    /// Numbers of all boxes that share a point with this one, ascending.
    pub fn near(&self, asked: &Bounds) -> Vec<usize> {
        if !asked.is_finite() {
            return (0..self.boxes.len()).collect();
        }
        let mut near = self.everywhere.clone();
        let (columns, rows) = self.cells_of(asked);
        for row in rows {
            for column in columns.clone() {
                near.extend_from_slice(&self.cells[row * self.columns + column]);
            }
        }
        near.sort_unstable();
        near.dedup();
        near.retain(|&i| self.boxes[i].meets(asked));
        near
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn nobody_is_near_in_an_empty_place() {
        assert!(Neighbors::of(Vec::new()).near(&Bounds::around(DVec2::ZERO, 5.0)).is_empty());
    }

    #[test]
    fn a_box_without_a_place_is_near_everyone() {
        let lost = Bounds::around(DVec2::new(f64::NAN, 0.0), 1.0);
        let grid = Neighbors::of(vec![Bounds::around(DVec2::ZERO, 1.0), lost]);
        assert_eq!(grid.near(&Bounds::around(DVec2::new(50.0, 50.0), 1.0)), vec![1]);
        assert_eq!(grid.near(&lost), vec![0, 1]);
    }

    fn some_boxes() -> impl Strategy<Value = Vec<Bounds>> {
        let one = (-80.0..80.0_f64, -10.0..10.0_f64, 0.0..6.0_f64, 0.0..40.0_f64);
        prop::collection::vec(
            one.prop_map(|(x, y, w, h)| Bounds { min_m: DVec2::new(x, y), max_m: DVec2::new(x + w, y + h) }),
            0..60,
        )
    }

    proptest! {
        /// The witness looks at every box.
        #[test]
        fn the_grid_finds_the_same_neighbors_as_looking_at_all(boxes in some_boxes(), x in -100.0..100.0_f64, r in 0.0..50.0_f64) {
            let asked = Bounds::around(DVec2::new(x, x / 9.0), r);
            let all: Vec<usize> = (0..boxes.len()).filter(|&i| boxes[i].meets(&asked)).collect();
            prop_assert_eq!(Neighbors::of(boxes).near(&asked), all);
        }
    }
}
