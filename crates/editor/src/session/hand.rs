//! The make-up in hand: what the unit tool places, and how the keys M, A and B step through the parts.

use gantline_plan::catalog::{Base, Family, MakeUp};
use gantline_plan::document::{EdgeId, PartId, Plan};

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

/// A part of a make-up that a key steps through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PartKind {
    /// The mast.
    Mast,
    /// The arm.
    Arm,
    /// The brace.
    Brace,
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
        const STEP_M: f64 = 0.05;
        if let Some(setback) = self.setback_m {
            return setback;
        }
        let parapet = edge
            .and_then(|edge| plan.find_edge(edge))
            .map_or(0.2, |place| place.edge().parapet.inset_m + place.edge().parapet.thickness_m);
        let side = self.make_up_or_first(plan).and_then(|m| base_of(plan, &m).map(|base| 2.0 * base.plate_half_m()));
        let least = parapet + side.unwrap_or(0.0) / 2.0 + GAP_M;
        (least / STEP_M).ceil() * STEP_M
    }
}

fn base_of<'a>(plan: &'a Plan, make_up: &MakeUp) -> Option<&'a Base> {
    plan.families.get(&make_up.family)?.bases.get(&make_up.base)
}

/// The next make-up with another part of this kind, among those that the family lists; the others stay if they can.
pub fn next_with(family: &Family, now: &MakeUp, kind: PartKind) -> Option<MakeUp> {
    let all = family.make_ups(now.family);
    let part = |make_up: &MakeUp| -> Option<PartId> {
        match kind {
            PartKind::Mast => Some(make_up.mast.clone()),
            PartKind::Arm => Some(make_up.arm.clone()),
            PartKind::Brace => make_up.brace.clone(),
        }
    };
    let mut parts: Vec<Option<PartId>> = Vec::new();
    for make_up in &all {
        if !parts.contains(&part(make_up)) {
            parts.push(part(make_up));
        }
    }
    let position = parts.iter().position(|known| *known == part(now))?;
    let wanted = &parts[(position + 1) % parts.len()];
    if *wanted == part(now) {
        return None;
    }
    let differing = |make_up: &&MakeUp| {
        usize::from(make_up.mast != now.mast)
            + usize::from(make_up.arm != now.arm)
            + usize::from(make_up.brace != now.brace)
            + usize::from(make_up.base != now.base)
    };
    let found = all.iter().filter(|make_up| part(make_up) == *wanted).min_by_key(differing)?;
    Some(MakeUp {
        slew_stops: now.slew_stops,
        drawn_slew_rad: now.drawn_slew_rad,
        foot_bearing_rad: now.foot_bearing_rad,
        foot_level_m: now.foot_level_m,
        ..found.clone()
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::witness;

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
