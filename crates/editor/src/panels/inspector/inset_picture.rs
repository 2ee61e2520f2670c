//! A small picture that names what the fields of a parapet and a facade mean; it is no drawing of this building.

use egui::{Align2, FontId, Painter, Pos2, Sense, Shape, Stroke, Ui, pos2, vec2};

use crate::theme::{Palette, type_scale};

/// Shows it.
pub fn inset_picture(ui: &mut Ui, palette: &Palette) {
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 148.0), Sense::hover());
    let left = rect.min.x + (rect.width() - 330.0).max(0.0) / 2.0;
    let at = |x: f32, y: f32| pos2(left + x, rect.min.y + y);
    let painter = ui.painter();
    let cut = Stroke::new(1.6, palette.ink);
    let filled = |points: &[Pos2], ground| {
        painter.add(Shape::convex_polygon(points.to_vec(), ground, cut));
    };
    let material = palette.cut.gamma_multiply(0.16);
    // The slab ends at the outline; the parapet stands behind it; the facade's face hangs in front.
    filled(&[at(40.0, 100.0), at(212.0, 100.0), at(212.0, 124.0), at(40.0, 124.0)], material);
    filled(&[at(154.0, 34.0), at(184.0, 34.0), at(184.0, 100.0), at(154.0, 100.0)], material);
    painter.line_segment([at(40.0, 88.0), at(154.0, 88.0)], Stroke::new(1.0, palette.ink_soft));
    painter.line_segment([at(240.0, 40.0), at(240.0, 146.0)], Stroke::new(1.4, palette.ink));
    dashed(painter, at(212.0, 18.0), at(212.0, 146.0), Stroke::new(1.0, palette.accent));
    let words = Words { painter, palette };
    words.height(at(138.0, 100.0), at(138.0, 34.0), "height");
    words.width(at(154.0, 26.0), at(184.0, 26.0), "thickness", Align2::RIGHT_BOTTOM);
    words.width(at(184.0, 66.0), at(212.0, 66.0), "inset", Align2::CENTER_BOTTOM);
    words.width(at(212.0, 136.0), at(240.0, 136.0), "offset", Align2::LEFT_BOTTOM);
    words.at(at(207.0, 8.0), Align2::RIGHT_CENTER, "outline = edge of structural slab");
    words.at(at(248.0, 60.0), Align2::LEFT_CENTER, "facade");
    words.at(at(44.0, 80.0), Align2::LEFT_CENTER, "finish");
    words.at(at(44.0, 112.0), Align2::LEFT_CENTER, "structural slab");
    let spoken = "Picture: height is measured from the structural slab, thickness through the parapet, inset from the \
                  outline back to the parapet's outer face, offset from the outline out to the facade's face.";
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, spoken));
}

struct Words<'a> {
    painter: &'a Painter,
    palette: &'a Palette,
}

impl Words<'_> {
    fn at(&self, at: Pos2, align: Align2, words: &str) {
        self.painter.text(at, align, words, FontId::proportional(type_scale::SMALL), self.palette.ink_soft);
    }

    fn dimension(&self, from: Pos2, to: Pos2) {
        let stroke = Stroke::new(1.0, self.palette.ink_soft);
        self.painter.line_segment([from, to], stroke);
        for end in [from, to] {
            self.painter.line_segment([end - vec2(3.0, -3.0), end + vec2(3.0, -3.0)], stroke);
        }
    }

    fn width(&self, from: Pos2, to: Pos2, words: &str, align: Align2) {
        self.dimension(from, to);
        let place = match align.x() {
            egui::Align::Min => to + vec2(6.0, 6.0),
            egui::Align::Center => from.lerp(to, 0.5) - vec2(0.0, 4.0),
            egui::Align::Max => from + vec2(-6.0, 6.0),
        };
        self.at(place, align, words);
    }

    fn height(&self, from: Pos2, to: Pos2, words: &str) {
        self.dimension(from, to);
        self.at(from.lerp(to, 0.5) - vec2(6.0, 0.0), Align2::RIGHT_CENTER, words);
    }
}

fn dashed(painter: &Painter, from: Pos2, to: Pos2, stroke: Stroke) {
    painter.extend(Shape::dashed_line(&[from, to], stroke, 6.0, 4.0));
}
