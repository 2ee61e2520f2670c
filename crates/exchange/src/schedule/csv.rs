//! A table as CSV for other programs: SI figures, keys that end in their unit, and the imprint in the last columns of
//! every line, so that a line stands alone.

use super::table::{Cell, Table, si_symbol};
use crate::answers::csv::harmless;
use crate::documents::Imprint;

/// Keys of the imprint's columns.
const IMPRINT_KEYS: [&str; 6] = ["job", "revision", "date", "load_basis", "plan_sha256", "caution"];

/// The table as CSV text.
pub fn csv(table: &Table, imprint: &Imprint) -> Result<String, ::csv::Error> {
    let plan = &imprint.plan;
    let imprint = [
        &plan.job,
        &plan.revision,
        &imprint.date,
        &plan.load_basis,
        &plan.content_sha256,
        gantline_drawing::sheet::CAUTION,
    ]
    .map(harmless);
    let mut out = ::csv::Writer::from_writer(Vec::new());
    let keys = table.heads.iter().map(super::table::Head::key_with_unit);
    out.write_record(keys.chain(IMPRINT_KEYS.map(str::to_owned)))?;
    for row in &table.rows {
        out.write_record(row.iter().map(text).chain(imprint.iter().cloned()))?;
    }
    let bytes = out.into_inner().map_err(|fault| ::csv::Error::from(fault.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

fn text(cell: &Cell) -> String {
    match cell {
        Cell::Empty => String::new(),
        Cell::Text(words) => harmless(words),
        Cell::Amount(_, figure) => figure.value().to_string(),
        Cell::UnitOf(kind) => si_symbol(*kind).to_owned(),
        Cell::Count(count) => count.to_string(),
    }
}
