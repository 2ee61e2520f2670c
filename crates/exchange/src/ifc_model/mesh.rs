//! The space that a band sweeps as a closed surface of triangles that holds the true space: spokes about the mast axis, and on
//! each the same stations along the radius, each with an underside and a top.

use std::collections::BTreeMap;
use std::f64::consts::{PI, TAU};

use gantline_plan::assess::swept::{HeightBand, SweptBand};
use gantline_plan::geometry::turns::Turn;
use glam::{DVec2, DVec3};

/// Largest angle between spokes.
const STEP_RAD: f64 = PI / 18.0;

/// A closed surface: points, and triangles by their indices, counter-clockwise seen from outside.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Mesh {
    /// Points about the mast axis, heights as levels over level zero, m.
    pub points: Vec<DVec3>,
    /// Triangles.
    pub triangles: Vec<[usize; 3]>,
}

/// Distance from the mast axis, levels of underside and top, all m.
#[derive(Debug, Clone, Copy)]
struct Station {
    r_m: f64,
    low: f64,
    high: f64,
}

/// What a surface is made of.
#[derive(Debug)]
struct Fan {
    stations: Vec<Station>,
    /// For each spoke how far it stands aside of the axis, and its direction.
    spokes: Vec<(DVec2, DVec2)>,
    /// Whether the last spoke is followed by the first.
    closes: bool,
    /// From this radius on spokes stand aside; nearer the axis they run into it.
    aside_from_m: f64,
}

/// One closed surface for each stretch of the sweep; none where nothing is swept.
pub fn meshes(swept: &SweptBand) -> Vec<Mesh> {
    let band = swept.band();
    if band.r1_m <= 0.0 {
        return Vec::new();
    }
    let sweep = swept.sweep();
    if sweep.is_whole() {
        return vec![whole(band)];
    }
    sweep.intervals().into_iter().map(|turn| part(band, turn)).collect()
}

/// Stations: the band's own ends, and half its width beyond them, where it is as high as at its ends.
///
/// Between two spokes the surface lies on chords, so what stands at a radius r of a spoke lies as near to the axis as
/// r cos(half a step) in the middle; and a place beside the center line of an arm lies farther from the axis than along that
/// line. So a station is as low and as high as the band is anywhere from √((r cos)² − w²) to r, w half the width: where a
/// brace slopes, what it sweeps lies within. Along the radius that bound bends outward from r = w on, where a station stands.
fn stations(band: &HeightBand, tapers: bool, step_rad: f64) -> Vec<Station> {
    let inward = (step_rad / 2.0).cos();
    let at = |r_m: f64| {
        let within = r_m.clamp(band.r0_m, band.r1_m);
        let nearest = if step_rad > 0.0 && r_m >= band.r0_m && r_m <= band.r1_m {
            ((r_m * inward).powi(2) - band.half_width_m.powi(2)).max(0.0).sqrt()
        } else {
            within
        };
        let (low, high) = (band.low_m(within), band.high_m(within));
        Station { r_m, low: low.min(band.low_m(nearest)), high: high.max(band.high_m(nearest)) }
    };
    let width_m = 2.0 * band.half_width_m;
    let mut radii = vec![(band.r0_m - band.half_width_m).max(0.0), band.r0_m];
    // Near the axis the bound bends most: two stations more follow it there.
    let bends_at = band.half_width_m / inward;
    let bends = [bends_at, 2.0 * bends_at, 4.0 * bends_at];
    radii.extend(bends.into_iter().filter(|&r_m| step_rad > 0.0 && r_m > band.r0_m && r_m < band.r1_m));
    // Beside the axis a wide sector would run into itself: there it becomes narrow.
    radii.extend((tapers && width_m > band.r0_m && width_m < band.r1_m).then_some(width_m));
    radii.extend([band.r1_m, band.r1_m + band.half_width_m]);
    radii.sort_by(f64::total_cmp);
    radii.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    radii.into_iter().map(at).collect()
}

/// Chords lie within their arc, so the last station moves out until the chord touches the arc.
fn chord_factor(step_rad: f64) -> f64 {
    1.0 / (step_rad / 2.0).cos()
}

fn whole(band: &HeightBand) -> Mesh {
    let count = (TAU / STEP_RAD).round() as usize;
    let mut stations = stations(band, false, TAU / count as f64);
    if let Some(last) = stations.last_mut() {
        last.r_m *= chord_factor(TAU / count as f64);
    }
    let spokes: Vec<(DVec2, DVec2)> =
        (0..count).map(|index| (DVec2::ZERO, DVec2::from_angle(TAU * index as f64 / count as f64))).collect();
    Fan { stations, spokes, closes: true, aside_from_m: 0.0 }.surface()
}

