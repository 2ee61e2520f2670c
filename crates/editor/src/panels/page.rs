//! A page over the sheet: which one it is, and its frame.

use egui::{Align, Id, Layout, Modal, RichText, ScrollArea, Ui};
use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;

use super::pages;
use crate::intent::Intent;
use crate::preferences::Preferences;
use crate::session::Page;
use crate::session::page::PathQuestion;
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::{Icon, icon_button};

/// Shows a page.
#[allow(clippy::too_many_arguments, reason = "a page may need any of what the window has")]
pub fn show(
    ui: &mut Ui,
    look: Look<'_>,
    page: &Page,
    plan: Option<&Plan>,
    assessment: &Assessment,
    preferences: &Preferences,
    text: &mut String,
    intents: &mut Vec<Intent>,
) {
    let (heading, width) = heading(page);
    let height = ui.ctx().content_rect().height() - 140.0;
    let frame = egui::Frame::popup(&ui.ctx().global_style()).inner_margin(egui::Margin::same(20));
    let shown = Modal::new(Id::unique(("page", heading))).frame(frame).show(ui.ctx(), |ui| {
        ui.set_width(width);
        ui.horizontal(|ui| {
            ui.label(RichText::new(heading).size(type_scale::HEADING + 3.0).family(type_scale::semibold()));
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if icon_button(ui, look.palette, Icon::Close, "", "Close page", false).clicked() {
                    intents.push(Intent::Page(None));
                }
            });
        });
        ui.add_space(4.0);
        ScrollArea::vertical()
            .max_height(height)
            .min_scrolled_height(height.min(560.0))
            .auto_shrink([false, true])
            .show(ui, |ui| match page {
                Page::Shortcuts => pages::shortcuts::show(ui, look),
                Page::Preferences => pages::preferences::show(ui, look, preferences, intents),
                Page::FindTag => {
                    if let Some(plan) = plan {
                        pages::find_tag::show(ui, look, plan, assessment, text, intents);
                    }
                }
                Page::Basis => {
                    if let Some(plan) = plan {
                        pages::basis::show(ui, look, plan, intents);
                    }
                }
                Page::Path(question) => pages::path::show(ui, look, *question, text, intents),
                Page::CantOpen { path, what, left_out } => {
                    pages::cant_open::show(ui, look, path, what, left_out.as_deref(), intents);
                }
            });
    });
    if shown.should_close() {
        intents.push(Intent::Page(None));
    }
}

fn heading(page: &Page) -> (&'static str, f32) {
    match page {
        Page::Shortcuts => ("Shortcuts and words", 760.0),
        Page::Preferences => ("Preferences", 460.0),
        Page::FindTag => ("Find a tag", 420.0),
        Page::Basis => ("Load basis and design code", 700.0),
        Page::Path(PathQuestion::Open) => ("Open a plan", 560.0),
        Page::Path(PathQuestion::Drawing) => ("Outline from a drawing", 560.0),
        Page::Path(PathQuestion::Underlay) => ("Underlay", 560.0),
        Page::Path(PathQuestion::Save) => ("Save the plan", 560.0),
        Page::Path(PathQuestion::Folder) => ("Write documents", 560.0),
        Page::Path(PathQuestion::Picture) => ("Write the drawing as a picture", 560.0),
        Page::CantOpen { .. } => ("This file can't be opened", 560.0),
    }
}
