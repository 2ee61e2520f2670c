//! Why an outline can't be read from a file: what, and where in the file.

use std::fmt;

/// A place in a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// A line of a text file, counted from 1.
    Line(usize),
    /// A byte of a binary file, counted from 0.
    Byte(usize),
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line(line) => write!(f, "line {line}"),
            Self::Byte(byte) => write!(f, "byte {byte}"),
        }
    }
}

/// Why no outline can be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum OutlineFault {
    /// Nobody waits for it any more.
    #[error("reading was stopped")]
    Stopped,
    /// A file without content.
    #[error("the file is empty")]
    Empty,
    /// Too many bytes.
    #[error("the file has {has} bytes; at most {most} are read")]
    TooLarge {
        /// Bytes in the file.
        has: usize,
        /// Bytes that are read.
        most: usize,
    },
    /// A drawing in the closed binary form.
    #[error("this is a DWG drawing ({version}): save it as DXF in the program that made it, and open that file")]
    Dwg {
        /// The version as the file names it.
        version: String,
    },
    /// Neither DXF nor GeoJSON.
    #[error("this is neither a DXF drawing nor GeoJSON: {what}")]
    NotADrawing {
        /// What was found instead.
        what: String,
    },
    /// A line that should hold a group code and does not.
    #[error("{place}: a group code is expected, not \"{found}\"")]
    NoCode {
        /// Where.
        place: Place,
        /// What stands there.
        found: String,
    },
    /// A value that is not the number it should be.
    #[error("{place}: a number is expected after group code {code}, not \"{found}\"")]
    NoNumber {
        /// Where.
        place: Place,
        /// The group code before it.
        code: i32,
        /// What stands there.
        found: String,
    },
    /// The file ends before the drawing does.
    #[error("the file ends at {place}, {inside}: it is cut off")]
    CutOff {
        /// Where.
        place: Place,
        /// Inside of what.
        inside: &'static str,
    },
    /// Something that can't stand where it does.
    #[error("{place}: {what}")]
    OutOfPlace {
        /// Where.
        place: Place,
        /// What, and what was expected.
        what: String,
    },
    /// More lines and curves than are read, blocks unfolded.
    #[error(
        "the drawing has more than {most} lines and curves when its blocks are unfolded: export the roof's layers alone"
    )]
    TooMany {
        /// How many are read.
        most: usize,
    },
    /// More of something than is read.
    #[error("{place}: more than {most} {what}; no drawing of a roof has so many: export the roof's layers alone")]
    TooManyOf {
        /// Where the first that is too many stands.
        place: Place,
        /// Of what.
        what: &'static str,
        /// How many are read.
        most: usize,
    },
    /// More layers than are read, in a file without lines to be named.
    #[error("{inside}: the file has more than {most} layers")]
    TooManyLayers {
        /// Which part of the file.
        inside: String,
        /// How many are read.
        most: usize,
    },
    /// Curves that become more chords than are made.
    #[error(
        "the curves of the chosen layers become more than {most} corners: choose fewer layers or a coarser tolerance"
    )]
    TooManyChords {
        /// How many are made.
        most: usize,
    },
    /// Outlines that lie over each other so often that telling which lies in which has no end.
    #[error(
        "the closed outlines of the chosen layers lie over each other too often to be told apart: choose fewer layers"
    )]
    TooMuchToCompare,
    /// Blocks in blocks in blocks.
    #[error("block \"{block}\" lies more than {most} blocks deep, or in itself")]
    TooDeep {
        /// The block.
        block: String,
        /// How deep blocks are unfolded.
        most: usize,
    },
    /// Text that is not JSON, or JSON that is not GeoJSON.
    #[error("this is not GeoJSON: {what}")]
    NotGeoJson {
        /// What is wrong, with line and column where known.
        what: String,
    },
    /// A coordinate that is no place.
    #[error("{inside}: a position needs two finite numbers")]
    NoPosition {
        /// Which part of the file.
        inside: String,
    },
    /// Degrees that lie nowhere on earth, or too far apart for one plane.
    #[error("degrees from ({least_lon}, {least_lat}) to ({most_lon}, {most_lat}) are no single site")]
    NoSite {
        /// West.
        least_lon: String,
        /// South.
        least_lat: String,
        /// East.
        most_lon: String,
        /// North.
        most_lat: String,
    },
    /// Lengths in a file that does not say in which unit.
    #[error("the file does not state its units: say which they are")]
    UnitsNotStated,
    /// A layer that the file does not have.
    #[error("there is no layer \"{name}\" in the file")]
    NoSuchLayer {
        /// The name asked for.
        name: String,
    },
    /// A tolerance that is none.
    #[error("a tolerance of {found} is outside {least} to {most}")]
    Tolerance {
        /// The tolerance asked for, m.
        found: String,
        /// The least, m.
        least: &'static str,
        /// The most, m.
        most: &'static str,
    },
    /// Coordinates beyond what a plan may hold.
    #[error("the chosen outlines spread over more than {most_m} m: units or layers are not those of one site")]
    TooFarApart {
        /// How far they may spread, m.
        most_m: u32,
    },
    /// The plan's own origin lies elsewhere.
    #[error("the chosen outlines lie more than {most_m} m from the plan's origin: the plan was drawn to another one")]
    FarFromPlan {
        /// How far they may lie, m.
        most_m: u32,
    },
    /// A plan in the grid of a drawing, and a file in degrees: nothing says where the one lies in the other.
    #[error(
        "this file is in degrees about {drawing}, and the plan's origin is ({plan_x}, {plan_y}) in the grid of a drawing in \
         lengths: nothing says where they lie to each other. Save the file in that drawing's grid, or take it into a new plan"
    )]
    DegreesBesideGrid {
        /// The middle of the file.
        drawing: String,
        /// The plan's origin in its grid, x with its unit.
        plan_x: String,
        /// The same, y.
        plan_y: String,
    },
    /// More closed outlines than can be told apart by a person.
    #[error("the chosen layers hold more than {most} closed outlines: choose fewer layers")]
    TooManyLoops {
        /// How many are shown.
        most: usize,
    },
}
