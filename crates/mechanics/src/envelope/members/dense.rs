//! The search for the worst utilization against dense sampling of rope directions through the model's own answers.

use std::f64::consts::PI;

use glam::DVec3;

use super::*;
use crate::cone::{Lean, LoadCone};
use crate::envelope::{Actions, EnvelopeFault, Pull, SlewRange, WindOnUnit};
use crate::material::{BucklingClass, Forming, HazFactors, Material};
use crate::member::{
    Aisc360Factors, At, En1993Factors, En1999Factors, HoleAxis, InternalForces, Member, MemberActions, MemberCode,
    MemberResistance, Mode, MomentShape, Outcome, PinHole, SpanMaxima,
};
use crate::section::Section;
use crate::stiffness::BarStiffness;
use crate::unit::{
    BaseFixity, Brace, BraceAction, HeadJoint, Influence, Lump, Part, PinOffsets, Place, RopePoint, Side, Station,
    Unit, UnitModel,
};

const EN1993: MemberCode = MemberCode::En1993(En1993Factors { gamma_m0: 1.0, gamma_m1: 1.0, gamma_m2: 1.25 });
const EN1999: MemberCode = MemberCode::En1999(En1999Factors { gamma_m1: 1.1, gamma_m2: 1.25 });
const AISC360: MemberCode = MemberCode::Aisc360(Aisc360Factors {
    compression: 0.9,
    bending: 0.9,
    shear: 0.9,
    torsion: 0.9,
    tension_yield: 0.9,
    tension_rupture: 0.75,
    second_order: 1.0,
});

const MAST: Section = Section::RoundTube { diameter_m: 0.1, wall_m: 0.006 };
const ARM: Section = Section::RectTube { depth_m: 0.11, width_m: 0.07, wall_m: 0.005, outer_radius_m: 0.0075 };
const STRUT: Section = Section::RoundTube { diameter_m: 0.045, wall_m: 0.003 };

/// A unit with everything that its members' checks need.
struct Case {
    model: UnitModel,
    mast: MemberResistance,
    arm: MemberResistance,
    brace: MemberResistance,
    marks: [Mark; 2],
}

impl Case {
    fn new(brace: impl Fn(BarStiffness) -> Brace, head: HeadJoint, code: &MemberCode) -> Self {
        let haz = HazFactors { proof: 0.5, ultimate: 0.65 };
        let material = match code {
            MemberCode::En1999(_) => Material::aluminum(240e6, 270e6, BucklingClass::A, haz),
            _ => Material::steel(355e6, 470e6, Forming::ColdFormed),
        };
        let bar = |section: Section| section.stiffness(&material).unwrap();
        let unit = Unit {
            mast: bar(MAST),
            mast_height_m: 1.7,
            base: BaseFixity::Rigid,
            arm: bar(ARM),
            outreach_m: 1.3,
            tail_m: 0.8,
            head,
            brace: brace(bar(STRUT)),
            pins: PinOffsets::default(),
            points: vec![
                RopePoint { x_m: 1.25, sideways_m: 0.0, drop_m: 0.08 },
                RopePoint { x_m: 1.1, sideways_m: 0.05, drop_m: 0.08 },
            ],
            lumps: vec![Lump { on: Place::Arm { at_m: 0.6 }, weight_n: 80.0 }],
        };
        let member = |section, length| Member {
            moment_shape_y: MomentShape::Sway,
            moment_shape_z: MomentShape::Sway,
            pin_hole: Some(PinHole { diameter_m: 0.016, axis: HoleAxis::AlongY }),
            ..Member::plain(section, material, length)
        };
        let resistance = |member: Member| member.resistance(code).unwrap();
        Self {
            model: UnitModel::new(&unit).unwrap(),
            mast: resistance(member(MAST, 3.4)),
            arm: resistance(member(ARM, 1.3)),
            brace: resistance(member(STRUT, 1.1)),
            marks: [Mark { from_m: 0.0, to_m: 0.04, at: At::Weld }, Mark { from_m: 0.5, to_m: 0.5, at: At::PinHole }],
        }
    }

