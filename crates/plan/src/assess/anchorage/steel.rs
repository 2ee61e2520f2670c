//! A base on structural steel: its bolts or its weld. The steel itself is the structural engineer's.

use std::sync::Arc;

use gantline_mechanics::steel_bolt::{BoltedPlate, SteelBolt};
use gantline_mechanics::weld::{SteelFillet, WeldActions, WeldLine};

use super::code::{bolts, named};
use super::found::{BaseUse, Fixed, Look, Record, RecordSymbol, Used};
use super::sleeve::design_sets;
use super::states::{AnchorForces, State};
use crate::assess::reactions::Reactions;
use crate::basis::{DesignCode, FactorName, MemberCode};
use crate::catalog::{Anchors, Base, Fixing, FixingKind, Material};
use crate::geometry::rings::distance_to_ring;

/// Bolts or weld of a base on steel; what is missing is told.
pub(super) fn used(
    base: &Base,
    fixing: Option<&Fixing>,
    material: Option<&Material>,
    forces: Result<&AnchorForces, &str>,
    reactions: &Reactions,
    code: &DesignCode,
) -> BaseUse {
    let missing = |look, what: &str| BaseUse::not_checked(Fixed::Base, look, what);
    let (Some(fixing), Some(anchors)) = (fixing, &base.anchors) else {
        return missing(Look::SteelBolts, "how the base is fixed to the steel");
    };
    match fixing.kind {
        FixingKind::Weld => {
            weld(base, fixing, material, reactions, code).unwrap_or_else(|what| missing(Look::Weld, &what))
        }
        FixingKind::SteelBolts => forces
            .map_err(str::to_owned)
            .and_then(|forces| bolted(base, anchors, fixing, material, forces, code))
            .unwrap_or_else(|what| missing(Look::SteelBolts, &what)),
        _ => missing(Look::SteelBolts, "bolts or a weld to steel: the fixing is one for concrete"),
    }
}

fn bolted(
    base: &Base,
    anchors: &Anchors,
    fixing: &Fixing,
    material: Option<&Material>,
    forces: &AnchorForces,
    code: &DesignCode,
) -> Result<BaseUse, String> {
    let rule = bolts(code)?;
    let hole_m = anchors.hole_m.ok_or("diameter of the holes in the plate")?;
    let material = material.ok_or("material of the plate")?;
    let to_rim_m = anchors.at_m.iter().map(|&at| distance_to_ring(&base.plate_m, at)).fold(f64::INFINITY, f64::min);
    let bolt = SteelBolt {
        diameter_m: fixing.diameter_m,
        stress_area_m2: fixing.stress_area_m2,
        ultimate_pa: fixing.ultimate_pa,
        yield_pa: fixing.yield_pa,
        plate: Some(BoltedPlate {
            thickness_m: base.plate_thickness_m,
            ultimate_pa: material.ultimate_pa,
            hole_m,
            to_rim_m,
            spacing_m: forces.group.least_spacing_m(),
        }),
    };
    let strength = bolt.strength(rule).map_err(|fault| fault.to_string())?;
    let mut worst: Option<(&State, usize, f64)> = None;
    for state in &forces.states {
        let Some(actions) = &state.anchors else {
            return Err("a state that the bolts resist: nothing holds the plate".to_owned());
        };
        for (at, tension_n) in actions.tension_n.iter().enumerate() {
            let share = strength.used(*tension_n, actions.shear_of_n(at));
            let share = if share.is_nan() { f64::INFINITY } else { share };
            if worst.is_none_or(|known| share > known.2) {
                worst = Some((state, at, share));
            }
        }
    }
    let (state, at, share) = worst.ok_or("a state of the base at the design level")?;
    let acting = state.anchors.as_ref().map_or((0.0, 0.0), |actions| (actions.tension_n[at], actions.shear_of_n(at)));
    Ok(BaseUse {
        record: Some(Record {
            clause: rule.clause().to_owned(),
            formula: rule.formula().to_owned(),
            symbols: vec![
                RecordSymbol::new("F_t", acting.0, "N"),
                RecordSymbol::new("F_v", acting.1, "N"),
                RecordSymbol::new("F_t,Rd", strength.tension_n, "N"),
                RecordSymbol::new("F_v,Rd", strength.shear_n, "N"),
                RecordSymbol::new("F_b,Rd", strength.bearing_n.unwrap_or(0.0), "N"),
            ],
            resistance_n: Some(strength.tension_n),
            action_n: Some(acting.0),
            caution: "the steel below is the structural engineer's; the plate is taken as stiff".to_owned(),
        }),
        state: Some(Arc::new(state.told(forces))),
        ..BaseUse::plain(Fixed::Base, Look::SteelBolts, Used::Share(share))
    })
}

