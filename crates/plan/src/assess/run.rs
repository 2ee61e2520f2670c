//! `assess`: the phases in a row. It never panics and never refuses a plan that loads: what can't be computed is a finding.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::anchorage::{BaseSites, Forces, OnSites, Site};
use super::assessment::{Assessment, FacadeAssessment};
use super::facade_phase::assess_facade;
use super::in_parts::{in_parts, threads_of_this_machine};
use super::lean::any_lean;
use super::memo::{FacadeSlot, KnownMakeUp, Memo, ServingUnit, UnitSlot};
use super::place_phase::Placed;
use super::reach::Reach;
use super::reaction_phase::reactions_on;
use super::reactions::Reactions;
use super::rules;
use super::surroundings::Surroundings;
use super::unit_inputs::{Stale, stale_units};
use super::unit_phase::{Known, assess_unit};
use crate::catalog::BraceKind;
use crate::document::{PlacementId, Plan};
use crate::geometry::facade::{Facade, FacadeKey};

/// Units, and facades, of which so many are worth a thread: some tenths of a millisecond of work.
const UNITS_WORTH_A_THREAD: usize = 2;
const FACADES_WORTH_A_THREAD: usize = 2;

/// Everything about a plan. The same plan gives the same assessment to the bit, with or without a memo of earlier ones.
pub fn assess(plan: &Plan, memo: &mut Memo) -> Assessment {
    assess_on(threads_of_this_machine(), plan, memo)
}

/// The same on so many threads at most. Their number changes no bit.
pub fn assess_on(threads: usize, plan: &Plan, memo: &mut Memo) -> Assessment {
    let surroundings = memo.renew(plan);
    let stale = stale_units(plan, memo, &surroundings);
    memo.units.retain(|id, _| plan.placements.contains_key(id));
    let placed = place_units(threads, plan, memo, &surroundings, &stale);
    find_reactions(threads, plan, memo, &stale, &placed);
    judge_units(threads, plan, memo, &surroundings, stale, placed);
    let mut assessment = Assessment {
        units: memo.units.iter().map(|(&id, slot)| (id, Arc::clone(&slot.result))).collect(),
        ..Assessment::default()
    };
    assess_facades(threads, plan, memo, &surroundings, &mut assessment);
    assessment.plan_checks = rules::plan::checks(plan);
    memo.forget_unused_make_ups();
    assessment
}

/// What make-up and place alone say; kept where only a neighbor has moved.
fn place_units(
    threads: usize,
    plan: &Plan,
    memo: &Memo,
    surroundings: &Surroundings,
    stale: &[Stale],
) -> Vec<Arc<Placed>> {
    in_parts(threads, UNITS_WORTH_A_THREAD, stale, |unit| {
        let slot = memo.units.get(&unit.id).filter(|slot| slot.is_of(unit.known, unit.input.frame.as_ref()));
        if let Some(slot) = slot {
            return Arc::clone(&slot.placed);
        }
        let resolved = memo.make_ups[unit.known].resolved.as_deref().ok();
        Arc::new(Placed::of(resolved, unit.input.frame.as_ref(), surroundings, &plan.basis.rules))
    })
}

/// Reactions of make-ups that are met for the first time. Limits of lean hold for a unit that stands square to the one
/// facade it serves; for any other they are left away.
fn find_reactions(threads: usize, plan: &Plan, memo: &mut Memo, stale: &[Stale], placed: &[Arc<Placed>]) {
    let mut wanted: Vec<(usize, bool)> = stale
        .iter()
        .zip(placed)
        .map(|(unit, placed)| (unit.known, within_lean(plan, placed)))
        .filter(|&(known, within)| {
            let make_up = &memo.make_ups[known];
            make_up.resolved.is_ok() && make_up.reactions(within).is_none()
        })
        .collect();
    // A foot of its own costs many times what other braces do: dealt out first, each thread gets its share of them.
    wanted.sort_unstable_by_key(|&(known, within)| (!has_foot(&memo.make_ups[known]), known, within));
    wanted.dedup();
    if wanted.is_empty() {
        return;
    }
    let leaning_freely = any_lean(&plan.basis);
    // Threads that have no make-up of their own help with the members of one.
    let to_each = (threads / wanted.len()).max(1);
    let found = in_parts(threads, 1, &wanted, |&(known, within)| {
        let basis = if within { &plan.basis } else { &leaning_freely };
        let unit = memo.make_ups[known].resolved.as_ref().ok()?;
        let reactions = reactions_on(to_each, unit, basis, &plan.code);
        let forces = Forces::of(unit, basis, &plan.code, &reactions);
        Some((Arc::new(reactions), Arc::new(forces)))
    });
    for ((known, within), found) in wanted.into_iter().zip(found) {
        let make_up = &mut memo.make_ups[known];
        let (reactions, forces) = found.unzip();
        *make_up.reactions_mut(within) = reactions;
        make_up.forces[usize::from(!within)] = forces;
    }
}

fn within_lean(plan: &Plan, placed: &Placed) -> bool {
    placed.keeps_lean || plan.basis.cone.lean.is_none()
}

fn has_foot(known: &KnownMakeUp) -> bool {
    let brace = known.resolved.as_ref().ok().and_then(|unit| unit.brace.as_ref());
    brace.is_some_and(|brace| matches!(brace.kind, BraceKind::RearFoot { .. }))
}

