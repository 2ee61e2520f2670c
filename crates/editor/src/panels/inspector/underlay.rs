//! One underlay: name, page, scale, turn, how dense, on which level, locked, shown, remove.

use egui::{RichText, Ui};
use gantline_plan::change::{Change, UnderlayPatch};
use gantline_plan::document::{AttachmentKind, RoofId, ThingId, Underlay, UnderlayId};
use gantline_plan::quantity::{Kind, length};

use super::of_selection::{heading, soft};
use crate::command::Command;
use crate::intent::Intent;
use crate::sight::Sight;
use crate::tools::ToolKind;
use crate::widgets::choice_row::{Entry, choice_row};
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, figure_row, section, switch_row};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: UnderlayId, intents: &mut Vec<Intent>) {
    let Some(underlay) = sight.plan.underlays.get(&id) else { return };
    let (palette, units) = (sight.look.palette, sight.look.units);
    heading(ui, &underlay.name);
    soft(ui, sight, "Lies under the plan; nothing is computed from it.");
    if let Some(why) = sight.underlays.page(underlay).and_then(|page| page.fault.as_ref()) {
        ui.label(RichText::new(format!("Can't be shown: {why}")).color(palette.blocking));
    }
    let (field, entered) = Field::text("name", Some(&underlay.name)).show(ui, palette, units);
    if let Some(Entered::Text(name)) = entered {
        set(ui, sight, field, id, UnderlayPatch { name: Some(name), ..UnderlayPatch::default() }, intents);
    }
    page(ui, sight, id, underlay, intents);
    section(ui, palette, "Scale and turn", |ui| {
        scale(ui, sight, id, underlay, intents);
        let turn = Field::figure("turn", Kind::Angle, Some(underlay.turn_rad)).aside("to the left");
        let (field, entered) = turn.show(ui, palette, units);
        if let Some(Entered::Figure(turn_rad)) = entered {
            set(ui, sight, field, id, UnderlayPatch { turn_rad: Some(turn_rad), ..UnderlayPatch::default() }, intents);
        }
        ui.horizontal(|ui| {
            for kind in [ToolKind::ScaleUnderlay, ToolKind::TurnUnderlay] {
                let command = Command::Tool(kind);
                let entry = command.entry();
                if ui.button(entry.name).on_hover_text(entry.hint_with_key(ui.ctx())).clicked() {
                    intents.push(Intent::Run(command));
                }
            }
        });
    });
    section(ui, palette, "On the sheet", |ui| {
        let hint = "0 %: not seen. 100 %: covers what lies below it.";
        let opacity = Field::figure("opacity", Kind::Share, Some(underlay.opacity)).hint(hint);
        let (field, entered) = opacity.show(ui, palette, units);
        if let Some(Entered::Figure(opacity)) = entered {
            set(ui, sight, field, id, UnderlayPatch { opacity: Some(opacity), ..UnderlayPatch::default() }, intents);
        }
        level(ui, sight, id, underlay, intents);
        if let Some(shown) = switch_row(ui, palette, "shown", Some(underlay.shown), "") {
            intents.push(patched(
                "show underlay",
                id,
                UnderlayPatch { shown: Some(shown), ..UnderlayPatch::default() },
            ));
        }
        let hint = "A locked underlay is not moved, scaled, turned or removed, and a click goes through it.";
        if let Some(locked) = switch_row(ui, palette, "locked", Some(underlay.locked), hint) {
            intents.push(patched(
                "lock underlay",
                id,
                UnderlayPatch { locked: Some(locked), ..UnderlayPatch::default() },
            ));
        }
        if ui.add_enabled(!underlay.locked, egui::Button::new("Remove underlay")).clicked() {
            intents.push(Intent::change("remove underlay", Change::RemoveUnderlay(id)));
        }
    });
}

fn patched(name: &'static str, id: UnderlayId, patch: UnderlayPatch) -> Intent {
    Intent::change(name, Change::SetUnderlay(id, patch))
}

