//! Where bases stand, how they are set out, what plate and anchors they have, and what lies around them.

use gantline_plan::assess::UnitAssessment;
use gantline_plan::assess::anchorage::BaseAssessment;
use gantline_plan::catalog::{Base, Bearing, Fixing};
use gantline_plan::document::{PlacementId, Slab, Standing, ThingId};
use gantline_plan::quantity::{self, UnitSystem};

use super::blocks::{counted, facts, named, part, remark, row, table, told, words};
use super::figures::{length, place};
use super::given::Given;
use crate::paper::{Block, Row};

/// A table with a row for each base.
pub fn blocks(given: &Given<'_>, ids: &[PlacementId]) -> Vec<Block> {
    let columns = vec![
        told("Base", 0.9),
        told("Roof", 1.0),
        told("Edge", 0.7),
        counted("From its start", 0.8),
        counted("To its end", 0.8),
        counted("Setback", 0.7),
        told("Next base along it", 1.0),
        told("Mast axis x, y", 1.4),
        counted("Level", 0.8),
        counted("Looks toward", 0.7),
    ];
    let rows: Vec<Row> = ids.iter().filter_map(|&id| of_base(given, id)).collect();
    let mut blocks = vec![part("Position and setting out")];
    blocks.extend(table(columns, rows));
    blocks
}

fn of_base(given: &Given<'_>, id: PlacementId) -> Option<Row> {
    let (unit, placement) = (given.unit(id)?, given.plan.placements.get(&id)?);
    let units = given.units;
    let length = |value_m: f64| quantity::length(value_m, units);
    let out = unit.setting_out;
    let or_none = |value: Option<String>| words(&value.unwrap_or_else(|| "none".to_owned()));
    let edge = match &placement.stands {
        Standing::OnEdge { edge, .. } => edge.to_string(),
        Standing::Free { .. } => "free".to_owned(),
    };
    Some(row(vec![
        words(&given.tag(id)),
        or_none(unit.frame.map(|frame| given.name(ThingId::Roof(frame.roof)))),
        words(&edge),
        or_none(out.map(|out| length(out.from_start_m))),
        or_none(out.map(|out| length(out.to_end_m))),
        or_none(out.map(|out| length(out.setback_m))),
        or_none(out.and_then(|out| out.after).map(|(id, along_m)| format!("{}, {}", given.tag(id), length(along_m)))),
        or_none(unit.frame.map(|frame| place(frame.at, units))),
        or_none(unit.frame.map(|frame| quantity::level(frame.level_m, units))),
        or_none(unit.frame.map(|frame| quantity::angle(frame.outward_rad))),
    ]))
}

/// Plate, anchors and what they sit on.
pub fn made_of(given: &Given<'_>, base: &Base, fixing: Option<&Fixing>, head: &str) -> Vec<Block> {
    let units = given.units;
    let mut blocks = vec![part(head)];
    let bearing = match base.bearing {
        Bearing::OnConcrete => "the structure itself".to_owned(),
        Bearing::OnGrout { thickness_m, strength_pa } => {
            let strength = quantity::traced(strength_pa, "Pa", units);
            format!("grout {} thick, strength {strength}", length(thickness_m, units))
        }
        Bearing::OnLevelingNuts { gap_m, clamped } => {
            let clamped = if clamped { ", clamped against the concrete" } else { "" };
            format!("leveling nuts, gap {}{clamped}", length(gap_m, units))
        }
    };
    let mut rows = vec![
        ("Kind", base.kind.words().to_owned()),
        ("Plate", format!("{} thick, corners {}", length(base.plate_thickness_m, units), corners(base, given))),
        ("Sits on", bearing),
        (
            "Fixing",
            fixing.map_or_else(
                || "not known".to_owned(),
                |fixing| format!("{}: {}", fixing.kind.words(), named(&fixing.name)),
            ),
        ),
    ];
    if let Some(anchors) = &base.anchors {
        rows.push(("Anchors", format!("{}, embedded {}", anchors.at_m.len(), length(anchors.embedment_m, units))));
        let hole = anchors.hole_m.map_or_else(|| "not stated".to_owned(), |hole_m| length(hole_m, units));
        let filled = if anchors.gap_filled { "filled" } else { "open" };
        rows.push(("Holes in the plate", format!("{hole}, gaps {filled}")));
    }
    blocks.extend(facts(rows));
    if let Some(fixing) = fixing {
        blocks.push(remark(&format!("Source of the fixing's values: {}", named(&fixing.source))));
    }
    blocks
}

fn corners(base: &Base, given: &Given<'_>) -> String {
    let corner = |at: &glam::DVec2| format!("({}, {})", length(at.x, given.units), length(at.y, given.units));
    base.plate_m.iter().map(corner).collect::<Vec<_>>().join(" ")
}

/// Near edges, thickness, concrete, what is sustained.
pub fn surroundings(given: &Given<'_>, unit: &UnitAssessment, found: &BaseAssessment) -> Vec<Block> {
    let units = given.units;
    let edges: Vec<String> = found.edges.iter().map(|edge| length(edge.distance_m, units)).collect();
    let edges = if edges.is_empty() { "none near enough to count".to_owned() } else { edges.join(", ") };
    let or_not = |value: Option<String>| value.unwrap_or_else(|| "not measured".to_owned());
    let bond = if found.bond_is_default { "the design code's defaults and no product's" } else { "the product's" };
    let slab = unit.frame.and_then(|frame| given.plan.roofs.get(&frame.roof)).map(|roof| slab(&roof.slab, units));
    let rows = vec![
        ("Nearest edges of the concrete, from the nearest anchor", edges),
        ("Thickness of the concrete under it", or_not(found.thickness_m.map(|value_m| length(value_m, units)))),
        ("Slab of the roof", slab.unwrap_or_else(|| "none".to_owned())),
        ("Share of the tension that is sustained", or_not(found.sustained_share.map(quantity::share))),
        ("Bond strengths, where there are any", bond.to_owned()),
    ];
    let mut blocks = vec![part("Surroundings")];
    blocks.extend(facts(rows));
    blocks
}

/// What is entered of a slab, and whether someone stands behind it.
fn slab(slab: &Slab, units: UnitSystem) -> String {
    let stated = |value_pa: Option<f64>| {
        value_pa.map_or_else(|| "not stated".to_owned(), |value_pa| quantity::traced(value_pa, "Pa", units))
    };
    let depth = slab.bars.axis_depth_m.map_or_else(|| "not stated".to_owned(), |value_m| length(value_m, units));
    let ratio = slab.bars.ratio.map_or_else(|| "not stated".to_owned(), quantity::share);
    let bars = |has: bool| if has { "described" } else { "none" };
    format!(
        "f_ck {}, f'_c {}, {}; bars {depth} under the face, ratio {ratio}; bars for anchors in tension {}, in shear {}; {}",
        stated(slab.cylinder_strength_pa),
        stated(slab.specified_strength_pa),
        if slab.cracked { "cracked" } else { "uncracked" },
        bars(slab.bars.tension.is_some()),
        bars(slab.bars.shear.is_some()),
        if slab.confirmed { "confirmed" } else { "confirmed by nobody" }
    )
}
