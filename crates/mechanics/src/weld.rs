//! A fillet weld all around a socket or a lug, treated as a line: the largest force per meter, and its resistance.
//!
//! Forces spread over the weld's length as in a bolt group: V/L for shear, M/I_u·c for bending, T/J_u·c for torsion,
//! per meter of a line without thickness (Shigley, Mechanical Engineering Design, tables of welds as lines).

use std::f64::consts::PI;

use thiserror::Error;

/// Shape of the weld's line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WeldLine {
    /// Around a round tube of this outside diameter, m.
    Circle { diameter_m: f64 },
    /// Around a rectangle, m: depth along z, width along y.
    Rectangle { depth_m: f64, width_m: f64 },
}

/// What the weld carries, at its centroid. Axes as in `section`.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WeldActions {
    /// Along the joined part's axis, N.
    pub axial_n: f64,
    /// Shear along y, N.
    pub v_y_n: f64,
    /// Shear along z, N.
    pub v_z_n: f64,
    /// Torsion, N·m.
    pub t_nm: f64,
    /// Bending about y, N·m.
    pub m_y_nm: f64,
    /// Bending about z, N·m.
    pub m_z_nm: f64,
}

/// Length and moments of a line per unit of throat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LineProperties {
    /// Length, m.
    pub length_m: f64,
    /// Second moment about y, m³.
    pub i_y_m3: f64,
    /// Second moment about z, m³.
    pub i_z_m3: f64,
}

/// Why a weld gives no answer.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("weld {field} must be a positive number, found {value}")]
pub struct WeldFault {
    /// Name of the field.
    pub field: &'static str,
    /// What was found.
    pub value: f64,
}

impl WeldLine {
    /// Length L and second moments of the line.
    ///
    /// Circle: L = π·d, I = π·d³/8. Rectangle b × d: L = 2·(b + d), I_y = d²/6·(3b + d).
    pub fn properties(&self) -> Result<LineProperties, WeldFault> {
        match *self {
            Self::Circle { diameter_m: d } => {
                positive("diameter_m", d)?;
                let i = PI * d.powi(3) / 8.0;
                Ok(LineProperties { length_m: PI * d, i_y_m3: i, i_z_m3: i })
            }
            Self::Rectangle { depth_m: d, width_m: b } => {
                positive("depth_m", d)?;
                positive("width_m", b)?;
                Ok(LineProperties {
                    length_m: 2.0 * (b + d),
                    i_y_m3: d * d / 6.0 * (3.0 * b + d),
                    i_z_m3: b * b / 6.0 * (3.0 * d + b),
                })
            }
        }
    }

    /// Largest force per meter of weld, N/m: the resultant of all directions, each at its own worst place, which is
    /// exact where the places coincide and safe elsewhere.
    pub fn force_n_per_m(&self, actions: &WeldActions) -> Result<f64, WeldFault> {
        let line = self.properties()?;
        let (half_depth, half_width, reach) = match *self {
            Self::Circle { diameter_m } => (0.5 * diameter_m, 0.5 * diameter_m, 0.5 * diameter_m),
            Self::Rectangle { depth_m, width_m } => (0.5 * depth_m, 0.5 * width_m, 0.5 * depth_m.hypot(width_m)),
        };
        let (from_y, from_z) =
            (actions.m_y_nm.abs() * half_depth / line.i_y_m3, actions.m_z_nm.abs() * half_width / line.i_z_m3);
        let bending = match self {
            Self::Circle { .. } => from_y.hypot(from_z),
            Self::Rectangle { .. } => from_y + from_z,
        };
        let along = actions.axial_n.abs() / line.length_m + bending;
        let across = actions.v_y_n.hypot(actions.v_z_n) / line.length_m
            + actions.t_nm.abs() * reach / (line.i_y_m3 + line.i_z_m3);
        Ok(along.hypot(across))
    }