    /// Mast, arm, and the brace if there is one.
    fn parts(&self) -> Vec<MemberPart<'_>> {
        let mut parts = vec![
            MemberPart { part: Part::Mast, resistance: &self.mast, marks: &self.marks },
            MemberPart { part: Part::Arm, resistance: &self.arm, marks: &self.marks },
        ];
        if !matches!(self.model.unit().brace, Brace::None) {
            parts.push(self.brace_part());
        }
        parts
    }

    fn brace_part(&self) -> MemberPart<'_> {
        MemberPart { part: Part::Brace, resistance: &self.brace, marks: &[] }
    }
}

fn front(bar: BarStiffness) -> Brace {
    Brace::Front { arm_at_m: 0.5, mast_at_m: 0.9, bar, action: BraceAction::Both }
}

fn rear(bar: BarStiffness) -> Brace {
    Brace::RearToMast { tail_at_m: 0.7, mast_at_m: 0.6, bar, action: BraceAction::Both }
}

fn nothing(_: BarStiffness) -> Brace {
    Brace::None
}

/// Directions of a whole cone in arm axes on a raster of about `step` rad, its rim and axis included.
fn directions(half_angle: f64, step: f64) -> Vec<DVec3> {
    let rings = (half_angle / step).ceil().max(1.0) as i32;
    let mut all = vec![-DVec3::Z];
    for ring in 1..=rings {
        let (sin, cos) = (half_angle * f64::from(ring) / f64::from(rings)).sin_cos();
        let count = (2.0 * PI * sin / step).ceil().max(8.0) as i32;
        for i in 0..count {
            // Turned by an odd angle, so that no direction is one of the search's own starts.
            let (s, c) = (0.123 + 2.0 * PI * f64::from(i) / f64::from(count)).sin_cos();
            all.push(DVec3::new(sin * c, sin * s, -cos));
        }
    }
    all
}

/// What the model says about the forces at the cuts of a part, asked anew.
struct Sampled {
    at: Vec<At>,
    rows: Vec<([DVec3; 6], [f64; 6])>,
}

impl Sampled {
    fn new(influence: &Influence<'_>, stations: &[Station], point: usize, marks: &[Mark]) -> Self {
        let weak = |s: &Station| {
            let here = marks.iter().filter(|m| (m.from_m..=m.to_m).contains(&s.at_m));
            here.map(|m| m.at).next().unwrap_or(At::Plain)
        };
        Self {
            at: stations.iter().map(weak).collect(),
            rows: stations
                .iter()
                .map(|s| (influence.section_of_pull(*s, point).unwrap(), influence.section_of_weight(*s).unwrap()))
                .collect(),
        }
    }

    /// The worst of all cuts and modes under one pull, moments amplified by `k`.
    fn worst(&self, resistance: &MemberResistance, pull: DVec3, weight: f64, k: f64) -> f64 {
        let mut span = SpanMaxima::default();
        let mut largest = [0.0; 6];
        let mut most: f64 = 0.0;
        for ((rows, own), at) in self.rows.iter().zip(&self.at) {
            let mut f: [f64; 6] = std::array::from_fn(|i| rows[i].dot(pull) + weight * own[i]);
            f[4] *= k;
            f[5] *= k;
            let station = InternalForces::from_array(f);
            span = span.max(SpanMaxima::of(&station));
            largest = std::array::from_fn(|i| f64::max(largest[i], f[i].abs()));
            let actions = MemberActions { station, at: *at, span: SpanMaxima::default() };
            most = most.max(resistance.governing(&actions).utilization);
        }
        let station = InternalForces { v_y_n: largest[1], v_z_n: largest[2], t_nm: largest[3], ..Default::default() };
        let stability = resistance.by_mode(&MemberActions { station, at: At::Plain, span }).get(Mode::Stability);
        match stability {
            Outcome::Utilization(value) => most.max(value),
            _ => most,
        }
    }
}

fn sampled_worst(case: &Case, part: &MemberPart<'_>, between: usize, (angle, step): (f64, f64), k: f64) -> f64 {
    let influence = case.model.influence(0.0).unwrap();
    let mut stations: Vec<Station> = case.model.stations(between).into_iter().filter(|s| s.part == part.part).collect();
    for at_m in part.marks.iter().flat_map(|m| [m.from_m, m.to_m]).filter(|at_m| *at_m > 0.0) {
        stations.extend([Side::Before, Side::After].map(|side| Station { part: part.part, at_m, side }));
    }
    let sampled = Sampled::new(&influence, &stations, 0, part.marks);
    let mut most = sampled.worst(part.resistance, DVec3::ZERO, 1.1, k);
    for d in directions(angle, step) {
        most = most.max(sampled.worst(part.resistance, d * 4e3, 1.1, k));
    }
    most
}

