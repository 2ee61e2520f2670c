//! The whole set, in the order in which people leaf through it.

use super::elevations::elevations;
use super::given::Given;
use super::roof_plan::{Shows, roof_plans};
use super::sections::sections;
use super::setting_out::setting_out;
use super::sheet::{Aside, Draft, Series, paper};
use crate::paper::Paper;

/// The drawing set of a plan.
pub fn drawing_set(given: &Given<'_>) -> Paper {
    let mut drafts = roof_plans(given, Shows::Everything);
    drafts.extend(elevations(given));
    drafts.extend(sections(given));
    drafts.extend(setting_out(given));
    if drafts.is_empty() {
        drafts.push(nothing(Series::Roof));
    }
    paper(given, "Drawing set", drafts)
}

/// A sheet that says that there is nothing to be drawn.
pub(crate) fn nothing(series: Series) -> Draft {
    let note = "There is nothing on the plan to be drawn: no roof and no base.".to_owned();
    let title = "Nothing to be drawn".to_owned();
    Draft { series, title, scale: None, things: Vec::new(), aside: vec![Aside::Note(note)] }
}
