//! Finds a unit by its tag.

use egui::{Key, RichText, TextEdit, Ui};
use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, ThingId};

use crate::intent::Intent;
use crate::sight::Look;
use crate::words;

/// How many are listed.
const LISTED: usize = 12;

/// Shows the page.
pub fn show(
    ui: &mut Ui,
    look: Look<'_>,
    plan: &Plan,
    assessment: &Assessment,
    text: &mut String,
    intents: &mut Vec<Intent>,
) {
    let label = ui.label(RichText::new("Tag").color(look.palette.ink_soft));
    let response = ui.add(TextEdit::singleline(text).desired_width(f32::INFINITY)).labelled_by(label.id);
    let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    if !entered {
        response.request_focus();
    }
    let wanted = text.trim().to_lowercase();
    let found = plan.placements.iter().filter(|(_, placement)| placement.tag.0.to_lowercase().contains(&wanted));
    let mut found: Vec<_> = found.map(|(&id, placement)| (id, placement.tag.0.clone())).collect();
    found.sort_by_key(|(_, tag)| (tag.to_lowercase() != wanted, tag.clone()));
    if entered && let Some((id, _)) = found.first() {
        intents.push(Intent::GoTo(ThingId::Placement(*id), None));
        intents.push(Intent::Page(None));
        return;
    }
    if found.is_empty() {
        ui.label(RichText::new("No unit has this in its tag.").color(look.palette.ink_soft));
    }
    for (id, tag) in found.into_iter().take(LISTED) {
        let thing = ThingId::Placement(id);
        let row = format!("{tag}   {}", words::tally_of(assessment, thing));
        if ui.add(egui::Button::new(row).frame_when_inactive(false)).clicked() {
            intents.push(Intent::GoTo(thing, None));
            intents.push(Intent::Page(None));
        }
    }
}
