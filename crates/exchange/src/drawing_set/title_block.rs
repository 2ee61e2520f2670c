//! The title block: who, what, revision, basis, caution, content hash, the sheet's number and the scale that it prints at.

use glam::DVec2;

use super::given::Given;
use super::lettering::{LABEL, NUMBER, STRONG, TEXT, rule};
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
    let mut block = Block { left: inside.min_mm.x, width: inside.size_mm().x, y: inside.min_mm.y, things: Vec::new() };
    let size = given.size;
    let prints = match scale {
        Some(words) => format!("Prints at {words} on {}", size.name()),
        None => format!("Prints on {}", size.name()),
    };
    block.things.push(NUMBER.at(number, DVec2::new(block.left, block.y)));
    let right = inside.max_mm.x;
    block.things.push(TEXT.ending_at(of_all, DVec2::new(right, block.y)));
    block.things.push(STRONG.ending_at(prints, DVec2::new(right, block.y + TEXT.line_mm())));
    block.y += NUMBER.size_mm;
    block.rule();
    block.paragraph(CAUTION);
    block.rule();
    for (label, text) in given.imprint.rows().iter().rev().filter(|(label, _)| !OF_REVISION.contains(label)) {
        if !text.is_empty() {
            block.labelled(label, text);
        }
    }
    block.rule();
    block.revisions(given);
    block.rule();
    (block.things, block.y)
}

/// Grows upward, so that the number stands in the corner where people look for it.
struct Block {
    left: f64,
    width: f64,
    y: f64,
    things: Vec<OnPage>,
}

impl Block {
    fn rule(&mut self) {
        self.things.push(rule(DVec2::new(self.left, self.y + 0.6), self.width, 0.18));
        self.y += 2.4;
    }

    fn paragraph(&mut self, words: &str) {
        for line in TEXT.lines(words, self.width).into_iter().rev() {
            self.things.push(TEXT.at(line, DVec2::new(self.left, self.y)));
            self.y += TEXT.line_mm();
        }
    }

    /// A label beside its text; both begin on the same line.
    fn labelled(&mut self, label: &str, text: &str) {
        let labels = LABEL.lines(label, LABELS_MM - 2.0);
        let lines = TEXT.lines(text, self.width - LABELS_MM);
        let count = labels.len().max(lines.len()).max(1);
        let top = self.y + TEXT.line_mm() * (count - 1) as f64;
        for (column, style, words) in [(0.0, LABEL, labels), (LABELS_MM, TEXT, lines)] {
            for (index, line) in words.into_iter().enumerate() {
                let y = top - TEXT.line_mm() * index as f64;
                self.things.push(style.at(line, DVec2::new(self.left + column, y)));
            }
        }
        self.y += TEXT.line_mm() * count as f64;
    }

    /// The plan has one revision today: its row.
    fn revisions(&mut self, given: &Given<'_>) {
        let plan = &given.imprint.plan;
        let or = |text: &str| if text.is_empty() { "not entered".to_owned() } else { text.to_owned() };
        let [revision_mm, date_mm] = REVISION_MM;
        let remark = TEXT.lines(&plan.remark, self.width - revision_mm - date_mm);
        self.y += TEXT.line_mm() * (remark.len().max(1) - 1) as f64;
        let columns = [self.left, self.left + revision_mm, self.left + revision_mm + date_mm];
        let [first, second, third] = columns.map(|x| DVec2::new(x, self.y));
        self.things.push(TEXT.at(or(&plan.revision), first));
        self.things.push(TEXT.at(or(&given.imprint.date), second));
        for (index, line) in remark.into_iter().enumerate() {
            self.things.push(TEXT.at(line, third - DVec2::Y * TEXT.line_mm() * index as f64));
        }
        self.y += TEXT.line_mm();
        for (head, x) in ["Rev.", "Date", "Remark"].into_iter().zip(columns) {
            self.things.push(STRONG.at(head, DVec2::new(x, self.y)));
        }
        self.y += TEXT.line_mm();
    }
}
