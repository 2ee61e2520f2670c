//! Diagrams of inner forces along mast, arm and brace under given pulls: N, V, T and M at every place where they jump.

use glam::DVec3;

use crate::envelope::Slack;
use crate::unit::{Influence, Part, PointPull, Side, Station, UnitFault, UnitModel};

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

/// Inner forces along the whole unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Diagrams {
    /// Cuts in order of part and coordinate, both sides of every jump. None if the unit doesn't stand.
    pub cuts: Vec<Cut>,
    /// Axial force of the brace, tension positive, N; 0 without a brace or when it is slack.
    pub brace_axial_n: f64,
    /// Whether the brace only pulls and would be pressed here.
    pub slack: Slack,
}

/// The diagrams of a unit under one rope pull and its weight: cuts in order of part and coordinate, both sides of every
/// jump, and `between` further cuts in each stretch. `pull_n` is in arm axes at the slew given. No cuts if a brace that
/// only pulls goes slack and the unit doesn't stand without it.
pub fn diagrams(
    model: &UnitModel,
    slew_rad: f64,
    point: usize,
    pull_n: DVec3,
    weight_factor: f64,
    between: usize,
) -> Result<Vec<Cut>, UnitFault> {
    let pull = PointPull { point, force_n: pull_n };
    Ok(diagrams_under(model, slew_rad, &[pull], weight_factor, between)?.cuts)
}

/// The same under any pulls (arm axes), with what becomes of the brace.
///
/// In each stretch M is a parabola under weight and everything else linear, so few cuts between suffice.
pub fn diagrams_under(
    model: &UnitModel,
    slew_rad: f64,
    pulls: &[PointPull],
    weight_factor: f64,
    between: usize,
) -> Result<Diagrams, UnitFault> {
    check(pulls, weight_factor)?;
    let braced = model.influence(slew_rad)?;
    let axial_n = brace_axial(&braced, pulls, weight_factor)?;
    let is_slack = model.unit().brace.pulls_only() && axial_n < 0.0;
    let bare = model.influence_without_brace(slew_rad).filter(|_| is_slack);
    let (at, slack) = match (is_slack, &bare) {
        (false, _) => (&braced, Slack::Never),
        (true, Some(bare)) => (bare, Slack::StandsWithout { slew_rad, axial_n }),
        (true, None) => {
            let slack = Slack::Mechanism { slew_rad, axial_n };
            return Ok(Diagrams { cuts: Vec::new(), brace_axial_n: 0.0, slack });
        }
    };
    let cuts = model.stations(between).into_iter().map(|station| {
        let forces = forces(at, station, pulls, weight_factor)?;
        Ok(Cut { part: station.part, at_m: station.at_m, side: station.side, forces })
    });
    let cuts = cuts.collect::<Result<_, UnitFault>>()?;
    Ok(Diagrams { cuts, brace_axial_n: if is_slack { 0.0 } else { axial_n }, slack })
}

fn check(pulls: &[PointPull], weight_factor: f64) -> Result<(), UnitFault> {
    let finite = |field: String, value: f64| {
        if value.is_finite() { Ok(()) } else { Err(UnitFault::NotFinite { field, value }) }
    };
    finite("weight_factor".to_owned(), weight_factor)?;
    for (i, pull) in pulls.iter().enumerate() {
        for value in pull.force_n.to_array() {
            finite(format!("pulls[{i}].force_n"), value)?;
        }
    }
    Ok(())
}

fn brace_axial(at: &Influence<'_>, pulls: &[PointPull], weight_factor: f64) -> Result<f64, UnitFault> {
    let mut sum = weight_factor * at.brace_of_weight()?;
    for pull in pulls {
        sum += at.brace_of_pull(pull.point)?.dot(pull.force_n);
    }
    Ok(sum)
}

fn forces(
    at: &Influence<'_>,
    station: Station,
    pulls: &[PointPull],
    weight_factor: f64,
) -> Result<[f64; 6], UnitFault> {
    let mut sum = at.section_of_weight(station)?.map(|f| f * weight_factor);
    for pull in pulls {
        for (total, row) in sum.iter_mut().zip(at.section_of_pull(station, pull.point)?) {
            *total += row.dot(pull.force_n);
        }
    }
    Ok(sum)
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
