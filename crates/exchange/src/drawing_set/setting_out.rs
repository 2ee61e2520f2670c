//! The table of setting-out: every base by its edge, by coordinates of the plan and of the site's grid, and by level.

use gantline_plan::assess::UnitAssessment;
use gantline_plan::document::{PlacementId, Standing};
use gantline_plan::quantity;
use glam::DVec2;

use super::given::Given;
use super::sheet::{Aside, Draft, Series};
use super::table::{Column, Flow, Row, Table};
use crate::answers::unit_place::tag_of;

/// Sheets of the table.
pub fn setting_out(given: &Given<'_>) -> Vec<Draft> {
    if given.assessment.units.is_empty() {
        return Vec::new();
    }
    let table = table(given);
    let room = given.size.room();
    let mut flow = Flow::new(room, room, table.width_mm());
    flow.table(&table);
    let grid = if given.plan.datum.grid_origin_m == DVec2::ZERO { "" } else { " and the grid of the site" };
    let about = format!(
        "Places are mast axes. Distances along an edge run from its start, counter-clockwise around the roof; setbacks are \
         square to it. x and y are coordinates of the plan{grid}. Directions run counter-clockwise from the plan's x axis."
    );
    let draft = |things| Draft {
        series: Series::Table,
        title: "Setting-out of bases".to_owned(),
        scale: None,
        things,
        aside: vec![Aside::Note(about.clone())],
    };
    flow.done().into_iter().map(draft).collect()
}

fn table(given: &Given<'_>) -> Table {
    let has_grid = given.plan.datum.grid_origin_m != DVec2::ZERO;
    let mut columns = vec![
        Column::words("Tag", 16.0),
        Column::words("Roof", 26.0),
        Column::words("Edge", 13.0),
        Column::figures("From start", 21.0),
        Column::figures("To end", 21.0),
        Column::figures("Setback", 19.0),
        Column::words("Next, at", 32.0),
        Column::figures("x", 22.0),
        Column::figures("y", 22.0),
        Column::figures("Level", 22.0),
        Column::figures("Looks to", 15.0),
    ];
    if has_grid {
        columns.extend([Column::figures("Grid x", 28.0), Column::figures("Grid y", 28.0)]);
    }
    let rows = given.assessment.units.iter().map(|(&id, unit)| Row::Cells(cells(given, id, unit, has_grid)));
    Table { title: "Setting-out of bases".to_owned(), columns, rows: rows.collect() }
}

fn cells(given: &Given<'_>, id: PlacementId, unit: &UnitAssessment, has_grid: bool) -> Vec<String> {
    let plan = given.plan;
    let length = |meters: f64| quantity::length(meters, given.units);
    let edge = match plan.placements.get(&id).map(|placement| &placement.stands) {
        Some(Standing::OnEdge { edge, .. }) => edge.to_string(),
        Some(Standing::Free { .. }) => "free".to_owned(),
        None => String::new(),
    };
    let set = unit.setting_out.as_ref();
    let next = set.and_then(|set| set.after).map(|(next, away)| format!("{}, {}", tag_of(plan, next), length(away)));
    let of = |value: Option<f64>| value.map_or_else(|| "–".to_owned(), length);
    let Some(frame) = unit.frame else {
        let mut cells = vec![tag_of(plan, id), "its edge or roof is gone".to_owned(), edge];
        cells.resize(if has_grid { 13 } else { 11 }, "–".to_owned());
        return cells;
    };
    let roof = plan.roofs.get(&frame.roof).map_or_else(String::new, |roof| roof.name.clone());
    let mut cells = vec![
        tag_of(plan, id),
        roof,
        edge,
        of(set.map(|set| set.from_start_m)),
        of(set.map(|set| set.to_end_m)),
        of(set.map(|set| set.setback_m)),
        next.unwrap_or_else(|| "–".to_owned()),
        length(frame.at.x),
        length(frame.at.y),
        quantity::level(frame.level_m, given.units),
        quantity::angle(frame.outward_rad),
    ];
    if has_grid {
        cells.extend(plan.datum.in_grid(frame.at).to_array().map(length));
    }
    cells
}
