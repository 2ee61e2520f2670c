//! Places for labels, so that none stands on another or on what is taken.

use glam::DVec2;

use super::boxed::{Label, LabelPlaces, PlacedLabel};
use crate::scale::Scale;
use crate::taken::{Taken, TakenBox};

/// From one try to the next away from the thing, paper mm.
const STEP_MM: f64 = 3.0;
/// How many steps away are tried.
const STEPS: u32 = 14;
/// Directions tried first, as turns from the preferred one, degrees.
const FORWARD_DEG: [f64; 7] = [0.0, 30.0, -30.0, 60.0, -60.0, 90.0, -90.0];
/// Directions tried after them.
const BACKWARD_DEG: [f64; 5] = [120.0, -120.0, 150.0, -150.0, 180.0];
/// A leader may run over so much of its own thing, paper mm.
const OWN_PARTS_MM: f64 = 12.0;

/// Places labels: each at its place of before if that is still free, else as near as it can on its preferred side, else
/// anywhere near. Those that find room nearby are set before those that must go farther. Boxes taken are added to what is
/// taken already.
pub fn place(labels: Vec<Label>, taken: &mut Taken, before: &LabelPlaces, scale: Scale) -> Vec<PlacedLabel> {
    let mut waiting: Vec<Waiting> = labels.into_iter().map(|label| Waiting::new(label, scale)).collect();
    for one in &mut waiting {
        let kept = before.get(&one.label.key).copied().filter(|offset| one.is_free(*offset, taken));
        one.take(kept, taken);
    }
    for round in ROUNDS {
        for one in waiting.iter_mut().filter(|one| one.offset.is_none()) {
            let found = round.places(&one.label, one.size).find(|offset| one.is_free(*offset, taken));
            one.take(found, taken);
        }
    }
    for one in waiting.iter_mut().filter(|one| one.offset.is_none() && !one.label.optional) {
        let found = one.beside_others(taken);
        one.take(found, taken);
    }
    waiting.into_iter().filter_map(|one| Some(PlacedLabel { label: one.label, offset_mm: one.offset? })).collect()
}

/// A label with what is asked for at every place tried, worked out once.
struct Waiting {
    label: Label,
    /// Width and height of its box, paper mm.
    size: DVec2,
    /// The point it speaks of, paper mm.
    point: DVec2,
    offset: Option<DVec2>,
}

impl Waiting {
    fn new(label: Label, scale: Scale) -> Self {
        Self { size: label.size_mm(), point: label.point / scale.m_per_mm, label, offset: None }
    }

    fn is_free(&self, offset: DVec2, taken: &Taken) -> bool {
        if !taken.is_free(&TakenBox::around(self.point + offset, self.size)) {
            return false;
        }
        let near_mm = self.label.away_mm.max(OWN_PARTS_MM);
        !leader_is_long(&self.label, offset, self.size) || taken.line_is_free(self.point, self.point + offset, near_mm)
    }

    /// Where nothing is free, leader and all: a leader over something else is better than a box on it.
    fn beside_others(&self, taken: &Taken) -> Option<DVec2> {
        let free = |offset: &DVec2| taken.is_free(&TakenBox::around(self.point + *offset, self.size));
        let mut all = ROUNDS.iter().flat_map(|round| round.places(&self.label, self.size));
        all.find(free).or_else(|| ROUNDS[0].places(&self.label, self.size).next())
    }

    /// Notes a place found and takes its box.
    fn take(&mut self, found: Option<DVec2>, taken: &mut Taken) {
        if let Some(found) = found {
            taken.add(TakenBox::around(self.point + found, self.size));
            self.offset = Some(found);
        }
    }
}

/// A share of the places to try.
#[derive(Clone, Copy)]
struct Round {
    steps: (u32, u32),
    fan: &'static [f64],
}

/// The preferred side nearby, then all around nearby, then farther off.
const ROUNDS: [Round; 4] = [
    Round { steps: (0, 5), fan: &FORWARD_DEG },
    Round { steps: (0, 3), fan: &BACKWARD_DEG },
    Round { steps: (5, STEPS), fan: &FORWARD_DEG },
    Round { steps: (3, STEPS), fan: &BACKWARD_DEG },
];

impl Round {
    /// Its places, nearest first.
    fn places(self, label: &Label, size: DVec2) -> impl Iterator<Item = DVec2> {
        let (prefers, away_mm) = (label.prefers, label.away_mm);
        (self.steps.0..self.steps.1).flat_map(move |step| {
            self.fan.iter().map(move |degrees| {
                let direction = DVec2::from_angle(degrees.to_radians()).rotate(prefers);
                // The box touches the circle of that radius from outside.
                direction * (away_mm + f64::from(step) * STEP_MM) + sides(direction) * size / 2.0
            })
        })
    }
}

