//! Hatches: areas named by what they mean, as sets of lines on paper, so that kinds are told apart in black and white.

use glam::DVec2;

use crate::mark::Polygon;
use crate::scale::Scale;

/// What an area means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hatch {
    /// The roof's surface in plan: a quiet ground without lines.
    Roof,
    /// Another roof than the one looked at.
    OtherRoof,
    /// Structural concrete, cut.
    Concrete,
    /// Insulation, membrane, paving over the slab, cut.
    BuildUp,
    /// A parapet: cut in section, seen from above in plan.
    Parapet,
    /// An obstacle.
    Obstacle,
    /// A part of a unit: a quiet ground without lines.
    Part,
    /// Reached; along an edge in plan: over the whole height.
    Reach,
    /// Reached over a part of the height.
    ReachInPart,
    /// Reached by no one.
    Gap,
    /// Swept by the arm.
    ClearZoneArm,
    /// Swept by a brace.
    ClearZoneBrace,
    /// Where the operator stands.
    Standing,
    /// Where the mast is laid down and tilted in.
    Erection,
    /// Where things run into each other.
    Conflict,
    /// A wall or facade that needs no access.
    NoAccess,
    /// A part of the slab with another thickness.
    SlabZone,
    /// A part of the slab where nothing may be drilled.
    NoDrill,
    /// A base used beyond its resistance.
    BaseOver,
    /// A base of which something was not checked.
    BaseUnchecked,
    /// The part of a plate that presses.
    Pressed,
    /// Structural steel, cut.
    Steel,
}

/// One set of parallel lines of a hatch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HatchLines {
    /// Direction of the lines, counter-clockwise from the drawing's x axis, degrees.
    pub angle_deg: f64,
    /// From line to line, paper mm.
    pub spacing_mm: f64,
    /// Width of the lines, paper mm.
    pub width_mm: f64,
    /// Lengths of line and space in turn, paper mm; empty for whole lines.
    pub dash_mm: &'static [f64],
}

const fn lines(angle_deg: f64, spacing_mm: f64, width_mm: f64, dash_mm: &'static [f64]) -> HatchLines {
    HatchLines { angle_deg, spacing_mm, width_mm, dash_mm }
}

const CONCRETE: [HatchLines; 2] = [lines(45.0, 1.7, 0.18, &[]), lines(45.0, 3.4, 0.18, &[1.0, 0.6])];
const BUILD_UP: [HatchLines; 2] = [lines(60.0, 1.5, 0.13, &[]), lines(-60.0, 1.5, 0.13, &[])];
const PARAPET: [HatchLines; 1] = [lines(45.0, 0.9, 0.13, &[])];
const REACH: [HatchLines; 1] = [lines(90.0, 1.1, 0.18, &[])];
const REACH_IN_PART: [HatchLines; 1] = [lines(90.0, 2.2, 0.13, &[0.9, 0.9])];
const GAP: [HatchLines; 2] = [lines(45.0, 1.8, 0.18, &[]), lines(-45.0, 1.8, 0.18, &[])];
const CLEAR_ARM: [HatchLines; 1] = [lines(30.0, 1.2, 0.13, &[])];
const CLEAR_BRACE: [HatchLines; 1] = [lines(-30.0, 1.0, 0.13, &[2.0, 0.8])];
const STANDING: [HatchLines; 2] = [lines(0.0, 2.0, 0.13, &[0.3, 1.7]), lines(90.0, 2.0, 0.13, &[0.3, 1.7])];
const ERECTION: [HatchLines; 1] = [lines(0.0, 2.6, 0.13, &[0.5, 2.1])];
const CONFLICT: [HatchLines; 2] = [lines(0.0, 0.8, 0.25, &[]), lines(90.0, 0.8, 0.25, &[])];
const NO_ACCESS: [HatchLines; 1] = [lines(-45.0, 2.0, 0.13, &[])];
const SLAB_ZONE: [HatchLines; 1] = [lines(45.0, 3.2, 0.13, &[0.7, 2.1])];
const NO_DRILL: [HatchLines; 1] = [lines(-30.0, 2.6, 0.25, &[3.6, 1.2])];
const BASE_OVER: [HatchLines; 1] = [lines(45.0, 0.7, 0.25, &[])];
const BASE_UNCHECKED: [HatchLines; 1] = [lines(90.0, 0.9, 0.18, &[0.5, 0.6])];
const PRESSED: [HatchLines; 1] = [lines(0.0, 1.0, 0.18, &[])];
const STEEL: [HatchLines; 1] = [lines(-45.0, 0.8, 0.18, &[])];

