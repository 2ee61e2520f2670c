//! What a plate does under given actions: tension of each anchor, pressure, resultants, neutral axis.

use glam::DVec2;

use super::shape::Plate;

/// A solved plate.
#[derive(Debug, Clone, PartialEq)]
pub struct PlateSolution {
    /// Pressure at (x, y) is a + b·x + c·y where that is positive, Pa and Pa/m; where it is negative the plate lifts.
    pub plane: [f64; 3],
    /// Tension of each anchor, N; negative only where anchors also push, on leveling nuts.
    pub tension_n: Vec<f64>,
    /// Resultant of the pressure, N; 0 without contact.
    pub pressure_n: f64,
    /// Where that resultant acts; none without contact.
    pub pressure_at: Option<DVec2>,
    /// Largest pressure under the plate, Pa.
    pub greatest_pressure_pa: f64,
}

impl PlateSolution {
    /// Pressure at a point of the plate, Pa.
    pub fn pressure_pa(&self, at: DVec2) -> f64 {
        (self.plane[0] + self.plane[1] * at.x + self.plane[2] * at.y).max(0.0)
    }

    /// Whether the plate presses on anything. Without contact every anchor is pulled, which is a finding of its own.
    pub fn has_contact(&self) -> bool {
        self.pressure_n > 0.0
    }

    /// The largest tension, N.
    pub fn greatest_tension_n(&self) -> f64 {
        self.tension_n.iter().copied().fold(0.0, f64::max)
    }

    /// Sum of all tensions, N; what pushes is left out.
    pub fn total_tension_n(&self) -> f64 {
        self.tension_n.iter().filter(|tension| **tension > 0.0).sum()
    }

    /// Where the resultant of the tensions acts; none when nothing is pulled.
    pub fn tension_at(&self, plate: &Plate) -> Option<DVec2> {
        let total = self.total_tension_n();
        let pulled = self.tension_n.iter().zip(&plate.anchors).filter(|(tension, _)| **tension > 0.0);
        let moment: DVec2 = pulled.map(|(tension, anchor)| anchor.at * *tension).sum();
        (total > 0.0).then(|| moment / total)
    }

    /// Distance z between the resultants of tension and pressure, m; none when either is missing.
    pub fn lever_arm_m(&self, plate: &Plate) -> Option<f64> {
        Some(self.tension_at(plate)?.distance(self.pressure_at?))
    }

    /// Corners of the pressed part of the plate, in its order; empty without contact.
    pub fn pressed(&self, plate: &Plate) -> Vec<DVec2> {
        let value = |at: DVec2| self.plane[0] + self.plane[1] * at.x + self.plane[2] * at.y;
        let mut corners = Vec::new();
        if !self.has_contact() {
            return corners;
        }
        for (index, &from) in plate.outline.iter().enumerate() {
            let to = plate.outline[(index + 1) % plate.outline.len()];
            let (at_from, at_to) = (value(from), value(to));
            if at_from > 0.0 {
                corners.push(from);
            }
            if (at_from > 0.0) != (at_to > 0.0) {
                corners.push(from.lerp(to, at_from / (at_from - at_to)));
            }
        }
        corners
    }

    /// Two points of the neutral axis, where the plate neither presses nor lifts, as far apart as the plate is large; none
    /// where it is pressed or lifted all over in the same way.
    pub fn neutral_axis(&self, plate: &Plate) -> Option<[DVec2; 2]> {
        let slope = DVec2::new(self.plane[1], self.plane[2]);
        if slope.length_squared() == 0.0 {
            return None;
        }
        let foot = -self.plane[0] * slope / slope.length_squared();
        let size = plate.outline.iter().map(|corner| corner.distance(foot)).fold(0.0, f64::max);
        let along = slope.perp().normalize() * size;
        Some([foot - along, foot + along])
    }
}
