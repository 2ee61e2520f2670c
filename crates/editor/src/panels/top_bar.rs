//! The top bar: file name, menu, tools as words with drawn icons, undo and redo, the load basis as a sentence.

use egui::{Align, Layout, RichText, Ui};

use crate::command::{Command, Menu, TABLE};
use crate::document::OpenDocument;
use crate::intent::Intent;
use crate::session::Page;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::tools::ToolKind;
use crate::widgets::{Icon, icon_button};

/// Width of the file's name: fixed, so that the tools beside it never move.
const NAME_WIDTH: f32 = 170.0;

const TOOLS: [(ToolKind, Icon); 6] = [
    (ToolKind::Select, Icon::Select),
    (ToolKind::Roof, Icon::Roof),
    (ToolKind::Hole, Icon::Hole),
    (ToolKind::Obstacle, Icon::Obstacle),
    (ToolKind::Unit, Icon::Unit),
    (ToolKind::Measure, Icon::Measure),
];

/// The id by which the menu is given the focus.
pub fn menu_id() -> egui::Id {
    egui::Id::unique("plan menu")
}

/// Shows the bar.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, document: &OpenDocument, intents: &mut Vec<Intent>) {
    ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
        ui.add_space(10.0);
        ui.spacing_mut().item_spacing.x = 2.0;
        plan_menu(ui, sight, document, intents);
        divider(ui, sight);
        for (kind, icon) in TOOLS {
            let command = Command::Tool(kind);
            let entry = command.entry();
            let selected = sight.session.tool.kind() == kind;
            let response = icon_button(ui, sight.look.palette, icon, entry.name, entry.name, selected);
            if response.on_hover_text(entry.hint_with_key(ui.ctx())).clicked() {
                intents.push(Intent::Run(command));
            }
        }
        divider(ui, sight);
        step_button(ui, sight, Command::Undo, Icon::Undo, document.history.undo_name(), intents);
        step_button(ui, sight, Command::Redo, Icon::Redo, document.history.redo_name(), intents);
        divider(ui, sight);
        basis_sentence(ui, sight, intents);
    });
}

fn divider(ui: &mut Ui, sight: &Sight<'_>) {
    ui.add_space(7.0);
    let (rect, _) = ui.allocate_exact_size(egui::vec2(1.0, 22.0), egui::Sense::hover());
    ui.painter().vline(rect.center().x, rect.y_range(), (1.0, sight.look.palette.hairline));
    ui.add_space(7.0);
}

fn plan_menu(ui: &mut Ui, sight: &Sight<'_>, document: &OpenDocument, intents: &mut Vec<Intent>) {
    const LONGEST: usize = 26;
    let mut name: String = document.name().chars().take(LONGEST).collect();
    if name.chars().count() < document.name().chars().count() {
        name.push('…');
    }
    // Room for the mark is kept, so that nothing moves when it comes and goes.
    let text = RichText::new(format!("{name}   ")).family(type_scale::semibold());
    let button = egui::containers::menu::MenuButton::from_button(
        egui::Button::new(text).min_size(egui::vec2(NAME_WIDTH, 28.0)).truncate(),
    );
    let (response, _) = button.ui(ui, |ui| {
        ui.set_min_width(260.0);
        for (index, menu) in [Menu::File, Menu::Edit, Menu::View].into_iter().enumerate() {
            if index > 0 {
                ui.separator();
            }
            let heading = match menu {
                Menu::File => "Plan",
                Menu::Edit => "Edit",
                Menu::View | Menu::Nowhere => "View",
            };
            let words = RichText::new(heading).size(type_scale::SMALL).color(sight.look.palette.ink_soft);
            ui.label(words);
            for entry in TABLE.iter().filter(|entry| entry.menu == menu) {
                let keys = entry.keys_text(ui.ctx());
                let item = egui::Button::new(entry.name).shortcut_text(keys).frame_when_inactive(false);
                if ui.add(item).on_hover_text(entry.hint).clicked() {
                    intents.push(Intent::Run(entry.command));
                    ui.close();
                }
            }
        }
    });
    if document.is_changed() {
        let at = response.rect.right_center() - egui::vec2(11.0, 0.0);
        ui.painter().circle_filled(at, 3.5, sight.look.palette.accent);
    }
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, "Plan menu"));
    if ui.memory(|memory| memory.has_focus(menu_id())) {
        response.request_focus();
    }
    let saved = if document.is_changed() { "not saved" } else { "saved" };
    let place = document.path.as_ref().map_or_else(|| "no file yet".to_owned(), |path| path.display().to_string());
    response.on_hover_text(format!("{place} · {saved}"));
}

fn step_button(
    ui: &mut Ui,
    sight: &Sight<'_>,
    command: Command,
    icon: Icon,
    step: Option<&'static str>,
    intents: &mut Vec<Intent>,
) {
    let entry = command.entry();
    let response =
        ui.add_enabled_ui(step.is_some(), |ui| icon_button(ui, sight.look.palette, icon, "", entry.name, false)).inner;
    let hint = step.map_or_else(|| entry.hint.to_owned(), |step| format!("{}: {step}", entry.name));
    if response.on_hover_text(hint).clicked() {
        intents.push(Intent::Run(command));
    }
}

fn basis_sentence(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let basis = &sight.plan.basis;
    let sentence = crate::words::basis_sentence(basis, sight.look.units);
    let open = basis.unconfirmed();
    let mark = if open == 0 { "" } else { "not confirmed · " };
    let ink = if open == 0 { sight.look.palette.ink } else { sight.look.palette.unchecked };
    let text = RichText::new(format!("Basis: {mark}{sentence}")).color(ink);
    let button = ui.add(egui::Button::new(text).frame_when_inactive(false).truncate());
    button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, format!("Load basis: {mark}{sentence}")));
    let waits = if open == 0 { String::new() } else { format!("\n{open} values wait for someone to confirm them.") };
    if button.on_hover_text(format!("{}\n{}{waits}", basis.name, basis.regime.value)).clicked() {
        intents.push(Intent::Page(Some(Page::Basis)));
    }
}
