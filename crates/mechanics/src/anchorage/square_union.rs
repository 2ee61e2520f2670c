//! Area of a union of equal squares cut by a rectangle, exact, by strips between all their sides.

/// Area of the union of squares of half side `half` about `centers`, sides along the axes, inside the rectangle from
/// `lower` to `upper` (which may be infinite), m².
///
/// Cut into strips at every left and right side; in each strip the intervals of the squares over it are united. Zero for
/// no squares. O(n² log n).
pub fn union_area_m2(centers: &[[f64; 2]], half: f64, lower: [f64; 2], upper: [f64; 2]) -> f64 {
    let mut cuts: Vec<f64> =
        centers.iter().flat_map(|c| [c[0] - half, c[0] + half]).map(|x| x.max(lower[0]).min(upper[0])).collect();
    cuts.sort_by(f64::total_cmp);
    let mut spans: Vec<(f64, f64)> = Vec::with_capacity(centers.len());
    let mut area = 0.0;
    for pair in cuts.windows(2) {
        let width = pair[1] - pair[0];
        if width <= 0.0 {
            continue;
        }
        let middle = 0.5 * (pair[0] + pair[1]);
        spans.clear();
        spans.extend(
            centers
                .iter()
                .filter(|c| (c[0] - middle).abs() < half)
                .map(|c| ((c[1] - half).max(lower[1]), (c[1] + half).min(upper[1])))
                .filter(|span| span.1 > span.0),
        );
        area += width * united_length(&mut spans);
    }
    area
}

/// Length of the union of intervals.
fn united_length(spans: &mut [(f64, f64)]) -> f64 {
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut length = 0.0;
    let mut end = f64::NEG_INFINITY;
    for &(from, to) in spans.iter() {
        if to > end {
            length += to - from.max(end);
            end = to;
        }
    }
    length
}

#[cfg(test)]
mod tests {
    use super::*;

    const FREE: ([f64; 2], [f64; 2]) = ([f64::NEG_INFINITY; 2], [f64::INFINITY; 2]);

    #[test]
    fn four_overlapping_squares_are_one_rectangle() {
        // EN 1992-4 7.2.1.4: (s1 + s_cr)·(s2 + s_cr).
        let centers = [[0.0, 0.0], [0.3, 0.0], [0.0, 0.2], [0.3, 0.2]];
        assert!((union_area_m2(&centers, 0.25, FREE.0, FREE.1) - 0.8 * 0.7).abs() < 1e-12);
    }

    #[test]
    fn squares_apart_add_up_and_a_diagonal_pair_leaves_its_corners_out() {
        assert!((union_area_m2(&[[0.0, 0.0], [5.0, 0.0]], 1.0, FREE.0, FREE.1) - 8.0).abs() < 1e-12);
        // Two squares of side 2 that overlap by 1 × 1: 4 + 4 − 1.
        assert!((union_area_m2(&[[0.0, 0.0], [1.0, 1.0]], 1.0, FREE.0, FREE.1) - 7.0).abs() < 1e-12);
    }

    #[test]
    fn an_edge_cuts_a_square() {
        // (c1 + 0.5·s_cr)·s_cr with c1 = 0.1 and s_cr = 0.4.
        assert!((union_area_m2(&[[0.0, 0.0]], 0.2, [-5.0, -5.0], [0.1, 5.0]) - 0.3 * 0.4).abs() < 1e-12);
    }
}
