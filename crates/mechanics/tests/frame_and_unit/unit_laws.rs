//! Laws that hold for every unit: equilibrium, and agreement with the whole frame solved directly.

use gantline_mechanics::frame::Solution;
use gantline_mechanics::unit::{
    Brace, FrameOfUnit, Influence, Joint, Part, Pieces, PointPull, Side, Station, UnitModel,
};
use gantline_mechanics::wrench::Wrench;
use glam::DVec3;
use proptest::prelude::*;

use crate::any_unit::{any_pull, any_unit};

const FACTOR: f64 = 1.2;

/// The answer of an influence to a pull and the weight.
fn six(rows: [DVec3; 6], weight: [f64; 6], pull: DVec3) -> Wrench {
    Wrench::from_six(std::array::from_fn(|i| rows[i].dot(pull) + FACTOR * weight[i]))
}

fn direct(model: &UnitModel, slew: f64, pull: DVec3) -> (FrameOfUnit, Solution) {
    let frame = model.frame(Pieces::Whole, f64::INFINITY, slew).unwrap();
    let pull = PointPull { point: 0, force_n: pull };
    let case = model.load_case(&frame, &[pull], FACTOR).unwrap();
    let solution = frame.frame.factor().unwrap().solve(&case).unwrap();
    (frame, solution)
}

#[track_caller]
fn same(what: &str, a: Wrench, b: Wrench, force: f64, moment: f64) {
    let gap = a - b;
    assert!(gap.force_n.length() <= force && gap.moment_nm.length() <= moment, "{what}: {a:?} and {b:?}");
}

/// Half the brace's weight, which goes straight to the lug or foot.
fn half_brace_weight(model: &UnitModel, slew: f64) -> f64 {
    let frame = model.frame(Pieces::Whole, f64::INFINITY, slew).unwrap();
    let (Brace::RearToBase { bar, .. } | Brace::RearFoot { bar, .. }) = model.unit().brace else {
        return 0.0;
    };
    let upper = match model.unit().brace {
        Brace::RearFoot { from: gantline_mechanics::unit::FootFrom::MastHead, .. } => {
            DVec3::Z * model.unit().mast_height_m
        }
        Brace::RearToBase { tail_at_m, .. }
        | Brace::RearFoot { from: gantline_mechanics::unit::FootFrom::ArmTail { at_m: tail_at_m }, .. } => {
            DVec3::new(-tail_at_m, 0.0, model.unit().mast_height_m)
        }
        _ => unreachable!(),
    } + model.unit().pins.upper_m;
    let lower = frame.frame.position(frame.foot.unwrap()).unwrap();
    FACTOR * bar.weight_n_per_m * (upper - lower).length() / 2.0
}

fn lower_pin(frame: &FrameOfUnit) -> DVec3 {
    frame.frame.position(frame.foot.unwrap()).unwrap()
}

