//! The demonstration plans with their answers.

use gantline_exchange::answers::{CheckAnswer, ReactionsAnswer};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::file::read;
use serde_json::{Value, to_value};

/// Plans that are answered about: one without mistakes, one that is full of them.
pub const PLANS: [&str; 2] = [
    include_str!("../../../../demo-projects/small-roof.json"),
    include_str!("../../../../demo-projects/courtyard-building.json"),
];

/// The answers about a plan.
pub fn answers(text: &str) -> (CheckAnswer, ReactionsAnswer) {
    let plan = read(text.as_bytes()).unwrap();
    let assessment = assess(&plan, &mut Memo::new());
    (CheckAnswer::of(&plan, &assessment), ReactionsAnswer::of(&plan, &assessment))
}

/// The same as JSON values.
pub fn as_values(text: &str) -> (Value, Value) {
    let (check, reactions) = answers(text);
    (to_value(check).unwrap(), to_value(reactions).unwrap())
}