    /// Share of a steel fillet weld's resistance used: F_w,Ed/(f_vw,d·a), f_vw,d = f_u/(√3·β_w·γ_M2).
    /// EN 1993-1-8 4.5.3.3, the simplified method (from memory, to be confirmed).
    pub fn utilization(&self, actions: &WeldActions, fillet: &SteelFillet) -> Result<f64, WeldFault> {
        positive("throat_m", fillet.throat_m)?;
        positive("ultimate_pa", fillet.ultimate_pa)?;
        positive("correlation", fillet.correlation)?;
        positive("gamma_m2", fillet.gamma_m2)?;
        let strength = fillet.ultimate_pa / (3.0_f64.sqrt() * fillet.correlation * fillet.gamma_m2);
        let share = self.force_n_per_m(actions)? / (strength * fillet.throat_m);
        if share.is_finite() { Ok(share) } else { Err(WeldFault { field: "actions", value: share }) }
    }
}

/// A steel fillet weld.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SteelFillet {
    /// Throat a, m.
    pub throat_m: f64,
    /// Ultimate strength f_u of the weaker part, Pa.
    pub ultimate_pa: f64,
    /// Correlation factor β_w of the steel.
    pub correlation: f64,
    /// γ_M2.
    pub gamma_m2: f64,
}

fn positive(field: &'static str, value: f64) -> Result<(), WeldFault> {
    if value.is_finite() && value > 0.0 { Ok(()) } else { Err(WeldFault { field, value }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rectangle_is_the_textbooks_line() {
        // Published case A9 (Shigley, 10th ed., table 9-2, in a lecture): b 70, d 120: I_u 792000 mm³; V 10 kN,
        // M 1.6 kN·m: 26.3 and 121.2, resultant 124.0 N/mm. Three digits are printed.
        let line = WeldLine::Rectangle { depth_m: 0.12, width_m: 0.07 };
        assert!((line.properties().unwrap().i_y_m3 - 792000e-9).abs() < 1e-15);
        let actions = WeldActions { v_z_n: 10e3, m_y_nm: 1600.0, ..WeldActions::default() };
        assert!((line.force_n_per_m(&actions).unwrap() - 124.0e3).abs() < 0.05e3);
    }

    #[test]
    fn a_circle_is_a_thin_ring() {
        // Limit of a ring of mean radius r and throat a: I = π·r³·a, J = 2I; bending about any axis alike.
        let line = WeldLine::Circle { diameter_m: 0.2 };
        assert!((line.properties().unwrap().i_y_m3 - PI * 1e-3).abs() < 1e-15);
        let one = WeldActions { m_y_nm: 500.0, ..WeldActions::default() };
        let slanted = WeldActions { m_y_nm: 300.0, m_z_nm: -400.0, ..WeldActions::default() };
        let (a, b) = (line.force_n_per_m(&one).unwrap(), line.force_n_per_m(&slanted).unwrap());
        assert!((a - b).abs() < 1e-9 * a);
        // By hand: torsion T: T·r/J_u = T/(2π·r²) = 100/(2π·0.01) = 1591.55 N/m.
        let twisted = WeldActions { t_nm: 100.0, ..WeldActions::default() };
        assert!((line.force_n_per_m(&twisted).unwrap() - 1591.549).abs() < 1e-3);
    }

    #[test]
    fn a_fillet_of_s235_has_its_hand_strength() {
        // f_u 360, β_w 0.8, γ_M2 1.25: 360/(√3·0.8·1.25) = 207.85 N/mm²; a 4 mm: 831.4 N/mm.
        let line = WeldLine::Rectangle { depth_m: 0.1, width_m: 0.1 };
        let fillet = SteelFillet { throat_m: 0.004, ultimate_pa: 360e6, correlation: 0.8, gamma_m2: 1.25 };
        let actions = WeldActions { axial_n: 831.384e3 * 0.4, ..WeldActions::default() };
        assert!((line.utilization(&actions, &fillet).unwrap() - 1.0).abs() < 1e-5);
        let nan = WeldActions { axial_n: f64::NAN, ..WeldActions::default() };
        assert!(line.utilization(&nan, &fillet).is_err());
    }
}
