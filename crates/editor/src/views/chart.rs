//! Charts of the selected unit: reactions against slew, inner forces along its members, what its base uses against setback.

use std::sync::Arc;

use egui::{Button, ComboBox, Id, RichText, Ui, vec2};
use gantline_plan::assess::{Component, DiagramSlew, Reactions};
use gantline_plan::document::PlacementId;

use super::{against_slew_chart, along_members, setback_chart};
use crate::intent::Intent;
use crate::session::Selected;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::words;

/// What is charted: kept as long as the program runs, saved nowhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Charted {
    /// Against what.
    pub against: Against,
    /// Which component of the base.
    pub component: Component,
    /// Whether diagrams along members are those at the drawn slew rather than at the worst one.
    pub at_drawn_slew: bool,
}

/// What a chart runs along.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Against {
    /// The slew of the arm.
    Slew,
    /// Mast, arm and brace.
    Members,
    /// How far behind its edge the unit stands.
    Setback,
}

/// Width of the column of choices.
const CHOICES: f32 = 264.0;

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let Selected::Unit(id) = sight.session.selection.shown() else {
        ui.label(RichText::new("Select one unit.").color(sight.look.palette.ink_soft));
        return;
    };
    let Some(reactions) = sight.assessment.units.get(&id).and_then(|unit| unit.reactions.as_ref()) else {
        let words = "No reactions: the make-up can't be computed.";
        ui.label(RichText::new(words).color(sight.look.palette.unchecked));
        return;
    };
    let at = Id::unique("charted");
    let start = Charted { against: Against::Slew, component: Component::M, at_drawn_slew: false };
    let mut charted = ui.data(|data| data.get_temp::<Charted>(at)).unwrap_or(start);
    ui.horizontal_top(|ui| {
        ui.allocate_ui(vec2(CHOICES, ui.available_height()), |ui| {
            ui.set_min_size(vec2(CHOICES, ui.available_height()));
            ui.vertical(|ui| choices(ui, sight, id, reactions, &mut charted, intents));
        });
        ui.vertical(|ui| match charted.against {
            Against::Setback => setback_chart::show(ui, sight, id),
            Against::Slew => against_slew_chart::show(ui, sight, id, reactions, charted.component),
            Against::Members => {
                let combination = combination(sight, reactions);
                let slew = if charted.at_drawn_slew { drawn_slew(sight, id) } else { DiagramSlew::Worst };
                let component = charted.component;
                along_members::show(ui, sight, reactions, along_members::Asked { id, combination, component, slew });
            }
        });
    });
    ui.data_mut(|data| data.insert_temp(at, charted));
}

/// The combination that diagrams along members are drawn for: the chosen one, else the one that governs.
fn combination(sight: &Sight<'_>, reactions: &Reactions) -> usize {
    let governing = || {
        let governing = reactions.governing()?;
        reactions.combinations.iter().position(|result| result.name == governing.name)
    };
    let chosen = sight.session.chart_combination.filter(|&index| index < reactions.combinations.len());
    chosen.or_else(governing).unwrap_or(0)
}

fn drawn_slew(sight: &Sight<'_>, id: PlacementId) -> DiagramSlew {
    let placement = sight.plan.placements.get(&id);
    DiagramSlew::At(placement.map_or(0.0, |placement| placement.make_up.drawn_slew_rad))
}

fn choices(
    ui: &mut Ui,
    sight: &Sight<'_>,
    id: PlacementId,
    reactions: &Arc<Reactions>,
    charted: &mut Charted,
    intents: &mut Vec<Intent>,
) {
    // Six rows stand in the height of the drawer.
    ui.spacing_mut().item_spacing.y = 3.0;
    let name = words::name(sight.plan, gantline_plan::document::ThingId::Placement(id));
    ui.label(RichText::new(name).family(type_scale::semibold()));
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 2.0;
        let all = [
            (Against::Slew, "against slew", "Reactions against the slew of the arm."),
            (Against::Members, "along members", "Forces inside mast, arm and brace."),
            (
                Against::Setback,
                "setback",
                "How near can it stand? What the base uses of its resistance against setback.",
            ),
        ];
        for (against, words, hint) in all {
            if ui.add(Button::selectable(charted.against == against, words)).on_hover_text(hint).clicked() {
                charted.against = against;
            }
        }
    });
    let lead = match charted.against {
        Against::Slew => "component",
        Against::Members => "where it is largest",
        Against::Setback => return,
    };
    ui.label(RichText::new(lead).size(type_scale::SMALL).color(sight.look.palette.ink_soft));
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(2.0, 2.0);
        for component in Component::ALL {
            let chosen = charted.component == component;
            let button = Button::selectable(chosen, component.symbol()).min_size(vec2(36.0, 24.0));
            if ui.add(button).on_hover_text(component.words()).clicked() {
                charted.component = component;
            }
        }
    });
    if charted.against == Against::Members {
        ui.horizontal(|ui| {
            let slews = [(false, "worst slew", "Where the component is largest over the loaded slew.")];
            let drawn = [(true, "drawn slew", "As section and plan are drawn, under the pull that is worst there.")];
            for (at_drawn, words, hint) in slews.into_iter().chain(drawn) {
                let button = Button::selectable(charted.at_drawn_slew == at_drawn, words);
                if ui.add(button).on_hover_text(hint).clicked() {
                    charted.at_drawn_slew = at_drawn;
                }
            }
        });
        combinations(ui, sight, reactions, intents);
    }
}

/// One line that opens: a list would not find its height in the drawer.
fn combinations(ui: &mut Ui, sight: &Sight<'_>, reactions: &Reactions, intents: &mut Vec<Intent>) {
    let now = combination(sight, reactions);
    let name = |index: usize| {
        let result = reactions.combinations.get(index);
        result.map_or_else(String::new, |result| format!("{} · {}", result.name, result.level.name()))
    };
    let small = |text: String| RichText::new(text).size(type_scale::SMALL);
    let shown = ComboBox::from_id_salt("combination of the chart").width(CHOICES - 8.0).truncate();
    let response = shown.selected_text(small(name(now))).show_ui(ui, |ui| {
        for (index, result) in reactions.combinations.iter().enumerate() {
            let button = Button::selectable(index == now, small(name(index)));
            if ui.add_enabled(result.unavailable.is_none(), button).clicked() {
                intents.push(Intent::Chart(index));
                ui.close();
            }
        }
    });
    let spoken = name(now);
    response.response.widget_info(|| {
        let mut info = egui::WidgetInfo::labeled(egui::Role::ComboBox, true, "combination");
        info.current_text_value = Some(spoken.clone());
        info
    });
}
