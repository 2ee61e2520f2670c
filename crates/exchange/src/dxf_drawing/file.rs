//! The whole file: sections in their order. Tables list what is drawn, so they are written after it and stand before it.

use gantline_drawing::{Drawing, Layer, Mark};
use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use super::blocks::{self, blocks_of, unit_of};
use super::entities::{Placing, mark};
use super::layers::{self, Layers, Look};
use super::pairs::{Pairs, in_code_page};
use super::{fixed, objects, tables};

/// The unit of the drawing.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum DrawingUnit {
    /// Meters.
    #[default]
    Meters,
    /// Millimeters.
    Millimeters,
}

impl DrawingUnit {
    const fn per_m(self) -> f64 {
        match self {
            Self::Meters => 1.0,
            Self::Millimeters => 1000.0,
        }
    }

    /// Its number in the format's list (DXF reference, $INSUNITS).
    const fn number(self) -> i64 {
        match self {
            Self::Meters => 6,
            Self::Millimeters => 4,
        }
    }
}

/// A plan view as the bytes of a DXF file, in the plan's own coordinates. `units` are those of the attributes' words.
pub fn dxf(
    (plan, assessment): (&Plan, &Assessment),
    drawing: &Drawing,
    unit: DrawingUnit,
    units: UnitSystem,
) -> Vec<u8> {
    let model = Placing {
        scale: drawing.scale,
        per_m: unit.per_m(),
        origin: DVec2::ZERO,
        turn_rad: 0.0,
        owner: fixed::MODEL_RECORD,
    };
    let mut layers = Layers::new();
    layers.insert(layers::UNITS.to_owned(), Look { color: 7, width: 30, dashes_of: None });
    let mut body = Pairs::new();
    let (blocks, references) = blocks_of(&mut body, (plan, assessment), drawing, &model, units);
    blocks::section(&mut body, &mut layers, &model, &blocks);
    body.section("ENTITIES");
    // What stands later covers what stands before: bases go where units have their place among the layers.
    let (below, above): (Vec<&Mark>, Vec<&Mark>) =
        drawing.marks.iter().filter(|one| unit_of(one).is_none()).partition(|one| one.layer <= Layer::Unit);
    for one in below {
        mark(&mut body, &mut layers, &model, one);
    }
    for one in &references {
        blocks::reference(&mut body, &model, &blocks, one);
    }
    for one in above {
        mark(&mut body, &mut layers, &model, one);
    }
    body.end_section();
    objects::objects(&mut body);
    body.word(0, "EOF");
    let bounds = bounds_in_units(drawing, unit.per_m());
    let (body, free) = body.done();
    let mut before = Pairs::continuing(free);
    tables::classes(&mut before);
    tables::tables(&mut before, &model, &layers, &blocks, bounds);
    let (before, free) = before.done();
    let mut header = Pairs::continuing(free);
    tables::header(&mut header, unit.number(), bounds, free);
    in_code_page(&(header.done().0 + &before + &body))
}

/// What the drawing fills; a square of one unit when there is nothing on it.
fn bounds_in_units(drawing: &Drawing, per_m: f64) -> Bounds {
    let bounds = drawing.bounds().unwrap_or(Bounds { min_m: DVec2::ZERO, max_m: DVec2::ONE });
    Bounds { min_m: bounds.min_m * per_m, max_m: bounds.max_m * per_m }
}