proptest! {
    #![proptest_config(crate::any_unit::cases(192))]

    /// Σ F = 0 and Σ M = 0: loads, base, foot. 1e-9 of the loads' own size.
    #[test]
    fn every_unit_is_in_equilibrium((unit, slew) in any_unit(), pull in any_pull()) {
        let model = UnitModel::new(&unit).unwrap();
        let at = model.influence(slew).unwrap();
        let base = six(at.base_of_pull(0).unwrap(), at.base_of_weight().unwrap(), pull);
        let rows = at.foot_of_pull(0).unwrap();
        let foot = DVec3::from_array(rows.map(|r| r.dot(pull)))
            + FACTOR * at.foot_of_weight().unwrap();

        let point = unit.points[0];
        let pulled_at = DVec3::new(point.x_m, point.sideways_m, unit.mast_height_m - point.drop_m);
        let mut loads = Wrench::of_force(pull, pulled_at, DVec3::ZERO);
        let (frame, _) = direct(&model, slew, pull);
        let span = unit.outreach_m + unit.tail_m;
        let down = |n: f64, x: f64, y: f64| {
            Wrench::of_force(DVec3::Z * (-FACTOR * n), DVec3::new(x, y, 0.0), DVec3::ZERO)
        };
        loads += down(unit.mast.weight_n_per_m * unit.mast_height_m, 0.0, 0.0);
        loads += down(unit.arm.weight_n_per_m * span, (unit.outreach_m - unit.tail_m) / 2.0, 0.0);
        for lump in &unit.lumps {
            loads += match lump.on {
                gantline_mechanics::unit::Place::Mast { .. } => down(lump.weight_n, 0.0, 0.0),
                gantline_mechanics::unit::Place::Arm { at_m } => down(lump.weight_n, at_m, 0.0),
            };
        }
        let mut answer = base;
        if let Some(bar) = brace_of(&unit.brace) {
            let (upper, lower) = pins(&model, &frame);
            let half = bar * (upper - lower).length() / 2.0;
            loads += down(half, upper.x, upper.y) + down(half, lower.x, lower.y);
            if matches!(unit.brace, Brace::RearFoot { .. }) {
                answer += Wrench::of_force(foot, lower, DVec3::ZERO);
            }
        }
        let size = loads.force_n.length() + base.force_n.length() + 1.0;
        same("sum", answer, loads, 1e-9 * size, 1e-9 * size * 3.0);
    }

    /// The influences against the whole frame, with brace and pin, solved directly. Tolerance: what
    /// a direct solution loses to rounding where members of 50 mm meet soft ones of meters, 1e-6.
    #[test]
    fn influences_are_those_of_the_whole_frame((unit, slew) in any_unit(), pull in any_pull()) {
        let model = UnitModel::new(&unit).unwrap();
        let at = model.influence(slew).unwrap();
        let (frame, solved) = direct(&model, slew, pull);
        let scale = pull.length() + 2000.0;
        let (force, moment) = (1e-6 * scale, 3e-6 * scale);

        let axial = at.brace_of_pull(0).unwrap().dot(pull) + FACTOR * at.brace_of_weight().unwrap();
        let expected = frame.brace.map_or(0.0, |b| solved.bar_axial(b).unwrap());
        prop_assert!((axial - expected).abs() <= force, "brace {axial} {expected}");

        let mut base = six(at.base_of_pull(0).unwrap(), at.base_of_weight().unwrap(), pull);
        let node = frame.mast_nodes[0].1;
        let mut expected = -solved.reaction(node).unwrap();
        if matches!(unit.brace, Brace::RearToBase { .. }) {
            let pin = lower_pin(&frame);
            let lug = solved.reaction(frame.foot.unwrap()).unwrap().force_n;
            expected += Wrench::of_force(-lug, pin, DVec3::ZERO);
            let half = half_brace_weight(&model, slew);
            base += Wrench::of_force(DVec3::Z * half, pin, DVec3::ZERO);
        }
        same("base", base, expected, force, moment);

        check_tip(&at, &solved, &frame, &model, pull);
        check_sections(&at, &solved, &frame, &model, pull, [force, moment]);
        check_head(&at, &solved, &frame, &model, pull, [force, moment]);
    }
}

fn brace_of(brace: &Brace) -> Option<f64> {
    match brace {
        Brace::None => None,
        Brace::RearToMast { bar, .. }
        | Brace::RearToBase { bar, .. }
        | Brace::Front { bar, .. }
        | Brace::RearFoot { bar, .. } => Some(bar.weight_n_per_m),
    }
}

