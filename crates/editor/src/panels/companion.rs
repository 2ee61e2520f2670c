//! The companion drawing above the inspector, with its name and the buttons to swap and pin it.

use egui::{Align, Layout, Rect, RichText, Ui, UiBuilder, vec2};
use gantline_plan::document::ThingId;

use crate::canvas::canvas::{self, OnSheet, Told};
use crate::command::Command;
use crate::derived::{Drawn, View};
use crate::intent::Intent;
use crate::session::Sheet;
use crate::theme::type_scale;
use crate::widgets::{Icon, icon_button};
use crate::words;

const HEAD: f32 = 30.0;

/// Shows it.
pub fn show(
    ui: &mut Ui,
    height: f32,
    on: &OnSheet<'_>,
    drawn: &mut Drawn,
    view: &View<'_>,
    intents: &mut Vec<Intent>,
) -> Told {
    let (whole, _) = ui.allocate_exact_size(vec2(ui.available_width(), height), egui::Sense::hover());
    let head = Rect::from_min_size(whole.min, vec2(whole.width(), HEAD));
    let body = Rect::from_min_max(whole.min + vec2(0.0, HEAD), whole.max);
    let palette = on.sight.look.palette;
    // A child that takes no room of its own: the room for head and drawing was taken above.
    let head_area = UiBuilder::new().max_rect(head.shrink2(vec2(12.0, 0.0)));
    let head_ui = &mut ui.new_child(head_area);
    {
        let ui = head_ui;
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.spacing_mut().item_spacing.x = 0.0;
            let slots = &on.sight.session.slots;
            for (command, icon, selected) in
                [(Command::Swap, Icon::Swap, slots.swapped), (Command::Pin, Icon::Pin, slots.pinned.is_some())]
            {
                let entry = command.entry();
                let response = icon_button(ui, palette, icon, "", entry.name, selected);
                if response.on_hover_text(entry.hint_with_key(ui.ctx())).clicked() {
                    intents.push(Intent::Run(command));
                }
            }
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                ui.label(RichText::new(title(on.sheet, view)).family(type_scale::semibold()));
            });
        });
    }
    let told = canvas::show(ui, body, on, drawn, intents);
    for y in [head.max.y, whole.max.y] {
        ui.painter().hline(whole.x_range(), y, (1.0, palette.hairline));
    }
    told
}

fn title(sheet: Sheet, view: &View<'_>) -> String {
    match sheet {
        Sheet::Plan => "Plan".to_owned(),
        Sheet::Section(unit) => format!("Section · {}", words::name(view.plan, ThingId::Placement(unit))),
        Sheet::Elevation(edge) => format!("Elevation · {}", words::name(view.plan, ThingId::Edge(edge))),
        Sheet::Building => "Building".to_owned(),
    }
}
