//! What a plate is: outline, anchors, what it bears on; checked once, so that nothing later meets nonsense.

use glam::DVec2;

/// What a plate bears on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bearing {
    /// The concrete itself.
    Concrete,
    /// A layer of grout on the concrete.
    Grout,
    /// Nuts under the plate, without grout: it presses on nothing, and anchors also push.
    LevelingNuts,
}

/// One anchor of a plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlateAnchor {
    /// Place in the plate's axes, from the plate's reference point.
    pub at: DVec2,
    /// Stress area, m².
    pub stress_area_m2: f64,
    /// Factor on the anchor's stiffness for its free length: 1 where it is bonded up to the surface, less where it stretches
    /// over a length; of the order of embedment over free length. Above 0, at most 1.
    pub stiffness_factor: f64,
    /// Whether its hole fits closely enough that it takes shear.
    pub takes_shear: bool,
}

impl PlateAnchor {
    /// A fully stiff anchor that takes shear.
    pub const fn new(at: DVec2, stress_area_m2: f64) -> Self {
        Self { at, stress_area_m2, stiffness_factor: 1.0, takes_shear: true }
    }
}

/// A plate with its anchors. Axes: x and y in the plate, z out of the concrete; for a floor plate those of the base.
#[derive(Debug, Clone, PartialEq)]
pub struct Plate {
    /// Corners in order, either way round; a simple polygon.
    pub outline: Vec<DVec2>,
    /// Thickness, m.
    pub thickness_m: f64,
    /// Anchors.
    pub anchors: Vec<PlateAnchor>,
    /// What it bears on.
    pub bearing: Bearing,
    /// Modular ratio n = E_s/E_c. Of short and long term the one that gives the larger tension is to be used by whoever
    /// asks: both are cheap.
    pub modular_ratio: f64,
}

/// Why a plate is none.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PlateFault {
    /// Fewer than three corners.
    #[error("outline: {corners} corners, at least 3")]
    TooFewCorners {
        /// Corners given.
        corners: usize,
    },
    /// Two sides that cross or touch.
    #[error("outline: sides {first} and {second} cross or touch")]
    SidesCross {
        /// One side, counted from 1.
        first: usize,
        /// The other.
        second: usize,
    },
    /// A number that is none, or outside its range.
    #[error("{field} = {value}: {asked}")]
    OutOfRange {
        /// The field.
        field: String,
        /// Its value.
        value: f64,
        /// What is asked for.
        asked: &'static str,
    },
    /// An anchor outside the outline.
    #[error("anchors[{index}].at = ({x}, {y}) lies outside the plate")]
    AnchorOutside {
        /// Which, from 0.
        index: usize,
        /// Its place.
        x: f64,
        /// Its place.
        y: f64,
    },
    /// No anchors at all.
    #[error("anchors: none")]
    NoAnchors,
    /// Nothing resists these actions: anchors in one line without contact, or one alone.
    #[error("no anchors and no contact resist these actions (Fz {fz_n} N, Mx {mx_nm} N·m, My {my_nm} N·m)")]
    NothingResists {
        /// Force out of the concrete.
        fz_n: f64,
        /// Moment about x.
        mx_nm: f64,
        /// Moment about y.
        my_nm: f64,
    },
}

impl Plate {
    /// Nothing, or the first thing about the plate that can't be.
    pub fn check(&self) -> Result<(), PlateFault> {
        self.check_outline()?;
        positive("thickness_m", self.thickness_m)?;
        positive("modular_ratio", self.modular_ratio)?;
        if self.anchors.is_empty() {
            return Err(PlateFault::NoAnchors);
        }
        for (index, anchor) in self.anchors.iter().enumerate() {
            let field = |name: &str| format!("anchors[{index}].{name}");
            finite(&field("at.x"), anchor.at.x)?;
            finite(&field("at.y"), anchor.at.y)?;
            positive(&field("stress_area_m2"), anchor.stress_area_m2)?;
            positive(&field("stiffness_factor"), anchor.stiffness_factor)?;
            if anchor.stiffness_factor > 1.0 {
                let (field, value) = (field("stiffness_factor"), anchor.stiffness_factor);
                return Err(PlateFault::OutOfRange { field, value, asked: "at most 1" });
            }
            if !contains(&self.outline, anchor.at) {
                return Err(PlateFault::AnchorOutside { index, x: anchor.at.x, y: anchor.at.y });
            }
        }
        Ok(())
    }

