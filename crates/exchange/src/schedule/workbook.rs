//! The schedule as a workbook (XLSX): a first sheet about the job, then a sheet for each table.

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::UnitSystem;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook, Worksheet, XlsxError};

use super::cover::print_cover;
use super::sheet::{held, print_table};
use super::table::Table;
use super::{anchorage, bases, basis, findings, parts, reactions};
use crate::documents::Imprint;
use crate::documents::imprint::CAUTION;

/// Why there is no workbook.
#[derive(Debug, thiserror::Error)]
pub enum ScheduleFault {
    /// The file format can't hold it.
    #[error("the schedule can't be written as a workbook: {0}")]
    Workbook(#[from] XlsxError),
}

/// The file format wants a time of making; where the plan has no readable date it is this one, since there is no clock.
const NO_DATE: (u16, u8, u8) = (2000, 1, 1);

/// Packed quickly rather than small: 6 is usual.
const COMPRESSION: u8 = 2;

/// All tables of the schedule, in the order of the sheets.
pub fn tables(plan: &Plan, assessment: &Assessment) -> Vec<Table> {
    vec![
        bases::bases(plan, assessment),
        anchorage::anchorage(plan, assessment),
        reactions::reactions(plan, assessment),
        parts::parts(plan, assessment),
        findings::findings(plan, assessment),
        basis::basis(plan),
    ]
}

/// The bytes of the workbook; the same plan gives the same bytes.
pub fn workbook(
    plan: &Plan,
    assessment: &Assessment,
    imprint: &Imprint,
    units: UnitSystem,
) -> Result<Vec<u8>, ScheduleFault> {
    let tables = tables(plan, assessment);
    let mut workbook = Workbook::new();
    workbook.set_zip_compression_level(COMPRESSION);
    workbook.set_properties(&properties(imprint)?);
    print_cover(workbook.add_worksheet(), imprint, assessment, &tables, units)?;
    for table in &tables {
        let mut sheet = Worksheet::new();
        print_table(&mut sheet, table, imprint, units)?;
        workbook.push_worksheet(sheet);
    }
    Ok(workbook.save_to_buffer()?)
}

fn properties(imprint: &Imprint) -> Result<DocProperties, XlsxError> {
    let (year, month, day) = imprint.iso_date().unwrap_or(NO_DATE);
    Ok(DocProperties::new()
        .set_title(held(&format!("Schedule of bases: {}", imprint.line())))
        .set_author(held(&imprint.author))
        .set_comment(CAUTION)
        .set_creation_datetime(&ExcelDateTime::from_ymd(year, month, day)?)
        .set_custom_property("Plan SHA-256", imprint.plan.content_sha256.as_str())
        .set_custom_property("Revision", held(&imprint.plan.revision).as_ref())
        .set_custom_property("Load basis", held(&imprint.plan.load_basis).as_ref()))
}
