//! A table as a sheet of the workbook: imprint and caution on top, heads that stay in sight, real numbers, set up to print.

use std::borrow::Cow;
use std::collections::BTreeMap;

use gantline_plan::quantity::{Kind, UnitSystem};
use rust_xlsxwriter::{Color, Format, FormatAlign, FormatBorder, Worksheet, XlsxError};

use super::table::{Cell, Counts, Head, Table};
use crate::documents::Imprint;
use crate::documents::imprint::CAUTION;

/// Row of the heads, counted from 0: title, caution and what is to be known stand above it.
const HEAD_ROW: u32 = 3;
/// Excel holds no more in a cell.
const MOST_LETTERS: usize = 32_767;
/// Excel holds no more in a footer.
const MOST_IN_FOOTER: usize = 255;
/// Margins of the page, inches: Excel counts in no other unit.
const MARGIN_IN: f64 = 0.4;
/// Room for the footer, inches.
const FOOTER_IN: f64 = 0.6;
/// Numbers of paper sizes in the file format (ECMA-376, 18.3.1.63): A3, and 11 by 17 inches.
const A3: u8 = 8;
const TABLOID: u8 = 17;
/// Gray of the heads' ground.
const HEAD_GROUND: Color = Color::RGB(0x00E6_E6E4);

/// Prints a table.
pub fn print_table(
    sheet: &mut Worksheet,
    table: &Table,
    imprint: &Imprint,
    units: UnitSystem,
) -> Result<(), XlsxError> {
    sheet.set_name(table.name)?;
    for (column, head) in (0_u16..).zip(&table.heads) {
        sheet.set_column_width(column, head.width)?;
        sheet.set_column_format(column, &column_format(head, units))?;
    }
    print_top(sheet, &format!("{}: {}", table.name, imprint.line()), &table.about)?;
    let bold = Format::new()
        .set_bold()
        .set_text_wrap()
        .set_align(FormatAlign::Top)
        .set_background_color(HEAD_GROUND)
        .set_border_bottom(FormatBorder::Thin);
    for (column, head) in (0_u16..).zip(&table.heads) {
        sheet.write_string_with_format(HEAD_ROW, column, head.with_unit(units), &bold)?;
    }
    let mut formats = BTreeMap::new();
    for (row, cells) in (HEAD_ROW + 1..).zip(&table.rows) {
        for (column, cell) in (0_u16..).zip(cells) {
            let head = table.heads.get(usize::from(column));
            print_cell(sheet, (row, column), cell, head, (units, &mut formats))?;
        }
    }
    sheet.set_freeze_panes(HEAD_ROW + 1, table.kept_columns)?;
    sheet.set_repeat_rows(HEAD_ROW, HEAD_ROW)?;
    if let Ok(last) = u16::try_from(table.heads.len().saturating_sub(1)) {
        let last_row = HEAD_ROW + u32::try_from(table.rows.len()).unwrap_or(0);
        sheet.autofilter(HEAD_ROW, 0, last_row.max(HEAD_ROW + 1), last)?;
    }
    set_up_page(sheet, imprint, units);
    Ok(())
}

/// Title, caution and what is to be known, over the table.
pub fn print_top(sheet: &mut Worksheet, title: &str, about: &str) -> Result<(), XlsxError> {
    let line = Format::new().set_align(FormatAlign::Left);
    let title_format = line.clone().set_bold().set_font_size(13);
    let caution = line.clone().set_bold().set_font_color(Color::RGB(0x00A3_3A00));
    sheet.write_string_with_format(0, 0, held(title), &title_format)?;
    sheet.write_string_with_format(1, 0, CAUTION, &caution)?;
    sheet.write_string_with_format(2, 0, held(about), &line)?;
    Ok(())
}

/// Landscape, as wide as one page, with the imprint and the page's number below.
pub fn set_up_page(sheet: &mut Worksheet, imprint: &Imprint, units: UnitSystem) {
    sheet.set_landscape();
    sheet.set_paper_size(match units {
        UnitSystem::Si => A3,
        UnitSystem::UsCustomary => TABLOID,
    });
    sheet.set_print_fit_to_pages(1, 0);
    sheet.set_margins(MARGIN_IN, MARGIN_IN, MARGIN_IN, FOOTER_IN, MARGIN_IN, MARGIN_IN / 2.0);
    sheet.set_footer(footer(imprint));
}

