//! Icons as drawn shapes in one line weight, so that they follow the theme and need no font.

use egui::{Button, Color32, Painter, Pos2, Rect, Response, Sense, Shape, Stroke, Ui, Vec2, pos2, vec2};

use crate::theme::{Palette, type_scale};

/// An icon.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Icon {
    /// An arrow that points at things.
    Select,
    /// An outline with corners.
    Roof,
    /// An outline in an outline.
    Hole,
    /// A crossed box.
    Obstacle,
    /// A mast with its arm.
    Unit,
    /// A rule.
    Measure,
    /// An arrow back.
    Undo,
    /// An arrow ahead.
    Redo,
    /// Two sheets that change places.
    Swap,
    /// A pin.
    Pin,
    /// A triangle that points down.
    Down,
    /// A cross.
    Close,
    /// A circle with a bar: blocking.
    Blocking,
    /// A triangle: caution.
    Caution,
    /// An open circle with a stroke: not checked.
    Unchecked,
    /// A tick: met.
    Meets,
    /// A lock.
    Lock,
}

/// Draws an icon into a square.
pub fn paint(painter: &Painter, icon: Icon, square: Rect, ink: Color32) {
    let stroke = Stroke::new(1.4, ink);
    // Coordinates are in sixteenths of the square.
    let at = |x: f32, y: f32| pos2(square.min.x + square.width() * x / 16.0, square.min.y + square.height() * y / 16.0);
    let line = |points: &[(f32, f32)]| {
        painter.add(Shape::line(points.iter().map(|&(x, y)| at(x, y)).collect(), stroke));
    };
    let ring = |points: &[(f32, f32)]| {
        painter.add(Shape::closed_line(points.iter().map(|&(x, y)| at(x, y)).collect(), stroke));
    };
    let circle = |x: f32, y: f32, radius: f32| {
        painter.circle_stroke(at(x, y), square.width() * radius / 16.0, stroke);
    };
    let dot = |x: f32, y: f32| {
        painter.circle_filled(at(x, y), square.width() * 1.5 / 16.0, ink);
    };
    match icon {
        Icon::Select => {
            ring(&[(4.0, 2.0), (4.0, 13.0), (7.0, 10.2), (9.2, 14.2), (11.0, 13.2), (8.9, 9.4), (12.6, 9.0)]);
        }
        Icon::Roof => {
            ring(&[(2.5, 3.0), (13.5, 3.0), (13.5, 13.0), (7.5, 13.0), (7.5, 8.5), (2.5, 8.5)]);
            for (x, y) in [(2.5, 3.0), (13.5, 3.0), (13.5, 13.0), (2.5, 8.5)] {
                dot(x, y);
            }
        }
        Icon::Hole => {
            ring(&[(2.0, 2.5), (14.0, 2.5), (14.0, 13.5), (2.0, 13.5)]);
            ring(&[(5.5, 6.0), (10.5, 6.0), (10.5, 10.0), (5.5, 10.0)]);
        }
        Icon::Obstacle => {
            ring(&[(3.0, 3.0), (13.0, 3.0), (13.0, 13.0), (3.0, 13.0)]);
            line(&[(3.0, 3.0), (13.0, 13.0)]);
            line(&[(13.0, 3.0), (3.0, 13.0)]);
        }
        Icon::Unit => {
            line(&[(3.5, 14.0), (8.5, 14.0)]);
            line(&[(6.0, 14.0), (6.0, 4.0)]);
            line(&[(2.0, 4.0), (14.0, 4.0)]);
            line(&[(6.0, 9.0), (10.5, 4.0)]);
            line(&[(13.5, 4.0), (13.5, 11.0)]);
        }
        Icon::Measure => {
            ring(&[(1.5, 10.5), (10.5, 1.5), (14.5, 5.5), (5.5, 14.5)]);
            line(&[(4.0, 8.0), (5.6, 9.6)]);
            line(&[(6.5, 5.5), (8.8, 7.8)]);
            line(&[(9.0, 3.0), (10.6, 4.6)]);
        }
        Icon::Undo => {
            line(&[(6.0, 3.0), (2.5, 6.5), (6.0, 10.0)]);
            line(&[(2.5, 6.5), (10.0, 6.5), (12.6, 7.6), (13.5, 10.0), (12.6, 12.4), (10.0, 13.5), (7.0, 13.5)]);
        }
        Icon::Redo => {
            line(&[(10.0, 3.0), (13.5, 6.5), (10.0, 10.0)]);
            line(&[(13.5, 6.5), (6.0, 6.5), (3.4, 7.6), (2.5, 10.0), (3.4, 12.4), (6.0, 13.5), (9.0, 13.5)]);
        }
        Icon::Swap => {
            line(&[(2.0, 5.5), (13.5, 5.5)]);
            line(&[(10.5, 2.5), (13.5, 5.5), (10.5, 8.5)]);
            line(&[(14.0, 11.0), (2.5, 11.0)]);
            line(&[(5.5, 8.5), (2.5, 11.0), (5.5, 14.0)]);
        }
        Icon::Pin => {
            ring(&[(5.5, 2.0), (10.5, 2.0), (10.0, 7.0), (12.0, 9.5), (4.0, 9.5), (6.0, 7.0)]);
            line(&[(8.0, 9.5), (8.0, 14.5)]);
        }
        Icon::Down => {
            let points = vec![at(4.0, 6.0), at(12.0, 6.0), at(8.0, 11.0)];
            painter.add(Shape::convex_polygon(points, ink, Stroke::NONE));
        }
        Icon::Close => {
            line(&[(4.0, 4.0), (12.0, 12.0)]);
            line(&[(12.0, 4.0), (4.0, 12.0)]);
        }
        Icon::Blocking => {
            painter.circle_filled(at(8.0, 8.0), square.width() * 6.5 / 16.0, ink);
            let bar = Rect::from_two_pos(at(4.5, 7.0), at(11.5, 9.0));
            painter.rect_filled(bar, 0.0, painter.ctx().global_style().visuals.panel_fill);
        }
        Icon::Caution => {
            ring(&[(8.0, 2.0), (14.5, 13.5), (1.5, 13.5)]);
            line(&[(8.0, 6.0), (8.0, 9.8)]);
            painter.circle_filled(at(8.0, 11.6), square.width() * 0.9 / 16.0, ink);
        }
        Icon::Unchecked => {
            circle(8.0, 8.0, 6.0);
            line(&[(5.0, 11.0), (11.0, 5.0)]);
        }
        Icon::Meets => line(&[(3.0, 8.5), (6.5, 12.0), (13.0, 4.5)]),
        Icon::Lock => {
            ring(&[(4.0, 7.5), (12.0, 7.5), (12.0, 14.0), (4.0, 14.0)]);
            line(&[(5.8, 7.5), (5.8, 4.5), (7.0, 2.8), (9.0, 2.8), (10.2, 4.5), (10.2, 7.5)]);
        }
    }
}

