//! Views of the whole building.

use gantline_drawing::{BuildingOptions, Fill, Hatch, Scale, Shape, building};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::change::{Change, apply};
use gantline_plan::document::{RoofId, ThingId};
use glam::DVec2;

use crate::sample::{assessed, empty_plan};

/// Roofs in the order in which their tops are painted.
fn painted(roofs: &[(f64, [(f64, f64); 4])]) -> (Vec<RoofId>, Vec<RoofId>) {
    let mut plan = empty_plan();
    for &(level_m, corners) in roofs {
        let outline = corners.map(|(x, y)| DVec2::new(x, y)).to_vec();
        plan = apply(&plan, &Change::AddRoof { name: String::new(), level_m, outline }).unwrap().plan;
    }
    let assessment = assess(&plan, &mut Memo::new());
    let drawing = building(&plan, &assessment, &BuildingOptions::at(Scale::one_to(300.0))).unwrap();
    let tops = drawing.marks.iter().filter_map(|mark| match (&mark.shape, mark.about) {
        (Shape::Area(area), Some(ThingId::Roof(id))) if area.fill == Fill::Hatch(Hatch::Roof) => Some(id),
        _ => None,
    });
    (plan.roofs.keys().copied().collect(), tops.collect())
}

const fn block(x: f64, y: f64, side: f64) -> [(f64, f64); 4] {
    [(x, y), (x + side, y), (x + side, y + side), (x, y + side)]
}

#[test]
fn a_block_behind_is_painted_first_whichever_is_higher() {
    // One looks toward growing x and y: the block at (0, 0) stands in front.
    for (front, behind) in [(5.0, 20.0), (20.0, 5.0)] {
        let (ids, order) = painted(&[(front, block(0.0, 0.0, 10.0)), (behind, block(0.0, 10.0, 10.0))]);
        assert_eq!(order, [ids[1], ids[0]]);
    }
}

#[test]
fn what_stands_on_a_roof_is_painted_after_it() {
    let (ids, order) = painted(&[(14.0, block(6.0, 6.0, 4.0)), (10.0, block(0.0, 0.0, 12.0))]);
    assert_eq!(order, [ids[1], ids[0]]);
}

#[test]
fn a_building_shows_its_levels_and_a_plan_without_roofs_shows_nothing() {
    let (sample, assessment) = assessed();
    let options = BuildingOptions::at(Scale::one_to(300.0));
    let drawing = building(&sample.plan, assessment, &options).unwrap();
    for words in ["Main roof", "+18.400 m", "Low roof", "+9.200 m"] {
        assert!(drawing.words().any(|found| found == words), "{words}");
    }
    let empty = empty_plan();
    let assessment = assess(&empty, &mut Memo::new());
    assert_eq!(building(&empty, &assessment, &options), None);
}
