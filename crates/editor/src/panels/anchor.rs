//! An anchor at the head of an area: F6 gives it the focus, which at once goes on to the area's first field.

use egui::{FocusDirection, Id, Sense, Ui, vec2};

/// The id of an area's anchor.
pub fn id(area: &'static str) -> Id {
    Id::unique(("anchor", area))
}

/// Shows the anchor, which takes no room.
pub fn show(ui: &mut Ui, area: &'static str) {
    let rect = egui::Rect::from_min_size(ui.next_widget_position(), vec2(1.0, 1.0));
    let id = id(area);
    // It is there for a focus only in the moment in which one is given, so that Tab does not stop at it.
    if !ui.memory(|memory| memory.has_focus(id)) {
        return;
    }
    ui.interact(rect, id, Sense::focusable_noninteractive());
    ui.memory_mut(|memory| memory.move_focus(FocusDirection::Next));
    ui.ctx().request_repaint();
}
