//! A pencil: gathers marks about one thing, on whichever layer they belong.

use std::f64::consts::TAU;

use gantline_plan::document::ThingId;
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use crate::layer::Layer;
use crate::mark::{Fill, Mark, Stress};
use crate::pen::Pen;
use crate::scale::Scale;
use crate::text::{Anchor, Text, TextStyle};

/// Farthest that a drawn arc may lie from the true one, paper mm: less than a fine line's width.
const ARC_ERROR_MM: f64 = 0.05;

/// Gathers marks.
#[derive(Debug)]
pub struct Pencil {
    /// The drawing's scale.
    pub scale: Scale,
    /// The thing that marks are about from here on.
    pub about: Option<ThingId>,
    /// How loudly marks are drawn from here on.
    pub stress: Stress,
    marks: Vec<Mark>,
}

impl Pencil {
    /// A pencil about nothing.
    pub fn new(scale: Scale) -> Self {
        Self { scale, about: None, stress: Stress::Plain, marks: Vec::new() }
    }

    /// A pencil about a thing.
    pub fn about(scale: Scale, thing: ThingId, stress: Stress) -> Self {
        Self { scale, about: Some(thing), stress, marks: Vec::new() }
    }

    /// The marks gathered.
    pub fn done(self) -> Vec<Mark> {
        self.marks
    }

    /// The marks gathered so far.
    pub fn marks(&self) -> &[Mark] {
        &self.marks
    }

    /// Adds marks as they are.
    pub fn extend(&mut self, marks: impl IntoIterator<Item = Mark>) {
        self.marks.extend(marks);
    }

    fn push(&mut self, mut mark: Mark) {
        mark.about = self.about;
        mark.stress = self.stress;
        self.marks.push(mark);
    }

    /// An open line.
    pub fn line(&mut self, layer: Layer, pen: Pen, points: impl Into<Vec<DVec2>>) {
        self.push(Mark::line(layer, pen, points.into()));
    }

    /// A closed line.
    pub fn ring(&mut self, layer: Layer, pen: Pen, points: impl Into<Vec<DVec2>>) {
        self.push(Mark::ring(layer, pen, points.into()));
    }

    /// An area without holes.
    pub fn area(&mut self, layer: Layer, fill: Fill, edge: Option<Pen>, outer: impl Into<Vec<DVec2>>) {
        self.push(Mark::area(layer, fill, edge, Polygon::simple(outer.into())));
    }

    /// An area with holes.
    pub fn polygon(&mut self, layer: Layer, fill: Fill, edge: Option<Pen>, polygon: Polygon) {
        self.push(Mark::area(layer, fill, edge, polygon));
    }

    /// A circle as an area.
    pub fn disc(&mut self, layer: Layer, fill: Fill, edge: Option<Pen>, center: DVec2, radius_m: f64) {
        let ring = self.arc(center, radius_m, 0.0, TAU);
        self.area(layer, fill, edge, &ring[..ring.len() - 1]);
    }

    /// A text that is not turned.
    pub fn text(&mut self, layer: Layer, words: impl Into<String>, at: DVec2, anchor: Anchor, style: TextStyle) {
        self.push(Mark::text(layer, Text::new(words, at, anchor, style, Pen::Lettering)));
    }

    /// A text as made.
    pub fn lettering(&mut self, layer: Layer, text: Text) {
        self.push(Mark::text(layer, text));
    }

    /// A text on a piece of paper that covers what lies below.
    pub fn text_on_paper(&mut self, layer: Layer, text: Text) {
        let margin = self.scale.m(0.5);
        let [a, b, c, d] = text.corners(self.scale);
        let (along, up) = ((b - a).normalize_or_zero() * margin, (d - a).normalize_or_zero() * margin);
        self.area(layer, Fill::Paper, None, [a - along - up, b + along - up, c + along + up, d - along + up]);
        self.lettering(layer, text);
    }

    /// Points of an arc, both ends included, fine enough for the drawing's scale.
    pub fn arc(&self, center: DVec2, radius_m: f64, from_rad: f64, to_rad: f64) -> Vec<DVec2> {
        let error = (self.scale.m(ARC_ERROR_MM) / radius_m.max(1e-9)).min(0.5);
        let step = 2.0 * (1.0 - error).acos();
        let count = ((to_rad - from_rad).abs() / step).ceil().clamp(1.0, 360.0);
        (0..=count as u32)
            .map(|index| {
                let angle = from_rad + (to_rad - from_rad) * f64::from(index) / count;
                center + DVec2::from_angle(angle) * radius_m
            })
            .collect()
    }

    /// A filled arrow head with its point here, pointing along a unit vector.
    pub fn arrow_head(&mut self, layer: Layer, pen: Pen, point: DVec2, along: DVec2) {
        let (length, half) = (self.scale.m(2.6), self.scale.m(0.7));
        let back = point - along * length;
        self.area(layer, Fill::Ink(pen), None, [point, back + along.perp() * half, back - along.perp() * half]);
    }

    /// An arrow from one point to another.
    pub fn arrow(&mut self, layer: Layer, pen: Pen, from: DVec2, to: DVec2) {
        let along = (to - from).normalize_or_zero();
        self.line(layer, pen, [from, to - along * self.scale.m(2.0)]);
        self.arrow_head(layer, pen, to, along);
    }
}
