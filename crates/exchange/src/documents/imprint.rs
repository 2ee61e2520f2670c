//! What every document says of itself: which plan it was made from, on which basis, and what may be done with it.

use gantline_plan::basis::Confirmation;
use gantline_plan::document::Plan;

use crate::answers::plan_named::PlanNamed;

pub use crate::answers::plan_named::CAUTION;

/// The imprint of a document. Dates are text that people enter: there is no clock, so that the same plan gives the same
/// document.
#[derive(Debug, Clone, PartialEq)]
pub struct Imprint {
    /// The plan with its basis, its families and its content hash.
    pub plan: PlanNamed,
    /// Street, place.
    pub address: String,
    /// Who planned it.
    pub author: String,
    /// Date of the revision, or the date that was asked for.
    pub date: String,
    /// Where the regime of the basis was read, and who stands behind it.
    pub regime_source: String,
    /// Whether resistances are reduced by factors as well, and where that is said.
    pub resistances: String,
}

impl Imprint {
    /// The imprint of a plan's documents. A date takes the place of the plan's.
    pub fn of(plan: &Plan, date: Option<&str>) -> Self {
        let basis = &plan.basis;
        let reduced =
            if basis.resistance_factors.value { "are reduced by factors" } else { "are not reduced by factors" };
        Self {
            plan: PlanNamed::of(plan),
            address: plan.title.address.clone(),
            author: plan.title.author.clone(),
            date: date.unwrap_or(&plan.title.date).to_owned(),
            regime_source: format!("{} ({})", basis.regime.source, standing_words(&basis.regime.standing)),
            resistances: format!("Resistances {reduced}: {}", basis.resistance_factors.source),
        }
    }

    /// Job, revision and date in one line; what is not entered is said to be missing.
    pub fn line(&self) -> String {
        let or = |text: &str, missing: &str| if text.is_empty() { missing.to_owned() } else { text.to_owned() };
        let revision = if self.plan.revision.is_empty() {
            "no revision".to_owned()
        } else {
            format!("revision {}", self.plan.revision)
        };
        format!("{}, {revision}, {}", or(&self.plan.job, "job without a name"), or(&self.date, "no date"))
    }

    /// The content hash as it stands in titles: long enough to tell plans apart by eye.
    pub fn short_hash(&self) -> &str {
        self.plan.content_sha256.get(..16).unwrap_or(&self.plan.content_sha256)
    }

    /// Label and text of everything that it says, in order.
    pub fn rows(&self) -> Vec<(&'static str, String)> {
        let plan = &self.plan;
        let family = |named: &crate::answers::plan_named::FamilyNamed| {
            let origin = if named.is_invented { " (invented for demonstration: no such parts are made)" } else { "" };
            format!("{}{origin}", named.name)
        };
        // A document without revision or date says so wherever it is read.
        let entered = |text: &str| if text.is_empty() { "not entered".to_owned() } else { text.to_owned() };
        vec![
            ("Job", plan.job.clone()),
            ("Address", self.address.clone()),
            ("Planned by", self.author.clone()),
            ("Revision", entered(&plan.revision)),
            ("Date", entered(&self.date)),
            ("Remark", plan.remark.clone()),
            ("Load basis", plan.load_basis.clone()),
            ("Regime", plan.regime.clone()),
            ("Source of the regime", self.regime_source.clone()),
            ("Design code", plan.design_code.clone()),
            ("Resistances", self.resistances.clone()),
            ("Families", plan.families.iter().map(family).collect::<Vec<_>>().join("; ")),
            ("Plan, SHA-256 of its file", plan.content_sha256.clone()),
        ]
    }

    /// The date as year, month and day, if it is written as in ISO 8601 (2026-03-31).
    pub fn iso_date(&self) -> Option<(u16, u8, u8)> {
        let mut parts = self.date.trim().split('-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        if parts.next().is_some() || year.len() != 4 || month.len() != 2 || day.len() != 2 {
            return None;
        }
        let (year, month, day) = (year.parse().ok()?, month.parse().ok()?, day.parse().ok()?);
        ((1900..=9999).contains(&year) && (1..=12).contains(&month) && (1..=days_in(year, month)).contains(&day))
            .then_some((year, month, day))
    }
}

const fn days_in(year: u16, month: u8) -> u8 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400)) => 29,
        2 => 28,
        _ => 31,
    }
}

/// Who stands behind a value, in words.
pub fn standing_words(standing: &Confirmation) -> String {
    match standing {
        Confirmation::Default => "default, confirmed by nobody".to_owned(),
        Confirmation::Confirmed { by } => format!("confirmed by {by}"),
        Confirmation::Overridden { reason } => format!("overridden: {reason}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_plan::basis::{DesignCode, presets};

    fn imprint(date: &str) -> Imprint {
        let basis = presets().unwrap().remove(0).basis;
        Imprint::of(&Plan::empty(basis, DesignCode::eurocode()), Some(date))
    }

    #[test]
    fn a_date_is_read_only_when_it_is_one() {
        assert_eq!(imprint("2024-02-29").iso_date(), Some((2024, 2, 29)));
        for none in ["2023-02-29", "31.3.2026", "2026-3-31", "2026-13-01", "2026-00-10", "", "2026-01-01-01"] {
            assert_eq!(imprint(none).iso_date(), None, "{none}");
        }
    }

    #[test]
    fn what_is_not_entered_is_said() {
        assert_eq!(imprint("").line(), "job without a name, no revision, no date");
    }
}
