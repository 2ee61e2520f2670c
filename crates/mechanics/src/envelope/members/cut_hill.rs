//! Utilization at one cut in one state of the brace, over the six inner forces there.

use super::climb::{Climbs, Hill, scaled, slope};
use super::part_at_slew::PartAtSlew;
use crate::envelope::state::State;

/// Signs of N, V_y, V_z, T, M_y, M_z to start climbs from: each force alone, and what usually governs together.
const STARTS: [[f64; 6]; 24] = [
    [1.0, 0.0, 0.0, 0.0, 0.0, 0.0],
    [-1.0, 0.0, 0.0, 0.0, 0.0, 0.0],
    [0.0, 1.0, 0.0, 0.0, 0.0, 0.0],
    [0.0, -1.0, 0.0, 0.0, 0.0, 0.0],
    [0.0, 0.0, 1.0, 0.0, 0.0, 0.0],
    [0.0, 0.0, -1.0, 0.0, 0.0, 0.0],
    [0.0, 0.0, 0.0, 1.0, 0.0, 0.0],
    [0.0, 0.0, 0.0, -1.0, 0.0, 0.0],
    [0.0, 0.0, 0.0, 0.0, 1.0, 0.0],
    [0.0, 0.0, 0.0, 0.0, -1.0, 0.0],
    [0.0, 0.0, 0.0, 0.0, 0.0, 1.0],
    [0.0, 0.0, 0.0, 0.0, 0.0, -1.0],
    [1.0, 0.0, 0.0, 0.0, 1.0, 1.0],
    [1.0, 0.0, 0.0, 0.0, 1.0, -1.0],
    [1.0, 0.0, 0.0, 0.0, -1.0, 1.0],
    [1.0, 0.0, 0.0, 0.0, -1.0, -1.0],
    [-1.0, 0.0, 0.0, 0.0, 1.0, 1.0],
    [-1.0, 0.0, 0.0, 0.0, 1.0, -1.0],
    [-1.0, 0.0, 0.0, 0.0, -1.0, 1.0],
    [-1.0, 0.0, 0.0, 0.0, -1.0, -1.0],
    [0.0, 1.0, 1.0, 1.0, 0.0, 0.0],
    [0.0, 1.0, -1.0, 1.0, 0.0, 0.0],
    [0.0, -1.0, 1.0, 1.0, 0.0, 0.0],
    [0.0, 1.0, 1.0, -1.0, 0.0, 0.0],
];

/// A cut of a part in one state of the brace.
pub(super) struct CutHill<'a> {
    pub part: &'a PartAtSlew<'a>,
    pub spot: usize,
    pub case: usize,
}

impl CutHill<'_> {
    /// The highest peak of all starts, with its height; `None` if no state is allowed.
    pub fn highest(&self) -> Option<(State, f64)> {
        let ranges = &self.part.spots[self.spot].ranges;
        let mut climbs = Climbs::on(self);
        for start in &STARTS {
            climbs.start(self.farthest(&scaled(start, ranges)));
        }
        climbs.highest()
    }

    /// The state in which the weighted sum of the forces, moments amplified, is greatest.
    fn farthest(&self, weights: &[f64; 6]) -> Option<State> {
        let k = self.part.amplification;
        let mut w = *weights;
        w[4] *= k;
        w[5] *= k;
        self.part.spots[self.spot].cases[self.case].state(self.part.prepared, &w, self.part.slew)
    }

    fn use_of(&self, forces: &[f64; 6]) -> f64 {
        self.part.governing_at(self.part.spots[self.spot].at, forces).utilization
    }
}

impl Hill for CutHill<'_> {
    type State = State;

    fn height(&self, state: &State) -> f64 {
        self.use_of(&self.part.forces(self.spot, self.case, state))
    }

    fn ahead(&self, state: &State, height: f64) -> Option<State> {
        let forces = self.part.forces(self.spot, self.case, state);
        let ranges = &self.part.spots[self.spot].ranges;
        self.farthest(&slope(&forces, ranges, height, |f| self.use_of(f)))
    }
}
