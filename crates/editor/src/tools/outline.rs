//! Draws an outline corner by corner, or a rectangle in one drag: a roof, a hole or an obstacle.

use gantline_plan::change::{Change, Refused, apply};
use gantline_plan::document::ring::SAME_CORNER_M;
use gantline_plan::document::{Obstacle, RingFault};
use gantline_plan::geometry::segments::segments_meet;
use glam::DVec2;

use super::gesture::{GestureEvent, GestureKey, Spot, in_steps, point_in_steps, step_m};
use super::sketch::{CardLine, LineRole, Sketch, SketchLine};
use super::snap::candidates::{self, exact_direction};
use super::snap::choose::stepped_along;
use super::snap::{CatchKind, Caught, Moving, choose};
use super::{Asked, Scene};
use crate::intent::Intent;

/// What an outline is drawn for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Purpose {
    /// A roof.
    Roof,
    /// A hole in a roof.
    Hole,
    /// An obstacle.
    Obstacle,
}

/// The outline tool.
#[derive(Debug, Clone)]
pub struct OutlineTool {
    purpose: Purpose,
    state: State,
    aim: Option<Aim>,
}

#[derive(Debug, Clone, PartialEq)]
enum State {
    Waiting,
    Rectangle { from: DVec2 },
    Drawing { corners: Vec<DVec2> },
}

/// Where the next corner would be.
#[derive(Debug, Clone, PartialEq)]
struct Aim {
    spot: Spot,
    at: DVec2,
    caught: Option<Caught>,
}

impl OutlineTool {
    /// A tool that waits for its first corner.
    pub const fn new(purpose: Purpose) -> Self {
        Self { purpose, state: State::Waiting, aim: None }
    }

    /// What it draws.
    pub const fn purpose(&self) -> Purpose {
        self.purpose
    }

    /// Whether a shape is begun.
    pub fn is_busy(&self) -> bool {
        self.state != State::Waiting
    }

    /// What can be typed now.
    pub fn asks(&self) -> Vec<Asked> {
        match self.state {
            State::Waiting => vec![Asked::length("x"), Asked::length("y")],
            State::Rectangle { .. } => vec![Asked::length("width"), Asked::length("depth")],
            State::Drawing { .. } => vec![Asked::length("length"), Asked::angle("direction")],
        }
    }

    /// What it waits for, for the status line.
    pub fn waits_for(&self) -> String {
        let what = match self.purpose {
            Purpose::Roof => "Roof",
            Purpose::Hole => "Hole",
            Purpose::Obstacle => "Obstacle",
        };
        let next = match &self.state {
            State::Waiting => "click the first corner, or drag a rectangle.",
            State::Rectangle { .. } => "let go to set it, or type its width.",
            State::Drawing { corners } if corners.len() < 3 => "click the next corner, or type a length.",
            State::Drawing { .. } => "Enter closes, Backspace takes a corner back.",
        };
        format!("{what}: {next}")
    }

    /// One event.
    pub fn step(&mut self, event: &GestureEvent, scene: &Scene<'_>) -> Vec<Intent> {
        match event {
            GestureEvent::Hover(spot) | GestureEvent::Drag(spot) => {
                self.aim_at(spot, scene);
                Vec::new()
            }
            GestureEvent::Leave => {
                self.aim = None;
                Vec::new()
            }
            GestureEvent::DragStart { from, now } => {
                self.aim_at(from, scene);
                if let (State::Waiting, Some(aim)) = (&self.state, &self.aim) {
                    self.state = State::Rectangle { from: aim.at };
                }
                self.aim_at(now, scene);
                Vec::new()
            }
            GestureEvent::Click(spot) | GestureEvent::Drop(spot) => {
                self.aim_at(spot, scene);
                self.set(scene)
            }
            GestureEvent::Key(key) => self.key(*key, scene),
        }
    }

    fn key(&mut self, key: GestureKey, scene: &Scene<'_>) -> Vec<Intent> {
        match key {
            GestureKey::Enter if scene.typed.is_empty() && self.corners().len() >= 3 => self.close(scene),
            GestureKey::Enter => self.set(scene),
            GestureKey::Escape => {
                self.state = State::Waiting;
                Vec::new()
            }
            GestureKey::Backspace => {
                if let State::Drawing { corners } = &mut self.state {
                    corners.pop();
                    if corners.is_empty() {
                        self.state = State::Waiting;
                    }
                }
                Vec::new()
            }
        }
    }

    fn corners(&self) -> &[DVec2] {
        match &self.state {
            State::Waiting | State::Rectangle { .. } => &[],
            State::Drawing { corners } => corners,
        }
    }

    fn aim_at(&mut self, spot: &Spot, scene: &Scene<'_>) {
        let last = self.aim.as_ref().and_then(|aim| aim.caught);
        let (at, caught) = self.snapped(spot, scene, last.as_ref());
        self.aim = Some(Aim { spot: spot.clone(), at, caught });
    }

