//! What each look at a base came to: bars that open to their records, what was not checked, what doesn't apply.

use egui::{CollapsingHeader, Id, RichText, Ui};
use gantline_plan::assess::anchorage::{BaseAssessment, BaseUse, Fixed, Look, Used};

use super::base::cause;
use super::{base_record, of_selection};
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::icon::inline;
use crate::widgets::{Icon, Opening, opening_utilization_row};

/// Which record is open: kept as long as the program runs, saved nowhere, and the same for every unit, so that units can be
/// compared.
type Opened = Option<(Fixed, Look)>;

fn opened_id() -> Id {
    Id::unique("opened record of a base")
}

/// The look whose record is open at base or foot.
pub fn opened(ui: &Ui, of: Fixed) -> Option<Look> {
    let (at, look) = ui.data(|data| data.get_temp::<Opened>(opened_id())).flatten()?;
    (at == of).then_some(look)
}

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, base: &BaseAssessment, of: Fixed) {
    let uses: Vec<&BaseUse> = base.uses.iter().filter(|used| used.of == of).collect();
    let governs = base.worst(of).map(|used| used.look);
    ui.scope(|ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        for used in &uses {
            let Some(share) = used.share() else { continue };
            let open = opened(ui, of) == Some(used.look);
            let hint = used.state.as_ref().map_or_else(String::new, |state| cause(sight, state, sight.look.units));
            let name = used.look.words();
            let row = Opening { name, utilization: share, governs: governs == Some(used.look), open };
            // A name alone is not one thing: base and foot have the same looks.
            let response =
                ui.push_id((of, used.look), |ui| opening_utilization_row(ui, sight.look.palette, row, &hint));
            if response.inner.clicked() {
                let now: Opened = if open { None } else { Some((of, used.look)) };
                ui.data_mut(|data| data.insert_temp(opened_id(), now));
            }
            if open {
                base_record::show(ui, sight, used);
            }
        }
    });
    not_checked(ui, sight, &uses);
    not_applicable(ui, sight, &uses, of);
}

/// One block for each thing that is missing, with all that it leaves unchecked.
fn not_checked(ui: &mut Ui, sight: &Sight<'_>, uses: &[&BaseUse]) {
    let mut missing: Vec<(&str, Vec<&'static str>)> = Vec::new();
    for used in uses {
        let Used::NotChecked(what) = &used.outcome else { continue };
        match missing.iter_mut().find(|(known, _)| *known == what.as_str()) {
            Some((_, looks)) => looks.push(used.look.words()),
            None => missing.push((what, vec![used.look.words()])),
        }
    }
    let palette = sight.look.palette;
    for (what, looks) in missing {
        ui.horizontal_top(|ui| {
            inline(ui, Icon::Unchecked, palette.unchecked);
            ui.vertical(|ui| {
                ui.spacing_mut().item_spacing.y = 1.0;
                let name = format!("Not checked: {}", looks.join("; "));
                ui.label(RichText::new(name).color(palette.unchecked));
                of_selection::soft(ui, sight, what);
            });
        });
    }
}

/// Folded away, with the reasons.
fn not_applicable(ui: &mut Ui, sight: &Sight<'_>, uses: &[&BaseUse], of: Fixed) {
    let why = |used: &&BaseUse| match &used.outcome {
        Used::NotApplicable(why) => Some((used.look.words(), why.clone())),
        Used::Share(_) | Used::NotChecked(_) => None,
    };
    let all: Vec<(&str, String)> = uses.iter().filter_map(why).collect();
    if all.is_empty() {
        return;
    }
    let words = if all.len() == 1 { "1 does not apply".to_owned() } else { format!("{} don't apply", all.len()) };
    let text = RichText::new(words).size(type_scale::SMALL).color(sight.look.palette.ink_soft);
    CollapsingHeader::new(text).id_salt(("looks that don't apply", of)).show_unindented(ui, |ui| {
        for (look, why) in all {
            of_selection::soft(ui, sight, format!("{look}: {why}"));
        }
    });
}
