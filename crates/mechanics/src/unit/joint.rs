//! The joints of a unit, and whose action on whom is reported there.

/// A joint. The action reported is that of the upper or carried part on the lower one, in arm axes,
/// about the joint itself; an upward force (Fz > 0) is uplift.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Joint {
    /// The arm on the mast's head.
    ArmOnMast,
    /// The mast in its socket: what the mast does to the base, without what a lug on the base takes.
    MastOnBase,
    /// The brace on its upper pin: what its axial force does to arm or mast head.
    BraceUpper,
    /// The brace on its lower pin: what its axial force does to mast, lug or foot.
    BraceLower,
}

impl Joint {
    /// All joints of a unit, from head to foot.
    pub const ALL: [Self; 4] = [Self::ArmOnMast, Self::MastOnBase, Self::BraceUpper, Self::BraceLower];
}