impl Hatch {
    /// All hatches.
    pub const ALL: [Self; 22] = [
        Self::Roof,
        Self::OtherRoof,
        Self::Concrete,
        Self::BuildUp,
        Self::Parapet,
        Self::Obstacle,
        Self::Part,
        Self::Reach,
        Self::ReachInPart,
        Self::Gap,
        Self::ClearZoneArm,
        Self::ClearZoneBrace,
        Self::Standing,
        Self::Erection,
        Self::Conflict,
        Self::NoAccess,
        Self::SlabZone,
        Self::NoDrill,
        Self::BaseOver,
        Self::BaseUnchecked,
        Self::Pressed,
        Self::Steel,
    ];

    /// Its sets of lines; none for a quiet ground.
    pub const fn lines(self) -> &'static [HatchLines] {
        match self {
            Self::Roof | Self::OtherRoof | Self::Obstacle | Self::Part => &[],
            Self::Concrete => &CONCRETE,
            Self::BuildUp => &BUILD_UP,
            Self::Parapet => &PARAPET,
            Self::Reach => &REACH,
            Self::ReachInPart => &REACH_IN_PART,
            Self::Gap => &GAP,
            Self::ClearZoneArm => &CLEAR_ARM,
            Self::ClearZoneBrace => &CLEAR_BRACE,
            Self::Standing => &STANDING,
            Self::Erection => &ERECTION,
            Self::Conflict => &CONFLICT,
            Self::NoAccess => &NO_ACCESS,
            Self::SlabZone => &SLAB_ZONE,
            Self::NoDrill => &NO_DRILL,
            Self::BaseOver => &BASE_OVER,
            Self::BaseUnchecked => &BASE_UNCHECKED,
            Self::Pressed => &PRESSED,
            Self::Steel => &STEEL,
        }
    }

    /// Its word in a legend.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Roof => "roof",
            Self::OtherRoof => "other roof",
            Self::Concrete => "structural concrete",
            Self::BuildUp => "build-up",
            Self::Parapet => "parapet",
            Self::Obstacle => "obstacle",
            Self::Part => "unit",
            Self::Reach => "reached",
            Self::ReachInPart => "reached over part of the height",
            Self::Gap => "not reached",
            Self::ClearZoneArm => "clear zone of the arm",
            Self::ClearZoneBrace => "clear zone of the brace",
            Self::Standing => "operator stands",
            Self::Erection => "mast is laid down",
            Self::Conflict => "conflict",
            Self::NoAccess => "needs no access",
            Self::SlabZone => "other slab thickness",
            Self::NoDrill => "no drilling",
            Self::BaseOver => "base over its resistance",
            Self::BaseUnchecked => "base not all checked",
            Self::Pressed => "pressed",
            Self::Steel => "structural steel",
        }
    }
}

/// A stroke of a hatch inside an area, with its width on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stroke {
    /// One end.
    pub from: DVec2,
    /// The other end.
    pub to: DVec2,
    /// Width, paper mm.
    pub width_mm: f64,
}

/// More lines than this are no hatch but a gray, and are left out.
const MOST_LINES: f64 = 4000.0;

/// The strokes of a hatch inside an area, dashes already cut.
///
/// Lines are counted from the drawing's origin, so that neighboring areas of one hatch fit together and a moved area
/// keeps its pattern in place. An area without corners, or so large that a set would need thousands of lines, gives none.
pub fn strokes(area: &Polygon, hatch: Hatch, scale: Scale) -> Vec<Stroke> {
    let mut all = Vec::new();
    for set in hatch.lines() {
        for (from, to) in clipped(area, set.angle_deg.to_radians(), scale.m(set.spacing_mm)) {
            dashed(from, to, set, scale, &mut all);
        }
    }
    all
}

