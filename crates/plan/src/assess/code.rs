//! Codes: the stable names of rules, in words.

/// A rule's stable name. The order is the order in which findings of equal severity are listed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Code {
    /// Every part, material and length of a make-up is there.
    MakeUpIsComplete,
    /// The family lists the combination of mast, arm and brace.
    CombinationIsListed,
    /// The base takes the mast.
    BaseTakesMast,
    /// The mast is not too tall for a front brace.
    FrontBraceMastHeight,
    /// The unit stands between the ends of its edge.
    StandsPastEdgeEnd,
    /// The base stands wholly on its roof.
    BaseOnRoof,
    /// The base stands beside obstacles.
    BaseClearOfObstacles,
    /// The base suits the floor build-up.
    BaseFitsBuildUp,
    /// The slab is thick enough for the fixing.
    SlabThickEnough,
    /// The slab may be drilled where the base stands.
    DrillingAllowed,
    /// A sleeve keeps water out.
    SleeveKeepsWaterOut,
    /// The wall takes a wall base.
    WallTakesBase,
    /// The pins of a removable socket hold.
    HoldDownPins,
    /// The proof load is within what is validated.
    ProofLoad,
    /// The anchors hold.
    AnchorsHold,
    /// The plate holds.
    PlateHolds,
    /// The slab is not punched.
    SlabPunching,
    /// A sleeve holds in the slab.
    SleeveHolds,
    /// The fixing to structural steel holds.
    SteelFixingHolds,
    /// Someone stands behind the slab's data.
    SlabDataConfirmed,
    /// The unit serves a facade.
    ServesFacade,
    /// The arm clears parapets.
    ArmClearsParapet,
    /// The arm clears obstacles.
    ArmClearsObstacle,
    /// The arm clears higher roofs.
    ArmClearsHigherRoof,
    /// The arm clears other units.
    ArmClearsUnit,
    /// The brace clears parapets.
    BraceClearsParapet,
    /// The brace clears obstacles.
    BraceClearsObstacle,
    /// The brace clears higher roofs.
    BraceClearsHigherRoof,
    /// The brace clears other units.
    BraceClearsUnit,
    /// The arm can be slewed out from inboard.
    WayOutFromInboard,
    /// The operator has a place to stand.
    StandingPlaceFree,
    /// The mast can be laid down and tilted in wholly inboard.
    ErectionStripInboard,
    /// Edges near the operator are guarded.
    GuardNearEdge,
    /// Every meter of a facade that needs access is reached.
    FacadeCovered,
    /// A facade ends below its top.
    FacadeHasHeight,
    /// The drop is not longer than a rule allows.
    DropLength,
    /// The load cone holds every lean that work brings.
    LoadConeHoldsReach,
    /// Someone stands behind the load basis.
    BasisConfirmed,
    /// Someone stands behind the edges' data.
    EdgeDataConfirmed,
    /// Load factors and resistance factors are of one family.
    CodeMatchesBasis,
    /// The combination can be computed from the data there are.
    CombinationComputed,
    /// Masts, arms and braces hold.
    MemberUtilization,
    /// The declared rating covers the load.
    RatingCoversLoad,
    /// The calculation supports the declared rating.
    RatingSupported,
    /// A brace that only pulls stays pulled.
    BraceStaysPulled,
    /// Joints stay together.
    JointRetention,
    /// The slew hold holds the twist.
    SlewHold,
    /// The eye holds a person tied to it.
    EyeHoldsTether,
    /// The unit is stiff enough against second-order effects.
    SecondOrder,
    /// The tip's deflection in service.
    TipDeflection,
    /// The mast in its socket.
    MastInSocket,
    /// Parts can be handled.
    PartMass,
    /// Tags are used once.
    TagIsUnique,
    /// Effects that are left to others.
    LeftOpen,
}

