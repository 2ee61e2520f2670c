//! The card at the pointer: figures of the gesture, the fields being typed in, why something is refused. Its width is fixed.

use egui::{Align2, FontId, Painter, Pos2, Rect, Stroke, Vec2, pos2, vec2};
use gantline_plan::quantity::{self, UnitSystem};

use crate::theme::{Palette, type_scale};
use crate::tools::TypedEntry;
use crate::tools::sketch::{CardFigure, CardLine};

const WIDTH: f32 = 196.0;
const LINE: f32 = 19.0;
const PADDING: Vec2 = vec2(10.0, 7.0);

/// What stands on the card.
#[derive(Debug, Clone, Copy)]
pub struct Card<'a> {
    /// Figures of the gesture.
    pub lines: &'a [CardLine],
    /// Fields being typed in.
    pub typed: Option<&'a TypedEntry>,
    /// What has caught the pointer, or another word.
    pub word: Option<&'a str>,
    /// Why something is refused.
    pub refused: Option<&'a str>,
}

/// A line as text.
pub fn figure(line: &CardLine, units: UnitSystem) -> String {
    match &line.figure {
        CardFigure::Of(kind, value) => quantity::number(*kind, *value, units),
        CardFigure::Word(word) => word.clone(),
    }
}

/// All that stands on the card, in words.
pub fn words(card: &Card<'_>, units: UnitSystem) -> String {
    let lines = card.lines.iter().map(|line| format!("{} {}", line.name, figure(line, units)));
    lines.chain(card.refused.or(card.word).map(str::to_owned)).collect::<Vec<_>>().join(", ")
}

/// Draws the card beside a point, inside the sheet.
pub fn paint(painter: &Painter, card: &Card<'_>, beside: Pos2, units: UnitSystem, palette: &Palette) {
    let fault = card.typed.and_then(|typed| typed.fault(units)).map(|(_, fault)| fault.to_string());
    let refused = fault.as_deref().or(card.refused);
    let said = refused.or(card.word);
    let width = WIDTH - PADDING.x * 2.0;
    let ink = if refused.is_some() { palette.blocking } else { palette.ink_soft };
    let said = said.map(|words| painter.layout(words.to_owned(), FontId::proportional(type_scale::SMALL), ink, width));
    let rows = card.lines.len().max(card.typed.map_or(0, |typed| typed.fields().len()));
    let said_height = said.as_ref().map_or(0.0, |galley| galley.size().y + 3.0);
    let height = rows as f32 * LINE + said_height + PADDING.y * 2.0;
    if rows == 0 && said.is_none() {
        return;
    }
    let rect = placed(beside, vec2(WIDTH, height), painter.clip_rect());
    painter.rect(rect, 4.0, palette.panel, Stroke::new(1.0, palette.hairline), egui::StrokeKind::Inside);
    let mut at = rect.min + PADDING;
    for index in 0..rows {
        row(painter, card, index, Rect::from_min_size(at, vec2(width, LINE)), units, palette);
        at.y += LINE;
    }
    if let Some(said) = said {
        painter.galley(pos2(at.x, at.y + 2.0), said, ink);
    }
}

/// One row: what is typed wins over the figure of the same name.
fn row(painter: &Painter, card: &Card<'_>, index: usize, rect: Rect, units: UnitSystem, palette: &Palette) {
    let font = FontId::proportional(type_scale::BODY);
    let typed = card.typed.and_then(|typed| typed.fields().get(index).map(|field| (typed, field)));
    let line = match typed {
        Some((_, field)) => card.lines.iter().find(|line| line.name == field.asked.name),
        None => card.lines.get(index),
    };
    let name = typed.map_or_else(|| line.map_or("", |line| line.name), |(_, field)| field.asked.name);
    painter.text(rect.left_center(), Align2::LEFT_CENTER, name, font.clone(), palette.ink_soft);
    if let Some((entry, field)) = typed {
        let active = entry.active() == index;
        let field_rect = Rect::from_min_max(pos2(rect.max.x - 104.0, rect.min.y + 1.0), rect.max - vec2(0.0, 1.0));
        let edge = if active { palette.accent } else { palette.hairline };
        painter.rect(field_rect, 2.0, palette.field, Stroke::new(1.0, edge), egui::StrokeKind::Inside);
        if active || !field.text.is_empty() {
            let text = if active { format!("{}|", field.text) } else { field.text.clone() };
            painter.text(field_rect.right_center() - vec2(5.0, 0.0), Align2::RIGHT_CENTER, text, font, palette.ink);
            return;
        }
        if let Some(line) = line {
            let shown = figure(line, units);
            painter.text(
                field_rect.right_center() - vec2(5.0, 0.0),
                Align2::RIGHT_CENTER,
                shown,
                font,
                palette.ink_faint,
            );
        }
        return;
    }
    if let Some(line) = line {
        painter.text(rect.right_center(), Align2::RIGHT_CENTER, figure(line, units), font, palette.ink);
    }
}

/// To the lower right of the pointer, or where there is room.
fn placed(beside: Pos2, size: Vec2, room: Rect) -> Rect {
    const AWAY: f32 = 20.0;
    let right = beside.x + AWAY + size.x <= room.max.x;
    // In the lower half above the pointer: figures of a unit on a lower edge stand below it.
    let below = beside.y <= room.center().y;
    let x = if right { beside.x + AWAY } else { beside.x - AWAY - size.x };
    let y = if below { beside.y + AWAY } else { beside.y - AWAY - size.y };
    Rect::from_min_size(pos2(x.max(room.min.x), y.max(room.min.y)), size)
}
