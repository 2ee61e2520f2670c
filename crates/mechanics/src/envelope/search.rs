//! The greatest value of a function of one angle: a grid, then golden section around its peaks.
//!
//! Valid for functions that are made of the first few harmonics of the angle, as all of ours are: the
//! grid then has a point on the hill of every peak worth refining.

use std::f64::consts::{PI, TAU};

use super::slews::Slews;

/// Sections of an interval of π down to 1e-15 of it.
const MOST_SECTIONS: usize = 75;

/// Share of the best grid value, over the lowest, from which a peak is refined.
pub(super) const WORTH: f64 = 0.95;

/// Where a function was greatest, and its value there.
pub(super) type Peak = (f64, f64);

/// Looks over `slews` on a grid of at most `step`, and at `also` where they belong to them, and refines
/// peaks to `tolerance` (rad).
pub(super) fn greatest<E>(
    slews: &Slews,
    also: &[f64],
    step: f64,
    tolerance: f64,
    mut f: impl FnMut(f64) -> Result<f64, E>,
) -> Result<Peak, E> {
    greatest_by_looks(slews, also, step, tolerance, |x, _| f(x))
}

/// How a value is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Look {
    /// For the grid. Of a value that isn't above this any smaller one may be told, as it won't be refined.
    Over { enough: f64 },
    /// For a peak.
    Closely,
}

/// The same for a function that is not negative and takes long to compute where it is large.
pub(super) fn greatest_by_looks<E>(
    slews: &Slews,
    also: &[f64],
    step: f64,
    tolerance: f64,
    mut f: impl FnMut(f64, Look) -> Result<f64, E>,
) -> Result<Peak, E> {
    let grid = grid(slews, also, step);
    let mut values = Vec::with_capacity(grid.len());
    let mut enough = 0.0;
    for &x in &grid {
        let value = f(x, Look::Over { enough })?;
        enough = (WORTH * value).max(enough);
        values.push(value);
    }
    let mut f = |x: f64| f(x, Look::Closely);
    let mut best = (grid[0], values[0]);
    for (&x, &v) in grid.iter().zip(&values) {
        best = better(best, (x, v));
    }
    let lowest = values.iter().copied().fold(best.1, f64::min);
    // A peak whose nearest grid value is further below the best than this can't overtake it: between
    // neighbors a harmonic rises by less than a twentieth of its range.
    let worth = best.1 - (1.0 - WORTH) * (best.1 - lowest);
    if matches!(slews, Slews::At(_)) || best.1 == lowest {
        return Ok(best);
    }
    let periodic = *slews == Slews::Turn;
    let last = grid.len() - 1;
    for i in 0..=last {
        let before = match i {
            0 if periodic => Some((grid[last] - TAU, values[last])),
            0 => None,
            _ => Some((grid[i - 1], values[i - 1])),
        };
        let after = match i {
            _ if i < last => Some((grid[i + 1], values[i + 1])),
            _ if periodic => Some((grid[0] + TAU, values[0])),
            _ => None,
        };
        let is_peak = before.is_none_or(|n| values[i] > n.1) && after.is_none_or(|n| values[i] >= n.1);
        if is_peak && values[i] >= worth {
            let from = before.map_or(grid[i], |n| n.0);
            let to = after.map_or(grid[i], |n| n.0);
            best = better(best, golden(from, to, tolerance, &mut f)?);
        }
    }
    Ok(best)
}

/// The same angle above −π and up to π.
pub(super) fn within_turn(angle: f64) -> f64 {
    PI - (PI - angle).rem_euclid(TAU)
}

/// The higher of two; of equals the one nearer to 0, so that flat functions answer at a plain place.
fn better(a: Peak, b: Peak) -> Peak {
    let slack = 1e-13 * a.1.abs().max(b.1.abs());
    if b.1 > a.1 + slack || (b.1 >= a.1 - slack && b.0.abs() < a.0.abs()) { b } else { a }
}

