//! Where the letters, bars and roots of a formula stand: what is below and above smaller and shifted, fractions with a bar,
//! roots with their sign drawn, brackets as high as what they hold.

use glam::DVec2;

use super::Formula;
use crate::paper::ink::{ASCENT_EM, DESCENT_EM, Hand};
use crate::paper::measure::width_mm;
use crate::paper::page::{OnPage, Words};

/// Letters below and above to those that carry them.
const SCRIPT: f64 = 0.75;
/// No letter of a formula is smaller, mm: 6 pt.
const LEAST_MM: f64 = 2.1;
/// The bar of a fraction over the line on which capitals stand, ems.
const AXIS_EM: f64 = 0.27;
/// Width of bars and signs, ems.
const STROKE_EM: f64 = 0.055;
/// Free height between a bar and what stands over or under it, ems.
const GAP_EM: f64 = 0.1;
/// How far letters below are lowered and letters above raised, ems.
const LOWERED_EM: f64 = 0.2;
const RAISED_EM: f64 = 0.38;
/// Raised so far where letters stand below too, so that they don't meet.
const RAISED_OVER_EM: f64 = 0.52;
/// Brackets round what is higher are drawn, ems: letters with something above or below are not.
const TALL_EM: f64 = 1.25;

/// Something set: what is on it, from the line on which its capitals stand and its left end, y up.
#[derive(Debug, Clone, PartialEq)]
pub struct Laid {
    /// Width, mm.
    pub width_mm: f64,
    /// How far it reaches up, mm.
    pub up_mm: f64,
    /// How far it reaches down, mm.
    pub down_mm: f64,
    /// Its letters and lines.
    pub things: Vec<OnPage>,
}

impl Laid {
    /// Nothing, as wide as asked.
    pub(super) const fn blank(width_mm: f64) -> Self {
        Self { width_mm, up_mm: 0.0, down_mm: 0.0, things: Vec::new() }
    }

    /// Words in a line.
    pub fn words(words: &str, hand: Hand) -> Self {
        if words.is_empty() {
            return Self::blank(0.0);
        }
        let Hand { face, size_mm, ink } = hand;
        let at_mm = DVec2::ZERO;
        let things = if words.trim().is_empty() {
            Vec::new()
        } else {
            vec![OnPage::Words(Words { words: words.to_owned(), at_mm, size_mm, face, ink })]
        };
        let (up_mm, down_mm) = (ASCENT_EM * size_mm, DESCENT_EM * size_mm);
        Self { width_mm: width_mm(words, hand), up_mm, down_mm, things }
    }

    /// Puts another one on it, shifted; the width stays.
    pub(super) fn put(&mut self, other: Self, by_mm: DVec2) {
        self.up_mm = self.up_mm.max(other.up_mm + by_mm.y);
        self.down_mm = self.down_mm.max(other.down_mm - by_mm.y);
        self.things.extend(other.things.into_iter().map(|thing| thing.moved(by_mm)));
    }

    /// Puts another one behind it.
    pub(super) fn append(&mut self, other: Self) {
        let (at, wide) = (DVec2::new(self.width_mm, 0.0), other.width_mm);
        self.put(other, at);
        self.width_mm += wide;
    }

    fn stroke(&mut self, points_mm: Vec<DVec2>, hand: Hand) {
        self.things.push(OnPage::Line { points_mm, width_mm: STROKE_EM * hand.size_mm, ink: hand.ink });
    }
}

/// A formula in one line, however wide.
pub fn set(formula: &Formula, hand: Hand) -> Laid {
    match formula {
        Formula::Plain(words) => Laid::words(words, hand),
        Formula::Row(parts) => row(parts, hand),
        Formula::Marked { of, below, above } => marked(of, below.as_deref(), above.as_deref(), hand),
        Formula::Fraction(over, under) => fraction(over, under, hand),
        Formula::Root(of) => root(of, hand),
    }
}

fn row(parts: &[Formula], hand: Hand) -> Laid {
    let bracket = |part: Option<&Formula>| match part {
        Some(Formula::Plain(words)) => Some(words.clone()).filter(|words| matches!(words.as_str(), "(" | ")" | "|")),
        _ => None,
    };
    let inside = parts.get(1..parts.len().saturating_sub(1));
    match (bracket(parts.first()), inside, bracket(parts.last())) {
        (Some(open), Some(inside), Some(close)) => {
            let held = in_a_row(inside, hand);
            if held.up_mm + held.down_mm > TALL_EM * hand.size_mm {
                return bracketed(&open, held, &close, hand);
            }
            let mut laid = Laid::words(&open, hand);
            laid.append(held);
            laid.append(Laid::words(&close, hand));
            laid
        }
        _ => in_a_row(parts, hand),
    }
}

