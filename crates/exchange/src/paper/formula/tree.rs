//! A formula as it is set: letters with what stands above and below, fractions, roots.

/// A formula or a part of one.
#[derive(Debug, Clone, PartialEq)]
pub enum Formula {
    /// Parts in a row.
    Row(Vec<Formula>),
    /// Letters, figures or words as they are.
    Plain(String),
    /// Something with an index below and a power above.
    Marked {
        /// What carries them.
        of: Box<Formula>,
        /// Below.
        below: Option<Box<Formula>>,
        /// Above.
        above: Option<Box<Formula>>,
    },
    /// One over the other.
    Fraction(Box<Formula>, Box<Formula>),
    /// A square root.
    Root(Box<Formula>),
}
