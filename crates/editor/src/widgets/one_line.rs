//! Text on one line that ends in "…" where it would be too long.

use egui::text::{LayoutJob, TextWrapping};
use egui::{Color32, FontId, Pos2, Ui, vec2};

use crate::theme::type_scale;

/// Paints it from a point at its middle height.
pub fn one_line(ui: &Ui, left_center: Pos2, width: f32, text: &str, ink: Color32) {
    let font = FontId::proportional(type_scale::BODY);
    let mut job = LayoutJob::simple_singleline(text.to_owned(), font, ink);
    job.wrap = TextWrapping::truncate_at_width(width.max(0.0));
    let galley = ui.painter().layout_job(job);
    ui.painter().galley(left_center - vec2(0.0, galley.size().y / 2.0), galley, ink);
}
