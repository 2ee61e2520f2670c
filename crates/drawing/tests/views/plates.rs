//! Pictures of plates, read back and held against the states that they show.

use gantline_drawing::plate::{PlateOptions, plate, scale_for};
use gantline_drawing::text::Heading;
use gantline_drawing::{Drawing, Fill, Hatch, Pen, Scale, Shape};
use gantline_plan::assess::anchorage::{Fixed, Look, PlateState};
use gantline_plan::assess::{Assessment, Memo, assess};
use gantline_plan::catalog::ResolvedUnit;
use gantline_plan::change::{Change, PlacementPatch, apply};
use gantline_plan::document::PlacementId;
use gantline_plan::quantity::{UnitSystem, force, length};
use glam::DVec2;

use crate::read_back::{lines, overlapping_texts, texts};
use crate::sample::{Sample, sound_house};

/// The sheet that plates are drawn on, paper mm.
const SHEET_MM: DVec2 = DVec2::new(94.0, 62.0);

fn parts(assessment: &Assessment, id: PlacementId) -> &ResolvedUnit {
    assessment.units[&id].resolved.as_ref().unwrap()
}

fn fitted(assessment: &Assessment, id: PlacementId, of: Fixed) -> Option<Scale> {
    let unit = parts(assessment, id);
    let base = match of {
        Fixed::Base => &unit.base,
        Fixed::Foot => &unit.foot.as_ref()?.base,
    };
    Some(scale_for(base, SHEET_MM))
}

fn state(assessment: &Assessment, id: PlacementId, look: Look) -> &PlateState {
    let base = assessment.units[&id].base.as_ref().unwrap();
    base.uses.iter().find(|used| used.of == Fixed::Base && used.look == look).unwrap().state.as_ref().unwrap()
}

fn governing_look(assessment: &Assessment, id: PlacementId) -> Look {
    assessment.units[&id].base.as_ref().unwrap().governing().unwrap().look
}

fn drawn(sample: &Sample, assessment: &Assessment, unit: usize, look: Option<Look>) -> Drawing {
    let id = sample.placed[unit];
    let options = PlateOptions { look, ..PlateOptions::at(fitted(assessment, id, Fixed::Base).unwrap()) };
    plate(&sample.plan, assessment, id, &options).unwrap()
}

#[test]
fn every_anchor_has_its_number_and_a_pulled_one_its_tension() {
    let (sample, assessment) = sound_house();
    let id = sample.placed[0];
    let state = state(&assessment, id, governing_look(&assessment, id));
    let drawing = drawn(&sample, &assessment, 0, None);
    let words: Vec<&str> = drawing.words().collect();
    for (index, &pull_n) in state.tension_n.iter().enumerate() {
        let number = index + 1;
        let said =
            if pull_n > 0.5 { format!("{number}: {}", force(pull_n, UnitSystem::Si)) } else { number.to_string() };
        assert!(words.contains(&said.as_str()), "{said} is not in {words:?}");
    }
    assert!(state.tension_n.iter().any(|pull_n| *pull_n > 1e3));
}

#[test]
fn what_presses_and_the_neutral_axis_are_those_of_the_state() {
    let (sample, assessment) = sound_house();
    let id = sample.placed[0];
    let state = state(&assessment, id, governing_look(&assessment, id));
    let drawing = drawn(&sample, &assessment, 0, None);
    let pressed: Vec<&Vec<DVec2>> = drawing
        .marks
        .iter()
        .filter_map(|mark| match &mark.shape {
            Shape::Area(area) if area.fill == Fill::Hatch(Hatch::Pressed) => Some(&area.polygon.outer),
            Shape::Area(_) | Shape::Line(_) | Shape::Text(_) => None,
        })
        .collect();
    assert_eq!(pressed, [&state.pressed_m]);
    // The dashed line lies in the state's neutral axis: both of its ends do, to a thousandth of a millimeter.
    let [from, to] = state.neutral_axis_m.unwrap();
    let along = (to - from).normalize();
    let [axis] = lines(&drawing, Pen::Hidden)[..] else { panic!("one dashed line") };
    for end in axis {
        assert!((*end - from).perp_dot(along).abs() < 1e-6, "{end}");
    }
}

