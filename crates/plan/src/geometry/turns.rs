//! Sets of directions: closed intervals on the circle, and what is common to two of them or left of one without another.
//!
//! Angles are radians, counter-clockwise positive, of any multiple of a turn. The circle is cut at half a turn, so that an
//! interval about 0, where arms usually point, is stored as it was given.

use super::hair::HAIR_RAD;
use super::number_line::{self, Piece};
use std::f64::consts::{PI, TAU};

/// One closed interval of directions, counter-clockwise from `from_rad` to `to_rad`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turn {
    /// Where it starts, rad, −π to π.
    pub from_rad: f64,
    /// Where it ends, rad, not before the start; beyond π when the interval passes half a turn.
    pub to_rad: f64,
}

impl Turn {
    /// Angle swept, rad; 0 for a single direction.
    pub fn span_rad(&self) -> f64 {
        self.to_rad - self.from_rad
    }

    /// The direction halfway, rad.
    pub fn middle_rad(&self) -> f64 {
        self.from_rad.midpoint(self.to_rad)
    }
}

/// Any number of intervals of directions. Intervals within [`HAIR_RAD`] are joined.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Turns {
    pieces: Vec<Piece>,
}

impl Turns {
    /// No direction.
    pub fn none() -> Self {
        Self::default()
    }

    /// All directions.
    pub fn whole() -> Self {
        Self { pieces: vec![(-PI, PI)] }
    }

    /// Counter-clockwise from one direction to another. Equal directions are one direction, a difference of a whole turn or
    /// more is the whole turn; nothing when an angle is not finite.
    pub fn between(from_rad: f64, to_rad: f64) -> Self {
        if !(from_rad.is_finite() && to_rad.is_finite()) {
            return Self::none();
        }
        if to_rad - from_rad >= TAU - HAIR_RAD {
            return Self::whole();
        }
        let (from, to) = (wrapped(from_rad), wrapped(to_rad));
        let span = (to_rad - from_rad).rem_euclid(TAU);
        if span <= HAIR_RAD || TAU - span <= HAIR_RAD {
            return Self::at([from]);
        }
        let pieces = if from <= to { vec![(from, to)] } else { vec![(-PI, to), (from, PI)] };
        Self { pieces: number_line::tidy(pieces, HAIR_RAD) }
    }

    /// Single directions. Those that are not finite are left out.
    pub fn at(angles_rad: impl IntoIterator<Item = f64>) -> Self {
        let points = angles_rad.into_iter().filter(|a| a.is_finite()).map(wrapped);
        Self { pieces: number_line::tidy(points.map(|a| (a, a)).collect(), HAIR_RAD) }
    }

    /// The directions θ with `least` ≤ cos(θ − `center_rad`) ≤ `most`: two mirrored intervals, or one about the center or
    /// its opposite. A bound that misses ±1 by no more than `hair` is taken as ±1, so that a tangency is found.
    pub fn where_cosine(center_rad: f64, least: f64, most: f64, hair: f64) -> Self {
        let least = snapped_to_one(least, hair);
        let most = snapped_to_one(most, hair);
        let possible = least <= most && least <= 1.0 && most >= -1.0;
        if !possible || !center_rad.is_finite() {
            return Self::none();
        }
        let inner = most.min(1.0).acos();
        let outer = least.max(-1.0).acos();
        if inner == 0.0 && outer == PI {
            return Self::whole();
        }
        let left = Self::between(center_rad + inner, center_rad + outer);
        let right = Self::between(center_rad - outer, center_rad - inner);
        left.union(&right)
    }

    /// The intervals in order of their start. One that passes half a turn is given in one piece.
    pub fn intervals(&self) -> Vec<Turn> {
        let mut turns: Vec<Turn> = self.pieces.iter().map(|&(from_rad, to_rad)| Turn { from_rad, to_rad }).collect();
        if turns.len() > 1 && self.passes_half_a_turn() {
            let first = turns.remove(0);
            if let Some(last) = turns.last_mut() {
                last.to_rad = first.to_rad + TAU;
            }
        }
        turns
    }

    fn passes_half_a_turn(&self) -> bool {
        let starts = self.pieces.first().is_some_and(|p| p.0 <= -PI + HAIR_RAD);
        let ends = self.pieces.last().is_some_and(|p| p.1 >= PI - HAIR_RAD);
        starts && ends
    }

    /// Whether there is no direction at all.
    pub fn is_empty(&self) -> bool {
        self.pieces.is_empty()
    }

    /// Whether every direction is in it.
    pub fn is_whole(&self) -> bool {
        self.pieces.len() == 1 && self.total_rad() >= TAU - HAIR_RAD
    }

