//! History: snapshots of a shared plan. A gesture is replayed from the snapshot of its beginning, so nothing accumulates.

use std::sync::Arc;

use super::{Applied, Change, Refused, apply};
use crate::document::{Plan, ThingId};

/// A plan with what was done to it.
#[derive(Debug, Clone)]
pub struct History {
    done: Vec<Step>,
    undone: Vec<Step>,
    now: Arc<Plan>,
    open: Option<Gesture>,
    revision: u64,
}

#[derive(Debug, Clone)]
struct Step {
    name: &'static str,
    plan: Arc<Plan>,
}

#[derive(Debug, Clone)]
struct Gesture {
    name: &'static str,
    before: Arc<Plan>,
}

/// What a change did besides changing the plan.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Done {
    /// Things made, in order.
    pub made: Vec<ThingId>,
    /// What should be said about it.
    pub said: Vec<String>,
}

/// How many steps can be undone.
const KEPT_STEPS: usize = 500;

impl History {
    /// The history of a plan just opened.
    pub fn new(plan: Plan) -> Self {
        Self { done: Vec::new(), undone: Vec::new(), now: Arc::new(plan), open: None, revision: 0 }
    }

    /// The plan as it is now.
    pub fn plan(&self) -> &Arc<Plan> {
        &self.now
    }

    /// A number that changes with every change of the plan.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Whether a gesture is open.
    pub fn in_gesture(&self) -> bool {
        self.open.is_some()
    }

    /// The plan as it was when the open gesture began.
    pub fn before_gesture(&self) -> Option<&Arc<Plan>> {
        self.open.as_ref().map(|gesture| &gesture.before)
    }

    /// Makes one change as one step; what was made is told. Commits an open gesture first.
    pub fn change(&mut self, name: &'static str, change: &Change) -> Result<Done, Refused> {
        self.commit();
        let Applied { plan, made, said } = apply(&self.now, change)?;
        if plan != *self.now {
            let before = std::mem::replace(&mut self.now, Arc::new(plan));
            self.push(name, before);
        }
        Ok(Done { made, said })
    }

    /// Begins a gesture; a gesture still open is committed first.
    pub fn begin(&mut self, name: &'static str) {
        self.commit();
        self.open = Some(Gesture { name, before: Arc::clone(&self.now) });
    }

    /// Shows the snapshot with this change, in place of the last preview. Without an open gesture nothing happens.
    pub fn preview(&mut self, change: &Change) -> Result<(), Refused> {
        let Some(gesture) = &self.open else {
            return Ok(());
        };
        let Applied { plan, .. } = apply(&gesture.before, change)?;
        if plan != *self.now {
            self.now = Arc::new(plan);
            self.revision += 1;
        }
        Ok(())
    }

    /// Ends the gesture: one step, none if nothing differs.
    pub fn commit(&mut self) {
        if let Some(gesture) = self.open.take()
            && *gesture.before != *self.now
        {
            self.push(gesture.name, gesture.before);
        }
    }

    /// Drops the gesture: back to its snapshot.
    pub fn abandon(&mut self) {
        if let Some(gesture) = self.open.take()
            && !Arc::ptr_eq(&gesture.before, &self.now)
        {
            self.now = gesture.before;
            self.revision += 1;
        }
    }

    /// Name of the step that undo would take back.
    pub fn undo_name(&self) -> Option<&'static str> {
        self.done.last().map(|step| step.name)
    }

    /// Name of the step that redo would make again.
    pub fn redo_name(&self) -> Option<&'static str> {
        self.undone.last().map(|step| step.name)
    }

    /// Takes the last step back; false when there is none.
    pub fn undo(&mut self) -> bool {
        self.abandon();
        let Some(step) = self.done.pop() else {
            return false;
        };
        let after = std::mem::replace(&mut self.now, step.plan);
        self.undone.push(Step { name: step.name, plan: after });
        self.revision += 1;
        true
    }

    /// Makes the last undone step again; false when there is none.
    pub fn redo(&mut self) -> bool {
        self.abandon();
        let Some(step) = self.undone.pop() else {
            return false;
        };
        let before = std::mem::replace(&mut self.now, step.plan);
        self.done.push(Step { name: step.name, plan: before });
        self.revision += 1;
        true
    }

    /// Joins the last step with the one before it if both have this name: runs of arrow presses are one step.
    pub fn join_last(&mut self, name: &'static str) {
        if let [.., earlier, last] = self.done.as_slice()
            && earlier.name == name
            && last.name == name
        {
            self.done.pop();
        }
    }

    fn push(&mut self, name: &'static str, before: Arc<Plan>) {
        self.done.push(Step { name, plan: before });
        if self.done.len() > KEPT_STEPS {
            self.done.remove(0);
        }
        self.undone.clear();
        self.revision += 1;
    }
}
