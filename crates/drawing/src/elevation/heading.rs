//! The words over an elevation: which facade, how large, how much of it is reached.

use gantline_plan::assess::FacadeAssessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity;
use glam::DVec2;

use super::options::ElevationOptions;
use crate::compass::compass_word;
use crate::layer::Layer;
use crate::pencil::Pencil;
use crate::text::{Anchor, TextStyle};

/// Writes the heading with its last line at a place.
pub(super) fn draw_heading(
    pencil: &mut Pencil,
    plan: &Plan,
    found: &FacadeAssessment,
    options: &ElevationOptions,
    at: DVec2,
) {
    let facade = &found.facade;
    let roof = plan.roofs.get(&facade.roof).map_or("", |roof| roof.name.as_str());
    let side = compass_word(facade.line.outward_rad(), plan.datum.north_rad);
    let length = |meters: f64| quantity::length(meters, options.units);
    let area = |square_meters: f64| quantity::area(square_meters, options.units);
    let size = format!("{} long, {} high, seen from outside", length(facade.line.length_m), length(facade.height_m()));
    let reached = if facade.data.needs_access {
        format!("{} of {} reached", area(found.covered_m2), area(found.area_m2))
    } else {
        "needs no access".to_owned()
    };
    let lines = [
        (reached, TextStyle::Note),
        (size, TextStyle::Note),
        (format!("Facade to the {side}, {roof}"), TextStyle::Heading),
    ];
    let mut at = at;
    for (words, style) in lines {
        pencil.text(Layer::Lettering, words, at, Anchor::START, style);
        at.y += pencil.scale.m(TextStyle::Note.line_mm() * 1.1);
    }
}
