//! What can't be solved is refused with the name of the culprit.

use gantline_mechanics::frame::{
    Bar, Dof, Frame, FrameFault, Hold, LoadCase, Member, MemberId, MemberLoad, NodeId, Quantity, Releases, Support,
};
use gantline_mechanics::stiffness::BarStiffness;
use glam::DVec3;

const STIFF: BarStiffness = BarStiffness::round(1e6, 3000.0, 2000.0, 0.0);

fn cantilever(stiffness: BarStiffness, releases: Releases) -> (Frame, NodeId, NodeId) {
    let mut frame = Frame::new();
    let (root, tip) = (frame.add_node(DVec3::ZERO), frame.add_node(DVec3::X));
    frame.add_member(Member { start: root, end: tip, stiffness, up: DVec3::Z, releases });
    frame.hold(root, Support::FIXED);
    (frame, root, tip)
}

fn fault(frame: &Frame) -> FrameFault {
    frame.factor().unwrap_err()
}

#[test]
fn a_position_that_is_no_number_is_named() {
    let (mut frame, ..) = cantilever(STIFF, Releases::default());
    frame.add_node(DVec3::new(0.0, f64::NAN, 0.0));
    assert!(matches!(fault(&frame), FrameFault::NotFinite { quantity: Quantity::NodePosition, index: 2, .. }));
}

#[test]
fn negative_and_missing_stiffness_is_named_by_field() {
    let negative = BarStiffness { ei_z_nm2: -1.0, ..STIFF };
    assert_eq!(
        fault(&cantilever(negative, Releases::default()).0),
        FrameFault::NotPositive { quantity: Quantity::BendingStiffnessZ, index: 0, value: -1.0 }
    );
    let nothing = BarStiffness { gj_nm2: 0.0, ..STIFF };
    assert!(matches!(
        fault(&cantilever(nothing, Releases::default()).0),
        FrameFault::NotPositive { quantity: Quantity::TorsionalStiffness, .. }
    ));
}

#[test]
fn a_member_or_bar_without_length_is_named() {
    let (mut frame, root, tip) = cantilever(STIFF, Releases::default());
    frame.add_bar(Bar { start: root, end: tip, ea_n: 1.0, start_offset_m: DVec3::X, end_offset_m: DVec3::ZERO });
    assert_eq!(fault(&frame), FrameFault::ZeroLengthBar { bar: 0 });

    let mut frame = Frame::new();
    let twice = [frame.add_node(DVec3::ONE), frame.add_node(DVec3::ONE)];
    frame.add_member(Member {
        start: twice[0],
        end: twice[1],
        stiffness: STIFF,
        up: DVec3::Z,
        releases: Releases::default(),
    });
    assert_eq!(fault(&frame), FrameFault::ZeroLengthMember { member: 0 });
}

#[test]
fn an_up_along_the_member_is_named() {
    let mut frame = Frame::new();
    let (start, end) = (frame.add_node(DVec3::ZERO), frame.add_node(DVec3::Z));
    frame.add_member(Member { start, end, stiffness: STIFF, up: DVec3::Z, releases: Releases::default() });
    assert_eq!(fault(&frame), FrameFault::UpAlongMember { member: 0 });
}

#[test]
fn a_mechanism_names_node_and_direction() {
    // Held at its root but free to turn about y there: it swings down.
    let mut frame = Frame::new();
    let ends = [frame.add_node(DVec3::ZERO), frame.add_node(DVec3::X * 3.0)];
    frame.add_member(Member {
        start: ends[0],
        end: ends[1],
        stiffness: STIFF,
        up: DVec3::Z,
        releases: Releases::default(),
    });
    let mut hinge = Support::FIXED;
    hinge.0[4] = Hold::Free;
    frame.hold(ends[0], hinge);
    assert_eq!(fault(&frame), FrameFault::Mechanism { node: 1, dof: Dof::Z });
}

#[test]
fn a_frame_that_nothing_holds_is_a_mechanism() {
    let (frame, ..) = cantilever(STIFF, Releases::default());
    let mut loose = Frame::new();
    for i in 0..2 {
        loose.add_node(frame.position(NodeId(i)).unwrap());
    }
    loose.add_member(Member {
        start: NodeId(0),
        end: NodeId(1),
        stiffness: STIFF,
        up: DVec3::Z,
        releases: Releases::default(),
    });
    assert!(matches!(fault(&loose), FrameFault::Mechanism { .. }));
}

#[test]
fn a_member_released_at_both_ends_about_its_axis_turns_by_itself() {
    let both = Releases { start: [true, false, false], end: [true, false, false] };
    assert_eq!(fault(&cantilever(STIFF, both).0), FrameFault::OverReleased { member: 0 });
}

#[test]
fn a_place_beyond_the_member_is_refused() {
    let (frame, ..) = cantilever(STIFF, Releases::default());
    let case = LoadCase {
        members: vec![(MemberId(0), MemberLoad::Point { at_m: 1.2, force_n: DVec3::Z })],
        ..LoadCase::default()
    };
    assert_eq!(
        frame.factor().unwrap().solve(&case).unwrap_err(),
        FrameFault::OutsideMember { member: 0, at_m: 1.2, length_m: 1.0 }
    );
}

#[test]
fn a_load_that_is_no_number_is_refused() {
    let (frame, _, tip) = cantilever(STIFF, Releases::default());
    let case = LoadCase::force_at(tip, DVec3::new(f64::INFINITY, 0.0, 0.0));
    assert!(matches!(
        frame.factor().unwrap().solve(&case).unwrap_err(),
        FrameFault::NotFinite { quantity: Quantity::Load, .. }
    ));
}

#[test]
fn a_moment_where_only_bars_meet_is_refused() {
    let (mut frame, _, tip) = cantilever(STIFF, Releases::default());
    let foot = frame.add_node(-DVec3::Z);
    frame.hold(foot, Support::PINNED);
    frame.add_bar(Bar { start: foot, end: tip, ea_n: 1e5, start_offset_m: DVec3::ZERO, end_offset_m: DVec3::ZERO });
    let mut case = LoadCase::force_at(foot, DVec3::ZERO);
    case.nodal[0].1.moment_nm = DVec3::Y;
    assert_eq!(
        frame.factor().unwrap().solve(&case).unwrap_err(),
        FrameFault::MomentOnFreeRotation { node: foot.0, dof: Dof::RotationY }
    );
}
