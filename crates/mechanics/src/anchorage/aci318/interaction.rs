//! Tension and shear together, ACI 318-19 17.8.

use super::super::line::{Line, Of, Sink, number};
use super::super::record::{Mode, Outcome, Symbol};

/// A share up to this of the strength leaves the other one its full strength (17.8.1, 17.8.2).
const SMALL: f64 = 0.2;
/// Limit of the sum (17.8.3).
const SUM: f64 = 1.2;

/// Passes lines on and keeps the largest shares in tension and in shear, of steel and concrete alike.
pub(super) struct Shares<'s, S> {
    /// Where lines go on to.
    pub sink: &'s mut S,
    /// N_ua/(φ·N_n) of the mode that governs.
    pub tension: f64,
    /// V_ua/(φ·V_n) of the mode that governs.
    pub shear: f64,
}

impl<S: Sink> Sink for Shares<'_, S> {
    fn take(&mut self, line: &Line<'_>) {
        if let Outcome::Utilization(share) = line.outcome {
            match line.mode {
                Mode::SteelTension
                | Mode::ConcreteCone
                | Mode::PullOut
                | Mode::Bond
                | Mode::SustainedBond
                | Mode::BlowOut => self.tension = self.tension.max(share),
                Mode::SteelShear | Mode::PryOut | Mode::ConcreteEdge => self.shear = self.shear.max(share),
                Mode::LeastSpacing
                | Mode::LeastEdgeDistance
                | Mode::LeastThickness
                | Mode::Splitting
                | Mode::TensionBars
                | Mode::SteelShearLeverArm
                | Mode::ShearBars
                | Mode::SteelInteraction
                | Mode::ConcreteInteraction => {}
            }
        }
        self.sink.take(line);
    }
}

/// What the actions, all in step, would have to be divided by until they just meet the criterion: 1 where they do.
///
/// It asks for the larger share alone while the smaller is at most 0.2 (17.8.1, 17.8.2), else for N + V ≤ 1.2, (17.8.3), each at
/// most 1. Divided so that they just meet it, the smaller is at most 0.2 where it is at most 0.2 of the larger; so nothing
/// jumps where the smaller passes 0.2 far below the limit.
pub(super) fn share(tension: f64, shear: f64) -> f64 {
    let larger = tension.max(shear);
    if tension.min(shear) <= SMALL * larger { larger } else { larger.max((tension + shear) / SUM) }
}

pub(super) fn tell(tension: f64, shear: f64, sink: &mut impl Sink) {
    let symbols: [Symbol; 2] = [number("Nua/(phi*Nn)", tension), number("Vua/(phi*Vn)", shear)];
    sink.take(&Line {
        mode: Mode::ConcreteInteraction,
        of: Of::Group,
        clause: "ACI 318-19 17.8 (17.8.3)",
        formula: "Nua/(phi*Nn) + Vua/(phi*Vn) <= 1.2 where both exceed 0.2",
        symbols: &symbols,
        resistance_n: None,
        action_n: None,
        outcome: Outcome::Utilization(share(tension, shear)),
    });
}
