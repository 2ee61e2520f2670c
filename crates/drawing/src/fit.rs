//! Finds the scale at which a drawing fills a sheet or a panel.
//!
//! A drawing's size on paper is a/s + b: what it shows shrinks with the scale s, its texts and dimension rows do not.

use glam::DVec2;

use crate::drawing::Drawing;
use crate::scale::Scale;

/// How often the scale is bettered.
const ROUNDS: u32 = 5;
/// Smallest and largest scale tried, m per mm.
const LIMITS: (f64, f64) = (1e-4, 100.0);

/// The largest scale, as far as five rounds find it, at which what `make` draws fits into a size, paper mm. None when it
/// draws nothing.
pub fn fit_scale(size_mm: DVec2, make: impl Fn(Scale) -> Option<Drawing>) -> Option<Scale> {
    let on_paper = |scale: Scale| Some(make(scale)?.bounds()?.size_m() / scale.m_per_mm);
    let mut scale = Scale::one_to(50.0);
    let mut best = None;
    for _ in 0..ROUNDS {
        let here = on_paper(scale)?;
        if here.cmple(size_mm).all() && best.is_none_or(|best: Scale| scale.m_per_mm < best.m_per_mm) {
            best = Some(scale);
        }
        let smaller = on_paper(Scale { m_per_mm: scale.m_per_mm * 2.0 })?;
        // a/s + b at s and at 2 s gives a/s as twice the difference.
        let shown = (here - smaller) * 2.0;
        let fixed = here - shown;
        let room = (size_mm - fixed).max(size_mm * 0.05);
        let next = (shown / room).max_element() * scale.m_per_mm * 1.002;
        if !next.is_finite() || next <= 0.0 {
            break;
        }
        scale = Scale { m_per_mm: next.clamp(LIMITS.0, LIMITS.1) };
    }
    Some(best.unwrap_or(scale))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layer::Layer;
    use crate::mark::Mark;
    use crate::pen::Pen;

    /// Witness: 30 m with 20 mm of rim in all on 170 mm leave 150 mm, which is 1 to 200.
    #[test]
    fn a_thing_with_a_rim_of_fixed_width_fills_its_sheet() {
        let make = |scale: Scale| {
            let rim = scale.m(10.0);
            let points = vec![DVec2::new(-rim, 0.0), DVec2::new(30.0 + rim, 0.0)];
            Some(Drawing::of(scale, vec![Mark::line(Layer::Outline, Pen::Outline, points)]))
        };
        let scale = fit_scale(DVec2::new(170.0, 100.0), make).unwrap();
        assert!((scale.m_per_mm / 0.2 - 1.0).abs() < 0.005, "{}", scale.m_per_mm);
        assert!(scale.m_per_mm >= 0.2);
    }
}
