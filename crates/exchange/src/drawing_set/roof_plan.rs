//! Roof plans: on one sheet at the largest usual scale that fits, or over several with a key.

use std::collections::BTreeSet;
use std::f64::consts::FRAC_PI_2;
use std::sync::Arc;

use gantline_drawing::pencil::Pencil;
use gantline_drawing::taken::Taken;
use gantline_drawing::{
    Anchor, Drawing, Layer, Overlay, OverlaySet, Pen, PlanViewOptions, Scale, Shown, Text, TextStyle, plan_view,
};
use gantline_plan::document::{Ring, Roof};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::rings;
use gantline_plan::quantity;
use glam::DVec2;

use super::given::Given;
use super::paper_size::Area;
use super::sheet::{Aside, Draft, Series, legend, scale_and_north, whole};
use super::tiles::{Tile, tiles};
use super::usual_scale::UsualScale;
use crate::paper::OnPage;

/// The largest scale that roofs are drawn at.
const LARGEST: f64 = 24.0;
/// At smaller scales parts of units and figures run together.
const READABLE: f64 = 200.0;
/// What neighboring sheets both show, mm.
const OVERLAP_MM: f64 = 30.0;
/// Highest that the key is, mm.
const KEY_HIGH_MM: f64 = 60.0;
/// Arrow along a base's x axis, mm.
const AXIS_MM: f64 = 11.0;

/// What a roof plan is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shows {
    /// Everything: setting-out, reach, clear zones, drops, conflicts.
    Everything,
    /// Bases with the directions in which their loads are counted.
    Loads,
}

impl Shows {
    fn overlays(self) -> Shown {
        match self {
            // Room for people lies over clear zones; reactions stand in the load plan.
            Self::Everything => OverlaySet::All.shown().without(Overlay::Reactions).without(Overlay::Room),
            Self::Loads => Shown::NONE,
        }
    }

    const fn series(self) -> Series {
        match self {
            Self::Everything => Series::Roof,
            Self::Loads => Series::Load,
        }
    }

    const fn title(self) -> &'static str {
        match self {
            Self::Everything => "Roof plan: setting-out, reach, clear zones",
            Self::Loads => "Load plan: bases and directions",
        }
    }
}

/// A roof plan at a usual scale.
pub struct RoofPlan {
    /// Its scale.
    pub scale: UsualScale,
    /// The plan.
    pub drawing: Arc<Drawing>,
}

/// Sheets of a roof plan.
pub fn roof_plans(given: &Given<'_>, shows: Shows) -> Vec<Draft> {
    let room = given.size.room();
    if let Some(plan) = on_one_sheet(given, shows, room.size_mm()) {
        return vec![Draft {
            series: shows.series(),
            title: shows.title().to_owned(),
            scale: Some(plan.scale),
            things: centered(&plan.drawing, room),
            aside: beside(given, shows, &plan, None),
        }];
    }
    over_several(given, shows, room)
}

/// A plan in the middle of an area.
pub fn centered(drawing: &Arc<Drawing>, area: Area) -> Vec<OnPage> {
    let Some((window, size_mm)) = whole(drawing) else { return Vec::new() };
    let at_mm = area.min_mm + (area.size_mm() - size_mm) / 2.0;
    vec![OnPage::Picture { drawing: Arc::clone(drawing), window, at_mm }]
}

/// The plan at the largest readable scale at which it fits a room with every base's tag; none where there is no such scale.
pub fn on_one_sheet(given: &Given<'_>, shows: Shows, room_mm: DVec2) -> Option<RoofPlan> {
    let corners = given.plan.roofs.values().flat_map(Roof::rings).flat_map(Ring::points);
    let size_m = Bounds::of(corners).map_or(DVec2::ZERO, |bounds| bounds.size_m());
    for scale in UsualScale::between(given.units, LARGEST, READABLE) {
        if !(size_m / scale.scale().m_per_mm).cmple(room_mm).all() {
            continue;
        }
        let drawing = drawn(given, shows, scale.scale());
        let fits = whole(&drawing)?.1.cmple(room_mm).all();
        if fits && untagged(given, &drawing).is_empty() {
            return Some(RoofPlan { scale, drawing: Arc::new(drawing) });
        }
    }
    None
}

fn drawn(given: &Given<'_>, shows: Shows, scale: Scale) -> Drawing {
    let options = PlanViewOptions {
        units: given.units,
        shown: shows.overlays(),
        all_setbacks: shows == Shows::Everything,
        ..PlanViewOptions::at(scale)
    };
    let mut drawing = plan_view(given.plan, given.assessment, &options);
    if shows == Shows::Loads {
        drawing.marks.extend(directions(given, scale));
        drawing = Drawing::of(scale, drawing.marks);
    }
    drawing
}

