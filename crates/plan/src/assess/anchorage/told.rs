//! What is told of a base in few words: in its tag, beside it, in tables. One place for them, so that all say the same.

use super::found::{BaseAssessment, BaseUse, Fixed};
use crate::quantity;

/// How a base came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BaseState {
    /// Something is used beyond its resistance.
    Over,
    /// Nothing could be computed.
    NotChecked,
    /// Nothing that was computed is used beyond its resistance; not all was.
    InPart,
    /// Everything was checked and holds.
    Holds,
}

impl BaseState {
    /// Its words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Over => "used beyond its resistance",
            Self::NotChecked => "not checked",
            Self::InPart => "not all checked",
            Self::Holds => "holds",
        }
    }
}

impl BaseAssessment {
    /// The use with the largest share of base or foot; none where nothing was computed.
    pub fn worst(&self, of: Fixed) -> Option<&BaseUse> {
        let shares = self.uses.iter().filter(|used| used.of == of && used.share().is_some());
        shares.reduce(|worst, next| if next.share() > worst.share() { next } else { worst })
    }

    /// Whether everything that can occur was checked.
    pub fn is_all_checked(&self) -> bool {
        self.not_checked().next().is_none()
    }

    /// How it came out.
    pub fn state(&self) -> BaseState {
        match self.utilization() {
            Some(share) if share > 1.0 => BaseState::Over,
            None => BaseState::NotChecked,
            Some(_) if self.is_all_checked() => BaseState::Holds,
            Some(_) => BaseState::InPart,
        }
    }

    /// The largest share as it stands beside the base: `86 %`, and `86 %, in part` where not all was checked.
    pub fn used_words(&self) -> String {
        match self.utilization() {
            None => BaseState::NotChecked.words().to_owned(),
            Some(share) if share.is_finite() && !self.is_all_checked() => {
                format!("{}, in part", quantity::utilization(share))
            }
            Some(share) => quantity::utilization(share),
        }
    }
}

impl BaseUse {
    /// What was looked at, and whether at the base or at the foot.
    pub fn named(&self) -> String {
        format!("{}: {}", self.of.word(), self.look.words())
    }
}

#[cfg(test)]
mod tests {
    use super::super::found::{Look, Used};
    use super::*;

    fn base(outcomes: Vec<Used>) -> BaseAssessment {
        let uses: Vec<BaseUse> =
            outcomes.into_iter().map(|outcome| BaseUse::plain(Fixed::Base, Look::PlateBends, outcome)).collect();
        let governs = uses.iter().position(|used| used.share().is_some());
        BaseAssessment {
            uses,
            governs,
            edges: Vec::new(),
            thickness_m: None,
            sustained_share: None,
            bond_is_default: false,
            handed_on: Vec::new(),
        }
    }

    #[test]
    fn a_share_of_what_was_looked_at_in_part_says_so() {
        let missing = || Used::NotChecked("slab".to_owned());
        let told = |outcomes| {
            let base = base(outcomes);
            (base.state(), base.used_words())
        };
        assert_eq!(told(vec![Used::Share(0.86)]), (BaseState::Holds, "86 %".to_owned()));
        assert_eq!(told(vec![Used::Share(0.86), missing()]), (BaseState::InPart, "86 %, in part".to_owned()));
        assert_eq!(told(vec![Used::Share(1.2), missing()]), (BaseState::Over, "120 %, in part".to_owned()));
        assert_eq!(told(vec![Used::Share(f64::INFINITY)]), (BaseState::Over, "nothing resists".to_owned()));
        assert_eq!(told(vec![missing()]), (BaseState::NotChecked, "not checked".to_owned()));
        assert_eq!(told(Vec::new()), (BaseState::NotChecked, "not checked".to_owned()));
    }
}
