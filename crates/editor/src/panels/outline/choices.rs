//! What is said about the drawing as a whole: its unit, the tolerance, the layers that are looked at.

use egui::{Button, RichText, Ui};
use gantline_exchange::outline::limits::TOLERANCE_M;
use gantline_exchange::outline::{LengthUnit, Measure};
use gantline_plan::quantity::{Kind, length};

use crate::intent::Intent;
use crate::session::outline::{Answer, Choosing, OutlineWish};
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::field::{Entered, refuse};
use crate::widgets::{Field, section, switch_row};

/// Shows it.
pub fn show(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, intents: &mut Vec<Intent>) {
    unit(ui, look, choosing, intents);
    layers(ui, look, choosing, intents);
    tolerance(ui, look, choosing, intents);
    if let Answer::Fault(why) = &choosing.answer {
        ui.label(RichText::new(crate::carry_out::edit::sentence(why)).color(look.palette.blocking));
    }
}

fn soft(ui: &mut Ui, look: Look<'_>, words: impl Into<String>) {
    ui.label(RichText::new(words).size(type_scale::SMALL).color(look.palette.ink_soft));
}

fn unit(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, intents: &mut Vec<Intent>) {
    section(ui, look.palette, "Unit of the drawing", |ui| {
        match (choosing.work.measure, choosing.asked.unit) {
            (Measure::Stated(unit), _) => soft(ui, look, format!("The drawing states {}.", unit.name())),
            (Measure::NotStated, None) => {
                let words = "The drawing does not state its unit: say which it is.";
                ui.label(RichText::new(words).color(look.palette.blocking));
            }
            (Measure::NotStated, Some(_)) => soft(ui, look, "The drawing does not state its unit."),
            (Measure::Degrees { .. }, _) => {}
        }
        for said in &choosing.work.said {
            soft(ui, look, format!("{}.", crate::carry_out::edit::sentence(said)));
        }
        if matches!(choosing.work.measure, Measure::Degrees { .. }) {
            return;
        }
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing.x = 3.0;
            for unit in LengthUnit::OFFERED {
                let on = choosing.asked.unit == Some(unit);
                if ui.add(Button::selectable(on, unit.name())).clicked() && !on {
                    intents.push(Intent::Outline(OutlineWish::Unit(unit)));
                }
            }
        });
    });
}

fn layers(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, intents: &mut Vec<Intent>) {
    section(ui, look.palette, "Layers", |ui| {
        let with_lines = choosing.work.layers.iter().enumerate().filter(|(_, layer)| layer.traces > 0);
        for (place, layer) in with_lines {
            let on = choosing.asked.layers.contains(&place);
            let hidden = if layer.shown { "" } else { ", not shown in the drawing" };
            let lines = if layer.traces == 1 { "1 line".to_owned() } else { format!("{} lines", layer.traces) };
            let words = format!("{}: {lines}, {} closed{hidden}", layer.name, layer.closed);
            let hint = format!("{} other things on it are not looked at.", layer.others);
            if let Some(on) = switch_row(ui, look.palette, &words, Some(on), &hint) {
                intents.push(Intent::Outline(OutlineWish::Layer(place, on)));
            }
        }
        if choosing.work.layers.iter().all(|layer| layer.traces == 0) {
            soft(ui, look, "No layer holds a line that could be an outline.");
        }
        if !choosing.work.passed_over.is_empty() {
            let all: Vec<String> =
                choosing.work.passed_over.iter().map(|(what, count)| format!("{count} {what}")).collect();
            soft(ui, look, format!("Not looked at: {}.", all.join(", ")));
        }
    });
}

fn tolerance(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, intents: &mut Vec<Intent>) {
    type Wish = fn(f64) -> OutlineWish;
    let asked = &choosing.asked;
    let rows: [(&str, f64, &str, Wish); 2] = [
        ("gaps", asked.tolerance_m, "Gaps up to this are closed and told.", OutlineWish::Tolerance),
        ("chords", asked.chord_m, "Chords leave curves by at most this.", OutlineWish::Chord),
    ];
    section(ui, look.palette, "Tolerances", |ui| {
        for (name, now_m, hint, wish) in rows {
            let field = Field::figure(name, Kind::Length, Some(now_m)).hint(hint);
            let (id, entered) = field.show(ui, look.palette, look.units);
            let Some(Entered::Figure(entered_m)) = entered else { continue };
            let (least, most) = TOLERANCE_M;
            if (least..=most).contains(&entered_m) {
                intents.push(Intent::Outline(wish(entered_m)));
            } else {
                let ends = [least, most].map(|end| length(end, look.units));
                refuse(ui, id, format!("a tolerance lies between {} and {}", ends[0], ends[1]));
            }
        }
    });
}
