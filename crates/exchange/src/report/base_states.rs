//! The states that govern the looks at a base: what acts, and what plate and anchors do under it. Each is printed once, a row or a
//! column of a table.

use std::sync::Arc;

use gantline_plan::assess::anchorage::{BaseUse, PlateState};
use gantline_plan::catalog::Base;
use gantline_plan::quantity;
use glam::DVec2;

use super::blocks::{counted, paragraph, part, row, table, told, words};
use super::figures::{PULL, force, length, moment, number, pull};
use super::given::Given;
use crate::paper::{Block, Cell, Column, Row};

/// So many states stand beside each other in a table of anchors.
const BESIDE: usize = 6;

/// Different states, in the order in which looks name them.
pub struct States(Vec<Arc<PlateState>>);

/// What is told of an anchor in a state; none where it has no such figure.
type OfAnchor = fn(&PlateState, usize) -> Option<f64>;

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
        if self.0.is_empty() {
            return Vec::new();
        }
        let mut blocks = vec![part("States"), paragraph("What brings each state:")];
        blocks.extend(self.causes(given));
        blocks.push(paragraph("What acts on the plate, and with what it presses on what it sits on:"));
        blocks.extend(self.actions(given));
        let of_anchors: [(&str, OfAnchor); 3] = [
            ("Tension of each anchor:", |state, anchor| state.tension_n.get(anchor).copied()),
            ("Shear of each anchor along x:", |state, anchor| state.shear_n.get(anchor).map(|shear| shear.x)),
            ("Shear of each anchor along y:", |state, anchor| state.shear_n.get(anchor).map(|shear| shear.y)),
        ];
        let at_m = base.anchors.as_ref().map_or(&[][..], |anchors| &anchors.at_m);
        for (head, of_anchor) in of_anchors.into_iter().filter(|_| !at_m.is_empty()) {
            blocks.push(paragraph(head));
            blocks.extend(self.anchors(given, at_m, of_anchor));
        }
        blocks
    }

    fn rows(&self, cells: impl Fn(&PlateState) -> Vec<Cell>) -> Vec<Row> {
        let numbered = self.0.iter().enumerate();
        let told = numbered.map(|(index, state)| {
            let own = [words(&(index + 1).to_string())];
            row(own.into_iter().chain(cells(state)).collect())
        });
        told.collect()
    }

    fn causes(&self, given: &Given<'_>) -> Option<Block> {
        let columns = vec![
            counted("State", 0.5),
            told("Combination", 2.2),
            counted("Factor on weight", 0.7),
            counted("Slew", 0.7),
            told(PULL, 1.6),
            counted("Modulus of anchors by concrete's", 0.9),
        ];
        let rows = self.rows(|state| {
            vec![
                words(&given.combination_with_level(state.combination)),
                words(&number(state.weight_factor)),
                words(&quantity::angle(state.slew_rad)),
                words(&pull(state.pull)),
                words(&number(state.modular_ratio)),
            ]
        });
        table(columns, rows)
    }

    fn actions(&self, given: &Given<'_>) -> Option<Block> {
        let units = given.units;
        let heads = ["Fx", "Fy", "Fz", "Mx", "My", "Mz", "Presses with", "at x", "at y", "Largest pressure"];
        let columns = std::iter::once(counted("State", 0.5)).chain(heads.map(|head| counted(head, 1.0)));
        let rows = self.rows(|state| {
            let [fx, fy, fz, mx, my, mz] = state.action;
            let forces = [fx, fy, fz].map(|value| words(&force(value, units)));
            let moments = [mx, my, mz].map(|value| words(&moment(value, units)));
            let or_none = |value: Option<f64>| words(&value.map_or_else(|| "none".to_owned(), |at| length(at, units)));
            let at = [state.pressed_at_m.map(|at| at.x), state.pressed_at_m.map(|at| at.y)].map(or_none);
            let pressure = words(&quantity::traced(state.pressure_pa, "Pa", units));
            let push = words(&force(state.pressed_n, units));
            forces.into_iter().chain(moments).chain([push]).chain(at).chain([pressure]).collect()
        });
        table(columns.collect(), rows)
    }

    /// A row for each anchor with its place, a column for each state.
    fn anchors(&self, given: &Given<'_>, at_m: &[DVec2], of_anchor: OfAnchor) -> Vec<Block> {
        let units = given.units;
        let mut blocks = Vec::new();
        for (chunk, states) in self.0.chunks(BESIDE).enumerate() {
            let first = chunk * BESIDE + 1;
            let mut columns: Vec<Column> = vec![counted("Anchor", 0.6), counted("x", 0.8), counted("y", 0.8)];
            columns.extend((first..).take(states.len()).map(|number| counted(&format!("State {number}"), 1.0)));
            let rows = at_m.iter().enumerate().map(|(anchor, at)| {
                let mut cells = vec![words(&(anchor + 1).to_string())];
                cells.extend([at.x, at.y].map(|value_m| words(&length(value_m, units))));
                let told = states.iter().map(|state| of_anchor(state, anchor));
                cells.extend(
                    told.map(|value| words(&value.map_or_else(|| "none".to_owned(), |value_n| force(value_n, units)))),
                );
                row(cells)
            });
            blocks.extend(table(columns, rows.collect()));
        }
        blocks
    }
}
