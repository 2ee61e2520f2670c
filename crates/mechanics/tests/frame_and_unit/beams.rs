//! Plane beams: cantilevers by hand, continuous beams of the tables, a beam on springs.

use gantline_mechanics::frame::{
    Frame, Hold, LoadCase, Member, MemberId, MemberLoad, NodeId, Releases, Solution, Support,
};
use gantline_mechanics::stiffness::BarStiffness;
use glam::DVec3;

use crate::near::{near, rounding};

const STIFF: BarStiffness = BarStiffness::round(1e6, 3000.0, 2000.0, 0.0);

/// Rolls along x, keeps the beam in the plane of x and z.
const ROLLER: Support = Support([Hold::Free, Hold::Rigid, Hold::Rigid, Hold::Rigid, Hold::Free, Hold::Free]);
const HINGE: Support = Support([Hold::Rigid, Hold::Rigid, Hold::Rigid, Hold::Rigid, Hold::Free, Hold::Rigid]);

fn beam(xs: &[f64], stiffness: BarStiffness) -> (Frame, Vec<NodeId>, Vec<MemberId>) {
    let mut frame = Frame::new();
    let nodes: Vec<NodeId> = xs.iter().map(|&x| frame.add_node(DVec3::new(x, 0.0, 0.0))).collect();
    let members = nodes
        .windows(2)
        .map(|pair| {
            frame.add_member(Member {
                start: pair[0],
                end: pair[1],
                stiffness,
                up: DVec3::Z,
                releases: Releases::default(),
            })
        })
        .collect();
    (frame, nodes, members)
}

fn continuous(spans: usize, length: f64) -> (Frame, Vec<NodeId>, Vec<MemberId>) {
    let xs: Vec<f64> = (0..=spans).map(|i| i as f64 * length).collect();
    let (mut frame, nodes, members) = beam(&xs, STIFF);
    frame.hold(nodes[0], HINGE);
    for &node in &nodes[1..] {
        frame.hold(node, ROLLER);
    }
    (frame, nodes, members)
}

fn up(solution: &Solution, node: NodeId) -> f64 {
    solution.reaction(node).unwrap().force_n.z
}

/// The moment over a support, sagging positive, as the tables have it: −My of our section forces,
/// since a positive moment about y presses the underside toward +x and hogs.
fn sagging(solution: &Solution, member: MemberId, at: f64) -> f64 {
    -solution.internal(member, at).unwrap().moment_nm.y
}

/// Closed form: w = F·L³/(3·E·I), slope F·L²/(2·E·I), torsion T·L/(G·J), extension N·L/(E·A).
#[test]
fn a_cantilever_bends_twists_and_stretches_as_by_hand() {
    let stiffness = BarStiffness { ea_n: 5e6, ei_y_nm2: 4000.0, ei_z_nm2: 900.0, gj_nm2: 700.0, weight_n_per_m: 0.0 };
    let (mut frame, nodes, _) = beam(&[0.0, 1.7], stiffness);
    frame.hold(nodes[0], Support::FIXED);
    let mut case = LoadCase::force_at(nodes[1], DVec3::new(900.0, 30.0, -50.0));
    case.nodal[0].1.moment_nm.x = 12.0;
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    let (u, r) = (answer.displacement(nodes[1]).unwrap(), answer.rotation(nodes[1]).unwrap());
    let l = 1.7_f64;
    for (what, got, expected) in [
        ("extension", u.x, 900.0 * l / 5e6),
        ("sideways", u.y, 30.0 * l.powi(3) / (3.0 * 900.0)),
        ("down", u.z, -50.0 * l.powi(3) / (3.0 * 4000.0)),
        ("twist", r.x, 12.0 * l / 700.0),
        ("slope down", r.y, 50.0 * l.powi(2) / (2.0 * 4000.0)),
        ("slope sideways", r.z, 30.0 * l.powi(2) / (2.0 * 900.0)),
    ] {
        near(what, got, expected, 1e-12 + 1e-11 * expected.abs());
    }
}

/// Closed form: propped cantilever, hinge by release, R = P·a²·(3·L − a)/(2·L³) at the prop.
#[test]
fn a_released_end_makes_a_propped_cantilever() {
    let mut frame = Frame::new();
    let (fixed, prop) = (frame.add_node(DVec3::ZERO), frame.add_node(DVec3::X * 4.0));
    let member = frame.add_member(Member {
        start: fixed,
        end: prop,
        stiffness: STIFF,
        up: DVec3::Z,
        releases: Releases { start: [false; 3], end: [false, true, true] },
    });
    frame.hold(fixed, Support::FIXED);
    frame.hold(prop, Support::FIXED);
    let case = LoadCase {
        members: vec![(member, MemberLoad::Point { at_m: 1.5, force_n: DVec3::new(0.0, 60.0, -100.0) })],
        ..LoadCase::default()
    };
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    let reaction = answer.reaction(prop).unwrap();
    let share = 1.5_f64.powi(2) * (12.0 - 1.5) / (2.0 * 64.0);
    near("prop, down", reaction.force_n.z, 100.0 * share, 1e-10);
    near("prop, sideways", reaction.force_n.y, -60.0 * share, 1e-10);
    near("no moment in the hinge", reaction.moment_nm.length(), 0.0, 1e-10);
    // Moment under the load from the side of the prop.
    near("under the load", sagging(&answer, member, 1.5), 100.0 * share * 2.5, 1e-9);
}

