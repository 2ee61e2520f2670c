//! A large complex on two levels: three hundred units on twenty facades, of ten make-ups, unevenly spaced.

use gantline_plan::catalog::MakeUp;
use gantline_plan::change::EdgePatch;
use gantline_plan::document::{EdgeId, FacadeFoot, Plan, RoofId, Title};
use gantline_plan::geometry::frame::EdgeLine;

use super::drafting_table::{DraftingTable, Drawn, Parts, confirmed, first_basis};

/// Units on the plan.
const UNITS: usize = 300;
/// Clear of the corners, m.
const FROM_CORNERS_M: f64 = 1.6;
/// Distances from one unit to the next, m, one after the other: no two neighbors stand evenly.
const PITCHES_M: [f64; 7] = [3.1, 2.85, 3.4, 2.95, 3.25, 3.6, 3.0];
/// Setbacks beyond the least one of a make-up, m, one after the other.
const FURTHER_BACK_M: [f64; 5] = [0.0, 0.03, 0.01, 0.05, 0.02];

/// The plan.
pub fn plan() -> Drawn<Plan> {
    let title = Title {
        job: "Exchange quarter (invented scenario)".to_owned(),
        address: "Nowhere Square".to_owned(),
        author: "Gantline demonstration".to_owned(),
        revision: "A".to_owned(),
        date: String::new(),
        remark: "Invented scenario with invented families: not a plan of any building.".to_owned(),
    };
    let mut table = DraftingTable::new(title, confirmed(&first_basis()?)?)?;
    let (high, low) = building(&mut table)?;
    let kinds = kinds(&table);
    let edges: Vec<EdgeId> = table.edges(high).into_iter().chain(table.edges(low)).collect();
    let mut count = 0;
    for (turn, edge) in edges.into_iter().enumerate() {
        let place = table.plan().find_edge(edge).ok_or("the edge is there")?;
        if place.edge().facade.needs_access {
            line_up(&mut table, edge, kinds.iter().cycle().skip(turn), &mut count)?;
        }
    }
    if count < UNITS { Err(format!("only {count} units found room").into()) } else { Ok(table.plan().clone()) }
}

/// Two roofs: the high one with three courtyards, the low one before it.
fn building(table: &mut DraftingTable) -> Drawn<(RoofId, RoofId)> {
    let outline = [(0.0, 0.0), (60.0, 0.0), (150.0, 0.0), (172.0, 22.0), (172.0, 74.0), (0.0, 74.0)];
    let high = table.roof("High roof", 38.5, 0.16, &outline)?;
    for west_m in [14.0, 66.0, 118.0] {
        let east_m = west_m + 34.0;
        table.hole(high, &[(west_m, 18.0), (east_m, 18.0), (east_m, 54.0), (west_m, 54.0)])?;
    }
    let low = table.roof("Low roof", 16.2, 0.2, &[(60.0, -42.0), (150.0, -42.0), (150.0, 0.0), (60.0, 0.0)])?;
    let over_low = table.edge_at(high, (100.0, 0.0))?;
    table.set_edges(&[over_low], EdgePatch { ends_at: Some(FacadeFoot::Roof(low)), ..EdgePatch::default() })?;
    let wall = table.edge_at(low, (100.0, 0.0))?;
    let no_parapet = EdgePatch { parapet_height_m: Some(0.0), ..EdgePatch::default() };
    table.set_edges(&[wall], EdgePatch { needs_access: Some(false), ..no_parapet })?;
    for roof in [high, low] {
        table.slab(roof, 0.32, 35e6)?;
        let edges = table.edges(roof);
        for (index, edge) in edges.iter().enumerate() {
            let thickness_m = [0.18, 0.22, 0.2][index % 3];
            let patch =
                EdgePatch { parapet_thickness_m: Some(thickness_m), confirmed: Some(true), ..EdgePatch::default() };
            table.set_edges(&[*edge], patch)?;
        }
    }
    for (index, x_m) in [8.0, 56.0, 108.0, 156.0].into_iter().enumerate() {
        let name = format!("Stair head {}", index + 1);
        table.obstacle(high, &name, &[(x_m, 62.0), (x_m + 6.0, 62.0), (x_m + 6.0, 68.0), (x_m, 68.0)], 0.0, 2.9)?;
        let vent = format!("Vent {}", index + 1);
        table.obstacle(high, &vent, &[(x_m, 6.0), (x_m + 2.0, 6.0), (x_m + 2.0, 8.0), (x_m, 8.0)], 0.0, 1.4)?;
    }
    table.obstacle(low, "Roof light", &[(80.0, -30.0), (130.0, -30.0), (130.0, -14.0), (80.0, -14.0)], 0.0, 0.6)?;
    Ok((high, low))
}

/// Make-ups with their least setbacks.
fn kinds(table: &DraftingTable) -> Vec<(MakeUp, f64)> {
    let (heron, tern) = (table.heron, table.tern);
    let kinds = [
        (Parts(heron, "mast-190", "arm-115-rear", Some("rear-tie-long"), "floor-socket"), 0.7),
        (Parts(heron, "mast-235", "arm-085-rear", Some("rear-tie"), "flush-plate"), 0.55),
        (Parts(tern, "mast-215", "arm-100", None, "cage-socket"), 0.62),
        (Parts(heron, "mast-190", "arm-085-rear", Some("rear-tie"), "floor-socket"), 0.52),
        (Parts(tern, "mast-215", "arm-125", Some("foot-strut"), "cast-in-sleeve"), 0.8),
        (Parts(heron, "mast-190", "arm-145-rear", Some("rear-tie-long"), "floor-socket"), 0.85),
        (Parts(tern, "mast-170", "arm-125-pinned", Some("base-tie"), "cage-socket"), 0.8),
        (Parts(heron, "mast-235", "arm-115-rear", Some("rear-tie-long"), "floor-socket"), 0.72),
        (Parts(heron, "mast-145", "arm-115-front", Some("front-strut"), "floor-socket"), 0.72),
        (Parts(tern, "mast-170", "arm-100", None, "cast-in-sleeve"), 0.66),
    ];
    kinds.map(|(parts, setback_m)| (parts.make_up(), setback_m)).to_vec()
}

/// Units along an edge in groups of four alike, until it is full or there are enough.
fn line_up<'a>(
    table: &mut DraftingTable,
    edge: EdgeId,
    kinds: impl Iterator<Item = &'a (MakeUp, f64)>,
    count: &mut usize,
) -> Drawn<()> {
    let length_m = EdgeLine::of(table.plan(), edge).ok_or("the edge is there")?.length_m;
    let mut along_m = FROM_CORNERS_M;
    for (make_up, setback_m) in kinds.flat_map(|kind| std::iter::repeat_n(kind, 4)) {
        if along_m > length_m - FROM_CORNERS_M || *count >= UNITS {
            break;
        }
        let back_m = setback_m + FURTHER_BACK_M[*count % FURTHER_BACK_M.len()];
        table.unit(edge, along_m, back_m, make_up.clone())?;
        along_m += PITCHES_M[*count % PITCHES_M.len()];
        *count += 1;
    }
    Ok(())
}
