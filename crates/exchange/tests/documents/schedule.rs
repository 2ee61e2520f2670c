//! The workbook, read back by another library; the tables against the answers.

use std::collections::BTreeMap;
use std::io::Cursor;

use calamine::{Data, Range, Reader, Xlsx};
use gantline_exchange::answers::ReactionsAnswer;
use gantline_exchange::documents::{DocumentKind, Imprint};
use gantline_exchange::schedule::{csv, reactions};
use gantline_plan::assess::{Component, Reactions, Sense};
use gantline_plan::document::Tag;
use gantline_plan::quantity::{Kind, UnitSystem};

use super::worked::{COURTYARD, SMALL, Worked};

/// Row of the heads, counted from 0.
const HEAD_ROW: usize = 3;

fn sheet(bytes: &[u8], name: &str) -> Range<Data> {
    let mut book = Xlsx::new(Cursor::new(bytes)).unwrap();
    assert_eq!(book.sheet_names(), ["About", "Bases", "Anchorage", "Reactions", "Parts", "Findings", "Basis"]);
    book.worksheet_range(name).unwrap()
}

/// Rows of a sheet by their heads.
fn rows(range: &Range<Data>) -> Vec<BTreeMap<String, Data>> {
    let all: Vec<&[Data]> = range.rows().collect();
    let heads: Vec<String> = all[HEAD_ROW].iter().map(ToString::to_string).collect();
    all[HEAD_ROW + 1..].iter().map(|row| heads.iter().cloned().zip(row.iter().cloned()).collect()).collect()
}

fn number(row: &BTreeMap<String, Data>, head: &str) -> f64 {
    match row.get(head) {
        Some(Data::Float(value)) => *value,
        other => panic!("{head}: {other:?} is no number"),
    }
}

/// The largest value of a component in the combination with the largest moment.
fn of_governing(reactions: &Reactions, component: Component) -> Option<f64> {
    reactions.governing()?.extreme(component, Sense::Max).map(|set| set.value)
}

/// Witness: every set of the assessment at the level that the row names, in the units in which people read it; the file keeps what an `f64` is, less nine digits.
#[test]
fn the_schedule_reads_back_with_the_figures_of_the_assessment_in_both_systems_of_units() {
    let worked = Worked::of(COURTYARD);
    let mut elsewhere = 0;
    for (units, force, moment, length) in
        [(UnitSystem::Si, "kN", "kNm", "m"), (UnitSystem::UsCustomary, "lbf", "lbf ft", "ft")]
    {
        let bytes = worked.document(DocumentKind::Schedule, units);
        let bases = rows(&sheet(&bytes, "Bases"));
        assert_eq!(bases.len(), worked.plan.placements.len());
        for (row, unit) in bases.iter().zip(worked.assessment.units.values()) {
            let near = |read: f64, kind: Kind, value: f64| {
                let shown = kind.in_shown_unit(value, units);
                assert!((read - shown).abs() <= 1e-8 * shown.abs().max(1e-3), "{read} for {shown}");
            };
            if let Some(frame) = unit.frame {
                near(number(row, &format!("x ({length})")), Kind::Length, frame.at.x);
                near(number(row, "Looks toward (°)"), Kind::Angle, frame.outward_rad);
            }
            let Some(reactions) = &unit.reactions else { continue };
            let of_level = |component: Component, sense: Sense| -> Vec<f64> {
                let level = row["Its level"].to_string();
                let results = reactions.combinations.iter().filter(|result| result.level.name() == level);
                let sets = results.flat_map(|result| &result.sets);
                sets.filter(|set| (set.component, set.sense) == (component, sense)).map(|set| set.value).collect()
            };
            let (moments, shears) = (of_level(Component::M, Sense::Max), of_level(Component::V, Sense::Max));
            if moments.is_empty() {
                continue;
            }
            let greatest = |all: &[f64]| all.iter().copied().fold(f64::MIN, f64::max);
            near(number(row, &format!("Largest M ({moment})")), Kind::Moment, greatest(&moments));
            near(number(row, &format!("Largest V ({force})")), Kind::Force, greatest(&shears));
            let up = of_level(Component::Fz, Sense::Max);
            near(number(row, &format!("Largest Fz, up ({force})")), Kind::Force, greatest(&up));
            let down = of_level(Component::Fz, Sense::Min).into_iter().fold(f64::MAX, f64::min);
            near(number(row, &format!("Smallest Fz ({force})")), Kind::Force, down);
            elsewhere += usize::from(of_governing(reactions, Component::V).is_some_and(|one| one < greatest(&shears)));
        }
    }
    assert!(elsewhere > 0, "some base has its largest V in another combination than its largest M");
}

