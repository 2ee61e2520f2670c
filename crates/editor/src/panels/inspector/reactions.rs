//! Reactions in full: each combination with its level and the factors inside, every extreme with the six that act at once.

use std::sync::Arc;

use egui::{CollapsingHeader, RichText, Ui};
use gantline_plan::assess::{CombinationResult, FootExtreme, ReactionSet, Reactions, Unavailable, UnitAssessment};
use gantline_plan::quantity::{self, Kind, UnitSystem};
use glam::DVec3;

use super::of_selection::soft;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::decimal_column::{DecimalColumns, Figure};
use crate::widgets::{figure_row, section, sign_picture};

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, unit: &Arc<UnitAssessment>) {
    section(ui, sight.look.palette, "Reactions at the underside of the base", |ui| {
        let Some(reactions) = &unit.reactions else {
            soft(ui, sight, "No reactions: the make-up can't be computed.");
            return;
        };
        sign_picture(ui, sight.look.palette);
        let governing = reactions.governing().map(|result| result.name.clone());
        for (index, result) in reactions.combinations.iter().enumerate() {
            let governs = governing.as_ref() == Some(&result.name);
            combination(ui, sight, index, result, governs);
        }
        slack(ui, sight, reactions);
    });
}

fn combination(ui: &mut Ui, sight: &Sight<'_>, index: usize, result: &CombinationResult, governs: bool) {
    let mark = if governs { " · governs" } else { "" };
    let heading = format!("{} · {}{mark}", result.name, result.level.name());
    let text = RichText::new(heading).family(type_scale::semibold());
    CollapsingHeader::new(text).id_salt(("combination", index)).default_open(governs).show_unindented(ui, |ui| {
        if !result.inside.is_empty() {
            soft(ui, sight, format!("Inside: {}", result.inside));
        }
        match &result.unavailable {
            Some(Unavailable::Missing(what)) => {
                let text = RichText::new(format!("Not computed; missing: {what}"));
                ui.label(text.color(sight.look.palette.unchecked));
            }
            Some(Unavailable::DoesNotApply(why)) => soft(ui, sight, format!("Does not apply: {why}")),
            None => table(ui, sight, &result.sets),
        }
        brace(ui, sight, result);
        foot(ui, sight, &result.foot);
    });
}

/// A row an extreme, in the order of components; the extreme itself is the strong figure.
fn table(ui: &mut Ui, sight: &Sight<'_>, sets: &[ReactionSet]) {
    let units = sight.look.units;
    let columns = DecimalColumns { names: 46.0, count: 7, row: 18.0 };
    ui.spacing_mut().item_spacing.y = 0.0;
    let (force, moment) = (Kind::Force.unit(units), Kind::Moment.unit(units));
    let names = ["value", "Fx", "Fy", "Fz", "Mx", "My", "Mz"];
    columns.heading(ui, sight.look.palette, &names, &[("", 1), (force, 3), (moment, 3)]);
    let mut sorted: Vec<&ReactionSet> = sets.iter().collect();
    sorted.sort_by_key(|set| (set.component, set.sense));
    for set in sorted {
        let name = format!("{} {}", set.component.symbol(), set.sense.word());
        let kind = if set.component.is_moment() { Kind::Moment } else { Kind::Force };
        let value = Figure { text: quantity::digits(kind, set.value, units), strong: true };
        let acting = set.concurrent.iter().enumerate().map(|(index, &value)| {
            let kind = if index < 3 { Kind::Force } else { Kind::Moment };
            Figure { text: quantity::digits(kind, value, units), strong: false }
        });
        let figures: Vec<Figure> = std::iter::once(value).chain(acting).collect();
        let spoken = format!("{}; {}", quantity::number(kind, set.value, units), causes(set.pull, set.slew_rad));
        let hint = format!(
            "{}, {}: {}\n{}\nself-weight × {}",
            set.component.words(),
            set.sense.word(),
            quantity::number(kind, set.value, units),
            causes(set.pull, set.slew_rad),
            set.weight_factor
        );
        columns.row(ui, sight.look.palette, &name, &figures, &spoken).on_hover_text(hint);
    }
    ui.add_space(6.0);
}

/// Direction of the rope and slew of the arm, in words.
pub fn causes(pull: Option<DVec3>, slew_rad: f64) -> String {
    let slew = format!("slew {}", quantity::angle(slew_rad));
    let Some(pull) = pull else { return format!("no rope pulls, {slew}") };
    let from_down = (-pull.z).clamp(-1.0, 1.0).acos();
    let toward = pull.y.atan2(pull.x);
    format!("rope {} from straight down toward {}, {slew}", quantity::angle(from_down), quantity::angle(toward))
}

fn brace(ui: &mut Ui, sight: &Sight<'_>, result: &CombinationResult) {
    let Some([most, least]) = &result.brace_axial else { return };
    let units = sight.look.units;
    for (name, extreme) in [("brace, largest pull", most), ("brace, smallest pull", least)] {
        let hint = format!("Pull is positive, push negative.\n{}", causes(extreme.pull, extreme.slew_rad));
        figure_row(ui, sight.look.palette, name, &quantity::force(extreme.value, units), &hint);
    }
}

fn foot(ui: &mut Ui, sight: &Sight<'_>, extremes: &[FootExtreme]) {
    for extreme in extremes {
        let name = format!("foot, {} {}", extreme.component.symbol(), extreme.sense.word());
        let hint = format!("{}\n{}", together(extreme, sight.look.units), causes(extreme.pull, extreme.slew_rad));
        figure_row(ui, sight.look.palette, &name, &quantity::force(extreme.value, sight.look.units), &hint);
    }
}

fn together(extreme: &FootExtreme, units: UnitSystem) -> String {
    let [x, y, z] = extreme.concurrent.to_array().map(|value| quantity::force(value, units));
    format!("with it: Fx {x}, Fy {y}, Fz {z}")
}

fn slack(ui: &mut Ui, sight: &Sight<'_>, reactions: &Reactions) {
    if let Some(slack) = &reactions.slack {
        let ink = if slack.is_mechanism { sight.look.palette.blocking } else { sight.look.palette.caution };
        ui.label(RichText::new(format!("The brace only pulls: {}", slack.said)).color(ink));
    }
}
