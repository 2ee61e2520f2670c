//! Control perimeters at a distance from a loaded area, cut by free edges and openings in every way that may govern.
//!
//! The perimeter at distance r of a convex area is a convex ring. A free edge takes away all of it whose outward normal
//! points toward the edge and adds, from the two places left, straight lines square to the edge; so a plate at an edge gets
//! u = 2c₁ + c₂ + πr and at a corner c₁ + c₂ + πr/2 (EN 1992-1-1 figure 6.15). Whether a cut governs depends on the moment too, so every
//! set of cuts that is shorter than all with fewer cuts is kept. Arcs are chords with their ends on the circle: never longer than the arc.

use super::code::Corners;
use super::design::FreeEdge;
use super::fault::SlabFault;
use super::lines::{LineProperties, Piece};

/// Chords to a right angle: the perimeter is short by 0.01 % of its arcs.
const CHORDS: u32 = 32;
/// No more than this many edges, the nearest, are combined.
const MOST_EDGES: usize = 4;
/// A normal counts as square to an edge within this sine.
const SQUARE: f64 = 1e-9;
/// Pieces are halved to this share of the distance before openings are cut out.
const CUT_SHARE: f64 = 0.05;

/// What stands round the loaded area.
pub(super) struct Outline<'a> {
    pub loaded_m: &'a [[f64; 2]],
    pub edges: &'a [FreeEdge],
    pub openings_m: &'a [Vec<[f64; 2]>],
}

/// A perimeter, and the distance over which the loaded area itself is bounded by concrete.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ControlPerimeter {
    pub lines: LineProperties,
    /// Ends of its pieces from its centroid, m.
    pub ends_m: Vec<[f64; 2]>,
    /// Where the perimeter's middle lies from the base's reference, m, as far as that is away from the edges that cut it: lines that run
    /// far toward an edge are not trusted to draw the middle that way.
    pub offset_m: [f64; 2],
    /// Edges that cut it.
    pub cuts: usize,
    /// Length u₀ at the face of the loaded area with the same cuts, m.
    pub face_m: f64,
}

/// Every perimeter that some set of edges may leave, at distance `offset_m`.
pub(super) fn perimeters(
    outline: &Outline,
    offset_m: f64,
    corners: Corners,
    opening_reach_m: f64,
) -> Result<Vec<ControlPerimeter>, SlabFault> {
    let mut near: Vec<(f64, FreeEdge)> = outline.edges.iter().map(|e| (clear_m(outline.loaded_m, e), *e)).collect();
    near.sort_by(|a, b| a.0.total_cmp(&b.0));
    near.truncate(MOST_EDGES);
    let square = corners == Corners::Square && near.iter().all(|(_, edge)| lies_along(outline.loaded_m, edge));
    let ring = ring_at(outline.loaded_m, offset_m, square);
    let sectors: Vec<Sector> =
        outline.openings_m.iter().filter_map(|o| Sector::of(o, outline.loaded_m, opening_reach_m)).collect();
    let mut found: Vec<(usize, ControlPerimeter)> = Vec::new();
    for set in 0..1_usize << near.len() {
        let edges: Vec<FreeEdge> =
            near.iter().enumerate().filter(|(i, _)| set >> i & 1 == 1).map(|(_, (_, edge))| *edge).collect();
        let around = |ring: &[[f64; 2]]| cut_by_openings(cut_by_edges(ring, &edges), &sectors, offset_m);
        let pieces = around(&ring);
        // A straight line is left where three edges cut: that is a strip's beam shear and no punching.
        let Some(lines) = LineProperties::of(&pieces).filter(|lines| !lines.is_straight()) else { continue };
        let is_longer =
            |(other, of): &(usize, ControlPerimeter)| other & set == *other && of.lines.length_m <= lines.length_m;
        if found.iter().any(is_longer) {
            continue;
        }
        let face_m = LineProperties::of(&around(outline.loaded_m)).map_or(0.0, |l| l.length_m);
        let offset_m = away_from(lines.centroid_m, &edges);
        let [x, y] = lines.centroid_m;
        let ends_m = pieces.iter().flatten().map(|end| [end[0] - x, end[1] - y]).collect();
        found.push((set, ControlPerimeter { lines, ends_m, offset_m, cuts: edges.len(), face_m }));
    }
    if found.is_empty() {
        return Err(SlabFault::NoPerimeter { distance_m: offset_m });
    }
    Ok(found.into_iter().map(|(_, perimeter)| perimeter).collect())
}

