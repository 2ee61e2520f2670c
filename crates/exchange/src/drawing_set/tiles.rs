//! A plan too large for one sheet is cut into equal windows that overlap, with lines at which one goes over into the next.

use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

/// One window.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tile {
    /// Column from the left, 0 first.
    pub column: usize,
    /// Row from the top, 0 first.
    pub row: usize,
    /// What its sheet shows.
    pub window: Bounds,
    /// What is its own: up to the lines where others go on.
    pub own: Bounds,
}

/// Windows of a size over an area, row by row from the top; neighbors share a strip of at least `overlap_m`.
pub fn tiles(area: Bounds, size_m: DVec2, overlap_m: f64) -> Vec<Tile> {
    let columns = spans(area.min_m.x, area.max_m.x, size_m.x, overlap_m);
    let rows = spans(area.min_m.y, area.max_m.y, size_m.y, overlap_m);
    let mut all = Vec::new();
    for (row, &(y, own_y)) in rows.iter().rev().enumerate() {
        for (column, &(x, own_x)) in columns.iter().enumerate() {
            let bounds =
                |x: (f64, f64), y: (f64, f64)| Bounds { min_m: DVec2::new(x.0, y.0), max_m: DVec2::new(x.1, y.1) };
            all.push(Tile { column, row, window: bounds(x, y), own: bounds(own_x, own_y) });
        }
    }
    all
}

/// From where to where.
type Span = (f64, f64);

/// Equal spans over a length, each with the part that is its own.
fn spans(from: f64, to: f64, size: f64, overlap: f64) -> Vec<(Span, Span)> {
    let length = to - from;
    if length <= size {
        let middle = f64::midpoint(from, to);
        return vec![((middle - size / 2.0, middle + size / 2.0), (from, to))];
    }
    let overlap = overlap.min(size / 2.0);
    let count = ((length - overlap) / (size - overlap)).ceil().clamp(2.0, 100.0);
    let step = (length - size) / (count - 1.0);
    let begins = |index: f64| from + index * step;
    let line = |index: f64| f64::midpoint(begins(index) + size, begins(index + 1.0));
    let span = |index: u32| {
        let at = f64::from(index);
        let left = if index == 0 { from } else { line(at - 1.0) };
        let right = if at + 1.0 >= count { to } else { line(at) };
        ((begins(at), begins(at) + size), (left, right))
    };
    (0..count as u32).map(span).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_is_in_a_window_and_own_parts_fit_without_a_gap() {
        let area = Bounds { min_m: DVec2::new(-3.0, 5.0), max_m: DVec2::new(97.0, 45.0) };
        let all = tiles(area, DVec2::new(40.0, 50.0), 4.0);
        assert_eq!(all.len(), 3, "(100 - 4) / (40 - 4) is 2.7");
        assert_eq!(all[0].own.min_m.x, -3.0);
        assert_eq!(all[2].own.max_m.x, 97.0);
        for pair in all.windows(2) {
            assert!((pair[0].own.max_m.x - pair[1].own.min_m.x).abs() < 1e-9);
            assert!(pair[0].window.max_m.x - pair[1].window.min_m.x >= 4.0);
        }
        for tile in &all {
            assert!(tile.window.min_m.x <= tile.own.min_m.x + 1e-9 && tile.window.max_m.x >= tile.own.max_m.x - 1e-9);
            assert!((tile.window.size_m() - DVec2::new(40.0, 50.0)).length() < 1e-9);
            assert_eq!(tile.window.min_m.midpoint(tile.window.max_m).y, 25.0, "the middle of what fits");
        }
    }
}
