//! Bases on screen: their utilization while they move, records, the picture of the plate, the chart of setbacks, the ledger.

use egui::accesskit::Role;
use egui::{Key, vec2};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use gantline_plan::assess::anchorage::use_by_setback;
use gantline_plan::quantity::{UnitSystem, length, utilization};
use glam::DVec2;

use super::walker::Walker;

/// The first unit of the small roof, whose slab and fixings have all their data.
fn on_the_small_roof() -> Walker {
    let mut walker = Walker::start(&[]);
    walker.click("Small roof");
    walker.press(Key::N);
    walker
}

/// What the assessment says of the selected unit's base.
fn share(walker: &Walker, tag: &str) -> f64 {
    let assessment = walker.harness.state().assessment();
    let of_tag = walker.plan().placements.iter().find(|(_, placement)| placement.tag.0 == tag);
    let (id, _) = of_tag.expect("a unit of this tag");
    assessment.units[id].base.as_ref().and_then(|base| base.utilization()).expect("a base that was computed")
}

fn selected_tag(walker: &Walker) -> String {
    walker.heading().trim_start_matches("Unit ").to_owned()
}

#[test]
fn a_base_moved_toward_the_edge_shows_more_use_while_it_moves() {
    let mut walker = on_the_small_roof();
    let tag = selected_tag(&walker);
    let name = format!("Unit {tag}");
    let place = walker.places()[0];
    let at = walker.screen_of(place);
    walker.zoom_at(at, 3.0);
    let scale = (walker.screen_of(DVec2::new(15.0, 0.0)).x - walker.screen_of(DVec2::ZERO).x) / 15.0;
    // The tag goes along with the unit. Toward the edge, 0.25 m in steps.
    let from = walker.on_sheet(&tag);
    let to = from + vec2(0.0, 0.25 * scale);
    let mut steps = vec![(walker.setbacks()[0], share(&walker, &tag))];
    walker.drag(from, to, 8, |walker, _| {
        assert_eq!(walker.heading(), name);
        let used = share(walker, &tag);
        let told = walker.told_of("utilization of the base");
        assert!(told.starts_with(&utilization(used)), "{told} for {used}");
        steps.push((walker.setbacks()[0], used));
    });
    assert!(steps.windows(2).all(|pair| pair[1].0 <= pair[0].0 && pair[1].1 >= pair[0].1 - 1e-9), "{steps:?}");
    let (first, last) = (steps[0], steps[steps.len() - 1]);
    assert!(first.0 - last.0 > 0.2 && last.1 > first.1 + 0.02, "{steps:?}");
}

#[test]
fn an_opened_record_shows_its_clause_and_its_formula() {
    let mut walker = on_the_small_roof();
    let tag = selected_tag(&walker);
    assert!(!walker.told().iter().any(|told| told.starts_with("EN 1992-4")), "records are closed at first");
    walker.click_button("concrete cone");
    let assessment = walker.harness.state().assessment();
    let (id, _) = walker.plan().placements.iter().find(|(_, placement)| placement.tag.0 == tag).expect("the unit");
    let base = assessment.units[id].base.clone().expect("a base");
    let used = base.uses.iter().find(|used| used.look.words() == "concrete cone").expect("the look");
    let record = used.record.as_ref().expect("a record");
    assert_eq!(walker.told_of("clause"), record.clause);
    assert_eq!(walker.told_of("formula"), record.formula);
    assert!(record.clause.contains("7.2.1.4"), "{}", record.clause);
    // By keyboard: the row keeps the focus, and Space closes it.
    walker.harness.get_by_role_and_label(Role::Button, "concrete cone").focus();
    walker.harness.run();
    walker.press(Key::Space);
    assert!(!walker.told().contains(&record.clause));
    walker.press(Key::Space);
    assert_eq!(walker.told_of("clause"), record.clause);
}

#[test]
fn the_picture_of_the_plate_follows_slew_and_opened_look() {
    let mut walker = on_the_small_roof();
    let picture = |walker: &Walker| walker.told_of("Picture of the base's plate");
    let before = picture(&walker);
    assert!(before.contains("kN") && before.contains("neutral axis") && before.contains("edge 0."), "{before}");
    bring_picture_in_sight(&mut walker);
    let (rect, painted) = picture_painted(&walker);
    assert!(painted.len() > 8, "{painted:?}");
    for _ in 0..4 {
        walker.press(Key::Q);
    }
    let (slewed_rect, slewed) = picture_painted(&walker);
    assert_eq!(rect, slewed_rect, "the picture stays where it is");
    assert_ne!(painted, slewed, "the arm as drawn turns in it");
    walker.click_button("steel, shear");
    assert_ne!(picture(&walker), before, "the opened look has a state of its own");
}

