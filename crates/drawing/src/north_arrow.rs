//! The north arrow.

use glam::DVec2;

use crate::layer::Layer;
use crate::mark::{Fill, Mark};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::text::{Anchor, TextStyle};

/// Radius of its circle, paper mm.
pub const RADIUS_MM: f64 = 5.0;

/// Marks of a north arrow around a center; `north_rad` counter-clockwise from the drawing's y axis.
pub fn north_marks(center: DVec2, north_rad: f64, scale: Scale) -> Vec<Mark> {
    let mut pencil = Pencil::new(scale);
    let radius = scale.m(RADIUS_MM);
    let up = DVec2::from_angle(north_rad).rotate(DVec2::Y);
    let side = up.perp() * radius * 0.45;
    let (point, back) = (center + up * radius * 1.25, center - up * radius * 0.8);
    pencil.disc(Layer::Sheet, Fill::Paper, Some(Pen::Edge), center, radius);
    pencil.area(Layer::Sheet, Fill::Ink(Pen::Outline), None, [point, back - side, center - up * radius * 0.4]);
    pencil.area(Layer::Sheet, Fill::Paper, Some(Pen::Edge), [point, back + side, center - up * radius * 0.4]);
    pencil.text(Layer::Sheet, "N", point + up * scale.m(2.4), Anchor::CENTER, TextStyle::Name);
    pencil.done()
}
