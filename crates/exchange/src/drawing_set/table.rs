//! Tables on sheets: they flow through columns of a sheet and on to the next sheet, with their head in each.

use glam::DVec2;

use super::lettering::{STRONG, TEXT, TITLE, rule};
use super::paper_size::Area;
use crate::paper::OnPage;

/// Between columns of a sheet, mm.
const BETWEEN_MM: f64 = 12.0;
/// Between cells, mm.
const CELL_MM: f64 = 1.6;
/// Over and under a row's words, mm.
const ROW_MM: f64 = 0.9;

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What stands over it.
    pub title: String,
    /// Its columns from left to right.
    pub columns: Vec<Column>,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// A column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// Its width, mm.
    pub width_mm: f64,
    /// Whether its cells end at its right side, as figures do.
    pub is_figures: bool,
}

/// A row.
#[derive(Debug, Clone, PartialEq)]
pub enum Row {
    /// Words over all columns, for the rows that follow.
    Group(String),
    /// A cell for each column.
    Cells(Vec<String>),
}

impl Column {
    /// A column of words.
    pub fn words(head: impl Into<String>, width_mm: f64) -> Self {
        Self { head: head.into(), width_mm, is_figures: false }
    }

    /// A column of figures.
    pub fn figures(head: impl Into<String>, width_mm: f64) -> Self {
        Self { head: head.into(), width_mm, is_figures: true }
    }
}

impl Table {
    /// Width of the table, mm.
    pub fn width_mm(&self) -> f64 {
        self.columns.iter().map(|column| column.width_mm).sum()
    }
}

/// Fills the columns of a first area, then those of as many sheets as it takes.
pub struct Flow {
    pages: Vec<Vec<OnPage>>,
    waiting: Vec<Area>,
    next: Area,
    width_mm: f64,
    slot: Area,
    y: f64,
}

impl Flow {
    /// Begins in an area and goes on in areas of further sheets, in columns of this width.
    pub fn new(first: Area, next: Area, width_mm: f64) -> Self {
        let mut waiting = columns_of(first, width_mm);
        let slot = waiting.pop().unwrap_or(first);
        Self { pages: vec![Vec::new()], waiting, next, width_mm, slot, y: slot.max_mm.y }
    }

    /// What stands on each sheet.
    pub fn done(self) -> Vec<Vec<OnPage>> {
        self.pages
    }

    /// Sets a table.
    pub fn table(&mut self, table: &Table) {
        let mut rows = table.rows.iter().peekable();
        let head_mm = TITLE.line_mm() + head_height_mm(table);
        let first_mm = table.rows.first().map_or(0.0, |row| height_mm(table, row));
        if self.y < self.slot.max_mm.y {
            self.y -= 2.0 * TEXT.line_mm();
        }
        self.make_room(head_mm + 2.0 * first_mm);
        self.head(table, "");
        while let Some(row) = rows.next() {
            let mut needed_mm = height_mm(table, row);
            if let (Row::Group(_), Some(next)) = (row, rows.peek()) {
                needed_mm += height_mm(table, next);
            }
            if self.make_room(needed_mm) {
                self.head(table, ", continued");
            }
            self.row(table, row);
        }
    }

    /// Goes on in the next column where so much does not fit into what is left of this one; tells whether it did.
    fn make_room(&mut self, needed_mm: f64) -> bool {
        let is_fresh = self.y >= self.slot.max_mm.y;
        if is_fresh || self.y - needed_mm >= self.slot.min_mm.y {
            return false;
        }
        if self.waiting.is_empty() {
            self.waiting = columns_of(self.next, self.width_mm);
            self.pages.push(Vec::new());
        }
        self.slot = self.waiting.pop().unwrap_or(self.next);
        self.y = self.slot.max_mm.y;
        true
    }

    fn head(&mut self, table: &Table, continued: &str) {
        self.y -= TITLE.size_mm;
        let left = self.slot.min_mm.x;
        self.put(TITLE.at(format!("{}{continued}", table.title), DVec2::new(left, self.y)));
        self.y -= TITLE.line_mm() - TITLE.size_mm + 1.0;
        self.put(rule(DVec2::new(left, self.y), table.width_mm(), 0.35));
        let lines = table.columns.iter().map(|column| STRONG.lines(&column.head, column.width_mm - CELL_MM));
        let top = self.y - ROW_MM;
        let mut x = left;
        for (column, lines) in table.columns.iter().zip(lines) {
            for (index, line) in lines.into_iter().enumerate() {
                let y = top - TEXT.size_mm - TEXT.line_mm() * index as f64;
                let end = x + column.width_mm - CELL_MM;
                self.put(if column.is_figures {
                    STRONG.ending_at(line, DVec2::new(end, y))
                } else {
                    STRONG.at(line, DVec2::new(x, y))
                });
            }
            x += column.width_mm;
        }
        self.y -= head_height_mm(table);
        self.put(rule(DVec2::new(left, self.y), table.width_mm(), 0.35));
    }