fn part(band: &HeightBand, turn: Turn) -> Mesh {
    let span = turn.span_rad();
    let tapers = span > PI;
    let count = (span / STEP_RAD).ceil().max(1.0);
    let mut stations = stations(band, tapers, span / count);
    let inner_m = stations.iter().map(|station| station.r_m).find(|&r| r > 0.0).unwrap_or(band.r1_m);
    // What is left of the turn is too narrow to be a gap: the whole turn holds it.
    if tapers && TAU - span < 2.0 * (band.half_width_m / inner_m).min(1.0).asin() {
        return whole(band);
    }
    if span > 0.0
        && let Some(last) = stations.last_mut()
    {
        last.r_m *= chord_factor(span / count);
    }
    let direction = |angle: f64| DVec2::from_angle(angle);
    let aside = |angle: f64, side: f64| (direction(angle).perp() * side * band.half_width_m, direction(angle));
    let mut spokes = vec![aside(turn.from_rad, -1.0)];
    if span > 0.0 {
        let between = (0..=count as u32).map(|index| turn.from_rad + span * f64::from(index) / count);
        spokes.extend(between.map(|angle| (DVec2::ZERO, direction(angle))));
    }
    spokes.push(aside(turn.to_rad, 1.0));
    let aside_from_m = if tapers { inner_m } else { 0.0 };
    Fan { stations, spokes, closes: false, aside_from_m }.surface()
}

impl Fan {
    /// Points and triangles of all sides.
    fn surface(&self) -> Mesh {
        let (stations, spokes) = (&self.stations, &self.spokes);
        let mut mesh = Mesh::default();
        for (aside, along) in spokes {
            for station in stations {
                let aside = if station.r_m < self.aside_from_m { DVec2::ZERO } else { *aside };
                let at = aside + *along * station.r_m;
                mesh.points.extend([at.extend(station.low), at.extend(station.high)]);
            }
        }
        let (low, high) = (0, 1);
        let at = |spoke: usize, station: usize, side: usize| (spoke * stations.len() + station) * 2 + side;
        let last = stations.len() - 1;
        let pairs = if self.closes { spokes.len() } else { spokes.len() - 1 };
        for spoke in 0..pairs {
            let next = (spoke + 1) % spokes.len();
            for inner in 0..last {
                let outer = inner + 1;
                mesh.quad([
                    at(spoke, inner, high),
                    at(spoke, outer, high),
                    at(next, outer, high),
                    at(next, inner, high),
                ]);
                mesh.quad([at(spoke, inner, low), at(next, inner, low), at(next, outer, low), at(spoke, outer, low)]);
            }
            mesh.quad([at(spoke, last, low), at(next, last, low), at(next, last, high), at(spoke, last, high)]);
            mesh.quad([at(spoke, 0, low), at(spoke, 0, high), at(next, 0, high), at(next, 0, low)]);
        }
        if !self.closes {
            let end = spokes.len() - 1;
            for inner in 0..last {
                let outer = inner + 1;
                mesh.quad([at(0, inner, low), at(0, outer, low), at(0, outer, high), at(0, inner, high)]);
                mesh.quad([at(end, inner, low), at(end, inner, high), at(end, outer, high), at(end, outer, low)]);
            }
        }
        mesh.joined()
    }
}

impl Mesh {
    fn quad(&mut self, [a, b, c, d]: [usize; 4]) {
        self.triangles.extend([[a, b, c], [a, c, d]]);
    }

