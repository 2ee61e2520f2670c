//! Hills that were climbed before: answers that do not change with the slew are climbed on once, not at every slew.
//!
//! A part that a foot does not hold, and every part once the foot is lost, answers alike at all slews, and in several states of
//! the brace.

use std::cell::RefCell;
use std::rc::Rc;

use super::part_at_slew::PartAtSlew;
use crate::envelope::case::Case;
use crate::envelope::state::State;

/// The highest peak of a hill.
type Peak = Option<(State, f64)>;

/// A cut's answers, and the case among them that was climbed on.
type Answers = (Rc<[Case<6>]>, usize);

/// Peaks by the answers that make the hill.
#[derive(Default)]
pub(super) struct Climbed {
    at_cuts: RefCell<Vec<(usize, Answers, Peak)>>,
    along: RefCell<Vec<(Vec<Answers>, Peak)>>,
}

impl Climbed {
    /// The peak at a cut in one state of the brace.
    pub fn at_cut(&self, part: &PartAtSlew<'_>, spot: usize, case: usize, climb: impl FnOnce() -> Peak) -> Peak {
        let here = answers(part, spot, case);
        if !is_the_same_at_any_slew(part, &here) {
            return climb();
        }
        let known =
            self.at_cuts.borrow().iter().find(|(at, then, _)| *at == spot && alike(then, &here)).map(|k| k.2.clone());
        known.unwrap_or_else(|| {
            let peak = climb();
            self.at_cuts.borrow_mut().push((spot, here, peak.clone()));
            peak
        })
    }

    /// The peak of buckling along a part in one state of the brace.
    pub fn along(&self, part: &PartAtSlew<'_>, case: usize, climb: impl FnOnce() -> Peak) -> Peak {
        let here: Vec<Answers> = (0..part.spots.len()).map(|spot| answers(part, spot, case)).collect();
        if !here.iter().all(|answers| is_the_same_at_any_slew(part, answers)) {
            return climb();
        }
        let same = |then: &[Answers]| then.iter().zip(&here).all(|(then, here)| alike(then, here));
        let known = self.along.borrow().iter().find(|(then, _)| same(then)).map(|k| k.1.clone());
        known.unwrap_or_else(|| {
            let peak = climb();
            self.along.borrow_mut().push((here, peak.clone()));
            peak
        })
    }
}

fn answers(part: &PartAtSlew<'_>, spot: usize, case: usize) -> Answers {
    (Rc::clone(&part.spots[spot].cases), case)
}

/// Limits of lean, and a condition on the brace, make a hill depend on more than its answers.
fn is_the_same_at_any_slew(part: &PartAtSlew<'_>, (cases, case): &Answers) -> bool {
    !part.prepared.is_cut() && cases[*case].condition.is_none()
}

fn alike((then, then_case): &Answers, (here, here_case): &Answers) -> bool {
    then[*then_case].rows == here[*here_case].rows
}
