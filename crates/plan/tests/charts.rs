//! Curves against slew and inner forces along members, held against the extremes of the envelope and against equilibrium.

use gantline_plan::assess::{
    Assessment, Component, Cut, DiagramSlew, Diagrams, Member, Memo, NoDiagrams, ReactionSet, Sense, against_slew,
    assess, diagrams, try_make_ups,
};
use gantline_plan::basis::{CaseLoad, DesignCode, LoadBasis, presets};
use gantline_plan::catalog::{BraceKind, Family, MakeUp, SlewStops};
use gantline_plan::change::{Change, History};
use gantline_plan::document::{EdgeEnd, PlacementId, Standing, Station, ThingId};
use glam::{DMat3, DVec2, DVec3};

fn families() -> Vec<Family> {
    [include_str!("../../../assets/families/heron.json"), include_str!("../../../assets/families/tern.json")]
        .map(|text| serde_json::from_str(text).unwrap())
        .into()
}

/// A roof 30 × 20 m with one unit of each listed make-up of a family on its south edge, 1 m apart.
fn plan_with(family: Family, change: impl Fn(&mut MakeUp)) -> (History, Vec<PlacementId>) {
    let mut history =
        History::new(gantline_plan::document::Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode()));
    history.change("family", &Change::AddFamily(Box::new(family))).unwrap();
    let outline = [(0.0, 0.0), (60.0, 0.0), (60.0, 20.0), (0.0, 20.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    history.change("roof", &Change::AddRoof { name: "Roof".into(), level_m: 24.0, outline }).unwrap();
    let plan = history.plan().clone();
    let edge = plan.edges().next().unwrap().edge().id;
    let (&id, family) = plan.families.iter().next().unwrap();
    let mut units = Vec::new();
    for (index, mut make_up) in family.make_ups(id).into_iter().step_by(3).enumerate() {
        change(&mut make_up);
        let station = Station { from: EdgeEnd::Start, distance_m: 1.0 + index as f64 };
        let stands = Standing::OnEdge { edge, station, setback_m: 0.8, turn_rad: 0.0 };
        let done = history.change("place", &Change::Place { make_up, stands, tag: None }).unwrap();
        let ThingId::Placement(id) = done.made[0] else { panic!("a unit was placed") };
        units.push(id);
    }
    (history, units)
}

fn sets(assessment: &Assessment, id: PlacementId) -> Vec<ReactionSet> {
    let reactions = assessment.units[&id].reactions.as_ref().unwrap();
    reactions.combinations.iter().flat_map(|combination| combination.sets.clone()).collect()
}

/// The curve's own law: no point lies beyond the extreme over all slews, and at the extreme's slew the curve touches it.
#[test]
fn each_curve_touches_its_extreme_and_never_passes_it() {
    for family in families() {
        let (history, units) = plan_with(family, |make_up| {
            make_up.slew_stops = SlewStops::Between { from_rad: -1.9, to_rad: 2.3 };
        });
        let assessment = assess(history.plan(), &mut Memo::new());
        for id in units {
            let curves = against_slew(history.plan(), &assessment, id);
            for set in sets(&assessment, id) {
                let stretches = curves[set.combination].stretches.as_ref().unwrap();
                let values: Vec<f64> =
                    stretches.iter().flatten().filter_map(|at| at.value(set.component, set.sense)).collect();
                let found = match set.sense {
                    Sense::Max => values.iter().copied().fold(f64::NEG_INFINITY, f64::max),
                    Sense::Min => values.iter().copied().fold(f64::INFINITY, f64::min),
                };
                // The search refines slews to 1e-9 rad; what is flat there differs in rounding only.
                let hair = 1e-6 * set.concurrent.iter().map(|c| c.abs()).fold(1.0, f64::max);
                assert!((found - set.value).abs() < hair, "{} {found} {}", set.component.symbol(), set.value);
            }
        }
    }
}

fn at_foot(found: &Diagrams, member: Member) -> Cut {
    found.members.iter().find(|m| m.member == member).unwrap().cuts[0]
}

/// Equilibrium: at the foot of the mast the inner forces are what the unit does to its base, turned into the arm's axes.
/// Mast axes: x up, y the arm's y, z toward the tail. Holds where the brace ends on the mast.
#[test]
fn the_mast_ends_in_the_reactions_of_its_base() {
    let mut compared = 0;
    for family in families() {
        let (history, units) = plan_with(family, |_| {});
        let assessment = assess(history.plan(), &mut Memo::new());
        for id in units {
            let unit = assessment.units[&id].resolved.as_ref().unwrap();
            let kind = unit.brace.as_ref().map(|brace| brace.kind);
            if !matches!(kind, None | Some(BraceKind::RearToMast { .. } | BraceKind::Front { .. })) {
                continue;
            }
            for set in sets(&assessment, id) {
                let asked = (set.component, set.sense);
                let Ok(found) = diagrams(history.plan(), &assessment, id, set.combination, asked, DiagramSlew::Worst)
                else {
                    continue;
                };
                if strains_elsewhere(&history.plan().basis, set.combination) {
                    continue;
                }
                let turn = DMat3::from_rotation_z(-set.slew_rad);
                let [x, y, z, mx, my, mz] = set.concurrent;
                let (force, moment) = (turn * DVec3::new(x, y, z), turn * DVec3::new(mx, my, mz));
                let cut = at_foot(&found, Member::Mast);
                let expected = [force.z, force.y, -force.x, moment.z, moment.y, -moment.x];
                let inner =
                    [cut.axial_n, cut.shear_y_n, cut.shear_z_n, cut.torsion_nm, cut.moment_y_nm, cut.moment_z_nm];
                for (found, expected) in inner.into_iter().zip(expected) {
                    assert!((found - expected).abs() < 1e-6 * force.length().max(1.0), "{found} {expected}");
                }
                compared += 1;
            }
        }
    }
    assert!(compared > 50, "{compared}");
}

/// Wind and tethers act beside the ropes.
fn strains_elsewhere(basis: &LoadBasis, combination: usize) -> bool {
    let terms = &basis.combinations[combination].terms;
    terms.iter().any(|term| !matches!(basis.cases[&term.case].load, CaseLoad::Rope { .. }))
}

/// The tip is a free end: there the arm carries the rope alone, so its shear is the rope's pull across it.
#[test]
fn the_arm_carries_the_rope_at_its_tip() {
    let (history, units) = plan_with(families().remove(0), |_| {});
    let assessment = assess(history.plan(), &mut Memo::new());
    let found =
        diagrams(history.plan(), &assessment, units[0], 0, (Component::M, Sense::Max), DiagramSlew::Worst).unwrap();
    let arm = found.members.iter().find(|m| m.member == Member::Arm).unwrap();
    let before_tip = arm.cuts.last().unwrap();
    let pull = DMat3::from_rotation_z(-found.slew_rad) * found.pulls_n[0];
    assert!((before_tip.shear_z_n - pull.z).abs() < 1e-6 && (before_tip.axial_n - pull.x).abs() < 1e-6);
}

#[test]
fn a_unit_that_is_not_there_has_no_diagrams() {
    let (history, _) = plan_with(families().remove(0), |_| {});
    let assessment = assess(history.plan(), &mut Memo::new());
    let nobody = PlacementId::from_number(9999);
    let asked = (Component::M, Sense::Max);
    assert_eq!(diagrams(history.plan(), &assessment, nobody, 0, asked, DiagramSlew::Worst), Err(NoDiagrams::NoUnit));
    assert!(against_slew(history.plan(), &assessment, nobody).is_empty());
}

/// A trial says what the whole plan says once the make-up is really changed.
#[test]
fn a_trial_foretells_the_checks_of_the_changed_plan() {
    let (mut history, units) = plan_with(families().remove(0), |_| {});
    let plan = history.plan().clone();
    let (&family, data) = plan.families.iter().next().unwrap();
    let make_ups: Vec<MakeUp> = data.make_ups(family).into_iter().step_by(5).collect();
    let id = units[2];
    let tried = try_make_ups(&plan, id, &make_ups);
    for (make_up, checks) in make_ups.into_iter().zip(tried) {
        let patch = gantline_plan::change::PlacementPatch { make_up: Some(make_up), ..Default::default() };
        history.change("try", &Change::SetPlacements(vec![id], patch)).unwrap();
        assert_eq!(assess(history.plan(), &mut Memo::new()).units[&id].checks, checks);
    }
}
