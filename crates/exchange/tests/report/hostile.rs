//! Names that anyone may have typed, and plans of which little is left.

use gantline_exchange::paper::Block;
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::document::{Plan, Tag};
use gantline_plan::file::read;
use gantline_plan::quantity::UnitSystem;

use super::reading::{COURTYARD, Reported, SMALL, words};

fn is_printable(letter: char) -> bool {
    !letter.is_control()
        && !matches!(letter, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{feff}' | '\u{fffe}' | '\u{ffff}')
}

fn read_all(report: &Reported) -> Vec<String> {
    let told: Vec<String> = report.blocks.iter().flat_map(words).collect();
    for words in &told {
        assert!(words.chars().all(is_printable), "{words:?}");
        assert!(words.chars().count() <= 4_001, "{} letters", words.chars().count());
    }
    for block in &report.blocks {
        if let Block::Heading { words, .. } = block {
            assert!(!words.is_empty() && words.chars().count() < 120, "{words}");
        }
        if let Block::Table(table) = block {
            assert!(table.columns.iter().all(|column| column.share > 0.0));
            assert!(table.rows.iter().all(|row| row.cells.len() == table.columns.len()), "{table:?}");
        }
    }
    told
}

#[test]
fn any_names_are_printed_without_what_steers_a_printer() {
    let names = [
        String::new(),
        " \t\n".to_owned(),
        "a\u{0}b\u{1b}[31m\r\nc".to_owned(),
        "\u{202e}desrever\u{2066}".to_owned(),
        "شرفة 屋上 Dachüberstand 🏗".to_owned(),
        "x".repeat(20_000),
    ];
    for name in names {
        let mut plan = read(COURTYARD.as_bytes()).unwrap();
        plan.title.job.clone_from(&name);
        plan.title.remark.clone_from(&name);
        plan.basis.name.clone_from(&name);
        plan.placements.values_mut().for_each(|placement| placement.tag = Tag(name.clone()));
        plan.roofs.values_mut().for_each(|roof| roof.name.clone_from(&name));
        plan.obstacles.values_mut().for_each(|obstacle| obstacle.name.clone_from(&name));
        plan.basis.combinations.iter_mut().for_each(|combined| combined.name.clone_from(&name));
        for family in plan.families.values_mut() {
            let family = std::sync::Arc::make_mut(family);
            family.name.clone_from(&name);
            family.masts.values_mut().for_each(|mast| mast.name.clone_from(&name));
            family.bases.values_mut().for_each(|base| base.name.clone_from(&name));
            family.fixings.values_mut().for_each(|fixing| fixing.name.clone_from(&name));
        }
        let report = Reported::from(plan, UnitSystem::Si);
        let told = read_all(&report);
        // Units of one name are told apart by their ids.
        for id in report.plan.placements.keys() {
            assert!(told.iter().any(|words| words.contains(&id.to_string())), "{id}");
        }
    }
}

#[test]
fn a_plan_with_nothing_in_it_and_one_without_parts_have_their_report() {
    for units in [UnitSystem::Si, UnitSystem::UsCustomary] {
        let empty = Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode());
        assert!(read_all(&Reported::from(empty, units)).iter().any(|words| words == "The plan has no bases."));
        let mut plan = read(SMALL.as_bytes()).unwrap();
        plan.families.clear();
        let told = read_all(&Reported::from(plan, units));
        assert!(told.iter().any(|words| words.contains("is not calculated")));
        let mut plan = read(SMALL.as_bytes()).unwrap();
        plan.roofs.clear();
        read_all(&Reported::from(plan, units));
        let mut plan = read(SMALL.as_bytes()).unwrap();
        plan.basis.combinations.clear();
        read_all(&Reported::from(plan, units));
        let mut plan = read(SMALL.as_bytes()).unwrap();
        plan.basis.cases.clear();
        plan.code.factors.clear();
        read_all(&Reported::from(plan, units));
    }
}