/// An arrow along the x axis of every base: positive Fx pushes that way.
fn directions(given: &Given<'_>, scale: Scale) -> Vec<gantline_drawing::Mark> {
    let mut pencil = Pencil::new(scale);
    for frame in given.assessment.units.values().filter_map(|unit| unit.frame) {
        let tip = frame.at + frame.direction(0.0) * scale.m(AXIS_MM);
        pencil.arrow(Layer::Load, Pen::LoadArrow, frame.at, tip);
    }
    pencil.done()
}

/// Tags of placed bases that a plan has no room for.
fn untagged(given: &Given<'_>, drawing: &Drawing) -> Vec<String> {
    let written: BTreeSet<&str> = drawing.words().collect();
    let placed = given.assessment.units.iter().filter(|(_, unit)| unit.frame.is_some());
    let tags = placed.filter_map(|(id, _)| given.plan.placements.get(id)).map(|placement| &placement.tag.0);
    tags.filter(|tag| !written.contains(tag.as_str())).cloned().collect()
}

/// The smallest readable scale at which every tag has room, cut into sheets; where none has, the largest.
fn over_several(given: &Given<'_>, shows: Shows, room: Area) -> Vec<Draft> {
    let mut best: Option<(UsualScale, Drawing)> = None;
    for scale in UsualScale::between(given.units, LARGEST, READABLE).rev() {
        let drawing = drawn(given, shows, scale.scale());
        let is_whole = untagged(given, &drawing).is_empty();
        best = Some((scale, drawing));
        if is_whole {
            break;
        }
    }
    let Some((scale, drawing)) = best else { return Vec::new() };
    let Some((area, _)) = whole(&drawing) else { return Vec::new() };
    let plan = RoofPlan { scale, drawing: Arc::new(drawing) };
    let size_m = scale.scale().shift(room.size_mm());
    let all = tiles(area, size_m, scale.scale().m(OVERLAP_MM));
    let all: Vec<Tile> = all.into_iter().filter(|tile| has_something(given, tile.window)).collect();
    let draft = |(index, tile): (usize, &Tile)| {
        let picture = |drawing: Arc<Drawing>| OnPage::Picture { drawing, window: tile.window, at_mm: room.min_mm };
        let lines = Arc::new(lines_to_next(shows, &plan.drawing, &all, index));
        Draft {
            series: shows.series(),
            title: format!("{}, part {} of {}", shows.title(), index + 1, all.len()),
            scale: Some(scale),
            things: vec![picture(Arc::clone(&plan.drawing)), picture(lines)],
            aside: beside(given, shows, &plan, Some((&all, index))),
        }
    };
    all.iter().enumerate().map(draft).collect()
}

/// Whether a roof or a base lies in a window.
fn has_something(given: &Given<'_>, window: Bounds) -> bool {
    let middle = window.min_m.midpoint(window.max_m);
    let mut rings = given.plan.roofs.values().flat_map(Roof::rings).map(Ring::points);
    let in_window = |ring: Vec<DVec2>| {
        rings::ring_contains(&ring, middle)
            || rings::segments(&ring).any(|(a, b)| Bounds::of([a, b]).is_some_and(|edge| edge.meets(&window)))
    };
    let mut bases = given.assessment.units.values().filter_map(|unit| unit.frame);
    rings.any(in_window) || bases.any(|frame| Bounds::around(frame.at, 0.0).meets(&window))
}

/// Lines at which other sheets go on, with their numbers.
fn lines_to_next(shows: Shows, plan: &Drawing, all: &[Tile], index: usize) -> Drawing {
    let scale = plan.scale;
    let mut pencil = Pencil::new(scale);
    let mut taken = Taken::by_texts(plan.marks.iter(), scale);
    let Some(tile) = all.get(index) else { return Drawing::of(scale, Vec::new()) };
    let number = |column: Option<usize>, row: Option<usize>| {
        let found = all.iter().position(|other| Some(other.column) == column && Some(other.row) == row)?;
        Some(format!("continues on {}", shows.series().number(found)))
    };
    let (own, window) = (tile.own, tile.window);
    let upright = [
        (own.min_m.x, number(tile.column.checked_sub(1), Some(tile.row))),
        (own.max_m.x, number(Some(tile.column + 1), Some(tile.row))),
    ];
    for (x, words) in upright {
        let Some(words) = words else { continue };
        pencil.line(Layer::Sheet, Pen::Axis, [DVec2::new(x, window.min_m.y), DVec2::new(x, window.max_m.y)]);
        let line = [DVec2::new(x, window.min_m.y), DVec2::new(x, window.max_m.y)];
        pencil.text_on_paper(Layer::Sheet, where_free(&words, line, FRAC_PI_2, &mut taken, scale));
    }
    let level = [
        (own.max_m.y, number(Some(tile.column), tile.row.checked_sub(1))),
        (own.min_m.y, number(Some(tile.column), Some(tile.row + 1))),
    ];
    for (y, words) in level {
        let Some(words) = words else { continue };
        pencil.line(Layer::Sheet, Pen::Axis, [DVec2::new(window.min_m.x, y), DVec2::new(window.max_m.x, y)]);
        let line = [DVec2::new(window.min_m.x, y), DVec2::new(window.max_m.x, y)];
        pencil.text_on_paper(Layer::Sheet, where_free(&words, line, 0.0, &mut taken, scale));
    }
    Drawing::of(scale, pencil.done())
}

