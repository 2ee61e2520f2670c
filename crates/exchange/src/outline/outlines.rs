//! From the lines of chosen layers to closed loops in meters, and what stood in the way.

use std::collections::BTreeSet;

use gantline_plan::document::ring::{SAME_CORNER_M, check_outline};
use gantline_plan::document::{GeoPlace, RingFault};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::rings::signed_area_m2;
use gantline_plan::quantity::{UnitSystem, length};
use glam::DVec2;

use super::chain::{ClosedGap, Strand, chain};
use super::fault::OutlineFault;
use super::length_unit::LengthUnit;
use super::limits::{
    MOST_COMPARED_BETWEEN, MOST_COMPARED_WITHIN, MOST_CORNERS, MOST_CORNERS_OF_A_LOOP, MOST_LOOPS, TOLERANCE_M,
    WIDEST_M,
};
use super::line_work::{LineWork, Measure};
use super::local_plane::LocalPlane;
use super::nesting::{Meeting, nesting};
use super::taking::KeptPlace;

/// What is asked of line work.
#[derive(Debug, Clone, PartialEq)]
pub struct Asked {
    /// Layers, by their places in the list.
    pub layers: BTreeSet<usize>,
    /// The unit of the file; none takes the one that it states.
    pub unit: Option<LengthUnit>,
    /// Gaps up to this are closed, m.
    pub tolerance_m: f64,
    /// Chords leave curves by at most this, m: how true a curve is kept, whatever gaps its drawing has.
    pub chord_m: f64,
    /// Where the plan's origin lies; none: a place is chosen.
    pub place: Option<KeptPlace>,
}

/// Closed loops and what else the chosen layers hold. All places are in the plan: the drawing's less `origin_m`.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Outlines {
    /// The place in the drawing's grid that is the plan's origin, m.
    pub origin_m: DVec2,
    /// Where the file is in degrees: the place at which the plane touches on which they became meters.
    pub plane: Option<GeoPlace>,
    /// Sound loops, the largest first.
    pub loops: Vec<Loop>,
    /// Closed runs that are no outline, and why.
    pub faulty: Vec<FaultyLoop>,
    /// Runs that stay open.
    pub open: Vec<OpenRun>,
    /// Sound loops that cross, or touch from inside.
    pub meetings: Vec<Meeting>,
    /// Lines and loops that lay on equal ones and were counted once.
    pub doubled: usize,
    /// Curves that became chords.
    pub curves: usize,
    /// The box around everything, m; none when there is nothing.
    pub bounds: Option<Bounds>,
}

/// A closed loop that can be an outline.
#[derive(Debug, Clone, PartialEq)]
pub struct Loop {
    /// Its layer, by its place in the list.
    pub layer: usize,
    /// Its corners, counter-clockwise, m.
    pub corners: Vec<DVec2>,
    /// Its area without what lies in it, m².
    pub area_m2: f64,
    /// The smallest loop that it lies in.
    pub inside: Option<usize>,
    /// In how many loops it lies.
    pub depth: usize,
    /// Gaps closed in it.
    pub gaps: Vec<ClosedGap>,
    /// Corners nearer than a millimeter to the next, taken away.
    pub corners_joined: usize,
}

/// A closed run that is no outline.
#[derive(Debug, Clone, PartialEq)]
pub struct FaultyLoop {
    /// Its layer.
    pub layer: usize,
    /// Its corners, m.
    pub corners: Vec<DVec2>,
    /// Why.
    pub why: LoopFault,
}

/// Why a closed run is no outline.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LoopFault {
    /// It crosses itself, or its corners make no ring.
    #[error(transparent)]
    Ring(#[from] RingFault),
    /// It has more corners than anyone can look at.
    #[error("it has {has} corners; an outline may have {most}: a coarser tolerance makes fewer")]
    TooManyCorners {
        /// Corners.
        has: usize,
        /// Most.
        most: usize,
    },
}

/// A run that stays open.
#[derive(Debug, Clone, PartialEq)]
pub struct OpenRun {
    /// Its layer.
    pub layer: usize,
    /// Its corners, m.
    pub corners: Vec<DVec2>,
    /// Whether it stops where three or more lines meet; else at ends that nothing comes near.
    pub branches: bool,
}

impl OpenRun {
    /// Its ends.
    pub fn ends(&self) -> [DVec2; 2] {
        let at = |corner: Option<&DVec2>| corner.copied().unwrap_or_default();
        [at(self.corners.first()), at(self.corners.last())]
    }
}

