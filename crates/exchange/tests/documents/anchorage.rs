//! What base, fixing and concrete bear, in all documents: the figures of the answers, and nothing that was not checked left out.

use std::collections::BTreeMap;
use std::sync::Arc;

use gantline_exchange::answers::CheckAnswer;
use gantline_exchange::documents::DocumentKind;
use gantline_plan::assess::anchorage::Used;
use gantline_plan::assess::{Tally, Unavailable};
use gantline_plan::quantity::UnitSystem;
use serde_json::Value;

use super::worked::{COURTYARD, SMALL, Worked};

/// The lines of a table by their keys.
fn table(worked: &Worked, name: &str) -> Vec<BTreeMap<String, String>> {
    let wanted = gantline_exchange::documents::Wanted {
        kinds: vec![DocumentKind::Tables],
        ..gantline_exchange::documents::Wanted::all(UnitSystem::Si)
    };
    let found = worked.documents(&wanted).into_iter().find(|document| document.name == name).unwrap();
    let mut reader = ::csv::Reader::from_reader(found.bytes.as_slice());
    let heads = reader.headers().unwrap().clone();
    let by_head =
        |line: ::csv::StringRecord| heads.iter().map(str::to_owned).zip(line.iter().map(str::to_owned)).collect();
    reader.records().map(|line| by_head(line.unwrap())).collect()
}

fn check(worked: &Worked) -> Value {
    serde_json::to_value(CheckAnswer::of(&worked.plan, &worked.assessment)).unwrap()
}

/// A figure of the answer as the tables write it; nothing where it has none.
fn figure(value: &Value) -> String {
    value.as_f64().map_or_else(String::new, |value| value.to_string())
}

/// A share of the answer as the tables write it.
fn share(of: &Value) -> String {
    if of["nothing_resists"] == true { "nothing resists".to_owned() } else { figure(&of["utilization"]) }
}

/// A plan whose first base has a look that nothing resists, and its second one one that was not checked.
fn with_nothing_that_resists() -> Worked {
    let mut worked = Worked::of(SMALL);
    let mut units = worked.assessment.units.values_mut();
    let mut change = |outcome: Used| {
        let unit = Arc::make_mut(units.next().unwrap());
        let base = Arc::make_mut(unit.base.as_mut().unwrap());
        base.uses[0].outcome = outcome;
        base.governs = Some(0);
    };
    change(Used::Share(f64::INFINITY));
    change(Used::NotChecked("something".to_owned()));
    worked
}

/// Witness: the answer of `check`.
#[test]
fn every_use_of_every_base_is_a_row_with_the_figures_of_the_answer() {
    for text in [SMALL, COURTYARD] {
        let worked = Worked::of(text);
        let (rows, check) = (table(&worked, "gantline-anchorage.csv"), check(&worked));
        let mut rows = rows.iter();
        let mut computed = 0;
        for unit in check["units"].as_array().unwrap() {
            let Some(uses) = unit["base"]["uses"].as_array() else {
                let row = rows.next().unwrap();
                assert_eq!(
                    (row["unit"].as_str(), row["state"].as_str()),
                    (unit["id"].as_str().unwrap(), "not checked")
                );
                assert_ne!(row["why"], "");
                continue;
            };
            for used in uses {
                let row = rows.next().unwrap();
                assert_eq!(row["unit"], unit["id"].as_str().unwrap());
                assert_eq!(
                    (row["of"].as_str(), row["look"].as_str()),
                    (used["of"].as_str().unwrap(), used["look"].as_str().unwrap())
                );
                assert_eq!(row["utilization"], share(used));
                assert_eq!(row["clause"], used["record"]["clause"].as_str().unwrap_or_default());
                assert_eq!(row["action_n"], figure(&used["record"]["action_n"]));
                assert_eq!(row["resistance_n"], figure(&used["record"]["resistance_n"]));
                assert_eq!(row["combination"], used["state"]["combination"].as_str().unwrap_or_default());
                let why = used["not_checked"].as_str().or(used["not_applicable"].as_str());
                assert_eq!(row["why"], why.unwrap_or_default());
                computed += usize::from(!used["utilization"].is_null());
            }
        }
        assert!(rows.next().is_none() && computed > 20, "{computed}");
    }
}

