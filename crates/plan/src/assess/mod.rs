//! What is computed about a plan: reach, coverage, clear zones, reactions, findings.

pub mod actions_of;
pub mod against_slew;
pub mod anchorage;
pub mod assessment;
pub mod check;
pub mod clear_zones;
pub mod clearance;
pub mod code;
pub mod coverage;
pub mod diagrams;
pub mod facade_phase;
pub mod in_parts;
pub mod lean;
pub mod member_phase;
pub mod memo;
pub mod parts_swept;
mod place_phase;
pub mod reach;
pub mod reaction_phase;
pub mod reactions;
pub mod rules;
pub mod run;
pub mod serving;
pub mod setting_out;
pub mod shared_area;
pub mod slab_under;
pub mod stand_off;
pub mod standing;
pub mod surroundings;
pub mod swept;
pub mod trial;
mod unit_inputs;
mod unit_phase;
pub mod way_out;
pub mod worth_searching;

pub use against_slew::{AgainstSlew, AtSlew, against_slew};
pub use anchorage::BaseAssessment;
pub use assessment::{
    Against, Assessment, FacadeAssessment, GapRegion, Over, PairClearance, Part, Room, Served, SettingOut, SweptPart,
    UnitAssessment, Way,
};
pub use check::{Amount, Check, Limit, Outcome, Place, Severity, Tally};
pub use code::Code;
pub use diagrams::{Cut, DiagramSlew, Diagrams, Member, MemberDiagram, NoDiagrams, diagrams};
pub use memo::Memo;
pub use reactions::{
    CombinationResult, Component, FootExtreme, ForceExtreme, GOVERNING, JointUse, MemberUse, ReactionSet, Reactions,
    Sense, SlackBrace, Unavailable,
};
pub use run::{assess, assess_on};
pub use trial::try_make_ups;
