//! Prying: a plate that bends between its tube and a pulled anchor presses on its far edge, and the anchor holds that too.
//!
//! The strip of plate that holds one anchor counts as half of a tee: with T the anchor's tension, M = p·t²/4·f the plastic
//! moment of the strip of width p at its bending line, δ = 1 − d′/p what the hole leaves of it, b the way from the anchor to
//! the bending line and a ≤ 1.25·b that to the free edge, b′ = b − d/2 and a′ = a + d/2,
//!
//! q = (T·b′ − M)/a′, and no less than 0.
//!
//! Where T·b′ exceeds M·(1 + δ) two hinges form and the strip is too weak: the method says nothing more. Source: W.A. Thornton,
//! Prying action: a general treatment, AISC Engineering Journal 1985, and the AISC Manual, part 9, which take f = φ·F_u; the
//! equations are theirs, written without the bolt's strength. A lower f gives more prying: the design yield strength, which
//! [`Standing`] has, is on the safe side. That an anchor's stretch relieves prying is left out, on the safe side too.
//!
//! No figure that a code publishes for when a plate is stiff is known to us: EN 1992-4, 6.2.1, asks for deformations that are
//! negligible beside those of the anchors (from memory). So no plate is called stiff here.

use super::bending::{Standing, Strip, to_edge};
use super::shape::{Bearing, Plate, PlateAnchor, PlateFault, positive};
use super::solution::PlateSolution;

/// The free edge counts as far off as this many times the way to the bending line at most.
const FARTHEST_EDGE: f64 = 1.25;

/// What prying adds to one anchor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Prying {
    /// So much tension, N; 0 where the plate is thick enough.
    Adds {
        /// q, N.
        prying_n: f64,
    },
    /// The method does not hold, so nothing is known; never a pass.
    NotChecked(PryingNotChecked),
}

/// Why prying was not checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PryingNotChecked {
    /// The strip forms two hinges under the tension: the plate is too weak.
    StripTooWeak,
    /// The hole leaves nothing of the strip.
    HoleWiderThanStrip,
    /// The anchor stands on the plate's edge.
    NoEdgeBeyond,
}

/// Half of a tee: the strip of plate that holds one anchor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HalfTee {
    /// b: from the anchor's axis to the bending line, m.
    pub to_line_m: f64,
    /// a: from the anchor's axis to the free edge, m.
    pub to_edge_m: f64,
    /// p: width, m.
    pub width_m: f64,
    /// t: thickness, m.
    pub thickness_m: f64,
    /// d: diameter of the anchor, m.
    pub anchor_diameter_m: f64,
    /// d′: diameter of its hole, m.
    pub hole_diameter_m: f64,
    /// f: design strength in bending, Pa.
    pub strength_pa: f64,
}

impl HalfTee {
    /// What prying adds to a tension, N; nothing where nothing is pulled.
    ///
    /// Errors: a number that is none or not above 0; a tension that is none.
    pub fn prying(&self, tension_n: f64) -> Result<Prying, PlateFault> {
        for (field, value) in [
            ("to_line_m", self.to_line_m),
            ("width_m", self.width_m),
            ("thickness_m", self.thickness_m),
            ("anchor_diameter_m", self.anchor_diameter_m),
            ("hole_diameter_m", self.hole_diameter_m),
            ("strength_pa", self.strength_pa),
        ] {
            positive(field, value)?;
        }
        for (field, value) in [("to_edge_m", self.to_edge_m), ("tension_n", tension_n)] {
            if !value.is_finite() {
                return Err(PlateFault::OutOfRange { field: field.to_owned(), value, asked: "a finite number" });
            }
        }
        if tension_n <= 0.0 {
            return Ok(Prying::Adds { prying_n: 0.0 });
        }
        if self.hole_diameter_m >= self.width_m {
            return Ok(Prying::NotChecked(PryingNotChecked::HoleWiderThanStrip));
        }
        if self.to_edge_m <= 0.0 {
            return Ok(Prying::NotChecked(PryingNotChecked::NoEdgeBeyond));
        }
        let half = self.anchor_diameter_m / 2.0;
        let lever_m = self.lever_m();
        let far_m = self.to_edge_m.min(FARTHEST_EDGE * self.to_line_m) + half;
        let plastic_nm = self.plastic_nm();
        let left = 1.0 - self.hole_diameter_m / self.width_m;
        let bending_nm = tension_n * lever_m;
        if bending_nm > plastic_nm * (1.0 + left) {
            return Ok(Prying::NotChecked(PryingNotChecked::StripTooWeak));
        }
        Ok(Prying::Adds { prying_n: ((bending_nm - plastic_nm) / far_m).max(0.0) })
    }

