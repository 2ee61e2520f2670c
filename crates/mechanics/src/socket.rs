//! A mast standing in a socket: the couple that holds its moment, what that does to its wall, and how far it leans
//! before any load, from play and plumb.

use thiserror::Error;

use crate::ring::{RingFault, RingPush};
use crate::section::Section;

/// A socket as the mast sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Socket {
    /// Depth of mast in the socket below its mouth, m.
    pub engaged_m: f64,
    /// Where mast and socket touch.
    pub contact: Contact,
    /// Play: inside width of the socket less outside width of the mast, m.
    pub play_m: f64,
    /// How far out of plumb the socket itself may stand, rad.
    pub plumb_tolerance_rad: f64,
}

/// Where mast and socket touch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Contact {
    /// On two collars of this height each, at the mouth and at the foot; 0 for edges.
    Collars { height_m: f64 },
    /// Along the whole depth: pressure straight from mouth to foot, as between a rigid mast and an even bedding.
    WholeDepth,
}

/// Largest actions of the mast at the socket's mouth. Both are taken in one plane and one sense, the worst.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MouthActions {
    /// Shear V ≥ 0, N.
    pub shear_n: f64,
    /// Bending moment M ≥ 0, N·m.
    pub moment_nm: f64,
}

/// The couple between mast and socket.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SocketForces {
    /// Push near the mouth, N.
    pub upper_n: f64,
    /// Push near the foot, opposite, N; upper less lower is the shear.
    pub lower_n: f64,
    /// Length of mast that takes the upper push, m.
    pub upper_length_m: f64,
    /// Length of mast that takes the lower push, m.
    pub lower_length_m: f64,
    /// Largest push per meter of mast, at the upper edge, N/m.
    pub peak_upper_n_per_m: f64,
    /// Largest push per meter of mast near the foot, N/m.
    pub peak_lower_n_per_m: f64,
}

/// Whether the mast's wall holds where the socket pushes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WallCrushing {
    /// Largest wall stress over design strength; a lower bound of resistance, so 1 is safe and above 1 not yet failed.
    Utilization(f64),
    /// No method is built for this mast or contact.
    NotChecked(&'static str),
}

