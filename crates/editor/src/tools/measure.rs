//! Measures from point to point. The measure stays until Esc or the next first point.

use glam::DVec2;

use super::Scene;
use super::gesture::{GestureEvent, GestureKey, Spot, step_m};
use super::sketch::{CardLine, LineRole, Sketch, SketchLine};
use super::snap::candidates::{of_angles, of_plan, of_underlays};
use super::snap::choose::stepped_along;
use super::snap::{Caught, Moving, choose};
use crate::intent::Intent;

/// The measure tool.
#[derive(Debug, Clone, Default)]
pub struct MeasureTool {
    state: State,
    aim: Option<(DVec2, Option<Caught>)>,
}

#[derive(Debug, Clone, Copy, Default, PartialEq)]
enum State {
    #[default]
    First,
    Second(DVec2),
    Shown(DVec2, DVec2),
}

impl MeasureTool {
    /// Whether a measure is begun or shown.
    pub fn is_busy(&self) -> bool {
        self.state != State::First
    }

    /// What it waits for, for the status line.
    pub fn waits_for(&self) -> String {
        match self.state {
            State::First => "Measure: click the first point.",
            State::Second(_) => "Measure: click the second point.",
            State::Shown(..) => "Measure: click for a new one, Esc takes it away.",
        }
        .to_owned()
    }

    /// One event.
    pub fn step(&mut self, event: &GestureEvent, scene: &Scene<'_>) -> Vec<Intent> {
        match event {
            GestureEvent::Hover(spot) | GestureEvent::Drag(spot) => self.aim_at(spot, scene),
            GestureEvent::DragStart { from, now } => {
                self.aim_at(from, scene);
                if let (State::First | State::Shown(..), Some((at, _))) = (self.state, self.aim) {
                    self.state = State::Second(at);
                }
                self.aim_at(now, scene);
            }
            GestureEvent::Click(spot) | GestureEvent::Drop(spot) => {
                self.aim_at(spot, scene);
                self.set();
            }
            GestureEvent::Key(GestureKey::Enter) => self.set(),
            GestureEvent::Key(GestureKey::Escape | GestureKey::Backspace) => self.state = State::First,
            GestureEvent::Leave => self.aim = None,
        }
        Vec::new()
    }

    fn set(&mut self) {
        if let Some((at, _)) = self.aim {
            self.state = match self.state {
                State::First | State::Shown(..) => State::Second(at),
                State::Second(first) => State::Shown(first, at),
            };
        }
    }

    fn aim_at(&mut self, spot: &Spot, scene: &Scene<'_>) {
        let last = self.aim.and_then(|(_, caught)| caught);
        let mut candidates = of_plan(scene.plan, Moving::Nothing);
        candidates.extend(of_underlays(scene, spot));
        if let State::Second(first) = self.state {
            candidates.extend(of_angles(first, None));
        }
        let step = step_m(spot.m_per_pt);
        self.aim = Some(match choose(spot.at, &candidates, last.as_ref(), spot.m_per_pt) {
            Some(caught) if !spot.held.alt => (stepped_along(&caught, step), Some(caught)),
            _ => (spot.at, None),
        });
    }

    /// What is drawn over the sheet.
    pub fn sketch(&self) -> Sketch {
        let mut sketch = Sketch { caught: self.aim.and_then(|(_, caught)| caught), ..Sketch::default() };
        let ends = match self.state {
            State::First => None,
            State::Second(first) => self.aim.map(|(at, _)| (first, at)),
            State::Shown(first, second) => Some((first, second)),
        };
        if let Some((first, second)) = ends {
            let way = second - first;
            sketch.lines = vec![SketchLine { points: vec![first, second], closed: false, role: LineRole::Drawn }];
            sketch.dimension = Some((first, second));
            sketch.card = vec![
                CardLine::length("distance", way.length()),
                CardLine::length("along x", way.x.abs()),
                CardLine::length("along y", way.y.abs()),
            ];
        }
        sketch
    }
}
