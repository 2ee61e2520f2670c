//! The report on paper: A4, or letter with US customary units; job, revision and date at the head of every page, at its foot that the
//! report is for planning, and which plan it was made from.

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::UnitSystem;

use super::blocks::named;
use super::report;
use crate::documents::Imprint;
use crate::paper::{Format, Paper, Sheet, lay_out};

/// What it is called.
const TITLE: &str = "Calculation report";

/// The calculation report of a plan, laid out on pages.
pub fn report_on_paper(plan: &Plan, assessment: &Assessment, imprint: &Imprint, units: UnitSystem) -> Paper {
    let or = |text: &str, missing: &str| if text.is_empty() { missing.to_owned() } else { text.to_owned() };
    let revision = or(&imprint.plan.revision, "not entered");
    let sheet = Sheet {
        format: match units {
            UnitSystem::Si => Format::A4,
            UnitSystem::UsCustomary => Format::Letter,
        },
        head_left: format!("{TITLE}: {}", named(&imprint.plan.job)),
        head_right: format!("revision {revision}, {}", or(&imprint.date, "no date")),
        foot: format!("For planning, not a permit to hang from a rope. Plan {}", imprint.short_hash()),
    };
    let job = &imprint.plan.job;
    Paper {
        title: if job.is_empty() { TITLE.to_owned() } else { format!("{TITLE}: {job}") },
        author: imprint.author.clone(),
        date: imprint.iso_date(),
        pages: lay_out(&report(plan, assessment, imprint, units), &sheet),
    }
}
