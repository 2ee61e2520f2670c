//! The unit tool always has a make-up in hand; its ghost stands on the nearest edge before the click.

use gantline_plan::change::Change;
use gantline_plan::document::{EdgeId, Standing};
use gantline_plan::geometry::frame::EdgeLine;
use glam::DVec2;

use super::gesture::{GestureEvent, GestureKey, Held as Keys, Spot};
use super::sketch::{CardLine, Sketch};
use super::snap::Caught;
use super::standing::{Held, OnEdge, edge_near, free, on_edge};
use super::{Asked, Scene};
use crate::intent::Intent;

/// The unit tool.
#[derive(Debug, Clone, Default)]
pub struct UnitTool {
    spot: Option<Spot>,
    aim: Option<Aim>,
    /// The edge that a press has taken: the ghost slides along it until the button goes up.
    sliding: Option<EdgeId>,
}

#[derive(Debug, Clone, PartialEq)]
enum Aim {
    Edge(OnEdge),
    Free(Standing),
}

impl UnitTool {
    /// Whether a press slides the ghost.
    pub fn is_busy(&self) -> bool {
        self.sliding.is_some()
    }

    /// What can be typed now.
    pub fn asks(&self) -> Vec<Asked> {
        vec![Asked::length("along"), Asked::length("setback")]
    }

    /// What it waits for, for the status line.
    pub fn waits_for(&self) -> String {
        match &self.aim {
            Some(Aim::Edge(_)) if self.is_busy() => "Unit: slide along the edge, let go to set it.",
            Some(Aim::Edge(_)) => "Unit: click to set it, type its distance along, M A B change mast, arm, brace.",
            Some(Aim::Free(_)) => "Unit: it would stand free here and serves nothing yet.",
            None => "Unit: point at an edge.",
        }
        .to_owned()
    }

    /// One event.
    pub fn step(&mut self, event: &GestureEvent, scene: &Scene<'_>) -> Vec<Intent> {
        match event {
            GestureEvent::Hover(spot) | GestureEvent::Drag(spot) => {
                self.spot = Some(spot.clone());
                self.ghost(scene)
            }
            GestureEvent::Leave => {
                *self = Self::default();
                vec![Intent::Ghost(None)]
            }
            GestureEvent::DragStart { from, now } => {
                self.spot = Some(from.clone());
                self.aim_at(scene);
                if let Some(Aim::Edge(found)) = &self.aim {
                    self.sliding = Some(found.edge);
                }
                self.spot = Some(now.clone());
                self.ghost(scene)
            }
            GestureEvent::Click(spot) | GestureEvent::Drop(spot) => {
                self.spot = Some(spot.clone());
                self.aim_at(scene);
                self.sliding = None;
                self.place(scene)
            }
            GestureEvent::Key(GestureKey::Enter) => {
                self.aim_at(scene);
                self.place(scene)
            }
            GestureEvent::Key(GestureKey::Escape) => {
                self.sliding = None;
                Vec::new()
            }
            GestureEvent::Key(GestureKey::Backspace) => Vec::new(),
        }
    }

    /// Takes a new look with what is typed or in hand now.
    pub fn renew(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        self.ghost(scene)
    }

    fn aim_at(&mut self, scene: &Scene<'_>) {
        let Some(spot) = self.spot.clone().or_else(|| spot_on_selected_edge(scene)) else {
            self.aim = None;
            return;
        };
        let last = if let Some(Aim::Edge(found)) = &self.aim { found.caught } else { None };
        let edge = self.sliding.or_else(|| edge_near(scene, &spot));
        let on = edge.and_then(|edge| {
            let held = Held { setback_m: scene.hand_setback_m, setback_stays: true, without: &[], last: last.as_ref() };
            on_edge(scene.plan, edge, &spot, &held, scene.typed)
        });
        self.aim = on.map(Aim::Edge).or_else(|| free(scene, &spot).map(Aim::Free));
    }

    fn standing(&self, scene: &Scene<'_>) -> Option<Standing> {
        match self.aim.as_ref()? {
            Aim::Edge(found) => found.standing(scene.plan, 0.0),
            Aim::Free(standing) => Some(standing.clone()),
        }
    }

    fn change(&self, scene: &Scene<'_>) -> Option<Change> {
        let make_up = scene.hand?.clone();
        Some(Change::Place { make_up, stands: self.standing(scene)?, tag: None })
    }

    fn ghost(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        self.aim_at(scene);
        vec![Intent::Ghost(self.change(scene).map(Box::new))]
    }

    fn place(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        match self.change(scene) {
            Some(change) => vec![Intent::Ghost(None), Intent::make("place unit", change)],
            None => vec![Intent::Say("There is no roof here to stand on.".to_owned())],
        }
    }

    /// What is drawn over the sheet; the ghost itself is part of the shown plan.
    pub fn sketch(&self, _scene: &Scene<'_>) -> Sketch {
        let mut sketch = Sketch::default();
        match &self.aim {
            Some(Aim::Edge(found)) => {
                sketch.caught = found.caught;
                sketch.card =
                    vec![CardLine::length("along", found.along_m), CardLine::length("setback", found.setback_m)];
            }
            Some(Aim::Free(_)) => {
                sketch.card = vec![CardLine::word("stands", "free")];
                sketch.word = Some("serves nothing yet".to_owned());
            }
            None => {}
        }
        sketch
    }

