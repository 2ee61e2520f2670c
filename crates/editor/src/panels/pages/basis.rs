//! The basis sheet: every value with its source and who stands behind it; confirmed as it is, or overridden with a reason.

use egui::{Id, RichText, TextEdit, Ui};
use gantline_plan::basis::{
    Confirmation, DesignCode, FactorName, LoadBasis, MemberCode, NeighborRule, Sourced, presets,
};
use gantline_plan::change::Change;
use gantline_plan::document::Plan;
use gantline_plan::quantity::{self, Kind};

use super::sourced_row::{Asked, sourced_row, standing_words};
use crate::intent::Intent;
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::choice_row::Entry;
use crate::widgets::{choice_row, section};
use crate::words;

/// Shows the page.
pub fn show(ui: &mut Ui, look: Look<'_>, plan: &Plan, intents: &mut Vec<Intent>) {
    ui.label(RichText::new(words::basis_sentence(&plan.basis, look.units)).color(look.palette.ink));
    preset(ui, look, &plan.basis, intents);
    let by = who(ui, look, plan, intents);
    regime(ui, look, &plan.basis, &by, intents);
    figures(ui, look, &plan.basis, &by, intents);
    standing_together(ui, look, &plan.basis, intents);
    combinations(ui, look, &plan.basis);
    code(ui, look, plan, &by, intents);
}

fn set(basis: LoadBasis, intents: &mut Vec<Intent>) {
    intents.push(Intent::change("basis", Change::SetBasis(Box::new(basis))));
}

/// Another basis to start from takes the place of this one, with all its confirmations.
fn preset(ui: &mut Ui, look: Look<'_>, now: &LoadBasis, intents: &mut Vec<Intent>) {
    let Ok(all) = presets() else { return };
    let chosen = choice_row(ui, look.palette, "basis", &now.name, |_| {
        all.iter().map(|preset| Entry::open(preset.basis.name.clone(), preset.basis.name == now.name)).collect()
    });
    if let Some(preset) = chosen.and_then(|index| all.get(index))
        && preset.basis.name != now.name
    {
        set(preset.basis.clone(), intents);
    }
}

/// Who confirms, and everything at once.
fn who(ui: &mut Ui, look: Look<'_>, plan: &Plan, intents: &mut Vec<Intent>) -> String {
    let at = Id::unique("who confirms the basis");
    let mut by = ui.data(|data| data.get_temp::<String>(at)).unwrap_or_else(|| plan.title.author.clone());
    ui.horizontal(|ui| {
        let label = ui.label(RichText::new("confirmed by").color(look.palette.ink_soft));
        ui.add(TextEdit::singleline(&mut by).desired_width(220.0)).labelled_by(label.id);
        let open = plan.basis.unconfirmed() + plan.code.unconfirmed();
        let text = format!("Confirm the {open} that wait");
        let may = open > 0 && !by.trim().is_empty();
        if ui.add_enabled(may, egui::Button::new(text)).clicked() {
            let basis = Change::SetBasis(Box::new(plan.basis.confirmed_by(by.trim())));
            let both = Change::All(vec![basis, Change::SetCode(plan.code.confirmed_by(by.trim()))]);
            intents.push(Intent::change("confirm basis", both));
        }
    });
    if by.trim().is_empty() {
        let words = "Type who confirms; the name goes into the plan.";
        ui.label(RichText::new(words).size(type_scale::SMALL).color(look.palette.unchecked));
    }
    ui.data_mut(|data| data.insert_temp(at, by.clone()));
    by.trim().to_owned()
}

fn regime(ui: &mut Ui, look: Look<'_>, basis: &LoadBasis, by: &str, intents: &mut Vec<Intent>) {
    section(ui, look.palette, "Law or standard", |ui| {
        ui.label(RichText::new(&basis.regime.value).color(look.palette.ink));
        if confirm(ui, look, "law or standard", &basis.regime, by) {
            set(LoadBasis { regime: basis.regime.clone().confirmed(by), ..basis.clone() }, intents);
        }
        let factors = &basis.resistance_factors;
        let words = if factors.value { "are reduced" } else { "are not reduced" };
        ui.label(RichText::new(format!("Resistances {words} by partial factors as well.")).color(look.palette.ink));
        if confirm(ui, look, "resistance factors", factors, by) {
            set(LoadBasis { resistance_factors: factors.clone().confirmed(by), ..basis.clone() }, intents);
        }
    });
}

/// Source and standing of something that is no figure; whether it was confirmed.
fn confirm<T>(ui: &mut Ui, look: Look<'_>, name: &str, sourced: &Sourced<T>, by: &str) -> bool {
    let soft = |text: String| RichText::new(text).size(type_scale::SMALL).color(look.palette.ink_soft);
    ui.label(soft(sourced.source.clone()));
    ui.horizontal(|ui| {
        ui.label(soft(standing_words(&sourced.standing)));
        if sourced.standing != Confirmation::Default {
            return false;
        }
        let button = ui.add_enabled(!by.is_empty(), egui::Button::new("Confirm").small());
        button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, format!("Confirm {name}")));
        button.clicked()
    })
    .inner
}

