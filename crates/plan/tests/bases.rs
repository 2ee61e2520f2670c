//! Bases at their places: what the concrete left around them, other bases and the kind of base make of the same actions.

use std::sync::Arc;

use gantline_plan::assess::anchorage::{BaseAssessment, Fixed, Look, Mode, Used};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::document::{PartId, PlacementId, Plan, Standing, Station, WallConcrete};

fn small() -> Plan {
    gantline_plan::file::read(include_bytes!("../../../demo-projects/small-roof.json")).unwrap()
}

fn large() -> Plan {
    gantline_plan::file::read(include_bytes!("../../../demo-projects/large-complex.json")).unwrap()
}

/// The plan with its first unit only.
fn alone(mut plan: Plan) -> (Plan, PlacementId) {
    let id = *plan.placements.keys().next().unwrap();
    plan.placements.retain(|other, _| *other == id);
    (plan, id)
}

fn stand(plan: &mut Plan, id: PlacementId, along_m: f64, setback_m: f64) {
    let Standing::OnEdge { station: Station { distance_m, .. }, setback_m: back, .. } =
        &mut plan.placements.get_mut(&id).unwrap().stands
    else {
        panic!("on an edge")
    };
    (*distance_m, *back) = (along_m, setback_m);
}

fn base_of(plan: &Plan, id: PlacementId) -> Arc<BaseAssessment> {
    Arc::clone(assess(plan, &mut Memo::new()).units[&id].base.as_ref().unwrap())
}

fn share(base: &BaseAssessment, look: Look) -> f64 {
    let found = base.uses.iter().find(|used| used.of == Fixed::Base && used.look == look);
    found.and_then(gantline_plan::assess::anchorage::BaseUse::share).unwrap()
}

const EDGE: Look = Look::Anchors(Mode::ConcreteEdge);
const CONE: Look = Look::Anchors(Mode::ConcreteCone);

#[test]
fn a_base_nearer_to_the_edge_uses_more_of_its_concrete() {
    let (mut plan, id) = alone(small());
    let mut before: Option<(f64, f64, f64)> = None;
    for setback_m in [0.9, 0.7, 0.55, 0.45] {
        stand(&mut plan, id, 6.0, setback_m);
        let base = base_of(&plan, id);
        // The anchors stand 0.185 m before the mast axis.
        assert!((base.edges[0].distance_m - (setback_m - 0.185)).abs() < 1e-9);
        let now = (share(&base, EDGE), share(&base, CONE), share(&base, Look::Anchors(Mode::SteelTension)));
        if let Some(before) = before {
            assert!(now.0 > before.0 && now.1 >= before.1 - 1e-3, "{setback_m}: {now:?} after {before:?}");
            assert!((now.2 - before.2).abs() < 1e-3, "steel knows no edge");
        }
        before = Some(now);
    }
}

#[test]
fn another_base_beside_takes_its_part_of_the_cone() {
    let (mut plan, id) = alone(small());
    stand(&mut plan, id, 6.0, 0.9);
    let by_itself = share(&base_of(&plan, id), CONE);
    let whole = small();
    let other = *whole.placements.keys().nth(1).unwrap();
    plan.placements.insert(other, whole.placements[&other].clone());
    stand(&mut plan, other, 6.7, 0.9);
    let beside = share(&base_of(&plan, id), CONE);
    assert!(beside > 1.05 * by_itself, "{beside} after {by_itself}");
}

#[test]
fn a_thinner_slab_is_punched_sooner_and_one_without_data_is_not_checked() {
    let (mut plan, id) = alone(small());
    stand(&mut plan, id, 6.0, 0.9);
    let thick = share(&base_of(&plan, id), Look::PunchesDown);
    let roof = plan.roofs.values_mut().next().unwrap();
    roof.slab.thickness_m = 0.26;
    let thin = share(&base_of(&plan, id), Look::PunchesDown);
    assert!(thin > 1.1 * thick, "{thin} after {thick}");
    plan.roofs.values_mut().next().unwrap().slab.cylinder_strength_pa = None;
    let base = base_of(&plan, id);
    assert!(!base.holds());
    for look in [Look::PunchesDown, CONE, Look::PlatePresses] {
        let used = base.uses.iter().find(|used| used.look == look).unwrap();
        assert!(matches!(&used.outcome, Used::NotChecked(_)), "{look:?} {:?}", used.outcome);
    }
}

