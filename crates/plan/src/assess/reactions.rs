//! Reaction sets of a make-up under a basis. They hang on parts, basis and loaded slew, never on the place.

use glam::DVec3;

use crate::basis::LoadLevel;

/// A component of a reaction, with its sense.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Component {
    /// Away from the building.
    Fx,
    /// Along the edge.
    Fy,
    /// Up.
    Fz,
    /// About x.
    Mx,
    /// About y.
    My,
    /// About z: twist.
    Mz,
    /// Resultant of Fx and Fy.
    V,
    /// Resultant of Mx and My.
    M,
}

impl Component {
    /// Its symbol.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Fx => "Fx",
            Self::Fy => "Fy",
            Self::Fz => "Fz",
            Self::Mx => "Mx",
            Self::My => "My",
            Self::Mz => "Mz",
            Self::V => "V",
            Self::M => "M",
        }
    }

    /// All in order.
    pub const ALL: [Self; 8] = [Self::Fx, Self::Fy, Self::Fz, Self::Mx, Self::My, Self::Mz, Self::V, Self::M];

    /// What it is, in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Fx => "force away from the building",
            Self::Fy => "force along the edge",
            Self::Fz => "force up",
            Self::Mx => "moment about the axis away from the building",
            Self::My => "moment about the axis along the edge",
            Self::Mz => "twist about the mast",
            Self::V => "resultant of Fx and Fy",
            Self::M => "resultant of Mx and My",
        }
    }

    /// Whether it is a moment.
    pub const fn is_moment(self) -> bool {
        matches!(self, Self::Mx | Self::My | Self::Mz | Self::M)
    }
}

/// Largest or smallest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sense {
    /// The largest value.
    Max,
    /// The smallest value.
    Min,
}

impl Sense {
    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Max => "max",
            Self::Min => "min",
        }
    }
}

/// What governs a base for whoever designs the structure under it: the largest moment, sideways force, pull and push, and the
/// largest twist both ways.
pub const GOVERNING: [(Component, Sense); 6] = [
    (Component::M, Sense::Max),
    (Component::V, Sense::Max),
    (Component::Fz, Sense::Max),
    (Component::Fz, Sense::Min),
    (Component::Mz, Sense::Max),
    (Component::Mz, Sense::Min),
];

/// One extreme with everything that acts at the same time. Action of the unit on the structure, in the base's axes at
/// the underside of the base plate.
#[derive(Debug, Clone, PartialEq)]
pub struct ReactionSet {
    /// Index of the combination in the basis.
    pub combination: usize,
    /// Its level.
    pub level: LoadLevel,
    /// Which component is extreme here.
    pub component: Component,
    /// Largest or smallest.
    pub sense: Sense,
    /// Its value, N or N·m.
    pub value: f64,
    /// Fx, Fy, Fz (N), Mx, My, Mz (N·m) that act together.
    pub concurrent: [f64; 6],
    /// Direction of the rope's pull, if a rope pulls.
    pub pull: Option<DVec3>,
    /// Slew of the arm.
    pub slew_rad: f64,
    /// Factor on self-weight inside this set.
    pub weight_factor: f64,
}

/// What a combination of the basis gives for one make-up.
#[derive(Debug, Clone, PartialEq)]
pub struct CombinationResult {
    /// Its name.
    pub name: String,
    /// Its level.
    pub level: LoadLevel,
    /// The loads and factors inside, in words and figures.
    pub inside: String,
    /// Rope pull of the combination, N; zero when no rope pulls.
    pub pull_n: f64,
    /// Extremes: each component largest and smallest, resultants largest; empty when it could not be computed.
    pub sets: Vec<ReactionSet>,
    /// Largest and smallest pull in the brace, N, tension positive.
    pub brace_axial: Option<[ForceExtreme; 2]>,
    /// Largest and smallest forces at a separate foot, action on the structure, N.
    pub foot: Vec<FootExtreme>,
    /// Why there are no figures.
    pub unavailable: Option<Unavailable>,
}

/// Why a combination has no figures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unavailable {
    /// Something is missing.
    Missing(String),
    /// It does not concern this unit.
    DoesNotApply(String),
}

/// A brace that only pulls and goes slack.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SlackBrace {
    /// When, and what follows.
    pub said: String,
    /// Whether nothing holds the arm then.
    pub is_mechanism: bool,
}

/// An extreme of one figure with the pull and slew that bring it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ForceExtreme {
    /// The figure, SI.
    pub value: f64,
    /// Direction of the rope's pull, if a rope pulls.
    pub pull: Option<DVec3>,
    /// Slew of the arm.
    pub slew_rad: f64,
}

/// An extreme of a separate foot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FootExtreme {
    /// Fx, Fy or Fz.
    pub component: Component,
    /// Largest or smallest.
    pub sense: Sense,
    /// Its value, N.
    pub value: f64,
    /// Fx, Fy, Fz that act together, N.
    pub concurrent: DVec3,
    /// Direction of the rope's pull, if a rope pulls.
    pub pull: Option<DVec3>,
    /// Slew of the arm.
    pub slew_rad: f64,
}

