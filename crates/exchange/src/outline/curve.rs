//! Lines and curves of a drawing before they become chords. Scaling, turning and mirroring a block keep them exact.

use std::f64::consts::{FRAC_PI_2, TAU};

use glam::{DAffine2, DVec2};

use super::spline::Spline;

/// A run of pieces from a start.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    /// Which layer it lies on, by its place in the list of layers.
    pub layer: usize,
    /// Where it starts.
    pub start: DVec2,
    /// Its pieces, each from the end of the one before.
    pub pieces: Vec<Piece>,
    /// Whether its end is its start, whatever the coordinates say.
    pub closed: bool,
}

/// A straight or curved piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Where it ends.
    pub to: DVec2,
    /// How it goes there; none is straight.
    pub bend: Option<Box<Bend>>,
}

/// How a curved piece goes.
#[derive(Debug, Clone, PartialEq)]
pub enum Bend {
    /// Part of a circle or an ellipse.
    Round(Round),
    /// A spline.
    Spline(Spline),
}

/// p(t) = center + u cos t + v sin t, from `from_rad` over `sweep_rad`: any part of a circle or ellipse.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Round {
    /// Its center.
    pub center: DVec2,
    /// From the center to t = 0.
    pub u: DVec2,
    /// From the center to t = π/2.
    pub v: DVec2,
    /// Where it begins.
    pub from_rad: f64,
    /// How far it goes; negative goes back.
    pub sweep_rad: f64,
}

impl Piece {
    /// A straight piece.
    pub const fn straight(to: DVec2) -> Self {
        Self { to, bend: None }
    }

    /// The piece of a polyline from `from`, with its bulge b = tan(θ/4), θ the angle of the arc, positive to the right of
    /// the chord (DXF reference, "Polyline"). Center = middle + left normal of the chord · (1 − b²)/(4 b).
    pub fn bulged(from: DVec2, to: DVec2, bulge: f64) -> Self {
        /// An arc as flat as this leaves its chord by less than a part in a million of it.
        const STRAIGHT: f64 = 1e-6;
        let chord = to - from;
        if bulge.abs() < STRAIGHT || chord == DVec2::ZERO {
            return Self::straight(to);
        }
        let center = from.midpoint(to) + chord.perp() * ((1.0 - bulge * bulge) / (4.0 * bulge));
        let u = from - center;
        let round = Round { center, u, v: u.perp(), from_rad: 0.0, sweep_rad: 4.0 * bulge.atan() };
        Self { to, bend: Some(Box::new(Bend::Round(round))) }
    }
}

impl Trace {
    /// A part of a circle or ellipse; a whole turn is closed.
    pub fn round(layer: usize, round: Round) -> Self {
        let closed = round.sweep_rad.abs() >= TAU;
        let (start, end) = (round.at(0.0), round.at(1.0));
        let to = if closed { start } else { end };
        let piece = Piece { to, bend: Some(Box::new(Bend::Round(round))) };
        Self { layer, start, pieces: vec![piece], closed }
    }

    /// The same scaled, turned, mirrored and moved.
    #[must_use]
    pub fn placed(&self, by: &DAffine2) -> Self {
        let piece = |piece: &Piece| Piece {
            to: by.transform_point2(piece.to),
            bend: piece.bend.as_ref().map(|bend| Box::new(bend.placed(by))),
        };
        Self {
            layer: self.layer,
            start: by.transform_point2(self.start),
            pieces: self.pieces.iter().map(piece).collect(),
            closed: self.closed,
        }
    }

    /// Its corners with curves as chords that leave them by at most `tolerance`, in the drawing's own unit; none where they are
    /// more than `most`: no more than that are ever made.
    pub fn chords(&self, tolerance: f64, most: usize) -> Option<Vec<DVec2>> {
        let mut corners = Vec::with_capacity((self.pieces.len() + 1).min(most));
        corners.push(self.start);
        for piece in &self.pieces {
            let room = most.checked_sub(corners.len() + 1)?;
            match piece.bend.as_deref() {
                None => {}
                Some(Bend::Round(round)) => round.between(tolerance, room, &mut corners)?,
                Some(Bend::Spline(spline)) => spline.between(tolerance, room, &mut corners)?,
            }
            corners.push(piece.to);
        }
        Some(corners)
    }

    /// How much of a file's allowance it takes: its pieces, and the poles of its splines.
    pub fn weight(&self) -> usize {
        let poles = self.pieces.iter().map(|piece| match piece.bend.as_deref() {
            Some(Bend::Spline(spline)) => spline.pole_count(),
            Some(Bend::Round(_)) | None => 1,
        });
        poles.sum()
    }

    /// Whether a piece is curved.
    pub fn is_curved(&self) -> bool {
        self.pieces.iter().any(|piece| piece.bend.is_some())
    }
}

