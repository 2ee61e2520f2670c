//! The name of any shown figure.

use super::plate::acts_as_on_the_base;
use crate::assess::{Assessment, Code, Component, Sense, UnitAssessment};
use crate::document::PlacementId;
use crate::geometry::facade::FacadeKey;

/// MeasuredFrom where a unit's place along its edge is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum MeasuredFrom {
    /// MeasuredFrom the edge's start.
    Start,
    /// To the edge's end.
    End,
    /// To the nearest unit toward the start.
    UnitBefore,
    /// To the nearest unit toward the end.
    UnitAfter,
}

/// A figure that the program shows. Indices are those of the assessment's lists.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FigureId {
    /// An extreme of a reaction at the base, N or N·m.
    Reaction {
        /// Whose.
        unit: PlacementId,
        /// Combination of the basis.
        combination: usize,
        /// Which component.
        component: Component,
        /// Largest or smallest.
        sense: Sense,
    },
    /// Largest or smallest pull in the brace, N.
    BraceForce {
        /// Whose.
        unit: PlacementId,
        /// Combination of the basis.
        combination: usize,
        /// Largest or smallest.
        sense: Sense,
    },
    /// An extreme at a separate foot, N.
    FootReaction {
        /// Whose.
        unit: PlacementId,
        /// Combination of the basis.
        combination: usize,
        /// Fx, Fy, Fz or V.
        component: Component,
        /// Largest or smallest.
        sense: Sense,
    },
    /// Use of a member, by its row among the unit's members.
    MemberUse {
        /// Whose.
        unit: PlacementId,
        /// Row.
        row: usize,
    },
    /// Largest force that parts a joint, N, by its row among the unit's joints.
    JointUplift {
        /// Whose.
        unit: PlacementId,
        /// Row.
        row: usize,
    },
    /// A component of what acts on the plate of a base on floor or plinth where a look is worst, by the look's row among the
    /// base's uses, N or N·m.
    PlateAction {
        /// Whose.
        unit: PlacementId,
        /// Row.
        row: usize,
        /// One of the six.
        component: Component,
    },
    /// The same, added up from what anchors and pressure do to the plate: Fz, Mx or My.
    PlateBalance {
        /// Whose.
        unit: PlacementId,
        /// Row.
        row: usize,
        /// Fz, Mx or My.
        component: Component,
    },
    /// Tension of an anchor where a look is worst, N.
    AnchorTension {
        /// Whose.
        unit: PlacementId,
        /// Row of the look among the base's uses.
        row: usize,
        /// Which anchor, from 0.
        anchor: usize,
    },
    /// The mast in its socket, by its row.
    SocketUse {
        /// Whose.
        unit: PlacementId,
        /// Row.
        row: usize,
    },
    /// Largest twist about the mast axis at the design level, N·m.
    Twist(PlacementId),
    /// Largest tip deflection in service, m.
    TipDeflection(PlacementId),
    /// Smallest ratio of critical to acting load.
    CriticalFactor(PlacementId),
    /// Largest use of the members at the declared rating.
    UseAtRating(PlacementId),
    /// The smallest clearance of a swept part to a thing, m, by its row among the unit's clearances.
    Clearance {
        /// Whose.
        unit: PlacementId,
        /// Row.
        row: usize,
    },
    /// Distance of the tip outside a facade, m.
    StandOff {
        /// Whose.
        unit: PlacementId,
        /// The facade.
        facade: FacadeKey,
    },
    /// How far the facade's top lies below the rope's last support, m.
    TopBelowTip {
        /// Whose.
        unit: PlacementId,
        /// The facade.
        facade: FacadeKey,
    },
    /// How far to either side of the rope's plumb line a technician works at a depth of a facade, m.
    HalfWidth {
        /// Whose.
        unit: PlacementId,
        /// The facade.
        facade: FacadeKey,
        /// Depth below the facade's top.
        depth_m: f64,
    },
    /// The longest rope down to the foot of a facade that is served, m.
    Drop(PlacementId),
    /// Area that one unit covers of a facade, m².
    UnitCovers {
        /// Whose.
        unit: PlacementId,
        /// The facade.
        facade: FacadeKey,
    },
    /// A unit's place along its edge, m.
    SettingOut {
        /// Whose.
        unit: PlacementId,
        /// MeasuredFrom where.
        from: MeasuredFrom,
    },
    /// Protection at the edge near the standing place over the finish, m.
    Guard(PlacementId),
    /// Height of a facade, m.
    FacadeHeight(FacadeKey),
    /// Area of a facade, m².
    FacadeArea(FacadeKey),
    /// Area of a facade that any unit covers, m².
    FacadeCovered(FacadeKey),
    /// Area of a facade that no unit covers, m².
    FacadeOpen(FacadeKey),
    /// Half-angle that the load cone must have, rad.
    ConeNeeded,
}

