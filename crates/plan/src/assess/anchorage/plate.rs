//! The plate itself: whether it stays elastic, and what its pressure does to grout and concrete.

use std::sync::Arc;

use gantline_mechanics::anchorage::Concrete;
use gantline_mechanics::plate::bending::{Standing, bending};
use gantline_mechanics::plate::prying::share_before_prying;
use glam::DVec2;

use super::code::{bearing, strength_pa, yield_factor};
use super::found::{BaseUse, Fixed, Look, Record, RecordSymbol, Used};
use super::states::{AnchorForces, State};
use crate::basis::DesignCode;
use crate::catalog::{Base, BaseKind, Bearing, Fixing, Material};

/// So many of the states that pull an anchor hardest, and of those that press hardest, bend the plate most.
const WORST_STATES: usize = 12;

/// Bending and stiffness of the plate under the states that pull and press it hardest.
pub(super) fn bends(
    of: Fixed,
    base: &Base,
    fixing: Option<&Fixing>,
    material: Option<&Material>,
    forces: &AnchorForces,
    code: &DesignCode,
) -> [BaseUse; 2] {
    match standing(base, material, code) {
        Ok(standing) => [bending_of(of, base, forces, &standing), stiffness_of(of, base, fixing, forces, &standing)],
        Err(what) => [Look::PlateBends, Look::PlateIsStiff].map(|look| BaseUse::not_checked(of, look, what.clone())),
    }
}

/// The tube on its plate; or what is missing.
fn standing(base: &Base, material: Option<&Material>, code: &DesignCode) -> Result<Standing, String> {
    if matches!(base.kind, BaseKind::WallSocket { .. }) {
        return Err("bending of a plate on a wall, whose socket stands along it".to_owned());
    }
    let material = material.ok_or("material of the plate")?;
    Ok(Standing {
        tube_diameter_m: base.socket_diameter_m,
        at: DVec2::ZERO,
        yield_pa: material.yield_pa,
        elastic_pa: material.elastic_pa,
        factor: yield_factor(code)?,
    })
}

fn bending_of(of: Fixed, base: &Base, forces: &AnchorForces, standing: &Standing) -> BaseUse {
    let look = Look::PlateBends;
    let mut worst: Option<(&State, f64, f64)> = None;
    for state in hardest(forces) {
        let Ok(solution) = &state.solution else { continue };
        match bending(forces.plates[state.plate].plate(), solution, standing) {
            Ok(Some(found)) if worst.is_none_or(|known| found.utilization > known.1) => {
                worst = Some((state, found.utilization, found.stress_pa));
            }
            Ok(_) => {}
            Err(fault) => return BaseUse::not_checked(of, look, fault.to_string()),
        }
    }
    let Some((state, share, stress_pa)) = worst else {
        let why = "nothing sticks out past the tube".to_owned();
        return BaseUse::plain(of, look, Used::NotApplicable(why));
    };
    BaseUse {
        record: Some(Record {
            clause: "AISC Design Guide 1, 2nd ed., 3.1.2 and 3.4, bending lines, from memory".to_owned(),
            formula: "σ/(f_y/γ) along the worst bending line; elastic, W = b·t²/6".to_owned(),
            symbols: vec![
                RecordSymbol::new("σ", stress_pa, "Pa"),
                RecordSymbol::new("f_y", standing.yield_pa, "Pa"),
                RecordSymbol::new("γ", standing.factor, ""),
                RecordSymbol::new("t", base.plate_thickness_m, "m"),
            ],
            resistance_n: None,
            action_n: None,
            caution: "the stiff plate counts only while it stays elastic".to_owned(),
        }),
        state: Some(Arc::new(state.told(forces))),
        ..BaseUse::plain(of, look, Used::Share(share))
    }
}

