//! Pens: lines named by what they mean, with width and dashes in paper millimeters. Colors belong to whoever paints.

/// What a line, or the ink of a text, means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pen {
    /// Edge of something that the section cuts.
    CutEdge,
    /// Edge of the structural slab in plan.
    SlabEdge,
    /// Outline of a thing seen whole: a unit's parts, an obstacle.
    Outline,
    /// An edge inside a thing: coping, socket's mouth.
    Edge,
    /// A thin line inside a thing: crosses of obstacles, folds of openings.
    Fine,
    /// What lies behind or below something else.
    Hidden,
    /// Dimension and extension lines, ticks, their texts.
    Dimension,
    /// Axes of masts.
    Axis,
    /// What technicians reach.
    Reach,
    /// What no one reaches.
    Gap,
    /// What an arm or a brace sweeps.
    ClearZone,
    /// Room for people: where they stand, where a mast is laid down.
    Standing,
    /// Too near, or through each other.
    Conflict,
    /// A rope.
    Rope,
    /// Arrows of loads and reactions.
    LoadArrow,
    /// Frames of tags and the lines that lead to them.
    TagFrame,
    /// Words and levels.
    Lettering,
    /// Where a thing was, or would be.
    Ghost,
    /// What stands behind the drawn thing: other roofs, lines of levels.
    Background,
    /// Where something goes on beyond the drawing.
    Break,
}

impl Pen {
    /// All pens.
    pub const ALL: [Self; 20] = [
        Self::CutEdge,
        Self::SlabEdge,
        Self::Outline,
        Self::Edge,
        Self::Fine,
        Self::Hidden,
        Self::Dimension,
        Self::Axis,
        Self::Reach,
        Self::Gap,
        Self::ClearZone,
        Self::Standing,
        Self::Conflict,
        Self::Rope,
        Self::LoadArrow,
        Self::TagFrame,
        Self::Lettering,
        Self::Ghost,
        Self::Background,
        Self::Break,
    ];

    /// Width of the line on paper, mm.
    pub const fn width_mm(self) -> f64 {
        match self {
            Self::CutEdge | Self::SlabEdge => 0.5,
            Self::Conflict | Self::LoadArrow => 0.45,
            Self::Outline | Self::Reach | Self::Gap | Self::Rope => 0.3,
            Self::Edge | Self::Hidden | Self::TagFrame => 0.2,
            Self::ClearZone | Self::Standing | Self::Ghost | Self::Break => 0.18,
            Self::Dimension | Self::Axis | Self::Fine | Self::Lettering | Self::Background => 0.13,
        }
    }

    /// Lengths of line and space in turn, mm; empty for a whole line.
    pub const fn dash_mm(self) -> &'static [f64] {
        match self {
            Self::Hidden => &[1.6, 0.8],
            Self::Axis => &[4.0, 0.8, 0.6, 0.8],
            Self::ClearZone => &[2.4, 0.9],
            Self::Standing => &[0.9, 0.7],
            Self::Ghost => &[1.2, 1.2],
            _ => &[],
        }
    }
}
