//! Section, plan and diagrams of a unit.

use egui::{Key, vec2};
use glam::DVec2;

use super::walker::Walker;

fn with_a_unit() -> Walker {
    let mut walker = Walker::start(&["unit.gantline.json"]);
    walker.sketch_rectangle("30", "20");
    walker.place_unit("Roof 1 edge 1", "15");
    walker.type_into("setback", "0.85 m");
    walker
}

#[test]
fn slew_moves_the_tip_not_the_plate() {
    let mut walker = with_a_unit();
    let extremes = |walker: &Walker| {
        ["Fx max", "Fz min", "Mx max", "My max", "Mz max", "V max", "M max"].map(|name| walker.told_of(name))
    };
    let (place, brought) = (walker.places(), extremes(&walker));
    walker.press(Key::F4);
    walker.press(Key::Home);
    walker.click_button("along members");
    walker.click_button("drawn slew");
    walker.click_button("Mx");
    let bending = |walker: &Walker| walker.told_of("Diagram of M along the mast");
    let said = |walker: &Walker, words: &str| walker.told().iter().any(|told| told.contains(words));
    let straight = bending(&walker);
    assert!(said(&walker, "at largest Mx: rope 21.00 kN, slew 0.0°"));
    // Setback 0.85 m, stand-off 1.15 - 0.85 m.
    for figure in ["0.850 m", "0.300 m", "1.150 m"] {
        assert!(walker.texts_beside().iter().any(|text| text == figure), "{figure}: {:?}", walker.texts_beside());
    }
    // The handle lies beyond the tip, 1.15 m in front of the mast at (15, 0.85).
    let handle = |walker: &Walker, slew: f64| {
        let tip = DVec2::new(15.0 + 1.15 * slew.sin(), 0.85 - 1.15 * slew.cos());
        walker.screen_of(tip) + 18.0 * vec2(slew.sin() as f32, slew.cos() as f32)
    };
    let before = handle(&walker, 0.0);
    walker.drag_typed(before, &["30"]);
    assert_eq!(walker.told_of("drawn slew"), "30.0°");
    // The section is cut along the arm: the edge is 0.85/cos 30° from the mast, and the rope 1.15 m less that from it.
    for figure in ["0.981 m", "0.169 m", "1.150 m"] {
        assert!(walker.texts_beside().iter().any(|text| text == figure), "{figure}: {:?}", walker.texts_beside());
    }
    // The diagrams follow: under the pull that tilts the base most along the facade the mast bends otherwise.
    assert!(said(&walker, "at largest Mx: rope 21.00 kN, slew 30.0°"));
    assert_ne!(bending(&walker), straight);
    // In the plan the handle is where the tip is now; the plate and what it must hold stay.
    let now = handle(&walker, 30.0_f64.to_radians());
    walker.drag_typed(now, &["-10"]);
    assert_eq!(walker.told_of("drawn slew"), "-10.0°");
    assert_eq!(walker.places(), place);
    assert_eq!(extremes(&walker), brought);
}

#[test]
fn a_unit_dragged_in_the_elevation_goes_along_the_facade_only() {
    let mut walker = with_a_unit();
    let (before, setbacks) = (walker.plan().clone(), walker.setbacks());
    walker.select("Roof 1 edge 1");
    let tag = walker.beside("B-01");
    // 30 m of facade are about 250 points wide there.
    let mut along = Vec::new();
    walker.drag(tag, tag + vec2(60.0, 9.0), 12, |walker, _| {
        assert!(walker.says("Elevation · Roof 1 edge 1"), "the drawing stays while the button is down");
        assert_eq!(walker.told_of("setback"), "0.850 m");
        along.push(walker.places()[0].x);
    });
    assert!(along.windows(2).all(|pair| pair[0] <= pair[1]), "{along:?}");
    assert!((5.0..10.0).contains(&(walker.places()[0].x - 15.0)), "{:?}", walker.places());
    assert_eq!(walker.setbacks(), setbacks);
    assert!(walker.says("Section · Unit B-01"), "then the companion follows the selection");
    walker.press_with_command(Key::Z);
    assert_eq!(*walker.plan(), before);
}

/// What is chosen from which list, what the section must say then, and with which words none of its texts begins.
type Kind = (&'static [(&'static str, &'static str)], &'static [&'static str], &'static [&'static str]);

#[test]
fn each_brace_kind_has_its_own_section() {
    let mut walker = with_a_unit();
    walker.press(Key::X);
    // What is chosen, and what the section must say of it: lengths of the parts' data and of the place, in meters.
    // Arms are 0.16 m deep in the first family and 0.14 m in the second.
    let kinds: [Kind; 5] = [
        (
            &[],
            &[
                "mast to arm's axis 1.450 m",
                "clear under arm 1.370 m",
                "outreach 1.150 m",
                "pin 0.600 m",
                "brace 0.550 m",
            ],
            &["tail", "foot", "lug"],
        ),
        (
            &[("arm", "Arm 1.15 with tail, with Long rear tie")],
            &["mast to arm's axis 1.450 m", "tail 0.750 m", "outreach 1.150 m", "pin 0.950 m", "brace 0.700 m"],
            &["foot", "lug"],
        ),
        (
            &[("family", "Demonstration family Tern (invented)")],
            &["mast to arm's axis 1.700 m", "clear under arm 1.630 m", "outreach 1.000 m"],
            &["tail", "pin", "brace", "foot", "lug"],
        ),
        (
            &[("brace", "Tie to the turning collar, with Arm 1.25, pinned head")],
            &["outreach 1.250 m", "tail 0.650 m", "brace 0.600 m", "lug 0.300 m"],
            &["pin", "foot"],
        ),
        (
            &[("brace", "Rear foot strut, with Arm 1.25, welded head")],
            &["outreach 1.250 m", "foot 1.350 m"],
            &["lug", "pin"],
        ),
    ];
    for (choices, says, never) in kinds {
        for (list, choice) in choices {
            walker.choose(list, choice);
        }
        let texts = walker.texts_on_sheet();
        for words in says.iter().chain(&["setback 0.850 m", "parapet 1.100 m"]) {
            assert!(texts.iter().any(|text| text == words), "{words} is not in {texts:?}");
        }
        for word in never {
            assert!(!texts.iter().any(|text| text.starts_with(word)), "{word} is in {texts:?}");
        }
        let make_up = &walker.save_and_reactions("unit.gantline.json")[0]["make_up"];
        let meters = |value: &serde_json::Value| format!("{:.3} m", value.as_f64().expect("a length"));
        for (name, value) in
            [("mast to arm's axis", &make_up["mast"]["height_m"]), ("outreach", &make_up["arm"]["outreach_m"])]
        {
            assert!(texts.contains(&format!("{name} {}", meters(value))), "{name} as in the answer");
        }
        assert_eq!(walker.overlapping_figures(), []);
    }
}
