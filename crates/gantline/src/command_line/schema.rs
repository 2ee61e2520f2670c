//! `gantline schema`: the JSON Schema of the plan file or of an answer.

use gantline_exchange::answers::{check_schema, reactions_schema};

use super::args::{SchemaArgs, SchemaOf};
use super::ending::{Ending, NoAnswer};
use super::told::tell;

/// Prints a schema.
pub fn schema(args: &SchemaArgs) -> Result<Ending, NoAnswer> {
    let schema = match args.of {
        SchemaOf::Plan => gantline_plan::file::schema(),
        SchemaOf::Check => check_schema(),
        SchemaOf::Reactions => reactions_schema(),
    };
    tell(&(serde_json::to_string_pretty(&schema)? + "\n"))?;
    Ok(Ending::Clear)
}
