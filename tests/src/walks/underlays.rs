//! An underlay comes in, is scaled, turned, moved, locked, and a roof is drawn over it.

use std::fmt::Write as _;
use std::time::Instant;

use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, Vec2, pos2};
use egui_kittest::kittest::Queryable as _;
use gantline_exchange::underlay::{Wanted, attach};
use gantline_plan::document::Underlay;
use glam::DVec2;

use super::papers::{drawing, pdf, roof_page, scan};
use super::walker::Walker;

/// The editor on a new plan, and this file chosen by the dialog.
fn with_file(name: &str, bytes: &[u8]) -> Walker {
    let mut walker = Walker::start(&[name, name]);
    std::fs::write(walker.file(name), bytes).expect("a file in the folder");
    walker.click("New plan");
    walker.press(Key::V);
    walker.ask_for_underlay();
    walker
}

fn only(walker: &Walker) -> &Underlay {
    let mut all = walker.plan().underlays.values();
    let (Some(one), None) = (all.next(), all.next()) else { panic!("one underlay: {:?}", walker.told()) };
    one
}

fn press_with_shift(walker: &mut Walker, key: Key) {
    walker.harness.key_press_modifiers(Modifiers::SHIFT, key);
    walker.harness.run();
}

/// Brings a switch of the inspector in sight and presses it.
fn switch(walker: &mut Walker, name: &str) {
    walker.harness.get_by_role_and_label(Role::CheckBox, name).scroll_to_me();
    walker.harness.run();
    walker.harness.get_by_role_and_label(Role::CheckBox, name).click();
    walker.harness.run();
}

#[test]
fn a_scan_is_scaled_by_two_clicks_and_a_typed_length() {
    let mut walker = with_file("scan.png", &scan());
    assert_eq!(walker.heading(), "scan");
    assert_eq!(walker.value("scan"), "underlay");
    let laid = only(&walker).clone();
    let shown = walker.rect("scan");
    assert!((shown.width() / shown.height() - 4.0 / 3.0).abs() < 0.01, "{shown}");
    press_with_shift(&mut walker, Key::K);
    walker.click_at(pos2(shown.min.x, shown.center().y));
    walker.click_at(pos2(shown.max.x, shown.center().y));
    assert!(walker.told().iter().any(|told| told.contains("type its true length")), "{:?}", walker.told());
    walker.type_numbers(&["20"]);
    // 400 pixels are 20 m now. The screen tells places to some thousandths of a point.
    assert!((only(&walker).m_per_unit - 0.05).abs() < 1e-5, "{}", only(&walker).m_per_unit);
    assert_eq!(walker.told_of("100 pixels are"), "5.000 m");
    let scaled = only(&walker).clone();
    walker.press_with_command(Key::Z);
    assert_eq!(*only(&walker), laid);
    walker.press_with_command_and_shift(Key::Z);
    assert_eq!(*only(&walker), scaled);
    walker.press_with_command(Key::Z);
    walker.press_with_command(Key::Z);
    assert!(walker.plan().underlays.is_empty() && walker.plan().attachments.is_empty());
}

#[test]
fn an_underlay_is_turned_by_two_clicks_along_x_or_to_a_typed_direction() {
    let mut walker = with_file("scan.png", &scan());
    let shown = walker.rect("scan");
    let (low, high) = (pos2(shown.center().x, shown.max.y), pos2(shown.center().x, shown.min.y));
    press_with_shift(&mut walker, Key::T);
    walker.click_at(low);
    walker.click_at(high);
    walker.press(Key::Enter);
    let quarter = std::f64::consts::FRAC_PI_2;
    assert!((only(&walker).turn_rad + quarter).abs() < 1e-5, "{}", only(&walker).turn_rad);
    press_with_shift(&mut walker, Key::T);
    let now = walker.rect("scan").intersect(walker.sheet().shrink(60.0));
    walker.click_at(now.left_center() + Vec2::new(5.0, 0.0));
    walker.click_at(now.right_center() - Vec2::new(5.0, 0.0));
    walker.type_numbers(&["90"]);
    assert!(only(&walker).turn_rad.abs() < 1e-5, "{}", only(&walker).turn_rad);
}

