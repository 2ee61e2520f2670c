//! How everything looks: colors, sizes of type, pens of drawings, fonts.

pub mod fonts;
pub mod palette;
pub mod pens;
pub mod style;
pub mod type_scale;

pub use palette::Palette;
pub use type_scale::Layout;
