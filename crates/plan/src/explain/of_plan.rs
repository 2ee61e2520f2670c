//! Figures of the plan as a whole.

use super::entered::of_basis;
use super::subject::angle;
use super::trace::{Symbol, Trace};
use crate::document::Plan;

/// The half-angle that the load cone must have: α ≥ θ + the larger of inward and outward lean.
pub fn cone_needed(plan: &Plan) -> Trace {
    let reach_rad = plan.basis.rules.reach.angle_rad.value;
    let mut symbols =
        vec![Symbol::entered("θ", "angle of work to the side", angle(reach_rad), of_basis("reach › angle"))];
    let mut lean_rad = 0.0;
    if let Some(lean) = &plan.basis.cone.lean {
        lean_rad = lean.inward_rad.value.max(lean.outward_rad.value);
        let inward = of_basis("load cone › inward lean");
        let outward = of_basis("load cone › outward lean");
        symbols.push(Symbol::entered("λ_in", "lean toward the building", angle(lean.inward_rad.value), inward));
        symbols.push(Symbol::entered("λ_out", "lean away from it", angle(lean.outward_rad.value), outward));
    }
    Trace {
        title: "Half-angle that the load cone must have".to_owned(),
        formula: if plan.basis.cone.lean.is_some() { "α = θ + max(λ_in, λ_out)" } else { "α = θ" }.to_owned(),
        symbols,
        sums: Vec::new(),
        result: angle(reach_rad + lean_rad),
        source: "every lean that work brings is among the directions that pull".to_owned(),
    }
}