impl Code {
    /// All codes in order.
    pub const ALL: [Self; 54] = [
        Self::MakeUpIsComplete,
        Self::CombinationIsListed,
        Self::BaseTakesMast,
        Self::FrontBraceMastHeight,
        Self::StandsPastEdgeEnd,
        Self::BaseOnRoof,
        Self::BaseClearOfObstacles,
        Self::BaseFitsBuildUp,
        Self::SlabThickEnough,
        Self::DrillingAllowed,
        Self::SleeveKeepsWaterOut,
        Self::WallTakesBase,
        Self::HoldDownPins,
        Self::ProofLoad,
        Self::AnchorsHold,
        Self::PlateHolds,
        Self::SlabPunching,
        Self::SleeveHolds,
        Self::SteelFixingHolds,
        Self::SlabDataConfirmed,
        Self::ServesFacade,
        Self::ArmClearsParapet,
        Self::ArmClearsObstacle,
        Self::ArmClearsHigherRoof,
        Self::ArmClearsUnit,
        Self::BraceClearsParapet,
        Self::BraceClearsObstacle,
        Self::BraceClearsHigherRoof,
        Self::BraceClearsUnit,
        Self::WayOutFromInboard,
        Self::StandingPlaceFree,
        Self::ErectionStripInboard,
        Self::GuardNearEdge,
        Self::FacadeCovered,
        Self::FacadeHasHeight,
        Self::DropLength,
        Self::LoadConeHoldsReach,
        Self::BasisConfirmed,
        Self::EdgeDataConfirmed,
        Self::CodeMatchesBasis,
        Self::CombinationComputed,
        Self::MemberUtilization,
        Self::RatingCoversLoad,
        Self::RatingSupported,
        Self::BraceStaysPulled,
        Self::JointRetention,
        Self::SlewHold,
        Self::EyeHoldsTether,
        Self::SecondOrder,
        Self::TipDeflection,
        Self::MastInSocket,
        Self::PartMass,
        Self::TagIsUnique,
        Self::LeftOpen,
    ];

