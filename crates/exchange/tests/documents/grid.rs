//! A plan keeps the grid of the drawing that its outline came from: what leaves lies on that drawing.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use gantline_exchange::documents::{DocumentKind, Wanted};
use gantline_exchange::dxf_drawing::DrawingUnit;
use gantline_exchange::outline::{Asked, Heights, KeptPlace, LineWork, Outlines, read};
use gantline_exchange::schedule::bases;
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::change::apply;
use gantline_plan::document::{Datum, Plan};
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use super::worked::{SMALL, Worked};

const HEIGHTS: Heights =
    Heights { roof_level_m: 12.0, lower_roof_level_m: 6.0, obstacle_from_m: 0.0, obstacle_to_m: 1.0 };

/// Everything on these layers of a drawing, in the drawing's own grid, m.
fn in_grid(work: &LineWork, layers: BTreeSet<usize>) -> Outlines {
    let place = Some(KeptPlace { origin_m: DVec2::ZERO, plane: None });
    // Far from the plan's origin nothing may lie, so one is chosen and added again.
    let asked = Asked { layers, unit: None, tolerance_m: 0.005, chord_m: 0.005, place: None };
    let mut found = work.outlines(&asked).unwrap();
    assert!(work.outlines(&Asked { place, ..asked }).is_err());
    let origin_m = found.origin_m;
    found.loops.iter_mut().flat_map(|one| &mut one.corners).for_each(|corner| *corner += origin_m);
    found
}

/// Witness: the drawing that the outline came from. Its coordinates are in the hundreds of thousands and millions of meters.
#[test]
fn an_outline_comes_back_on_itself_in_the_drawings_own_grid() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference/drawings/far_from_the_origin.dxf");
    let drawn = read(&fs::read(path).unwrap()).unwrap();
    let asked = Asked { layers: [0].into(), unit: None, tolerance_m: 0.005, chord_m: 0.005, place: None };
    let found = drawn.outlines(&asked).unwrap();
    let blank = Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode());
    let change = found.change(&blank, &found.usual_roles(), &HEIGHTS).unwrap();
    let worked = Worked::from(apply(&blank, &change).unwrap().plan);
    let first = in_grid(&drawn, [0].into());
    for drawing_unit in DrawingUnit::ALL {
        let wanted = Wanted { kinds: vec![DocumentKind::Drawing], drawing_unit, ..Wanted::all(UnitSystem::Si) };
        let again = read(&worked.documents(&wanted).remove(0).bytes).unwrap();
        let layer = again.layer("GL-OUTLINE-SLABEDGE").unwrap();
        let second = in_grid(&again, [layer].into());
        assert_eq!(second.loops.len(), first.loops.len());
        for (one, other) in first.loops.iter().zip(&second.loops) {
            assert_eq!(one.corners.len(), other.corners.len());
            for corner in &one.corners {
                let nearest = other.corners.iter().map(|at| at.distance(*corner)).fold(f64::MAX, f64::min);
                assert!(nearest < 1e-3, "{nearest} m beside itself in {drawing_unit:?}");
            }
        }
    }
}

/// Witness: the place in the plan and the origin, added by hand.
#[test]
fn bases_have_their_place_in_the_grid_where_the_plan_keeps_one() {
    let mut plan = Worked::of(SMALL).plan;
    let without = Worked::from(plan.clone());
    let keys = |worked: &Worked| -> Vec<&'static str> {
        bases::bases(&worked.plan, &worked.assessment).heads.iter().map(|head| head.key).collect()
    };
    assert!(!keys(&without).contains(&"grid_x"), "the plan's own coordinates are all there are");
    let grid_origin_m = DVec2::new(412_340.125, 5_654_320.5);
    plan.datum = Datum { grid_origin_m, ..plan.datum };
    let worked = Worked::from(plan);
    let table = String::from_utf8(worked.document(DocumentKind::Tables, UnitSystem::Si)).unwrap();
    let mut reader = ::csv::Reader::from_reader(table.as_bytes());
    let heads = reader.headers().unwrap().clone();
    let at = |head: &str| heads.iter().position(|one| one == head).unwrap();
    let (x, y) = (at("grid_x_m"), at("grid_y_m"));
    let mut seen = 0;
    for (line, unit) in reader.records().zip(worked.assessment.units.values()) {
        let line = line.unwrap();
        let read = DVec2::new(line[x].parse().unwrap(), line[y].parse().unwrap());
        assert!(read.distance(unit.frame.unwrap().at + grid_origin_m) < 1e-3, "{read}");
        seen += 1;
    }
    assert_eq!(seen, worked.plan.placements.len());
    let model = String::from_utf8(worked.document(DocumentKind::Model, UnitSystem::Si)).unwrap();
    let conversion = model.lines().find(|line| line.contains("=IFCMAPCONVERSION(")).unwrap();
    assert!(conversion.ends_with(",412340.125,5654320.5,0.,1.,0.,1.);"), "{conversion}");
    let model = String::from_utf8(without.document(DocumentKind::Model, UnitSystem::Si)).unwrap();
    assert!(!model.contains("IFCMAPCONVERSION"));
}
