//! Copies, mirror images, boxes, the ledger and the search for a tag.

use std::time::Duration;

use egui::accesskit::Role;
use egui::{Key, Pos2, pos2};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use gantline_plan::document::Standing;

use super::walker::Walker;

/// A roof of 30 m by 20 m with units on its south edge.
fn with_units(along: &[&str]) -> Walker {
    let mut walker = Walker::start(&[]);
    walker.sketch_rectangle("30", "20");
    walker.press(Key::U);
    for distance in along {
        walker.type_numbers(&[distance]);
    }
    walker.press(Key::Escape);
    walker.press(Key::V);
    assert_eq!(walker.plan().placements.len(), along.len());
    walker
}

/// Where units stand along their edge of 30 m, in their order, m.
fn alongs_m(walker: &Walker) -> Vec<f64> {
    let stands = walker.plan().placements.values().map(|placement| &placement.stands);
    let along = |stands: &Standing| match stands {
        Standing::OnEdge { station, .. } => station.along_m(30.0),
        Standing::Free { .. } => f64::NAN,
    };
    // To the micrometer: a station far along is kept from the end of the edge.
    stands.map(|stands| (along(stands) * 1e6).round() / 1e6).collect()
}

/// Where a point of the plan is on the screen, from the middles of the south and east edges: (15, 0) and (30, 10).
fn place(walker: &Walker, x_m: f32, y_m: f32) -> Pos2 {
    let (south, east) = (walker.rect("Roof 1 edge 1").center(), walker.rect("Roof 1 edge 2").center());
    let points_per_m = (east.x - south.x) / 15.0;
    pos2(south.x + (x_m - 15.0) * points_per_m, south.y - y_m * points_per_m)
}

fn select_first(walker: &mut Walker) {
    walker.press(Key::Escape);
    walker.press(Key::N);
}

#[test]
fn copies_stand_beside_and_mirrored_about_the_middle() {
    let mut walker = with_units(&["8"]);
    select_first(&mut walker);
    // Without a neighbor the pitch is 3 m.
    walker.press_with_command(Key::D);
    assert_eq!(alongs_m(&walker), [8.0, 11.0]);
    walker.press_with_command(Key::Z);
    select_first(&mut walker);
    // 30 m less 8 m.
    walker.press_with_command(Key::M);
    assert_eq!(alongs_m(&walker), [8.0, 22.0]);
    // The copy is selected; mirrored back it would stand on the first, so it is moved to the middle, where it has no image.
    walker.type_into("along", "15");
    walker.press_with_command(Key::M);
    assert_eq!(alongs_m(&walker), [8.0, 15.0]);
    assert!(walker.told().iter().any(|told| told.starts_with("Nothing to mirror")), "{:?}", walker.told());
}

/// Units in the ledger, from the top.
fn rows(walker: &Walker) -> Vec<String> {
    let rows = walker.harness.get_all_by_role(Role::Row);
    let names = rows.map(|row| row.accesskit_node().label().unwrap_or_default());
    names.filter(|name| name.starts_with("Unit ")).collect()
}

#[test]
fn the_ledger_and_the_search_go_to_a_unit() {
    let mut walker = with_units(&["20", "5", "12"]);
    walker.press(Key::F2);
    assert_eq!(rows(&walker), ["Unit B-01", "Unit B-02", "Unit B-03"]);
    walker.click("Sort by along");
    assert_eq!(rows(&walker), ["Unit B-02", "Unit B-03", "Unit B-01"]);
    walker.click("Sort by along");
    assert_eq!(rows(&walker), ["Unit B-01", "Unit B-03", "Unit B-02"]);
    walker.harness.get_by_role_and_label(Role::Row, "Unit B-02").click();
    walker.harness.run();
    assert_eq!(walker.told_of("along"), "5.000 m");
    walker.type_into("Filter", "b-03");
    assert_eq!(rows(&walker), ["Unit B-03"]);
    assert!(walker.says("1 of 3 units"));
    walker.press_with_command(Key::F);
    walker.type_text("b-01");
    walker.press(Key::Enter);
    assert_eq!(walker.told_of("along"), "20.000 m");
}

#[test]
fn a_box_takes_units_and_obstacles_together() {
    let mut walker = with_units(&["8", "20"]);
    walker.press(Key::O);
    walker.type_numbers(&["10", "8"]);
    for (length, direction) in [("2", "0"), ("2", "90"), ("2", "180")] {
        walker.type_numbers(&[length, direction]);
    }
    walker.press(Key::Enter);
    walker.press(Key::Escape);
    walker.press(Key::V);
    walker.press(Key::Escape);
    assert_eq!(walker.plan().obstacles.len(), 1);
    // To the right: what lies wholly inside. The second unit and the edges do not.
    let (from, to) = (place(&walker, 6.0, -3.0), place(&walker, 14.0, 12.0));
    walker.drag(from, to, 6, |_, _| ());
    assert!(walker.says("2 things"), "{:?}", walker.told());
    walker.press(Key::Delete);
    assert_eq!((walker.plan().obstacles.len(), alongs_m(&walker)), (0, vec![20.0]));
    walker.press_with_command(Key::Z);
    assert_eq!((walker.plan().obstacles.len(), alongs_m(&walker)), (1, vec![8.0, 20.0]), "one step of undo");
    walker.drag(from, to, 6, |_, _| ());
    walker.click("Keep only the unit");
    assert_eq!(walker.told_of("along"), "8.000 m");
}

#[test]
fn an_idle_window_asks_for_no_frame() {
    let mut walker = Walker::start(&[]);
    walker.click("Small roof");
    for key in [Key::N, Key::F2, Key::F3, Key::F4, Key::X] {
        walker.press(key);
        let asked = walker.harness.output().viewport_output.values().map(|window| window.repaint_delay).min();
        assert_eq!(asked, Some(Duration::MAX), "after {key:?}");
    }
}
