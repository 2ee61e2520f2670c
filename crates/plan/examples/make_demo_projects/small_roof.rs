//! A small rectangular roof with a few units and nothing that blocks.

use gantline_plan::change::EdgePatch;
use gantline_plan::document::{Plan, Title};

use super::drafting_table::{DraftingTable, Drawn, Parts, confirmed, first_basis};

/// Mast axes behind the outline, m: the tip then hangs 0.30 m outside the facade.
const SETBACK_M: f64 = 0.55;

/// The plan.
pub fn plan() -> Drawn<Plan> {
    let title = Title {
        job: "Reading room (invented scenario)".to_owned(),
        address: "Nowhere Lane 1".to_owned(),
        author: "Gantline demonstration".to_owned(),
        revision: "A".to_owned(),
        date: String::new(),
        remark: "Invented scenario with invented families: not a plan of any building.".to_owned(),
    };
    let mut table = DraftingTable::new(title, confirmed(&first_basis()?)?)?;
    let roof = table.roof("Roof", 17.6, 0.14, &[(0.0, 0.0), (15.0, 0.0), (15.0, 9.0), (0.0, 9.0)])?;
    table.slab(roof, 0.3, 30e6)?;
    let edges = table.edges(roof);
    let parapet = EdgePatch { parapet_height_m: Some(1.25), parapet_thickness_m: Some(0.18), ..EdgePatch::default() };
    table.set_edges(&edges, EdgePatch { confirmed: Some(true), ..parapet })?;
    let [south, east, north, west] = edges[..] else { return Err("four edges".into()) };
    table.set_edges(&[north, west], EdgePatch { needs_access: Some(false), ..EdgePatch::default() })?;
    table.obstacle(roof, "Stair head", &[(5.9, 5.0), (9.1, 5.0), (9.1, 7.6), (5.9, 7.6)], 0.0, 2.6)?;
    let parts = Parts(table.heron, "mast-235", "arm-085-rear", Some("rear-tie"), "floor-socket");
    for along_m in [1.5, 4.5, 7.5, 10.5, 13.5] {
        table.unit(south, along_m, SETBACK_M, parts.make_up())?;
    }
    let flush = Parts(table.heron, "mast-235", "arm-085-rear", Some("rear-tie"), "flush-plate");
    for along_m in [1.5, 4.5, 7.5] {
        table.unit(east, along_m, SETBACK_M, flush.make_up())?;
    }
    Ok(table.plan().clone())
}
