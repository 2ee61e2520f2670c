//! The answer of an anchorage check, mode by mode: how it was computed, or why it was not. Missing is never a pass.

use thiserror::Error;

/// A way in which an anchorage can fail, or a rule for setting it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Mode {
    /// Least spacing of the product.
    LeastSpacing,
    /// Least edge distance of the product.
    LeastEdgeDistance,
    /// Least thickness of the concrete.
    LeastThickness,
    /// Steel of a fastener in tension.
    SteelTension,
    /// Concrete cone, also called concrete breakout.
    ConcreteCone,
    /// Pull-out of a headed or undercut fastener.
    PullOut,
    /// Bond, with the concrete cone combined.
    Bond,
    /// Bond under the sustained share alone.
    SustainedBond,
    /// Splitting of the concrete under load.
    Splitting,
    /// Blow-out of the side face at a head.
    BlowOut,
    /// Supplementary reinforcement for tension.
    TensionBars,
    /// Steel of a fastener in shear without lever arm.
    SteelShear,
    /// Steel of a fastener in shear with lever arm.
    SteelShearLeverArm,
    /// Pry-out on the side away from the load.
    PryOut,
    /// Concrete edge.
    ConcreteEdge,
    /// Supplementary reinforcement for shear.
    ShearBars,
    /// Tension and shear together in the steel.
    SteelInteraction,
    /// Tension and shear together in the concrete.
    ConcreteInteraction,
}

impl Mode {
    /// All modes, in the order in which records come.
    pub const ALL: [Self; 18] = [
        Self::LeastSpacing,
        Self::LeastEdgeDistance,
        Self::LeastThickness,
        Self::SteelTension,
        Self::ConcreteCone,
        Self::PullOut,
        Self::Bond,
        Self::SustainedBond,
        Self::Splitting,
        Self::BlowOut,
        Self::TensionBars,
        Self::SteelShear,
        Self::SteelShearLeverArm,
        Self::PryOut,
        Self::ConcreteEdge,
        Self::ShearBars,
        Self::SteelInteraction,
        Self::ConcreteInteraction,
    ];

    /// Its words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::LeastSpacing => "least spacing",
            Self::LeastEdgeDistance => "least edge distance",
            Self::LeastThickness => "least thickness",
            Self::SteelTension => "steel, tension",
            Self::ConcreteCone => "concrete cone",
            Self::PullOut => "pull-out",
            Self::Bond => "bond",
            Self::SustainedBond => "bond, sustained",
            Self::Splitting => "splitting",
            Self::BlowOut => "blow-out",
            Self::TensionBars => "bars, tension",
            Self::SteelShear => "steel, shear",
            Self::SteelShearLeverArm => "steel, shear with lever arm",
            Self::PryOut => "pry-out",
            Self::ConcreteEdge => "concrete edge",
            Self::ShearBars => "bars, shear",
            Self::SteelInteraction => "steel, both",
            Self::ConcreteInteraction => "concrete, both",
        }
    }
}

/// Why a mode was not checked.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum NotChecked {
    /// A datum is missing.
    #[error("{field} is missing")]
    MissingData { field: &'static str },
    /// The product's data don't stand for what is planned.
    #[error("the product's data do not cover the {what}")]
    NotCovered { what: &'static str },
    /// The code has no rules for it: a structural engineer decides.
    #[error("{what}: for the structural engineer")]
    StructuralEngineer { what: &'static str },
    /// The values that act are not design values.
    #[error("the actions are not at design level")]
    NotDesignLevel,
    /// A number is infinite or not a number, or a list has a wrong length.
    #[error("an action is not a finite number")]
    NotFinite,
}

/// What came out for one mode.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outcome {
    /// Share of the resistance used; 1 is the limit. For interactions the criterion's left side over its limit.
    Utilization(f64),
    /// Not checked, and why.
    NotChecked(NotChecked),
    /// The mode can't occur here, and why.
    NotApplicable(&'static str),
}

/// What a record is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum About {
    /// The whole group.
    Group,
    /// One fastener.
    Anchor(usize),
    /// Some fasteners that act together.
    Anchors(Vec<usize>),
    /// One of `Around::edges`.
    Edge(usize),
}

/// A symbol of the code with the value it had.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Symbol {
    /// Symbol as the code prints it.
    pub symbol: &'static str,
    /// Value in the unit.
    pub value: f64,
    /// SI unit, empty for a plain number.
    pub unit: &'static str,
}

/// One mode with all that a reader needs to follow it.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// The mode.
    pub mode: Mode,
    /// What it is about.
    pub about: About,
    /// Clause and equation of the code.
    pub clause: &'static str,
    /// Formula as text.
    pub formula: &'static str,
    /// Symbols with values, in the order in which they enter.
    pub symbols: Vec<Symbol>,
    /// Design resistance, N, where there is one.
    pub resistance_n: Option<f64>,
    /// Design action, N, where there is one.
    pub action_n: Option<f64>,
    /// What came out.
    pub outcome: Outcome,
}

impl Record {
    /// Share of the resistance used, if the mode was computed.
    pub const fn utilization(&self) -> Option<f64> {
        match self.outcome {
            Outcome::Utilization(value) => Some(value),
            Outcome::NotChecked(_) | Outcome::NotApplicable(_) => None,
        }
    }
}

/// The worst of all modes, without allocation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Verdict {
    /// The mode with the largest utilization, if any mode was computed.
    pub mode: Option<Mode>,
    /// The largest utilization among the modes that were computed.
    pub utilization: f64,
    /// The first mode that was not checked. While this is `Some`, the anchorage can't be said to hold.
    pub not_checked: Option<(Mode, NotChecked)>,
}

impl Verdict {
    /// Nothing looked at yet.
    pub const NOTHING: Self = Self { mode: None, utilization: 0.0, not_checked: None };

    /// Takes one more outcome in.
    pub fn take(&mut self, mode: Mode, outcome: Outcome) {
        match outcome {
            Outcome::Utilization(value) if value.is_nan() => {
                self.take(mode, Outcome::NotChecked(NotChecked::NotFinite));
            }
            Outcome::Utilization(value) if self.mode.is_none() || value > self.utilization => {
                self.mode = Some(mode);
                self.utilization = value;
            }
            Outcome::NotChecked(why) => self.not_checked = self.not_checked.or(Some((mode, why))),
            Outcome::Utilization(_) | Outcome::NotApplicable(_) => {}
        }
    }

    /// Whether every mode was checked and none is above 1.
    pub fn holds(&self) -> bool {
        self.not_checked.is_none() && self.utilization <= 1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_not_checked_never_holds() {
        let mut verdict = Verdict::NOTHING;
        verdict.take(Mode::SteelTension, Outcome::Utilization(0.4));
        verdict.take(Mode::Bond, Outcome::NotApplicable("no adhesive"));
        assert!(verdict.holds());
        verdict.take(Mode::Splitting, Outcome::NotChecked(NotChecked::MissingData { field: "splitting_edge_m" }));
        assert!(!verdict.holds());
        assert_eq!((verdict.mode, verdict.utilization), (Some(Mode::SteelTension), 0.4));
    }

    #[test]
    fn a_share_that_is_no_number_never_holds() {
        let mut verdict = Verdict::NOTHING;
        verdict.take(Mode::ConcreteCone, Outcome::Utilization(f64::NAN));
        assert!(!verdict.holds());
    }

    #[test]
    fn more_than_the_resistance_never_holds() {
        let mut verdict = Verdict::NOTHING;
        verdict.take(Mode::ConcreteCone, Outcome::Utilization(1.001));
        assert!(!verdict.holds());
    }
}
