//! Strength reduction factors φ of ACI 318-19, table 17.5.3, as data.

use super::super::fault::{AnchorageFault, positive, ratio};
use super::super::product::AciCategory;

/// φ of chapter 17.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Aci318Factors {
    /// Ductile steel in tension.
    pub ductile_tension: f64,
    /// Ductile steel in shear.
    pub ductile_shear: f64,
    /// Brittle steel in tension.
    pub brittle_tension: f64,
    /// Brittle steel in shear.
    pub brittle_shear: f64,
    /// Breakout and blow-out of cast-in anchors in tension, with supplementary reinforcement …
    pub cast_in_supplemented: f64,
    /// … and without.
    pub cast_in_plain: f64,
    /// Breakout and bond of post-installed anchors by category 1, 2, 3 with supplementary reinforcement …
    pub post_supplemented: [f64; 3],
    /// … and without.
    pub post_plain: [f64; 3],
    /// Pull-out of cast-in anchors.
    pub cast_in_pull_out: f64,
    /// Pull-out of post-installed anchors by category.
    pub post_pull_out: [f64; 3],
    /// Shear breakout with supplementary reinforcement …
    pub shear_supplemented: f64,
    /// … and without.
    pub shear_plain: f64,
    /// Pry-out.
    pub pry_out: f64,
    /// Share of the bond strength that sustained tension may use (17.5.2.2).
    pub sustained_bond: f64,
}

impl Aci318Factors {
    /// Table 17.5.3 of ACI 318-19, for load combinations of chapter 5.
    pub const STANDARD: Self = Self {
        ductile_tension: 0.75,
        ductile_shear: 0.65,
        brittle_tension: 0.65,
        brittle_shear: 0.60,
        cast_in_supplemented: 0.75,
        cast_in_plain: 0.70,
        post_supplemented: [0.75, 0.65, 0.55],
        post_plain: [0.65, 0.55, 0.45],
        cast_in_pull_out: 0.70,
        post_pull_out: [0.65, 0.55, 0.45],
        shear_supplemented: 0.75,
        shear_plain: 0.70,
        pry_out: 0.70,
        sustained_bond: 0.55,
    };

    /// Nothing, or the first factor that can't be.
    pub fn check(&self) -> Result<(), AnchorageFault> {
        let single = [
            ("phi ductile_tension", self.ductile_tension),
            ("phi ductile_shear", self.ductile_shear),
            ("phi brittle_tension", self.brittle_tension),
            ("phi brittle_shear", self.brittle_shear),
            ("phi cast_in_supplemented", self.cast_in_supplemented),
            ("phi cast_in_plain", self.cast_in_plain),
            ("phi cast_in_pull_out", self.cast_in_pull_out),
            ("phi shear_supplemented", self.shear_supplemented),
            ("phi shear_plain", self.shear_plain),
            ("phi pry_out", self.pry_out),
            ("sustained_bond", self.sustained_bond),
        ];
        let by_category = [
            ("phi post_supplemented", self.post_supplemented),
            ("phi post_plain", self.post_plain),
            ("phi post_pull_out", self.post_pull_out),
        ];
        let all = by_category.into_iter().flat_map(|(field, values)| values.map(|value| (field, value)));
        all.chain(single).try_for_each(|(field, value)| positive(field, value).and_then(|()| ratio(field, value)))
    }
}

/// Place of a category in the tables.
pub(super) const fn by_category(table: [f64; 3], category: AciCategory) -> f64 {
    match category {
        AciCategory::One => table[0],
        AciCategory::Two => table[1],
        AciCategory::Three => table[2],
    }
}
