//! Typed ids: stable for life, minted by the plan's own counter and never used twice.
//!
//! In the file an id is text such as `edge-12`; the number decides the order, so that sorted maps
//! list things in the order in which they were made.

use std::fmt;
use std::str::FromStr;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Text that is not an id of the kind expected.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("\"{found}\" is not an id of the form {prefix}-1")]
pub struct IdFault {
    /// The word the id should begin with.
    pub prefix: &'static str,
    /// What stood there instead.
    pub found: String,
}

fn number_behind(prefix: &'static str, text: &str) -> Result<u64, IdFault> {
    let fault = || IdFault { prefix, found: text.to_owned() };
    let digits = text.strip_prefix(prefix).and_then(|rest| rest.strip_prefix('-')).ok_or_else(fault)?;
    if digits.is_empty() || digits.len() > 15 || !digits.bytes().all(|b| b.is_ascii_digit()) {
        return Err(fault());
    }
    digits.parse().map_err(|_| fault())
}

macro_rules! typed_id {
    ($(#[$doc:meta])* $name:ident, $prefix:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
        #[serde(try_from = "String", into = "String")]
        #[schemars(with = "String")]
        pub struct $name(u64);

        impl $name {
            /// The id with this number; only the plan's counter mints new ones.
            pub const fn from_number(number: u64) -> Self {
                Self(number)
            }

            /// The number behind the prefix.
            pub const fn number(self) -> u64 {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, concat!($prefix, "-{}"), self.0)
            }
        }

        impl FromStr for $name {
            type Err = IdFault;

            fn from_str(text: &str) -> Result<Self, IdFault> {
                number_behind($prefix, text).map(Self)
            }
        }

        impl TryFrom<String> for $name {
            type Error = IdFault;

            fn try_from(text: String) -> Result<Self, IdFault> {
                text.parse()
            }
        }

        impl From<$name> for String {
            fn from(id: $name) -> Self {
                id.to_string()
            }
        }
    };
}

typed_id!(
    /// A roof.
    RoofId,
    "roof"
);
typed_id!(
    /// An edge of a roof's outline or of a hole: it belongs to the corner it leaves.
    EdgeId,
    "edge"
);
typed_id!(
    /// An obstacle.
    ObstacleId,
    "obstacle"
);
typed_id!(
    /// A family copied into the plan.
    FamilyId,
    "family"
);
typed_id!(
    /// A placed unit with its base.
    PlacementId,
    "unit"
);
typed_id!(
    /// An underlay.
    UnderlayId,
    "underlay"
);

/// The name of a part inside its family, as the catalog gives it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct PartId(pub String);

impl PartId {
    /// A part's name from text.
    pub fn new(text: impl Into<String>) -> Self {
        Self(text.into())
    }
}

impl fmt::Display for PartId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Any thing of the plan that a finding, a mark or a selection can be about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ThingId {
    /// The plan as a whole: its basis, its title.
    Plan,
    /// A roof.
    Roof(RoofId),
    /// An edge.
    Edge(EdgeId),
    /// An obstacle.
    Obstacle(ObstacleId),
    /// A placed unit.
    Placement(PlacementId),
    /// An underlay.
    Underlay(UnderlayId),
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_reads_back_from_its_own_text() {
        let id = EdgeId::from_number(12);
        assert_eq!(id.to_string(), "edge-12");
        assert_eq!("edge-12".parse(), Ok(id));
    }

    #[test]
    fn an_id_of_another_kind_is_refused_with_the_kind_expected() {
        let fault = "roof-12".parse::<EdgeId>().unwrap_err();
        assert_eq!(fault.to_string(), "\"roof-12\" is not an id of the form edge-1");
        assert!("edge-".parse::<EdgeId>().is_err());
        assert!("edge-99999999999999999999".parse::<EdgeId>().is_err());
    }
}
