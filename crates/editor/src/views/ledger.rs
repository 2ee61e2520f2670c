//! The ledger: every unit with its place, make-up, reactions, reach, tightest clearance and findings. Any column sorts,
//! a box filters, a click or the arrow keys go there.

use std::cmp::Ordering;

use egui::{Align, Align2, Button, FontId, Key, Layout, RichText, ScrollArea, Sense, TextEdit, Ui, vec2};
use egui_extras::{Column as Width, TableBuilder, TableRow};
use gantline_plan::document::ThingId;
use gantline_plan::quantity::{Kind, UnitSystem, digits};

use super::ledger_row::{LedgerRow, rows};
use crate::intent::Intent;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::icon::paint;
use crate::widgets::{Icon, one_line};

/// A column.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Column {
    #[default]
    Tag,
    Edge,
    Along,
    Setback,
    MakeUp,
    Combination,
    FzMax,
    FzMin,
    V,
    M,
    Mz,
    Covered,
    Clearance,
    Findings,
}

impl Column {
    const ALL: [Self; 14] = [
        Self::Tag,
        Self::Edge,
        Self::Along,
        Self::Setback,
        Self::MakeUp,
        Self::Combination,
        Self::FzMax,
        Self::FzMin,
        Self::V,
        Self::M,
        Self::Mz,
        Self::Covered,
        Self::Clearance,
        Self::Findings,
    ];

    /// Heading, width, kind of its figures, and what it is.
    const fn said(self) -> (&'static str, f32, Option<Kind>, &'static str) {
        match self {
            Self::Tag => ("tag", 58.0, None, "The tag of the unit."),
            Self::Edge => ("edge", 104.0, None, "The edge it stands on."),
            Self::Along => ("along", 62.0, Some(Kind::Length), "From the start of the edge."),
            Self::Setback => ("setback", 66.0, Some(Kind::Length), "Mast axis behind the outline."),
            Self::MakeUp => ("make-up", 142.0, None, "Mast, arm and brace."),
            Self::Combination => {
                ("governs", 132.0, None, "Combination with the largest moment at the design level, and its level.")
            }
            Self::FzMax => {
                ("Fz max", 70.0, Some(Kind::Force), "Largest upward force over all combinations of this level.")
            }
            Self::FzMin => ("Fz min", 68.0, Some(Kind::Force), "Largest downward force, negative, at this level."),
            Self::V => ("V", 56.0, Some(Kind::Force), "Largest horizontal force over all combinations of this level."),
            Self::M => ("M", 62.0, Some(Kind::Moment), "Largest moment over all combinations of this level."),
            Self::Mz => ("Mz", 66.0, Some(Kind::Moment), "Largest twist over all combinations of this level."),
            Self::Covered => ("reach", 60.0, Some(Kind::Length), "Facade reached from top to foot."),
            Self::Clearance => ("clearance", 112.0, Some(Kind::Length), "The tightest: has and asks."),
            Self::Findings => ("findings", 92.0, None, "Blocking, caution, not checked."),
        }
    }
}

impl Column {
    /// Feet and inches are wider than meters; words give way to them.
    fn width(self, units: UnitSystem) -> f32 {
        let (_, width, kind, _) = self.said();
        match units {
            UnitSystem::Si => width,
            UnitSystem::UsCustomary if kind == Some(Kind::Length) => width * 1.35,
            UnitSystem::UsCustomary if self.share_of_spare() > 0.0 => width - 52.0,
            UnitSystem::UsCustomary => width,
        }
    }

    /// What it gets of the width that is left over.
    fn share_of_spare(self) -> f32 {
        if matches!(self, Self::MakeUp | Self::Combination) { 0.5 } else { 0.0 }
    }
}

/// Between columns.
const GAP: f32 = 7.0;

/// Width left over when every column has its own.
fn spare(available: f32, units: UnitSystem) -> f32 {
    const BAR: f32 = 12.0;
    let taken: f32 = Column::ALL.iter().map(|column| column.width(units) + GAP).sum();
    (available - taken - BAR).max(0.0)
}

