//! The ledger: every unit with its place, make-up, reactions, reach, tightest clearance and findings. Any column sorts,
//! a box filters, a click or the arrow keys go there.

use egui::{Align, Align2, Button, FontId, Key, Layout, RichText, ScrollArea, Sense, TextEdit, Ui, vec2};
use egui_extras::{Column as Width, TableBuilder, TableRow};
use gantline_plan::document::ThingId;
use gantline_plan::quantity::{self, Kind, UnitSystem, digits};

use super::ledger_columns::{Column, ColumnSet, GAP, compare, figure};
use super::ledger_row::{LedgerRow, rows};
use crate::intent::Intent;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::icon::paint;
use crate::widgets::{Icon, one_line};

/// Width left over when every column has its own.
fn spare(available: f32, columns: &[Column], units: UnitSystem) -> f32 {
    const BAR: f32 = 12.0;
    let taken: f32 = columns.iter().map(|column| column.width(units) + GAP).sum();
    (available - taken - BAR).max(0.0)
}

/// How the table is looked at: kept as long as the program runs, saved nowhere.
#[derive(Debug, Clone, Default)]
struct Looking {
    shown: ColumnSet,
    by: Column,
    downward: bool,
    filter: String,
}

const ROW: f32 = 24.0;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let palette = sight.look.palette;
    if sight.plan.placements.is_empty() {
        ui.label(RichText::new("No unit yet. Unit tool (U), then click an edge.").color(palette.ink_soft));
        return;
    }
    let id = egui::Id::unique("ledger");
    let mut looking = ui.data(|data| data.get_temp::<Looking>(id)).unwrap_or_default();
    let mut all = rows(sight);
    ui.horizontal(|ui| {
        for set in ColumnSet::EACH {
            let button = Button::selectable(looking.shown == set, set.name());
            if ui.add(button).on_hover_text("Which columns are shown.").clicked() && looking.shown != set {
                looking.shown = set;
                // What is sorted by a column that is not shown can't be followed.
                if !set.columns().contains(&looking.by) {
                    (looking.by, looking.downward) = (Column::Tag, false);
                }
            }
        }
        ui.add_space(12.0);
        let label = ui.label(RichText::new("Filter").color(palette.ink_soft));
        ui.add(TextEdit::singleline(&mut looking.filter).desired_width(200.0)).labelled_by(label.id);
        let wanted = looking.filter.trim().to_lowercase();
        let count = all.len();
        all.retain(|row| wanted.is_empty() || row.text(sight.look.units).to_lowercase().contains(&wanted));
        let units = if count == 1 { "unit" } else { "units" };
        let words =
            if wanted.is_empty() { format!("{count} {units}") } else { format!("{} of {count} {units}", all.len()) };
        ui.label(RichText::new(words).color(palette.ink_soft));
    });
    all.sort_by(|a, b| {
        let order = compare(a, b, looking.by).then_with(|| a.tag.cmp(&b.tag));
        if looking.downward { order.reverse() } else { order }
    });
    let moved = keys(ui, sight, &all, intents);
    ScrollArea::horizontal().auto_shrink(false).show(ui, |ui| table(ui, sight, &all, &mut looking, moved, intents));
    ui.data_mut(|data| data.insert_temp(id, looking));
}

/// The table is one tab stop; inside it the arrow keys move. Gives the row that was moved to.
fn keys(ui: &mut Ui, sight: &Sight<'_>, rows: &[LedgerRow], intents: &mut Vec<Intent>) -> Option<usize> {
    let id = egui::Id::unique("ledger rows");
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 2.0), Sense::hover());
    let response = ui.interact(rect, id, Sense::focusable_noninteractive());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Table, true, "Units: arrow keys go through them"));
    if !response.has_focus() {
        return None;
    }
    ui.painter().hline(rect.x_range(), rect.center().y, (2.0, sight.look.palette.accent));
    let filter = egui::EventFilter { vertical_arrows: true, ..egui::EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    let (up, down, first, last) =
        (pressed(Key::ArrowUp), pressed(Key::ArrowDown), pressed(Key::Home), pressed(Key::End));
    let now = rows.iter().position(|row| sight.session.selection.has(ThingId::Placement(row.id)));
    let end = rows.len().checked_sub(1)?;
    let to = match (up, down, first, last) {
        (true, ..) => now.map_or(end, |at| at.saturating_sub(1)),
        (_, true, ..) => now.map_or(0, |at| (at + 1).min(end)),
        (_, _, true, _) => 0,
        (.., true) => end,
        _ => return None,
    };
    intents.push(Intent::GoTo(ThingId::Placement(rows[to].id), None));
    Some(to)
}

