//! Whether a plate is strong enough to stay elastic under what anchors and pressure do to it, and stiff beside its anchors.
//!
//! Bending lines: a round tube holds the plate along a line 0.8 of its diameter wide, so that the plate sticks out from
//! 0.4 of the diameter off the middle. In every direction the part beyond its line bends the plate across the line's whole
//! width; each pulled anchor by itself bends a strip that widens at 45° from the anchor to the line. Source: AISC Design
//! Guide 1, 2nd ed., 3.1.2 and 3.4 (bending lines of round columns, 45° strip), from memory, to be confirmed. Elastic
//! moduli are used: a plate that yields is no stiff plate.

use std::f64::consts::TAU;

use glam::DVec2;

use super::moments::Moments;
use super::shape::{Bearing, Plate, PlateFault, positive};
use super::solution::PlateSolution;

/// Half of the width of a round tube's bending lines, as a share of its diameter.
const LINE_SHARE: f64 = 0.4;
/// Directions that are looked at.
const DIRECTIONS: u32 = 24;

/// What stands on a plate, and what the plate is made of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// Outside diameter of the round tube that stands on the plate.
    pub tube_diameter_m: f64,
    /// Where its axis meets the plate.
    pub at: DVec2,
    /// Yield strength of the plate's steel.
    pub yield_pa: f64,
    /// Its modulus of elasticity.
    pub elastic_pa: f64,
    /// Partial factor on the yield strength.
    pub factor: f64,
}

/// What bends a plate most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bends {
    /// All beyond a line in this direction from the tube, a unit vector.
    Beyond(DVec2),
    /// This anchor by itself.
    Anchor(usize),
}

/// Bending of a plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlateBending {
    /// Largest elastic stress, Pa.
    pub stress_pa: f64,
    /// That over the design yield strength; the rigid plate counts only up to 1.
    pub utilization: f64,
    /// What brings it.
    pub by: Bends,
    /// Largest deflection of a pulled anchor's strip over its tension, m/N; 0 when none sticks out.
    pub give_m_per_n: f64,
}

/// Bending of a plate under a solution. None when nothing bends it: all lies under the tube.
///
/// Errors: a number that is none or not above 0.
pub fn bending(
    plate: &Plate,
    solution: &PlateSolution,
    standing: &Standing,
) -> Result<Option<PlateBending>, PlateFault> {
    for (field, value) in [
        ("tube_diameter_m", standing.tube_diameter_m),
        ("yield_pa", standing.yield_pa),
        ("elastic_pa", standing.elastic_pa),
        ("factor", standing.factor),
    ] {
        positive(field, value)?;
    }
    let mut worst: Option<(f64, Bends)> = None;
    let mut take = |stress: f64, by: Bends| {
        if worst.is_none_or(|(known, _)| stress > known) {
            worst = Some((stress, by));
        }
    };
    for step in 0..DIRECTIONS {
        let way = DVec2::from_angle(TAU * f64::from(step) / f64::from(DIRECTIONS));
        if let Some(stress) = beyond_pa(plate, solution, standing, way) {
            take(stress, Bends::Beyond(way));
        }
    }
    let mut give_m_per_n: f64 = 0.0;
    for (index, tension) in solution.tension_n.iter().enumerate() {
        let Some(strip) = Strip::of(plate, standing, index) else { continue };
        take(strip.stress_pa(tension.abs(), plate.thickness_m), Bends::Anchor(index));
        if *tension > 0.0 {
            give_m_per_n = give_m_per_n.max(strip.give_m_per_n(plate.thickness_m, standing.elastic_pa));
        }
    }
    let strength = standing.yield_pa / standing.factor;
    Ok(worst.map(|(stress_pa, by)| PlateBending { stress_pa, utilization: stress_pa / strength, by, give_m_per_n }))
}

/// Elastic stress along the bending line in a direction, from all that lies beyond it.
fn beyond_pa(plate: &Plate, solution: &PlateSolution, standing: &Standing, way: DVec2) -> Option<f64> {
    let line = standing.at.dot(way) + LINE_SHARE * standing.tube_diameter_m;
    let mut corners = plate.outline.clone();
    if Moments::of(&corners).area < 0.0 {
        corners.reverse();
    }
    let part = cut(&corners, [-line, way.x, way.y]);
    let width = width_at(&corners, way, line)?;
    // Pressure beyond the line, about the line: the plane holds over the pressed part of what was cut off.
    // On nuts the plate presses on nothing else, however far it goes down.
    let [a, b, c] = if plate.bearing == Bearing::LevelingNuts { [0.0; 3] } else { solution.plane };
    let pressed = Moments::where_positive(&part, [a, b, c]);
    let force = a * pressed.area + b * pressed.x + c * pressed.y;
    let along_x = a * pressed.x + b * pressed.xx + c * pressed.xy;
    let along_y = a * pressed.y + b * pressed.xy + c * pressed.yy;
    let mut moment = way.x * along_x + way.y * along_y - line * force;
    for (tension, anchor) in solution.tension_n.iter().zip(&plate.anchors) {
        moment -= tension * (anchor.at.dot(way) - line).max(0.0);
    }
    Some(moment.abs() / (width * plate.thickness_m * plate.thickness_m / 6.0))
}

