//! The dialog about a file that is to lie under the plan: that it is read, why it can't, or which of its pages.

use egui::{Id, Modal, RichText, ScrollArea, Ui};
use gantline_plan::quantity::length;

use crate::command::Command;
use crate::document::underlay_worker::Brought;
use crate::intent::Intent;
use crate::session::{UnderlayDialog, UnderlayStage, UnderlayWish};
use crate::sight::Look;
use crate::theme::type_scale;

/// Width of the dialog, and the most that its list of pages takes in height.
const WIDTH: f32 = 520.0;
const PAGES: f32 = 360.0;

/// Shows the dialog.
pub fn show(ui: &mut Ui, look: Look<'_>, dialog: &UnderlayDialog, intents: &mut Vec<Intent>) {
    let frame = egui::Frame::popup(&ui.ctx().global_style()).inner_margin(egui::Margin::same(20));
    let shown = Modal::new(Id::unique("underlay dialog")).frame(frame).show(ui.ctx(), |ui| {
        ui.set_width(WIDTH);
        ui.label(RichText::new("Underlay").size(type_scale::HEADING + 3.0).family(type_scale::semibold()));
        let name = dialog.path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        ui.label(RichText::new(name).color(look.palette.ink_soft));
        ui.add_space(8.0);
        match &dialog.stage {
            UnderlayStage::Reading => {
                ui.label("Reading…");
            }
            UnderlayStage::Refused(why) => {
                ui.label(RichText::new(why).color(look.palette.blocking));
                ui.label(RichText::new("The plan stays as it is.").color(look.palette.ink_soft));
            }
            UnderlayStage::Choosing(brought) => pages(ui, look, brought, intents),
        }
        ui.add_space(12.0);
        ui.horizontal(|ui| {
            let is_refused = matches!(dialog.stage, UnderlayStage::Refused(_));
            if is_refused && ui.button("Choose another…").clicked() {
                intents.push(Intent::Underlay(UnderlayWish::Cancel));
                intents.push(Intent::Run(Command::Underlay));
            }
            if ui.button(if is_refused { "Close" } else { "Cancel" }).clicked() {
                intents.push(Intent::Underlay(UnderlayWish::Cancel));
            }
        });
    });
    if shown.should_close() {
        intents.push(Intent::Underlay(UnderlayWish::Cancel));
    }
}

fn pages(ui: &mut Ui, look: Look<'_>, brought: &Brought, intents: &mut Vec<Intent>) {
    let count = brought.extents.len();
    ui.label(format!("{count} pages: which one? Another page can be laid from the same file later."));
    ui.add_space(6.0);
    let on_paper_m = brought.attachment.kind().on_paper_m().unwrap_or(1.0);
    let row = type_scale::ROW + ui.spacing().item_spacing.y;
    ScrollArea::vertical().max_height(PAGES).auto_shrink([false, true]).show_rows(ui, row, count, |ui, shown| {
        for index in shown {
            let Some(extent) = brought.extents.get(index) else { continue };
            let size = extent.size() * on_paper_m;
            let size = format!("{} × {}", length(size.x, look.units), length(size.y, look.units));
            let words = format!("Page {}, {size}", index + 1);
            let button = egui::Button::new(words).min_size(egui::vec2(WIDTH - 16.0, type_scale::ROW));
            if ui.add(button).clicked() {
                intents.push(Intent::Underlay(UnderlayWish::Lay(index as u32 + 1)));
            }
        }
    });
}
