//! Sizes of type, and distances between things, in screen points.

use egui::{FontFamily, FontId, TextStyle};

/// Text of fields and labels.
pub const BODY: f32 = 13.5;
/// Hints, units of measure, captions.
pub const SMALL: f32 = 12.0;
/// Headings of panels.
pub const HEADING: f32 = 15.0;
/// Titles of pages.
pub const TITLE: f32 = 26.0;

/// Height of the top bar.
pub const TOP_BAR: f32 = 44.0;
/// Height of the status line.
pub const STATUS_LINE: f32 = 28.0;
/// Margin inside panels.
pub const MARGIN: i8 = 14;
/// Between groups in a panel.
pub const GROUP_GAP: f32 = 12.0;
/// Height of a field's row.
pub const ROW: f32 = 26.0;

/// Name of the family of heavier cuts.
pub const SEMIBOLD: &str = "semibold";

/// The semibold family.
pub fn semibold() -> FontFamily {
    FontFamily::Name(SEMIBOLD.into())
}

/// Sizes of egui's text styles.
pub fn text_styles() -> std::collections::BTreeMap<TextStyle, FontId> {
    [
        (TextStyle::Body, FontId::new(BODY, FontFamily::Proportional)),
        (TextStyle::Button, FontId::new(BODY, FontFamily::Proportional)),
        (TextStyle::Small, FontId::new(SMALL, FontFamily::Proportional)),
        (TextStyle::Heading, FontId::new(HEADING, semibold())),
        (TextStyle::Monospace, FontId::new(BODY, FontFamily::Proportional)),
    ]
    .into()
}

/// Sizes that depend on the window, so that widths never follow content.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layout {
    /// Width of the column at the right.
    pub column: f32,
    /// Height of the companion drawing.
    pub companion: f32,
    /// Height of the open drawer.
    pub drawer: f32,
}

impl Layout {
    /// The layout of a window of this size.
    pub fn of(window: egui::Vec2) -> Self {
        if window.x >= 1600.0 {
            Self { column: 520.0, companion: 420.0, drawer: 320.0 }
        } else {
            Self { column: 392.0, companion: 290.0, drawer: 240.0 }
        }
    }
}
