//! Answers are as their schemas say, and the schemas let nothing else pass.

use gantline_exchange::answers::{check_schema, reactions_schema};
use serde_json::{Value, json};

use super::plans::{PLANS, as_values};
use super::valid::faults;

fn none(found: &[String]) {
    assert!(found.is_empty(), "{}", found.iter().take(10).cloned().collect::<Vec<_>>().join("\n"));
}

#[test]
fn every_answer_is_as_its_schema_says() {
    let (check, reactions) = (check_schema(), reactions_schema());
    for text in PLANS {
        let (checked, reacted) = as_values(text);
        none(&faults(&check, &check, &checked, ""));
        none(&faults(&reactions, &reactions, &reacted, ""));
    }
}

#[test]
fn an_answer_with_a_key_too_many_or_too_few_or_of_another_kind_is_not_as_its_schema_says() {
    let schema = check_schema();
    let (sound, _) = as_values(PLANS[0]);
    let spoil: [fn(&mut Value); 4] = [
        |answer| answer["facades"][0]["length_ft"] = json!(3.0),
        |answer| {
            answer["tally"].as_object_mut().unwrap().remove("not_checked");
        },
        |answer| answer["units"][0]["clear_zone_pairs"][0]["clearance_m"] = json!("0.1"),
        |answer| answer["findings"][0]["outcome"] = json!("meets"),
    ];
    for spoil in spoil {
        let mut spoiled = sound.clone();
        spoil(&mut spoiled);
        assert!(!faults(&schema, &schema, &spoiled, "").is_empty());
    }
}

/// What carries no unit: names, words, codes, truths, counts, and what holds keys of its own.
fn is_measured(value: &Value) -> bool {
    match value {
        Value::Number(_) => true,
        Value::Array(items) => items.first().is_some_and(is_measured),
        _ => false,
    }
}

const UNITS: [&str; 12] = ["_c", "_m", "_m2", "_n", "_nm", "_pa", "_kg", "_rad", "_kg_m3", "_m_s", "share", "number"];
/// Counts and pure numbers.
const BARE: [&str; 20] = [
    "pins",
    "version",
    "checks",
    "meets",
    "fails",
    "fails_blocking",
    "fails_caution",
    "fails_note",
    "not_checked",
    "not_applicable",
    "utilization",
    "weight_factor",
    "weight_unfavorable",
    "weight_favorable",
    "alpha_cr",
    "persons",
    "weld_softening",
    "sustained_ratio",
    "modular_ratio",
    // A symbol's value: its unit stands beside it.
    "value",
];
/// Unit vectors.
const DIRECTIONS: [&str; 2] = ["outward", "pull_direction"];

fn keys_without_unit(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::Object(members) => {
            for (key, member) in members {
                let named = BARE.contains(&key.as_str()) || DIRECTIONS.contains(&key.as_str());
                if is_measured(member) && !named && !UNITS.iter().any(|unit| key.ends_with(unit)) {
                    found.push(key.clone());
                }
                keys_without_unit(member, found);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| keys_without_unit(item, found)),
        _ => {}
    }
}

#[test]
fn every_key_with_a_figure_says_its_unit() {
    for text in PLANS {
        let (check, reactions) = as_values(text);
        let mut found = Vec::new();
        keys_without_unit(&check, &mut found);
        keys_without_unit(&reactions, &mut found);
        none(&found);
    }
}

/// Whoever follows a record with a pocket calculator finds a figure beside each symbol, unless nothing resists.
#[test]
fn every_symbol_of_a_record_has_a_figure() {
    fn without(value: &Value, found: &mut Vec<String>) {
        match value {
            Value::Object(members) if members.get("nothing_resists") == Some(&Value::Bool(true)) => {}
            Value::Object(members) => {
                if let (Some(symbol), Some(Value::Null)) = (members.get("symbol"), members.get("value")) {
                    found.push(symbol.to_string());
                }
                members.values().for_each(|member| without(member, found));
            }
            Value::Array(items) => items.iter().for_each(|item| without(item, found)),
            _ => {}
        }
    }
    for text in PLANS {
        let mut found = Vec::new();
        without(&as_values(text).0, &mut found);
        assert!(found.is_empty(), "{found:?}");
    }
}

#[test]
fn figures_carry_at_most_nine_significant_digits() {
    fn digits(value: &Value, most: &mut usize) {
        match value {
            Value::Object(members) => members.values().for_each(|member| digits(member, most)),
            Value::Array(items) => items.iter().for_each(|item| digits(item, most)),
            Value::Number(number) => {
                let text = number.to_string();
                let mantissa: String = text.split('e').next().unwrap().chars().filter(char::is_ascii_digit).collect();
                *most = (*most).max(mantissa.trim_start_matches('0').trim_end_matches('0').len());
            }
            _ => {}
        }
    }
    let (check, reactions) = as_values(PLANS[1]);
    let mut most = 0;
    digits(&check, &mut most);
    // Parts are printed as they are stored; all that is computed stands beside them.
    let mut computed = reactions;
    for unit in computed["units"].as_array_mut().unwrap() {
        unit.as_object_mut().unwrap().remove("make_up");
        if let Some(strength) = unit["strength"].as_object_mut() {
            strength.remove("slew_hold");
        }
    }
    digits(&computed, &mut most);
    assert_eq!(most, 9);
}
