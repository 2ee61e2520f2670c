//! Tags: the name people use for a base ("B-07"), changed by people only; ids stay what they are.

use std::collections::BTreeMap;
use std::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Placement, PlacementId};

/// A tag as shown on drawings. Not unique by itself: duplicates are kept and found by a rule.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct Tag(pub String);

impl fmt::Display for Tag {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// The next free tag of the form `B-07`: one above the highest number in use.
pub fn next_free(placements: &BTreeMap<PlacementId, Placement>) -> Tag {
    let highest = placements
        .values()
        .filter_map(|placement| placement.tag.0.strip_prefix("B-")?.parse::<u32>().ok())
        .max()
        .unwrap_or(0);
    Tag(format!("B-{:02}", highest.saturating_add(1)))
}

/// Tags used more than once, each with the placements that carry it.
pub fn duplicates(placements: &BTreeMap<PlacementId, Placement>) -> BTreeMap<&Tag, Vec<PlacementId>> {
    let mut by_tag: BTreeMap<&Tag, Vec<PlacementId>> = BTreeMap::new();
    for (id, placement) in placements {
        by_tag.entry(&placement.tag).or_default().push(*id);
    }
    by_tag.retain(|_, ids| ids.len() > 1);
    by_tag
}
