//! Anchorage in concrete: what a group of fasteners under a plate can bear, mode by mode, each with its clause.
//!
//! Plate axes lie in the face of the concrete: positions are (x, y) in m; tension is positive when it pulls a fastener
//! out; shear is the force of the plate on the fastener. Every code is asked alike: prepare the group once in its
//! concrete, then judge many sets of actions or print one set in full.

pub mod aci318;

mod actions;
mod around;
mod concrete;
mod distances;
mod edge_shear;
pub mod en1992_4;
mod fastener;
mod fault;
mod group;
mod line;
mod links;
mod mode_shares;
mod product;
mod record;
mod rectangular_member;
#[cfg(test)]
mod samples;
#[cfg(test)]
pub(crate) use samples::with_bond_conditions;
mod square_union;
mod supplementary;

pub use actions::{ActionLevel, Compression, GroupActions};
pub use around::{Around, EdgeSeen};
pub use concrete::{Concrete, Cracking, EdgeBars, SplittingBars, SurfaceBars};
pub use fastener::{Fastener, FastenerKind, Grade, Head};
pub use fault::AnchorageFault;
pub use group::{Annulus, Fixture, Group, MAX_ANCHORS, Restraint, Seating};
pub use mode_shares::ModeShares;
pub use product::{
    AciCategory, AciProduct, BondCover, BondUse, Drilling, EnProduct, HoleCondition, LeastDistances, Orientation,
    Product, PullOut,
};
pub use record::{About, Mode, NotChecked, Outcome, Record, Symbol, Verdict};
pub use rectangular_member::RectangularMember;
pub use square_union::union_area_m2;
pub use supplementary::{BarEnd, BarSet, ShearBars, TensionBars};