/// Whether the label stands so far off that it needs a leader.
pub(super) fn leader_is_long(label: &Label, offset: DVec2, size: DVec2) -> bool {
    gap_mm(offset, size) > label.away_mm + STEP_MM / 2.0
}

/// From the labeled point to the box, paper mm; zero inside.
fn gap_mm(offset: DVec2, size: DVec2) -> f64 {
    (offset.abs() - size / 2.0).max(DVec2::ZERO).length()
}

/// Signs of both parts, zero where a part is next to nothing, so that a box straight above stands centered.
fn sides(direction: DVec2) -> DVec2 {
    let sign = |part: f64| if part.abs() < 0.2 { 0.0 } else { part.signum() };
    DVec2::new(sign(direction.x), sign(direction.y))
}

/// Where the labels stand, for the next drawing.
pub fn places_of(placed: &[PlacedLabel]) -> LabelPlaces {
    placed.iter().map(|one| (one.label.key, one.offset_mm)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::label::{LabelKind, Row, label_marks};
    use crate::mark::Stress;
    use crate::pen::Pen;
    use crate::text::TextStyle;
    use gantline_plan::document::PlacementId;
    use gantline_plan::document::ThingId;
    use proptest::prelude::*;

    fn tag(number: u64, point: DVec2) -> Label {
        Label {
            key: (ThingId::Placement(PlacementId::from_number(number)), LabelKind::Tag),
            point,
            prefers: DVec2::Y,
            away_mm: 2.0,
            rows: vec![Row::words(format!("B-{number:02}"), TextStyle::Tag)],
            pen: Pen::TagFrame,
            stress: Stress::Plain,
            optional: true,
        }
    }

    fn boxes(placed: &[PlacedLabel], scale: Scale) -> Vec<TakenBox> {
        placed
            .iter()
            .map(|one| TakenBox::around(one.label.point / scale.m_per_mm + one.offset_mm, one.label.size_mm()))
            .collect()
    }

    proptest! {
        /// Boxes are held against each other one by one.
        #[test]
        fn no_two_labels_overlap(places in proptest::collection::vec((0.0..20.0_f64, 0.0..20.0_f64), 1..40)) {
            let scale = Scale::one_to(250.0);
            let labels = (1..).zip(&places).map(|(n, &(x, y))| tag(n, DVec2::new(x, y))).collect();
            let placed = place(labels, &mut Taken::new(), &LabelPlaces::new(), scale);
            let boxes = boxes(&placed, scale);
            for (i, one) in boxes.iter().enumerate() {
                for other in &boxes[i + 1..] {
                    prop_assert!(!one.meets(other), "{one:?} on {other:?}");
                }
            }
        }
    }

    #[test]
    fn a_label_keeps_its_place_while_its_thing_moves() {
        let scale = Scale::one_to(100.0);
        let first = place(
            vec![tag(1, DVec2::ZERO), tag(2, DVec2::new(0.3, 0.0))],
            &mut Taken::new(),
            &LabelPlaces::new(),
            scale,
        );
        let before = places_of(&first);
        let moved = place(
            vec![tag(1, DVec2::new(-5.0, 0.0)), tag(2, DVec2::new(0.31, 0.0))],
            &mut Taken::new(),
            &before,
            scale,
        );
        // Nothing is in the way of the second one any more, and still it stays where it stood.
        assert_eq!(places_of(&moved), before);
    }

    #[test]
    fn a_label_that_must_be_shown_is_shown_in_any_crowd() {
        let scale = Scale::one_to(100.0);
        let mut taken = Taken::new();
        taken.add(TakenBox::around(DVec2::ZERO, DVec2::splat(400.0)));
        assert!(place(vec![tag(1, DVec2::ZERO)], &mut taken, &LabelPlaces::new(), scale).is_empty());
        let must = Label { optional: false, ..tag(1, DVec2::ZERO) };
        assert_eq!(place(vec![must], &mut taken, &LabelPlaces::new(), scale).len(), 1);
    }

    #[test]
    fn the_box_holds_all_its_words() {
        let scale = Scale::one_to(100.0);
        let mut label = tag(1, DVec2::ZERO);
        label.rows = vec![
            Row::words("ultimate, one person", TextStyle::Note),
            Row::figure("down", "12.21 kN"),
            Row::figure("moment", "113.84 kNm"),
        ];
        let placed = PlacedLabel { label, offset_mm: DVec2::new(20.0, 9.0) };
        let half = placed.label.size_mm() / 2.0;
        for mark in label_marks(&placed, scale) {
            if let crate::mark::Shape::Text(text) = mark.shape {
                for corner in text.corners(scale) {
                    let from_center = (corner / scale.m_per_mm - placed.offset_mm).abs();
                    assert!(from_center.x < half.x && from_center.y < half.y, "{text:?}");
                }
            }
        }
    }
}
