//! Commands: one table gives menus, hints, shortcuts, icons and the sheet of keys.

use egui::{Key, KeyboardShortcut, Modifiers};
use gantline_plan::catalog::PartKind;

use crate::session::{Drawer, OverlaySet};
use crate::tools::ToolKind;

/// A command.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// A new plan.
    New,
    /// Opens a plan.
    Open,
    /// Takes outlines from a drawing.
    Outline,
    /// Lays a drawing or a scan under the plan.
    Underlay,
    /// Saves.
    Save,
    /// Saves under another name.
    SaveAs,
    /// Writes schedule, drawing, model and tables for others.
    WriteDocuments,
    /// Writes the drawing on the main sheet as a picture.
    WritePicture,
    /// Back to the start page.
    Close,
    /// Takes the last step back.
    Undo,
    /// Makes the last undone step again.
    Redo,
    /// Takes a tool.
    Tool(ToolKind),
    /// Swaps the main sheet and the companion.
    Swap,
    /// Keeps the companion from following.
    Pin,
    /// Shows an overlay set.
    Overlays(OverlaySet),
    /// The next mast, arm or brace.
    NextPart(PartKind),
    /// Moves what is selected.
    Nudge(Way, Pace),
    /// Slews what is selected.
    Slew(Sense, Pace),
    /// Shows all.
    Fit,
    /// Shows what is selected.
    FitSelection,
    /// Larger.
    ZoomIn,
    /// Smaller.
    ZoomOut,
    /// The next or previous thing of this kind.
    Step(Sense),
    /// The next or previous finding.
    Finding(Sense),
    /// The roof above or below.
    Level(Sense),
    /// The next area of the window.
    NextArea,
    /// Finds a tag.
    FindTag,
    /// The sheet of keys.
    Shortcuts,
    /// A copy beside each unit.
    Duplicate,
    /// Copies along the edge.
    CopyAlong,
    /// Mirrors about the edge's middle.
    Mirror,
    /// Deletes what is selected.
    Delete,
    /// Selects all of this kind.
    SelectAll,
    /// Preferences.
    Preferences,
    /// The load basis and the design code.
    Basis,
    /// Opens or closes a drawer.
    Drawer(Drawer),
}

/// The way of a nudge, seen from a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Toward the edge's start.
    Back,
    /// Toward the edge's end.
    Ahead,
    /// Away from the edge, inward.
    Inward,
    /// Toward the edge.
    Outward,
}

/// How far at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    /// Little.
    Fine,
    /// As usual.
    Usual,
    /// Much.
    Coarse,
}

/// One way or the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// Forward, up, counter-clockwise.
    Ahead,
    /// Back, down, clockwise.
    Back,
}

/// Where a command stands in the menu.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Menu {
    /// Files.
    File,
    /// Changes of the plan.
    Edit,
    /// What is shown.
    View,
    /// Only a key, or a place of its own in the bar.
    Nowhere,
}

/// A row of the table.
#[derive(Debug, Clone, Copy)]
pub struct Entry {
    /// The command.
    pub command: Command,
    /// Its name.
    pub name: &'static str,
    /// What it does, in a sentence.
    pub hint: &'static str,
    /// Keys that run it.
    pub keys: &'static [KeyboardShortcut],
    /// Where it stands.
    pub menu: Menu,
}

const fn key(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::NONE, key)
}

const fn with(modifiers: Modifiers, key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(modifiers, key)
}

const CTRL: Modifiers = Modifiers::COMMAND;
const SHIFT: Modifiers = Modifiers::SHIFT;
const ALT: Modifiers = Modifiers::ALT;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

const fn entry(
    command: Command,
    name: &'static str,
    hint: &'static str,
    keys: &'static [KeyboardShortcut],
    menu: Menu,
) -> Entry {
    Entry { command, name, hint, keys, menu }
}

