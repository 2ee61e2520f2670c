//! Entities of a DXF file: what their pairs say, as curves in the plane of the drawing, or as a block to be unfolded.
//!
//! Group codes: DXF reference, "Entities"; axes of entities that lie in a plane of their own: there, "Object coordinate
//! systems".

use glam::{DAffine2, DMat2, DVec2, DVec3};

use super::curve::{Bend, Piece, Round, Trace};
use super::fault::OutlineFault;
use super::pairs::Pair;
use super::spline::Spline;

/// What an entity is to an outline.
#[derive(Debug, Clone)]
pub enum Shape {
    /// Lines and curves.
    Trace(Trace),
    /// A block to be unfolded.
    Insert(Insert),
    /// Nothing that can bound a roof, and why.
    PassedOver(&'static str),
}

/// A block put somewhere.
#[derive(Debug, Clone)]
pub struct Insert {
    /// Name of the block, as the file spells it.
    pub block: Vec<u8>,
    /// How points of the block, from its base point, come to the drawing.
    pub place: DAffine2,
    /// Columns and rows.
    pub count: (u64, u64),
    /// From one column to the next, from one row to the next.
    pub step: (DVec2, DVec2),
    /// The layer of the insert.
    pub layer: usize,
}

/// Numbers of one entity, gathered from its pairs.
#[derive(Debug, Default)]
struct Numbers {
    /// Codes 10, 20, 30 and 11, 21, 31.
    first: DVec3,
    second: DVec3,
    /// Codes 40 to 43.
    size: [Option<f64>; 4],
    /// Codes 44, 45: column and row spacing.
    spacing: DVec2,
    /// Codes 50, 51, degrees.
    angles: [f64; 2],
    /// Codes 70, 71.
    flags: [i64; 2],
    elevation: f64,
    normal: Option<DVec3>,
}

impl Numbers {
    fn of(pairs: &[Pair<'_>]) -> Result<Self, OutlineFault> {
        let mut numbers = Self::default();
        let mut normal = DVec3::Z;
        for pair in pairs {
            match pair.code {
                10 => numbers.first.x = pair.number()?,
                20 => numbers.first.y = pair.number()?,
                30 => numbers.first.z = pair.number()?,
                11 => numbers.second.x = pair.number()?,
                21 => numbers.second.y = pair.number()?,
                31 => numbers.second.z = pair.number()?,
                38 => numbers.elevation = pair.number()?,
                40 => numbers.size[0] = Some(pair.number()?),
                41 => numbers.size[1] = Some(pair.number()?),
                42 => numbers.size[2] = Some(pair.number()?),
                43 => numbers.size[3] = Some(pair.number()?),
                44 => numbers.spacing.x = pair.number()?,
                45 => numbers.spacing.y = pair.number()?,
                50 => numbers.angles[0] = pair.number()?,
                51 => numbers.angles[1] = pair.number()?,
                70 => numbers.flags[0] = pair.whole()?,
                71 => numbers.flags[1] = pair.whole()?,
                210 => normal.x = pair.number()?,
                220 => normal.y = pair.number()?,
                230 => normal.z = pair.number()?,
                _ => continue,
            }
            if matches!(pair.code, 210 | 220 | 230) {
                numbers.normal = Some(normal);
            }
        }
        Ok(numbers)
    }

    /// The map from the entity's own plane to the drawing's, seen from above; none for a plane that stands upright.
    fn plane(&self, elevation: f64) -> Option<DAffine2> {
        let normal = self.normal.unwrap_or(DVec3::Z);
        let (x, y, z) = own_axes(normal)?;
        let matrix2 = DMat2::from_cols(x.truncate(), y.truncate());
        Some(DAffine2 { matrix2, translation: z.truncate() * elevation })
    }
}

/// The axes that a plane has by its normal: the arbitrary axis algorithm of the DXF reference. None when it stands upright.
fn own_axes(normal: DVec3) -> Option<(DVec3, DVec3, DVec3)> {
    /// Seen from above, what leans more than 89° is a line.
    const LEAST_Z: f64 = 0.0175;
    /// Below this x and y of the normal, its x axis is taken from the drawing's y axis.
    const NEAR_Z: f64 = 1.0 / 64.0;
    let z = normal.try_normalize()?;
    if z.z.abs() < LEAST_Z {
        return None;
    }
    let near = z.x.abs() < NEAR_Z && z.y.abs() < NEAR_Z;
    let x = (if near { DVec3::Y } else { DVec3::Z }).cross(z).normalize();
    Some((x, z.cross(x), z))
}

const UPRIGHT: &str = "standing upright";
const WITHOUT_SIZE: &str = "without size";

/// What an entity of this kind is; `pairs` are its own, without its name.
pub fn shape(kind: &[u8], pairs: &[Pair<'_>], layer: usize) -> Result<Shape, OutlineFault> {
    let trace = match kind {
        b"LINE" => line(&Numbers::of(pairs)?, layer),
        b"CIRCLE" | b"ARC" => arc(&Numbers::of(pairs)?, layer, kind == b"CIRCLE"),
        b"ELLIPSE" => ellipse(&Numbers::of(pairs)?, layer),
        b"LWPOLYLINE" => polyline_in_one(pairs, layer)?,
        b"SPLINE" => spline(pairs, layer)?,
        b"INSERT" => return insert(pairs, layer),
        _ => Err("of another kind"),
    };
    Ok(trace.map_or_else(Shape::PassedOver, Shape::Trace))
}

fn line(numbers: &Numbers, layer: usize) -> Result<Trace, &'static str> {
    let (start, to) = (numbers.first.truncate(), numbers.second.truncate());
    if start == to {
        return Err(WITHOUT_SIZE);
    }
    Ok(Trace { layer, start, pieces: vec![Piece::straight(to)], closed: false })
}

fn arc(numbers: &Numbers, layer: usize, whole: bool) -> Result<Trace, &'static str> {
    let radius = numbers.size[0].filter(|radius| *radius > 0.0).ok_or(WITHOUT_SIZE)?;
    let plane = numbers.plane(numbers.first.z).ok_or(UPRIGHT)?;
    let [from, to] = numbers.angles.map(f64::to_radians);
    let turn = std::f64::consts::TAU;
    let sweep_rad =
        if whole { turn } else { Some((to - from).rem_euclid(turn)).filter(|s| *s > 1e-12).unwrap_or(turn) };
    let round = Round {
        center: numbers.first.truncate(),
        u: DVec2::X * radius,
        v: DVec2::Y * radius,
        from_rad: if whole { 0.0 } else { from },
        sweep_rad,
    };
    Ok(Trace::round(layer, round).placed(&plane))
}

fn ellipse(numbers: &Numbers, layer: usize) -> Result<Trace, &'static str> {
    let ratio = numbers.size[0].filter(|ratio| *ratio > 0.0).ok_or(WITHOUT_SIZE)?;
    let (_, _, normal) = own_axes(numbers.normal.unwrap_or(DVec3::Z)).ok_or(UPRIGHT)?;
    let turn = std::f64::consts::TAU;
    let (from_rad, to) = (numbers.size[1].unwrap_or(0.0), numbers.size[2].unwrap_or(turn));
    let sweep = (to - from_rad).rem_euclid(turn);
    // Ends that differ by a whole turn but for rounding are a whole ellipse.
    let sweep_rad = if sweep < 1e-9 || turn - sweep < 1e-9 { turn } else { sweep };
    let minor = normal.cross(numbers.second) * ratio;
    let (center, u, v) = (numbers.first.truncate(), numbers.second.truncate(), minor.truncate());
    if u == DVec2::ZERO || v == DVec2::ZERO {
        return Err(WITHOUT_SIZE);
    }
    Ok(Trace::round(layer, Round { center, u, v, from_rad, sweep_rad }))
}

