//! Shear strength of a slab without shear reinforcement, by code: EN 1992-1-1 6.4 and ACI 318-19 22.6.

use super::design::SlabDepth;
use crate::member::Term;

/// Code and its factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PunchingCode {
    /// EN 1992-1-1:2004+A1:2014, 6.4. National annexes differ.
    En1992(EnPunching),
    /// ACI 318-19, 22.6.
    Aci318(AciPunching),
}

/// Factors of EN 1992-1-1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnPunching {
    /// γ_C.
    pub gamma_c: f64,
    /// C_Rd,c·γ_C of (6.47).
    pub c_r: f64,
    /// Factor of v_min = 0.035·k^1.5·√f_ck (6.3N).
    pub v_min_factor: f64,
    /// Factor of v_Rd,max = 0.4·ν·f_cd.
    pub v_max_factor: f64,
    /// α_cc of f_cd.
    pub alpha_cc: f64,
}

/// Factors of ACI 318-19.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AciPunching {
    /// φ for shear (table 21.2.1).
    pub phi: f64,
}

impl EnPunching {
    /// Recommended values of EN 1992-1-1:2004+A1:2014.
    pub const RECOMMENDED: Self =
        Self { gamma_c: 1.5, c_r: 0.18, v_min_factor: 0.035, v_max_factor: 0.4, alpha_cc: 1.0 };
}

impl AciPunching {
    /// φ = 0.75 (ACI 318-19 table 21.2.1).
    pub const STANDARD: Self = Self { phi: 0.75 };
}

/// How the corners of a control perimeter go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Corners {
    /// Round the corners of the loaded area.
    Round,
    /// Straight sides, where edges lie along the sides of the loaded area.
    Square,
}

/// Strengths in shear, Pa, and how they came about.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Strength {
    /// At the control perimeter.
    pub control_pa: f64,
    /// At the face of the loaded area; infinite where the code has no such check.
    pub face_pa: f64,
    pub terms: Vec<Term>,
}

/// What the strength depends on beside the code.
pub(super) struct Strip {
    pub strength_pa: f64,
    pub lightweight: f64,
    /// Control perimeter u₁ or b₀, m.
    pub length_m: f64,
    /// Edges that cut it.
    pub cuts: usize,
    /// Longer over shorter side of the loaded area.
    pub slenderness: f64,
}

impl PunchingCode {
    /// Distance of the control perimeter from the loaded area, m: 2d (EN 1992-1-1 6.4.2(1)), d/2 (ACI 318-19 22.6.4.1).
    pub(super) fn control_distance_m(self, depth_m: f64) -> f64 {
        match self {
            Self::En1992(_) => 2.0 * depth_m,
            Self::Aci318(_) => 0.5 * depth_m,
        }
    }

    pub(super) const fn corners(self) -> Corners {
        match self {
            Self::En1992(_) => Corners::Round,
            Self::Aci318(_) => Corners::Square,
        }
    }

    /// Openings nearer than this count, m: 6d (EN 1992-1-1 6.4.2(3)), 4h (ACI 318-19 22.6.4.3, from memory, to be confirmed).
    pub(super) fn opening_reach_m(self, depth_m: f64, thickness_m: f64) -> f64 {
        match self {
            Self::En1992(_) => 6.0 * depth_m,
            Self::Aci318(_) => 4.0 * thickness_m,
        }
    }

    /// Share of the moment that goes by shear. `along_m` is the size in the plane of the moment, `across_m` the other: of the loaded area for
    /// EN 1992-1-1, of the critical section for ACI 318-19.
    ///
    /// EN 1992-1-1 table 6.1: k = 0.45, 0.60, 0.70, 0.80 at c₁/c₂ = 0.5, 1, 2, 3, straight between, held beyond.
    /// ACI 318-19 (8.4.4.2.2, 8.4.2.2.2): γ_v = 1 − 1/(1 + ⅔·√(b₁/b₂)).
    pub(super) fn moment_share(self, along_m: f64, across_m: f64) -> f64 {
        let ratio = along_m / across_m;
        match self {
            Self::En1992(_) => table_6_1(ratio),
            Self::Aci318(_) => 1.0 - 1.0 / (1.0 + 2.0 / 3.0 * ratio.sqrt()),
        }
    }

    pub(super) fn strength(self, depth: &SlabDepth, strip: &Strip) -> Strength {
        match self {
            Self::En1992(factors) => en_strength(&factors, depth, strip.strength_pa),
            Self::Aci318(factors) => aci_strength(factors, depth, strip),
        }
    }
}

fn table_6_1(ratio: f64) -> f64 {
    const TABLE: [[f64; 2]; 4] = [[0.5, 0.45], [1.0, 0.6], [2.0, 0.7], [3.0, 0.8]];
    let at = ratio.clamp(TABLE[0][0], TABLE[3][0]);
    let [low, high] = TABLE.windows(2).map(|w| [w[0], w[1]]).find(|w| at <= w[1][0]).unwrap_or([TABLE[2], TABLE[3]]);
    low[1] + (at - low[0]) / (high[0] - low[0]) * (high[1] - low[1])
}

