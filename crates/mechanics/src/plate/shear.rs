//! How a plate hands forces in its plane to its anchors: evenly, and by distance from their middle for the twist.

use glam::DVec2;

use super::shape::Plate;

/// Force of the plate on each anchor in its plane, N.
///
/// Elastic vector method: r_i = F/n + M·(−y_i, x_i)/Σ(x² + y²) about the centroid of those that take shear, M the twist
/// about it. Source: bolt groups in any book on steel (W.T. Segui, Steel Design). Anchors whose holes are too wide take none.
/// None when no anchor takes shear, or one alone stands under a twist.
pub fn shares(plate: &Plate, force_n: DVec2, twist_nm: f64) -> Option<Vec<DVec2>> {
    let taking = || plate.anchors.iter().filter(|anchor| anchor.takes_shear).map(|anchor| anchor.at);
    let count = taking().count();
    if count == 0 {
        return (force_n == DVec2::ZERO && twist_nm == 0.0).then(|| vec![DVec2::ZERO; plate.anchors.len()]);
    }
    let middle = taking().sum::<DVec2>() / count as f64;
    let polar: f64 = taking().map(|at| at.distance_squared(middle)).sum();
    let twist = twist_nm - middle.perp_dot(force_n);
    let lever = plate.outline.iter().map(|corner| corner.distance_squared(middle)).fold(0.0, f64::max);
    if polar <= 1e-12 * lever {
        // Anchors in one place hold no twist.
        let small = 1e-9 * force_n.length() * lever.sqrt();
        if twist.abs() > small {
            return None;
        }
    }
    let per_m = if polar > 1e-12 * lever { twist / polar } else { 0.0 };
    let share = |anchor: &super::PlateAnchor| {
        if anchor.takes_shear { force_n / count as f64 + (anchor.at - middle).perp() * per_m } else { DVec2::ZERO }
    };
    Some(plate.anchors.iter().map(share).collect())
}

#[cfg(test)]
mod tests {
    use super::super::shape::tests::square;
    use super::super::{Bearing, PlateAnchor};
    use super::*;

    #[test]
    fn a_line_of_bolts_shares_as_in_the_book() {
        // Published case A1 (Segui, problem 8.2-1): four bolts at 3 in pitch in a line, Px = 9 kip, Py = 12 kip, twist
        // 198 kip·in about their middle; the outermost takes 22.253 kip.
        let (inch, kip) = (0.0254, 4448.221615);
        let mut plate = square(0.5, 0.04, 245e-6, 7.0);
        plate.anchors = [4.5, 1.5, -1.5, -4.5].map(|y| PlateAnchor::new(DVec2::new(0.0, y * inch), 245e-6)).to_vec();
        let force = DVec2::new(9.0, 12.0) * kip;
        let found = shares(&plate, force, 198.0 * kip * inch).unwrap();
        let greatest = found.iter().map(|force| force.length()).fold(0.0, f64::max) / kip;
        assert!((greatest - 22.253).abs() < 0.0005, "{greatest}");
    }

    #[test]
    fn the_shares_make_the_whole_and_wide_holes_take_none() {
        let mut plate = square(0.3, 0.04, 245e-6, 7.0);
        plate.anchors[1].takes_shear = false;
        let (force, twist) = (DVec2::new(3e3, -1e3), 400.0);
        let found = shares(&plate, force, twist).unwrap();
        assert_eq!(found[1], DVec2::ZERO);
        let sum: DVec2 = found.iter().copied().sum();
        let turned: f64 = found.iter().zip(&plate.anchors).map(|(force, anchor)| anchor.at.perp_dot(*force)).sum();
        assert!((sum - force).length() < 1e-9 && (turned - twist).abs() < 1e-9);
        for anchor in &mut plate.anchors {
            anchor.takes_shear = false;
        }
        assert_eq!(shares(&plate, force, twist), None);
        plate.bearing = Bearing::Grout;
        assert!(shares(&plate, DVec2::ZERO, 0.0).is_some());
    }
}
