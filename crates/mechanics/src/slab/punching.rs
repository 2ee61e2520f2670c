//! Punching of a slab under force and moment, downward and upward; indicative, for the structural engineer to confirm.
//!
//! On a perimeter u with effective depth d, force V positive in the sense looked at:
//! v = V/(u·d) + k_x·|M_x|/(W_x·d) + k_y·|M_y|/(W_y·d), W = ∫|e|dl about the perimeter's centroid for EN 1992-1-1 (6.39, the
//! two moments added rather than squared), W = ∫e²dl/e_max for ACI 318-19 (R8.4.4.2.3 without the terms in d³, which only
//! help). The moments are taken about the base's reference and about the perimeter's middle where edges push it inboard, and the
//! worse counts. With V = 0 the moment
//! alone is left; a force against the sense looked at is subtracted. At the face v₀ = v·u₁/u₀.

use super::code::{PunchingCode, Strip, meters, pascals, plain};
use super::design::{PunchingDesign, SlabDepth};
use super::perimeter::ControlPerimeter;
use crate::member::Term;

/// Action of the base on the slab, in base axes: z up, at the base's reference point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlabActions {
    /// Force up, N; negative presses the slab down.
    pub fz_n: f64,
    /// Moment about x, N·m.
    pub mx_nm: f64,
    /// Moment about y, N·m.
    pub my_nm: f64,
}

/// Sense of punching.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PunchingWay {
    /// The base is pushed through the slab.
    Down,
    /// The anchors are torn out with a piece of the slab.
    Up,
}

/// Share of the strength used in one sense.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PunchingUse {
    /// Which sense.
    pub way: PunchingWay,
    /// Stress at the worst control perimeter over strength; not a number where an action is none.
    pub control: f64,
    /// Stress at the face of the loaded area over strength there; 0 where the code has no such check.
    pub face: f64,
}

impl PunchingUse {
    /// The larger share. Not a number is never a pass: it compares as above every limit with [`Self::holds`].
    pub fn worst(&self) -> f64 {
        if self.control.is_nan() || self.face.is_nan() { f64::NAN } else { self.control.max(self.face) }
    }

    /// Whether both shares are at most 1.
    pub fn holds(&self) -> bool {
        self.worst() <= 1.0
    }
}

/// One sense of punching with all that a reader needs to follow it.
#[derive(Debug, Clone, PartialEq)]
pub struct PunchingRecord {
    /// Shares used.
    pub used: PunchingUse,
    /// Symbols with values in the order in which they enter.
    pub terms: Vec<Term>,
    /// Clause of the code.
    pub clause: &'static str,
    /// Formula as text.
    pub formula: &'static str,
    /// What must be said beside the figure.
    pub caution: &'static str,
}

/// A loaded area with its control perimeters, ready for many actions.
#[derive(Debug, Clone, PartialEq)]
pub struct PunchingCheck {
    code: PunchingCode,
    sides_m: [f64; 2],
    ways: [Way; 2],
}

#[derive(Debug, Clone, PartialEq)]
struct Way {
    depth_m: f64,
    perimeters: Vec<Ready>,
}

/// A perimeter with its strengths.
#[derive(Debug, Clone, PartialEq)]
struct Ready {
    control: ControlPerimeter,
    control_pa: f64,
    face_pa: f64,
    /// W of the code about x and y, m².
    modulus_m2: [f64; 2],
    terms: Vec<Term>,
}

/// Stresses at one perimeter.
struct Stress {
    control_pa: f64,
    face_pa: f64,
    moments_nm: [f64; 2],
}

impl PunchingCheck {
    pub(super) fn new(design: &PunchingDesign, code: PunchingCode, perimeters: [Vec<ControlPerimeter>; 2]) -> Self {
        let sides_m = [0, 1].map(|axis| {
            let places = design.loaded_m.iter().map(|p| p[axis]);
            let (low, high) = places.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
            high - low
        });
        let [down, up] = perimeters;
        let way = |depth: &SlabDepth, found: Vec<ControlPerimeter>| Way {
            depth_m: depth.effective_m,
            perimeters: found.into_iter().map(|control| ready(design, code, depth, sides_m, control)).collect(),
        };
        let ways = [way(&design.down, down), way(&design.up, up)];
        Self { code, sides_m, ways }
    }

    /// Shares used in both senses, down first, without allocation.
    pub fn judge(&self, actions: &SlabActions) -> [PunchingUse; 2] {
        [PunchingWay::Down, PunchingWay::Up].map(|way| self.worst(way, actions).0)
    }

    /// Both senses with every symbol of the perimeter that governs, down first.
    pub fn records(&self, actions: &SlabActions) -> [PunchingRecord; 2] {
        [PunchingWay::Down, PunchingWay::Up].map(|way| self.record(way, actions))
    }

    fn way(&self, way: PunchingWay) -> &Way {
        &self.ways[way as usize]
    }

