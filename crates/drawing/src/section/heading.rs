//! The words over a section: which unit, of which parts, and in which plane it is cut.

use gantline_plan::quantity;
use glam::DVec2;

use super::building::roof_name;
use super::scene::Scene;
use crate::layer::Layer;
use crate::pencil::Pencil;
use crate::text::{Anchor, TextStyle};

/// Writes the heading with its last line at a height.
pub(super) fn draw_heading(pencil: &mut Pencil, scene: &Scene, at: DVec2) {
    let unit = scene.unit;
    let brace = unit.brace.as_ref().map_or("no brace", |brace| brace.name.as_str());
    let parts = format!("{} · {} · {brace} · {}", unit.mast.name, unit.arm.name, unit.base.name);
    let lines = [
        (plane_words(scene), TextStyle::Note),
        (unit.family.clone(), TextStyle::Note),
        (parts, TextStyle::Note),
        (format!("Section {}", scene.placement.tag), TextStyle::Heading),
    ];
    let mut at = at;
    for (words, style) in lines {
        pencil.text(Layer::Lettering, words, at, Anchor::START, style);
        at.y += pencil.scale.m(TextStyle::Note.line_mm() * 1.1);
    }
}

/// Square to the edge, or along the slewed arm.
fn plane_words(scene: &Scene) -> String {
    let roof = roof_name(scene.plan, scene.frame.roof);
    let slew = scene.placement.make_up.drawn_slew_rad;
    let level = quantity::level(scene.roof.level_m, scene.options.units);
    if slew == 0.0 {
        return format!("{roof}, slab {level}; arm not slewed");
    }
    format!("{roof}, slab {level}; cut along the arm, slewed {}", quantity::angle(slew))
}
