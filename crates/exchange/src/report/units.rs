//! Units: each make-up once, with its picture, what acts, what comes to its base, its members, joints and movements.

use gantline_plan::catalog::{ResolvedUnit, SlewStops};
use gantline_plan::quantity::{self, UnitSystem};

use super::blocks::{caution, chapter, facts, named, paragraph, remark, section};
use super::given::Given;
use super::kinds::UnitKind;
use super::{diagrams, members, reactions, unit_picture};
use crate::answers::reactions_answer::AXES;
use crate::paper::Block;

/// The chapter.
pub fn units_chapter(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![chapter("Units"), remark(AXES)];
    if given.kinds.is_empty() {
        blocks.push(paragraph("No unit of the plan has a make-up that can be calculated."));
    }
    for (index, kind) in given.kinds.iter().enumerate() {
        blocks.extend(of_kind(given, index, kind));
    }
    blocks
}

fn of_kind(given: &Given<'_>, index: usize, kind: &UnitKind) -> Vec<Block> {
    let Some(unit) = given.unit(kind.first) else { return Vec::new() };
    let Ok(parts) = &unit.resolved else { return Vec::new() };
    let mut blocks =
        vec![section(&format!("Unit {}: {}, {}", index + 1, named(&parts.mast.name), named(&parts.arm.name)))];
    blocks.extend(given.tag_list("Stands in", &kind.all));
    if parts.invented {
        blocks.push(remark("Its parts are invented for demonstration: no such parts are made."));
    }
    blocks.extend(facts(about(parts, given.units)));
    blocks.extend(unit_picture::block(given, kind.first, index));
    let Some(found) = &unit.reactions else {
        blocks.push(caution("Nothing was calculated for it."));
        return blocks;
    };
    blocks.extend(reactions::blocks(given, kind.first, found));
    blocks.extend(diagrams::blocks(given, kind.first, found));
    blocks.extend(members::blocks(given, kind.first, found));
    blocks
}

fn about(unit: &ResolvedUnit, units: UnitSystem) -> Vec<(&'static str, String)> {
    let brace = unit.brace.as_ref().map_or_else(|| "none".to_owned(), |brace| named(&brace.name));
    let slew = match unit.slew_stops {
        SlewStops::WholeTurn => "a person may hang at any slew".to_owned(),
        SlewStops::Between { from_rad, to_rad } => {
            format!("a person may hang from {} to {}", quantity::angle(from_rad), quantity::angle(to_rad))
        }
    };
    let rating = unit.rating.as_ref().map_or_else(
        || "none declared".to_owned(),
        |rating| {
            let who = named(&rating.declared_by);
            let persons =
                if rating.persons == 1 { "one person".to_owned() } else { format!("{} persons", rating.persons) };
            format!("{} for {persons}, declared by {who}", quantity::force(rating.rated_n, units))
        },
    );
    vec![
        ("Family", named(&unit.family)),
        ("Brace", brace),
        ("Base", format!("{}, {}", named(&unit.base.name), unit.base.kind.words())),
        ("Foot", unit.foot.as_ref().map_or_else(|| "none".to_owned(), |foot| named(&foot.base.name))),
        ("Mass carried to its base", quantity::mass(unit.portable_mass_kg(), units)),
        ("Declared rating", rating),
        ("Slew", slew),
    ]
}
