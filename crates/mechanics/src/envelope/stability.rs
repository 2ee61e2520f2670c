//! α_cr: the least factor on any loads of a combination at which the unit buckles.

use std::f64::consts::TAU;

use glam::DVec3;

use super::actions::{Actions, FootCase, SlewRange};
use super::engine::brace_plan;
use super::fault::EnvelopeFault;
use super::observed::Observed;
use super::prepared::Prepared;
use super::rows::Rows;
use super::slews::Slews;
use super::state::State;
use crate::frame::{Buckling, Softening};
use crate::unit::{Column, FrameOfUnit, Influence, Part, Pieces, Side, Station, UnitFault, UnitModel, turned};

/// Longest member of the frame as a share of the mast's height: two to a mast are 0.05 % off.
const LONGEST_SHARE: f64 = 0.5;

/// But not more members to an arm than this, however short the mast: the answer must not take seconds.
const MOST_TO_AN_ARM: f64 = 24.0;

/// Slews that are looked at where the unit's stiffness or loads depend on it, over the range.
const SLEWS: usize = 7;

/// Steps of a climb; two or three are usual.
const MOST_STEPS: usize = 8;

/// A rise of softening below this share ends a climb.
const WORTH: f64 = 1e-9;

/// The least critical factor and what acts there.
#[derive(Debug, Clone, PartialEq)]
pub struct CriticalFactor {
    /// α_cr: buckling load over acting load; infinite if nothing is pressed.
    pub alpha_cr: f64,
    /// Force of each rope on its point, structure axes, N.
    pub pulls_n: Vec<DVec3>,
    /// Slew, rad.
    pub slew_rad: f64,
    /// Whether that is without the brace: slack, or its foot lost.
    pub without_brace: bool,
}

/// The least α_cr over everything that may act at once.
///
/// Softening 1/α_cr is a convex function of the axial forces, which are linear in the loads, so it is
/// greatest at extreme pulls: a climb goes, again and again, to the pull to which its slope points, from
/// the pulls that press each member most. Limits of lean are left aside, on the safe side. A foot of its
/// own, second legs and forces that keep their direction make the answer depend on slew; then it is
/// looked for at seven slews over the range.
///
/// A brace that goes slack, and a foot that may be lost, count with and without the brace. If the unit
/// doesn't stand without it, that is told by [`Slack`](super::Slack), not here.
pub fn least_critical_factor(
    model: &UnitModel,
    actions: &Actions,
    range: &SlewRange,
) -> Result<CriticalFactor, EnvelopeFault> {
    let mut actions = actions.clone();
    for pull in &mut actions.pulls {
        pull.cone.lean = None;
    }
    let slews = Slews::new(range, model)?;
    let prepared = Prepared::new(model, &actions)?;
    let (plan, _) = brace_plan(model, &actions, &prepared, &slews)?;
    let mut best =
        CriticalFactor { alpha_cr: f64::INFINITY, pulls_n: Vec::new(), slew_rad: slews.any(), without_brace: false };
    let looked_at = if prepared.turns_with_the_arm() { vec![slews.any()] } else { spread(&slews) };
    for slew in looked_at {
        let braced = model.influence(slew)?;
        offer(&mut best, model, &prepared, &braced, Pieces::Whole)?;
        let without = plan.two_states || actions.foot == FootCase::HoldsOrLost && model.depends_on_slew();
        if let Some(bare) = model.influence_without_brace(slew).filter(|_| without) {
            offer(&mut best, model, &prepared, &bare, Pieces::WithoutBrace)?;
        }
    }
    Ok(best)
}