fn set(ui: &Ui, sight: &Sight<'_>, field: egui::Id, id: UnderlayId, patch: UnderlayPatch, intents: &mut Vec<Intent>) {
    ask(ui, field, sight.plan, "set underlay", Change::SetUnderlay(id, patch), intents);
}

/// Which of several pages.
fn page(ui: &mut Ui, sight: &Sight<'_>, id: UnderlayId, underlay: &Underlay, intents: &mut Vec<Intent>) {
    let pages = sight.underlays.page(underlay).map_or(0, |page| page.pages);
    if pages < 2 {
        return;
    }
    let now = format!("{} of {pages}", underlay.page);
    let entries = |_: &mut Ui| {
        (1..=pages).map(|page| Entry::open(format!("Page {page}"), page == underlay.page)).collect::<Vec<_>>()
    };
    if let Some(index) = choice_row(ui, sight.look.palette, "page", &now, entries) {
        let patch = UnderlayPatch { page: Some(index as u32 + 1), ..UnderlayPatch::default() };
        intents.push(patched("set underlay", id, patch));
    }
}

/// Its scale: of a page on paper as one to so many, of pixels and a drawing's units by the length of a round number of them.
fn scale(ui: &mut Ui, sight: &Sight<'_>, id: UnderlayId, underlay: &Underlay, intents: &mut Vec<Intent>) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    let kind = sight.plan.attachments.get(&underlay.attachment).map(gantline_plan::document::Attachment::kind);
    let (name, shown, one) = match kind {
        Some(AttachmentKind::Png | AttachmentKind::Jpeg) => ("100 pixels are", Kind::Length, 100.0),
        Some(AttachmentKind::Pdf) => {
            ("scale 1 :", Kind::Number, kind.and_then(AttachmentKind::on_paper_m).unwrap_or(1.0).recip())
        }
        Some(AttachmentKind::Dxf) | None => ("1000 units are", Kind::Length, 1000.0),
    };
    let field = Field::figure(name, shown, Some(underlay.m_per_unit * one));
    let (field, entered) = field.show(ui, palette, units);
    if let Some(Entered::Figure(entered)) = entered {
        let patch = UnderlayPatch { m_per_unit: Some(entered / one), ..UnderlayPatch::default() };
        set(ui, sight, field, id, patch, intents);
    }
    if let Some(extent) = sight.underlays.page(underlay).and_then(|page| page.extent) {
        let size_m = extent.size() * underlay.m_per_unit;
        let text = format!("{} × {}", length(size_m.x, units), length(size_m.y, units));
        figure_row(ui, palette, "size in the plan", &text, "");
    }
}

/// The level that it lies on.
fn level(ui: &mut Ui, sight: &Sight<'_>, id: UnderlayId, underlay: &Underlay, intents: &mut Vec<Intent>) {
    const EVERY: &str = "Every level";
    let now = underlay.roof.map_or_else(|| EVERY.to_owned(), |roof| words::name(sight.plan, ThingId::Roof(roof)));
    let roofs: Vec<Option<RoofId>> = std::iter::once(None).chain(sight.plan.roofs.keys().copied().map(Some)).collect();
    let entries = |_: &mut Ui| {
        let entry = |roof: &Option<RoofId>| {
            let text = roof.map_or_else(|| EVERY.to_owned(), |roof| words::name(sight.plan, ThingId::Roof(roof)));
            Entry::open(text, *roof == underlay.roof)
        };
        roofs.iter().map(entry).collect::<Vec<_>>()
    };
    let chosen = choice_row(ui, sight.look.palette, "seen on", &now, entries).and_then(|index| roofs.get(index));
    if let Some(&roof) = chosen {
        intents.push(patched("set underlay", id, UnderlayPatch { roof: Some(roof), ..UnderlayPatch::default() }));
    }
}
