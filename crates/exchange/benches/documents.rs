//! How long the documents of the plan of three hundred units take, without assessing it.

use std::hint::black_box;
use std::ops::ControlFlow;

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_exchange::documents::{DocumentKind, Imprint, Wanted, make};
use gantline_exchange::paper::words_alone;
use gantline_exchange::report::report;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::file::read;
use gantline_plan::quantity::UnitSystem;

const LARGE: &str = include_str!("../../../demo-projects/large-complex.json");

fn documents(criterion: &mut Criterion) {
    let plan = read(LARGE.as_bytes()).expect("a demonstration plan reads");
    let assessment = assess(&plan, &mut Memo::new());
    let mut group = criterion.benchmark_group("documents of 300 units");
    group.sample_size(10);
    for kind in DocumentKind::ALL {
        let wanted = Wanted { kinds: vec![kind], ..Wanted::all(UnitSystem::Si) };
        group.bench_function(kind.words(), |bencher| {
            bencher.iter(|| {
                let made = make(&plan, &assessment, &wanted, words_alone, &mut |_| ControlFlow::Continue(()));
                black_box(made.expect("the documents can be made"))
            });
        });
    }
    let imprint = Imprint::of(&plan, None);
    group.bench_function("calculation report as blocks", |bencher| {
        bencher.iter(|| black_box(report(&plan, &assessment, &imprint, UnitSystem::Si)));
    });
}

criterion_group!(benches, documents);
criterion_main!(benches);