impl FigureId {
    /// Every figure of an assessment that can be explained, in order of units, then facades. Half-widths are named at the
    /// top and the foot of each facade that a unit serves.
    pub fn all(assessment: &Assessment) -> Vec<Self> {
        let mut all = vec![Self::ConeNeeded];
        for (&id, unit) in &assessment.units {
            of_strength(id, unit, &mut all);
            of_plate(id, unit, &mut all);
            of_place(id, unit, assessment, &mut all);
        }
        for &facade in assessment.facades.keys() {
            all.extend([
                Self::FacadeHeight(facade),
                Self::FacadeArea(facade),
                Self::FacadeCovered(facade),
                Self::FacadeOpen(facade),
            ]);
        }
        all
    }
}

fn of_strength(unit: PlacementId, result: &UnitAssessment, all: &mut Vec<FigureId>) {
    let Some(reactions) = &result.reactions else { return };
    for (combination, found) in reactions.combinations.iter().enumerate() {
        let sets = found.sets.iter();
        all.extend(sets.map(|s| FigureId::Reaction { unit, combination, component: s.component, sense: s.sense }));
        if found.brace_axial.is_some() {
            all.extend([Sense::Max, Sense::Min].map(|sense| FigureId::BraceForce { unit, combination, sense }));
        }
        let foot = found.foot.iter();
        all.extend(foot.map(|f| FigureId::FootReaction { unit, combination, component: f.component, sense: f.sense }));
    }
    let members = reactions.members.iter().enumerate().filter(|(_, member)| member.utilization.is_some());
    all.extend(members.map(|(row, _)| FigureId::MemberUse { unit, row }));
    all.extend((0..reactions.joints.len()).map(|row| FigureId::JointUplift { unit, row }));
    let socket = reactions.socket.iter().enumerate().filter(|(_, socket)| socket.utilization.is_some());
    all.extend(socket.map(|(row, _)| FigureId::SocketUse { unit, row }));
    let single = [
        reactions.twist_nm.map(|_| FigureId::Twist(unit)),
        reactions.tip_deflection_m.map(|_| FigureId::TipDeflection(unit)),
        reactions.alpha_cr.map(|_| FigureId::CriticalFactor(unit)),
        reactions.at_rating.as_ref().filter(|found| found.utilization > 0.0).map(|_| FigureId::UseAtRating(unit)),
    ];
    all.extend(single.into_iter().flatten());
}

fn of_plate(unit: PlacementId, result: &UnitAssessment, all: &mut Vec<FigureId>) {
    let Some(base) = &result.base else { return };
    for (row, used) in base.uses.iter().enumerate() {
        let Some(state) = &used.state else { continue };
        if state.causes.is_some() && acts_as_on_the_base(result, used.of) {
            let single = Component::ALL.into_iter().filter(|part| !matches!(part, Component::V | Component::M));
            all.extend(single.map(|component| FigureId::PlateAction { unit, row, component }));
        }
        if !state.tension_n.is_empty() {
            let parts = [Component::Fz, Component::Mx, Component::My];
            all.extend(parts.map(|component| FigureId::PlateBalance { unit, row, component }));
        }
        if state.neutral_axis_m.is_some() && state.pressed_n > 0.0 {
            let pulled = state.tension_n.iter().enumerate().filter(|(_, tension)| **tension > 0.0);
            all.extend(pulled.map(|(anchor, _)| FigureId::AnchorTension { unit, row, anchor }));
        }
    }
}

fn of_place(unit: PlacementId, result: &UnitAssessment, assessment: &Assessment, all: &mut Vec<FigureId>) {
    all.extend((0..result.clearances.len()).map(|row| FigureId::Clearance { unit, row }));
    for served in &result.serves {
        let facade = served.facade;
        all.extend([
            FigureId::StandOff { unit, facade },
            FigureId::TopBelowTip { unit, facade },
            FigureId::UnitCovers { unit, facade },
        ]);
        let depths = [0.0, assessment.facades.get(&facade).map_or(0.0, |found| found.facade.height_m())];
        all.extend(depths.map(|depth_m| FigureId::HalfWidth { unit, facade, depth_m }));
    }
    let measured = |code: Code| result.checks.iter().any(|check| check.code == code && check.measured.is_some());
    if measured(Code::DropLength) {
        all.push(FigureId::Drop(unit));
    }
    if measured(Code::GuardNearEdge) {
        all.push(FigureId::Guard(unit));
    }
    if let Some(out) = result.setting_out {
        all.extend([MeasuredFrom::Start, MeasuredFrom::End].map(|from| FigureId::SettingOut { unit, from }));
        all.extend(out.before.map(|_| FigureId::SettingOut { unit, from: MeasuredFrom::UnitBefore }));
        all.extend(out.after.map(|_| FigureId::SettingOut { unit, from: MeasuredFrom::UnitAfter }));
    }
}
