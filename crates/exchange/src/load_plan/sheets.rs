//! Sheets of the load plan: where there is room for it the plan stands beside the tables, else on sheets of its own.

use std::sync::Arc;

use gantline_plan::basis::NeighborRule;
use glam::DVec2;

use super::axes::axes;
use super::groups::groups;
use super::tables::{bases, plates, reactions};
use crate::answers::reactions_answer::AXES;
use crate::drawing_set::Given;
use crate::drawing_set::paper_size::Area;
use crate::drawing_set::roof_plan::{Shows, beside, centered, datum_notes, on_one_sheet, roof_plans};
use crate::drawing_set::set::nothing;
use crate::drawing_set::sheet::{Aside, Draft, Series, paper};
use crate::drawing_set::table::Flow;
use crate::paper::Paper;

/// Between plan and tables, mm.
const BETWEEN_MM: f64 = 12.0;
/// Title of sheets of tables.
const TABLES: &str = "Load plan: bases, plates, reactions";

/// The load plan of a plan.
pub fn load_plan(given: &Given<'_>) -> Paper {
    let groups = groups(given.plan, given.assessment);
    if groups.is_empty() {
        return paper(given, "Load plan", vec![nothing(Series::Load)]);
    }
    let tables = [bases(given, &groups), plates(given, &groups), reactions(given, &groups)];
    let width_mm = tables.iter().map(crate::drawing_set::table::Table::width_mm).fold(0.0, f64::max);
    let room = given.size.room();
    let middle = room.max_mm.x - width_mm;
    let left = Area { min_mm: room.min_mm, max_mm: DVec2::new(middle - BETWEEN_MM, room.max_mm.y) };
    let right = Area { min_mm: DVec2::new(middle, room.min_mm.y), max_mm: room.max_mm };
    let plan = on_one_sheet(given, Shows::Loads, left.size_mm());
    let mut flow = Flow::new(if plan.is_some() { right } else { room }, room, width_mm);
    for table in &tables {
        flow.table(table);
    }
    let mut pages = flow.done().into_iter();
    let mut drafts = if let Some(plan) = plan {
        let mut things = centered(&plan.drawing, left);
        things.extend(pages.next().unwrap_or_default());
        let aside = beside(given, Shows::Loads, &plan, None);
        let title = "Load plan for the structural engineer".to_owned();
        vec![Draft { series: Series::Load, title, scale: Some(plan.scale), things, aside }]
    } else {
        roof_plans(given, Shows::Loads)
    };
    for draft in &mut drafts {
        draft.aside.extend(signs(given));
    }
    drafts.extend(pages.map(|things| Draft {
        series: Series::Load,
        title: TABLES.to_owned(),
        scale: None,
        things,
        aside: signs(given),
    }));
    paper(given, "Load plan", drafts)
}

/// Axes, signs, levels, and what may be loaded at once.
fn signs(given: &Given<'_>) -> Vec<Aside> {
    let at_once = match given.plan.basis.rules.neighbors {
        NeighborRule::NoneWithinOutreaches => {
            "Loaded at once: by the basis no two units stand at the same time that are nearer to each other than the sum of \
             their outreaches; all others may be loaded together. It gives no number for the whole roof."
        }
        NeighborRule::Any => {
            "Loaded at once: the basis lets any units stand at the same time; neighboring bases may all be loaded together."
        }
    };
    let places = if given.plan.datum.grid_origin_m == DVec2::ZERO {
        "Places are mast axes in the plan's coordinates."
    } else {
        "Places are mast axes in the grid of the site."
    };
    let notes = [
        AXES,
        "Figures of a row act together; extremes of different rows never do. Each combination says its level and the loads and \
         factors inside: levels are not to be mixed, and no factor is to be applied twice. M is the resultant of Mx and My, V \
         that of Fx and Fy.",
        places,
        "x axis toward: counter-clockwise from the plan's x axis, to the right of the plan.",
        at_once,
        "Printed are the sets that govern a base: largest M, V, uplift, downward force and twist both ways. Every component's \
         extremes stand in the schedule under Reactions.",
    ];
    let mut signs = vec![Aside::Drawing(Arc::new(axes()))];
    signs.extend(datum_notes(given).into_iter().chain(notes.map(str::to_owned)).map(Aside::Note));
    signs
}
