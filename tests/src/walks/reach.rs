//! How far a technician reaches, top to foot.

use gantline_plan::quantity::{UnitSystem, area, length};

use super::walker::Walker;

#[test]
fn reach_narrows_toward_the_top() {
    let mut walker = Walker::start(&["tall.gantline.json"]);
    walker.sketch_rectangle("60", "20");
    // Slab at 40 m, no parapet: the facade is 40 m high.
    walker.type_into("top of slab", "40");
    walker.type_into("over structural slab", "0");
    walker.place_unit("Roof 1 edge 1", "30");
    walker.type_into("setback", "0.55");
    // The tip, 1.15 m out, serves from 0.15 m to 0.75 m off the face: cos ψ ≥ (0.15 + 0.55)/1.15, and the rope hangs from
    // -1.15 sin ψ to 1.15 sin ψ along the facade. Its support is 1.45 m over the facade's top. A technician goes 20° from
    // straight down, 2.0 m at most, and reaches 0.7 m beside that. Width over depth z below the support:
    // l + 2·0.7 + 2·min(z tan 20°, 2.0), l = 2·1.15 sin ψ; over z from 1.45 m to 41.45 m it is the integral below, in
    // closed form.
    let cosine: f64 = (0.15 + 0.55) / 1.15;
    let ropes = 2.0 * 1.15 * (1.0 - cosine * cosine).sqrt();
    let slope = 20.0_f64.to_radians().tan();
    let bend = 2.0 / slope;
    let reached = (ropes + 1.4) * 40.0 + slope * (bend * bend - 1.45 * 1.45) + 2.0 * 2.0 * (41.45 - bend);
    let top = ropes + 1.4 + 2.0 * slope * 1.45;
    let foot = ropes + 1.4 + 4.0;
    assert!(top < foot - 2.0, "narrower at the top");
    assert_eq!(walker.told_of("area"), area(reached, UnitSystem::Si));
    assert_eq!(walker.told_of("reached from top to foot"), length(top, UnitSystem::Si));
    assert_eq!(walker.told_of("reached at some depth"), length(foot, UnitSystem::Si));
    let check = walker.save_and_check("tall.gantline.json");
    let near = |found: &serde_json::Value, exact: f64| {
        let found = found.as_f64().expect("a figure");
        assert!((found - exact).abs() < 1e-6 * exact, "{found} instead of {exact}");
    };
    let served = &check["units"][0]["serves"][0];
    near(&served["area_m2"], reached);
    let facade = check["facades"].as_array().expect("facades").iter().find(|one| one["key"] == served["facade"]);
    let facade = facade.expect("the facade that is served");
    near(&facade["area_needing_access_m2"], 60.0 * 40.0);
    near(&facade["covered_area_m2"], reached);
    // What is not reached is listed: together it is the rest of the facade.
    let gaps = facade["gaps"].as_array().expect("gaps").iter().filter_map(|gap| gap["area_m2"].as_f64());
    near(&serde_json::json!(gaps.sum::<f64>()), 60.0 * 40.0 - reached);
}

#[test]
fn no_gap_at_a_parapet_joint() {
    let mut walker = Walker::start(&["joint.gantline.json"]);
    walker.sketch_rectangle("30", "20");
    walker.place_unit("Roof 1 edge 1", "14");
    walker.select("Roof 1 edge 1");
    walker.click_button("Split in the middle");
    walker.select("Unit B-01");
    let intervals =
        |walker: &Walker| ["reached from top to foot", "reached at some depth"].map(|name| walker.told_of(name));
    let shown = intervals(&walker);
    let stretches = |check: &serde_json::Value| {
        let served = &check["units"][0]["serves"];
        assert_eq!(served.as_array().map(Vec::len), Some(1), "one facade, whatever its parapets");
        [&served[0]["covered_full_height"], &served[0]["covered_at_some_depth"], &served[0]["ropes_hang"]]
            .map(Clone::clone)
    };
    let before = stretches(&walker.save_and_check("joint.gantline.json"));
    // The unit reaches over the joint at 15 m, and half of the edge gets a lower parapet.
    let ends = before[1][0]["to_m"].as_f64().expect("an end");
    assert!(before[1][0]["from_m"].as_f64().is_some_and(|from| from < 15.0) && ends > 15.0, "{before:?}");
    walker.select("Roof 1 edge 2");
    walker.type_into("over structural slab", "0.9");
    walker.select("Unit B-01");
    assert_eq!(intervals(&walker), shown);
    assert_eq!(stretches(&walker.save_and_check("joint.gantline.json")), before);
}