/// All commands, in the order of menus and of the sheet of keys.
pub const TABLE: &[Entry] = &[
    entry(Command::New, "New plan", "Begins an empty plan.", &[with(CTRL, Key::N)], Menu::File),
    entry(Command::Open, "Open…", "Opens a plan file.", &[with(CTRL, Key::O)], Menu::File),
    entry(
        Command::Outline,
        "Outline from a drawing…",
        "Takes roofs, holes and obstacles from a DXF or GeoJSON file.",
        &[with(CTRL_SHIFT, Key::O)],
        Menu::File,
    ),
    entry(
        Command::Underlay,
        "Underlay…",
        "Lays a PDF page, an image or a DXF drawing under the plan.",
        &[with(CTRL_SHIFT, Key::U)],
        Menu::File,
    ),
    entry(Command::Save, "Save", "Saves the plan; the version before is kept.", &[with(CTRL, Key::S)], Menu::File),
    entry(Command::SaveAs, "Save as…", "Saves under another name.", &[with(CTRL_SHIFT, Key::S)], Menu::File),
    entry(
        Command::WriteDocuments,
        "Write documents…",
        "Writes schedule, drawing for CAD, building model and tables into a folder.",
        &[],
        Menu::File,
    ),
    entry(
        Command::WritePicture,
        "Write drawing as picture…",
        "Writes the drawing on the main sheet as SVG or PNG.",
        &[],
        Menu::File,
    ),
    entry(Command::Close, "Close plan", "Goes back to the start page.", &[with(CTRL, Key::W)], Menu::File),
    entry(
        Command::Preferences,
        "Preferences…",
        "Units of measure, theme, wheel.",
        &[with(CTRL, Key::Comma)],
        Menu::File,
    ),
    entry(
        Command::Basis,
        "Load basis…",
        "Every value of basis and design code with its source.",
        &[with(CTRL, Key::B)],
        Menu::File,
    ),
    entry(Command::Undo, "Undo", "Takes the last step back.", &[with(CTRL, Key::Z)], Menu::Edit),
    entry(
        Command::Redo,
        "Redo",
        "Makes the last undone step again.",
        &[with(CTRL_SHIFT, Key::Z), with(CTRL, Key::Y)],
        Menu::Edit,
    ),
    entry(Command::Duplicate, "Duplicate", "Sets a copy beside each selected unit.", &[with(CTRL, Key::D)], Menu::Edit),
    entry(
        Command::CopyAlong,
        "Copy along edge…",
        "Copies a unit along its edge at a pitch.",
        &[with(CTRL_SHIFT, Key::D)],
        Menu::Edit,
    ),
    entry(
        Command::Mirror,
        "Mirror",
        "Sets a mirrored copy of each selected unit about the middle of its edge.",
        &[with(CTRL, Key::M)],
        Menu::Edit,
    ),
    entry(Command::Delete, "Delete", "Deletes what is selected.", &[key(Key::Delete), key(Key::Backspace)], Menu::Edit),
    entry(
        Command::SelectAll,
        "Select all of this kind",
        "All of the kind selected now, else all units.",
        &[with(CTRL, Key::A)],
        Menu::Edit,
    ),
    entry(
        Command::Tool(ToolKind::ScaleUnderlay),
        "Scale underlay",
        "Sets the scale of an underlay by two points and their true distance.",
        &[with(SHIFT, Key::K)],
        Menu::Edit,
    ),
    entry(
        Command::Tool(ToolKind::TurnUnderlay),
        "Turn underlay",
        "Sets the turn of an underlay by two points and their direction.",
        &[with(SHIFT, Key::T)],
        Menu::Edit,
    ),
    entry(Command::FindTag, "Find a tag…", "Goes to the unit with a tag.", &[with(CTRL, Key::F)], Menu::Edit),
    entry(Command::Tool(ToolKind::Select), "Select", "Selects and drags things.", &[key(Key::V)], Menu::Nowhere),
    entry(Command::Tool(ToolKind::Roof), "Roof", "Draws the edge of a structural slab.", &[key(Key::R)], Menu::Nowhere),
    entry(Command::Tool(ToolKind::Hole), "Hole", "Draws a hole in a roof.", &[key(Key::H)], Menu::Nowhere),
    entry(
        Command::Tool(ToolKind::Obstacle),
        "Obstacle",
        "Draws plant, a stair head, a beam.",
        &[key(Key::O)],
        Menu::Nowhere,
    ),
    entry(Command::Tool(ToolKind::Unit), "Unit", "Places units on edges.", &[key(Key::U)], Menu::Nowhere),
    entry(Command::Tool(ToolKind::Measure), "Measure", "Measures from point to point.", &[key(Key::K)], Menu::Nowhere),
    entry(Command::Fit, "Show all", "Fits the whole drawing.", &[key(Key::Home)], Menu::View),
    entry(Command::FitSelection, "Show selection", "Fits what is selected.", &[with(SHIFT, Key::Home)], Menu::View),
    entry(Command::ZoomIn, "Larger", "Zooms in.", &[key(Key::Plus), with(CTRL, Key::Plus)], Menu::View),
    entry(Command::ZoomOut, "Smaller", "Zooms out.", &[key(Key::Minus), with(CTRL, Key::Minus)], Menu::View),
    entry(Command::Swap, "Swap sheets", "The companion goes to the main sheet.", &[key(Key::X)], Menu::View),
    entry(Command::Pin, "Pin companion", "Keeps the companion as it is.", &[with(SHIFT, Key::X)], Menu::View),
    entry(
        Command::Overlays(OverlaySet::Reach),
        "Overlays: Reach",
        "What technicians reach, and gaps.",
        &[key(Key::Num1)],
        Menu::View,
    ),
    entry(
        Command::Overlays(OverlaySet::ClearZones),
        "Overlays: Clear zones",
        "Room that arms and braces need.",
        &[key(Key::Num2)],
        Menu::View,
    ),
    entry(
        Command::Overlays(OverlaySet::Reactions),
        "Overlays: Reactions",
        "What bases bring into the structure.",
        &[key(Key::Num3)],
        Menu::View,
    ),
    entry(Command::Overlays(OverlaySet::All), "Overlays: All", "All of it.", &[key(Key::Num4)], Menu::View),
    entry(Command::Drawer(Drawer::Units), "Units drawer", "All units.", &[key(Key::F2)], Menu::View),
    entry(Command::Drawer(Drawer::Findings), "Findings drawer", "All findings.", &[key(Key::F3)], Menu::View),
    entry(Command::Drawer(Drawer::Charts), "Charts drawer", "Charts of one unit.", &[key(Key::F4)], Menu::View),
    entry(
        Command::Step(Sense::Ahead),
        "Next thing",
        "The next thing of the kind selected now.",
        &[key(Key::N)],
        Menu::Nowhere,
    ),
    entry(
        Command::Step(Sense::Back),
        "Previous thing",
        "The thing before of the kind selected now.",
        &[with(SHIFT, Key::N)],
        Menu::Nowhere,
    ),
    entry(Command::Finding(Sense::Ahead), "Next finding", "Goes to the next finding.", &[key(Key::F8)], Menu::View),
    entry(
        Command::Finding(Sense::Back),
        "Previous finding",
        "Goes to the finding before.",
        &[with(SHIFT, Key::F8)],
        Menu::View,
    ),
    entry(Command::Level(Sense::Ahead), "Level up", "Works on the next higher roof.", &[key(Key::PageUp)], Menu::View),
    entry(
        Command::Level(Sense::Back),
        "Level down",
        "Works on the next lower roof.",
        &[key(Key::PageDown)],
        Menu::View,
    ),
    entry(
        Command::NextPart(PartKind::Mast),
        "Next mast",
        "Steps through masts, for the unit selected or in hand.",
        &[key(Key::M)],
        Menu::Nowhere,
    ),
    entry(
        Command::NextPart(PartKind::Arm),
        "Next arm",
        "Steps through arms, for the unit selected or in hand.",
        &[key(Key::A)],
        Menu::Nowhere,
    ),
    entry(
        Command::NextPart(PartKind::Brace),
        "Next brace",
        "Steps through braces, for the unit selected or in hand.",
        &[key(Key::B)],
        Menu::Nowhere,
    ),
    nudge(Way::Back, Pace::Usual, &[key(Key::ArrowLeft)]),
    nudge(Way::Ahead, Pace::Usual, &[key(Key::ArrowRight)]),
    nudge(Way::Inward, Pace::Usual, &[key(Key::ArrowUp)]),
    nudge(Way::Outward, Pace::Usual, &[key(Key::ArrowDown)]),
    nudge(Way::Back, Pace::Coarse, &[with(SHIFT, Key::ArrowLeft)]),
    nudge(Way::Ahead, Pace::Coarse, &[with(SHIFT, Key::ArrowRight)]),
    nudge(Way::Inward, Pace::Coarse, &[with(SHIFT, Key::ArrowUp)]),
    nudge(Way::Outward, Pace::Coarse, &[with(SHIFT, Key::ArrowDown)]),
    nudge(Way::Back, Pace::Fine, &[with(ALT, Key::ArrowLeft)]),
    nudge(Way::Ahead, Pace::Fine, &[with(ALT, Key::ArrowRight)]),
    nudge(Way::Inward, Pace::Fine, &[with(ALT, Key::ArrowUp)]),
    nudge(Way::Outward, Pace::Fine, &[with(ALT, Key::ArrowDown)]),
    entry(
        Command::Slew(Sense::Ahead, Pace::Usual),
        "Slew left",
        "Turns the drawn slew counter-clockwise.",
        &[key(Key::Q)],
        Menu::Nowhere,
    ),
    entry(
        Command::Slew(Sense::Back, Pace::Usual),
        "Slew right",
        "Turns the drawn slew clockwise.",
        &[key(Key::E)],
        Menu::Nowhere,
    ),
    entry(
        Command::Slew(Sense::Ahead, Pace::Fine),
        "Slew left a little",
        "Turns the drawn slew a little counter-clockwise.",
        &[with(SHIFT, Key::Q)],
        Menu::Nowhere,
    ),
    entry(
        Command::Slew(Sense::Back, Pace::Fine),
        "Slew right a little",
        "Turns the drawn slew a little clockwise.",
        &[with(SHIFT, Key::E)],
        Menu::Nowhere,
    ),
    entry(
        Command::NextArea,
        "Next area",
        "Goes through bar, sheet, inspector and drawer.",
        &[key(Key::F6)],
        Menu::Nowhere,
    ),
    entry(Command::Shortcuts, "Shortcuts and words", "All keys, and what words mean.", &[key(Key::F1)], Menu::View),
];

