//! Takes a picture of the editor after someone has walked to a place.

use std::path::PathBuf;

use egui::{Ui, UiBuilder, Vec2};
use egui_kittest::{Harness, SnapshotOptions, SnapshotResults};
use gantline_editor::document::picker::Scripted;
use gantline_editor::preferences::{Preferences, Store, ThemeChoice};
use gantline_editor::{App, Start};
use gantline_exchange::paper::words_alone;
use gantline_plan::quantity::UnitSystem;

use crate::walks::walker::Walker;

/// How far a pixel may be off where another renderer draws, as egui_kittest proposes between renderers.
const ANOTHER_RENDERER: f32 = 0.6;
/// How many pixels of a picture of a million may be off by more there: letters' edges that fall on another pixel.
const PIXELS_ANOTHER_RENDERER: usize = 400;

/// What a picture is taken of: light or dark, and the units of measure.
#[derive(Debug, Clone, Copy)]
pub struct Camera {
    /// Light or dark.
    pub theme: ThemeChoice,
    /// Units of measure.
    pub units: UnitSystem,
}

/// Ink on paper, SI units.
pub const LIGHT: Camera = Camera { theme: ThemeChoice::Light, units: UnitSystem::Si };
/// Chalk on slate, SI units.
pub const DARK: Camera = Camera { theme: ThemeChoice::Dark, units: UnitSystem::Si };
/// Ink on paper, US customary units.
pub const LIGHT_US: Camera = Camera { theme: ThemeChoice::Light, units: UnitSystem::UsCustomary };

impl Camera {
    /// The editor on its start page, in a folder of its own.
    pub fn start(self) -> Walker {
        let folder = tempfile::tempdir().expect("a folder for the picture");
        let store = Store::in_folder(folder.path().join("settings"));
        let preferences = Preferences { units: self.units, theme: self.theme, ..Preferences::default() };
        assert_eq!(store.write(&preferences), None, "preferences are kept");
        let start = Start {
            store,
            picker: Box::new(Scripted::with([])),
            printer: words_alone,
            wake: Box::new(|| ()),
            open: None,
        };
        let mut harness = Harness::builder()
            .with_size(Vec2::new(1280.0, 800.0))
            .with_pixels_per_point(1.0)
            .build_ui_state(whole_window, App::new(start));
        harness.run();
        Walker { harness, folder }
    }

    /// A demonstration plan, opened from the start page.
    pub fn demonstration(self, name: &str) -> Walker {
        let mut walker = self.start();
        walker.click(name);
        walker
    }
}

/// The editor over the whole window, as the shell shows it: without the margin that the harness leaves.
fn whole_window(ui: &mut Ui, app: &mut App) {
    let window = ui.ctx().content_rect();
    let mut whole = ui.new_child(UiBuilder::new().max_rect(window));
    whole.set_clip_rect(window);
    app.show(&mut whole);
}

/// The pictures of one test: all are taken before any that differs fails it.
#[derive(Default)]
pub struct Album(SnapshotResults);

impl Album {
    /// Takes a picture with the pointer out of the way.
    pub fn take(&mut self, walker: &mut Walker, name: &str) {
        walker.harness.remove_cursor();
        walker.harness.run();
        self.take_as_it_is(walker, name);
    }

    /// Takes a picture with the pointer where it is.
    pub fn take_as_it_is(&mut self, walker: &mut Walker, name: &str) {
        let strict = std::env::var_os("GANTLINE_PICTURES").is_some_and(|word| word == "strict");
        let (threshold, pixels) = if strict { (0.0, 0) } else { (ANOTHER_RENDERER, PIXELS_ANOTHER_RENDERER) };
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("pictures");
        let options = SnapshotOptions::new().threshold(threshold).max_failed_pixels(pixels).output_path(folder);
        walker.harness.snapshot_options(name, &options);
        self.0.extend(walker.harness.take_snapshot_results());
    }
}
