//! The table of anchorage: everything that was looked at of every base and every foot, a row each, whatever came of it.

use gantline_plan::assess::anchorage::{BaseUse, Record, Used};
use gantline_plan::assess::{Assessment, UnitAssessment};
use gantline_plan::document::{PlacementId, Plan};
use gantline_plan::quantity::Kind::{Angle, Force, Share};

use super::table::{Cell, Column, Table};
use crate::answers::unit_place::tag_of;

/// One thing looked at.
struct Row<'a> {
    plan: &'a Plan,
    id: PlacementId,
    what: What<'a>,
}

/// What a row is about.
enum What<'a> {
    /// A use of base or foot, and whether it governs.
    Use(&'a BaseUse, bool),
    /// A base that was not assessed; why.
    Nothing(String),
}

/// The table.
pub fn anchorage(plan: &Plan, assessment: &Assessment) -> Table {
    let rows = assessment.units.iter().flat_map(|(&id, unit)| rows_of(plan, id, unit));
    let about = "Every way in which base, fixing, plate and concrete can fail, with the worst state of each. What was not \
                 checked is not passed.";
    Table::of("Anchorage", about.to_owned(), 1, &columns(), rows)
}

fn rows_of<'a>(plan: &'a Plan, id: PlacementId, unit: &'a UnitAssessment) -> Vec<Row<'a>> {
    let row = |what| Row { plan, id, what };
    let Some(base) = unit.base.as_deref() else {
        let why = unit.resolved.as_ref().err().map_or_else(|| "it stands on no roof".to_owned(), ToString::to_string);
        return vec![row(What::Nothing(why))];
    };
    let governs = base.governs;
    let of_use = |(index, used)| row(What::Use(used, governs == Some(index)));
    base.uses.iter().enumerate().map(of_use).collect()
}

fn columns<'a>() -> Vec<Column<Row<'a>>> {
    let words = Column::of_anything;
    vec![
        words("Tag", "tag", 8.0, |row| Cell::text(tag_of(row.plan, row.id))),
        words("Id", "unit", 8.0, |row| Cell::text(row.id.to_string())),
        words("Base or foot", "of", 7.0, |row| Cell::text_if(row.used().map(|used| used.of.word()))),
        words("What was looked at", "look", 26.0, |row| Cell::text_if(row.used().map(|used| used.look.words()))),
        words("State", "state", 13.0, |row| Cell::text(row.state())),
        Column::of(Share, "Use", "utilization", |row| Cell::amount_if(Share, row.used().and_then(BaseUse::share))),
        words("Governs", "governs", 8.0, |row| match row.what {
            What::Use(_, true) => Cell::text("yes"),
            What::Use(_, false) | What::Nothing(_) => Cell::Empty,
        }),
        Column::of(Force, "Acts", "action", |row| {
            Cell::amount_if(Force, row.record().and_then(|record| record.action_n))
        }),
        Column::of(Force, "Resists", "resistance", |row| {
            Cell::amount_if(Force, row.record().and_then(|record| record.resistance_n))
        }),
        words("Clause", "clause", 30.0, |row| Cell::text_if(row.record().map(|record| record.clause.clone()))),
        words("Combination", "combination", 18.0, |row| {
            let state = row.used().and_then(|used| used.state.as_deref());
            Cell::text_if(state.map(|state| row.plan.basis.combination_name(state.combination)))
        }),
        Column::of(Angle, "Slew", "slew", |row| {
            Cell::amount_if(Angle, row.used().and_then(|used| used.state.as_deref()).map(|state| state.slew_rad))
        }),
        words("What is missing, or why it can't occur", "why", 36.0, |row| Cell::text(row.why())),
        words("To be said beside it", "caution", 30.0, |row| {
            Cell::text_if(row.record().map(|record| record.caution.clone()))
        }),
    ]
}

impl<'a> Row<'a> {
    fn used(&self) -> Option<&'a BaseUse> {
        match self.what {
            What::Use(used, _) => Some(used),
            What::Nothing(_) => None,
        }
    }

    fn record(&self) -> Option<&'a Record> {
        self.used()?.record.as_ref()
    }

    fn state(&self) -> &'static str {
        match self.used().map(|used| &used.outcome) {
            Some(Used::Share(share)) if *share <= 1.0 => "holds",
            Some(Used::Share(_)) => "over",
            Some(Used::NotApplicable(_)) => "not applicable",
            Some(Used::NotChecked(_)) | None => "not checked",
        }
    }

    fn why(&self) -> String {
        match &self.what {
            What::Nothing(why) => why.clone(),
            What::Use(used, _) => match &used.outcome {
                Used::NotChecked(why) | Used::NotApplicable(why) => why.clone(),
                Used::Share(_) => String::new(),
            },
        }
    }
}