#[test]
fn no_check_that_is_not_met_is_left_out_of_the_findings() {
    let worked = Worked::of(COURTYARD);
    let bytes = worked.document(DocumentKind::Schedule, UnitSystem::Si);
    let range = sheet(&bytes, "Findings");
    let tally = worked.assessment.tally();
    let read = rows(&range);
    let with = |state: &str| read.iter().filter(|row| row["State"] == Data::String(state.to_owned())).count();
    assert_eq!(with("blocking"), tally.blocking);
    assert_eq!(with("caution"), tally.caution);
    assert_eq!(with("note"), tally.note);
    assert_eq!(with("not checked"), tally.not_checked);
    assert_eq!(read.len(), tally.fails() + tally.not_checked);
    let counts = range.get_value((2, 0)).unwrap().to_string();
    assert!(counts.starts_with(&format!("{} checks: {} met;", tally.all(), tally.meets)), "{counts}");
}

#[test]
fn words_that_begin_like_a_formula_are_words_in_the_workbook_and_harmless_in_the_tables() {
    let mut worked = Worked::of(SMALL);
    let tags = ["=1+1", "+A1", "-A1", "@now", "\u{7}bell\u{fffe}"];
    for (placement, tag) in worked.plan.placements.values_mut().zip(tags) {
        placement.tag = Tag(tag.to_owned());
    }
    let worked = Worked::from(worked.plan);
    let bytes = worked.document(DocumentKind::Schedule, UnitSystem::Si);
    let mut book = Xlsx::new(Cursor::new(bytes.as_slice())).unwrap();
    assert!(book.worksheet_formula("Bases").unwrap().is_empty(), "no cell is a formula");
    let read = rows(&sheet(&bytes, "Bases"));
    let found: Vec<String> = read.iter().map(|row| row["Tag"].to_string()).take(tags.len()).collect();
    assert_eq!(found, ["=1+1", "+A1", "-A1", "@now", "bell"]);
    let table = String::from_utf8(worked.document(DocumentKind::Tables, UnitSystem::Si)).unwrap();
    assert!(table.lines().nth(1).unwrap().starts_with("'=1+1,"), "{table}");
}

/// Witness: the answers of the command line; both are nine digits of the same figures.
#[test]
fn the_table_of_reactions_has_every_set_of_the_answer() {
    let worked = Worked::of(COURTYARD);
    let answer = ReactionsAnswer::of(&worked.plan, &worked.assessment);
    let imprint = Imprint::of(&worked.plan, Some("2026-03-31"));
    let text = csv(&reactions::reactions(&worked.plan, &worked.assessment), &imprint).unwrap();
    let mut reader = ::csv::Reader::from_reader(text.as_bytes());
    let heads = reader.headers().unwrap().clone();
    let at = |head: &str| heads.iter().position(|one| one == head).unwrap();
    let (place, fz, mx, date) = (at("where"), at("fz_n"), at("mx_nm"), at("date"));
    let lines: Vec<::csv::StringRecord> = reader.records().collect::<Result<_, _>>().unwrap();
    assert!(lines.iter().all(|line| &line[date] == "2026-03-31"));
    let of_bases = lines.iter().filter(|line| &line[place] == "base");
    let read: Vec<(f64, f64)> = of_bases.map(|line| (line[fz].parse().unwrap(), line[mx].parse().unwrap())).collect();
    let sets = answer.units.iter().flat_map(|unit| &unit.combinations).flat_map(|one| &one.sets);
    let said: Vec<(f64, f64)> = sets.map(|set| (set.concurrent.fz_n.value(), set.concurrent.mx_nm.value())).collect();
    assert!(said.len() > 1000);
    assert_eq!(read, said);
}
