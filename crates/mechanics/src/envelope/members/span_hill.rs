//! Utilization by buckling in one state of the brace, over the largest compression and moments along the part.

use super::climb::{Climbs, Hill, scaled, slope};
use super::part_at_slew::{PartAtSlew, value};
use crate::envelope::case::Case;
use crate::envelope::state::State;
use crate::member::{InternalForces, SpanMaxima};

/// Signs of M_y and M_z to start climbs with.
const SIGNS: [[f64; 2]; 4] = [[1.0, 1.0], [1.0, -1.0], [-1.0, 1.0], [-1.0, -1.0]];

/// How many of the cuts with the largest moments lead at the start, for each axis.
const LEADERS: usize = 2;

/// A part in one state of the brace.
pub(super) struct SpanHill<'a> {
    pub part: &'a PartAtSlew<'a>,
    pub case: usize,
    /// Largest compression, |M_y| and |M_z| of any state.
    pub ranges: [f64; 3],
}

/// Where along the part compression, M_y and M_z are largest, and the moments' signs there.
struct Lead {
    spots: [usize; 3],
    signs: [f64; 2],
}

/// Inner forces along a part in one state: what buckling is judged by, the largest of each, and where they are.
struct Along {
    span: SpanMaxima,
    largest: [f64; 6],
    lead: Lead,
}

impl SpanHill<'_> {
    /// The highest peak of all starts, with its height; `None` if no state is allowed.
    ///
    /// Starts: compression alone, each moment alone with either sign, and all together with every sign, at the cuts
    /// where they can become largest. Which cuts lead changes during a climb.
    pub fn highest(&self) -> Option<(State, f64)> {
        let pressed = self.largest(1, |spot| self.part.spots[spot].compression)[0];
        let bent_y = self.largest(LEADERS, |spot| self.part.spots[spot].ranges[4]);
        let bent_z = self.largest(LEADERS, |spot| self.part.spots[spot].ranges[5]);
        let mut climbs = Climbs::on(self);
        let mut offer = |start: [f64; 3], y: usize, z: usize, signs: [f64; 2]| {
            climbs.start(self.farthest(&scaled(&start, &self.ranges), &Lead { spots: [pressed, y, z], signs }));
        };
        offer([1.0, 0.0, 0.0], bent_y[0], bent_z[0], SIGNS[0]);
        for sign in [1.0, -1.0] {
            offer([0.0, 1.0, 0.0], bent_y[0], bent_z[0], [sign, 1.0]);
            offer([0.0, 0.0, 1.0], bent_y[0], bent_z[0], [1.0, sign]);
        }
        for &y in &bent_y {
            for &z in &bent_z {
                for signs in SIGNS {
                    offer([1.0, 1.0, 1.0], y, z, signs);
                }
            }
        }
        climbs.highest()
    }

    /// The cuts with the largest values, the largest first; at least one.
    fn largest(&self, count: usize, of: impl Fn(usize) -> f64) -> Vec<usize> {
        let mut order: Vec<usize> = (0..self.part.spots.len()).collect();
        order.sort_by(|a, b| of(*b).total_cmp(&of(*a)));
        order.truncate(count);
        order
    }

    /// The cut with the largest bending moment in a state.
    pub fn most_bent(&self, state: &State) -> usize {
        let bent = |spot: &usize| {
            let f = self.part.forces(*spot, self.case, state);
            f[4].hypot(f[5])
        };
        (0..self.part.spots.len()).max_by(|a, b| bent(a).total_cmp(&bent(b))).unwrap_or(0)
    }

    /// The state in which the weighted sum of compression, M_y and M_z at the leading cuts is greatest.
    fn farthest(&self, weights: &[f64; 3], lead: &Lead) -> Option<State> {
        let k = self.part.amplification;
        let part_of = |slot: usize, component: usize, weight: f64| {
            let mut w = [0.0; 6];
            w[component] = weight;
            self.part.spots[lead.spots[slot]].cases[self.case].rows.along(&w)
        };
        let goal = part_of(0, 0, -weights[0])
            .plus(&part_of(1, 4, k * lead.signs[0] * weights[1]), 1.0)
            .plus(&part_of(2, 5, k * lead.signs[1] * weights[2]), 1.0);
        let any = &self.part.spots[0].cases[self.case];
        if any.condition.is_none() {
            return Some(self.part.prepared.state(&goal, &[1.0], self.part.slew));
        }
        let case = Case { rows: goal, condition: any.condition.clone(), brace: any.brace };
        case.state(self.part.prepared, &[1.0], self.part.slew)
    }

    fn along(&self, state: &State) -> Along {
        let mut along =
            Along { span: SpanMaxima::default(), largest: [0.0; 6], lead: Lead { spots: [0; 3], signs: [1.0; 2] } };
        let mut most = [f64::NEG_INFINITY; 3];
        for spot in 0..self.part.spots.len() {
            let f = self.part.forces(spot, self.case, state);
            along.span = along.span.max(SpanMaxima::of(&InternalForces::from_array(f)));
            along.largest = std::array::from_fn(|i| f64::max(along.largest[i], f[i].abs()));
            for (slot, size) in [-f[0], f[4].abs(), f[5].abs()].into_iter().enumerate() {
                if size > most[slot] {
                    most[slot] = size;
                    along.lead.spots[slot] = spot;
                    if slot > 0 {
                        along.lead.signs[slot - 1] = f[3 + slot].signum();
                    }
                }
            }
        }
        along
    }
}

impl Hill for SpanHill<'_> {
    type State = State;

    fn height(&self, state: &State) -> f64 {
        let Along { span, largest, .. } = self.along(state);
        value(self.part.stability(&span, &largest))
    }

    /// Shear and torsion, which AISC's interaction also looks at, are left as they are.
    fn ahead(&self, state: &State, height: f64) -> Option<State> {
        let Along { span, largest, lead } = self.along(state);
        let numbers = [span.compression_n, span.m_y_nm, span.m_z_nm];
        let weights = slope(&numbers, &self.ranges, height, |n| {
            let moved = SpanMaxima { compression_n: n[0], m_y_nm: n[1], m_z_nm: n[2] };
            value(self.part.stability(&moved, &largest))
        });
        self.farthest(&weights, &lead)
    }
}