/// A fillet weld all around a rectangular plate.
fn weld(
    base: &Base,
    fixing: &Fixing,
    material: Option<&Material>,
    reactions: &Reactions,
    code: &DesignCode,
) -> Result<BaseUse, String> {
    if code.members != MemberCode::Eurocode {
        return Err("a weld to AISC 360: only EN 1993-1-8 is built".to_owned());
    }
    let throat_m = fixing.weld_throat_m.ok_or("throat of the weld")?;
    let material = material.ok_or("material of the plate")?;
    let (line, along_x_m, along_y_m) = outline(base)?;
    let gamma_m2 = named(code, FactorName::SteelGammaM2, "γ_M2")?;
    let fillet = SteelFillet { throat_m, ultimate_pa: material.ultimate_pa, correlation: CORRELATION, gamma_m2 };
    let mut worst: Option<(usize, f64, [f64; 6])> = None;
    for set in design_sets(reactions) {
        let [x, y, z, about_x, about_y, twist] = set.concurrent;
        // The weld's depth runs along the base's x, its width along y.
        let actions = WeldActions { axial_n: z, v_y_n: y, v_z_n: x, t_nm: twist, m_y_nm: about_y, m_z_nm: about_x };
        let share = line.utilization(&actions, &fillet).map_err(|fault| fault.to_string())?;
        if worst.is_none_or(|known| share > known.1) {
            worst = Some((set.combination, share, set.concurrent));
        }
    }
    let (_, share, acting) = worst.ok_or("a combination at the design level that could be computed")?;
    let names = [("F_x", "N"), ("F_y", "N"), ("F_z", "N"), ("M_x", "N*m"), ("M_y", "N*m"), ("M_z", "N*m")];
    let mut symbols: Vec<RecordSymbol> =
        names.iter().zip(acting).map(|((name, unit), value)| RecordSymbol::new(name, value, unit)).collect();
    symbols.extend([
        RecordSymbol::new("a", throat_m, "m"),
        RecordSymbol::new("d along x", along_x_m, "m"),
        RecordSymbol::new("b along y", along_y_m, "m"),
        RecordSymbol::new("f_u", material.ultimate_pa, "Pa"),
        RecordSymbol::new("beta_w", CORRELATION, ""),
        RecordSymbol::new("gamma_M2", gamma_m2, ""),
    ]);
    Ok(BaseUse {
        record: Some(Record {
            clause: "EN 1993-1-8 4.5.3.3, simplified method, from memory".to_owned(),
            formula: "F_w,Ed <= a*f_u/(sqrt(3)*beta_w*gamma_M2), the weld as a line round the plate".to_owned(),
            symbols,
            resistance_n: None,
            action_n: None,
            caution: "extremes of the base are looked at; the steel below is the structural engineer's".to_owned(),
        }),
        ..BaseUse::plain(Fixed::Base, Look::Weld, Used::Share(share))
    })
}

/// β_w of the strongest steels of EN 1993-1-8 Table 4.1: safe for weaker ones.
const CORRELATION: f64 = 1.0;

/// A rectangular plate, sides along the axes, as a line of weld, with its lengths along x and y.
fn outline(base: &Base) -> Result<(WeldLine, f64, f64), String> {
    let low = base.plate_m.iter().copied().fold(glam::DVec2::INFINITY, glam::DVec2::min);
    let high = base.plate_m.iter().copied().fold(glam::DVec2::NEG_INFINITY, glam::DVec2::max);
    let on_corner = |at: &glam::DVec2| (at.x == low.x || at.x == high.x) && (at.y == low.y || at.y == high.y);
    if base.plate_m.len() != 4 || !base.plate_m.iter().all(on_corner) {
        return Err("a weld round a plate that is no rectangle".to_owned());
    }
    let size = high - low;
    Ok((WeldLine::Rectangle { depth_m: size.x, width_m: size.y }, size.x, size.y))
}
