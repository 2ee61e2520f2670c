//! The worst of each part over the slews that are looked at.

use glam::DVec2;

use super::asked::{MemberEnvelope, MemberPart, MemberUse};
use super::part_at_slew::PartAtSlew;
use super::second_order::SecondOrder;
use crate::envelope::actions::{Actions, SlewRange};
use crate::envelope::engine::{BracePlan, brace_plan};
use crate::envelope::extreme::Causes;
use crate::envelope::fault::EnvelopeFault;
use crate::envelope::prepared::Prepared;
use crate::envelope::search::greatest;
use crate::envelope::slews::Slews;
use crate::unit::{Brace, Part, UnitModel, turned};

/// Grid of slews, rad.
const GRID: f64 = std::f64::consts::PI / 24.0;

/// To which slews are refined, rad; a utilization is then good to its square.
const FINE: f64 = 1e-4;

/// The largest utilization of each part over every rope direction, slew and state that may act, with the cut, mode
/// and everything that acts at once.
///
/// Without limits of lean, and while nothing keeps its direction as the arm slews, inner forces don't depend on slew
/// and no slew is searched. Bending moments are raised by `second_order`.
pub fn member_envelope(
    model: &UnitModel,
    actions: &Actions,
    range: &SlewRange,
    parts: &[MemberPart<'_>],
    second_order: SecondOrder,
) -> Result<MemberEnvelope, EnvelopeFault> {
    let slews = Slews::new(range, model)?;
    let prepared = Prepared::new(model, actions)?;
    let (plan, slack) = brace_plan(model, actions, &prepared, &slews)?;
    let mut uses = Vec::with_capacity(parts.len());
    for part in parts {
        if part.part == Part::Brace && matches!(model.unit().brace, Brace::None) {
            return Err(EnvelopeFault::NotThere { part: "brace" });
        }
        uses.push(worst_of(&prepared, part, second_order.factor(), plan, &slews)?);
    }
    Ok(MemberEnvelope { uses, slack })
}

fn worst_of<'a>(
    prepared: &'a Prepared<'a>,
    part: &MemberPart<'a>,
    amplification: f64,
    plan: BracePlan,
    slews: &Slews,
) -> Result<MemberUse, EnvelopeFault> {
    let at = |slew: f64| PartAtSlew::new(prepared, part, amplification, plan, slew);
    let alike = prepared.turns_with_the_arm() && !prepared.is_cut();
    let mut not_checked = None;
    let slew = if alike {
        slews.any()
    } else {
        let height = |slew: f64| -> Result<f64, EnvelopeFault> {
            let worst = at(slew)?.worst();
            not_checked = not_checked.or(worst.as_ref().and_then(|worst| worst.governing.not_checked));
            Ok(worst.map_or(0.0, |worst| worst.governing.utilization))
        };
        greatest(slews, &[], GRID, FINE, height)?.0
    };
    let here = at(slew)?;
    let mut worst = here.worst().ok_or(EnvelopeFault::NotThere { part: "state in which it stands" })?;
    worst.governing.not_checked = worst.governing.not_checked.or(not_checked);
    let (station, actions) = here.actions(&worst);
    let (foot_lost, brace_slack) = here.brace_state(&worst);
    let to_structure = DVec2::from_angle(slew);
    let pulls_n: Vec<_> = worst.state.pulls_n.iter().map(|p| turned(*p, slew)).collect();
    Ok(MemberUse {
        part: part.part,
        governing: worst.governing,
        station,
        actions,
        pull_direction: pulls_n.iter().find_map(|p| p.try_normalize()),
        slew_rad: slew,
        causes: Causes {
            pulls_n,
            second_legs_n: worst.state.legs_n,
            wind: to_structure.rotate(worst.state.wind),
            tether: to_structure.rotate(worst.state.tether),
            foot_lost,
            brace_slack,
        },
    })
}
