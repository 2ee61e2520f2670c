//! North arrow and scale bar at the lower left of the plan, and an arrow at the rim when the building is out of sight.

use egui::{Align2, FontId, Painter, Pos2, Rect, Shape, Stroke, pos2, vec2};
use gantline_drawing::scale_bar::round_at_most_m;
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity::{UnitSystem, length};

use crate::session::{Camera, SheetRect};
use crate::theme::{Palette, type_scale};

/// Longest scale bar, points.
const LONGEST_PT: f64 = 160.0;

/// Draws north arrow and scale bar.
pub fn paint(
    painter: &Painter,
    camera: &Camera,
    sheet: SheetRect,
    north_rad: f64,
    units: UnitSystem,
    palette: &Palette,
) {
    let corner = pos2(sheet.min.x as f32 + 22.0, sheet.max.y as f32 - 20.0);
    let step_m = round_at_most_m(camera.m_per_pt * LONGEST_PT, units);
    let width = (step_m / camera.m_per_pt) as f32;
    let words =
        painter.layout_no_wrap(length(step_m, units), FontId::proportional(type_scale::SMALL), palette.ink_soft);
    // Paper of their own, so that nothing drawn runs through their letters.
    let bar = Rect::from_min_max(corner - vec2(6.0, 10.0), corner + vec2(width + 14.0 + words.size().x, 10.0));
    let arrow = corner + vec2(12.0, -48.0);
    let around_arrow = Rect::from_center_size(arrow, vec2(52.0, 58.0));
    for paper in [bar, around_arrow] {
        painter.rect_filled(paper, 4.0, palette.sheet);
    }
    north_arrow(painter, arrow, north_rad, palette);
    let stroke = Stroke::new(1.2, palette.ink_soft);
    painter.hline(corner.x..=(corner.x + width), corner.y, stroke);
    for x in [corner.x, corner.x + width] {
        painter.vline(x, (corner.y - 4.0)..=(corner.y + 4.0), stroke);
    }
    painter.galley(corner + vec2(width + 8.0, -words.size().y / 2.0), words, palette.ink_soft);
}

fn north_arrow(painter: &Painter, center: Pos2, north_rad: f64, palette: &Palette) {
    const RADIUS: f32 = 13.0;
    let (sin, cos) = north_rad.sin_cos();
    // Counter-clockwise from the plan's y axis; the screen's y points down.
    let north = vec2(-(sin as f32), -(cos as f32));
    let side = vec2(-north.y, north.x);
    let tip = center + north * RADIUS;
    let (left, right) = (center - north * RADIUS - side * 6.0, center - north * RADIUS + side * 6.0);
    let notch = center - north * 8.0;
    painter.add(Shape::convex_polygon(vec![tip, left, notch], palette.ink_soft, Stroke::NONE));
    painter.add(Shape::closed_line(vec![tip, notch, right], Stroke::new(1.0, palette.ink_soft)));
    let font = FontId::new(type_scale::SMALL, type_scale::semibold());
    painter.text(center + north * (RADIUS + 9.0), Align2::CENTER_CENTER, "N", font, palette.ink_soft);
}

/// Points from the rim to the building when it is out of sight.
pub fn point_to(painter: &Painter, camera: &Camera, sheet: SheetRect, building: &Bounds, palette: &Palette) {
    if camera.seen(sheet).meets(building) {
        return;
    }
    let target = camera.screen_from_drawing(sheet, (building.min_m + building.max_m) / 2.0);
    let middle = sheet.middle();
    let way = (target - middle).normalize_or_zero();
    let half = sheet.size() / 2.0 - glam::DVec2::splat(36.0);
    let reach = (half / way.abs().max(glam::DVec2::splat(1e-9))).min_element();
    let at = middle + way * reach;
    let tip = pos2(at.x as f32, at.y as f32);
    let back = vec2(way.x as f32, way.y as f32) * 16.0;
    let side = vec2(-back.y, back.x) * 0.5;
    let arrow = vec![tip, tip - back + side, tip - back - side];
    painter.add(Shape::convex_polygon(arrow, palette.accent, Stroke::NONE));
    let words = "The building is there: Home shows it";
    let anchor = if way.x > 0.3 {
        Align2::RIGHT_CENTER
    } else if way.x < -0.3 {
        Align2::LEFT_CENTER
    } else {
        Align2::CENTER_CENTER
    };
    let beside = tip - vec2(way.x as f32, way.y as f32) * 26.0;
    painter.text(beside, anchor, words, FontId::proportional(type_scale::SMALL), palette.ink_soft);
}
