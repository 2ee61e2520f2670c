//! The first sheet: what the workbook is about, what may be done with it, how the checks came out, what is in it.

use gantline_plan::assess::Assessment;
use gantline_plan::quantity::UnitSystem;
use rust_xlsxwriter::{Format, FormatAlign, Worksheet, XlsxError};

use super::findings::tally_words;
use super::sheet::{held, print_top, set_up_page};
use super::table::Table;
use crate::answers::reactions_answer::AXES;
use crate::documents::Imprint;

/// Name of the sheet.
const NAME: &str = "About";
/// Row in which the imprint begins, counted from 0.
const FIRST_ROW: u32 = 4;
/// Widths of label and text, in characters.
const WIDTHS: (f64, f64) = (26.0, 120.0);

/// Prints the first sheet.
pub fn print_cover(
    sheet: &mut Worksheet,
    imprint: &Imprint,
    assessment: &Assessment,
    tables: &[Table],
    units: UnitSystem,
) -> Result<(), XlsxError> {
    sheet.set_name(NAME)?;
    sheet.set_column_width(0, WIDTHS.0)?;
    sheet.set_column_width(1, WIDTHS.1)?;
    print_top(sheet, &format!("Schedule of bases: {}", imprint.line()), &tally_words(assessment.tally()))?;
    let label = Format::new().set_bold().set_align(FormatAlign::Top);
    let words = Format::new().set_text_wrap().set_align(FormatAlign::Top).set_align(FormatAlign::Left);
    let mut row = FIRST_ROW;
    let mut line = |name: &str, text: &str| -> Result<(), XlsxError> {
        sheet.write_string_with_format(row, 0, name, &label)?;
        sheet.write_string_with_format(row, 1, held(text), &words)?;
        row += 1;
        Ok(())
    };
    for (name, text) in imprint.rows() {
        line(name, if text.is_empty() { "not entered" } else { &text })?;
    }
    line("Axes and signs", AXES)?;
    line(
        "Units",
        match units {
            UnitSystem::Si => "SI: meters, kilonewtons, kilonewton meters, kilograms, degrees",
            UnitSystem::UsCustomary => "US customary: feet, pounds of force, pound feet, pounds, degrees",
        },
    )?;
    for table in tables {
        line(table.name, &format!("{} rows. {}", table.rows.len(), table.about))?;
    }
    set_up_page(sheet, imprint, units);
    Ok(())
}
