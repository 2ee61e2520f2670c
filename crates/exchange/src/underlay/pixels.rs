//! Parts of pages: which part is wanted, how finely, and the pixels of it.

use glam::DVec2;

use super::limits::{LONGEST_SIDE, MOST_PIXELS};

/// A rectangle in a page's own coordinates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent {
    /// Its lower left corner.
    pub min: DVec2,
    /// Its upper right corner.
    pub max: DVec2,
}

impl Extent {
    /// Width and height.
    pub fn size(&self) -> DVec2 {
        self.max - self.min
    }

    /// The part that both have; none when they don't meet.
    pub fn common(&self, other: &Self) -> Option<Self> {
        let both = Self { min: self.min.max(other.min), max: self.max.min(other.max) };
        both.min.cmplt(both.max).all().then_some(both)
    }

    /// Whether the other lies in it, but for a hair.
    pub fn holds(&self, other: &Self) -> bool {
        let hair = self.size().max_element() * 1e-6;
        other.min.cmpge(self.min - hair).all() && other.max.cmple(self.max + hair).all()
    }

    /// Larger by this on each side.
    #[must_use]
    pub fn grown(&self, by: f64) -> Self {
        Self { min: self.min - by, max: self.max + by }
    }
}

/// A part of a page that is wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Which part.
    pub part: Extent,
    /// Pixels for one unit of the page.
    pub px_per_unit: f64,
}

impl Wanted {
    /// The same as coarse as it must be to stay within the memory set aside for it.
    #[must_use]
    pub fn within_limits(&self) -> Self {
        let size_px = self.part.size() * self.px_per_unit;
        let by_side = LONGEST_SIDE / size_px.max_element();
        let by_area = (MOST_PIXELS / (size_px.x * size_px.y)).sqrt();
        Self { px_per_unit: self.px_per_unit * by_side.min(by_area).min(1.0), ..*self }
    }
}

/// Pixels of a part of a page, the upper row first.
#[derive(Clone, PartialEq)]
pub struct Pixels {
    /// The part they show: what was wanted, out to whole pixels.
    pub part: Extent,
    /// Pixels for one unit of the page.
    pub px_per_unit: f64,
    /// Width.
    pub width: usize,
    /// Height.
    pub height: usize,
    /// Red, green, blue, opacity of each, the colors multiplied with the opacity.
    pub rgba: Vec<u8>,
}

impl Pixels {
    /// The same with light for dark and dark for light, the hue kept: ink on paper becomes chalk on slate. The lightness of a
    /// color is the mean of its greatest and its least part.
    #[must_use]
    pub fn with_lightness_turned(mut self) -> Self {
        for pixel in self.rgba.chunks_exact_mut(4) {
            let [red, green, blue, opacity] = pixel else { continue };
            let (least, most) = ((*red).min(*green).min(*blue), (*red).max(*green).max(*blue));
            let by = i16::from(*opacity) - i16::from(least) - i16::from(most);
            for part in [red, green, blue] {
                *part = (i16::from(*part) + by).clamp(0, i16::from(*opacity)) as u8;
            }
        }
        self
    }
}

impl std::fmt::Debug for Pixels {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} × {} pixels of {:?}", self.width, self.height, self.part)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn light_turns_dark_and_red_stays_red() {
        let part = Extent { min: DVec2::ZERO, max: DVec2::ONE };
        let rgba = vec![255, 255, 255, 255, 0, 0, 0, 255, 200, 20, 40, 255, 0, 0, 0, 0, 60, 60, 60, 100];
        let turned = Pixels { part, px_per_unit: 1.0, width: 5, height: 1, rgba }.with_lightness_turned();
        let expected = vec![0, 0, 0, 255, 255, 255, 255, 255, 235, 55, 75, 255, 0, 0, 0, 0, 40, 40, 40, 100];
        assert_eq!(turned.rgba, expected);
    }

    #[test]
    fn what_is_wanted_too_finely_is_made_as_fine_as_memory_allows() {
        let part = Extent { min: DVec2::ZERO, max: DVec2::new(842.0, 595.0) };
        let usual = Wanted { part, px_per_unit: 2.0 };
        assert_eq!(usual.within_limits(), usual);
        let fine = Wanted { part, px_per_unit: 1000.0 }.within_limits();
        let size_px = part.size() * fine.px_per_unit;
        assert!((size_px.x * size_px.y - MOST_PIXELS).abs() < 1.0);
        let strip = Extent { min: DVec2::ZERO, max: DVec2::new(10_000.0, 1.0) };
        let fine = Wanted { part: strip, px_per_unit: 10.0 }.within_limits();
        assert!((fine.px_per_unit - LONGEST_SIDE / 10_000.0).abs() < 1e-12);
    }
}
