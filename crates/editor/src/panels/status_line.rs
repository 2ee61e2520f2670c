//! The status line: what the tool waits for, where the pointer is, what was said last, findings, the caution.

use egui::{Align, Button, Layout, RichText, Ui};

use crate::intent::Intent;
use crate::session::Drawer;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::Icon;
use crate::widgets::icon::inline;

/// What always stands there.
pub const CAUTION: &str = "for planning · not a permit to hang from a rope";

/// Shows the line.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let palette = sight.look.palette;
    let small = |words: &str| RichText::new(words).size(type_scale::SMALL);
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
        ui.add_space(12.0);
        ui.label(small(CAUTION).color(palette.ink_soft));
        let tally = sight.assessment.tally();
        ui.add_space(10.0);
        let counts = [
            (tally.not_checked, "not checked", Icon::Unchecked, palette.unchecked),
            (tally.caution, "caution", Icon::Caution, palette.caution),
            (tally.blocking, "blocking", Icon::Blocking, palette.blocking),
        ];
        for (count, word, icon, ink) in counts {
            let shown = if count == 0 { palette.ink_soft } else { ink };
            let text = small(&format!("{count} {word}")).color(shown);
            let response = ui.add(Button::new(text).frame_when_inactive(false).small());
            inline(ui, icon, shown);
            ui.add_space(4.0);
            if response.on_hover_text("Opens the findings.").clicked() {
                intents.push(Intent::Drawer(Some(Drawer::Findings)));
            }
        }
        drawers(ui, sight, intents);
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            ui.add_space(14.0);
            let waits = sight.session.tool.waits_for();
            let said = &sight.session.said;
            let words = if said.is_empty() { waits } else { format!("{said}   ·   {waits}") };
            let label = ui.add(egui::Label::new(small(&words).color(palette.ink)).truncate());
            label.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Status, true, &words));
        });
    });
}

fn drawers(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    ui.add_space(10.0);
    for drawer in Drawer::EACH.into_iter().rev() {
        let open = sight.session.drawer == Some(drawer);
        let text = RichText::new(drawer.name()).size(type_scale::SMALL);
        let response = ui.add(Button::selectable(open, text).small());
        if response.clicked() {
            intents.push(Intent::Drawer(if open { None } else { Some(drawer) }));
        }
    }
    ui.add_space(10.0);
}