    /// Sum of the intervals, rad; single directions count 0.
    pub fn total_rad(&self) -> f64 {
        self.pieces.iter().map(|p| p.1 - p.0).sum()
    }

    /// Whether a direction is in it, ends included.
    pub fn contains(&self, angle_rad: f64) -> bool {
        let angle = wrapped(angle_rad);
        let meets = |a| number_line::contains(&self.pieces, a, HAIR_RAD);
        // Half a turn has two names, and so have its neighbors within a hair.
        meets(angle) || meets(angle + TAU) || meets(angle - TAU)
    }

    /// Directions in either.
    #[must_use]
    pub fn union(&self, other: &Self) -> Self {
        let pieces = self.pieces.iter().chain(&other.pieces).copied().collect();
        Self { pieces: number_line::tidy(pieces, HAIR_RAD) }
    }

    /// Directions in both.
    #[must_use]
    pub fn intersect(&self, other: &Self) -> Self {
        let (mine, theirs) = (self.with_both_names_of_half_a_turn(), other.with_both_names_of_half_a_turn());
        Self { pieces: number_line::intersect(&mine, &theirs, HAIR_RAD) }.without_double_half_turn()
    }

    /// Directions in this and not in the other, closed again at the cuts.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        let theirs = other.with_both_names_of_half_a_turn();
        Self { pieces: number_line::minus(&self.pieces, &theirs, HAIR_RAD) }
    }

    /// All directions that are not in it, with the ends.
    #[must_use]
    pub fn complement(&self) -> Self {
        Self::whole().minus(self)
    }

    /// Every direction turned counter-clockwise by an angle. The whole turn stays the whole turn.
    #[must_use]
    pub fn rotated(&self, by_rad: f64) -> Self {
        if self.is_whole() || by_rad == 0.0 {
            return self.clone();
        }
        self.intervals()
            .iter()
            .map(|t| Self::between(t.from_rad + by_rad, t.to_rad + by_rad))
            .fold(Self::none(), |all, one| all.union(&one))
    }

    /// The opposite directions: where the tail of an arm points.
    #[must_use]
    pub fn opposite(&self) -> Self {
        self.rotated(PI)
    }

    /// A set that ends at one side of the cut is given the other name of half a turn too.
    fn with_both_names_of_half_a_turn(&self) -> Vec<Piece> {
        let mut pieces = self.pieces.clone();
        if pieces.last().is_some_and(|p| p.1 >= PI - HAIR_RAD) {
            pieces.push((-PI, -PI));
        }
        if pieces.first().is_some_and(|p| p.0 <= -PI + HAIR_RAD) {
            pieces.push((PI, PI));
        }
        number_line::tidy(pieces, HAIR_RAD)
    }

    /// A lone half turn under both names keeps one of them.
    fn without_double_half_turn(mut self) -> Self {
        let is_point = |p: &Piece| p.1 - p.0 <= HAIR_RAD;
        if self.pieces.len() > 1 && self.passes_half_a_turn() {
            if self.pieces.last().is_some_and(is_point) {
                self.pieces.pop();
            } else if self.pieces.first().is_some_and(is_point) {
                self.pieces.remove(0);
            }
        }
        self
    }
}

/// The same direction as an angle from −π to π. Angles already there are kept to the bit.
pub fn wrapped(angle_rad: f64) -> f64 {
    if (-PI..=PI).contains(&angle_rad) {
        return angle_rad;
    }
    let turned = (angle_rad + PI).rem_euclid(TAU) - PI;
    turned.clamp(-PI, PI)
}

