//! Marks: what a drawing is made of. Each has a shape in meters, a layer, and the thing it is about.

use gantline_plan::document::ThingId;
pub use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::pen::Pen;
use crate::text::Text;

/// One mark of a drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// What covers what.
    pub layer: Layer,
    /// The thing it is about, so that pointing at it finds the thing.
    pub about: Option<ThingId>,
    /// How loudly it is drawn.
    pub stress: Stress,
    /// What is drawn.
    pub shape: Shape,
}

/// How loudly a mark is drawn.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stress {
    /// In the background.
    Faint,
    /// As its pen says.
    #[default]
    Plain,
    /// Heavier: its thing is selected.
    Selected,
}

/// What is drawn, in meters.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A line.
    Line(Line),
    /// An area.
    Area(Area),
    /// A text.
    Text(Text),
}

/// A line through points; arcs are lines of many points.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its points in order, m.
    pub points: Vec<DVec2>,
    /// Whether it goes on from the last point to the first.
    pub closed: bool,
    /// Its pen.
    pub pen: Pen,
}

/// An area with holes; it covers what lies below it unless it is only hatched.
#[derive(Debug, Clone, PartialEq)]
pub struct Area {
    /// Its rings.
    pub polygon: Polygon,
    /// What fills it.
    pub fill: Fill,
    /// The pen of its rings, if they are drawn.
    pub edge: Option<Pen>,
}

/// What fills an area.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fill {
    /// The paper itself, to cover what lies below.
    Paper,
    /// Solid, in a pen's ink: arrow heads, ticks.
    Ink(Pen),
    /// A hatch, over the tint that goes with it.
    Hatch(Hatch),
}

impl Mark {
    /// A mark about nothing, drawn plainly.
    pub fn new(layer: Layer, shape: Shape) -> Self {
        Self { layer, about: None, stress: Stress::Plain, shape }
    }

    /// An open line.
    pub fn line(layer: Layer, pen: Pen, points: Vec<DVec2>) -> Self {
        Self::new(layer, Shape::Line(Line { points, closed: false, pen }))
    }

    /// A closed line.
    pub fn ring(layer: Layer, pen: Pen, points: Vec<DVec2>) -> Self {
        Self::new(layer, Shape::Line(Line { points, closed: true, pen }))
    }

    /// An area.
    pub fn area(layer: Layer, fill: Fill, edge: Option<Pen>, polygon: Polygon) -> Self {
        Self::new(layer, Shape::Area(Area { polygon, fill, edge }))
    }

    /// A text.
    pub fn text(layer: Layer, text: Text) -> Self {
        Self::new(layer, Shape::Text(text))
    }

    /// The same mark, about a thing.
    #[must_use]
    pub fn about(mut self, thing: ThingId) -> Self {
        self.about = Some(thing);
        self
    }

    /// The same mark, drawn so loudly.
    #[must_use]
    pub fn stressed(mut self, stress: Stress) -> Self {
        self.stress = stress;
        self
    }
}