/// The search must reach every sampled value, and two rasters, one twice finer, must close in on it from below.
fn compare(case: &Case, angle: f64, k: SecondOrder) {
    let actions = Actions::of_pull(Pull::new(0, 4e3, LoadCone::whole(angle)), 1.1);
    let found = member_envelope(&case.model, &actions, &SlewRange::WholeTurn, &case.parts(), k).unwrap();
    for (part, found) in case.parts().iter().zip(&found.uses) {
        // A raster of step s misses a smooth peak by about s²/8 of it; the corners of the criteria make it s/2.
        let step = (angle / 12.0).clamp(0.01, 0.12);
        let coarse = sampled_worst(case, part, 1, (angle, step), k.factor());
        let fine = sampled_worst(case, part, 1, (angle, 0.5 * step), k.factor());
        let value = found.governing.utilization;
        assert!(value >= coarse * (1.0 - 1e-9), "{:?} at {angle}: {value} < coarse {coarse}", part.part);
        assert!(value >= fine * (1.0 - 1e-9), "{:?} at {angle}: {value} < fine {fine}", part.part);
        assert!(value <= fine * (1.0 + 0.5 * step), "{:?} at {angle}: {value} far above {fine}", part.part);
        // What is reported brings the same utilization again; AISC's buckling looks at the largest torsion of the part,
        // which need not be that of the reported cut.
        let again = part.resistance.governing(&found.actions).utilization;
        assert!(again <= value * (1.0 + 1e-9));
        assert!(again >= value * (1.0 - 1e-9) || found.governing.mode == Mode::Stability);
    }
}

#[test]
fn the_search_finds_what_dense_sampling_finds_under_every_code() {
    for code in [EN1993, EN1999, AISC360] {
        for case in [
            Case::new(front, HeadJoint::Pinned, &code),
            Case::new(rear, HeadJoint::Rigid, &code),
            Case::new(nothing, HeadJoint::Rigid, &code),
        ] {
            for angle in [0.05, 0.3, 0.8, PI / 2.0, 2.2, PI] {
                compare(&case, angle, SecondOrder::FIRST);
            }
        }
    }
}

#[test]
fn cuts_closer_together_find_hardly_more() {
    // Between two cuts s apart the moment exceeds theirs by w·s²/8: here at most 100 N/m·0.55²/8 = 4 N·m of 5 kN·m.
    let case = Case::new(rear, HeadJoint::Pinned, &EN1993);
    let actions = Actions::of_pull(Pull::new(0, 4e3, LoadCone::whole(0.3)), 1.1);
    let found =
        member_envelope(&case.model, &actions, &SlewRange::WholeTurn, &case.parts(), SecondOrder::FIRST).unwrap();
    for (part, found) in case.parts().iter().zip(&found.uses) {
        let close = sampled_worst(&case, part, 15, (0.3, 0.02), 1.0);
        assert!(found.governing.utilization >= close * (1.0 - 1e-3));
    }
}

#[test]
fn amplified_moments_are_searched_amplified() {
    let case = Case::new(rear, HeadJoint::Pinned, &EN1993);
    compare(&case, 0.4, SecondOrder::of_alpha_cr(5.0).unwrap());
}

#[test]
fn a_mast_under_a_vertical_rope_has_its_closed_form() {
    // No weight. Rear brace to the mast, T = 4 kN at a = 1.25 m, x_b = 0.7 m: the mast's moment from the base up to the
    // brace is T·a = 5 kN·m, and just above the brace the head presses with T·(1 + a/x_b) = 11.1429 kN.
    // On 100 × 6: A = 1771.86 mm², W_pl = (100³ − 88³)/6 = 53088 mm³, f_y 355: 11.1429/629.010 + 5/18.8462 = 0.28302.
    let case = Case::new(rear, HeadJoint::Pinned, &EN1993);
    let actions = Actions::of_pull(Pull::new(0, 4e3, LoadCone::whole(0.0)), 0.0);
    let parts = [MemberPart { part: Part::Mast, resistance: &case.mast, marks: &[] }];
    let found = member_envelope(&case.model, &actions, &SlewRange::WholeTurn, &parts, SecondOrder::FIRST).unwrap();
    let checks = parts[0].resistance.by_mode(&found.uses[0].actions);
    let Outcome::Utilization(section) = checks.get(Mode::Section) else { panic!("{checks:?}") };
    assert!((section - 0.28302).abs() < 1e-5, "{section}");
}

