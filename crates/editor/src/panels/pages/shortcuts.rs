//! All keys, made from the table of commands, and what the program's words mean.

use egui::{Grid, RichText, Ui};

use crate::command::TABLE;
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::section;

/// What pointer and keys do that no command of the table has.
const GESTURES: &[(&str, &str)] = &[
    ("Click", "selects; with Shift adds or removes; with Alt, or again, the thing below"),
    ("Drag", "moves a unit along its edge and inward; on the ground it draws a box"),
    ("Box to the right, to the left", "takes what lies wholly inside; what it touches"),
    ("Wheel, pinch", "zooms at the pointer"),
    ("Middle drag, Space and drag", "pans"),
    ("Alt while drawing or dragging", "no snapping"),
    ("Shift while drawing", "along the nearest step of angle"),
    ("Any digit during a gesture", "opens a field at the pointer; Tab goes to the next"),
    ("Enter", "yes to what the status line announces"),
    ("Esc", "one rung back: field, gesture, shape, tool, selection"),
];

/// Words of the trade as this program uses them.
const WORDS: &[(&str, &str)] = &[
    ("Family", "parts that interchange, as a catalog lists them"),
    ("Make-up", "the mast, arm, brace and base of one unit"),
    ("Unit", "a make-up placed on the plan"),
    ("Base", "what stays in the roof when the unit is taken away"),
    ("Setback", "mast axis behind the outline"),
    ("Inset", "outer face of the parapet behind the outline"),
    ("Offset", "face of the facade outside the outline"),
    ("Stand-off", "tip of the arm outside the facade"),
    ("Clear zone", "room that arm or brace needs as they turn"),
    ("Reach", "what technicians get at from a unit; a gap is what no one does"),
    ("Slew", "turn of mast and arm about the mast axis, from straight out"),
    ("Reaction", "action of the unit on the structure"),
];

/// Shows the page.
pub fn show(ui: &mut Ui, look: Look<'_>) {
    section(ui, look.palette, "Keys", |ui| {
        Grid::new("keys").num_columns(2).spacing([24.0, 5.0]).show(ui, |ui| {
            for entry in TABLE.iter().filter(|entry| !entry.keys.is_empty()) {
                row(
                    ui,
                    look,
                    &entry.keys_text(ui.ctx()),
                    &format!("{}. {}", entry.name.trim_end_matches('…'), entry.hint),
                );
            }
        });
    });
    section(ui, look.palette, "Pointer", |ui| pairs(ui, look, "pointer", GESTURES));
    section(ui, look.palette, "Words", |ui| pairs(ui, look, "words", WORDS));
}

fn pairs(ui: &mut Ui, look: Look<'_>, name: &str, rows: &[(&str, &str)]) {
    Grid::new(name).num_columns(2).spacing([24.0, 5.0]).show(ui, |ui| {
        for (word, meaning) in rows {
            row(ui, look, word, meaning);
        }
    });
}

fn row(ui: &mut Ui, look: Look<'_>, left: &str, right: &str) {
    ui.label(RichText::new(left).family(type_scale::semibold()));
    ui.label(RichText::new(right).color(look.palette.ink_soft));
    ui.end_row();
}
