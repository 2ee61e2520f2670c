//! Fixing products in use, with the sources of their values; what a product does not state is said to be missing.

use gantline_plan::catalog::{AciValues, EnValues, Fixing, PullOut};
use gantline_plan::quantity::{self, UnitSystem};

use super::blocks::{facts, named, paragraph, part, remark, section};
use super::figures::{length, number};
use super::given::Given;
use crate::paper::Block;

/// The section.
pub fn blocks(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![section("Fixings")];
    let mut known: Vec<&Fixing> = Vec::new();
    for kind in &given.kinds {
        let Some(Ok(unit)) = given.unit(kind.first).map(|unit| unit.resolved.as_ref()) else { continue };
        let foot = unit.foot.as_ref().and_then(|foot| foot.fixing.as_ref());
        for fixing in unit.fixing.iter().chain(foot) {
            if !known.contains(&fixing) {
                known.push(fixing);
            }
        }
    }
    if known.is_empty() {
        blocks.push(paragraph("No base of the plan has a fixing product."));
    }
    for fixing in known {
        blocks.push(Block::Together(of_fixing(fixing, given.units)));
    }
    blocks
}

fn of_fixing(fixing: &Fixing, units: UnitSystem) -> Vec<Block> {
    let stress = |value_pa| quantity::traced(value_pa, "Pa", units);
    let mut rows = vec![
        ("How it holds", fixing.kind.words().to_owned()),
        ("Diameter", length(fixing.diameter_m, units)),
        ("Stress area", quantity::traced(fixing.stress_area_m2, "m2", units)),
        ("Steel", format!("ultimate {}, yield {}", stress(fixing.ultimate_pa), stress(fixing.yield_pa))),
    ];
    let least = &fixing.least;
    let stated = [("spacing", least.spacing_m), ("edge", least.edge_m), ("thickness", least.thickness_m)];
    let stated = stated.map(|(name, value)| format!("{name} {}", or_missing(value, |value| length(value, units))));
    rows.push(("Least distances", stated.join(", ")));
    rows.push(("To EN 1992-4", en(&fixing.en, units)));
    rows.push(("To ACI 318-19", aci(&fixing.aci, units)));
    let validated = or_missing(fixing.validated_design_n, |value| super::figures::force(value, units));
    rows.push(("Validated design tension of one", validated));
    let mut blocks = vec![part(&named(&fixing.name)), remark(&format!("Source: {}", named(&fixing.source)))];
    blocks.extend(facts(rows));
    blocks
}

fn or_missing<T>(value: Option<T>, told: impl Fn(T) -> String) -> String {
    value.map_or_else(|| "not stated".to_owned(), told)
}

fn pull_out(value: Option<PullOut>, units: UnitSystem) -> String {
    or_missing(value, |value| match value {
        PullOut::Resistance { resistance_n } => super::figures::force(resistance_n, units),
        PullOut::NotDecisive => "does not decide".to_owned(),
    })
}

fn en(values: &EnValues, units: UnitSystem) -> String {
    let stress = |value| or_missing(value, |value| quantity::traced(value, "Pa", units));
    format!(
        "installation factor {}; bond cracked {}, uncracked {}; pull-out cracked {}, uncracked {}; pry-out k8 {}; splitting \
         spacing {}, edge {}",
        or_missing(values.gamma_inst, number),
        stress(values.bond_cracked_pa),
        stress(values.bond_uncracked_pa),
        pull_out(values.pull_out_cracked, units),
        pull_out(values.pull_out_uncracked, units),
        or_missing(values.k8, number),
        or_missing(values.splitting_spacing_m, |value| length(value, units)),
        or_missing(values.splitting_edge_m, |value| length(value, units)),
    )
}

fn aci(values: &AciValues, units: UnitSystem) -> String {
    let stress = |value| or_missing(value, |value| quantity::traced(value, "Pa", units));
    let category = values.category.map(|category| match category {
        gantline_plan::catalog::AciCategory::One => "1",
        gantline_plan::catalog::AciCategory::Two => "2",
        gantline_plan::catalog::AciCategory::Three => "3",
    });
    format!(
        "category {}; bond cracked {}, uncracked {}; pull-out cracked {}, uncracked {}; critical edge {}",
        or_missing(category, str::to_owned),
        stress(values.bond_cracked_pa),
        stress(values.bond_uncracked_pa),
        pull_out(values.pull_out_cracked, units),
        pull_out(values.pull_out_uncracked, units),
        or_missing(values.critical_edge_m, |value| length(value, units)),
    )
}
