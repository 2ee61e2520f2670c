//! States of a base: what acts on its plate, how the plate answers, and what that does to each anchor.

use gantline_mechanics::anchorage::{ActionLevel, Compression, Group, GroupActions};
use gantline_mechanics::envelope::{Actions, Causes, SlewRange};
use gantline_mechanics::plate::{Candidate, PlateAxes, PlateFault, PlateOn, PlateSolution, PreparedPlate, shear};
use gantline_mechanics::unit::UnitModel;
use gantline_mechanics::wrench::Wrench;
use glam::{DVec2, DVec3};

use super::found::{BaseUse, PlateState};

/// A base's anchors with the states that may govern them; they hang on make-up and basis, never on the place.
#[derive(Debug, Clone)]
pub(in crate::assess) struct AnchorForces {
    /// The fasteners.
    pub group: Group,
    /// The plate for each modular ratio.
    pub plates: Vec<PreparedPlate>,
    /// States worth judging.
    pub states: Vec<State>,
    /// Share of the tension that is sustained: what self-weight alone does by what all does.
    pub sustained_share: f64,
    /// Whether bond strengths are the defaults of the design code.
    pub bond_is_default: bool,
    /// Bending and stiffness of the plate, which hang on no place; empty until the states are known.
    pub bends: Vec<BaseUse>,
    /// What to search on with where the place is known; none for a foot.
    pub unit: Option<SearchedUnit>,
}

/// A unit with the sets of actions that count for its plate.
#[derive(Debug, Clone)]
pub(in crate::assess) struct SearchedUnit {
    /// The unit.
    pub model: UnitModel,
    /// The sets of actions, those left out that others cover.
    pub sets: Vec<Actions>,
    /// Of each its combination in the basis.
    pub combinations: Vec<usize>,
    /// Slews at which a person may hang.
    pub slews: SlewRange,
    /// Where the plate lies.
    pub axes: PlateAxes,
}

impl SearchedUnit {
    /// Whether everything that may act turns with the arm, at any slew: then every state may be turned.
    pub fn turns_with_the_arm(&self) -> bool {
        let is_whole =
            |set: &Actions| set.pulls.iter().all(|pull| pull.cone.lean.is_none() && pull.second_leg.is_none());
        self.slews == SlewRange::WholeTurn
            && self.axes.on == PlateOn::Floor
            && !self.model.depends_on_slew()
            && self.sets.iter().all(|set| is_whole(set) && set.fixed.is_empty())
    }
}

/// One state.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::assess) struct State {
    /// How it came about.
    pub cause: Cause,
    /// Action on the plate in its axes.
    pub action: Wrench,
    /// Which of the plates.
    pub plate: usize,
    /// What the plate makes of it.
    pub solution: Result<PlateSolution, PlateFault>,
    /// What acts on each anchor; none where nothing resists.
    pub anchors: Option<GroupActions>,
    /// Which set of actions makes it, and how; none for a foot.
    pub from: Option<(usize, Causes)>,
}

/// How a state came about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::assess) struct Cause {
    /// Index of the combination in the basis.
    pub combination: usize,
    /// Factor on self-weight.
    pub weight_factor: f64,
    /// Slew of the arm.
    pub slew_rad: f64,
    /// Direction of the rope's pull; none when no rope pulls.
    pub pull: Option<DVec3>,
}

impl State {
    /// A state under an action.
    pub fn of(cause: Cause, action: Wrench, plates: &[PreparedPlate], plate: usize) -> Self {
        let solution = plates[plate].solve(action.force_n.z, action.moment_nm.x, action.moment_nm.y);
        Self::solved(cause, action, &plates[plate], plate, solution)
    }

    /// A state that was solved before.
    pub fn solved(
        cause: Cause,
        action: Wrench,
        prepared: &PreparedPlate,
        plate: usize,
        solution: Result<PlateSolution, PlateFault>,
    ) -> Self {
        let anchors = solution.as_ref().ok().and_then(|solution| group_actions(prepared, action, solution));
        Self { cause, action, plate, solution, anchors, from: None }
    }

    /// What a search found, with each of the plates.
    pub fn found(candidate: &Candidate, unit: &SearchedUnit, plates: &[PreparedPlate]) -> Vec<Self> {
        let (Some(&combination), Some(set)) =
            (unit.combinations.get(candidate.actions), unit.sets.get(candidate.actions))
        else {
            return Vec::new();
        };
        let cause = Cause {
            combination,
            weight_factor: set.weight_factor,
            slew_rad: candidate.slew_rad,
            pull: candidate.causes.pulls_n.iter().find_map(|pull| pull.try_normalize()),
        };
        let each = (0..plates.len()).map(|plate| Self {
            from: Some((candidate.actions, candidate.causes.clone())),
            ..Self::of(cause, candidate.action, plates, plate)
        });
        each.collect()
    }