/// AISC Manual, beam diagrams (two-span beam, concentrated load at any point): R1, R2, R3 and the
/// moment over the middle support for L = 10, P = 1. Tolerance: a closed form.
#[test]
fn a_load_anywhere_on_two_spans_is_shared_as_in_the_manual() {
    for (a, r1, r2, r3, m) in [
        (2.5, 0.69140625, 0.3671875, -0.05859375, -0.5859375),
        (5.0, 0.40625, 0.6875, -0.09375, -0.9375),
        (7.0, 0.21075, 0.8785, -0.08925, -0.8925),
    ] {
        let (frame, nodes, members) = continuous(2, 10.0);
        let case = LoadCase {
            members: vec![(members[0], MemberLoad::Point { at_m: a, force_n: -DVec3::Z })],
            ..LoadCase::default()
        };
        let answer = frame.factor().unwrap().solve(&case).unwrap();
        for (node, expected) in nodes.iter().zip([r1, r2, r3]) {
            near("reaction", up(&answer, *node), expected, 1e-10);
        }
        near("over the support", sagging(&answer, members[0], 10.0), m, 1e-9);
    }
}

/// M. R. Lindeburg, Civil Engineering Reference Manual, 15th ed.: two equal spans, P = 1 at both
/// mid-spans, L = 10: R 0.3125, 1.375, 0.3125, moment −1.875 and 1.5625. Exact numbers.
#[test]
fn two_mid_span_loads_on_two_spans_are_shared_as_in_the_reference_manual() {
    let (frame, nodes, members) = continuous(2, 10.0);
    let load = MemberLoad::Point { at_m: 5.0, force_n: -DVec3::Z };
    let case = LoadCase { members: members.iter().map(|&m| (m, load)).collect(), ..LoadCase::default() };
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    for (node, expected) in nodes.iter().zip([0.3125, 1.375, 0.3125]) {
        near("reaction", up(&answer, *node), expected, 1e-10);
    }
    near("support", sagging(&answer, members[0], 10.0), -1.875, 1e-9);
    near("load", sagging(&answer, members[0], 5.0), 1.5625, 1e-9);
}

/// T. G. Hicks, Civil Engineering Formulas, table 2.1, p. 50: uniform load on 2, 3 and 4 equal
/// spans, coefficients of w·L and w·L². Exact fractions, printed to three or four digits.
#[test]
fn a_uniform_load_on_continuous_spans_is_shared_as_in_the_table() {
    let cases: [(usize, &[f64], &[f64]); 3] = [
        (2, &[0.375, 1.25, 0.375], &[-0.125]),
        (3, &[0.4, 1.1, 1.1, 0.4], &[-0.1, -0.1]),
        (4, &[11.0 / 28.0, 8.0 / 7.0, 13.0 / 14.0, 8.0 / 7.0, 11.0 / 28.0], &[-3.0 / 28.0, -1.0 / 14.0, -3.0 / 28.0]),
    ];
    for (spans, reactions, moments) in cases {
        let (frame, nodes, members) = continuous(spans, 1.0);
        let case = LoadCase {
            members: members.iter().map(|&m| (m, MemberLoad::Uniform(-DVec3::Z))).collect(),
            ..LoadCase::default()
        };
        let answer = frame.factor().unwrap().solve(&case).unwrap();
        for (node, &expected) in nodes.iter().zip(reactions) {
            near("reaction", up(&answer, *node), expected, 1e-10);
        }
        for (member, &expected) in members.iter().zip(moments) {
            near("support", sagging(&answer, *member, 1.0), expected, 1e-10);
        }
    }
}

/// Three-moment equation, three equal spans, unit load at the middle of the first or the second:
/// closed form M_B = −0.1·P·L, M_C = 0.025·P·L, or both −0.075·P·L.
#[test]
fn a_load_on_three_spans_is_shared_as_by_three_moments() {
    for (span, expected) in [(0, [0.4, 0.725, -0.15, 0.025]), (1, [-0.075, 0.575, 0.575, -0.075])] {
        let (frame, nodes, members) = continuous(3, 10.0);
        let case = LoadCase {
            members: vec![(members[span], MemberLoad::Point { at_m: 5.0, force_n: -DVec3::Z })],
            ..LoadCase::default()
        };
        let answer = frame.factor().unwrap().solve(&case).unwrap();
        for (node, share) in nodes.iter().zip(expected) {
            near("reaction", up(&answer, *node), share, 1e-10);
        }
    }
}

/// W. McGuire, R. H. Gallagher, R. D. Ziemian, Matrix Structural Analysis, 2nd ed., example 4.15:
/// 240 in beam on simple supports and springs of 22.5 kip/in every 15 in between, E 29000 ksi, I 128.5 in⁴, 40 kip in the
/// middle: 547 kip·in, printed to three digits. The book's deflection of −0.238 in is 3.4 % off what
/// its own stiffnesses give by another program, −0.24627 in, which is the value held against here.
#[test]
fn a_beam_on_springs_carries_the_moment_of_the_book() {
    let xs: Vec<f64> = (0..=16).map(|i| 15.0 * f64::from(i)).collect();
    let ei = 29000.0 * 128.5;
    let (mut frame, nodes, members) = beam(&xs, BarStiffness::round(1e6, ei, ei, 0.0));
    for &node in &nodes[1..16] {
        let mut spring = ROLLER;
        spring.0[2] = Hold::Spring(22.5);
        frame.hold(node, spring);
    }
    frame.hold(nodes[0], HINGE);
    frame.hold(nodes[16], ROLLER);
    let case = LoadCase::force_at(nodes[8], DVec3::new(0.0, 0.0, -40.0));
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    near("moment", sagging(&answer, members[8], 0.0), 547.0, rounding(547.0, 3));
    let sag = answer.displacement(nodes[8]).unwrap().z;
    near("deflection", sag, -0.2462676045530394, 1e-9);
}
