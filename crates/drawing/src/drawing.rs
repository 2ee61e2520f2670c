//! A drawing: marks in meters, made for one scale, painted in the order of their layers.

use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use crate::mark::{Mark, Shape};
use crate::scale::Scale;

/// A drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// The scale it was made for.
    pub scale: Scale,
    /// Its marks in the order in which they are painted.
    pub marks: Vec<Mark>,
}

impl Drawing {
    /// A drawing of these marks, brought into the order of their layers.
    pub fn of(scale: Scale, mut marks: Vec<Mark>) -> Self {
        marks.sort_by_key(|mark| mark.layer);
        Self { scale, marks }
    }

    /// The box around everything, texts included; none for an empty drawing.
    pub fn bounds(&self) -> Option<Bounds> {
        Bounds::of(self.marks.iter().flat_map(|mark| extent(&mark.shape, self.scale)))
    }

    /// All words on it, in order.
    pub fn words(&self) -> impl Iterator<Item = &str> {
        self.marks.iter().filter_map(|mark| match &mark.shape {
            Shape::Text(text) => Some(text.words.as_str()),
            Shape::Line(_) | Shape::Area(_) => None,
        })
    }
}

/// Points that span a shape.
fn extent(shape: &Shape, scale: Scale) -> Vec<DVec2> {
    match shape {
        Shape::Line(line) => line.points.clone(),
        Shape::Area(area) => area.polygon.outer.clone(),
        Shape::Text(text) => text.corners(scale).to_vec(),
    }
}
