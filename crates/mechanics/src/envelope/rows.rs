//! How N observed numbers answer to each body, at one slew, in arm axes.

use glam::{DVec2, DVec3};

use super::state::State;

/// Linear answers of N numbers.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Rows<const N: usize> {
    /// To the force of each rope on its point.
    pub pulls: Vec<[DVec3; N]>,
    /// To the tension of each rope's second leg.
    pub legs: Vec<[f64; N]>,
    /// To the full wind from a direction.
    pub wind: [DVec2; N],
    /// To the full tether in a direction.
    pub tether: [DVec2; N],
    /// Weight and fixed forces.
    pub constant: [f64; N],
}

impl<const N: usize> Rows<N> {
    /// The N numbers in a state.
    pub fn of(&self, state: &State) -> [f64; N] {
        std::array::from_fn(|k| {
            let pulls = self.pulls.iter().zip(&state.pulls_n);
            let legs = self.legs.iter().zip(&state.legs_n);
            self.constant[k]
                + self.wind[k].dot(state.wind)
                + self.tether[k].dot(state.tether)
                + pulls.map(|(row, force)| row[k].dot(*force)).sum::<f64>()
                + legs.map(|(row, force)| row[k] * force).sum::<f64>()
        })
    }

    /// A size of the weighted sum's answers, never 0.
    pub fn scale(&self, weights: &[f64; N]) -> f64 {
        let pulls = self.pulls.iter().map(|r| sum3(r, weights).length());
        let wind = sum2(&self.wind, weights).length() + sum2(&self.tether, weights).length();
        pulls.sum::<f64>() + wind + 1e-3
    }

    /// The one number that is their weighted sum.
    pub fn along(&self, weights: &[f64; N]) -> Rows<1> {
        Rows {
            pulls: self.pulls.iter().map(|r| [sum3(r, weights)]).collect(),
            legs: self.legs.iter().map(|r| [sum1(r, weights)]).collect(),
            wind: [sum2(&self.wind, weights)],
            tether: [sum2(&self.tether, weights)],
            constant: [sum1(&self.constant, weights)],
        }
    }
}

impl Rows<1> {
    /// This plus `factor` times another.
    pub fn plus(&self, other: &Self, factor: f64) -> Self {
        let pulls = self.pulls.iter().zip(&other.pulls);
        let legs = self.legs.iter().zip(&other.legs);
        Self {
            pulls: pulls.map(|(a, b)| [a[0] + b[0] * factor]).collect(),
            legs: legs.map(|(a, b)| [a[0] + b[0] * factor]).collect(),
            wind: [self.wind[0] + other.wind[0] * factor],
            tether: [self.tether[0] + other.tether[0] * factor],
            constant: [self.constant[0] + other.constant[0] * factor],
        }
    }
}

pub(super) fn sum1<const N: usize>(row: &[f64; N], weights: &[f64; N]) -> f64 {
    row.iter().zip(weights).map(|(r, w)| r * w).sum()
}

pub(super) fn sum2<const N: usize>(row: &[DVec2; N], weights: &[f64; N]) -> DVec2 {
    row.iter().zip(weights).fold(DVec2::ZERO, |s, (r, w)| s + *r * *w)
}

pub(super) fn sum3<const N: usize>(row: &[DVec3; N], weights: &[f64; N]) -> DVec3 {
    row.iter().zip(weights).fold(DVec3::ZERO, |s, (r, w)| s + *r * *w)
}
