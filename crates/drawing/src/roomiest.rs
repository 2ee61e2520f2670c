//! The roomiest place in an area for a box of words.

use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

/// Places tried along each side of the box around the area.
const TRIES: u32 = 13;

/// The middle of a box with these half sides that lies wholly inside an area and outside others, as far from all borders as
/// a grid of places finds; none where the box fits nowhere on it.
pub(crate) fn roomiest(area: &Polygon, half: DVec2, others: &[Polygon]) -> Option<DVec2> {
    let bounds = area.bounds()?;
    let step = bounds.size_m() / f64::from(TRIES + 1);
    let middle = (bounds.min_m + bounds.max_m) / 2.0;
    let mut best: Option<(f64, DVec2)> = None;
    for x in 1..=TRIES {
        for y in 1..=TRIES {
            let at = bounds.min_m + step * DVec2::new(f64::from(x), f64::from(y));
            let room = room(area, half, others, at);
            // Of equal places the one nearer to the middle.
            let better = |(most, place): (f64, DVec2)| {
                let nearer = at.distance(middle) < place.distance(middle) - 1e-9;
                room > most + 1e-9 || (room > most - 1e-9 && nearer)
            };
            if room > 0.0 && best.is_none_or(better) {
                best = Some((room, at));
            }
        }
    }
    best.map(|(_, at)| at)
}

/// Distance of the box's corners and middle from the nearest border; negative when the box does not lie inside.
fn room(area: &Polygon, half: DVec2, others: &[Polygon], at: DVec2) -> f64 {
    let across = DVec2::new(half.x, -half.y);
    let clear = |spot: DVec2| {
        let inside = if area.contains(spot) { area.distance_to_border_m(spot) } else { -1.0 };
        others.iter().map(|other| other.distance_m(spot)).fold(inside, f64::min)
    };
    let spots = [at, at - half, at + half, at - across, at + across];
    let nearest = spots.into_iter().map(clear).fold(f64::INFINITY, f64::min);
    let whole = |a: DVec2, b: DVec2| matches!(area.clip_segment(a, b)[..], [(from, to)] if to - from > 0.999);
    if nearest > 0.0 && whole(at - half, at + half) && whole(at - across, at + across) { nearest } else { -1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Witness: in a square with one half taken the roomiest place lies in the other half.
    #[test]
    fn words_go_where_nothing_stands() {
        let area = Polygon::rectangle(DVec2::ZERO, DVec2::splat(10.0));
        let taken = Polygon::rectangle(DVec2::ZERO, DVec2::new(5.0, 10.0));
        let at = roomiest(&area, DVec2::new(1.0, 0.3), &[taken]).unwrap();
        assert!(at.x > 6.0 && (at.y - 5.0).abs() < 1.0, "{at}");
        assert_eq!(roomiest(&area, DVec2::new(6.0, 0.3), &[]), None);
    }
}