const fn nudge(way: Way, pace: Pace, keys: &'static [KeyboardShortcut]) -> Entry {
    let name = match (way, pace) {
        (Way::Back, Pace::Usual) => "Nudge back along the edge",
        (Way::Ahead, Pace::Usual) => "Nudge ahead along the edge",
        (Way::Inward, Pace::Usual) => "Nudge inward",
        (Way::Outward, Pace::Usual) => "Nudge outward",
        (Way::Back, Pace::Coarse) => "Nudge back, ten times as far",
        (Way::Ahead, Pace::Coarse) => "Nudge ahead, ten times as far",
        (Way::Inward, Pace::Coarse) => "Nudge inward, ten times as far",
        (Way::Outward, Pace::Coarse) => "Nudge outward, ten times as far",
        (Way::Back, Pace::Fine) => "Nudge back by a tenth",
        (Way::Ahead, Pace::Fine) => "Nudge ahead by a tenth",
        (Way::Inward, Pace::Fine) => "Nudge inward by a tenth",
        (Way::Outward, Pace::Fine) => "Nudge outward by a tenth",
    };
    entry(Command::Nudge(way, pace), name, "Moves what is selected.", keys, Menu::Nowhere)
}

impl Command {
    /// Its row in the table.
    pub fn entry(self) -> &'static Entry {
        TABLE.iter().find(|entry| entry.command == self).unwrap_or(&TABLE[0])
    }

    /// The command that a key runs, if any. Modifiers must be exactly those of the table.
    pub fn of_key(key: Key, modifiers: Modifiers) -> Option<Self> {
        let exactly = |shortcut: &KeyboardShortcut| {
            shortcut.logical_key == key
                && shortcut.modifiers.shift == modifiers.shift
                && shortcut.modifiers.alt == modifiers.alt
                && shortcut.modifiers.command == modifiers.command
        };
        TABLE.iter().find(|entry| entry.keys.iter().any(exactly)).map(|entry| entry.command)
    }

    /// Whether holding the key repeats it.
    pub const fn repeats(self) -> bool {
        matches!(
            self,
            Self::Nudge(..)
                | Self::Slew(..)
                | Self::Step(_)
                | Self::Finding(_)
                | Self::Undo
                | Self::Redo
                | Self::ZoomIn
                | Self::ZoomOut
                | Self::NextPart(_)
        )
    }
}

impl Entry {
    /// Its keys as text.
    pub fn keys_text(&self, ctx: &egui::Context) -> String {
        self.keys.iter().map(|shortcut| ctx.format_shortcut(shortcut)).collect::<Vec<_>>().join(" · ")
    }

    /// Its hint with its first key.
    pub fn hint_with_key(&self, ctx: &egui::Context) -> String {
        match self.keys.first() {
            Some(shortcut) => format!("{} ({})", self.hint, ctx.format_shortcut(shortcut)),
            None => self.hint.to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_key_runs_two_commands_and_no_command_stands_twice() {
        for (index, one) in TABLE.iter().enumerate() {
            for other in &TABLE[index + 1..] {
                assert_ne!(one.command, other.command);
                assert!(one.keys.iter().all(|key| !other.keys.contains(key)), "{} and {}", one.name, other.name);
            }
        }
    }

    #[test]
    fn a_key_with_another_modifier_is_another_command() {
        assert_eq!(Command::of_key(Key::X, Modifiers::NONE), Some(Command::Swap));
        assert_eq!(Command::of_key(Key::X, Modifiers::SHIFT), Some(Command::Pin));
        assert_eq!(Command::of_key(Key::X, Modifiers::ALT), None);
    }
}
