//! The table of findings: every check that is not met or could not be made, worst first, with how all checks came out.

use gantline_plan::assess::{Amount, Assessment, Check, Outcome, Tally};
use gantline_plan::document::Plan;
use gantline_plan::quantity::Kind::Length;

use super::table::{Cell, Column, Table};
use crate::answers::names::name_of;

/// A finding on its plan.
struct Finding<'a> {
    plan: &'a Plan,
    check: &'a Check,
}

/// The table.
pub fn findings(plan: &Plan, assessment: &Assessment) -> Table {
    let rows = assessment.findings().into_iter().map(|check| Finding { plan, check });
    let told = tally_words(assessment.tally());
    let mut table = Table::of("Findings", told.clone(), 1, &columns(), rows);
    // A table without rows would not say whether anything was looked at.
    if table.rows.is_empty() {
        let cell = |key| match key {
            "state" => Cell::text("no finding"),
            "detail" => Cell::text(told.clone()),
            _ => Cell::Empty,
        };
        let row = table.heads.iter().map(|head| cell(head.key)).collect();
        table.rows.push(row);
    }
    table
}

/// The counts of all four outcomes in one line.
pub fn tally_words(tally: Tally) -> String {
    format!("{tally}. What could not be checked is not passed.")
}

fn columns<'a>() -> Vec<Column<Finding<'a>>> {
    let words = Column::of_anything;
    vec![
        words("State", "state", 11.0, |finding| Cell::text(finding.state())),
        words("Rule", "code", 22.0, |finding| Cell::text(finding.check.code.name())),
        words("What it asks for", "asks", 36.0, |finding| Cell::text(finding.check.code.asks())),
        words("About", "about", 24.0, |finding| {
            let names = finding.check.about.iter().map(|&thing| name_of(finding.plan, thing));
            Cell::text(names.collect::<Vec<_>>().join(", "))
        }),
        Column::of(Length, "x", "x", |finding| Cell::amount_if(Length, finding.check.at.map(|place| place.at.x))),
        Column::of(Length, "y", "y", |finding| Cell::amount_if(Length, finding.check.at.map(|place| place.at.y))),
        Column::of(Length, "Level", "level", |finding| {
            Cell::amount_if(Length, finding.check.at.and_then(|place| place.level_m))
        }),
        words("Measured", "measured", 10.0, |finding| figure(finding.check.measured)),
        words("Unit", "measured_unit", 6.0, |finding| unit(finding.check.measured)),
        words("Asked for", "bound", 9.0, |finding| {
            let bound = |is_least| if is_least { "at least" } else { "at most" };
            Cell::text_if(finding.check.limit.as_ref().map(|limit| bound(limit.is_least)))
        }),
        words("Limit", "limit", 10.0, |finding| figure(finding.limit())),
        words("Unit of the limit", "limit_unit", 7.0, |finding| unit(finding.limit())),
        words("Source of the limit", "source", 32.0, |finding| {
            Cell::text_if(finding.check.limit.as_ref().map(|limit| limit.source.clone()))
        }),
        words("What is missing", "missing", 32.0, |finding| match &finding.check.outcome {
            Outcome::NotChecked(what) => Cell::text(what.clone()),
            _ => Cell::Empty,
        }),
        words("Particulars", "detail", 40.0, |finding| Cell::text(finding.check.detail.clone())),
        words("Way out", "way_out", 40.0, |finding| Cell::text(finding.check.way_out.clone())),
    ]
}

impl Finding<'_> {
    fn state(&self) -> &'static str {
        match &self.check.outcome {
            Outcome::Fails(severity) => severity.word(),
            Outcome::NotChecked(_) => "not checked",
            Outcome::Meets => "met",
            Outcome::NotApplicable(_) => "not applicable",
        }
    }

    fn limit(&self) -> Option<Amount> {
        self.check.limit.as_ref().map(|limit| limit.amount)
    }
}

fn figure(amount: Option<Amount>) -> Cell {
    amount.map_or(Cell::Empty, |amount| Cell::amount(amount.kind, amount.value))
}

fn unit(amount: Option<Amount>) -> Cell {
    amount.filter(|amount| amount.value.is_finite()).map_or(Cell::Empty, |amount| Cell::UnitOf(amount.kind))
}
