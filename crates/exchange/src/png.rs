//! A drawing as PNG, through its SVG, with the shipped typeface only: the same picture on every machine.

use std::sync::{Arc, OnceLock};

use gantline_drawing::Drawing;
use resvg::tiny_skia::{Color, Pixmap, Transform};
use resvg::usvg::{Options, Tree, fontdb};

use crate::svg::svg;

/// Faces of the shipped typeface, as files.
pub const FONTS: [&[u8]; 3] = [
    include_bytes!("../../../assets/fonts/IBMPlexSans-Regular.ttf"),
    include_bytes!("../../../assets/fonts/IBMPlexSans-SemiBold.ttf"),
    include_bytes!("../../../assets/fonts/IBMPlexSansCondensed-Regular.ttf"),
];

/// Longest side of a picture, pixels.
pub const LONGEST_PX: f64 = 12_000.0;

/// Why a drawing can't become a picture.
#[derive(Debug, thiserror::Error)]
pub enum PngFault {
    /// The SVG could not be read back.
    #[error("the drawing's SVG can't be read: {0}")]
    Svg(#[from] resvg::usvg::Error),
    /// A resolution that gives no picture, or one too large.
    #[error(
        "{px_per_mm} pixels a millimeter give a picture of {width_px:.0} × {height_px:.0} pixels; from 1 to {LONGEST_PX} can be made"
    )]
    Size {
        /// As asked for.
        px_per_mm: f64,
        /// Width it would have.
        width_px: f64,
        /// Height it would have.
        height_px: f64,
    },
    /// The picture could not be packed.
    #[error("the picture can't be packed: {0}")]
    Pack(String),
}

/// A drawing as the bytes of a PNG file with this many pixels for a paper millimeter.
pub fn png(drawing: &Drawing, px_per_mm: f64) -> Result<Vec<u8>, PngFault> {
    png_of_svg(&svg(drawing), px_per_mm)
}

/// SVG text as the bytes of a PNG file; one user unit of the SVG counts as a paper millimeter.
pub fn png_of_svg(text: &str, px_per_mm: f64) -> Result<Vec<u8>, PngFault> {
    let tree = tree(text)?;
    let (width_mm, height_mm) = (f64::from(tree.size().width()), f64::from(tree.size().height()));
    let (width_px, height_px) = ((width_mm * px_per_mm).ceil(), (height_mm * px_per_mm).ceil());
    let fits = |px: f64| (1.0..=LONGEST_PX).contains(&px);
    let size = || PngFault::Size { px_per_mm, width_px, height_px };
    if !fits(width_px) || !fits(height_px) {
        return Err(size());
    }
    let mut pixels = Pixmap::new(width_px as u32, height_px as u32).ok_or_else(size)?;
    pixels.fill(Color::WHITE);
    let zoom = px_per_mm as f32;
    resvg::render(&tree, Transform::from_scale(zoom, zoom), &mut pixels.as_mut());
    pixels.encode_png().map_err(|fault| PngFault::Pack(fault.to_string()))
}

/// SVG read with the shipped typeface; sizes in mm are taken as user units.
fn tree(text: &str) -> Result<Tree, resvg::usvg::Error> {
    let options = Options {
        // At 25.4 dots an inch a millimeter is one unit.
        dpi: 25.4,
        font_family: "IBM Plex Sans".to_owned(),
        fontdb: fonts(),
        ..Options::default()
    };
    Tree::from_str(text, &options)
}

fn fonts() -> Arc<fontdb::Database> {
    static READ: OnceLock<Arc<fontdb::Database>> = OnceLock::new();
    let read = || {
        let mut fonts = fontdb::Database::new();
        for font in FONTS {
            fonts.load_font_data(font.to_vec());
        }
        fonts.set_sans_serif_family("IBM Plex Sans");
        Arc::new(fonts)
    };
    Arc::clone(READ.get_or_init(read))
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_drawing::{Anchor, Layer, Mark, Pen, Scale, Text, TextStyle};
    use glam::DVec2;
    use resvg::usvg::Node;

    fn line_of(words: &str, style: TextStyle) -> Drawing {
        let text = Text::new(words, DVec2::ZERO, Anchor::START, style, Pen::Lettering);
        Drawing::of(Scale::one_to(100.0), vec![Mark::text(Layer::Lettering, text)])
    }

    #[test]
    fn a_picture_has_the_pixels_asked_for() {
        let line = Mark::line(Layer::Outline, Pen::Outline, vec![DVec2::ZERO, DVec2::new(10.0, 0.0)]);
        let bytes = png(&Drawing::of(Scale::one_to(100.0), vec![line]), 4.0).unwrap();
        assert_eq!(&bytes[1..4], b"PNG");
        // 100 mm and twice 6 mm of rim at 4 pixels a millimeter; width and height stand big-endian after the header's name.
        assert_eq!(bytes[16..24], [0, 0, 1, 192, 0, 0, 0, 48]);
        let huge = png(&line_of("a", TextStyle::Note), 1e6).unwrap_err();
        assert!(matches!(huge, PngFault::Size { .. }), "{huge}");
    }

    /// The font files themselves are the witness: laid out by another program, no text is wider than it was taken for.
    #[test]
    fn texts_are_as_wide_as_the_drawing_takes_them_for() {
        let figures = "0123456789 m · kN 12.345 m – 4' 11 1/16\" ° ² Base Plate, Wood";
        for style in TextStyle::ALL {
            let drawing = line_of(figures, style);
            let tree = tree(&svg(&drawing)).unwrap();
            let width = text_width(tree.root()).unwrap();
            let taken = gantline_drawing::text::width_mm(figures, style);
            // Kerning takes some off, side bearings are not ink: up to 2 % less than the sum of advances.
            assert!(width <= taken + 0.01 && width >= taken * 0.97, "{style:?}: {width} against {taken}");
        }
    }

    fn text_width(group: &resvg::usvg::Group) -> Option<f64> {
        group.children().iter().find_map(|node| match node {
            Node::Text(text) => Some(f64::from(text.bounding_box().width())),
            Node::Group(inner) => text_width(inner),
            Node::Path(_) | Node::Image(_) => None,
        })
    }
}