/// Why a socket gives no answer.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum SocketFault {
    /// A value is zero, negative, infinite or not a number.
    #[error("socket {field} must be a positive number, found {value}")]
    NotPositive { field: &'static str, value: f64 },
    /// A value is negative, infinite or not a number.
    #[error("socket {field} must be zero or positive, found {value}")]
    Negative { field: &'static str, value: f64 },
    /// The two collars overlap.
    #[error("socket contact.height_m {height_m} leaves no lever between two collars in {engaged_m} m")]
    NoLever { height_m: f64, engaged_m: f64 },
    /// The mast's wall can't be looked at.
    #[error(transparent)]
    Ring(#[from] RingFault),
}

impl Socket {
    /// Pushes between mast and socket under the mouth's actions.
    ///
    /// Collars of height k in a depth h: lever z = h − k, lower = (M + V·k/2)/z, upper = lower + V; for k = 0
    /// F = M/h + V. Whole depth: pressure per meter 4V/h + 6M/h² at the mouth falling straight to
    /// −(2V/h + 6M/h²) at the foot; the pushes are its two triangles. Equilibrium of a rigid mast; the mast's
    /// own bending spreads the whole-depth pressure unevenly only if the socket is stiffer than the mast.
    pub fn forces(&self, actions: &MouthActions) -> Result<SocketForces, SocketFault> {
        self.validate()?;
        let (v, m) = (actions.shear_n, actions.moment_nm);
        zero_or_positive("shear_n", v)?;
        zero_or_positive("moment_nm", m)?;
        let h = self.engaged_m;
        Ok(match self.contact {
            Contact::Collars { height_m } => {
                let lower_n = (m + 0.5 * v * height_m) / (h - height_m);
                let upper_n = lower_n + v;
                let per_meter = |push: f64| if height_m > 0.0 { push / height_m } else { f64::INFINITY };
                SocketForces {
                    upper_n,
                    lower_n,
                    upper_length_m: height_m,
                    lower_length_m: height_m,
                    peak_upper_n_per_m: per_meter(upper_n),
                    peak_lower_n_per_m: per_meter(lower_n),
                }
            }
            Contact::WholeDepth => whole_depth(h, v, m),
        })
    }

    /// Lean of the unloaded mast, rad: plumb tolerance plus the play over the lever between its two contacts.
    ///
    /// φ = φ_plumb + atan(play/z), z the distance between the outer edges of the contacts: a mast with play p touches
    /// the mouth on one side and the foot on the other.
    pub fn initial_lean_rad(&self) -> Result<f64, SocketFault> {
        self.validate()?;
        Ok(self.plumb_tolerance_rad + (self.play_m / self.engaged_m).atan())
    }

    /// Crushing of a round mast's wall at both contacts, by `ring`: the wall's largest elastic bending and hoop stress
    /// over `strength_pa` (f_y/γ_M0 of the mast, reduced near a weld).
    ///
    /// `half_angle_rad` is half the angle over which mast and socket touch, 0 for a line. Along the whole depth the peak
    /// pressure is taken per meter. Rectangular masts and edges without height are not checked.
    pub fn wall_crushing(
        &self,
        mast: &Section,
        strength_pa: f64,
        half_angle_rad: f64,
        actions: &MouthActions,
    ) -> Result<WallCrushing, SocketFault> {
        let forces = self.forces(actions)?;
        if !(strength_pa.is_finite() && strength_pa > 0.0) {
            return Err(SocketFault::NotPositive { field: "strength_pa", value: strength_pa });
        }
        let Section::RoundTube { diameter_m, wall_m } = *mast else {
            return Ok(match mast {
                Section::RectTube { .. } => WallCrushing::NotChecked("wall crushing of rectangular masts"),
                _ => WallCrushing::NotChecked("a solid mast has no wall to crush; bearing pressure is not judged"),
            });
        };
        let peak = forces.peak_upper_n_per_m.max(forces.peak_lower_n_per_m);
        if !peak.is_finite() {
            return Ok(WallCrushing::NotChecked("a collar without height pushes on an edge"));
        }
        let ring = RingPush { diameter_m, wall_m, length_m: 1.0, half_angle_rad };
        Ok(WallCrushing::Utilization(ring.stress_pa(peak)? / strength_pa))
    }

    fn validate(&self) -> Result<(), SocketFault> {
        if !(self.engaged_m.is_finite() && self.engaged_m > 0.0) {
            return Err(SocketFault::NotPositive { field: "engaged_m", value: self.engaged_m });
        }
        zero_or_positive("play_m", self.play_m)?;
        zero_or_positive("plumb_tolerance_rad", self.plumb_tolerance_rad)?;
        if let Contact::Collars { height_m } = self.contact {
            zero_or_positive("contact.height_m", height_m)?;
            if 2.0 * height_m > self.engaged_m {
                return Err(SocketFault::NoLever { height_m, engaged_m: self.engaged_m });
            }
        }
        Ok(())
    }
}

/// Straight pressure p(x) = a − b·x below the mouth with ∫p = V and ∫p·x = −M.
fn whole_depth(h: f64, v: f64, m: f64) -> SocketForces {
    let a = 4.0 * v / h + 6.0 * m / (h * h);
    let b = 12.0 * m / h.powi(3) + 6.0 * v / (h * h);
    let foot = b * h - a;
    if b == 0.0 {
        return SocketForces {
            upper_n: 0.0,
            lower_n: 0.0,
            upper_length_m: h,
            lower_length_m: 0.0,
            peak_upper_n_per_m: 0.0,
            peak_lower_n_per_m: 0.0,
        };
    }
    let turn = a / b;
    let upper_n = 0.5 * a * turn;
    SocketForces {
        upper_n,
        lower_n: upper_n - v,
        upper_length_m: turn,
        lower_length_m: h - turn,
        peak_upper_n_per_m: a,
        peak_lower_n_per_m: foot,
    }
}

fn zero_or_positive(field: &'static str, value: f64) -> Result<(), SocketFault> {
    if value.is_finite() && value >= 0.0 { Ok(()) } else { Err(SocketFault::Negative { field, value }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn socket(contact: Contact) -> Socket {
        Socket { engaged_m: 0.4, contact, play_m: 0.002, plumb_tolerance_rad: 0.005 }
    }

    const ACTIONS: MouthActions = MouthActions { shear_n: 2e3, moment_nm: 6e3 };

    #[test]
    fn edges_carry_moment_over_depth_plus_shear() {
        // By hand: 6000/0.4 = 15 kN at the foot, 17 kN at the mouth.
        let forces = socket(Contact::Collars { height_m: 0.0 }).forces(&ACTIONS).unwrap();
        assert_eq!((forces.lower_n, forces.upper_n), (15e3, 17e3));
    }

    #[test]
    fn every_contact_is_in_equilibrium_with_the_mouth() {
        // ΣF: upper − lower = V. ΣM about the mouth: lower·arm − upper·arm = M, arms at the pushes' centroids.
        for height_m in [0.0, 0.05, 0.2] {
            let forces = socket(Contact::Collars { height_m }).forces(&ACTIONS).unwrap();
            assert!((forces.upper_n - forces.lower_n - 2e3).abs() < 1e-9);
            let moment = forces.lower_n * (0.4 - 0.5 * height_m) - forces.upper_n * 0.5 * height_m;
            assert!((moment - 6e3).abs() < 1e-8);
        }
        let forces = socket(Contact::WholeDepth).forces(&ACTIONS).unwrap();
        assert!((forces.upper_n - forces.lower_n - 2e3).abs() < 1e-9);
        let moment =
            forces.lower_n * (0.4 - forces.lower_length_m / 3.0) - forces.upper_n * forces.upper_length_m / 3.0;
        assert!((moment - 6e3).abs() < 1e-8);
        // The triangles' areas are the pushes.
        assert!((0.5 * forces.peak_lower_n_per_m * forces.lower_length_m - forces.lower_n).abs() < 1e-8);
    }

    #[test]
    fn whole_depth_contact_has_the_classical_peaks() {
        // By hand: moment alone turns at mid-depth with 6M/h² = 225 kN/m; shear alone turns at two thirds with 4V/h.
        let moment = MouthActions { shear_n: 0.0, moment_nm: 6e3 };
        let forces = socket(Contact::WholeDepth).forces(&moment).unwrap();
        assert!((forces.upper_length_m - 0.2).abs() < 1e-12);
        assert!((forces.peak_upper_n_per_m - 225e3).abs() < 1e-6);
        let shear = MouthActions { shear_n: 2e3, moment_nm: 0.0 };
        let forces = socket(Contact::WholeDepth).forces(&shear).unwrap();
        assert!((forces.upper_length_m - 0.4 * 2.0 / 3.0).abs() < 1e-12);
        assert!((forces.peak_upper_n_per_m - 20e3).abs() < 1e-9);
        let nothing = MouthActions { shear_n: 0.0, moment_nm: 0.0 };
        assert_eq!(socket(Contact::WholeDepth).forces(&nothing).unwrap().upper_n, 0.0);
    }

    #[test]
    fn play_and_plumb_add_up_to_the_first_lean() {
        // By hand: 0.005 + atan(2/400) = 0.005 + 0.00499996 rad; 20 mm at 2 m.
        let lean = socket(Contact::WholeDepth).initial_lean_rad().unwrap();
        assert!((lean - 0.00999996).abs() < 1e-8);
    }

    #[test]
    fn a_round_mast_is_crushed_by_collars_and_a_square_one_is_not_checked() {
        // By hand: collars of 50 mm in 400: lower (6000 + 2000·0.025)/0.35 = 17.286 kN, upper 19.286 kN → 385.71 kN/m.
        // Tube 106 × 6, line contact: 41.236 MPa per kN on 50 mm (see `ring`): 19.286·41.236 = 795.3 MPa over 355.
        let socket = socket(Contact::Collars { height_m: 0.05 });
        let tube = Section::RoundTube { diameter_m: 0.106, wall_m: 0.006 };
        let found = socket.wall_crushing(&tube, 355e6, 0.0, &ACTIONS).unwrap();
        let WallCrushing::Utilization(value) = found else { panic!("{found:?}") };
        assert!((value - 795.3 / 355.0).abs() < 1e-3, "{value}");
        let square = Section::RectTube { depth_m: 0.1, width_m: 0.1, wall_m: 0.006, outer_radius_m: 0.0 };
        let found = socket.wall_crushing(&square, 355e6, 0.0, &ACTIONS).unwrap();
        assert!(matches!(found, WallCrushing::NotChecked(_)));
    }

    #[test]
    fn faults_name_the_field() {
        let shallow = Socket { engaged_m: 0.0, ..socket(Contact::WholeDepth) };
        assert!(matches!(shallow.forces(&ACTIONS), Err(SocketFault::NotPositive { field: "engaged_m", .. })));
        let crowded = socket(Contact::Collars { height_m: 0.25 });
        assert!(matches!(crowded.forces(&ACTIONS), Err(SocketFault::NoLever { .. })));
        let negative = MouthActions { shear_n: -1.0, moment_nm: 0.0 };
        assert!(matches!(
            socket(Contact::WholeDepth).forces(&negative),
            Err(SocketFault::Negative { field: "shear_n", .. })
        ));
    }
}