/// EN 1992-1-1 (6.47): v_Rd,c = C_Rd,c·k·(100·ρ·f_ck)^(1/3) ≥ v_min = 0.035·k^1.5·√f_ck, k = 1 + √(0.2/d) ≤ 2, ρ ≤ 0.02, MPa; no axial
/// stress. (6.53) with A1: v_Rd,max = 0.4·ν·f_cd, ν = 0.6·(1 − f_ck/250).
fn en_strength(factors: &EnPunching, depth: &SlabDepth, strength_pa: f64) -> Strength {
    let fck = strength_pa * 1e-6;
    let k = (1.0 + (0.2 / depth.effective_m).sqrt()).min(2.0);
    let rho = depth.bars.unwrap_or(0.0).min(0.02);
    let with_bars = factors.c_r / factors.gamma_c * k * (100.0 * rho * fck).cbrt();
    let least = factors.v_min_factor * k.powf(1.5) * fck.sqrt();
    let control_pa = with_bars.max(least) * 1e6;
    let nu = 0.6 * (1.0 - fck / 250.0).max(0.0);
    let face_pa = factors.v_max_factor * nu * factors.alpha_cc * strength_pa / factors.gamma_c;
    let terms = vec![
        pascals("f_ck", strength_pa),
        plain("γ_C", factors.gamma_c),
        plain("k", k),
        plain("ρ", rho),
        pascals("v_min", least * 1e6),
        pascals("v_Rd,c", control_pa),
        plain("ν", nu),
        pascals("v_Rd,max", face_pa),
    ];
    Strength { control_pa, face_pa, terms }
}

/// ACI 318-19 table 22.6.5.2, SI: v_c = min(0.33, 0.17·(1 + 2/β), 0.083·(2 + α_s·d/b₀))·λ_s·λ·√f'_c, α_s = 40, 30, 20 with no, one, more
/// edges; λ_s = √(2/(1 + 0.004·d)) ≤ 1 (22.5.5.1.3, from memory, to be confirmed); √f'_c ≤ 8.3 MPa (22.6.3.1).
fn aci_strength(factors: AciPunching, depth: &SlabDepth, strip: &Strip) -> Strength {
    let d = depth.effective_m;
    let root = (strip.strength_pa * 1e-6).sqrt().min(8.3);
    let size = (2.0 / (1.0 + 4.0 * d)).sqrt().min(1.0);
    let alpha = [40.0, 30.0, 20.0][strip.cuts.min(2)];
    let by_length = 0.083 * (2.0 + alpha * d / strip.length_m);
    let factor = 0.33_f64.min(0.17 * (1.0 + 2.0 / strip.slenderness)).min(by_length);
    let v_c = factor * size * strip.lightweight * root * 1e6;
    let terms = vec![
        pascals("f'_c", strip.strength_pa),
        plain("λ", strip.lightweight),
        plain("λ_s", size),
        plain("β", strip.slenderness),
        plain("α_s", alpha),
        pascals("v_c", v_c),
        plain("φ", factors.phi),
    ];
    Strength { control_pa: factors.phi * v_c, face_pa: f64::INFINITY, terms }
}

pub(super) const fn plain(symbol: &'static str, value: f64) -> Term {
    Term { symbol, value, unit: "" }
}

pub(super) const fn pascals(symbol: &'static str, value: f64) -> Term {
    Term { symbol, value, unit: "Pa" }
}

pub(super) const fn meters(symbol: &'static str, value: f64) -> Term {
    Term { symbol, value, unit: "m" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_european_slab_bears_what_another_program_says() {
        // xc (general finite element library), test_ec2_punching_shear_01: C30, d 345 mm, 754 mm²/m in layers at 350 and
        // 340 mm, v_Ed 0.409 and 1.623 MPa: utilizations 0.9126672377 and 0.3842329545.
        let bars = f64::sqrt(754e-6 / 0.35 * (754e-6 / 0.34));
        let depth = SlabDepth { effective_m: 0.345, bars: Some(bars) };
        let found = en_strength(&EnPunching::RECOMMENDED, &depth, 30e6);
        assert!((0.409e6 / found.control_pa - 0.912_667_237_7).abs() < 1e-9);
        assert!((1.623e6 / found.face_pa - 0.384_232_954_5).abs() < 1e-9);
    }

    #[test]
    fn an_american_slab_bears_what_a_worked_sheet_says() {
        // A web calculation sheet: 12 in column, d 6 in, f'c 4000 psi: b0 72 in, Vc 109.3 kips, φVc 82.0 kips.
        // The SI factor 0.33 stands for 4·0.083036 = 0.33214, 0.65 % less; the sheet prints four digits.
        let depth = SlabDepth { effective_m: 0.1524, bars: None };
        let length_m = 72.0 * 0.0254;
        let strip = Strip { strength_pa: 4000.0 * 6894.757, lightweight: 1.0, length_m, cuts: 0, slenderness: 1.0 };
        let found = aci_strength(AciPunching::STANDARD, &depth, &strip);
        let kips = found.control_pa * length_m * 0.1524 / 4448.2216;
        assert!((kips * 4.0 * 0.083_036 / 0.33 - 82.0).abs() < 0.05, "{kips}");
    }

    #[test]
    fn unknown_bars_leave_the_least_strength() {
        let depth = |bars| SlabDepth { effective_m: 0.2, bars };
        let of = |bars| en_strength(&EnPunching::RECOMMENDED, &depth(bars), 30e6).control_pa;
        // By hand: k = 2: 0.035·2^1.5·√30 = 0.54222 MPa.
        assert!((of(None) - 0.542_218e6).abs() < 1.0);
        assert!(of(Some(0.02)) > of(None));
    }

    #[test]
    fn the_share_of_the_moment_is_that_of_the_tables() {
        let en = PunchingCode::En1992(EnPunching::RECOMMENDED);
        let shares = [0.2, 0.5, 1.0, 1.5, 3.0, 9.0].map(|ratio| en.moment_share(ratio, 1.0));
        for (found, wanted) in shares.into_iter().zip([0.45, 0.45, 0.6, 0.65, 0.8, 0.8]) {
            assert!((found - wanted).abs() < 1e-12);
        }
        // ACI: a square area passes 40 %.
        assert!((PunchingCode::Aci318(AciPunching::STANDARD).moment_share(1.0, 1.0) - 0.4).abs() < 1e-12);
    }
}