fn cut(corners: &[DVec2], plane: [f64; 3]) -> Vec<DVec2> {
    let value = |at: DVec2| plane[0] + plane[1] * at.x + plane[2] * at.y;
    let mut part = Vec::with_capacity(corners.len() + 2);
    for (index, &from) in corners.iter().enumerate() {
        let to = corners[(index + 1) % corners.len()];
        let (at_from, at_to) = (value(from), value(to));
        if at_from > 0.0 {
            part.push(from);
        }
        if (at_from > 0.0) != (at_to > 0.0) {
            part.push(from.lerp(to, at_from / (at_from - at_to)));
        }
    }
    part
}

/// Length of a line square to a direction inside the outline, m; none outside it.
fn width_at(corners: &[DVec2], way: DVec2, line: f64) -> Option<f64> {
    let across = way.perp();
    let mut crossed: Vec<f64> = Vec::new();
    for (index, &from) in corners.iter().enumerate() {
        let to = corners[(index + 1) % corners.len()];
        let (at_from, at_to) = (from.dot(way) - line, to.dot(way) - line);
        if (at_from > 0.0) != (at_to > 0.0) {
            crossed.push(from.lerp(to, at_from / (at_from - at_to)).dot(across));
        }
    }
    crossed.sort_by(f64::total_cmp);
    let width: f64 = crossed.chunks_exact(2).map(|pair| pair[1] - pair[0]).sum();
    (width > 0.0).then_some(width)
}

/// The strip of plate that holds one anchor, from the anchor to its bending line.
pub(super) struct Strip {
    /// From the anchor to its bending line, m.
    pub reach_m: f64,
    /// Width at the line, m.
    pub width_m: f64,
}

impl Strip {
    /// None for an anchor under the tube.
    pub fn of(plate: &Plate, standing: &Standing, index: usize) -> Option<Self> {
        let from_axis = plate.anchors[index].at - standing.at;
        let reach_m = from_axis.length() - LINE_SHARE * standing.tube_diameter_m;
        if reach_m <= 0.0 {
            return None;
        }
        let way = from_axis.normalize();
        let side = |across: DVec2| {
            let line = standing.at + way * (from_axis.length() - reach_m);
            let edge = to_edge(&plate.outline, line, across);
            let to_others = plate.anchors.iter().enumerate().filter(|(other, _)| *other != index).map(|(_, anchor)| {
                let away = (anchor.at - plate.anchors[index].at).dot(across);
                if away > 0.0 && (anchor.at - standing.at).dot(way) > 0.0 { away / 2.0 } else { f64::INFINITY }
            });
            to_others.fold(edge.min(reach_m), f64::min)
        };
        Some(Self { reach_m, width_m: side(way.perp()) + side(-way.perp()) })
    }

    fn stress_pa(&self, tension_n: f64, thickness_m: f64) -> f64 {
        tension_n * self.reach_m / (self.width_m * thickness_m * thickness_m / 6.0)
    }

    /// Deflection of a cantilever of the strip's width under a force of 1 N at its end: l³/(3·E·b·t³/12).
    fn give_m_per_n(&self, thickness_m: f64, elastic_pa: f64) -> f64 {
        4.0 * self.reach_m.powi(3) / (elastic_pa * self.width_m * thickness_m.powi(3))
    }
}

/// Distance from a point inside an outline to its rim in a direction, m.
pub(super) fn to_edge(outline: &[DVec2], from: DVec2, way: DVec2) -> f64 {
    let mut nearest = f64::INFINITY;
    for (index, &a) in outline.iter().enumerate() {
        let b = outline[(index + 1) % outline.len()];
        let (side, away) = (b - a, a - from);
        let turn = way.perp_dot(side);
        if turn == 0.0 {
            continue;
        }
        let (along, share) = (away.perp_dot(side) / turn, away.perp_dot(way) / turn);
        if (0.0..=1.0).contains(&share) && along >= 0.0 {
            nearest = nearest.min(along);
        }
    }
    nearest
}

#[cfg(test)]
mod tests {
    use super::super::PreparedPlate;
    use super::super::shape::tests::square;
    use super::*;

