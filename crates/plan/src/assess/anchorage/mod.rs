//! What a base, its fixing and the concrete round it make of all that acts.
//!
//! What acts on the anchors hangs on make-up and basis and is found once for each make-up (`forces`); what the concrete bears
//! hangs on the place and is found again when the base or a neighbor moves (`phase`).

mod bars;
mod by_setback;
mod code;
#[cfg(test)]
mod densely;
mod forces;
pub mod found;
mod in_concrete;
mod phase;
mod place;
mod plate;
mod site;
mod slab;
mod sleeve;
mod states;
mod steel;
mod told;
mod worth_judging;

pub use by_setback::{UseBySetback, use_by_setback};
pub(super) use forces::Forces;
pub use found::{
    BaseAssessment, BaseUse, Fixed, HandedOn, Look, Mode, NearEdge, PlateState, Record, RecordSymbol, Used,
};
pub(super) use phase::{BaseSites, OnSites, assess_on_sites, site_judged};
pub(super) use place::Stands;
pub(super) use site::{OnSite, Site};
pub use told::BaseState;
