//! Which parts are judged, and what comes out.

use glam::DVec3;

use crate::envelope::{Causes, Slack};
use crate::member::{At, Governing, MemberActions, MemberResistance, Mode, NotChecked};
use crate::unit::{Part, Station};

/// A part of the unit with its resistance.
#[derive(Debug, Clone, Copy)]
pub struct MemberPart<'a> {
    /// Which part.
    pub part: Part,
    /// What it can bear. Its section axes are the part's local axes: y square to the arm's plane.
    pub resistance: &'a MemberResistance,
    /// Where it is weakened.
    pub marks: &'a [Mark],
}

/// A stretch of a part that is weakened; a pin hole has no length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mark {
    /// Where it begins, m, in the part's coordinate.
    pub from_m: f64,
    /// Where it ends, m, not before it begins.
    pub to_m: f64,
    /// By what.
    pub at: At,
}

/// The worst of one part.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberUse {
    /// Which part.
    pub part: Part,
    /// The governing mode, its utilization, and whether some mode somewhere was not checked.
    pub governing: Governing,
    /// The worst cut; for buckling the cut with the largest bending moment.
    pub station: Station,
    /// Inner forces there, moments amplified, with the largest along the part in the same state: what
    /// `MemberResistance::checks` needs to show every term.
    pub actions: MemberActions,
    /// Direction of the first rope that pulls, structure axes; `None` if none does.
    pub pull_direction: Option<DVec3>,
    /// Slew at which it happens, rad.
    pub slew_rad: f64,
    /// Everything that acts, structure axes.
    pub causes: Causes,
}

/// The worst of one part where it is worse than what was known before.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberAbove {
    /// The worst; `None` if it is surely not above what was known.
    pub worse: Option<MemberUse>,
    /// The first mode that some cut was not checked for, whether it is worse or not.
    pub not_checked: Option<(Mode, NotChecked)>,
}

/// The worst of all parts that were asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberEnvelope {
    /// One for each part, in the order asked.
    pub uses: Vec<MemberUse>,
    /// Whether a brace that only pulls goes slack. If that makes a mechanism, no utilization covers what happens then.
    pub slack: Slack,
}
