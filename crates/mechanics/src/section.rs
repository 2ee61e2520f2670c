//! A `Section` is the bare shape of a bar; `Section::properties` turns it once into checked numbers or names the field that is wrong.
//!
//! Axes of a section: x along the bar, z along `depth_m`, y along `width_m`. `y` properties belong to bending
//! about y (the depth resists), `z` properties to bending about z (the width resists), as in EN 1993-1-1 1.7.

use std::f64::consts::PI;

use thiserror::Error;

use crate::material::{Material, MaterialFault, STANDARD_GRAVITY_M_S2};
use crate::stiffness::BarStiffness;

/// The shape of a bar's cross-section. All lengths in m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Section {
    /// Round tube: outside diameter and wall. A wall of half the diameter is refused: that is a `SolidRound`.
    RoundTube { diameter_m: f64, wall_m: f64 },
    /// Rectangular tube: outside depth (along z), outside width (along y), wall, and the outside radius of the corners.
    ///
    /// `outer_radius_m` is 0 for sharp (extruded) corners. Rolled tubes have rounded ones; leaving the radius out
    /// overstates area and moduli by some 3 to 5 percent, so it is a datum and never guessed.
    RectTube { depth_m: f64, width_m: f64, wall_m: f64, outer_radius_m: f64 },
    /// Solid round bar.
    SolidRound { diameter_m: f64 },
    /// Flat or square bar: depth (along z) and width (along y).
    SolidRect { depth_m: f64, width_m: f64 },
}

/// What a section is worth, derived from its shape. Every number is finite and positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionProperties {
    /// Area A, m².
    pub area_m2: f64,
    /// Second moment of area about y, m⁴.
    pub i_y_m4: f64,
    /// Second moment of area about z, m⁴.
    pub i_z_m4: f64,
    /// St. Venant torsion constant J, m⁴.
    pub j_m4: f64,
    /// Elastic modulus W_el about y, m³.
    pub w_el_y_m3: f64,
    /// Elastic modulus W_el about z, m³.
    pub w_el_z_m3: f64,
    /// Plastic modulus W_pl about y, m³.
    pub w_pl_y_m3: f64,
    /// Plastic modulus W_pl about z, m³.
    pub w_pl_z_m3: f64,
    /// Torsion modulus W_t, m³: largest St. Venant shear stress τ = T/W_t.
    pub w_t_m3: f64,
    /// Shear area for a force along y, m² (EN 1993-1-1 6.2.6(3)).
    pub shear_area_y_m2: f64,
    /// Shear area for a force along z, m² (EN 1993-1-1 6.2.6(3)).
    pub shear_area_z_m2: f64,
    /// Radius of gyration i_y = √(I_y/A), m.
    pub gyration_y_m: f64,
    /// Radius of gyration i_z = √(I_z/A), m.
    pub gyration_z_m: f64,
}

/// Why a shape has no properties.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum SectionFault {
    /// A length is zero, negative, infinite or not a number.
    #[error("section {field} must be a positive length, found {value} m")]
    NotPositive { field: &'static str, value: f64 },
    /// The walls meet in the middle.
    #[error("section wall_m is {wall_m} m, but must stay below {limit_m} m (half the smaller outside dimension)")]
    WallTooThick { wall_m: f64, limit_m: f64 },
    /// A corner radius is negative or larger than half the smaller side.
    #[error("section outer_radius_m is {value} m, but must lie between 0 and {limit_m} m")]
    CornerRadius { value: f64, limit_m: f64 },
}

