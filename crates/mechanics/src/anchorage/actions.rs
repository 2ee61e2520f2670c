//! What acts on each fastener of a group, as the plate gives it.

use super::fault::{AnchorageFault, finite, least, ratio_if_given};

/// Actions on a group. All values are design values where the level says so.
#[derive(Debug, Clone, PartialEq)]
pub struct GroupActions {
    /// Tension of each fastener, N, not negative; zero for one that is not pulled.
    pub tension_n: Vec<f64>,
    /// Force of the plate on each fastener in the plane, N, in plate axes.
    pub shear_n: Vec<[f64; 2]>,
    /// The pressed side of the plate, if there is one.
    pub compression: Option<Compression>,
    /// Share of the tension that is sustained, 0 to 1. Missing: bond is not checked.
    pub sustained_share: Option<f64>,
    /// Level of the values.
    pub level: ActionLevel,
}

/// Resultant of the pressure under the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compression {
    /// Resultant C, N, positive.
    pub resultant_n: f64,
    /// Distance z between the resultants of tension and pressure, m.
    pub lever_arm_m: f64,
}

/// Level of actions: they may only be held against resistances of the same level.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ActionLevel {
    /// Design values: with their load factors, or anchor loads with the factors inside.
    Design,
    /// Service values: no resistance of a design code stands against them.
    Service,
}

impl GroupActions {
    /// Nothing acts on `anchors` fasteners, at design level.
    pub fn none(anchors: usize) -> Self {
        Self {
            tension_n: vec![0.0; anchors],
            shear_n: vec![[0.0; 2]; anchors],
            compression: None,
            sustained_share: None,
            level: ActionLevel::Design,
        }
    }

    /// Nothing, or the first number that can't be, for a group of `anchors`.
    pub fn check(&self, anchors: usize) -> Result<(), AnchorageFault> {
        for (field, found) in [("tension_n", self.tension_n.len()), ("shear_n", self.shear_n.len())] {
            if found != anchors {
                return Err(AnchorageFault::Length { field, found, anchors });
            }
        }
        for &tension in &self.tension_n {
            least("tension_n", tension, 0.0)?;
        }
        for shear in &self.shear_n {
            finite("shear_n x", shear[0])?;
            finite("shear_n y", shear[1])?;
        }
        if let Some(compression) = self.compression {
            least("resultant_n", compression.resultant_n, 0.0)?;
            least("lever_arm_m", compression.lever_arm_m, 0.0)?;
        }
        ratio_if_given("sustained_share", self.sustained_share)
    }

    /// Sum of all tensions, N.
    pub fn total_tension_n(&self) -> f64 {
        self.tension_n.iter().sum()
    }

    /// Sum of all shear vectors, N.
    pub fn total_shear_n(&self) -> [f64; 2] {
        self.shear_n.iter().fold([0.0; 2], |sum, v| [sum[0] + v[0], sum[1] + v[1]])
    }

    /// Shear of one fastener, N.
    pub fn shear_of_n(&self, anchor: usize) -> f64 {
        // No force is so large that its square is none, and this is many times quicker than hypot.
        let [x, y] = self.shear_n[anchor];
        (x * x + y * y).sqrt()
    }

    /// Distance of the resultant tension of a set from the set's centroid along both axes, m; zero where nothing pulls.
    pub fn tension_eccentricity_m(&self, places_m: &[[f64; 2]], set: &[usize]) -> [f64; 2] {
        let total: f64 = set.iter().map(|&i| self.tension_n[i]).sum();
        if total <= 0.0 {
            return [0.0; 2];
        }
        let count = set.len() as f64;
        [0, 1].map(|axis| {
            let centroid = set.iter().map(|&i| places_m[i][axis]).sum::<f64>() / count;
            let pulled = set.iter().map(|&i| self.tension_n[i] * places_m[i][axis]).sum::<f64>() / total;
            (pulled - centroid).abs()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_resultant_of_unequal_pulls_stands_off_the_centroid() {
        // By hand: 30 and 10 kN 0.2 m apart: the resultant is 0.05 m from the first, 0.05 m from the middle.
        let actions = GroupActions { tension_n: vec![30e3, 10e3], ..GroupActions::none(2) };
        let e = actions.tension_eccentricity_m(&[[0.0, 0.0], [0.2, 0.0]], &[0, 1]);
        assert!((e[0] - 0.05).abs() < 1e-12 && e[1].abs() < 1e-12);
    }

    #[test]
    fn a_list_of_another_length_and_a_number_that_is_none_are_named() {
        assert_eq!(
            GroupActions::none(3).check(4),
            Err(AnchorageFault::Length { field: "tension_n", found: 3, anchors: 4 })
        );
        let actions = GroupActions { shear_n: vec![[0.0, f64::NAN]], ..GroupActions::none(1) };
        assert!(matches!(actions.check(1), Err(AnchorageFault::NotFinite { field: "shear_n y", .. })));
    }
}
