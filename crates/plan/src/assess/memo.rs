//! Memo: the last input and result of each phase, compared by value, so that a drag recomputes only what moved.
//!
//! Equal input gives the same shared result; the result can't depend on what was assessed before.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::anchorage::{Forces, OnSite, Site};
use super::assessment::{FacadeAssessment, SettingOut, UnitAssessment};
use super::clear_zones::Neighbor;
use super::place_phase::Placed;
use super::reactions::Reactions;
use super::serving::ServedReach;
use super::surroundings::Surroundings;
use crate::basis::{DesignCode, LoadBasis};
use crate::catalog::{Family, MakeUp, MakeUpFault, ResolvedUnit};
use crate::document::{FamilyId, Obstacle, ObstacleId, PartId, PlacementId, Plan, Roof, RoofId};
use crate::geometry::facade::FacadeKey;
use crate::geometry::frame::Frame;

/// What was computed last, by thing and phase.
#[derive(Debug, Clone, Default)]
pub struct Memo {
    pub(super) basis: Option<Arc<(LoadBasis, DesignCode)>>,
    pub(super) families: BTreeMap<FamilyId, Arc<Family>>,
    pub(super) roofs: BTreeMap<RoofId, Roof>,
    pub(super) obstacles: BTreeMap<ObstacleId, Obstacle>,
    pub(super) surroundings: Option<Arc<Surroundings>>,
    pub(super) make_ups: Vec<KnownMakeUp>,
    /// Where the make-ups of the same parts are among those known.
    by_parts: BTreeMap<PartsKey, Vec<usize>>,
    pub(super) units: BTreeMap<PlacementId, UnitSlot>,
    pub(super) facades: BTreeMap<FacadeKey, FacadeSlot>,
}

/// So many make-ups without a unit are kept, so that going back to one costs nothing.
const KEPT_UNUSED: usize = 32;

/// A make-up met before, with its parts and reactions.
#[derive(Debug, Clone)]
pub(super) struct KnownMakeUp {
    pub make_up: MakeUp,
    pub resolved: Result<Arc<ResolvedUnit>, MakeUpFault>,
    /// Reactions with the limits of lean of the basis, once they were asked for.
    pub within_lean: Option<Arc<Reactions>>,
    /// Reactions without them, once they were asked for.
    pub any_lean: Option<Arc<Reactions>>,
    /// What acts on base and foot with the limits of lean, and without them, once they were asked for.
    pub forces: [Option<Arc<Forces>>; 2],
    /// What was found on the sites of its bases under the same actions.
    pub on_sites: [KnownSites; 2],
}

/// What was found on sites, in the order in which they were met.
pub(super) type KnownSites = Vec<(Site, Arc<OnSite>)>;

/// So many sites of a make-up are kept: a dragged base is on another one at each step, and most of a plan's bases are on few.
const KEPT_SITES: usize = 256;

impl KnownMakeUp {
    /// What was found on a site.
    pub fn on_site(&self, within_lean: bool, site: &Site) -> Option<&Arc<OnSite>> {
        let known = &self.on_sites[usize::from(!within_lean)];
        known.iter().rev().find(|(known, _)| known == site).map(|(_, found)| found)
    }

    /// Keeps what was found on a site.
    pub fn keep_site(&mut self, within_lean: bool, site: Site, found: Arc<OnSite>) {
        self.on_sites[usize::from(!within_lean)].push((site, found));
    }
}

/// The parts by which make-ups are filed; those that differ by their stops or their foot lie together.
pub(super) type PartsKey = (FamilyId, PartId, PartId, PartId);

/// Everything a unit's checks depend on beside its make-up, surroundings, basis and families.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct UnitInput {
    pub frame: Option<Frame>,
    pub setting_out: Option<SettingOut>,
    pub neighbors: Vec<Neighbor>,
}

#[derive(Debug, Clone)]
pub(super) struct UnitSlot {
    pub input: UnitInput,
    pub known: usize,
    pub placed: Arc<Placed>,
    pub result: Arc<UnitAssessment>,
}

impl UnitSlot {
    /// Whether it was found for this make-up at this place.
    pub fn is_of(&self, known: usize, frame: Option<&Frame>) -> bool {
        self.known == known && self.input.frame.as_ref() == frame
    }
}

