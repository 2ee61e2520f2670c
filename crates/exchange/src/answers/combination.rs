//! What each combination of the basis brings to base, brace and foot: every extreme with all that acts at the same time.

use gantline_plan::assess::{CombinationResult, Component, FootExtreme, ForceExtreme, ReactionSet, Sense, Unavailable};
use gantline_plan::basis::LoadLevel;
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::{Amount, Figure, direction};

/// The results of a combination for one unit.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CombinationAnswer {
    /// Its name.
    pub name: String,
    /// Its level.
    pub level: LoadLevel,
    /// The loads and factors inside, in words and figures.
    pub inside: String,
    /// Pull of the rope; zero when no rope pulls.
    pub pull_n: Figure,
    /// Why there are no figures; null when there are.
    pub unavailable: Option<UnavailableAnswer>,
    /// Extremes at the base.
    pub sets: Vec<SetAnswer>,
    /// Largest and smallest force in the brace, tension positive; null without a brace.
    pub brace_axial: Option<BraceAnswer>,
    /// Extremes at a foot of its own; empty without one.
    pub foot: Vec<FootAnswer>,
}

/// Why a combination has no figures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum UnavailableAnswer {
    /// It could not be computed; what is missing. Never a pass.
    NotChecked(String),
    /// It does not concern this unit; why.
    NotApplicable(String),
}

/// One extreme at the base: the action of the unit on the structure, in the base's axes at the underside of its plate.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetAnswer {
    /// Which component is extreme: Fx, Fy, Fz, Mx, My, Mz, V (of Fx and Fy) or M (of Mx and My).
    pub component: String,
    /// Largest or smallest.
    pub sense: SenseName,
    /// Its value.
    pub value: Amount,
    /// All six components that act together.
    pub concurrent: SixAnswer,
    /// Unit vector of the rope's pull in the base's axes; null when no rope pulls.
    pub pull_direction: Option<[Figure; 3]>,
    /// Slew of the arm.
    pub slew_rad: Figure,
    /// Factor on self-weight inside.
    pub weight_factor: Figure,
}

/// Largest or smallest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SenseName {
    /// The largest value.
    Maximum,
    /// The smallest value.
    Minimum,
}

/// Six components that act together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SixAnswer {
    /// Away from the building.
    pub fx_n: Figure,
    /// Along the edge.
    pub fy_n: Figure,
    /// Up.
    pub fz_n: Figure,
    /// About x.
    pub mx_nm: Figure,
    /// About y.
    pub my_nm: Figure,
    /// About z: twist.
    pub mz_nm: Figure,
}

/// Extremes of the force in a brace.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BraceAnswer {
    /// The largest.
    pub maximum: AxialAnswer,
    /// The smallest.
    pub minimum: AxialAnswer,
}

/// A force along a brace.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AxialAnswer {
    /// The force, tension positive.
    pub axial_n: Figure,
    /// Unit vector of the rope's pull in the base's axes; null when no rope pulls.
    pub pull_direction: Option<[Figure; 3]>,
    /// Slew of the arm.
    pub slew_rad: Figure,
}

/// One extreme at a foot of its own, action on the structure.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FootAnswer {
    /// Which component is extreme: Fx, Fy, Fz or V.
    pub component: String,
    /// Largest or smallest.
    pub sense: SenseName,
    /// Its value.
    pub value_n: Figure,
    /// Away from the building, acting together.
    pub fx_n: Figure,
    /// Along the edge, acting together.
    pub fy_n: Figure,
    /// Up, acting together.
    pub fz_n: Figure,
    /// Unit vector of the rope's pull in the base's axes; null when no rope pulls.
    pub pull_direction: Option<[Figure; 3]>,
    /// Slew of the arm.
    pub slew_rad: Figure,
}

impl CombinationAnswer {
    /// The answer about a combination.
    pub fn of(result: &CombinationResult) -> Self {
        Self {
            name: result.name.clone(),
            level: result.level,
            inside: result.inside.clone(),
            pull_n: Figure::of(result.pull_n),
            unavailable: unavailable(result),
            sets: result.sets.iter().map(set).collect(),
            brace_axial: result.brace_axial.as_ref().map(brace),
            foot: result.foot.iter().map(foot).collect(),
        }
    }
}

/// A combination without figures always says why: where the assessment gives no reason, that no state was found in which
/// the unit stands.
fn unavailable(result: &CombinationResult) -> Option<UnavailableAnswer> {
    match &result.unavailable {
        Some(Unavailable::Missing(what)) => Some(UnavailableAnswer::NotChecked(what.clone())),
        Some(Unavailable::DoesNotApply(why)) => Some(UnavailableAnswer::NotApplicable(why.clone())),
        None if result.sets.is_empty() => {
            Some(UnavailableAnswer::NotChecked("no state was found in which the unit stands".to_owned()))
        }
        None => None,
    }
}

const fn sense(sense: Sense) -> SenseName {
    match sense {
        Sense::Max => SenseName::Maximum,
        Sense::Min => SenseName::Minimum,
    }
}

fn symbol(component: Component) -> String {
    component.symbol().to_owned()
}

/// The answer about an extreme at the base.
pub(crate) fn set(set: &ReactionSet) -> SetAnswer {
    let (forces, moments) = set.concurrent.split_at(3);
    let largest = |of: &[f64]| of.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
    let (largest_n, largest_nm) = (largest(forces), largest(moments));
    let beside =
        |component: Component, value| Figure::beside(value, if component.is_moment() { largest_nm } else { largest_n });
    let [fx_n, fy_n, fz_n] = [0, 1, 2].map(|index| Figure::beside(set.concurrent[index], largest_n));
    let [mx_nm, my_nm, mz_nm] = [3, 4, 5].map(|index| Figure::beside(set.concurrent[index], largest_nm));
    SetAnswer {
        component: symbol(set.component),
        sense: sense(set.sense),
        value: Amount::of_component(set.component, beside(set.component, set.value)),
        concurrent: SixAnswer { fx_n, fy_n, fz_n, mx_nm, my_nm, mz_nm },
        pull_direction: direction(set.pull),
        slew_rad: Figure::of(set.slew_rad),
        weight_factor: Figure::of(set.weight_factor),
    }
}

fn axial(extreme: &ForceExtreme, largest_n: f64) -> AxialAnswer {
    AxialAnswer {
        axial_n: Figure::beside(extreme.value, largest_n),
        pull_direction: direction(extreme.pull),
        slew_rad: Figure::of(extreme.slew_rad),
    }
}

fn brace([maximum, minimum]: &[ForceExtreme; 2]) -> BraceAnswer {
    let largest_n = maximum.value.abs().max(minimum.value.abs());
    BraceAnswer { maximum: axial(maximum, largest_n), minimum: axial(minimum, largest_n) }
}

fn foot(extreme: &FootExtreme) -> FootAnswer {
    let largest_n = extreme.concurrent.abs().max_element();
    let beside = |value| Figure::beside(value, largest_n);
    FootAnswer {
        component: symbol(extreme.component),
        sense: sense(extreme.sense),
        value_n: beside(extreme.value),
        fx_n: beside(extreme.concurrent.x),
        fy_n: beside(extreme.concurrent.y),
        fz_n: beside(extreme.concurrent.z),
        pull_direction: direction(extreme.pull),
        slew_rad: Figure::of(extreme.slew_rad),
    }
}