fn table(
    ui: &mut Ui,
    sight: &Sight<'_>,
    rows: &[LedgerRow],
    looking: &mut Looking,
    moved: Option<usize>,
    intents: &mut Vec<Intent>,
) {
    ui.spacing_mut().item_spacing = vec2(GAP, 0.0);
    let columns = looking.shown.columns();
    let spare = spare(ui.available_width(), columns, sight.look.units);
    // A click selects; it is no tab stop of its own, since there may be hundreds of rows.
    let mut builder = TableBuilder::new(ui)
        .id_salt("ledger")
        .sense(Sense::CLICK)
        .vscroll(true)
        .auto_shrink(false)
        .min_scrolled_height(0.0);
    for column in columns {
        builder =
            builder.column(Width::exact(column.width(sight.look.units) + column.share_of_spare() * spare).clip(true));
    }
    if let Some(to) = moved {
        builder = builder.scroll_to_row(to, None);
    }
    let header = builder.header(30.0, |mut row| {
        for &column in columns {
            row.col(|ui| heading(ui, sight, column, looking));
        }
    });
    header.body(|body| {
        body.rows(ROW, rows.len(), |mut row| {
            let Some(unit) = rows.get(row.index()) else { return };
            let thing = ThingId::Placement(unit.id);
            row.set_selected(sight.session.selection.has(thing));
            for &column in columns {
                cell(&mut row, sight, unit, column);
            }
            let response = row.response();
            let spoken = unit.text(sight.look.units);
            let selected = sight.session.selection.has(thing);
            response.widget_info(|| {
                let mut info =
                    egui::WidgetInfo::selected(egui::Role::Row, true, selected, format!("Unit {}", unit.tag));
                info.current_text_value = Some(spoken.clone());
                info
            });
            if response.clicked() {
                intents.push(Intent::GoTo(thing, None));
            }
        });
    });
}

fn heading(ui: &mut Ui, sight: &Sight<'_>, column: Column, looking: &mut Looking) {
    let (name, _, kind, hint) = column.said();
    let unit = kind.map_or("", |kind| kind.unit(sight.look.units));
    let text = if unit.is_empty() { name.to_owned() } else { format!("{name} {unit}") };
    let sorted = looking.by == column;
    let layout =
        if kind.is_some() { Layout::right_to_left(Align::Center) } else { Layout::left_to_right(Align::Center) };
    ui.with_layout(layout, |ui| {
        ui.spacing_mut().button_padding = vec2(2.0, 2.0);
        let ink = if sorted { sight.look.palette.ink } else { sight.look.palette.ink_soft };
        let mark = match (sorted, looking.downward) {
            (true, true) => " ↓",
            (true, false) => " ↑",
            (false, _) => "",
        };
        let text = RichText::new(format!("{text}{mark}")).size(type_scale::SMALL).color(ink);
        let response = ui.add(Button::new(text).frame_when_inactive(false));
        response.widget_info(|| {
            egui::WidgetInfo::selected(egui::Role::ColumnHeader, true, sorted, format!("Sort by {name}"))
        });
        if response.on_hover_text(hint).clicked() {
            looking.downward = sorted && !looking.downward;
            looking.by = column;
        }
    });
}

