//! The search against dense grids over slew and direction with a scatter round their best points.

use std::f64::consts::{PI, TAU};

use glam::{DMat3, DVec2, DVec3};

use super::wall::{WallFace, action_on_plate};
use super::{Bearing, Candidate, Judge, Plate, PlateAnchor, PlateAxes, PlateOn, PreparedPlate, Searched, UnitOnPlate};
use crate::cone::{Cap, Lean, LoadCone};
use crate::envelope::{Actions, Causes, FixedForce, ForceAxes, ForceOn, Pull, SlewRange};
use crate::stiffness::BarStiffness;
use crate::unit::{BaseFixity, Brace, HeadJoint, Lump, PinOffsets, Place, RopePoint, Unit, UnitModel};
use crate::wrench::Wrench;

/// Numbers in a fixed order that look drawn (Knuth's 64-bit linear congruence, the upper half).
pub(super) struct Drawn(pub u64);

impl Drawn {
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        low + (high - low) * (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn one_of(&mut self, count: usize) -> usize {
        (self.between(0.0, count as f64) as usize).min(count - 1)
    }
}

/// A base with all that is looked at.
struct Case {
    plate: PreparedPlate,
    model: UnitModel,
    actions: Vec<Actions>,
    cap: Cap,
    slews: SlewRange,
    tension_n: f64,
    tip: DVec3,
    weight: Wrench,
    /// One for each set of actions, in the base's axes.
    wind: Vec<Wrench>,
    axes: PlateAxes,
}

/// Height at which fixed winds blow, m.
const WIND_AT_M: f64 = 1.4;

impl Case {
    fn drawn(d: &mut Drawn) -> Self {
        let tip = DVec3::new(d.between(0.5, 2.0), d.between(-0.15, 0.15), d.between(0.8, 2.4));
        let weight = (d.between(400.0, 1800.0), d.between(0.0, 0.4));
        let mut winds = vec![DVec3::ZERO];
        for _ in 0..d.one_of(3) {
            winds.push(DVec3::new(d.between(-900.0, 900.0), d.between(-900.0, 900.0), 0.0));
        }
        let from_rad = d.between(-PI, PI);
        let slews = match d.one_of(4) {
            0 => SlewRange::Between { from_rad, to_rad: from_rad + d.between(0.2, 4.0) },
            1 => SlewRange::At(vec![from_rad, 0.0, 0.5 * PI]),
            _ => SlewRange::WholeTurn,
        };
        let half_angle_rad = [d.between(0.1, 1.1), d.between(0.1, 1.1), 0.5 * PI, PI][d.one_of(4)];
        let lean = Lean { inward_rad: d.between(0.0, 0.6), outward_rad: d.between(0.0, 0.6) };
        let cone = LoadCone { half_angle_rad, lean: (d.one_of(5) == 0).then_some(lean) };
        let face = [WallFace::InFrontOfMast, WallFace::BehindMast, WallFace::LeftOfMast][d.one_of(3)];
        let wall = (d.one_of(4) == 0).then(|| (face, d.between(0.1, 0.3)));
        let tension_n = d.between(4e3, 15e3);
        Self::new(plate(d), tip, weight, &winds, slews, cone, tension_n, wall)
    }

    #[allow(clippy::too_many_arguments)]
    fn new(
        plate: PreparedPlate,
        tip: DVec3,
        (weight_n, weight_at_m): (f64, f64),
        winds: &[DVec3],
        slews: SlewRange,
        cone: LoadCone,
        tension_n: f64,
        wall: Option<(WallFace, f64)>,
    ) -> Self {
        let bar = BarStiffness { ea_n: 2e8, ei_y_nm2: 5e5, ei_z_nm2: 5e5, gj_nm2: 4e5, weight_n_per_m: 0.0 };
        let model = UnitModel::new(&Unit {
            mast: bar,
            mast_height_m: tip.z,
            base: BaseFixity::Rigid,
            arm: bar,
            outreach_m: tip.x,
            tail_m: 0.0,
            head: HeadJoint::Rigid,
            brace: Brace::None,
            pins: PinOffsets::default(),
            points: vec![RopePoint { x_m: tip.x, sideways_m: tip.y, drop_m: 0.0 }],
            lumps: vec![Lump { on: Place::Arm { at_m: weight_at_m }, weight_n }],
        });
        let set = |wind: &DVec3| {
            let on = ForceOn::Base { height_m: WIND_AT_M };
            let force = FixedForce { on, force_n: *wind, axes: ForceAxes::Structure };
            Actions { fixed: vec![force], ..Actions::of_pull(Pull::new(0, tension_n, cone), 1.0) }
        };
        let on =
            wall.map_or(PlateOn::Floor, |(face, eccentricity_m)| PlateOn::Wall { face, eccentricity_m, up_m: 0.2 });
        Self {
            plate,
            model: model.unwrap(),
            actions: winds.iter().map(set).collect(),
            cap: cone.cap().unwrap(),
            slews,
            tension_n,
            tip,
            weight: Wrench::of_force(DVec3::NEG_Z * weight_n, DVec3::X * weight_at_m, DVec3::ZERO),
            wind: winds.iter().map(|w| Wrench::of_force(*w, DVec3::Z * WIND_AT_M, DVec3::ZERO)).collect(),
            axes: PlateAxes { on, down_m: 0.0 },
        }
    }

