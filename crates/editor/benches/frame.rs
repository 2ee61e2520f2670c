//! How long a frame of the editor takes without the GPU's part, on the plan of three hundred units: panels, sheets and
//! their triangles.

use std::path::PathBuf;

use criterion::{Criterion, criterion_group, criterion_main};
use egui::{Event, Modifiers, PointerButton, Pos2, RawInput, Rect, Vec2, pos2};
use gantline_editor::document::picker::Scripted;
use gantline_editor::preferences::Store;
use gantline_editor::{App, Start};
use gantline_exchange::paper::words_alone;

/// Frames in which the window comes to rest.
const TO_REST: usize = 20;
/// A place on the main sheet.
const PLACE: Pos2 = pos2(420.0, 420.0);

struct Window {
    ctx: egui::Context,
    app: App,
    time_s: f64,
}

impl Window {
    fn with_three_hundred_units() -> Self {
        let plan = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../demo-projects/large-complex.json");
        let start = Start {
            store: Store::default(),
            picker: Box::new(Scripted::with([])),
            printer: words_alone,
            wake: Box::new(|| ()),
            open: Some(plan),
        };
        let (ctx, mut app) = (egui::Context::default(), App::new(start));
        app.dress(&ctx);
        let mut window = Self { ctx, app, time_s: 0.0 };
        for _ in 0..TO_REST {
            window.frame(Vec::new());
        }
        assert_eq!(window.app.document().map(|document| document.plan().placements.len()), Some(300));
        window
    }

    /// One frame; gives the number of its triangles' corners.
    fn frame(&mut self, events: Vec<Event>) -> usize {
        self.time_s += 1.0 / 60.0;
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, Vec2::new(1280.0, 800.0))),
            time: Some(self.time_s),
            events,
            ..RawInput::default()
        };
        let app = &mut self.app;
        let mut output = self.ctx.run_ui(input, |ui| app.show(ui));
        let shapes = std::mem::take(&mut output.shapes);
        let drawn = self.ctx.tessellate(shapes, output.pixels_per_point);
        output.drop_without_applying_deltas();
        drawn.len()
    }
}

fn frames(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("300 units in view");
    let mut window = Window::with_three_hundred_units();
    let mut turn = 0.0;
    group.bench_function("the pointer moves", |bench| {
        bench.iter(|| {
            turn += 1.0_f32;
            window.frame(vec![Event::PointerMoved(PLACE + Vec2::angled(turn) * 60.0)])
        });
    });
    let middle = |at, pressed| Event::PointerButton {
        pos: at,
        button: PointerButton::Middle,
        pressed,
        modifiers: Modifiers::NONE,
    };
    window.frame(vec![Event::PointerMoved(PLACE)]);
    window.frame(vec![middle(PLACE, true)]);
    group.bench_function("the sheet pans", |bench| {
        bench.iter(|| {
            turn += 1.0;
            window.frame(vec![Event::PointerMoved(PLACE + Vec2::angled(turn) * 8.0)])
        });
    });
    group.finish();
}

criterion_group!(benches, frames);
criterion_main!(benches);
