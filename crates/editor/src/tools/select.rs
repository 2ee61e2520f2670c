//! Selects things and drags them. Units can always be dragged; corners and edges only while their roof is selected.

use gantline_plan::change::{Change, Refused};
use gantline_plan::document::{EdgeId, PlacementId, Plan, ThingId};
use glam::DVec2;

use super::copies::Copies;
use super::framing::Framing;
use super::gesture::{DRAG_THRESHOLD_PT, GestureEvent, GestureKey, Spot};
use super::hold::{Dragged, Taken, taken};
use super::sketch::{LineRole, Sketch, SketchLine};
use super::{Asked, Hit, Scene};
use crate::intent::{Intent, Then};
use crate::session::Selection;

/// Half the side of the square around a clicked corner, screen points.
const CORNER_PT: f64 = 8.0;

/// The select tool.
#[derive(Debug, Clone, Default)]
pub struct SelectTool {
    state: State,
    spot: Option<Spot>,
    last_click: Option<DVec2>,
    /// A corner of the selected roof that was clicked, with half the side of the square that shows it, m.
    corner: Option<(EdgeId, f64)>,
}

#[derive(Debug, Clone, Default)]
enum State {
    #[default]
    Idle,
    Dragging(Dragged),
    Framing(Framing),
    /// Copies begun by a command: set by typed pitch and count, without a drag.
    SettingCopies(Copies),
}

impl SelectTool {
    /// Whether something is in hand.
    pub fn is_busy(&self) -> bool {
        !matches!(self.state, State::Idle)
    }

    /// The corner that Delete takes away, the one that this edge leaves: as long as nothing but its roof is selected.
    pub fn picked_corner(&self, plan: &Plan, selection: &Selection) -> Option<EdgeId> {
        let (edge, _) = self.corner?;
        let roof = plan.find_edge(edge)?.roof_id;
        (selection.single() == Some(ThingId::Roof(roof))).then_some(edge)
    }

    /// The unit that is being dragged.
    pub fn dragged_unit(&self) -> Option<PlacementId> {
        match &self.state {
            State::Dragging(Dragged::Units(units)) => Some(units.lead()),
            _ => None,
        }
    }

    /// What can be typed now.
    pub fn asks(&self) -> Vec<Asked> {
        match &self.state {
            State::Dragging(dragged) => dragged.asks(),
            State::SettingCopies(copies) => copies.asks(),
            State::Idle | State::Framing(_) => Vec::new(),
        }
    }

    /// What it waits for, for the status line.
    pub fn waits_for(&self) -> String {
        match &self.state {
            State::Idle if self.corner.is_some() => "Corner: drag it, or take it away with Delete.".to_owned(),
            State::Idle => "Select: click a thing, drag a unit, or draw a box.".to_owned(),
            State::Framing(framing) if framing.takes_touched() => "Box: takes what it touches.".to_owned(),
            State::Framing(_) => "Box: takes what lies wholly inside.".to_owned(),
            State::SettingCopies(_) => "Copies along the edge: type pitch, Tab, count. Enter sets them.".to_owned(),
            State::Dragging(dragged) => {
                format!("{}: let go to set it, type a figure, Esc drops it.", capitalized(dragged.name()))
            }
        }
    }

    /// One event.
    pub fn step(&mut self, event: &GestureEvent, scene: &Scene<'_>) -> Vec<Intent> {
        match event {
            GestureEvent::Hover(spot) => {
                self.spot = Some(spot.clone());
                let thing = spot.hits.iter().find_map(|hit| hit.thing());
                vec![Intent::Hover(thing)]
            }
            GestureEvent::Leave => vec![Intent::Hover(None)],
            GestureEvent::Click(spot) => self.click(spot, scene),
            GestureEvent::DragStart { from, now } => self.drag_start(from, now, scene),
            GestureEvent::Drag(spot) => self.drag(spot, scene),
            GestureEvent::Drop(spot) => {
                let mut intents = self.drag(spot, scene);
                intents.extend(self.finish(scene));
                intents
            }
            GestureEvent::Key(GestureKey::Enter) => self.finish(scene),
            GestureEvent::Key(GestureKey::Escape) => {
                self.corner = None;
                let abandons = matches!(self.state, State::Dragging(_) | State::SettingCopies(_));
                self.state = State::Idle;
                if abandons { vec![Intent::Abandon] } else { Vec::new() }
            }
            GestureEvent::Key(GestureKey::Backspace) => Vec::new(),
        }
    }

