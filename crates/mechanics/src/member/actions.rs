//! What acts on a member: the internal forces at one station, and the largest ones along its length for buckling.

/// Internal forces at a station, in the member's axes (x along it, section axes y and z as in `section`).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct InternalForces {
    /// Axial force, N, tension positive.
    pub n_n: f64,
    /// Shear along y, N.
    pub v_y_n: f64,
    /// Shear along z, N.
    pub v_z_n: f64,
    /// Torsion about x, N·m.
    pub t_nm: f64,
    /// Bending about y, N·m.
    pub m_y_nm: f64,
    /// Bending about z, N·m.
    pub m_z_nm: f64,
}

impl InternalForces {
    /// The same six numbers in the order N, V_y, V_z, T, M_y, M_z.
    pub const fn to_array(self) -> [f64; 6] {
        [self.n_n, self.v_y_n, self.v_z_n, self.t_nm, self.m_y_nm, self.m_z_nm]
    }

    /// From the order N, V_y, V_z, T, M_y, M_z.
    pub const fn from_array([n_n, v_y_n, v_z_n, t_nm, m_y_nm, m_z_nm]: [f64; 6]) -> Self {
        Self { n_n, v_y_n, v_z_n, t_nm, m_y_nm, m_z_nm }
    }
}

/// The largest effects along a whole member, which buckling is judged by. Magnitudes, never negative.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SpanMaxima {
    /// Largest compression, N; 0 when the member is pulled everywhere.
    pub compression_n: f64,
    /// Largest |M_y|, N·m.
    pub m_y_nm: f64,
    /// Largest |M_z|, N·m.
    pub m_z_nm: f64,
}

impl SpanMaxima {
    /// The maxima if nothing on the member exceeded these forces.
    pub fn of(forces: &InternalForces) -> Self {
        Self { compression_n: (-forces.n_n).max(0.0), m_y_nm: forces.m_y_nm.abs(), m_z_nm: forces.m_z_nm.abs() }
    }

    /// The larger of two in every component. NaN is kept, so that it can't hide.
    #[must_use]
    pub fn max(self, other: Self) -> Self {
        Self {
            compression_n: larger(self.compression_n, other.compression_n),
            m_y_nm: larger(self.m_y_nm, other.m_y_nm),
            m_z_nm: larger(self.m_z_nm, other.m_z_nm),
        }
    }
}

fn larger(a: f64, b: f64) -> f64 {
    if a >= b || a.is_nan() { a } else { b }
}

/// What weakens the member at a station.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum At {
    /// Nothing: the gross section.
    #[default]
    Plain,
    /// A weld across the member; it matters for aluminum.
    Weld,
    /// The pin hole that the member names.
    PinHole,
    /// A pin hole within the heat-affected zone of a weld.
    WeldedPinHole,
}

impl At {
    /// Whether the station lies in the heat-affected zone of a weld.
    pub const fn is_welded(self) -> bool {
        matches!(self, Self::Weld | Self::WeldedPinHole)
    }

    /// Whether the member's pin hole is at the station.
    pub const fn is_drilled(self) -> bool {
        matches!(self, Self::PinHole | Self::WeldedPinHole)
    }
}

/// All that one evaluation needs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct MemberActions {
    /// Internal forces at the station.
    pub station: InternalForces,
    /// What weakens the member at this station.
    pub at: At,
    /// Largest effects along the member.
    pub span: SpanMaxima,
}

impl MemberActions {
    /// A plain station whose forces are also the largest of the member.
    pub fn alone(station: InternalForces) -> Self {
        Self { station, at: At::Plain, span: SpanMaxima::of(&station) }
    }

    /// Whether every number is finite; anything else is never a pass.
    pub(super) fn are_finite(&self) -> bool {
        let span = [self.span.compression_n, self.span.m_y_nm, self.span.m_z_nm];
        self.station.to_array().iter().chain(&span).all(|value| value.is_finite())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn span_maxima_keep_what_is_not_a_number() {
        let good = SpanMaxima { compression_n: 1.0, m_y_nm: 2.0, m_z_nm: 3.0 };
        let bad = SpanMaxima { compression_n: f64::NAN, m_y_nm: 5.0, m_z_nm: 1.0 };
        for merged in [good.max(bad), bad.max(good)] {
            assert!(merged.compression_n.is_nan());
            assert_eq!((merged.m_y_nm, merged.m_z_nm), (5.0, 3.0));
        }
    }

    #[test]
    fn a_pulled_member_has_no_compression() {
        let pulled = InternalForces { n_n: 10.0, m_y_nm: -3.0, ..InternalForces::default() };
        assert_eq!(SpanMaxima::of(&pulled), SpanMaxima { compression_n: 0.0, m_y_nm: 3.0, m_z_nm: 0.0 });
    }
}
