//! Paints the handles of selected things.

use egui::{Painter, Pos2, Rect, Shape, Stroke, Vec2, vec2};

use crate::theme::Palette;
use crate::tools::handles::Placed;
use crate::tools::{Handle, Hit};

/// Draws one handle, filled when the pointer is on it.
pub fn paint(painter: &Painter, placed: &Placed, at: Pos2, hot: bool, palette: &Palette) {
    let stroke = Stroke::new(1.6, palette.accent);
    let ground = if hot { palette.accent } else { palette.sheet };
    // The screen's y points down.
    let toward = vec2(placed.toward.x as f32, -placed.toward.y as f32).normalized();
    let across = vec2(-toward.y, toward.x);
    match placed.hit {
        Hit::Handle(Handle::Slew(_)) => {
            painter.circle(at, 6.0, ground, stroke);
            for sense in [-1.0_f32, 1.0] {
                let arc = (2..=7).map(|step| {
                    let turn = egui::emath::Rot2::from_angle(sense * step as f32 * 0.06);
                    let far = at - toward * 40.0;
                    far + turn * (toward * 40.0)
                });
                painter.add(Shape::line(arc.collect(), Stroke::new(1.6, palette.accent)));
            }
        }
        Hit::Handle(Handle::Setback(_)) => {
            let ends = [at - across * 11.0, at + across * 11.0];
            painter.line_segment(ends, Stroke::new(if hot { 6.0 } else { 4.0 }, palette.accent));
        }
        Hit::Handle(Handle::Copy(_)) => {
            let square = Rect::from_center_size(at, Vec2::splat(12.0));
            painter.rect(square, 1.0, ground, stroke, egui::StrokeKind::Middle);
            let ink = if hot { palette.on_accent } else { palette.accent };
            painter.hline((at.x - 3.5)..=(at.x + 3.5), at.y, (1.4, ink));
            painter.vline(at.x, (at.y - 3.5)..=(at.y + 3.5), (1.4, ink));
        }
        Hit::Handle(Handle::NewCorner(_)) => {
            painter.circle(at, 3.5, ground, Stroke::new(1.2, palette.accent));
        }
        Hit::Corner(_) | Hit::Handle(Handle::ObstacleCorner(..)) => {
            let square = Rect::from_center_size(at, Vec2::splat(9.0));
            painter.rect(square, 0.0, ground, stroke, egui::StrokeKind::Middle);
        }
        Hit::Unit(_) | Hit::Edge(_) | Hit::Obstacle(_) | Hit::Roof(_) | Hit::Underlay(_) => {}
    }
}