/// Witness: the answer of `check`.
#[test]
fn a_base_has_what_governs_it_beside_its_reactions() {
    let worked = Worked::of(COURTYARD);
    let (rows, check) = (table(&worked, "gantline-bases.csv"), check(&worked));
    let units = check["units"].as_array().unwrap();
    assert_eq!(rows.len(), units.len());
    let mut states = std::collections::BTreeSet::new();
    for (row, unit) in rows.iter().zip(units) {
        let base = &unit["base"];
        assert_eq!(row["utilization"], share(base));
        assert_eq!(row["governs"], base["governs"].as_str().unwrap_or_default());
        assert_eq!(row["nearest_edge_m"], figure(&base["edges"][0]["distance_m"]));
        assert_eq!(row["thickness_m"], figure(&base["thickness_m"]));
        assert_eq!(row["anchorage"] == "holds", base["holds"] == true);
        let missing =
            base["uses"].as_array().is_some_and(|uses| uses.iter().any(|used| !used["not_checked"].is_null()));
        assert_eq!(!row["anchorage_not_checked"].is_empty(), missing);
        states.insert(row["anchorage"].clone());
    }
    assert!(states.len() > 1, "{states:?}");
}

#[test]
fn what_nothing_resists_is_said_in_words_and_never_left_empty() {
    let worked = with_nothing_that_resists();
    let bases = table(&worked, "gantline-bases.csv");
    assert_eq!(
        (bases[0]["utilization"].as_str(), bases[0]["anchorage"].as_str()),
        ("nothing resists", "used beyond its resistance")
    );
    assert_eq!((bases[1]["utilization"].as_str(), bases[1]["anchorage"].as_str()), ("", "not checked"));
    let uses = table(&worked, "gantline-anchorage.csv");
    assert_eq!((uses[0]["utilization"].as_str(), uses[0]["state"].as_str()), ("nothing resists", "over"));
    let model = String::from_utf8(worked.document(DocumentKind::Model, UnitSystem::Si)).unwrap();
    assert!(model.contains("'Largest use',$,IFCLABEL('nothing resists')"));
    let drawing = String::from_utf8_lossy(&worked.document(DocumentKind::Drawing, UnitSystem::Si)).into_owned();
    assert!(drawing.contains("nothing resists"));
    let check = check(&worked);
    let base = &check["units"][0]["base"];
    assert_eq!((&base["utilization"], &base["nothing_resists"]), (&Value::Null, &Value::Bool(true)));
    assert_eq!(base["uses"][0]["nothing_resists"], true);
    assert_eq!(check["units"][1]["base"]["nothing_resists"], false);
}

#[test]
fn findings_without_a_finding_tell_how_many_checks_were_made() {
    let mut worked = Worked::of(SMALL);
    worked.assessment.plan_checks.retain(|check| !check.is_finding());
    for unit in worked.assessment.units.values_mut() {
        Arc::make_mut(unit).checks.retain(|check| !check.is_finding());
    }
    for facade in worked.assessment.facades.values_mut() {
        Arc::make_mut(facade).checks.retain(|check| !check.is_finding());
    }
    let tally: Tally = worked.assessment.tally();
    let rows = table(&worked, "gantline-findings.csv");
    assert_eq!((rows.len(), rows[0]["state"].as_str()), (1, "no finding"));
    assert!(rows[0]["detail"].starts_with(&format!("{} checks: {} met; 0 failed", tally.all(), tally.meets)));
}

#[test]
fn combinations_that_could_not_be_computed_are_named_in_the_model() {
    let mut worked = Worked::of(SMALL);
    let unit = Arc::make_mut(worked.assessment.units.values_mut().next().unwrap());
    let reactions = Arc::make_mut(unit.reactions.as_mut().unwrap());
    let one = &mut reactions.combinations[0];
    one.sets.clear();
    one.unavailable = Some(Unavailable::Missing("the wind's pressure".to_owned()));
    let model = String::from_utf8(worked.document(DocumentKind::Model, UnitSystem::Si)).unwrap();
    let said: Vec<&str> =
        model.lines().filter(|line| line.contains("'Combinations that could not be computed'")).collect();
    assert_eq!(said.len(), 1);
    assert!(said[0].contains(": the wind''s pressure"), "{}", said[0]);
}