/// Words on a line where they cover no figure and no tag: as near to its middle as there is room.
fn where_free(words: &str, [from, to]: [DVec2; 2], turn_rad: f64, taken: &mut Taken, scale: Scale) -> Text {
    let at = |share: f64| {
        let text = Text::new(words, from.lerp(to, share), Anchor::CENTER, TextStyle::Note, Pen::Lettering);
        Text { rotation_rad: turn_rad, ..text }
    };
    let shares = (0..40).flat_map(|step| [0.5 + f64::from(step) * 0.01, 0.5 - f64::from(step) * 0.01]);
    let free = shares.map(at).find(|text| taken.take_if_free(&text.corners(scale), scale));
    free.unwrap_or_else(|| at(0.5))
}

/// Scale bar, north, key, legend and notes.
pub fn beside(given: &Given<'_>, shows: Shows, plan: &RoofPlan, part: Option<(&[Tile], usize)>) -> Vec<Aside> {
    let mut aside = vec![scale_and_north(given, plan.scale.scale(), true)];
    if let Some((all, index)) = part {
        aside.extend(key(given, shows, all, index));
    }
    aside.extend(legend(&plan.drawing));
    let notes = notes(given, shows, &plan.drawing);
    aside.extend(notes.into_iter().map(Aside::Note));
    aside
}

/// The roofs in small with the parts that sheets show; the one looked at is framed.
fn key(given: &Given<'_>, shows: Shows, all: &[Tile], index: usize) -> Option<Aside> {
    let area = Bounds::of(all.iter().flat_map(|tile| [tile.own.min_m, tile.own.max_m]))?;
    let wide_mm = given.size.strip().within(6.0).size_mm().x;
    let scale = Scale { m_per_mm: (area.size_m() / DVec2::new(wide_mm, KEY_HIGH_MM)).max_element() };
    let mut pencil = Pencil::new(scale);
    for ring in given.plan.roofs.values().flat_map(Roof::rings) {
        pencil.ring(Layer::Background, Pen::Edge, ring.points());
    }
    for (number, tile) in all.iter().enumerate() {
        let pen = if number == index { Pen::CutEdge } else { Pen::Fine };
        let (low, high) = (tile.own.min_m, tile.own.max_m);
        let layer = if number == index { Layer::Sheet } else { Layer::Outline };
        pencil.ring(layer, pen, [low, DVec2::new(high.x, low.y), high, DVec2::new(low.x, high.y)]);
        let words = shows.series().number(number);
        pencil.text(Layer::Tag, words, low.midpoint(high), Anchor::CENTER, TextStyle::Name);
    }
    Some(Aside::Drawing(Arc::new(Drawing::of(scale, pencil.done()))))
}

/// What levels are counted from, and where the plan's origin lies in the grid of the site.
pub fn datum_notes(given: &Given<'_>) -> Vec<String> {
    let datum = &given.plan.datum;
    let zero = if datum.level_zero.is_empty() { "not entered" } else { &datum.level_zero };
    let mut notes = vec![format!("Levels are tops of structural slabs over level zero: {zero}.")];
    if datum.grid_origin_m != DVec2::ZERO {
        let [x, y] = datum.grid_origin_m.to_array().map(|part| quantity::length(part, given.units));
        notes.push(format!("The plan's origin in the grid of the site: x {x}, y {y}."));
    }
    notes
}

fn notes(given: &Given<'_>, shows: Shows, drawing: &Drawing) -> Vec<String> {
    let mut notes = match shows {
        Shows::Everything => datum_notes(given),
        // They stand with the signs.
        Shows::Loads => Vec::new(),
    };
    match shows {
        Shows::Everything => notes.push(
            "Dimensions run to mast axes, along the edges and square to them; every figure stands in the table of \
             setting-out, also where the plan has no room for it. A ring with a dot at an arm's tip is a rope's last \
             support: there the drop hangs."
                .to_owned(),
        ),
        Shows::Loads => notes.push(
            "Each arrow is the x axis of a base: positive Fx pushes that way. Signs and all axes stand with the tables."
                .to_owned(),
        ),
    }
    let without = untagged(given, drawing);
    if !without.is_empty() {
        notes.push(format!("No room for the tags of: {}.", without.join(", ")));
    }
    let nowhere = given.assessment.units.iter().filter(|(_, unit)| unit.frame.is_none());
    let nowhere: Vec<&str> =
        nowhere.filter_map(|(id, _)| given.plan.placements.get(id)).map(|one| one.tag.0.as_str()).collect();
    if !nowhere.is_empty() {
        notes.push(format!("Not drawn, as their edge or roof is gone: {}.", nowhere.join(", ")));
    }
    notes
}
