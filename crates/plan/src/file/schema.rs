//! The JSON Schema of the plan file.

use serde_json::{Value, json};

use super::{FORMAT, VERSION};
use crate::document::Plan;

/// JSON Schema of the plan file as it is written.
pub fn schema() -> Value {
    let mut schema = serde_json::to_value(schemars::schema_for!(Plan)).unwrap_or_default();
    schema["title"] = json!("Gantline plan file");
    schema["properties"]["format"] = json!({ "const": FORMAT, "description": "What the file is." });
    schema["properties"]["version"] = json!({ "const": VERSION, "description": "Version of the format." });
    if let Some(required) = schema["required"].as_array_mut() {
        required.insert(0, json!("format"));
        required.insert(1, json!("version"));
    }
    schema
}