#[test]
fn a_cone_cut_by_lean_is_searched_over_slew_and_never_beats_the_whole_one() {
    let case = Case::new(front, HeadJoint::Rigid, &EN1993);
    let worst = |cone, range: &SlewRange| {
        let actions = Actions::of_pull(Pull::new(0, 4e3, cone), 1.0);
        let found = member_envelope(&case.model, &actions, range, &case.parts(), SecondOrder::FIRST).unwrap();
        found.uses.iter().map(|u| u.governing.utilization).collect::<Vec<_>>()
    };
    let lean = Lean { inward_rad: 0.1, outward_rad: 0.2 };
    let cut = LoadCone { half_angle_rad: 0.6, lean: Some(lean) };
    let whole = worst(LoadCone::whole(0.6), &SlewRange::WholeTurn);
    let turning = worst(cut, &SlewRange::WholeTurn);
    let ahead = worst(cut, &SlewRange::At(vec![0.0]));
    for ((whole, turning), ahead) in whole.iter().zip(&turning).zip(&ahead) {
        // Over the whole turn every direction of the cone occurs in arm axes, since sideways lean is not limited.
        assert!((turning - whole).abs() <= 1e-6 * whole, "{turning} against {whole}");
        assert!(ahead <= &(whole * (1.0 + 1e-9)));
    }
}

#[test]
fn wind_and_a_second_rope_only_add() {
    let case = Case::new(rear, HeadJoint::Pinned, &EN1993);
    let mut actions = Actions::of_pull(Pull::new(0, 4e3, LoadCone::whole(0.3)), 1.0);
    let worst = |actions: &Actions| {
        let found =
            member_envelope(&case.model, actions, &SlewRange::WholeTurn, &case.parts(), SecondOrder::FIRST).unwrap();
        found.uses.iter().map(|u| u.governing.utilization).collect::<Vec<_>>()
    };
    let alone = worst(&actions);
    actions.wind = Some(WindOnUnit { mast_n_per_m: 60.0, arm_n_per_m: 50.0, ..WindOnUnit::default() });
    let windy = worst(&actions);
    actions.pulls.push(Pull::new(1, 2e3, LoadCone::whole(0.3)));
    let both = worst(&actions);
    for (i, ((alone, windy), both)) in alone.iter().zip(&windy).zip(&both).enumerate() {
        // Wind on mast and arm, the latter only across it, doesn't strain a brace that lies in the arm's plane.
        assert!(if i == 2 { (windy - alone).abs() < 1e-9 } else { windy > alone }, "{alone} {windy}");
        assert!(both > windy, "{windy} {both}");
    }
}

/// The worst of a part over slews and directions, the brace taken away where it would be pressed.
fn sampled_over_slew(case: &Case, part: &MemberPart<'_>, angle: f64, slews: &[f64], step: f64) -> f64 {
    let stations: Vec<Station> = case.model.stations(1).into_iter().filter(|s| s.part == part.part).collect();
    let mut most: f64 = 0.0;
    for slew in slews {
        let with = case.model.influence(*slew).unwrap();
        let without = case.model.influence_without_brace(*slew).unwrap();
        let rows = [&with, &without].map(|influence| Sampled::new(influence, &stations, 0, &[]));
        let (by_pull, own) = (with.brace_of_pull(0).unwrap(), with.brace_of_weight().unwrap());
        let slack = |pull: DVec3| case.model.unit().brace.pulls_only() && by_pull.dot(pull) + own < 0.0;
        for d in directions(angle, step).into_iter().chain([DVec3::ZERO]) {
            let pull = d * 4e3;
            most = most.max(rows[usize::from(slack(pull))].worst(part.resistance, pull, 1.0, 1.0));
        }
    }
    most
}

