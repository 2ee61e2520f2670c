//! An outline sketched by typed lengths, with a courtyard in it.

use egui::Key;

use super::walker::Walker;

/// Corner after corner of an L with a step in its inner corner: length, m, and direction, degrees.
const OUTLINE: [(&str, &str); 7] =
    [("36.4", "0"), ("12.25", "90"), ("12", "180"), ("2.75", "90"), ("4.4", "180"), ("15", "90"), ("20", "180")];
/// The last edge of the outline goes back down to the origin: 12.25 + 2.75 + 15.
const OUTLINE_LENGTHS_M: [f64; 8] = [36.4, 12.25, 12.0, 2.75, 4.4, 15.0, 20.0, 30.0];
/// The hole's, clockwise from its own first corner.
const HOLE_LENGTHS_M: [f64; 4] = [6.5, 5.2, 6.5, 5.2];
/// By bands across: 36.4 × 12.25 + 24.4 × 2.75 + 20 × 15, less the hole of 6.5 × 5.2.
const AREA_M2: f64 = 445.9 + 67.1 + 300.0 - 33.8;

#[test]
#[allow(non_snake_case, reason = "the shape is an L")]
fn an_L_with_courtyard_is_sketched_by_typed_lengths() {
    let mut walker = Walker::start(&["courtyard.gantline.json"]);
    walker.click("New plan");
    walker.press(Key::R);
    walker.type_numbers(&["0", "0"]);
    walker.type_segments(&OUTLINE[..6]);
    // From (20, 30) straight down it would cross the edge at the bottom at (20, 0).
    walker.type_segments(&[("35", "-90")]);
    assert_eq!(walker.value("Refused here"), "Edges 1 and 7 cross at (20.000, 0.000) m");
    let crossed = walker.rect("Refused here").center();
    walker.type_segments(&OUTLINE[6..]);
    walker.press(Key::Enter);
    let there = walker.place(20.0, 0.0);
    assert!(crossed.distance(there) < 0.5, "the cross stands at {crossed:?}, the crossing is at {there:?}");
    // A hole that would leave the roof is refused too, with its place, and can be mended corner by corner.
    walker.press(Key::H);
    walker.type_numbers(&["4", "18"]);
    walker.type_segments(&[("6.5", "0"), ("14", "90"), ("6.5", "180")]);
    walker.press(Key::Enter);
    assert!(walker.value("Refused here").starts_with("The hole touches or leaves the outline of its roof at ("));
    walker.press(Key::Backspace);
    walker.press(Key::Backspace);
    walker.type_segments(&[("5.2", "90"), ("6.5", "180")]);
    walker.press(Key::Enter);
    walker.press(Key::Home);
    walker.press(Key::V);
    let check = walker.save_and_check("courtyard.gantline.json");
    // Every edge is a facade of its own here: no two go on in one line.
    let facades = check["facades"].as_array().expect("facades");
    assert_eq!(facades.len(), 12);
    for (index, typed_m) in OUTLINE_LENGTHS_M.into_iter().chain(HOLE_LENGTHS_M).enumerate() {
        let shown = walker.value(&format!("Roof 1 edge {}", index + 1));
        assert_eq!(shown, format!("{typed_m:.3} m"));
        let answered = facades[index]["length_m"].as_f64().expect("a length");
        assert!((answered - typed_m).abs() < 1e-9, "edge {}: {answered} m", index + 1);
    }
    let on_the_roof = walker.place(30.0, 6.0);
    walker.click_at(on_the_roof);
    assert_eq!(walker.figure("area"), format!("{AREA_M2:.1} m²"));
    assert_eq!((walker.figure("corners"), walker.figure("holes")), ("8".to_owned(), "1".to_owned()));
    let area: f64 = walker.plan().roofs.values().map(gantline_plan::document::Roof::area_m2).sum();
    // A millimeter on every edge would be 0.13 m².
    assert!((area - AREA_M2).abs() < 1e-9, "{area} m²");
}