    const STANDING: Standing =
        Standing { tube_diameter_m: 0.15, at: DVec2::ZERO, yield_pa: 235e6, elastic_pa: 210e9, factor: 1.0 };

    #[test]
    fn pressure_all_over_bends_the_overhang_as_a_cantilever() {
        // 1 MPa under 0.3 × 0.3 m, tube 0.15 m: the line is at 0.06 m, the overhang 0.09 m: m = p·l²/2 = 4050 N·m/m; t = 20 mm:
        // σ = 6·4050/0.02² = 60.75 MPa. Toward a corner: half-diagonal 0.21213 m, triangle 0.15213 m high from the line and
        // twice as wide: M = p·h³/3, width 2·h: σ = p·h²/6·6/t² = 57.9 MPa, less.
        let plate = square(0.3, 0.04, 245e-6, 7.0);
        let solution = PreparedPlate::new(plate.clone()).unwrap().solve(-90e3, 0.0, 0.0).unwrap();
        let found = bending(&plate, &solution, &STANDING).unwrap().unwrap();
        assert!((found.stress_pa - 60.75e6).abs() < 1e3, "{found:?}");
        assert!((found.utilization - 60.75 / 235.0).abs() < 1e-4 && matches!(found.by, Bends::Beyond(_)));
    }

    #[test]
    fn on_nuts_nothing_but_the_anchors_bends_the_plate() {
        // Pressed by 40 kN on nuts each anchor pushes 10 kN; toward +x two of them at 0.11 m, line at 0.06 m, width 0.3 m:
        // σ = 6·20e3·0.05/(0.3·0.02²) = 50 MPa; the strip of one alone has 75 MPa, the same as when it is pulled.
        let plate = Plate { bearing: Bearing::LevelingNuts, ..square(0.3, 0.04, 245e-6, 7.0) };
        let solution = PreparedPlate::new(plate.clone()).unwrap().solve(-40e3, 0.0, 0.0).unwrap();
        let found = bending(&plate, &solution, &STANDING).unwrap().unwrap();
        assert!((found.stress_pa - 75e6).abs() < 1e3, "{found:?}");
        assert!((beyond_pa(&plate, &solution, &STANDING, DVec2::X).unwrap() - 50e6).abs() < 1e3);
    }

    #[test]
    fn a_pulled_anchor_bends_its_strip() {
        // On leveling nuts each anchor pulls 10 kN; it stands 0.11·√2 = 0.155563 m from the axis, its line at 0.06 m: reach
        // 0.095563 m, strip twice that wide: σ = 3·T/t² = 75 MPa whatever the reach.
        let plate = Plate { bearing: Bearing::LevelingNuts, ..square(0.3, 0.04, 245e-6, 7.0) };
        let solution = PreparedPlate::new(plate.clone()).unwrap().solve(40e3, 0.0, 0.0).unwrap();
        let strip = Strip::of(&plate, &STANDING, 0).unwrap();
        assert!((strip.reach_m - 0.095563).abs() < 1e-6 && (strip.width_m - 2.0 * strip.reach_m).abs() < 1e-12);
        assert!((strip.stress_pa(10e3, 0.02) - 75e6).abs() < 1.0);
        let found = bending(&plate, &solution, &STANDING).unwrap().unwrap();
        // Two anchors beyond a line square to a side bend 0.3 m of plate by 2·10 kN·0.05 m: 50 MPa, one beyond a line square to
        // a diagonal less still; the strip governs. Its give is l³/(3·E·b·t³/12).
        assert!((found.stress_pa - 75e6).abs() < 1.0 && found.by == Bends::Anchor(0), "{found:?}");
        let l: f64 = 0.095_563_492;
        let give = l.powi(3) / (3.0 * 210e9 * (2.0 * l) * 0.02_f64.powi(3) / 12.0);
        assert!((found.give_m_per_n - give).abs() < 1e-6 * give, "{found:?}");
        // Twice as thick: a quarter of the stress, an eighth of the give.
        let thick = Plate { thickness_m: 0.04, ..plate.clone() };
        let firm = bending(&thick, &solution, &STANDING).unwrap().unwrap();
        assert!((firm.stress_pa * 4.0 - found.stress_pa).abs() < 1.0);
        assert!((firm.give_m_per_n * 8.0 - found.give_m_per_n).abs() < 1e-18);
    }

    #[test]
    fn numbers_that_are_none_are_named() {
        let plate = square(0.3, 0.04, 245e-6, 7.0);
        let solution = PreparedPlate::new(plate.clone()).unwrap().solve(-90e3, 0.0, 0.0).unwrap();
        let fault = bending(&plate, &solution, &Standing { yield_pa: f64::NAN, ..STANDING }).unwrap_err();
        assert!(fault.to_string().contains("yield_pa"));
    }
}
