//! Blocks with words that anyone may have typed: what no printer can print is taken out, nothing is left without a name.

use std::sync::Arc;

use gantline_drawing::Drawing;

use crate::paper::formula::parse;
use crate::paper::{Block, Cell, Column, Formula, Look, Row, Table};

/// So many letters of a name stand in a heading; a heading is one line.
const IN_HEADING: usize = 90;
/// So many letters of a tag stand in a list.
const IN_TAG: usize = 60;
/// So many letters of any words are printed.
const IN_WORDS: usize = 4_000;

/// Words without signs that steer a printer or turn the order of letters; longer ones are cut and say so.
pub fn clean(words: &str) -> String {
    cut(words, IN_WORDS)
}

fn cut(words: &str, most: usize) -> String {
    // Signs without a form of their own: zero-width ones, marks of direction, what is no letter at all.
    let is_unseen = |letter: char| {
        matches!(letter,
            '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}'
            | '\u{fff0}'..='\u{ffff}' | '\u{e000}'..='\u{f8ff}')
    };
    let seen = words.chars().filter(|letter| !is_unseen(*letter));
    let spaced: String = seen.map(|letter| if letter.is_control() { ' ' } else { letter }).collect();
    let spaced = spaced.trim();
    if spaced.chars().count() <= most {
        return spaced.to_owned();
    }
    let kept: String = spaced.chars().take(most).collect();
    format!("{kept}…")
}

/// A name, or words that say that there is none.
pub fn named(name: &str) -> String {
    let name = clean(name);
    if name.is_empty() { "without a name".to_owned() } else { name }
}

/// The tag of a unit: as short as tags are.
pub fn tag(words: &str) -> String {
    cut(words, IN_TAG)
}

/// A chapter.
pub fn chapter(words: &str) -> Block {
    Block::Heading { level: 1, words: cut(words, IN_HEADING) }
}

/// A section of a chapter.
pub fn section(words: &str) -> Block {
    Block::Heading { level: 2, words: cut(words, IN_HEADING) }
}

/// A part of a section.
pub fn part(words: &str) -> Block {
    Block::Heading { level: 3, words: cut(words, IN_HEADING) }
}

/// Plain words.
pub fn paragraph(words: &str) -> Block {
    Block::Paragraph { words: clean(words), look: Look::Plain }
}

/// Small words: sources, remarks.
pub fn remark(words: &str) -> Block {
    Block::Paragraph { words: clean(words), look: Look::Remark }
}

/// Words that nobody may pass over.
pub fn caution(words: &str) -> Block {
    Block::Paragraph { words: clean(words), look: Look::Caution }
}

/// An item of a list.
pub fn item(words: &str) -> Block {
    Block::Paragraph { words: clean(words), look: Look::Item }
}

/// A formula in a line of its own, with its source.
pub fn formula(words: &str, source: &str) -> Block {
    Block::Formula { formula: formula_of(&clean(words)), source: clean(source) }
}

/// A formula as it is set. The one place where formulas of the report are made from their text.
pub fn formula_of(text: &str) -> Formula {
    parse(text)
}

/// A symbol in a cell.
pub fn symbol(text: &str) -> Cell {
    Cell::Formula(formula_of(&clean(text)))
}

/// Words in a cell.
pub fn words(text: &str) -> Cell {
    Cell::Words(clean(text))
}

/// A picture.
pub fn picture(drawing: &Arc<Drawing>, caption: &str) -> Block {
    Block::Picture { drawing: Arc::clone(drawing), caption: clean(caption) }
}

/// A column of words with its share of the width.
pub fn told(head: &str, share: f64) -> Column {
    Column { head: head.to_owned(), share, is_figures: false }
}

/// A column of figures with its share of the width.
pub fn counted(head: &str, share: f64) -> Column {
    Column { head: head.to_owned(), share, is_figures: true }
}

/// A plain row.
pub fn row(cells: Vec<Cell>) -> Row {
    Row { cells, is_strong: false }
}

/// A row that stands out.
pub fn strong(cells: Vec<Cell>) -> Row {
    Row { cells, is_strong: true }
}

/// A table; nothing where there are no rows.
pub fn table(columns: Vec<Column>, rows: Vec<Row>) -> Option<Block> {
    (!rows.is_empty()).then_some(Block::Table(Table { columns, rows }))
}

/// Two columns: names, and what they say.
pub fn facts(facts: Vec<(&str, String)>) -> Option<Block> {
    let rows = facts.into_iter().map(|(name, said)| row(vec![words(name), words(&said)]));
    table(vec![told("", 1.0), told("", 2.4)], rows.collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_steers_a_printer_is_taken_out_and_letters_stay() {
        assert_eq!(clean("B\u{0}-\u{1b}07\r\n"), "B - 07");
        assert_eq!(clean("\u{202e}live\u{200b}"), "live");
        assert_eq!(clean("Dach Süd 屋上"), "Dach Süd 屋上");
        assert_eq!(named(" \t"), "without a name");
    }

    #[test]
    fn endless_words_are_cut_and_say_so() {
        let Block::Heading { words, .. } = section(&"x".repeat(10_000)) else { panic!("a heading was made") };
        assert_eq!(words.chars().count(), IN_HEADING + 1);
        assert!(words.ends_with('…'));
    }
}
