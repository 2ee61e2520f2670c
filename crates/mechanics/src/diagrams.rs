//! Diagrams of inner forces along mast, arm and brace under a given pull: N, V, T and M at every place where they jump.

use glam::DVec3;

use crate::unit::{Part, Side, Station, UnitFault, UnitModel};

/// Inner forces at a cut, in the part's local axes (see [`Station`]).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// Which part.
    pub part: Part,
    /// Coordinate along the part, m.
    pub at_m: f64,
    /// Which side of the coordinate.
    pub side: Side,
    /// N (tension positive), V_y, V_z in N, T, M_y, M_z in N·m.
    pub forces: [f64; 6],
}

/// The diagrams of a unit under one rope pull and its weight: cuts in order of part and coordinate, both sides of every
/// jump, and `between` further cuts in each stretch. `pull_n` is in arm axes at the slew given.
pub fn diagrams(
    model: &UnitModel,
    slew_rad: f64,
    point: usize,
    pull_n: DVec3,
    weight_factor: f64,
    between: usize,
) -> Result<Vec<Cut>, UnitFault> {
    let influence = model.influence(slew_rad)?;
    model
        .stations(between)
        .into_iter()
        .map(|station: Station| {
            let rows = influence.section_of_pull(station, point)?;
            let weight = influence.section_of_weight(station)?;
            let forces = std::array::from_fn(|i| rows[i].dot(pull_n) + weight[i] * weight_factor);
            Ok(Cut { part: station.part, at_m: station.at_m, side: station.side, forces })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stiffness::BarStiffness;
    use crate::unit::{BaseFixity, Brace, BraceAction, HeadJoint, PinOffsets, RopePoint, Unit};

    #[test]
    fn a_front_braced_arm_bends_at_its_brace_as_by_hand() {
        let bar = BarStiffness { ea_n: 2e8, ei_y_nm2: 5e5, ei_z_nm2: 5e5, gj_nm2: 4e5, weight_n_per_m: 0.0 };
        let model = UnitModel::new(&Unit {
            mast: bar,
            mast_height_m: 1.5,
            base: BaseFixity::Rigid,
            arm: bar,
            outreach_m: 1.2,
            tail_m: 0.0,
            head: HeadJoint::Pinned,
            brace: Brace::Front { arm_at_m: 0.5, mast_at_m: 0.9, bar, action: BraceAction::Both },
            pins: PinOffsets::default(),
            points: vec![RopePoint { x_m: 1.2, sideways_m: 0.0, drop_m: 0.0 }],
            lumps: vec![],
        })
        .unwrap();
        let cuts = diagrams(&model, 0.0, 0, DVec3::new(0.0, 0.0, -12e3), 1.0, 4).unwrap();
        let largest = |part: Part, row: usize| {
            cuts.iter().filter(|cut| cut.part == part).map(|cut| cut.forces[row].abs()).fold(0.0, f64::max)
        };
        // Closed forms for pins on the axes: arm T·(a − x_b), mast T·a, brace T·a/(x_b·sin β), tan β = 0.6/0.5.
        assert!((largest(Part::Arm, 4) - 12e3 * 0.7).abs() < 1e-6);
        assert!((largest(Part::Mast, 4) - 12e3 * 1.2).abs() < 1e-6);
        let sin = 0.6 / 0.5_f64.hypot(0.6);
        assert!((largest(Part::Brace, 0) - 12e3 * 1.2 / (0.5 * sin)).abs() < 1e-6);
    }
}
