//! Moves an underlay: the place of it that was taken hold of is laid on a corner of the plan, or goes in round steps.

use gantline_plan::change::Change;
use gantline_plan::document::UnderlayId;
use glam::DVec2;

use super::gesture::{Spot, point_in_steps, step_m};
use super::sketch::CardLine;
use super::snap::candidates::of_plan;
use super::snap::{Caught, Moving, choose};
use super::{Asked, Scene};

/// An underlay being moved.
#[derive(Debug, Clone, PartialEq)]
pub struct MoveUnderlay {
    underlay: UnderlayId,
    grip: DVec2,
    by: DVec2,
    caught: Option<Caught>,
}

impl MoveUnderlay {
    /// Begins at the place where it was taken hold of.
    pub const fn begin(underlay: UnderlayId, from: &Spot) -> Self {
        Self { underlay, grip: from.at, by: DVec2::ZERO, caught: None }
    }

    /// What can be typed.
    pub fn asks(&self) -> Vec<Asked> {
        vec![Asked::length("moved x"), Asked::length("moved y")]
    }

    /// What has caught it.
    pub const fn caught(&self) -> Option<Caught> {
        self.caught
    }

    /// The change for a pointer.
    pub fn change(&mut self, spot: &Spot, scene: &Scene<'_>) -> Change {
        let raw = spot.at - self.grip;
        let caught = choose(spot.at, &of_plan(scene.plan, Moving::Nothing), self.caught.as_ref(), spot.m_per_pt);
        self.caught = caught.filter(|_| !spot.held.alt && scene.typed.is_empty());
        let free = match self.caught {
            Some(caught) => caught.at - self.grip,
            None if spot.held.alt => raw,
            None => point_in_steps(raw, step_m(spot.m_per_pt)),
        };
        let typed = scene.typed;
        self.by = DVec2::new(typed.first().unwrap_or(free.x), typed.second().unwrap_or(free.y));
        Change::MoveUnderlay { underlay: self.underlay, by: self.by }
    }

    /// The card at the pointer.
    pub fn card(&self) -> Vec<CardLine> {
        vec![CardLine::length("moved x", self.by.x), CardLine::length("moved y", self.by.y)]
    }
}
