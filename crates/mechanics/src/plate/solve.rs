//! Settlement and tilt of a plate under a force and two moments, by Newton's method with exact integrals.
//!
//! With w = a + b·x + c·y the settlement times the concrete's stiffness, the concrete presses with w where w > 0, and an
//! anchor of stiffness s = n·A_s·(its factor) pulls with −s·w where w < 0. In equilibrium with the action (Fz, Mx, My) on
//! the plate
//!
//! ∫w dA + Σ s·w = −Fz, ∫w·x dA + Σ s·w·x = My, ∫w·y dA + Σ s·w·y = −Mx,
//!
//! integrals over w > 0 and sums over w < 0. These are the slopes of a convex function of (a, b, c), so that Newton's
//! steps, shortened where they don't go down, end at the one solution. Source: the cracked elastic section of any book on
//! reinforced concrete; held against `concreteproperties`.

use glam::DVec2;

use super::moments::Moments;
use super::shape::{Bearing, Plate, PlateFault};
use super::solution::PlateSolution;

/// Steps after which a plate counts as one that nothing holds; ten are usual.
const MOST_STEPS: usize = 80;
/// Remaining actions, as a share of those given, at which a solution counts as found.
const FOUND: f64 = 1e-11;

/// A plate that was checked, with what every solution needs.
#[derive(Debug, Clone, PartialEq)]
pub struct PreparedPlate {
    plate: Plate,
    /// Corners counter-clockwise; empty when the plate presses on nothing.
    corners: Vec<DVec2>,
    /// n·A_s·factor of each anchor, m².
    stiffness_m2: Vec<f64>,
    /// Of the whole plate and all anchors: the size of what stands in the equations.
    whole: Normal,
    size_m: f64,
}

/// The symmetric 3 × 3 matrix of moments 1, x, y, xx, xy, yy.
type Normal = Moments;

impl PreparedPlate {
    /// Checks a plate and prepares it.
    pub fn new(plate: Plate) -> Result<Self, PlateFault> {
        plate.check()?;
        let mut corners = plate.outline.clone();
        if Moments::of(&corners).area < 0.0 {
            corners.reverse();
        }
        if plate.bearing == Bearing::LevelingNuts {
            corners.clear();
        }
        let stiffness_m2: Vec<f64> = plate
            .anchors
            .iter()
            .map(|anchor| plate.modular_ratio * anchor.stress_area_m2 * anchor.stiffness_factor)
            .collect();
        let mut whole = Moments::of(&corners);
        for (anchor, stiffness) in plate.anchors.iter().zip(&stiffness_m2) {
            add(&mut whole, anchor.at, *stiffness);
        }
        let size_m = plate.outline.iter().map(|corner| corner.length()).fold(0.0, f64::max);
        Ok(Self { plate, corners, stiffness_m2, whole, size_m })
    }

    /// The plate.
    pub const fn plate(&self) -> &Plate {
        &self.plate
    }

    /// How far its farthest corner lies from the reference point, m.
    pub(super) const fn size_m(&self) -> f64 {
        self.size_m
    }

    /// Solves the plate under an action on it at its reference point: force `fz_n` along z, out of the concrete, and
    /// moments about x and y by the right-hand rule.
    ///
    /// Errors: a number that is none; actions that neither anchors nor contact resist.
    pub fn solve(&self, fz_n: f64, mx_nm: f64, my_nm: f64) -> Result<PlateSolution, PlateFault> {
        self.solve_from(None, [fz_n, mx_nm, my_nm])
    }

    /// The same, begun at the plane of a solution under nearly the same action: quicker by some steps.
    pub(super) fn solve_near(&self, near: &PlateSolution, action: [f64; 3]) -> Result<PlateSolution, PlateFault> {
        self.solve_from(Some(near.plane), action)
    }

