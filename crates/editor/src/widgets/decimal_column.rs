//! Columns of figures: right-aligned with fixed decimals and equally wide digits, so that they stand on the decimal point.

use egui::{Align2, Color32, FontId, Painter, Rect, Response, Sense, Ui, pos2, vec2};
use gantline_drawing::letter_width::Face;

use crate::theme::{Palette, fonts, type_scale};

/// Columns of equal width behind a column of names.
#[derive(Debug, Clone, Copy)]
pub struct DecimalColumns {
    /// Width of the column of names.
    pub names: f32,
    /// How many columns of figures.
    pub count: usize,
    /// Height of a row.
    pub row: f32,
}

/// A figure in a column.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Its digits.
    pub text: String,
    /// Whether it is the one that the row is about.
    pub strong: bool,
}

impl DecimalColumns {
    /// The names over the columns, and below them the units of groups of columns, each with how many it spans.
    pub fn heading(&self, ui: &mut Ui, palette: &Palette, names: &[&str], units: &[(&str, usize)]) {
        let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 2.0 * 15.0 + 3.0), Sense::hover());
        let font = FontId::proportional(type_scale::SMALL);
        let painter = ui.painter();
        for (index, name) in names.iter().enumerate() {
            let at = self.right_of(rect, index);
            painter.text(pos2(at.x, rect.min.y), Align2::RIGHT_TOP, name, font.clone(), palette.ink_soft);
        }
        let mut before = 0;
        for (unit, span) in units {
            let at = self.right_of(rect, before + span - 1);
            painter.text(pos2(at.x, rect.min.y + 15.0), Align2::RIGHT_TOP, unit, font.clone(), palette.ink_faint);
            before += span;
        }
        painter.hline(rect.x_range(), rect.max.y, (1.0, palette.hairline));
    }

    /// One row; the accessible name is the row's, its value all figures.
    pub fn row(&self, ui: &mut Ui, palette: &Palette, name: &str, figures: &[Figure], spoken: &str) -> Response {
        let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), self.row), Sense::hover());
        if response.hovered() {
            ui.painter().rect_filled(rect.expand2(vec2(4.0, 0.0)), 2, palette.hover);
        }
        let painter = ui.painter();
        painter.text(
            rect.left_center(),
            Align2::LEFT_CENTER,
            name,
            FontId::proportional(type_scale::SMALL),
            palette.ink_soft,
        );
        for (index, figure) in figures.iter().enumerate() {
            let (face, ink) =
                if figure.strong { (Face::SemiBold, palette.ink) } else { (Face::Regular, palette.ink_soft) };
            self.figure(painter, rect, index, figure, face, ink);
        }
        response.widget_info(|| {
            // A row and not a label: of a label, name and value would be the same.
            let mut info = egui::WidgetInfo::labeled(egui::Role::Row, true, name);
            info.current_text_value = Some(spoken.to_owned());
            info
        });
        response
    }

    fn figure(&self, painter: &Painter, rect: Rect, index: usize, figure: &Figure, face: Face, ink: Color32) {
        let at = self.right_of(rect, index);
        let width = self.width(rect) - 4.0;
        let galley = painter.layout_no_wrap(figure.text.clone(), fonts::of(face, type_scale::SMALL), ink);
        // A figure wider than its column is set narrower rather than over its neighbor.
        let galley = if galley.size().x > width {
            painter.layout_no_wrap(figure.text.clone(), fonts::of(Face::Condensed, type_scale::SMALL), ink)
        } else {
            galley
        };
        painter.galley(pos2(at.x, rect.center().y) - vec2(galley.size().x, galley.size().y / 2.0), galley, ink);
    }

    fn width(&self, rect: Rect) -> f32 {
        (rect.width() - self.names) / self.count.max(1) as f32
    }

    fn right_of(&self, rect: Rect, index: usize) -> egui::Pos2 {
        rect.left_center() + vec2(self.names + self.width(rect) * (index + 1) as f32, 0.0)
    }
}
