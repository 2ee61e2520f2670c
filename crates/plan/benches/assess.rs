//! How long a drag step takes on the plan of three hundred units, and the same plan from nothing.

use std::hint::black_box;

use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::catalog::{Combination, Family};
use gantline_plan::change::{Change, PlacementPatch, apply};
use gantline_plan::document::{PartId, PlacementId, Plan, Standing};
use gantline_plan::file::read;

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

fn drag(bench: &mut Criterion, name: &str, units: usize) {
    let plan = plan(LARGE);
    let chosen: Vec<PlacementId> = plan.placements.keys().copied().skip(40).take(units).collect();
    let steps = dragged(&plan, &chosen);
    let mut memo = Memo::new();
    assess(&plan, &mut memo);
    let mut turn = 0;
    bench.bench_function(name, |bench| {
        bench.iter(|| {
            turn = (turn + 1) % STEPS;
            black_box(assess(&steps[turn], &mut memo))
        });
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
    let start = family.combinations.len() - made.placements.len();
    let bases = family.bases.len();
    let make_ups = family.make_ups(id);
    let changes = made.placements.keys().enumerate().map(|(index, &unit)| {
        let make_up = Some(make_ups[(start + index) * bases].clone());
        Change::SetPlacements(vec![unit], PlacementPatch { make_up, ..PlacementPatch::default() })
    });
    with(&made, &Change::All(changes.collect()))
}

fn benches(bench: &mut Criterion) {
    drag(bench, "assess/drag one of 300 units, with memo", 1);
    drag(bench, "assess/drag 50 of 300 units, with memo", 50);
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
