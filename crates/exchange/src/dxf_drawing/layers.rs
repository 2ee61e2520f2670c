//! Layers by meaning: what a mark belongs to and what its line says; color, dashes and width go with the layer.

use std::collections::BTreeMap;

use gantline_drawing::{Fill, Hatch, Layer, Pen};

/// The layer on which references of blocks stand.
pub const UNITS: &str = "GL-UNIT";

/// How what lies on a layer looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Look {
    /// Color by its number in the format's table.
    pub color: u8,
    /// Width of its lines, hundredths of a millimeter; one of those that the format knows.
    pub width: i16,
    /// The pen whose dashes its lines have; none: whole lines.
    pub dashes_of: Option<Pen>,
}

/// Layers in use, by name.
pub type Layers = BTreeMap<String, Look>;

/// The layer of lines of a pen.
pub fn of_pen(layer: Layer, pen: Pen) -> (String, Look) {
    let dashes_of = (!pen.dash_mm().is_empty()).then_some(pen);
    let look = Look { color: color_of_pen(pen), width: width(pen.width_mm()), dashes_of };
    (format!("GL-{}-{}", layer_word(layer), pen_word(pen)), look)
}

/// The layer of a fill.
pub fn of_fill(layer: Layer, fill: Fill) -> (String, Look) {
    let (word, color) = match fill {
        Fill::Ink(pen) => (format!("{}-SOLID", pen_word(pen)), color_of_pen(pen)),
        Fill::Hatch(hatch) => (format!("{}-HATCH", hatch_word(hatch)), color_of_hatch(hatch)),
        Fill::Paper => ("PAPER".to_owned(), WHITE_OR_BLACK),
    };
    (format!("GL-{}-{word}", layer_word(layer)), Look { color, width: 13, dashes_of: None })
}

/// The layer of words.
pub fn of_text(layer: Layer, pen: Pen) -> (String, Look) {
    (format!("GL-{}-TEXT", layer_word(layer)), Look { color: color_of_pen(pen), width: 18, dashes_of: None })
}

/// The nearest width that the format knows, hundredths of a millimeter (DXF reference, group code 370).
fn width(mm: f64) -> i16 {
    const KNOWN: [i16; 12] = [5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 60];
    let off = |known: i16| (f64::from(known) - mm * 100.0).abs();
    KNOWN.into_iter().min_by(|a, b| off(*a).total_cmp(&off(*b))).unwrap_or(25)
}

/// Black on white paper and white on a dark screen.
const WHITE_OR_BLACK: u8 = 7;
const GRAY: u8 = 8;
const LIGHT_GRAY: u8 = 9;
const BLUE: u8 = 150;
const ORANGE: u8 = 30;
const GREEN: u8 = 112;
const PURPLE: u8 = 212;

const fn color_of_pen(pen: Pen) -> u8 {
    match pen {
        Pen::Hidden | Pen::Axis | Pen::Fine | Pen::Standing => GRAY,
        Pen::Background | Pen::Ghost => LIGHT_GRAY,
        Pen::Reach => BLUE,
        Pen::Gap | Pen::Conflict => ORANGE,
        Pen::ClearZone => GREEN,
        _ => WHITE_OR_BLACK,
    }
}

const fn color_of_hatch(hatch: Hatch) -> u8 {
    match hatch {
        Hatch::Reach | Hatch::ReachInPart => BLUE,
        Hatch::Gap | Hatch::Conflict | Hatch::BaseOver => ORANGE,
        Hatch::BaseUnchecked => PURPLE,
        Hatch::ClearZoneArm => GREEN,
        Hatch::ClearZoneBrace => PURPLE,
        Hatch::NoAccess => LIGHT_GRAY,
        _ => GRAY,
    }
}

const fn layer_word(layer: Layer) -> &'static str {
    match layer {
        Layer::Ground => "ROOF",
        Layer::Background => "BEHIND",
        Layer::Standing => "ROOM",
        Layer::ClearZone => "CLEARZONE",
        Layer::Reach => "REACH",
        Layer::Outline => "OUTLINE",
        Layer::Obstacle => "OBSTACLE",
        Layer::Unit => "UNIT",
        Layer::Load => "LOAD",
        Layer::Lettering => "NAME",
        Layer::Dimension => "SETTINGOUT",
        Layer::Reading => "READING",
        Layer::Tag => "TAG",
        Layer::Conflict => "CONFLICT",
        Layer::Sheet => "SHEET",
    }
}

/// The pen's word in names of layers and line types.
pub const fn pen_word(pen: Pen) -> &'static str {
    match pen {
        Pen::CutEdge => "CUT",
        Pen::SlabEdge => "SLABEDGE",
        Pen::Outline => "OUTLINE",
        Pen::Edge => "EDGE",
        Pen::Fine => "FINE",
        Pen::Hidden => "HIDDEN",
        Pen::Dimension => "LINE",
        Pen::Axis => "AXIS",
        Pen::Reach => "REACHED",
        Pen::Gap => "GAP",
        Pen::ClearZone => "SWEPT",
        Pen::Standing => "PEOPLE",
        Pen::Conflict => "CONFLICT",
        Pen::Rope => "ROPE",
        Pen::LoadArrow => "ARROW",
        Pen::TagFrame => "FRAME",
        Pen::Lettering => "LETTERING",
        Pen::Ghost => "GHOST",
        Pen::Background => "BEHIND",
        Pen::Break => "BREAK",
    }
}

/// The hatch's word in names of layers and patterns.
pub const fn hatch_word(hatch: Hatch) -> &'static str {
    match hatch {
        Hatch::Roof => "ROOF",
        Hatch::OtherRoof => "OTHERROOF",
        Hatch::Concrete => "CONCRETE",
        Hatch::BuildUp => "BUILDUP",
        Hatch::Parapet => "PARAPET",
        Hatch::Obstacle => "OBSTACLE",
        Hatch::Part => "PART",
        Hatch::Reach => "REACHED",
        Hatch::ReachInPart => "PARTLYREACHED",
        Hatch::Gap => "GAP",
        Hatch::ClearZoneArm => "ARM",
        Hatch::ClearZoneBrace => "BRACE",
        Hatch::Standing => "STANDING",
        Hatch::Erection => "ERECTION",
        Hatch::Conflict => "CONFLICT",
        Hatch::NoAccess => "NOACCESS",
        Hatch::SlabZone => "SLABZONE",
        Hatch::NoDrill => "NODRILLING",
        Hatch::BaseOver => "BASEOVERUSED",
        Hatch::BaseUnchecked => "BASEUNCHECKED",
        Hatch::Pressed => "PRESSED",
        Hatch::Steel => "STEEL",
    }
}
