//! The worst of each mode under one set of actions, without allocation: for a search that wants every mode's own worst.

use super::record::{Mode, NotChecked, Outcome, Verdict};

/// What came out for each mode: the largest utilization, and whether anything about it was not checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModeShares {
    used: [Option<f64>; Mode::ALL.len()],
    missing: [Option<NotChecked>; Mode::ALL.len()],
    why_not: [Option<&'static str>; Mode::ALL.len()],
}

impl ModeShares {
    /// Nothing looked at yet.
    pub const NOTHING: Self =
        Self { used: [None; Mode::ALL.len()], missing: [None; Mode::ALL.len()], why_not: [None; Mode::ALL.len()] };

    /// Takes one more outcome in.
    pub fn take(&mut self, mode: Mode, outcome: Outcome) {
        let at = mode as usize;
        match outcome {
            Outcome::Utilization(value) if value.is_nan() => self.missing[at] = Some(NotChecked::NotFinite),
            Outcome::Utilization(value) => {
                self.used[at] = Some(self.used[at].map_or(value, |known| known.max(value)));
            }
            Outcome::NotChecked(why) => self.missing[at] = self.missing[at].or(Some(why)),
            Outcome::NotApplicable(why) => self.why_not[at] = self.why_not[at].or(Some(why)),
        }
    }

    /// The largest utilization of a mode, if it was computed.
    pub fn used(&self, mode: Mode) -> Option<f64> {
        self.used[mode as usize]
    }

    /// Why a mode, or a part of it, was not checked.
    pub fn missing(&self, mode: Mode) -> Option<NotChecked> {
        self.missing[mode as usize]
    }

    /// Why a mode can't occur, where nothing of it was computed and nothing is missing.
    pub fn not_applicable(&self, mode: Mode) -> Option<&'static str> {
        let at = mode as usize;
        if self.used[at].is_none() && self.missing[at].is_none() { self.why_not[at] } else { None }
    }

    /// The worst of all modes.
    pub fn verdict(&self) -> Verdict {
        let mut verdict = Verdict::NOTHING;
        for mode in Mode::ALL {
            if let Some(value) = self.used(mode) {
                verdict.take(mode, Outcome::Utilization(value));
            }
            if let Some(why) = self.missing(mode) {
                verdict.take(mode, Outcome::NotChecked(why));
            }
        }
        verdict
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_mode_keeps_its_own_worst_and_what_is_missing_is_no_pass() {
        let mut shares = ModeShares::NOTHING;
        shares.take(Mode::ConcreteCone, Outcome::Utilization(0.3));
        shares.take(Mode::ConcreteCone, Outcome::Utilization(0.7));
        shares.take(Mode::SteelTension, Outcome::Utilization(0.9));
        shares.take(Mode::Bond, Outcome::NotApplicable("no adhesive"));
        assert_eq!(shares.used(Mode::ConcreteCone), Some(0.7));
        assert_eq!(shares.not_applicable(Mode::Bond), Some("no adhesive"));
        assert_eq!((shares.verdict().mode, shares.verdict().utilization), (Some(Mode::SteelTension), 0.9));
        assert!(shares.verdict().holds());
        shares.take(Mode::PryOut, Outcome::Utilization(f64::NAN));
        assert!(!shares.verdict().holds());
    }

    #[test]
    fn the_modes_stand_in_the_order_of_their_list() {
        assert!(Mode::ALL.iter().enumerate().all(|(at, mode)| *mode as usize == at));
    }
}
