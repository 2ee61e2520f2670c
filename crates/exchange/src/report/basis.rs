//! The basis: every figure that something was judged by, with its source and who stands behind it; which cases act together.

use gantline_plan::basis::{Combined, Confirmation, NeighborRule, TestDuty};
use gantline_plan::quantity::{Kind, number};

use super::blocks::{chapter, named, paragraph, row, section, strong, table, told, words};
use super::figures::level;
use super::given::Given;
use crate::documents::imprint::standing_words;
use crate::paper::{Block, Row};

/// Something with a source: what it is, its value in words, its source, who stands behind it.
pub struct WithSource {
    /// Case, or the rules it belongs to.
    pub group: String,
    /// What it is.
    pub name: String,
    /// Its value as it is shown.
    pub value: String,
    /// Where it was read.
    pub source: String,
    /// Who stands behind it.
    pub standing: Confirmation,
}

/// The chapter.
pub fn basis_chapter(given: &Given<'_>) -> Vec<Block> {
    let (basis, code) = (&given.plan.basis, &given.plan.code);
    let mut blocks = vec![chapter("Basis")];
    blocks.push(paragraph(&format!(
        "Load basis: {}. Design code: {}; anchors in concrete to {}.",
        named(&basis.name),
        named(&code.edition),
        code.anchorage.words()
    )));
    blocks.push(section("Figures with their sources"));
    blocks.extend(table(
        vec![told("What", 2.0), told("Value", 1.1), told("Source", 3.0), told("Who stands behind it", 1.4)],
        with_source(given).iter().map(of_value).collect(),
    ));
    blocks.push(paragraph(match basis.rules.neighbors {
        NeighborRule::NoneWithinOutreaches => {
            "Of units that stand nearer to each other than the sum of their outreaches only one stands at a time."
        }
        NeighborRule::Any => "Any units may stand beside each other at once.",
    }));
    blocks.push(section("What acts together"));
    blocks.push(paragraph(
        "A combination has one level, and levels are never mixed. Loads with their factors inside are not factored again.",
    ));
    blocks.extend(table(
        vec![told("Combination", 1.6), told("Level", 0.9), told("Cases with their combination factors", 3.0)],
        basis.combinations.iter().map(|combined| of_combination(given, combined)).collect(),
    ));
    blocks
}

/// Everything of basis and design code that has a source, in order.
pub fn with_source(given: &Given<'_>) -> Vec<WithSource> {
    let (basis, code, units) = (&given.plan.basis, &given.plan.code, given.units);
    let mut all = vec![
        WithSource {
            group: "Basis".to_owned(),
            name: "regime".to_owned(),
            value: basis.regime.value.clone(),
            source: basis.regime.source.clone(),
            standing: basis.regime.standing.clone(),
        },
        WithSource {
            group: "Basis".to_owned(),
            name: "resistances are reduced by factors as well".to_owned(),
            value: if basis.resistance_factors.value { "yes" } else { "no" }.to_owned(),
            source: basis.resistance_factors.source.clone(),
            standing: basis.resistance_factors.standing.clone(),
        },
    ];
    all.extend(basis.figures().into_iter().map(|figure| WithSource {
        value: number(figure.kind, figure.sourced.value, units),
        group: figure.group,
        name: figure.name.to_owned(),
        source: figure.sourced.source,
        standing: figure.sourced.standing,
    }));
    all.extend(basis.tests.iter().map(|(kind, duty)| WithSource {
        group: format!("Test of {}", kind.words()),
        name: "duty".to_owned(),
        value: duty_words(&duty.value),
        source: duty.source.clone(),
        standing: duty.standing.clone(),
    }));
    all.extend(code.factors.iter().map(|(name, factor)| WithSource {
        group: "Design code".to_owned(),
        name: name.words().to_owned(),
        value: number(Kind::Number, factor.value, units),
        source: factor.source.clone(),
        standing: factor.standing.clone(),
    }));
    let bonds = [
        ("default bond strength, cracked concrete", &code.bond_defaults.cracked_pa),
        ("default bond strength, uncracked concrete", &code.bond_defaults.uncracked_pa),
    ];
    all.extend(bonds.map(|(name, bond)| WithSource {
        group: "Design code".to_owned(),
        name: name.to_owned(),
        value: gantline_plan::quantity::traced(bond.value, "Pa", units),
        source: bond.source.clone(),
        standing: bond.standing.clone(),
    }));
    all
}

/// The proof test's own figures stand in rows of their own.
fn duty_words(duty: &TestDuty) -> String {
    match duty {
        TestDuty::Proof(proof) => format!("proof test, {}; repeated {}", proof.direction, proof.interval),
        TestDuty::None | TestDuty::ByEngineer => duty.words(),
    }
}

/// What nobody stands behind stands out.
fn of_value(value: &WithSource) -> Row {
    let cells = vec![
        words(&format!("{}: {}", named(&value.group), value.name)),
        words(&value.value),
        words(&value.source),
        words(&standing_words(&value.standing)),
    ];
    if value.standing == Confirmation::Default { strong(cells) } else { row(cells) }
}

fn of_combination(given: &Given<'_>, combined: &Combined) -> Row {
    let terms = combined.terms.iter().map(|term| {
        let case = given.plan.basis.cases.get(&term.case);
        let name = case.map_or_else(|| format!("no such case: {}", term.case.0), |case| named(&case.name));
        format!("{} × {name}", super::figures::number(term.factor))
    });
    let terms: Vec<String> = terms.collect();
    row(vec![words(&named(&combined.name)), words(&level(combined.level)), words(&terms.join(" + "))])
}