fn bring_picture_in_sight(walker: &mut Walker) {
    walker.harness.get_by_role_and_label(Role::Figure, "Picture of the base's plate").scroll_to_me();
    walker.harness.run();
}

/// The picture with where its texts stand.
fn picture_painted(walker: &Walker) -> (egui::Rect, Vec<(String, egui::Pos2)>) {
    let rect = walker.harness.get_by_role_and_label(Role::Figure, "Picture of the base's plate").rect();
    let texts = super::painted::texts_on(walker.harness.output(), rect);
    (rect, texts.into_iter().map(|text| (text.words.clone(), text.middle())).collect())
}

#[test]
fn no_figure_of_a_plate_stands_on_another() {
    let mut walker = on_the_small_roof();
    let sheet = walker.sheet();
    for look in ["pry-out", "concrete cone", "steel, shear", "plate bending", "punching, downward", "bond"] {
        walker.click_button(look);
        // However long the words of a record are, the column keeps its width.
        assert_eq!(walker.sheet(), sheet, "{look}");
        bring_picture_in_sight(&mut walker);
        let rect = walker.harness.get_by_role_and_label(Role::Figure, "Picture of the base's plate").rect();
        let texts = super::painted::texts_on(walker.harness.output(), rect);
        assert_eq!(super::painted::overlapping(&texts), [], "{look}");
        // What is cut off is not among the painted.
        let drawn = walker.told_of("Picture of the base's plate");
        assert_eq!(drawn.split("; ").count(), texts.len(), "{look}: {drawn}");
    }
}

#[test]
fn the_chart_tells_from_which_setback_the_base_holds() {
    let mut walker = on_the_small_roof();
    walker.press(Key::F4);
    walker.click_button("setback");
    let told = walker.told_of("Chart of the base against setback");
    let assessment = walker.harness.state().assessment();
    let tag = selected_tag(&walker);
    let (&id, _) = walker.plan().placements.iter().find(|(_, placement)| placement.tag.0 == tag).expect("the unit");
    let found = use_by_setback(walker.plan(), &assessment, id).expect("a curve");
    let first = found.holds.iter().next().expect("setbacks that hold");
    let words = format!("Holds from {}", length(first.from_m, UnitSystem::Si));
    assert!(told.contains(&words), "{words} is not in {told}");
    assert!(told.starts_with("Stands at 0.550 m."), "{told}");
    // Witness: a millimeter nearer than that it does not hold, and a millimeter farther it does.
    for (setback, holds) in [(first.from_m - 0.001, false), (first.from_m + 0.001, true)] {
        walker.type_into("setback", &format!("{setback:.4}"));
        let told = walker.told_of("utilization of the base");
        let is_whole = !told.ends_with("in part");
        assert_eq!(is_whole && share(&walker, &tag) <= 1.0, holds, "at {setback}: {told}");
    }
}

#[test]
fn the_ledger_shows_bases_and_sorts_by_their_use() {
    let mut walker = on_the_small_roof();
    walker.press(Key::F2);
    walker.click_button("Bases");
    let sort = |walker: &mut Walker| {
        walker.harness.get_by_role_and_label(Role::ColumnHeader, "Sort by used").click();
        walker.harness.run();
    };
    let used = |walker: &Walker| -> Vec<f64> {
        let mut rows: Vec<(f32, String)> = walker
            .harness
            .query_all_by_role(Role::Row)
            .filter_map(|node| Some((node.rect().min.y, node.accesskit_node().label()?)))
            .filter(|(_, label)| label.starts_with("Unit "))
            .collect();
        rows.sort_by(|a, b| a.0.total_cmp(&b.0));
        rows.iter().map(|(_, label)| share(walker, label.trim_start_matches("Unit "))).collect()
    };
    sort(&mut walker);
    let upward = used(&walker);
    assert!(upward.len() > 3 && upward.windows(2).all(|pair| pair[0] <= pair[1]), "{upward:?}");
    sort(&mut walker);
    let downward = used(&walker);
    assert!(downward.windows(2).all(|pair| pair[0] >= pair[1]), "{downward:?}");
    for column in ["base", "fixing", "governs base", "to edge", "concrete", "test"] {
        let name = format!("Sort by {column}");
        assert!(walker.harness.query_by_role_and_label(Role::ColumnHeader, &name).is_some(), "{name}");
    }
}
