//! Rows of a name and a figure. Figures stand at the right with fixed decimals and equally wide digits.

use egui::{Align, Color32, Label, Layout, Response, RichText, Ui, vec2};

use crate::theme::{Palette, type_scale};

/// A name and a figure; hovering shows the hint.
pub fn figure_row(ui: &mut Ui, palette: &Palette, name: &str, figure: &str, hint: &str) -> Response {
    row(ui, palette, name, figure, palette.ink, hint)
}

/// A name and a word in its own color.
pub fn word_row(ui: &mut Ui, palette: &Palette, name: &str, word: &str, ink: Color32) -> Response {
    row(ui, palette, name, word, ink, "")
}

fn row(ui: &mut Ui, palette: &Palette, name: &str, figure: &str, ink: Color32, hint: &str) -> Response {
    let size = vec2(ui.available_width(), 20.0);
    let inner = ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_width(size.x);
        let label = ui.label(RichText::new(name).color(palette.ink_soft));
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let text = RichText::new(figure).size(type_scale::BODY).color(ink);
            let shown = ui.add(Label::new(text).truncate());
            shown.widget_info(|| {
                let mut info = egui::WidgetInfo::labeled(egui::Role::Label, true, name);
                info.current_text_value = Some(figure.to_owned());
                info
            });
            shown.labelled_by(label.id)
        })
        .inner
    });
    if hint.is_empty() { inner.inner } else { inner.inner.on_hover_text(hint) }
}
