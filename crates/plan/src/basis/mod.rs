//! Basis: what pulls, with which factors, from which source; and the working rules with their limits.
//!
//! Every limit and factor that a check compares with has its one home here.

pub mod combined;
pub mod design_code;
pub mod listed;
pub mod load_basis;
pub mod load_case;
pub mod load_cone;
pub mod presets;
pub mod rules;
pub mod sourced;
pub mod test_duty;

pub use combined::{Combined, CombinedFault, LoadLevel, Term};
pub use design_code::{AnchorageCode, BondDefaults, DesignCode, FactorName, MemberCode};
pub use listed::{FigureIndex, ListedFigure};
pub use load_basis::{LoadBasis, WeightFactors};
pub use load_case::{CaseId, CaseLoad, LoadCase, Tension, WindState};
pub use load_cone::{LeanLimits, LoadCone};
pub use presets::{Preset, presets};
pub use rules::{ClearRules, HandlingRules, NeighborRule, PeopleRules, ReachRules, Rules, StandOff};
pub use sourced::{Confirmation, Sourced};
pub use test_duty::{ProofTest, TestDuty};
