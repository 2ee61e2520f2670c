//! What keys ask for. Single letters count only while no text field has the focus.

use egui::{Context, Event, Key, Modifiers, Popup};

use crate::canvas::canvas::main_id;
use crate::command::Command;
use crate::intent::{Intent, TypeKey};
use crate::session::Session;
use crate::tools::gesture::GestureKey;
use crate::tools::typed_entry::opens;

/// Where keys go.
#[derive(Debug, Clone, Copy)]
struct Situation {
    /// A text field has the focus.
    in_field: bool,
    /// Nothing but the sheet has the focus.
    on_sheet: bool,
    /// A page or a question lies over the sheet.
    covered: bool,
    /// Numbers are being typed.
    typing: bool,
    /// A digit would open a field.
    would_type: bool,
    /// A shape or a drag is under way.
    busy: bool,
}

/// Takes the keys out of the input that mean something here, and says what they ask for.
pub fn collect(ctx: &Context, session: &Session, has_plan: bool) -> Vec<Intent> {
    // An open menu closes by itself.
    if Popup::is_any_open(ctx) {
        return Vec::new();
    }
    let focused = ctx.memory(egui::Memory::focused);
    let situation = Situation {
        in_field: ctx.text_edit_focused(),
        on_sheet: focused.is_none_or(|id| id == main_id()),
        covered: session.page.is_some()
            || session.outline.is_some()
            || session.underlay.is_some()
            || session.question.is_some()
            || !has_plan,
        typing: session.typed.is_some(),
        would_type: !session.tool.asks().is_empty(),
        busy: session.tool.is_busy(),
    };
    let mut intents = Vec::new();
    ctx.input_mut(|input| {
        input.events.retain(|event| match asked(event, situation) {
            Some(intent) => {
                intents.push(intent);
                false
            }
            None => true,
        });
    });
    intents
}

fn asked(event: &Event, now: Situation) -> Option<Intent> {
    match event {
        Event::Text(text) if now.typing || now.would_type && opens(text) => {
            let here = now.on_sheet && !now.in_field && !now.covered;
            here.then(|| Intent::Type(TypeKey::Text(text.clone())))
        }
        Event::Key { key, pressed: true, repeat, modifiers, .. } => of_key(*key, *repeat, *modifiers, now),
        _ => None,
    }
}

fn of_key(key: Key, repeat: bool, modifiers: Modifiers, now: Situation) -> Option<Intent> {
    let plain = !modifiers.command && !modifiers.alt;
    let here = now.on_sheet && !now.in_field && !now.covered;
    match key {
        Key::Escape if now.covered && !now.in_field => return Some(Intent::Key(GestureKey::Escape)),
        Key::Escape if !now.in_field => return Some(Intent::Key(GestureKey::Escape)),
        Key::Enter if here && plain => return Some(Intent::Key(GestureKey::Enter)),
        Key::Tab if here && now.typing => {
            return Some(Intent::Type(if modifiers.shift { TypeKey::Previous } else { TypeKey::Next }));
        }
        Key::Backspace if here && now.typing => return Some(Intent::Type(TypeKey::Backspace)),
        Key::Backspace if here && now.busy => return Some(Intent::Key(GestureKey::Backspace)),
        _ => {}
    }
    let is_character = matches!(key.name(), name if name.chars().count() == 1) || is_digit_or_sign(key);
    // Characters go to the field that is open, or that they open; their text comes as an event of its own.
    if plain && here && (now.typing && is_character || now.would_type && is_digit_or_sign(key)) {
        return None;
    }
    let command = Command::of_key(key, modifiers)?;
    if repeat && !command.repeats() {
        return None;
    }
    let anywhere = modifiers.command || is_function_key(key);
    let for_text = matches!(key, Key::Z | Key::Y | Key::A | Key::C | Key::V | Key::X) && now.in_field;
    let allowed = if now.covered {
        matches!(command, Command::New | Command::Open | Command::Shortcuts | Command::Preferences) && !now.in_field
    } else if anywhere {
        !for_text
    } else if moves_focus(key) {
        here
    } else {
        !now.in_field
    };
    allowed.then_some(Intent::Run(command))
}

fn is_digit_or_sign(key: Key) -> bool {
    matches!(
        key,
        Key::Num0
            | Key::Num1
            | Key::Num2
            | Key::Num3
            | Key::Num4
            | Key::Num5
            | Key::Num6
            | Key::Num7
            | Key::Num8
            | Key::Num9
            | Key::Minus
            | Key::Plus
            | Key::Period
            | Key::Comma
            | Key::Slash
            | Key::Quote
            | Key::Space
    )
}

fn is_function_key(key: Key) -> bool {
    matches!(key, Key::F1 | Key::F2 | Key::F3 | Key::F4 | Key::F5 | Key::F6 | Key::F7 | Key::F8)
}

/// Keys that mean something to whatever has the focus.
fn moves_focus(key: Key) -> bool {
    matches!(
        key,
        Key::ArrowLeft
            | Key::ArrowRight
            | Key::ArrowUp
            | Key::ArrowDown
            | Key::Home
            | Key::End
            | Key::PageUp
            | Key::PageDown
            | Key::Delete
            | Key::Backspace
            | Key::Space
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOW: Situation =
        Situation { in_field: false, on_sheet: true, covered: false, typing: false, would_type: false, busy: false };

    fn key(key: Key, now: Situation) -> Option<Intent> {
        of_key(key, false, Modifiers::NONE, now)
    }

    #[test]
    fn backspace_takes_a_corner_back_while_drawing_and_deletes_otherwise() {
        assert_eq!(key(Key::Backspace, NOW), Some(Intent::Run(Command::Delete)));
        assert_eq!(key(Key::Backspace, Situation { busy: true, ..NOW }), Some(Intent::Key(GestureKey::Backspace)));
        assert_eq!(key(Key::Backspace, Situation { in_field: true, ..NOW }), None);
    }

    #[test]
    fn digits_choose_overlays_unless_a_tool_asks_for_a_number() {
        assert!(matches!(key(Key::Num1, NOW), Some(Intent::Run(Command::Overlays(_)))));
        assert_eq!(key(Key::Num1, Situation { would_type: true, ..NOW }), None);
    }

    #[test]
    fn letters_count_only_while_no_text_field_has_the_focus() {
        assert!(matches!(key(Key::U, NOW), Some(Intent::Run(Command::Tool(_)))));
        assert_eq!(key(Key::U, Situation { in_field: true, ..NOW }), None);
        assert_eq!(key(Key::M, Situation { typing: true, would_type: true, ..NOW }), None);
    }
}