    /// b′.
    fn lever_m(&self) -> f64 {
        (self.to_line_m - self.anchor_diameter_m / 2.0).max(0.0)
    }

    /// M.
    fn plastic_nm(&self) -> f64 {
        self.width_m * self.thickness_m * self.thickness_m / 4.0 * self.strength_pa
    }

    /// T·b′/M: up to 1 a tension brings no prying.
    pub fn share_before_prying(&self, tension_n: f64) -> f64 {
        tension_n.max(0.0) * self.lever_m() / self.plastic_nm()
    }
}

/// The largest share T·b′/M of any anchor's strip: up to 1 nothing pries. 0 where no pulled anchor bends a strip.
///
/// Errors: as [`prying`].
pub fn share_before_prying(
    plate: &Plate,
    solution: &PlateSolution,
    standing: &Standing,
    diameters_m: (f64, f64),
) -> Result<f64, PlateFault> {
    let tees = tees(plate, standing, diameters_m)?;
    let shares = tees
        .iter()
        .zip(&solution.tension_n)
        .filter_map(|(tee, tension_n)| tee.as_ref().map(|tee| tee.share_before_prying(*tension_n)));
    Ok(shares.fold(0.0, f64::max))
}

/// What prying adds to each anchor of a plate, in their order. An anchor under the tube bends no strip and is not pried; on
/// leveling nuts the edge presses on nothing, and none is.
///
/// Errors: as [`HalfTee::prying`], and numbers of what stands on the plate.
pub fn prying(
    plate: &Plate,
    solution: &PlateSolution,
    standing: &Standing,
    diameters_m: (f64, f64),
) -> Result<Vec<Prying>, PlateFault> {
    let tees = tees(plate, standing, diameters_m)?;
    let pried = tees.iter().zip(&solution.tension_n).map(|(tee, tension_n)| match tee {
        Some(tee) => tee.prying(*tension_n),
        None => Ok(Prying::Adds { prying_n: 0.0 }),
    });
    pried.collect()
}

/// The strip of each anchor as half of a tee; none for those that nothing pries.
fn tees(
    plate: &Plate,
    standing: &Standing,
    (anchor_diameter_m, hole_diameter_m): (f64, f64),
) -> Result<Vec<Option<HalfTee>>, PlateFault> {
    for (field, value) in [
        ("tube_diameter_m", standing.tube_diameter_m),
        ("yield_pa", standing.yield_pa),
        ("factor", standing.factor),
        ("anchor_diameter_m", anchor_diameter_m),
        ("hole_diameter_m", hole_diameter_m),
    ] {
        positive(field, value)?;
    }
    let of_anchor = |(index, anchor): (usize, &PlateAnchor)| {
        let strip = Strip::of(plate, standing, index).filter(|_| plate.bearing != Bearing::LevelingNuts)?;
        let way = (anchor.at - standing.at).normalize_or_zero();
        Some(HalfTee {
            to_line_m: strip.reach_m,
            to_edge_m: to_edge(&plate.outline, anchor.at, way),
            width_m: strip.width_m,
            thickness_m: plate.thickness_m,
            anchor_diameter_m,
            hole_diameter_m,
            strength_pa: standing.yield_pa / standing.factor,
        })
    };
    Ok(plate.anchors.iter().enumerate().map(of_anchor).collect())
}

#[cfg(test)]
mod tests {
    use super::super::PreparedPlate;
    use super::super::shape::tests::square;
    use super::*;
    use glam::DVec2;

    const INCH: f64 = 0.0254;
    const KIP: f64 = 4448.221615;

    /// Handbook of Structural Steel Connection Design and Details (A.R. Tamboli, ed., 2nd ed. 2009, p. 107): a flange of 0.715 in,
    /// b′ = 1.598 in, a′ = 1.75 in, p = 3 in, hole 0.9375 in, bolt 7/8 in, F_u = 65 ksi with φ = 0.9 bears 23.7 kip a bolt.
    fn published() -> HalfTee {
        HalfTee {
            to_line_m: 2.035 * INCH,
            to_edge_m: 1.3125 * INCH,
            width_m: 3.0 * INCH,
            thickness_m: 0.715 * INCH,
            anchor_diameter_m: 0.875 * INCH,
            hole_diameter_m: 0.9375 * INCH,
            strength_pa: 0.9 * 65.0 * KIP / (INCH * INCH),
        }
    }