#[test]
fn the_nearest_edges_are_named_with_their_distance() {
    let (sample, assessment) = sound_house();
    let base = assessment.units[&sample.placed[0]].base.clone().unwrap();
    let drawing = drawn(&sample, &assessment, 0, None);
    // South edge, setback 0.85, outer anchors 0.185 in front of the mast: 0.665 m.
    assert!((base.edges[0].distance_m - 0.665).abs() < 1e-9);
    for edge in base.edges.iter().take(2) {
        let words = format!("edge {}", length(edge.distance_m, UnitSystem::Si));
        assert!(drawing.words().any(|found| found == words), "{words}");
    }
    assert!(drawing.words().any(|words| words == "edge 0.665 m"));
}

#[test]
fn another_look_has_the_state_that_brings_it() {
    let (sample, assessment) = sound_house();
    let id = sample.placed[0];
    let uses = &assessment.units[&id].base.as_ref().unwrap().uses;
    let slew = |look| state(&assessment, id, look).slew_rad;
    let governing = governing_look(&assessment, id);
    let other = uses.iter().filter(|used| used.state.is_some()).map(|used| used.look);
    let other = other.into_iter().find(|&look| (slew(look) - slew(governing)).abs() > 0.1).unwrap();
    assert_ne!(drawn(&sample, &assessment, 0, Some(other)), drawn(&sample, &assessment, 0, None));
}

#[test]
fn the_arm_as_drawn_turns_with_the_slew_and_nothing_else_does() {
    let (mut sample, assessment) = sound_house();
    let before = drawn(&sample, &assessment, 0, None);
    let patch = PlacementPatch { drawn_slew_rad: Some(-1.2), ..PlacementPatch::default() };
    sample.plan = apply(&sample.plan, &Change::SetPlacements(vec![sample.placed[0]], patch)).unwrap().plan;
    let assessment = assess(&sample.plan, &mut Memo::new());
    let after = drawn(&sample, &assessment, 0, None);
    let [ghost] = lines(&after, Pen::Ghost)[..] else { panic!("one arm as drawn") };
    // From the tube out at -1.2 rad: cos 0.3624, sin -0.9320 (hand values).
    let along = (ghost[1] - ghost[0]).normalize();
    assert!((along - DVec2::new(0.3624, -0.9320)).length() < 1e-3, "{along}");
    assert_ne!(lines(&before, Pen::Ghost), lines(&after, Pen::Ghost));
    assert_eq!(lines(&before, Pen::Hidden), lines(&after, Pen::Hidden));
}

#[test]
fn no_text_of_a_plate_stands_on_another_or_outside_its_sheet() {
    let (sample, assessment) = sound_house();
    for &id in &sample.placed {
        let Some(base) = &assessment.units[&id].base else { continue };
        for of in [Fixed::Base, Fixed::Foot] {
            let Some(scale) = fitted(&assessment, id, of) else { continue };
            let looks = base.uses.iter().filter(|used| used.of == of).map(|used| Some(used.look)).chain([None]);
            for look in looks {
                for units in [UnitSystem::Si, UnitSystem::UsCustomary] {
                    let within_mm = Some(SHEET_MM);
                    let options = PlateOptions {
                        units,
                        of,
                        look,
                        within_mm,
                        heading: Heading::LeftOut,
                        ..PlateOptions::at(scale)
                    };
                    let drawing = plate(&sample.plan, &assessment, id, &options).unwrap();
                    assert_eq!(overlapping_texts(&drawing), [], "{id}, {}, {look:?}", of.word());
                    for corner in texts(&drawing).iter().flat_map(|text| text.corners(scale)) {
                        let inside = (corner / scale.m_per_mm).abs().cmple(SHEET_MM / 2.0).all();
                        assert!(inside, "{id}, {}, {look:?}: {:?}", of.word(), drawing.words().collect::<Vec<_>>());
                    }
                }
            }
        }
    }
}

#[test]
fn a_foot_has_a_picture_of_its_own_and_a_unit_without_one_has_none() {
    let (sample, assessment) = sound_house();
    let options = |id, of| PlateOptions { of, ..PlateOptions::at(fitted(&assessment, id, Fixed::Base).unwrap()) };
    let footed = sample.placed[5];
    let drawing = plate(&sample.plan, &assessment, footed, &options(footed, Fixed::Foot)).unwrap();
    assert!(drawing.words().any(|words| words == "to the mast"));
    let other = sample.placed[0];
    assert_eq!(plate(&sample.plan, &assessment, other, &options(other, Fixed::Foot)), None);
}
