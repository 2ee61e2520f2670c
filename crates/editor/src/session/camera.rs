//! Camera of one sheet: which part of a drawing is looked at, and how large. It is never saved in the plan.

use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

/// A camera that looks straight at a drawing, y up, without turning it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// The point of the drawing in the middle of the sheet, m.
    pub center: DVec2,
    /// How many meters one screen point stands for.
    pub m_per_pt: f64,
    /// Screen points of one paper millimeter: how large texts and line widths are.
    pub pt_per_mm: f64,
}

/// Screen points of one paper millimeter on a sheet with room.
pub const PT_PER_MM: f64 = 3.8;

/// A rectangle of the screen in points, y down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SheetRect {
    /// Upper left corner.
    pub min: DVec2,
    /// Lower right corner.
    pub max: DVec2,
}

/// The widest and narrowest stretch that a sheet may show.
const WIDEST_M: f64 = 2000.0;
const NARROWEST_M: f64 = 0.001;
/// Share of the sheet that a fitted drawing fills.
const FILL: f64 = 0.86;

impl SheetRect {
    /// Width and height, points.
    pub fn size(&self) -> DVec2 {
        self.max - self.min
    }

    /// Its middle.
    pub fn middle(&self) -> DVec2 {
        (self.min + self.max) / 2.0
    }

    /// Whether a point of the screen lies in it.
    pub fn contains(&self, point: DVec2) -> bool {
        point.cmpge(self.min).all() && point.cmple(self.max).all()
    }
}

/// A sheet higher than this has chips above and a legend below.
const LARGE_PT: f64 = 500.0;
/// Height that the chips take at the upper rim.
const ABOVE_PT: f64 = 58.0;
/// Height that legend and scale bar take at the lower rim.
const BELOW_PT: f64 = 104.0;

impl Default for Camera {
    fn default() -> Self {
        Self { center: DVec2::new(15.0, 10.0), m_per_pt: 0.05, pt_per_mm: PT_PER_MM }
    }
}

impl Camera {
    /// The camera that shows these bounds whole, with a margin; on a large sheet free of what lies over its upper and lower
    /// rim. Bounds without extent are shown one meter wide.
    pub fn fitted(bounds: &Bounds, sheet: SheetRect) -> Self {
        let (above, below) = if sheet.size().y > LARGE_PT { (ABOVE_PT, BELOW_PT) } else { (0.0, 0.0) };
        let size = bounds.size_m().max(DVec2::splat(1.0));
        let room = ((sheet.size() - DVec2::new(0.0, above + below)) * FILL).max(DVec2::splat(1.0));
        let needed = (size / room).max_element();
        let middle = (bounds.min_m + bounds.max_m) / 2.0;
        let camera = Self { center: middle, m_per_pt: needed, pt_per_mm: PT_PER_MM }.limited(sheet);
        camera.panned(DVec2::new(0.0, (above - below) / 2.0))
    }

    /// A point of the screen in the drawing.
    pub fn drawing_from_screen(&self, sheet: SheetRect, point: DVec2) -> DVec2 {
        let from_middle = point - sheet.middle();
        self.center + DVec2::new(from_middle.x, -from_middle.y) * self.m_per_pt
    }

    /// A point of the drawing on the screen.
    pub fn screen_from_drawing(&self, sheet: SheetRect, point: DVec2) -> DVec2 {
        let from_center = (point - self.center) / self.m_per_pt;
        sheet.middle() + DVec2::new(from_center.x, -from_center.y)
    }

    /// Moved by a way on the screen, as if the sheet were pulled along.
    #[must_use]
    pub fn panned(self, by_points: DVec2) -> Self {
        Self { center: self.center - DVec2::new(by_points.x, -by_points.y) * self.m_per_pt, ..self }
    }

    /// Zoomed by a factor above or below 1, the point under the pointer staying where it is.
    #[must_use]
    pub fn zoomed(self, factor: f64, about: DVec2, sheet: SheetRect) -> Self {
        let held = self.drawing_from_screen(sheet, about);
        let zoomed = Self { m_per_pt: self.m_per_pt / factor, ..self }.limited(sheet);
        let now = zoomed.drawing_from_screen(sheet, about);
        Self { center: zoomed.center + (held - now), ..zoomed }
    }

    /// What the sheet shows.
    pub fn seen(&self, sheet: SheetRect) -> Bounds {
        let half = sheet.size() / 2.0 * self.m_per_pt;
        Bounds { min_m: self.center - half, max_m: self.center + half }
    }

    fn limited(self, sheet: SheetRect) -> Self {
        let width = sheet.size().x.max(1.0);
        Self { m_per_pt: self.m_per_pt.clamp(NARROWEST_M / width, WIDEST_M / width), ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: SheetRect = SheetRect { min: DVec2::new(0.0, 44.0), max: DVec2::new(888.0, 772.0) };

    #[test]
    fn a_point_goes_to_the_screen_and_back() {
        let camera = Camera { center: DVec2::new(3.0, -7.0), m_per_pt: 0.031, pt_per_mm: PT_PER_MM };
        let point = DVec2::new(12.25, 4.5);
        let back = camera.drawing_from_screen(SHEET, camera.screen_from_drawing(SHEET, point));
        assert!(back.distance(point) < 1e-12);
    }

    #[test]
    fn zooming_keeps_the_point_under_the_pointer() {
        let camera = Camera::default();
        let pointer = DVec2::new(100.0, 700.0);
        let before = camera.drawing_from_screen(SHEET, pointer);
        let after = camera.zoomed(1.7, pointer, SHEET).drawing_from_screen(SHEET, pointer);
        assert!(before.distance(after) < 1e-12);
    }

    #[test]
    fn a_fitted_drawing_lies_wholly_on_the_sheet_and_y_points_up() {
        let bounds = Bounds { min_m: DVec2::new(-5.0, 0.0), max_m: DVec2::new(95.0, 20.0) };
        let camera = Camera::fitted(&bounds, SHEET);
        let low = camera.screen_from_drawing(SHEET, bounds.min_m);
        let high = camera.screen_from_drawing(SHEET, bounds.max_m);
        assert!(SHEET.contains(low) && SHEET.contains(high));
        assert!(high.y < low.y);
        // A tall drawing stays clear of chips and legend.
        let tall = Bounds { min_m: DVec2::ZERO, max_m: DVec2::new(10.0, 90.0) };
        let camera = Camera::fitted(&tall, SHEET);
        let (low, high) =
            (camera.screen_from_drawing(SHEET, tall.min_m), camera.screen_from_drawing(SHEET, tall.max_m));
        assert!(high.y > SHEET.min.y + ABOVE_PT && low.y < SHEET.max.y - BELOW_PT, "{high} {low}");
    }

    #[test]
    fn nothing_wider_than_two_kilometers_or_narrower_than_a_millimeter_is_shown() {
        let mut camera = Camera::default();
        for _ in 0..200 {
            camera = camera.zoomed(2.0, SHEET.middle(), SHEET);
        }
        assert!((camera.seen(SHEET).size_m().x - 0.001).abs() < 1e-9);
        for _ in 0..200 {
            camera = camera.zoomed(0.5, SHEET.middle(), SHEET);
        }
        assert!((camera.seen(SHEET).size_m().x - 2000.0).abs() < 1e-6);
    }
}
