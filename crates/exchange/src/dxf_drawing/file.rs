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
use crate::outline::LengthUnit;

/// The unit of the drawing.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum DrawingUnit {
    /// Meters.
    #[default]
    Meters,
    /// Millimeters.
    Millimeters,
    /// Inches.
    Inches,
    /// Feet.
    Feet,
}

impl DrawingUnit {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Meters, Self::Millimeters, Self::Inches, Self::Feet];

    const fn per_m(self) -> f64 {
        let unit = match self {
            Self::Meters => LengthUnit::Meter,
            Self::Millimeters => LengthUnit::Millimeter,
            Self::Inches => LengthUnit::Inch,
            Self::Feet => LengthUnit::Foot,
        };
        1.0 / unit.in_m()
    }

    /// Its number in the format's list (DXF reference, $INSUNITS).
    const fn number(self) -> i64 {
        match self {
            Self::Meters => 6,
            Self::Millimeters => 4,
            Self::Inches => 1,
            Self::Feet => 2,
        }
    }

    /// Whether patterns of the reader's own are those of inches or of millimeters (DXF reference, $MEASUREMENT).
    const fn measurement(self) -> i64 {
        match self {
            Self::Meters | Self::Millimeters => 1,
            Self::Inches | Self::Feet => 0,
        }
    }
}

/// A plan view as the bytes of a DXF file, in the grid of the drawing that the plan's outline came from, so that it lies on
/// that drawing; a plan without such a grid in its own coordinates. `units` are those of the attributes' words.
pub fn dxf(
    (plan, assessment): (&Plan, &Assessment),
    drawing: &Drawing,
    unit: DrawingUnit,
    units: UnitSystem,
) -> Vec<u8> {
    let model = Placing {
        scale: drawing.scale,
        per_m: unit.per_m(),
        // The grid's origin lies there in the plan.
        origin: -plan.datum.grid_origin_m,
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
    let bounds = bounds_in_units(drawing, &model);
    let (body, free) = body.done();
    let mut before = Pairs::continuing(free);
    tables::classes(&mut before);
    tables::tables(&mut before, &model, &layers, &blocks, bounds);
    let (before, free) = before.done();
    let mut header = Pairs::continuing(free);
    tables::header(&mut header, (unit.number(), unit.measurement()), bounds, free);
    in_code_page(&(header.done().0 + &before + &body))
}

/// What the drawing fills; a square of one unit when there is nothing on it.
fn bounds_in_units(drawing: &Drawing, model: &Placing) -> Bounds {
    let bounds = drawing.bounds().unwrap_or(Bounds { min_m: DVec2::ZERO, max_m: DVec2::ONE });
    Bounds { min_m: model.point(bounds.min_m), max_m: model.point(bounds.max_m) }
}
