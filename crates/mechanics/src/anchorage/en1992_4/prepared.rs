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
use super::super::product::PullOut;
use super::super::record::{Mode, NotChecked, Outcome, Record, Verdict};
use super::bars::Bars;
use super::blow_out::{self, BlowOutRow};
use super::bond::Bond;
use super::cell::{Cell, cells};
use super::cluster::{Cluster, Sizes, clusters};
use super::distances::distances;
use super::edge::EdgeRow;
use super::evaluate::evaluate;
use super::factors::En1992Factors;
use super::material::{ConcreteTerms, concrete_terms};
use super::pry_out::PryOut;
use super::pull_out::pull_out;
use super::splitting::Splitting;
use super::steel::Steel;

/// A group of fasteners in its concrete, ready to be asked many times.
///
/// Geometry is kept for every set of fasteners that was in tension or shear once, so that asking again costs no area.
pub struct Prepared<'a> {
    pub(super) group: &'a Group,
    pub(super) concrete: &'a Concrete,
    around: &'a dyn Around,
    pub(super) terms: Result<ConcreteTerms, NotChecked>,
    pub(super) steel: Result<Steel, NotChecked>,
    pub(super) distances: Distances,
    /// γ_Mc of tension.
    pub(super) gamma_tension: Result<f64, NotChecked>,
    /// γ_Mc of shear.
    pub(super) gamma_shear: f64,
    pub(super) pull_out: Result<PullOut, NotChecked>,
    pub(super) bond: Option<Result<Bond, NotChecked>>,
    pub(super) splitting: Result<Splitting, NotChecked>,
    pub(super) pry_out: Result<PryOut, NotChecked>,
    pub(super) edges: Vec<EdgeRow>,
    pub(super) tension_bars: Option<Result<Bars, NotChecked>>,
    pub(super) shear_bars: Option<(usize, Result<Bars, NotChecked>)>,
    tension_sets: BTreeMap<u64, TensionSet>,
    shear_sets: BTreeMap<u64, ShearSet>,
    bond_sets: BTreeMap<(u64, u64), BondSet>,
}

/// Geometry of one set in tension.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct TensionSet {
    pub cone: Vec<Cluster>,
    pub splitting: Vec<Cluster>,
    pub blow_out: Vec<BlowOutRow>,
}

/// Geometry of one set in shear.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct ShearSet {
    pub cone: Vec<Cluster>,
    pub cells: Vec<Cell>,
}

/// Geometry of bonded fasteners of one set at one ψ_sus.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct BondSet {
    pub clusters: Vec<Cluster>,
    pub cells: Vec<Cell>,
}

/// The geometry that one set of actions meets.
pub(super) struct Met<'p> {
    pub tension: &'p TensionSet,
    pub shear: &'p ShearSet,
    pub tension_bond: &'p BondSet,
    pub shear_bond: &'p BondSet,
}

impl<'a> Prepared<'a> {
    /// Works out what depends on place, product, concrete and factors; or names the first number that can't be.
    pub fn new(
        group: &'a Group,
        concrete: &'a Concrete,
        factors: &En1992Factors,
        around: &'a dyn Around,
    ) -> Result<Self, AnchorageFault> {
        group.check()?;
        concrete.check()?;
        factors.check()?;
        check_around(group, around)?;
        check_shear_bars(concrete, around)?;
        let fastener = &group.fastener;
        let terms = concrete_terms(fastener, concrete, around.thickness_m());
        let bond =
            matches!(fastener.kind, FastenerKind::Bonded).then(|| terms.and_then(|terms| Bond::new(fastener, &terms)));
        let pull_out = terms.and_then(|terms| match bond {
            Some(bond) => bond.map(|bond| PullOut::Characteristic(bond.one_n(1.0))),
            None => pull_out(fastener, &terms),
        });
        let splitting = terms
            .and_then(|terms| pull_out.and_then(|one| Splitting::new(fastener, &terms, around.thickness_m(), one)));
        let has_bars = concrete.tension_bars.is_some() || concrete.shear_bars.is_some();
        Ok(Self {
            distances: distances(group, around),
            steel: Steel::new(group, concrete.fck_pa, factors),
            gamma_tension: gamma_inst(group).map(|inst| factors.gamma_c * inst),
            gamma_shear: factors.gamma_c,
            pry_out: PryOut::new(fastener, has_bars, factors.gamma_c),
            edges: edge_rows(group, concrete, around, terms.ok().as_ref()),
            tension_bars: concrete
                .tension_bars
                .map(|t| Bars::new(&t.bars, factors.gamma_ms_re, 0.75 * fastener.embedment_m)),
            shear_bars: concrete.shear_bars.map(|s| (s.edge, shear_bars(&s, group, around, factors))),
            tension_sets: BTreeMap::new(),
            shear_sets: BTreeMap::new(),
            bond_sets: BTreeMap::new(),
            group,
            concrete,
            around,
            terms,
            bond,
            pull_out,
            splitting,
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
                sink.take(&Line::only(mode, "EN 1992-4", Outcome::NotChecked(NotChecked::NotDesignLevel)));
            }
            return Ok(());
        }
        let pulled = mask(count, |i| actions.tension_n[i] > 0.0);
        let sheared = mask(count, |i| actions.shear_of_n(i) > 0.0);
        let psi_sus = self.psi_sus(actions);
        self.meet(pulled, sheared, psi_sus);
        let none = (TensionSet::default(), ShearSet::default(), BondSet::default());
        let met = Met {
            tension: self.tension_sets.get(&pulled).unwrap_or(&none.0),
            shear: self.shear_sets.get(&sheared).unwrap_or(&none.1),
            tension_bond: self.bond_sets.get(&(pulled, psi_sus.to_bits())).unwrap_or(&none.2),
            shear_bond: self.bond_sets.get(&(sheared, psi_sus.to_bits())).unwrap_or(&none.2),
        };
        evaluate(self, &met, (actions, psi_sus), sink);
        Ok(())
    }

