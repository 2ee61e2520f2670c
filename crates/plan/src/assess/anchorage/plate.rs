//! The plate itself: whether it stays elastic, and whether it is stiff beside its anchors.

use std::sync::Arc;

use gantline_mechanics::plate::bending::{Standing, bending};
use glam::DVec2;

use super::found::{BaseUse, Fixed, Look, Record, RecordSymbol, Used};
use super::states::{AnchorForces, State};
use crate::basis::{DesignCode, FactorName, MemberCode};
use crate::catalog::{Base, BaseKind, Material};

/// So many of the states that pull an anchor hardest, and of those that press hardest, bend the plate most.
const WORST_STATES: usize = 12;

/// Bending of the plate under the states that pull and press it hardest.
pub(super) fn bends(
    of: Fixed,
    base: &Base,
    material: Option<&Material>,
    forces: &AnchorForces,
    code: &DesignCode,
) -> BaseUse {
    let look = Look::PlateBends;
    let plain = |outcome| BaseUse { of, look, outcome, record: None, state: None };
    let missing = |what: &str| plain(Used::NotChecked(what.to_owned()));
    if matches!(base.kind, BaseKind::WallSocket { .. }) {
        return missing("bending of a plate on a wall, whose socket stands along it");
    }
    let Some(material) = material else { return missing("material of the plate") };
    let factor = match yield_factor(code) {
        Ok(factor) => factor,
        Err(what) => return missing(&what),
    };
    let standing = Standing {
        tube_diameter_m: base.socket_diameter_m,
        at: DVec2::ZERO,
        yield_pa: material.yield_pa,
        elastic_pa: material.elastic_pa,
        factor,
    };
    let mut worst: Option<(&State, f64, f64)> = None;
    for state in hardest(forces) {
        let Ok(solution) = &state.solution else { continue };
        match bending(forces.plates[state.plate].plate(), solution, &standing) {
            Ok(Some(found)) if worst.is_none_or(|known| found.utilization > known.1) => {
                worst = Some((state, found.utilization, found.stress_pa));
            }
            Ok(_) => {}
            Err(fault) => return missing(&fault.to_string()),
        }
    }
    let Some((state, share, stress_pa)) = worst else {
        return plain(Used::NotApplicable("nothing sticks out past the tube".to_owned()));
    };
    let symbol = |symbol: &str, value, unit| RecordSymbol { symbol: symbol.to_owned(), value, unit };
    BaseUse {
        outcome: Used::Share(share),
        record: Some(Record {
            clause: "AISC Design Guide 1, 2nd ed., 3.1.2 and 3.4, bending lines, from memory".to_owned(),
            formula: "σ/(f_y/γ) along the worst bending line; elastic, W = b·t²/6".to_owned(),
            symbols: vec![
                symbol("σ", stress_pa, "Pa"),
                symbol("f_y", material.yield_pa, "Pa"),
                symbol("γ", factor, ""),
                symbol("t", base.plate_thickness_m, "m"),
            ],
            resistance_n: None,
            action_n: None,
            caution: "the stiff plate counts only while it stays elastic".to_owned(),
        }),
        state: Some(Arc::new(state.told(forces))),
        ..plain(Used::Share(share))
    }
}

/// The states that pull an anchor hardest and those that press hardest.
pub(super) fn hardest(forces: &AnchorForces) -> Vec<&State> {
    let mut by_pull: Vec<&State> = forces.states.iter().filter(|state| state.solution.is_ok()).collect();
    let mut by_pressure = by_pull.clone();
    by_pull.sort_by(|a, b| b.greatest_tension_n().total_cmp(&a.greatest_tension_n()));
    let pressure = |state: &State| state.solution.as_ref().map_or(0.0, |solution| solution.greatest_pressure_pa);
    by_pressure.sort_by(|a, b| pressure(b).total_cmp(&pressure(a)));
    by_pull.truncate(WORST_STATES);
    by_pull.extend(by_pressure.into_iter().take(WORST_STATES));
    by_pull
}

/// The factor on the plate's yield strength.
fn yield_factor(code: &DesignCode) -> Result<f64, String> {
    let named = |name, what: &str| {
        code.factors.get(&name).map(|factor| factor.value).ok_or_else(|| format!("{what} in the design code"))
    };
    match code.members {
        MemberCode::Eurocode => named(FactorName::SteelGammaM0, "γ_M0"),
        MemberCode::Aisc360 => Ok(1.0 / named(FactorName::AiscPhi, "φ")?),
    }
}