    /// Takes a new look with what is typed now.
    pub fn renew(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        match (&mut self.state, self.spot.clone()) {
            (State::SettingCopies(copies), _) => preview(copies.change(None, scene)),
            (State::Dragging(_), Some(spot)) => self.drag(&spot, scene),
            _ => Vec::new(),
        }
    }

    /// Begins copies of a unit along its edge, to be set by typed pitch and count.
    pub fn begin_copies(&mut self, unit: PlacementId, scene: &Scene<'_>) -> Vec<Intent> {
        let Some(mut copies) = Copies::begin(unit, None, scene.plan) else {
            return vec![Intent::Say("A free unit has no edge to be copied along.".to_owned())];
        };
        let change = copies.change(None, scene);
        self.state = State::SettingCopies(copies);
        let mut intents = vec![Intent::Begin("copy along edge")];
        intents.extend(preview(change));
        intents
    }

    fn click(&mut self, spot: &Spot, scene: &Scene<'_>) -> Vec<Intent> {
        if let State::SettingCopies(_) = self.state {
            return self.finish(scene);
        }
        self.corner = match spot.hits.first() {
            Some(Hit::Corner(edge)) if !spot.held.alt => Some((*edge, CORNER_PT * spot.m_per_pt)),
            _ => None,
        };
        if self.corner.is_some() {
            return Vec::new();
        }
        let mut things: Vec<ThingId> = Vec::new();
        for thing in spot.hits.iter().filter_map(|hit| hit.thing()) {
            if !things.contains(&thing) {
                things.push(thing);
            }
        }
        let again = self.last_click.is_some_and(|last| last.distance(spot.at) < DRAG_THRESHOLD_PT * spot.m_per_pt);
        self.last_click = Some(spot.at);
        if things.is_empty() {
            let on_handle = spot.hits.iter().any(|hit| hit.thing().is_none());
            return if spot.held.shift || on_handle { Vec::new() } else { vec![Intent::Select(Selection::default())] };
        }
        let mut selection = scene.selection.clone();
        if spot.held.shift {
            selection.toggle(things[0]);
        } else {
            let below = scene.selection.single().and_then(|single| things.iter().position(|thing| *thing == single));
            let next = match below {
                Some(index) if again || spot.held.alt => (index + 1) % things.len(),
                _ => 0,
            };
            selection = Selection::of([things[next]]);
        }
        vec![Intent::Select(selection)]
    }

    fn drag_start(&mut self, from: &Spot, now: &Spot, scene: &Scene<'_>) -> Vec<Intent> {
        self.last_click = None;
        self.corner = None;
        let mut intents = Vec::new();
        if let State::SettingCopies(_) = self.state {
            intents.push(Intent::Abandon);
        }
        let (dragged, select) = match taken(from, scene) {
            Taken::Dragged(dragged, select) => (dragged, select),
            Taken::Locked(thing) => {
                self.state = State::Idle;
                intents.push(Intent::Refuse(Refused::Locked(thing)));
                return intents;
            }
            Taken::Ground => {
                self.state = State::Framing(Framing { from: from.at, to: now.at });
                return intents;
            }
        };
        intents.extend(select.map(Intent::Select));
        intents.push(Intent::Begin(dragged.name()));
        self.state = State::Dragging(*dragged);
        intents.extend(self.drag(now, scene));
        intents
    }

    fn drag(&mut self, spot: &Spot, scene: &Scene<'_>) -> Vec<Intent> {
        self.spot = Some(spot.clone());
        match &mut self.state {
            State::Framing(framing) => {
                framing.to = spot.at;
                Vec::new()
            }
            State::Dragging(dragged) => preview(dragged.change(spot, scene)),
            State::Idle | State::SettingCopies(_) => Vec::new(),
        }
    }