    fn row(&mut self, table: &Table, row: &Row) {
        let left = self.slot.min_mm.x;
        let top = self.y - ROW_MM - TEXT.size_mm;
        match row {
            Row::Group(words) => {
                for (index, line) in STRONG.lines(words, table.width_mm()).into_iter().enumerate() {
                    self.put(STRONG.at(line, DVec2::new(left, top - TEXT.line_mm() * index as f64)));
                }
            }
            Row::Cells(cells) => {
                let mut x = left;
                for (column, cell) in table.columns.iter().zip(cells) {
                    let end = x + column.width_mm - CELL_MM;
                    for (index, line) in TEXT.lines(cell, column.width_mm - CELL_MM).into_iter().enumerate() {
                        let y = top - TEXT.line_mm() * index as f64;
                        self.put(if column.is_figures {
                            TEXT.ending_at(line, DVec2::new(end, y))
                        } else {
                            TEXT.at(line, DVec2::new(x, y))
                        });
                    }
                    x += column.width_mm;
                }
            }
        }
        self.y -= height_mm(table, row);
        self.put(rule(DVec2::new(left, self.y), table.width_mm(), 0.13));
    }

    fn put(&mut self, thing: OnPage) {
        if let Some(page) = self.pages.last_mut() {
            page.push(thing);
        }
    }
}

fn height_of_lines_mm(lines: usize) -> f64 {
    TEXT.line_mm() * lines.max(1) as f64 + 2.0 * ROW_MM
}

fn head_height_mm(table: &Table) -> f64 {
    let lines = table.columns.iter().map(|column| STRONG.lines(&column.head, column.width_mm - CELL_MM).len());
    height_of_lines_mm(lines.max().unwrap_or(1))
}

fn height_mm(table: &Table, row: &Row) -> f64 {
    match row {
        Row::Group(words) => height_of_lines_mm(STRONG.lines(words, table.width_mm()).len()),
        Row::Cells(cells) => {
            let columns = table.columns.iter().zip(cells);
            let lines = columns.map(|(column, cell)| TEXT.lines(cell, column.width_mm - CELL_MM).len());
            height_of_lines_mm(lines.max().unwrap_or(1))
        }
    }
}

/// Columns of a sheet, the last one first; one at least.
fn columns_of(area: Area, width_mm: f64) -> Vec<Area> {
    let count = ((area.size_mm().x + BETWEEN_MM) / (width_mm + BETWEEN_MM)).floor().clamp(1.0, 20.0) as u32;
    let column = |index: u32| {
        let left = area.min_mm.x + f64::from(index) * (width_mm + BETWEEN_MM);
        Area { min_mm: DVec2::new(left, area.min_mm.y), max_mm: DVec2::new(left + width_mm, area.max_mm.y) }
    };
    (0..count).rev().map(column).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(width: f64, height: f64) -> Area {
        Area { min_mm: DVec2::ZERO, max_mm: DVec2::new(width, height) }
    }

    #[test]
    fn no_row_is_lost_where_a_table_goes_on() {
        let rows: Vec<Row> = (0..100).map(|row| Row::Cells(vec![format!("row {row}"), "1.0".to_owned()])).collect();
        let columns = vec![Column::words("Tag", 30.0), Column::figures("x", 20.0)];
        let table = Table { title: "Places".to_owned(), columns, rows };
        let mut flow = Flow::new(area(60.0, 80.0), area(120.0, 80.0), 50.0);
        flow.table(&table);
        let pages = flow.done();
        let words = |page: &Vec<OnPage>| {
            let words = page.iter().filter_map(|thing| match thing {
                OnPage::Words(words) => Some((words.words.clone(), words.at_mm)),
                _ => None,
            });
            words.collect::<Vec<_>>()
        };
        let all: Vec<_> = pages.iter().flat_map(words).collect();
        assert!(pages.len() > 2);
        for row in 0..100 {
            assert_eq!(all.iter().filter(|(words, _)| *words == format!("row {row}")).count(), 1);
        }
        assert!(all.iter().all(|(_, at)| at.y >= 0.0 && at.y <= 80.0));
        assert!(words(&pages[1]).iter().filter(|(words, _)| words == "Places, continued").count() == 2, "two columns");
    }
}