    #[test]
    fn a_published_flange_is_too_weak_just_beyond_what_the_handbook_says() {
        // The handbook rounds to three digits.
        assert!(matches!(published().prying(23.6 * KIP), Ok(Prying::Adds { .. })));
        assert_eq!(published().prying(23.8 * KIP), Ok(Prying::NotChecked(PryingNotChecked::StripTooWeak)));
    }

    #[test]
    fn prying_is_the_hand_calculation() {
        // By hand: M = 3·0.715²/4·58.5 = 22.430 kip·in. T = 20 kip: 20·1.5975 = 31.95; (31.95 − 22.430)/1.75 = 5.440 kip.
        let Ok(Prying::Adds { prying_n }) = published().prying(20.0 * KIP) else { panic!("pried") };
        assert!((prying_n / KIP - 5.440).abs() < 1e-3, "{}", prying_n / KIP);
        // M/b′ = 14.04 kip: up to there none. Twice as thick bears four times as much without.
        assert_eq!(published().prying(14.0 * KIP), Ok(Prying::Adds { prying_n: 0.0 }));
        let thick = HalfTee { thickness_m: 1.43 * INCH, ..published() };
        assert_eq!(thick.prying(56.0 * KIP), Ok(Prying::Adds { prying_n: 0.0 }));
        // An edge farther off than 1.25·b counts as that far: 1.25·2.035 + 0.4375 = 2.981 in: 9.520/2.981 = 3.193 kip.
        let far = HalfTee { to_edge_m: 9.0 * INCH, ..published() };
        let Ok(Prying::Adds { prying_n }) = far.prying(20.0 * KIP) else { panic!("pried") };
        assert!((prying_n / KIP - 3.193).abs() < 2e-3, "{}", prying_n / KIP);
    }

    #[test]
    fn only_pulled_anchors_of_a_thin_plate_on_concrete_are_pried() {
        let standing =
            Standing { tube_diameter_m: 0.1, at: DVec2::ZERO, yield_pa: 235e6, elastic_pa: 210e9, factor: 1.1 };
        let mut plate = square(0.3, 0.04, 245e-6, 7.0);
        // By hand: reach 0.11·√2 − 0.04 = 0.1156 m, strip twice that wide: M = 0.2311·0.008²/4·213.6 MPa = 790 N·m, under 7.9 kN at
        // 0.1056 m, 836 N·m.
        plate.thickness_m = 0.008;
        let solution = PreparedPlate::new(plate.clone()).unwrap().solve(-2e3, 0.0, 4e3).unwrap();
        let found = prying(&plate, &solution, &standing, (0.02, 0.022)).unwrap();
        let adds = |one: &Prying| matches!(one, Prying::Adds { prying_n } if *prying_n > 0.0);
        for (one, tension) in found.iter().zip(&solution.tension_n) {
            assert_eq!(adds(one), *tension > 0.0, "{found:?} {:?}", solution.tension_n);
        }
        let nuts = Plate { bearing: Bearing::LevelingNuts, ..plate };
        assert!(!prying(&nuts, &solution, &standing, (0.02, 0.022)).unwrap().iter().any(adds));
    }

    #[test]
    fn what_can_not_be_pried_and_numbers_that_are_none_are_named() {
        let wide = HalfTee { hole_diameter_m: 0.1, ..published() };
        assert_eq!(wide.prying(1e3), Ok(Prying::NotChecked(PryingNotChecked::HoleWiderThanStrip)));
        let none = HalfTee { to_edge_m: 0.0, ..published() };
        assert_eq!(none.prying(1e3), Ok(Prying::NotChecked(PryingNotChecked::NoEdgeBeyond)));
        assert!(published().prying(f64::NAN).unwrap_err().to_string().contains("tension_n"));
        let thin = HalfTee { thickness_m: 0.0, ..published() };
        assert!(thin.prying(1e3).unwrap_err().to_string().contains("thickness_m"));
    }

    /// By hand: the published tee begins to be pried where T·1.5975 in = 3·0.715²/4·58.5 kip·in = 22.43 kip·in: 14.04 kip.
    #[test]
    fn prying_begins_where_the_strip_yields_at_its_line() {
        let tee = published();
        let begins_n = tee.plastic_nm() / tee.lever_m();
        assert!((begins_n / KIP - 14.04).abs() < 0.02, "{}", begins_n / KIP);
        assert!((tee.share_before_prying(begins_n) - 1.0).abs() < 1e-12);
        assert_eq!(tee.prying(0.999 * begins_n), Ok(Prying::Adds { prying_n: 0.0 }));
        assert!(matches!(tee.prying(1.001 * begins_n), Ok(Prying::Adds { prying_n }) if prying_n > 0.0));
    }
}
