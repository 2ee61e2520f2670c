//! Runs what is asked: a question is answered here, everything else is left to the window.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Parser;

use super::args::{Asked, Question};
use super::check::check;
use super::demonstration::demonstration;
use super::documents::documents;
use super::ending::{Ending, NoAnswer, UNREADABLE};
use super::outline::outline;
use super::reactions::reactions;
use super::schema::schema;
use super::told::tell_beside;

/// Answers the command line; without a question `window` opens, with the plan that is named.
pub fn run(window: impl FnOnce(Option<PathBuf>) -> ExitCode) -> ExitCode {
    let Asked { plan, question } = Asked::parse();
    match question {
        None => window(plan),
        Some(question) => ended(answer(&question)),
    }
}

fn answer(question: &Question) -> Result<Ending, NoAnswer> {
    match question {
        Question::Check(args) => check(args),
        Question::Reactions(args) => reactions(args),
        Question::Documents(args) => documents(args),
        Question::Schema(args) => schema(args),
        Question::Outline(args) => outline(args),
        Question::Demonstration(args) => demonstration(args),
    }
}

fn ended(answer: Result<Ending, NoAnswer>) -> ExitCode {
    match answer {
        Ok(ending) => ending.into(),
        Err(fault) => {
            // When the error output is gone too, the exit code is all that is left to say.
            let _ = tell_beside(&format!("gantline: {fault}\n"));
            ExitCode::from(UNREADABLE)
        }
    }
}
