//! Catalog: families of parts as stored, what may be combined, and the make-up of one unit.

pub mod base;
mod base_sound;
pub mod choices;
pub mod combination;
pub mod family;
pub mod fixing;
pub mod make_up;
pub mod parts;
pub mod resolved;
pub mod to_anchorage;
pub mod to_mechanics;

pub use base::{Anchors, Base, BaseKind, Bearing, BondSetting, HoldDown, PedestalBody, WallSide};
pub use choices::{Choice, NotListed, PartKind, choices, next_with, part_name};
pub use combination::{Combination, Rating};
pub use family::{Family, Origin};
pub use fixing::{
    AciCategory, AciValues, BoltHead, BondCover, Drilling, EnValues, Fixing, FixingKind, HoleCondition, LeastDistances,
    Orientation, PullOut,
};
pub use make_up::{MakeUp, MakeUpFault, SlewStops};
pub use parts::{
    Arm, Brace, BraceAction, BraceKind, Eye, FootFrom, Head, Mast, Material, MaterialKind, PinHoles, Retention,
    RopePoint, SectionShape, SlewHold, Tube, WeldStretch,
};
pub use resolved::ResolvedUnit;
