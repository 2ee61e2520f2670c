//! Nothing is left out of the report, and its figures are those of the answers.

use std::collections::BTreeMap;

use gantline_exchange::answers::{CheckAnswer, ReactionsAnswer};
use gantline_exchange::paper::Block;
use gantline_plan::basis::{Confirmation, presets};
use gantline_plan::document::ThingId;
use gantline_plan::file::read;
use gantline_plan::quantity::{self, UnitSystem, traced};
use serde_json::Value;

use super::reading::{COURTYARD, LARGE, Reported, SMALL, cells, tables, tables_with, under, words};

fn number(value: &Value) -> Option<f64> {
    value.as_f64()
}

#[test]
fn every_finding_stands_in_the_report_once_and_the_tally_beside_them() {
    for text in [SMALL, COURTYARD] {
        let report = Reported::of(text);
        let chapter = report.under("Findings");
        let rows: Vec<Vec<String>> =
            tables_with(chapter, "Rule").iter().flat_map(|table| table.rows.iter().map(cells)).collect();
        let findings = report.assessment.findings();
        assert!(!findings.is_empty());
        assert_eq!(rows.len(), findings.len());
        for check in findings {
            let is_it = |row: &&Vec<String>| {
                row[1].starts_with(&format!("{}:", check.code.name()))
                    && row[4].contains(check.detail.trim())
                    && row[4].contains(check.way_out.trim())
            };
            assert!(rows.iter().any(|row| is_it(&row)), "{check:?}");
        }
        let tally = report.assessment.tally();
        let told = format!("{} checks: {} met; {} failed", tally.all(), tally.meets, tally.fails());
        assert!(chapter.iter().flat_map(words).any(|words| words.starts_with(&told)), "{told}");
    }
}

#[test]
fn every_combination_has_all_its_sets_with_the_figures_of_the_answer() {
    let report = Reported::of(SMALL);
    let answer = serde_json::to_value(ReactionsAnswer::of(&report.plan, &report.assessment)).unwrap();
    let mut looked_at = 0;
    for unit in answer["units"].as_array().unwrap() {
        let tag = unit["tag"].as_str().unwrap();
        let sections = (1..).map_while(|index| under(&report.blocks, &format!("Unit {index}:")));
        let stands_there =
            |blocks: &&[Block]| words(&blocks[0])[0].trim_end_matches('.').split([' ', ',']).any(|word| word == tag);
        let own: Vec<&[Block]> = sections.filter(stands_there).collect();
        assert_eq!(own.len(), 1, "{tag} stands in one unit");
        let told: Vec<String> = own[0].iter().flat_map(words).collect();
        let sets: Vec<Vec<String>> =
            tables_with(own[0], "Factor on weight").iter().flat_map(|table| table.rows.iter().map(cells)).collect();
        let mut rows = sets.iter();
        for combination in unit["combinations"].as_array().unwrap() {
            let name = combination["name"].as_str().unwrap();
            let inside = combination["inside"].as_str().unwrap();
            assert!(told.iter().any(|words| words.starts_with(name) && words.ends_with(inside)), "{name}");
            for set in combination["sets"].as_array().unwrap() {
                let row = rows.next().expect("a row for each set");
                assert!(row[0].starts_with(set["component"].as_str().unwrap()), "{row:?}");
                let six = &set["concurrent"];
                let forces =
                    ["fx_n", "fy_n", "fz_n"].map(|key| traced(number(&six[key]).unwrap(), "N", UnitSystem::Si));
                let moments =
                    ["mx_nm", "my_nm", "mz_nm"].map(|key| traced(number(&six[key]).unwrap(), "N*m", UnitSystem::Si));
                let answered = [forces, moments].concat();
                assert!(near_all(&row[1..7], &answered), "{row:?} {answered:?}");
                looked_at += 1;
            }
        }
        assert_eq!(rows.next(), None);
    }
    assert!(looked_at > 100, "{looked_at}");
}

