//! What lies over the main sheet: level chips, the overlay set, and words for an empty sheet.

use egui::{Align2, Button, FontId, Frame, Margin, Rect, RichText, Shape, Stroke, Ui, UiBuilder, pos2, vec2};
use gantline_plan::quantity::level;

use crate::command::Command;
use crate::intent::Intent;
use crate::session::{OverlaySet, Sheet};
use crate::sight::Sight;
use crate::theme::type_scale;

/// Shows it.
pub fn show(ui: &mut Ui, rect: Rect, sheet: Sheet, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    if sheet != Sheet::Plan {
        return;
    }
    if sight.plan.roofs.is_empty() && sight.plan.underlays.is_empty() {
        empty_sheet(ui, rect, sight, intents);
    }
    let strip = Rect::from_min_size(rect.min + vec2(14.0, 12.0), vec2(rect.width() - 28.0, 30.0));
    ui.new_child(UiBuilder::new().max_rect(strip)).horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        levels(ui, sight, intents);
        ui.add_space(10.0);
        overlays(ui, sight, intents);
    });
}

/// One chip a roof, the highest first.
fn levels(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let mut roofs: Vec<_> = sight.plan.roofs.iter().collect();
    roofs.sort_by(|a, b| b.1.level_m.total_cmp(&a.1.level_m).then(a.0.cmp(b.0)));
    if roofs.is_empty() {
        return;
    }
    chips(ui, sight, |ui| {
        for (&id, roof) in roofs {
            let on = sight.session.level == Some(id);
            let text = format!("{}  {}", roof.name, level(roof.level_m, sight.look.units));
            let response = ui.add(Button::selectable(on, RichText::new(text).size(type_scale::SMALL)).small());
            if response.on_hover_text("Works on this level; others are drawn lighter.").clicked() {
                intents.push(Intent::Level(id));
            }
        }
    });
}

fn overlays(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    chips(ui, sight, |ui| {
        for set in OverlaySet::EACH {
            let on = sight.session.overlays == set;
            let response = ui.add(Button::selectable(on, RichText::new(set.name()).size(type_scale::SMALL)).small());
            let hint = Command::Overlays(set).entry().hint_with_key(ui.ctx());
            if response.on_hover_text(hint).clicked() {
                intents.push(Intent::Overlays(set));
            }
        }
    });
}

fn chips(ui: &mut Ui, sight: &Sight<'_>, content: impl FnOnce(&mut Ui)) {
    let palette = sight.look.palette;
    let frame = Frame::new()
        .fill(palette.panel)
        .stroke(Stroke::new(1.0, palette.hairline))
        .corner_radius(5)
        .inner_margin(Margin::symmetric(4, 2));
    frame.show(ui, |ui| {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 2.0;
            content(ui);
        });
    });
}

/// Two large words and a dimmed outline that shows what comes of them; both vanish at the first click.
fn empty_sheet(ui: &mut Ui, rect: Rect, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let palette = sight.look.palette;
    if sight.session.tool.is_busy() {
        return;
    }
    let center = rect.center();
    sample(ui, rect, sight);
    let title = FontId::new(type_scale::TITLE, type_scale::semibold());
    ui.painter().text(center - vec2(0.0, 46.0), Align2::CENTER_CENTER, "Draw the roof", title, palette.ink);
    let words = "Click its corners, or drag a rectangle. The outline is the edge of the structural slab.";
    let body = FontId::proportional(type_scale::HEADING);
    ui.painter().text(center - vec2(0.0, 12.0), Align2::CENTER_CENTER, words, body, palette.ink_soft);
    let entries = [
        (Command::Open, "Open a plan…", 132.0, -154.0),
        (Command::Outline, "Outline from a drawing…", 190.0, 17.0),
        (Command::Underlay, "Underlay…", 108.0, 176.0),
    ];
    for (command, words, width, aside) in entries {
        let row = Rect::from_center_size(center + vec2(aside, 32.0), vec2(width, 30.0));
        if ui.put(row, Button::new(words)).clicked() {
            intents.push(Intent::Run(command));
        }
    }
}

fn sample(ui: &Ui, rect: Rect, sight: &Sight<'_>) {
    let palette = sight.look.palette;
    let center = rect.center();
    let at = |x: f32, y: f32| pos2(center.x + x, center.y + y);
    let outline = [(-270.0, -170.0), (270.0, -170.0), (270.0, 60.0), (120.0, 60.0), (120.0, 170.0), (-270.0, 170.0)];
    let points: Vec<_> = outline.iter().map(|&(x, y)| at(x, y)).collect();
    let mut closed = points.clone();
    closed.push(points[0]);
    let stroke = Stroke::new(1.4, palette.hairline);
    ui.painter().extend(Shape::dashed_line(&closed, stroke, 10.0, 6.0));
    for point in points {
        ui.painter().circle(point, 4.0, palette.sheet, stroke);
    }
}
