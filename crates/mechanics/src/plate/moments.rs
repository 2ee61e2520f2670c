//! Area and moments of the part of a polygon on one side of a line, exactly.

use glam::DVec2;

/// Area and its moments about the axes of the plate's reference point.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Moments {
    /// ∫ dA.
    pub area: f64,
    /// ∫ x dA.
    pub x: f64,
    /// ∫ y dA.
    pub y: f64,
    /// ∫ x² dA.
    pub xx: f64,
    /// ∫ x·y dA.
    pub xy: f64,
    /// ∫ y² dA.
    pub yy: f64,
}

impl Moments {
    /// Of a whole polygon, positive for counter-clockwise corners.
    ///
    /// Green: ∫x dA = Σ (x_i + x_j)(x_i y_j − x_j y_i)/6 and the like; exact for straight sides.
    pub fn of(corners: &[DVec2]) -> Self {
        let mut sum = Self::default();
        for (index, &from) in corners.iter().enumerate() {
            sum.side(from, corners[(index + 1) % corners.len()]);
        }
        sum
    }

    /// Of the part of a polygon where a + b·x + c·y > 0.
    ///
    /// The cut polygon is walked along the old one; where that leaves and enters the part, the line between both places is
    /// its side. Pieces of such sides that are walked both ways cancel, so that any simple polygon is cut rightly.
    pub fn where_positive(corners: &[DVec2], plane: [f64; 3]) -> Self {
        let value = |point: DVec2| plane[0] + plane[1] * point.x + plane[2] * point.y;
        let mut sum = Self::default();
        let (mut first, mut last): (Option<DVec2>, Option<DVec2>) = (None, None);
        let mut go = |point: DVec2, sum: &mut Self| {
            match last {
                Some(from) => sum.side(from, point),
                None => first = Some(point),
            }
            last = Some(point);
        };
        for (index, &from) in corners.iter().enumerate() {
            let to = corners[(index + 1) % corners.len()];
            let (at_from, at_to) = (value(from), value(to));
            if at_from > 0.0 {
                go(from, &mut sum);
            }
            if (at_from > 0.0) != (at_to > 0.0) {
                go(from.lerp(to, at_from / (at_from - at_to)), &mut sum);
            }
        }
        if let (Some(first), Some(last)) = (first, last) {
            sum.side(last, first);
        }
        sum
    }

    fn side(&mut self, a: DVec2, b: DVec2) {
        let cross = a.perp_dot(b);
        self.area += cross / 2.0;
        self.x += (a.x + b.x) * cross / 6.0;
        self.y += (a.y + b.y) * cross / 6.0;
        self.xx += (a.x * a.x + a.x * b.x + b.x * b.x) * cross / 12.0;
        self.yy += (a.y * a.y + a.y * b.y + b.y * b.y) * cross / 12.0;
        self.xy += (2.0 * (a.x * a.y + b.x * b.y) + a.x * b.y + b.x * a.y) * cross / 24.0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: Moments, wanted: [f64; 6]) {
        let found = [found.area, found.x, found.y, found.xx, found.xy, found.yy];
        for (one, other) in found.iter().zip(wanted) {
            assert!((one - other).abs() < 1e-12, "{found:?} instead of {wanted:?}");
        }
    }

    #[test]
    fn a_rectangle_has_its_book_values() {
        // From (1, 2) to (4, 4): A = 6, ∫x = 6·2.5, ∫y = 6·3, ∫x² = 2·(64 − 1)/3, ∫y² = 3·(64 − 8)/3, ∫xy = 6·2.5·3.
        let corners = [(1.0, 2.0), (4.0, 2.0), (4.0, 4.0), (1.0, 4.0)].map(|(x, y)| DVec2::new(x, y));
        near(Moments::of(&corners), [6.0, 15.0, 18.0, 42.0, 45.0, 56.0]);
        near(Moments::where_positive(&corners, [1.0, 0.0, 0.0]), [6.0, 15.0, 18.0, 42.0, 45.0, 56.0]);
        near(Moments::where_positive(&corners, [-1.0, 0.0, 0.0]), [0.0; 6]);
    }

    #[test]
    fn the_two_sides_of_a_line_make_the_whole_even_of_an_l() {
        let corners =
            [(0.0, 0.0), (3.0, 0.0), (3.0, 1.0), (1.0, 1.0), (1.0, 3.0), (0.0, 3.0)].map(|(x, y)| DVec2::new(x, y));
        let whole = Moments::of(&corners);
        for plane in [[1.5, -1.0, -0.3], [-2.0, 1.0, 1.0], [0.5, 0.2, -1.0]] {
            let (one, other) = (
                Moments::where_positive(&corners, plane),
                Moments::where_positive(&corners, plane.map(|part: f64| -part)),
            );
            assert!(one.area > 0.0 && other.area > 0.0);
            near(
                Moments {
                    area: one.area + other.area,
                    x: one.x + other.x,
                    y: one.y + other.y,
                    xx: one.xx + other.xx,
                    xy: one.xy + other.xy,
                    yy: one.yy + other.yy,
                },
                [whole.area, whole.x, whole.y, whole.xx, whole.xy, whole.yy],
            );
        }
    }
}
