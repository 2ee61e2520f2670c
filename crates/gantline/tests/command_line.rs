//! The command line as other programs meet it: exit codes, the tally, answers, faults that name the file and the place.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-projects").join(name)
}

fn gantline(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_gantline")).args(args).output().unwrap()
}

fn about(command: &str, plan: &Path, more: &[&str]) -> Output {
    let args: Vec<&str> = [command, plan.to_str().unwrap()].into_iter().chain(more.iter().copied()).collect();
    gantline(&args)
}

fn text(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).unwrap()
}

fn json(output: &Output) -> serde_json::Value {
    serde_json::from_slice(&output.stdout).unwrap()
}

#[test]
fn the_exit_code_tells_whether_something_blocks() {
    assert_eq!(about("check", &demo("small-roof.json"), &[]).status.code(), Some(0));
    assert_eq!(about("check", &demo("courtyard-building.json"), &[]).status.code(), Some(1));
}

#[test]
fn what_could_not_be_checked_blocks_when_asked_strictly() {
    assert_eq!(about("check", &demo("small-roof.json"), &["--strict"]).status.code(), Some(1));
}

#[test]
fn the_tally_is_always_told_and_beside_the_json() {
    let told = about("check", &demo("small-roof.json"), &[]);
    assert!(text(&told.stdout).contains(" not checked; "));
    let answered = about("check", &demo("small-roof.json"), &["--json"]);
    let tally = &json(&answered)["tally"];
    assert!(text(&answered.stderr).starts_with(&format!("{} checks: ", tally["checks"])));
    for more in [&["--json"][..], &["--csv"], &[]] {
        assert!(text(&about("reactions", &demo("small-roof.json"), more).stderr).contains(" checks: "));
    }
}

#[test]
fn a_plan_that_can_not_be_read_is_named_with_the_place_of_the_trouble() {
    let folder = tempfile::tempdir().unwrap();
    let missing = folder.path().join("nowhere.json");
    let sound = fs::read_to_string(demo("small-roof.json")).unwrap();
    let cut = folder.path().join("cut.json");
    fs::write(&cut, &sound[..sound.len() / 2]).unwrap();
    let odd = folder.path().join("odd.json");
    fs::write(&odd, sound.replacen("\"setback_m\": 0.55", "\"setback_m\": \"near\"", 1)).unwrap();
    for (file, place) in [(missing, "nowhere.json"), (cut, "line "), (odd, "placements › unit-")] {
        for command in ["check", "reactions"] {
            let output = about(command, &file, &[]);
            assert_eq!(output.status.code(), Some(2), "{command} {}", file.display());
            let said = text(&output.stderr);
            assert!(said.contains(file.file_name().unwrap().to_str().unwrap()) && said.contains(place), "{said}");
            assert!(output.stdout.is_empty());
        }
    }
}

#[test]
fn a_command_line_that_can_not_be_read_ends_with_two() {
    for args in [&["check"][..], &["reactions", "x.json", "--json", "--csv"], &["schema", "weather"], &["--loud"]] {
        assert_eq!(gantline(args).status.code(), Some(2), "{args:?}");
    }
}

#[test]
fn every_schema_is_printed_and_says_what_it_is_of() {
    for (of, title) in [
        (&["schema"][..], "Gantline plan file"),
        (&["schema", "check"], "Gantline check answer"),
        (&["schema", "reactions"], "Gantline reactions answer"),
    ] {
        let output = gantline(of);
        assert_eq!((output.status.code(), json(&output)["title"].as_str()), (Some(0), Some(title)));
    }
}

#[test]
fn reactions_are_the_same_figures_as_words_table_and_json() {
    let plan = demo("small-roof.json");
    let answered = json(&about("reactions", &plan, &["--json"]));
    let first = &answered["units"][0]["combinations"][0]["sets"][0];
    let table = about("reactions", &plan, &["--csv"]);
    let line = text(&table.stdout).lines().nth(1).unwrap().to_owned();
    assert!(line.contains(&first["concurrent"]["fz_n"].to_string()), "{line}");
    let words = about("reactions", &plan, &[]);
    let level_and_name = "Anchor load, one person (ultimate)";
    assert!(text(&words.stdout).contains(level_and_name));
    assert!(text(&words.stdout).contains("Not a permit to hang from a rope."));
}

