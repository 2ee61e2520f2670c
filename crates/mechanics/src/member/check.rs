//! The answer of a member check: a utilization by mode, or why there is none. Missing is never a pass.

use thiserror::Error;

/// A way in which a member can fail.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mode {
    /// Axial force with biaxial bending on the gross section, reduced by shear and torsion.
    Section,
    /// The section through a pin hole.
    NetSection,
    /// Shear, with the stress that torsion adds.
    Shear,
    /// Torsion alone.
    Torsion,
    /// Flexural and lateral-torsional buckling with bending.
    Stability,
}

impl Mode {
    /// All modes, in the order of `ByMode`.
    pub const ALL: [Self; 5] = [Self::Section, Self::NetSection, Self::Shear, Self::Torsion, Self::Stability];
}

/// Why a mode was not checked.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum NotChecked {
    /// Walls buckle before they yield, and the code's way of dealing with it is not built.
    #[error("walls too slender: {ratio:.1} exceeds {limit:.1}, effective sections are not covered")]
    SlenderWalls { ratio: f64, limit: f64 },
    /// Walls may buckle in shear.
    #[error("walls too slender for shear: {ratio:.1} exceeds {limit:.1}, shear buckling is not covered")]
    ShearBuckling { ratio: f64, limit: f64 },
    /// Lateral-torsional buckling can't be ruled out.
    #[error("lateral-torsional slenderness {slenderness:.2} exceeds {limit:.2} and is not covered")]
    LateralTorsional { slenderness: f64, limit: f64 },
    /// The design code has no rules for the material.
    #[error("the design code does not cover this material")]
    Material,
    /// The design code's rules for this shape are not built.
    #[error("the design code's rules for {what} are not covered")]
    Shape { what: &'static str },
    /// A station with a pin hole on a member that names none.
    #[error("a pin hole is at this station, but the member names none")]
    NoPinHole,
    /// A force is infinite or not a number.
    #[error("a force is not a finite number")]
    NotFinite,
}

/// What came out for one mode.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outcome {
    /// Share of the resistance used; 1 is the limit. Where the code's criterion is not proportional to the forces,
    /// this is the criterion's left side, so only its being above or below 1 is sharp.
    Utilization(f64),
    /// Not checked, and why.
    NotChecked(NotChecked),
    /// Nothing acts that could cause this mode.
    NotApplicable,
}

/// One outcome for each mode, without allocation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ByMode(pub(super) [Outcome; 5]);

impl ByMode {
    /// The same reason for every mode.
    pub(super) const fn all_not_checked(why: NotChecked) -> Self {
        Self([Outcome::NotChecked(why); 5])
    }

    /// Outcome of one mode.
    pub const fn get(&self, mode: Mode) -> Outcome {
        self.0[mode as usize]
    }

    /// The worst mode, together with the first reason why any mode was not checked.
    pub fn governing(&self) -> Governing {
        let mut governing = Governing { mode: Mode::Section, utilization: 0.0, not_checked: None };
        for mode in Mode::ALL {
            match self.get(mode) {
                Outcome::Utilization(value) if value > governing.utilization => {
                    governing.mode = mode;
                    governing.utilization = value;
                }
                Outcome::NotChecked(why) => {
                    governing.not_checked = governing.not_checked.or(Some((mode, why)));
                }
                Outcome::Utilization(_) | Outcome::NotApplicable => {}
            }
        }
        governing
    }
}

/// The worst of all modes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Governing {
    /// The mode with the largest utilization.
    pub mode: Mode,
    /// The largest utilization among the modes that were checked.
    pub utilization: f64,
    /// The first mode that was not checked. While this is `Some`, the member can't be said to hold.
    pub not_checked: Option<(Mode, NotChecked)>,
}

impl Governing {
    /// Whether every mode was checked and none is above 1.
    pub fn holds(&self) -> bool {
        self.not_checked.is_none() && self.utilization <= 1.0
    }
}

/// A symbol of the code with the value it had.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Term {
    /// Symbol as the code prints it.
    pub symbol: &'static str,
    /// Value in the unit.
    pub value: f64,
    /// SI unit, empty for a plain number.
    pub unit: &'static str,
}

/// One mode with all that a reader needs to follow it.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberCheck {
    /// The mode.
    pub mode: Mode,
    /// What came out.
    pub outcome: Outcome,
    /// Actions, resistances and factors in the order in which they enter.
    pub terms: Vec<Term>,
    /// Clause of the design code.
    pub clause: &'static str,
}

/// A force in N.
pub(super) const fn newtons(symbol: &'static str, value: f64) -> Term {
    Term { symbol, value, unit: "N" }
}

/// A moment in N·m.
pub(super) const fn newton_meters(symbol: &'static str, value: f64) -> Term {
    Term { symbol, value, unit: "N*m" }
}

/// A plain number.
pub(super) const fn number(symbol: &'static str, value: f64) -> Term {
    Term { symbol, value, unit: "" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mode_that_was_not_checked_never_holds() {
        let mut by_mode = ByMode([Outcome::Utilization(0.2); 5]);
        assert!(by_mode.governing().holds());
        by_mode.0[Mode::Shear as usize] = Outcome::NotChecked(NotChecked::Material);
        let governing = by_mode.governing();
        assert!(!governing.holds());
        assert_eq!(governing.not_checked, Some((Mode::Shear, NotChecked::Material)));
    }

    #[test]
    fn the_largest_utilization_governs() {
        let mut by_mode = ByMode([Outcome::NotApplicable; 5]);
        by_mode.0[Mode::Torsion as usize] = Outcome::Utilization(0.4);
        by_mode.0[Mode::Stability as usize] = Outcome::Utilization(1.1);
        let governing = by_mode.governing();
        assert_eq!((governing.mode, governing.utilization), (Mode::Stability, 1.1));
        assert!(!governing.holds());
    }
}
