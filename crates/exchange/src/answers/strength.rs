//! What the reactions do to the unit itself: members, joints, socket, slew hold, stiffness.

use gantline_plan::assess::reactions::{AtRating, SocketUse};
use gantline_plan::assess::{JointUse, MemberUse, Reactions, SlackBrace};
use gantline_plan::catalog::{ResolvedUnit, Retention, SlewHold};
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::{Figure, direction};

/// Strength and stiffness of a unit.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StrengthAnswer {
    /// Members in their worst combination.
    pub members: Vec<MemberAnswer>,
    /// Members under the declared rating with the factors of the basis; null when nothing is declared.
    pub at_rating: Option<AtRatingAnswer>,
    /// Joints in their worst combination.
    pub joints: Vec<JointAnswer>,
    /// The mast in its socket.
    pub socket: Vec<SocketAnswer>,
    /// What holds the slew.
    pub slew_hold: SlewHold,
    /// Largest twist about the mast axis at the design level; null when not computed.
    pub twist_nm: Option<Figure>,
    /// Smallest ratio of critical to acting load; null when not computed.
    pub alpha_cr: Option<Figure>,
    /// Largest deflection of the tip in service; null when not computed.
    pub tip_deflection_m: Option<Figure>,
    /// A brace that only pulls and goes slack; null when none does.
    pub slack_brace: Option<SlackAnswer>,
}

/// Use of a member.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MemberAnswer {
    /// Mast, arm or brace.
    pub member: String,
    /// The worst combination.
    pub combination: String,
    /// What was looked at.
    pub mode: String,
    /// Demand over resistance; null when it could not be checked, or nothing resists.
    pub utilization: Option<Figure>,
    /// Whether nothing resists: the ratio is then beyond every number. Never a pass.
    pub nothing_resists: bool,
    /// Clause of the code, or what is missing.
    pub clause: String,
    /// Distance of the worst place from the member's first end.
    pub station_m: Figure,
    /// Unit vector of the rope's pull in the base's axes; null when no rope pulls.
    pub pull_direction: Option<[Figure; 3]>,
}

/// Members under the declared rating.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AtRatingAnswer {
    /// Largest demand over resistance; null when nothing resists.
    pub utilization: Figure,
    /// Whether nothing resists: the ratio is then beyond every number. Never a pass.
    pub nothing_resists: bool,
    /// Whether every mode could be checked.
    pub is_all_checked: bool,
    /// Loads and factors inside.
    pub inside: String,
}

/// A joint.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct JointAnswer {
    /// Which joint.
    pub joint: String,
    /// What keeps it together.
    pub held_by: Retention,
    /// Largest force that parts it; not positive when nothing ever does.
    pub uplift_n: Figure,
    /// The worst combination.
    pub combination: String,
}

/// Something looked at in the socket.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SocketAnswer {
    /// What was looked at.
    pub what: String,
    /// Demand over resistance; null when it could not be checked, or nothing resists.
    pub utilization: Option<Figure>,
    /// Whether nothing resists: the ratio is then beyond every number. Never a pass.
    pub nothing_resists: bool,
    /// Clause, or what is missing.
    pub clause: String,
}

/// A brace that goes slack.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SlackAnswer {
    /// When, and what follows.
    pub said: String,
    /// Whether nothing holds the arm then.
    pub is_mechanism: bool,
}

impl StrengthAnswer {
    /// The answer about a unit's strength.
    pub fn of(unit: &ResolvedUnit, reactions: &Reactions) -> Self {
        let named = |index: usize| reactions.combination_name(index).to_owned();
        Self {
            members: reactions.members.iter().map(|one| member(one, named(one.combination))).collect(),
            at_rating: reactions.at_rating.as_ref().map(at_rating),
            joints: reactions.joints.iter().map(|one| joint(one, named(one.combination))).collect(),
            socket: reactions.socket.iter().map(socket).collect(),
            slew_hold: unit.base.slew_hold,
            twist_nm: reactions.twist_nm.map(Figure::of),
            alpha_cr: reactions.alpha_cr.map(Figure::of),
            tip_deflection_m: reactions.tip_deflection_m.map(Figure::of),
            slack_brace: reactions.slack.as_ref().map(slack),
        }
    }
}

fn member(used: &MemberUse, combination: String) -> MemberAnswer {
    MemberAnswer {
        member: used.member.to_owned(),
        combination,
        mode: used.mode.clone(),
        utilization: used.utilization.map(Figure::of),
        nothing_resists: used.utilization == Some(f64::INFINITY),
        clause: used.clause.clone(),
        station_m: Figure::of(used.station_m),
        pull_direction: direction(used.pull),
    }
}

fn at_rating(at_rating: &AtRating) -> AtRatingAnswer {
    AtRatingAnswer {
        utilization: Figure::of(at_rating.utilization),
        nothing_resists: at_rating.utilization == f64::INFINITY,
        is_all_checked: at_rating.all_checked,
        inside: at_rating.inside.clone(),
    }
}

fn joint(used: &JointUse, combination: String) -> JointAnswer {
    JointAnswer {
        joint: used.joint.to_owned(),
        held_by: used.held_by,
        uplift_n: Figure::of(used.uplift_n),
        combination,
    }
}

fn socket(used: &SocketUse) -> SocketAnswer {
    SocketAnswer {
        what: used.what.clone(),
        utilization: used.utilization.map(Figure::of),
        nothing_resists: used.utilization == Some(f64::INFINITY),
        clause: used.clause.clone(),
    }
}

fn slack(slack: &SlackBrace) -> SlackAnswer {
    SlackAnswer { said: slack.said.clone(), is_mechanism: slack.is_mechanism }
}
