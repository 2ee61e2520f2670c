//! A row of the ledger: one unit's figures, looked up in the assessment.

use gantline_plan::assess::anchorage::{BaseUse, Fixed};
use gantline_plan::assess::{Component, Sense, Tally, UnitAssessment};
use gantline_plan::basis::TestDuty;
use gantline_plan::catalog::{FixingKind, PartKind, part_name};
use gantline_plan::document::{Placement, PlacementId, Standing, ThingId};
use gantline_plan::quantity::{UnitSystem, force, length, moment, utilization};

use crate::sight::Sight;
use crate::words;

/// One unit.
#[derive(Debug, Clone, PartialEq)]
pub struct LedgerRow {
    /// The unit.
    pub id: PlacementId,
    /// Its tag.
    pub tag: String,
    /// The edge it stands on, or that it stands free.
    pub edge: String,
    /// From the start of the edge.
    pub along_m: Option<f64>,
    /// Behind the outline.
    pub setback_m: Option<f64>,
    /// Mast, arm and brace.
    pub make_up: String,
    /// The combination that governs, with its level.
    pub combination: String,
    /// Largest upward force at that level.
    pub fz_max_n: Option<f64>,
    /// Largest downward force at that level, negative.
    pub fz_min_n: Option<f64>,
    /// Largest horizontal force at that level.
    pub v_n: Option<f64>,
    /// Largest moment at that level.
    pub m_nm: Option<f64>,
    /// Largest twist at that level.
    pub mz_nm: Option<f64>,
    /// Facade reached from top to foot.
    pub covered_m: Option<f64>,
    /// The tightest clearance, its limit, and whether it is too small.
    pub clearance: Option<(f64, f64, bool)>,
    /// Its base.
    pub base: BaseCells,
    /// What its checks came to.
    pub tally: Tally,
}

/// What the ledger tells of a base.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct BaseCells {
    /// Its kind, in words.
    pub kind: String,
    /// Its fixing, in words.
    pub fixing: String,
    /// What governs, in words.
    pub mode: String,
    /// The largest share of a resistance that is used.
    pub utilization: Option<f64>,
    /// Whether everything could be checked.
    pub all_checked: bool,
    /// Nearest anchor to nearest edge.
    pub to_edge_m: Option<f64>,
    /// Concrete under it.
    pub thickness_m: Option<f64>,
    /// The test that is due, in few words.
    pub test: String,
}

/// A row for each unit of the plan.
pub fn rows(sight: &Sight<'_>) -> Vec<LedgerRow> {
    sight.plan.placements.iter().map(|(&id, placement)| row(sight, id, placement)).collect()
}

fn row(sight: &Sight<'_>, id: PlacementId, placement: &Placement) -> LedgerRow {
    let unit = sight.assessment.units.get(&id);
    let reactions = unit.and_then(|unit| unit.reactions.as_ref());
    let governing = reactions.and_then(|reactions| reactions.governing()).filter(|result| !result.sets.is_empty());
    let worst = |component, sense| reactions?.worst(governing?.level, component, sense).map(|set| set.value);
    let largest = |component| reactions?.largest(governing?.level, component).map(|set| set.value.abs());
    let set_out = unit.and_then(|unit| unit.setting_out);
    let edge = match &placement.stands {
        Standing::OnEdge { edge, .. } => words::name(sight.plan, ThingId::Edge(*edge)),
        Standing::Free { roof, .. } => format!("free on {}", words::name(sight.plan, ThingId::Roof(*roof))),
    };
    LedgerRow {
        id,
        tag: placement.tag.0.clone(),
        edge,
        along_m: set_out.map(|set_out| set_out.from_start_m),
        setback_m: set_out.map(|set_out| set_out.setback_m),
        make_up: make_up(sight, placement),
        combination: governing
            .map_or_else(|| "not computed".to_owned(), |result| format!("{} · {}", result.name, result.level.name())),
        fz_max_n: worst(Component::Fz, Sense::Max),
        fz_min_n: worst(Component::Fz, Sense::Min),
        v_n: largest(Component::V),
        m_nm: largest(Component::M),
        mz_nm: largest(Component::Mz),
        covered_m: unit.map(|unit| unit.serves.iter().map(|served| served.full_height.length_m()).sum()),
        clearance: unit
            .and_then(|unit| unit.tightest().first().map(|pair| (pair.clear_m, pair.limit_m, pair.conflict))),
        base: base_cells(sight, unit.map(AsRef::as_ref)),
        tally: unit.map(|unit| Tally::of(&unit.checks)).unwrap_or_default(),
    }
}

