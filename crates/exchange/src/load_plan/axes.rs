//! The axes in which loads are counted, drawn over a base plate seen from above and aside.

use std::f64::consts::{FRAC_PI_2, PI};

use gantline_drawing::pencil::Pencil;
use gantline_drawing::{Anchor, Drawing, Fill, Hatch, Layer, Pen, Scale, TextStyle};
use glam::{DVec2, DVec3};

/// Length of an axis, mm.
const AXIS_MM: f64 = 24.0;
/// Half the side of the plate, mm.
const PLATE_MM: f64 = 9.0;
/// Radius of a moment's arrow, mm.
const TURN_MM: f64 = 4.0;

/// The picture.
pub fn axes() -> Drawing {
    // One to one: a meter of the drawing is a meter of paper.
    let scale = Scale::one_to(1.0);
    let mut pencil = Pencil::new(scale);
    let at = |point: DVec3| seen(point) / 1000.0;
    let corner = |x: f64, y: f64| at(DVec3::new(x, y, 0.0) * PLATE_MM);
    let plate = [corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)];
    pencil.area(Layer::Ground, Fill::Hatch(Hatch::Part), Some(Pen::Edge), plate);
    for (axis, force, moment, says) in [
        (DVec3::X, "Fx", "Mx", "x: away from the building"),
        (DVec3::Y, "Fy", "My", "y: along the edge"),
        (DVec3::Z, "Fz", "Mz", "z: up"),
    ] {
        let tip = at(axis * AXIS_MM);
        pencil.arrow(Layer::Load, Pen::LoadArrow, DVec2::ZERO, tip);
        turn(&mut pencil, axis);
        // Beside the z axis, past the heads of the others: no words stand on a line.
        let away = if axis == DVec3::Z { DVec2::new(2.5, -1.0) } else { tip.normalize_or_zero() * 2.5 + DVec2::X };
        let (words, place) = (tip + away / 1000.0, Anchor::START_MIDDLE);
        pencil.text(Layer::Lettering, format!("{force}, {moment}"), words, place, TextStyle::Name);
        let below = words - DVec2::Y * TextStyle::Note.line_mm() / 1000.0;
        pencil.text(Layer::Lettering, says, below, place, TextStyle::Note);
    }
    Drawing::of(scale, pencil.done())
}

/// A moment's arrow around an axis, counter-clockwise for whoever looks from its tip.
fn turn(pencil: &mut Pencil, axis: DVec3) {
    let (u, v) = match axis {
        DVec3::X => (DVec3::Y, DVec3::Z),
        DVec3::Y => (DVec3::Z, DVec3::X),
        _ => (DVec3::X, DVec3::Y),
    };
    let at = |angle: f64| seen(axis * AXIS_MM * 0.62 + (u * angle.cos() + v * angle.sin()) * TURN_MM) / 1000.0;
    let steps = 24;
    let end = PI + FRAC_PI_2;
    let points: Vec<DVec2> = (0..=steps).map(|step| at(end * f64::from(step) / f64::from(steps))).collect();
    pencil.line(Layer::Load, Pen::Edge, points);
    pencil.arrow_head(Layer::Load, Pen::Edge, at(end + 0.35), (at(end + 0.35) - at(end - 0.2)).normalize_or_zero());
}

/// A point in space on the paper: x to the lower right, y to the upper right, z up.
fn seen(point: DVec3) -> DVec2 {
    let (sin, cos) = (PI / 6.0).sin_cos();
    DVec2::new((point.x + point.y) * cos, (point.y - point.x) * sin + point.z)
}
