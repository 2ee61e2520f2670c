//! How long drawing takes: a plan view of 300 units on 12 facades, near and far, and one section.

use std::collections::BTreeSet;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_drawing::label::LabelPlaces;
use gantline_drawing::plan_view::plan_view_keeping;
use gantline_drawing::{OverlaySet, PlanViewOptions, Scale, SectionOptions, section};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::change::{Change, apply};
use gantline_plan::document::Plan;
use glam::DVec2;

#[allow(dead_code, reason = "the sample is shared with tests that use more of it")]
#[path = "../tests/views/sample.rs"]
mod sample;

/// Three roofs of four edges with 25 units each.
fn three_hundred_units() -> Plan {
    let mut plan = sample::empty_plan();
    for block in 0..3 {
        let left = 130.0 * f64::from(block);
        let outline = [(0.0, 0.0), (104.0, 0.0), (104.0, 104.0), (0.0, 104.0)];
        let outline = outline.map(|(x, y)| DVec2::new(left + x, y)).to_vec();
        plan = apply(&plan, &Change::AddRoof { name: String::new(), level_m: 20.0, outline }).expect("sound").plan;
    }
    let edges: Vec<_> = plan.edges().map(|place| place.edge().id).collect();
    let parts = ["mast-190", "arm-115-rear", "rear-tie-long", "floor-socket"];
    let make_up = sample::make_up(&plan, "Heron", parts);
    for (row, edge) in edges.into_iter().enumerate() {
        for place in 0..25 {
            let tag = format!("B-{:03}", row * 25 + place + 1);
            sample::place(&mut plan, make_up.clone(), edge, 4.0 + 4.0 * place as f64, 0.85, &tag);
        }
    }
    plan
}

fn views(c: &mut Criterion) {
    let plan = three_hundred_units();
    let assessment = assess(&plan, &mut Memo::new());
    for (name, one_to, shown) in [
        ("reach, 1 to 250", 250.0, OverlaySet::Reach.shown()),
        ("clear zones, 1 to 250", 250.0, OverlaySet::ClearZones.shown()),
        ("all, 1 to 250", 250.0, OverlaySet::All.shown()),
        ("all, 1 to 1000", 1000.0, OverlaySet::All.shown()),
    ] {
        let scale = Scale::one_to(one_to);
        let options = PlanViewOptions { shown, selected: BTreeSet::new(), ..PlanViewOptions::at(scale) };
        let before = plan_view_keeping(&plan, &assessment, &options, &LabelPlaces::new()).places;
        c.bench_function(&format!("plan view of 300 units, {name}"), |b| {
            b.iter(|| plan_view_keeping(black_box(&plan), &assessment, &options, &before));
        });
    }
    let id = *plan.placements.keys().next().expect("units");
    let options = SectionOptions::at(Scale::one_to(25.0));
    c.bench_function("section", |b| b.iter(|| section(black_box(&plan), &assessment, id, &options)));
}

criterion_group!(benches, views);
criterion_main!(benches);
