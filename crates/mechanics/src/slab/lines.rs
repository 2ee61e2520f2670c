//! Length, centroid and moments of a set of straight lines, as a control perimeter needs them.

/// A straight piece of a control perimeter, from one end to the other, m.
pub(super) type Piece = [[f64; 2]; 2];

/// What a control perimeter offers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LineProperties {
    /// Length u = ∫dl, m.
    pub length_m: f64,
    /// Centroid, m.
    pub centroid_m: [f64; 2],
    /// W = ∫|e|dl about the axes through the centroid: `[0]` about x (e = y), `[1]` about y (e = x), m².
    pub plastic_m2: [f64; 2],
    /// ∫e²dl about those axes, in the same order, m³.
    pub second_m3: [f64; 2],
    /// ∫x·y dl about the centroid, m³.
    pub product_m3: f64,
    /// Size along x and along y, m.
    pub extent_m: [f64; 2],
}

impl LineProperties {
    /// Properties of some pieces; none when they have no length.
    pub(super) fn of(pieces: &[Piece]) -> Option<Self> {
        let length_m: f64 = pieces.iter().map(length).sum();
        if length_m <= 0.0 {
            return None;
        }
        let mean =
            |axis: usize| pieces.iter().map(|p| length(p) * 0.5 * (p[0][axis] + p[1][axis])).sum::<f64>() / length_m;
        let centroid_m = [mean(0), mean(1)];
        let (plastic_m2, second_m3, product_m3) = ([0.0; 2], [0.0; 2], 0.0);
        let extent_m = [0, 1].map(|axis| extent(pieces, axis));
        let mut own = Self { length_m, centroid_m, plastic_m2, second_m3, product_m3, extent_m };
        for piece in pieces {
            let run = length(piece);
            for about in 0..2 {
                let across = 1 - about;
                let [from, to] = [piece[0][across] - centroid_m[across], piece[1][across] - centroid_m[across]];
                own.plastic_m2[about] += run * mean_size(from, to);
                own.second_m3[about] += run * (from * from + from * to + to * to) / 3.0;
            }
            let [a, b] = piece.map(|end| [end[0] - centroid_m[0], end[1] - centroid_m[1]]);
            own.product_m3 += run * (2.0 * (a[0] * a[1] + b[0] * b[1]) + a[0] * b[1] + b[0] * a[1]) / 6.0;
        }
        Some(own)
    }
}

impl LineProperties {
    /// Whether all lines lie on one straight line, which takes no moment about itself.
    pub(super) fn is_straight(&self) -> bool {
        let [x, y] = self.second_m3;
        x * y - self.product_m3 * self.product_m3 <= STRAIGHT * (x + y).powi(2)
    }
}

/// Share of the squared moments below which lines count as one straight line.
const STRAIGHT: f64 = 1e-9;

fn extent(pieces: &[Piece], axis: usize) -> f64 {
    let ends = pieces.iter().flatten().map(|end| end[axis]);
    let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)));
    high - low
}

fn length(piece: &Piece) -> f64 {
    (piece[1][0] - piece[0][0]).hypot(piece[1][1] - piece[0][1])
}

/// Mean of |e| where e runs straight from one value to another.
fn mean_size(from: f64, to: f64) -> f64 {
    if from * to >= 0.0 { 0.5 * (from + to).abs() } else { (from * from + to * to) / (2.0 * (from - to).abs()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_has_the_moments_of_the_closed_form() {
        // Square of side a = 2: u = 4a = 8, W = 2·a·a/2 + 2·a²/4 = 1.5a² = 6, I = 2·a·(a/2)² + 2·a³/12 = 2a³/3 = 16/3.
        let corners = [[1.0, 1.0], [3.0, 1.0], [3.0, 3.0], [1.0, 3.0]];
        let pieces: Vec<Piece> = (0..4).map(|i| [corners[i], corners[(i + 1) % 4]]).collect();
        let found = LineProperties::of(&pieces).unwrap();
        assert_eq!((found.length_m, found.centroid_m), (8.0, [2.0, 2.0]));
        for about in 0..2 {
            assert!((found.plastic_m2[about] - 6.0).abs() < 1e-12);
            assert!((found.second_m3[about] - 16.0 / 3.0).abs() < 1e-12);
            assert_eq!(found.extent_m[about], 2.0);
        }
        assert!(found.product_m3.abs() < 1e-12);
        assert_eq!(LineProperties::of(&[]), None);
    }

    #[test]
    fn an_angle_has_the_product_of_the_closed_form() {
        // Two legs of length a along x and y from the origin: centroid (a/4, a/4), ∫xy = −2a·(a/4)² = −a³/8.
        let pieces = [[[0.0, 0.0], [2.0, 0.0]], [[0.0, 0.0], [0.0, 2.0]]];
        let found = LineProperties::of(&pieces).unwrap();
        assert!((found.product_m3 + 1.0).abs() < 1e-12);
        assert!(!found.is_straight());
        assert!(LineProperties::of(&[[[0.0, 0.0], [2.0, 1.0]]]).unwrap().is_straight());
    }
}