    fn finish(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        match std::mem::take(&mut self.state) {
            State::Idle => Vec::new(),
            State::SettingCopies(_) => vec![Intent::Commit { then: Then::SelectMade }],
            State::Dragging(dragged) => vec![Intent::Commit { then: dragged.then() }],
            State::Framing(framing) => {
                let mut selection = Selection::default();
                if self.spot.as_ref().is_some_and(|spot| spot.held.shift) {
                    selection = scene.selection.clone();
                }
                selection.add(framing.taken(scene.plan));
                vec![Intent::Select(selection)]
            }
        }
    }

    /// What is drawn over the sheet.
    pub fn sketch(&self, scene: &Scene<'_>) -> Sketch {
        match &self.state {
            State::Idle => Sketch { lines: self.corner_square(scene).into_iter().collect(), ..Sketch::default() },
            State::SettingCopies(copies) => Sketch { card: copies.card(), ..Sketch::default() },
            State::Framing(framing) => {
                let (role, word) = if framing.takes_touched() {
                    (LineRole::BoxTouched, "takes what it touches")
                } else {
                    (LineRole::BoxInside, "takes what lies wholly inside")
                };
                let box_line = SketchLine { points: framing.corners().to_vec(), closed: true, role };
                Sketch { lines: vec![box_line], word: Some(word.to_owned()), ..Sketch::default() }
            }
            State::Dragging(dragged) => Sketch {
                card: dragged.card(scene),
                caught: match dragged {
                    Dragged::Units(units) => units.caught(),
                    Dragged::Outline(outline) => outline.caught(),
                    Dragged::Underlay(underlay) => underlay.caught(),
                    Dragged::Slew(_) | Dragged::Setback(_) | Dragged::Copies(_) => None,
                },
                lines: dragged.before(scene.plan),
                ..Sketch::default()
            },
        }
    }
}

impl SelectTool {
    fn corner_square(&self, scene: &Scene<'_>) -> Option<SketchLine> {
        let (_, half) = self.corner?;
        let edge = self.picked_corner(scene.plan, scene.selection)?;
        let place = scene.plan.find_edge(edge)?;
        let at = place.ring.ends(place.index).0;
        let sides = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
        let points = sides.map(|(x, y)| at + DVec2::new(x, y) * half).to_vec();
        Some(SketchLine { points, closed: true, role: LineRole::Drawn })
    }
}

fn preview(change: Option<Change>) -> Vec<Intent> {
    change.map(Intent::Preview).into_iter().collect()
}