    /// Its name in files and on the command line.
    pub const fn name(self) -> &'static str {
        self.texts().0
    }

    /// What the rule asks for, as a sentence.
    pub const fn asks(self) -> &'static str {
        self.texts().1
    }

    const fn texts(self) -> (&'static str, &'static str) {
        match self {
            Self::MakeUpIsComplete => ("make-up-is-complete", "Every part of the make-up has its data."),
            Self::CombinationIsListed => {
                ("combination-is-listed", "The family lists this mast, arm and brace together.")
            }
            Self::BaseTakesMast => ("base-takes-mast", "The base takes this mast."),
            Self::FrontBraceMastHeight => {
                ("front-brace-mast-height", "A mast with a front brace is not taller than the family allows.")
            }
            Self::StandsPastEdgeEnd => ("stands-past-edge-end", "The unit stands between the ends of its edge."),
            Self::BaseOnRoof => ("base-on-roof", "The base plate lies wholly on its roof."),
            Self::BaseClearOfObstacles => ("base-clear-of-obstacles", "The base does not stand in an obstacle."),
            Self::BaseFitsBuildUp => ("base-fits-build-up", "The base suits the height of the floor build-up."),
            Self::SlabThickEnough => ("slab-thick-enough", "The slab is as thick as the base and its fixing need."),
            Self::DrillingAllowed => ("drilling-allowed", "Nothing is drilled where drilling is forbidden."),
            Self::SleeveKeepsWaterOut => ("sleeve-keeps-water-out", "A sleeve has a drain and a cap."),
            Self::WallTakesBase => {
                ("wall-takes-base", "The wall is thick enough and reaches far enough past the plate of a wall base.")
            }
            Self::HoldDownPins => ("hold-down-pins", "The pins of a removable socket hold it down."),
            Self::ProofLoad => ("proof-load", "A proof test pulls no more than the validated design load."),
            Self::AnchorsHold => ("anchors-hold", "The anchors hold in the concrete that is left around them."),
            Self::PlateHolds => ("plate-holds", "The plate stays elastic, is stiff, and what it presses on bears it."),
            Self::SlabPunching => ("slab-punching", "The slab is not punched, down or up; indicative."),
            Self::SleeveHolds => ("sleeve-holds", "A sleeve holds in the concrete round it."),
            Self::SteelFixingHolds => ("steel-fixing-holds", "Bolts or weld to structural steel hold."),
            Self::SlabDataConfirmed => ("slab-data-confirmed", "Someone stands behind the slab's data."),
            Self::ServesFacade => ("serves-facade", "The unit serves a facade that needs access."),
            Self::ArmClearsParapet => ("arm-clears-parapet", "The arm passes over parapets with room."),
            Self::ArmClearsObstacle => ("arm-clears-obstacle", "The arm passes obstacles with room."),
            Self::ArmClearsHigherRoof => {
                ("arm-clears-higher-roof", "The arm passes higher parts of the building with room.")
            }
            Self::ArmClearsUnit => ("arm-clears-unit", "The arm passes other units with room."),
            Self::BraceClearsParapet => ("brace-clears-parapet", "The brace passes parapets with room."),
            Self::BraceClearsObstacle => ("brace-clears-obstacle", "The brace passes obstacles with room."),
            Self::BraceClearsHigherRoof => {
                ("brace-clears-higher-roof", "The brace passes higher parts of the building with room.")
            }
            Self::BraceClearsUnit => ("brace-clears-unit", "The brace passes other units with room."),
            Self::WayOutFromInboard => {
                ("way-out-from-inboard", "The arm can be slewed from inboard to where it serves the facade.")
            }
            Self::StandingPlaceFree => ("standing-place-free", "The operator has a free place to stand on the roof."),
            Self::ErectionStripInboard => {
                ("erection-strip-inboard", "The mast can be laid down and tilted in on a free strip of roof.")
            }
            Self::GuardNearEdge => ("guard-near-edge", "Edges near the standing place are guarded high enough."),
            Self::FacadeCovered => ("facade-covered", "Every part of a facade that needs access is reached."),
            Self::FacadeHasHeight => ("facade-has-height", "A facade ends below its top."),
            Self::DropLength => ("drop-length", "The drop is not longer than the basis allows."),
            Self::LoadConeHoldsReach => ("load-cone-holds-reach", "The load cone holds every lean that work brings."),
            Self::BasisConfirmed => ("basis-confirmed", "Someone stands behind the load basis."),
            Self::EdgeDataConfirmed => ("edge-data-confirmed", "Someone stands behind the parapet and facade data."),
            Self::CodeMatchesBasis => {
                ("code-matches-basis", "Load and resistance factors belong to one family of codes.")
            }
            Self::CombinationComputed => ("combination-computed", "Every combination of the basis could be computed."),
            Self::MemberUtilization => ("member-utilization", "Mast, arm and brace hold what they carry."),
            Self::RatingCoversLoad => ("rating-covers-load", "The declared rating covers the load in service."),
            Self::RatingSupported => ("rating-supported", "The calculation supports the declared rating."),
            Self::BraceStaysPulled => ("brace-stays-pulled", "A brace that only pulls is pulled in every case."),
            Self::JointRetention => ("joint-retention", "Every joint is held against uplift."),
            Self::SlewHold => ("slew-hold", "The slew hold holds the largest twist."),
            Self::EyeHoldsTether => ("eye-holds-tether", "The base's eye holds a person tied to it."),
            Self::SecondOrder => ("second-order", "The unit is far enough from buckling as a whole."),
            Self::TipDeflection => ("tip-deflection", "The tip deflects little enough in service."),
            Self::MastInSocket => ("mast-in-socket", "Socket and mast wall hold the couple at the socket."),
            Self::PartMass => ("part-mass", "Each portable part can be handled."),
            Self::TagIsUnique => ("tag-is-unique", "Every tag is used once."),
            Self::LeftOpen => ("left-open", "Effects that this program does not look at."),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_code_is_listed_once_in_order_with_its_own_name() {
        assert!(Code::ALL.windows(2).all(|pair| pair[0] < pair[1]));
        let names: std::collections::BTreeSet<&str> = Code::ALL.iter().map(|code| code.name()).collect();
        assert_eq!(names.len(), Code::ALL.len());
    }
}
