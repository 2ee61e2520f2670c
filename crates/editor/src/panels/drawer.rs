//! The drawer below the sheet: one of its views at a time.

use egui::{Align, Frame, Layout, Margin, RichText, Ui};

use crate::intent::Intent;
use crate::session::Drawer;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::views;
use crate::widgets::{Icon, icon_button};

/// Shows the drawer.
pub fn show(ui: &mut Ui, drawer: Drawer, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    ui.painter().hline(ui.max_rect().x_range(), ui.max_rect().min.y, (1.0, sight.look.palette.hairline));
    Frame::new().inner_margin(Margin { left: 14, right: 6, top: 6, bottom: 6 }).show(ui, |ui| {
        // A panel is as high as what it holds: hold the whole height, whatever is shown.
        ui.set_min_size(ui.available_size());
        ui.horizontal(|ui| {
            ui.label(RichText::new(drawer.name()).size(type_scale::HEADING).family(type_scale::semibold()));
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if icon_button(ui, sight.look.palette, Icon::Close, "", "Close drawer", false).clicked() {
                    intents.push(Intent::Drawer(None));
                }
            });
        });
        match drawer {
            Drawer::Units => views::ledger::show(ui, sight, intents),
            Drawer::Findings => views::findings::show(ui, sight, intents),
            Drawer::Charts => views::chart::show(ui, sight, intents),
        }
    });
}
