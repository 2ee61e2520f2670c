//! What acts on the anchors of a make-up's base and foot under a basis, searched over cone, slew, wind and tether.

use std::f64::consts::TAU;

use gantline_mechanics::envelope::{Actions, EnvelopeFault};
use gantline_mechanics::plate::wall::WallFace;
use gantline_mechanics::plate::{Candidate, PlateAxes, PlateOn, PlateSolution, PreparedPlate, UnitOnPlate};
use gantline_mechanics::unit::UnitModel;
use gantline_mechanics::wrench::Wrench;
use glam::DVec3;

use super::code::modular_ratios;
use super::found::Fixed;
use super::plate;
use super::states::{AnchorForces, Cause, SearchedUnit, State};
use super::worth_judging::worth_judging;
use crate::assess::actions_of::{actions_of, slew_range};
use crate::assess::reactions::Reactions;
use crate::basis::{DesignCode, LoadBasis, LoadLevel};
use crate::catalog::{Base, BaseKind, Fixing, ResolvedUnit, WallSide, to_anchorage, to_mechanics};

/// What acts on base and foot of a make-up.
#[derive(Debug, Clone)]
pub(in crate::assess) struct Forces {
    /// The base; or what is missing.
    pub base: Result<AnchorForces, String>,
    /// A foot of its own; none where there is none.
    pub foot: Option<Result<AnchorForces, String>>,
}

/// Slews at which self-weight is looked at by itself.
const WEIGHT_SLEWS: u32 = 16;

impl Forces {
    /// Searches a make-up.
    pub fn of(unit: &ResolvedUnit, basis: &LoadBasis, code: &DesignCode, reactions: &Reactions) -> Self {
        let model = to_mechanics::unit(unit)
            .map_err(|fault| fault.to_string())
            .and_then(|unit| UnitModel::new(&unit).map_err(|fault| fault.to_string()));
        let acting = design_actions(unit, basis);
        let base = model.as_ref().map_err(Clone::clone).and_then(|model| {
            if acting.is_empty() {
                return Err("a combination at the design level that could be computed".to_owned());
            }
            let mut forces = prepared(&unit.base, unit.fixing.as_ref(), code)?;
            search(&mut forces, unit, model, &acting)?;
            let material = unit.plate_material.as_ref();
            let fixing = unit.fixing.as_ref();
            forces.bends = plate::bends(Fixed::Base, &unit.base, fixing, material, &forces, code).into();
            Ok(forces)
        });
        let foot = unit.foot.as_ref().map(|foot| {
            let mut forces = prepared(&foot.base, foot.fixing.as_ref(), code)?;
            foot_states(&mut forces, unit, &foot.base, reactions)?;
            let material = foot.plate_material.as_ref();
            let fixing = foot.fixing.as_ref();
            forces.bends = plate::bends(Fixed::Foot, &foot.base, fixing, material, &forces, code).into();
            Ok(forces)
        });
        Self { base, foot }
    }
}

/// Actions at the design level with the index of their combination, tethers included.
pub(super) fn design_actions(unit: &ResolvedUnit, basis: &LoadBasis) -> Vec<(usize, Actions)> {
    let designed = basis.combinations.iter().enumerate().filter(|(_, combined)| combined.level != LoadLevel::Service);
    designed
        .filter_map(|(index, combined)| Some((index, actions_of(combined, basis, unit).ok()?)))
        .flat_map(|(index, found)| found.with_weight.into_iter().map(move |one| (index, one)))
        .collect()
}

/// The group and its plates, without states; or what is missing.
fn prepared(base: &Base, fixing: Option<&Fixing>, code: &DesignCode) -> Result<AnchorForces, String> {
    let anchors = base.anchors.as_ref().ok_or("the anchors of the base")?;
    let fixing = fixing.ok_or("the fixing of the base")?;
    let ratios = if fixing.kind.is_in_steel() { vec![1.0] } else { modular_ratios(code)?.to_vec() };
    let plates = ratios.into_iter().map(|ratio| {
        PreparedPlate::new(to_anchorage::plate(base, anchors, fixing, ratio)).map_err(|fault| fault.to_string())
    });
    Ok(AnchorForces {
        plates: plates.collect::<Result<_, _>>()?,
        group: to_anchorage::group(base, anchors, fixing, &code.bond_defaults)?,
        states: Vec::new(),
        sustained_share: 0.0,
        bond_is_default: to_anchorage::uses_default_bond(fixing),
        bends: Vec::new(),
        unit: None,
    })
}

/// Where the plate lies, seen from the unit.
fn axes_of(base: &Base) -> PlateAxes {
    let on = match base.kind {
        BaseKind::WallSocket { side, eccentricity_m, plate_middle_m, .. } => {
            let face = match side {
                WallSide::WallInFront => WallFace::InFrontOfMast,
                WallSide::WallBehind => WallFace::BehindMast,
            };
            PlateOn::Wall { face, eccentricity_m, up_m: plate_middle_m }
        }
        _ => PlateOn::Floor,
    };
    PlateAxes { on, down_m: 0.0 }
}

