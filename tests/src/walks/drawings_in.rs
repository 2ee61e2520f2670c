//! A roof from the architect's drawing: layers chosen, outlines marked, levels said, taken in one step.

use std::path::Path;

use egui::Key;
use egui_kittest::kittest::Queryable as _;
use gantline_plan::document::{Obstacle, Roof};

use super::walker::Walker;

/// The editor on a new plan, and a drawing of the reference folder chosen by the dialog.
fn with_drawing(name: &str) -> Walker {
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/drawings").join(name);
    with_bytes(&std::fs::read(from).expect("a stored drawing"))
}

fn with_bytes(bytes: &[u8]) -> Walker {
    let mut walker = Walker::start(&["drawing.dxf"]);
    std::fs::write(walker.file("drawing.dxf"), bytes).expect("a drawing in the folder");
    walker.click("New plan");
    walker.press_with_command_and_shift(Key::O);
    walker.settle();
    walker
}

fn roofs(walker: &Walker) -> Vec<&Roof> {
    walker.plan().roofs.values().collect()
}

#[test]
fn a_roof_with_its_hole_and_plant_comes_from_the_architects_drawing() {
    let mut walker = with_drawing("light_polylines.dxf");
    assert!(walker.says("The drawing states centimeters."), "{:?}", walker.told());
    assert!(walker.says("Nothing marked"));
    walker.click("Dach Süd: 3 lines, 3 closed");
    walker.settle();
    assert!(walker.says("1 roof, 2 holes"), "{:?}", walker.told());
    assert_eq!(walker.value("Outline 1"), "Roof, 593.4 m²");
    // Chosen in the preview, by a click into it.
    let plant = walker.rect("Outline 3").center();
    walker.click_at(plant);
    walker.click("Mark as obstacle");
    assert!(walker.says("1 roof, 1 hole, 1 obstacle"), "{:?}", walker.told());
    walker.type_into("roofs: slab at level", "18.5");
    walker.type_into("obstacles: to", "2.4");
    walker.click("Take");
    walker.harness.run();
    let [roof] = roofs(&walker)[..] else { panic!("one roof") };
    assert_eq!((roof.level_m, roof.holes.len()), (18.5, 1));
    // The bulges bring 17.4 m² more than the corners' 576 m²; less the hole of 48 m².
    assert!((roof.area_m2() - (593.4037 - 48.0)).abs() < 0.3, "{}", roof.area_m2());
    let obstacles: Vec<&Obstacle> = walker.plan().obstacles.values().collect();
    assert_eq!((obstacles.len(), obstacles[0].to_m), (1, 2.4));
    // One step of undo.
    walker.press_with_command(Key::Z);
    assert!(walker.plan().roofs.is_empty() && walker.plan().obstacles.is_empty());
    walker.press_with_command_and_shift(Key::Z);
    assert_eq!(walker.plan().roofs.len(), 1);
}

#[test]
fn a_drawing_without_units_is_asked_for_them_and_gaps_wait_for_the_tolerance() {
    let mut walker = with_drawing("lines_of_release_12.dxf");
    assert!(walker.says("The drawing does not state its unit: say which it is."), "{:?}", walker.told());
    walker.click("ROOF: 5 lines, 0 closed");
    walker.settle();
    assert!(walker.says("Nothing marked"));
    walker.click("millimeters");
    walker.settle();
    assert!(walker.says("1 roof"), "{:?}", walker.told());
    walker.type_into("gaps", "9");
    assert!(walker.told().iter().any(|told| told.starts_with("a tolerance lies between")), "{:?}", walker.told());
    walker.type_into("gaps", "0.05");
    walker.settle();
    walker.click("Take");
    let [roof] = roofs(&walker)[..] else { panic!("one roof") };
    // 24 m by 12 m less what the rounded corner of 3 m takes: 288 − 9 + 9 π/4.
    assert!((roof.area_m2() - 286.0686).abs() < 0.3, "{}", roof.area_m2());
}

