//! Makes an image smaller row by row: each pixel of the outcome is the mean of a square of pixels, so that thin lines of a
//! scan grow pale and don't vanish.

use glam::DVec2;

use super::limits::{LONGEST_SIDE, MOST_PIXELS};
use super::pixels::{Extent, Pixels, Wanted};

/// The side of the square that becomes one pixel: rather too many pixels than too few, as long as memory allows.
fn square(wanted: &Wanted) -> usize {
    let size = wanted.part.size();
    let fits = |square: f64| {
        let size_px = (size / square).ceil();
        size_px.max_element() <= LONGEST_SIDE && size_px.x * size_px.y <= MOST_PIXELS * 1.02
    };
    let square = (1.0 / wanted.px_per_unit + 1e-9).floor().max(1.0);
    if fits(square) { square as usize } else { square as usize + 1 }
}

/// An image being made smaller.
pub struct Shrink {
    /// Height of the whole image, pixels.
    image_height: usize,
    /// Side of the square, pixels.
    square: usize,
    from: (usize, usize),
    to: (usize, usize),
    columns: usize,
    rows: usize,
    sums: Vec<[u32; 4]>,
    summed: usize,
    rgba: Vec<u8>,
}

impl Shrink {
    /// Begins the part of an image that is wanted; none when it lies outside.
    pub fn begin(width: usize, height: usize, wanted: &Wanted) -> Option<Self> {
        let whole = Extent { min: DVec2::ZERO, max: DVec2::new(width as f64, height as f64) };
        let part = wanted.part.common(&whole)?;
        let wanted = Wanted { part, px_per_unit: wanted.px_per_unit.min(1.0) }.within_limits();
        let square = square(&wanted);
        // Out to whole squares, so that the same square gives the same pixel whatever part is asked for.
        let whole_squares = |least: f64, most: f64, end: usize| {
            let from = (least.floor().max(0.0) as usize) / square * square;
            (from, (most.ceil() as usize).div_ceil(square).saturating_mul(square).min(end))
        };
        let (x0, x1) = whole_squares(part.min.x, part.max.x, width);
        let (y0, y1) = whole_squares(height as f64 - part.max.y, height as f64 - part.min.y, height);
        let (columns, rows) = ((x1 - x0).div_ceil(square), (y1 - y0).div_ceil(square));
        Some(Self {
            image_height: height,
            square,
            from: (x0, y0),
            to: (x1, y1),
            columns,
            rows,
            sums: vec![[0; 4]; columns],
            summed: 0,
            rgba: Vec::with_capacity(columns * rows * 4),
        })
    }

    /// Whether a row, counted from the top, is still to come.
    pub fn awaits(&self, row: usize) -> bool {
        row < self.to.1
    }

    /// Takes a row in, counted from the top; `pixel` gives color and opacity at a column, the colors not yet multiplied.
    pub fn take(&mut self, row: usize, pixel: impl Fn(usize) -> [u8; 4]) {
        if row < self.from.1 || row >= self.to.1 {
            return;
        }
        for column in self.from.0..self.to.0 {
            let [red, green, blue, opacity] = pixel(column);
            let times = |color: u8| (u32::from(color) * u32::from(opacity) + 127) / 255;
            if let Some(sum) = self.sums.get_mut((column - self.from.0) / self.square) {
                for (of, more) in sum.iter_mut().zip([times(red), times(green), times(blue), u32::from(opacity)]) {
                    *of += more;
                }
            }
        }
        self.summed += 1;
        if self.summed == self.square || row + 1 == self.to.1 {
            self.end_row();
        }
    }

    fn end_row(&mut self) {
        let width = self.to.0 - self.from.0;
        for (column, sum) in self.sums.iter_mut().enumerate() {
            let across = self.square.min(width - column * self.square);
            let count = (across * self.summed).max(1) as u32;
            self.rgba.extend(sum.iter().map(|&sum| ((sum + count / 2) / count) as u8));
            *sum = [0; 4];
        }
        self.summed = 0;
    }

    /// The outcome; none when rows are missing.
    pub fn ended(self) -> Option<Pixels> {
        if self.rgba.len() != self.columns * self.rows * 4 {
            return None;
        }
        let square = self.square as f64;
        let (x0, top) = (self.from.0 as f64, self.image_height as f64 - self.from.1 as f64);
        // The last square may reach over the image's rim: it is a whole pixel all the same.
        let max = DVec2::new(x0 + self.columns as f64 * square, top);
        let min = DVec2::new(x0, top - self.rows as f64 * square);
        let part = Extent { min, max };
        Some(Pixels { part, px_per_unit: 1.0 / square, width: self.columns, height: self.rows, rgba: self.rgba })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shrunk(width: usize, height: usize, wanted: &Wanted) -> Pixels {
        let mut shrink = Shrink::begin(width, height, wanted).unwrap();
        for row in 0..height {
            shrink.take(row, |column| [(10 * column) as u8, (10 * row) as u8, 0, 255]);
        }
        shrink.ended().unwrap()
    }

    #[test]
    fn a_pixel_is_the_mean_of_its_square() {
        let part = Extent { min: DVec2::ZERO, max: DVec2::new(5.0, 4.0) };
        let pixels = shrunk(5, 4, &Wanted { part, px_per_unit: 0.5 });
        assert_eq!((pixels.width, pixels.height), (3, 2));
        // Columns 0 and 1, rows 0 and 1: means 5 and 5. The last column has one pixel across: 40.
        assert_eq!(pixels.rgba[..4], [5, 5, 0, 255]);
        assert_eq!(pixels.rgba[8..12], [40, 5, 0, 255]);
        assert_eq!(pixels.part, Extent { min: DVec2::ZERO, max: DVec2::new(6.0, 4.0) });
    }

    #[test]
    fn a_part_is_counted_from_the_lower_left() {
        let part = Extent { min: DVec2::new(1.0, 1.0), max: DVec2::new(3.0, 2.0) };
        let pixels = shrunk(5, 4, &Wanted { part, px_per_unit: 1.0 });
        // One row, the third from the top; columns 1 and 2.
        assert_eq!(pixels.rgba, [10, 20, 0, 255, 20, 20, 0, 255]);
        assert_eq!(pixels.part, part);
        let beside = Extent { min: DVec2::splat(9.0), max: DVec2::splat(10.0) };
        assert!(Shrink::begin(5, 4, &Wanted { part: beside, px_per_unit: 1.0 }).is_none());
    }

    #[test]
    fn what_can_be_seen_through_counts_by_its_opacity() {
        let part = Extent { min: DVec2::ZERO, max: DVec2::new(2.0, 1.0) };
        let mut shrink = Shrink::begin(2, 1, &Wanted { part, px_per_unit: 0.5 }).unwrap();
        shrink.take(0, |column| if column == 0 { [200, 0, 0, 255] } else { [255, 255, 255, 0] });
        assert_eq!(shrink.ended().unwrap().rgba, [100, 0, 0, 128]);
    }
}