/// Pieces of parallel lines inside the rings, by the even-odd rule.
fn clipped(area: &Polygon, angle_rad: f64, spacing_m: f64) -> Vec<(DVec2, DVec2)> {
    let along = DVec2::from_angle(angle_rad);
    let across = along.perp();
    let heights = || area.outer.iter().map(|corner| corner.dot(across));
    let low = heights().fold(f64::INFINITY, f64::min);
    let high = heights().fold(f64::NEG_INFINITY, f64::max);
    let count = (high - low) / spacing_m;
    if !count.is_finite() || count > MOST_LINES {
        return Vec::new();
    }
    let mut pieces = Vec::new();
    let mut line = (low / spacing_m).ceil();
    while line * spacing_m < high {
        let height = line * spacing_m;
        let mut cuts: Vec<f64> = area
            .segments()
            .filter_map(|(a, b)| {
                let (below, above) = (a.dot(across) - height, b.dot(across) - height);
                let crosses = (below < 0.0) != (above < 0.0);
                crosses.then(|| a.lerp(b, below / (below - above)).dot(along))
            })
            .collect();
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            pieces.push((along * pair[0] + across * height, along * pair[1] + across * height));
        }
        line += 1.0;
    }
    pieces
}

/// Cuts one line into dashes that are counted from the drawing's origin.
fn dashed(from: DVec2, to: DVec2, set: &HatchLines, scale: Scale, into: &mut Vec<Stroke>) {
    let period_m = scale.m(set.dash_mm.iter().sum());
    let length = from.distance(to);
    if set.dash_mm.is_empty() || period_m <= 0.0 || length / period_m > MOST_LINES {
        into.push(Stroke { from, to, width_mm: set.width_mm });
        return;
    }
    let along = (to - from) / length;
    let origin = from.dot(along);
    let end = origin + length;
    let mut at = (origin / period_m).floor() * period_m;
    while at < end {
        for (index, dash_mm) in set.dash_mm.iter().enumerate() {
            let next = at + scale.m(*dash_mm);
            let (a, b) = (at.max(origin), next.min(end));
            if index % 2 == 0 && b > a {
                let place = |t: f64| from + along * (t - origin);
                into.push(Stroke { from: place(a), to: place(b), width_mm: set.width_mm });
            }
            at = next;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length_of(strokes: &[Stroke]) -> f64 {
        strokes.iter().map(|stroke| stroke.from.distance(stroke.to)).sum()
    }

    /// Witness: parallel lines at spacing s fill an area A with a length of A / s, up to the lines at the rim.
    #[test]
    fn a_hatch_has_the_length_of_its_area_over_its_spacing_and_leaves_holes_free() {
        let mut area = Polygon::rectangle(DVec2::new(0.0, 0.0), DVec2::new(20.0, 10.0));
        area.holes.push(Polygon::rectangle(DVec2::new(5.0, 2.0), DVec2::new(15.0, 8.0)).outer);
        let scale = Scale::one_to(100.0);
        let drawn = length_of(&strokes(&area, Hatch::Parapet, scale));
        let expected = (200.0 - 60.0) / 0.09;
        assert!((drawn / expected - 1.0).abs() < 0.02, "{drawn} against {expected}");
        let in_hole = |p: DVec2| p.x > 5.001 && p.x < 14.999 && p.y > 2.001 && p.y < 7.999;
        assert!(strokes(&area, Hatch::Gap, scale).iter().all(|s| !in_hole(s.from.midpoint(s.to))));
    }

    #[test]
    fn dashes_cover_their_share_of_the_line() {
        let area = Polygon::rectangle(DVec2::ZERO, DVec2::new(30.0, 30.0));
        let scale = Scale::one_to(50.0);
        // Dash 2.0 of 2.8 mm at 1.0 mm spacing, from the hatch's own datum.
        let expected = 900.0 / scale.m(1.0) * 2.0 / 2.8;
        let drawn = length_of(&strokes(&area, Hatch::ClearZoneBrace, scale));
        assert!((drawn / expected - 1.0).abs() < 0.03, "{drawn} against {expected}");
    }

    #[test]
    fn an_area_without_corners_or_beyond_measure_gives_no_strokes() {
        let scale = Scale::one_to(100.0);
        assert!(strokes(&Polygon::simple(Vec::new()), Hatch::Gap, scale).is_empty());
        let vast = Polygon::rectangle(DVec2::ZERO, DVec2::splat(1e6));
        assert!(strokes(&vast, Hatch::Gap, scale).is_empty());
    }

    #[test]
    fn no_two_hatches_with_lines_look_alike() {
        let with_lines: Vec<Hatch> = Hatch::ALL.into_iter().filter(|hatch| !hatch.lines().is_empty()).collect();
        for (index, one) in with_lines.iter().enumerate() {
            for other in &with_lines[index + 1..] {
                assert_ne!(one.lines(), other.lines(), "{one:?} and {other:?}");
            }
        }
    }
}
