//! Splines: rational B-splines by de Boor's recursion (Piegl and Tiller, The NURBS Book, 1997, A4.1 in another form).

use glam::{DAffine2, DVec2, DVec3};

/// A rational B-spline. A map of its poles maps the curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Spline {
    degree: usize,
    knots: Vec<f64>,
    /// Poles as (w x, w y, w).
    poles: Vec<DVec3>,
}

/// Splines of a higher degree are no drawing's.
const HIGHEST_DEGREE: usize = 11;

impl Spline {
    /// A spline from its data; none when they make none: the knots must ascend and be as many as poles, degree and one.
    pub fn of(degree: usize, knots: Vec<f64>, poles: &[DVec2], weights: &[f64]) -> Option<Self> {
        let weight = |index: usize| weights.get(index).copied().unwrap_or(1.0);
        let fits = (1..=HIGHEST_DEGREE).contains(&degree)
            && poles.len() > degree
            && knots.len() == poles.len() + degree + 1
            && (weights.is_empty() || weights.len() == poles.len())
            && weights.iter().all(|weight| *weight > 0.0)
            && knots.windows(2).all(|pair| pair[0] <= pair[1])
            && knots.get(degree) < knots.get(poles.len());
        let poles = poles.iter().enumerate().map(|(index, at)| (*at * weight(index)).extend(weight(index))).collect();
        fits.then_some(Self { degree, knots, poles })
    }

    /// Scaled, turned, mirrored and moved.
    #[must_use]
    pub fn placed(&self, by: &DAffine2) -> Self {
        let pole = |pole: &DVec3| {
            let at = by.matrix2 * pole.truncate() + by.translation * pole.z;
            at.extend(pole.z)
        };
        Self { degree: self.degree, knots: self.knots.clone(), poles: self.poles.iter().map(pole).collect() }
    }

    /// How many poles it has.
    pub fn pole_count(&self) -> usize {
        self.poles.len()
    }

    /// Where it begins and ends.
    pub fn ends(&self) -> (DVec2, DVec2) {
        let (from, to) = self.domain();
        (self.at(from), self.at(to))
    }

    fn domain(&self) -> (f64, f64) {
        let knot = |index: usize| self.knots.get(index).copied().unwrap_or_default();
        (knot(self.degree), knot(self.poles.len()))
    }

    /// The point at a parameter of the domain.
    fn at(&self, t: f64) -> DVec2 {
        let p = self.degree;
        // The span that holds t, of those of the domain: knots[k] <= t < knots[k + 1].
        let upper = self.knots.partition_point(|knot| *knot <= t);
        let k = upper.saturating_sub(1).clamp(p, self.poles.len() - 1);
        let mut d: Vec<DVec3> = self.poles.get(k - p..=k).map(<[DVec3]>::to_vec).unwrap_or_default();
        for level in 1..=p {
            for j in (level..=p).rev() {
                let (low, high) = (self.knots[j + k - p], self.knots[j + 1 + k - level]);
                let share = if high > low { (t - low) / (high - low) } else { 0.0 };
                d[j] = d[j - 1].lerp(d[j], share);
            }
        }
        d.last().map_or(DVec2::ZERO, |last| last.truncate() / last.z)
    }

    /// Points between begin and end, so that chords leave the curve by at most `tolerance`: each span between knots is
    /// halved until points at a quarter, the half and three quarters lie that near to the chord. None where they are more than
    /// `room`: no more than that are made.
    pub fn between(&self, tolerance: f64, room: usize, corners: &mut Vec<DVec2>) -> Option<()> {
        let most = corners.len().saturating_add(room);
        let (from, to) = self.domain();
        let inside = self.knots.iter().copied().filter(|knot| *knot > from && *knot < to);
        let mut stops: Vec<f64> = std::iter::once(from).chain(inside).chain(std::iter::once(to)).collect();
        stops.dedup();
        for (index, pair) in stops.windows(2).enumerate() {
            if index > 0 {
                push(corners, most, self.at(pair[0]))?;
            }
            self.halved((pair[0], self.at(pair[0])), (pair[1], self.at(pair[1])), (tolerance, most), 0, corners)?;
        }
        Some(())
    }

    fn halved(
        &self,
        (from, a): (f64, DVec2),
        (to, b): (f64, DVec2),
        (tolerance, most): (f64, usize),
        depth: u32,
        corners: &mut Vec<DVec2>,
    ) -> Option<()> {
        /// A span is cut into at most a thousand chords.
        const DEEPEST: u32 = 10;
        let at = |share: f64| self.at(from + (to - from) * share);
        let is_far =
            |share: f64| gantline_plan::geometry::segments::distance_to_segment(at(share), a, b) > tolerance * 0.9;
        // Four quarters of a turn and more look straight at the middle alone: the first cut is always made for curves.
        let is_straight = self.degree == 1 || depth >= 1 && ![0.25, 0.5, 0.75].into_iter().any(is_far);
        if is_straight || depth >= DEEPEST {
            return Some(());
        }
        let middle = (from + (to - from) / 2.0, at(0.5));
        self.halved((from, a), middle, (tolerance, most), depth + 1, corners)?;
        push(corners, most, middle.1)?;
        self.halved(middle, (to, b), (tolerance, most), depth + 1, corners)
    }
}

/// Another corner, if there is room for it.
fn push(corners: &mut Vec<DVec2>, most: usize, corner: DVec2) -> Option<()> {
    (corners.len() < most).then(|| corners.push(corner))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A quarter of the unit circle as a rational parabola: poles (1,0), (1,1), (0,1), weights 1, √½, 1 (Piegl and Tiller,
    /// example 7.1).
    fn quarter() -> Spline {
        let poles = [DVec2::X, DVec2::ONE, DVec2::Y];
        Spline::of(2, vec![0.0, 0.0, 0.0, 1.0, 1.0, 1.0], &poles, &[1.0, 0.5_f64.sqrt(), 1.0]).unwrap()
    }

    #[test]
    fn a_rational_parabola_is_a_quarter_of_a_circle() {
        let spline = quarter();
        let mut corners = Vec::new();
        spline.between(1e-4, 1000, &mut corners).unwrap();
        assert!(corners.len() > 6);
        let mut few = Vec::new();
        assert_eq!((spline.between(1e-4, 4, &mut few), few.len()), (None, 4), "no more is made than there is room for");
        assert!(corners.iter().all(|corner| (corner.length() - 1.0).abs() < 1e-12), "{corners:?}");
        assert_eq!(spline.ends(), (DVec2::X, DVec2::Y));
        let moved = spline.placed(&DAffine2::from_translation(DVec2::new(10.0, 0.0)));
        assert_eq!(moved.ends().0, DVec2::new(11.0, 0.0));
    }

    #[test]
    fn data_that_make_no_spline_give_none() {
        let poles = [DVec2::X, DVec2::ONE, DVec2::Y];
        assert!(Spline::of(2, vec![0.0, 0.0, 0.0, 1.0, 1.0], &poles, &[]).is_none());
        assert!(Spline::of(2, vec![0.0, 0.0, 1.0, 0.5, 1.0, 1.0], &poles, &[]).is_none());
        assert!(Spline::of(2, vec![1.0; 6], &poles, &[]).is_none());
        assert!(Spline::of(2, vec![0.0, 0.0, 0.0, 1.0, 1.0, 1.0], &poles, &[1.0, -1.0, 1.0]).is_none());
        assert!(Spline::of(0, vec![0.0; 4], &poles, &[]).is_none());
    }
}
