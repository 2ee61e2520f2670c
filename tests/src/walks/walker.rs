//! Someone who walks through the editor: presses keys, types, points at places of the plan, and reads what is there.

use std::path::{Path, PathBuf};

use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, Rect, Vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use gantline_editor::document::picker::{Picked, Scripted};
use gantline_editor::preferences::Store;
use gantline_editor::{App, Start};
use gantline_exchange::answers::{CheckAnswer, ReactionsAnswer};
use gantline_exchange::disk::plan_file;
use gantline_exchange::paper::words_alone;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::document::{Plan, Standing};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::frame::Frame;
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;
use serde_json::Value;

use super::painted;

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
        Self::start_in(tempfile::tempdir().expect("a folder for the walk"), dialogs)
    }

    /// Starts the editor again in the folder of an earlier walk.
    pub fn start_in(folder: tempfile::TempDir, dialogs: &[&str]) -> Self {
        let picked = dialogs.iter().map(|name| Picked::File(folder.path().join(name)));
        let start = Start {
            store: Store::in_folder(folder.path().join("settings")),
            picker: Box::new(Scripted::with(picked)),
            printer: words_alone,
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

    /// Types into the only field of this name, over what stands there, and takes it.
    pub fn type_into(&mut self, name: &str, text: &str) {
        self.bring_in_sight(Role::TextInput, name);
        self.harness.get_by_role_and_label(Role::TextInput, name).focus();
        self.harness.run();
        self.replace_text(text);
        self.press(Key::Enter);
    }

    /// Scrolls until a thing is in sight.
    fn bring_in_sight(&mut self, role: Role, name: &str) {
        self.harness.get_by_role_and_label(role, name).scroll_to_me();
        self.harness.run();
    }

    /// Chooses from the only list of this name.
    pub fn choose(&mut self, name: &str, choice: &str) {
        self.bring_in_sight(Role::ComboBox, name);
        self.harness.get_by_role_and_label(Role::ComboBox, name).click();
        self.harness.run();
        self.bring_in_sight(Role::Button, choice);
        self.harness.get_by_role_and_label(Role::Button, choice).click();
        self.harness.run();
    }

    /// Presses a key with command and shift held.
    pub fn press_with_command_and_shift(&mut self, key: Key) {
        self.harness.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, key);
        self.harness.run();
    }

    /// Types over all that stands in the field that has the focus.
    pub fn replace_text(&mut self, text: &str) {
        self.press_with_command(Key::A);
        self.type_text(text);
    }

    /// Waits until the copy for recovery of the last change is written.
    pub fn rest_for_a_copy(&mut self) {
        for _ in 0..40 {
            self.harness.step();
            std::thread::sleep(std::time::Duration::from_millis(1));
        }
        self.settle();
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

    /// Brings the only button of this name in sight and clicks it.
    pub fn click_button(&mut self, name: &str) {
        self.bring_in_sight(Role::Button, name);
        self.harness.get_by_role_and_label(Role::Button, name).click();
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

    /// Clicks a place of the screen.
    pub fn click_at(&mut self, at: Pos2) {
        self.harness.hover_at(at);
        self.harness.run();
        self.harness.drag_at(at);
        self.harness.run();
        self.harness.drop_at(at);
        self.harness.run();
    }

    /// The units of measure that are shown.
    pub fn units_of_measure(&self) -> UnitSystem {
        self.harness.state().units()
    }

    /// Selects a thing of the plan by clicking where it is; again while something else there is selected.
    pub fn select(&mut self, name: &str) {
        let at = self.rect(name).center();
        for _ in 0..4 {
            self.click_at(at);
            if self.heading() == name {
                return;
            }
        }
        panic!("{name} can't be selected where it is: {}", self.heading());
    }

    /// Places a unit on an edge, at a distance along it, and goes back to selecting.
    pub fn place_unit(&mut self, edge: &str, along: &str) {
        self.press(Key::U);
        self.harness.hover_at(self.rect(edge).center());
        self.harness.run();
        self.type_numbers(&[along]);
        self.press(Key::Escape);
        self.press(Key::V);
    }

    /// Selects a roof by clicking its middle.
    pub fn select_roof(&mut self, name: &str) {
        self.click_at(self.rect(name).center());
        assert_eq!(self.heading(), name);
    }

    /// What the inspector is about.
    pub fn heading(&self) -> String {
        let told = self.told();
        let companion = told.iter().position(|told| told == "Companion");
        companion.and_then(|index| told.get(index + 1)).cloned().unwrap_or_default()
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

    /// Where the corner between two edges, one after the other, is on the screen: both edges are known by their middles,
    /// and the far end of the first is as far from its middle as its start.
    pub fn corner_at(&self, first: &str, second: &str) -> Pos2 {
        let number =
            |name: &str| name.rsplit(' ').next().and_then(|last| last.parse::<usize>().ok()).expect("edge number");
        let plan = self.plan();
        let ends =
            |name: &str| plan.edges().nth(number(name) - 1).map(|place| place.ring.ends(place.index)).expect("edge");
        let ((from, to), (start, _)) = (ends(first), ends(second));
        assert!(to.distance(start) < 1e-9, "{second} begins where {first} ends");
        // Two middles and their places in the plan give the scale.
        let (a, b) = (self.rect(first).center(), self.rect(second).center());
        let (pa, pb) = (from.midpoint(to), start.midpoint(ends(second).1));
        let points_per_m = f64::from((b - a).length()) / pa.distance(pb);
        let by = (to - pa) * points_per_m;
        a + Vec2::new(by.x as f32, -by.y as f32)
    }

    /// Takes hold of what is at a place, moves a little, types figures, and takes them.
    pub fn drag_typed(&mut self, from: Pos2, numbers: &[&str]) {
        self.hold(from, from + Vec2::new(30.0, 30.0), 4, &mut |_, _| ());
        self.type_numbers(numbers);
        self.harness.drop_at(from + Vec2::new(30.0, 30.0));
        self.harness.run();
    }

    /// Where every unit stands in the plan, in order.
    pub fn places(&self) -> Vec<DVec2> {
        let plan = self.plan();
        plan.placements.values().filter_map(|one| Frame::of(plan, &one.stands)).map(|frame| frame.at).collect()
    }

    /// Setbacks of all units in order, m.
    pub fn setbacks(&self) -> Vec<f64> {
        let setback = |stands: &Standing| match stands {
            Standing::OnEdge { setback_m, .. } => *setback_m,
            Standing::Free { .. } => f64::NAN,
        };
        self.plan().placements.values().map(|placement| setback(&placement.stands)).collect()
    }

    /// Where the main sheet is.
    pub fn sheet(&self) -> Rect {
        self.harness.get_by_label("Main sheet").rect()
    }

    /// Turns the wheel at a place until the drawing is so much larger.
    pub fn zoom_at(&mut self, at: Pos2, factor: f32) {
        self.harness.hover_at(at);
        self.harness.event(egui::Event::Zoom(factor));
        self.harness.run();
    }

    /// Pans by the middle button.
    pub fn pan_by(&mut self, by: Vec2) {
        let at = self.sheet().center();
        let button = |pos, pressed| egui::Event::PointerButton {
            pos,
            button: egui::PointerButton::Middle,
            pressed,
            modifiers: Modifiers::NONE,
        };
        self.harness.hover_at(at);
        self.harness.event(button(at, true));
        self.harness.run();
        self.harness.hover_at(at + by);
        self.harness.run();
        self.harness.event(button(at + by, false));
        self.harness.run();
    }

    /// The name of the unit nearest to the middle of the sheet.
    pub fn any_unit_in_sight(&self) -> String {
        let middle = self.sheet().center();
        let mut near: Vec<(f32, String)> = self
            .harness
            .query_all_by_role(Role::GraphicsObject)
            .filter_map(|node| Some((node.rect().center().distance(middle), node.accesskit_node().label()?)))
            .filter(|(_, name)| name.starts_with("Unit "))
            .collect();
        near.sort_by(|a, b| a.0.total_cmp(&b.0));
        near.into_iter().next().map(|(_, name)| name).expect("a unit is in sight")
    }

    /// Texts on the main sheet, as painted.
    pub fn texts_on_sheet(&self) -> Vec<String> {
        painted::texts_on(self.harness.output(), self.sheet()).into_iter().map(|text| text.words).collect()
    }

    /// Texts of the drawing beside the inspector, as painted.
    pub fn texts_beside(&self) -> Vec<String> {
        let beside = self.harness.get_by_label("Companion").rect();
        painted::texts_on(self.harness.output(), beside).into_iter().map(|text| text.words).collect()
    }

    /// Where a text of the main sheet is on the screen.
    pub fn on_sheet(&self, words: &str) -> Pos2 {
        let texts = painted::texts_on(self.harness.output(), self.sheet());
        texts.iter().find(|text| text.words == words).map(painted::PaintedText::middle).expect("a text of these words")
    }

    /// Where all things of this name are on the screen, and what each says.
    pub fn marks(&self, name: &str) -> Vec<(Pos2, String)> {
        let nodes = self.harness.query_all_by_role_and_label(Role::GraphicsObject, name);
        nodes.map(|node| (node.rect().center(), node.value().unwrap_or_default())).collect()
    }

    /// Where a text of the drawing beside the inspector is on the screen.
    pub fn beside(&self, words: &str) -> Pos2 {
        let beside = self.harness.get_by_label("Companion").rect();
        let texts = painted::texts_on(self.harness.output(), beside);
        texts.iter().find(|text| text.words == words).map(painted::PaintedText::middle).expect("a text of these words")
    }

    /// Where a point of the plan is on the screen, found by the box of the first roof.
    pub fn screen_of(&self, point: DVec2) -> Pos2 {
        let roof = self.plan().roofs.values().next().expect("a roof");
        let bounds = Bounds::of(roof.outer.points()).expect("a box");
        let shown = self.rect(&roof.name);
        let share = (point - bounds.min_m) / bounds.size_m();
        Pos2::new(shown.min.x + shown.width() * share.x as f32, shown.max.y - shown.height() * share.y as f32)
    }

    /// Pairs of texts on the main sheet that stand on each other, as painted.
    pub fn overlapping_figures(&self) -> Vec<(String, String)> {
        let texts = painted::texts_on(self.harness.output(), self.sheet());
        painted::overlapping(&texts)
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

    /// Every name and value that is told to a screen reader, in its order.
    pub fn told(&self) -> Vec<String> {
        let texts = self.harness.root().children_recursive();
        texts.flat_map(|node| [node.accesskit_node().label(), node.accesskit_node().value()]).flatten().collect()
    }

    /// Whether something on the screen says this.
    pub fn says(&self, words: &str) -> bool {
        self.told().iter().any(|told| told == words)
    }

    /// The value of the first thing that has this name and says more than its name.
    pub fn told_of(&self, name: &str) -> String {
        let mut nodes = self.harness.root().children_recursive();
        let said = |node: &egui_kittest::Node<'_>| {
            let node = node.accesskit_node();
            let named = node.label().is_some_and(|label| label == name)
                || node.labelled_by().any(|by| by.value().is_some_and(|value| value == name));
            node.value().filter(|value| named && value != name)
        };
        nodes.find_map(|node| said(&node)).unwrap_or_else(|| panic!("nothing tells of {name}: {:?}", self.told()))
    }

    /// What stands in the only empty field that has this name.
    pub fn placeholder_of(&self, name: &str) -> String {
        let field = self.harness.get_by_role_and_label(Role::TextInput, name);
        field.accesskit_node().placeholder().unwrap_or_default().to_owned()
    }

    /// Saves, waits for the disk, and gives the answer of `check --json` about the file.
    pub fn save_and_check(&mut self, name: &str) -> Value {
        self.press_with_command(Key::S);
        self.settle();
        let plan = plan_file::open(&self.file(name)).expect("the plan was saved").plan;
        assert_eq!(plan, *self.plan(), "what is saved is what is shown");
        serde_json::to_value(CheckAnswer::of(&plan, &assess(&plan, &mut Memo::new()))).expect("an answer")
    }

    /// Saves and gives the units of the answer of `reactions --json` about the file.
    pub fn save_and_reactions(&mut self, name: &str) -> Value {
        self.press_with_command(Key::S);
        self.settle();
        let plan = plan_file::open(&self.file(name)).expect("the plan was saved").plan;
        let answer = ReactionsAnswer::of(&plan, &assess(&plan, &mut Memo::new()));
        serde_json::to_value(answer.units).expect("an answer")
    }

    /// Lets the disk and the window come to rest.
    pub fn settle(&mut self) {
        self.harness.run();
        self.harness.state_mut().wait_for_disk();
        self.harness.run();
    }

    /// Asks for an underlay; what comes of it may come in any frame, so the window need not rest between them.
    pub fn ask_for_underlay(&mut self) {
        self.harness.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::U);
        self.harness.run_steps(3);
        self.settle_underlays();
    }

    /// Asks for an underlay where the desktop shows no dialog: its path is typed.
    pub fn lay_underlay_of(&mut self, path: &Path) {
        self.press_with_command_and_shift(Key::U);
        self.harness.get_by_role_and_label(Role::TextInput, "Path").focus();
        self.harness.run();
        self.replace_text(&path.display().to_string());
        self.harness.key_press(Key::Enter);
        self.harness.run_steps(3);
        self.settle_underlays();
    }

    /// Lets the thread for underlays and the window come to rest, and the copy for recovery be written that may fall due.
    pub fn settle_underlays(&mut self) {
        for _ in 0..5 {
            self.harness.run_steps(3);
            let context = self.harness.ctx.clone();
            self.harness.state_mut().wait_for_underlays(&context);
        }
        self.rest_for_a_copy();
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