/// Why a section and a material give no stiffness.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum BarFault {
    /// The shape is wrong.
    #[error(transparent)]
    Section(#[from] SectionFault),
    /// The material is wrong.
    #[error(transparent)]
    Material(#[from] MaterialFault),
}

impl Section {
    /// The numbers of this shape, or the field that is wrong.
    ///
    /// Round tube, closed forms: A = π/4·(D² − d²), I = π/64·(D⁴ − d⁴), J = 2I, W_pl = (D³ − d³)/6, shear area 2A/π.
    /// Rectangular tube: outer rounded rectangle less the inner one (exact); J and W_t by the closed-cell formula of
    /// EN 10210-2 Annex (from memory, to be confirmed): h_m = mid-line length, A_m = enclosed area, K = 2·A_m·t/h_m,
    /// J = t³·h_m/3 + 2·K·A_m, W_t = J/(t + K/t); shear areas A·h/(b + h) and A·b/(b + h).
    /// Solid round: d⁴ and d³ forms. Solid rectangle: J and W_t by St. Venant's series (Timoshenko and Goodier, Theory
    /// of Elasticity, torsion of a rectangular bar), summed until a term no longer counts.
    pub fn properties(&self) -> Result<SectionProperties, SectionFault> {
        match *self {
            Self::RoundTube { diameter_m, wall_m } => round_tube(diameter_m, wall_m),
            Self::RectTube { depth_m, width_m, wall_m, outer_radius_m } => {
                rect_tube(depth_m, width_m, wall_m, outer_radius_m)
            }
            Self::SolidRound { diameter_m } => {
                positive("diameter_m", diameter_m)?;
                Ok(round(diameter_m, 0.0))
            }
            Self::SolidRect { depth_m, width_m } => {
                positive("depth_m", depth_m)?;
                positive("width_m", width_m)?;
                Ok(solid_rect(depth_m, width_m))
            }
        }
    }

    /// EA, EI_y, EI_z, GJ and weight per meter of a bar of this shape in `material`.
    ///
    /// Weight = ρ·g·A with standard gravity; fittings, welds and coatings are not in it.
    pub fn stiffness(&self, material: &Material) -> Result<BarStiffness, BarFault> {
        let p = self.properties()?;
        material.check()?;
        Ok(BarStiffness {
            ea_n: material.elastic_pa * p.area_m2,
            ei_y_nm2: material.elastic_pa * p.i_y_m4,
            ei_z_nm2: material.elastic_pa * p.i_z_m4,
            gj_nm2: material.shear_pa * p.j_m4,
            weight_n_per_m: material.density_kg_m3 * STANDARD_GRAVITY_M_S2 * p.area_m2,
        })
    }

    /// Outside depth (along z), m.
    pub fn depth_m(&self) -> f64 {
        match *self {
            Self::RoundTube { diameter_m, .. } | Self::SolidRound { diameter_m } => diameter_m,
            Self::RectTube { depth_m, .. } | Self::SolidRect { depth_m, .. } => depth_m,
        }
    }

    /// Outside width (along y), m.
    pub fn width_m(&self) -> f64 {
        match *self {
            Self::RoundTube { diameter_m, .. } | Self::SolidRound { diameter_m } => diameter_m,
            Self::RectTube { width_m, .. } | Self::SolidRect { width_m, .. } => width_m,
        }
    }

    /// Whether bending has no preferred axis, so that M = hypot(M_y, M_z) may be used.
    pub fn is_round(&self) -> bool {
        matches!(self, Self::RoundTube { .. } | Self::SolidRound { .. })
    }
}

fn positive(field: &'static str, value: f64) -> Result<(), SectionFault> {
    if value.is_finite() && value > 0.0 { Ok(()) } else { Err(SectionFault::NotPositive { field, value }) }
}

fn thin_enough(wall_m: f64, smaller_side_m: f64) -> Result<(), SectionFault> {
    positive("wall_m", wall_m)?;
    let limit_m = 0.5 * smaller_side_m;
    if wall_m < limit_m { Ok(()) } else { Err(SectionFault::WallTooThick { wall_m, limit_m }) }
}

fn round_tube(diameter_m: f64, wall_m: f64) -> Result<SectionProperties, SectionFault> {
    positive("diameter_m", diameter_m)?;
    thin_enough(wall_m, diameter_m)?;
    Ok(round(diameter_m, diameter_m - 2.0 * wall_m))
}

fn round(outer: f64, inner: f64) -> SectionProperties {
    let area = PI / 4.0 * (outer * outer - inner * inner);
    let i = PI / 64.0 * (outer.powi(4) - inner.powi(4));
    let w_el = i / (0.5 * outer);
    let w_pl = (outer.powi(3) - inner.powi(3)) / 6.0;
    // A solid bar shears over its whole area, a tube over the 2A/π of EN 1993-1-1 6.2.6(3) g.
    let shear = if inner > 0.0 { 2.0 * area / PI } else { area };
    let gyration = (i / area).sqrt();
    SectionProperties {
        area_m2: area,
        i_y_m4: i,
        i_z_m4: i,
        j_m4: 2.0 * i,
        w_el_y_m3: w_el,
        w_el_z_m3: w_el,
        w_pl_y_m3: w_pl,
        w_pl_z_m3: w_pl,
        w_t_m3: 2.0 * w_el,
        shear_area_y_m2: shear,
        shear_area_z_m2: shear,
        gyration_y_m: gyration,
        gyration_z_m: gyration,
    }
}

fn rect_tube(h: f64, b: f64, t: f64, radius: f64) -> Result<SectionProperties, SectionFault> {
    positive("depth_m", h)?;
    positive("width_m", b)?;
    thin_enough(t, h.min(b))?;
    let limit_m = 0.5 * h.min(b);
    if !(radius.is_finite() && radius >= 0.0 && radius <= limit_m) {
        return Err(SectionFault::CornerRadius { value: radius, limit_m });
    }
    let outer = RoundedRectangle { h, b, r: radius };
    let inner = RoundedRectangle { h: h - 2.0 * t, b: b - 2.0 * t, r: (radius - t).max(0.0) };
    let area = outer.area() - inner.area();
    let i_y = outer.second_moment() - inner.second_moment();
    let i_z = outer.turned().second_moment() - inner.turned().second_moment();
    let (j, w_t) = closed_cell(h, b, t, 0.5 * (outer.r + inner.r));
    Ok(SectionProperties {
        area_m2: area,
        i_y_m4: i_y,
        i_z_m4: i_z,
        j_m4: j,
        w_el_y_m3: i_y / (0.5 * h),
        w_el_z_m3: i_z / (0.5 * b),
        w_pl_y_m3: outer.plastic_modulus() - inner.plastic_modulus(),
        w_pl_z_m3: outer.turned().plastic_modulus() - inner.turned().plastic_modulus(),
        w_t_m3: w_t,
        shear_area_y_m2: area * b / (b + h),
        shear_area_z_m2: area * h / (b + h),
        gyration_y_m: (i_y / area).sqrt(),
        gyration_z_m: (i_z / area).sqrt(),
    })
}

/// Torsion constant and modulus of a closed cell of even wall, mid-line corner radius `radius`.
fn closed_cell(h: f64, b: f64, t: f64, radius: f64) -> (f64, f64) {
    let midline = 2.0 * ((b - t) + (h - t)) - 2.0 * radius * (4.0 - PI);
    let enclosed = (b - t) * (h - t) - radius * radius * (4.0 - PI);
    let k = 2.0 * enclosed * t / midline;
    let j = t.powi(3) * midline / 3.0 + 2.0 * k * enclosed;
    (j, j / (t + k / t))
}

/// A solid rectangle with rounded corners, bent about its axis along `b`.
struct RoundedRectangle {
    h: f64,
    b: f64,
    r: f64,
}

impl RoundedRectangle {
    fn turned(&self) -> Self {
        Self { h: self.b, b: self.h, r: self.r }
    }

    fn area(&self) -> f64 {
        self.b * self.h - (4.0 - PI) * self.r * self.r
    }

    /// Distance of a corner spandrel's centroid from the axis; the spandrel is the square r × r less its quarter disk.
    fn spandrel_arm(&self) -> f64 {
        0.5 * self.h - (10.0 - 3.0 * PI) / (12.0 - 3.0 * PI) * self.r
    }

    fn spandrel_area(&self) -> f64 {
        (1.0 - PI / 4.0) * self.r * self.r
    }

    fn second_moment(&self) -> f64 {
        let own = (1.0 / 3.0 - PI / 16.0 - 1.0 / (3.0 * (12.0 - 3.0 * PI))) * self.r.powi(4);
        self.b * self.h.powi(3) / 12.0 - 4.0 * (own + self.spandrel_area() * self.spandrel_arm().powi(2))
    }

    fn plastic_modulus(&self) -> f64 {
        self.b * self.h * self.h / 4.0 - 4.0 * self.spandrel_area() * self.spandrel_arm()
    }
}

fn solid_rect(h: f64, b: f64) -> SectionProperties {
    let area = h * b;
    let (j, w_t) = solid_rect_torsion(h.max(b), h.min(b));
    SectionProperties {
        area_m2: area,
        i_y_m4: b * h.powi(3) / 12.0,
        i_z_m4: h * b.powi(3) / 12.0,
        j_m4: j,
        w_el_y_m3: b * h * h / 6.0,
        w_el_z_m3: h * b * b / 6.0,
        w_pl_y_m3: b * h * h / 4.0,
        w_pl_z_m3: h * b * b / 4.0,
        w_t_m3: w_t,
        shear_area_y_m2: area,
        shear_area_z_m2: area,
        gyration_y_m: h / 12.0_f64.sqrt(),
        gyration_z_m: b / 12.0_f64.sqrt(),
    }
}

/// St. Venant's series for a rectangle a ≥ b:
/// J = a·b³·[1/3 − (64/π⁵)·(b/a)·Σ tanh(nπa/2b)/n⁵], τ_max = (T·b/J)·[1 − (8/π²)·Σ 1/(n²·cosh(nπa/2b))], n odd.
fn solid_rect_torsion(a: f64, b: f64) -> (f64, f64) {
    let (mut tanh_sum, mut cosh_sum) = (0.0, 0.0);
    // Terms fall with n⁵ and with e^(−n·π/2); after n = 99 the first is below 1e-10 of the sum.
    for n in (1..100).step_by(2).map(f64::from) {
        let argument = n * PI * a / (2.0 * b);
        tanh_sum += argument.tanh() / n.powi(5);
        cosh_sum += 1.0 / (n * n * argument.cosh());
    }
    let j = a * b.powi(3) * (1.0 / 3.0 - 64.0 / PI.powi(5) * (b / a) * tanh_sum);
    let stress_per_torque = b / j * (1.0 - 8.0 / (PI * PI) * cosh_sum);
    (j, 1.0 / stress_per_torque)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(found: f64, expected: f64, relative: f64) {
        assert!((found - expected).abs() <= relative * expected.abs(), "found {found}, expected {expected}");
    }

    #[test]
    fn a_round_tube_has_the_published_area() {
        // Published case D9: 244.5 × 10 has A = 7367.034772668 mm², printed to 13 digits.
        let p = Section::RoundTube { diameter_m: 0.2445, wall_m: 0.010 }.properties().unwrap();
        close(p.area_m2, 7367.034772668e-6, 1e-12);
    }

    #[test]
    fn a_thin_ring_tends_to_its_midline_formulas() {
        // With mean radius r and t/r = 1e-4 the ring has A = 2πrt, I = πr³t, W_pl = 4r²t; the error is of order (t/r)².
        let (r, t) = (0.1, 1e-5);
        let p = Section::RoundTube { diameter_m: 2.0 * r + t, wall_m: t }.properties().unwrap();
        close(p.area_m2, 2.0 * PI * r * t, 1e-7);
        close(p.i_y_m4, PI * r.powi(3) * t, 1e-7);
        close(p.w_pl_y_m3, 4.0 * r * r * t, 1e-7);
    }

    #[test]
    fn a_sharp_rectangular_tube_is_one_rectangle_less_another() {
        // By hand for 120 × 80 × 5: A = 120·80 − 110·70 = 1900 mm²; I_y = (80·120³ − 70·110³)/12 = 3755833.3 mm⁴;
        // W_pl,y = (80·120² − 70·110²)/4 = 76250 mm³.
        let p = Section::RectTube { depth_m: 0.12, width_m: 0.08, wall_m: 0.005, outer_radius_m: 0.0 }
            .properties()
            .unwrap();
        close(p.area_m2, 1900e-6, 1e-12);
        close(p.i_y_m4, (80.0 * 120f64.powi(3) - 70.0 * 110f64.powi(3)) / 12.0 * 1e-12, 1e-12);
        close(p.w_pl_y_m3, 76250e-9, 1e-12);
        // Turned by a quarter, y and z change places.
        let q = Section::RectTube { depth_m: 0.08, width_m: 0.12, wall_m: 0.005, outer_radius_m: 0.0 }
            .properties()
            .unwrap();
        close(q.i_z_m4, p.i_y_m4, 1e-12);
        close(q.w_pl_z_m3, p.w_pl_y_m3, 1e-12);
    }

    #[test]
    fn fully_rounded_corners_of_a_square_tube_make_a_round_tube() {
        // A square with corner radius of half its side is a circle: A, I and W_pl must agree to rounding.
        let square =
            Section::RectTube { depth_m: 0.1, width_m: 0.1, wall_m: 0.006, outer_radius_m: 0.05 }.properties().unwrap();
        let round = Section::RoundTube { diameter_m: 0.1, wall_m: 0.006 }.properties().unwrap();
        close(square.area_m2, round.area_m2, 1e-12);
        close(square.i_y_m4, round.i_y_m4, 1e-10);
        close(square.w_pl_z_m3, round.w_pl_z_m3, 1e-10);
        // The closed-cell torsion constant is a thin-wall formula: for t/D = 0.06 it is within half a percent of 2I.
        close(square.j_m4, round.j_m4, 5e-3);
    }

    #[test]
    fn solid_rectangles_twist_as_tabulated() {
        // Timoshenko and Goodier, torsion of rectangular bars: J = k·a·b³, τ = T/(k2·a·b²), printed to 3 or 4 digits.
        for (ratio, k, k2) in [(1.0, 0.1406, 0.208), (2.0, 0.229, 0.246), (10.0, 0.312, 0.312)] {
            let p = Section::SolidRect { depth_m: 0.01 * ratio, width_m: 0.01 }.properties().unwrap();
            close(p.j_m4, k * ratio * 1e-8, 2.5e-3);
            close(p.w_t_m3, k2 * ratio * 1e-6, 2.5e-3);
        }
    }

    #[test]
    fn a_hollow_round_limit_is_the_solid_round() {
        let tube = Section::RoundTube { diameter_m: 0.05, wall_m: 0.0249999 }.properties().unwrap();
        let bar = Section::SolidRound { diameter_m: 0.05 }.properties().unwrap();
        close(tube.i_y_m4, bar.i_y_m4, 1e-9);
        close(bar.w_el_y_m3, PI * 0.05f64.powi(3) / 32.0, 1e-12);
        close(bar.w_pl_y_m3, 0.05f64.powi(3) / 6.0, 1e-12);
    }

    #[test]
    fn a_wrong_shape_names_its_field() {
        let fault = Section::RoundTube { diameter_m: 0.1, wall_m: 0.05 }.properties().unwrap_err();
        assert_eq!(fault, SectionFault::WallTooThick { wall_m: 0.05, limit_m: 0.05 });
        let fault = Section::SolidRect { depth_m: f64::INFINITY, width_m: 0.1 }.properties().unwrap_err();
        assert_eq!(fault, SectionFault::NotPositive { field: "depth_m", value: f64::INFINITY });
        assert!(matches!(
            Section::RoundTube { diameter_m: f64::NAN, wall_m: 0.01 }.properties(),
            Err(SectionFault::NotPositive { field: "diameter_m", .. })
        ));
        assert!(matches!(
            Section::RectTube { depth_m: 0.1, width_m: 0.1, wall_m: 0.01, outer_radius_m: 0.06 }.properties(),
            Err(SectionFault::CornerRadius { .. })
        ));
    }

    #[test]
    fn stiffness_is_modulus_times_geometry() {
        let steel = Material::steel(235e6, 360e6, crate::material::Forming::HotFinished);
        let bar = Section::SolidRect { depth_m: 0.1, width_m: 0.02 }.stiffness(&steel).unwrap();
        // 210 GPa × 2000 mm² = 420 MN; 210 GPa × 20·100³/12 mm⁴ = 350 kN·m²; 7850·9.80665·0.002 = 153.96 N/m.
        close(bar.ea_n, 420e6, 1e-12);
        close(bar.ei_y_nm2, 350e3, 1e-12);
        close(bar.weight_n_per_m, 153.964405, 1e-9);
    }
}