fn in_a_row(parts: &[Formula], hand: Hand) -> Laid {
    let mut laid = Laid::blank(0.0);
    for part in parts {
        laid.append(set(part, hand));
    }
    laid
}

/// Brackets drawn as high as what they hold.
fn bracketed(open: &str, held: Laid, close: &str, hand: Hand) -> Laid {
    let (up_mm, down_mm) = (held.up_mm, held.down_mm);
    let side = |sign: &str| {
        let wide = 0.32 * hand.size_mm;
        let mut laid = Laid { up_mm, down_mm, ..Laid::blank(wide) };
        let (belly, tip) = match sign {
            "(" => (0.08, 0.28),
            ")" => (0.24, 0.04),
            _ => (0.16, 0.16),
        };
        let bow = (0..=12).map(|step| {
            let along = f64::from(step) / 12.0;
            let bent = belly + (tip - belly) * (2.0 * along - 1.0).powi(2);
            DVec2::new(bent * hand.size_mm, along * (up_mm + down_mm) - down_mm)
        });
        laid.stroke(bow.collect(), hand);
        laid
    };
    let mut laid = side(open);
    laid.append(held);
    laid.append(side(close));
    laid
}

fn smaller(hand: Hand) -> Hand {
    let size_mm = (hand.size_mm * SCRIPT).max(LEAST_MM).min(hand.size_mm);
    Hand { size_mm, ..hand }
}

fn marked(of: &Formula, below: Option<&Formula>, above: Option<&Formula>, hand: Hand) -> Laid {
    let mut laid = set(of, hand);
    let small = smaller(hand);
    let (own_up, own_down) = (laid.up_mm - ASCENT_EM * hand.size_mm, laid.down_mm - DESCENT_EM * hand.size_mm);
    let at = laid.width_mm;
    let mut wide: f64 = 0.0;
    // Where something stands below too, neither may reach into the other: a fraction or a root above stands on it.
    let mut below_top = f64::NEG_INFINITY;
    if let Some(below) = below.map(|below| set(below, small)) {
        let by = -LOWERED_EM * hand.size_mm - own_down.max(0.0);
        wide = wide.max(below.width_mm);
        below_top = by + below.up_mm - (ASCENT_EM - 0.7) * small.size_mm;
        laid.put(below, DVec2::new(at, by));
    }
    if let Some(above) = above.map(|above| set(above, small)) {
        let raised = if below.is_some() { RAISED_OVER_EM } else { RAISED_EM };
        let by = (raised * hand.size_mm + own_up.max(0.0)).max(below_top + above.down_mm);
        wide = wide.max(above.width_mm);
        laid.put(above, DVec2::new(at, by));
    }
    laid.width_mm += wide + 0.03 * hand.size_mm;
    laid
}

fn fraction(over: &Formula, under: &Formula, hand: Hand) -> Laid {
    let part = Hand { size_mm: (hand.size_mm * 0.94).max(LEAST_MM).min(hand.size_mm), ..hand };
    let (over, under) = (set(over, part), set(under, part));
    let em = hand.size_mm;
    let (axis, gap, side) = (AXIS_EM * em, (GAP_EM + STROKE_EM / 2.0) * em, 0.1 * em);
    let bar = over.width_mm.max(under.width_mm) + 2.0 * side;
    let margin = 0.06 * em;
    let mut laid = Laid::blank(bar + 2.0 * margin);
    let middle = |wide: f64| margin + (bar - wide) / 2.0;
    let (over_at, under_at) = (
        DVec2::new(middle(over.width_mm), axis + gap + over.down_mm),
        DVec2::new(middle(under.width_mm), axis - gap - under.up_mm),
    );
    laid.put(over, over_at);
    laid.put(under, under_at);
    laid.stroke(vec![DVec2::new(margin, axis), DVec2::new(margin + bar, axis)], hand);
    laid
}

fn root(of: &Formula, hand: Hand) -> Laid {
    let held = set(of, hand);
    let em = hand.size_mm;
    let (up, down) = (held.up_mm + GAP_EM * em, held.down_mm);
    let (hook, behind) = (0.55 * em, 0.08 * em);
    let mut laid = Laid { up_mm: up + STROKE_EM * em, down_mm: down, ..Laid::blank(hook + held.width_mm + behind) };
    let top = DVec2::new(hook - 0.05 * em, up);
    let points = vec![
        DVec2::new(0.04 * em, AXIS_EM * em - 0.02 * em),
        DVec2::new(0.14 * em, AXIS_EM * em + 0.04 * em),
        DVec2::new(0.3 * em, -down),
        top,
        DVec2::new(hook + held.width_mm + behind / 2.0, up),
    ];
    laid.stroke(points, hand);
    laid.put(held, DVec2::new(hook, 0.0));
    laid
}
