//! Whether a joint stays together: what holds it against the uplift that the worst case brings.

/// What keeps a joint from coming apart along its axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Retention {
    /// Nothing.
    Nothing,
    /// The weight of what stands on it; it is already in the uplift.
    Gravity,
    /// A pin; its design resistance along the joint, N, if known.
    Pin { resistance_n: Option<f64> },
    /// A lock such as a bolt or a latch; its design resistance along the joint, N, if known.
    Locked { resistance_n: Option<f64> },
}

/// The verdict on a joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RetentionCheck {
    /// No case lifts it.
    StaysPressed,
    /// It is lifted and nothing holds it: blocking.
    ComesApart { uplift_n: f64 },
    /// It is held; the share of the resistance used, 1 is the limit.
    Held { utilization: f64 },
    /// It is lifted and held by something whose resistance isn't known: never a pass.
    NotChecked(NotCheckedRetention),
}

/// Why a retention wasn't judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotCheckedRetention {
    /// The resistance of pin or lock is missing, zero, negative or not a number.
    NoResistance,
    /// The uplift is infinite or not a number.
    NoUplift,
}

/// Uplift below this is rounding of the frame's solution and not a force, N.
const ROUNDING_N: f64 = 1e-6;

impl Retention {
    /// Verdict for the largest uplift of all cases in N: positive when the joint is pulled apart, net of all weight.
    pub fn check(self, uplift_n: f64) -> RetentionCheck {
        if !uplift_n.is_finite() {
            return RetentionCheck::NotChecked(NotCheckedRetention::NoUplift);
        }
        if uplift_n <= ROUNDING_N {
            return RetentionCheck::StaysPressed;
        }
        match self {
            Self::Nothing | Self::Gravity => RetentionCheck::ComesApart { uplift_n },
            Self::Pin { resistance_n } | Self::Locked { resistance_n } => match resistance_n {
                Some(resistance) if resistance.is_finite() && resistance > 0.0 => {
                    RetentionCheck::Held { utilization: uplift_n / resistance }
                }
                Some(_) | None => RetentionCheck::NotChecked(NotCheckedRetention::NoResistance),
            },
        }
    }
}

impl RetentionCheck {
    /// Whether the joint is known to stay together.
    pub fn holds(&self) -> bool {
        match self {
            Self::StaysPressed => true,
            Self::Held { utilization } => *utilization <= 1.0,
            Self::ComesApart { .. } | Self::NotChecked(_) => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_front_braced_arm_lifts_off_a_mast_that_only_gravity_holds() {
        // Closed form: head joint T·(1 − a/x_b), down positive: T = 2 kN, a = 1.2, x_b = 0.5: −2.8 kN, it lifts.
        let uplift: f64 = -2e3 * (1.0 - 1.2 / 0.5);
        assert!((uplift - 2800.0).abs() < 1e-9);
        for loose in [Retention::Nothing, Retention::Gravity] {
            assert_eq!(loose.check(uplift), RetentionCheck::ComesApart { uplift_n: uplift });
        }
        assert_eq!(
            Retention::Pin { resistance_n: Some(5600.0) }.check(uplift),
            RetentionCheck::Held { utilization: 0.5 }
        );
    }

    #[test]
    fn an_unknown_pin_never_holds() {
        for resistance_n in [None, Some(f64::NAN), Some(0.0), Some(-1.0)] {
            let check = Retention::Locked { resistance_n }.check(10.0);
            assert_eq!(check, RetentionCheck::NotChecked(NotCheckedRetention::NoResistance));
            assert!(!check.holds());
        }
        assert!(!Retention::Gravity.check(f64::NAN).holds());
        assert!(!Retention::Pin { resistance_n: Some(1.0) }.check(1.1).holds());
    }

    #[test]
    fn a_pressed_joint_needs_nothing() {
        assert!(Retention::Nothing.check(-500.0).holds());
        assert!(Retention::Nothing.check(0.0).holds());
        assert!(Retention::Pin { resistance_n: None }.check(0.0).holds());
    }
}
