//! What is computed about a plan: reach, coverage, clear zones, reactions, findings.

pub mod assessment;
pub mod check;
pub mod clearance;
pub mod code;
pub mod coverage;
pub mod reach;
pub mod reactions;
pub mod stand_off;
pub mod swept;

pub use assessment::{
    Against, Assessment, FacadeAssessment, GapRegion, Over, PairClearance, Part, Room, Served, SettingOut,
    UnitAssessment, Way,
};
pub use check::{Amount, Check, Limit, Outcome, Place, Severity, Tally};
pub use code::Code;
pub use reactions::{
    CombinationResult, Component, FootExtreme, ForceExtreme, JointUse, MemberUse, ReactionSet, Reactions, Sense,
};