#[test]
fn what_lies_on_another_layer_waits_until_someone_says_what_it_is() {
    let mut walker = with_drawing("nested_blocks.dxf");
    walker.click("ROOF: 2 lines, 2 closed");
    walker.settle();
    walker.click("PLANT-LAYER: 14 lines, 14 closed");
    walker.settle();
    assert!(walker.says("2 roofs, 14 left out"), "{:?}", walker.told());
    walker.click_button("3 Leave out: 2.5 m² · PLANT-LAYER");
    walker.click("Mark as obstacle");
    walker.click("The same for all of PLANT-LAYER");
    assert!(walker.says("2 roofs, 14 obstacles"), "{:?}", walker.told());
    walker.click("Take");
    assert_eq!((walker.plan().roofs.len(), walker.plan().obstacles.len()), (2, 14));
}

#[test]
fn a_click_that_an_answer_comes_between_is_not_lost() {
    let mut walker = with_drawing("random_blocks.dxf");
    let other = walker.harness.get_by_label("L1: 6 lines, 6 closed").rect().center();
    walker.harness.get_by_label("L0: 6 lines, 6 closed").click();
    walker.harness.step();
    walker.harness.drag_at(other);
    walker.harness.step();
    // A press that lasts longer than some frames is no click.
    walker.harness.state_mut().wait_for_disk();
    walker.harness.step();
    assert!(walker.says("6 roofs"), "{:?}", walker.told());
    walker.harness.drop_at(other);
    walker.settle();
    assert!(walker.says("12 roofs"), "{:?}", walker.told());
}

#[test]
fn the_drawings_grid_is_kept_in_the_plan() {
    let mut walker = with_drawing("far_from_the_origin.dxf");
    // Its only layer is on at once; every gap that is closed is told with its place.
    assert!(walker.says("1 roof"));
    let gaps = walker.told().iter().filter(|told| told.starts_with("Closed: a gap of 0.003 m, at (")).count();
    assert!(gaps >= 6, "{:?}", walker.told());
    walker.click("Take");
    assert_eq!(walker.plan().datum.grid_origin_m.to_array(), [412_340.0, 5_654_320.0]);
    walker.press(Key::Escape);
    walker.press(Key::Escape);
    assert_eq!(walker.told_of("origin in grid, x"), "412340.000 m");
}

#[test]
fn what_is_refused_is_named_with_its_place_and_escape_leaves_the_plan_as_it_is() {
    let crossed = "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n6\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\nA\n70\n1\n\
                   10\n0\n20\n0\n10\n8\n20\n8\n10\n8\n20\n0\n10\n0\n20\n8\n0\nENDSEC\n0\nEOF\n";
    let mut walker = with_bytes(crossed.as_bytes());
    let told = walker.told();
    assert!(told.iter().any(|told| told.starts_with("Refused: edges 1 and 3 cross")), "{told:?}");
    assert!(told.iter().any(|told| told.ends_with("at (4.000 m, 4.000 m)")), "{told:?}");
    walker.press(Key::Escape);
    assert!(!walker.says("Outline from a drawing"));
    assert!(walker.plan().roofs.is_empty());
}

/// The file is a pipe that gives nothing yet: whoever reads it waits.
#[cfg(unix)]
#[test]
fn the_window_goes_on_while_a_drawing_is_read() {
    let mut walker = Walker::start(&["drawing.dxf"]);
    let pipe = walker.file("drawing.dxf");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status().expect("a program that makes pipes");
    assert!(made.success());
    walker.click("New plan");
    walker.press_with_command_and_shift(Key::O);
    walker.harness.run();
    assert!(walker.says("Reading…"), "{:?}", walker.told());
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/drawings/light_polylines.dxf");
    std::fs::write(&pipe, std::fs::read(from).expect("a stored drawing")).expect("the pipe takes it");
    walker.settle();
    assert!(!walker.says("Reading…"));
    assert!(walker.says("The drawing states centimeters."), "{:?}", walker.told());
}

#[test]
fn a_drawing_that_can_not_be_read_leaves_the_plan_as_it_is() {
    for (bytes, why) in [(&b"AC1032\0\0"[..], "save it as DXF"), (b"0\nSECTION\n2\nENTITIES\n0\nLINE\n8", "cut off")] {
        let mut walker = with_bytes(bytes);
        assert!(walker.says("This drawing can't be read."));
        assert!(walker.told().iter().any(|told| told.contains(why)), "{:?}", walker.told());
        walker.click("Cancel");
        assert!(!walker.says("This drawing can't be read."));
        assert!(walker.plan().roofs.is_empty());
    }
}
