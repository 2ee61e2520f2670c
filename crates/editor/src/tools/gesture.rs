//! Gestures: a press becomes a drag only after a threshold, so that a click never moves anything.

use glam::DVec2;

use super::Hit;

/// Keys held during a gesture.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Held {
    /// Shift.
    pub shift: bool,
    /// Alt.
    pub alt: bool,
}

/// Where the pointer is.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// In the plan, m.
    pub at: DVec2,
    /// How many meters a screen point stands for.
    pub m_per_pt: f64,
    /// Keys held.
    pub held: Held,
    /// What lies there, in order of rank.
    pub hits: Vec<Hit>,
}

/// What a tool is told.
#[derive(Debug, Clone, PartialEq)]
pub enum GestureEvent {
    /// The pointer moves with no button down.
    Hover(Spot),
    /// The pointer leaves the sheet.
    Leave,
    /// Pressed and released in one place.
    Click(Spot),
    /// A press has become a drag.
    DragStart {
        /// Where it was pressed.
        from: Spot,
        /// Where it is now.
        now: Spot,
    },
    /// The drag goes on.
    Drag(Spot),
    /// The drag ends.
    Drop(Spot),
    /// A key that belongs to the gesture.
    Key(GestureKey),
}

/// Keys that belong to a gesture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GestureKey {
    /// Yes to what the status line announces.
    Enter,
    /// One rung back.
    Escape,
    /// Take the last corner back.
    Backspace,
}

/// What the pointer does, in screen points.
#[derive(Debug, Clone, PartialEq)]
pub enum PointerEvent {
    /// It moves.
    Move(DVec2, Spot),
    /// The primary button goes down.
    Down(DVec2, Spot),
    /// The primary button goes up.
    Up(DVec2, Spot),
    /// It leaves the sheet.
    Gone,
}

/// Tells clicks from drags.
#[derive(Debug, Clone, Default)]
pub struct Recognizer {
    state: State,
}

#[derive(Debug, Clone, Default)]
enum State {
    #[default]
    Up,
    Pressed {
        at: DVec2,
        spot: Spot,
    },
    Dragging,
}

/// Points that a press may move before it is a drag: mouse and touch.
pub const DRAG_THRESHOLD_PT: f64 = 4.0;
/// The same for a finger.
pub const TOUCH_THRESHOLD_PT: f64 = 8.0;

impl Recognizer {
    /// Whether a button is down on the sheet.
    pub fn is_pressed(&self) -> bool {
        !matches!(self.state, State::Up)
    }

    /// Forgets a press, so that its release does nothing.
    pub fn forget(&mut self) {
        self.state = State::Up;
    }

    /// The gesture that a pointer event makes.
    pub fn tell(&mut self, event: PointerEvent, threshold_pt: f64) -> Option<GestureEvent> {
        match (std::mem::take(&mut self.state), event) {
            (_, PointerEvent::Down(at, spot)) => {
                self.state = State::Pressed { at, spot };
                None
            }
            (State::Up, PointerEvent::Move(_, spot)) => Some(GestureEvent::Hover(spot)),
            (State::Up, PointerEvent::Up(..)) => None,
            (State::Up, PointerEvent::Gone) => Some(GestureEvent::Leave),
            (State::Pressed { at, spot }, PointerEvent::Move(to, now)) => {
                if at.distance(to) < threshold_pt {
                    self.state = State::Pressed { at, spot };
                    return None;
                }
                self.state = State::Dragging;
                Some(GestureEvent::DragStart { from: spot, now })
            }
            (State::Pressed { spot, .. }, PointerEvent::Up(_, now)) => {
                Some(GestureEvent::Click(Spot { held: now.held, ..spot }))
            }
            (State::Dragging, PointerEvent::Move(_, spot)) => {
                self.state = State::Dragging;
                Some(GestureEvent::Drag(spot))
            }
            (State::Dragging, PointerEvent::Up(_, spot)) => Some(GestureEvent::Drop(spot)),
            (state, PointerEvent::Gone) => {
                self.state = state;
                None
            }
        }
    }
}

