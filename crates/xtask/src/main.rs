//! Chores of the project: `cargo xtask start`, `test`, `rooms`, `reference`, `bench`. No dependencies, so that it is built in seconds.

mod bench;
mod libraries;
mod numbers;
mod packages;
mod reference;
mod rooms;
mod start;
mod steps;
mod tests_run;

use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask CHORE

  start [PLAN]   build Gantline and open it; without a display do the same job headless on a demonstration plan
  test  [ARGS]   install what the tests need and run them all; ARGS go to cargo test
  rooms          check that imports between the crates run one way
  reference      compute the reference values of other programs again and compare with the committed ones
  bench [ARGS]   run the benches; ARGS go to criterion";

fn main() -> ExitCode {
    let mut words = std::env::args().skip(1);
    let chore = words.next().unwrap_or_default();
    let rest: Vec<String> = words.collect();
    let done = match chore.as_str() {
        "start" => start::start(&rest),
        "test" => tests_run::test(&rest),
        "rooms" => rooms::rooms(),
        "reference" => reference::reference(),
        "bench" => bench::bench(&rest),
        "" | "help" | "--help" | "-h" => {
            println!("{USAGE}");
            return ExitCode::SUCCESS;
        }
        other => Err(format!("there is no chore \"{other}\"\n\n{USAGE}")),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(what) => {
            eprintln!("xtask: {what}");
            ExitCode::FAILURE
        }
    }
}