/// The same but for what rounding to nine digits may do to the fourth, and for what is nothing beside its neighbors.
fn near_all(one: &[String], other: &[String]) -> bool {
    let value = |words: &str| words.split(' ').next().and_then(|digits| digits.parse::<f64>().ok()).unwrap();
    one.iter().zip(other).all(|(a, b)| (value(a) - value(b)).abs() <= 1.1e-3 * value(b).abs().max(1e-3))
}

#[test]
fn every_base_stands_in_the_report_once_with_its_tag() {
    for text in [SMALL, COURTYARD, LARGE] {
        let report = Reported::of(text);
        let mut counts: BTreeMap<String, usize> = BTreeMap::new();
        for table in tables_with(report.under("Bases"), "Setback") {
            for row in &table.rows {
                *counts.entry(cells(row)[0].clone()).or_default() += 1;
            }
        }
        assert_eq!(counts.len(), report.plan.placements.len());
        assert!(counts.values().all(|count| *count == 1), "{counts:?}");
        for placement in report.plan.placements.values() {
            let tag = &placement.tag.0;
            assert!(counts.keys().any(|key| key == tag || key.starts_with(&format!("{tag} ("))), "{tag}");
        }
    }
}

#[test]
fn bases_have_the_figures_of_the_check_answer() {
    let report = Reported::of(SMALL);
    let answer = serde_json::to_value(CheckAnswer::of(&report.plan, &report.assessment)).unwrap();
    let sections: Vec<&[Block]> = (1..).map_while(|index| under(&report.blocks, &format!("Base {index}:"))).collect();
    let mut looked_at = 0;
    for unit in answer["units"].as_array().unwrap() {
        let tag = unit["tag"].as_str().unwrap();
        let holds_tag = |blocks: &&&[Block]| {
            tables_with(blocks, "Setback").iter().any(|table| table.rows.iter().any(|row| cells(row)[0] == tag))
        };
        let own = sections.iter().find(holds_tag).unwrap_or_else(|| panic!("{tag} has a section"));
        let overviews = tables_with(own, "Resists");
        let mut rows = overviews.iter().flat_map(|table| table.rows.iter().map(cells));
        let shown = |used: &&Value| used["not_applicable"].is_null();
        for used in unit["base"]["uses"].as_array().unwrap().iter().filter(shown) {
            let row = rows.next().expect("a row for each look");
            assert_eq!(row[0], used["look"].as_str().unwrap());
            let force = |key: &str| {
                let value = number(&used["record"][key]);
                value.map_or_else(|| "none".to_owned(), |value| traced(value, "N", UnitSystem::Si))
            };
            assert_eq!([&row[2], &row[3]], [&force("action_n"), &force("resistance_n")]);
            if let Some(share) = number(&used["utilization"]) {
                assert_eq!(row[4], quantity::utilization(share));
                looked_at += 1;
            }
        }
        assert!(rows.next().is_none());
    }
    assert!(looked_at > 80, "{looked_at}");
}

#[test]
fn what_was_not_checked_of_a_base_is_said_with_what_is_missing() {
    let report = Reported::of(COURTYARD);
    let chapter: Vec<String> = report.under("Bases").iter().flat_map(words).collect();
    let mut missing = 0;
    for unit in report.assessment.units.values() {
        for (used, what) in unit.base.iter().flat_map(|base| base.not_checked()) {
            missing += 1;
            let is_it = |words: &&String| {
                words.starts_with("Not checked, so not met: ")
                    && words.contains(used.look.words())
                    && words.contains(what)
            };
            assert!(chapter.iter().any(|words| is_it(&words)), "{what}");
        }
    }
    assert!(missing > 0);
}

