//! Sets the scale or the turn of an underlay: two points of it that are known, and what is known of them.
//!
//! A point is taken exactly where it was clicked: pixels catch nothing. Lines of a drawing catch as everywhere.

use gantline_plan::change::Change;
use gantline_plan::document::{ThingId, UnderlayId};
use glam::DVec2;

use super::gesture::{GestureEvent, GestureKey, Spot};
use super::sketch::{CardLine, LineRole, Sketch, SketchLine};
use super::snap::candidates::of_underlays;
use super::snap::{Caught, choose};
use super::{Asked, Scene};
use crate::command::Command;
use crate::intent::Intent;
use crate::tools::ToolKind;

/// What is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fit {
    /// Its scale.
    Scale,
    /// Its turn.
    Turn,
}

/// The tool.
#[derive(Debug, Clone)]
pub struct FitUnderlay {
    fit: Fit,
    state: State,
    aim: Option<(DVec2, Option<Caught>)>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum State {
    First,
    Second(DVec2),
    Known(DVec2, DVec2),
}

impl FitUnderlay {
    /// A tool that waits for its first point.
    pub const fn new(fit: Fit) -> Self {
        Self { fit, state: State::First, aim: None }
    }

    /// What it sets.
    pub const fn fit(&self) -> Fit {
        self.fit
    }

    /// Whether a point is set.
    pub fn is_busy(&self) -> bool {
        self.state != State::First
    }

    /// What can be typed now.
    pub fn asks(&self) -> Vec<Asked> {
        match (self.state, self.fit) {
            (State::First | State::Second(_), _) => Vec::new(),
            (State::Known(..), Fit::Scale) => vec![Asked::length("true length")],
            (State::Known(..), Fit::Turn) => vec![Asked::angle("direction")],
        }
    }

    /// What it waits for, for the status line.
    pub fn waits_for(&self) -> String {
        let what = match self.fit {
            Fit::Scale => "Scale underlay",
            Fit::Turn => "Turn underlay",
        };
        let next = match (self.state, self.fit) {
            (State::First, Fit::Scale) => "click one end of a length that is known.",
            (State::First, Fit::Turn) => "click one end of a line whose direction is known.",
            (State::Second(_), _) => "click the other end.",
            (State::Known(..), Fit::Scale) => "type its true length, Enter sets it.",
            (State::Known(..), Fit::Turn) => "Enter lays it along x; or type its direction from x, counter-clockwise.",
        };
        format!("{what}: {next}")
    }

    /// One event.
    pub fn step(&mut self, event: &GestureEvent, scene: &Scene<'_>) -> Vec<Intent> {
        match event {
            GestureEvent::Hover(spot) | GestureEvent::Drag(spot) => self.aim_at(spot, scene),
            GestureEvent::DragStart { from, now } => {
                self.aim_at(from, scene);
                self.set();
                self.aim_at(now, scene);
            }
            GestureEvent::Click(spot) | GestureEvent::Drop(spot) => {
                if underlay_of(scene).is_none() {
                    return vec![Intent::Say("Select the underlay first: there is not exactly one.".to_owned())];
                }
                self.aim_at(spot, scene);
                self.set();
            }
            GestureEvent::Key(GestureKey::Enter) => return self.known(scene),
            GestureEvent::Key(GestureKey::Escape | GestureKey::Backspace) => {
                self.state = match self.state {
                    State::Known(first, _) => State::Second(first),
                    State::First | State::Second(_) => State::First,
                };
            }
            GestureEvent::Leave => self.aim = None,
        }
        Vec::new()
    }

    fn set(&mut self) {
        let Some((at, _)) = self.aim else { return };
        self.state = match self.state {
            State::First => State::Second(at),
            State::Second(first) if first != at => State::Known(first, at),
            // A third click takes the other end anew.
            State::Known(first, _) if first != at => State::Known(first, at),
            same => same,
        };
    }

    fn aim_at(&mut self, spot: &Spot, scene: &Scene<'_>) {
        let last = self.aim.and_then(|(_, caught)| caught);
        let candidates = of_underlays(scene, spot);
        self.aim = Some(match choose(spot.at, &candidates, last.as_ref(), spot.m_per_pt) {
            Some(caught) if !spot.held.alt => (caught.at, Some(caught)),
            _ => (spot.at, None),
        });
    }

    /// Sets it by what is known, and gives the tool back.
    fn known(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        let (State::Known(from, to), Some(underlay)) = (self.state, underlay_of(scene)) else { return Vec::new() };
        let (name, change) = match (self.fit, scene.typed.first()) {
            (Fit::Scale, None) => return vec![Intent::Say("Type how long that is in truth.".to_owned())],
            (Fit::Scale, Some(length_m)) => ("scale underlay", Change::ScaleUnderlay { underlay, from, to, length_m }),
            (Fit::Turn, typed) => {
                let direction_rad = typed.unwrap_or(0.0);
                ("turn underlay", Change::TurnUnderlay { underlay, from, to, direction_rad })
            }
        };
        if let Err(refused) = gantline_plan::change::apply(scene.plan, &change) {
            return vec![Intent::Refuse(refused)];
        }
        self.state = State::First;
        vec![Intent::change(name, change), Intent::Run(Command::Tool(ToolKind::Select))]
    }

