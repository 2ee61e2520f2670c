//! Plan views.

use std::collections::BTreeSet;

use gantline_drawing::label::LabelPlaces;
use gantline_drawing::plan_view::plan_view_keeping;
use gantline_drawing::{
    Drawing, Fill, Layer, OverlaySet, Pen, PlanViewOptions, Polygon, Scale, Shape, Shown, Stress, plan_view,
};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::change::{Change, PlacementPatch, apply};
use gantline_plan::document::ThingId;
use glam::DVec2;

use crate::read_back::{dimensions_mm, lines, overlap, overlapping_texts, texts};
use crate::sample::{assessed, courtyard_house};

/// Frames of labels: areas of paper with an edge.
fn frames(drawing: &Drawing) -> Vec<[DVec2; 4]> {
    let label_layers = [Layer::Tag, Layer::Reading, Layer::Conflict, Layer::Lettering];
    let area = |polygon: &Polygon| <[DVec2; 4]>::try_from(polygon.outer.as_slice()).ok();
    drawing
        .marks
        .iter()
        .filter(|mark| label_layers.contains(&mark.layer))
        .filter_map(|mark| match &mark.shape {
            Shape::Area(found) if found.fill == Fill::Paper && found.edge.is_some() => area(&found.polygon),
            Shape::Area(_) | Shape::Line(_) | Shape::Text(_) => None,
        })
        .collect()
}

#[test]
fn the_same_plan_gives_the_same_drawing() {
    let (sample, assessment) = assessed();
    let options = PlanViewOptions::at(Scale::one_to(100.0));
    let drawing = plan_view(&sample.plan, assessment, &options);
    let again = courtyard_house();
    let assessment = assess(&again.plan, &mut Memo::new());
    assert_eq!(drawing, plan_view(&again.plan, &assessment, &options));
}

#[test]
fn no_text_stands_on_another_and_no_label_on_a_label_at_any_scale() {
    let (sample, assessment) = assessed();
    for one_to in [50.0, 100.0, 150.0, 200.0] {
        for set in OverlaySet::ALL {
            let mut options = PlanViewOptions::at(Scale::one_to(one_to));
            options.shown = set.shown();
            let drawing = plan_view(&sample.plan, assessment, &options);
            assert_eq!(overlapping_texts(&drawing), [], "1:{one_to}, {}", set.name());
            let frames = frames(&drawing);
            assert!(frames.len() >= sample.placed.len(), "1:{one_to}, {}: {}", set.name(), frames.len());
            for (index, one) in frames.iter().enumerate() {
                assert!(frames[index + 1..].iter().all(|other| !overlap(one, other)), "1:{one_to}, {}", set.name());
            }
        }
    }
}

#[test]
fn every_unit_and_every_roof_is_named() {
    let (sample, assessment) = assessed();
    let drawing = plan_view(&sample.plan, assessment, &PlanViewOptions::at(Scale::one_to(150.0)));
    let words: BTreeSet<&str> = drawing.words().collect();
    for name in [
        "B-01",
        "B-02",
        "B-03",
        "B-04",
        "B-05",
        "B-06",
        "B-07",
        "B-08",
        "Main roof",
        "Low roof",
        "+18.400 m",
        "+9.200 m",
        "Plant room",
        "2.800 m over slab",
    ] {
        assert!(words.contains(name), "{name}");
    }
}

#[test]
fn setting_out_runs_from_end_to_end_through_every_unit_of_an_edge() {
    let (sample, assessment) = assessed();
    let mut options = PlanViewOptions::at(Scale::one_to(150.0));
    options.shown = OverlaySet::Reactions.shown();
    let drawing = plan_view(&sample.plan, assessment, &options);
    // South 34.0 with units at 4.5, 11, 17.2, 26; inner 14 at 5; north 20 at 9; west 26 at 8; courtyard 8 at 4.
    let mut expected = vec![4500, 6500, 6200, 8800, 8000, 5000, 9000, 9000, 11000, 8000, 18000, 4000, 4000];
    expected.sort_unstable();
    assert_eq!(dimensions_mm(&drawing), expected);
}

#[test]
fn a_selected_unit_is_heavier_and_alone_has_its_setback_and_neighbors_written() {
    let (sample, assessment) = assessed();
    let thing = ThingId::Placement(sample.placed[1]);
    let mut options = PlanViewOptions::at(Scale::one_to(100.0));
    options.shown = OverlaySet::Reactions.shown();
    options.selected.insert(thing);
    let drawing = plan_view(&sample.plan, assessment, &options);
    // From the start to B-01, on to B-02, to B-03, and from there to the end: 34 - 17.2. Setback 1.0; the outer anchors of
    // the flush plate stand 0.185 in front of the mast, 0.815 from the edge.
    assert_eq!(dimensions_mm(&drawing), [815, 1000, 4500, 6200, 6500, 16800]);
    let heavy: BTreeSet<Option<ThingId>> =
        drawing.marks.iter().filter(|mark| mark.stress == Stress::Selected).map(|mark| mark.about).collect();
    assert_eq!(heavy, BTreeSet::from([Some(thing)]));
}