/// Finds the states that may govern, by judges that don't know the place: the most pulled anchor, and the largest pressure.
fn search(
    forces: &mut AnchorForces,
    unit: &ResolvedUnit,
    model: &UnitModel,
    acting: &[(usize, Actions)],
) -> Result<(), String> {
    let fault = |fault: EnvelopeFault| fault.to_string();
    let all: Vec<Actions> = acting.iter().map(|(_, actions)| actions.clone()).collect();
    let (axes, slews) = (axes_of(&unit.base), slew_range(unit.slew_stops));
    let counting: Vec<usize> = UnitOnPlate::new(model, &all, &slews, axes).map_err(fault)?.looked_at().collect();
    let searched = SearchedUnit {
        model: model.clone(),
        sets: counting.iter().map(|&index| all[index].clone()).collect(),
        combinations: counting.iter().map(|&index| acting[index].0).collect(),
        slews,
        axes,
    };
    let on_plate = UnitOnPlate::new(model, &searched.sets, &searched.slews, axes).map_err(fault)?;
    let tension =
        |candidate: &Candidate| candidate.solution.as_ref().map_or(f64::INFINITY, PlateSolution::greatest_tension_n);
    let pressure = |candidate: &Candidate| {
        candidate.solution.as_ref().map_or(f64::INFINITY, |solution| solution.greatest_pressure_pa)
    };
    // Anchors that are stiff against the concrete are pulled harder, and those that are soft let the plate press harder: the
    // long-term ratio is searched, the other one looked at.
    let Some(plate) = forces.plates.last() else { return Err("a modular ratio".to_owned()) };
    let found = on_plate.search(plate, &[&tension, &pressure]).map_err(fault)?;
    let mut states = Vec::with_capacity(found.candidates.len());
    let mut pressing: Option<State> = None;
    for candidate in found.candidates {
        let both = State::found(&candidate, &searched, &forces.plates);
        let hardest = both.iter().max_by(|a, b| a.pressure_pa().total_cmp(&b.pressure_pa()));
        if let Some(state) = hardest
            && pressing.as_ref().is_none_or(|known| state.pressure_pa() > known.pressure_pa())
        {
            pressing = Some(state.clone());
        }
        states.extend(State::hardest_pulled(both));
    }
    states.extend(pressing);
    let most = states.iter().map(State::greatest_tension_n).fold(0.0, f64::max);
    let by_weight = by_weight_n(forces, model, axes, heaviest(acting))?;
    forces.sustained_share = if most > 0.0 { (by_weight / most).min(1.0) } else { 0.0 };
    for state in &mut states {
        state.sustain(forces.sustained_share);
    }
    forces.states = worth_judging(states, &forces.group.anchors_m);
    forces.unit = Some(searched);
    Ok(())
}

fn heaviest(acting: &[(usize, Actions)]) -> f64 {
    acting.iter().map(|(_, actions)| actions.weight_factor).fold(1.0, f64::max)
}

/// The largest tension of an anchor under self-weight alone at any slew, N: what is sustained while no one hangs there.
fn by_weight_n(forces: &AnchorForces, model: &UnitModel, axes: PlateAxes, factor: f64) -> Result<f64, String> {
    let mut most: f64 = 0.0;
    for step in 0..WEIGHT_SLEWS {
        let slew = TAU * f64::from(step) / f64::from(WEIGHT_SLEWS);
        // A slew that a foot does not allow has no answer.
        let Ok(influence) = model.influence(slew) else { continue };
        let weight = influence.base_of_weight().map_err(|fault| fault.to_string())?;
        let action = axes.action(Wrench::from_six(weight.map(|part| part * factor)).slewed(slew));
        for plate in &forces.plates {
            let solution = plate.solve(action.force_n.z, action.moment_nm.x, action.moment_nm.y);
            most = most.max(solution.as_ref().map_or(f64::INFINITY, PlateSolution::greatest_tension_n));
        }
    }
    Ok(most)
}

/// States of a foot: the extremes of its force with what acts together, at the height of its eye or pin over the plate. A strut
/// between pins pulls along its axis, so that its extremes hold all that matters.
fn foot_states(
    forces: &mut AnchorForces,
    unit: &ResolvedUnit,
    foot: &Base,
    reactions: &Reactions,
) -> Result<(), String> {
    let mut states = Vec::new();
    for (combination, result) in reactions.combinations.iter().enumerate() {
        if result.level == LoadLevel::Service {
            continue;
        }
        for extreme in &result.foot {
            let cause = Cause { combination, weight_factor: 1.0, slew_rad: extreme.slew_rad, pull: extreme.pull };
            let pin = DVec3::Z * foot.socket_top_m;
            let action = Wrench::of_force(extreme.concurrent, pin, DVec3::ZERO).slewed(-unit.foot_bearing_rad);
            for index in 0..forces.plates.len() {
                states.push(State::of(cause, action, &forces.plates, index));
            }
        }
    }
    if states.is_empty() {
        return Err("forces at the foot at the design level".to_owned());
    }
    for state in &mut states {
        state.sustain(1.0);
    }
    forces.sustained_share = 1.0;
    forces.states = states;
    Ok(())
}
