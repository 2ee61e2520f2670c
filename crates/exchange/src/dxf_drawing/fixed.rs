//! Handles of what every file has.

use super::pairs::Handle;

pub const LAYERS: Handle = Handle(0x1);
pub const LINE_TYPES: Handle = Handle(0x2);
pub const APPLICATIONS: Handle = Handle(0x3);
pub const DIMENSION_STYLES: Handle = Handle(0x4);
pub const TEXT_STYLES: Handle = Handle(0x5);
pub const COORDINATE_SYSTEMS: Handle = Handle(0x6);
pub const VIEWS: Handle = Handle(0x7);
pub const VIEWPORTS: Handle = Handle(0x8);
pub const BLOCK_RECORDS: Handle = Handle(0x9);
pub const ROOT_DICTIONARY: Handle = Handle(0xA);
pub const GROUPS: Handle = Handle(0xB);
pub const LAYOUTS: Handle = Handle(0xC);
pub const PLOT_STYLES: Handle = Handle(0xD);
pub const PLOT_STYLE: Handle = Handle(0xE);
pub const MULTILINE_STYLES: Handle = Handle(0xF);
pub const MULTILINE_STYLE: Handle = Handle(0x10);
pub const MODEL_RECORD: Handle = Handle(0x11);
pub const MODEL_LAYOUT: Handle = Handle(0x12);
pub const PAPER_RECORD: Handle = Handle(0x13);
pub const PAPER_LAYOUT: Handle = Handle(0x14);
pub const COVER_VARIABLES: Handle = Handle(0x15);
