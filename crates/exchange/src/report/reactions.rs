//! What comes to the base of a unit: every combination with its level and the factors inside it, its extremes with all that acts
//! at the same time, and how the governing ones come about.

use gantline_plan::assess::{CombinationResult, Component, ReactionSet, Reactions, Sense, Unavailable};
use gantline_plan::document::PlacementId;
use gantline_plan::explain::FigureId;
use gantline_plan::quantity::{self, UnitSystem};

use super::blocks::{caution, counted, named, paragraph, part, remark, row, strong, table, told, words};
use super::figures::{PULL, force, level, moment, number, pull};
use super::given::Given;
use super::traced;
use crate::paper::{Block, Column, Row};

/// Of these extremes of the governing combination it is told how they come about.
const TOLD: [(Component, Sense); 4] =
    [(Component::M, Sense::Max), (Component::Fz, Sense::Min), (Component::Fz, Sense::Max), (Component::V, Sense::Max)];

/// The parts of the section.
pub fn blocks(given: &Given<'_>, id: PlacementId, found: &Reactions) -> Vec<Block> {
    let mut blocks = vec![part("Reactions at the base")];
    blocks.push(paragraph(
        "Each row is a set: one component is largest or smallest, and the six stand together as they act at the same time. Sets of \
         different levels are never added.",
    ));
    for result in &found.combinations {
        blocks.extend(of_combination(result, given.units));
    }
    let governing = found.governing().and_then(|one| found.combinations.iter().position(|result| result == one));
    let Some(combination) = governing else { return blocks };
    let Some(result) = found.combinations.get(combination).filter(|result| !result.sets.is_empty()) else {
        return blocks;
    };
    blocks.push(part("How the governing reactions come about"));
    blocks.push(paragraph(&format!("{}, {}: {}.", named(&result.name), level(result.level), result.inside)));
    let extremes = TOLD.map(|(component, sense)| FigureId::Reaction { unit: id, combination, component, sense });
    let brace = [Sense::Max, Sense::Min].map(|sense| FigureId::BraceForce { unit: id, combination, sense });
    let brace = brace.into_iter().filter(|_| result.brace_axial.is_some());
    let foot =
        result.foot.iter().filter(|extreme| matches!(extreme.component, Component::Fz | Component::V)).map(|extreme| {
            FigureId::FootReaction { unit: id, combination, component: extreme.component, sense: extreme.sense }
        });
    for figure in extremes.into_iter().chain(brace).chain(foot) {
        blocks.extend(given.explain(&figure).iter().flat_map(|trace| traced::whole(trace, given.units)));
    }
    blocks
}

fn of_combination(result: &CombinationResult, units: UnitSystem) -> Vec<Block> {
    let head = format!("{}, {}: {}", named(&result.name), level(result.level), result.inside);
    let mut blocks = vec![paragraph(&head)];
    match &result.unavailable {
        Some(Unavailable::Missing(what)) => blocks.push(caution(&format!("Not calculated; missing: {what}."))),
        Some(Unavailable::DoesNotApply(why)) => blocks.push(remark(&format!("Does not apply: {why}."))),
        None => {}
    }
    blocks.extend(table(set_columns(), result.sets.iter().map(|set| of_set(set, units)).collect()));
    if let Some([most, least]) = result.brace_axial {
        let told = |name: &str, value: f64| format!("{name} {}", force(value, units));
        let both = [told("largest", most.value), told("smallest", least.value)].join(", ");
        blocks.push(paragraph(&format!("Force in the brace, tension positive: {both}.")));
    }
    let foot = result.foot.iter().map(|extreme| {
        let parts = extreme.concurrent.to_array().map(|part| words(&force(part, units)));
        let name = words(&format!("{} {}", extreme.component.symbol(), extreme.sense.word()));
        let cause = [words(&pull(extreme.pull)), words(&quantity::angle(extreme.slew_rad))];
        row(std::iter::once(name).chain(parts).chain(cause).collect())
    });
    let foot: Vec<Row> = foot.collect();
    if !foot.is_empty() {
        blocks.push(paragraph("At the foot of the brace, action on the structure:"));
    }
    let columns = vec![
        told("Extreme", 0.8),
        counted("Fx", 1.0),
        counted("Fy", 1.0),
        counted("Fz", 1.0),
        told(PULL, 1.8),
        counted("Slew", 0.6),
    ];
    blocks.extend(table(columns, foot));
    blocks
}

fn set_columns() -> Vec<Column> {
    let mut columns = vec![told("Extreme", 0.8)];
    columns.extend(["Fx", "Fy", "Fz"].map(|head| counted(head, 0.85)));
    columns.extend(["Mx", "My", "Mz"].map(|head| counted(head, 0.95)));
    columns.extend([told(PULL, 1.4), counted("Slew", 0.6), counted("Factor on weight", 0.6)]);
    columns
}

fn of_set(set: &ReactionSet, units: UnitSystem) -> Row {
    let [fx, fy, fz, mx, my, mz] = set.concurrent;
    let mut cells = vec![words(&format!("{} {}", set.component.symbol(), set.sense.word()))];
    cells.extend([fx, fy, fz].map(|value| words(&force(value, units))));
    cells.extend([mx, my, mz].map(|value| words(&moment(value, units))));
    cells.extend([words(&pull(set.pull)), words(&quantity::angle(set.slew_rad)), words(&number(set.weight_factor))]);
    if set.component == Component::M { strong(cells) } else { row(cells) }
}