    /// The worst of all perimeters, and which it is.
    fn worst(&self, way: PunchingWay, actions: &SlabActions) -> (PunchingUse, usize) {
        let mut worst = (PunchingUse { way, control: 0.0, face: 0.0 }, 0);
        if ![actions.fz_n, actions.mx_nm, actions.my_nm].iter().all(|value| value.is_finite()) {
            worst.0 = PunchingUse { way, control: f64::NAN, face: f64::NAN };
            return worst;
        }
        for (index, ready) in self.way(way).perimeters.iter().enumerate() {
            let stress = self.stress(way, ready, actions);
            let control = stress.control_pa / ready.control_pa;
            if index == 0 || control > worst.0.control {
                worst.0.control = control;
                worst.1 = index;
            }
            worst.0.face = worst.0.face.max(stress.face_pa / ready.face_pa);
        }
        worst
    }

    fn stress(&self, way: PunchingWay, ready: &Ready, actions: &SlabActions) -> Stress {
        let depth_m = self.way(way).depth_m;
        let lines = &ready.control.lines;
        let force_n = match way {
            PunchingWay::Down => -actions.fz_n,
            PunchingWay::Up => actions.fz_n,
        };
        let [x, y] = ready.control.offset_m;
        let about_reference = [actions.mx_nm, actions.my_nm];
        let about_centroid = [actions.mx_nm - y * actions.fz_n, actions.my_nm + x * actions.fz_n];
        let by_moments = |moments: [f64; 2]| self.by_moments_pa(ready, moments, depth_m);
        let moments_nm =
            if by_moments(about_centroid) > by_moments(about_reference) { about_centroid } else { about_reference };
        let control_pa = (force_n / (lines.length_m * depth_m) + by_moments(moments_nm)).max(0.0);
        let face_pa = if ready.control.face_m > 0.0 { control_pa * lines.length_m / ready.control.face_m } else { 0.0 };
        Stress { control_pa, face_pa, moments_nm }
    }

    fn by_moments_pa(&self, ready: &Ready, moments_nm: [f64; 2], depth_m: f64) -> f64 {
        let share = self.shares();
        // A straight perimeter has no W about itself and can't take a moment about it.
        let of = |about: usize| match moments_nm[about].abs() {
            0.0 => 0.0,
            moment => share[about] * moment / (ready.modulus_m2[about] * depth_m),
        };
        of(0) + of(1)
    }

    /// k or γ_v for the moments about x and y.
    fn shares(&self) -> [f64; 2] {
        let [x, y] = self.sides_m;
        [self.code.moment_share(y, x), self.code.moment_share(x, y)]
    }

    fn record(&self, way: PunchingWay, actions: &SlabActions) -> PunchingRecord {
        let (used, index) = self.worst(way, actions);
        let ready = &self.way(way).perimeters[index];
        let stress = self.stress(way, ready, actions);
        let share = self.shares();
        let force_n = if way == PunchingWay::Down { -actions.fz_n } else { actions.fz_n };
        let mut terms = vec![
            Term { symbol: "V", value: force_n, unit: "N" },
            Term { symbol: "M_x", value: stress.moments_nm[0], unit: "N*m" },
            Term { symbol: "M_y", value: stress.moments_nm[1], unit: "N*m" },
            meters("d", self.way(way).depth_m),
            meters("u", ready.control.lines.length_m),
            meters("u_0", ready.control.face_m),
            plain("edges that cut u", ready.control.cuts as f64),
            Term { symbol: "W_x", value: ready.modulus_m2[0], unit: "m²" },
            Term { symbol: "W_y", value: ready.modulus_m2[1], unit: "m²" },
            plain("k_x", share[0]),
            plain("k_y", share[1]),
        ];
        terms.extend(ready.terms.iter().copied());
        terms.extend([pascals("v", stress.control_pa), pascals("v_0", stress.face_pa)]);
        PunchingRecord {
            used,
            terms,
            clause: match self.code {
                PunchingCode::En1992(_) => "EN 1992-1-1 6.4.3, 6.4.4, 6.4.5",
                PunchingCode::Aci318(_) => "ACI 318-19 22.6.5.2, 8.4.4.2",
            },
            formula: "v = V/(u·d) + k_x·|M_x|/(W_x·d) + k_y·|M_y|/(W_y·d)",
            caution: "indicative: to be confirmed by the structural engineer",
        }
    }
}

fn ready(
    design: &PunchingDesign,
    code: PunchingCode,
    depth: &SlabDepth,
    sides_m: [f64; 2],
    control: ControlPerimeter,
) -> Ready {
    let strip = Strip {
        strength_pa: design.strength_pa,
        lightweight: design.lightweight,
        length_m: control.lines.length_m,
        cuts: control.cuts,
        slenderness: (sides_m[0] / sides_m[1]).max(sides_m[1] / sides_m[0]),
    };
    let strength = code.strength(depth, &strip);
    let lines = &control.lines;
    let modulus_m2 = match code {
        PunchingCode::En1992(_) => lines.plastic_m2,
        PunchingCode::Aci318(_) => [0, 1].map(|about| {
            if lines.farthest_m[about] > 0.0 { lines.second_m3[about] / lines.farthest_m[about] } else { 0.0 }
        }),
    };
    Ready { control, control_pa: strength.control_pa, face_pa: strength.face_pa, modulus_m2, terms: strength.terms }
}
