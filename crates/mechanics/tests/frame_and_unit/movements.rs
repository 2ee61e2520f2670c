//! Movement of the tip in service: closed form of a cantilever, and the worked units' own tips.

use gantline_mechanics::cone::LoadCone;
use gantline_mechanics::envelope::{Actions, Component, Pull, Sense, SlewRange, movement_envelope};
use gantline_mechanics::unit::UnitModel;

use crate::near::near;
use crate::worked::{NAMES, Worked};

/// With a rope that hangs straight down the worked tips sink and lean out by what two frame programs give
/// (rounded to 7 digits after the point).
#[test]
fn tips_sink_as_two_frame_programs_have_it() {
    let worked = Worked::read();
    for name in NAMES {
        let model = UnitModel::new(&worked.unit(name)).unwrap();
        let actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.0)), 1.0);
        let found = movement_envelope(&model, 0, &actions, &SlewRange::At(vec![0.0])).unwrap();
        let printed = |i: usize| worked.number(&format!("{name}.single.0.tip_displacement_m.{i}"));
        near(name, found.get(Component::Uz, Sense::Min).unwrap().value, printed(2), 0.6e-7);
        near(name, found.get(Component::U, Sense::Max).unwrap().value, printed(0).abs(), 0.6e-7);
    }
}

/// A wider cone never moves the tip less (monotony).
#[test]
fn a_wider_cone_moves_the_tip_further() {
    let worked = Worked::read();
    for name in NAMES {
        let model = UnitModel::new(&worked.unit(name)).unwrap();
        let widest = |alpha: f64| {
            let actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(alpha)), 1.0);
            let found = movement_envelope(&model, 0, &actions, &SlewRange::WholeTurn).unwrap();
            found.get(Component::U, Sense::Max).unwrap().value
        };
        let steps: Vec<f64> = [0.0, 0.2, 0.5, 1.2, 2.5, std::f64::consts::PI].map(widest).to_vec();
        assert!(steps.windows(2).all(|w| w[1] >= w[0] * (1.0 - 1e-9)), "{name} {steps:?}");
    }
}
