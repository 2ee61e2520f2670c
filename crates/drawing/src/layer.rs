//! Layers: which marks cover which. Marks are painted in the order of their layers, and within one in the drawing's order.

/// A layer, the lowest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Layer {
    /// Grounds of roofs and walls, what is cut.
    Ground,
    /// Other roofs, levels, what stands behind.
    Background,
    /// Room for people.
    Standing,
    /// What arms and braces sweep.
    ClearZone,
    /// Reach and gaps.
    Reach,
    /// Outlines, parapets.
    Outline,
    /// Obstacles.
    Obstacle,
    /// Bases, masts, arms, braces.
    Unit,
    /// Ropes and loads.
    Load,
    /// Names of roofs and obstacles, levels.
    Lettering,
    /// Dimensions.
    Dimension,
    /// Reactions and other figures.
    Reading,
    /// Tags.
    Tag,
    /// Conflicts, above all else of the building.
    Conflict,
    /// What belongs to the sheet: legend, north arrow, scale bar.
    Sheet,
}
