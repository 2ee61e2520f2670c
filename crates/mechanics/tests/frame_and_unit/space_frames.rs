//! Space frames of textbooks, in the books' own units and axes (any coherent set will do).

use gantline_mechanics::frame::{Frame, LoadCase, Member, MemberLoad, NodeId, Releases, Support};
use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::wrench::Wrench;
use glam::DVec3;

use crate::near::{near, rounding};

fn member(frame: &mut Frame, from: NodeId, to: NodeId, stiffness: BarStiffness, up: DVec3) {
    frame.add_member(Member { start: from, end: to, stiffness, up, releases: Releases::default() });
}

#[track_caller]
fn six_near(what: &str, got: Wrench, printed: [f64; 6], digits: i32) {
    for (i, (value, expected)) in got.six().into_iter().zip(printed).enumerate() {
        near(&format!("{what}[{i}]"), value, expected, 1.01 * rounding(expected, digits));
    }
}

/// A. Kassimali, Matrix Analysis of Structures, 2nd ed., example 8.4: three members meet at one
/// joint; kip and inch, global Y up. Printed to five significant digits. The book's local y is our
/// local z, so its I_z is our I_y; its roll angles 0°, 90°, 30° are the three `up` directions.
#[test]
fn three_members_at_one_joint_answer_as_in_kassimali() {
    let e = 29000.0;
    let bar = BarStiffness {
        ea_n: e * 32.9,
        ei_y_nm2: e * 716.0,
        ei_z_nm2: e * 236.0,
        gj_nm2: 11500.0 * 15.1,
        weight_n_per_m: 0.0,
    };
    let mut frame = Frame::new();
    let joint = frame.add_node(DVec3::ZERO);
    let far = [DVec3::X, DVec3::Y, DVec3::Z].map(|axis| frame.add_node(-240.0 * axis));
    let (sin, cos) = 30f64.to_radians().sin_cos();
    let ups = [DVec3::Y, DVec3::Z, DVec3::new(-sin, cos, 0.0)];
    for (&node, up) in far.iter().zip(ups) {
        member(&mut frame, node, joint, bar, up);
        frame.hold(node, Support::FIXED);
    }
    let case = LoadCase {
        nodal: vec![(joint, Wrench { force_n: DVec3::ZERO, moment_nm: DVec3::new(-1800.0, 0.0, 1800.0) })],
        members: vec![(gantline_mechanics::frame::MemberId(0), MemberLoad::Uniform(DVec3::new(0.0, -0.25, 0.0)))],
    };
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    let printed = [
        [5.3757, 44.106, -0.74272, 2.1722, 58.987, 2330.5],
        [-4.6249, 11.117, -6.4607, -515.55, -0.76472, 369.67],
        [-0.75082, 4.7763, 7.2034, -383.5, -60.166, -4.702],
    ];
    for (&node, six) in far.iter().zip(printed) {
        six_near("reaction", answer.reaction(node).unwrap(), six, 5);
    }
    let moved = Wrench { force_n: answer.displacement(joint).unwrap(), moment_nm: answer.rotation(joint).unwrap() };
    let printed = [-0.0013522, -0.0027965, -0.001812, -0.0030021, 0.0010569, 0.0064986];
    six_near("displacement", moved, printed, 5);
}

/// W. Weaver Jr., Computer Programs for Structural Analysis, p. 146, problem 8, with the values of
/// a commercial program's manual: kip and inch; forces to five digits, displacements to 1e-5.
#[test]
fn a_bent_frame_in_space_answers_as_in_weaver() {
    let e = 30000.0;
    let bar = BarStiffness::round(e * 11.0, e * 56.0, e / 2.5 * 83.0, 0.0);
    let mut frame = Frame::new();
    let [n3, n1, n2, n4] = [[0.0, 0.0, 0.0], [0.0, 120.0, 0.0], [240.0, 120.0, 0.0], [360.0, 0.0, 120.0]]
        .map(|at| frame.add_node(DVec3::from_array(at)));
    for (from, to) in [(n3, n1), (n1, n2), (n2, n4)] {
        member(&mut frame, from, to, bar, DVec3::new(0.3, 0.2, 0.9));
    }
    frame.hold(n3, Support::FIXED);
    frame.hold(n4, Support::FIXED);
    let load = |force: [f64; 3], moment: [f64; 3]| Wrench {
        force_n: DVec3::from_array(force),
        moment_nm: DVec3::from_array(moment),
    };
    let case = LoadCase {
        nodal: vec![(n1, load([2.0, 0.0, 0.0], [0.0; 3])), (n2, load([0.0, -1.0, 0.0], [0.0, 0.0, -120.0]))],
        members: Vec::new(),
    };
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    for (node, six) in [
        (n3, [-1.1041, -0.43222, 0.21731, 48.785, -17.973, 96.122]),
        (n4, [-0.89588, 1.4322, -0.21731, 123.08, 47.246, -11.72]),
    ] {
        six_near("reaction", answer.reaction(node).unwrap(), six, 5);
    }
    for (node, printed) in [
        (n1, [0.22267, 0.00016, -0.17182, -0.00255, 0.00217, -0.00213]),
        (n2, [0.22202, -0.48119, -0.70161, -0.00802, 0.00101, -0.00435]),
    ] {
        let u = answer.displacement(node).unwrap().to_array();
        let r = answer.rotation(node).unwrap().to_array();
        for (i, (got, expected)) in u.into_iter().chain(r).zip(printed).enumerate() {
            near(&format!("displacement[{i}]"), got, expected, 1.01e-5);
        }
    }
}

/// D. L. Logan, A First Course in the Finite Element Method, 4th ed., problem 5.30 (expected values
/// as a public solver's tests hold them): gable frame with fixed bases, printed to six digits.
#[test]
fn a_gable_frame_thrusts_as_in_logan() {
    let bar = BarStiffness::round(30000.0 * 12.0, 30000.0 * 200.0, 30000.0 * 200.0, 0.0);
    let mut frame = Frame::new();
    let nodes: Vec<NodeId> = [(0.0, 0.0), (0.0, 360.0), (180.0, 480.0), (420.0, 480.0), (600.0, 360.0), (600.0, 0.0)]
        .iter()
        .map(|&(x, y)| frame.add_node(DVec3::new(x, y, 0.0)))
        .collect();
    for pair in nodes.windows(2) {
        member(&mut frame, pair[0], pair[1], bar, DVec3::Z);
    }
    frame.hold(nodes[0], Support::FIXED);
    frame.hold(nodes[5], Support::FIXED);
    let mut case = LoadCase::force_at(nodes[2], DVec3::new(0.0, -30.0, 0.0));
    case.nodal.extend(LoadCase::force_at(nodes[3], DVec3::new(0.0, -30.0, 0.0)).nodal);
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    let reaction = answer.reaction(nodes[0]).unwrap();
    near("thrust", reaction.force_n.x, 11.6877, 0.00005);
    near("half the load", reaction.force_n.y, 30.0, 1e-9);
    near("moment", reaction.moment_nm.z, -1810.0745, 0.00005);
}