fn snapped_to_one(bound: f64, hair: f64) -> f64 {
    if (bound.abs() - 1.0).abs() <= hair { bound.signum() } else { bound }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::f64::consts::{FRAC_PI_2, FRAC_PI_3, FRAC_PI_4};

    #[test]
    fn an_interval_about_zero_is_kept_to_the_bit() {
        let turns = Turns::between(-0.3, 0.7);
        assert_eq!(turns.intervals(), vec![Turn { from_rad: -0.3, to_rad: 0.7 }]);
    }

    #[test]
    fn an_interval_past_half_a_turn_comes_back_in_one_piece() {
        let turns = Turns::between(3.0, 4.0);
        let [only] = turns.intervals()[..] else { panic!("one interval expected") };
        assert!((only.from_rad - 3.0).abs() < 1e-12 && (only.to_rad - 4.0).abs() < 1e-12);
        assert!(turns.contains(PI) && turns.contains(-PI) && !turns.contains(0.0));
    }

    #[test]
    fn minus_pi_to_pi_is_the_whole_turn_and_equal_angles_are_one_direction() {
        assert!(Turns::between(-PI, PI).is_whole());
        assert_eq!(Turns::between(1.0, 1.0).total_rad(), 0.0);
        assert!(Turns::between(1.0, 1.0).contains(1.0 + TAU));
    }

    #[test]
    fn a_detent_at_half_a_turn_is_found_under_either_name() {
        for name in [PI, -PI, 3.0 * PI] {
            let both = Turns::at([name]).intersect(&Turns::between(3.0, 3.5));
            assert_eq!(both.intervals().len(), 1, "{name}");
            assert!(both.contains(PI));
        }
        assert!(Turns::at([PI]).minus(&Turns::between(3.0, 3.5)).is_empty());
        assert!(Turns::at([PI]).minus(&Turns::at([-PI])).is_empty());
    }

    #[test]
    fn the_cosine_is_at_least_a_half_within_sixty_degrees() {
        let turns = Turns::where_cosine(FRAC_PI_4, 0.5, 2.0, 0.0);
        let [only] = turns.intervals()[..] else { panic!("one interval expected") };
        // acos(1/2) = 60 degrees; two roundings of numbers near 1.
        assert!((only.from_rad - (FRAC_PI_4 - FRAC_PI_3)).abs() < 1e-15);
        assert!((only.to_rad - (FRAC_PI_4 + FRAC_PI_3)).abs() < 1e-15);
    }

    #[test]
    fn a_bound_a_hair_over_one_is_a_single_direction() {
        let turns = Turns::where_cosine(0.25, 1.0 + 1e-12, 2.0, 1e-10);
        assert_eq!(turns.intervals(), vec![Turn { from_rad: 0.25, to_rad: 0.25 }]);
        assert!(Turns::where_cosine(0.25, 1.001, 2.0, 1e-10).is_empty());
    }

    #[test]
    fn numbers_that_are_none_give_no_direction() {
        assert!(Turns::between(f64::NAN, 1.0).is_empty());
        assert!(Turns::where_cosine(0.0, f64::NAN, 1.0, 0.0).is_empty());
        assert!(Turns::where_cosine(f64::NAN, 0.0, 1.0, 0.0).is_empty());
        assert!(Turns::at([f64::INFINITY]).is_empty());
    }

    #[test]
    fn the_tail_points_the_other_way() {
        let tail = Turns::between(-FRAC_PI_4, FRAC_PI_2).opposite();
        assert!(tail.contains(PI) && tail.contains(-2.0) && !tail.contains(0.0));
        assert!((tail.total_rad() - 0.75 * PI).abs() < 1e-12);
    }

    fn some_turns() -> impl Strategy<Value = Turns> {
        prop::collection::vec((-7.0..7.0_f64, 0.01..5.0_f64), 0..4)
            .prop_map(|v| v.into_iter().fold(Turns::none(), |t, (a, l)| t.union(&Turns::between(a, a + l))))
    }

    fn near_an_end(turns: &Turns, angle: f64) -> bool {
        turns.intervals().iter().flat_map(|t| [t.from_rad, t.to_rad]).any(|e| wrapped(e - angle).abs() < 1e-6)
    }

    proptest! {
        /// Set algebra is the witness: membership of sampled directions, away from the ends.
        #[test]
        fn membership_follows_set_algebra(a in some_turns(), b in some_turns(), by in -9.0..9.0_f64) {
            let (union, both, rest, turned) = (a.union(&b), a.intersect(&b), a.minus(&b), a.rotated(by));
            for i in 0..700 {
                let x = f64::from(i) * 0.009 - 3.1;
                if near_an_end(&a, x) || near_an_end(&b, x) { continue; }
                prop_assert_eq!(union.contains(x), a.contains(x) || b.contains(x));
                prop_assert_eq!(both.contains(x), a.contains(x) && b.contains(x));
                prop_assert_eq!(rest.contains(x), a.contains(x) && !b.contains(x));
                prop_assert_eq!(turned.contains(x + by), a.contains(x));
                prop_assert_eq!(a.complement().contains(x), !a.contains(x));
            }
        }

        /// The cosine itself is the witness.
        #[test]
        fn directions_of_a_cosine_band_are_those_whose_cosine_lies_in_it(
            center in -7.0..7.0_f64, least in -1.5..1.2_f64, width in 0.0..2.0_f64,
        ) {
            let turns = Turns::where_cosine(center, least, least + width, 0.0);
            for i in 0..700 {
                let x = f64::from(i) * 0.009 - 3.1;
                let cosine = (x - center).cos();
                if (cosine - least).abs() < 1e-6 || (cosine - least - width).abs() < 1e-6 { continue; }
                prop_assert_eq!(turns.contains(x), least < cosine && cosine < least + width);
            }
        }
    }
}