#[test]
fn gaps_and_covered_stretches_add_up_to_the_facade() {
    let (sample, assessment) = assessed();
    let mut options = PlanViewOptions::at(Scale::one_to(20.0));
    options.shown = Shown::of([gantline_drawing::Overlay::Reach]);
    let drawing = plan_view(&sample.plan, assessment, &options);
    // At this scale every stretch has room for its figure. South 34, east of main 14, inner 14 and 12, north 20, west 26,
    // courtyard 4 × 8, low roof south 12 and east 10: what needs access.
    let total: i64 = dimensions_mm(&drawing).iter().sum();
    let expected = 34_000 + 14_000 + 14_000 + 12_000 + 20_000 + 26_000 + 32_000 + 12_000 + 10_000;
    // Each figure is rounded to a millimeter.
    assert!((total - expected).abs() <= 30, "{total} against {expected}");
}

#[test]
fn from_afar_a_unit_is_a_tick_and_its_tag() {
    let (sample, assessment) = assessed();
    let drawing = plan_view(&sample.plan, assessment, &PlanViewOptions::at(Scale::one_to(1200.0)));
    assert!(texts(&drawing).iter().all(|text| !text.words.ends_with(" m") || text.words.starts_with('+')));
    for id in &sample.placed {
        let about = Some(ThingId::Placement(*id));
        let own = drawing.marks.iter().filter(|mark| mark.about == about && mark.layer == Layer::Unit).count();
        assert_eq!(own, 2);
    }
}

#[test]
fn labels_keep_their_places_while_another_unit_is_moved() {
    let (sample, assessment) = assessed();
    let options = PlanViewOptions::at(Scale::one_to(150.0));
    let first = plan_view_keeping(&sample.plan, assessment, &options, &LabelPlaces::new());
    let patch = PlacementPatch { along_m: Some(9.05), ..PlacementPatch::default() };
    let moved = apply(&sample.plan, &Change::SetPlacements(vec![sample.placed[5]], patch)).unwrap().plan;
    let assessment = assess(&moved, &mut Memo::new());
    let second = plan_view_keeping(&moved, &assessment, &options, &first.places);
    for (key, place) in &first.places {
        if key.0 != ThingId::Placement(sample.placed[5]) {
            assert_eq!(second.places.get(key), Some(place), "{key:?}");
        }
    }
}

#[test]
fn the_drawings_box_holds_every_point_and_every_letter() {
    let (sample, assessment) = assessed();
    let drawing = plan_view(&sample.plan, assessment, &PlanViewOptions::at(Scale::one_to(150.0)));
    let bounds = drawing.bounds().unwrap();
    let inside = |point: DVec2| point.cmpge(bounds.min_m).all() && point.cmple(bounds.max_m).all();
    for mark in &drawing.marks {
        let all_inside = match &mark.shape {
            Shape::Line(line) => line.points.iter().all(|&point| inside(point)),
            Shape::Area(area) => area.polygon.outer.iter().all(|&point| inside(point)),
            Shape::Text(text) => text.corners(drawing.scale).into_iter().all(inside),
        };
        assert!(all_inside, "{mark:?}");
    }
}

#[test]
fn the_edge_of_a_low_roof_under_a_high_one_is_drawn_hidden() {
    let mut sample = courtyard_house();
    let outline = [(30.0, 2.0), (40.0, 2.0), (40.0, 6.0), (30.0, 6.0)].map(|(x, y)| DVec2::new(x, y)).to_vec();
    let low = Change::AddRoof { name: "Canopy".to_owned(), level_m: 4.0, outline };
    sample.plan = apply(&sample.plan, &low).unwrap().plan;
    let assessment = assess(&sample.plan, &mut Memo::new());
    let mut options = PlanViewOptions::at(Scale::one_to(100.0));
    options.shown = Shown::NONE;
    let drawing = plan_view(&sample.plan, &assessment, &options);
    // The canopy's corner at (30, 2) lies under the main roof, which ends at x = 34.
    let under = |points: &&[DVec2]| points.contains(&DVec2::new(30.0, 2.0));
    assert!(lines(&drawing, Pen::Hidden).iter().any(under));
    assert!(!lines(&drawing, Pen::SlabEdge).iter().any(under));
}