/// In rising order, except for detents.
fn grid(slews: &Slews, also: &[f64], step: f64) -> Vec<f64> {
    let mut points = match slews {
        Slews::Turn => {
            let half = (PI / step).ceil() as i32;
            (1 - half..=half).map(|i| f64::from(i) * PI / f64::from(half)).collect()
        }
        Slews::Between(from, to) => {
            let count = ((to - from) / step).ceil().max(1.0) as i32;
            let share = (to - from) / f64::from(count);
            let mut points: Vec<f64> = (0..count).map(|i| from + f64::from(i) * share).collect();
            points.push(*to);
            points
        }
        Slews::At(list) => return list.clone(),
    };
    if !also.is_empty() {
        points.extend(also.iter().filter_map(|x| slews.same_turn(*x)));
        points.sort_by(f64::total_cmp);
        points.dedup();
    }
    points
}

/// Golden section on an interval with one peak (J. Kiefer, 1953).
pub(super) fn golden<E>(
    from: f64,
    to: f64,
    tolerance: f64,
    f: &mut impl FnMut(f64) -> Result<f64, E>,
) -> Result<Peak, E> {
    const SHARE: f64 = 0.618_033_988_749_894_8;
    let (mut a, mut b) = (from, to);
    let (mut x1, mut x2) = (b - SHARE * (b - a), a + SHARE * (b - a));
    let (mut f1, mut f2) = (f(x1)?, f(x2)?);
    // Far from 0 neighboring numbers stand wider apart than the tolerance; so no more than it takes from π.
    for _ in 0..MOST_SECTIONS {
        if b - a <= tolerance {
            break;
        }
        if f1 >= f2 {
            (b, x2, f2) = (x2, x1, f1);
            x1 = b - SHARE * (b - a);
            f1 = f(x1)?;
        } else {
            (a, x1, f1) = (x1, x2, f2);
            x2 = a + SHARE * (b - a);
            f2 = f(x2)?;
        }
    }
    Ok(if f1 >= f2 { (x1, f1) } else { (x2, f2) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::convert::Infallible;

    fn look(slews: &Slews, f: impl Fn(f64) -> f64) -> Peak {
        greatest::<Infallible>(slews, &[], PI / 24.0, 1e-9, |x| Ok(f(x))).unwrap()
    }

    /// A cosine has its peak where it is put, also across the seam of the turn.
    #[test]
    fn a_peak_is_found_wherever_it_lies() {
        for at in [0.0, 0.06, -1.3, 3.1, -3.13, 2.0] {
            let (x, v) = look(&Slews::Turn, |x| (x - at).cos() + 0.3 * (2.0 * (x - at)).cos());
            assert!((v - 1.3).abs() < 1e-14, "{at} {v}");
            assert!((x - at).sin().abs() < 1e-6, "{at} {x}");
        }
    }

    #[test]
    fn an_end_of_the_range_can_be_the_peak() {
        let (x, v) = look(&Slews::Between(-0.5, 0.4), f64::sin);
        assert_eq!((x, v), (0.4, 0.4f64.sin()));
    }

    #[test]
    fn a_flat_function_answers_at_zero() {
        assert_eq!(look(&Slews::Turn, |_| 2.5), (0.0, 2.5));
    }

    /// A needle between grid points is seen where it is known to stand.
    #[test]
    fn a_narrow_peak_is_found_where_it_is_announced() {
        let needle = |x: f64| (1.0 - 1e3 * (x - 1.234).abs()).max(0.0);
        let found = greatest::<Infallible>(&Slews::Turn, &[1.234 + TAU], PI / 24.0, 1e-9, |x| Ok(needle(x)));
        assert!(found.unwrap().1 > 1.0 - 1e-9);
    }

    #[test]
    fn detents_are_the_only_slews_looked_at() {
        let (x, _) = look(&Slews::At(vec![-1.0, 0.2, 1.5]), f64::cos);
        assert_eq!(x, 0.2);
    }
}