fn base_cells(sight: &Sight<'_>, unit: Option<&UnitAssessment>) -> BaseCells {
    let Some(Ok(resolved)) = unit.map(|unit| unit.resolved.as_ref()) else {
        return BaseCells { kind: "parts missing".to_owned(), ..BaseCells::default() };
    };
    let found = unit.and_then(|unit| unit.base.as_ref());
    let governs = found.and_then(|base| base.governing());
    let kind = resolved.fixing_kind();
    let duty = kind.and_then(|kind| sight.plan.basis.tests.get(&kind));
    BaseCells {
        kind: resolved.base.kind.words().to_owned(),
        fixing: kind.map_or("not known", FixingKind::words).to_owned(),
        mode: governs.map_or_else(|| "nothing computed".to_owned(), mode),
        utilization: found.and_then(|base| base.utilization()),
        all_checked: found.is_some_and(|base| base.is_all_checked()),
        to_edge_m: found.and_then(|base| base.edges.first()).map(|edge| edge.distance_m),
        thickness_m: found.and_then(|base| base.thickness_m),
        test: match duty.map(|duty| &duty.value) {
            None => "not in the basis".to_owned(),
            Some(TestDuty::None) => "before the pour".to_owned(),
            Some(TestDuty::ByEngineer) => "by the engineer".to_owned(),
            Some(TestDuty::Proof(proof)) => format!("proof, {}", force(proof.load_n.value, sight.look.units)),
        },
    }
}

/// What governs; of a foot it is said that it is one.
fn mode(used: &BaseUse) -> String {
    match used.of {
        Fixed::Base => used.look.words().to_owned(),
        Fixed::Foot => format!("foot: {}", used.look.words()),
    }
}

fn make_up(sight: &Sight<'_>, placement: &Placement) -> String {
    let Some(family) = sight.plan.families.get(&placement.make_up.family) else {
        return "family not in the plan".to_owned();
    };
    let parts = [PartKind::Mast, PartKind::Arm, PartKind::Brace];
    parts.map(|kind| part_name(family, &placement.make_up, kind)).join(" · ")
}

impl LedgerRow {
    /// How many findings, the worst kind first: for sorting.
    pub fn worst(&self) -> [usize; 3] {
        [self.tally.blocking, self.tally.caution, self.tally.not_checked]
    }

    /// The whole row as text: what a reader hears and what the filter looks through.
    pub fn text(&self, units: UnitSystem) -> String {
        let figure = |value: Option<f64>, show: fn(f64, UnitSystem) -> String| {
            value.map_or_else(|| "not computed".to_owned(), |value| show(value, units))
        };
        let clearance = self.clearance.map_or_else(
            || "nothing near".to_owned(),
            |(clear_m, limit_m, _)| format!("{} of {}", length(clear_m, units), length(limit_m, units)),
        );
        format!(
            "{} on {}, along {}, setback {}, {}, {}, Fz max {}, Fz min {}, V {}, M {}, Mz {}, reach {}, clearance \
             {clearance}, {}, {}, governed by {}, used {}{}, to edge {}, concrete {}, test {}, {}",
            self.tag,
            self.edge,
            figure(self.along_m, length),
            figure(self.setback_m, length),
            self.make_up,
            self.combination,
            figure(self.fz_max_n, force),
            figure(self.fz_min_n, force),
            figure(self.v_n, force),
            figure(self.m_nm, moment),
            figure(self.mz_nm, moment),
            figure(self.covered_m, length),
            self.base.kind,
            self.base.fixing,
            self.base.mode,
            self.base.utilization.map_or_else(|| "not checked".to_owned(), utilization),
            if self.base.all_checked || self.base.utilization.is_none() { "" } else { ", in part" },
            figure(self.base.to_edge_m, length),
            figure(self.base.thickness_m, length),
            self.base.test,
            words::tally(&self.tally),
        )
    }
}
