//! Words beside points, each at the first free place around its point.

use glam::DVec2;

use crate::layer::Layer;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::taken::{Taken, TakenBox};
use crate::text::{Anchor, Text, TextStyle, width_mm};

/// Distances from the point's own mark that are tried, paper mm.
const AWAY_MM: [f64; 5] = [0.9, 2.6, 4.6, 7.0, 10.0];
/// From this distance on a thin line leads to the point, paper mm.
const LED_FROM_MM: f64 = 2.0;
/// Free paper round words, mm.
const AROUND_MM: f64 = 0.5;
/// Directions that are tried.
const DIRECTIONS: u32 = 8;

/// Words that are to stand beside a point.
pub(super) struct Beside {
    /// What is written.
    pub words: String,
    pub at: DVec2,
    /// Half the size of what is drawn at the point, m.
    pub own_m: f64,
    /// Where the words like to stand.
    pub prefers: DVec2,
    pub pen: Pen,
}

/// Writes words where they stand on nothing; gives them back when there is no free place.
pub(super) fn write(pencil: &mut Pencil, taken: &mut Taken, beside: Beside) -> Option<Beside> {
    let scale = pencil.scale;
    let style = TextStyle::Dimension;
    let half_mm = DVec2::new(width_mm(&beside.words, style), style.cap_mm()) / 2.0;
    let point_mm = beside.at / scale.m_per_mm;
    for away_mm in AWAY_MM {
        for direction in directions(beside.prefers) {
            let side = |part: f64, half: f64| if part.abs() > 0.3 { part.signum() * half } else { 0.0 };
            // As far out along the longer axis, so that a diagonal clears the point's own mark too.
            let out = direction / direction.abs().max_element() * (scale.mm(beside.own_m) + away_mm);
            let center_mm = point_mm + out + DVec2::new(side(direction.x, half_mm.x), side(direction.y, half_mm.y));
            let around = TakenBox::around(center_mm, (half_mm + DVec2::splat(AROUND_MM)) * 2.0);
            if !taken.is_free(&around) {
                continue;
            }
            taken.add(around);
            let center = scale.shift(center_mm);
            if away_mm > LED_FROM_MM {
                let edge = beside.at + direction * beside.own_m;
                pencil.line(Layer::Dimension, Pen::Dimension, [edge, beside.at + scale.shift(out)]);
            }
            let text = Text::new(beside.words, center, Anchor::CENTER, style, beside.pen);
            pencil.text_on_paper(Layer::Reading, text);
            return None;
        }
    }
    Some(beside)
}

/// Directions all round, the preferred one first.
fn directions(prefers: DVec2) -> Vec<DVec2> {
    let step = std::f64::consts::TAU / f64::from(DIRECTIONS);
    let mut all: Vec<DVec2> = (0..DIRECTIONS).map(|index| DVec2::from_angle(step * f64::from(index))).collect();
    all.sort_by(|a, b| b.dot(prefers).total_cmp(&a.dot(prefers)));
    all
}
