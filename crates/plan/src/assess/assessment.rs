//! The assessment: everything computed about a plan, by thing. Never stored.

use std::collections::BTreeMap;
use std::sync::Arc;

use glam::DVec2;

use super::anchorage::BaseAssessment;
use super::check::{Check, Tally};
use super::reactions::Reactions;
use super::swept::SweptBand;
use crate::catalog::{MakeUpFault, ResolvedUnit};
use crate::document::{EdgeId, ObstacleId, PlacementId, RoofId, ThingId};
use crate::geometry::facade::{Facade, FacadeKey};
use crate::geometry::frame::Frame;
use crate::geometry::spans::Spans;
use crate::geometry::turns::Turns;

/// Everything computed about a plan.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Assessment {
    /// Units by id.
    pub units: BTreeMap<PlacementId, Arc<UnitAssessment>>,
    /// Facades by their first edge.
    pub facades: BTreeMap<FacadeKey, Arc<FacadeAssessment>>,
    /// Rules about the plan as a whole, its basis, its tags.
    pub plan_checks: Vec<Check>,
}

impl Assessment {
    /// Every rule looked at: the plan's, then the units', then the facades'.
    pub fn checks(&self) -> impl Iterator<Item = &Check> {
        let of_units = self.units.values().flat_map(|unit| &unit.checks);
        let of_facades = self.facades.values().flat_map(|facade| &facade.checks);
        self.plan_checks.iter().chain(of_units).chain(of_facades)
    }

    /// Checks that fail or could not be made, worst first.
    pub fn findings(&self) -> Vec<&Check> {
        let mut findings: Vec<&Check> = self.checks().filter(|check| check.is_finding()).collect();
        findings.sort_by_key(|check| (check.rank(), check.code, check.about.first().copied()));
        findings
    }

    /// Findings about one thing, worst first.
    pub fn findings_about(&self, thing: ThingId) -> Vec<&Check> {
        let mut findings = self.findings();
        findings.retain(|check| check.about.contains(&thing));
        findings
    }

    /// How many checks came to which outcome.
    pub fn tally(&self) -> Tally {
        Tally::of(self.checks())
    }

    /// The facade that an edge belongs to.
    pub fn facade_of(&self, edge: EdgeId) -> Option<&Arc<FacadeAssessment>> {
        self.facades.values().find(|found| found.facade.edges.iter().any(|part| part.edge == edge))
    }
}

/// What is computed about one unit.
#[derive(Debug, Clone, PartialEq)]
pub struct UnitAssessment {
    /// Its axes; none when its edge or roof is gone.
    pub frame: Option<Frame>,
    /// Its parts with all their data, or what is missing.
    pub resolved: Result<Arc<ResolvedUnit>, MakeUpFault>,
    /// Its reactions and what follows from them; none when the make-up can't be resolved.
    pub reactions: Option<Arc<Reactions>>,
    /// Its base and its foot with what the concrete bears; none without a place or parts.
    pub base: Option<Arc<BaseAssessment>>,
    /// Slew at which a person may hang, in the base's axes.
    pub loaded: Turns,
    /// Slew that serves a facade, in the base's axes.
    pub serving: Turns,
    /// Facades it serves.
    pub serves: Vec<Served>,
    /// Where it stands on its edge.
    pub setting_out: Option<SettingOut>,
    /// Parts that sweep, in plan coordinates with heights as levels over level zero.
    pub swept: Vec<SweptPart>,
    /// Every pair of a swept part and something near it that was looked at.
    pub clearances: Vec<PairClearance>,
    /// Room for the operator and for laying the mast down.
    pub room: Option<Room>,
    /// Rules looked at for this unit.
    pub checks: Vec<Check>,
}

impl UnitAssessment {
    /// Clearances that are too small, then the others, tightest first.
    pub fn tightest(&self) -> Vec<&PairClearance> {
        let mut pairs: Vec<&PairClearance> = self.clearances.iter().collect();
        pairs.sort_by(|a, b| {
            b.conflict.cmp(&a.conflict).then((a.clear_m - a.limit_m).total_cmp(&(b.clear_m - b.limit_m)))
        });
        pairs
    }
}

/// What one unit covers of one facade. `s` runs along the facade, depth down from its top.
#[derive(Debug, Clone, PartialEq)]
pub struct Served {
    /// The facade.
    pub facade: FacadeKey,
    /// Slew that serves it, in the base's axes.
    pub slew: Turns,
    /// Where ropes hang along the facade, m.
    pub feet: Spans,
    /// Stretches covered over the whole height, m along the facade.
    pub full_height: Spans,
    /// Stretches covered at some depth, m along the facade.
    pub any_depth: Spans,
    /// Covered regions, corners as (s, depth).
    pub regions: Vec<Vec<DVec2>>,
    /// Covered area, m².
    pub area_m2: f64,
    /// Depth of the facade's top below the rope's last support; negative when the tip is below the top.
    pub top_below_tip_m: f64,
    /// Distance of the tip outside the facade's face at its top where the arm points straightest at it.
    pub stand_off_m: f64,
}