#[test]
fn the_demonstration_writes_answers_and_drawings() {
    let folder = tempfile::tempdir().unwrap();
    let to = folder.path().join("deep/inside");
    let output = gantline(&["demonstration", "--to", to.to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
    for name in ["check.json", "reactions.json"] {
        let answer: serde_json::Value = serde_json::from_slice(&fs::read(to.join(name)).unwrap()).unwrap();
        assert!(answer["caution"].as_str().unwrap().contains("Not a permit"));
    }
    for view in ["plan", "section", "elevation"] {
        assert!(fs::read_to_string(to.join(format!("{view}.svg"))).unwrap().starts_with("<svg"));
        assert_eq!(&fs::read(to.join(format!("{view}.png"))).unwrap()[..4], b"\x89PNG");
    }
}

#[test]
fn words_are_in_the_units_asked_for_and_json_stays_si() {
    let plan = demo("small-roof.json");
    let us = about("reactions", &plan, &["--units", "us"]);
    let si = about("reactions", &plan, &[]);
    // What a combination has inside is told as its load basis has it; the figures that come of it stand on lines of their own.
    let figures = |answer: &Output| -> Vec<String> {
        text(&answer.stdout).lines().filter(|line| line.starts_with("    Fz ")).map(str::to_owned).collect()
    };
    assert!(!figures(&us).is_empty());
    assert!(figures(&us).iter().all(|line| line.contains(" lbf ft") && !line.contains(" kN")), "{:?}", figures(&us));
    assert!(figures(&si).iter().all(|line| line.contains(" kNm") && !line.contains(" lbf")), "{:?}", figures(&si));
    let checked = about("check", &plan, &["--units", "us"]);
    // The roof is 15 m long: 49 ft and 2.55 in, which is 9/16 to the nearest sixteenth.
    assert!(text(&checked.stdout).contains("49' 2 9/16\""), "{}", text(&checked.stdout));
    for command in ["check", "reactions"] {
        let asked = about(command, &plan, &["--json", "--units", "us"]);
        assert_eq!(asked.stdout, about(command, &plan, &["--json"]).stdout);
    }
}

#[test]
fn documents_are_written_together_and_only_those_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let to = folder.path().to_str().unwrap();
    let all = about("documents", &demo("small-roof.json"), &["--to", to, "--date", "2026-03-31"]);
    assert_eq!(all.status.code(), Some(0), "{}", text(&all.stderr));
    let named: Vec<&str> = text(&all.stdout).lines().collect();
    assert_eq!(named.len(), fs::read_dir(folder.path()).unwrap().count());
    assert!(named.iter().all(|path| Path::new(path).is_file()));
    let model = fs::read_to_string(folder.path().join("gantline-model.ifc")).unwrap();
    assert!(model.contains("2026-03-31T00:00:00"));
    let only = tempfile::tempdir().unwrap();
    let to = only.path().to_str().unwrap();
    let some = about("documents", &demo("small-roof.json"), &["--to", to, "--only", "dxf,schedule", "--units", "us"]);
    assert_eq!(some.status.code(), Some(0), "{}", text(&some.stderr));
    let mut names: Vec<_> = fs::read_dir(only.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    names.sort();
    assert_eq!(names, ["gantline-plan.dxf", "gantline-schedule.xlsx"]);
}

/// Witness: 420 mm by 297 mm are 1190.551 by 841.890 points of 1/72 inch.
#[test]
fn sheets_are_printed_on_the_paper_that_is_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let to = folder.path().to_str().unwrap();
    let made = about(
        "documents",
        &demo("small-roof.json"),
        &["--to", to, "--only", "drawings,loads", "--paper", "a3", "--date", "2026-03-31"],
    );
    assert_eq!(made.status.code(), Some(0), "{}", text(&made.stderr));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
    for name in ["gantline-drawings.pdf", "gantline-loads.pdf"] {
        let bytes = fs::read(folder.path().join(name)).unwrap();
        let pdf = String::from_utf8_lossy(&bytes);
        assert!(pdf.starts_with("%PDF-") && pdf.contains("(D:20260331"), "{name}");
        let boxes: Vec<&str> = pdf.split("/MediaBox").skip(1).collect();
        assert!(!boxes.is_empty(), "{name}");
        for one in boxes {
            let inside = one.split(['[', ']']).nth(1).unwrap();
            let sides: Vec<f64> = inside.split_whitespace().skip(2).map(|side| side.parse().unwrap()).collect();
            assert!((sides[0] - 1190.551).abs() < 2e-3 && (sides[1] - 841.890).abs() < 2e-3, "{name}: {inside}");
        }
    }
}

#[test]
fn documents_of_a_plan_that_can_not_be_read_are_not_begun() {
    let folder = tempfile::tempdir().unwrap();
    let broken = folder.path().join("broken.json");
    fs::write(&broken, "{").unwrap();
    let to = folder.path().join("documents");
    let answer = about("documents", &broken, &["--to", to.to_str().unwrap()]);
    assert_eq!(answer.status.code(), Some(2));
    assert!(text(&answer.stderr).contains("broken.json") && !to.exists());
}

fn drawing(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference/drawings").join(name)
}

#[test]
fn a_drawing_without_a_layer_tells_its_layers_and_ends_with_two() {
    let listed = about("outline", &drawing("lines_of_release_12.dxf"), &[]);
    assert_eq!(listed.status.code(), Some(2));
    let told = text(&listed.stdout);
    assert!(told.contains("units: not stated") && told.contains("layer \"ROOF\": 5 lines and curves"), "{told}");
    assert!(
        told.contains("layer \"NOTES\": 0 lines and curves, 0 of them closed by themselves, 1 other things"),
        "{told}"
    );
    assert!(text(&listed.stderr).contains("--layer"));
}

#[test]
fn outlines_of_a_layer_become_roofs_with_holes_in_a_plan_that_can_be_checked() {
    let folder = tempfile::tempdir().unwrap();
    let plan = folder.path().join("site.json");
    let to = plan.to_str().unwrap();
    let made = about("outline", &drawing("light_polylines.dxf"), &["--layer", "dach süd", "--level", "18.5", "-o", to]);
    assert_eq!(made.status.code(), Some(0), "{}", text(&made.stderr));
    let said = text(&made.stderr);
    assert!(said.contains("Roof: 593.") && said.contains("Hole: 48.0"), "{said}");
    assert!(said.contains("curves became chords"), "{said}");
    let value: serde_json::Value = serde_json::from_slice(&fs::read(&plan).unwrap()).unwrap();
    let roof = value["roofs"].as_object().unwrap().values().next().unwrap();
    assert_eq!((roof["level_m"].as_f64(), roof["holes"].as_array().unwrap().len()), (Some(18.5), 2));
    assert_eq!(value["families"].as_object().unwrap().len(), 2);
    let checked = about("check", &plan, &[]);
    assert!(text(&checked.stdout).contains(" checks: "), "{}", text(&checked.stderr));
}

#[test]
fn units_gaps_and_the_place_in_the_grid_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let plan = folder.path().join("site.json");
    let to = plan.to_str().unwrap();
    let unstated = about("outline", &drawing("lines_of_release_12.dxf"), &["--layer", "ROOF", "-o", to]);
    assert_eq!(unstated.status.code(), Some(2));
    assert!(text(&unstated.stderr).contains("does not state its units"), "{}", text(&unstated.stderr));
    assert!(!plan.exists());
    let stated = about("outline", &drawing("lines_of_release_12.dxf"), &["--layer", "ROOF", "--units", "mm", "-o", to]);
    assert_eq!(stated.status.code(), Some(0), "{}", text(&stated.stderr));
    assert!(text(&stated.stderr).contains("no level was given: roofs are at +20.000 m"), "{}", text(&stated.stderr));
    let far = about("outline", &drawing("far_from_the_origin.dxf"), &["--layer", "A-ROOF", "-o", to]);
    let said = text(&far.stderr);
    assert!(said.contains("origin is (412340.000 m, 5654320.000 m)"), "{said}");
    assert_eq!(said.matches("closed: a gap of 0.003 m at").count(), 6, "{said}");
    // Finer than the gaps, nothing closes, and that is told before the plan is refused.
    let fine = about(
        "outline",
        &drawing("far_from_the_origin.dxf"),
        &["--layer", "A-ROOF", "--tolerance", "0.001", "-o", folder.path().join("none.json").to_str().unwrap()],
    );
    assert_eq!(fine.status.code(), Some(2));
    assert_eq!(text(&fine.stderr).matches("left out: a line that is not closed").count(), 6);
    assert!(!folder.path().join("none.json").exists());
}

#[test]
fn drawings_that_can_not_be_read_are_named_with_the_place_of_the_trouble() {
    let folder = tempfile::tempdir().unwrap();
    let cut = folder.path().join("cut.dxf");
    let whole = fs::read(drawing("light_polylines.dxf")).unwrap();
    fs::write(&cut, &whole[..whole.len() / 2]).unwrap();
    let closed_form = folder.path().join("site.dwg");
    fs::write(&closed_form, b"AC1032\0\0\0").unwrap();
    for (file, place) in [(cut, "cut off"), (closed_form, "save it as DXF"), (folder.path().join("no.dxf"), "no.dxf")] {
        let output = about("outline", &file, &["--layer", "A", "-o", "x.json"]);
        assert_eq!(output.status.code(), Some(2));
        let said = text(&output.stderr);
        assert!(said.contains(file.file_name().unwrap().to_str().unwrap()) && said.contains(place), "{said}");
    }
    let other = about("outline", &drawing("light_polylines.dxf"), &["--layer", "Roof", "-o", "x.json"]);
    assert!(text(&other.stderr).contains("no layer \"Roof\""), "{}", text(&other.stderr));
}
