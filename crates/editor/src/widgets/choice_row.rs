//! A row of a name and a list to choose from; entries that are refused say why.

use egui::{Align, Button, ComboBox, Layout, RichText, Ui, vec2};

use super::icon::inline;
use super::{Icon, field};
use crate::theme::{Palette, type_scale};

/// An entry of a list.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// What it says.
    pub text: String,
    /// Whether it is the one chosen now.
    pub chosen: bool,
    /// Whether and why not.
    pub stands: Stands,
}

/// Whether an entry can be chosen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stands {
    /// It can.
    Open,
    /// It can, but this would block.
    Blocks(String),
    /// It can't.
    Refused(String),
}

impl Entry {
    /// An entry that can be chosen.
    pub fn open(text: impl Into<String>, chosen: bool) -> Self {
        Self { text: text.into(), chosen, stands: Stands::Open }
    }
}

/// Shows the row; `entries` are asked for only while the list is open. Gives the index of what was chosen.
pub fn choice_row(
    ui: &mut Ui,
    palette: &Palette,
    name: &str,
    now: &str,
    entries: impl FnOnce(&mut Ui) -> Vec<Entry>,
) -> Option<usize> {
    let size = vec2(ui.available_width(), type_scale::ROW);
    let row = ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_width(size.x);
        field::label(ui, palette, name);
        let width = ui.available_width();
        let combo = ComboBox::from_id_salt(("choice", name)).selected_text(now).width(width).truncate().height(420.0);
        let shown = combo.show_ui(ui, |ui| {
            ui.set_min_width(width.max(260.0));
            let entries = entries(ui);
            list(ui, palette, &entries)
        });
        shown.response.widget_info(|| {
            let mut info = egui::WidgetInfo::labeled(egui::Role::ComboBox, true, name);
            info.current_text_value = Some(now.to_owned());
            info
        });
        shown.inner.flatten()
    });
    row.inner
}

fn list(ui: &mut Ui, palette: &Palette, entries: &[Entry]) -> Option<usize> {
    let mut chosen = None;
    for (index, entry) in entries.iter().enumerate() {
        let refused = matches!(entry.stands, Stands::Refused(_));
        let ink = if refused { palette.ink_faint } else { palette.ink };
        let response = ui
            .horizontal(|ui| {
                match entry.stands {
                    Stands::Open => ui.add_space(22.0),
                    Stands::Blocks(_) => drop(inline(ui, Icon::Blocking, palette.blocking)),
                    Stands::Refused(_) => drop(inline(ui, Icon::Close, palette.ink_faint)),
                }
                let text = RichText::new(&entry.text).color(ink);
                let button = Button::selectable(entry.chosen, (text, egui::Atom::grow()))
                    .min_size(vec2(ui.available_width(), 24.0));
                ui.add_enabled(!refused, button)
            })
            .inner;
        if let Stands::Blocks(why) | Stands::Refused(why) = &entry.stands {
            ui.horizontal_wrapped(|ui| {
                ui.add_space(22.0);
                ui.label(RichText::new(why).size(type_scale::SMALL).color(palette.ink_soft));
            });
        }
        if response.clicked() {
            chosen = Some(index);
            ui.close();
        }
    }
    chosen
}
