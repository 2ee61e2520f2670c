//! Stretches along a line, in meters from its start: where feet stand, what is covered, what is not.

use super::hair::HAIR_M;
use super::number_line::{self, Piece};

/// A closed stretch of a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Start, m along the line.
    pub from_m: f64,
    /// End, m along the line; not before the start.
    pub to_m: f64,
}

impl Span {
    /// Length, m; 0 for a single point.
    pub fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }
}

/// Any number of stretches of one line, sorted, none touching the next. Stretches within [`HAIR_M`] are joined.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Spans {
    pieces: Vec<Piece>,
}

impl Spans {
    /// No stretch at all.
    pub fn none() -> Self {
        Self::default()
    }

    /// One stretch; nothing when `to_m` lies before `from_m` or one of them is no number.
    pub fn one(from_m: f64, to_m: f64) -> Self {
        Self::of([(from_m, to_m)])
    }

    /// The union of stretches given as start and end, in any order.
    pub fn of(stretches: impl IntoIterator<Item = (f64, f64)>) -> Self {
        Self { pieces: number_line::tidy(stretches.into_iter().collect(), HAIR_M) }
    }

    /// The stretches in order.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = Span> + '_ {
        self.pieces.iter().map(|&(from_m, to_m)| Span { from_m, to_m })
    }

    /// Number of stretches.
    pub fn len(&self) -> usize {
        self.pieces.len()
    }

    /// Whether there is no stretch, not even a point.
    pub fn is_empty(&self) -> bool {
        self.pieces.is_empty()
    }

    /// What lies in either.
    #[must_use]
    pub fn union(&self, other: &Self) -> Self {
        Self::of(self.pieces.iter().chain(&other.pieces).copied())
    }

    /// What lies in both.
    #[must_use]
    pub fn intersect(&self, other: &Self) -> Self {
        Self { pieces: number_line::intersect(&self.pieces, &other.pieces, HAIR_M) }
    }

    /// What lies in this and not in the other, closed again at the cuts.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        Self { pieces: number_line::minus(&self.pieces, &other.pieces, HAIR_M) }
    }

    /// Sum of the lengths, m.
    pub fn length_m(&self) -> f64 {
        self.iter().map(|s| s.length_m()).sum()
    }

    /// Whether a place lies in a stretch, ends included.
    pub fn contains(&self, at_m: f64) -> bool {
        number_line::contains(&self.pieces, at_m, HAIR_M)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn touching_stretches_become_one() {
        let joined = Spans::of([(2.0, 3.0), (0.0, 1.0), (1.0, 2.0)]);
        assert_eq!(joined, Spans::one(0.0, 3.0));
    }

    #[test]
    fn a_point_that_was_put_in_stays_and_one_that_a_difference_leaves_does_not() {
        let with_point = Spans::of([(0.0, 1.0), (5.0, 5.0)]);
        assert_eq!(with_point.len(), 2);
        assert_eq!(Spans::one(0.0, 1.0).minus(&Spans::one(0.0, 1.0 - 1e-12)), Spans::none());
    }

    #[test]
    fn stretches_without_sense_are_nothing() {
        assert!(Spans::of([(2.0, 1.0), (f64::NAN, 3.0), (0.0, f64::NAN)]).is_empty());
    }

    fn some_spans() -> impl Strategy<Value = Spans> {
        prop::collection::vec((0.0..10.0_f64, 0.01..3.0_f64), 0..6)
            .prop_map(|v| Spans::of(v.into_iter().map(|(a, l)| (a, a + l))))
    }

    proptest! {
        /// Set algebra is the witness: membership of sampled points, away from the ends.
        #[test]
        fn membership_follows_set_algebra(a in some_spans(), b in some_spans()) {
            let (union, both, rest) = (a.union(&b), a.intersect(&b), a.minus(&b));
            for i in 0..1400 {
                let x = f64::from(i) * 0.01 + 0.003_217;
                let near_end = a.iter().chain(b.iter()).any(|s| (s.from_m - x).abs() < 1e-6 || (s.to_m - x).abs() < 1e-6);
                if near_end { continue; }
                prop_assert_eq!(union.contains(x), a.contains(x) || b.contains(x));
                prop_assert_eq!(both.contains(x), a.contains(x) && b.contains(x));
                prop_assert_eq!(rest.contains(x), a.contains(x) && !b.contains(x));
            }
            // |A| + |B| = |A or B| + |A and B|; sums of a dozen terms below 100 keep 1e-12, joins at most a hair each.
            prop_assert!((a.length_m() + b.length_m() - union.length_m() - both.length_m()).abs() < 2e-8);
        }
    }
}
