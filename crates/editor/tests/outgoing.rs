//! What leaves the plan by the window's menu: documents into a chosen folder, the drawing on the main sheet as a picture.

use std::fs;
use std::path::{Path, PathBuf};

use egui::{Pos2, RawInput, Rect, Vec2};
use gantline_editor::carry_out;
use gantline_editor::command::Command;
use gantline_editor::document::Picked;
use gantline_editor::document::picker::Scripted;
use gantline_editor::intent::Intent;
use gantline_editor::preferences::Store;
use gantline_editor::{App, Start};
use gantline_exchange::paper::words_alone;

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-projects").join(name)
}

/// A window with the small roof, whose dialogs give these answers.
struct Window {
    ctx: egui::Context,
    app: App,
}

impl Window {
    fn answering(answers: impl IntoIterator<Item = Picked>) -> Self {
        let start = Start {
            store: Store::default(),
            picker: Box::new(Scripted::with(answers)),
            printer: words_alone,
            wake: Box::new(|| ()),
            open: Some(demo("small-roof.json")),
        };
        let mut window = Self { ctx: egui::Context::default(), app: App::new(start) };
        window.frame();
        window
    }

    fn frame(&mut self) {
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, Vec2::new(1280.0, 800.0))),
            ..RawInput::default()
        };
        let app = &mut self.app;
        self.ctx.run_ui(input, |ui| app.show(ui)).drop_without_applying_deltas();
    }

    fn run(&mut self, command: Command) {
        carry_out::one(&mut self.app, Intent::Run(command));
        self.frame();
        self.frame();
        self.app.wait_for_outgoing();
        self.frame();
    }
}

#[test]
fn documents_go_into_the_chosen_folder_and_the_status_line_names_them() {
    let folder = tempfile::tempdir().unwrap();
    let mut window = Window::answering([Picked::File(folder.path().to_owned())]);
    window.run(Command::WriteDocuments);
    let mut names: Vec<String> =
        fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    let all = [
        "anchorage.csv",
        "bases.csv",
        "drawings.pdf",
        "findings.csv",
        "loads.pdf",
        "model.ifc",
        "plan.dxf",
        "reactions.csv",
        "report.pdf",
        "schedule.xlsx",
    ];
    assert_eq!(names, all.map(|name| format!("gantline-{name}")));
    assert!(
        window.app.said().starts_with("Written to ") && names.iter().all(|name| window.app.said().contains(name)),
        "{}",
        window.app.said()
    );
}

#[test]
fn a_dialog_that_is_closed_writes_nothing() {
    let mut window = Window::answering([Picked::Nothing]);
    window.run(Command::WriteDocuments);
    assert_eq!(window.app.said(), "");
}

#[test]
fn the_drawing_on_the_main_sheet_goes_into_a_picture_of_the_kind_that_its_ending_tells() {
    let folder = tempfile::tempdir().unwrap();
    let (svg, png) = (folder.path().join("roof"), folder.path().join("roof.PNG"));
    let mut window = Window::answering([Picked::File(svg.clone()), Picked::File(png.clone())]);
    window.run(Command::WritePicture);
    let text = fs::read_to_string(svg.with_extension("svg")).unwrap();
    for said in ["Not a permit to hang from a rope.", "Plan, SHA-256 of its file: ", "B-01"] {
        assert!(text.contains(said), "{said} is missing");
    }
    window.run(Command::WritePicture);
    assert_eq!(&fs::read(&png).unwrap()[1..4], b"PNG", "{}", window.app.said());
}
