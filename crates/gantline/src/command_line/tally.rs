//! The tally of the four outcomes in one line: silence is never taken for a pass.

use gantline_plan::assess::Tally;

/// The tally in words.
pub fn tally_line(tally: Tally) -> String {
    format!(
        "{} checks: {} met; {} failed ({} blocking, {} caution, {} note); {} not checked; {} not applicable\n",
        tally.all(),
        tally.meets,
        tally.fails(),
        tally.blocking,
        tally.caution,
        tally.note,
        tally.not_checked,
        tally.not_applicable
    )
}
