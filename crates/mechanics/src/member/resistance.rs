//! The resistance of one member under one code, ready to be asked many times.

use super::actions::MemberActions;
use super::aisc360::Aisc360Member;
use super::check::{ByMode, Governing, MemberCheck, Mode, NotChecked, Outcome};
use super::code::MemberCode;
use super::design::CheckedMember;
use super::en1993::En1993Member;
use super::en1999::En1999Member;
use crate::material::MaterialKind;

/// What a member can bear, worked out once by `Member::resistance`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MemberResistance(Inner);

#[derive(Debug, Clone, Copy, PartialEq)]
enum Inner {
    En1993(En1993Member),
    En1999(En1999Member),
    Aisc360(Aisc360Member),
    NotCovered(NotChecked),
}

impl MemberResistance {
    pub(super) fn new(checked: &CheckedMember, code: &MemberCode) -> Self {
        let inner = match (code, checked.member.material.kind) {
            (MemberCode::En1993(factors), MaterialKind::Steel { forming }) => {
                Inner::En1993(En1993Member::new(checked, forming, factors))
            }
            (MemberCode::En1999(factors), MaterialKind::Aluminum { buckling_class, haz }) => {
                Inner::En1999(En1999Member::new(checked, buckling_class, haz, factors))
            }
            (MemberCode::Aisc360(factors), MaterialKind::Steel { .. }) => {
                Aisc360Member::new(checked, factors).map_or_else(Inner::NotCovered, Inner::Aisc360)
            }
            (MemberCode::En1993(_) | MemberCode::Aisc360(_), MaterialKind::Aluminum { .. })
            | (MemberCode::En1999(_), MaterialKind::Steel { .. }) => Inner::NotCovered(NotChecked::Material),
        };
        Self(inner)
    }

    /// Outcome of every mode, without allocation.
    pub fn by_mode(&self, actions: &MemberActions) -> ByMode {
        if !actions.are_finite() {
            return ByMode::all_not_checked(NotChecked::NotFinite);
        }
        match &self.0 {
            Inner::En1993(member) => member.by_mode(actions),
            Inner::En1999(member) => member.by_mode(actions),
            Inner::Aisc360(member) => member.by_mode(actions),
            Inner::NotCovered(why) => ByMode::all_not_checked(*why),
        }
    }

    /// Outcome of buckling alone, for searches that look at nothing else. The same as in `by_mode`, to the bit.
    pub fn stability(&self, actions: &MemberActions) -> Outcome {
        if !actions.are_finite() {
            return Outcome::NotChecked(NotChecked::NotFinite);
        }
        match &self.0 {
            Inner::En1993(member) => member.stability_outcome(actions),
            Inner::En1999(member) => member.stability_outcome(actions),
            Inner::Aisc360(member) => member.stability_outcome(actions),
            Inner::NotCovered(why) => Outcome::NotChecked(*why),
        }
    }

    /// The worst mode, without allocation: the quick way for searching over many directions.
    pub fn governing(&self, actions: &MemberActions) -> Governing {
        self.by_mode(actions).governing()
    }

    /// Every mode with its terms and clause. The outcomes are those of `by_mode`, to the bit.
    pub fn checks(&self, actions: &MemberActions) -> Vec<MemberCheck> {
        let outcomes = self.by_mode(actions);
        Mode::ALL
            .into_iter()
            .map(|mode| {
                let outcome = outcomes.get(mode);
                let (terms, clause) = match (&self.0, outcome) {
                    (_, Outcome::NotChecked(NotChecked::NotFinite)) | (Inner::NotCovered(_), _) => (Vec::new(), ""),
                    (Inner::En1993(member), _) => member.terms(mode, actions),
                    (Inner::En1999(member), _) => member.terms(mode, actions),
                    (Inner::Aisc360(member), _) => member.terms(mode, actions),
                };
                MemberCheck { mode, outcome, terms, clause }
            })
            .collect()
    }
}
