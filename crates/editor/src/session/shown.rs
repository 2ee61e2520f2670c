//! Which overlays lie on the sheet: sets with names, chosen by the keys 1 to 4.

use serde::{Deserialize, Serialize};

/// A named set of overlays.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OverlaySet {
    /// What technicians reach of the facades, and the gaps.
    Reach,
    /// Room that arms and braces need.
    ClearZones,
    /// What the bases bring into the structure.
    Reactions,
    /// All of it.
    #[default]
    All,
}

impl OverlaySet {
    /// All sets in the order of their keys.
    pub const EACH: [Self; 4] = [Self::Reach, Self::ClearZones, Self::Reactions, Self::All];

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Reach => "Reach",
            Self::ClearZones => "Clear zones",
            Self::Reactions => "Reactions",
            Self::All => "All",
        }
    }
}

impl OverlaySet {
    /// What it lays over a drawing.
    pub fn drawn(self) -> gantline_drawing::shown::Shown {
        use gantline_drawing::shown::OverlaySet as Drawn;
        match self {
            Self::Reach => Drawn::Reach.shown(),
            Self::ClearZones => Drawn::ClearZones.shown(),
            Self::Reactions => Drawn::Reactions.shown(),
            Self::All => Drawn::All.shown(),
        }
    }
}