    fn search(&self, judges: &[&Judge<'_>]) -> Searched {
        let unit = UnitOnPlate::new(&self.model, &self.actions, &self.slews, self.axes).unwrap();
        assert_eq!(unit.looked_at().count(), self.wind.len(), "each blows from elsewhere");
        unit.search(&self.plate, judges).unwrap()
    }

    /// By statics, without any of what the search is made of.
    fn state(&self, actions: usize, slew_rad: f64, direction: DVec3) -> Candidate {
        let tip = DMat3::from_rotation_z(slew_rad) * self.tip;
        let pull_n = direction * self.tension_n;
        let on_base = Wrench::of_force(pull_n, tip, DVec3::ZERO) + self.weight.slewed(slew_rad) + self.wind[actions];
        let action = match self.axes.on {
            PlateOn::Floor => on_base,
            PlateOn::Wall { face, eccentricity_m, up_m } => action_on_plate(on_base, face, eccentricity_m, up_m),
        };
        let solution = self.plate.solve(action.force_n.z, action.moment_nm.x, action.moment_nm.y);
        let causes = Causes {
            pulls_n: vec![pull_n],
            second_legs_n: vec![0.0],
            wind: DVec2::ZERO,
            tether: DVec2::ZERO,
            foot_lost: false,
            brace_slack: false,
        };
        Candidate { actions, slew_rad, causes, action, solution }
    }

    fn slews_in(&self, count: usize) -> Vec<f64> {
        match &self.slews {
            SlewRange::WholeTurn => (0..count).map(|i| TAU * i as f64 / count as f64).collect(),
            SlewRange::Between { from_rad, to_rad } => {
                (0..=count).map(|i| from_rad + (to_rad - from_rad) * i as f64 / count as f64).collect()
            }
            SlewRange::At(list) => list.clone(),
        }
    }

    /// The worst of a grid over the whole cap and of a scatter, ever closer, round its ten best points.
    fn densely(&self, judge: &Judge<'_>, d: &mut Drawn) -> f64 {
        let mut grid = Vec::new();
        for variant in 0..self.wind.len() {
            for slew in self.slews_in(40) {
                for direction in raster() {
                    let state = self.state(variant, slew, self.cap.maximizer(direction));
                    grid.push((judge(&state), variant, slew, state.causes.pulls_n[0] / self.tension_n));
                }
            }
        }
        grid.sort_by(|a, b| b.0.total_cmp(&a.0));
        grid.truncate(10);
        grid.into_iter().map(|start| self.scatter(start, judge, d)).fold(0.0, f64::max)
    }

    fn scatter(&self, mut best: (f64, usize, f64, DVec3), judge: &Judge<'_>, d: &mut Drawn) -> f64 {
        for i in 0..90 {
            let reach = 0.15 * 0.95f64.powi(i);
            let moved = best.2 + d.between(-reach, reach);
            let slew = match &self.slews {
                SlewRange::WholeTurn => moved,
                SlewRange::Between { from_rad, to_rad } => moved.clamp(*from_rad, *to_rad),
                SlewRange::At(_) => best.2,
            };
            let near = DVec3::new(d.between(-reach, reach), d.between(-reach, reach), d.between(-reach, reach));
            let state = self.state(best.1, slew, self.cap.maximizer(best.3 + near));
            let value = judge(&state);
            if value > best.0 {
                best = (value, best.1, slew, state.causes.pulls_n[0] / self.tension_n);
            }
        }
        best.0
    }
}

/// Directions over the whole sphere; those outside a cone stand for the nearest of its rim.
fn raster() -> impl Iterator<Item = DVec3> {
    (0..=9).flat_map(|ring| {
        let (sin, cos) = (PI * f64::from(ring) / 9.0).sin_cos();
        let count = if sin < 1e-9 { 1 } else { 12 };
        (0..count).map(move |i| (DVec2::from_angle(TAU * f64::from(i) / 12.0) * sin).extend(-cos))
    })
}

pub(super) fn plate(d: &mut Drawn) -> PreparedPlate {
    let half = DVec2::new(d.between(0.14, 0.26), d.between(0.14, 0.26));
    let ring = |count: usize, radius: f64, turn: f64| {
        (0..count).map(move |i| DVec2::from_angle(turn + TAU * i as f64 / count as f64) * radius)
    };
    let corners = [DVec2::new(-1.0, -1.0), DVec2::new(1.0, -1.0), DVec2::new(1.0, 1.0), DVec2::new(-1.0, 1.0)];
    let round = d.one_of(2) == 0;
    let outline = if round { ring(16, half.x, 0.0).collect() } else { corners.map(|c| c * half).to_vec() };
    let (count, turn, area_m2) = (3 + d.one_of(6), d.between(0.0, PI), d.between(100e-6, 400e-6));
    let in_corners = !round && d.one_of(2) == 0;
    let at: Vec<DVec2> = if in_corners {
        corners.map(|c| c * (half - 0.04)).to_vec()
    } else {
        ring(count, half.min_element() - 0.04, turn).collect()
    };
    let plate = Plate {
        outline,
        thickness_m: 0.025,
        anchors: at.into_iter().map(|at| PlateAnchor::new(at, area_m2)).collect(),
        bearing: Bearing::Concrete,
        modular_ratio: d.between(6.0, 20.0),
    };
    PreparedPlate::new(plate).unwrap()
}

/// Four ways to judge: the hardest pulled anchor; pull and shear of anchors as steel and concrete combine them; the cone of the
/// whole group with its eccentricity from the middle; the greatest pressure.
fn judges(at: &[DVec2]) -> [Box<Judge<'_>>; 4] {
    let pull = |c: &Candidate| c.solution.as_ref().map_or(f64::INFINITY, super::PlateSolution::greatest_tension_n);
    let shear = |c: &Candidate| c.action.force_n.truncate().length();
    let group = move |c: &Candidate| {
        let Ok(s) = &c.solution else { return f64::INFINITY };
        let moment: DVec2 = s.tension_n.iter().zip(at).map(|(t, at)| at * *t).sum();
        s.total_tension_n() / 40e3 + moment.length() / (40e3 * 0.2)
    };
    [
        Box::new(pull),
        Box::new(move |c| (pull(c) / 30e3).powf(1.5) + (shear(c) / 20e3).powf(1.5)),
        Box::new(group),
        Box::new(|c| c.solution.as_ref().map_or(f64::INFINITY, |s| s.greatest_pressure_pa)),
    ]
}

/// The share by which each of so many drawn bases was missed, against brute force: thousands of states, most of them far from
/// where the search looks.
fn missed(seed: u64, count: usize) -> Vec<f64> {
    let mut d = Drawn(seed);
    let mut shares = Vec::new();
    for number in 0..count {
        let case = Case::drawn(&mut d);
        let at: Vec<DVec2> = case.plate.plate().anchors.iter().map(|anchor| anchor.at).collect();
        let judges = judges(&at);
        let judge = &judges[number % judges.len()];
        let found = case.search(&[judge]);
        let (index, value) = found.worst[0];
        assert!(found.solutions <= 410, "{number}: {}", found.solutions);
        assert_eq!(found.judge_again(judge), Some((index, value)));
        shares.push(1.0 - value / case.densely(judge, &mut d));
    }
    shares
}

/// A tenth of a percent is what was asked for.
#[test]
fn nothing_over_a_thousandth_is_missed_on_a_hundred_drawn_bases() {
    let over: Vec<_> = missed(20260317, 100).into_iter().enumerate().filter(|(_, share)| *share > 1e-3).collect();
    assert!(over.is_empty(), "{over:?}");
}

/// Measures other bases: `FRESH=seed cargo test … -- --ignored --nocapture`.
#[test]
#[ignore = "for whoever changes the search"]
fn fresh_bases_without_jumps_are_measured() {
    let seed = std::env::var("FRESH").ok().and_then(|n| n.parse().ok()).unwrap_or(7);
    let over: Vec<_> = missed(seed, 200).into_iter().enumerate().filter(|(_, share)| *share > 1e-3).collect();
    println!("{} of 200 missed: {over:?}", over.len());
    assert!(over.iter().all(|(_, share)| *share < 0.05));
}

/// By hand: on a round plate with many anchors every tilt is alike, and a rope straight down tilts by T·a at any slew.
#[test]
fn a_rope_that_only_hangs_tilts_by_its_outreach() {
    let tip = DVec3::new(1.3, 0.0, 1.9);
    let cone = LoadCone::whole(0.0);
    let plate = plate(&mut Drawn(3));
    let case = Case::new(plate, tip, (0.0, 0.1), &[DVec3::ZERO], SlewRange::WholeTurn, cone, 9e3, None);
    let found = case.search(&[&|c: &Candidate| c.action.moment_nm.truncate().length()]);
    assert!((found.worst[0].1 - case.tension_n * case.tip.x).abs() < 1e-9 * found.worst[0].1);
}

/// What a judge can't put a number on is as bad as can be, and the first such state is named.
#[test]
fn no_number_is_never_harmless() {
    let case = Case::drawn(&mut Drawn(5));
    let found = case.search(&[&|c: &Candidate| if c.causes.pulls_n[0] == DVec3::ZERO { 0.0 } else { f64::NAN }]);
    assert_eq!(found.worst[0].1, f64::INFINITY);
}
