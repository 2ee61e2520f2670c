//! Who knows what: pure rooms know no system, tools and command line know no toolkit, panels know no other panel.

use super::source::{Source, names, naming, none, sources};

const PURE: [&str; 3] = ["crates/mechanics/src", "crates/plan/src", "crates/drawing/src"];

#[test]
fn mechanics_plan_and_drawing_know_no_disk_no_clock_no_system() {
    let words = ["std::fs", "std::path", "std::time", "std::env", "std::net", "std::process", "std::thread", "Instant"];
    for room in PURE {
        let sources = sources(room);
        assert!(!sources.is_empty(), "{room} has sources");
        // One file deals work out over threads, with the same results however many there are.
        let threads = "crates/plan/src/assess/in_parts.rs names std::thread";
        let offenses =
            naming(&sources, &words).into_iter().filter(|what| !what.starts_with(threads)).collect::<Vec<_>>();
        none(&offenses, "a pure room knows no system");
    }
}

#[test]
fn mechanics_stores_nothing() {
    none(&naming(&sources("crates/mechanics/src"), &["serde", "serde_json"]), "mechanics has no stored form");
}

#[test]
fn only_the_editor_knows_the_toolkit() {
    let words = ["egui", "eframe", "rfd", "egui_extras", "egui_plot"];
    for room in PURE.into_iter().chain(["crates/exchange/src", "crates/print/src", "crates/xtask/src"]) {
        let offenses = naming(&sources(room), &words);
        // The check of the rooms itself names the packages that it forbids.
        let offenses: Vec<String> = offenses.into_iter().filter(|what| !what.contains("xtask/src/rooms.rs")).collect();
        none(&offenses, "only the editor knows the toolkit");
    }
}

#[test]
fn tools_and_command_line_know_no_toolkit() {
    for folder in ["crates/editor/src/tools", "crates/gantline/src"] {
        none(
            &naming(&sources(folder), &["egui", "eframe", "egui_extras", "egui_plot"]),
            "this folder knows no toolkit",
        );
    }
}

#[test]
fn no_panel_names_another_panel() {
    let panels = sources("crates/editor/src/panels");
    let name_of = |source: &Source| {
        let inside = source.place.trim_start_matches("crates/editor/src/panels/").to_owned();
        inside.split('/').next().unwrap_or_default().trim_end_matches(".rs").to_owned()
    };
    let all: std::collections::BTreeSet<String> = panels.iter().map(name_of).filter(|name| name != "mod").collect();
    let mut offenses = Vec::new();
    for panel in panels.iter().filter(|panel| name_of(panel) != "mod") {
        let own = name_of(panel);
        // `page` is the frame around the full pages and chooses among them: the only panel with parts of its own name.
        for other in all.iter().filter(|other| **other != own && **other != format!("{own}s")) {
            if names(&panel.code, &format!("panels::{other}")) || names(&panel.code, &format!("super::{other}")) {
                offenses.push(format!("{} names the panel {other}", panel.place));
            }
        }
    }
    none(&offenses, "no panel names another panel");
}
