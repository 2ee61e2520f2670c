//! The states that govern the looks at a base: what acts, and what plate and anchors do under it. Each is printed once.

use std::sync::Arc;

use gantline_plan::assess::anchorage::{BaseUse, PlateState};
use gantline_plan::catalog::Base;
use gantline_plan::quantity;
use glam::DVec2;

use super::blocks::{counted, facts, part, row, strong, table, told, words};
use super::figures::{force, length, moment, number, pull};
use super::given::Given;
use crate::paper::{Block, Row};

/// Different states, in the order in which looks name them.
pub struct States(Vec<Arc<PlateState>>);

impl States {
    /// Of several looks.
    pub fn of<'a>(uses: impl Iterator<Item = &'a BaseUse>) -> Self {
        let mut states: Vec<Arc<PlateState>> = Vec::new();
        for state in uses.filter_map(|used| used.state.as_ref()) {
            if !states.iter().any(|known| Arc::ptr_eq(known, state) || known == state) {
                states.push(Arc::clone(state));
            }
        }
        Self(states)
    }

    /// The number of a look's state, from 1; none where no state brings it.
    pub fn number(&self, used: &BaseUse) -> Option<usize> {
        let state = used.state.as_ref()?;
        self.0.iter().position(|known| Arc::ptr_eq(known, state) || known == state).map(|index| index + 1)
    }

    /// All of them.
    pub fn blocks(&self, given: &Given<'_>, base: &Base) -> Vec<Block> {
        let each = self.0.iter().enumerate().map(|(index, state)| {
            let mut blocks = vec![part(&format!("State {}", index + 1))];
            blocks.extend(facts(acts(given, state)));
            blocks.extend(anchors(given, state, base));
            Block::Together(blocks)
        });
        each.collect()
    }
}

/// What acts, and what presses.
fn acts(given: &Given<'_>, state: &PlateState) -> Vec<(&'static str, String)> {
    let units = given.units;
    let [fx, fy, fz, mx, my, mz] = state.action;
    let both = |names: [&str; 3], values: [String; 3]| {
        names.into_iter().zip(values).map(|(name, value)| format!("{name} {value}")).collect::<Vec<_>>().join(", ")
    };
    let forces = both(["Fx", "Fy", "Fz"], [fx, fy, fz].map(|value| force(value, units)));
    let moments = both(["Mx", "My", "Mz"], [mx, my, mz].map(|value| moment(value, units)));
    let presses = match state.pressed_at_m {
        Some(at) => format!(
            "{} at {}, largest pressure {}",
            force(state.pressed_n, units),
            place(at, given),
            quantity::traced(state.pressure_pa, "Pa", units)
        ),
        None => "nowhere".to_owned(),
    };
    let axis = state.neutral_axis_m.map_or_else(
        || "none".to_owned(),
        |[from, to]| format!("through {} and {}", place(from, given), place(to, given)),
    );
    vec![
        ("Combination", given.combination_with_level(state.combination)),
        ("Factor on self-weight", number(state.weight_factor)),
        ("Slew of the arm", quantity::angle(state.slew_rad)),
        ("Pull of the rope", pull(state.pull)),
        ("Forces on the plate", forces),
        ("Moments on the plate", moments),
        ("Modulus of anchors by that of concrete", number(state.modular_ratio)),
        ("The plate presses with", presses),
        ("Neutral axis", axis),
    ]
}

fn place(at: DVec2, given: &Given<'_>) -> String {
    format!("({}, {})", length(at.x, given.units), length(at.y, given.units))
}

/// Each anchor with its place, its tension and what shears it; the one pulled hardest stands out.
fn anchors(given: &Given<'_>, state: &PlateState, base: &Base) -> Option<Block> {
    let units = given.units;
    let most = state.tension_n.iter().copied().fold(0.0, f64::max);
    let at_m = base.anchors.as_ref().map_or(&[][..], |anchors| &anchors.at_m);
    let rows = at_m.iter().enumerate().map(|(index, at)| {
        let tension_n = state.tension_n.get(index).copied();
        let shear_n = state.shear_n.get(index).copied();
        let or_none = |value: Option<f64>| words(&value.map_or_else(|| "none".to_owned(), |value| force(value, units)));
        let cells = vec![
            words(&(index + 1).to_string()),
            words(&length(at.x, units)),
            words(&length(at.y, units)),
            or_none(tension_n),
            or_none(shear_n.map(|shear| shear.x)),
            or_none(shear_n.map(|shear| shear.y)),
        ];
        if most > 0.0 && tension_n == Some(most) { strong(cells) } else { row(cells) }
    });
    let rows: Vec<Row> = rows.collect();
    let heads = ["x", "y", "Tension N", "Shear x", "Shear y"].map(|head| counted(head, 1.0));
    table(std::iter::once(told("Anchor", 0.6)).chain(heads).collect(), rows)
}
