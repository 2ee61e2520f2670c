//! How long a drag step takes on the plan of three hundred units, the same plan from nothing, plans of up to three thousand
//! units, and one unit alone.

use std::hint::black_box;

use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use gantline_plan::assess::reaction_phase::reactions;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::catalog::{Combination, Family};
use gantline_plan::change::{Change, PlacementPatch, apply};
use gantline_plan::document::{EdgeEnd, EdgeId, PartId, PlacementId, Plan, Standing, Station};
use gantline_plan::file::read;
use glam::DVec2;

const LARGE: &str = include_str!("../../../demo-projects/large-complex.json");
const SMALL: &str = include_str!("../../../demo-projects/small-roof.json");

/// Steps of a drag, and how far each goes, m.
const STEPS: usize = 60;
const STEP_M: f64 = 0.01;

fn plan(text: &str) -> Plan {
    read(text.as_bytes()).expect("a demonstration plan reads")
}

fn with(plan: &Plan, change: &Change) -> Plan {
    apply(plan, change).expect("the change can be made").plan
}

/// The plan at each step of dragging units along their edges.
fn dragged(plan: &Plan, units: &[PlacementId]) -> Vec<Plan> {
    let step = |index: usize| {
        let changes = units.iter().filter_map(|&id| {
            let Standing::OnEdge { station, edge, setback_m, turn_rad } = &plan.placements[&id].stands else {
                return None;
            };
            let mut station = *station;
            station.distance_m += STEP_M * index as f64;
            let stands = Standing::OnEdge { edge: *edge, station, setback_m: *setback_m, turn_rad: *turn_rad };
            Some(Change::SetStanding(id, stands))
        });
        with(plan, &Change::All(changes.collect()))
    };
    (0..STEPS).map(step).collect()
}

fn drag(bench: &mut Criterion, name: &str, plan: &Plan, units: usize) {
    let chosen: Vec<PlacementId> = plan.placements.keys().copied().skip(40).take(units).collect();
    let steps = dragged(plan, &chosen);
    let mut memo = Memo::new();
    assess(plan, &mut memo);
    let mut turn = 0;
    bench.bench_function(name, |bench| {
        // Each step leads to places that no one has stood on before: what is known of sites from earlier turns would not count.
        bench.iter_batched_ref(
            || {
                turn = turn % (STEPS - 1) + 1;
                (turn, memo.clone())
            },
            |(turn, memo)| black_box(assess(&steps[*turn], memo)),
            BatchSize::PerIteration,
        );
    });
}

fn from_nothing(bench: &mut Criterion, name: &str, plan: &Plan) {
    bench.bench_function(name, |bench| {
        bench.iter_batched_ref(Memo::new, |memo| black_box(assess(plan, memo)), BatchSize::PerIteration);
    });
}

/// The large plan with a mast of its own height on every unit.
fn all_different() -> Plan {
    let plan = plan(LARGE);
    let (_, heron) = plan.families.first_key_value().expect("the plan has families");
    let mut family: Family = heron.as_ref().clone();
    "Family of many masts (invented)".clone_into(&mut family.name);
    let like = family.masts[&PartId::new("mast-190")].clone();
    let combination = Combination {
        mast: PartId::new("mast-190"),
        arm: PartId::new("arm-115-rear"),
        brace: Some(PartId::new("rear-tie-long")),
        rating: None,
    };
    for index in 0..plan.placements.len() {
        let mast = PartId::new(format!("mast-{index}"));
        let mut part = like.clone();
        part.height_m += 0.001 * index as f64;
        family.masts.insert(mast.clone(), part);
        family.combinations.push(Combination { mast, ..combination.clone() });
    }
    let made = with(&plan, &Change::AddFamily(Box::new(family)));
    let (&id, family) = made.families.last_key_value().expect("a family was added");
    let make_ups = family.make_ups(id);
    let changes = made.placements.keys().enumerate().map(|(index, &unit)| {
        let mast = PartId::new(format!("mast-{index}"));
        let make_up = make_ups.iter().find(|make_up| make_up.mast == mast).cloned();
        Change::SetPlacements(vec![unit], PlacementPatch { make_up, ..PlacementPatch::default() })
    });
    with(&made, &Change::All(changes.collect()))
}

/// Roofs of 30 × 20 m in a row, 12 m apart, with so many units of one make-up on each.
const UNITS_ON_A_ROOF: usize = 20;

/// A site of many roofs with these many units in all.
fn site(units: usize) -> Plan {
    let mut large = plan(LARGE);
    let make_up = large.placements.values().next().expect("the plan has units").make_up.clone();
    large.placements.clear();
    large.obstacles.clear();
    large.roofs.clear();
    let roof = |index: usize| {
        let start = DVec2::new(42.0 * (index % 12) as f64, 32.0 * (index / 12) as f64);
        let corners = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)];
        let outline = corners.map(|(x, y)| start + DVec2::new(x, y)).to_vec();
        Change::AddRoof { name: format!("Roof {index}"), level_m: 24.0, outline }
    };
    let built = with(&large, &Change::All((0..units / UNITS_ON_A_ROOF).map(roof).collect()));
    let edges: Vec<EdgeId> = built.edges().map(|place| place.edge().id).collect();
    let place = |index: usize| {
        // Five on each side, each side at least 20 m long.
        let station = Station { from: EdgeEnd::Start, distance_m: 2.0 + 4.0 * (index % 5) as f64 };
        let stands = Standing::OnEdge { edge: edges[index / 5], station, setback_m: 0.9, turn_rad: 0.0 };
        Change::Place { make_up: make_up.clone(), stands, tag: None }
    };
    with(&built, &Change::All((0..units).map(place).collect()))
}

fn one_unit(bench: &mut Criterion) {
    let plan = plan(SMALL);
    let (_, placement) = plan.placements.first_key_value().expect("the plan has units");
    let unit = placement.make_up.resolve(&plan).expect("its parts are known");
    bench.bench_function("assess/one unit, all cases of the small demonstration's basis", |bench| {
        bench.iter(|| black_box(reactions(&unit, &plan.basis, &plan.code)));
    });
}

fn benches(bench: &mut Criterion) {
    drag(bench, "assess/drag one of 300 units, with memo", &plan(LARGE), 1);
    drag(bench, "assess/drag 50 of 300 units, with memo", &plan(LARGE), 50);
    one_unit(bench);
    for units in [300, 1000, 3000] {
        let site = site(units);
        from_nothing(bench, &format!("assess/a site of {units} units from nothing"), &site);
        drag(bench, &format!("assess/drag one unit of a site of {units}, with memo"), &site, 1);
    }
    from_nothing(bench, "assess/300 units of 10 make-ups from nothing", &plan(LARGE));
    from_nothing(bench, "assess/300 different make-ups from nothing", &all_different());
    from_nothing(bench, "assess/the small demonstration plan from nothing", &plan(SMALL));
}

criterion_group! {
    name = assessing;
    config = Criterion::default().sample_size(20);
    targets = benches
}
criterion_main!(assessing);