/// The part of an offset that does not point toward any of the edges.
fn away_from(offset: [f64; 2], edges: &[FreeEdge]) -> [f64; 2] {
    edges.iter().fold(offset, |left, edge| {
        let (sin, cos) = edge.outward_rad.sin_cos();
        let toward = (left[0] * cos + left[1] * sin).max(0.0);
        [left[0] - toward * cos, left[1] - toward * sin]
    })
}

/// Distance from the loaded area to an edge, m.
fn clear_m(loaded: &[[f64; 2]], edge: &FreeEdge) -> f64 {
    let (sin, cos) = edge.outward_rad.sin_cos();
    edge.distance_m - loaded.iter().map(|p| p[0] * cos + p[1] * sin).fold(f64::NEG_INFINITY, f64::max)
}

/// Whether every side of the loaded area is parallel or square to the edge.
fn lies_along(loaded: &[[f64; 2]], edge: &FreeEdge) -> bool {
    let (sin, cos) = edge.outward_rad.sin_cos();
    sides(loaded).all(|[a, b]| {
        let along = unit(a, b);
        let across = along[0] * cos + along[1] * sin;
        across.abs() < 1e-6 || across.abs() > 1.0 - 1e-6
    })
}

fn sides(ring: &[[f64; 2]]) -> impl Iterator<Item = Piece> + '_ {
    (0..ring.len()).map(|i| [ring[i], ring[(i + 1) % ring.len()]])
}

fn unit(a: [f64; 2], b: [f64; 2]) -> [f64; 2] {
    let length = (b[0] - a[0]).hypot(b[1] - a[1]);
    [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
}

/// The ring at a distance, counter-clockwise: corners rounded by chords or, for right angles, kept square.
fn ring_at(loaded: &[[f64; 2]], offset_m: f64, square: bool) -> Vec<[f64; 2]> {
    let count = loaded.len();
    let mut ring = Vec::with_capacity(count * (CHORDS as usize + 1));
    for i in 0..count {
        let [before, at, after] = [loaded[(i + count - 1) % count], loaded[i], loaded[(i + 1) % count]];
        let [come, go] = [unit(before, at), unit(at, after)];
        // The normal of a counter-clockwise side is its direction turned clockwise.
        let start = (-come[0]).atan2(come[1]);
        let turn = (come[0] * go[1] - come[1] * go[0]).atan2(come[0] * go[0] + come[1] * go[1]);
        if square {
            let (sin, cos) = (start + 0.5 * turn).sin_cos();
            let reach = offset_m / (0.5 * turn).cos();
            ring.push([at[0] + reach * cos, at[1] + reach * sin]);
            continue;
        }
        let chords = (turn / std::f64::consts::FRAC_PI_2 * f64::from(CHORDS)).ceil().max(1.0);
        let mut step = 0.0;
        while step <= chords {
            let (sin, cos) = (start + turn * step / chords).sin_cos();
            ring.push([at[0] + offset_m * cos, at[1] + offset_m * sin]);
            step += 1.0;
        }
    }
    ring
}

/// What edges leave of a counter-clockwise convex ring, with the lines square to them.
fn cut_by_edges(ring: &[[f64; 2]], edges: &[FreeEdge]) -> Vec<Piece> {
    // The edge a side faces most, if it faces any.
    let facing = |side: &Piece| {
        let along = unit(side[0], side[1]);
        let normal = [along[1], -along[0]];
        let toward = |edge: &FreeEdge| normal[0] * edge.outward_rad.cos() + normal[1] * edge.outward_rad.sin();
        let most = edges.iter().map(|e| (toward(e), e)).filter(|(t, _)| *t > SQUARE);
        most.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, edge)| edge)
    };
    let all: Vec<(Piece, Option<&FreeEdge>)> =
        sides(ring).filter(|[a, b]| (b[0] - a[0]).hypot(b[1] - a[1]) > 0.0).map(|side| (side, facing(&side))).collect();
    let mut kept: Vec<Piece> = Vec::new();
    for (i, (side, faces)) in all.iter().enumerate() {
        if faces.is_some() {
            continue;
        }
        kept.extend(edges.iter().try_fold(*side, clipped));
        let neighbors = [(side[0], all[(i + all.len() - 1) % all.len()].1), (side[1], all[(i + 1) % all.len()].1)];
        kept.extend(neighbors.into_iter().filter_map(|(from, edge)| line_to(from, edge?)));
    }
    kept
}

