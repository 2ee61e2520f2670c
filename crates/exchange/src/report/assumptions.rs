//! Assumptions that nobody has confirmed, as a list on its own.

use gantline_plan::basis::Confirmation;
use gantline_plan::catalog::Origin;
use gantline_plan::document::ThingId;

use super::basis::with_source;
use super::blocks::{chapter, item, named, paragraph, section};
use super::given::Given;
use crate::paper::Block;

/// The chapter.
pub fn assumptions_chapter(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![chapter("Assumptions that nobody has confirmed")];
    blocks.push(paragraph(
        "Each of them went into the results as it stands here. Whoever answers for the plan confirms it or puts another in its \
         place.",
    ));
    let groups =
        [("Basis and design code", of_basis(given)), ("Building", of_building(given)), ("Catalog", of_catalog(given))];
    let mut none = true;
    for (head, all) in groups {
        if all.is_empty() {
            continue;
        }
        none = false;
        blocks.push(section(&format!("{head}: {}", all.len())));
        blocks.extend(all.iter().map(|words| item(words)));
    }
    if none {
        blocks.push(paragraph("There are none: someone stands behind every value."));
    }
    blocks
}

fn of_basis(given: &Given<'_>) -> Vec<String> {
    let open = with_source(given).into_iter().filter(|value| value.standing == Confirmation::Default);
    open.map(|one| format!("{}: {} {}; source: {}.", named(&one.group), one.name, one.value, one.source)).collect()
}

/// Data of slabs, parapets and facades.
fn of_building(given: &Given<'_>) -> Vec<String> {
    let slabs = given.plan.roofs.iter().filter(|(_, roof)| !roof.slab.confirmed);
    let slabs = slabs.map(|(&id, roof)| {
        let thick = gantline_plan::quantity::length(roof.slab.thickness_m, given.units);
        format!("Slab of {}: {thick} thick, strength and reinforcement as entered.", given.name(ThingId::Roof(id)))
    });
    let edges = given.plan.edges().filter(|place| !place.edge().confirmed);
    let edges = edges.map(|place| {
        let parapet = &place.edge().parapet;
        let length = |value_m| gantline_plan::quantity::length(value_m, given.units);
        format!(
            "{} of {}: parapet {} high, {} thick, and the facade below it.",
            place.edge().id,
            given.name(ThingId::Roof(place.roof_id)),
            length(parapet.height_m),
            length(parapet.thickness_m)
        )
    });
    slabs.chain(edges).collect()
}

/// Invented families, and fixings whose bond is the code's default.
fn of_catalog(given: &Given<'_>) -> Vec<String> {
    let invented = given.plan.families.values().filter(|family| family.origin == Origin::Invented);
    let invented =
        invented.map(|family| format!("{}: all its data are invented for demonstration.", named(&family.name)));
    let default_bond = given.bases.iter().filter(|alike| {
        let base = given.unit(alike.first).and_then(|unit| unit.base.as_ref());
        base.is_some_and(|base| base.bond_is_default)
    });
    let default_bond = default_bond.map(|alike| {
        format!("Bases {}: bond strengths are the design code's defaults and no product's.", given.tags(&alike.all))
    });
    invented.chain(default_bond).collect()
}
