//! Someone who walks through the editor: presses keys, types, points at places of the plan, and reads what is there.

use std::path::{Path, PathBuf};

use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, Rect, Vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use gantline_editor::document::picker::{Picked, Scripted};
use gantline_editor::preferences::Store;
use gantline_editor::{App, Start};
use gantline_plan::document::Plan;
use glam::DVec2;

/// The editor in a folder of its own.
pub struct Walker {
    /// The window.
    pub harness: Harness<'static, App>,
    /// Its folder, gone when the walk ends.
    pub folder: tempfile::TempDir,
}

impl Walker {
    /// Starts the editor with answers for its file dialogs, as files in the walker's folder.
    pub fn start(dialogs: &[&str]) -> Self {
        let folder = tempfile::tempdir().expect("a folder for the walk");
        let picked = dialogs.iter().map(|name| Picked::File(folder.path().join(name)));
        let start = Start {
            store: Store::in_folder(folder.path().join("settings")),
            picker: Box::new(Scripted::with(picked)),
            wake: Box::new(|| ()),
            open: None,
        };
        let app = App::new(start);
        let mut harness = Harness::builder()
            .with_size(Vec2::new(1280.0, 800.0))
            .with_pixels_per_point(1.0)
            .build_ui_state(|ui, app: &mut App| app.show(ui), app);
        harness.run();
        Self { harness, folder }
    }

    /// A file in the walker's folder.
    pub fn file(&self, name: &str) -> PathBuf {
        Path::new(self.folder.path()).join(name)
    }

    /// Presses a key.
    pub fn press(&mut self, key: Key) {
        self.harness.key_press(key);
        self.harness.run();
    }

    /// Presses a key with the command key held.
    pub fn press_with_command(&mut self, key: Key) {
        self.harness.key_press_modifiers(Modifiers::COMMAND, key);
        self.harness.run();
    }

    /// Types text, a character at a time.
    pub fn type_text(&mut self, text: &str) {
        for character in text.chars() {
            self.harness.event(egui::Event::Text(character.to_string()));
            self.harness.run();
        }
    }

    /// Types numbers into the fields that a gesture offers, Tab between them, and takes them.
    pub fn type_numbers(&mut self, numbers: &[&str]) {
        for (index, number) in numbers.iter().enumerate() {
            if index > 0 {
                self.press(Key::Tab);
            }
            self.type_text(number);
        }
        self.press(Key::Enter);
    }

    /// Clicks the only thing of this name.
    pub fn click(&mut self, name: &str) {
        self.harness.get_by_label(name).click();
        self.harness.run();
    }

    /// Where a thing of the plan is on the screen.
    pub fn rect(&self, name: &str) -> Rect {
        self.harness.get_by_role_and_label(Role::GraphicsObject, name).rect()
    }

    /// What a thing says of itself.
    pub fn value(&self, name: &str) -> String {
        self.harness.get_by_role_and_label(Role::GraphicsObject, name).value().unwrap_or_default()
    }

    /// Drags from one place of the screen to another in steps; `at_step` is called after each with the step's number.
    pub fn drag(&mut self, from: Pos2, to: Pos2, steps: u16, mut at_step: impl FnMut(&mut Self, u16)) {
        self.hold(from, to, steps, &mut at_step);
        self.harness.drop_at(to);
        self.harness.run();
    }

    /// The same, without letting go.
    pub fn hold(&mut self, from: Pos2, to: Pos2, steps: u16, at_step: &mut impl FnMut(&mut Self, u16)) {
        self.harness.hover_at(from);
        self.harness.run();
        self.harness.drag_at(from);
        self.harness.run();
        for step in 1..=steps {
            self.harness.hover_at(from + (to - from) * (f32::from(step) / f32::from(steps)));
            self.harness.run();
            at_step(self, step);
        }
    }

    /// The plan that is open.
    pub fn plan(&self) -> &Plan {
        self.harness.state().document().expect("a plan is open").plan()
    }

    /// A rectangular roof from the start page, drawn by typed numbers from the origin; its south edge is its first.
    pub fn sketch_rectangle(&mut self, width: &str, depth: &str) {
        self.click("New plan");
        self.press(Key::R);
        self.type_numbers(&["0", "0"]);
        self.type_numbers(&[width, "0"]);
        self.type_numbers(&[depth, "90"]);
        self.type_numbers(&[width, "180"]);
        self.press(Key::Enter);
    }

    /// Lengths of all edges, m.
    pub fn edge_lengths(&self) -> Vec<f64> {
        self.plan()
            .edges()
            .map(|place| {
                let (a, b) = place.ring.ends(place.index);
                DVec2::distance(a, b)
            })
            .collect()
    }
}
