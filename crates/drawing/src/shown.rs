//! Shown: which overlays a drawing carries, and the named sets that people switch between.

/// Something that may be laid over the plain drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Overlay {
    /// What is reached along facades, and gaps.
    Reach,
    /// What arms and braces sweep.
    ClearZones,
    /// Where the operator stands and where the mast is laid down.
    Room,
    /// Distances along edges and setbacks.
    SettingOut,
    /// The smallest clearances, where they are.
    Clearances,
    /// Reactions beside bases.
    Reactions,
}

impl Overlay {
    /// All overlays.
    pub const ALL: [Self; 6] =
        [Self::Reach, Self::ClearZones, Self::Room, Self::SettingOut, Self::Clearances, Self::Reactions];

    const fn bit(self) -> u8 {
        1 << self as u8
    }
}

/// A set of overlays.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash)]
pub struct Shown {
    bits: u8,
}

impl Shown {
    /// No overlay.
    pub const NONE: Self = Self { bits: 0 };

    /// These overlays.
    pub fn of(overlays: impl IntoIterator<Item = Overlay>) -> Self {
        overlays.into_iter().fold(Self::NONE, Self::with)
    }

    /// The same set and this overlay.
    #[must_use]
    pub const fn with(self, overlay: Overlay) -> Self {
        Self { bits: self.bits | overlay.bit() }
    }

    /// The same set without this overlay.
    #[must_use]
    pub const fn without(self, overlay: Overlay) -> Self {
        Self { bits: self.bits & !overlay.bit() }
    }

    /// Whether an overlay is in it.
    pub const fn has(self, overlay: Overlay) -> bool {
        self.bits & overlay.bit() != 0
    }
}

/// Sets of overlays with names, one for each way of reading a plan.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OverlaySet {
    /// What is reached, and setting-out.
    #[default]
    Reach,
    /// Clear zones, room for people, clearances.
    ClearZones,
    /// Reactions and setting-out.
    Reactions,
    /// Everything.
    All,
}

impl OverlaySet {
    /// All sets in the order of their keys.
    pub const ALL: [Self; 4] = [Self::Reach, Self::ClearZones, Self::Reactions, Self::All];

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Reach => "Reach",
            Self::ClearZones => "Clear zones",
            Self::Reactions => "Reactions",
            Self::All => "All",
        }
    }

    /// What it shows.
    pub fn shown(self) -> Shown {
        match self {
            Self::Reach => Shown::of([Overlay::Reach, Overlay::SettingOut]),
            Self::ClearZones => Shown::of([Overlay::ClearZones, Overlay::Room, Overlay::Clearances]),
            Self::Reactions => Shown::of([Overlay::Reactions, Overlay::SettingOut]),
            Self::All => Shown::of(Overlay::ALL),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_set_has_what_was_put_in_and_nothing_else() {
        let shown = Shown::of([Overlay::Room, Overlay::Reach]).without(Overlay::Reach);
        let has: Vec<Overlay> = Overlay::ALL.into_iter().filter(|overlay| shown.has(*overlay)).collect();
        assert_eq!(has, [Overlay::Room]);
    }

    #[test]
    fn all_shows_what_any_other_set_shows() {
        let all = OverlaySet::All.shown();
        for set in OverlaySet::ALL {
            assert!(Overlay::ALL.into_iter().all(|overlay| all.has(overlay) || !set.shown().has(overlay)));
        }
    }
}