/// Judges the units and keeps what was found.
fn judge_units(
    threads: usize,
    plan: &Plan,
    memo: &mut Memo,
    surroundings: &Surroundings,
    stale: Vec<Stale>,
    placed: Vec<Arc<Placed>>,
) {
    let units: Vec<(Stale, Arc<Placed>)> = stale.into_iter().zip(placed).collect();
    let known: Vec<Known<'_>> = units
        .iter()
        .map(|(unit, placed)| {
            let make_up = &memo.make_ups[unit.known];
            let within = within_lean(plan, placed);
            Known {
                id: unit.id,
                input: &unit.input,
                placed,
                make_up: unit.known,
                within_lean: within,
                resolved: make_up.resolved.clone(),
                reactions: make_up.reactions(within).cloned(),
                forces: make_up.forces[usize::from(!within)].clone(),
            }
        })
        .collect();
    let sites = in_parts(threads, UNITS_WORTH_A_THREAD, &known, |known| known.sites(plan, surroundings));
    judge_sites(threads, plan, memo, &known, &sites);
    let things: Vec<(&Known<'_>, &BaseSites)> = known.iter().zip(&sites).collect();
    let judged = in_parts(threads, UNITS_WORTH_A_THREAD, &things, |(known, sites)| {
        let make_up = &memo.make_ups[known.make_up];
        let found = |site: &Option<Site>| make_up.on_site(known.within_lean, site.as_ref()?).cloned();
        let on_sites = OnSites { base: found(&sites.base), foot: found(&sites.foot) };
        Arc::new(assess_unit(plan, surroundings, known, &on_sites))
    });
    drop(known);
    for ((Stale { id, known, input }, placed), result) in units.into_iter().zip(judged) {
        memo.units.insert(id, UnitSlot { input, known, placed, result });
    }
    memo.forget_old_sites();
}

/// Judges the sites that are met for the first time. Bases of one make-up that stand alike share theirs.
fn judge_sites(threads: usize, plan: &Plan, memo: &mut Memo, known: &[Known<'_>], sites: &[BaseSites]) {
    let mut by_make_up: BTreeMap<(usize, bool), Vec<(&Known<'_>, &Site)>> = BTreeMap::new();
    for (known, sites) in known.iter().zip(sites) {
        let new = by_make_up.entry((known.make_up, known.within_lean)).or_default();
        for site in sites.base.iter().chain(&sites.foot) {
            let is_known = memo.make_ups[known.make_up].on_site(known.within_lean, site).is_some();
            if !is_known && !new.iter().any(|other| other.1 == site) {
                new.push((known, site));
            }
        }
    }
    let new: Vec<(&Known<'_>, &Site)> = by_make_up.into_values().flatten().collect();
    let found = in_parts(threads, 1, &new, |(known, site)| known.judged(plan, site).map(Arc::new));
    for ((known, site), found) in new.into_iter().zip(found) {
        if let Some(found) = found {
            memo.make_ups[known.make_up].keep_site(known.within_lean, site.clone(), found);
        }
    }
}

fn assess_facades(
    threads: usize,
    plan: &Plan,
    memo: &mut Memo,
    surroundings: &Surroundings,
    assessment: &mut Assessment,
) {
    let mut serving: BTreeMap<FacadeKey, Vec<ServingUnit>> = BTreeMap::new();
    for (&id, slot) in &memo.units {
        for reach in slot.placed.reaches.iter() {
            serving.entry(reach.served.facade).or_default().push((id, Arc::clone(&slot.placed.reaches)));
        }
    }
    let asked = surroundings.facades.iter().map(|facade| (facade, serving.remove(&facade.key).unwrap_or_default()));
    let stale: Vec<(&Facade, Vec<ServingUnit>)> =
        asked.filter(|(facade, input)| memo.facades.get(&facade.key).is_none_or(|slot| !slot.is_of(input))).collect();
    let found = in_parts(threads, FACADES_WORTH_A_THREAD, &stale, |(facade, input)| served(plan, facade, input));
    for ((facade, input), result) in stale.into_iter().zip(found) {
        memo.facades.insert(facade.key, FacadeSlot { input, result: Arc::new(result) });
    }
    let keep = |facade: &Facade| memo.facades.get(&facade.key).map(|slot| (facade.key, Arc::clone(&slot.result)));
    assessment.facades = surroundings.facades.iter().filter_map(keep).collect();
}

fn served(plan: &Plan, facade: &Facade, input: &[ServingUnit]) -> FacadeAssessment {
    let reaches: Vec<(PlacementId, &Reach)> = input
        .iter()
        .flat_map(|(id, reaches)| {
            let here = reaches.iter().filter(|reach| reach.served.facade == facade.key);
            here.map(move |reach| (*id, &reach.reach))
        })
        .collect();
    let mut result = assess_facade(facade, &reaches);
    result.checks = rules::facade::checks(plan, &result);
    result
}

impl KnownMakeUp {
    fn reactions(&self, within_lean: bool) -> Option<&Arc<Reactions>> {
        if within_lean { self.within_lean.as_ref() } else { self.any_lean.as_ref() }
    }

    fn reactions_mut(&mut self, within_lean: bool) -> &mut Option<Arc<Reactions>> {
        if within_lean { &mut self.within_lean } else { &mut self.any_lean }
    }
}

impl FacadeSlot {
    /// Whether it was found for just these units.
    fn is_of(&self, input: &[ServingUnit]) -> bool {
        self.input.len() == input.len()
            && self.input.iter().zip(input).all(|(a, b)| a.0 == b.0 && Arc::ptr_eq(&a.1, &b.1))
    }
}
