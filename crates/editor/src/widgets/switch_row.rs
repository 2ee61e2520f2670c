//! A row of a switch and its words; several things that differ are shown as mixed.

use egui::{Checkbox, RichText, Ui};

use crate::theme::Palette;

/// Shows it; gives the new state when it was switched. None: several things differ.
pub fn switch_row(ui: &mut Ui, palette: &Palette, words: &str, now: Option<bool>, hint: &str) -> Option<bool> {
    let mut on = now.unwrap_or(false);
    let text = if now.is_none() { format!("{words} (mixed)") } else { words.to_owned() };
    let response = ui.add(Checkbox::new(&mut on, RichText::new(text).color(palette.ink)).indeterminate(now.is_none()));
    let response = if hint.is_empty() { response } else { response.on_hover_text(hint) };
    response.changed().then_some(on)
}
