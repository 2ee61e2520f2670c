//! What a unit's make-up and place alone say about it: what it serves and reaches, what it sweeps, how it passes the building.
//! Found again only when the unit itself has moved, never when a neighbor has.

use std::sync::Arc;

use super::assessment::{PairClearance, SweptPart};
use super::clear_zones::clearances_of_building;
use super::lean::is_square_to_one_facade;
use super::parts_swept::swept_parts;
use super::serving::{ServedReach, loaded_slew, serves};
use super::surroundings::Surroundings;
use crate::basis::Rules;
use crate::catalog::ResolvedUnit;
use crate::geometry::frame::Frame;
use crate::geometry::turns::Turns;

/// A unit at its place, as if it stood alone.
#[derive(Debug, Clone)]
pub(super) struct Placed {
    pub loaded: Turns,
    pub serving: Turns,
    pub reaches: Arc<Vec<ServedReach>>,
    pub swept: Vec<SweptPart>,
    /// For each swept part its clearances to what stands still.
    pub past_building: Vec<Vec<PairClearance>>,
    /// Whether it stands square to the one facade it serves, so that limits of lean hold for it.
    pub keeps_lean: bool,
}

impl Placed {
    /// A unit that has no place, or whose parts are not known.
    fn nowhere() -> Self {
        Self {
            loaded: Turns::none(),
            serving: Turns::none(),
            reaches: Arc::default(),
            swept: Vec::new(),
            past_building: Vec::new(),
            keeps_lean: false,
        }
    }

    /// A unit at its place, if it has one.
    pub fn of(unit: Option<&ResolvedUnit>, frame: Option<&Frame>, surroundings: &Surroundings, rules: &Rules) -> Self {
        let (Some(unit), Some(frame)) = (unit, frame) else { return Self::nowhere() };
        let loaded = loaded_slew(unit);
        let reaches = serves(unit, frame, &loaded, surroundings, rules);
        let serving = reaches.iter().fold(Turns::none(), |all, reach| all.union(&reach.served.slew));
        let swept = swept_parts(unit, frame, &loaded, &serving);
        let past_building = clearances_of_building(frame, &swept, surroundings, rules);
        let served: Vec<_> = reaches.iter().map(|reach| &reach.served).collect();
        let keeps_lean = is_square_to_one_facade(frame, &served, &surroundings.facades);
        Self { loaded, serving, reaches: Arc::new(reaches), swept, past_building, keeps_lean }
    }
}