    fn check_outline(&self) -> Result<(), PlateFault> {
        let corners = self.outline.len();
        if corners < 3 {
            return Err(PlateFault::TooFewCorners { corners });
        }
        for (index, corner) in self.outline.iter().enumerate() {
            finite(&format!("outline[{index}].x"), corner.x)?;
            finite(&format!("outline[{index}].y"), corner.y)?;
        }
        for first in 0..corners {
            for second in first + 1..corners {
                if self.sides_meet(first, second) {
                    return Err(PlateFault::SidesCross { first: first + 1, second: second + 1 });
                }
            }
        }
        Ok(())
    }

    fn sides_meet(&self, first: usize, second: usize) -> bool {
        let corners = self.outline.len();
        let side = |index: usize| (self.outline[index], self.outline[(index + 1) % corners]);
        let ((a, b), (c, d)) = (side(first), side(second));
        let turn = |p: DVec2, q: DVec2, r: DVec2| (q - p).perp_dot(r - p);
        let neighbors = second == first + 1 || (first == 0 && second == corners - 1);
        if neighbors {
            // They share one corner; a side without length or one folded back on the other is none.
            let (shared, one, other) = if second == first + 1 { (b, a, d) } else { (a, b, c) };
            let (u, v) = (one - shared, other - shared);
            return u.length_squared() == 0.0 || v.length_squared() == 0.0 || (u.perp_dot(v) == 0.0 && u.dot(v) > 0.0);
        }
        let on = |p: DVec2, q: DVec2, r: DVec2| turn(p, q, r) == 0.0 && (r - p).dot(r - q) <= 0.0;
        let across = |p, q, r, s| turn(p, q, r) * turn(p, q, s) < 0.0;
        across(a, b, c, d) && across(c, d, a, b) || on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b)
    }
}

fn finite(field: &str, value: f64) -> Result<(), PlateFault> {
    if value.is_finite() {
        return Ok(());
    }
    Err(PlateFault::OutOfRange { field: field.to_owned(), value, asked: "a finite number" })
}

pub(super) fn positive(field: &str, value: f64) -> Result<(), PlateFault> {
    finite(field, value)?;
    if value > 0.0 {
        return Ok(());
    }
    Err(PlateFault::OutOfRange { field: field.to_owned(), value, asked: "above 0" })
}

/// Whether a point lies in a simple polygon, by the winding of its sides; its rim counts as inside or not by rounding.
pub(super) fn contains(outline: &[DVec2], point: DVec2) -> bool {
    let mut winding = 0;
    for (index, &from) in outline.iter().enumerate() {
        let to = outline[(index + 1) % outline.len()];
        let side = (to - from).perp_dot(point - from);
        if from.y <= point.y && to.y > point.y && side > 0.0 {
            winding += 1;
        } else if from.y > point.y && to.y <= point.y && side < 0.0 {
            winding -= 1;
        }
    }
    winding != 0
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// A square plate of side `side_m` with an anchor in each corner, `in_m` from both sides.
    pub fn square(side_m: f64, in_m: f64, area_m2: f64, n: f64) -> Plate {
        let (half, at) = (side_m / 2.0, side_m / 2.0 - in_m);
        let corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
        Plate {
            outline: corners.map(|(x, y)| DVec2::new(x, y) * half).to_vec(),
            thickness_m: 0.02,
            anchors: corners.map(|(x, y)| PlateAnchor::new(DVec2::new(x, y) * at, area_m2)).to_vec(),
            bearing: Bearing::Concrete,
            modular_ratio: n,
        }
    }

    #[test]
    fn a_plate_that_is_none_names_the_field() {
        let good = square(0.3, 0.04, 245e-6, 7.0);
        assert_eq!(good.check(), Ok(()));
        let fault = |change: fn(&mut Plate)| {
            let mut plate = good.clone();
            change(&mut plate);
            plate.check().unwrap_err().to_string()
        };
        assert!(fault(|p| p.outline.truncate(2)).contains("outline"));
        assert!(
            fault(|p| p.outline.swap(1, 2)).contains("sides 1 and 3 cross")
                || fault(|p| p.outline.swap(1, 2)).contains("sides 2 and 4 cross")
        );
        assert!(fault(|p| p.outline[1] = p.outline[0]).contains("cross or touch"));
        assert!(fault(|p| p.thickness_m = 0.0).contains("thickness_m"));
        assert!(fault(|p| p.modular_ratio = f64::NAN).contains("modular_ratio"));
        assert!(fault(|p| p.anchors[2].at.x = 0.2).contains("anchors[2]"));
        assert!(fault(|p| p.anchors[1].stress_area_m2 = -1.0).contains("anchors[1].stress_area_m2"));
        assert!(fault(|p| p.anchors[1].stiffness_factor = 1.5).contains("at most 1"));
        assert!(fault(|p| p.anchors.clear()).contains("anchors"));
    }
}
