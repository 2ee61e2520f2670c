//! One base, or several alike: where, what it is made of, what governs, its picture, its states and records, what is left open.

use std::sync::Arc;

use gantline_drawing::plate::{PlateOptions, plate, scale_for};
use gantline_drawing::text::Heading;
use gantline_plan::assess::anchorage::{BaseAssessment, BaseUse, Fixed, HandedOn, Used};
use gantline_plan::assess::{Check, Code, UnitAssessment};
use gantline_plan::catalog::{Base, ResolvedUnit};
use gantline_plan::document::PlacementId;
use gantline_plan::quantity;
use glam::DVec2;

use super::base_states::States;
use super::blocks::{
    caution, counted, item, named, paragraph, part, picture, remark, row, section, table, told, words,
};
use super::figures::{force, moment};
use super::given::Given;
use super::kinds::{AlikeBases, test_of};
use super::{base_chain, base_place, base_records};
use crate::paper::{Block, Row};

/// Room for the picture of a plate, mm.
const PLATE_MM: DVec2 = DVec2::new(120.0, 78.0);

/// The section.
pub fn blocks(given: &Given<'_>, index: usize, alike: &AlikeBases) -> Vec<Block> {
    let Some(unit) = given.unit(alike.first) else { return Vec::new() };
    let number = index + 1;
    let Ok(parts) = &unit.resolved else {
        return not_whole(given, number, alike, unit);
    };
    let count = match alike.all.len() {
        1 => String::new(),
        many => format!(", {many} alike"),
    };
    let mut blocks = vec![section(&format!("Base {number}: {}{count}", named(&parts.base.name)))];
    blocks.extend(given.tag_list("Tags:", &alike.all));
    let of_unit = alike.kind.map_or_else(String::new, |kind| format!("Unit {} stands in it. ", kind + 1));
    blocks.push(paragraph(&format!("{of_unit}Figures are those of {}.", given.tag(alike.first))));
    blocks.extend(base_place::blocks(given, &alike.all));
    blocks.extend(base_place::made_of(given, &parts.base, parts.fixing.as_ref(), "Base plate and anchors"));
    let Some(found) = &unit.base else {
        blocks.push(caution("Not judged: it stands on no roof. Nothing of it is met."));
        return blocks;
    };
    blocks.extend(base_place::surroundings(given, unit, found));
    blocks.push(verdict(given, found));
    blocks.extend(of_fixed(given, alike.first, parts, found, Fixed::Base));
    if let Some(foot) = &parts.foot {
        blocks.extend(base_place::made_of(given, &foot.base, foot.fixing.as_ref(), "Foot of the brace"));
        blocks.extend(of_fixed(given, alike.first, parts, found, Fixed::Foot));
    }
    blocks.extend(handed_on(given, &found.handed_on));
    blocks.extend(test(unit));
    blocks
}

fn not_whole(given: &Given<'_>, number: usize, alike: &AlikeBases, unit: &UnitAssessment) -> Vec<Block> {
    let fault = unit.resolved.as_ref().err().map(ToString::to_string).unwrap_or_default();
    let mut blocks = vec![section(&format!("Base {number}: not calculated"))];
    blocks.push(caution(&format!("Bases {}: {fault}. Nothing of them is met.", given.tags(&alike.all))));
    blocks.extend(base_place::blocks(given, &alike.all));
    blocks
}

/// What governs, and whether all was checked.
fn verdict(given: &Given<'_>, found: &BaseAssessment) -> Block {
    let open = found.not_checked().count();
    let left = if open == 0 { String::new() } else { format!(" {open} looks could not be made: see below.") };
    let Some(used) = found.governing() else {
        return caution(&format!("Nothing could be computed: it is not met.{left}"));
    };
    let share = used.share().unwrap_or(f64::INFINITY);
    let cause = used.state.as_ref().map_or_else(String::new, |state| {
        format!(", {}, slew {}", given.combination(state.combination), quantity::angle(state.slew_rad))
    });
    let governs = format!("{}: {}{cause}", used.of.word(), used.look.words());
    let judged = match (share > 1.0, open) {
        (true, _) => "It does not hold.",
        (false, 0) => "It holds: all was checked.",
        (false, _) => "What was checked holds; not all was checked.",
    };
    let said = format!("{judged} Governs: {governs}, use {}.{left}", quantity::utilization(share));
    if found.holds() { paragraph(&said) } else { caution(&said) }
}

