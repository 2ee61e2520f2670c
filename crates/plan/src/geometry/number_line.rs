//! Sets of closed intervals on a number line, as sorted pairs that neither overlap nor touch.
//!
//! [`Spans`](super::spans::Spans) gives them a length's meaning, [`Turns`](super::turns::Turns) an angle's.
//! A difference is closed again: what is left includes the ends of what was taken away. Pieces no longer than `hair`
//! that a difference leaves are dropped; single points that were put in on purpose are kept.

/// One closed interval; both ends may be equal.
pub(super) type Piece = (f64, f64);

/// Sorts pieces and joins those that overlap or come within `hair` of each other. Reversed pieces and pieces with an end
/// that is no number are dropped.
pub(super) fn tidy(mut pieces: Vec<Piece>, hair: f64) -> Vec<Piece> {
    pieces.retain(|&(from, to)| from <= to);
    pieces.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut tidy: Vec<Piece> = Vec::with_capacity(pieces.len());
    for (from, to) in pieces {
        match tidy.last_mut() {
            Some(last) if from <= last.1 + hair => last.1 = last.1.max(to),
            _ => tidy.push((from, to)),
        }
    }
    tidy
}

/// What two tidy sets share. Sets that come within `hair` of each other share a point.
pub(super) fn intersect(a: &[Piece], b: &[Piece], hair: f64) -> Vec<Piece> {
    let mut shared = Vec::new();
    let (mut i, mut j) = (0, 0);
    while i < a.len() && j < b.len() {
        let from = a[i].0.max(b[j].0);
        let to = a[i].1.min(b[j].1);
        if from <= to {
            shared.push((from, to));
        } else if from <= to + hair {
            shared.push(touching_point(a[i], b[j], from, to));
        }
        if a[i].1 < b[j].1 {
            i += 1;
        } else {
            j += 1;
        }
    }
    tidy(shared, hair)
}

/// The point that stands for two pieces which all but touch: a single point given on purpose is kept as it was given.
fn touching_point(a: Piece, b: Piece, from: f64, to: f64) -> Piece {
    let at = if a.0 == a.1 {
        a.0
    } else if b.0 == b.1 {
        b.0
    } else {
        from.midpoint(to)
    };
    (at, at)
}

/// What is left of tidy set `a` without tidy set `b`.
pub(super) fn minus(a: &[Piece], b: &[Piece], hair: f64) -> Vec<Piece> {
    let mut left = Vec::new();
    for &(from, to) in a {
        if from == to {
            if !contains(b, from, hair) {
                left.push((from, to));
            }
            continue;
        }
        let mut at = from;
        for &(cut_from, cut_to) in b {
            // Taking a point out of a stretch leaves the whole stretch, since what is left is closed.
            if cut_from == cut_to || cut_to <= at || cut_from >= to {
                continue;
            }
            if cut_from - at > hair {
                left.push((at, cut_from));
            }
            at = cut_to;
        }
        if to - at > hair {
            left.push((at, to));
        }
    }
    left
}

/// Whether `x` lies in the set or within `hair` of it.
pub(super) fn contains(pieces: &[Piece], x: f64, hair: f64) -> bool {
    pieces.iter().any(|&(from, to)| from - hair <= x && x <= to + hair)
}
