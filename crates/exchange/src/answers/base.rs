//! What base, fixing and concrete of a unit bear, with every record.

use gantline_plan::assess::UnitAssessment;
use gantline_plan::assess::anchorage::{BaseAssessment, BaseUse, Fixed, HandedOn, NearEdge, PlateState, Record, Used};
use gantline_plan::document::Plan;
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::{Figure, direction, point};

/// The base of a unit and its foot, if it has one.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BaseAnswer {
    /// Kind of base.
    pub kind: String,
    /// How it is fixed; null when not known.
    pub fixing: Option<String>,
    /// Which test its fixing gets; null when the basis doesn't say.
    pub test: Option<String>,
    /// The largest share of resistance used; null when nothing could be computed or nothing resists.
    pub utilization: Option<Figure>,
    /// Whether something acts that nothing resists: the share is then beyond every number. Never a pass.
    pub nothing_resists: bool,
    /// What governs; null when nothing could be computed.
    pub governs: Option<String>,
    /// Whether everything was checked and nothing is used beyond its resistance.
    pub holds: bool,
    /// Thickness of the concrete under it; null when not measured.
    pub thickness_m: Option<Figure>,
    /// Share of the anchors' tension that is sustained; null when not computed.
    pub sustained_ratio: Option<Figure>,
    /// Whether bond strengths are the defaults of the design code and no product's.
    pub is_bond_default: bool,
    /// Nearest edges of the concrete, nearest first.
    pub edges: Vec<EdgeAnswer>,
    /// Actions that reach the structure elsewhere than under the plate.
    pub handed_on: Vec<HandedOnAnswer>,
    /// Everything looked at.
    pub uses: Vec<UseAnswer>,
}

/// The nearest place of an edge.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EdgeAnswer {
    /// Distance from the nearest anchor.
    pub distance_m: Figure,
    /// That anchor, in the plan.
    pub anchor_m: [Figure; 2],
    /// The place on the edge, in the plan.
    pub on_edge_m: [Figure; 2],
}

/// Actions for the structural engineer.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HandedOnAnswer {
    /// Where.
    pub at: String,
    /// Fx, Fy, Fz in the base's axes.
    pub force_n: [Figure; 3],
    /// Mx, My, Mz in the base's axes.
    pub moment_nm: [Figure; 3],
    /// The combination.
    pub combination: String,
}

/// One thing looked at.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct UseAnswer {
    /// `base` or `foot`.
    pub of: String,
    /// What was looked at.
    pub look: String,
    /// Share of the resistance used; null when it was not computed, or nothing resists.
    pub utilization: Option<Figure>,
    /// Whether nothing resists: the share is then beyond every number. Never a pass.
    pub nothing_resists: bool,
    /// What is missing; null when it was checked. Never a pass.
    pub not_checked: Option<String>,
    /// Why it can't occur; null when it can.
    pub not_applicable: Option<String>,
    /// How it was computed.
    pub record: Option<RecordAnswer>,
    /// The state that brings it.
    pub state: Option<StateAnswer>,
}

/// How a share was computed.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RecordAnswer {
    /// Clause and edition.
    pub clause: String,
    /// The formula.
    pub formula: String,
    /// Symbols in the order in which they enter.
    pub symbols: Vec<SymbolAnswer>,
    /// Design resistance.
    pub resistance_n: Option<Figure>,
    /// What acts.
    pub action_n: Option<Figure>,
    /// What must be said beside the figure; empty when nothing.
    pub caution: String,
}

/// A symbol with its value in the SI unit beside it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SymbolAnswer {
    /// As the code prints it.
    pub symbol: String,
    /// Its value.
    pub value: Figure,
    /// Its SI unit; empty for a plain number.
    pub unit: String,
}

/// A state of the plate.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StateAnswer {
    /// The combination.
    pub combination: String,
    /// Factor on self-weight.
    pub weight_factor: Figure,
    /// Slew of the arm.
    pub slew_rad: Figure,
    /// Unit vector of the rope's pull in the base's axes; null when no rope pulls.
    pub pull_direction: Option<[Figure; 3]>,
    /// Fx, Fy, Fz on the plate, in its axes.
    pub force_n: [Figure; 3],
    /// Mx, My, Mz on the plate, in its axes.
    pub moment_nm: [Figure; 3],
    /// Elastic modulus of the anchors by that of the concrete.
    pub modular_ratio: Figure,
    /// Tension of each anchor.
    pub tension_n: Vec<Figure>,
    /// Force of the plate on each anchor in its plane.
    pub shear_n: Vec<[Figure; 2]>,
    /// Largest pressure under the plate.
    pub pressure_pa: Figure,
}