impl FaultyLoop {
    /// The place of the trouble; of one without a place the first corner.
    pub fn place(&self) -> DVec2 {
        let own = match &self.why {
            LoopFault::Ring(fault) => fault.place(),
            LoopFault::TooManyCorners { .. } => None,
        };
        own.or(self.corners.first().copied()).unwrap_or_default()
    }
}

/// A line as it is drawn, m, curves as chords.
struct Drawn {
    layer: usize,
    corners: Strand,
    /// Whether it is closed by itself.
    closed: bool,
}

/// Coordinates up to this are a plan's own: no offset is taken from them, m.
const NEAR_ORIGIN_M: f64 = 1000.0;
/// An origin is chosen on round figures of the drawing's grid, m.
const ROUND_M: f64 = 10.0;

impl LineWork {
    /// The closed loops of the chosen layers, and what stood in the way.
    pub fn outlines(&self, asked: &Asked) -> Result<Outlines, OutlineFault> {
        let unit = asked.unit.or_else(|| self.stated_unit()).ok_or(OutlineFault::UnitsNotStated)?;
        let (least, most) = TOLERANCE_M;
        let none = [asked.tolerance_m, asked.chord_m].into_iter().find(|one| !(*one >= least && *one <= most));
        if let Some(none) = none {
            let found = length(none, UnitSystem::Si);
            return Err(OutlineFault::Tolerance { found, least: "0.1 mm", most: "0.5 m" });
        }
        let plane = self.plane(asked.place)?;
        let (strands, curves) = self.strands(asked, unit.in_m(), plane)?;
        let drawn = Bounds::of(strands.iter().flat_map(|one| one.corners.iter().copied()));
        let origin_m = match (asked.place, drawn) {
            (Some(place), _) => place.origin_m,
            (None, Some(drawn)) => chosen_origin(&drawn),
            (None, None) => DVec2::ZERO,
        };
        let bounds = drawn.map(|b| Bounds { min_m: b.min_m - origin_m, max_m: b.max_m - origin_m });
        let is_near = |bounds: &Bounds| {
            let widest = f64::from(WIDEST_M);
            bounds.size_m().max_element() <= widest
                && bounds.min_m.abs().max(bounds.max_m.abs()).max_element() <= widest
        };
        if let Some(bounds) = bounds.filter(|bounds| !is_near(bounds)) {
            let is_one_site = bounds.size_m().max_element() <= f64::from(WIDEST_M);
            return Err(match asked.place {
                Some(_) if is_one_site => OutlineFault::FarFromPlan { most_m: WIDEST_M },
                _ => OutlineFault::TooFarApart { most_m: WIDEST_M },
            });
        }
        let mut compared = 0;
        let mut found = Outlines { origin_m, plane, curves, bounds, ..Outlines::default() };
        for &layer in &asked.layers {
            let of_layer = strands.iter().filter(|one| one.layer == layer);
            let moved = |one: &Drawn| -> Strand { one.corners.iter().map(|&at| at - origin_m).collect() };
            let (closed, open): (Vec<_>, Vec<_>) = of_layer.partition(|one| one.closed);
            for one in closed {
                found.closed(layer, moved(one), Vec::new(), &mut compared)?;
            }
            let chained = chain(open.into_iter().map(moved).collect(), asked.tolerance_m);
            found.doubled += chained.doubled;
            for run in chained.runs {
                if run.closed {
                    found.closed(layer, run.corners, run.gaps, &mut compared)?;
                } else {
                    found.open.push(OpenRun { layer, corners: run.corners, branches: run.branches });
                }
            }
        }
        found.nested()
    }

    /// The plane on which degrees become meters: the plan's own, so that all its drawings lie on one. None for lengths.
    fn plane(&self, kept: Option<KeptPlace>) -> Result<Option<GeoPlace>, OutlineFault> {
        let Measure::Degrees { middle } = self.measure else { return Ok(None) };
        let Some(kept) = kept else { return Ok(Some(middle)) };
        let [plan_x, plan_y] = kept.origin_m.to_array().map(|at| length(at, UnitSystem::Si));
        let fault = OutlineFault::DegreesBesideGrid { drawing: middle.to_string(), plan_x, plan_y };
        kept.plane.map(Some).ok_or(fault)
    }