    /// The place of the next corner for a pointer, without what is typed.
    fn snapped(&self, spot: &Spot, scene: &Scene<'_>, last: Option<&Caught>) -> (DVec2, Option<Caught>) {
        let step = step_m(spot.m_per_pt);
        let rounded = point_in_steps(spot.at, step);
        if spot.held.alt {
            return (spot.at, None);
        }
        let corners = self.corners();
        let before = corners.len().checked_sub(2).map(|index| corners[index]);
        let mut all = Vec::new();
        if let Some(&from) = corners.last() {
            all.extend(candidates::of_angles(from, before));
            if spot.held.shift {
                return along_nearest_angle(spot.at, from, &all, step);
            }
            all.extend(candidates::of_drawn(corners));
        }
        if let State::Rectangle { from } = self.state {
            all.extend(candidates::of_drawn(&[from]));
        }
        all.extend(candidates::of_plan(scene.plan, Moving::Nothing));
        all.extend(candidates::of_underlays(scene, spot));
        match choose(spot.at, &all, last, spot.m_per_pt) {
            Some(caught) => (stepped_along(&caught, step), Some(caught)),
            None => (rounded, None),
        }
    }

    /// The place of the next corner with what is typed; none when neither pointer nor keys say where.
    fn next(&self, scene: &Scene<'_>) -> Option<DVec2> {
        let pointer = self.aim.as_ref().map(|aim| aim.at);
        let (first, second) = (scene.typed.first(), scene.typed.second());
        match &self.state {
            State::Waiting => {
                let base = pointer.unwrap_or(DVec2::ZERO);
                Some(DVec2::new(first.unwrap_or(base.x), second.unwrap_or(base.y)))
            }
            State::Rectangle { from } => {
                let way = pointer.map_or(DVec2::ONE, |at| at - *from);
                let sized = |typed: Option<f64>, way: f64| typed.map_or(way, |size| size.copysign(way));
                Some(*from + DVec2::new(sized(first, way.x), sized(second, way.y)))
            }
            State::Drawing { corners } => {
                let from = *corners.last()?;
                if scene.typed.is_empty() {
                    return pointer;
                }
                let direction = second.map_or_else(
                    || match pointer {
                        Some(at) if at.distance(from) > SAME_CORNER_M => (at - from).normalize(),
                        _ => turned_left(corners),
                    },
                    exact_direction,
                );
                let length = first.unwrap_or_else(|| pointer.map_or(0.0, |at| (at - from).dot(direction)));
                Some(from + direction * length)
            }
        }
    }

    /// Sets the next corner, or closes when it is the first one.
    fn set(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        let Some(next) = self.next(scene) else {
            return Vec::new();
        };
        match &mut self.state {
            State::Waiting => {
                self.state = State::Drawing { corners: vec![next] };
                Vec::new()
            }
            State::Rectangle { from } => {
                let from = *from;
                let corners = vec![from, DVec2::new(next.x, from.y), next, DVec2::new(from.x, next.y)];
                self.state = State::Waiting;
                self.made(scene, corners)
            }
            State::Drawing { corners } => {
                let closes = corners.len() >= 3 && next.distance(corners[0]) < SAME_CORNER_M;
                if closes {
                    return self.close(scene);
                }
                let stays = corners.last().is_some_and(|last| last.distance(next) < SAME_CORNER_M);
                match crossing(corners, next) {
                    _ if stays => Vec::new(),
                    Some((first, at)) => {
                        let (x_m, y_m) = (at.x, at.y);
                        let crossing = RingFault::Crossing { first, second: corners.len(), x_m, y_m };
                        vec![Intent::Refuse(Refused::Outline(crossing))]
                    }
                    None => {
                        corners.push(next);
                        Vec::new()
                    }
                }
            }
        }
    }

    fn close(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        let corners = self.corners().to_vec();
        let intents = self.made(scene, corners);
        if intents.iter().any(|intent| matches!(intent, Intent::Change { .. })) {
            self.state = State::Waiting;
        }
        intents
    }

