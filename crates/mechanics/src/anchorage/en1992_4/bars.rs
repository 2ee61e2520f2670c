//! Supplementary reinforcement that takes a load in place of the concrete, EN 1992-4 7.2.1.9, 7.2.2.6 and 6.2.

use std::f64::consts::PI;

use super::super::line::{Line, Of, Sink, meters, newtons, number, pascals};
use super::super::record::{Mode, NotChecked, Symbol};
use super::super::supplementary::{BarEnd, BarSet};

/// Resistance of a set of bars, or the rule that it breaks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bars {
    set: BarSet,
    steel_n: f64,
    anchorage_n: f64,
    gamma: f64,
}

impl Bars {
    /// N_Rd,re = n·A_s·f_yk/γ_Ms,re, f_yk ≤ 600 MPa (7.31); anchored in the body N⁰_Rd,a = n·l_1·π·φ·f_bd/(α_1·α_2) (7.33).
    ///
    /// Rules (7.2.1.2(2), 7.2.2.2(2)): φ ≤ 16 mm (from memory, to be confirmed), l_1 ≥ 4·φ for hooks and 10·φ for straight
    /// bars, no counted bar farther than `reach_m`.
    pub(super) fn new(set: &BarSet, gamma: f64, reach_m: f64) -> Result<Self, NotChecked> {
        let least = match set.end {
            BarEnd::Straight => 10.0 * set.diameter_m,
            BarEnd::Hooked => 4.0 * set.diameter_m,
        };
        if set.diameter_m > 0.016 + 1e-9 {
            return Err(NotChecked::NotCovered { what: "diameter of the supplementary bars" });
        }
        if set.anchored_m < least - 1e-9 {
            return Err(NotChecked::NotCovered { what: "anchored length of the supplementary bars" });
        }
        if set.distance_m > reach_m + 1e-9 {
            return Err(NotChecked::NotCovered { what: "distance of the supplementary bars" });
        }
        let count = f64::from(set.count);
        let area = PI * set.diameter_m.powi(2) / 4.0;
        Ok(Self {
            set: *set,
            steel_n: count * area * set.yield_pa.min(600e6) / gamma,
            anchorage_n: count * set.anchored_m * PI * set.diameter_m * set.bond_pa / set.alpha,
            gamma,
        })
    }

    pub(super) fn tell(&self, mode: Mode, of: Of<'_>, (clause, action): (&'static str, f64), sink: &mut impl Sink) {
        let symbols: [Symbol; 8] = [
            number("n", f64::from(self.set.count)),
            meters("phi", self.set.diameter_m),
            pascals("fyk", self.set.yield_pa.min(600e6)),
            newtons("NRd,re", self.steel_n),
            meters("l1", self.set.anchored_m),
            pascals("fbd", self.set.bond_pa),
            newtons("NRd,a", self.anchorage_n),
            number("gamma_Ms,re", self.gamma),
        ];
        sink.take(&Line::against(
            mode,
            of,
            (clause, "min(n*As*fyk/gamma_Ms,re; n*l1*pi*phi*fbd/(alpha1*alpha2))"),
            &symbols,
            (action, self.steel_n.min(self.anchorage_n)),
        ));
    }
}
