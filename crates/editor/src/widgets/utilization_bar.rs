//! A utilization as a bar with its figure; a mark stands at one.

use egui::{CornerRadius, Rect, Response, Sense, Shape, Stroke, StrokeKind, Ui, pos2, vec2};
use gantline_plan::quantity::utilization as words_of;

use crate::theme::{Palette, type_scale};

/// Width of the column of names.
const NAME: f32 = 150.0;
/// Width of the column of figures.
const FIGURE: f32 = 64.0;
/// Before the name of a row that opens.
const TRIANGLE: f32 = 16.0;
/// Height of a row.
const ROW: f32 = 20.0;

/// A row of a name, a bar and a figure. None is shown as not checked.
pub fn utilization_row(ui: &mut Ui, palette: &Palette, name: &str, utilization: Option<f64>, hint: &str) {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
    let figure = paint(ui, palette, rect, (NAME, name, false), utilization);
    response.widget_info(|| {
        let mut info = egui::WidgetInfo::labeled(egui::Role::Label, true, name);
        info.current_text_value = Some(figure.clone());
        info
    });
    if !hint.is_empty() {
        response.on_hover_text(hint);
    }
}

/// What a row that opens shows.
#[derive(Debug, Clone, Copy)]
pub struct Opening<'a> {
    /// Its name.
    pub name: &'a str,
    /// The share.
    pub utilization: f64,
    /// Whether it governs.
    pub governs: bool,
    /// Whether it is open.
    pub open: bool,
}

/// The same as a row that opens by a click or, with the focus, by Space or Enter: the caller looks whether it was clicked.
pub fn opening_utilization_row(ui: &mut Ui, palette: &Palette, row: Opening<'_>, hint: &str) -> Response {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::click());
    if response.hovered() || response.has_focus() {
        ui.painter().rect_filled(rect.expand2(vec2(4.0, 0.0)), 2, palette.hover);
    }
    if response.has_focus() {
        let around = rect.expand2(vec2(4.0, 0.0));
        ui.painter().rect_stroke(around, 2, Stroke::new(1.0, palette.accent), StrokeKind::Inside);
    }
    triangle(ui, palette, rect, row.open);
    let inner = Rect::from_min_max(rect.min + vec2(TRIANGLE, 0.0), rect.max);
    const WIDE_NAME: f32 = 172.0;
    let figure = paint(ui, palette, inner, (WIDE_NAME, row.name, row.governs), Some(row.utilization));
    response.widget_info(|| {
        let mut info = egui::WidgetInfo::selected(egui::Role::Button, true, row.open, row.name);
        info.current_text_value = Some(figure.clone());
        info
    });
    if hint.is_empty() { response } else { response.on_hover_text(hint) }
}

/// Points to the right while closed, down while open.
fn triangle(ui: &Ui, palette: &Palette, rect: Rect, open: bool) {
    let at = pos2(rect.min.x + 5.0, rect.center().y);
    let points = if open {
        vec![at + vec2(-4.0, -2.5), at + vec2(4.0, -2.5), at + vec2(0.0, 3.5)]
    } else {
        vec![at + vec2(-2.5, -4.0), at + vec2(3.5, 0.0), at + vec2(-2.5, 4.0)]
    };
    ui.painter().add(Shape::convex_polygon(points, palette.ink_soft, Stroke::NONE));
}

/// Name, bar and figure in a row; gives the figure's words.
fn paint(
    ui: &Ui,
    palette: &Palette,
    rect: Rect,
    (name_width, name, strong): (f32, &str, bool),
    utilization: Option<f64>,
) -> String {
    let font = egui::FontId::proportional(type_scale::BODY);
    let painter = ui.painter();
    let (name_font, name_ink) = if strong {
        (egui::FontId::new(type_scale::BODY, type_scale::semibold()), palette.ink)
    } else {
        (font.clone(), palette.ink_soft)
    };
    painter.text(rect.left_center(), egui::Align2::LEFT_CENTER, name, name_font, name_ink);
    let figure = utilization.map_or_else(|| "not checked".to_owned(), words_of);
    let fails = utilization.is_some_and(|use_| use_ > 1.0);
    let ink = match utilization {
        None => palette.unchecked,
        Some(_) if fails => palette.blocking,
        Some(_) => palette.ink,
    };
    let shown = painter.text(rect.right_center(), egui::Align2::RIGHT_CENTER, &figure, font, ink);
    if let Some(value) = utilization {
        // The bar goes to 1.25 so that a mark can stand at 1.
        const MOST: f32 = 1.25;
        let right = (rect.max.x - FIGURE).min(shown.min.x - 6.0);
        let track = Rect::from_min_max(rect.min + vec2(name_width, 6.0), pos2(right, rect.max.y - 6.0));
        painter.rect_filled(track, CornerRadius::same(2), palette.hover);
        let part = (value as f32 / MOST).clamp(0.0, 1.0);
        let filled = Rect::from_min_size(track.min, vec2(track.width() * part, track.height()));
        painter.rect_filled(filled, CornerRadius::same(2), if fails { palette.blocking } else { palette.accent });
        let x = track.min.x + track.width() / MOST;
        painter.vline(x, (track.min.y - 2.0)..=(track.max.y + 2.0), (1.0, palette.ink_soft));
    }
    figure
}
