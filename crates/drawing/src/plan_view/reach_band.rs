//! Reach in plan: a band outside each facade that needs access, with what is reached over the whole height, over a part of
//! it, and by no one; each stretch with its length.

use gantline_plan::assess::{Assessment, FacadeAssessment};
use gantline_plan::document::{Plan, ThingId};
use gantline_plan::geometry::facade::Facade;
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::geometry::spans::{Span, Spans};
use gantline_plan::quantity;
use glam::DVec2;

use super::options::PlanViewOptions;
use crate::dimension::{DimensionLine, Measured, chain, depth_mm, readable};
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::{Fill, Mark, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::{Across, Anchor, Text, TextStyle, Up, width_mm};

/// From the facade's face to the band, paper mm.
const AWAY_MM: f64 = 1.0;
/// Width of the band, paper mm.
const WIDE_MM: f64 = 2.2;
/// From the facade's face to the line with the lengths, paper mm.
const LENGTHS_MM: f64 = 6.6;
/// The word before a stretch that is reached over a part of the height.
const PART: &str = "part ";
/// The word before a stretch that no one reaches.
const GAP: &str = "gap ";

/// Marks of the reach along one facade.
pub fn reach_marks(
    plan: &Plan,
    assessment: &Assessment,
    facade: &FacadeAssessment,
    options: &PlanViewOptions,
) -> Vec<Mark> {
    let band = Band::of(plan, &facade.facade);
    let mut pencil = Pencil::about(options.scale, ThingId::Edge(facade.facade.key), Stress::Plain);
    if !facade.facade.data.needs_access {
        let whole = Spans::one(0.0, facade.facade.line.length_m);
        band.fill(&mut pencil, &whole, Hatch::NoAccess, Some(Pen::Background));
        return pencil.done();
    }
    let stretches = Stretches::of(assessment, facade);
    band.fill(&mut pencil, &stretches.whole, Hatch::Reach, Some(Pen::Reach));
    band.fill(&mut pencil, &stretches.in_part, Hatch::ReachInPart, Some(Pen::Reach));
    band.fill(&mut pencil, &stretches.gaps, Hatch::Gap, Some(Pen::Gap));
    if !options.is_coarse() {
        lengths(&mut pencil, &band, &stretches, options);
    }
    pencil.done()
}

/// The three kinds of stretches along a facade.
struct Stretches {
    whole: Spans,
    in_part: Spans,
    gaps: Spans,
}

impl Stretches {
    fn of(assessment: &Assessment, facade: &FacadeAssessment) -> Self {
        let length = facade.facade.line.length_m;
        let all = Spans::one(0.0, length);
        let served = facade.served_by.iter().filter_map(|id| assessment.units.get(id)).flat_map(|unit| &unit.serves);
        let any = served
            .filter(|served| served.facade == facade.facade.key)
            .fold(Spans::none(), |any, served| any.union(&served.any_depth));
        let whole = facade.full_height.intersect(&all);
        Self { in_part: any.intersect(&all).minus(&whole), gaps: all.minus(&any).minus(&whole), whole }
    }

    /// All stretches in order, each with the word before its length.
    fn in_order(&self) -> Vec<(Span, &'static str)> {
        let named = |spans: &Spans, word: &'static str| spans.iter().map(|span| (span, word)).collect::<Vec<_>>();
        let mut all = named(&self.whole, "");
        all.extend(named(&self.in_part, PART));
        all.extend(named(&self.gaps, GAP));
        all.sort_by(|a, b| a.0.from_m.total_cmp(&b.0.from_m));
        all
    }
}

/// Lengths of stretches in a chain; of a facade with one stretch only as a word along it.
fn lengths(pencil: &mut Pencil, band: &Band, stretches: &Stretches, options: &PlanViewOptions) {
    if let [(span, word)] = stretches.in_order()[..] {
        let words = format!("{word}{}", quantity::length(span.length_m(), options.units));
        along(pencil, band, span, words);
        return;
    }
    let (line, measured) = chain_of(band, stretches, options);
    chain(pencil, Layer::Dimension, line, &measured);
}

/// A word along the middle of a stretch, outside the band.
fn along(pencil: &mut Pencil, band: &Band, span: Span, words: String) {
    let scale = pencil.scale;
    let angle = readable(band.line.along.to_angle());
    let up = DVec2::from_angle(angle).perp();
    let rises_outward = up.dot(band.line.outward) > 0.0;
    let anchor = Anchor { across: Across::Middle, up: if rises_outward { Up::Baseline } else { Up::CapTop } };
    let at = band.point(span.from_m.midpoint(span.to_m), scale.m(AWAY_MM + WIDE_MM + 0.9));
    let mut text = Text::new(words, at, anchor, TextStyle::Dimension, Pen::Dimension);
    text.rotation_rad = angle;
    pencil.text_on_paper(Layer::Dimension, text);
}

/// The line of the lengths, and what is measured on it: every gap, and other stretches that have room for their figure.
fn chain_of(band: &Band, stretches: &Stretches, options: &PlanViewOptions) -> (DimensionLine, Vec<Measured>) {
    let scale = options.scale;
    let point = |s: f64| band.point(s, 0.0) + band.line.outward * scale.m(AWAY_MM + WIDE_MM - 0.6);
    let measured = stretches
        .in_order()
        .into_iter()
        .map(|(span, word)| (span, word, format!("{word}{}", quantity::length(span.length_m(), options.units))))
        .filter(|(span, word, words)| {
            *word == GAP || scale.mm(span.length_m()) > width_mm(words, TextStyle::Dimension) + 2.0
        })
        .map(|(span, _, words)| Measured::new(point(span.from_m), point(span.to_m), words))
        .collect();
    let through = band.point(0.0, scale.m(LENGTHS_MM));
    (DimensionLine { through, along: band.line.along }, measured)
}

/// How far the reach along a facade takes room outside its face, paper mm: where a further chain may begin.
pub(super) fn depth_taken_mm(
    plan: &Plan,
    assessment: &Assessment,
    facade: &FacadeAssessment,
    options: &PlanViewOptions,
) -> f64 {
    let stretches = Stretches::of(assessment, facade);
    if !facade.facade.data.needs_access || stretches.in_order().len() < 2 {
        return LENGTHS_MM;
    }
    let (line, measured) = chain_of(&Band::of(plan, &facade.facade), &stretches, options);
    LENGTHS_MM + depth_mm(options.scale, line, &measured)
}

/// The strip outside a facade, cut slanting where another facade meets it at an inner corner.
pub(super) struct Band {
    pub(super) line: EdgeLine,
    offset_m: f64,
    /// How much the band shortens at its start for each meter outside, as the inner corner asks.
    slant_start: f64,
    /// The same at its end.
    slant_end: f64,
}

impl Band {
    pub(super) fn of(plan: &Plan, facade: &Facade) -> Self {
        let line = facade.line;
        let offset_m = facade.data.profile.first().map_or(0.0, |step| step.offset_m.max(0.0));
        let (slant_start, slant_end) = slants(plan, facade);
        Self { line, offset_m, slant_start, slant_end }
    }

    /// A point along the facade and outside its face.
    pub(super) fn point(&self, along_m: f64, outside_m: f64) -> DVec2 {
        self.line.point(along_m, -(self.offset_m + outside_m))
    }

    fn fill(&self, pencil: &mut Pencil, spans: &Spans, hatch: Hatch, edge: Option<Pen>) {
        let (near, far) = (pencil.scale.m(AWAY_MM), pencil.scale.m(AWAY_MM + WIDE_MM));
        for span in spans.iter() {
            let corner = |along: f64, outside: f64| {
                let from_face = outside + self.offset_m;
                let first = self.slant_start * from_face;
                let last = self.line.length_m - self.slant_end * from_face;
                self.point(along.max(first).min(last), outside)
            };
            let outer =
                [corner(span.from_m, near), corner(span.to_m, near), corner(span.to_m, far), corner(span.from_m, far)];
            pencil.area(Layer::Reach, Fill::Hatch(hatch), edge, outer);
        }
    }
}

/// Tangents of half the turns into inner corners at both ends; zero at outer corners.
fn slants(plan: &Plan, facade: &Facade) -> (f64, f64) {
    let (Some(first), Some(last)) = (facade.edges.first(), facade.edges.last()) else { return (0.0, 0.0) };
    let slant = |edge, back: bool| {
        let place = plan.find_edge(edge)?;
        let count = place.ring.len();
        let other = if back { place.index + count - 1 } else { place.index + 1 };
        let (a, b) = place.ring.ends(other);
        let beside = EdgeLine::between(a, b);
        let turn = facade.line.along.perp_dot(beside.along) * if back { -1.0 } else { 1.0 };
        // Turning right leads into a corner whose outside is the narrow side.
        let half = turn.atan2(facade.line.along.dot(beside.along)) / 2.0;
        (half < 0.0).then(|| (-half).tan().min(4.0))
    };
    (slant(first.edge, true).unwrap_or(0.0), slant(last.edge, false).unwrap_or(0.0))
}