#[test]
fn a_thin_wall_is_left_to_the_engineer_and_its_root_is_told_what_comes() {
    let (mut plan, id) = alone(small());
    let placement = plan.placements.get_mut(&id).unwrap();
    placement.make_up.base = PartId::new("wall-socket");
    // The demonstration's parapet is 0.2 m thick on the outline and the mast stands 0.15 m behind its face.
    stand(&mut plan, id, 6.0, 0.35);
    for roof in plan.roofs.values_mut() {
        for ring in roof.rings_mut() {
            for edge in ring.edges_mut() {
                let concrete =
                    WallConcrete { cylinder_strength_pa: Some(30e6), specified_strength_pa: None, cracked: true };
                edge.parapet.concrete = Some(concrete);
            }
        }
    }
    let base = base_of(&plan, id);
    let cone = base.uses.iter().find(|used| used.look == CONE).unwrap();
    assert!(matches!(&cone.outcome, Used::NotChecked(what) if what.contains("structural engineer")), "{cone:?}");
    assert!(share(&base, Look::Anchors(Mode::SteelTension)) > 0.0);
    let root = &base.handed_on[0];
    let assessment = assess(&plan, &mut Memo::new());
    let reactions = assessment.units[&id].reactions.as_ref().unwrap();
    let sets = reactions.combinations[root.combination].sets.iter();
    let set = sets.filter(|set| set.concurrent[2] == root.action[2]).find(|set| set.concurrent[3] == root.action[3]);
    let set = set.unwrap();
    // By statics: seen from the wall's middle, e + t/2 farther out, the moment is M_y + (e + t/2)·F_z.
    let out_m = 0.15 + plan.edges().next().unwrap().edge().parapet.thickness_m / 2.0;
    assert!((root.action[4] - (set.concurrent[4] + out_m * set.concurrent[2])).abs() < 1e-6 * root.action[4].abs());
}

#[test]
fn a_plinth_has_edges_of_its_own_and_raises_the_unit() {
    let (mut plan, id) = alone(large());
    let tern =
        plan.families.iter().find(|(_, family)| family.bases.contains_key(&PartId::new("plinth-socket"))).unwrap();
    let (family, masts) = (*tern.0, tern.1.make_ups(*tern.0));
    let make_up = masts.into_iter().find(|made| made.base == PartId::new("plinth-socket") && made.brace.is_none());
    let mut make_up = make_up.unwrap_or_else(|| {
        let all = plan.families[&family].make_ups(family);
        all.into_iter().find(|made| made.base == PartId::new("plinth-socket")).unwrap()
    });
    make_up.family = family;
    plan.placements.get_mut(&id).unwrap().make_up = make_up;
    stand(&mut plan, id, 6.0, 1.2);
    let assessment = assess(&plan, &mut Memo::new());
    let unit = &assessment.units[&id];
    let base = unit.base.as_ref().unwrap();
    // Plinth 1.10 m square, anchors at 0.175 m: 0.375 m to each side.
    assert!(base.edges.iter().all(|edge| (edge.distance_m - 0.375).abs() < 1e-9), "{:?}", base.edges);
    let frame = unit.frame.unwrap();
    assert!((frame.level_m - plan.roofs[&frame.roof].level_m - 0.35).abs() < 1e-12);
    // The root of the plinth is bent by the shear too: M + V·p.
    let root = base.handed_on.iter().find(|handed| handed.at.contains("plinth")).unwrap();
    assert!(root.action[3].hypot(root.action[4]) > 0.0);
}

#[test]
fn a_foot_of_its_own_is_judged_by_what_pulls_it() {
    let plan = large();
    let assessment = assess(&plan, &mut Memo::new());
    let footed = assessment.units.values().find(|unit| unit.resolved.as_ref().is_ok_and(|unit| unit.foot.is_some()));
    let unit = footed.unwrap();
    let (base, reactions) = (unit.base.as_ref().unwrap(), unit.reactions.as_ref().unwrap());
    let pulled = base.uses.iter().filter(|used| used.of == Fixed::Foot);
    let steel = pulled.clone().find(|used| used.look == Look::Anchors(Mode::SteelTension)).unwrap();
    let state = steel.state.as_ref().unwrap();
    let set = &reactions.combinations[state.combination];
    let uplift_n = set.foot.iter().map(|extreme| extreme.concurrent.z).fold(0.0, f64::max);
    assert!((state.action[2] - uplift_n).abs() < 1e-6 * uplift_n && uplift_n > 1e3);
    // All that pulls is held: the anchors' tensions less the pressure make the uplift.
    assert!(state.tension_n.iter().sum::<f64>() >= uplift_n * (1.0 - 1e-9));
    assert!(pulled.count() > 10);
}
