//! Things of several kinds: what is among them.

use egui::Ui;
use gantline_plan::document::ThingId;

use super::of_selection::{heading, soft};
use crate::intent::Intent;
use crate::session::Selection;
use crate::sight::Sight;

/// A kind of thing: its name in the plural and what tells it.
type Kind = (&'static str, fn(&ThingId) -> bool);

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    heading(ui, &format!("{} things", sight.session.selection.len()));
    soft(ui, sight, "Things of one kind can be changed together.");
    ui.add_space(6.0);
    let kinds: [Kind; 4] = [
        ("units", |thing| matches!(thing, ThingId::Placement(_))),
        ("edges", |thing| matches!(thing, ThingId::Edge(_))),
        ("obstacles", |thing| matches!(thing, ThingId::Obstacle(_))),
        ("roofs", |thing| matches!(thing, ThingId::Roof(_))),
    ];
    for (name, is) in kinds {
        let of_kind: Vec<ThingId> = sight.session.selection.iter().filter(is).collect();
        if !of_kind.is_empty() && ui.button(format!("Keep only the {} {name}", of_kind.len())).clicked() {
            intents.push(Intent::Select(Selection::of(of_kind)));
        }
    }
}
