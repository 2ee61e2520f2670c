//! Punching of the slab under a base, downward and upward; indicative, for the structural engineer to confirm.

use std::sync::Arc;

use gantline_mechanics::slab::{PunchingCheck, PunchingDesign, PunchingUse, PunchingWay, SlabActions, SlabDepth};
use gantline_mechanics::wrench::Wrench;
use glam::{DVec2, DVec3};

use super::code::punching;
use super::found::{BaseUse, Fixed, Look, Record, RecordSymbol, Used};
use super::place::Place;
use super::states::{AnchorForces, SearchedUnit, State};
use crate::assess::slab_under::thinnest_m;
use crate::basis::{AnchorageCode, DesignCode};
use crate::document::Roof;

/// Beyond so many thicknesses of the slab an edge cuts no control perimeter.
const EDGE_THICKNESSES: f64 = 8.0;

/// What punches: the loaded area in plate axes, and how deep its anchors reach into the slab.
pub(super) struct Loaded<'a> {
    pub outline: &'a [DVec2],
    pub embedment_m: f64,
}

/// Both senses of punching.
pub(super) fn punches(
    of: Fixed,
    forces: &AnchorForces,
    design: &Result<PunchingDesign, String>,
    over_slab_m: f64,
    code: &DesignCode,
) -> [BaseUse; 2] {
    let looks = [Look::PunchesDown, Look::PunchesUp];
    let prepared = design
        .as_ref()
        .map_err(Clone::clone)
        .and_then(|design| design.clone().prepare(punching(code)).map_err(|fault| fault.to_string()));
    let check = match prepared {
        Ok(check) => check,
        Err(what) => {
            return looks.map(|look| BaseUse::not_checked(of, look, what.clone()));
        }
    };
    [(PunchingWay::Down, Look::PunchesDown), (PunchingWay::Up, Look::PunchesUp)].map(|(way, look)| {
        let Some((state, share)) = worst(&check, way, forces, over_slab_m) else {
            return BaseUse::not_checked(of, look, "a state of the base at the design level");
        };
        BaseUse {
            record: record(&check, &state, over_slab_m, way),
            state: Some(Arc::new(state.told(forces))),
            ..BaseUse::plain(of, look, Used::Share(share))
        }
    })
}

/// So many of the worst states are turned to where they are worst.
const TURNED: usize = 8;
/// How far either way, rad: states were found at slews twice as far apart at most.
const TURN_RAD: f64 = 0.32;
/// Cuts of the turn by the golden ratio, down to a hundredth of it.
const CUTS: u32 = 10;

/// The worst state for one sense. Where all that may act turns with the arm, so does every state: the worst of them are turned
/// to where the perimeter bears them least.
fn worst(check: &PunchingCheck, way: PunchingWay, forces: &AnchorForces, over_slab_m: f64) -> Option<(State, f64)> {
    let mut order: Vec<(f64, &State)> =
        forces.states.iter().map(|state| (share(check, way, state.action, over_slab_m), state)).collect();
    order.sort_by(|a, b| b.0.total_cmp(&a.0));
    let (most, state) = *order.first()?;
    if !forces.unit.as_ref().is_some_and(SearchedUnit::turns_with_the_arm) {
        return Some((state.clone(), most));
    }
    let turned = order.iter().take(TURNED).map(|&(_, state)| {
        let by = |turn_rad: f64| share(check, way, state.action.slewed(turn_rad), over_slab_m);
        (state, highest(by, TURN_RAD))
    });
    let (state, (turn_rad, turned)) = turned.reduce(|a, b| if b.1.1 > a.1.1 { b } else { a })?;
    if turned > most { Some((state.turned(turn_rad, forces), turned)) } else { Some((order[0].1.clone(), most)) }
}

