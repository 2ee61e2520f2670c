//! The title block: who, what, revision, basis, caution, content hash, the sheet's number and the scale that it prints at.

use glam::DVec2;

use super::given::Given;
use super::lettering::{LABEL, NUMBER, STRONG, Style, TEXT, rule};
use super::paper_size::Area;
use crate::documents::imprint::CAUTION;
use crate::paper::OnPage;

/// Width of the labels, mm.
const LABELS_MM: f64 = 24.0;
/// Rows of the imprint that stand in the table of revisions.
const OF_REVISION: [&str; 3] = ["Revision", "Date", "Remark"];
/// Columns of revision and date, mm.
const REVISION_MM: [f64; 2] = [15.0, 22.0];

/// The title block at the bottom of the strip, and its upper end, mm.
pub fn title_block(
    given: &Given<'_>,
    inside: Area,
    (number, of_all): (&str, &str),
    scale: Option<&str>,
) -> (Vec<OnPage>, f64) {
    let mut block = Block { left: inside.min_mm.x, width: inside.size_mm().x, y: inside.min_mm.y, parts: Vec::new() };
    let size = given.size;
    let prints = match scale {
        Some(words) => format!("Prints at {words} on {}", size.name()),
        None => format!("Prints on {}", size.name()),
    };
    let (low, right) = (block.y, inside.max_mm.x);
    block.parts.push(vec![
        NUMBER.at(number, DVec2::new(block.left, low)),
        STRONG.ending_at(prints, DVec2::new(right, low + TEXT.line_mm())),
        TEXT.ending_at(of_all, DVec2::new(right, low)),
    ]);
    block.y += NUMBER.size_mm;
    block.rule();
    block.columns(&[(0.0, TEXT, CAUTION)]);
    block.rule();
    for (label, text) in given.imprint.rows().iter().rev().filter(|(label, _)| !OF_REVISION.contains(label)) {
        if !text.is_empty() {
            block.columns(&[(0.0, LABEL, label), (LABELS_MM, TEXT, text)]);
        }
    }
    block.rule();
    block.revisions(given);
    block.rule();
    let top = block.y;
    // As people read, and as text is found: from the top down.
    (block.parts.into_iter().rev().flatten().collect(), top)
}

/// Grows upward, so that the number stands in the corner where people look for it.
struct Block {
    left: f64,
    width: f64,
    y: f64,
    parts: Vec<Vec<OnPage>>,
}

impl Block {
    fn rule(&mut self) {
        self.parts.push(vec![rule(DVec2::new(self.left, self.y + 0.6), self.width, 0.18)]);
        self.y += 2.4;
    }

    /// Texts side by side, each from its distance from the left to where the next begins; all begin on the same line.
    fn columns(&mut self, columns: &[(f64, Style, &str)]) {
        let end = |index: usize| columns.get(index + 1).map_or(self.width, |(next, _, _)| next - 1.5);
        let in_lines = columns.iter().enumerate();
        let in_lines = in_lines.map(|(index, (from, style, words))| style.lines(words, end(index) - from));
        let in_lines: Vec<Vec<String>> = in_lines.collect();
        let count = in_lines.iter().map(Vec::len).max().unwrap_or(0).max(1) as f64;
        let top = self.y + TEXT.line_mm() * (count - 1.0);
        let mut part = Vec::new();
        for (&(from, style, _), lines) in columns.iter().zip(in_lines) {
            for (index, line) in lines.into_iter().enumerate() {
                let y = top - TEXT.line_mm() * index as f64;
                part.push(style.at(line, DVec2::new(self.left + from, y)));
            }
        }
        self.parts.push(part);
        self.y += TEXT.line_mm() * count;
    }

    /// The plan has one revision today: its row.
    fn revisions(&mut self, given: &Given<'_>) {
        let plan = &given.imprint.plan;
        let or = |text: &str| if text.is_empty() { "not entered".to_owned() } else { text.to_owned() };
        let [date, remark] = [REVISION_MM[0], REVISION_MM[0] + REVISION_MM[1]];
        let (revision, entered) = (or(&plan.revision), or(&given.imprint.date));
        self.columns(&[(0.0, TEXT, &revision), (date, TEXT, &entered), (remark, TEXT, &plan.remark)]);
        self.columns(&[(0.0, STRONG, "Rev."), (date, STRONG, "Date"), (remark, STRONG, "Remark")]);
    }
}