    /// ψ_sus of bonded fasteners, 1 where it has no meaning.
    fn psi_sus(&self, actions: &GroupActions) -> f64 {
        match (self.bond, actions.sustained_share) {
            (Some(Ok(bond)), Some(share)) => bond.psi_sus(share),
            _ => 1.0,
        }
    }

    /// Works out the geometry that was never met before.
    fn meet(&mut self, pulled: u64, sheared: u64, psi_sus: f64) {
        let Ok(_) = self.terms else { return };
        let (group, around) = (self.group, self.around);
        let sizes = Sizes::cone(group.fastener.embedment_m);
        if pulled != 0 && !self.tension_sets.contains_key(&pulled) {
            let set = indices(pulled);
            let splitting = self
                .splitting
                .map(|s| clusters(group, around, &set, s.sizes(group.fastener.embedment_m)))
                .unwrap_or_default();
            let cone = clusters(group, around, &set, sizes);
            let blow_out = blow_out::rows(group, around, &set);
            self.tension_sets.insert(pulled, TensionSet { cone, splitting, blow_out });
        }
        if sheared != 0 && !self.shear_sets.contains_key(&sheared) {
            let set = indices(sheared);
            let cone = clusters(group, around, &set, sizes);
            let cells = cells(group, around, &set, 0.5 * sizes.spacing_cr_m);
            self.shear_sets.insert(sheared, ShearSet { cone, cells });
        }
        let Some(Ok(bond)) = self.bond else { return };
        for set_mask in [pulled, sheared] {
            let key = (set_mask, psi_sus.to_bits());
            if set_mask != 0 && !self.bond_sets.contains_key(&key) {
                let (set, sizes) = (indices(set_mask), bond.sizes(psi_sus));
                let cells = cells(group, around, &set, 0.5 * sizes.spacing_cr_m);
                self.bond_sets.insert(key, BondSet { clusters: clusters(group, around, &set, sizes), cells });
            }
        }
    }
}

fn check_shear_bars(concrete: &Concrete, around: &dyn Around) -> Result<(), AnchorageFault> {
    match concrete.shear_bars {
        Some(bars) if bars.edge >= around.edges().len() => {
            Err(AnchorageFault::NoSuch { field: "shear bars' edge", index: bars.edge, count: around.edges().len() })
        }
        Some(_) | None => Ok(()),
    }
}

/// γ_inst: 1 for cast-in fasteners without a product value; missing for post-installed ones.
fn gamma_inst(group: &Group) -> Result<f64, NotChecked> {
    match group.fastener.product.en.gamma_inst {
        Some(value) => Ok(value),
        None if group.fastener.is_post_installed() => Err(NotChecked::MissingData { field: "gamma_inst" }),
        None => Ok(1.0),
    }
}

fn edge_rows(group: &Group, concrete: &Concrete, around: &dyn Around, terms: Option<&ConcreteTerms>) -> Vec<EdgeRow> {
    let Some(terms) = terms else { return Vec::new() };
    around
        .edges()
        .iter()
        .enumerate()
        .filter(|(_, edge)| edge.distance_m.iter().any(|c| c.is_finite()))
        .map(|edge| EdgeRow::new(group, (around, terms), edge, concrete.edge_bars))
        .collect()
}

fn shear_bars(
    bars: &super::super::supplementary::ShearBars,
    group: &Group,
    around: &dyn Around,
    factors: &En1992Factors,
) -> Result<Bars, NotChecked> {
    let all: Vec<usize> = (0..group.anchors_m.len()).collect();
    let c1 = around.edges().get(bars.edge).map_or(0.0, |edge| edge.nearest_m(&all));
    Bars::new(&bars.bars, factors.gamma_ms_re, 0.75 * c1)
}