#[test]
fn a_foot_of_its_own_is_searched_over_slew_and_a_slack_brace_in_both_states() {
    for (action, step) in [(BraceAction::Both, 0.1), (BraceAction::PullOnly, 0.05)] {
        let foot = |bar| Brace::RearFoot {
            from: crate::unit::FootFrom::MastHead,
            distance_m: 1.2,
            foot_level_m: 0.0,
            bearing_rad: 0.2,
            allowed_turn_rad: 0.5,
            foot_spring_n_per_m: None,
            bar,
            action,
        };
        let case = Case::new(foot, HeadJoint::Rigid, &EN1993);
        let parts: Vec<_> = case.parts().into_iter().map(|part| MemberPart { marks: &[], ..part }).collect();
        let angle = 0.7;
        let actions = Actions::of_pull(Pull::new(0, 4e3, LoadCone::whole(angle)), 1.0);
        let found = member_envelope(&case.model, &actions, &SlewRange::WholeTurn, &parts, SecondOrder::FIRST).unwrap();
        let slews: Vec<f64> = (0..=20).map(|i| -0.3 + 0.05 * f64::from(i)).collect();
        for (part, found) in parts.iter().zip(&found.uses) {
            let sampled = sampled_over_slew(&case, part, angle, &slews, step);
            let value = found.governing.utilization;
            assert!(value >= sampled * (1.0 - 1e-9), "{action:?} {:?}: {value} < {sampled}", part.part);
            assert!(value <= sampled * (1.0 + 0.5 * step), "{action:?} {:?}: {value} far above {sampled}", part.part);
        }
    }
}

#[test]
fn a_part_that_cannot_be_judged_is_not_passed() {
    let case = Case::new(rear, HeadJoint::Pinned, &EN1993);
    let paper = Section::RoundTube { diameter_m: 0.1, wall_m: 0.0004 };
    let member = Member::plain(paper, Material::steel(355e6, 470e6, Forming::ColdFormed), 3.4);
    let resistance = member.resistance(&EN1993).unwrap();
    let parts = [MemberPart { part: Part::Mast, resistance: &resistance, marks: &[] }];
    let actions = Actions::of_pull(Pull::new(0, 10.0, LoadCone::whole(0.3)), 1.0);
    let found = member_envelope(&case.model, &actions, &SlewRange::WholeTurn, &parts, SecondOrder::FIRST).unwrap();
    assert!(!found.uses[0].governing.holds());
    assert!(found.uses[0].governing.not_checked.is_some());
}

#[test]
fn a_brace_that_is_not_there_is_said() {
    let case = Case::new(nothing, HeadJoint::Rigid, &EN1993);
    let actions = Actions::of_pull(Pull::new(0, 4e3, LoadCone::whole(0.3)), 1.0);
    let parts = [case.brace_part()];
    let result = member_envelope(&case.model, &actions, &SlewRange::WholeTurn, &parts, SecondOrder::FIRST);
    assert_eq!(result, Err(EnvelopeFault::NotThere { part: "brace" }));
}

/// The whole search is the witness of the one that stops where nothing worse can come.
#[test]
fn what_is_worse_than_something_known_is_told_as_the_whole_search_tells_it() {
    let k = SecondOrder::FIRST;
    for brace in [front, rear, nothing] {
        let case = Case::new(brace, HeadJoint::Rigid, &EN1993);
        let lean = Lean { inward_rad: 0.1, outward_rad: 0.2 };
        for cone in [LoadCone::whole(0.6), LoadCone { half_angle_rad: 0.6, lean: Some(lean) }] {
            let actions = Actions::of_pull(Pull::new(0, 4e3, cone), 1.0);
            for part in case.parts() {
                let whole = member_envelope(&case.model, &actions, &SlewRange::WholeTurn, &[part], k).unwrap();
                let above = |known: f64| {
                    member_above(&case.model, &actions, &SlewRange::WholeTurn, &part, k, known).unwrap().worse
                };
                let value = whole.uses[0].governing.utilization;
                assert_eq!(above(0.0).as_ref(), Some(&whole.uses[0]));
                assert_eq!(above(0.999 * value).map(|found| found.governing.utilization), Some(value));
                assert!(above(1.001 * value).is_none_or(|found| found.governing.utilization <= value));
            }
        }
    }
}
