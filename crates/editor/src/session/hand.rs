//! The make-up in hand: what the unit tool places, and how the keys M, A and B step through the parts.

use gantline_plan::catalog::{Base, MakeUp};
use gantline_plan::document::{EdgeId, Plan};

/// The make-up in hand.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Hand {
    /// The make-up; none as long as the plan has no family.
    pub make_up: Option<MakeUp>,
    /// Whether someone chose it; if not, it is chosen anew for each edge.
    pub chosen: bool,
    /// The edge it was chosen for.
    pub for_edge: Option<EdgeId>,
    /// Setback at which it is placed; none: just behind the parapet.
    pub setback_m: Option<f64>,
}

impl Hand {
    /// The make-up, the first of the plan's families if none was taken.
    pub fn make_up_or_first(&self, plan: &Plan) -> Option<MakeUp> {
        let taken = self.make_up.as_ref().filter(|make_up| plan.families.contains_key(&make_up.family));
        taken.cloned().or_else(|| plan.families.iter().find_map(|(&id, family)| family.make_ups(id).into_iter().next()))
    }

    /// How far behind the outline a mast axis is set: as chosen, else so that the base stands free of the parapet.
    pub fn setback_m(&self, plan: &Plan, edge: Option<EdgeId>) -> f64 {
        /// Between parapet and base plate.
        const GAP_M: f64 = 0.15;
        /// Setbacks are set in steps that a tape shows.
        const STEPS_IN_A_M: f64 = 20.0;
        if let Some(setback) = self.setback_m {
            return setback;
        }
        let parapet = edge
            .and_then(|edge| plan.find_edge(edge))
            .map_or(0.2, |place| place.edge().parapet.inset_m + place.edge().parapet.thickness_m);
        let side = self.make_up_or_first(plan).and_then(|m| base_of(plan, &m).map(|base| 2.0 * base.plate_half_m()));
        let least = parapet + side.unwrap_or(0.0) / 2.0 + GAP_M;
        (least * STEPS_IN_A_M).ceil() / STEPS_IN_A_M
    }
}

fn base_of<'a>(plan: &'a Plan, make_up: &MakeUp) -> Option<&'a Base> {
    plan.families.get(&make_up.family)?.bases.get(&make_up.base)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::witness;
    use gantline_plan::catalog::{PartKind, next_with};

    #[test]
    fn stepping_through_masts_comes_round_and_only_meets_listed_combinations() {
        let plan = witness::rectangle_plan();
        let first = witness::make_up(&plan);
        let family = &plan.families[&first.family];
        let mut now = first.clone();
        let mut seen = vec![now.mast.clone()];
        for _ in 0..20 {
            now = next_with(family, &now, PartKind::Mast).unwrap();
            assert!(family.combination(&now.mast, &now.arm, now.brace.as_ref()).is_some());
            if now.mast == first.mast {
                break;
            }
            seen.push(now.mast.clone());
        }
        assert_eq!(now.mast, first.mast);
        assert!(seen.len() > 1);
    }

    #[test]
    fn the_base_stands_free_of_the_parapet() {
        let plan = witness::rectangle_plan();
        let edge = witness::south_edge(&plan);
        let setback = Hand::default().setback_m(&plan, Some(edge));
        let make_up = witness::make_up(&plan);
        let half_plate = plan.families[&make_up.family].bases[&make_up.base].plate_half_m();
        // The parapet of a sketched edge is 0.20 m thick and stands on the outline.
        assert!(setback - half_plate > 0.20);
    }
}