    fn solve_from(&self, start: Option<[f64; 3]>, [fz_n, mx_nm, my_nm]: [f64; 3]) -> Result<PlateSolution, PlateFault> {
        for (field, value) in [("fz_n", fz_n), ("mx_nm", mx_nm), ("my_nm", my_nm)] {
            if !value.is_finite() {
                return Err(PlateFault::OutOfRange { field: field.to_owned(), value, asked: "a finite number" });
            }
        }
        // What the slopes must make up for, in the order 1, x, y.
        let load = [fz_n, -my_nm, mx_nm];
        let size = fz_n.abs() + (mx_nm.abs() + my_nm.abs()) / self.size_m;
        if size == 0.0 {
            return Ok(self.solution([0.0; 3]));
        }
        let small = [FOUND * size, FOUND * size * self.size_m, FOUND * size * self.size_m];
        let elastic = || solved(&self.whole, load.map(|part| -part)).unwrap_or([0.0; 3]);
        let mut at = start.unwrap_or_else(elastic);
        for _ in 0..MOST_STEPS {
            let normal = self.normal(at);
            let slope = sum(times(&normal, at), load);
            if (0..3).all(|i| slope[i].abs() <= small[i]) {
                return Ok(self.solution(at));
            }
            let step = self.step(&normal, slope);
            at = self.downhill(at, step, &normal, load);
        }
        Err(PlateFault::NothingResists { fz_n, mx_nm, my_nm })
    }

    /// Moments of what carries at a settlement: the pressed part and the pulled anchors.
    fn normal(&self, plane: [f64; 3]) -> Normal {
        let mut normal = Moments::where_positive(&self.corners, plane);
        for (anchor, stiffness) in self.plate.anchors.iter().zip(&self.stiffness_m2) {
            let settles = plane[0] + plane[1] * anchor.at.x + plane[2] * anchor.at.y;
            if settles < 0.0 || self.corners.is_empty() {
                add(&mut normal, anchor.at, *stiffness);
            }
        }
        normal
    }

    /// Newton's step; where what carries does not hold all three, a little of the whole is added.
    fn step(&self, normal: &Normal, slope: [f64; 3]) -> [f64; 3] {
        let back = slope.map(|part| -part);
        for share in [0.0, 1e-9, 1e-6, 1e-3] {
            if let Some(step) = solved(&mixed(normal, &self.whole, share), back) {
                return step;
            }
        }
        back
    }

    /// The farthest of the step and its halves that goes down.
    fn downhill(&self, from: [f64; 3], step: [f64; 3], normal: &Normal, load: [f64; 3]) -> [f64; 3] {
        let height = |at: [f64; 3], normal: &Normal| dot(at, times(normal, at)) / 2.0 + dot(at, load);
        let start = height(from, normal);
        let slope = dot(sum(times(normal, from), load), step);
        // Close to the end heights differ by less than their rounding, and the whole step is right.
        let rounding = 1e-12 * start.abs();
        let mut share = 1.0;
        for _ in 0..30 {
            let to = sum(from, step.map(|part| part * share));
            if height(to, &self.normal(to)) <= start + 1e-4 * share * slope + rounding {
                return to;
            }
            share /= 2.0;
        }
        sum(from, step)
    }

    fn solution(&self, plane: [f64; 3]) -> PlateSolution {
        let value = |at: DVec2| plane[0] + plane[1] * at.x + plane[2] * at.y;
        let pushes = self.corners.is_empty();
        let tension = |(anchor, stiffness): (&super::PlateAnchor, &f64)| {
            let pull = -stiffness * value(anchor.at);
            // Adding 0 turns the −0 of an anchor that does nothing into 0.
            if pushes { pull + 0.0 } else { pull.max(0.0) + 0.0 }
        };
        let pressed = Moments::where_positive(&self.corners, plane);
        let [pressure_n, along_x, along_y] = times(&pressed, plane);
        let greatest = self.corners.iter().map(|&corner| value(corner)).fold(0.0, f64::max);
        PlateSolution {
            plane,
            tension_n: self.plate.anchors.iter().zip(&self.stiffness_m2).map(tension).collect(),
            pressure_n,
            pressure_at: (pressure_n > 0.0).then(|| DVec2::new(along_x, along_y) / pressure_n),
            greatest_pressure_pa: greatest,
        }
    }
}