    /// Lines of the chosen layers, m, and how many of them are curved.
    fn strands(
        &self,
        asked: &Asked,
        unit_m: f64,
        plane: Option<GeoPlace>,
    ) -> Result<(Vec<Drawn>, usize), OutlineFault> {
        let plane = plane.map(LocalPlane::at);
        let mut strands = Vec::new();
        let (mut corners, mut curves) = (0, 0);
        for trace in self.traces.iter().filter(|trace| asked.layers.contains(&trace.layer)) {
            let room = MOST_CORNERS - corners;
            let chords = trace.chords(asked.chord_m / unit_m, room);
            let mut strand = chords.ok_or(OutlineFault::TooManyChords { most: MOST_CORNERS })?;
            for at in &mut strand {
                *at = plane.map_or(*at * unit_m, |plane| plane.project(at.x, at.y));
            }
            corners += strand.len();
            if strand.iter().any(|at| !at.is_finite()) {
                return Err(OutlineFault::TooFarApart { most_m: WIDEST_M });
            }
            curves += usize::from(trace.is_curved());
            let comes_back = strand.len() > 3 && strand.first() == strand.last();
            if trace.closed && comes_back {
                strand.pop();
            }
            strands.push(Drawn { layer: trace.layer, corners: strand, closed: trace.closed });
        }
        Ok((strands, curves))
    }
}

impl Outlines {
    /// Takes a closed run in, as a loop or as a fault. `compared` counts what looking for crossings takes at most.
    fn closed(
        &mut self,
        layer: usize,
        corners: Vec<DVec2>,
        gaps: Vec<ClosedGap>,
        compared: &mut usize,
    ) -> Result<(), OutlineFault> {
        let before = corners.len();
        let mut corners = without_twins(corners);
        let corners_joined = before - corners.len();
        let why = if corners.len() > MOST_CORNERS_OF_A_LOOP {
            Some(LoopFault::TooManyCorners { has: corners.len(), most: MOST_CORNERS_OF_A_LOOP })
        } else {
            *compared += corners.len() * corners.len() / 2;
            if *compared > MOST_COMPARED_WITHIN {
                return Err(OutlineFault::TooMuchToCompare);
            }
            check_outline(&corners).err().map(LoopFault::Ring)
        };
        if let Some(why) = why {
            self.faulty.push(FaultyLoop { layer, corners, why });
            return Ok(());
        }
        if signed_area_m2(&corners) < 0.0 {
            corners.reverse();
        }
        let area_m2 = signed_area_m2(&corners);
        self.loops.push(Loop { layer, corners, area_m2, inside: None, depth: 0, gaps, corners_joined });
        Ok(())
    }

    /// The same with loops in order and told which lies in which.
    fn nested(mut self) -> Result<Self, OutlineFault> {
        if self.loops.len() > MOST_LOOPS {
            return Err(OutlineFault::TooManyLoops { most: MOST_LOOPS });
        }
        self.loops.sort_by(|a, b| b.area_m2.total_cmp(&a.area_m2));
        let before = self.loops.len();
        self.loops.dedup_by(|later, earlier| is_same(&later.corners, &earlier.corners));
        self.doubled += before - self.loops.len();
        let corners: Vec<&[DVec2]> = self.loops.iter().map(|one| one.corners.as_slice()).collect();
        let nesting = nesting(&corners, MOST_COMPARED_BETWEEN).ok_or(OutlineFault::TooMuchToCompare)?;
        for (index, one) in self.loops.iter_mut().enumerate() {
            one.inside = nesting.inside[index];
            one.depth = nesting.depth(index);
        }
        self.meetings = nesting.meetings;
        Ok(self)
    }
}

/// Corners without those that lie on the one before: the plan takes corners nearer than a millimeter for one.
fn without_twins(corners: Vec<DVec2>) -> Vec<DVec2> {
    let mut kept: Vec<DVec2> = Vec::with_capacity(corners.len());
    for corner in corners {
        if kept.last().is_none_or(|last| last.distance(corner) >= SAME_CORNER_M) {
            kept.push(corner);
        }
    }
    while let [first, .., last] = kept.as_slice()
        && first.distance(*last) < SAME_CORNER_M
    {
        kept.pop();
    }
    kept
}

/// Whether two loops go through the same corners, whichever comes first.
fn is_same(one: &[DVec2], other: &[DVec2]) -> bool {
    let Some(first) = one.first() else { return false };
    let near = |a: DVec2, b: DVec2| a.distance(b) < SAME_CORNER_M;
    let count = one.len();
    count == other.len()
        && other
            .iter()
            .position(|&corner| near(corner, *first))
            .is_some_and(|shift| (0..count).all(|index| near(one[index], other[(index + shift) % count])))
}

/// The plan's own origin where a drawing is near it, else a round figure at its lower left.
fn chosen_origin(drawn: &Bounds) -> DVec2 {
    let farthest = drawn.min_m.abs().max(drawn.max_m.abs()).max_element();
    if farthest <= NEAR_ORIGIN_M { DVec2::ZERO } else { (drawn.min_m / ROUND_M).floor() * ROUND_M }
}
