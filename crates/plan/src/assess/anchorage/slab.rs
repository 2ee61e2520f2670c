//! Punching of the slab under a base, downward and upward; indicative, for the structural engineer to confirm.

use std::sync::Arc;

use gantline_mechanics::slab::{PunchingCheck, PunchingDesign, PunchingWay, SlabActions, SlabDepth};
use glam::DVec2;

use super::code::punching;
use super::found::{BaseUse, Fixed, Look, Record, RecordSymbol, Used};
use super::place::Place;
use super::states::{AnchorForces, State};
use crate::assess::slab_under::thinnest_m;
use crate::basis::{AnchorageCode, DesignCode};
use crate::document::Roof;

/// Beyond so many thicknesses of the slab an edge cuts no control perimeter.
const EDGE_THICKNESSES: f64 = 8.0;

/// What punches: the loaded area in plate axes, how high the plate lies over the slab, how deep its anchors reach into it.
pub(super) struct Loaded<'a> {
    pub outline: &'a [DVec2],
    pub over_slab_m: f64,
    pub embedment_m: f64,
}

/// Both senses of punching.
pub(super) fn punches(
    of: Fixed,
    forces: &AnchorForces,
    place: &Result<Place, String>,
    roof: &Roof,
    loaded: &Loaded<'_>,
    code: &DesignCode,
) -> [BaseUse; 2] {
    let looks = [Look::PunchesDown, Look::PunchesUp];
    let check = match place.as_ref().map_err(Clone::clone).and_then(|place| prepare(place, roof, loaded, code)) {
        Ok(check) => check,
        Err(what) => {
            return looks.map(|look| BaseUse {
                of,
                look,
                outcome: Used::NotChecked(what.clone()),
                record: None,
                state: None,
            });
        }
    };
    let mut worst: [Option<(&State, f64)>; 2] = [None; 2];
    for state in &forces.states {
        for (known, used) in worst.iter_mut().zip(check.judge(&actions(state, loaded))) {
            let share = if used.worst().is_nan() { f64::INFINITY } else { used.worst() };
            if known.is_none_or(|known| share > known.1) {
                *known = Some((state, share));
            }
        }
    }
    let mut each = looks.into_iter().zip(worst).map(|(look, worst)| match worst {
        Some((state, share)) => BaseUse {
            of,
            look,
            outcome: Used::Share(share),
            record: record(&check, state, loaded, look),
            state: Some(Arc::new(state.told(forces))),
        },
        None => BaseUse {
            of,
            look,
            outcome: Used::NotChecked("a state of the base at the design level".to_owned()),
            record: None,
            state: None,
        },
    });
    std::array::from_fn(|at| {
        each.next().unwrap_or(BaseUse {
            of,
            look: looks[at],
            outcome: Used::NotChecked("a state of the base at the design level".to_owned()),
            record: None,
            state: None,
        })
    })
}

/// The action on the slab: under a plinth M + V·p.
fn actions(state: &State, loaded: &Loaded<'_>) -> SlabActions {
    let on_slab = state.action.moved(glam::DVec3::ZERO, glam::DVec3::NEG_Z * loaded.over_slab_m);
    SlabActions { fz_n: on_slab.force_n.z, mx_nm: on_slab.moment_nm.x, my_nm: on_slab.moment_nm.y }
}

fn prepare(place: &Place, roof: &Roof, loaded: &Loaded<'_>, code: &DesignCode) -> Result<PunchingCheck, String> {
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
        anchors_m: &[],
        influence_m: reach_m,
        reach_m,
    };
    let around = setting.around_loaded(&loaded_m).map_err(|fault| fault.to_string())?;
    let design = PunchingDesign {
        loaded_m,
        thickness_m,
        down: SlabDepth { effective_m: depth_m, bars: slab.bars.ratio },
        up: SlabDepth { effective_m: depth_m.min(loaded.embedment_m), bars: slab.bars.ratio },
        strength_pa,
        lightweight: 1.0,
        edges: around.edges,
        openings_m: around.openings_m,
    };
    design.prepare(punching(code)).map_err(|fault| fault.to_string())
}

fn record(check: &PunchingCheck, state: &State, loaded: &Loaded<'_>, look: Look) -> Option<Record> {
    let way = if look == Look::PunchesDown { PunchingWay::Down } else { PunchingWay::Up };
    let records = check.records(&actions(state, loaded));
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
        caution: format!("{}; indicative, for the structural engineer to confirm", found.caution),
    })
}