/// Use of one member in its worst combination.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberUse {
    /// Mast, arm or brace.
    pub member: &'static str,
    /// Worst combination.
    pub combination: usize,
    /// What was looked at: section, stability, ...
    pub mode: String,
    /// Demand over resistance; none when it could not be checked.
    pub utilization: Option<f64>,
    /// Clause of the code, or what is missing.
    pub clause: String,
    /// Distance of the worst station from the member's first end, m.
    pub station_m: f64,
    /// Direction of the rope's pull, if a rope pulls.
    pub pull: Option<DVec3>,
}

/// Members under the declared rating.
#[derive(Debug, Clone, PartialEq)]
pub struct AtRating {
    /// Largest demand over resistance of mast, arm and brace.
    pub utilization: f64,
    /// Whether every mode could be checked.
    pub all_checked: bool,
    /// Loads and factors inside.
    pub inside: String,
}

/// Something looked at where the mast stands in its socket.
#[derive(Debug, Clone, PartialEq)]
pub struct SocketUse {
    /// What was looked at.
    pub what: String,
    /// Demand over resistance; none when it could not be checked.
    pub utilization: Option<f64>,
    /// Clause, or what is missing.
    pub clause: String,
}

/// A joint in its worst combination.
#[derive(Debug, Clone, PartialEq)]
pub struct JointUse {
    /// Which joint.
    pub joint: &'static str,
    /// What keeps it together.
    pub held_by: crate::catalog::Retention,
    /// Largest force that parts it, N; not positive when nothing ever does.
    pub uplift_n: f64,
    /// Worst combination.
    pub combination: usize,
}

/// Everything that follows from make-up, basis and loaded slew.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Reactions {
    /// In the order of the basis.
    pub combinations: Vec<CombinationResult>,
    /// Members with every mode looked at.
    pub members: Vec<MemberUse>,
    /// Joints.
    pub joints: Vec<JointUse>,
    /// Members at the declared rating with the factors of the basis; none without a rating or such factors.
    pub at_rating: Option<AtRating>,
    /// The mast in its socket: what was looked at.
    pub socket: Vec<SocketUse>,
    /// Largest twist about the mast axis at the design level, N·m.
    pub twist_nm: Option<f64>,
    /// Largest tip deflection in service, m.
    pub tip_deflection_m: Option<f64>,
    /// Smallest ratio of critical to acting load.
    pub alpha_cr: Option<f64>,
    /// Whether a brace that only pulls goes slack, and what that means.
    pub slack: Option<SlackBrace>,
}

impl Reactions {
    /// The combination with the largest resultant moment at the design level, or at any level if there is none.
    pub fn governing(&self) -> Option<&CombinationResult> {
        let moment = |result: &&CombinationResult| result.largest(Component::M);
        let by_moment = |a: &&CombinationResult, b: &&CombinationResult| moment(a).total_cmp(&moment(b));
        let design = self.combinations.iter().filter(|result| result.level != LoadLevel::Service);
        design.max_by(by_moment).or_else(|| self.combinations.iter().max_by(by_moment))
    }

    /// The name of a combination by its place; empty where there is none.
    pub fn combination_name(&self, index: usize) -> &str {
        self.combinations.get(index).map_or("", |result| result.name.as_str())
    }

    /// The extreme of a component over all combinations of one level; levels are never mixed.
    pub fn worst(&self, level: LoadLevel, component: Component, sense: Sense) -> Option<&ReactionSet> {
        let sets = self.combinations.iter().filter(|result| result.level == level);
        let sets = sets.filter_map(|result| result.extreme(component, sense));
        match sense {
            Sense::Max => sets.max_by(|a, b| a.value.total_cmp(&b.value)),
            Sense::Min => sets.min_by(|a, b| a.value.total_cmp(&b.value)),
        }
    }

    /// The largest magnitude of a component over all combinations of one level.
    pub fn largest(&self, level: LoadLevel, component: Component) -> Option<&ReactionSet> {
        let both = [Sense::Max, Sense::Min].into_iter().filter_map(|sense| self.worst(level, component, sense));
        both.max_by(|a, b| a.value.abs().total_cmp(&b.value.abs()))
    }
}

impl CombinationResult {
    /// The extreme of a component.
    pub fn extreme(&self, component: Component, sense: Sense) -> Option<&ReactionSet> {
        self.sets.iter().find(|set| set.component == component && set.sense == sense)
    }

    /// The largest magnitude of a component; zero when it was not computed.
    pub fn largest(&self, component: Component) -> f64 {
        self.sets.iter().filter(|set| set.component == component).map(|set| set.value.abs()).fold(0.0, f64::max)
    }
}
