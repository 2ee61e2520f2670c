//! A group of like fasteners under one plate, and how the plate sits on the concrete.

use super::fastener::Fastener;
use super::fault::{AnchorageFault, finite, positive, positive_if_given};

/// Most fasteners in one group.
pub const MAX_ANCHORS: usize = 64;

/// Fasteners, their places and the plate's seat.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// What each fastener is.
    pub fastener: Fastener,
    /// Where they stand in plate axes, m.
    pub anchors_m: Vec<[f64; 2]>,
    /// The plate as the fasteners see it.
    pub fixture: Fixture,
}

/// The plate as the fasteners see it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fixture {
    /// Thickness t_fix, m.
    pub thickness_m: f64,
    /// Diameter of its holes d_f, m. Missing: shear is not checked.
    pub hole_diameter_m: Option<f64>,
    /// What is in the gap between hole and fastener.
    pub annulus: Annulus,
    /// What it sits on.
    pub seating: Seating,
    /// Whether it is kept from turning where it is stood off.
    pub restraint: Restraint,
}

/// Gap between hole and fastener.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Annulus {
    /// Empty.
    Open,
    /// Filled with mortar of enough strength.
    Filled,
}

/// What the plate sits on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Seating {
    /// The concrete itself.
    OnConcrete,
    /// A bed of grout.
    OnGrout { thickness_m: f64, strength_pa: f64 },
    /// Nuts, with nothing between plate and concrete; clear gap under the plate, m. `clamped`: a nut with washer is
    /// tightened against the concrete too.
    StoodOff { gap_m: f64, clamped: bool },
}

/// How the plate is kept from turning under shear with a lever arm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Restraint {
    /// Free to turn: α_M = 1.
    Free,
    /// Kept from turning: α_M = 2.
    Full,
}

impl Group {
    /// Nothing, or the first number that can't be.
    pub fn check(&self) -> Result<(), AnchorageFault> {
        self.fastener.check()?;
        self.fixture.check()?;
        let n = self.anchors_m.len();
        if n == 0 || n > MAX_ANCHORS {
            return Err(AnchorageFault::Count { found: n, most: MAX_ANCHORS });
        }
        for (i, place) in self.anchors_m.iter().enumerate() {
            finite("anchors_m x", place[0])?;
            finite("anchors_m y", place[1])?;
            if let Some(j) = self.anchors_m[..i].iter().position(|other| distance(*other, *place) < 1e-6) {
                return Err(AnchorageFault::SamePlace { first: j, second: i });
            }
        }
        Ok(())
    }

    /// Distance of two fasteners, m.
    pub fn spacing_m(&self, i: usize, j: usize) -> f64 {
        distance(self.anchors_m[i], self.anchors_m[j])
    }

    /// Least distance of any two fasteners, m; infinite for one alone.
    pub fn least_spacing_m(&self) -> f64 {
        let n = self.anchors_m.len();
        (0..n)
            .flat_map(|i| (0..i).map(move |j| (i, j)))
            .map(|(i, j)| self.spacing_m(i, j))
            .fold(f64::INFINITY, f64::min)
    }
}

impl Fixture {
    fn check(&self) -> Result<(), AnchorageFault> {
        positive("fixture thickness_m", self.thickness_m)?;
        positive_if_given("hole_diameter_m", self.hole_diameter_m)?;
        match self.seating {
            Seating::OnConcrete => Ok(()),
            Seating::OnGrout { thickness_m, strength_pa } => {
                positive("grout thickness_m", thickness_m)?;
                positive("grout strength_pa", strength_pa)
            }
            Seating::StoodOff { gap_m, .. } => positive("stand-off gap_m", gap_m),
        }
    }
}

fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}
