//! What was found about one base: every mode looked at with its share, its record and the state that brings it.

use std::sync::Arc;

use glam::{DVec2, DVec3};

pub use gantline_mechanics::anchorage::Mode;
use gantline_mechanics::envelope::Causes;

/// What base, fixing and concrete make of everything that acts.
#[derive(Debug, Clone, PartialEq)]
pub struct BaseAssessment {
    /// Everything looked at, in the order of [`Look`]; the base first, then a foot of its own.
    pub uses: Vec<BaseUse>,
    /// Which of them governs: the largest share.
    pub governs: Option<usize>,
    /// Nearest edges of the concrete in plan, nearest first; none for a wall or steel.
    pub edges: Vec<NearEdge>,
    /// Thickness of the concrete under the base, m.
    pub thickness_m: Option<f64>,
    /// Share of the anchors' tension that is sustained.
    pub sustained_share: Option<f64>,
    /// Whether bond strengths are the defaults of the design code and no product's.
    pub bond_is_default: bool,
    /// What reaches the structure elsewhere than under the plate: the root of a parapet, of a plinth, steel beside.
    pub handed_on: Vec<HandedOn>,
}

impl BaseAssessment {
    /// The use that governs.
    pub fn governing(&self) -> Option<&BaseUse> {
        self.governs.and_then(|index| self.uses.get(index))
    }

    /// The largest share of resistance used; infinite where nothing resists; none where nothing could be computed.
    pub fn utilization(&self) -> Option<f64> {
        self.governing().and_then(BaseUse::share)
    }

    /// What was not checked, with what is missing.
    pub fn not_checked(&self) -> impl Iterator<Item = (&BaseUse, &str)> {
        self.uses.iter().filter_map(|used| match &used.outcome {
            Used::NotChecked(what) => Some((used, what.as_str())),
            Used::Share(_) | Used::NotApplicable(_) => None,
        })
    }

    /// Whether everything was checked and nothing is used beyond its resistance.
    pub fn holds(&self) -> bool {
        self.not_checked().next().is_none() && self.utilization().is_some_and(|share| share <= 1.0)
    }
}

/// Which of a unit's fixings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fixed {
    /// The base that the mast stands in.
    Base,
    /// The foot of a brace of its own.
    Foot,
}

impl Fixed {
    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Base => "base",
            Self::Foot => "foot",
        }
    }
}

/// What is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Look {
    /// A way in which anchors in concrete fail.
    Anchors(Mode),
    /// Bolts in structural steel.
    SteelBolts,
    /// A weld to structural steel.
    Weld,
    /// The plate bends.
    PlateBends,
    /// The plate is stiff beside its anchors.
    PlateIsStiff,
    /// The plate presses on concrete or grout.
    PlatePresses,
    /// A sleeve presses on the concrete round it.
    SleevePresses,
    /// Concrete round a sleeve breaks out.
    SleeveBreaksOut,
    /// The base is pushed through the slab.
    PunchesDown,
    /// The anchors are torn out with a piece of the slab.
    PunchesUp,
}

impl Look {
    /// Whether it is a least distance and no resistance.
    pub const fn is_distance(self) -> bool {
        matches!(self, Self::Anchors(Mode::LeastSpacing | Mode::LeastEdgeDistance | Mode::LeastThickness))
    }

    /// Its words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Anchors(mode) => mode.words(),
            Self::SteelBolts => "bolts in steel",
            Self::Weld => "weld to steel",
            Self::PlateBends => "plate bending",
            Self::PlateIsStiff => "plate stiffness",
            Self::PlatePresses => "bearing of the plate",
            Self::SleevePresses => "bearing of the sleeve",
            Self::SleeveBreaksOut => "break-out at the sleeve",
            Self::PunchesDown => "punching, downward",
            Self::PunchesUp => "punching, upward",
        }
    }
}

/// One thing looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct BaseUse {
    /// At the base or at the foot.
    pub of: Fixed,
    /// What.
    pub look: Look,
    /// What came of it.
    pub outcome: Used,
    /// How it was computed.
    pub record: Option<Record>,
    /// The state that brings it; none where none governs.
    pub state: Option<Arc<PlateState>>,
}

