//! Paints underlays below the plan: the finest picture that is there, the coarse one around it.

use std::sync::Arc;

use egui::epaint::{Mesh, Vertex};
use egui::{Color32, Painter, Pos2, Shape, pos2};
use gantline_exchange::underlay::Extent;
use gantline_plan::document::{AttachmentKind, Plan, RoofId, ThingId, Underlay};
use glam::DVec2;

use crate::derived::underlays::{Textured, Underlays};
use crate::session::{Camera, Selection, SheetRect};
use crate::theme::{Palette, type_scale};

/// Paints them, the lowest first; a selected one with its rim.
pub fn paint(
    painter: &Painter,
    plan: &Plan,
    underlays: &Underlays,
    (level, selection): (Option<RoofId>, &Selection),
    (camera, sheet): (&Camera, SheetRect),
    palette: &Palette,
) {
    let place = |at: DVec2| {
        let at = camera.screen_from_drawing(sheet, at);
        pos2(at.x as f32, at.y as f32)
    };
    for (&id, underlay) in plan.underlays.iter().filter(|(_, one)| one.is_seen(level)) {
        let kind = plan.attachments.get(&underlay.attachment).map(gantline_plan::document::Attachment::kind);
        // Lines come white on nothing and are drawn in ink; pages and images keep their colors.
        let ink = if kind == Some(AttachmentKind::Dxf) { palette.ink } else { Color32::WHITE };
        let ink = ink.gamma_multiply(underlay.opacity as f32);
        if let Some(page) = underlays.page(underlay) {
            let fine = page.fine.as_ref();
            if let Some(coarse) = &page.coarse {
                for part in around(coarse.part, fine.map(|fine| fine.part)) {
                    painter.add(shape(coarse, part, underlay, ink, &place));
                }
            }
            if let Some(fine) = fine {
                painter.add(shape(fine, fine.part, underlay, ink, &place));
            }
        }
        if selection.has(ThingId::Underlay(id))
            && let Some(corners) = underlays.corners(underlay)
        {
            painter.add(Shape::closed_line(corners.map(place).to_vec(), (1.5, palette.accent)));
        }
    }
    if underlays.is_at_work() {
        let at = pos2(sheet.min.x as f32 + 16.0, sheet.min.y as f32 + 52.0);
        let font = egui::FontId::proportional(type_scale::SMALL);
        painter.text(at, egui::Align2::LEFT_TOP, "Drawing underlay…", font, palette.ink_soft);
    }
}

/// What of a part lies around a hole in it: nothing is painted twice, or it would be seen through less there.
fn around(whole: Extent, hole: Option<Extent>) -> Vec<Extent> {
    let Some(hole) = hole.and_then(|hole| hole.common(&whole)) else { return vec![whole] };
    let (low, high) = (hole.min, hole.max);
    let parts = [
        Extent { min: whole.min, max: DVec2::new(whole.max.x, low.y) },
        Extent { min: DVec2::new(whole.min.x, high.y), max: whole.max },
        Extent { min: DVec2::new(whole.min.x, low.y), max: DVec2::new(low.x, high.y) },
        Extent { min: DVec2::new(high.x, low.y), max: DVec2::new(whole.max.x, high.y) },
    ];
    parts.into_iter().filter(|part| part.min.cmplt(part.max).all()).collect()
}

/// A part of a picture where the underlay has it.
fn shape(picture: &Textured, part: Extent, underlay: &Underlay, ink: Color32, place: &dyn Fn(DVec2) -> Pos2) -> Shape {
    let Extent { min, max } = part;
    let corners = [min, DVec2::new(max.x, min.y), max, DVec2::new(min.x, max.y)];
    let size = picture.part.size();
    let vertices = corners.map(|corner| {
        let share = (corner - picture.part.min) / size;
        Vertex { pos: place(underlay.in_plan(corner)), uv: pos2(share.x as f32, 1.0 - share.y as f32), color: ink }
    });
    let mesh = Mesh { indices: vec![0, 1, 2, 0, 2, 3], vertices: vertices.to_vec(), texture_id: picture.texture.id() };
    Shape::Mesh(Arc::new(mesh))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn extent(x0: f64, y0: f64, x1: f64, y1: f64) -> Extent {
        Extent { min: DVec2::new(x0, y0), max: DVec2::new(x1, y1) }
    }

    #[test]
    fn what_lies_around_a_hole_has_the_area_of_the_whole_less_that_of_the_hole() {
        let whole = extent(0.0, 0.0, 10.0, 8.0);
        let area = |parts: &[Extent]| parts.iter().map(|part| part.size().x * part.size().y).sum::<f64>();
        for (hole, expected) in [
            (None, 80.0),
            (Some(extent(2.0, 1.0, 5.0, 4.0)), 71.0),
            (Some(extent(-5.0, -5.0, 5.0, 4.0)), 60.0),
            (Some(whole), 0.0),
            (Some(extent(20.0, 0.0, 30.0, 8.0)), 80.0),
        ] {
            let parts = around(whole, hole);
            assert!((area(&parts) - expected).abs() < 1e-12, "{hole:?}");
            for (index, one) in parts.iter().enumerate() {
                assert!(parts[index + 1..].iter().all(|other| one.common(other).is_none()));
            }
        }
    }
}
