//! Things of several kinds: what is among them.

use egui::Ui;
use gantline_plan::document::ThingId;

use super::of_selection::{heading, soft};
use crate::intent::Intent;
use crate::session::Selection;
use crate::sight::Sight;

/// A kind of thing: its name and what tells it.
type Kind = (&'static str, fn(&ThingId) -> bool);

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    heading(ui, &format!("{} things", sight.session.selection.len()));
    soft(ui, sight, "Together they are nudged and deleted; the fields of one kind show when only that kind is kept.");
    ui.add_space(6.0);
    let kinds: [Kind; 5] = [
        ("unit", |thing| matches!(thing, ThingId::Placement(_))),
        ("edge", |thing| matches!(thing, ThingId::Edge(_))),
        ("obstacle", |thing| matches!(thing, ThingId::Obstacle(_))),
        ("roof", |thing| matches!(thing, ThingId::Roof(_))),
        ("underlay", |thing| matches!(thing, ThingId::Underlay(_))),
    ];
    for (name, is) in kinds {
        let of_kind: Vec<ThingId> = sight.session.selection.iter().filter(is).collect();
        let words = match of_kind.len() {
            0 => continue,
            1 => format!("Keep only the {name}"),
            count => format!("Keep only the {count} {name}s"),
        };
        if ui.button(words).clicked() {
            intents.push(Intent::Select(Selection::of(of_kind)));
        }
    }
}
