//! Tension and shear together, EN 1992-4 7.2.3.

use super::super::line::{Line, Of, Sink, number};
use super::super::record::{Mode, Outcome, Symbol};

/// Passes lines on and keeps the largest shares of the concrete's modes.
pub(super) struct Shares<'s, S> {
    /// Where lines go on to.
    pub sink: &'s mut S,
    /// β_N of the modes other than steel.
    pub tension: f64,
    /// β_V of the modes other than steel.
    pub shear: f64,
}

/// Which directions supplementary bars take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum BarsIn {
    /// Neither or both.
    NoneOrBoth,
    /// One of them.
    OneDirection,
}

impl<S: Sink> Sink for Shares<'_, S> {
    fn take(&mut self, line: &Line<'_>) {
        if let Outcome::Utilization(share) = line.outcome {
            match line.mode {
                Mode::ConcreteCone
                | Mode::PullOut
                | Mode::Bond
                | Mode::SustainedBond
                | Mode::Splitting
                | Mode::BlowOut
                | Mode::TensionBars => self.tension = self.tension.max(share),
                Mode::PryOut | Mode::ConcreteEdge | Mode::ShearBars => self.shear = self.shear.max(share),
                Mode::LeastSpacing
                | Mode::LeastEdgeDistance
                | Mode::LeastThickness
                | Mode::SteelTension
                | Mode::SteelShear
                | Mode::SteelShearLeverArm
                | Mode::SteelInteraction
                | Mode::ConcreteInteraction => {}
            }
        }
        self.sink.take(line);
    }
}

/// Steel: (N_Ed/N_Rd,s)² + (V_Ed/V_Rd,s)² ≤ 1, (7.54), per fastener.
pub(super) fn steel_share(beta_n: f64, beta_v: f64) -> f64 {
    beta_n * beta_n + beta_v * beta_v
}

/// The line of the most stressed fastener.
pub(super) fn tell_steel((anchor, beta_n, beta_v): (usize, f64, f64), sink: &mut impl Sink) {
    let symbols: [Symbol; 2] = [number("beta_N", beta_n), number("beta_V", beta_v)];
    sink.take(&Line {
        mode: Mode::SteelInteraction,
        of: Of::Anchor(anchor),
        clause: "EN 1992-4 7.2.3.1 (7.54)",
        formula: "(NEd/NRd,s)^2 + (VEd/VRd,s)^2 <= 1",
        symbols: &symbols,
        resistance_n: None,
        action_n: None,
        outcome: Outcome::Utilization(steel_share(beta_n, beta_v)),
    });
}

/// Other modes: the more favorable of β_N^1.5 + β_V^1.5 ≤ 1, (7.55), and β_N + β_V ≤ 1.2, (7.56); β_N^(2/3) + β_V^(2/3) ≤ 1
/// where supplementary bars take only one of them, (7.57).
pub(super) fn concrete_share(beta_n: f64, beta_v: f64, bars: BarsIn) -> f64 {
    match bars {
        BarsIn::NoneOrBoth => {
            (beta_n.powf(1.5) + beta_v.powf(1.5)).min((beta_n + beta_v) / 1.2).max(beta_n).max(beta_v)
        }
        BarsIn::OneDirection => beta_n.powf(2.0 / 3.0) + beta_v.powf(2.0 / 3.0),
    }
}

pub(super) fn tell_concrete((beta_n, beta_v): (f64, f64), bars: BarsIn, sink: &mut impl Sink) {
    let symbols: [Symbol; 2] = [number("beta_N", beta_n), number("beta_V", beta_v)];
    let (clause, formula) = match bars {
        BarsIn::NoneOrBoth => (
            "EN 1992-4 7.2.3.1 (7.55), (7.56)",
            "beta_N^1.5 + beta_V^1.5 <= 1 or beta_N + beta_V <= 1.2, beta_N <= 1, beta_V <= 1",
        ),
        BarsIn::OneDirection => ("EN 1992-4 7.2.3.2 (7.57)", "beta_N^(2/3) + beta_V^(2/3) <= 1"),
    };
    sink.take(&Line {
        mode: Mode::ConcreteInteraction,
        of: Of::Group,
        clause,
        formula,
        symbols: &symbols,
        resistance_n: None,
        action_n: None,
        outcome: Outcome::Utilization(concrete_share(beta_n, beta_v, bars)),
    });
}
