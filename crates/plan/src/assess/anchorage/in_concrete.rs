//! Anchors in concrete: every mode of the code under every state, each with its worst and the record of that.

use std::cell::RefCell;
use std::sync::Arc;

use gantline_mechanics::anchorage::{
    AnchorageFault, Around, FastenerKind, Group, GroupActions, ModeShares, NotChecked, Record as Printed,
};
use gantline_mechanics::plate::{Candidate, UnitOnPlate};

use super::code::Prepared;
use super::found::{BaseUse, Fixed, Look, Mode, NearEdge, Record, RecordSymbol, Used};
use super::site::InPlace;
use super::states::{AnchorForces, State, group_actions};
use crate::basis::DesignCode;
use crate::geometry::concrete_around::{ConcreteAround, LocalSetting};

/// Anchors of a base or foot where they stand, edges in plate axes.
pub(super) struct InConcrete {
    pub uses: Vec<BaseUse>,
    pub edges: Vec<NearEdge>,
    pub thickness_m: Option<f64>,
}

/// A wall thinner than this many embedments is no member that the codes' cones were tested in.
const THIN_WALL_EMBEDMENTS: f64 = 2.0;

/// So many near edges are shown.
const SHOWN_EDGES: usize = 4;

/// Judges the anchors in their concrete.
pub(super) fn judge(of: Fixed, forces: &AnchorForces, stands: &InPlace, code: &DesignCode) -> InConcrete {
    let nothing = |what: &str| not_judged(of, what);
    let around = match stands.local.as_ref().map(LocalSetting::measure) {
        Ok(Ok(around)) => around,
        Ok(Err(fault)) => return nothing(&fault.to_string()),
        Err(what) => return nothing(what),
    };
    let thickness_m = Some(around.thickness_m());
    let edges = if stands.is_in_plan { near_edges(&around, forces) } else { Vec::new() };
    let group = as_the_code_knows_it(&forces.group, stands);
    let uses = match modes(of, forces, &group, stands, &around, code) {
        Ok(uses) => uses,
        Err(fault) => not_checked(of, &fault.to_string()),
    };
    InConcrete { uses, edges, thickness_m }
}

/// Anchors of which nothing could be judged.
pub(super) fn not_judged(of: Fixed, what: &str) -> InConcrete {
    InConcrete { uses: not_checked(of, what), edges: Vec::new(), thickness_m: None }
}

/// In a thin wall only the steel of the anchors is checked: its break-out lies outside the codes.
fn as_the_code_knows_it(group: &Group, stands: &InPlace) -> Group {
    let mut group = group.clone();
    let is_thin = stands.thickness_m < THIN_WALL_EMBEDMENTS * group.fastener.embedment_m;
    if !stands.is_in_plan && is_thin {
        group.fastener.kind = FastenerKind::ThroughBolt;
    }
    group
}

fn modes(
    of: Fixed,
    forces: &AnchorForces,
    group: &Group,
    stands: &InPlace,
    around: &ConcreteAround,
    code: &DesignCode,
) -> Result<Vec<BaseUse>, AnchorageFault> {
    let concrete = stands.bars.in_concrete(&stands.concrete, group, around);
    let mut prepared = Prepared::new(code, group, &concrete, around)?;
    let mut worst = Worst::NOTHING;
    let mut near: Vec<(f64, usize)> = Vec::with_capacity(forces.states.len());
    for (index, state) in forces.states.iter().enumerate() {
        match &state.anchors {
            Some(actions) => {
                let shares = prepared.shares(actions)?;
                worst.take(index, &shares);
                near.push((shares.verdict().utilization, index));
            }
            None => worst.nothing_resists = worst.nothing_resists.or(Some(index)),
        }
    }
    let mut states: Vec<&State> = forces.states.iter().collect();
    let climbed = searched_on(forces, near, &mut prepared)?;
    if let Some(state) = &climbed
        && let Some(actions) = &state.anchors
    {
        worst.take(states.len(), &prepared.shares(actions)?);
        states.push(state);
    }
    let mut uses = Vec::with_capacity(Mode::ALL.len());
    for mode in Mode::ALL {
        uses.push(worst.of_mode((of, mode), forces, &states, &mut prepared)?);
    }
    if let Some(index) = worst.nothing_resists {
        uses.push(unresisted(of, forces, index));
    }
    Ok(uses)
}

