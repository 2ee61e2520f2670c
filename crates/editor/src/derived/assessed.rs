//! The assessment of the plan as it is, and of the plan with the ghost.

use std::sync::Arc;

use gantline_plan::assess::{Assessment, Memo, assess};
use gantline_plan::document::Plan;

/// Assessments kept as long as their plan is the one shown.
#[derive(Debug, Clone, Default)]
pub struct Assessed {
    memo: Memo,
    of_plan: Option<(Arc<Plan>, Arc<Assessment>)>,
    of_ghost: Option<(Arc<Plan>, Arc<Assessment>)>,
}

impl Assessed {
    /// Assesses the plan and the ghost, if they are not those assessed last.
    pub fn renew(&mut self, plan: &Arc<Plan>, ghost: Option<&Arc<Plan>>) {
        let known = |kept: &Option<(Arc<Plan>, Arc<Assessment>)>, plan: &Arc<Plan>| {
            kept.as_ref().is_some_and(|(of, _)| Arc::ptr_eq(of, plan))
        };
        if !known(&self.of_plan, plan) {
            self.of_plan = Some((Arc::clone(plan), Arc::new(assess(plan, &mut self.memo))));
        }
        match ghost {
            None => self.of_ghost = None,
            Some(ghost) if known(&self.of_ghost, ghost) => {}
            Some(ghost) => self.of_ghost = Some((Arc::clone(ghost), Arc::new(assess(ghost, &mut self.memo)))),
        }
    }

    /// The assessment of a plan that is tried out, such as another make-up for the ghost.
    pub fn tried(&mut self, plan: &Plan) -> Assessment {
        assess(plan, &mut self.memo)
    }

    /// The assessment of the plan.
    pub fn of_plan(&self) -> Arc<Assessment> {
        self.of_plan.as_ref().map(|(_, assessment)| Arc::clone(assessment)).unwrap_or_default()
    }

    /// The assessment of what is shown: with the ghost, if there is one.
    pub fn shown(&self) -> Arc<Assessment> {
        let shown = self.of_ghost.as_ref().or(self.of_plan.as_ref());
        shown.map(|(_, assessment)| Arc::clone(assessment)).unwrap_or_default()
    }
}
