//! A unit on the edge of a courtyard.

use egui::Key;
use serde_json::Value;

use super::walker::Walker;

#[test]
fn a_unit_on_the_courtyard_edge_looks_into_the_courtyard() {
    let mut walker = Walker::start(&["courtyard.gantline.json"]);
    walker.sketch_rectangle("30", "20");
    walker.press(Key::H);
    walker.type_numbers(&["10", "6"]);
    walker.type_segments(&[("10", "0"), ("8", "90"), ("10", "180")]);
    walker.press(Key::Enter);
    walker.press(Key::Home);
    walker.press(Key::V);
    // The hole runs clockwise: its south edge from (20, 6) to (10, 6). The other one lies on the roof's own south edge.
    walker.place_unit_on("Roof 1 edge 7", "4");
    assert_eq!(walker.figure("looks toward"), "90.0°");
    let inner = shown(&walker);
    assert_eq!(inner.serves, ["Roof 1 edge 7"]);
    walker.place_unit_on("Roof 1 edge 1", "4");
    assert_eq!(walker.figure("looks toward"), "-90.0°");
    let outer = shown(&walker);
    assert_eq!(outer.serves, ["Roof 1 edge 1"]);
    let check = walker.save_and_check("courtyard.gantline.json");
    let units = check["units"].as_array().expect("units");
    assert_eq!(units.len(), 2);
    let number = |value: &Value| value.as_f64().expect("a number");
    for (unit, shown, at, outward) in
        [(&units[0], &inner, [16.0, 6.0 - SETBACK_M], [0.0, 1.0]), (&units[1], &outer, [4.0, SETBACK_M], [0.0, -1.0])]
    {
        assert_eq!([number(&unit["place"]["at_m"][0]), number(&unit["place"]["at_m"][1])], at);
        assert_eq!([number(&unit["place"]["outward"][0]), number(&unit["place"]["outward"][1])], outward);
        let serves = unit["serves"].as_array().expect("facades");
        assert_eq!(serves.len(), 1, "{serves:?}");
        assert_eq!(shown.stand_off, format!("{:.3} m", number(&serves[0]["stand_off_m"])));
        assert_eq!(shown.area, format!("{:.1} m²", number(&serves[0]["area_m2"])));
        // The reach lies square before the unit: as far to the left as to the right of its place along the edge.
        let reached = &serves[0]["covered_at_some_depth"];
        let middle = f64::midpoint(number(&reached[0]["from_m"]), number(&reached[0]["to_m"]));
        assert!((middle - 4.0).abs() < 1e-8, "{middle}");
    }
    // Arm 1.15 m, less the setback; the facade's face lies on the outline.
    assert_eq!((inner.stand_off.as_str(), outer.stand_off.as_str()), ("0.300 m", "0.300 m"));
    // The same make-up: what it does to its base is the same to the bit, and the same words on the screen.
    assert_eq!(inner.parts, outer.parts);
    assert!(inner.reactions.len() > 20, "{:?}", inner.reactions);
    assert_eq!(inner.reactions, outer.reactions);
    let assessment = walker.harness.state().assessment();
    let [inner, outer] = assessment.units.values().collect::<Vec<_>>().try_into().expect("two units");
    assert_eq!(inner.reactions, outer.reactions);
}

/// Setback that the tool proposes behind a parapet 0.20 m thick with the first make-up that stands there, m.
const SETBACK_M: f64 = 0.85;

/// What the inspector says of the selected unit.
struct Shown {
    serves: Vec<String>,
    stand_off: String,
    area: String,
    parts: Vec<String>,
    reactions: Vec<String>,
}

fn shown(walker: &Walker) -> Shown {
    assert_eq!(walker.told_of("setback"), format!("{SETBACK_M:.3} m"));
    Shown {
        serves: walker.figures("serves"),
        stand_off: walker.figure("stand-off"),
        area: walker.figure("area"),
        parts: walker.told_between("Make-up", "Findings"),
        reactions: walker.told_between("Reactions at the underside of the base", "Parts"),
    }
}
