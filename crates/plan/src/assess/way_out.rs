//! Whether the arm can be slewed from inboard, where people get on, to where it serves a facade.

use std::f64::consts::{PI, TAU};

use super::assessment::SweptPart;
use super::clearance::{Required, conflicts};
use crate::geometry::prism::Prism;
use crate::geometry::turns::Turns;

/// The turn is looked at in steps of a degree; a step in which anything is hit anywhere counts as blocked as a whole.
const STEPS: u32 = 360;

/// Slews, in the base's axes, at which some part runs into something.
pub fn blocked_slews(swept: &[SweptPart], prisms: &[&Prism], required: &Required) -> Turns {
    let step = TAU / f64::from(STEPS);
    let blocked = (0..STEPS).filter_map(|index| {
        let from = -PI + f64::from(index) * step;
        let here = Turns::between(from, from + step);
        let hit = swept.iter().any(|part| {
            let Some(turned) = part.turned_rad else { return false };
            let band = part.serving.through(here.rotated(turned));
            prisms.iter().any(|prism| conflicts(&band, prism, required))
        });
        hit.then_some(here)
    });
    blocked.fold(Turns::none(), |all, here| all.union(&here))
}

/// Whether some serving slew can be come to from inboard over slews that are open and not blocked. Inboard is where the
/// arm points away from its edge: more than a quarter turn from the base's x axis.
pub fn has_way_out(loaded: &Turns, serving: &Turns, blocked: &Turns) -> bool {
    let free = loaded.minus(blocked);
    let inboard = Turns::between(PI / 2.0, 3.0 * PI / 2.0);
    free.intervals().into_iter().any(|turn| {
        let stretch = Turns::between(turn.from_rad, turn.to_rad);
        !stretch.intersect(serving).is_empty() && !stretch.intersect(&inboard).is_empty()
    })
}
