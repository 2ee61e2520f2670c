//! A group in its concrete, with everything worked out that does not depend on actions.

use std::collections::BTreeMap;

use super::super::actions::{ActionLevel, GroupActions};
use super::super::around::Around;
use super::super::concrete::Concrete;
use super::super::distances::Distances;
use super::super::fastener::FastenerKind;
use super::super::fault::AnchorageFault;
use super::super::group::Group;
use super::super::line::{Line, Sink};
use super::super::links::{check_around, indices, mask};
use super::super::mode_shares::ModeShares;
use super::super::record::{Mode, NotChecked, Outcome, Record, Verdict};
use super::blow_out::{self, BlowOutRow};
use super::bond::Bond;
use super::cluster::{Cluster, bond_clusters, breakout_clusters};
use super::distances::distances;
use super::edge::EdgeRow;
use super::evaluate::evaluate;
use super::factors::Aci318Factors;
use super::material::Material;
use super::pull_out::Pulled;
use super::steel::Steel;

/// A group of fasteners in its concrete, ready to be asked many times.
///
/// Geometry is kept for every set of fasteners that was in tension or shear once, so that asking again costs no area.
pub struct Prepared<'a> {
    pub(super) group: &'a Group,
    around: &'a dyn Around,
    pub(super) factors: Aci318Factors,
    pub(super) material: Result<Material, NotChecked>,
    pub(super) steel: Steel,
    pub(super) distances: Distances,
    pub(super) pulled: Result<Pulled, NotChecked>,
    /// None for fasteners that are not bonded.
    pub(super) bond: Option<Result<Bond, NotChecked>>,
    pub(super) edges: Vec<EdgeRow>,
    sets: BTreeMap<u64, Met>,
}

/// Geometry of one set of fasteners.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Met {
    pub breakout: Vec<Cluster>,
    pub bond: Vec<Cluster>,
    pub blow_out: Vec<BlowOutRow>,
}

impl<'a> Prepared<'a> {
    /// Works out what depends on place, product, concrete and factors; or names the first number that can't be.
    pub fn new(
        group: &'a Group,
        concrete: &'a Concrete,
        factors: &Aci318Factors,
        around: &'a dyn Around,
    ) -> Result<Self, AnchorageFault> {
        group.check()?;
        concrete.check()?;
        factors.check()?;
        check_around(group, around)?;
        let fastener = &group.fastener;
        let material = Material::new(fastener, concrete, factors);
        let bonded = matches!(fastener.kind, FastenerKind::Bonded);
        let edge = |found: (usize, &_), material: &Material| {
            EdgeRow::new((group, concrete, around), (material, factors), found)
        };
        let seen = |e: &&super::super::around::EdgeSeen| e.distance_m.iter().any(|c| c.is_finite());
        let edges = around.edges().iter().enumerate().filter(|(_, e)| seen(e));
        Ok(Self {
            steel: Steel::new(group, factors),
            distances: distances(group, around),
            pulled: material.and_then(|m| Pulled::new(fastener, &m)),
            bond: bonded.then(|| material.and_then(|m| Bond::new(fastener, &m))),
            edges: material.map_or_else(|_| Vec::new(), |m| edges.map(|e| edge(e, &m)).collect()),
            sets: BTreeMap::new(),
            factors: *factors,
            group,
            around,
            material,
        })
    }

    /// The worst mode under these actions. Allocates only for a set of fasteners that was never in tension or shear before.
    pub fn judge(&mut self, actions: &GroupActions) -> Result<Verdict, AnchorageFault> {
        let mut verdict = Verdict::NOTHING;
        self.run(actions, &mut verdict)?;
        Ok(verdict)
    }

    /// The worst of each mode by itself under these actions; allocates as rarely as `judge`.
    pub fn shares(&mut self, actions: &GroupActions) -> Result<ModeShares, AnchorageFault> {
        let mut shares = ModeShares::NOTHING;
        self.run(actions, &mut shares)?;
        Ok(shares)
    }

    /// Every mode under these actions in full, in the order of `Mode::ALL`. The outcomes are those of `judge`, to the bit.
    pub fn records(&mut self, actions: &GroupActions) -> Result<Vec<Record>, AnchorageFault> {
        let mut records = Vec::new();
        self.run(actions, &mut records)?;
        records.sort_by_key(|record| record.mode);
        Ok(records)
    }

    fn run(&mut self, actions: &GroupActions, sink: &mut impl Sink) -> Result<(), AnchorageFault> {
        let count = self.group.anchors_m.len();
        actions.check(count)?;
        if actions.level == ActionLevel::Service {
            for mode in Mode::ALL {
                sink.take(&Line::only(mode, "ACI 318-19 17.5.1", Outcome::NotChecked(NotChecked::NotDesignLevel)));
            }
            return Ok(());
        }
        let pulled = mask(count, |i| actions.tension_n[i] > 0.0);
        let sheared = mask(count, |i| actions.shear_of_n(i) > 0.0);
        self.meet(pulled);
        self.meet(sheared);
        let none = Met::default();
        let met = [pulled, sheared].map(|set| self.sets.get(&set).unwrap_or(&none));
        evaluate(self, met, actions, sink);
        Ok(())
    }

    /// Works out the geometry of a set that was never met before.
    fn meet(&mut self, set: u64) {
        if set == 0 || self.material.is_err() || self.sets.contains_key(&set) {
            return;
        }
        let (group, around) = (self.group, self.around);
        let members = indices(set);
        let bond = match self.bond {
            Some(Ok(bond)) => bond_clusters(group, around, &members, bond.reach_m),
            Some(Err(_)) | None => Vec::new(),
        };
        let headed = matches!(group.fastener.kind, FastenerKind::CastIn(_));
        let blow_out = if headed { blow_out::rows(group, around, &members) } else { Vec::new() };
        let breakout = breakout_clusters(group, around, &members);
        self.sets.insert(set, Met { breakout, bond, blow_out });
    }
}
