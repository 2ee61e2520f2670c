//! A place on mast, arm or brace at which inner forces are asked for, and on which side of it.

/// A part of the unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// The mast; its coordinate runs from the structure up, its local axes are x = up, y = the arm
    /// axes' y, z = toward the tail.
    Mast,
    /// The arm; its coordinate runs from the mast axis, positive outboard, its local axes are the arm
    /// axes.
    Arm,
    /// The brace, from its lower pin to its upper pin; only its axial force is anything but zero.
    Brace,
}

/// Which side of a place: inner forces jump where a force acts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// Just before the place, seen along the part's coordinate.
    Before,
    /// Just after it.
    After,
}

/// A cut through the unit.
///
/// Inner forces at a cut are what the part beyond it (greater coordinate) does to the part before
/// it: N (tension positive), V_y, V_z in N, T, M_y, M_z in N·m, in the part's local axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Which part is cut.
    pub part: Part,
    /// Coordinate along the part, m.
    pub at_m: f64,
    /// Which side of the coordinate.
    pub side: Side,
}

impl Station {
    /// A cut just after a height of the mast.
    #[must_use]
    pub const fn mast(at_m: f64, side: Side) -> Self {
        Self { part: Part::Mast, at_m, side }
    }

    /// A cut of the arm.
    #[must_use]
    pub const fn arm(at_m: f64, side: Side) -> Self {
        Self { part: Part::Arm, at_m, side }
    }

    /// Whether something that acts at `at_m` on the same part lies beyond the cut.
    pub(super) fn is_before(&self, at_m: f64) -> bool {
        match self.side {
            Side::Before => at_m >= self.at_m,
            Side::After => at_m > self.at_m,
        }
    }
}
