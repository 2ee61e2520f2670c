//! Pin-jointed jib cranes of school books: post, jib and tie in a triangle of forces.

use gantline_mechanics::frame::{Bar, Frame, Hold, LoadCase, Support};
use glam::{DVec2, DVec3};

use crate::near::near;

/// Axial forces of jib and tie that carry W at their joint. The jib starts at the post's foot, the
/// tie at its head.
fn jib_and_tie(post: f64, jib: f64, tie: f64, load: f64) -> (f64, f64) {
    // Height of the joint over the foot, from the two circles.
    let height = (jib.powi(2) - tie.powi(2) + post.powi(2)) / (2.0 * post);
    let joint = DVec2::new((jib.powi(2) - height.powi(2)).sqrt(), height);
    let mut frame = Frame::new();
    let mut node = |at: DVec2| frame.add_node(DVec3::new(at.x, 0.0, at.y));
    let (foot, head, tip) = (node(DVec2::ZERO), node(DVec2::new(0.0, post)), node(joint));
    let mut bar = |start, end| {
        frame.add_bar(Bar { start, end, ea_n: 1e7, start_offset_m: DVec3::ZERO, end_offset_m: DVec3::ZERO })
    };
    let (jib, tie) = (bar(foot, tip), bar(head, tip));
    frame.hold(foot, Support::PINNED);
    frame.hold(head, Support::PINNED);
    let mut in_plane = Support::default();
    in_plane.0[1] = Hold::Rigid;
    frame.hold(tip, in_plane);
    let case = LoadCase::force_at(tip, DVec3::new(0.0, 0.0, -load));
    let answer = frame.factor().unwrap().solve(&case).unwrap();
    (answer.bar_axial(jib).unwrap(), answer.bar_axial(tie).unwrap())
}

/// Worked page (assignmentexpert.com, question 248534): 3-4-5 crane, 2 kN: jib 3.33 kN pressed, tie
/// 2.67 kN, printed to three digits; the triangle of forces gives 10/3 and 8/3.
#[test]
fn the_3_4_5_crane_follows_the_triangle_of_forces() {
    let (jib, tie) = jib_and_tie(3.0, 5.0, 4.0, 2.0);
    near("jib as printed", jib, -3.33, 0.005);
    near("tie as printed", tie, 2.67, 0.005);
    near("jib", jib, -10.0 / 3.0, 1e-9);
    near("tie", tie, 8.0 / 3.0, 1e-9);
}

/// Worked page (assignmentexpert.com, question 141264): post 2.4 m, jib 3.9 m, tie 2.1 m, 2.5 kN.
/// The page rounds its sines to 0.615, so its forces are good to 0.1 %.
#[test]
fn the_skew_crane_follows_the_triangle_of_forces() {
    let (jib, tie) = jib_and_tie(2.4, 3.9, 2.1, 2.5);
    near("jib as printed", jib, -4.065, 4.065e-3);
    near("tie as printed", tie, 2.18697, 2.18697e-3);
    near("jib", jib, -2.5 * 3.9 / 2.4, 1e-9);
    near("tie", tie, 2.5 * 2.1 / 2.4, 1e-9);
}
