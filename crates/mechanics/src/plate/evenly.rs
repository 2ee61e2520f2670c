//! Points spread evenly in as many dimensions as are asked for.

/// Numbers whose multiples, less their whole parts, are spread evenly in so many dimensions d: powers of 1/φ, φ the root of
/// φ^(d+1) = φ + 1 (the sequence of M. Roberts, from memory).
pub(super) fn evenly(dimensions: usize) -> Vec<f64> {
    let power = 1.0 / (dimensions as f64 + 1.0);
    let root = (0..40).fold(2.0_f64, |root, _| (1.0 + root).powf(power));
    (1..=dimensions).map(|way| root.powf(-(way as f64))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// M. Roberts gives 1.32471795724474602596 for two dimensions (the plastic number).
    #[test]
    fn points_in_a_plane_are_spread_by_the_plastic_number() {
        let [first, second] = evenly(2)[..] else { panic!("two numbers") };
        assert!((1.0 / first - 1.324_717_957_244_746).abs() < 1e-12 && (second - first * first).abs() < 1e-12);
    }
}