impl BaseAnswer {
    /// The base of a unit; none where it was not assessed.
    pub fn of(plan: &Plan, unit: &UnitAssessment) -> Option<Self> {
        let (base, resolved) = (unit.base.as_deref()?, unit.resolved.as_deref().ok()?);
        let kind = resolved.fixing_kind();
        let test = kind.and_then(|kind| plan.basis.tests.get(&kind));
        Some(Self {
            kind: resolved.base.kind.words().to_owned(),
            fixing: kind.map(|kind| kind.words().to_owned()),
            test: test.map(|duty| duty.value.words()),
            utilization: base.utilization().and_then(finite),
            nothing_resists: base.utilization() == Some(f64::INFINITY),
            governs: base.governing().map(BaseUse::named),
            holds: base.holds(),
            thickness_m: base.thickness_m.map(Figure::of),
            sustained_ratio: base.sustained_share.map(Figure::of),
            is_bond_default: base.bond_is_default,
            edges: base.edges.iter().map(EdgeAnswer::of).collect(),
            handed_on: base.handed_on.iter().map(|handed| HandedOnAnswer::of(plan, handed)).collect(),
            uses: uses(plan, base),
        })
    }
}

fn uses(plan: &Plan, base: &BaseAssessment) -> Vec<UseAnswer> {
    base.uses.iter().map(|used| UseAnswer::of(plan, used)).collect()
}

fn finite(value: f64) -> Option<Figure> {
    value.is_finite().then(|| Figure::of(value))
}

fn combination(plan: &Plan, index: usize) -> String {
    plan.basis.combination_name(index).to_owned()
}

/// Forces and moments of an action, each rounded beside the largest of its kind.
fn parts(action: [f64; 6]) -> ([Figure; 3], [Figure; 3]) {
    let [x, y, z, about_x, about_y, about_z] = action;
    let beside = |three: [f64; 3]| {
        let largest = three.iter().fold(0.0_f64, |most, part| most.max(part.abs()));
        three.map(|part| Figure::beside(part, largest))
    };
    (beside([x, y, z]), beside([about_x, about_y, about_z]))
}

impl EdgeAnswer {
    fn of(edge: &NearEdge) -> Self {
        Self { distance_m: Figure::of(edge.distance_m), anchor_m: point(edge.anchor), on_edge_m: point(edge.on_edge) }
    }
}

impl HandedOnAnswer {
    fn of(plan: &Plan, handed: &HandedOn) -> Self {
        let (force_n, moment_nm) = parts(handed.action);
        Self { at: handed.at.clone(), force_n, moment_nm, combination: combination(plan, handed.combination) }
    }
}

impl UseAnswer {
    fn of(plan: &Plan, used: &BaseUse) -> Self {
        let (mut utilization, mut not_checked, mut not_applicable) = (None, None, None);
        match &used.outcome {
            Used::Share(share) => utilization = finite(*share),
            Used::NotChecked(what) => not_checked = Some(what.clone()),
            Used::NotApplicable(why) => not_applicable = Some(why.clone()),
        }
        Self {
            of: match used.of {
                Fixed::Base => "base".to_owned(),
                Fixed::Foot => "foot".to_owned(),
            },
            look: used.look.words().to_owned(),
            utilization,
            nothing_resists: used.share() == Some(f64::INFINITY),
            not_checked,
            not_applicable,
            record: used.record.as_ref().map(RecordAnswer::of),
            state: used.state.as_deref().map(|state| StateAnswer::of(plan, state)),
        }
    }
}

impl RecordAnswer {
    fn of(record: &Record) -> Self {
        let symbols = record.symbols.iter().map(|symbol| SymbolAnswer {
            symbol: symbol.symbol.clone(),
            value: Figure::of(symbol.value),
            unit: symbol.unit.to_owned(),
        });
        Self {
            clause: record.clause.clone(),
            formula: record.formula.clone(),
            symbols: symbols.collect(),
            resistance_n: record.resistance_n.and_then(finite),
            action_n: record.action_n.and_then(finite),
            caution: record.caution.clone(),
        }
    }
}

impl StateAnswer {
    fn of(plan: &Plan, state: &PlateState) -> Self {
        let (force_n, moment_nm) = parts(state.action);
        let most = state.tension_n.iter().fold(0.0_f64, |most, tension| most.max(tension.abs()));
        let sheared = state.shear_n.iter().fold(0.0_f64, |most, shear| most.max(shear.length()));
        Self {
            combination: combination(plan, state.combination),
            weight_factor: Figure::of(state.weight_factor),
            slew_rad: Figure::of(state.slew_rad),
            pull_direction: direction(state.pull),
            force_n,
            moment_nm,
            modular_ratio: Figure::of(state.modular_ratio),
            tension_n: state.tension_n.iter().map(|tension| Figure::beside(*tension, most)).collect(),
            shear_n: state
                .shear_n
                .iter()
                .map(|shear| shear.to_array().map(|part| Figure::beside(part, sheared)))
                .collect(),
            pressure_pa: Figure::of(state.pressure_pa),
        }
    }
}