    /// Of several that in which an anchor is pulled hardest; the first where they are alike.
    pub fn hardest_pulled(states: Vec<Self>) -> Option<Self> {
        states.into_iter().reduce(|a, b| if b.greatest_tension_n() > a.greatest_tension_n() { b } else { a })
    }

    /// The state with all that acts turned about the mast.
    pub fn turned(&self, turn_rad: f64, forces: &AnchorForces) -> Self {
        let turn = glam::DQuat::from_rotation_z(turn_rad);
        let cause = Cause {
            slew_rad: (self.cause.slew_rad + turn_rad).rem_euclid(std::f64::consts::TAU),
            pull: self.cause.pull.map(|pull| turn * pull),
            ..self.cause
        };
        let mut state = Self::of(cause, self.action.slewed(turn_rad), &forces.plates, self.plate);
        state.from = self.from.as_ref().map(|(set, causes)| (*set, turned(causes, turn_rad)));
        state.sustain(forces.sustained_share);
        state
    }

    /// Says which share of the tension is sustained.
    pub fn sustain(&mut self, share: f64) {
        if let Some(anchors) = &mut self.anchors {
            anchors.sustained_share = Some(share);
        }
    }

    /// The state as a search takes it up again.
    pub fn candidate(&self) -> Option<Candidate> {
        let (actions, causes) = self.from.clone()?;
        Some(Candidate {
            actions,
            slew_rad: self.cause.slew_rad,
            causes,
            action: self.action,
            solution: self.solution.clone(),
        })
    }

    /// The state as it is told.
    pub fn told(&self, forces: &AnchorForces) -> PlateState {
        let plate = forces.plates[self.plate].plate();
        let solution = self.solution.as_ref().ok();
        let anchors = self.anchors.as_ref();
        PlateState {
            combination: self.cause.combination,
            weight_factor: self.cause.weight_factor,
            slew_rad: self.cause.slew_rad,
            pull: self.cause.pull,
            causes: self.from.as_ref().map(|(_, causes)| causes.clone()),
            action: self.action.six(),
            modular_ratio: plate.modular_ratio,
            tension_n: solution.map_or_else(Vec::new, |solution| solution.tension_n.clone()),
            shear_n: anchors
                .map_or_else(Vec::new, |anchors| anchors.shear_n.iter().copied().map(DVec2::from).collect()),
            pressed_m: solution.map_or_else(Vec::new, |solution| solution.pressed(plate)),
            neutral_axis_m: solution.and_then(|solution| solution.neutral_axis(plate)),
            pressure_pa: solution.map_or(0.0, |solution| solution.greatest_pressure_pa),
            pressed_n: solution.map_or(0.0, |solution| solution.pressure_n),
            pressed_at_m: solution.and_then(|solution| solution.pressure_at),
        }
    }

    /// The largest pressure under the plate, Pa; 0 where nothing resists.
    pub fn pressure_pa(&self) -> f64 {
        self.solution.as_ref().map_or(0.0, |solution| solution.greatest_pressure_pa)
    }

    /// The largest tension of an anchor, N; infinite where nothing resists.
    pub fn greatest_tension_n(&self) -> f64 {
        self.solution.as_ref().map_or(f64::INFINITY, PlateSolution::greatest_tension_n)
    }
}

/// All that acts, turned about the mast.
fn turned(causes: &Causes, turn_rad: f64) -> Causes {
    let (turn, level) = (glam::DQuat::from_rotation_z(turn_rad), DVec2::from_angle(turn_rad));
    Causes {
        pulls_n: causes.pulls_n.iter().map(|&pull| turn * pull).collect(),
        wind: level.rotate(causes.wind),
        tether: level.rotate(causes.tether),
        ..causes.clone()
    }
}

/// What acts on each anchor at the design level; none where no anchor takes the shear.
pub(super) fn group_actions(plate: &PreparedPlate, action: Wrench, solution: &PlateSolution) -> Option<GroupActions> {
    let shear_n = shear::shares(plate.plate(), action.force_n.truncate(), action.moment_nm.z)?;
    let lever_arm_m = solution.lever_arm_m(plate.plate());
    Some(GroupActions {
        tension_n: solution.tension_n.iter().map(|tension| tension.max(0.0)).collect(),
        shear_n: shear_n.iter().map(DVec2::to_array).collect(),
        compression: lever_arm_m
            .filter(|_| solution.has_contact())
            .map(|lever_arm_m| Compression { resultant_n: solution.pressure_n, lever_arm_m }),
        sustained_share: None,
        level: ActionLevel::Design,
    })
}