/// What is computed about one facade.
#[derive(Debug, Clone, PartialEq)]
pub struct FacadeAssessment {
    /// The facade.
    pub facade: Facade,
    /// Its area, m²; what needs access when its data say so.
    pub area_m2: f64,
    /// Area covered by any unit, m².
    pub covered_m2: f64,
    /// Regions not covered.
    pub gaps: Vec<GapRegion>,
    /// Stretches covered over the whole height, m along the facade.
    pub full_height: Spans,
    /// Stretches not covered over the whole height, m along the facade.
    pub full_height_gaps: Spans,
    /// Units that serve it.
    pub served_by: Vec<PlacementId>,
    /// Rules looked at for this facade.
    pub checks: Vec<Check>,
}

/// A region of a facade that no unit reaches; corners as (s, depth).
#[derive(Debug, Clone, PartialEq)]
pub struct GapRegion {
    /// Outline.
    pub outline: Vec<DVec2>,
    /// Holes in it: islands that are reached.
    pub holes: Vec<Vec<DVec2>>,
    /// Its area, m².
    pub area_m2: f64,
}

/// Which part of a unit sweeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// The arm.
    Arm,
    /// A brace in front of the mast.
    FrontBrace,
    /// A brace behind the mast.
    RearBrace,
    /// The strut to a separate foot; it does not turn.
    FootStrut,
}

impl Part {
    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Arm => "arm",
            Self::FrontBrace => "front brace",
            Self::RearBrace => "rear brace",
            Self::FootStrut => "foot strut",
        }
    }
}

/// A part with the band it sweeps; heights in it are levels over level zero, angles are in the plan.
#[derive(Debug, Clone, PartialEq)]
pub struct SweptPart {
    /// The part.
    pub part: Part,
    /// Direction in the plan in which the part lies at slew 0; none for a part that does not turn.
    pub turned_rad: Option<f64>,
    /// What the serving slew sweeps.
    pub serving: SweptBand,
    /// What the rest of the turn sweeps.
    pub rest: SweptBand,
}

/// What a swept part passes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Against {
    /// The parapet of an edge.
    Parapet(EdgeId),
    /// An obstacle.
    Obstacle(ObstacleId),
    /// The volume below a higher roof, its parapets included.
    HigherRoof(RoofId),
    /// What stays in the roof of another unit.
    Base(PlacementId),
    /// Another unit while it stands.
    StandingUnit(PlacementId),
}

/// Over which part of the slew a clearance was looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Over {
    /// The slew that serves a facade.
    Serving,
    /// The rest of the loaded slew.
    Rest,
}

/// In which direction a clearance is smallest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// In height, where the plans overlap.
    Height,
    /// In plan, beside it.
    Around,
}

/// The smallest clearance of one swept part to one thing.
#[derive(Debug, Clone, PartialEq)]
pub struct PairClearance {
    /// The part.
    pub part: Part,
    /// What it passes.
    pub against: Against,
    /// Over which slew.
    pub over: Over,
    /// In height or around.
    pub way: Way,
    /// The clearance, m; negative when they run into each other in height.
    pub clear_m: f64,
    /// The clearance that is asked for, m.
    pub limit_m: f64,
    /// Whether it is too small.
    pub conflict: bool,
    /// Where, in plan.
    pub at: DVec2,
    /// Where, level over level zero.
    pub level_m: f64,
}

/// Where a unit stands on its edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SettingOut {
    /// The edge.
    pub edge: EdgeId,
    /// Length of the edge, m.
    pub edge_length_m: f64,
    /// From the edge's start, m.
    pub from_start_m: f64,
    /// To the edge's end, m.
    pub to_end_m: f64,
    /// Mast axis behind the outline, m.
    pub setback_m: f64,
    /// Nearest unit of the same edge toward the start, and the distance along the edge, m.
    pub before: Option<(PlacementId, f64)>,
    /// Nearest unit of the same edge toward the end, and the distance along the edge, m.
    pub after: Option<(PlacementId, f64)>,
}

/// Room that people need at a unit, as outlines in plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// Where the operator stands.
    pub standing: Vec<DVec2>,
    /// Where the mast is laid down and tilted in.
    pub erection: Vec<DVec2>,
    /// Least distance from the standing place to an edge of the roof, with that edge.
    pub to_edge: Option<(f64, EdgeId)>,
}
