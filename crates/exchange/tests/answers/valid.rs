//! Judges a value by a JSON Schema, as far as the schemas here go: types, constants, properties, items, alternatives.

use serde_json::Value;

/// Keywords that say nothing about validity, or only what numbers of another language they fit.
const SILENT: [&str; 9] =
    ["$schema", "$defs", "title", "description", "format", "default", "minimum", "maximum", "examples"];

/// Every place where a value is not as its schema says.
pub fn faults(root: &Value, schema: &Value, value: &Value, place: &str) -> Vec<String> {
    let Value::Object(keywords) = schema else {
        return if schema == &Value::Bool(false) {
            vec![format!("{place}: nothing may stand here")]
        } else {
            Vec::new()
        };
    };
    let mut found = Vec::new();
    for (keyword, said) in keywords {
        found.extend(by_keyword(root, schema, keyword, said, value, place));
    }
    found
}

fn by_keyword(root: &Value, schema: &Value, keyword: &str, said: &Value, value: &Value, place: &str) -> Vec<String> {
    let alternatives =
        || said.as_array().unwrap().iter().filter(|one| faults(root, one, value, place).is_empty()).count();
    let when =
        |holds: bool| if holds { Vec::new() } else { vec![format!("{place}: {keyword} {said} against {value}")] };
    match keyword {
        "$ref" => {
            let target = root.pointer(said.as_str().unwrap().trim_start_matches('#')).expect("the schema has the part");
            faults(root, target, value, place)
        }
        "type" => {
            let names: Vec<&str> = said.as_array().map_or_else(
                || vec![said.as_str().unwrap()],
                |all| all.iter().map(|one| one.as_str().unwrap()).collect(),
            );
            when(names.iter().any(|name| is_of_type(value, name)))
        }
        "const" => when(said == value),
        "enum" => when(said.as_array().unwrap().contains(value)),
        "anyOf" => when(alternatives() > 0),
        "oneOf" => when(alternatives() == 1),
        "allOf" => when(alternatives() == said.as_array().unwrap().len()),
        "required" => {
            let Value::Object(members) = value else { return Vec::new() };
            when(said.as_array().unwrap().iter().all(|name| members.contains_key(name.as_str().unwrap())))
        }
        "properties" => {
            let (Value::Object(members), Value::Object(known)) = (value, said) else { return Vec::new() };
            let of = |(name, inner): (&String, &Value)| {
                members
                    .get(name)
                    .map_or_else(Vec::new, |member| faults(root, inner, member, &format!("{place}/{name}")))
            };
            known.iter().flat_map(of).collect()
        }
        "additionalProperties" => {
            let Value::Object(members) = value else { return Vec::new() };
            let known = schema.get("properties").and_then(Value::as_object);
            let others = members.iter().filter(|(name, _)| known.is_none_or(|known| !known.contains_key(*name)));
            others.flat_map(|(name, member)| faults(root, said, member, &format!("{place}/{name}"))).collect()
        }
        "items" => {
            let Value::Array(items) = value else { return Vec::new() };
            let each = |(index, item)| faults(root, said, item, &format!("{place}/{index}"));
            items.iter().enumerate().flat_map(each).collect()
        }
        "minItems" => when(value.as_array().is_none_or(|items| items.len() as u64 >= said.as_u64().unwrap())),
        "maxItems" => when(value.as_array().is_none_or(|items| items.len() as u64 <= said.as_u64().unwrap())),
        _ if SILENT.contains(&keyword) => Vec::new(),
        _ => vec![format!("{place}: the keyword {keyword} is not known here")],
    }
}

fn is_of_type(value: &Value, name: &str) -> bool {
    match name {
        "null" => value.is_null(),
        "boolean" => value.is_boolean(),
        "number" => value.is_number(),
        "integer" => value.is_u64() || value.is_i64(),
        "string" => value.is_string(),
        "array" => value.is_array(),
        "object" => value.is_object(),
        _ => false,
    }
}