fn cell(row: &mut TableRow<'_, '_>, sight: &Sight<'_>, unit: &LedgerRow, column: Column) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    row.col(|ui| {
        let rect = ui.max_rect();
        let text = |words: &str| one_line(ui, rect.left_center(), rect.width(), words, palette.ink);
        let right = |words: &str, ink| {
            let font = FontId::proportional(type_scale::BODY);
            ui.painter().text(rect.right_center(), Align2::RIGHT_CENTER, words, font, ink);
        };
        match column {
            Column::Tag => text(&unit.tag),
            Column::Edge => text(&unit.edge),
            Column::MakeUp => text(&unit.make_up),
            Column::Combination => text(&unit.combination),
            Column::Findings => findings(ui, sight, unit),
            Column::Base => text(&unit.base.kind),
            Column::Fixing => text(&unit.base.fixing),
            Column::Mode => text(&unit.base.mode),
            Column::Test => text(&unit.base.test),
            Column::Utilization => used(ui, sight, unit),
            Column::Clearance => match unit.clearance {
                Some((clear_m, limit_m, conflict)) => {
                    let has = digits(Kind::Length, clear_m, units);
                    let asks = digits(Kind::Length, limit_m, units);
                    if conflict {
                        let square = egui::Rect::from_min_size(rect.left_center() - vec2(0.0, 6.0), vec2(12.0, 12.0));
                        paint(ui.painter(), Icon::Close, square, palette.blocking);
                    }
                    right(&format!("{has} of {asks}"), palette.ink);
                }
                None => right("–", palette.ink_faint),
            },
            _ => match (figure(unit, column), column.said().2) {
                (Some(value), Some(kind)) => right(&digits(kind, value, units), palette.ink),
                _ => right("–", palette.unchecked),
            },
        }
    });
}

/// The share that is used; a mark before it says that something was not checked, a cross that it is too much.
fn used(ui: &Ui, sight: &Sight<'_>, unit: &LedgerRow) {
    let palette = sight.look.palette;
    let rect = ui.max_rect();
    let (words, ink) = match unit.base.utilization {
        None => ("not checked".to_owned(), palette.unchecked),
        Some(share) if share > 1.0 => (quantity::utilization(share), palette.blocking),
        Some(share) => (quantity::utilization(share), palette.ink),
    };
    let font = FontId::proportional(type_scale::BODY);
    ui.painter().text(rect.right_center(), Align2::RIGHT_CENTER, words, font, ink);
    let square = egui::Rect::from_min_size(rect.left_center() - vec2(0.0, 6.0), vec2(12.0, 12.0));
    if unit.base.utilization.is_some_and(|share| share > 1.0) {
        paint(ui.painter(), Icon::Close, square, palette.blocking);
    } else if !unit.base.all_checked {
        paint(ui.painter(), Icon::Unchecked, square, palette.unchecked);
    }
}

/// Counts with their marks; none at all is said as a word.
fn findings(ui: &Ui, sight: &Sight<'_>, unit: &LedgerRow) {
    let palette = sight.look.palette;
    let rect = ui.max_rect();
    let counts = [
        (unit.tally.blocking, Icon::Blocking, palette.blocking),
        (unit.tally.caution, Icon::Caution, palette.caution),
        (unit.tally.not_checked, Icon::Unchecked, palette.unchecked),
    ];
    let font = FontId::proportional(type_scale::BODY);
    let mut x = rect.min.x;
    for (count, icon, ink) in counts.into_iter().filter(|(count, ..)| *count > 0) {
        let square = egui::Rect::from_min_size(egui::pos2(x, rect.center().y - 6.0), vec2(12.0, 12.0));
        paint(ui.painter(), icon, square, ink);
        let at = egui::pos2(x + 14.0, rect.center().y);
        ui.painter().text(at, Align2::LEFT_CENTER, count.to_string(), font.clone(), ink);
        x += 30.0;
    }
    if x == rect.min.x {
        ui.painter().text(rect.left_center(), Align2::LEFT_CENTER, "all meet", font, palette.meets);
    }
}