fn capitalized(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::Handle;
    use crate::tools::gesture::Held;
    use crate::tools::{Typed, witness};
    use gantline_plan::change::History;
    use gantline_plan::document::{Plan, Standing};

    fn spot(x: f64, y: f64, hits: &[Hit]) -> Spot {
        Spot { at: DVec2::new(x, y), m_per_pt: 0.02, held: Held::default(), hits: hits.to_vec() }
    }

    fn scene<'a>(plan: &'a Plan, selection: &'a Selection, typed: Typed) -> Scene<'a> {
        Scene { plan, selection, hand: None, hand_setback_m: 1.2, level: None, lines: &witness::NO_LINES, typed }
    }

    /// Carries intents out on a history, as the editor does.
    fn carry_out(history: &mut History, intents: &[Intent]) {
        for intent in intents {
            match intent {
                Intent::Begin(name) => history.begin(name),
                Intent::Preview(change) => history.preview(change).unwrap(),
                Intent::Commit { .. } => history.commit(),
                Intent::Abandon => history.abandon(),
                _ => {}
            }
        }
    }

    fn unit(plan: &Plan, index: usize) -> PlacementId {
        *plan.placements.keys().nth(index).unwrap()
    }

    fn along_and_setback(plan: &Plan, unit: PlacementId) -> (f64, f64) {
        match &plan.placements[&unit].stands {
            Standing::OnEdge { station, setback_m, .. } => (station.along_m(30.0), *setback_m),
            Standing::Free { .. } => panic!("stands free"),
        }
    }

    #[test]
    fn a_click_selects_the_first_hit_and_again_the_one_below() {
        let plan = witness::with_units(&[4.0]);
        let hits = [Hit::Unit(unit(&plan, 0)), Hit::Edge(witness::south_edge(&plan))];
        let mut tool = SelectTool::default();
        let nothing = Selection::default();
        let told = tool.step(&GestureEvent::Click(spot(4.0, 1.2, &hits)), &scene(&plan, &nothing, Typed::default()));
        let first = Selection::of([ThingId::Placement(unit(&plan, 0))]);
        assert_eq!(told, vec![Intent::Select(first.clone())]);
        let told = tool.step(&GestureEvent::Click(spot(4.0, 1.2, &hits)), &scene(&plan, &first, Typed::default()));
        assert_eq!(told, vec![Intent::Select(Selection::of([ThingId::Edge(witness::south_edge(&plan))]))]);
    }

    #[test]
    fn a_dragged_unit_keeps_its_distance_to_the_pointer_and_is_one_step_of_undo() {
        let plan = witness::with_units(&[4.0]);
        let id = unit(&plan, 0);
        let mut history = History::new(plan.clone());
        let selection = Selection::default();
        let scene = scene(&plan, &selection, Typed::default());
        let mut tool = SelectTool::default();
        // Pressed 0.12 m beside the mast; carried 3.5 m along and 1 m inward.
        let hits = [Hit::Unit(id)];
        let from = spot(4.12, 1.2, &hits);
        let told = tool.step(&GestureEvent::DragStart { from, now: spot(4.3, 1.2, &hits) }, &scene);
        carry_out(&mut history, &told);
        for step in 1..=60 {
            let share = f64::from(step) / 60.0;
            let told = tool.step(&GestureEvent::Drag(spot(4.12 + 3.5 * share, 1.2 + share, &hits)), &scene);
            carry_out(&mut history, &told);
        }
        let told = tool.step(&GestureEvent::Drop(spot(7.62, 2.2, &hits)), &scene);
        carry_out(&mut history, &told);
        let (along, setback) = along_and_setback(history.plan(), id);
        assert!((along - 7.5).abs() < 1e-9 && (setback - 2.2).abs() < 1e-9, "{along} {setback}");
        assert!(history.undo());
        assert_eq!(**history.plan(), plan);
        assert!(!history.undo());
    }

    #[test]
    fn escape_in_the_middle_of_a_drag_gives_the_plan_back_to_the_bit() {
        let plan = witness::with_units(&[4.0, 9.0]);
        let id = unit(&plan, 0);
        let mut history = History::new(plan.clone());
        let selection = Selection::of([ThingId::Placement(id), ThingId::Placement(unit(&plan, 1))]);
        let scene = scene(&plan, &selection, Typed::default());
        let mut tool = SelectTool::default();
        let hits = [Hit::Unit(id)];
        let told =
            tool.step(&GestureEvent::DragStart { from: spot(4.0, 1.2, &hits), now: spot(5.0, 1.9, &hits) }, &scene);
        carry_out(&mut history, &told);
        assert_ne!(**history.plan(), plan);
        let told = tool.step(&GestureEvent::Key(GestureKey::Escape), &scene);
        carry_out(&mut history, &told);
        assert_eq!(**history.plan(), plan);
        assert!(!tool.is_busy());
    }

    #[test]
    fn units_dragged_together_go_by_the_same_way() {
        let plan = witness::with_units(&[4.0, 9.0]);
        let (first, second) = (unit(&plan, 0), unit(&plan, 1));
        let mut history = History::new(plan.clone());
        let selection = Selection::of([ThingId::Placement(first), ThingId::Placement(second)]);
        let scene = scene(&plan, &selection, Typed::default());
        let mut tool = SelectTool::default();
        let hits = [Hit::Unit(first)];
        let from = spot(4.0, 1.2, &hits);
        carry_out(&mut history, &tool.step(&GestureEvent::DragStart { from, now: spot(4.5, 1.2, &hits) }, &scene));
        carry_out(&mut history, &tool.step(&GestureEvent::Drop(spot(6.0, 1.2, &hits)), &scene));
        assert!((along_and_setback(history.plan(), first).0 - 6.0).abs() < 1e-9);
        assert!((along_and_setback(history.plan(), second).0 - 11.0).abs() < 1e-9);
    }

    #[test]
    fn a_typed_figure_holds_while_the_pointer_moves_on() {
        let plan = witness::with_units(&[4.0]);
        let id = unit(&plan, 0);
        let mut history = History::new(plan.clone());
        let selection = Selection::default();
        let mut tool = SelectTool::default();
        let hits = [Hit::Unit(id)];
        let free = scene(&plan, &selection, Typed::default());
        let from = spot(4.0, 1.2, &hits);
        carry_out(&mut history, &tool.step(&GestureEvent::DragStart { from, now: spot(5.0, 1.2, &hits) }, &free));
        let typed = scene(&plan, &selection, Typed::of(Some(12.34), None));
        carry_out(&mut history, &tool.renew(&typed));
        carry_out(&mut history, &tool.step(&GestureEvent::Drag(spot(8.0, 1.9, &hits)), &typed));
        carry_out(&mut history, &tool.step(&GestureEvent::Key(GestureKey::Enter), &typed));
        let (along, setback) = along_and_setback(history.plan(), id);
        assert!((along - 12.34).abs() < 1e-12 && (setback - 1.9).abs() < 1e-9);
    }

    #[test]
    fn a_roof_s_edge_moves_only_while_the_roof_is_selected() {
        let plan = witness::rectangle_plan();
        let edge = witness::south_edge(&plan);
        let roof = plan.find_edge(edge).unwrap().roof_id;
        let hits = [Hit::Edge(edge), Hit::Roof(roof)];
        let start = GestureEvent::DragStart { from: spot(8.0, 0.0, &hits), now: spot(8.0, -0.9, &hits) };
        let nothing = Selection::default();
        let told = SelectTool::default().step(&start, &scene(&plan, &nothing, Typed::default()));
        assert!(told.is_empty(), "a box begins: {told:?}");
        let selected = Selection::of([ThingId::Roof(roof)]);
        let told = SelectTool::default().step(&start, &scene(&plan, &selected, Typed::default()));
        let [Intent::Begin("move edge"), Intent::Preview(Change::MoveEdge { by, .. })] = told.as_slice() else {
            panic!("{told:?}");
        };
        assert!(by.distance(DVec2::new(0.0, -0.9)) < 1e-12);
    }

    #[test]
    fn a_locked_unit_is_not_dragged_and_says_so() {
        let plan = witness::with_units(&[4.0]);
        let id = unit(&plan, 0);
        let patch = gantline_plan::change::PlacementPatch { locked: Some(true), ..Default::default() };
        let plan = gantline_plan::change::apply(&plan, &Change::SetPlacements(vec![id], patch)).unwrap().plan;
        let hits = [Hit::Unit(id)];
        let start = GestureEvent::DragStart { from: spot(4.0, 1.2, &hits), now: spot(5.0, 1.2, &hits) };
        let nothing = Selection::default();
        let told = SelectTool::default().step(&start, &scene(&plan, &nothing, Typed::default()));
        assert_eq!(told, vec![Intent::Refuse(Refused::Locked(ThingId::Placement(id)))]);
    }

    #[test]
    fn copies_are_drawn_out_at_the_pitch_of_the_neighbor() {
        let plan = witness::with_units(&[4.0, 6.5]);
        let id = unit(&plan, 1);
        let mut history = History::new(plan.clone());
        let selection = Selection::of([ThingId::Placement(id)]);
        let scene = scene(&plan, &selection, Typed::default());
        let mut tool = SelectTool::default();
        let hits = [Hit::Handle(Handle::Copy(id))];
        let from = spot(7.0, 1.2, &hits);
        carry_out(&mut history, &tool.step(&GestureEvent::DragStart { from, now: spot(7.5, 1.2, &hits) }, &scene));
        // Three pitches of 2.5 m, and a little.
        carry_out(&mut history, &tool.step(&GestureEvent::Drop(spot(14.9, 1.2, &hits)), &scene));
        let stations: Vec<f64> =
            history.plan().placements.keys().map(|&id| along_and_setback(history.plan(), id).0).collect();
        let expected = [4.0, 6.5, 9.0, 11.5, 14.0];
        assert_eq!(stations.len(), expected.len());
        assert!(stations.iter().zip(expected).all(|(found, expected)| (found - expected).abs() < 1e-9), "{stations:?}");
    }
}
