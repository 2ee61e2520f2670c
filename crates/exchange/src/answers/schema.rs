//! JSON Schema of the answers, as they are written.

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde_json::{Value, json};

use super::{CheckAnswer, ReactionsAnswer};

/// Schema of what `check` answers.
pub fn check_schema() -> Value {
    written::<CheckAnswer>("Gantline check answer", CheckAnswer::FORMAT, CheckAnswer::VERSION)
}

/// Schema of what `reactions` answers.
pub fn reactions_schema() -> Value {
    written::<ReactionsAnswer>("Gantline reactions answer", ReactionsAnswer::FORMAT, ReactionsAnswer::VERSION)
}

fn written<T: JsonSchema>(title: &str, format: &str, version: u32) -> Value {
    let settings = SchemaSettings::draft2020_12().for_serialize();
    let mut schema = settings.into_generator().into_root_schema_for::<T>().to_value();
    schema["title"] = json!(title);
    schema["properties"]["format"] = json!({ "const": format, "description": "What the text is." });
    schema["properties"]["version"] = json!({ "const": version, "description": "Version of the form." });
    schema
}