    /// What has caught the ghost.
    pub fn caught(&self) -> Option<Caught> {
        if let Some(Aim::Edge(found)) = &self.aim { found.caught } else { None }
    }
}

/// Without a pointer the ghost stands in the middle of the selected edge, else of the first edge that needs access.
fn spot_on_selected_edge(scene: &Scene<'_>) -> Option<Spot> {
    let selected = scene.selection.edges().first().copied();
    let first = || scene.plan.edges().map(|place| place.edge()).find(|edge| edge.facade.needs_access).map(|e| e.id);
    let line = EdgeLine::of(scene.plan, selected.or_else(first)?)?;
    let at: DVec2 = line.point(line.length_m / 2.0, scene.hand_setback_m);
    Some(Spot { at, m_per_pt: 0.001, held: Keys { shift: false, alt: true }, hits: Vec::new() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::Selection;
    use crate::tools::Typed;
    use crate::tools::witness;
    use gantline_plan::catalog::MakeUp;
    use gantline_plan::document::{EdgeEnd, Plan, Station};

    fn spot(x: f64, y: f64) -> Spot {
        Spot { at: DVec2::new(x, y), m_per_pt: 0.02, held: Keys::default(), hits: Vec::new() }
    }

    fn scene<'a>(plan: &'a Plan, selection: &'a Selection, hand: &'a MakeUp, typed: Typed) -> Scene<'a> {
        Scene { plan, selection, hand: Some(hand), hand_setback_m: 1.2, level: None, lines: &witness::NO_LINES, typed }
    }

    fn placed(intents: &[Intent]) -> Standing {
        let place = |intent: &Intent| match intent {
            Intent::Change { change: Change::Place { stands, .. }, .. } => Some(stands.clone()),
            _ => None,
        };
        intents.iter().find_map(place).unwrap()
    }

    #[test]
    fn a_click_near_an_edge_places_square_to_it_at_the_hand_s_setback() {
        let plan = witness::rectangle_plan();
        let (selection, hand) = (Selection::default(), witness::make_up(&plan));
        let mut tool = UnitTool::default();
        let told = tool.step(&GestureEvent::Click(spot(4.02, 0.3)), &scene(&plan, &selection, &hand, Typed::default()));
        let station = Station { from: EdgeEnd::Start, distance_m: 4.0 };
        let edge = witness::south_edge(&plan);
        assert_eq!(placed(&told), Standing::OnEdge { edge, station, setback_m: 1.2, turn_rad: 0.0 });
    }

    #[test]
    fn a_typed_distance_and_enter_place_without_a_pointer_on_the_selected_edge() {
        let plan = witness::rectangle_plan();
        let edge = witness::south_edge(&plan);
        let selection = Selection::of([gantline_plan::document::ThingId::Edge(edge)]);
        let hand = witness::make_up(&plan);
        let mut tool = UnitTool::default();
        let typed = Typed::of(Some(12.5), None);
        let told = tool.step(&GestureEvent::Key(GestureKey::Enter), &scene(&plan, &selection, &hand, typed));
        let station = Station { from: EdgeEnd::Start, distance_m: 12.5 };
        assert_eq!(placed(&told), Standing::OnEdge { edge, station, setback_m: 1.2, turn_rad: 0.0 });
    }

    #[test]
    fn a_press_slides_along_the_edge_it_began_on_even_past_its_strip() {
        let plan = witness::rectangle_plan();
        let (selection, hand) = (Selection::default(), witness::make_up(&plan));
        let scene = scene(&plan, &selection, &hand, Typed::default());
        let mut tool = UnitTool::default();
        tool.step(&GestureEvent::DragStart { from: spot(4.0, 0.2), now: spot(5.0, 0.2) }, &scene);
        let told = tool.step(&GestureEvent::Drop(spot(8.01, 6.0)), &scene);
        let station = Station { from: EdgeEnd::Start, distance_m: 8.0 };
        let edge = witness::south_edge(&plan);
        assert_eq!(placed(&told), Standing::OnEdge { edge, station, setback_m: 1.2, turn_rad: 0.0 });
    }

    #[test]
    fn away_from_edges_it_stands_free_and_off_the_roof_nowhere() {
        let plan = witness::rectangle_plan();
        let (selection, hand) = (Selection::default(), witness::make_up(&plan));
        let scene = scene(&plan, &selection, &hand, Typed::default());
        let mut tool = UnitTool::default();
        let told = tool.step(&GestureEvent::Click(spot(15.0, 10.0)), &scene);
        assert!(matches!(placed(&told), Standing::Free { at, .. } if at == DVec2::new(15.0, 10.0)));
        let told = tool.step(&GestureEvent::Click(spot(60.0, 60.0)), &scene);
        assert!(matches!(told.as_slice(), [Intent::Say(_)]));
    }
}
