//! The tally of the four outcomes in one line: silence is never taken for a pass.

use gantline_plan::assess::Tally;

/// The tally in words.
pub fn tally_line(tally: Tally) -> String {
    format!("{tally}\n")
}
