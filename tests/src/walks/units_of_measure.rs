//! The same work in feet and inches.

use egui::Key;
use gantline_plan::file;
use gantline_plan::quantity::UnitSystem;

use super::clearances::{front_brace_over_the_parapet, with_a_unit};
use super::walker::Walker;

fn bytes(walker: &Walker) -> String {
    file::write(walker.plan()).expect("plan to text")
}

#[test]
fn units_of_measure() {
    let mut si = with_a_unit(Walker::start(&["limit.gantline.json"]));
    front_brace_over_the_parapet(&mut si);

    let mut us = Walker::start(&["limit.gantline.json"]);
    us.press_with_command(Key::Comma);
    us.click("Feet and inches, pounds");
    us.press(Key::Escape);
    assert_eq!(us.units_of_measure(), UnitSystem::UsCustomary);
    let mut us = with_a_unit(us);
    front_brace_over_the_parapet(&mut us);
    assert_eq!(bytes(&us), bytes(&si), "units are of the screen and not of the file");

    // Fields take any unit, show the one in use, and a bare number is feet.
    for (typed, shown, meters) in [
        ("4' 11\"", "4' 11\"", 4.0 * 0.3048 + 11.0 * 0.0254),
        ("750 mm", "2' 5 1/2\"", 0.75),
        ("2.5", "2' 6\"", 0.762),
        ("0.5 m + 6 in", "2' 1 11/16\"", 0.6524),
    ] {
        us.type_into("setback", typed);
        assert_eq!(us.told_of("setback"), shown, "{typed}");
        let setback = us.setbacks()[0];
        assert!((setback - meters).abs() < 1e-12, "{typed}: {setback:?}");
    }
}
