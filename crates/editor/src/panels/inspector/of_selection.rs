//! Which panel shows what is selected, in a column of fixed width.

use egui::{Frame, Margin, RichText, ScrollArea, Ui};
use gantline_plan::assess::Check;

use super::{edges, nothing, obstacle, roof, several, underlay, unit, units};
use crate::document::OpenDocument;
use crate::intent::Intent;
use crate::session::{Drawer, Selected};
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::{finding_row, section};

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, document: &OpenDocument, intents: &mut Vec<Intent>) {
    Frame::new().inner_margin(Margin::same(type_scale::MARGIN)).show(ui, |ui| {
        let selected = sight.session.selection.shown();
        // Each selection has a scroll of its own, and fields that remember nothing of another's.
        let salt = sight.session.selection.iter().collect::<Vec<_>>();
        ScrollArea::vertical().id_salt(("inspector", &salt)).auto_shrink(false).show(ui, |ui| {
            // The bar that scrolls lies over the right margin, not over figures.
            ui.set_max_width(ui.available_width() - 8.0);
            ui.push_id(&salt, |ui| match selected {
                Selected::Nothing => nothing::show(ui, sight, document, intents),
                Selected::Roof(id) => roof::show(ui, sight, id, intents),
                Selected::Edges(ids) => edges::show(ui, sight, &ids, intents),
                Selected::Unit(id) => unit::show(ui, sight, id, intents),
                Selected::Units(ids) => units::show(ui, sight, &ids, intents),
                Selected::Obstacle(id) => obstacle::show(ui, sight, id, intents),
                Selected::Underlay(id) => underlay::show(ui, sight, id, intents),
                Selected::Several => several::show(ui, sight, intents),
            });
        });
    });
}

/// The heading of a panel.
pub(super) fn heading(ui: &mut Ui, words: &str) {
    ui.label(RichText::new(words).size(type_scale::HEADING + 2.0).family(type_scale::semibold()));
    ui.add_space(2.0);
}

/// Words of second rank.
pub(super) fn soft(ui: &mut Ui, sight: &Sight<'_>, words: impl Into<String>) {
    ui.label(RichText::new(words).size(type_scale::SMALL).color(sight.look.palette.ink_soft));
}

/// Most findings that the inspector lists: all of them stand in the drawer, where only those in sight are laid out.
const LISTED: usize = 60;

/// Findings, worst first; without any it is said how many checks were made.
pub(super) fn findings<'a>(
    ui: &mut Ui,
    sight: &Sight<'_>,
    checks: impl IntoIterator<Item = &'a Check>,
    intents: &mut Vec<Intent>,
) {
    section(ui, sight.look.palette, "Findings", |ui| {
        let all: Vec<&Check> = checks.into_iter().collect();
        let mut found: Vec<&Check> = all.iter().copied().filter(|check| check.is_finding()).collect();
        found.sort_by_key(|check| (check.rank(), check.code));
        let tally = gantline_plan::assess::Tally::of(all.iter().copied());
        soft(ui, sight, crate::views::findings::tally_sentence(&tally));
        for check in found.iter().take(LISTED) {
            finding_row(ui, sight.look, sight.plan, check, intents);
        }
        if found.len() > LISTED && ui.button(format!("{} more in the findings drawer", found.len() - LISTED)).clicked()
        {
            intents.push(Intent::Drawer(Some(Drawer::Findings)));
        }
    });
}
