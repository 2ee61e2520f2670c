//! Which parts a unit may get in place of one it has, and why the family refuses the others.

use super::{Family, MakeUp};
use crate::document::PartId;

/// A kind of part that is chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartKind {
    /// The mast.
    Mast,
    /// The arm.
    Arm,
    /// The brace, or none.
    Brace,
    /// The base.
    Base,
}

impl PartKind {
    /// All in the order in which they are put together.
    pub const ALL: [Self; 4] = [Self::Mast, Self::Arm, Self::Brace, Self::Base];

    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Mast => "mast",
            Self::Arm => "arm",
            Self::Brace => "brace",
            Self::Base => "base",
        }
    }
}

/// A part that may be chosen, with all others as they are.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// The part; none: no brace.
    pub part: Option<PartId>,
    /// Its name.
    pub name: String,
    /// The make-up with this part in place of the one it has.
    pub make_up: MakeUp,
    /// Why the family refuses it; none: it lists it.
    pub refused: Option<NotListed>,
}

/// Why a family refuses a part.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NotListed {
    /// No combination of the family has these three.
    #[error("the family does not list {mast} with {arm} and {brace}")]
    NotTogether {
        /// The mast.
        mast: String,
        /// The arm.
        arm: String,
        /// The brace, or that there is none.
        brace: String,
    },
    /// The base does not take the mast.
    #[error("{base} does not take {mast}")]
    BaseDoesNotTake {
        /// The base.
        base: String,
        /// The mast.
        mast: String,
    },
}

/// Every part of a kind that the family has, in order, with what it would make of the unit.
pub fn choices(family: &Family, now: &MakeUp, kind: PartKind) -> Vec<Choice> {
    let with = |part: Option<PartId>, name: &str| {
        let mut make_up = now.clone();
        match (kind, &part) {
            (PartKind::Mast, Some(part)) => make_up.mast = part.clone(),
            (PartKind::Arm, Some(part)) => make_up.arm = part.clone(),
            (PartKind::Base, Some(part)) => make_up.base = part.clone(),
            (PartKind::Brace, _) => make_up.brace.clone_from(&part),
            (_, None) => {}
        }
        let refused = refused(family, &make_up, kind);
        Choice { part, name: name.to_owned(), make_up, refused }
    };
    match kind {
        PartKind::Mast => family.masts.iter().map(|(id, mast)| with(Some(id.clone()), &mast.name)).collect(),
        PartKind::Arm => family.arms.iter().map(|(id, arm)| with(Some(id.clone()), &arm.name)).collect(),
        PartKind::Base => family
            .bases
            .iter()
            .filter(|(_, base)| base.takes_masts())
            .map(|(id, base)| with(Some(id.clone()), &base.name))
            .collect(),
        PartKind::Brace => {
            let braces = family.braces.iter().map(|(id, brace)| with(Some(id.clone()), &brace.name));
            std::iter::once(with(None, NO_BRACE)).chain(braces).collect()
        }
    }
}

/// What stands where a brace's name would.
const NO_BRACE: &str = "no brace";

/// The name of the part of a kind that a make-up has; its id where the family has no such part.
pub fn part_name(family: &Family, make_up: &MakeUp, kind: PartKind) -> String {
    let (id, name) = match kind {
        PartKind::Mast => (&make_up.mast, family.masts.get(&make_up.mast).map(|part| &part.name)),
        PartKind::Arm => (&make_up.arm, family.arms.get(&make_up.arm).map(|part| &part.name)),
        PartKind::Base => (&make_up.base, family.bases.get(&make_up.base).map(|part| &part.name)),
        PartKind::Brace => match &make_up.brace {
            None => return NO_BRACE.to_owned(),
            Some(id) => (id, family.braces.get(id).map(|part| &part.name)),
        },
    };
    name.cloned().unwrap_or_else(|| id.to_string())
}

fn refused(family: &Family, make_up: &MakeUp, kind: PartKind) -> Option<NotListed> {
    let name = |kind| part_name(family, make_up, kind);
    if kind != PartKind::Base && family.combination(&make_up.mast, &make_up.arm, make_up.brace.as_ref()).is_none() {
        let (mast, arm, brace) = (name(PartKind::Mast), name(PartKind::Arm), name(PartKind::Brace));
        return Some(NotListed::NotTogether { mast, arm, brace });
    }
    let base = family.bases.get(&make_up.base)?;
    let takes = base.takes.is_empty() || base.takes.contains(&make_up.mast);
    let concerns = matches!(kind, PartKind::Mast | PartKind::Base);
    (concerns && !takes).then(|| NotListed::BaseDoesNotTake { base: name(PartKind::Base), mast: name(PartKind::Mast) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::FamilyId;

    fn family() -> Family {
        serde_json::from_str(include_str!("../../../../assets/families/heron.json")).unwrap()
    }

    #[test]
    fn a_part_is_offered_exactly_when_the_family_lists_it_with_the_others() {
        let family = family();
        for now in family.make_ups(FamilyId::from_number(1)) {
            for kind in [PartKind::Mast, PartKind::Arm, PartKind::Brace] {
                for choice in choices(&family, &now, kind) {
                    // The witness is the plain list of combinations in the family's file.
                    let listed = family.combinations.iter().any(|c| {
                        c.mast == choice.make_up.mast && c.arm == choice.make_up.arm && c.brace == choice.make_up.brace
                    });
                    let takes = family.bases[&now.base].takes.is_empty()
                        || family.bases[&now.base].takes.contains(&choice.make_up.mast);
                    assert_eq!(choice.refused.is_none(), listed && (takes || kind != PartKind::Mast));
                }
            }
        }
    }

    #[test]
    fn a_refusal_names_the_parts() {
        let mut family = family();
        let now = family.make_ups(FamilyId::from_number(1)).remove(0);
        family.combinations.retain(|c| c.mast == now.mast && c.arm == now.arm && c.brace == now.brace);
        let other = choices(&family, &now, PartKind::Mast).into_iter().find(|c| c.make_up.mast != now.mast).unwrap();
        let said = other.refused.unwrap().to_string();
        assert!(said.contains(&other.name) && said.contains(&part_name(&family, &now, PartKind::Arm)), "{said}");
    }
}
