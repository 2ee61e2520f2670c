//! One extreme: its value, all that acts with it, and what caused it.

use glam::{DVec2, DVec3};

/// A component of an action.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Component {
    /// Force along x, N.
    Fx,
    /// Force along y, N.
    Fy,
    /// Force along z, N.
    Fz,
    /// Moment about x, N·m.
    Mx,
    /// Moment about y, N·m.
    My,
    /// Moment about z, N·m: at the base of a slewing unit what must hold the slew.
    Mz,
    /// Horizontal resultant hypot(Fx, Fy), N.
    V,
    /// Resultant moment hypot(Mx, My), N·m.
    M,
    /// Axial force of the brace, tension positive, N.
    Axial,
    /// Displacement along x, m.
    Ux,
    /// Displacement along y, m.
    Uy,
    /// Displacement along z, m.
    Uz,
    /// Horizontal displacement hypot(Ux, Uy), m.
    U,
}

/// Greatest or least.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sense {
    /// The greatest value.
    Max,
    /// The least value.
    Min,
}

/// An extreme of one component.
#[derive(Debug, Clone, PartialEq)]
pub struct Extreme {
    /// Which component. Resultants have a greatest value only.
    pub component: Component,
    /// Greatest or least.
    pub sense: Sense,
    /// Its value, N, N·m or m.
    pub value: f64,
    /// The six components that act at once: (Fx, Fy, Fz, Mx, My, Mz); for a brace (N, 0, …), for a
    /// foot (Fx, Fy, Fz, 0, 0, 0), for a rope point's movement (Ux, Uy, Uz, 0, 0, 0).
    pub concurrent: [f64; 6],
    /// Direction of the first rope that pulls, structure axes; `None` if none does.
    pub pull_direction: Option<DVec3>,
    /// Slew at which it happens, rad.
    pub slew_rad: f64,
    /// Everything that acts.
    pub causes: Causes,
}

/// What acts at an extreme, structure axes. Weight and fixed forces act always.
#[derive(Debug, Clone, PartialEq)]
pub struct Causes {
    /// Force of each rope on its point, N.
    pub pulls_n: Vec<DVec3>,
    /// Tension of each rope's second leg, N; 0 without one.
    pub second_legs_n: Vec<f64>,
    /// Direction of the wind times its share of the full force, horizontal.
    pub wind: DVec2,
    /// Direction of the tether times its share of the full force, horizontal.
    pub tether: DVec2,
    /// Whether the brace's foot is lost.
    pub foot_lost: bool,
    /// Whether the brace is slack.
    pub brace_slack: bool,
}

/// Whether a brace that only pulls is pressed by some of the actions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Slack {
    /// It never is, or it can be pressed.
    Never,
    /// It goes slack and the unit stands without it; the extremes cover that.
    StandsWithout {
        /// Slew at which it would be pressed most, rad.
        slew_rad: f64,
        /// The axial force there if it could be pressed, N.
        axial_n: f64,
    },
    /// It goes slack and the arm swings: no extreme covers what happens then.
    Mechanism {
        /// Slew at which it would be pressed most, rad.
        slew_rad: f64,
        /// The axial force there if it could be pressed, N.
        axial_n: f64,
    },
}

/// Extremes and whether the brace goes slack.
#[derive(Debug, Clone, PartialEq)]
pub struct Envelope {
    /// Extremes by component, greatest before least.
    pub extremes: Vec<Extreme>,
    /// Whether the brace goes slack.
    pub slack: Slack,
}

impl Envelope {
    /// The extreme of a component.
    #[must_use]
    pub fn get(&self, component: Component, sense: Sense) -> Option<&Extreme> {
        self.extremes.iter().find(|e| e.component == component && e.sense == sense)
    }
}