#[test]
fn an_underlay_is_dragged_and_a_locked_one_stays() {
    let mut walker = with_file("scan.png", &scan());
    let before = only(&walker).origin_m;
    let from = walker.rect("scan").center() + Vec2::new(31.0, 17.0);
    walker.drag(from, from + Vec2::new(100.0, 0.0), 5, |_, _| ());
    let moved = only(&walker).origin_m - before;
    assert!(moved.x > 1.0 && moved.y == 0.0, "{moved}");
    walker.press_with_command(Key::Z);
    assert_eq!(only(&walker).origin_m, before, "a drag is one step of undo");
    walker.drag_typed(from, &["3.25", "-1"]);
    assert!((only(&walker).origin_m - before).distance(DVec2::new(3.25, -1.0)) < 1e-9);
    switch(&mut walker, "locked");
    let locked = only(&walker).clone();
    assert!(locked.locked);
    let from = walker.rect("scan").center();
    walker.drag(from, from + Vec2::new(100.0, 40.0), 5, |_, _| ());
    assert_eq!(*only(&walker), locked);
    walker.press(Key::Escape);
    walker.click_button("Select scan");
    assert_eq!(walker.heading(), "scan", "a locked one is taken from the list");
}

#[test]
fn what_is_typed_in_the_inspector_holds_and_what_can_not_be_is_refused_there() {
    let mut walker = with_file("scan.png", &scan());
    walker.type_into("100 pixels are", "2.5");
    assert!((only(&walker).m_per_unit - 0.025).abs() < 1e-12);
    walker.type_into("turn", "12");
    assert!((only(&walker).turn_rad - 12.0_f64.to_radians()).abs() < 1e-12);
    walker.type_into("opacity", "140");
    assert!(walker.told().iter().any(|told| told.starts_with("opacity = ")), "{:?}", walker.told());
    assert_eq!(only(&walker).opacity, 0.5);
    walker.type_into("opacity", "30");
    assert!((only(&walker).opacity - 0.3).abs() < 1e-12);
    switch(&mut walker, "shown");
    assert!(!only(&walker).shown);
    walker.click_button("Remove underlay");
    assert!(walker.plan().underlays.is_empty());
}

#[test]
fn a_page_is_chosen_from_several_and_another_later() {
    let page = "0 0 0 RG 20 30 100 40 re S";
    let mut walker = with_file("plans.pdf", &pdf((200, 100), &[page, page, page]));
    assert!(walker.plan().underlays.is_empty(), "nothing is laid before a page is chosen");
    walker.click("Page 2, 0.071 m × 0.035 m");
    walker.settle_underlays();
    assert_eq!((only(&walker).name.as_str(), only(&walker).page), ("plans, page 2", 2));
    assert_eq!(walker.told_of("scale 1 :"), "100.00");
    walker.choose("page", "Page 3");
    walker.settle_underlays();
    assert_eq!(only(&walker).page, 3);
    assert!(walker.texts_on_sheet().iter().all(|text| text != "Drawing underlay…"));
    // The same file again: its bytes are there once.
    walker.ask_for_underlay();
    walker.click("Page 1, 0.071 m × 0.035 m");
    assert_eq!((walker.plan().underlays.len(), walker.plan().attachments.len()), (2, 1));
}

#[test]
fn a_file_that_can_not_lie_under_the_plan_is_named_and_leaves_the_plan_as_it_is() {
    let cut = roof_page();
    let cut = &cut[..cut.len() / 2];
    for (bytes, why) in [
        (&b"AC1032\0\0"[..], "save it as DXF or PDF"),
        (b"", "The file is empty"),
        (b"GIF89a", "none of PDF, PNG, JPEG and DXF"),
        (cut, "The PDF is cut off: its end mark is missing"),
    ] {
        let mut walker = with_file("paper.pdf", bytes);
        assert!(walker.says("The plan stays as it is."), "{:?}", walker.told());
        assert!(walker.told().iter().any(|told| told.contains(why)), "{why}: {:?}", walker.told());
        walker.press(Key::Escape);
        assert!(!walker.says("The plan stays as it is."));
        assert!(walker.plan().underlays.is_empty() && walker.plan().attachments.is_empty());
        assert!(!walker.harness.state().document().expect("a plan").is_changed());
    }
}

