//! The record of one look at a base, step by step: clause, formula, symbols with their values, what resists, what acts.

use egui::{Frame, Margin, RichText, Ui};
use gantline_plan::assess::anchorage::{BaseUse, Record};
use gantline_plan::quantity::{self, Kind, traced};

use super::base::cause;
use super::of_selection::soft;
use super::reactions::causes;
use crate::sight::Sight;
use crate::widgets::icon::inline;
use crate::widgets::{Icon, figure_row};

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, used: &BaseUse) {
    let palette = sight.look.palette;
    let shown = Frame::new().inner_margin(Margin { left: 16, right: 0, top: 2, bottom: 8 }).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        match &used.record {
            Some(record) => steps(ui, sight, record),
            None => soft(ui, sight, "No record is kept of this look."),
        }
        if let Some(state) = &used.state {
            let factor = quantity::number(Kind::Number, state.weight_factor, sight.look.units);
            soft(ui, sight, format!("{}; self-weight × {factor}", cause(sight, state, sight.look.units)));
            soft(ui, sight, causes(state.pull, state.slew_rad));
        }
    });
    let rect = shown.response.rect;
    ui.painter().vline(rect.min.x + 5.0, rect.min.y..=(rect.max.y - 6.0), (1.0, palette.hairline));
}

fn steps(ui: &mut Ui, sight: &Sight<'_>, record: &Record) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    if !record.clause.is_empty() {
        let clause = ui.label(RichText::new(&record.clause).color(palette.ink_soft));
        told(&clause, "clause", &record.clause);
    }
    let formula = ui.label(RichText::new(&record.formula).color(palette.ink));
    told(&formula, "formula", &record.formula);
    for symbol in &record.symbols {
        figure_row(ui, palette, &symbol.symbol, &traced(symbol.value, symbol.unit, units), "");
    }
    if let Some(resistance_n) = record.resistance_n {
        figure_row(ui, palette, "resists", &quantity::force(resistance_n, units), "Design resistance.");
    }
    if let Some(action_n) = record.action_n {
        figure_row(ui, palette, "acts", &quantity::force(action_n, units), "At the design level.");
    }
    if !record.caution.is_empty() {
        ui.horizontal_top(|ui| {
            inline(ui, Icon::Caution, palette.caution);
            // Beside the icon words wrap only in a column of their own.
            ui.vertical(|ui| soft(ui, sight, record.caution.clone()));
        });
    }
}

/// Says for readers what a line is: a row, since of a label name and value would be the same.
fn told(response: &egui::Response, name: &str, words: &str) {
    response.widget_info(|| {
        let mut info = egui::WidgetInfo::labeled(egui::Role::Row, true, name);
        info.current_text_value = Some(words.to_owned());
        info
    });
}
