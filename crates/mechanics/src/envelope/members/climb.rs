//! Climbing on a function of inner forces by going, again and again, to the state that its slope points at.

/// Share of a number's own range by which it is moved to take a slope.
const STEP: f64 = 1e-5;

/// Steps after which a climb ends at the latest; three or four are usual.
const MOST_STEPS: usize = 16;

/// A rise below this share ends a first climb; the best of them is then climbed to the end.
const ROUGH: f64 = 1e-5;

/// A rise below this share is not worth another step.
const FINE: f64 = 1e-12;

/// Something that can be climbed on.
pub(super) trait Hill {
    /// A state of everything that acts.
    type State;

    /// How high a state is.
    fn height(&self, state: &Self::State) -> f64;

    /// The state that lies farthest along the slope at a state; `None` if none is allowed.
    fn ahead(&self, state: &Self::State, height: f64) -> Option<Self::State>;
}

/// Climbs from a state until a step rises by less than the share `worth`: where that is and how high. No step goes down.
fn climb<H: Hill>(hill: &H, start: H::State, worth: f64) -> (H::State, f64) {
    let mut height = hill.height(&start);
    let mut state = start;
    for _ in 0..MOST_STEPS {
        let Some(next) = hill.ahead(&state, height) else { break };
        let next_height = hill.height(&next);
        if next_height <= height * (1.0 + worth) {
            break;
        }
        (state, height) = (next, next_height);
    }
    (state, height)
}

/// Slope of `of` in each number, taken outward from 0, where utilizations have their kinks. 0 in numbers without range.
pub(super) fn slope<const N: usize>(
    numbers: &[f64; N],
    ranges: &[f64; N],
    height: f64,
    of: impl Fn(&[f64; N]) -> f64,
) -> [f64; N] {
    std::array::from_fn(|i| {
        if ranges[i] == 0.0 {
            return 0.0;
        }
        let step = (STEP * ranges[i]).copysign(numbers[i]);
        let mut moved = *numbers;
        moved[i] += step;
        (of(&moved) - height) / step
    })
}

/// Starts a climb from each state that differs from those before it, and keeps the highest peak.
pub(super) struct Climbs<'h, H: Hill> {
    hill: &'h H,
    started: Vec<H::State>,
    best: Option<(H::State, f64)>,
}

impl<'h, H: Hill<State: Clone + PartialEq>> Climbs<'h, H> {
    pub fn on(hill: &'h H) -> Self {
        Self { hill, started: Vec::new(), best: None }
    }

    pub fn start(&mut self, from: Option<H::State>) {
        let Some(from) = from.filter(|from| !self.started.contains(from)) else { return };
        self.started.push(from.clone());
        let peak = climb(self.hill, from, ROUGH);
        if self.best.as_ref().is_none_or(|best| peak.1 > best.1) {
            self.best = Some(peak);
        }
    }

    pub fn highest(self) -> Option<(H::State, f64)> {
        self.best.map(|(state, _)| climb(self.hill, state, FINE))
    }
}

/// Directions to start with, over the size of each number.
pub(super) fn scaled<const N: usize>(start: &[f64; N], ranges: &[f64; N]) -> [f64; N] {
    std::array::from_fn(|i| if ranges[i] > 0.0 { start[i] / ranges[i] } else { 0.0 })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Points of the unit circle under a convex function.
    struct Ellipse;

    fn over_ellipse(n: &[f64; 2]) -> f64 {
        (2.0 * n[0]).hypot(n[1])
    }

    impl Hill for Ellipse {
        type State = [f64; 2];

        fn height(&self, state: &[f64; 2]) -> f64 {
            over_ellipse(state)
        }

        fn ahead(&self, state: &[f64; 2], height: f64) -> Option<[f64; 2]> {
            let w = slope(state, &[1.0, 1.0], height, over_ellipse);
            let length = w[0].hypot(w[1]);
            Some([w[0] / length, w[1] / length])
        }
    }

    #[test]
    fn a_climb_ends_on_the_long_axis_of_an_ellipse() {
        // max √(4x² + y²) on the unit circle is 2, from any start but the short axis itself.
        for angle in [0.1_f64, 0.8, 1.5, 2.0, 4.0] {
            let (_, height) = climb(&Ellipse, [angle.cos(), angle.sin()], FINE);
            assert!((height - 2.0).abs() < 1e-9, "{height}");
        }
    }

    #[test]
    fn a_slope_is_that_of_the_function_by_hand() {
        // u = 3|a| + 2|b|, at a < 0 the slope points outward: −3.
        let of = |n: &[f64; 3]| 3.0 * n[0].abs() + 2.0 * n[1].abs();
        let w = slope(&[-1.0, 0.5, 0.0], &[1.0, 1.0, 0.0], 4.0, of);
        assert!((w[0] + 3.0).abs() < 1e-9 && (w[1] - 2.0).abs() < 1e-9);
        assert_eq!(w[2], 0.0);
    }
}