impl BaseUse {
    /// Something without a record.
    pub fn plain(of: Fixed, look: Look, outcome: Used) -> Self {
        Self { of, look, outcome, record: None, state: None }
    }

    /// Something that was not checked.
    pub fn not_checked(of: Fixed, look: Look, missing: impl Into<String>) -> Self {
        Self::plain(of, look, Used::NotChecked(missing.into()))
    }

    /// The share of the resistance used, if it was computed.
    pub const fn share(&self) -> Option<f64> {
        match self.outcome {
            Used::Share(share) => Some(share),
            Used::NotChecked(_) | Used::NotApplicable(_) => None,
        }
    }
}

/// What came of a look. Missing data is never a pass.
#[derive(Debug, Clone, PartialEq)]
pub enum Used {
    /// Demand over resistance; 1 is the limit, infinite where nothing resists.
    Share(f64),
    /// What is missing.
    NotChecked(String),
    /// Why it can't occur.
    NotApplicable(String),
}

/// How a share was computed, step by step.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// Clause and edition.
    pub clause: String,
    /// Formula as text.
    pub formula: String,
    /// Symbols with their values in SI, in the order in which they enter.
    pub symbols: Vec<RecordSymbol>,
    /// Design resistance, N, where there is one.
    pub resistance_n: Option<f64>,
    /// What acts, N, where there is such a figure.
    pub action_n: Option<f64>,
    /// What must be said beside the figure; may be empty.
    pub caution: String,
}

/// A symbol with its value.
#[derive(Debug, Clone, PartialEq)]
pub struct RecordSymbol {
    /// As the code prints it.
    pub symbol: String,
    /// Value in the unit.
    pub value: f64,
    /// SI unit; empty for a plain number.
    pub unit: &'static str,
}

impl RecordSymbol {
    /// A symbol with its value.
    pub fn new(symbol: &str, value: f64, unit: &'static str) -> Self {
        Self { symbol: symbol.to_owned(), value, unit }
    }
}

/// One state of a base: what acts, and what plate and anchors do under it.
#[derive(Debug, Clone, PartialEq)]
pub struct PlateState {
    /// Index of the combination in the basis.
    pub combination: usize,
    /// Factor on self-weight.
    pub weight_factor: f64,
    /// Slew of the arm.
    pub slew_rad: f64,
    /// Direction of the rope's pull in the base's axes; none when no rope pulls.
    pub pull: Option<DVec3>,
    /// All that acts on the unit in this state, in the base's axes; none for a foot.
    pub causes: Option<Causes>,
    /// Fx, Fy, Fz (N), Mx, My, Mz (N·m) on the plate, in its axes.
    pub action: [f64; 6],
    /// Ratio of the elastic moduli of anchors and concrete that is worse.
    pub modular_ratio: f64,
    /// Tension of each anchor, N; with prying where the plate pries.
    pub tension_n: Vec<f64>,
    /// Force of the plate on each anchor in its plane, N.
    pub shear_n: Vec<DVec2>,
    /// Corners of the pressed part of the plate.
    pub pressed_m: Vec<DVec2>,
    /// Two points of the neutral axis; none where the plate presses or lifts all over.
    pub neutral_axis_m: Option<[DVec2; 2]>,
    /// Largest pressure under the plate, Pa.
    pub pressure_pa: f64,
    /// Resultant of the pressure, N; 0 where the plate presses nowhere.
    pub pressed_n: f64,
    /// Where it acts, in plate axes; none where the plate presses nowhere.
    pub pressed_at_m: Option<DVec2>,
}

/// The nearest place of an edge of the concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NearEdge {
    /// Distance from the nearest anchor, m.
    pub distance_m: f64,
    /// That anchor, in plan.
    pub anchor: DVec2,
    /// The foot of the perpendicular on the edge, in plan.
    pub on_edge: DVec2,
}

/// Actions that reach the structure elsewhere than under the plate; for the structural engineer.
#[derive(Debug, Clone, PartialEq)]
pub struct HandedOn {
    /// Where.
    pub at: String,
    /// Fx, Fy, Fz (N), Mx, My, Mz (N·m) in the base's axes, of the state with the largest moment there.
    pub action: [f64; 6],
    /// Index of the combination.
    pub combination: usize,
}