/// In a footer a sign of its own begins with "&".
fn footer(imprint: &Imprint) -> String {
    let right = "&RPage &P of &N";
    let hash = format!(" · plan {}", imprint.short_hash());
    let room = MOST_IN_FOOTER - right.len() - hash.chars().count() - 2;
    let mut line = String::new();
    let mut used = 0;
    for letter in imprint.line().chars() {
        let signs = if letter == '&' { 2 } else { 1 };
        if used + signs > room {
            break;
        }
        used += signs;
        line.push_str(if letter == '&' { "&&" } else { "" });
        if letter != '&' {
            line.push(letter);
        }
    }
    format!("&L{line}{hash}{right}")
}

/// The format of a column's figures, and of words that may need several lines.
fn column_format(head: &Head, units: UnitSystem) -> Format {
    let top = Format::new().set_align(FormatAlign::Top);
    match head.counts {
        Counts::Only(kind) => top.set_num_format(digits(kind, units)),
        Counts::Anything => top.set_text_wrap(),
    }
}

/// As many digits as are shown on the screen; lengths keep their millimeters.
const fn digits(kind: Kind, units: UnitSystem) -> &'static str {
    match (kind, units) {
        (Kind::Length, _) => "0.000",
        (Kind::Force | Kind::Moment, UnitSystem::UsCustomary) => "0",
        // A share a hair beyond the limit must not read as the limit: all its digits are shown.
        (Kind::Share, _) => "0.0#####",
        (Kind::Area | Kind::Stress | Kind::Mass | Kind::Angle, _) => "0.0",
        (Kind::Force | Kind::Moment | Kind::Number, _) => "0.00",
    }
}

fn print_cell(
    sheet: &mut Worksheet,
    (row, column): (u32, u16),
    cell: &Cell,
    head: Option<&Head>,
    (units, formats): (UnitSystem, &mut BTreeMap<Kind, Format>),
) -> Result<(), XlsxError> {
    match cell {
        Cell::Empty => {}
        Cell::Text(words) => {
            sheet.write_string(row, column, held(words))?;
        }
        Cell::UnitOf(kind) => {
            sheet.write_string(row, column, kind.column_unit(units))?;
        }
        Cell::Count(count) => {
            sheet.write_number(row, column, *count as f64)?;
        }
        Cell::Amount(kind, figure) => {
            let shown = kind.in_shown_unit(figure.value(), units);
            if head.is_some_and(|head| head.counts == Counts::Only(*kind)) {
                sheet.write_number(row, column, shown)?;
            } else {
                let new = || Format::new().set_align(FormatAlign::Top).set_num_format(digits(*kind, units));
                let format = formats.entry(*kind).or_insert_with(new);
                sheet.write_number_with_format(row, column, shown, format)?;
            }
        }
    }
    Ok(())
}

/// Words that a cell can hold, without signs that the file format has no room for. They are written as words whatever
/// they begin with: nothing here is ever a formula.
pub fn held(words: &str) -> Cow<'_, str> {
    let is_held = |letter: char| letter == '\n' || !letter.is_control() && !matches!(letter, '\u{fffe}' | '\u{ffff}');
    // As many bytes hold at most as many letters.
    if words.len() <= MOST_LETTERS && words.chars().all(is_held) {
        return Cow::Borrowed(words);
    }
    Cow::Owned(words.chars().filter(|&letter| is_held(letter)).take(MOST_LETTERS).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_plan::basis::{DesignCode, presets};
    use gantline_plan::document::Plan;

    /// Witness: ECMA-376 18.3.1.46 counts at most 255 signs, and "&&" stands for one "&".
    #[test]
    fn a_footer_holds_any_job() {
        let mut plan = Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode());
        plan.title.job = "Harbor & Sons ".repeat(40);
        let text = footer(&Imprint::of(&plan, None));
        assert!(text.chars().count() <= MOST_IN_FOOTER, "{text}");
        assert!(text.starts_with("&LHarbor && Sons") && text.ends_with("&RPage &P of &N"), "{text}");
    }
}
