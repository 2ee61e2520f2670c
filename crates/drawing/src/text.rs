//! Texts: words at a place, in a style whose size is in paper millimeters.

use glam::DVec2;

use crate::letter_width::{Face, width_em};
use crate::pen::Pen;
use crate::scale::Scale;

/// A text.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// The words; one line.
    pub words: String,
    /// The place of its anchor, m.
    pub at: DVec2,
    /// Which point of the text lies there.
    pub anchor: Anchor,
    /// Turn of the text, counter-clockwise, rad.
    pub rotation_rad: f64,
    /// Its style.
    pub style: TextStyle,
    /// Its ink.
    pub pen: Pen,
}

/// Which point of a text lies at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Anchor {
    /// Along the line of writing.
    pub across: Across,
    /// Square to it.
    pub up: Up,
}

/// A point along the line of writing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Across {
    /// Where the text begins.
    Start,
    /// Its middle.
    Middle,
    /// Where it ends.
    End,
}

/// A point square to the line of writing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Up {
    /// The line on which capitals and figures stand.
    Baseline,
    /// Halfway up the capitals.
    Middle,
    /// The top of the capitals.
    CapTop,
}

impl Anchor {
    /// Begins at the place, on the baseline.
    pub const START: Self = Self { across: Across::Start, up: Up::Baseline };
    /// Stands centered over the place.
    pub const OVER: Self = Self { across: Across::Middle, up: Up::Baseline };
    /// Centered on the place both ways.
    pub const CENTER: Self = Self { across: Across::Middle, up: Up::Middle };
    /// Begins at the place, halfway up.
    pub const START_MIDDLE: Self = Self { across: Across::Start, up: Up::Middle };
    /// Ends at the place, halfway up.
    pub const END_MIDDLE: Self = Self { across: Across::End, up: Up::Middle };
}

/// Whether a view writes its own heading.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Heading {
    /// Over the drawing.
    #[default]
    Written,
    /// Something beside the drawing says the same.
    LeftOut,
}

/// A style of lettering, named by use.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TextStyle {
    /// Figures of dimensions.
    Dimension,
    /// Tags of units.
    Tag,
    /// Names of roofs and obstacles.
    Name,
    /// Levels, remarks, legend.
    Note,
    /// Figures in blocks: tabular.
    Reading,
    /// Heading of a drawing.
    Heading,
}

impl TextStyle {
    /// All styles.
    pub const ALL: [Self; 6] = [Self::Dimension, Self::Tag, Self::Name, Self::Note, Self::Reading, Self::Heading];

    /// Size of the letters from line to line set solid (the em), paper mm.
    pub const fn size_mm(self) -> f64 {
        match self {
            Self::Dimension => 3.1,
            Self::Tag | Self::Name => 3.0,
            Self::Note | Self::Reading => 2.8,
            Self::Heading => 4.4,
        }
    }

    /// Which cut of the typeface it uses.
    pub const fn face(self) -> Face {
        match self {
            Self::Tag | Self::Name | Self::Heading => Face::SemiBold,
            Self::Reading => Face::Regular,
            Self::Dimension | Self::Note => Face::Condensed,
        }
    }

    /// From one line to the next in a block, paper mm.
    pub fn line_mm(self) -> f64 {
        self.size_mm() * 1.3
    }

    /// Height of capitals and figures, paper mm.
    pub fn cap_mm(self) -> f64 {
        self.size_mm() * CAP_PER_EM
    }
}

/// Height of capitals in ems of the shipped typeface.
pub const CAP_PER_EM: f64 = 0.698;

impl Text {
    /// A text that is not turned.
    pub fn new(words: impl Into<String>, at: DVec2, anchor: Anchor, style: TextStyle, pen: Pen) -> Self {
        Self { words: words.into(), at, anchor, rotation_rad: 0.0, style, pen }
    }

    /// How far below its place the line lies on which capitals stand, square to the line of writing, paper mm.
    pub fn drop_mm(&self) -> f64 {
        match self.anchor.up {
            Up::Baseline => 0.0,
            Up::Middle => self.style.cap_mm() / 2.0,
            Up::CapTop => self.style.cap_mm(),
        }
    }

    /// Width on paper, mm.
    pub fn width_mm(&self) -> f64 {
        width_mm(&self.words, self.style)
    }

    /// The four corners of the box around its letters from baseline to top of capitals, counter-clockwise from where it
    /// begins, m.
    pub fn corners(&self, scale: Scale) -> [DVec2; 4] {
        let (width, cap) = (scale.m(self.width_mm()), scale.m(self.style.cap_mm()));
        let left = match self.anchor.across {
            Across::Start => 0.0,
            Across::Middle => -width / 2.0,
            Across::End => -width,
        };
        let low = -scale.m(self.drop_mm());
        let turn = DVec2::from_angle(self.rotation_rad);
        let corner = |x: f64, y: f64| self.at + turn.rotate(DVec2::new(x, y));
        [corner(left, low), corner(left + width, low), corner(left + width, low + cap), corner(left, low + cap)]
    }
}

/// Width of words in a style, paper mm.
pub fn width_mm(words: &str, style: TextStyle) -> f64 {
    width_em(words, style.face()) * style.size_mm()
}