    /// The same with points that coincide made one, and triangles without area left out.
    fn joined(&self) -> Self {
        let key = |point: &DVec3| point.to_array().map(|part| (part * 1e6).round() as i64);
        let mut places: BTreeMap<[i64; 3], usize> = BTreeMap::new();
        let mut points = Vec::new();
        let of_old: Vec<usize> = self
            .points
            .iter()
            .map(|point| {
                *places.entry(key(point)).or_insert_with(|| {
                    points.push(*point);
                    points.len() - 1
                })
            })
            .collect();
        let renamed = self.triangles.iter().map(|triangle| triangle.map(|old| of_old.get(old).copied().unwrap_or(0)));
        let triangles = renamed.filter(|[a, b, c]| a != b && b != c && c != a).collect();
        Self { points, triangles }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_plan::geometry::turns::Turns;

    fn band(r0_m: f64) -> HeightBand {
        HeightBand {
            r0_m,
            r1_m: 2.0,
            low_at_r0_m: 1.0,
            low_at_r1_m: 2.0,
            high_at_r0_m: 1.2,
            high_at_r1_m: 2.2,
            half_width_m: 0.1,
        }
    }

    fn swept(r0_m: f64, sweep: Turns) -> Vec<Mesh> {
        meshes(&SweptBand::new(DVec2::ZERO, sweep, band(r0_m)).unwrap())
    }

    /// Six times the volume is the sum of the triple products of the corners (Gauss).
    fn volume_m3(mesh: &Mesh) -> f64 {
        let corners = |triangle: &[usize; 3]| triangle.map(|index| mesh.points[index]);
        mesh.triangles.iter().map(corners).map(|[a, b, c]| a.dot(b.cross(c)) / 6.0).sum()
    }

    fn is_closed(mesh: &Mesh) -> bool {
        let mut edges: BTreeMap<(usize, usize), i32> = BTreeMap::new();
        for &[a, b, c] in &mesh.triangles {
            for (from, to) in [(a, b), (b, c), (c, a)] {
                let (edge, sense) = if from < to { ((from, to), 1) } else { ((to, from), -1) };
                *edges.entry(edge).or_insert(0) += sense;
            }
        }
        edges.values().all(|&count| count == 0)
    }

    #[test]
    fn every_sweep_is_a_closed_surface() {
        for r0_m in [0.0, 0.05, 0.6] {
            for sweep in [
                Turns::whole(),
                Turns::between(-0.6, 0.6),
                Turns::between(0.0, 4.5),
                Turns::between(0.0, 6.2),
                Turns::at([0.7]),
                Turns::at([0.0, 2.0]),
            ] {
                let all = swept(r0_m, sweep.clone());
                assert!(!all.is_empty());
                for mesh in all {
                    assert!(is_closed(&mesh), "{r0_m} {sweep:?}");
                    assert!(volume_m3(&mesh) > 0.0, "outside is outside");
                }
            }
        }
    }

    /// Levels at which a vertical line passes the surface.
    fn passed(mesh: &Mesh, at: DVec2) -> Vec<f64> {
        let through = |triangle: &[usize; 3]| {
            let [a, b, c] = triangle.map(|index| mesh.points[index]);
            let (u, v, p) = ((b - a).truncate(), (c - a).truncate(), at - a.truncate());
            let area = u.perp_dot(v);
            let (s, t) = (p.perp_dot(v) / area, u.perp_dot(p) / area);
            (area.abs() > 1e-12 && s >= -1e-9 && t >= -1e-9 && s + t <= 1.0 + 1e-9)
                .then_some(a.z + (b.z - a.z) * s + (c.z - a.z) * t)
        };
        mesh.triangles.iter().filter_map(through).collect()
    }

    /// Witness: the arm itself in many directions, place by place along and beside its center line.
    #[test]
    fn what_a_sloping_brace_sweeps_between_spokes_lies_within() {
        for (rises, r0_m) in [(1.0, 0.0), (-1.0, 0.0), (1.0, 0.6), (-1.0, 0.6)] {
            let band = HeightBand {
                low_at_r0_m: 2.0 - rises,
                low_at_r1_m: 2.0 + rises,
                high_at_r0_m: 2.2 - rises,
                high_at_r1_m: 2.2 + rises,
                ..band(r0_m)
            };
            for (sweep, span) in [(Turns::whole(), TAU), (Turns::between(0.0, 1.3), 1.3)] {
                let [mesh] = &meshes(&SweptBand::new(DVec2::ZERO, sweep, band).unwrap())[..] else {
                    panic!("one surface")
                };
                for step in 0..=97 {
                    let along = DVec2::from_angle(span * f64::from(step) / 97.0);
                    for (share, aside) in
                        (0..=20).flat_map(|one| [-0.99, 0.0, 0.7].map(|aside| (f64::from(one) / 20.0, aside)))
                    {
                        let x = r0_m + (2.0 - r0_m) * share;
                        let at = along * x + along.perp() * aside * band.half_width_m;
                        let levels = passed(mesh, at);
                        let low = levels.iter().copied().fold(f64::MAX, f64::min);
                        let high = levels.iter().copied().fold(f64::MIN, f64::max);
                        assert!(
                            low <= band.low_m(x) + 1e-9 && high >= band.high_m(x) - 1e-9,
                            "{rises} {r0_m} {span} {x} {aside}: {low} {high}"
                        );
                    }
                }
            }
        }
    }

    /// Witness: Pappus. The band is 0.2 m high everywhere, so its volume is 0.2 m times the area in plan: of the circle of
    /// 2.1 m for the whole turn, and of chords that touch it between its circle and (1 + 0.26 %) of it: π/18 between spokes.
    /// It rises by 0.5: what lies between ρ cos 5° and ρ adds 0.5 · 0.0038 · 2π · 2³/3 = 0.032 m³, what lies beside the center
    /// line some 0.5 · π · 0.1² · 2 = 0.031 m³, to 2.771 m³.
    #[test]
    fn the_whole_turn_holds_the_circle_and_little_more() {
        let [mesh] = &swept(0.0, Turns::whole())[..] else { panic!("one surface") };
        let circle = 0.2 * PI * 2.1 * 2.1;
        let ratio = volume_m3(mesh) / circle;
        assert!((1.023..1.04).contains(&ratio), "{ratio}");
    }

    /// Witness: closed area. A direction alone is a bar of 2.1 m by 0.2 m by 0.2 m.
    #[test]
    fn one_direction_is_the_bar_itself() {
        let [mesh] = &swept(0.0, Turns::at([0.3]))[..] else { panic!("one surface") };
        assert!((volume_m3(mesh) - 2.1 * 0.2 * 0.2).abs() < 1e-9, "{}", volume_m3(mesh));
    }
}