/// The part of a piece on the slab's side of an edge.
fn clipped([a, b]: Piece, edge: &FreeEdge) -> Option<Piece> {
    let (sin, cos) = edge.outward_rad.sin_cos();
    let inside = |p: [f64; 2]| edge.distance_m - p[0] * cos - p[1] * sin;
    let (at_a, at_b) = (inside(a), inside(b));
    let border = |t: f64| [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    match (at_a >= 0.0, at_b >= 0.0) {
        (true, true) => Some([a, b]),
        (true, false) => Some([a, border(at_a / (at_a - at_b))]),
        (false, true) => Some([border(at_a / (at_a - at_b)), b]),
        (false, false) => None,
    }
}

/// The straight line from a point square to an edge; none from on or beyond it.
fn line_to(from: [f64; 2], edge: &FreeEdge) -> Option<Piece> {
    let (sin, cos) = edge.outward_rad.sin_cos();
    let gap = edge.distance_m - from[0] * cos - from[1] * sin;
    (gap > 0.0).then_some([from, [from[0] + gap * cos, from[1] + gap * sin]])
}

/// The directions in which an opening lies, seen from the middle of the loaded area.
struct Sector {
    center: [f64; 2],
    middle_rad: f64,
    half_rad: f64,
}

impl Sector {
    /// None for an opening farther away than `reach_m`.
    fn of(opening: &[[f64; 2]], loaded: &[[f64; 2]], reach_m: f64) -> Option<Self> {
        let nearest = opening.iter().flat_map(|p| sides(loaded).map(|side| distance(*p, side)));
        let other = loaded.iter().flat_map(|p| sides(opening).map(|side| distance(*p, side)));
        if nearest.chain(other).fold(f64::INFINITY, f64::min) > reach_m {
            return None;
        }
        let mean = |axis: usize, ring: &[[f64; 2]]| ring.iter().map(|p| p[axis]).sum::<f64>() / ring.len() as f64;
        let center = [mean(0, loaded), mean(1, loaded)];
        let toward = (mean(1, opening) - center[1]).atan2(mean(0, opening) - center[0]);
        let turns = opening.iter().map(|p| wrapped((p[1] - center[1]).atan2(p[0] - center[0]) - toward));
        let (low, high) = turns.fold((0.0_f64, 0.0_f64), |(low, high), turn| (low.min(turn), high.max(turn)));
        Some(Self { center, middle_rad: toward + 0.5 * (low + high), half_rad: 0.5 * (high - low) })
    }

    fn holds(&self, p: [f64; 2]) -> bool {
        let turn = wrapped((p[1] - self.center[1]).atan2(p[0] - self.center[0]) - self.middle_rad);
        turn.abs() <= self.half_rad
    }
}

fn wrapped(angle: f64) -> f64 {
    use std::f64::consts::{PI, TAU};
    (angle + PI).rem_euclid(TAU) - PI
}

fn distance(p: [f64; 2], [a, b]: Piece) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    let t = if square > 0.0 { ((p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1]) / square } else { 0.0 };
    let t = t.clamp(0.0, 1.0);
    (p[0] - a[0] - t * along[0]).hypot(p[1] - a[1] - t * along[1])
}

/// Pieces in no opening's sector (EN 1992-1-1 6.4.2(3), ACI 318-19 22.6.4.3). A short piece with one end inside is left out whole.
fn cut_by_openings(pieces: Vec<Piece>, sectors: &[Sector], offset_m: f64) -> Vec<Piece> {
    if sectors.is_empty() {
        return pieces;
    }
    let is_lost = |piece: &Piece| piece.iter().any(|end| sectors.iter().any(|sector| sector.holds(*end)));
    pieces.into_iter().flat_map(|piece| halved(piece, CUT_SHARE * offset_m)).filter(|piece| !is_lost(piece)).collect()
}