/// The step in which positions go without a catch: 1, 2 or 5 × 10ⁿ mm, at least 4 points and at least 1 mm.
pub fn step_m(m_per_pt: f64) -> f64 {
    let least_m = (4.0 * m_per_pt).max(0.001);
    let decade = 10.0_f64.powf(least_m.log10().floor());
    // A hair below, so that a bound met exactly is not passed over for the next step.
    let least_m = least_m * (1.0 - 1e-9);
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|times| times * decade).find(|&step| step >= least_m).unwrap_or(decade * 10.0)
}

/// The nearest multiple of a step of [`step_m`], as it would be typed: 17 steps of 0.05 m are 0.85 m and not a last digit
/// more, as 17 × 0.05 would be.
pub fn in_steps(value_m: f64, step_m: f64) -> f64 {
    let count = (value_m / step_m).round();
    let per_m = (1.0 / step_m).round();
    // Steps below a meter are whole parts of it, larger ones whole numbers.
    if step_m < 1.0 { count / per_m } else { count * step_m }
}

/// The same for a point.
pub fn point_in_steps(at: DVec2, step_m: f64) -> DVec2 {
    DVec2::new(in_steps(at.x, step_m), in_steps(at.y, step_m))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spot(x: f64) -> Spot {
        Spot { at: DVec2::new(x, 0.0), m_per_pt: 0.01, held: Held::default(), hits: Vec::new() }
    }

    fn at(x: f64) -> DVec2 {
        DVec2::new(x, 0.0)
    }

    #[test]
    fn a_press_that_trembles_by_three_points_is_a_click_where_it_was_pressed() {
        let mut recognizer = Recognizer::default();
        assert_eq!(recognizer.tell(PointerEvent::Down(at(10.0), spot(1.0)), DRAG_THRESHOLD_PT), None);
        assert_eq!(recognizer.tell(PointerEvent::Move(at(13.0), spot(1.3)), DRAG_THRESHOLD_PT), None);
        let told = recognizer.tell(PointerEvent::Up(at(13.0), spot(1.3)), DRAG_THRESHOLD_PT);
        assert_eq!(told, Some(GestureEvent::Click(spot(1.0))));
    }

    #[test]
    fn four_points_are_a_drag_from_the_press_and_a_finger_needs_eight() {
        let mut recognizer = Recognizer::default();
        recognizer.tell(PointerEvent::Down(at(10.0), spot(1.0)), DRAG_THRESHOLD_PT);
        let told = recognizer.tell(PointerEvent::Move(at(14.0), spot(1.4)), DRAG_THRESHOLD_PT);
        assert_eq!(told, Some(GestureEvent::DragStart { from: spot(1.0), now: spot(1.4) }));
        let told = recognizer.tell(PointerEvent::Up(at(15.0), spot(1.5)), DRAG_THRESHOLD_PT);
        assert_eq!(told, Some(GestureEvent::Drop(spot(1.5))));
        recognizer.tell(PointerEvent::Down(at(10.0), spot(1.0)), TOUCH_THRESHOLD_PT);
        assert_eq!(recognizer.tell(PointerEvent::Move(at(17.0), spot(1.7)), TOUCH_THRESHOLD_PT), None);
    }

    #[test]
    fn steps_are_1_2_or_5_times_a_power_of_ten_and_never_below_a_millimeter() {
        let near = |m_per_pt: f64, expected: f64| assert!((step_m(m_per_pt) - expected).abs() < 1e-12, "{m_per_pt}");
        near(0.0001, 0.001);
        near(0.00025, 0.001);
        near(0.0003, 0.002);
        near(0.01, 0.05);
        near(0.02, 0.1);
        near(0.05, 0.2);
        near(0.1, 0.5);
    }

    #[test]
    fn whole_steps_are_the_numbers_that_one_would_type() {
        // 17 × 0.05 and 3 × 0.1 are a last digit more in binary.
        assert_eq!((in_steps(0.86, 0.05), in_steps(0.31, 0.1)), (0.85, 0.3));
        assert_eq!((in_steps(-0.0074, 0.001), in_steps(13.0, 5.0), in_steps(0.2, 0.5)), (-0.007, 15.0, 0.0));
    }
}
