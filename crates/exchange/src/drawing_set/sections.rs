//! Sections: one of each distinct combination of parts, edge and setback, with the tags of all units that it stands for.

use std::sync::Arc;

use gantline_drawing::{SectionOptions, section};
use gantline_plan::document::{Placement, PlacementId, Plan, Standing};

use super::arranged::{Captioned, sheets, taken_mm};
use super::given::Given;
use super::sheet::{Aside, Draft, Series};
use super::usual_scale::UsualScale;

/// The scales that sections are drawn at.
const LARGEST: f64 = 16.0;
const SMALLEST: f64 = 100.0;
/// Distances that differ by less look alike: what a millimeter shows, m.
const ALIKE_M: f64 = 0.0005;

/// Sheets of sections; units that can't be drawn are named beside the first.
pub fn sections(given: &Given<'_>) -> Vec<Draft> {
    let groups = groups(given.plan);
    let mut scales = UsualScale::between(given.units, LARGEST, SMALLEST).peekable();
    let room_mm = given.size.room().size_mm();
    while let Some(scale) = scales.next() {
        let (drawn, missing) = drawn(given, &groups, scale);
        let fit = drawn.iter().all(|one| taken_mm(one).cmple(room_mm).all());
        if !fit && scales.peek().is_some() {
            continue;
        }
        let mut drafts = sheets(given, Series::Section, "Sections", scale, &drawn);
        if let Some(first) = drafts.first_mut()
            && !missing.is_empty()
        {
            let words = format!("Not drawn, as something of them is missing: {}.", missing.join(", "));
            first.aside.push(Aside::Note(words));
        }
        return drafts;
    }
    Vec::new()
}

fn drawn(given: &Given<'_>, groups: &[Vec<PlacementId>], scale: UsualScale) -> (Vec<Captioned>, Vec<String>) {
    let (mut drawn, mut missing) = (Vec::new(), Vec::new());
    for group in groups {
        let tags: Vec<String> = group.iter().map(|&id| tag(given.plan, id)).collect();
        let options = SectionOptions { units: given.units, ..SectionOptions::at(scale.scale()) };
        let cut = group.first().and_then(|&id| section(given.plan, given.assessment, id, &options));
        match cut {
            Some(drawing) => {
                let caption = format!("Stands for {}.", tags.join(", "));
                drawn.push(Captioned { drawing: Arc::new(drawing), caption });
            }
            None => missing.extend(tags),
        }
    }
    (drawn, missing)
}

fn tag(plan: &Plan, id: PlacementId) -> String {
    crate::answers::unit_place::tag_of(plan, id)
}

/// Units that one section stands for, the one that is drawn first: one whose arm is not slewed, if there is one.
fn groups(plan: &Plan) -> Vec<Vec<PlacementId>> {
    let mut groups: Vec<Vec<PlacementId>> = Vec::new();
    for (&id, placement) in &plan.placements {
        let same = groups.iter_mut().find(|group| {
            let first = group.first().and_then(|first| plan.placements.get(first));
            first.is_some_and(|first| are_alike(plan, first, placement))
        });
        match same {
            Some(group) => group.push(id),
            None => groups.push(vec![id]),
        }
    }
    for group in &mut groups {
        let is_straight =
            |id: &PlacementId| plan.placements.get(id).is_some_and(|placement| placement.make_up.drawn_slew_rad == 0.0);
        if let Some(straight) = group.iter().position(is_straight) {
            group.swap(0, straight);
        }
    }
    groups
}

/// Whether a section through one shows what a section through the other shows.
fn are_alike(plan: &Plan, one: &Placement, other: &Placement) -> bool {
    let (
        Standing::OnEdge { edge: a, setback_m: near, turn_rad: turn, .. },
        Standing::OnEdge { edge: b, setback_m, turn_rad, .. },
    ) = (&one.stands, &other.stands)
    else {
        return false;
    };
    let (Some(a), Some(b)) = (plan.find_edge(*a), plan.find_edge(*b)) else { return false };
    let (edge, with) = (a.edge(), b.edge());
    one.make_up.gives_the_same_as(&other.make_up)
        && (near - setback_m).abs() < ALIKE_M
        && turn == turn_rad
        && edge.parapet == with.parapet
        && edge.facade.profile == with.facade.profile
        && a.roof.slab == b.roof.slab
        && a.roof.build_up_m == b.roof.build_up_m
}