/// A corner of a polyline and the bulge of the piece that leaves it.
#[derive(Debug, Clone, Copy, Default)]
pub struct Corner {
    /// Where.
    pub at: DVec2,
    /// How the piece to the next corner bends.
    pub bulge: f64,
}

/// A polyline through corners.
pub fn through(corners: &[Corner], closed: bool, layer: usize) -> Result<Trace, &'static str> {
    let [first, rest @ ..] = corners else { return Err(WITHOUT_SIZE) };
    let mut pieces = Vec::with_capacity(corners.len());
    let mut from = *first;
    for corner in rest.iter().chain(closed.then_some(first)) {
        if corner.at != from.at {
            pieces.push(Piece::bulged(from.at, corner.at, from.bulge));
        }
        from = *corner;
    }
    if pieces.is_empty() {
        return Err(WITHOUT_SIZE);
    }
    Ok(Trace { layer, start: first.at, pieces, closed })
}

fn polyline_in_one(pairs: &[Pair<'_>], layer: usize) -> Result<Result<Trace, &'static str>, OutlineFault> {
    let mut corners: Vec<Corner> = Vec::new();
    for pair in pairs {
        match (pair.code, corners.last_mut()) {
            (10, _) => corners.push(Corner { at: DVec2::new(pair.number()?, 0.0), bulge: 0.0 }),
            (20, Some(corner)) => corner.at.y = pair.number()?,
            (42, Some(corner)) => corner.bulge = pair.number()?,
            _ => {}
        }
    }
    // Corners have codes that elsewhere mean a single point: only what belongs to the whole is read from them.
    let own = pairs.iter().filter(|pair| matches!(pair.code, 38 | 70 | 210 | 220 | 230));
    let numbers = Numbers::of(&own.copied().collect::<Vec<_>>())?;
    let Some(plane) = numbers.plane(numbers.elevation) else { return Ok(Err(UPRIGHT)) };
    let trace = through(&corners, numbers.flags[0] & 1 != 0, layer);
    Ok(trace.map(|trace| if numbers.normal.is_some() { trace.placed(&plane) } else { trace }))
}

fn spline(pairs: &[Pair<'_>], layer: usize) -> Result<Result<Trace, &'static str>, OutlineFault> {
    let (mut knots, mut weights, mut poles) = (Vec::new(), Vec::new(), Vec::<DVec2>::new());
    let (mut degree, mut flags) = (0, 0);
    for pair in pairs {
        match pair.code {
            40 => knots.push(pair.number()?),
            41 => weights.push(pair.number()?),
            10 => poles.push(DVec2::new(pair.number()?, 0.0)),
            20 => {
                if let Some(pole) = poles.last_mut() {
                    pole.y = pair.number()?;
                }
            }
            70 => flags = pair.whole()?,
            71 => degree = pair.whole()?,
            _ => {}
        }
    }
    let degree = usize::try_from(degree).unwrap_or_default();
    let Some(spline) = Spline::of(degree, knots, &poles, &weights) else {
        return Ok(Err("without sound knots and control points"));
    };
    let (start, to) = spline.ends();
    let closed = flags & 1 != 0 && start.distance(to) < 1e-9 * (1.0 + start.length());
    let pieces = vec![Piece { to, bend: Some(Box::new(Bend::Spline(spline))) }];
    Ok(Ok(Trace { layer, start, pieces, closed }))
}

fn insert(pairs: &[Pair<'_>], layer: usize) -> Result<Shape, OutlineFault> {
    let numbers = Numbers::of(pairs)?;
    let block = pairs.iter().find(|pair| pair.code == 2).map(|pair| pair.text().to_vec()).unwrap_or_default();
    let Some(plane) = numbers.plane(numbers.first.z) else { return Ok(Shape::PassedOver(UPRIGHT)) };
    // Codes 41, 42: scale along x and y.
    let scale = DVec2::new(numbers.size[1].unwrap_or(1.0), numbers.size[2].unwrap_or(1.0));
    if scale.x == 0.0 || scale.y == 0.0 {
        return Ok(Shape::PassedOver(WITHOUT_SIZE));
    }
    let turn = DMat2::from_angle(numbers.angles[0].to_radians());
    let own = DAffine2 { matrix2: turn * DMat2::from_diagonal(scale), translation: numbers.first.truncate() };
    let times = |number: i64| u64::try_from(number).unwrap_or(1).max(1);
    let step = |along: DVec2| plane.matrix2 * (turn * along);
    Ok(Shape::Insert(Insert {
        block,
        place: plane * own,
        count: (times(numbers.flags[0]), times(numbers.flags[1])),
        step: (step(DVec2::X * numbers.spacing.x), step(DVec2::Y * numbers.spacing.y)),
        layer,
    }))
}

/// A polyline whose corners follow as entities of their own.
#[derive(Debug)]
pub struct OpenPolyline {
    layer: usize,
    flags: i64,
    plane: Option<DAffine2>,
    corners: Vec<Corner>,
}

impl OpenPolyline {
    /// Begins with the pairs of the polyline itself.
    pub fn begun(pairs: &[Pair<'_>], layer: usize) -> Result<Self, OutlineFault> {
        const IN_SPACE: i64 = 8;
        let numbers = Numbers::of(pairs)?;
        let flags = numbers.flags[0];
        let plane = if flags & IN_SPACE != 0 { Some(DAffine2::IDENTITY) } else { numbers.plane(numbers.first.z) };
        Ok(Self { layer, flags, plane, corners: Vec::new() })
    }

    /// Takes a corner in.
    pub fn add(&mut self, pairs: &[Pair<'_>]) -> Result<(), OutlineFault> {
        const CONTROL_POINT: i64 = 16;
        let numbers = Numbers::of(pairs)?;
        if numbers.flags[0] & CONTROL_POINT == 0 {
            self.corners.push(Corner { at: numbers.first.truncate(), bulge: numbers.size[2].unwrap_or(0.0) });
        }
        Ok(())
    }

    /// Ends it; meshes are no lines.
    pub fn ended(self) -> Shape {
        const MESHES: i64 = 16 | 64;
        let Some(plane) = self.plane else { return Shape::PassedOver(UPRIGHT) };
        if self.flags & MESHES != 0 {
            return Shape::PassedOver("as a mesh");
        }
        match through(&self.corners, self.flags & 1 != 0, self.layer) {
            Ok(trace) => Shape::Trace(trace.placed(&plane)),
            Err(why) => Shape::PassedOver(why),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn axes_of_a_plane_seen_from_below_are_mirrored_and_those_of_a_wall_are_none() {
        let (x, y, _) = own_axes(DVec3::NEG_Z).unwrap();
        assert_eq!((x, y), (DVec3::NEG_X, DVec3::Y));
        assert!(own_axes(DVec3::Y).is_none() && own_axes(DVec3::ZERO).is_none());
        // A roof that leans: the axes of its plane are square to each other and of unit length.
        let (x, y, z) = own_axes(DVec3::new(0.3, -0.2, 0.9)).unwrap();
        assert!(x.dot(y).abs() < 1e-15 && (x.cross(y) - z).length() < 1e-15);
    }

    #[test]
    fn a_polyline_without_extent_is_passed_over() {
        let twice = [Corner::default(), Corner::default()];
        assert_eq!(through(&twice, true, 0), Err(WITHOUT_SIZE));
        assert_eq!(through(&[], true, 0), Err(WITHOUT_SIZE));
    }
}