fn halved([a, b]: Piece, longest: f64) -> Vec<Piece> {
    if (b[0] - a[0]).hypot(b[1] - a[1]) <= longest {
        return vec![[a, b]];
    }
    let middle = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
    halved([a, middle], longest).into_iter().chain(halved([middle, b], longest)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    const A: f64 = 0.3;
    const B: f64 = 0.4;
    const D: f64 = 0.2;

    /// A plate of A along x by B along y, its right side at x = 0 and its upper side at y = 0.
    fn plate() -> Vec<[f64; 2]> {
        vec![[-A, -B], [0.0, -B], [0.0, 0.0], [-A, 0.0]]
    }

    fn around(edges: &[FreeEdge], corners: Corners) -> Vec<ControlPerimeter> {
        let offset = if corners == Corners::Square { 0.5 * D } else { 2.0 * D };
        perimeters(&Outline { loaded_m: &plate(), edges, openings_m: &[] }, offset, corners, 6.0 * D).unwrap()
    }

    const RIGHT: FreeEdge = FreeEdge { outward_rad: 0.0, distance_m: 0.0 };
    const UPPER: FreeEdge = FreeEdge { outward_rad: PI / 2.0, distance_m: 0.0 };

    /// Chords are short by 1 − sinc(π/128) = 1e-4 of an arc.
    fn is_near(found: f64, wanted: f64) -> bool {
        found <= wanted * (1.0 + 1e-9) && found > wanted * (1.0 - 2e-4)
    }

    #[test]
    fn a_plate_far_from_edges_has_the_perimeter_and_moment_of_the_code() {
        // EN 1992-1-1 6.4.2: u₁ = 2(c₁ + c₂) + 4πd. (6.41): W₁ = c₁²/2 + c₁c₂ + 4c₂d + 16d² + 2πdc₁.
        let found = around(&[], Corners::Round);
        assert_eq!(found.len(), 1);
        assert!(is_near(found[0].lines.length_m, 2.0 * (A + B) + 4.0 * PI * D));
        let w = |c1: f64, c2: f64| c1 * c1 / 2.0 + c1 * c2 + 4.0 * c2 * D + 16.0 * D * D + 2.0 * PI * D * c1;
        assert!(is_near(found[0].lines.plastic_m2[1], w(A, B)));
        assert!(is_near(found[0].lines.plastic_m2[0], w(B, A)));
        assert!((found[0].face_m - 2.0 * (A + B)).abs() < 1e-12);
    }

    #[test]
    fn a_plate_at_an_edge_has_the_perimeter_and_moment_of_the_code() {
        // EN 1992-1-1 figure 6.15: u₁ = 2c₁ + c₂ + 2πd. (6.45), moment along the edge: c₂²/4 + c₁c₂ + 4c₁d + 8d² + πdc₂.
        let cut = around(&[RIGHT], Corners::Round).remove(1);
        assert_eq!(cut.cuts, 1);
        assert!(is_near(cut.lines.length_m, 2.0 * A + B + 2.0 * PI * D));
        assert!(is_near(cut.lines.plastic_m2[0], B * B / 4.0 + A * B + 4.0 * A * D + 8.0 * D * D + PI * D * B));
        assert!((cut.face_m - (2.0 * A + B)).abs() < 1e-12);
    }

    #[test]
    fn a_plate_at_a_corner_has_the_perimeter_of_the_code() {
        // EN 1992-1-1 figure 6.15: u₁ = c₁ + c₂ + πd.
        let corner = around(&[RIGHT, UPPER], Corners::Round).remove(3);
        assert!(is_near(corner.lines.length_m, A + B + PI * D));
    }

    #[test]
    fn a_plate_some_way_in_gets_lines_square_to_the_edge() {
        // By hand: 0.1 m more on both sides.
        let edge = FreeEdge { distance_m: 0.1, ..RIGHT };
        assert!(is_near(around(&[edge], Corners::Round)[1].lines.length_m, 2.0 * (A + 0.1) + B + 2.0 * PI * D));
    }

    #[test]
    fn square_corners_have_straight_sides_only() {
        // ACI 318-19 22.6.4.1: b₀ = 2(c₁ + d) + 2(c₂ + d); at an edge 2(c₁ + d/2) + c₂ + d.
        let found = around(&[RIGHT], Corners::Square);
        assert!((found[0].lines.length_m - 2.0 * (A + B + 2.0 * D)).abs() < 1e-12);
        assert!((found[1].lines.length_m - (2.0 * (A + 0.5 * D) + B + D)).abs() < 1e-12);
    }

    #[test]
    fn between_two_opposite_edges_two_straight_lines_are_left() {
        let below = FreeEdge { outward_rad: -PI / 2.0, distance_m: B };
        let strip = around(&[UPPER, below], Corners::Round).remove(3);
        assert!((strip.lines.length_m - 2.0 * B).abs() < 1e-12);
    }

    #[test]
    fn an_opening_near_by_takes_its_sector_and_one_far_away_takes_nothing() {
        // By hand: seen from the middle the opening covers one side of the ring, ±45° of a square plate's symmetry.
        let plate = [[-0.1, -0.1], [0.1, -0.1], [0.1, 0.1], [-0.1, 0.1]];
        let opening = |x: f64| vec![vec![[x, -x], [x + 0.2, -x], [x + 0.2, x], [x, x]]];
        let at = |openings: &[Vec<[f64; 2]>]| {
            let outline = Outline { loaded_m: &plate, edges: &[], openings_m: openings };
            perimeters(&outline, 0.1, Corners::Square, 0.6).unwrap()[0].lines.length_m
        };
        let full = 8.0 * 0.2;
        assert!((at(&[]) - full).abs() < 1e-12);
        let left = at(&opening(0.3));
        // Whole pieces of 5 mm are left out at both ends.
        assert!(left <= 0.75 * full && left > 0.75 * full - 0.011, "{left}");
        assert!((at(&opening(0.8)) - full).abs() < 1e-12);
    }
}