/// So many more solutions may a search on take. Of seven times 60 drawn bases none was then missed by a thousandth against a fine
/// grid; with 250 one was, by 0.4 %, with 90 from the worst 16 states alone several, by up to 2.2 %: near one edge the worst lies where
/// little is sheared, or where pull and shear meet, and a search that starts on one of both hills must see the other.
const MORE_SOLUTIONS: usize = 400;

/// Goes on from the worst states, now that the place is known.
fn searched_on(
    forces: &AnchorForces,
    mut near: Vec<(f64, usize)>,
    prepared: &mut Prepared<'_>,
) -> Result<Option<State>, AnchorageFault> {
    let (Some(unit), Some(plate)) = (&forces.unit, forces.plates.last()) else { return Ok(None) };
    near.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let kept: Vec<Candidate> = near.iter().filter_map(|&(_, index)| forces.states[index].candidate()).collect();
    let fault = RefCell::new(None);
    let prepared = RefCell::new(prepared);
    let judge = |candidate: &Candidate| -> f64 {
        let Ok(solution) = &candidate.solution else { return f64::INFINITY };
        let Some(mut actions) = group_actions(plate, candidate.action, solution) else { return f64::INFINITY };
        actions.sustained_share = Some(forces.sustained_share);
        match prepared.borrow_mut().shares(&actions) {
            Ok(shares) => shares.verdict().utilization,
            Err(found) => {
                *fault.borrow_mut() = Some(found);
                0.0
            }
        }
    };
    let found = UnitOnPlate::new(&unit.model, &unit.sets, &unit.slews, unit.axes)
        .and_then(|on_plate| on_plate.worst_for(plate, &kept, &judge, MORE_SOLUTIONS));
    if let Some(fault) = fault.into_inner() {
        return Err(fault);
    }
    // What can't be searched on was found once for these actions: the states known stand.
    let Some((candidate, _)) = found.ok().flatten() else { return Ok(None) };
    let mut state = State::hardest_pulled(State::found(&candidate, unit, &forces.plates));
    if let Some(state) = &mut state {
        state.sustain(forces.sustained_share);
    }
    Ok(state)
}

/// The worst state of each mode.
struct Worst {
    used: [Option<(usize, f64)>; Mode::ALL.len()],
    missing: [Option<NotChecked>; Mode::ALL.len()],
    why_not: [Option<&'static str>; Mode::ALL.len()],
    nothing_resists: Option<usize>,
    states: usize,
}

/// Of modes that the code doesn't know for this fixing.
const NO_SUCH_MODE: &str = "the code has no such mode for this fixing";

impl Worst {
    const NOTHING: Self = Self {
        used: [None; Mode::ALL.len()],
        missing: [None; Mode::ALL.len()],
        why_not: [None; Mode::ALL.len()],
        nothing_resists: None,
        states: 0,
    };

    fn take(&mut self, index: usize, shares: &ModeShares) {
        self.states += 1;
        for (at, mode) in Mode::ALL.into_iter().enumerate() {
            if let Some(share) = shares.used(mode)
                && self.used[at].is_none_or(|known| share > known.1)
            {
                self.used[at] = Some((index, share));
            }
            self.missing[at] = self.missing[at].or(shares.missing(mode));
            self.why_not[at] = self.why_not[at].or(shares.not_applicable(mode));
        }
    }

