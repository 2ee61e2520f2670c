//! Buckling loads of straight columns, held against Euler.

use std::f64::consts::PI;

use gantline_mechanics::frame::{Frame, Hold, LoadCase, Member, NodeId, Releases, Support};
use gantline_mechanics::stiffness::BarStiffness;
use glam::DVec3;

use crate::near::near;

/// Stiff about local y, weak about local z.
const COLUMN: BarStiffness =
    BarStiffness { ea_n: 1e9, ei_y_nm2: 4000.0, ei_z_nm2: 1000.0, gj_nm2: 2000.0, weight_n_per_m: 0.0 };

fn column(height: f64, elements: usize) -> (Frame, Vec<NodeId>) {
    let mut frame = Frame::new();
    let nodes: Vec<NodeId> =
        (0..=elements).map(|i| frame.add_node(DVec3::Z * (height * i as f64 / elements as f64))).collect();
    for pair in nodes.windows(2) {
        frame.add_member(Member {
            start: pair[0],
            end: pair[1],
            stiffness: COLUMN,
            up: -DVec3::X,
            releases: Releases::default(),
        });
    }
    (frame, nodes)
}

fn critical_load(frame: &Frame, top: NodeId) -> f64 {
    let factored = frame.factor().unwrap();
    let pressed = LoadCase::force_at(top, -DVec3::Z);
    factored.critical_factor(&factored.solve(&pressed).unwrap()).unwrap().unwrap()
}

/// Euler: π²·E·I/(2·H)² for a column free at its head, about its weak axis. With four elements the
/// consistent matrix is within 0.01 % here (each element covers a quarter of a quarter wave).
#[test]
fn a_mast_free_at_its_head_buckles_at_eulers_load() {
    let (mut frame, nodes) = column(3.0, 4);
    frame.hold(nodes[0], Support::FIXED);
    let euler = PI.powi(2) * 1000.0 / 36.0;
    near("load", critical_load(&frame, nodes[4]), euler, 1e-4 * euler);
}

/// Euler: π²·E·I/H² pinned at both ends; eight elements are within 0.01 %.
#[test]
fn a_pinned_column_buckles_at_eulers_load() {
    let (mut frame, nodes) = column(3.0, 8);
    let mut foot = Support::PINNED;
    foot.0[5] = Hold::Rigid;
    let mut head = foot;
    head.0[2] = Hold::Free;
    frame.hold(nodes[0], foot);
    frame.hold(nodes[8], head);
    let euler = PI.powi(2) * 1000.0 / 9.0;
    near("load", critical_load(&frame, nodes[8]), euler, 1e-4 * euler);
}

/// A single element bends as a cubic: 12·E·I/H² where Euler has π²; a textbook figure of the method.
#[test]
fn one_element_overrates_a_pinned_column_by_a_fifth() {
    let (mut frame, nodes) = column(3.0, 1);
    let mut foot = Support::PINNED;
    foot.0[5] = Hold::Rigid;
    let mut head = foot;
    head.0[2] = Hold::Free;
    frame.hold(nodes[0], foot);
    frame.hold(nodes[1], head);
    near("load", critical_load(&frame, nodes[1]), 12.0 * 1000.0 / 9.0, 1e-6);
}

/// A pulled column doesn't buckle.
#[test]
fn a_pulled_mast_has_no_critical_load() {
    let (mut frame, nodes) = column(3.0, 4);
    frame.hold(nodes[0], Support::FIXED);
    let factored = frame.factor().unwrap();
    let pulled = factored.solve(&LoadCase::force_at(nodes[4], DVec3::Z)).unwrap();
    assert_eq!(factored.critical_factor(&pulled), Ok(None));
}