    /// The change that the outline makes, tried first, so that a refused shape is kept and can be mended.
    fn made(&self, scene: &Scene<'_>, outline: Vec<DVec2>) -> Vec<Intent> {
        let on_roof = outline.first().and_then(|&corner| scene.roof_at(corner)).or(scene.level);
        let (name, change) = match (self.purpose, on_roof) {
            (Purpose::Roof, _) => {
                let level_m = scene.new_roof_level_m();
                ("draw roof", Change::AddRoof { name: String::new(), level_m, outline })
            }
            (_, None) => return vec![Intent::Say("There is no roof here yet: draw one first.".to_owned())],
            (Purpose::Hole, Some(roof)) => ("draw hole", Change::AddHole { roof, outline }),
            (Purpose::Obstacle, Some(roof)) => {
                const SKETCHED_HEIGHT_M: f64 = 2.0;
                let name = format!("Obstacle {}", scene.plan.obstacles.len() + 1);
                let obstacle = Obstacle { name, roof, outline, from_m: 0.0, to_m: SKETCHED_HEIGHT_M };
                ("draw obstacle", Change::AddObstacle(obstacle))
            }
        };
        match apply(scene.plan, &change) {
            Ok(_) => vec![Intent::make(name, change)],
            Err(refused) => vec![Intent::Refuse(refused)],
        }
    }

    /// What is drawn over the sheet.
    pub fn sketch(&self, scene: &Scene<'_>) -> Sketch {
        let mut sketch = Sketch { caught: self.aim.as_ref().and_then(|aim| aim.caught), ..Sketch::default() };
        if self.purpose == Purpose::Roof && self.is_busy() {
            sketch.word = Some("outline = edge of the structural slab".to_owned());
        }
        let line = |points: Vec<DVec2>, closed, role| SketchLine { points, closed, role };
        let next = self.next(scene);
        match (&self.state, next) {
            (State::Rectangle { from }, Some(to)) => {
                let corners = vec![*from, DVec2::new(to.x, from.y), to, DVec2::new(from.x, to.y)];
                sketch.lines.push(line(corners, true, LineRole::Pending));
                let size = (to - *from).abs();
                sketch.card = vec![CardLine::length("width", size.x), CardLine::length("depth", size.y)];
            }
            (State::Drawing { corners }, next) => {
                sketch.lines.push(line(corners.clone(), false, LineRole::Drawn));
                if let (Some(&from), Some(to)) = (corners.last(), next) {
                    sketch.cross = crossing(corners, to).map(|(_, at)| at);
                    let role = if sketch.cross.is_some() { LineRole::Refused } else { LineRole::Pending };
                    sketch.lines.push(line(vec![from, to], false, role));
                    sketch.card = segment_card(from, to);
                }
            }
            (State::Waiting, Some(at)) if self.aim.is_some() => {
                sketch.card = vec![CardLine::length("x", at.x), CardLine::length("y", at.y)];
            }
            (State::Waiting | State::Rectangle { .. }, _) => {}
        }
        sketch
    }
}

fn segment_card(from: DVec2, to: DVec2) -> Vec<CardLine> {
    let way = to - from;
    let direction = if way.length() < SAME_CORNER_M { 0.0 } else { way.y.atan2(way.x) };
    vec![CardLine::length("length", way.length()), CardLine::angle("direction", direction)]
}

/// Without a pointer an outline goes on to the left, so that typed lengths alone make a rectangle.
fn turned_left(corners: &[DVec2]) -> DVec2 {
    match corners {
        [.., before, last] => (*last - *before).normalize_or(DVec2::X).perp(),
        _ => DVec2::X,
    }
}

fn along_nearest_angle(
    pointer: DVec2,
    from: DVec2,
    angles: &[candidates::Candidate],
    step: f64,
) -> (DVec2, Option<Caught>) {
    let on_line = angles.iter().filter_map(|candidate| match candidate.locus {
        candidates::Locus::Line { along, .. } => {
            let distance = in_steps((pointer - from).dot(along), step);
            Some(Caught { by: *candidate, and: None, at: from + along * distance })
        }
        candidates::Locus::Point(_) | candidates::Locus::Segment { .. } => None,
    });
    let nearest = on_line.min_by(|a, b| a.at.distance(pointer).total_cmp(&b.at.distance(pointer)));
    (nearest.map_or(pointer, |caught| caught.at), nearest.filter(|caught| caught.by.kind == CatchKind::AngleStep))
}

/// The edge, counted from 1, that a segment from the last corner would cross or touch, and where; the first corner may be
/// met to close.
fn crossing(corners: &[DVec2], next: DVec2) -> Option<(usize, DVec2)> {
    let from = *corners.last()?;
    if from.distance(next) < SAME_CORNER_M {
        return None;
    }
    let closes = next.distance(corners[0]) < SAME_CORNER_M;
    let pairs = corners.windows(2).enumerate();
    for (index, pair) in pairs {
        let is_last = index + 2 == corners.len();
        if is_last {
            let back = (pair[1] - pair[0]).normalize_or_zero();
            let way = (next - from).normalize_or_zero();
            // Straight back over the segment before.
            if back.dot(way) < -1.0 + 1e-12 {
                return Some((index + 1, next));
            }
            continue;
        }
        if closes && index == 0 {
            continue;
        }
        if let Some(at) = segments_meet(pair[0], pair[1], from, next) {
            return Some((index + 1, at));
        }
    }
    None
}
