//! One way in which all bodies act at once.

use glam::{DVec2, DVec3};

/// What acts, in arm axes.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct State {
    /// Force of each rope on its point, N.
    pub pulls_n: Vec<DVec3>,
    /// Tension of each second leg, N.
    pub legs_n: Vec<f64>,
    /// Direction of the wind times its share of the full force.
    pub wind: DVec2,
    /// Direction of the tether times its share of the full force.
    pub tether: DVec2,
}

impl State {
    /// The share `t` of this and 1 − t of another: what lies between two states acts too, as every
    /// rope's tension may be anything up to its greatest.
    pub fn between(&self, other: &Self, t: f64) -> Self {
        let mix3 = |(a, b): (&DVec3, &DVec3)| *a * t + *b * (1.0 - t);
        let mix1 = |(a, b): (&f64, &f64)| a * t + b * (1.0 - t);
        Self {
            pulls_n: self.pulls_n.iter().zip(&other.pulls_n).map(mix3).collect(),
            legs_n: self.legs_n.iter().zip(&other.legs_n).map(mix1).collect(),
            wind: self.wind * t + other.wind * (1.0 - t),
            tether: self.tether * t + other.tether * (1.0 - t),
        }
    }
}