/// Takes the worst at one slew if it is worse.
fn offer(
    best: &mut CriticalFactor,
    model: &UnitModel,
    prepared: &Prepared<'_>,
    at: &Influence<'_>,
    pieces: Pieces,
) -> Result<(), EnvelopeFault> {
    let slew = at.slew_rad();
    let unit = model.unit();
    let arm_m = unit.outreach_m + unit.tail_m;
    let longest_m = (LONGEST_SHARE * unit.mast_height_m).max(arm_m / MOST_TO_AN_ARM);
    let frame = model.frame(pieces, longest_m, slew)?;
    let buckling = frame.frame.factor().and_then(|f| f.buckling()).map_err(UnitFault::from)?;
    let axial = AxialForces::new(&frame, prepared, at)?;
    let Some((softening, state)) = axial.climb(prepared, &buckling, slew)? else {
        return Ok(());
    };
    if softening > 0.0 && 1.0 / softening < best.alpha_cr {
        *best = CriticalFactor {
            alpha_cr: 1.0 / softening,
            pulls_n: state.pulls_n.iter().map(|p| turned(*p, slew)).collect(),
            slew_rad: slew,
            without_brace: pieces == Pieces::WithoutBrace,
        };
    }
    Ok(())
}

/// Axial force at one cut.
struct AxialAt(Station);

impl Observed<1> for AxialAt {
    fn of(&self, at: &Influence<'_>, load: &Column) -> [f64; 1] {
        [at.section(self.0, load).force_n.x]
    }
}

/// Axial forces of all elements of a frame, members before bars, as linear answers.
struct AxialForces {
    rows: Vec<Rows<1>>,
}

impl AxialForces {
    fn new(frame: &FrameOfUnit, prepared: &Prepared<'_>, at: &Influence<'_>) -> Result<Self, EnvelopeFault> {
        let middles = |part: Part, nodes: &[(f64, crate::frame::NodeId)]| -> Vec<Station> {
            let middle = |ends: &[(f64, crate::frame::NodeId)]| f64::midpoint(ends[0].0, ends[1].0);
            nodes.windows(2).map(|ends| Station { part, at_m: middle(ends), side: Side::After }).collect()
        };
        let mut stations = middles(Part::Mast, &frame.mast_nodes);
        stations.extend(middles(Part::Arm, &frame.arm_nodes));
        stations.extend(frame.brace.map(|_| Station { part: Part::Brace, at_m: 0.0, side: Side::After }));
        let rows = stations.into_iter().map(|station| prepared.rows(at, &AxialAt(station)));
        Ok(Self { rows: rows.collect::<Result<_, _>>()? })
    }

    /// The greatest softening of all climbs, and its state.
    fn climb(
        &self,
        prepared: &Prepared<'_>,
        buckling: &Buckling,
        slew: f64,
    ) -> Result<Option<(f64, State)>, EnvelopeFault> {
        let soften = |state: &State| {
            let forces: Vec<f64> = self.rows.iter().map(|row| row.of(state)[0]).collect();
            buckling.softening(&forces).map_err(UnitFault::from)
        };
        let mut started: Vec<State> = Vec::new();
        let mut best: Option<(Softening, State)> = None;
        for row in &self.rows {
            let start = prepared.state(row, &[-1.0], slew);
            if started.contains(&start) {
                continue;
            }
            started.push(start.clone());
            let softening = soften(&start)?;
            if best.as_ref().is_none_or(|(most, _)| softening.value > most.value) {
                best = Some((softening, start));
            }
        }
        let Some((mut softening, mut state)) = best else { return Ok(None) };
        for _ in 0..MOST_STEPS {
            let Some(goal) = self.along(&softening.slope) else { break };
            let next = prepared.state(&goal, &[1.0], slew);
            let further = soften(&next)?;
            if further.value <= softening.value * (1.0 + WORTH) {
                break;
            }
            (softening, state) = (further, next);
        }
        Ok(Some((softening.value, state)))
    }

    /// The weighted sum of all axial forces.
    fn along(&self, weights: &[f64]) -> Option<Rows<1>> {
        let parts = self.rows.iter().zip(weights).map(|(row, weight)| row.along(&[*weight]));
        parts.reduce(|sum, part| sum.plus(&part, 1.0))
    }
}

/// Slews over the range.
fn spread(slews: &Slews) -> Vec<f64> {
    let (from, to, count) = match slews {
        Slews::At(list) => return list.clone(),
        Slews::Between(from, to) => (*from, *to, SLEWS - 1),
        Slews::Turn => (0.0, TAU, SLEWS),
    };
    (0..SLEWS).map(|i| from + (to - from) * i as f64 / count as f64).collect()
}
