//! A loaded area on a slab: what is asked about punching, before a code is applied.

use super::code::PunchingCode;
use super::fault::{SlabFault, finite, positive};
use super::perimeter::{Outline, perimeters};
use super::punching::PunchingCheck;

/// A straight free edge of the slab, without end on both sides.
///
/// A longer edge than the real one cuts more of the perimeter, so that corners and joints need no care.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FreeEdge {
    /// Direction out of the slab, from the base's x axis counter-clockwise, rad.
    pub outward_rad: f64,
    /// Distance from the base's reference point, positive with the point on the slab, m.
    pub distance_m: f64,
}

/// The slab in one sense of punching.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlabDepth {
    /// Effective depth d, m: from the loaded face to the mean of the two layers of bars on the far side. Upward with
    /// anchors that end inside the slab no more than their embedment.
    pub effective_m: f64,
    /// Ratio of those bars √(ρ_x·ρ_y); none where it is not known, then only the part without bars counts.
    pub bars: Option<f64>,
}

/// A loaded area on a slab.
#[derive(Debug, Clone, PartialEq)]
pub struct PunchingDesign {
    /// Corners of the convex loaded area in base axes, counter-clockwise, m.
    pub loaded_m: Vec<[f64; 2]>,
    /// Thickness of the slab, m.
    pub thickness_m: f64,
    /// Pressed down by the base, the bars below.
    pub down: SlabDepth,
    /// Pulled up by the anchors, the bars above.
    pub up: SlabDepth,
    /// Characteristic cylinder strength f_ck or specified strength f'c, Pa.
    pub strength_pa: f64,
    /// Factor λ for lightweight concrete to ACI 318, 1 for normal weight. EN 1992-1-1 is used for normal weight only.
    pub lightweight: f64,
    /// Free edges near the base.
    pub edges: Vec<FreeEdge>,
    /// Openings near the base, each as its corners in base axes, m.
    pub openings_m: Vec<Vec<[f64; 2]>>,
}

impl PunchingDesign {
    /// Builds every control perimeter that edges and openings may leave, for both senses.
    pub fn prepare(&self, code: PunchingCode) -> Result<PunchingCheck, SlabFault> {
        self.validate()?;
        let outline = Outline { loaded_m: &self.loaded_m, edges: &self.edges, openings_m: &self.openings_m };
        let way = |depth: &SlabDepth| {
            let offset_m = code.control_distance_m(depth.effective_m);
            perimeters(&outline, offset_m, code.corners(), code.opening_reach_m(depth.effective_m, self.thickness_m))
        };
        Ok(PunchingCheck::new(self, code, [way(&self.down)?, way(&self.up)?]))
    }

    fn validate(&self) -> Result<(), SlabFault> {
        for (field, value) in [
            ("thickness_m", self.thickness_m),
            ("strength_pa", self.strength_pa),
            ("lightweight", self.lightweight),
            ("down.effective_m", self.down.effective_m),
            ("up.effective_m", self.up.effective_m),
        ] {
            positive(field, value)?;
        }
        for (field, depth) in [("down.effective_m", self.down), ("up.effective_m", self.up)] {
            if depth.effective_m >= self.thickness_m {
                let (depth_m, thickness_m) = (depth.effective_m, self.thickness_m);
                return Err(SlabFault::DepthBeyondThickness { field, depth_m, thickness_m });
            }
        }
        for (field, bars) in [("down.bars", self.down.bars), ("up.bars", self.up.bars)] {
            bars.map_or(Ok(()), |value| positive(field, value))?;
        }
        for &[x, y] in self.loaded_m.iter().chain(self.openings_m.iter().flatten()) {
            finite("loaded_m or openings_m", x)?;
            finite("loaded_m or openings_m", y)?;
        }
        self.validate_convex()?;
        self.validate_edges()
    }

    fn validate_convex(&self) -> Result<(), SlabFault> {
        let count = self.loaded_m.len();
        if count < 3 {
            return Err(SlabFault::NotConvex { corner: count });
        }
        for corner in 0..count {
            let [a, b, c] = [0, 1, 2].map(|next| self.loaded_m[(corner + next) % count]);
            if (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) <= 0.0 {
                return Err(SlabFault::NotConvex { corner: (corner + 1) % count });
            }
        }
        Ok(())
    }

    fn validate_edges(&self) -> Result<(), SlabFault> {
        for (index, edge) in self.edges.iter().enumerate() {
            finite("edges.outward_rad", edge.outward_rad)?;
            finite("edges.distance_m", edge.distance_m)?;
            let (sin, cos) = edge.outward_rad.sin_cos();
            let reach = self.loaded_m.iter().map(|p| p[0] * cos + p[1] * sin).fold(f64::NEG_INFINITY, f64::max);
            // A plate that ends on the edge may miss it by the rounding of its corners.
            if reach > edge.distance_m + 1e-9 {
                return Err(SlabFault::BeyondEdge { edge: index, beyond_m: reach - edge.distance_m });
            }
        }
        Ok(())
    }
}