fn figures(ui: &mut Ui, look: Look<'_>, basis: &LoadBasis, by: &str, intents: &mut Vec<Intent>) {
    let figures = basis.figures();
    let mut index = 0;
    while let Some(first) = figures.get(index) {
        let end = figures[index..].iter().position(|figure| figure.group != first.group);
        let end = end.map_or(figures.len(), |length| index + length);
        section(ui, look.palette, &first.group, |ui| {
            for (at, figure) in figures.iter().enumerate().take(end).skip(index) {
                let asked = Asked { name: figure.name, group: &figure.group, kind: figure.kind, by };
                if let Some(new) = ui.push_id(at, |ui| sourced_row(ui, look, asked, &figure.sourced)).inner {
                    set(basis.with_figure(at, &new), intents);
                }
            }
        });
        index = end;
    }
}

/// Which units may stand at once: decides whether an arm must pass the mast of another.
fn standing_together(ui: &mut Ui, look: Look<'_>, basis: &LoadBasis, intents: &mut Vec<Intent>) {
    let choices =
        [("none within each other's outreach", NeighborRule::NoneWithinOutreaches), ("any of them", NeighborRule::Any)];
    section(ui, look.palette, "Units that stand at once", |ui| {
        let now = choices.iter().find(|(_, rule)| *rule == basis.rules.neighbors).map_or("", |(name, _)| name);
        let chosen = choice_row(ui, look.palette, "stand at once", now, |_| {
            choices.iter().map(|(name, rule)| Entry::open(*name, *rule == basis.rules.neighbors)).collect()
        });
        if let Some((_, rule)) = chosen.and_then(|index| choices.get(index)) {
            let mut new = basis.clone();
            new.rules.neighbors = rule.clone();
            set(new, intents);
        }
    });
}

/// Which cases act together: shown as they are.
fn combinations(ui: &mut Ui, look: Look<'_>, basis: &LoadBasis) {
    section(ui, look.palette, "Combinations", |ui| {
        for combined in &basis.combinations {
            let terms = combined.terms.iter().map(|term| {
                let name = basis.cases.get(&term.case).map_or(term.case.0.as_str(), |case| case.name.as_str());
                if term.factor == 1.0 { name.to_owned() } else { format!("{} × {name}", term.factor) }
            });
            let terms = terms.collect::<Vec<_>>().join(" + ");
            let text = format!("{} · {}: {terms}", combined.name, combined.level.name());
            ui.label(RichText::new(text).color(look.palette.ink));
        }
    });
}

fn code(ui: &mut Ui, look: Look<'_>, plan: &Plan, by: &str, intents: &mut Vec<Intent>) {
    let code = &plan.code;
    let set = |code: DesignCode, intents: &mut Vec<Intent>| {
        intents.push(Intent::change("design code", Change::SetCode(code)));
    };
    section(ui, look.palette, "Design code of members", |ui| {
        let codes = [("Eurocode", MemberCode::Eurocode), ("AISC 360", MemberCode::Aisc360)];
        let shown = codes.iter().find(|(_, family)| *family == code.members).map_or("", |(name, _)| name);
        let chosen = choice_row(ui, look.palette, "design code", shown, |_| {
            codes.iter().map(|(name, family)| Entry::open(*name, *family == code.members)).collect()
        });
        match chosen.and_then(|index| codes.get(index)) {
            Some((_, MemberCode::Eurocode)) if code.members != MemberCode::Eurocode => {
                set(DesignCode::eurocode(), intents);
            }
            Some((_, MemberCode::Aisc360)) if code.members != MemberCode::Aisc360 => set(DesignCode::aisc(), intents),
            _ => {}
        }
        ui.label(RichText::new(&code.edition).size(type_scale::SMALL).color(look.palette.ink_soft));
        for (&name, factor) in &code.factors {
            if let Some(new) = factor_row(ui, look, name, factor, by) {
                let mut code = code.clone();
                code.factors.insert(name, new);
                set(code, intents);
            }
        }
    });
}

fn factor_row(ui: &mut Ui, look: Look<'_>, name: FactorName, factor: &Sourced<f64>, by: &str) -> Option<Sourced<f64>> {
    let asked = Asked { name: name.words(), group: "design code", kind: Kind::Number, by };
    ui.push_id(name.words(), |ui| sourced_row(ui, look, asked, factor)).inner
}

/// The exact value where the shown digits round it; empty where they don't.
pub(super) fn exactly(kind: Kind, value: f64, look: Look<'_>) -> String {
    const SAME: f64 = 1e-9;
    let shown = quantity::number(kind, value, look.units);
    let read = quantity::parse(kind, &shown, look.units);
    let rounds = read.is_ok_and(|read| (read - value).abs() > SAME * value.abs().max(1.0));
    if rounds { format!("exactly {}", kind.in_shown_unit(value, look.units)) } else { String::new() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theme::Palette;
    use gantline_plan::quantity::UnitSystem;

    #[test]
    fn a_value_that_the_shown_digits_round_is_told_exactly() {
        let look = Look { palette: &Palette::LIGHT, units: UnitSystem::Si };
        // Factors are shown with two decimals, shares with one decimal below ten percent, lengths to the
        // millimeter.
        assert_eq!(exactly(Kind::Number, 1.125, look), "exactly 1.125");
        assert_eq!(exactly(Kind::Share, 0.00512, look), "exactly 0.512");
        assert_eq!(exactly(Kind::Share, 0.005, look), "");
        assert_eq!(exactly(Kind::Number, 1.25, look), "");
        assert_eq!(exactly(Kind::Length, 0.15, look), "");
    }
}
