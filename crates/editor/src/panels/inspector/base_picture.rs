//! The picture of a plate: under what governs, or under the look whose record is open. It follows every step of a gesture.

use egui::{Sense, Ui, vec2};
use gantline_drawing::plate::{PlateOptions, plate, scale_for};
use gantline_drawing::text::Heading;
use gantline_plan::assess::anchorage::{Fixed, Look};
use gantline_plan::catalog::ResolvedUnit;
use gantline_plan::document::PlacementId;
use glam::DVec2;

use super::base_uses::opened;
use super::of_selection::soft;
use crate::canvas::paint::Painted;
use crate::session::camera::PT_PER_MM;
use crate::session::{Camera, SheetRect};
use crate::sight::Sight;

/// Its height.
const HEIGHT: f32 = 236.0;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, unit: &ResolvedUnit, of: Fixed) {
    let base = match (of, &unit.foot) {
        (Fixed::Base, _) => &unit.base,
        (Fixed::Foot, Some(foot)) => &foot.base,
        (Fixed::Foot, None) => return,
    };
    if base.anchors.is_none() {
        soft(ui, sight, "No anchors stand in its plate: there is nothing to picture.");
        return;
    }
    let look = opened(ui, of);
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT), Sense::hover());
    let sheet = SheetRect {
        min: DVec2::new(f64::from(rect.min.x), f64::from(rect.min.y)),
        max: DVec2::new(f64::from(rect.max.x), f64::from(rect.max.y)),
    };
    let size_mm = sheet.size() / PT_PER_MM;
    let scale = scale_for(base, size_mm);
    let (units, heading) = (sight.look.units, Heading::LeftOut);
    let options = PlateOptions { scale, units, of, look, within_mm: Some(size_mm), heading };
    let Some(drawing) = plate(sight.plan, sight.assessment, id, &options) else { return };
    if ui.is_rect_visible(rect) {
        let painter = ui.painter().with_clip_rect(rect.intersect(ui.clip_rect()));
        painter.rect_filled(rect, 3, sight.look.palette.sheet);
        let camera = Camera { center: DVec2::ZERO, m_per_pt: scale.m_per_mm / PT_PER_MM, pt_per_mm: PT_PER_MM };
        Painted::of(&drawing, &camera, sheet, sight.look.palette, &painter).paint(&camera, sheet, &painter);
    }
    let words: Vec<&str> = drawing.words().collect();
    response.widget_info(|| {
        let name = match of {
            Fixed::Base => "Picture of the base's plate",
            Fixed::Foot => "Picture of the foot's plate",
        };
        let mut info = egui::WidgetInfo::labeled(egui::Role::Figure, true, name);
        info.current_text_value = Some(words.join("; "));
        info
    });
    soft(ui, sight, caption(sight, id, of, look));
}

/// What is shown, and how it is read.
fn caption(sight: &Sight<'_>, id: PlacementId, of: Fixed, look: Option<Look>) -> String {
    let base = sight.assessment.units.get(&id).and_then(|unit| unit.base.as_ref());
    let used = base.and_then(|base| match look {
        Some(look) => base.uses.iter().find(|used| used.of == of && used.look == look),
        None => base.worst(of),
    });
    match used.filter(|used| used.state.is_some()) {
        Some(used) => format!(
            "Shown: {}. Filled anchors are pulled, hatched is what presses, dashed the neutral axis.",
            used.look.words()
        ),
        None => "The plate without forces: nothing that pulls it was computed.".to_owned(),
    }
}
