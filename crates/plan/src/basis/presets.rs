//! Load bases to start from, read from the assets; every value in them is a default to be confirmed.

use serde::{Deserialize, Serialize};

use super::LoadBasis;

/// A load basis to start from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Preset {
    /// Short name in the list.
    pub key: String,
    /// The basis.
    pub basis: LoadBasis,
}

const STORED: &str = include_str!("../../../../assets/load_bases.json");

/// All presets in the order of the file.
pub fn presets() -> Result<Vec<Preset>, serde_json::Error> {
    serde_json::from_str(STORED)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_preset_reads_and_mixes_no_levels() {
        let all = presets().unwrap();
        assert!(all.len() >= 4);
        for preset in &all {
            preset.basis.check().unwrap();
            assert!(preset.basis.regime.is_unconfirmed(), "{} must wait for confirmation", preset.key);
        }
    }

    #[test]
    fn no_anchor_load_with_factors_inside_is_factored_again() {
        for mut preset in presets().unwrap() {
            for combined in &mut preset.basis.combinations {
                for term in &mut combined.terms {
                    term.factor = 1.5;
                }
            }
            let holds_ultimate = format!("{:?}", preset.basis.cases).contains("Ultimate");
            assert_eq!(preset.basis.check().is_err(), holds_ultimate, "{}", preset.key);
        }
    }
}
