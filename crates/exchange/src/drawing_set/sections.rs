//! Sections: one of each distinct combination of parts and edge, with the tags of all units that it stands for.

use std::sync::Arc;

use gantline_drawing::{SectionOptions, section};
use gantline_plan::document::{Placement, PlacementId, Plan, Standing};
use gantline_plan::quantity;

use super::arranged::{Captioned, sheets, taken_mm};
use super::given::Given;
use super::sheet::{Aside, Draft, Series};
use super::usual_scale::UsualScale;

/// The scales that sections are drawn at.
const LARGEST: f64 = 10.0;
const SMALLEST: f64 = 100.0;
/// The scale that is large enough where more than one sheet is needed.
const ENOUGH: f64 = 20.0;
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
        let mut drafts = sheets(given, Series::Section, "Sections", scale, &drawn);
        let is_enough = drafts.len() <= 1 || scale.one_to >= ENOUGH;
        if !(fit && is_enough) && scales.peek().is_some() {
            continue;
        }
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
                let caption = format!("Stands for {}.{}", tags.join(", "), setbacks(given, group));
                drawn.push(Captioned { drawing: Arc::new(drawing), caption });
            }
            None => missing.extend(tags),
        }
    }
    (drawn, missing)
}

/// Where other units of a group stand nearer to the edge or farther from it than the one that is drawn, words about that.
fn setbacks(given: &Given<'_>, group: &[PlacementId]) -> String {
    let of = |id: &PlacementId| match given.plan.placements.get(id)?.stands {
        Standing::OnEdge { setback_m, .. } => Some(setback_m),
        Standing::Free { .. } => None,
    };
    let all: Vec<f64> = group.iter().filter_map(of).collect();
    let Some(&first) = all.first() else { return String::new() };
    let least = all.iter().copied().fold(f64::INFINITY, f64::min);
    let most = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if most - least < ALIKE_M {
        return String::new();
    }
    let [first, least, most] = [first, least, most].map(|setback_m| quantity::length(setback_m, given.units));
    format!(
        " Drawn with the first one's setback of {first}, and with its conflicts; setbacks of the others, from {least} to \
         {most}, stand in the table of setting-out, their conflicts on the roof plan."
    )
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

/// Whether a section through one shows what a section through the other shows, but for the setback.
fn are_alike(plan: &Plan, one: &Placement, other: &Placement) -> bool {
    let (Standing::OnEdge { edge: a, turn_rad: turn, .. }, Standing::OnEdge { edge: b, turn_rad, .. }) =
        (&one.stands, &other.stands)
    else {
        return false;
    };
    let (Some(a), Some(b)) = (plan.find_edge(*a), plan.find_edge(*b)) else { return false };
    let (edge, with) = (a.edge(), b.edge());
    one.make_up.gives_the_same_as(&other.make_up)
        && turn == turn_rad
        && edge.parapet == with.parapet
        && edge.facade.profile == with.facade.profile
        && a.roof.slab == b.roof.slab
        && a.roof.build_up_m == b.roof.build_up_m
}
