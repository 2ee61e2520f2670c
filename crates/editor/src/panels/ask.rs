//! Questions that must be answered before anything else.

use egui::{Id, Modal, RichText, Ui};

use crate::intent::{Answer, Intent};
use crate::session::Question;
use crate::sight::Look;
use crate::theme::type_scale;

/// Shows a question.
pub fn show(ui: &mut Ui, look: Look<'_>, question: &Question, intents: &mut Vec<Intent>) {
    let (heading, words, answers) = texts(question);
    let frame = egui::Frame::popup(&ui.ctx().global_style()).inner_margin(egui::Margin::same(20));
    let shown = Modal::new(Id::unique("question")).frame(frame).show(ui.ctx(), |ui| {
        ui.set_width(430.0);
        ui.label(RichText::new(heading).size(type_scale::HEADING).family(type_scale::semibold()));
        ui.add_space(6.0);
        ui.label(RichText::new(words).color(look.palette.ink_soft));
        ui.add_space(14.0);
        ui.horizontal(|ui| {
            for (index, (text, answer)) in answers.iter().enumerate() {
                let response = ui.button(*text);
                if index == 0 && ui.memory(|memory| memory.focused().is_none()) {
                    response.request_focus();
                }
                if response.clicked() {
                    intents.push(Intent::Answer(*answer));
                }
            }
        });
    });
    if shown.should_close() {
        intents.push(Intent::Answer(Answer::Cancel));
    }
}

type Texts = (&'static str, String, Vec<(&'static str, Answer)>);

fn texts(question: &Question) -> Texts {
    match question {
        Question::Unsaved(_) => (
            "Save the changes first?",
            "The plan has changes that are not saved.".to_owned(),
            vec![("Save", Answer::Save), ("Don't save", Answer::Discard), ("Cancel", Answer::Cancel)],
        ),
        Question::ChangedOnDisk(path) => (
            "Someone else changed this file",
            format!(
                "{} was written by someone else since it was opened here. Overwriting keeps that version as the \
                 previous one.",
                path.display()
            ),
            vec![("Save elsewhere…", Answer::Save), ("Overwrite", Answer::Yes), ("Cancel", Answer::Cancel)],
        ),
        Question::DeleteRoof { name, units, obstacles } => (
            "Delete this roof?",
            format!(
                "{name} goes with {units} units and {obstacles} obstacles that stand on it. It is one step of undo."
            ),
            vec![("Cancel", Answer::Cancel), ("Delete", Answer::Yes)],
        ),
        Question::Edit => (
            "Edit this plan?",
            "It was opened to be looked at. This is asked once.".to_owned(),
            vec![("Edit", Answer::Yes), ("Cancel", Answer::Cancel)],
        ),
        Question::Recover { of, .. } => (
            "Work of an earlier run was found",
            format!("The program ended without saving its work on {of}. Open the rescued work instead of the file?"),
            vec![("Open rescued work", Answer::Yes), ("Keep the file", Answer::Cancel), ("Drop it", Answer::Discard)],
        ),
    }
}