    /// What came of a mode. What is missing in any state leaves it unchecked, whatever others say.
    fn of_mode(
        &self,
        (of, mode): (Fixed, Mode),
        forces: &AnchorForces,
        states: &[&State],
        prepared: &mut Prepared<'_>,
    ) -> Result<BaseUse, AnchorageFault> {
        let at = mode as usize;
        let look = Look::Anchors(mode);
        let plain = |outcome| BaseUse { of, look, outcome, record: None, state: None };
        if let Some(why) = self.missing[at] {
            return Ok(plain(Used::NotChecked(why.to_string())));
        }
        let Some((index, share)) = self.used[at] else {
            let why = self.why_not[at].unwrap_or(NO_SUCH_MODE);
            return Ok(plain(if self.states == 0 {
                Used::NotChecked("a state of the base at the design level".to_owned())
            } else {
                Used::NotApplicable(why.to_owned())
            }));
        };
        let state = states[index];
        let Some(actions) = &state.anchors else { return Ok(plain(Used::Share(share))) };
        Ok(BaseUse {
            of,
            look,
            outcome: Used::Share(share),
            record: worst_record(prepared, actions, mode)?,
            state: Some(Arc::new(state.told(forces))),
        })
    }
}

fn worst_record(
    prepared: &mut Prepared<'_>,
    actions: &GroupActions,
    mode: Mode,
) -> Result<Option<Record>, AnchorageFault> {
    let records = prepared.records(actions)?;
    let of_mode = records.into_iter().filter(|record| record.mode == mode && record.utilization().is_some());
    let share = |record: &Printed| record.utilization().unwrap_or(0.0);
    Ok(of_mode.max_by(|a, b| share(a).total_cmp(&share(b))).map(|record| told(&record)))
}

fn told(record: &Printed) -> Record {
    let symbols = record.symbols.iter().map(|symbol| RecordSymbol {
        symbol: symbol.symbol.to_owned(),
        value: symbol.value,
        unit: symbol.unit,
    });
    Record {
        clause: record.clause.to_owned(),
        formula: record.formula.to_owned(),
        symbols: symbols.collect(),
        resistance_n: record.resistance_n,
        action_n: record.action_n,
        caution: String::new(),
    }
}

/// Neither anchors nor contact resist a state, or no anchor takes its shear.
fn unresisted(of: Fixed, forces: &AnchorForces, index: usize) -> BaseUse {
    let state = &forces.states[index];
    let (look, formula) = match &state.solution {
        Err(fault) => (Mode::SteelTension, fault.to_string()),
        Ok(_) => (Mode::SteelShear, "no anchor takes shear: their holes are too wide and not filled".to_owned()),
    };
    BaseUse {
        of,
        look: Look::Anchors(look),
        outcome: Used::Share(f64::INFINITY),
        record: Some(Record {
            clause: String::new(),
            formula,
            symbols: Vec::new(),
            resistance_n: Some(0.0),
            action_n: None,
            caution: String::new(),
        }),
        state: Some(Arc::new(State::told(state, forces))),
    }
}

/// Every mode with what is missing.
fn not_checked(of: Fixed, what: &str) -> Vec<BaseUse> {
    let made = Mode::ALL.into_iter().map(|mode| BaseUse {
        of,
        look: Look::Anchors(mode),
        outcome: Used::NotChecked(what.to_owned()),
        record: None,
        state: None,
    });
    made.collect()
}

/// The nearest place of each edge in plate axes, nearest first.
fn near_edges(around: &ConcreteAround, forces: &AnchorForces) -> Vec<NearEdge> {
    let mut edges: Vec<NearEdge> = Vec::new();
    for edge in around.edges() {
        let outward = glam::DVec2::from(edge.outward);
        let nearest = edge.distance_m.iter().copied().enumerate().min_by(|a, b| a.1.total_cmp(&b.1));
        let Some((anchor, distance_m)) = nearest.filter(|(_, distance)| distance.is_finite()) else { continue };
        let Some(at) = forces.group.anchors_m.get(anchor).copied().map(glam::DVec2::from) else { continue };
        edges.push(NearEdge { distance_m, anchor: at, on_edge: at + outward * distance_m });
    }
    edges.sort_by(|a, b| a.distance_m.total_cmp(&b.distance_m));
    edges.truncate(SHOWN_EDGES);
    edges
}