/// A unit with everything it reaches.
pub(super) type ServingUnit = (PlacementId, Arc<Vec<ServedReach>>);

#[derive(Debug, Clone)]
pub(super) struct FacadeSlot {
    pub input: Vec<ServingUnit>,
    pub result: Arc<FacadeAssessment>,
}

impl Memo {
    /// A memo that knows nothing yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Index of a make-up among those met before; met for the first time, its parts are looked up.
    pub(super) fn know(&mut self, plan: &Plan, id: PlacementId, make_up: &MakeUp) -> usize {
        if let Some(slot) = self.units.get(&id)
            && self.make_ups[slot.known].make_up.gives_the_same_as(make_up)
        {
            return slot.known;
        }
        let alike = self.by_parts.entry(parts_of(make_up)).or_default();
        let known = alike.iter().find(|&&index| self.make_ups[index].make_up.gives_the_same_as(make_up));
        if let Some(&index) = known {
            return index;
        }
        let index = self.make_ups.len();
        alike.push(index);
        let make_up = MakeUp { drawn_slew_rad: 0.0, ..make_up.clone() };
        let resolved = make_up.resolve(plan).map(Arc::new);
        self.make_ups.push(KnownMakeUp {
            make_up,
            resolved,
            within_lean: None,
            any_lean: None,
            forces: [None, None],
            on_sites: Default::default(),
        });
        index
    }

    /// Drops make-ups that no unit has any more, once there are many of them: a dragged angle makes a new one each step.
    pub(super) fn forget_unused_make_ups(&mut self) {
        let used: std::collections::BTreeSet<usize> = self.units.values().map(|slot| slot.known).collect();
        if self.make_ups.len() <= 2 * used.len() + KEPT_UNUSED {
            return;
        }
        let mut moved = BTreeMap::new();
        let mut kept = Vec::with_capacity(used.len());
        for (index, known) in std::mem::take(&mut self.make_ups).into_iter().enumerate() {
            if used.contains(&index) {
                moved.insert(index, kept.len());
                kept.push(known);
            }
        }
        self.make_ups = kept;
        self.by_parts.clear();
        for (index, known) in self.make_ups.iter().enumerate() {
            self.by_parts.entry(parts_of(&known.make_up)).or_default().push(index);
        }
        for slot in self.units.values_mut() {
            slot.known = moved[&slot.known];
        }
    }

    /// Lets go of the oldest sites of make-ups that have many: once all units are judged, never before, as each needs its own.
    pub(super) fn forget_old_sites(&mut self) {
        for known in self.make_ups.iter_mut().flat_map(|make_up| &mut make_up.on_sites) {
            if known.len() > KEPT_SITES {
                known.drain(..known.len() - KEPT_SITES);
            }
        }
    }

    /// Drops what no longer holds: everything when basis or families changed, places when roofs or obstacles did.
    pub(super) fn renew(&mut self, plan: &Plan) -> Arc<Surroundings> {
        let same_basis = self.basis.as_ref().is_some_and(|known| known.0 == plan.basis && known.1 == plan.code);
        let same_families = self.families.len() == plan.families.len()
            && self
                .families
                .iter()
                .zip(&plan.families)
                .all(|(a, b)| a.0 == b.0 && (Arc::ptr_eq(a.1, b.1) || a.1 == b.1));
        if !same_basis || !same_families {
            *self = Self::default();
            self.basis = Some(Arc::new((plan.basis.clone(), plan.code.clone())));
            self.families.clone_from(&plan.families);
        }
        let same_building = self.roofs == plan.roofs && self.obstacles == plan.obstacles;
        if let (true, Some(known)) = (same_building, &self.surroundings) {
            return Arc::clone(known);
        }
        self.units.clear();
        self.facades.clear();
        self.roofs.clone_from(&plan.roofs);
        self.obstacles.clone_from(&plan.obstacles);
        let surroundings = Arc::new(Surroundings::of(plan));
        self.surroundings = Some(Arc::clone(&surroundings));
        surroundings
    }
}

fn parts_of(make_up: &MakeUp) -> PartsKey {
    (make_up.family, make_up.mast.clone(), make_up.arm.clone(), make_up.base.clone())
}
