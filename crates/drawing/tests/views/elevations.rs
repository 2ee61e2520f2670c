//! Elevations.

use gantline_drawing::{Drawing, ElevationOptions, Fill, Hatch, Scale, Shape, elevation};
use gantline_plan::assess::Assessment;
use gantline_plan::document::{EdgeId, ThingId};
use gantline_plan::geometry::rings::signed_area_m2;

use crate::read_back::{dimensions_mm, overlapping_texts};
use crate::sample::assessed;

/// The long facade with four units.
fn south(assessment: &Assessment) -> EdgeId {
    *assessment.facades.iter().find(|(_, found)| found.served_by.len() == 4).unwrap().0
}

/// Area of everything in a hatch, holes taken off; regions of one unit don't overlap in the sample.
fn hatched_m2(drawing: &Drawing, hatch: Hatch) -> f64 {
    let polygons = drawing.marks.iter().filter_map(|mark| match &mark.shape {
        Shape::Area(area) if area.fill == Fill::Hatch(hatch) => Some(&area.polygon),
        Shape::Area(_) | Shape::Line(_) | Shape::Text(_) => None,
    });
    polygons
        .map(|p| signed_area_m2(&p.outer).abs() - p.holes.iter().map(|h| signed_area_m2(h).abs()).sum::<f64>())
        .sum()
}

#[test]
fn what_is_hatched_as_reached_and_as_gap_fills_the_face() {
    let (sample, assessment) = assessed();
    let key = south(assessment);
    let drawing = elevation(&sample.plan, assessment, key, &ElevationOptions::at(Scale::one_to(150.0))).unwrap();
    let (reached, gaps) = (hatched_m2(&drawing, Hatch::Reach), hatched_m2(&drawing, Hatch::Gap));
    // 34 m by 19.3 m. Regions of neighbors do not overlap here; corners are exact to the polygon grid.
    assert!((reached + gaps - 34.0 * 19.3).abs() < 1e-3, "{reached} and {gaps}");
    let words = format!("{:.1} m² of 656.2 m² reached", assessment.facades[&key].covered_m2);
    assert!(drawing.words().any(|found| found == words), "{words}");
}

#[test]
fn distances_run_along_the_facade_and_its_levels_are_written() {
    let (sample, assessment) = assessed();
    let key = south(assessment);
    let drawing = elevation(&sample.plan, assessment, key, &ElevationOptions::at(Scale::one_to(150.0))).unwrap();
    let dimensions = dimensions_mm(&drawing);
    for millimeters in [4500, 6500, 6200, 8800, 8000, 34_000] {
        assert!(dimensions.contains(&millimeters), "{millimeters}");
    }
    for words in ["+19.300 m", "+18.400 m", "0.000 m", "B-01", "B-04", "Facade to the south, Main roof"] {
        assert!(drawing.words().any(|found| found == words), "{words}");
    }
}

#[test]
fn no_text_of_an_elevation_stands_on_another() {
    let (sample, assessment) = assessed();
    for &key in assessment.facades.keys() {
        for one_to in [100.0, 150.0, 250.0] {
            let options = ElevationOptions::at(Scale::one_to(one_to));
            let drawing = elevation(&sample.plan, assessment, key, &options).unwrap();
            assert_eq!(overlapping_texts(&drawing), [], "{key} at 1:{one_to}");
        }
    }
}

#[test]
fn a_selected_units_regions_are_drawn_last_among_the_reached() {
    let (sample, assessment) = assessed();
    let key = south(assessment);
    let thing = ThingId::Placement(sample.placed[0]);
    let mut options = ElevationOptions::at(Scale::one_to(150.0));
    options.selected.insert(thing);
    let drawing = elevation(&sample.plan, assessment, key, &options).unwrap();
    let reached = |mark: &&gantline_drawing::Mark| matches!(&mark.shape, Shape::Area(area) if area.fill == Fill::Hatch(Hatch::Reach));
    assert_eq!(drawing.marks.iter().rfind(reached).unwrap().about, Some(thing));
}

#[test]
fn an_edge_that_begins_no_facade_has_no_elevation() {
    let (sample, assessment) = assessed();
    let options = ElevationOptions::at(Scale::one_to(150.0));
    assert_eq!(elevation(&sample.plan, assessment, EdgeId::from_number(9999), &options), None);
}
