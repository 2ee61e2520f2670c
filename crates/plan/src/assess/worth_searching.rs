//! Of the combinations at the design level those that can govern what happens inside a unit: a combination whose actions
//! are all contained in another's can't.

use gantline_mechanics::envelope::{Actions, Pull};

use super::actions_of::{CombinationActions, actions_of};
use crate::basis::{LoadBasis, LoadLevel};
use crate::catalog::ResolvedUnit;

/// Actions at the design level with the index of their combination, without those contained in others. Tethers are left
/// out: they pull on the base and strain nothing of the unit.
pub fn worth_searching(basis: &LoadBasis, acting: &[Option<CombinationActions>]) -> Vec<(usize, Actions)> {
    let mut kept: Vec<(usize, Actions)> = Vec::new();
    for (index, actions) in acting.iter().enumerate() {
        if basis.combinations[index].level == LoadLevel::Service {
            continue;
        }
        for one in actions.iter().flat_map(|actions| &actions.with_weight) {
            let one = Actions { tether: None, ..one.clone() };
            if kept.iter().any(|(_, other)| contains(other, &one)) {
                continue;
            }
            kept.retain(|(_, other)| !contains(&one, other));
            kept.push((index, one));
        }
    }
    kept
}

/// The actions at the design level of a unit under a basis, each with the index of its combination; what can't be computed is
/// left out, as it is told elsewhere.
pub fn design_actions(basis: &LoadBasis, unit: &ResolvedUnit) -> Vec<(usize, Actions)> {
    let acting: Vec<Option<CombinationActions>> =
        basis.combinations.iter().map(|combined| actions_of(combined, basis, unit).ok()).collect();
    worth_searching(basis, &acting)
}

/// Whether everything that the smaller actions can do is among what the larger ones can. Ropes may be slack, so a larger
/// tension contains a smaller one; weight and fixed forces must be alike.
fn contains(larger: &Actions, smaller: &Actions) -> bool {
    let contains_pull = |pull: &Pull| {
        larger
            .pulls
            .iter()
            .any(|other| Pull { tension_n: pull.tension_n, ..*other } == *pull && other.tension_n >= pull.tension_n)
    };
    larger.weight_factor == smaller.weight_factor
        && larger.slew_hold == smaller.slew_hold
        && larger.foot == smaller.foot
        && larger.fixed == smaller.fixed
        && smaller.pulls.len() <= larger.pulls.len().min(1)
        && smaller.pulls.iter().all(contains_pull)
        && (smaller.wind.is_none() || smaller.wind == larger.wind)
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_mechanics::cone::LoadCone;

    fn rope(tension_n: f64, weight_factor: f64) -> Actions {
        Actions::of_pull(Pull::new(0, tension_n, LoadCone::whole(0.5)), weight_factor)
    }

    #[test]
    fn a_larger_pull_contains_a_smaller_one_of_equal_weight_only() {
        assert!(contains(&rope(15e3, 1.35), &rope(2e3, 1.35)));
        assert!(!contains(&rope(2e3, 1.35), &rope(15e3, 1.35)));
        assert!(!contains(&rope(15e3, 0.9), &rope(2e3, 1.35)));
        let windy = Actions { wind: Some(gantline_mechanics::envelope::WindOnUnit::default()), ..rope(2e3, 1.35) };
        assert!(!contains(&rope(15e3, 1.35), &windy));
    }
}
