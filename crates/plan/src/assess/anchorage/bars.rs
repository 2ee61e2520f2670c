//! Bars for anchors in a slab, as the code counts them: beside each anchor, and toward the edge that is nearest.

use gantline_mechanics::anchorage::{Around, BarEnd, BarSet, Concrete, Group, ShearBars, TensionBars};

use crate::basis::{AnchorageCode, DesignCode};
use crate::document::{AnchorBars, EdgeAnchorBars, SlabBars};

/// Bars that the code for anchors counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct CountedBars {
    tension: Option<AnchorBars>,
    shear: Option<EdgeAnchorBars>,
}

/// Two edges whose distances differ by no more are as near, m: positions on the plan go in steps of a millimeter.
const AS_NEAR_M: f64 = 1e-3;

impl CountedBars {
    /// None.
    pub const NONE: Self = Self { tension: None, shear: None };

    /// Those of a slab. ACI 318-19 17.5.2.1 leaves the bars' development to the structural engineer: there the concrete is
    /// checked without them, and its strength reduction is that without supplementary reinforcement.
    pub fn of(bars: &SlabBars, code: &DesignCode) -> Self {
        match code.anchorage {
            AnchorageCode::En1992Part4 => Self { tension: bars.tension, shear: bars.shear },
            AnchorageCode::Aci318 => Self::NONE,
        }
    }

    /// The concrete with these bars round the anchors of one base.
    ///
    /// No bar counts over a longer way than the body is deep: the cone by the embedment, the body toward an edge by the
    /// distance of the nearest anchor.
    pub fn in_concrete(&self, concrete: &Concrete, group: &Group, around: &dyn Around) -> Concrete {
        let mut concrete = concrete.clone();
        concrete.tension_bars =
            self.tension.map(|bars| TensionBars { bars: bar_set(&bars, group.fastener.embedment_m) });
        concrete.shear_bars = self.shear.and_then(|shear| {
            let (edge, distance_m) = nearest_edge(group, around)?;
            let bars = bar_set(&shear.bars, distance_m);
            Some(ShearBars { bars, edge, offset_m: shear.offset_m, lever_m: shear.lever_m })
        });
        concrete
    }
}

/// Index and distance of the edge nearest to the anchors; none where there is none within reach or two are as near.
fn nearest_edge(group: &Group, around: &dyn Around) -> Option<(usize, f64)> {
    let all: Vec<usize> = (0..group.anchors_m.len()).collect();
    let distances = || around.edges().iter().map(|edge| edge.nearest_m(&all)).enumerate();
    let (nearest, distance_m) =
        distances().filter(|(_, distance_m)| distance_m.is_finite()).min_by(|a, b| a.1.total_cmp(&b.1))?;
    let is_alone = distances().all(|(edge, other_m)| edge == nearest || other_m > distance_m + AS_NEAR_M);
    is_alone.then_some((nearest, distance_m))
}

fn bar_set(bars: &AnchorBars, deepest_m: f64) -> BarSet {
    BarSet {
        count: bars.count,
        diameter_m: bars.diameter_m,
        yield_pa: bars.yield_pa,
        anchored_m: bars.anchored_m.min(deepest_m),
        bond_pa: bars.bond_pa,
        alpha: bars.alpha,
        end: if bars.hooked { BarEnd::Hooked } else { BarEnd::Straight },
        distance_m: bars.distance_m,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_mechanics::anchorage::{
        Annulus, Fastener, FastenerKind, Fixture, Grade, Head, Product, RectangularMember, Restraint, Seating,
    };

    /// Two headed bolts 0.2 m deep, 0.2 m apart.
    fn two_bolts() -> Group {
        let fastener = Fastener {
            kind: FastenerKind::CastIn(Head { diameter_m: 0.04, thickness_m: 0.01 }),
            diameter_m: 0.02,
            outside_diameter_m: 0.02,
            stress_area_m2: 245e-6,
            grade: Grade { ultimate_pa: 800e6, yield_pa: 640e6, rupture_elongation: Some(0.14) },
            embedment_m: 0.2,
            product: Product::default(),
        };
        let fixture = Fixture {
            thickness_m: 0.02,
            hole_diameter_m: Some(0.022),
            annulus: Annulus::Open,
            seating: Seating::OnConcrete,
            restraint: Restraint::Free,
        };
        Group { fastener, anchors_m: vec![[-0.1, 0.0], [0.1, 0.0]], fixture }
    }

    const BARS: AnchorBars = AnchorBars {
        count: 2,
        diameter_m: 0.01,
        yield_pa: 500e6,
        anchored_m: 0.16,
        bond_pa: 2.7e6,
        alpha: 0.7,
        hooked: true,
        distance_m: 0.1,
    };

    const BOTH: CountedBars =
        CountedBars { tension: Some(BARS), shear: Some(EdgeAnchorBars { bars: BARS, offset_m: 0.03, lever_m: 0.15 }) };

    /// The slab goes 4 m to the left and down, and this far to the right and up.
    fn with_bars(right_m: f64, up_m: f64) -> (Concrete, Option<[f64; 2]>) {
        let group = two_bolts();
        let around = RectangularMember::new(&group.anchors_m, [-4.0, -4.0], [right_m, up_m], 0.3).unwrap();
        let concrete = BOTH.in_concrete(&Concrete::plain(25e6), &group, &around);
        let toward = concrete.shear_bars.map(|bars| around.edges()[bars.edge].outward);
        (concrete, toward)
    }

    #[test]
    fn bars_lie_toward_the_one_edge_that_is_nearest() {
        // The right bolt stands 0.1 m to the right of the middle: 0.3 m from the right edge.
        assert_eq!(with_bars(0.4, 0.298).1, Some([0.0, 1.0]));
        assert_eq!(with_bars(0.4, 0.302).1, Some([1.0, 0.0]));
        assert_eq!(with_bars(0.4, 0.3005).1, None, "nobody says which of two is meant");
        let group = two_bolts();
        let without_edges = RectangularMember::unbounded(&group.anchors_m, 0.3).unwrap();
        let concrete = BOTH.in_concrete(&Concrete::plain(25e6), &group, &without_edges);
        assert!(concrete.shear_bars.is_none() && concrete.tension_bars.is_some());
    }

    #[test]
    fn no_bar_counts_over_a_longer_way_than_the_body_is_deep() {
        let (concrete, _) = with_bars(0.2, 3.0);
        let lengths = (concrete.tension_bars.unwrap().bars.anchored_m, concrete.shear_bars.unwrap().bars.anchored_m);
        // 0.16 m are given; the cone is 0.2 m deep, the body toward the edge 0.2 − 0.1 m.
        assert_eq!(lengths.0, 0.16);
        assert!((lengths.1 - 0.1).abs() < 1e-12);
    }

    #[test]
    fn aci_counts_no_bars() {
        let bars = SlabBars { tension: BOTH.tension, shear: BOTH.shear, ..SlabBars::default() };
        assert_eq!(CountedBars::of(&bars, &DesignCode::eurocode()), BOTH);
        assert_eq!(CountedBars::of(&bars, &DesignCode::aisc()), CountedBars::NONE);
    }
}
