//! What keeps the arm at its slew, against the torque about the mast.

/// How the slew is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SlewHoldRating {
    /// Free: the arm follows the horizontal pull and no torque builds up.
    Free,
    /// Detents; the torque at which they let go, N·m, if known.
    Detents { torque_nm: Option<f64> },
    /// A clamp; its rated torque, N·m, if known.
    Clamp { torque_nm: Option<f64> },
}

/// The verdict on the slew's hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SlewCheck {
    /// Nothing to hold: the arm is free and follows, or no torque acts.
    Follows,
    /// It is held; the share of the torque used, 1 is the limit.
    Held { utilization: f64 },
    /// A torque was calculated for an arm that is free: the case was not made for a free slew.
    TorqueOnFreeSlew { torque_nm: f64 },
    /// The torque at which it lets go isn't known: never a pass.
    NotChecked,
}

/// Torque below this is rounding of the frame's solution, N·m.
const ROUNDING_NM: f64 = 1e-6;

impl SlewHoldRating {
    /// Verdict for the largest |M_z| of all cases, N·m. Rating and torque must be of one level: both service or both
    /// design.
    pub fn check(self, torque_nm: f64) -> SlewCheck {
        if !torque_nm.is_finite() {
            return SlewCheck::NotChecked;
        }
        let acting = torque_nm.abs();
        match self {
            _ if acting <= ROUNDING_NM => SlewCheck::Follows,
            Self::Free => SlewCheck::TorqueOnFreeSlew { torque_nm },
            Self::Detents { torque_nm: rated } | Self::Clamp { torque_nm: rated } => match rated {
                Some(rated) if rated.is_finite() && rated > 0.0 => SlewCheck::Held { utilization: acting / rated },
                Some(_) | None => SlewCheck::NotChecked,
            },
        }
    }
}

impl SlewCheck {
    /// Whether the slew is known to stay where it should.
    pub fn holds(&self) -> bool {
        match self {
            Self::Follows => true,
            Self::Held { utilization } => *utilization <= 1.0,
            Self::TorqueOnFreeSlew { .. } | Self::NotChecked => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clamp_holds_up_to_its_rating() {
        let clamp = SlewHoldRating::Clamp { torque_nm: Some(400.0) };
        assert_eq!(clamp.check(-300.0), SlewCheck::Held { utilization: 0.75 });
        assert!(clamp.check(400.0).holds());
        assert!(!clamp.check(400.1).holds());
    }

    #[test]
    fn an_unknown_rating_or_torque_never_holds() {
        assert!(!SlewHoldRating::Detents { torque_nm: None }.check(1.0).holds());
        assert!(!SlewHoldRating::Clamp { torque_nm: Some(f64::NAN) }.check(1.0).holds());
        assert!(!SlewHoldRating::Free.check(f64::NAN).holds());
    }

    #[test]
    fn a_free_arm_follows_and_a_torque_on_it_is_a_contradiction() {
        assert!(SlewHoldRating::Free.check(0.0).holds());
        assert_eq!(SlewHoldRating::Free.check(50.0), SlewCheck::TorqueOnFreeSlew { torque_nm: 50.0 });
    }
}