/// A square of an icon inside a line of text.
pub fn inline(ui: &mut Ui, icon: Icon, ink: Color32) -> Response {
    let (rect, response) = ui.allocate_exact_size(Vec2::splat(14.0), Sense::hover());
    paint(ui.painter(), icon, rect, ink);
    response
}

/// A button with an icon and, unless empty, a word. The accessible name is `name`.
pub fn icon_button(ui: &mut Ui, palette: &Palette, icon: Icon, word: &str, name: &str, selected: bool) -> Response {
    const SIDE: f32 = 16.0;
    let font = egui::FontId::proportional(type_scale::BODY);
    let galley = ui.painter().layout_no_wrap(word.to_owned(), font, palette.ink);
    let padding = vec2(8.0, 0.0);
    let gap = if word.is_empty() { 0.0 } else { 6.0 };
    let size = vec2(padding.x * 2.0 + SIDE + gap + galley.size().x, 30.0);
    let enabled = ui.is_enabled();
    let response = ui.add(Button::selectable(selected, "").min_size(size).frame_when_inactive(selected));
    let ink = match (enabled, selected) {
        (false, _) => palette.ink_faint.gamma_multiply(0.6),
        (true, true) => palette.accent,
        (true, false) => palette.ink,
    };
    let left: Pos2 = response.rect.left_center() + vec2(padding.x, 0.0);
    paint(ui.painter(), icon, Rect::from_min_size(left - vec2(0.0, SIDE / 2.0), Vec2::splat(SIDE)), ink);
    let text_at = left + vec2(SIDE + gap, -galley.size().y / 2.0);
    ui.painter().galley_with_override_text_color(text_at, galley, ink);
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::Button, enabled, selected, name));
    response
}
