//! The drawing on the main sheet, to leave as a picture: at the largest usual scale at which it fits a sheet of A3.

use gantline_drawing::sheet::{North, sheet as on_sheet};
use gantline_drawing::{Drawing, Scale};
use glam::DVec2;

use super::View;
use super::views::{Memory, draw};
use crate::session::Sheet;

/// Room on the sheet, paper mm.
const ROOM_MM: DVec2 = DVec2::new(390.0, 240.0);
/// Usual scales, the largest first.
const USUAL: [f64; 9] = [10.0, 20.0, 25.0, 50.0, 100.0, 200.0, 250.0, 500.0, 1000.0];

/// The drawing of a sheet with what a sheet says below it; none when what it draws is not there.
pub fn picture(sheet: Sheet, view: &View<'_>) -> Option<Drawing> {
    let at = |n: f64| draw(sheet, view, Scale::one_to(n), &mut Memory::default());
    let fits = |drawing: &Drawing| {
        drawing.bounds().is_some_and(|bounds| (bounds.size_m() / drawing.scale.m_per_mm).cmple(ROOM_MM).all())
    };
    let [.., last] = USUAL;
    let drawing = USUAL.into_iter().filter_map(at).find(fits).or_else(|| at(last))?;
    let north = if sheet == Sheet::Plan { North::Shown } else { North::Left };
    Some(on_sheet(drawing, view.plan, north, view.units))
}
