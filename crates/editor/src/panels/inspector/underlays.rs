//! All underlays, where nothing is selected: locked ones can be taken from here only.

use egui::Ui;
use gantline_plan::change::{Change, UnderlayPatch};
use gantline_plan::document::ThingId;

use crate::intent::Intent;
use crate::session::Selection;
use crate::sight::Sight;
use crate::widgets::{section, switch_row};

/// Shows them, if there are any.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    if sight.plan.underlays.is_empty() {
        return;
    }
    section(ui, sight.look.palette, "Underlays", |ui| {
        for (&id, underlay) in &sight.plan.underlays {
            let words = format!("{} is shown", underlay.name);
            if let Some(shown) = switch_row(ui, sight.look.palette, &words, Some(underlay.shown), "") {
                let patch = UnderlayPatch { shown: Some(shown), ..UnderlayPatch::default() };
                intents.push(Intent::change("show underlay", Change::SetUnderlay(id, patch)));
            }
            if ui.button(format!("Select {}", underlay.name)).clicked() {
                intents.push(Intent::Select(Selection::of([ThingId::Underlay(id)])));
            }
        }
    });
}