/// Where a function of a turn is highest within a stretch about 0, and its value there: by golden section, which finds the top of
/// one hill.
fn highest(of: impl Fn(f64) -> f64, stretch_rad: f64) -> (f64, f64) {
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    let (mut low, mut high) = (-stretch_rad, stretch_rad);
    let (mut a, mut b) = (high - golden * (high - low), low + golden * (high - low));
    let (mut at_a, mut at_b) = (of(a), of(b));
    for _ in 0..CUTS {
        if at_a > at_b {
            (high, b, at_b) = (b, a, at_a);
            a = high - golden * (high - low);
            at_a = of(a);
        } else {
            (low, a, at_a) = (a, b, at_b);
            b = low + golden * (high - low);
            at_b = of(b);
        }
    }
    if at_a > at_b { (a, at_a) } else { (b, at_b) }
}

/// The share used in one sense; infinite where it is no number.
fn share(check: &PunchingCheck, way: PunchingWay, action: Wrench, over_slab_m: f64) -> f64 {
    let used = check.judge(&on_slab(action, over_slab_m));
    let share = used.iter().find(|used| used.way == way).map_or(f64::NAN, PunchingUse::worst);
    if share.is_nan() { f64::INFINITY } else { share }
}

/// The action on the slab: under a plinth M + V·p.
fn on_slab(action: Wrench, over_slab_m: f64) -> SlabActions {
    let on_slab = action.moved(DVec3::ZERO, DVec3::NEG_Z * over_slab_m);
    SlabActions { fz_n: on_slab.force_n.z, mx_nm: on_slab.moment_nm.x, my_nm: on_slab.moment_nm.y }
}

/// What punches and what bears it, all that it hangs on.
pub(super) fn design(
    place: &Place,
    roof: &Roof,
    loaded: &Loaded<'_>,
    code: &DesignCode,
) -> Result<PunchingDesign, String> {
    let slab = &roof.slab;
    let outline: Vec<DVec2> = loaded.outline.iter().map(|&corner| place.plane_from_plate(corner)).collect();
    let thickness_m = thinnest_m(roof, &outline);
    let axis_m = slab.bars.axis_depth_m.ok_or("depth of the slab's bars")?;
    let strength_pa = match code.anchorage {
        AnchorageCode::En1992Part4 => slab.cylinder_strength_pa,
        AnchorageCode::Aci318 => slab.specified_strength_pa,
    };
    let strength_pa = strength_pa.ok_or("strength of the slab's concrete")?;
    let depth_m = thickness_m - axis_m;
    let loaded_m: Vec<[f64; 2]> = loaded.outline.iter().map(DVec2::to_array).collect();
    let reach_m = EDGE_THICKNESSES * thickness_m;
    let setting = crate::geometry::concrete_around::Setting {
        outline: &place.outline,
        thickness_m: place.thickness_m,
        zones: &place.zones,
        foreign_m: &[],
        plate: place.plate,
        // What lies about the loaded area counts.
        anchors_m: &loaded_m,
        influence_m: reach_m,
        reach_m,
    };
    let around = setting.local().and_then(|local| local.around_loaded(&loaded_m)).map_err(|fault| fault.to_string())?;
    Ok(PunchingDesign {
        loaded_m,
        thickness_m,
        down: SlabDepth { effective_m: depth_m, bars: slab.bars.ratio },
        up: SlabDepth { effective_m: depth_m.min(loaded.embedment_m), bars: slab.bars.ratio },
        strength_pa,
        lightweight: 1.0,
        edges: around.edges,
        openings_m: around.openings_m,
    })
}

fn record(check: &PunchingCheck, state: &State, over_slab_m: f64, way: PunchingWay) -> Option<Record> {
    let records = check.records(&on_slab(state.action, over_slab_m));
    let found = records.into_iter().find(|record| record.used.way == way)?;
    let symbols = found.terms.iter().map(|term| RecordSymbol {
        symbol: term.symbol.to_owned(),
        value: term.value,
        unit: term.unit,
    });
    Some(Record {
        clause: found.clause.to_owned(),
        formula: found.formula.to_owned(),
        symbols: symbols.collect(),
        resistance_n: None,
        action_n: None,
        caution: found.caution.to_owned(),
    })
}
