//! Reaction sets as a table: every set is a line, every line reads back.

use gantline_exchange::answers::sets_as_csv;

use super::plans::{PLANS, answers};

#[test]
fn every_set_is_a_line_that_reads_back_with_its_figures() {
    for text in PLANS {
        let (_, reactions) = answers(text);
        let table = sets_as_csv(&reactions).unwrap();
        let mut reader = csv::Reader::from_reader(table.as_bytes());
        let headings = reader.headers().unwrap().clone();
        let column = |name: &str| headings.iter().position(|heading| heading == name).unwrap();
        let lines: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
        let combinations = || reactions.units.iter().flat_map(|unit| &unit.combinations);
        let expected: usize = combinations()
            .map(|one| one.sets.len() + 2 * usize::from(one.brace_axial.is_some()) + one.foot.len())
            .sum::<usize>()
            + combinations().filter(|one| one.unavailable.is_some()).count()
            + reactions.units.iter().filter(|unit| unit.make_up_fault.is_some()).count();
        assert_eq!(lines.len(), expected);
        let at_base = lines.iter().filter(|line| &line[column("where")] == "base");
        for (line, set) in at_base.zip(combinations().flat_map(|one| &one.sets)) {
            assert_eq!(line[column("component")], set.component);
            assert_eq!(line[column("fz_n")].parse::<f64>().unwrap(), set.concurrent.fz_n.value());
            assert_eq!(&line[column("value_unit")], if set.component.starts_with('M') { "N·m" } else { "N" });
        }
    }
}

#[test]
fn a_combination_without_figures_is_a_line_that_says_why() {
    let (_, reactions) = answers(PLANS[1]);
    let table = sets_as_csv(&reactions).unwrap();
    assert!(table.contains("not checked: a declared rating"));
    assert!(table.contains("not applicable: "));
}

#[test]
fn tags_that_look_like_a_formula_are_harmless_and_figures_below_zero_stay_figures() {
    let (_, mut reactions) = answers(PLANS[0]);
    for (unit, tag) in reactions.units.iter_mut().zip(["=1+1", "+A1", "-A1", "@now"]) {
        tag.clone_into(&mut unit.tag);
        for combination in &mut unit.combinations {
            "=cmd".clone_into(&mut combination.name);
        }
    }
    let table = sets_as_csv(&reactions).unwrap();
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let headings = reader.headers().unwrap().clone();
    let column = |name: &str| headings.iter().position(|heading| heading == name).unwrap();
    let lines: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let tags: std::collections::BTreeSet<&str> = lines.iter().map(|line| &line[column("tag")]).collect();
    assert!(["'=1+1", "'+A1", "'-A1", "'@now"].iter().all(|tag| tags.contains(tag)), "{tags:?}");
    assert_eq!(&lines[0][column("combination")], "'=cmd");
    let below = lines.iter().filter(|line| line[column("fz_n")].parse::<f64>().is_ok_and(|fz| fz < 0.0)).count();
    assert!(below > 0, "a force below zero is a number");
}
