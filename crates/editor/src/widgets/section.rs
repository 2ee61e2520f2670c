//! A group of rows with a heading.

use egui::{RichText, Ui};

use crate::theme::{Palette, type_scale};

/// A heading, then rows.
pub fn section<R>(ui: &mut Ui, palette: &Palette, heading: &str, rows: impl FnOnce(&mut Ui) -> R) -> R {
    ui.add_space(type_scale::GROUP_GAP);
    ui.horizontal(|ui| {
        let text =
            RichText::new(heading).size(type_scale::SMALL).family(type_scale::semibold()).color(palette.ink_soft);
        ui.label(text);
        let rest = ui.available_rect_before_wrap();
        let y = rest.center().y;
        ui.painter().hline(rest.x_range(), y, (1.0, palette.hairline));
    });
    ui.add_space(2.0);
    rows(ui)
}
