//! The table of the basis: every figure that something was judged by, with its source and who stands behind it.

use gantline_plan::basis::{Confirmation, TestDuty};
use gantline_plan::document::Plan;
use gantline_plan::quantity::Kind;

use super::table::{Cell, Column, Table};
use crate::documents::imprint::standing_words;

/// A figure, or words, with where they come from.
struct Row<'a> {
    group: String,
    name: String,
    value: Value,
    source: &'a str,
    standing: &'a Confirmation,
}

/// What has a source.
enum Value {
    Figure(Kind, f64),
    Words(String),
}

/// The table.
pub fn basis(plan: &Plan) -> Table {
    let (basis, code) = (&plan.basis, &plan.code);
    let figures = basis.figures();
    let mut rows = vec![
        Row {
            group: "Basis".to_owned(),
            name: "regime".to_owned(),
            value: Value::Words(basis.regime.value.clone()),
            source: &basis.regime.source,
            standing: &basis.regime.standing,
        },
        Row {
            group: "Basis".to_owned(),
            name: "resistances are reduced by factors as well".to_owned(),
            value: Value::Words(if basis.resistance_factors.value { "yes" } else { "no" }.to_owned()),
            source: &basis.resistance_factors.source,
            standing: &basis.resistance_factors.standing,
        },
    ];
    rows.extend(figures.iter().map(|figure| Row {
        group: figure.group.clone(),
        name: figure.name.to_owned(),
        value: Value::Figure(figure.kind, figure.sourced.value),
        source: &figure.sourced.source,
        standing: &figure.sourced.standing,
    }));
    rows.extend(basis.tests.iter().map(|(kind, duty)| Row {
        group: format!("Test of {}", kind.words()),
        name: "duty".to_owned(),
        value: Value::Words(duty_words(&duty.value)),
        source: &duty.source,
        standing: &duty.standing,
    }));
    rows.extend(code.factors.iter().map(|(name, factor)| Row {
        group: format!("Design code: {}", code.edition),
        name: name.words().to_owned(),
        value: Value::Figure(Kind::Number, factor.value),
        source: &factor.source,
        standing: &factor.standing,
    }));
    let combinations: Vec<String> =
        basis.combinations.iter().map(|one| format!("{} ({})", one.name, one.level.name())).collect();
    let about = format!("{}. Combinations: {}.", basis.name, combinations.join("; "));
    Table::of("Basis", about, 2, &columns(), rows)
}

/// The proof test's own figures stand in rows of their own.
fn duty_words(duty: &TestDuty) -> String {
    match duty {
        TestDuty::Proof(proof) => format!("proof test, {}; repeated {}", proof.direction, proof.interval),
        TestDuty::None | TestDuty::ByEngineer => duty.words(),
    }
}

fn columns<'a>() -> Vec<Column<Row<'a>>> {
    let words = Column::of_anything;
    vec![
        words("Group", "group", 34.0, |row| Cell::text(row.group.clone())),
        words("What", "what", 40.0, |row| Cell::text(row.name.clone())),
        words("Value", "value", 30.0, |row| match &row.value {
            Value::Figure(kind, value) => Cell::amount(*kind, *value),
            Value::Words(words) => Cell::text(words.clone()),
        }),
        words("Unit", "value_unit", 7.0, |row| match row.value {
            Value::Figure(kind, _) => Cell::UnitOf(kind),
            Value::Words(_) => Cell::Empty,
        }),
        words("Source", "source", 60.0, |row| Cell::text(row.source)),
        words("Who stands behind it", "standing", 30.0, |row| Cell::text(standing_words(row.standing))),
    ]
}
