//! Plan to bytes. Points stay on one line, so that a diff of two plans stays readable.

use serde_json::Value;

use super::{FORMAT, VERSION};
use crate::document::Plan;

/// The plan file of a plan: the same plan gives the same bytes. An attachment that no underlay shows is left out.
pub fn write(plan: &Plan) -> Result<String, serde_json::Error> {
    let mut text = String::new();
    let body = if plan.attachments_in_use().count() == plan.attachments.len() {
        serde_json::to_value(plan)?
    } else {
        let mut without_leftovers = plan.clone();
        without_leftovers.drop_unused_attachments();
        serde_json::to_value(&without_leftovers)?
    };
    text.push_str("{\n  \"format\": ");
    text.push_str(&serde_json::to_string(FORMAT)?);
    text.push_str(",\n  \"version\": ");
    text.push_str(&VERSION.to_string());
    if let Value::Object(members) = &body {
        for key in ORDER {
            if let Some(value) = members.get(*key) {
                text.push_str(",\n  ");
                text.push_str(&serde_json::to_string(key)?);
                text.push_str(": ");
                push(&mut text, value, 1)?;
            }
        }
    }
    text.push_str("\n}\n");
    Ok(text)
}

/// Order of the plan's parts in the file: what people look for first comes first.
const ORDER: &[&str] = &[
    "title",
    "datum",
    "next_id",
    "roofs",
    "obstacles",
    "placements",
    "underlays",
    "code",
    "basis",
    "families",
    "attachments",
];

fn push(text: &mut String, value: &Value, depth: usize) -> Result<(), serde_json::Error> {
    match value {
        Value::Array(items) if items.iter().all(Value::is_number) || items.is_empty() => {
            text.push_str(&serde_json::to_string(items)?);
        }
        Value::Array(items) => {
            text.push('[');
            for (index, item) in items.iter().enumerate() {
                break_line(text, index > 0, depth + 1);
                push(text, item, depth + 1)?;
            }
            break_line(text, false, depth);
            text.push(']');
        }
        Value::Object(members) if members.is_empty() => text.push_str("{}"),
        Value::Object(members) => {
            text.push('{');
            for (index, (key, member)) in members.iter().enumerate() {
                break_line(text, index > 0, depth + 1);
                text.push_str(&serde_json::to_string(key)?);
                text.push_str(": ");
                push(text, member, depth + 1)?;
            }
            break_line(text, false, depth);
            text.push('}');
        }
        plain => text.push_str(&serde_json::to_string(plain)?),
    }
    Ok(())
}

fn break_line(text: &mut String, after_one: bool, depth: usize) {
    if after_one {
        text.push(',');
    }
    text.push('\n');
    text.push_str(&"  ".repeat(depth));
}