    /// What is drawn over the sheet.
    pub fn sketch(&self) -> Sketch {
        let mut sketch = Sketch { caught: self.aim.and_then(|(_, caught)| caught), ..Sketch::default() };
        let ends = match self.state {
            State::First => None,
            State::Second(first) => self.aim.map(|(at, _)| (first, at)),
            State::Known(first, second) => Some((first, second)),
        };
        let Some((first, second)) = ends else { return sketch };
        sketch.lines = vec![SketchLine { points: vec![first, second], closed: false, role: LineRole::Drawn }];
        sketch.card = match self.fit {
            Fit::Scale => vec![CardLine::length("length as it lies", first.distance(second))],
            Fit::Turn => vec![CardLine::angle("direction as it lies", (second - first).to_angle())],
        };
        sketch
    }
}

/// The underlay that is fitted: the selected one, or the only one.
fn underlay_of(scene: &Scene<'_>) -> Option<UnderlayId> {
    if let Some(ThingId::Underlay(id)) = scene.selection.single() {
        return Some(id);
    }
    let mut all = scene.plan.underlays.keys();
    all.next().copied().filter(|_| all.next().is_none())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::Selection;
    use crate::tools::gesture::Held;
    use crate::tools::{Typed, witness};
    use gantline_plan::document::Plan;

    fn click(x: f64, y: f64) -> GestureEvent {
        GestureEvent::Click(Spot { at: DVec2::new(x, y), m_per_pt: 0.02, held: Held::default(), hits: Vec::new() })
    }

    fn scene<'a>(plan: &'a Plan, selection: &'a Selection, typed: Typed) -> Scene<'a> {
        let lines = &witness::NO_LINES;
        Scene { plan, selection, hand: None, hand_setback_m: 1.2, level: None, lines, typed }
    }

    fn change_of(intents: &[Intent]) -> Option<Change> {
        intents.iter().find_map(|intent| match intent {
            Intent::Change { change, .. } => Some(change.clone()),
            _ => None,
        })
    }

    #[test]
    fn points_are_taken_where_they_were_clicked_and_the_length_waits_to_be_typed() {
        let plan = witness::with_underlay();
        let (underlay, selection) = (*plan.underlays.keys().next().unwrap(), Selection::default());
        let mut tool = FitUnderlay::new(Fit::Scale);
        let quiet = scene(&plan, &selection, Typed::default());
        // A corner of the roof lies at the origin: it does not catch.
        assert!(tool.step(&click(0.03, 0.05), &quiet).is_empty());
        assert!(tool.step(&click(6.03, 8.05), &quiet).is_empty());
        let enter = GestureEvent::Key(GestureKey::Enter);
        assert!(matches!(tool.step(&enter, &quiet).as_slice(), [Intent::Say(_)]), "nothing is typed yet");
        let told = tool.step(&enter, &scene(&plan, &selection, Typed::of(Some(25.0), None)));
        let (from, to) = (DVec2::new(0.03, 0.05), DVec2::new(6.03, 8.05));
        assert_eq!(change_of(&told), Some(Change::ScaleUnderlay { underlay, from, to, length_m: 25.0 }));
        assert!(!tool.is_busy());
    }

    #[test]
    fn escape_takes_one_point_back_at_a_time() {
        let plan = witness::with_underlay();
        let selection = Selection::default();
        let scene = scene(&plan, &selection, Typed::default());
        let mut tool = FitUnderlay::new(Fit::Turn);
        tool.step(&click(1.0, 1.0), &scene);
        tool.step(&click(1.0, 5.0), &scene);
        let escape = GestureEvent::Key(GestureKey::Escape);
        tool.step(&escape, &scene);
        assert!(tool.is_busy() && tool.asks().is_empty());
        tool.step(&escape, &scene);
        assert!(!tool.is_busy());
    }

    #[test]
    fn a_scale_that_can_not_be_is_refused_and_the_points_stay() {
        let plan = witness::with_underlay();
        let selection = Selection::default();
        let mut tool = FitUnderlay::new(Fit::Scale);
        let quiet = scene(&plan, &selection, Typed::default());
        tool.step(&click(1.0, 1.0), &quiet);
        tool.step(&click(1.0, 5.0), &quiet);
        let told =
            tool.step(&GestureEvent::Key(GestureKey::Enter), &scene(&plan, &selection, Typed::of(Some(-4.0), None)));
        assert!(matches!(told.as_slice(), [Intent::Refuse(_)]));
        assert!(tool.is_busy());
    }
}