/// Picture, states, records and what is left open of base or foot.
fn of_fixed(given: &Given<'_>, id: PlacementId, parts: &ResolvedUnit, found: &BaseAssessment, of: Fixed) -> Vec<Block> {
    let uses: Vec<(usize, &BaseUse)> = found.uses.iter().enumerate().filter(|(_, used)| used.of == of).collect();
    let mut blocks = Vec::new();
    let base = match (of, &parts.foot) {
        (Fixed::Foot, Some(foot)) => &foot.base,
        _ => &parts.base,
    };
    blocks.extend(plate_picture(given, id, base, of));
    let states = States::of(uses.iter().map(|(_, used)| *used));
    blocks.extend(base_records::overview(given, &uses, &states));
    blocks.extend(not_checked(&uses));
    blocks.extend(base_chain::blocks(given, id, &uses));
    blocks.extend(states.blocks(given, base));
    blocks.extend(base_records::records(given, &uses, &states));
    blocks.extend(not_applicable(&uses));
    blocks
}

fn plate_picture(given: &Given<'_>, id: PlacementId, base: &Base, of: Fixed) -> Option<Block> {
    base.anchors.as_ref()?;
    let scale = scale_for(base, PLATE_MM);
    let (units, heading) = (given.units, Heading::LeftOut);
    let options = PlateOptions { scale, units, of, look: None, within_mm: Some(PLATE_MM), heading };
    let drawing = plate(given.plan, given.assessment, id, &options)?;
    let caption = format!(
        "Plate of the {} of {} in the state that governs. Filled anchors are pulled, hatched is what presses, dashed the neutral \
         axis.",
        of.word(),
        given.tag(id)
    );
    Some(picture(&Arc::new(drawing), &caption))
}

/// Each thing that is missing, with all that it leaves unchecked.
fn not_checked(uses: &[(usize, &BaseUse)]) -> Vec<Block> {
    let mut missing: Vec<(&str, Vec<&str>)> = Vec::new();
    for (_, used) in uses {
        let Used::NotChecked(what) = &used.outcome else { continue };
        match missing.iter_mut().find(|(known, _)| known == what) {
            Some((_, looks)) => looks.push(used.look.words()),
            None => missing.push((what, vec![used.look.words()])),
        }
    }
    let told = missing
        .into_iter()
        .map(|(what, looks)| caution(&format!("Not checked, so not met: {}. Missing: {what}.", looks.join("; "))));
    told.collect()
}

fn not_applicable(uses: &[(usize, &BaseUse)]) -> Vec<Block> {
    let why = uses.iter().filter_map(|(_, used)| match &used.outcome {
        Used::NotApplicable(why) => Some(item(&format!("{}: {why}.", used.look.words()))),
        Used::Share(_) | Used::NotChecked(_) => None,
    });
    let why: Vec<Block> = why.collect();
    if why.is_empty() {
        return why;
    }
    std::iter::once(part("What does not apply")).chain(why).collect()
}

/// Actions that reach the structure elsewhere.
fn handed_on(given: &Given<'_>, all: &[HandedOn]) -> Vec<Block> {
    let units = given.units;
    let rows = all.iter().map(|handed| {
        let [fx, fy, fz, mx, my, mz] = handed.action;
        let mut cells = vec![words(&handed.at), words(&given.combination(handed.combination))];
        cells.extend([fx, fy, fz].map(|value| words(&force(value, units))));
        cells.extend([mx, my, mz].map(|value| words(&moment(value, units))));
        row(cells)
    });
    let rows: Vec<Row> = rows.collect();
    let mut columns = vec![told("Where", 1.4), told("Combination", 1.3)];
    columns.extend(["Fx", "Fy", "Fz", "Mx", "My", "Mz"].map(|head| counted(head, 0.8)));
    let Some(handed) = table(columns, rows) else { return Vec::new() };
    vec![
        part("Handed on"),
        remark(
            "For the structural engineer: what reaches the structure elsewhere than under the plate, with its largest moment.",
        ),
        handed,
    ]
}

/// What test is due, in the words of the rule.
fn test(unit: &UnitAssessment) -> Vec<Block> {
    let Some((told, state)) = test_of(unit) else { return Vec::new() };
    let check: Option<&Check> = unit.checks.iter().find(|check| check.code == Code::ProofLoad);
    let open = check.map(super::findings::left_open).unwrap_or_default();
    let words = [told, open.as_str()].into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join("; ");
    vec![part("Test duty"), paragraph(&format!("{words} ({state})."))]
}
