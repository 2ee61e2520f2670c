//! Words in the shipped typeface. Letters that it lacks are printed by their nearest kin or by a question mark: no empty box
//! stands where a sign was meant.

use std::ops::Range;

use gantline_drawing::letter_width::Face;
use gantline_exchange::palette::Color;
use gantline_exchange::png::FONTS;
use glam::DVec2;
use krilla::geom::{Point, Transform};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use rustybuzz::{Direction, UnicodeBuffer};

use crate::ink;

/// What is printed for a letter that neither the typeface nor a kin of it has.
const UNKNOWN: char = '?';

/// A line of words.
pub struct Line<'a> {
    /// The words.
    pub words: &'a str,
    /// Cut of the typeface.
    pub face: Face,
    /// The em, points.
    pub size_pt: f64,
    /// Color.
    pub ink: Color,
    /// Turn, counter-clockwise, rad.
    pub turn_rad: f64,
    /// Which part of its width lies before its place: 0 begins there, 0.5 is centered, 1 ends there.
    pub begins: f64,
    /// How far below its place its letters stand, points.
    pub drop_pt: f64,
}

/// The cuts of the typeface.
pub struct Faces {
    regular: Cut,
    semi_bold: Cut,
    condensed: Cut,
}

struct Cut {
    font: Font,
    shaper: rustybuzz::Face<'static>,
}

impl Cut {
    fn read(bytes: &'static [u8], name: &str) -> Result<Self, String> {
        let font = Font::new(bytes.into(), 0);
        let shaper = rustybuzz::Face::from_slice(bytes, 0);
        match (font, shaper) {
            (Some(font), Some(shaper)) => Ok(Self { font, shaper }),
            _ => Err(format!("the {name} cut of the typeface can't be read")),
        }
    }
}

impl Faces {
    /// Reads the cuts.
    pub fn read() -> Result<Self, String> {
        let [regular, semi_bold, condensed] = FONTS;
        Ok(Self {
            regular: Cut::read(regular, "regular")?,
            semi_bold: Cut::read(semi_bold, "semibold")?,
            condensed: Cut::read(condensed, "condensed")?,
        })
    }

    fn cut(&self, face: Face) -> &Cut {
        match face {
            Face::Regular => &self.regular,
            Face::SemiBold => &self.semi_bold,
            Face::Condensed => &self.condensed,
        }
    }

    /// Writes a line with its place here, points from the upper left corner of the page.
    pub fn write(&self, surface: &mut Surface<'_>, at_pt: DVec2, line: &Line<'_>) {
        let sound = at_pt.is_finite() && line.size_pt.is_finite() && line.size_pt > 0.0 && line.turn_rad.is_finite();
        let cut = self.cut(line.face);
        let words: String = line.words.chars().filter_map(|letter| printed(&cut.shaper, letter)).collect();
        if !sound || words.trim().is_empty() {
            return;
        }
        let glyphs = shaped(&cut.shaper, &words);
        let width_pt = glyphs.iter().map(|glyph| f64::from(glyph.x_advance)).sum::<f64>() * line.size_pt;
        let begins = Point::from_xy((-width_pt * line.begins) as f32, line.drop_pt as f32);
        let (sin, cos) = line.turn_rad.sin_cos();
        let (sin, cos) = (sin as f32, cos as f32);
        // Counter-clockwise on paper is clockwise where y points down.
        surface.push_transform(&Transform::from_row(cos, -sin, sin, cos, at_pt.x as f32, at_pt.y as f32));
        surface.set_stroke(None);
        surface.set_fill(Some(ink::solid(line.ink)));
        surface.draw_glyphs(begins, &glyphs, cut.font.clone(), &words, line.size_pt as f32, false);
        surface.pop();
    }
}

/// The letter that is printed for a letter; none for what is no letter.
fn printed(face: &rustybuzz::Face<'_>, letter: char) -> Option<char> {
    let has = |letter: &char| face.glyph_index(*letter).is_some_and(|glyph| glyph.0 != 0);
    if letter == '\t' {
        return Some(' ');
    }
    if letter.is_control() {
        return None;
    }
    Some([letter, kin(letter)].into_iter().find(has).unwrap_or(UNKNOWN))
}

