//! Inner forces along mast, arm and brace of one unit, at the pull and slew that bring an extreme of its base.

use gantline_mechanics::envelope::{Actions, Extreme, SlewRange, base_envelope};
use gantline_mechanics::unit::{Influence, Part, Station, UnitFault, UnitModel};
use glam::{DMat3, DVec3};

use super::against_slew::actions;
use super::assessment::Assessment;
use super::lean::basis_for;
use super::reaction_phase::{component, sense};
use super::reactions::{Component, Sense};
use crate::basis::LoadLevel;
use crate::catalog::{ResolvedUnit, to_mechanics};
use crate::document::{PlacementId, Plan};

/// Cuts between the places where something happens: under self-weight moments are parabolas there.
const CUTS_BETWEEN: usize = 7;

/// A member in a diagram.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Member {
    /// The mast, from the base up.
    Mast,
    /// The arm, from the end of its tail to its tip; its coordinate is 0 at the mast.
    Arm,
    /// The brace, from its lower to its upper pin.
    Brace,
}

impl Member {
    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Mast => "mast",
            Self::Arm => "arm",
            Self::Brace => "brace",
        }
    }
}

/// Inner forces at one cut, in the member's own axes: what the part beyond the cut does to the part before it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// Coordinate along the member, m.
    pub at_m: f64,
    /// Axial force, tension positive, N.
    pub axial_n: f64,
    /// Shear across the arm's plane, N.
    pub shear_y_n: f64,
    /// Shear in the arm's plane, N.
    pub shear_z_n: f64,
    /// Torsion, N·m.
    pub torsion_nm: f64,
    /// Moment in the arm's plane, N·m.
    pub moment_y_nm: f64,
    /// Moment across the arm's plane, N·m.
    pub moment_z_nm: f64,
}

/// Inner forces along one member. Where they jump there are two cuts at one place.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberDiagram {
    /// The member.
    pub member: Member,
    /// Cuts in order.
    pub cuts: Vec<Cut>,
}

/// Inner forces along a unit, and what brings them.
#[derive(Debug, Clone, PartialEq)]
pub struct Diagrams {
    /// Index of the combination in the basis.
    pub combination: usize,
    /// Its level.
    pub level: LoadLevel,
    /// Force of each rope, in the base's axes, N.
    pub pulls_n: Vec<DVec3>,
    /// Slew of the arm.
    pub slew_rad: f64,
    /// Factor on self-weight.
    pub weight_factor: f64,
    /// Whether the brace is slack or its foot lost, so that it carries nothing.
    pub brace_is_out: bool,
    /// What acts in the combination but is not in the diagrams.
    pub left_out: Vec<&'static str>,
    /// Members.
    pub members: Vec<MemberDiagram>,
}

/// Why there are no diagrams.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NoDiagrams {
    /// The unit is not on the plan, or has no parts.
    #[error("the unit has no make-up that can be computed")]
    NoUnit,
    /// The combination gives no actions or no figures.
    #[error("{0}")]
    NoFigures(String),
    /// The unit does not stand under these actions.
    #[error("nothing holds the arm under this pull")]
    DoesNotStand,
}

/// At which slew diagrams are asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DiagramSlew {
    /// Where over the loaded slew range the extreme is.
    Worst,
    /// At this slew, under the pull that brings the extreme there, rad in the base's axes.
    At(f64),
}

/// Inner forces along a unit where a combination brings this extreme of its base.
pub fn diagrams(
    plan: &Plan,
    assessment: &Assessment,
    id: PlacementId,
    combination: usize,
    wanted: (Component, Sense),
    slew: DiagramSlew,
) -> Result<Diagrams, NoDiagrams> {
    let found = assessment.units.get(&id).ok_or(NoDiagrams::NoUnit)?;
    let unit = found.resolved.as_ref().map_err(|_| NoDiagrams::NoUnit)?;
    let basis = basis_for(&plan.basis, found, assessment);
    let acting = actions(unit, &basis, combination).map_err(NoDiagrams::NoFigures)?;
    let model = model_of(unit)?;
    let (extreme, one) = governing(&model, unit, &acting.with_weight, wanted, slew)?;
    let level = basis.combinations[combination].level;
    along(&model, &extreme, one, combination, level).map_err(|fault| NoDiagrams::NoFigures(fault.to_string()))?
}