/// The file is a pipe that gives nothing yet: whoever reads it waits.
#[cfg(unix)]
#[test]
fn the_window_goes_on_while_an_underlay_is_read() {
    let mut walker = Walker::start(&["paper.pdf"]);
    let pipe = walker.file("paper.pdf");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status().expect("a program that makes pipes");
    assert!(made.success());
    walker.click("New plan");
    walker.press_with_command_and_shift(Key::U);
    walker.harness.run();
    assert!(walker.says("Reading…"), "{:?}", walker.told());
    std::fs::write(&pipe, roof_page()).expect("the pipe takes it");
    walker.settle_underlays();
    assert!(!walker.says("Reading…"));
    assert_eq!(walker.plan().underlays.len(), 1);
}

/// A page that takes long: no frame waits for its picture, the coarse one or the fine one. How long it takes is measured on the
/// same machine with the same work on it.
#[test]
fn no_frame_waits_for_a_heavy_page() {
    let lines = (0..60_000_u32).map(|index| (index % 300 * 7, index / 300 * 8));
    let mut content = String::new();
    for (x, y) in lines {
        writeln!(content, "{x} {y} m {} {} l S", x + 6, y + 7).expect("text");
    }
    let page = pdf((2384, 1684), &[&content]);
    let (_, source) = attach(page.clone()).expect("a page");
    let begun = Instant::now();
    let wanted = Wanted { part: source.extents()[0], px_per_unit: 0.43 };
    source.pixels(1, &wanted).expect("pixels");
    let page_s = begun.elapsed().as_secs_f64();
    let mut walker = with_file("heavy.pdf", &page);
    let at = walker.sheet().center();
    let mut slowest_s: f64 = 0.0;
    for _ in 0..30 {
        walker.harness.hover_at(at);
        walker.harness.event(egui::Event::Zoom(1.06));
        let begun = Instant::now();
        walker.harness.step();
        slowest_s = slowest_s.max(begun.elapsed().as_secs_f64());
    }
    assert!(slowest_s < page_s / 2.0, "a frame took {slowest_s} s, the page by itself {page_s} s");
}

#[test]
fn a_roof_is_drawn_on_the_corners_of_a_drawing() {
    let mut walker = with_file("slab.dxf", &drawing());
    assert!((only(&walker).m_per_unit - 0.001).abs() < 1e-15);
    assert_eq!(only(&walker).origin_m, DVec2::ZERO, "it lies at its own place");
    let shown = walker.rect("slab");
    walker.press(Key::Escape);
    walker.press(Key::R);
    let beside = Vec2::new(3.0, -2.0);
    let corners: [Pos2; 4] = [shown.left_bottom(), shown.right_bottom(), shown.right_top(), shown.left_top()];
    walker.harness.hover_at(corners[0] + beside);
    walker.harness.run();
    assert!(walker.texts_on_sheet().iter().any(|text| text == "point of the drawing"), "{:?}", walker.texts_on_sheet());
    for corner in corners {
        walker.click_at(corner + beside);
    }
    walker.press(Key::Enter);
    let roof = walker.plan().roofs.values().next().expect("a roof");
    let expected = [(2.0, 1.0), (26.125, 1.0), (26.125, 14.05), (2.0, 14.05)].map(DVec2::from);
    for (point, expected) in roof.outer.points().into_iter().zip(expected) {
        assert!(point.distance(expected) < 1e-9, "{point} instead of {expected}");
    }
}

#[test]
fn an_underlay_is_saved_with_the_plan_and_opens_again() {
    let mut walker = with_file("scan.png", &scan());
    walker.harness.state_mut().wait_for_disk();
    let plan = walker.plan().clone();
    let path = walker.file("plan.json");
    gantline_exchange::disk::plan_file::save(&path, &plan, None).expect("the plan is saved");
    let again = gantline_exchange::disk::plan_file::open(&path).expect("the plan opens").plan;
    assert_eq!(again, plan);
    let attachment = again.attachments.values().next().expect("an attachment");
    assert_eq!(attachment.bytes()[..], scan()[..]);
}
