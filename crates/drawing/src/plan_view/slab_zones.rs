//! Parts of a slab with another thickness, and parts where nothing may be drilled, each with its word.

use gantline_plan::document::Roof;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::quantity;
use glam::DVec2;

use super::options::PlanViewOptions;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::roomiest::roomiest;
use crate::text::{Anchor, Text, TextStyle};

/// Draws the zones of a roof's slab.
pub(super) fn draw_slab_zones(pencil: &mut Pencil, roof: &Roof, options: &PlanViewOptions) {
    for zone in &roof.slab.zones {
        let words = format!("slab {}", quantity::length(zone.thickness_m, options.units));
        draw_zone(pencil, Hatch::SlabZone, &zone.outline, words, options);
    }
    for zone in &roof.slab.no_drill {
        let words =
            if zone.reason.is_empty() { "no drilling".to_owned() } else { format!("no drilling: {}", zone.reason) };
        draw_zone(pencil, Hatch::NoDrill, &zone.outline, words, options);
    }
}

fn draw_zone(pencil: &mut Pencil, hatch: Hatch, outline: &[DVec2], words: String, options: &PlanViewOptions) {
    pencil.area(Layer::Ground, Fill::Hatch(hatch), Some(Pen::Fine), outline);
    if options.is_coarse() {
        return;
    }
    let text = Text::new(words, DVec2::ZERO, Anchor::CENTER, TextStyle::Note, Pen::Lettering);
    let half = DVec2::new(pencil.scale.m(text.width_mm() / 2.0 + 0.6), pencil.scale.m(1.6));
    if let Some(at) = roomiest(&Polygon::simple(outline.to_vec()), half, &[]) {
        pencil.text_on_paper(Layer::Lettering, Text { at, ..text });
    }
}
