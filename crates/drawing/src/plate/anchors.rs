//! Anchors of a plate: pulled ones filled, each with its number and its tension.

use gantline_plan::quantity;
use glam::DVec2;

use super::scene::Scene;
use super::writing::{Beside, write};
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::taken::{Taken, TakenBox};

/// A pull below this is none, N.
const NO_PULL_N: f64 = 0.5;
/// Smallest radius of an anchor on paper, mm.
const LEAST_RADIUS_MM: f64 = 0.7;

/// Draws the anchors and takes their places.
pub(super) fn draw_anchors(pencil: &mut Pencil, taken: &mut Taken, scene: &Scene) {
    let Some(anchors) = &scene.base.anchors else { return };
    let radius_m = radius_m(pencil, scene);
    for (index, &at) in anchors.at_m.iter().enumerate() {
        let pull_n = tension_n(scene, index).unwrap_or(0.0);
        let fill = if pull_n > NO_PULL_N { Fill::Ink(Pen::Outline) } else { Fill::Paper };
        pencil.disc(Layer::Unit, fill, Some(Pen::Outline), at, radius_m);
        let size_mm = DVec2::splat(2.0 * pencil.scale.mm(radius_m));
        taken.add(TakenBox::around(at / pencil.scale.m_per_mm, size_mm));
    }
}

/// Writes number and tension beside each; without a state only the number. The hardest pulled come first.
pub(super) fn write_tensions(pencil: &mut Pencil, taken: &mut Taken, scene: &Scene) {
    let Some(anchors) = &scene.base.anchors else { return };
    let own_m = radius_m(pencil, scene);
    let mut order: Vec<usize> = (0..anchors.at_m.len()).collect();
    let pull = |index: &usize| tension_n(scene, *index).unwrap_or(0.0);
    order.sort_by(|a, b| pull(b).total_cmp(&pull(a)));
    for index in order {
        let at = anchors.at_m[index];
        let number = index + 1;
        let words = match tension_n(scene, index) {
            Some(pull_n) if pull_n > NO_PULL_N => {
                format!("{number}: {}", quantity::force(pull_n, scene.options.units))
            }
            _ => number.to_string(),
        };
        let prefers = at.try_normalize().unwrap_or(DVec2::Y);
        let left = write(pencil, taken, Beside { words, at, own_m, prefers, pen: Pen::Lettering });
        if let Some(words) = left {
            write(pencil, taken, Beside { words: number.to_string(), ..words });
        }
    }
}

fn radius_m(pencil: &Pencil, scene: &Scene) -> f64 {
    let diameter_m = scene.fixing.map_or(0.0, |fixing| fixing.diameter_m);
    (diameter_m / 2.0).max(pencil.scale.m(LEAST_RADIUS_MM))
}

fn tension_n(scene: &Scene, index: usize) -> Option<f64> {
    scene.state()?.tension_n.get(index).copied()
}
