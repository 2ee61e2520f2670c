//! The worst of each part over the slews that are looked at.

use glam::DVec2;

use super::asked::{MemberAbove, MemberEnvelope, MemberPart, MemberUse};
use super::climbed::Climbed;
use super::part_at_slew::PartAtSlew;
use super::second_order::SecondOrder;
use crate::envelope::actions::{Actions, SlewRange};
use crate::envelope::engine::{BracePlan, brace_plan};
use crate::envelope::extreme::Causes;
use crate::envelope::fault::EnvelopeFault;
use crate::envelope::prepared::Prepared;
use crate::envelope::search::{Look, WORTH, greatest_by_looks};
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
        let found = worst_of(&prepared, part, second_order.factor(), plan, &slews, 0.0)?;
        uses.push(found.worse.ok_or(NOWHERE)?);
    }
    Ok(MemberEnvelope { uses, slack })
}

/// What [`member_envelope`] says of one part where that is worse than a utilization known from other actions; where it is
/// not, that is found out for a fraction of the work. Something may be told that is not worse, too.
///
/// With 0 known it is always told.
pub fn member_above(
    model: &UnitModel,
    actions: &Actions,
    range: &SlewRange,
    part: &MemberPart<'_>,
    second_order: SecondOrder,
    known: f64,
) -> Result<MemberAbove, EnvelopeFault> {
    if part.part == Part::Brace && matches!(model.unit().brace, Brace::None) {
        return Err(EnvelopeFault::NotThere { part: "brace" });
    }
    let slews = Slews::new(range, model)?;
    let prepared = Prepared::new(model, actions)?;
    let (plan, _) = brace_plan(model, actions, &prepared, &slews)?;
    worst_of(&prepared, part, second_order.factor(), plan, &slews, known)
}

/// No state of the brace holds the unit.
const NOWHERE: EnvelopeFault = EnvelopeFault::NotThere { part: "state in which it stands" };

fn worst_of<'a>(
    prepared: &'a Prepared<'a>,
    part: &MemberPart<'a>,
    amplification: f64,
    plan: BracePlan,
    slews: &Slews,
    known: f64,
) -> Result<MemberAbove, EnvelopeFault> {
    let at = |slew: f64| PartAtSlew::new(prepared, part, amplification, plan, slew);
    let alike = prepared.turns_with_the_arm() && !prepared.is_cut();
    let mut not_checked = None;
    let climbed = Climbed::default();
    let slew = if alike {
        slews.any()
    } else {
        // Where the whole grid stays this far below, nothing between its slews comes up to what is known.
        let hopeless = WORTH * known;
        let mut most = 0.0_f64;
        let height = |slew: f64, look: Look| -> Result<f64, EnvelopeFault> {
            let enough = match look {
                Look::Over { enough } => enough.max(hopeless),
                Look::Closely if known > 0.0 && most <= hopeless => return Ok(0.0),
                Look::Closely => 0.0,
            };
            let here = at(slew)?;
            not_checked = not_checked.or_else(|| here.not_checked());
            let height = here.worst(enough, &climbed).map_or(0.0, |worst| worst.governing.utilization);
            most = most.max(height);
            Ok(height)
        };
        greatest_by_looks(slews, &[], GRID, FINE, height)?.0
    };
    let here = at(slew)?;
    if here.spots.iter().all(|spot| spot.cases.is_empty()) {
        return Err(NOWHERE);
    }
    not_checked = not_checked.or_else(|| here.not_checked());
    let Some(mut worst) = here.worst(known, &climbed) else { return Ok(MemberAbove { worse: None, not_checked }) };
    worst.governing.not_checked = worst.governing.not_checked.or(not_checked);
    let (station, actions) = here.actions(&worst);
    let (foot_lost, brace_slack) = here.brace_state(&worst);
    let to_structure = DVec2::from_angle(slew);
    let pulls_n: Vec<_> = worst.state.pulls_n.iter().map(|p| turned(*p, slew)).collect();
    let worse = MemberUse {
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
    };
    Ok(MemberAbove { worse: Some(worse), not_checked })
}