fn add(to: &mut Normal, at: DVec2, stiffness: f64) {
    to.area += stiffness;
    to.x += stiffness * at.x;
    to.y += stiffness * at.y;
    to.xx += stiffness * at.x * at.x;
    to.xy += stiffness * at.x * at.y;
    to.yy += stiffness * at.y * at.y;
}

fn mixed(one: &Normal, other: &Normal, share: f64) -> Normal {
    Moments {
        area: one.area + share * other.area,
        x: one.x + share * other.x,
        y: one.y + share * other.y,
        xx: one.xx + share * other.xx,
        xy: one.xy + share * other.xy,
        yy: one.yy + share * other.yy,
    }
}

fn times(m: &Normal, v: [f64; 3]) -> [f64; 3] {
    [
        m.area * v[0] + m.x * v[1] + m.y * v[2],
        m.x * v[0] + m.xx * v[1] + m.xy * v[2],
        m.y * v[0] + m.xy * v[1] + m.yy * v[2],
    ]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn sum(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

/// The solution of three equations by Cholesky; none where they don't hold all three.
fn solved(m: &Normal, right: [f64; 3]) -> Option<[f64; 3]> {
    const LEAST_SHARE: f64 = 1e-12;
    let root = |pivot: f64, of: f64| (pivot > LEAST_SHARE * of && of > 0.0).then(|| pivot.sqrt());
    let l00 = root(m.area, m.area)?;
    let (l10, l20) = (m.x / l00, m.y / l00);
    let l11 = root(m.xx - l10 * l10, m.xx)?;
    let l21 = (m.xy - l20 * l10) / l11;
    let l22 = root(m.yy - l20 * l20 - l21 * l21, m.yy)?;
    let y0 = right[0] / l00;
    let y1 = (right[1] - l10 * y0) / l11;
    let y2 = (right[2] - l20 * y0 - l21 * y1) / l22;
    let c = y2 / l22;
    let b = (y1 - l21 * c) / l11;
    Some([(y0 - l10 * b - l20 * c) / l00, b, c])
}

#[cfg(test)]
mod tests {
    use super::super::shape::tests::square;
    use super::super::{Bearing, PlateAnchor};
    use super::*;
    use proptest::prelude::*;

    /// Blodgett's cubic for a rectangle B × D under P at eccentricity e with bolts of total area A at f from the middle:
    /// Y³ + 3(e − D/2)Y² + (6nA/B)(f + e)Y − (6nA/B)(f + e)(D/2 + f) = 0, T = −P(D/2 − Y/3 − e)/(D/2 − Y/3 + f).
    fn cubic(p: f64, e: f64, b: f64, d: f64, f: f64, na: f64) -> (f64, f64, f64) {
        let (k1, k2) = (3.0 * (e - d / 2.0), 6.0 * na * (f + e) / b);
        let k3 = -k2 * (d / 2.0 + f);
        let of = |y: f64| ((y + k1) * y + k2) * y + k3;
        let (mut low, mut high) = (0.0, d);
        for _ in 0..200 {
            let middle = f64::midpoint(low, high);
            if of(middle) > 0.0 { high = middle } else { low = middle }
        }
        let y = f64::midpoint(low, high);
        let t = -p * (d / 2.0 - y / 3.0 - e) / (d / 2.0 - y / 3.0 + f);
        (y, t, 2.0 * (p + t) / (y * b))
    }

    #[test]
    fn one_moment_and_a_force_are_blodgetts_cubic() {
        // Rectangle 0.3 × 0.3, two bolts on the pulled side; P = 20 kN, M = 8 kN·m and others.
        for (p, m) in [(20e3, 8e3), (100e3, 11e3), (5e3, 20e3)] {
            let mut plate = square(0.3, 0.04, 245e-6, 7.0);
            plate.anchors.retain(|anchor| anchor.at.y < 0.0);
            let solution = PreparedPlate::new(plate).unwrap().solve(-p, -m, 0.0).unwrap();
            let (y, t, pressure) = cubic(p, m / p, 0.3, 0.3, 0.11, 2.0 * 7.0 * 245e-6);
            assert!((solution.total_tension_n() - t).abs() < 1e-9 * t, "{} {t}", solution.total_tension_n());
            assert!((solution.greatest_pressure_pa - pressure).abs() < 1e-9 * pressure);
            let neutral_y = -solution.plane[0] / solution.plane[2];
            assert!((0.15 - neutral_y - y).abs() < 1e-9);
        }
    }

    #[test]
    fn the_published_plate_bears_what_the_right_cubic_says() {
        // Published case A7 with its sign mended (D = B = 300 mm, f = 86 mm, n = 10, A = 390.781748 mm² in all, P = 1075 kgf,
        // M = 1,096,875 kgf·mm): T = 4540.03 kgf, Y = 72.567 mm.
        let mut plate = square(0.3, 0.064, 390.781748e-6 / 2.0, 10.0);
        plate.anchors.retain(|anchor| anchor.at.y < 0.0);
        let kgf = 9.80665;
        let solution = PreparedPlate::new(plate).unwrap().solve(-1075.0 * kgf, -1096.875 * kgf, 0.0).unwrap();
        assert!((solution.total_tension_n() / kgf - 4540.028119).abs() < 1e-5);
        let neutral_y = -solution.plane[0] / solution.plane[2];
        assert!((0.15 - neutral_y - 0.072_566_851).abs() < 1e-8);
    }

    #[test]
    fn plates_bent_about_both_axes_pull_as_in_concreteproperties() {
        // Published cases A8-1 to A8-5 (concreteproperties 0.7.0): 300 × 300 mm, bolts at ±110 mm of 245 mm², n = 7. There
        // moments press +y and +x.
        let plate = PreparedPlate::new(square(0.3, 0.04, 245e-6, 7.0)).unwrap();
        let cases = [
            (20e3, 8e3, 0.0, [12029.771164, 12029.771164, 0.0, 0.0], 3.436e6),
            (20e3, 6e3, 6e3, [15315.077954, 4456.496145, 0.0, 4456.496145], 6.035e6),
            (0.0, 8e3, 5e3, [22848.322220, 12484.895620, 0.0, 3903.824372], 6.874e6),
            (-10e3, 5e3, 3e3, [16930.734028, 9889.125894, 0.0, 3359.835985], 4.332e6),
        ];
        for (push_n, presses_y_nm, presses_x_nm, tension, pressure) in cases {
            // A moment that presses +y turns +y down: about −x. One that presses +x turns +x down: about +y.
            let solution = plate.solve(-push_n, -presses_y_nm, presses_x_nm).unwrap();
            for (found, wanted) in solution.tension_n.iter().zip(tension) {
                // The other program cuts its section into pieces: 0.01 %.
                assert!((found - wanted).abs() < 1e-4 * 16e3, "{:?} {tension:?}", solution.tension_n);
            }
            assert!((solution.greatest_pressure_pa - pressure).abs() < 5e-4 * pressure);
        }
    }

    #[test]
    fn a_plate_pulled_straight_shares_by_stiffness_and_says_that_nothing_presses() {
        let plate = PreparedPlate::new(square(0.3, 0.04, 245e-6, 7.0)).unwrap();
        let solution = plate.solve(40e3, 0.0, 0.0).unwrap();
        assert!(!solution.has_contact() && solution.pressed(plate.plate()).is_empty());
        assert!(solution.tension_n.iter().all(|tension| (tension - 10e3).abs() < 1e-6));
        // Pressed straight nothing is pulled, and the pressure is the force over the area.
        let solution = plate.solve(-90e3, 0.0, 0.0).unwrap();
        assert_eq!(solution.greatest_tension_n(), 0.0);
        assert!((solution.greatest_pressure_pa - 1e6).abs() < 1e-3);
    }

    #[test]
    fn on_leveling_nuts_anchors_push_as_in_a_bolt_group() {
        let plate = Plate { bearing: Bearing::LevelingNuts, ..square(0.3, 0.04, 245e-6, 7.0) };
        let solution = PreparedPlate::new(plate).unwrap().solve(-20e3, 4.4e3, 0.0).unwrap();
        // T = Fz/4 + M·y/Σy² = −5 kN ± 4.4 kN·m·0.11/(4·0.11²) = −5 ± 10 kN.
        for (found, wanted) in solution.tension_n.iter().zip([-15e3, -15e3, 5e3, 5e3]) {
            assert!((found - wanted).abs() < 1e-6, "{:?}", solution.tension_n);
        }
    }

    #[test]
    fn what_nothing_resists_is_a_fault() {
        let mut plate = square(0.3, 0.04, 245e-6, 7.0);
        plate.anchors = vec![PlateAnchor::new(DVec2::ZERO, 245e-6)];
        plate.bearing = Bearing::LevelingNuts;
        let prepared = PreparedPlate::new(plate).unwrap();
        assert!(matches!(prepared.solve(10e3, 1e3, 0.0), Err(PlateFault::NothingResists { .. })));
        assert!(matches!(prepared.solve(f64::NAN, 0.0, 0.0), Err(PlateFault::OutOfRange { .. })));
    }

    #[test]
    fn one_anchor_and_contact_hold_a_moment() {
        let mut plate = square(0.3, 0.04, 245e-6, 7.0);
        plate.anchors = vec![PlateAnchor::new(DVec2::ZERO, 500e-6)];
        let prepared = PreparedPlate::new(plate).unwrap();
        let solution = prepared.solve(0.0, -2e3, 0.0).unwrap();
        let z = solution.lever_arm_m(prepared.plate()).unwrap();
        assert!((solution.total_tension_n() * z - 2e3).abs() < 1e-6 * 2e3);
        // Pulled straight the anchor alone holds it, with nothing to keep the plate level: the least tilt is none.
        let straight = prepared.solve(10e3, 0.0, 0.0).unwrap();
        assert!((straight.total_tension_n() - 10e3).abs() < 1e-3);
    }

    proptest! {
        /// Statics is the witness: tensions and pressure balance the action.
        #[test]
        fn tensions_and_pressure_balance_the_action(
            fz in -200e3..60e3_f64, mx in -30e3..30e3_f64, my in -30e3..30e3_f64,
            corners in prop::collection::vec((0.6..1.4_f64, 0.0..0.9_f64), 3..9),
            anchors in prop::collection::vec((0.2..0.85_f64, 0.0..0.9_f64), 3..9),
            n in 5.0..15.0_f64,
        ) {
            let around = |all: &[(f64, f64)], size: f64| -> Vec<DVec2> {
                let count = all.len() as f64;
                all.iter().enumerate().map(|(i, (r, turn))| {
                    DVec2::from_angle(std::f64::consts::TAU * (i as f64 + 0.5 * turn) / count) * *r * size
                }).collect()
            };
            let outline = around(&corners, 0.2);
            let at = around(&anchors, 0.2 * 0.3);
            let plate = Plate {
                outline,
                thickness_m: 0.02,
                anchors: at.into_iter().map(|at| PlateAnchor::new(at, 245e-6)).collect(),
                bearing: Bearing::Concrete,
                modular_ratio: n,
            };
            prop_assume!(plate.check().is_ok());
            let prepared = PreparedPlate::new(plate).unwrap();
            let solution = prepared.solve(fz, mx, my).unwrap();
            let (mut f, mut m) = (fz + solution.pressure_n, DVec2::new(mx, my));
            if let Some(at) = solution.pressure_at {
                m += DVec2::new(at.y, -at.x) * solution.pressure_n;
            }
            for (tension, anchor) in solution.tension_n.iter().zip(&prepared.plate().anchors) {
                f -= tension;
                m -= DVec2::new(anchor.at.y, -anchor.at.x) * *tension;
            }
            let size = fz.abs() + (mx.abs() + my.abs()) / 0.2;
            prop_assert!(f.abs() < 1e-8 * size && m.length() < 1e-8 * size, "{f} {m:?}");
        }
    }
}