impl Bend {
    fn placed(&self, by: &DAffine2) -> Self {
        match self {
            Self::Round(round) => Self::Round(Round {
                center: by.transform_point2(round.center),
                u: by.transform_vector2(round.u),
                v: by.transform_vector2(round.v),
                ..*round
            }),
            Self::Spline(spline) => Self::Spline(spline.placed(by)),
        }
    }
}

impl Round {
    /// The point at a share of the way.
    pub fn at(&self, share: f64) -> DVec2 {
        let t = self.from_rad + self.sweep_rad * share;
        self.center + self.u * t.cos() + self.v * t.sin()
    }

    /// Points between begin and end. On the unit circle the chord of dt leaves the arc by 1 − cos(dt/2); a linear map
    /// stretches that by at most its norm, the greatest half axis R: dt = 2 acos(1 − tolerance/R).
    /// None where they are more than `room`.
    fn between(&self, tolerance: f64, room: usize, corners: &mut Vec<DVec2>) -> Option<()> {
        /// Chords of one arc: a mountain range of a radius against a hair of a tolerance stops here.
        const MOST: f64 = 20_000.0;
        /// No fewer than eight chords a turn, however small the arc.
        const WIDEST_RAD: f64 = FRAC_PI_2 / 2.0;
        let step = 2.0 * (1.0 - tolerance / self.greatest_half_axis()).clamp(-1.0, 1.0).acos();
        let step = if step.is_finite() { step.min(WIDEST_RAD) } else { WIDEST_RAD };
        let count = (self.sweep_rad.abs() / step - 1e-9).ceil().clamp(1.0, MOST) as usize;
        if count - 1 > room {
            return None;
        }
        corners.extend((1..count).map(|index| self.at(index as f64 / count as f64)));
        Some(())
    }

    /// The greatest singular value of (u v).
    fn greatest_half_axis(&self) -> f64 {
        let (a, b, c) = (self.u.length_squared(), self.u.dot(self.v), self.v.length_squared());
        (a.midpoint(c) + ((a - c) / 2.0).hypot(b)).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;

    #[test]
    fn a_bulge_of_one_is_a_half_circle_to_the_right_of_its_chord() {
        let (from, to) = (DVec2::ZERO, DVec2::new(2.0, 0.0));
        let trace = Trace { layer: 0, start: from, pieces: vec![Piece::bulged(from, to, 1.0)], closed: false };
        let corners = trace.chords(1e-3, 1000).unwrap();
        let lowest = corners.iter().map(|corner| corner.y).fold(0.0, f64::min);
        assert!((lowest + 1.0).abs() < 2e-3, "{lowest}");
        assert!(corners.iter().all(|corner| (corner.distance(DVec2::X) - 1.0).abs() < 1e-12));
        // Mirrored, it goes to the left.
        let up = trace.placed(&DAffine2::from_scale(DVec2::new(1.0, -1.0))).chords(1e-3, 1000).unwrap();
        assert!(up.iter().all(|corner| corner.y > -1e-12));
    }

    #[test]
    fn chords_leave_a_circle_and_a_squashed_circle_by_no_more_than_the_tolerance() {
        let round =
            Round { center: DVec2::ZERO, u: DVec2::X * 50.0, v: DVec2::Y * 50.0, from_rad: 0.3, sweep_rad: TAU };
        for squash in [1.0, 0.2] {
            let trace = Trace::round(0, round).placed(&DAffine2::from_scale(DVec2::new(1.0, squash)));
            let corners = trace.chords(0.005, 1000).unwrap();
            for pair in corners.windows(2) {
                let middle = pair[0].midpoint(pair[1]);
                let back = DVec2::new(middle.x, middle.y / squash);
                assert!(50.0 - back.length() < 0.005 + 1e-9);
            }
            // Sagitta 5 mm at 50 m: 2 acos(1 - 1e-4) = 0.02828, 223 chords in a turn.
            assert_eq!(corners.len(), 224);
        }
    }

    #[test]
    fn a_quarter_ends_where_it_should() {
        let round = Round { center: DVec2::ONE, u: DVec2::X, v: DVec2::Y, from_rad: 0.0, sweep_rad: PI / 2.0 };
        let corners = Trace::round(0, round).chords(0.01, 1000).unwrap();
        assert!(corners[0].distance(DVec2::new(2.0, 1.0)) < 1e-15);
        assert!(corners[corners.len() - 1].distance(DVec2::new(1.0, 2.0)) < 1e-15);
    }
    #[test]
    fn no_more_chords_are_made_than_there_is_room_for() {
        let round = Round { center: DVec2::ZERO, u: DVec2::X, v: DVec2::Y, from_rad: 0.0, sweep_rad: TAU };
        let trace = Trace::round(0, round);
        let needed = trace.chords(1e-4, usize::MAX).unwrap().len();
        assert_eq!(trace.chords(1e-4, needed).map(|corners| corners.len()), Some(needed));
        assert_eq!(trace.chords(1e-4, needed - 1), None);
        assert_eq!(trace.chords(1e-4, 0), None);
    }
}