/// Upper and lower pin in arm axes, written out again from the description.
fn pins(model: &UnitModel, frame: &FrameOfUnit) -> (DVec3, DVec3) {
    use gantline_mechanics::unit::FootFrom;
    let unit = model.unit();
    let head = DVec3::Z * unit.mast_height_m;
    let upper_offset = unit.pins.upper_m;
    let on_mast = |h: f64| DVec3::Z * h + unit.pins.lower_m;
    match unit.brace {
        Brace::None => unreachable!(),
        Brace::RearToMast { tail_at_m, mast_at_m, .. } => {
            (head - DVec3::X * tail_at_m + upper_offset, on_mast(mast_at_m))
        }
        Brace::Front { arm_at_m, mast_at_m, .. } => (head + DVec3::X * arm_at_m + upper_offset, on_mast(mast_at_m)),
        Brace::RearToBase { tail_at_m, .. } => (head - DVec3::X * tail_at_m + upper_offset, lower_pin(frame)),
        Brace::RearFoot { from, .. } => {
            let back = match from {
                FootFrom::MastHead => 0.0,
                FootFrom::ArmTail { at_m } => at_m,
            };
            (head - DVec3::X * back + upper_offset, lower_pin(frame))
        }
    }
}

fn check_tip(at: &Influence<'_>, solved: &Solution, frame: &FrameOfUnit, model: &UnitModel, pull: DVec3) {
    let point = model.unit().points[0];
    let (_, node) = frame.node(Part::Arm, point.x_m).unwrap();
    let offset = DVec3::new(0.0, point.sideways_m, -point.drop_m);
    let expected = solved.displacement(node).unwrap() + solved.rotation(node).unwrap().cross(offset);
    let rows = at.displacement_of_pull(0, 0).unwrap();
    let got = DVec3::from_array(rows.map(|r| r.dot(pull))) + FACTOR * at.displacement_of_weight(0).unwrap();
    let size = expected.length() + 1e-3;
    assert!((got - expected).length() <= 1e-6 * size, "tip {got} {expected}");
}

fn check_sections(
    at: &Influence<'_>,
    solved: &Solution,
    frame: &FrameOfUnit,
    model: &UnitModel,
    pull: DVec3,
    [force, moment]: [f64; 2],
) {
    let parts =
        [(Part::Mast, &frame.mast_nodes, &frame.mast_members), (Part::Arm, &frame.arm_nodes, &frame.arm_members)];
    for (part, nodes, members) in parts {
        for (ends, &member) in nodes.windows(2).zip(members) {
            for share in [0.0, 0.37, 1.0] {
                let length = ends[1].0 - ends[0].0;
                let side = if share < 1.0 { Side::After } else { Side::Before };
                let at_m = if share < 1.0 { ends[0].0 + share * length } else { ends[1].0 };
                let station = Station { part, at_m, side };
                let got = six(at.section_of_pull(station, 0).unwrap(), at.section_of_weight(station).unwrap(), pull);
                let along = (share * length).min(length);
                let expected = solved.internal(member, along).unwrap();
                same(&format!("{station:?} {:?}", model.unit().brace), got, expected, force, moment);
            }
        }
    }
}

/// What the arm does to the mast is the inner force at the top of the mast, where nothing but a
/// brace from the mast's head comes between.
fn check_head(
    at: &Influence<'_>,
    solved: &Solution,
    frame: &FrameOfUnit,
    model: &UnitModel,
    pull: DVec3,
    [force, moment]: [f64; 2],
) {
    let from_head =
        matches!(model.unit().brace, Brace::RearFoot { from: gantline_mechanics::unit::FootFrom::MastHead, .. });
    if from_head {
        return;
    }
    let got = six(at.joint_of_pull(Joint::ArmOnMast, 0).unwrap(), at.joint_of_weight(Joint::ArmOnMast).unwrap(), pull);
    let top = *frame.mast_members.last().unwrap();
    let nodes = &frame.mast_nodes;
    let length = nodes[nodes.len() - 1].0 - nodes[nodes.len() - 2].0;
    let local = solved.internal(top, length).unwrap();
    let global = |v: DVec3| DVec3::new(-v.z, v.y, v.x);
    let expected = Wrench { force_n: global(local.force_n), moment_nm: global(local.moment_nm) };
    same("arm on mast", got, expected, force, moment);
}