/// The nearest sign that the typeface has, for signs of drawings and formulas that it lacks.
const fn kin(letter: char) -> char {
    match letter {
        '⌀' | '∅' => 'Ø',
        '⇒' | '⟶' => '→',
        '⇐' | '⟵' => '←',
        '≦' | '⩽' => '≤',
        '≧' | '⩾' => '≥',
        '⋅' | '∙' | '◦' => '·',
        '∥' | '‖' => '|',
        '≪' => '<',
        '≫' => '>',
        '✗' | '✕' => '×',
        '□' | '▢' | '■' => '•',
        '\u{2010}' | '\u{2011}' | '\u{2012}' => '-',
        '\u{2009}' | '\u{200a}' | '\u{202f}' | '\u{2007}' | '\u{2002}' | '\u{2003}' | '\u{3000}' => ' ',
        other => other,
    }
}

/// Glyphs in their order; advances in ems.
fn shaped(face: &rustybuzz::Face<'_>, words: &str) -> Vec<KrillaGlyph> {
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(words);
    buffer.set_direction(Direction::LeftToRight);
    buffer.guess_segment_properties();
    let shaped = rustybuzz::shape(face, &[], buffer);
    let em = face.units_per_em() as f32;
    let starts: Vec<usize> = shaped.glyph_infos().iter().map(|info| info.cluster as usize).collect();
    let glyphs = shaped.glyph_infos().iter().zip(shaped.glyph_positions()).enumerate();
    let made = glyphs.map(|(index, (info, position))| {
        let part = letters_of(&starts, index, words.len());
        let in_em = |units: i32| units as f32 / em;
        let (advance, lift) = (in_em(position.x_advance), in_em(position.y_advance));
        let (aside, up) = (in_em(position.x_offset), in_em(position.y_offset));
        KrillaGlyph::new(GlyphId::new(info.glyph_id), advance, aside, up, lift, part, None)
    });
    made.collect()
}

/// Which bytes of the words a glyph stands for: up to where the next group of glyphs begins.
fn letters_of(starts: &[usize], index: usize, length: usize) -> Range<usize> {
    let start = starts.get(index).copied().unwrap_or(length);
    let end = starts.iter().skip(index).find(|&&other| other > start).copied().unwrap_or(length);
    start..end
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Signs that drawings, findings and formulas are written with.
    const WRITTEN: &str = "√ψφχωλμπρστΔΣΩαβγδεηθκν ≤≥≠≈∞±×÷·−–—°′″²³½¼ →←↑↓∂∑∫ℓ µ§•…“”‘’ éüßÅøñ⌀⇒⋅‖";

    #[test]
    fn no_sign_that_is_written_leaves_an_empty_box() {
        let faces = Faces::read().unwrap();
        for cut in [&faces.regular, &faces.semi_bold, &faces.condensed] {
            for letter in WRITTEN.chars() {
                let printed = printed(&cut.shaper, letter).unwrap();
                assert_ne!(printed, UNKNOWN, "{letter}");
                assert!(shaped(&cut.shaper, &printed.to_string()).iter().all(|glyph| glyph.glyph_id.to_u32() != 0));
            }
        }
    }

    #[test]
    fn letters_of_no_shipped_typeface_are_question_marks_and_controls_are_nothing() {
        let faces = Faces::read().unwrap();
        let print = |letter| printed(&faces.regular.shaper, letter);
        assert_eq!([print('漢'), print('A'), print('\u{7}'), print('⌀')], [Some('?'), Some('A'), None, Some('Ø')]);
    }

    #[test]
    fn every_byte_of_the_words_belongs_to_a_glyph() {
        let faces = Faces::read().unwrap();
        for words in ["office fi", "aé√ψ b", "1 234.5 kN"] {
            let glyphs = shaped(&faces.regular.shaper, words);
            let mut next = 0;
            for glyph in &glyphs {
                assert!(glyph.text_range.start <= next, "{words}");
                next = next.max(glyph.text_range.end);
            }
            assert_eq!(next, words.len());
        }
    }
}
