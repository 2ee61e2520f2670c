//! Bars for anchors, given and taken away beside a roof's slab.

use egui::accesskit::Role;
use egui_kittest::kittest::Queryable as _;
use gantline_plan::document::{AnchorBars, SlabBars};

use super::walker::Walker;

fn bars(walker: &Walker) -> SlabBars {
    walker.plan().roofs.values().next().expect("a roof").slab.bars
}

fn switch(walker: &mut Walker, name: &str) {
    walker.harness.get_by_role_and_label(Role::CheckBox, name).scroll_to_me();
    walker.harness.run();
    walker.harness.get_by_role_and_label(Role::CheckBox, name).click();
    walker.harness.run();
}

#[test]
fn bars_for_anchors_are_given_described_and_taken_away() {
    let mut walker = Walker::start(&[]);
    walker.sketch_rectangle("30", "20");
    walker.press(egui::Key::Escape);
    walker.press(egui::Key::V);
    walker.select_roof("Roof 1");
    let tension = "bars for tension";
    assert!(walker.harness.query_by_role_and_label(Role::CheckBox, tension).is_none(), "folded at first");
    walker.harness.get_by_label("Bars for anchors").scroll_to_me();
    walker.harness.run();
    walker.click("Bars for anchors");
    assert_eq!(bars(&walker), SlabBars::default(), "nobody has given any");
    switch(&mut walker, tension);
    assert_eq!(bars(&walker).tension, Some(AnchorBars::UNSAID));
    walker.type_into("bars at each anchor", "4");
    walker.type_into("diameter", "12mm");
    walker.type_into("length in the body", "0.12");
    switch(&mut walker, "hooked");
    let wanted = AnchorBars { count: 4, diameter_m: 0.012, anchored_m: 0.12, hooked: true, ..AnchorBars::UNSAID };
    assert_eq!(bars(&walker), SlabBars { tension: Some(wanted), ..SlabBars::default() });
    walker.type_into("bars at each anchor", "2.5");
    assert!(walker.says("a whole number, such as 2"));
    walker.type_into("farthest bar", "3 m");
    assert!(walker.says("slab.bars.tension.distance_m = 3 is outside 0 to 2"));
    assert_eq!(bars(&walker).tension, Some(wanted), "what can't be meant changes nothing");
    switch(&mut walker, "bars for shear to an edge");
    walker.type_into("lever arm", "0.15");
    assert_eq!(bars(&walker).shear.map(|shear| shear.lever_m), Some(0.15));
    switch(&mut walker, tension);
    assert_eq!(bars(&walker).tension, None);
}