/// Whether a plate pries at its anchors. Where it does, their tension is larger than all modes were judged with, so that it is not
/// checked and no pass.
fn stiffness_of(
    of: Fixed,
    base: &Base,
    fixing: Option<&Fixing>,
    forces: &AnchorForces,
    standing: &Standing,
) -> BaseUse {
    let look = Look::PlateIsStiff;
    let hole_m = base.anchors.as_ref().and_then(|anchors| anchors.hole_m);
    let (Some(hole_m), Some(fixing)) = (hole_m, fixing) else {
        return BaseUse::not_checked(of, look, "diameter of the holes in the plate");
    };
    let mut worst: Option<(&State, f64)> = None;
    for state in hardest(forces) {
        let Ok(solution) = &state.solution else { continue };
        let diameters_m = (fixing.diameter_m, hole_m);
        match share_before_prying(forces.plates[state.plate].plate(), solution, standing, diameters_m) {
            Ok(share) if worst.is_none_or(|known| share > known.1) => worst = Some((state, share)),
            Ok(_) => {}
            Err(fault) => return BaseUse::not_checked(of, look, fault.to_string()),
        }
    }
    let Some((state, share)) = worst else {
        return BaseUse::not_checked(of, look, "a state of the base at the design level");
    };
    let outcome = if share <= 1.0 {
        Used::Share(share)
    } else {
        Used::NotChecked(format!("the plate bends so far that it pries at its anchors ({share:.2} times what it may)"))
    };
    BaseUse {
        record: Some(Record {
            clause: "W.A. Thornton, AISC Engineering Journal 1985; AISC Manual part 9".to_owned(),
            formula: "no prying while T*b' <= p*t^2/4*f_y/γ of each anchor's strip".to_owned(),
            symbols: vec![
                RecordSymbol::new("T*b'/M", share, ""),
                RecordSymbol::new("t", base.plate_thickness_m, "m"),
                RecordSymbol::new("f_y", standing.yield_pa, "Pa"),
                RecordSymbol::new("γ", standing.factor, ""),
            ],
            resistance_n: None,
            action_n: None,
            caution: "EN 1992-4 6.2.1 asks for deformations negligible beside the anchors' and gives no figure"
                .to_owned(),
        }),
        state: Some(Arc::new(state.told(forces))),
        ..BaseUse::plain(of, look, outcome)
    }
}

/// The largest pressure under the plate against what grout and concrete bear.
pub(super) fn presses(
    of: Fixed,
    base: &Base,
    forces: &AnchorForces,
    concrete: Result<&Concrete, &str>,
    code: &DesignCode,
) -> BaseUse {
    let look = Look::PlatePresses;
    if matches!(base.bearing, Bearing::OnLevelingNuts { .. }) {
        return BaseUse::plain(of, look, Used::NotApplicable("nothing lies under the plate".to_owned()));
    }
    let rule = bearing(code);
    let borne =
        concrete.map_err(str::to_owned).and_then(|concrete| strength_pa(code, concrete)).and_then(|concrete_pa| {
            let weaker_pa = match base.bearing {
                Bearing::OnGrout { strength_pa, .. } => concrete_pa.min(strength_pa),
                Bearing::OnConcrete | Bearing::OnLevelingNuts { .. } => concrete_pa,
            };
            rule.strength_pa(weaker_pa).map(|borne| (weaker_pa, borne)).map_err(|fault| fault.to_string())
        });
    let (weaker_pa, borne_pa) = match borne {
        Ok(found) => found,
        Err(what) => return BaseUse::not_checked(of, look, what),
    };
    let pressing = forces.states.iter().filter(|state| state.solution.is_ok());
    let worst = pressing.max_by(|a, b| a.pressure_pa().total_cmp(&b.pressure_pa()));
    let Some(state) = worst else {
        return BaseUse::not_checked(of, look, "a state of the base at the design level");
    };
    BaseUse {
        record: Some(Record {
            clause: rule.clause().to_owned(),
            formula: rule.formula().to_owned(),
            symbols: vec![
                RecordSymbol::new("sigma", state.pressure_pa(), "Pa"),
                RecordSymbol::new("strength of the weaker", weaker_pa, "Pa"),
                RecordSymbol::new("borne", borne_pa, "Pa"),
            ],
            resistance_n: None,
            action_n: None,
            caution: String::new(),
        }),
        state: Some(Arc::new(state.told(forces))),
        ..BaseUse::plain(of, look, Used::Share(state.pressure_pa() / borne_pa))
    }
}

/// The states that pull an anchor hardest and those that press hardest.
pub(super) fn hardest(forces: &AnchorForces) -> Vec<&State> {
    let mut by_pull: Vec<&State> = forces.states.iter().filter(|state| state.solution.is_ok()).collect();
    let mut by_pressure = by_pull.clone();
    by_pull.sort_by(|a, b| b.greatest_tension_n().total_cmp(&a.greatest_tension_n()));
    by_pressure.sort_by(|a, b| b.pressure_pa().total_cmp(&a.pressure_pa()));
    by_pull.truncate(WORST_STATES);
    by_pull.extend(by_pressure.into_iter().take(WORST_STATES));
    by_pull
}
