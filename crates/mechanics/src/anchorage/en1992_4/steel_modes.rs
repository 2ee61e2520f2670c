//! Steel of the fasteners under one set of actions: of the most pulled, the most sheared and the most stressed one.

use super::super::actions::GroupActions;
use super::super::line::{Line, Sink};
use super::super::record::{Mode, Outcome};
use super::evaluate::{ONE_ONLY, not_applicable};
use super::interaction::{steel_share, tell_steel};
use super::prepared::Prepared;
use super::steel::Steel;

/// Tells steel in tension, in shear and in both.
pub(super) fn tell(p: &Prepared<'_>, actions: &GroupActions, sink: &mut impl Sink) {
    let steel = match p.steel {
        Ok(steel) => steel,
        Err(why) => {
            for mode in [Mode::SteelTension, Mode::SteelShear, Mode::SteelInteraction] {
                sink.take(&Line::only(mode, "EN 1992-4 7.2", Outcome::NotChecked(why)));
            }
            return;
        }
    };
    let anchors = || 0..actions.tension_n.len();
    let worst = |share: &dyn Fn(usize) -> f64| anchors().max_by(|&a, &b| share(a).total_cmp(&share(b))).unwrap_or(0);
    let pulled = worst(&|i| actions.tension_n[i]);
    let is_pulled = actions.tension_n[pulled] > 0.0;
    if is_pulled {
        steel.tell_tension(pulled, actions.tension_n[pulled], sink);
    } else {
        not_applicable(&[Mode::SteelTension], "no tension", sink);
    }
    let sheared = worst(&|i| actions.shear_of_n(i));
    if actions.shear_of_n(sheared) <= 0.0 {
        not_applicable(&[Mode::SteelShear, Mode::SteelInteraction], "no shear", sink);
        return;
    }
    steel_shear(&steel, actions, (sheared, is_pulled), sink);
}

fn steel_shear(steel: &Steel, actions: &GroupActions, (sheared, is_pulled): (usize, bool), sink: &mut impl Sink) {
    let anchors = || 0..actions.tension_n.len();
    let Some(direct_rd) = steel.direct_rd_n() else {
        // With a lever arm every fastener has its own resistance, by its own tension.
        for i in anchors().filter(|&i| actions.shear_of_n(i) > 0.0 || i == sheared) {
            steel.tell_shear(i, (actions.shear_of_n(i), actions.tension_n[i]), sink);
            if steel.shear.is_err() {
                break;
            }
        }
        let outcome = match steel.shear {
            Err(why) => Outcome::NotChecked(why),
            Ok(_) => Outcome::NotApplicable("the tension is in the lever arm's resistance already (from memory)"),
        };
        sink.take(&Line::only(Mode::SteelInteraction, "EN 1992-4 7.2.3.1", outcome));
        return;
    };
    steel.tell_shear(sheared, (actions.shear_of_n(sheared), actions.tension_n[sheared]), sink);
    if !is_pulled {
        not_applicable(&[Mode::SteelInteraction], ONE_ONLY, sink);
        return;
    }
    let shares = |i: usize| (actions.tension_n[i] / steel.tension_rd_n(), actions.shear_of_n(i) / direct_rd);
    let sum = |i: &usize| {
        let (n, v) = shares(*i);
        steel_share(n, v)
    };
    if let Some(worst) = anchors().max_by(|a, b| sum(a).total_cmp(&sum(b))) {
        let (n, v) = shares(worst);
        tell_steel((worst, n, v), sink);
    }
}