/// How the table is looked at: kept as long as the program runs, saved nowhere.
#[derive(Debug, Clone, Default)]
struct Looking {
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

/// What is missing comes last.
fn compare(a: &LedgerRow, b: &LedgerRow, by: Column) -> Ordering {
    let figures = |a: Option<f64>, b: Option<f64>| match (a, b) {
        (Some(a), Some(b)) => a.total_cmp(&b),
        (a, b) => b.is_some().cmp(&a.is_some()),
    };
    match by {
        Column::Tag => a.tag.cmp(&b.tag),
        Column::Edge => a.edge.cmp(&b.edge).then_with(|| figures(a.along_m, b.along_m)),
        Column::MakeUp => a.make_up.cmp(&b.make_up),
        Column::Combination => a.combination.cmp(&b.combination),
        Column::Findings => a.worst().cmp(&b.worst()),
        Column::Along
        | Column::Setback
        | Column::FzMax
        | Column::FzMin
        | Column::V
        | Column::M
        | Column::Mz
        | Column::Covered
        | Column::Clearance => figures(figure(a, by), figure(b, by)),
    }
}

fn figure(row: &LedgerRow, column: Column) -> Option<f64> {
    match column {
        Column::Along => row.along_m,
        Column::Setback => row.setback_m,
        Column::FzMax => row.fz_max_n,
        Column::FzMin => row.fz_min_n,
        Column::V => row.v_n,
        Column::M => row.m_nm,
        Column::Mz => row.mz_nm,
        Column::Covered => row.covered_m,
        Column::Clearance => row.clearance.map(|(clear_m, limit_m, _)| clear_m - limit_m),
        Column::Tag | Column::Edge | Column::MakeUp | Column::Combination | Column::Findings => None,
    }
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
    let spare = spare(ui.available_width(), sight.look.units);
    // A click selects; it is no tab stop of its own, since there may be hundreds of rows.
    let mut builder = TableBuilder::new(ui)
        .id_salt("ledger")
        .sense(Sense::CLICK)
        .vscroll(true)
        .auto_shrink(false)
        .min_scrolled_height(0.0);
    for column in Column::ALL {
        builder =
            builder.column(Width::exact(column.width(sight.look.units) + column.share_of_spare() * spare).clip(true));
    }
    if let Some(to) = moved {
        builder = builder.scroll_to_row(to, None);
    }
    let header = builder.header(30.0, |mut row| {
        for column in Column::ALL {
            row.col(|ui| heading(ui, sight, column, looking));
        }
    });
    header.body(|body| {
        body.rows(ROW, rows.len(), |mut row| {
            let Some(unit) = rows.get(row.index()) else { return };
            let thing = ThingId::Placement(unit.id);
            row.set_selected(sight.session.selection.has(thing));
            for column in Column::ALL {
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

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_plan::assess::Tally;
    use gantline_plan::document::PlacementId;

    fn row(number: u64, m_nm: Option<f64>) -> LedgerRow {
        LedgerRow {
            id: PlacementId::from_number(number),
            tag: format!("B-{number:02}"),
            edge: String::new(),
            along_m: None,
            setback_m: None,
            make_up: String::new(),
            combination: String::new(),
            fz_max_n: None,
            fz_min_n: None,
            v_n: None,
            m_nm,
            mz_nm: None,
            covered_m: None,
            clearance: None,
            tally: Tally::default(),
        }
    }

    #[test]
    fn units_without_figures_come_after_those_with_them() {
        let mut rows = [row(1, None), row(2, Some(3.0)), row(3, Some(-1.0))];
        rows.sort_by(|a, b| compare(a, b, Column::M));
        assert_eq!(rows.map(|row| row.tag), ["B-03", "B-02", "B-01"]);
    }

    #[test]
    fn every_column_stands_once_and_fits_the_narrow_window() {
        for (index, column) in Column::ALL.iter().enumerate() {
            assert!(!Column::ALL[index + 1..].contains(column));
        }
        // The drawer of a window 1280 points wide has 1260 between its margins.
        let taken: f32 = Column::ALL.iter().map(|column| column.width(UnitSystem::Si) + GAP).sum();
        assert!(taken <= 1260.0, "{taken}");
    }
}
