//! A small picture of the axes of a base and of positive moments: what the signs of reactions mean.

use egui::{Align2, FontId, Painter, Pos2, Sense, Shape, Stroke, Ui, Vec2, pos2, vec2};

use crate::theme::{Palette, type_scale};

/// Height of the picture.
const HEIGHT: f32 = 92.0;

/// Shows it, with the words beside it.
pub fn sign_picture(ui: &mut Ui, palette: &Palette) {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), HEIGHT), Sense::hover());
    let painter = ui.painter();
    let origin = rect.left_top() + vec2(62.0, 62.0);
    // The edge runs up to the right, outside is to the lower right: an oblique view from above.
    let axes = [
        (vec2(40.0, 14.0), "x", "Fx, Mx", vec2(8.0, 6.0)),
        (vec2(34.0, -24.0), "y", "Fy, My", vec2(8.0, -4.0)),
        (vec2(0.0, -44.0), "z", "Fz, Mz", vec2(8.0, 0.0)),
    ];
    let edge = vec2(34.0, -24.0).normalized() * 62.0;
    let line = Stroke::new(2.0, palette.ink_soft);
    let shift = vec2(26.0, 9.0);
    painter.line_segment([origin + shift - edge * 0.7, origin + shift + edge], line);
    for (direction, _, name, beside) in axes {
        arrow(painter, origin, direction, palette);
        painter.text(
            origin + direction + beside,
            Align2::LEFT_CENTER,
            name,
            FontId::proportional(type_scale::SMALL),
            palette.ink,
        );
    }
    painter.circle_filled(origin, 3.0, palette.ink);
    let words = [
        "What the unit does to the base.",
        "x away from the building,",
        "y along the edge, z up;",
        "moments turn like a right hand's screw.",
    ];
    for (index, text) in words.into_iter().enumerate() {
        let at = pos2(rect.min.x + 168.0, rect.min.y + 8.0 + 19.0 * index as f32);
        painter.text(at, Align2::LEFT_TOP, text, FontId::proportional(type_scale::SMALL), palette.ink_soft);
    }
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, words.join(" ")));
}

fn arrow(painter: &Painter, from: Pos2, direction: Vec2, palette: &Palette) {
    let stroke = Stroke::new(1.4, palette.load);
    let tip = from + direction;
    let back = direction.normalized() * 7.0;
    let side = back.rot90() * 0.4;
    painter.line_segment([from, tip - back], stroke);
    painter.add(Shape::convex_polygon(vec![tip, tip - back + side, tip - back - side], palette.load, Stroke::NONE));
}
