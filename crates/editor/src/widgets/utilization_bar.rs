//! A utilization as a bar with its figure; a mark stands at one.

use egui::{CornerRadius, Rect, Sense, Ui, vec2};
use gantline_plan::quantity::share;

use crate::theme::{Palette, type_scale};

/// A row of a name, a bar and a figure. None is shown as not checked.
pub fn utilization_row(ui: &mut Ui, palette: &Palette, name: &str, utilization: Option<f64>, hint: &str) {
    const NAME: f32 = 150.0;
    const FIGURE: f32 = 64.0;
    let width = ui.available_width();
    let (rect, response) = ui.allocate_exact_size(vec2(width, 20.0), Sense::hover());
    let font = egui::FontId::proportional(type_scale::BODY);
    let painter = ui.painter();
    painter.text(rect.left_center(), egui::Align2::LEFT_CENTER, name, font.clone(), palette.ink_soft);
    let figure = utilization.map_or_else(|| "not checked".to_owned(), share);
    let fails = utilization.is_some_and(|use_| use_ > 1.0);
    let ink = match utilization {
        None => palette.unchecked,
        Some(_) if fails => palette.blocking,
        Some(_) => palette.ink,
    };
    painter.text(rect.right_center(), egui::Align2::RIGHT_CENTER, &figure, font, ink);
    if let Some(value) = utilization {
        // The bar goes to 1.25 so that a mark can stand at 1.
        const MOST: f32 = 1.25;
        let track = Rect::from_min_max(rect.min + vec2(NAME, 6.0), rect.max - vec2(FIGURE, 6.0));
        painter.rect_filled(track, CornerRadius::same(2), palette.hover);
        let part = (value as f32 / MOST).clamp(0.0, 1.0);
        let filled = Rect::from_min_size(track.min, vec2(track.width() * part, track.height()));
        painter.rect_filled(filled, CornerRadius::same(2), if fails { palette.blocking } else { palette.accent });
        let x = track.min.x + track.width() / MOST;
        painter.vline(x, (track.min.y - 2.0)..=(track.max.y + 2.0), (1.0, palette.ink_soft));
    }
    response.widget_info(|| {
        let mut info = egui::WidgetInfo::labeled(egui::Role::Label, true, name);
        info.current_text_value = Some(figure.clone());
        info
    });
    if !hint.is_empty() {
        response.on_hover_text(hint);
    }
}