#[test]
fn alike_bases_are_printed_once_and_only_those() {
    let report = Reported::of(LARGE);
    let sections = (1..).map_while(|index| under(&report.blocks, &format!("Base {index}:"))).count();
    assert!(sections < report.plan.placements.len(), "{sections} sections");
    let differ = |a: &ThingId, b: &ThingId| {
        let base = |thing: &ThingId| match thing {
            ThingId::Placement(id) => report.assessment.units[id].base.clone(),
            _ => None,
        };
        base(a).map(|base| base.uses.clone()) != base(b).map(|base| base.uses.clone())
    };
    let id_of = |tag: &str| {
        let found = report.plan.placements.iter().find(|(_, placement)| placement.tag.0 == tag);
        ThingId::Placement(*found.unwrap().0)
    };
    for index in 1..=sections {
        let section = under(&report.blocks, &format!("Base {index}:")).unwrap();
        let tags: Vec<String> =
            tables_with(section, "Setback")[0].rows.iter().map(|row| cells(row)[0].clone()).collect();
        assert!(tags.iter().all(|tag| !differ(&id_of(&tags[0]), &id_of(tag))), "{tags:?}");
    }
}

#[test]
fn every_value_that_nobody_has_confirmed_is_in_the_list_of_assumptions() {
    let mut plan = read(SMALL.as_bytes()).unwrap();
    plan.basis = presets().unwrap().remove(0).basis;
    let report = Reported::from(plan, UnitSystem::Si);
    let listed: Vec<String> = report.under("Assumptions").iter().flat_map(words).collect();
    let basis = &report.plan.basis;
    let open: Vec<_> =
        basis.figures().into_iter().filter(|figure| figure.sourced.standing == Confirmation::Default).collect();
    assert!(!open.is_empty());
    for figure in open {
        let value = quantity::number(figure.kind, figure.sourced.value, UnitSystem::Si);
        let told = format!("{}: {} {value}", figure.group, figure.name);
        assert!(listed.iter().any(|words| words.starts_with(&told)), "{told}");
    }
    let families = report.plan.families.values();
    assert!(families.clone().count() > 0);
    for family in families {
        assert!(listed.iter().any(|words| words.starts_with(&family.name) && words.contains("invented")));
    }
}

#[test]
fn the_same_plan_gives_the_same_blocks_and_us_units_other_figures() {
    let (one, other) = (Reported::of(SMALL), Reported::of(SMALL));
    assert!(one.blocks == other.blocks);
    let us = Reported::from(read(SMALL.as_bytes()).unwrap(), UnitSystem::UsCustomary);
    let told: Vec<String> = us.blocks.iter().flat_map(words).collect();
    assert!(told.iter().any(|words| words.contains("lbf ft")));
    let heads = |report: &Reported| report.blocks.iter().filter(|block| matches!(block, Block::Heading { .. })).count();
    assert_eq!(heads(&us), heads(&one));
}

#[test]
fn each_unit_has_its_section_its_plate_and_its_inner_forces_as_pictures() {
    let report = Reported::of(SMALL);
    let pictures = |blocks: &[Block]| {
        let captions = blocks.iter().filter_map(|block| match block {
            Block::Picture { caption, drawing } => {
                assert!(!drawing.marks.is_empty());
                // Between the margins of either size of paper.
                let size_mm = drawing.bounds().unwrap().size_m() / drawing.scale.m_per_mm;
                assert!(size_mm.x <= 170.0 && size_mm.y <= 200.0, "{caption}: {size_mm}");
                Some(caption.clone())
            }
            _ => None,
        });
        captions.collect::<Vec<_>>()
    };
    for index in 1.. {
        let Some(unit) = under(&report.blocks, &format!("Unit {index}:")) else { break };
        let captions = pictures(unit);
        for begins in [&format!("Unit {index}, section"), "Along the mast", "Along the arm"] {
            assert!(captions.iter().any(|caption| caption.starts_with(begins)), "{begins}: {captions:?}");
        }
    }
    assert!(pictures(report.under("Base 1:")).iter().any(|caption| caption.starts_with("Plate of the base")));
    assert!(tables(report.under("Facades")).iter().any(|table| table.rows.len() == report.assessment.facades.len()));
}
