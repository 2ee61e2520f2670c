//! Ropes that pull at one point count as one, which pulls with their summed tension.
//!
//! Each of them may pull in any direction of its cone by itself; but what they do together most is always done by all of them
//! pulling the same way. Where their cones differ, the joined rope has the widest of each limit: that is on the safe side.

use glam::DVec3;

use super::actions::Pull;

/// Pulls joined at their points, with what each takes of its joined one.
pub(super) struct JoinedPulls {
    pub pulls: Vec<Pull>,
    /// For each pull as it was given: itself, and which of the joined ones it belongs to.
    given: Vec<(Pull, usize)>,
}

impl JoinedPulls {
    /// Joins pulls at one point. A rope that runs on over the arm stays by itself, as its other leg goes its own way.
    pub fn new(given: &[Pull]) -> Self {
        let mut joined = Self { pulls: Vec::new(), given: Vec::with_capacity(given.len()) };
        for pull in given {
            let fits =
                |other: &Pull| other.point == pull.point && other.second_leg.is_none() && pull.second_leg.is_none();
            let place = joined.pulls.iter().position(fits);
            match place.and_then(|place| joined.pulls.get_mut(place)) {
                Some(all) => {
                    all.tension_n += pull.tension_n;
                    all.least_n += pull.least_n;
                    all.cone.half_angle_rad = all.cone.half_angle_rad.max(pull.cone.half_angle_rad);
                    all.cone.lean = match (all.cone.lean, pull.cone.lean) {
                        (Some(mut lean), Some(other)) => {
                            lean.inward_rad = lean.inward_rad.max(other.inward_rad);
                            lean.outward_rad = lean.outward_rad.max(other.outward_rad);
                            Some(lean)
                        }
                        _ => None,
                    };
                }
                None => joined.pulls.push(*pull),
            }
            joined.given.push((*pull, place.unwrap_or(joined.pulls.len() - 1)));
        }
        joined
    }

    /// What each rope pulls while the joined ones pull so.
    pub fn apart(&self, joined_n: &[DVec3]) -> Vec<DVec3> {
        let share = |(pull, place): &(Pull, usize)| {
            let (all, pull_n) = self.pulls.get(*place).zip(joined_n.get(*place))?;
            let (span, length) = (all.tension_n - all.least_n, pull_n.length());
            let part = if span > 0.0 { (length - all.least_n) / span } else { 1.0 };
            let tension_n = pull.least_n + part * (pull.tension_n - pull.least_n);
            Some(pull_n.normalize_or_zero() * tension_n)
        };
        self.given.iter().map(|one| share(one).unwrap_or_default()).collect()
    }

    /// The tension of each rope's other leg from those of the joined ones; only one that stayed by itself has any.
    pub fn legs_apart(&self, joined_n: &[f64]) -> Vec<f64> {
        self.given.iter().map(|(_, place)| joined_n.get(*place).copied().unwrap_or_default()).collect()
    }

    /// The tension of a joined rope's other leg from those of the ropes as given.
    pub fn leg_n(&self, joined: usize, given_n: &[f64]) -> f64 {
        let own = self.given.iter().zip(given_n).find(|((_, place), _)| *place == joined);
        own.map(|(_, leg_n)| *leg_n).unwrap_or_default()
    }

    /// What the joined ropes pull while each pulls so.
    pub fn together(&self, given_n: &[DVec3]) -> Vec<DVec3> {
        let mut sums = vec![DVec3::ZERO; self.pulls.len()];
        for ((_, place), pull_n) in self.given.iter().zip(given_n) {
            if let Some(sum) = sums.get_mut(*place) {
                *sum += *pull_n;
            }
        }
        sums
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cone::{Lean, LoadCone};

    /// By hand: 6 and 3 kN at one point are 9 kN in the wider cone; two thirds of what that pulls are the first one's.
    #[test]
    fn two_ropes_at_one_point_are_one_with_their_sum_and_the_wider_cone() {
        let narrow = LoadCone { half_angle_rad: 0.2, lean: Some(Lean { inward_rad: 0.1, outward_rad: 0.3 }) };
        let wide = LoadCone { half_angle_rad: 0.5, lean: Some(Lean { inward_rad: 0.2, outward_rad: 0.1 }) };
        let given = [Pull::new(0, 6e3, narrow), Pull::new(1, 5e3, narrow), Pull::new(0, 3e3, wide)];
        let joined = JoinedPulls::new(&given);
        assert_eq!(joined.pulls.len(), 2);
        let lean = Some(Lean { inward_rad: 0.2, outward_rad: 0.3 });
        assert_eq!(joined.pulls[0], Pull::new(0, 9e3, LoadCone { half_angle_rad: 0.5, lean }));
        assert_eq!(joined.pulls[1], given[1]);
        let apart = joined.apart(&[DVec3::NEG_Z * 9e3, DVec3::X * 5e3]);
        assert!((apart[0] - DVec3::NEG_Z * 6e3).length() < 1e-9 && (apart[2] - DVec3::NEG_Z * 3e3).length() < 1e-9);
        assert!((apart[1] - DVec3::X * 5e3).length() < 1e-9);
        assert!((joined.together(&apart)[0] - DVec3::NEG_Z * 9e3).length() < 1e-9);
        let without = JoinedPulls::new(&[given[0], Pull::new(0, 1e3, LoadCone::whole(0.1))]);
        assert_eq!(without.pulls[0].cone.lean, None);
    }

    #[test]
    fn ropes_that_never_hang_slack_keep_their_least() {
        let cone = LoadCone::whole(0.3);
        let given = [Pull { least_n: 1e3, ..Pull::new(0, 6e3, cone) }, Pull::new(0, 3e3, cone)];
        let joined = JoinedPulls::new(&given);
        assert_eq!(joined.apart(&[DVec3::NEG_Z * 1e3]), [DVec3::NEG_Z * 1e3, DVec3::ZERO * -1.0]);
    }
}
