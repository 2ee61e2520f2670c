//! Why a frame can't be solved, with the node, member or field that is to blame.

use thiserror::Error;

/// One degree of freedom of a node, in global axes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Dof {
    /// Displacement along x.
    X,
    /// Displacement along y.
    Y,
    /// Displacement along z.
    Z,
    /// Rotation about x.
    RotationX,
    /// Rotation about y.
    RotationY,
    /// Rotation about z.
    RotationZ,
}

impl Dof {
    /// All six, in the order in which they are numbered.
    pub const ALL: [Self; 6] = [Self::X, Self::Y, Self::Z, Self::RotationX, Self::RotationY, Self::RotationZ];

    pub(super) const fn of_index(i: usize) -> Self {
        Self::ALL[i % 6]
    }
}

/// The datum that a fault is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Coordinates of a node, m.
    NodePosition,
    /// `ea_n` of a member or bar.
    AxialStiffness,
    /// `ei_y_nm2` of a member.
    BendingStiffnessY,
    /// `ei_z_nm2` of a member.
    BendingStiffnessZ,
    /// `gj_nm2` of a member.
    TorsionalStiffness,
    /// `up` of a member.
    UpDirection,
    /// End offset of a bar, m.
    BarOffset,
    /// Spring stiffness of a support.
    SupportSpring,
    /// A force or moment of a load case.
    Load,
    /// The place of a load or a station along a member, m.
    PlaceAlongMember,
}

/// Why a frame can't be built or solved.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum FrameFault {
    /// A number is NaN or infinite.
    #[error("{quantity:?} of item {index} is {value}, not a finite number")]
    NotFinite {
        /// Which datum.
        quantity: Quantity,
        /// Index of the node, member, bar or load.
        index: usize,
        /// The value found.
        value: f64,
    },
    /// A stiffness is zero or negative where it must be positive.
    #[error("{quantity:?} of item {index} is {value}; it must be positive")]
    NotPositive {
        /// Which datum.
        quantity: Quantity,
        /// Index of the member, bar or support.
        index: usize,
        /// The value found.
        value: f64,
    },
    /// Both ends of a member lie at one place.
    #[error("member {member} has no length")]
    ZeroLengthMember {
        /// Index of the member.
        member: usize,
    },
    /// Both ends of a bar lie at one place.
    #[error("bar {bar} has no length")]
    ZeroLengthBar {
        /// Index of the bar.
        bar: usize,
    },
    /// A member's `up` runs along the member and says nothing about its roll.
    #[error("`up` of member {member} runs along the member")]
    UpAlongMember {
        /// Index of the member.
        member: usize,
    },
    /// A node, member or bar that the frame doesn't have.
    #[error("item {index} does not exist; the frame has {count}")]
    Unknown {
        /// Index asked for.
        index: usize,
        /// How many there are.
        count: usize,
    },
    /// A member is released at so many ends that it turns or swings by itself.
    #[error("member {member} is released so far that it moves by itself")]
    OverReleased {
        /// Index of the member.
        member: usize,
    },
    /// The frame moves without resistance.
    #[error("the frame is a mechanism: node {node} moves freely in {dof:?}")]
    Mechanism {
        /// Node that moves most.
        node: usize,
        /// In which degree of freedom.
        dof: Dof,
    },
    /// Stiffnesses are so great or so small that their products are no numbers.
    #[error("stiffnesses at node {node} and beyond are too great or too small to compute with")]
    BeyondMeasure {
        /// First node concerned.
        node: usize,
    },
    /// A moment is put on a rotation that nothing resists.
    #[error("a moment acts on {dof:?} of node {node}, where nothing resists a rotation")]
    MomentOnFreeRotation {
        /// Node of the load.
        node: usize,
        /// Which rotation.
        dof: Dof,
    },
    /// A place along a member lies outside it.
    #[error("{at_m} m along member {member} lies outside its length of {length_m} m")]
    OutsideMember {
        /// Index of the member.
        member: usize,
        /// Place asked for, m.
        at_m: f64,
        /// Length of the member, m.
        length_m: f64,
    },
}