fn model_of(unit: &ResolvedUnit) -> Result<UnitModel, NoDiagrams> {
    let described = to_mechanics::unit(unit).map_err(|fault| NoDiagrams::NoFigures(fault.to_string()))?;
    UnitModel::new(&described).map_err(|fault| NoDiagrams::NoFigures(fault.to_string()))
}

/// The extreme asked for, over all weight factors, with the actions that bring it.
fn governing<'a>(
    model: &UnitModel,
    unit: &ResolvedUnit,
    acting: &'a [Actions],
    wanted: (Component, Sense),
    slew: DiagramSlew,
) -> Result<(Extreme, &'a Actions), NoDiagrams> {
    let range = match slew {
        DiagramSlew::Worst => super::actions_of::slew_range(unit.slew_stops),
        DiagramSlew::At(slew_rad) => SlewRange::At(vec![slew_rad]),
    };
    let mut worst: Option<(Extreme, &Actions)> = None;
    for one in acting {
        let envelope = base_envelope(model, one, &range).map_err(|fault| NoDiagrams::NoFigures(fault.to_string()))?;
        let same = |extreme: &Extreme| {
            component(extreme.component).is_some_and(|component| (component, sense(extreme.sense)) == wanted)
        };
        let Some(extreme) = envelope.extremes.into_iter().find(same) else { continue };
        let beyond = |known: &Extreme| match wanted.1 {
            Sense::Max => extreme.value > known.value,
            Sense::Min => extreme.value < known.value,
        };
        if worst.as_ref().is_none_or(|(known, _)| beyond(known)) {
            worst = Some((extreme, one));
        }
    }
    worst.ok_or_else(|| NoDiagrams::NoFigures(format!("{} has no such extreme", wanted.0.symbol())))
}

fn along(
    model: &UnitModel,
    extreme: &Extreme,
    actions: &Actions,
    combination: usize,
    level: LoadLevel,
) -> Result<Result<Diagrams, NoDiagrams>, UnitFault> {
    let causes = &extreme.causes;
    let brace_is_out = causes.brace_slack || causes.foot_lost;
    let influence = if brace_is_out {
        match model.influence_without_brace(extreme.slew_rad) {
            Some(influence) => influence,
            None => return Ok(Err(NoDiagrams::DoesNotStand)),
        }
    } else {
        model.influence(extreme.slew_rad)?
    };
    // Vectors in structure axes are those in arm axes turned by the slew.
    let arm_from_structure = DMat3::from_rotation_z(-extreme.slew_rad);
    let pulls: Vec<(usize, DVec3)> = actions
        .pulls
        .iter()
        .zip(&causes.pulls_n)
        .map(|(pull, &force)| (pull.point, arm_from_structure * force))
        .collect();
    let mut members: Vec<MemberDiagram> = Vec::new();
    for station in model.stations(CUTS_BETWEEN) {
        let member = member_of(station.part);
        let cut = cut(&influence, station, &pulls, actions.weight_factor)?;
        match members.last_mut().filter(|last| last.member == member) {
            Some(last) => last.cuts.push(cut),
            None => members.push(MemberDiagram { member, cuts: vec![cut] }),
        }
    }
    Ok(Ok(Diagrams {
        combination,
        level,
        pulls_n: causes.pulls_n.clone(),
        slew_rad: extreme.slew_rad,
        weight_factor: actions.weight_factor,
        brace_is_out,
        left_out: if actions.wind.is_some() { vec!["wind"] } else { Vec::new() },
        members,
    }))
}

const fn member_of(part: Part) -> Member {
    match part {
        Part::Mast => Member::Mast,
        Part::Arm => Member::Arm,
        Part::Brace => Member::Brace,
    }
}

fn cut(
    influence: &Influence<'_>,
    station: Station,
    pulls: &[(usize, DVec3)],
    weight_factor: f64,
) -> Result<Cut, UnitFault> {
    let mut sum = influence.section_of_weight(station)?.map(|force| force * weight_factor);
    for &(point, force_n) in pulls {
        for (total, row) in sum.iter_mut().zip(influence.section_of_pull(station, point)?) {
            *total += row.dot(force_n);
        }
    }
    let [axial_n, shear_y_n, shear_z_n, torsion_nm, moment_y_nm, moment_z_nm] = sum;
    Ok(Cut { at_m: station.at_m, axial_n, shear_y_n, shear_z_n, torsion_nm, moment_y_nm, moment_z_nm })
}
