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

/// A part that may be chosen, with all others as they are where the family lists that, else with as few others changed as
/// it can.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// The part; none: no brace.
    pub part: Option<PartId>,
    /// Its name.
    pub name: String,
    /// The make-up with this part in place of the one it has.
    pub make_up: MakeUp,
    /// Names of the other parts that change with it.
    pub brings: Vec<String>,
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
        let mut refused = refused(family, &make_up, kind);
        if let (Some(NotListed::NotTogether { .. }), Some(nearest)) =
            (&refused, nearest_with(family, now, kind, part.as_ref()))
        {
            (make_up, refused) = (nearest, None);
        }
        let differs = |other: &&PartKind| **other != kind && part_id(&make_up, **other) != part_id(now, **other);
        let brings = PartKind::ALL.iter().filter(differs).map(|&other| part_name(family, &make_up, other)).collect();
        Choice { part, name: name.to_owned(), make_up, brings, refused }
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

fn part_id(make_up: &MakeUp, kind: PartKind) -> Option<&PartId> {
    match kind {
        PartKind::Mast => Some(&make_up.mast),
        PartKind::Arm => Some(&make_up.arm),
        PartKind::Brace => make_up.brace.as_ref(),
        PartKind::Base => Some(&make_up.base),
    }
}

/// The make-up that the family lists with this part and the fewest changes of others, the first one among equals; slew and
/// foot stay as they are, and the fixing with its base. None: the family lists the part with nothing.
pub fn nearest_with(family: &Family, now: &MakeUp, kind: PartKind, part: Option<&PartId>) -> Option<MakeUp> {
    let all = family.make_ups(now.family);
    let changes =
        |make_up: &&MakeUp| PartKind::ALL.iter().filter(|&&kind| part_id(make_up, kind) != part_id(now, kind)).count();
    let found = all.iter().filter(|make_up| part_id(make_up, kind) == part).min_by_key(changes)?;
    let fixing = if found.base == now.base { now.fixing.clone() } else { None };
    Some(MakeUp {
        fixing,
        slew_stops: now.slew_stops,
        drawn_slew_rad: now.drawn_slew_rad,
        foot_bearing_rad: now.foot_bearing_rad,
        foot_level_m: now.foot_level_m,
        ..found.clone()
    })
}

/// The next part of a kind among those that the family lists, in its order, with as few others changed as it can.
pub fn next_with(family: &Family, now: &MakeUp, kind: PartKind) -> Option<MakeUp> {
    let mut parts: Vec<Option<PartId>> = Vec::new();
    for make_up in &family.make_ups(now.family) {
        let part = part_id(make_up, kind).cloned();
        if !parts.contains(&part) {
            parts.push(part);
        }
    }
    let position = parts.iter().position(|known| known.as_ref() == part_id(now, kind))?;
    let wanted = &parts[(position + 1) % parts.len()];
    if wanted.as_ref() == part_id(now, kind) {
        return None;
    }
    nearest_with(family, now, kind, wanted.as_ref())
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
    fn every_part_that_the_family_lists_can_be_chosen_and_changes_as_little_as_it_can() {
        let family = family();
        for now in family.make_ups(FamilyId::from_number(1)) {
            for kind in [PartKind::Mast, PartKind::Arm, PartKind::Brace] {
                for choice in choices(&family, &now, kind) {
                    // The witness is the plain list of combinations in the family's file, each on every base that takes its mast.
                    let has = |c: &&crate::catalog::Combination| match kind {
                        PartKind::Mast => Some(&c.mast) == choice.part.as_ref(),
                        PartKind::Arm => Some(&c.arm) == choice.part.as_ref(),
                        _ => c.brace == choice.part,
                    };
                    let takes = |base: &crate::catalog::Base, mast: &PartId| {
                        base.takes_masts() && (base.takes.is_empty() || base.takes.contains(mast))
                    };
                    let others = |c: &crate::catalog::Combination| {
                        let stays = takes(&family.bases[&now.base], &c.mast);
                        let stands = family.bases.values().any(|base| takes(base, &c.mast));
                        let parts = usize::from(c.mast != now.mast)
                            + usize::from(c.arm != now.arm)
                            + usize::from(c.brace != now.brace);
                        stands.then_some(parts + usize::from(!stays))
                    };
                    let fewest = family.combinations.iter().filter(has).filter_map(others).min();
                    let changed =
                        fewest.map(|all| all.saturating_sub(usize::from(part_id(&now, kind) != choice.part.as_ref())));
                    match &choice.refused {
                        None => assert_eq!(Some(choice.brings.len()), changed, "{choice:?}"),
                        Some(NotListed::NotTogether { .. }) => assert_eq!(fewest, None),
                        Some(NotListed::BaseDoesNotTake { .. }) => {
                            assert!(!family.bases[&now.base].takes.contains(&choice.make_up.mast));
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn a_refusal_names_the_parts() {
        let mut family = family();
        let now = family.make_ups(FamilyId::from_number(1)).remove(0);
        // Only one combination is left: every other mast stands with nothing.
        family.combinations.retain(|c| c.mast == now.mast && c.arm == now.arm && c.brace == now.brace);
        let other = choices(&family, &now, PartKind::Mast).into_iter().find(|c| c.make_up.mast != now.mast).unwrap();
        let said = other.refused.unwrap().to_string();
        assert!(said.contains(&other.name) && said.contains(&part_name(&family, &now, PartKind::Arm)), "{said}");
    }
}
