//! Ten random space frames with released ends, springs and loads along members, against two general-purpose programs.

use gantline_mechanics::frame::{
    Frame, Hold, LoadCase, Member, MemberId, MemberLoad, NodeId, Releases, Solution, Support,
};
use gantline_mechanics::wrench::Wrench;
use serde_json::Value;

use crate::given::{list, name, number, numbers, stiffness, vector};

/// Share of the largest value of its kind in a frame. The two programs agree to 2e-12 in shares of 100 kN, which is 1e-11 of
/// the largest force, and the file holds 12 digits after the point: 1e-11 again.
const SHARE: f64 = 1e-10;

const PYNITE: &str = include_str!("../../../../tests/reference/expected/space_frames.json");
const OPENSEES: &str = include_str!("../../../../tests/reference/expected/opensees_space_frames.json");

fn index(of: &Value, key: &str) -> usize {
    usize::try_from(of[key].as_u64().unwrap()).unwrap()
}

fn frame(given: &Value) -> Frame {
    let mut frame = Frame::new();
    for at in list(&given["nodes_m"]) {
        frame.add_node(vector(at));
    }
    for member in list(&given["members"]) {
        frame.add_member(Member {
            start: NodeId(index(member, "start")),
            end: NodeId(index(member, "end")),
            stiffness: stiffness(member),
            up: vector(&member["up"]),
            releases: Releases { start: released(&member["release_start"]), end: released(&member["release_end"]) },
        });
    }
    for support in list(&given["supports"]) {
        let holds: Vec<Hold> = list(&support["hold"]).iter().map(hold).collect();
        frame.hold(NodeId(index(support, "node")), Support(holds.try_into().unwrap()));
    }
    frame
}

fn released(given: &Value) -> [bool; 3] {
    std::array::from_fn(|axis| given[axis].as_bool().unwrap())
}

fn hold(given: &Value) -> Hold {
    match given.as_str() {
        Some("free") => Hold::Free,
        Some("rigid") => Hold::Rigid,
        Some(other) => panic!("no hold is called {other}"),
        None => Hold::Spring(given.as_f64().unwrap()),
    }
}

fn loads(given: &Value) -> LoadCase {
    let nodal = list(&given["nodal"]).iter().map(|load| {
        let wrench = Wrench { force_n: vector(&load["force_n"]), moment_nm: vector(&load["moment_nm"]) };
        (NodeId(index(load, "node")), wrench)
    });
    let along = list(&given["along"]).iter().map(|load| {
        let kind = match load["at_m"].as_f64() {
            Some(at_m) => MemberLoad::Point { at_m, force_n: vector(&load["force_n"]) },
            None => MemberLoad::Uniform(vector(&load["uniform_n_per_m"])),
        };
        (MemberId(index(load, "member")), kind)
    });
    LoadCase { nodal: nodal.collect(), members: along.collect() }
}

/// Displacements and rotations of all nodes, reactions of all supports, forces at both ends of all members.
fn computed(given: &Value, answer: &Solution) -> [Vec<f64>; 3] {
    let nodes = (0..list(&given["nodes_m"]).len()).map(NodeId);
    let moved = nodes.flat_map(|node| {
        Wrench { force_n: answer.displacement(node).unwrap(), moment_nm: answer.rotation(node).unwrap() }.six()
    });
    let supports = list(&given["supports"]).iter();
    let reactions = supports.flat_map(|s| answer.reaction(NodeId(index(s, "node"))).unwrap().six());
    let members = (0..list(&given["members"]).len()).map(MemberId);
    let ends = members.flat_map(|m| answer.end_forces(m).unwrap()).flat_map(Wrench::six);
    [moved.collect(), reactions.collect(), ends.collect()]
}

fn hold_against(what: &str, got: &[f64], shares: &Value, unit: f64) {
    let expected: Vec<f64> = list(shares).iter().flat_map(numbers).map(|v| v * unit).collect();
    assert_eq!(got.len(), expected.len(), "{what}");
    let largest = expected.iter().fold(0.0, |most, v| v.abs().max(most));
    for (i, (value, other)) in got.iter().zip(&expected).enumerate() {
        let off = (value - other).abs() / largest;
        assert!(off <= SHARE, "{what}[{i}]: got {value}, expected {other}; {off:.1e} of {largest}");
    }
}

fn compare(file: &Value, given: &Value, expected: &Value) {
    let unit = number(file, "force_unit_n");
    let answer = frame(given).factor().unwrap().solve(&loads(given)).unwrap();
    let [moved, reactions, ends] = computed(given, &answer);
    let label = |what: &str| format!("{} {what}", name(given));
    hold_against(&label("moved"), &moved, &expected["moved_m_rad"], 1.0);
    hold_against(&label("reactions"), &reactions, &expected["reactions"], unit);
    hold_against(&label("end forces"), &ends, &expected["end_forces"], unit);
}

#[test]
fn ten_space_frames_answer_as_pynite_does() {
    let file: Value = serde_json::from_str(PYNITE).unwrap();
    let frames = list(&file["frames"]);
    assert_eq!(frames.len(), 10);
    for given in frames {
        compare(&file, given, &given["expected"]);
    }
}

#[test]
fn ten_space_frames_answer_as_opensees_does() {
    let (described, file): (Value, Value) =
        (serde_json::from_str(PYNITE).unwrap(), serde_json::from_str(OPENSEES).unwrap());
    let answers = list(&file["answers"]);
    assert_eq!(answers.len(), 10);
    for (given, answer) in list(&described["frames"]).iter().zip(answers) {
        assert_eq!(name(given), name(answer));
        compare(&file, given, &answer["expected"]);
    }
}

#[test]
fn forces_inside_members_are_those_of_pynites_diagrams() {
    let file: Value = serde_json::from_str(PYNITE).unwrap();
    for given in list(&file["frames"]) {
        let answer = frame(given).factor().unwrap().solve(&loads(given)).unwrap();
        let (nodes, members) = (list(&given["nodes_m"]), list(&given["members"]));
        let inner = members.iter().enumerate().flat_map(|(i, member)| {
            let [start, end] = ["start", "end"].map(|key| vector(&nodes[index(member, key)]));
            let cut = given["cuts"][i].as_f64().unwrap() * start.distance(end);
            answer.internal(MemberId(i), cut).unwrap().six()
        });
        let label = format!("{} inner forces", name(given));
        hold_against(&label, &inner.collect::<Vec<_>>(), &given["expected"]["inner"], number(&file, "force_unit_n"));
    }
}
