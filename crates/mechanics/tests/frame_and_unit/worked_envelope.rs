//! Envelopes of the worked units against a closed form on a slew grid of 1°.

use gantline_mechanics::cone::LoadCone;
use gantline_mechanics::envelope::{
    Actions, Component, Envelope, Pull, Sense, SlewRange, base_envelope, brace_envelope,
};
use gantline_mechanics::unit::UnitModel;

use crate::near::near;
use crate::worked::{NAMES, Worked};

/// The file holds three digits after the point.
const ROUNDING: f64 = 0.0006;

const COMPONENTS: [(Component, &str); 6] = [
    (Component::Fx, "Fx"),
    (Component::Fy, "Fy"),
    (Component::Fz, "Fz"),
    (Component::Mx, "Mx"),
    (Component::My, "My"),
    (Component::Mz, "Mz"),
];

/// The file's rope always pulls.
fn actions(worked: &Worked, name: &str) -> Actions {
    let number = |k: &str| worked.number(&format!("{name}.envelope.{k}"));
    let tension = number("tension_N");
    let cone = LoadCone::whole(number("cone_half_angle_deg").to_radians());
    let always = Pull { least_n: tension, ..Pull::new(0, tension, cone) };
    Actions::of_pull(always, 1.0)
}

fn each(worked: &Worked, name: &str, base: &Envelope, brace: &Envelope, mut see: impl FnMut(&str, f64, f64)) {
    let number = |k: &str| worked.number(&format!("{name}.envelope.base_action.{k}"));
    let value = |e: &Envelope, c, s| e.get(c, s).unwrap().value;
    for (component, key) in COMPONENTS {
        see(key, value(base, component, Sense::Max), number(&format!("{key}.max")));
        see(key, -value(base, component, Sense::Min), -number(&format!("{key}.min")));
    }
    see("V", value(base, Component::V, Sense::Max), number("V_resultant_max"));
    see("M", value(base, Component::M, Sense::Max), number("M_resultant_max"));
    see("N", value(brace, Component::Axial, Sense::Max), number("brace_axial.max"));
    see("N", -value(brace, Component::Axial, Sense::Min), -number("brace_axial.min"));
}

#[test]
fn on_the_same_slew_grid_envelopes_are_those_of_the_file() {
    let worked = Worked::read();
    for name in NAMES {
        let model = UnitModel::new(&worked.unit(name)).unwrap();
        let actions = actions(&worked, name);
        let grid = SlewRange::At((-60..=60).map(|d| f64::from(d).to_radians()).collect());
        let base = base_envelope(&model, &actions, &grid).unwrap();
        let brace = brace_envelope(&model, &actions, &grid).unwrap();
        each(&worked, name, &base, &brace, |what, got, expected| {
            // The file's resultants were searched on a raster of directions and may fall short of ours.
            let short = if matches!(what, "V" | "M") { 1e-6 * expected } else { 0.0 };
            near(&format!("{name} {what}"), got, expected + short / 2.0, ROUNDING + short / 2.0);
        });
    }
}

/// Over the continuous range nothing is missed that the grid has, and a grid of 1° misses less than
/// 1 − cos 0.5° = 4e-5 of an extreme.
#[test]
fn over_the_continuous_range_envelopes_reach_those_of_the_file() {
    let worked = Worked::read();
    let sixty = 60f64.to_radians();
    let range = SlewRange::Between { from_rad: -sixty, to_rad: sixty };
    for name in NAMES {
        let model = UnitModel::new(&worked.unit(name)).unwrap();
        let actions = actions(&worked, name);
        let base = base_envelope(&model, &actions, &range).unwrap();
        let brace = brace_envelope(&model, &actions, &range).unwrap();
        each(&worked, name, &base, &brace, |what, got, expected| {
            assert!(got >= expected - ROUNDING, "{name} {what}: {got} {expected}");
            assert!(got <= expected + ROUNDING + 1e-4 * expected.abs().max(5000.0), "{name} {what}: {got} {expected}");
        });
    }
}
