//! One part at one slew: the inner forces at all its cuts in every state, and the worst of them.

use std::rc::Rc;

use super::asked::MemberPart;
use super::climbed::Climbed;
use super::cut::{Cut, cuts};
use super::cut_hill::CutHill;
use super::span_hill::SpanHill;
use crate::envelope::case::{BraceState, Case};
use crate::envelope::engine::{Axes, BracePlan, Engine};
use crate::envelope::fault::EnvelopeFault;
use crate::envelope::prepared::Prepared;
use crate::envelope::slews::Slews;
use crate::envelope::state::State;
use crate::member::{
    At, Governing, InternalForces, MemberActions, MemberResistance, Mode, NotChecked, Outcome, SpanMaxima,
};
use crate::unit::Station;

/// A part at a slew.
pub(super) struct PartAtSlew<'a> {
    pub prepared: &'a Prepared<'a>,
    resistance: &'a MemberResistance,
    pub amplification: f64,
    pub slew: f64,
    pub spots: Vec<Spot>,
}

/// A cut with its answers in each state of the brace.
pub(super) struct Spot {
    pub station: Station,
    pub at: At,
    pub cases: Rc<[Case<6>]>,
    /// Largest size of each force, over all states, moments amplified.
    pub ranges: [f64; 6],
    /// Largest compression over all states; 0 if the cut is always pulled.
    pub compression: f64,
    /// Utilization of the largest forces as if they acted at once: none is above it.
    bound: Governing,
}

/// Where a search ended.
pub(super) struct Worst {
    pub governing: Governing,
    pub spot: usize,
    pub case: usize,
    pub state: State,
}

impl<'a> PartAtSlew<'a> {
    pub fn new(
        prepared: &'a Prepared<'a>,
        part: &MemberPart<'a>,
        amplification: f64,
        plan: BracePlan,
        slew: f64,
    ) -> Result<Self, EnvelopeFault> {
        let mut this = Self { prepared, resistance: part.resistance, amplification, slew, spots: Vec::new() };
        for (station, at) in cuts(prepared.model, part.part, part.marks) {
            let engine = Engine::new(prepared, Cut(station), Axes::Arm, Slews::At(vec![slew]), plan)?;
            let cases = engine.cases(slew)?;
            let spot = this.spot(station, at, cases);
            this.spots.push(spot);
        }
        Ok(this)
    }

    /// The worst of all cuts, states and modes. `None` if there is no cut or no state, or nothing is above `enough`.
    ///
    /// Buckling comes first: it often governs, and then few cuts have bounds above it.
    pub fn worst(&self, enough: f64, climbed: &Climbed) -> Option<Worst> {
        let mut best: Option<Worst> = None;
        self.offer_buckling(enough, climbed, &mut best);
        let mut order: Vec<usize> = (0..self.spots.len()).collect();
        order.sort_by(|a, b| self.spots[*b].bound.utilization.total_cmp(&self.spots[*a].bound.utilization));
        for spot in order {
            let bound = self.spots[spot].bound.utilization;
            if bound <= enough && enough > 0.0 || best.as_ref().is_some_and(|b| bound <= b.governing.utilization) {
                break;
            }
            for case in 0..self.spots[spot].cases.len() {
                self.offer_cut(spot, case, climbed, &mut best);
            }
        }
        let mut best = best?;
        best.governing.not_checked = self.not_checked();
        Some(best)
    }

    /// All that the member's checks need, at the worst cut in the worst state.
    pub fn actions(&self, worst: &Worst) -> (Station, MemberActions) {
        let spot = &self.spots[worst.spot];
        let at = |i: usize| InternalForces::from_array(self.forces(i, worst.case, &worst.state));
        let span = (0..self.spots.len()).fold(SpanMaxima::default(), |all, i| all.max(SpanMaxima::of(&at(i))));
        (spot.station, MemberActions { station: at(worst.spot), at: spot.at, span })
    }

    /// Whether the foot is lost and whether the brace is slack in the worst state.
    pub fn brace_state(&self, worst: &Worst) -> (bool, bool) {
        let brace = self.spots[worst.spot].cases[worst.case].brace;
        (brace == BraceState::FootLost, brace == BraceState::Slack)
    }

    /// Inner forces at a cut in a state, moments amplified.
    pub fn forces(&self, spot: usize, case: usize, state: &State) -> [f64; 6] {
        let mut f = self.spots[spot].cases[case].rows.of(state);
        f[4] *= self.amplification;
        f[5] *= self.amplification;
        f
    }

    /// Every mode but buckling.
    pub fn governing_at(&self, at: At, forces: &[f64; 6]) -> Governing {
        let station = InternalForces::from_array(*forces);
        self.resistance.governing(&MemberActions { station, at, span: SpanMaxima::default() })
    }

    /// Buckling, with the largest shear and torsion along the part, which AISC's interaction also looks at.
    pub fn stability(&self, span: &SpanMaxima, largest: &[f64; 6]) -> Outcome {
        let station =
            InternalForces { v_y_n: largest[1], v_z_n: largest[2], t_nm: largest[3], ..InternalForces::default() };
        let actions = MemberActions { station, at: At::Plain, span: *span };
        self.resistance.stability(&actions)
    }

    fn spot(&self, station: Station, at: At, cases: Rc<[Case<6>]>) -> Spot {
        let mut most = [f64::NEG_INFINITY; 6];
        let mut least = [f64::INFINITY; 6];
        for case in cases.iter() {
            for i in 0..6 {
                let mut w = [0.0; 6];
                w[i] = 1.0;
                most[i] = most[i].max(case.support(self.prepared, &w, self.slew, most[i]).unwrap_or(most[i]));
                w[i] = -1.0;
                least[i] = least[i].min(case.support(self.prepared, &w, self.slew, -least[i]).map_or(least[i], |v| -v));
            }
        }
        let k = [1.0, 1.0, 1.0, 1.0, self.amplification, self.amplification];
        let ranges: [f64; 6] = std::array::from_fn(|i| k[i] * most[i].abs().max(least[i].abs()));
        let with_axial = |n: f64| self.governing_at(at, &[n, ranges[1], ranges[2], ranges[3], ranges[4], ranges[5]]);
        let bound = worse(with_axial(most[0].max(0.0)), with_axial(least[0].min(0.0)));
        Spot { station, at, cases, ranges, compression: (-least[0]).max(0.0), bound }
    }

    fn offer_cut(&self, spot: usize, case: usize, climbed: &Climbed, best: &mut Option<Worst>) {
        let found = climbed.at_cut(self, spot, case, || CutHill { part: self, spot, case }.highest());
        let Some((state, height)) = found else { return };
        if best.as_ref().is_none_or(|b| height > b.governing.utilization) {
            let governing = self.governing_at(self.spots[spot].at, &self.forces(spot, case, &state));
            *best = Some(Worst { governing, spot, case, state });
        }
    }

    fn offer_buckling(&self, enough: f64, climbed: &Climbed, best: &mut Option<Worst>) {
        let (bound, largest) = self.largest_along();
        if self.spots.is_empty() || value(self.stability(&bound, &largest)) <= enough {
            return;
        }
        let cases = self.spots.first().map_or(0, |spot| spot.cases.len());
        for case in 0..cases {
            let hill = SpanHill { part: self, case, ranges: [bound.compression_n, bound.m_y_nm, bound.m_z_nm] };
            let Some((state, utilization)) = climbed.along(self, case, || hill.highest()) else { continue };
            if best.as_ref().is_none_or(|b| utilization > b.governing.utilization) {
                let governing = Governing { mode: Mode::Stability, utilization, not_checked: None };
                *best = Some(Worst { governing, spot: hill.most_bent(&state), case, state });
            }
        }
    }

    /// The first mode that some cut could not be checked for, judged with the largest forces.
    pub fn not_checked(&self) -> Option<(Mode, NotChecked)> {
        let stability = || {
            let (span, largest) = self.largest_along();
            match self.stability(&span, &largest) {
                Outcome::NotChecked(why) => Some((Mode::Stability, why)),
                Outcome::Utilization(_) | Outcome::NotApplicable => None,
            }
        };
        self.spots.iter().find_map(|spot| spot.bound.not_checked).or_else(stability)
    }

    /// Largest forces of any state over all cuts, as if they acted at once.
    fn largest_along(&self) -> (SpanMaxima, [f64; 6]) {
        let all =
            self.spots.iter().fold([0.0; 6], |all: [f64; 6], spot| std::array::from_fn(|i| all[i].max(spot.ranges[i])));
        let compression_n = self.spots.iter().fold(0.0, |most: f64, spot| most.max(spot.compression));
        (SpanMaxima { compression_n, m_y_nm: all[4], m_z_nm: all[5] }, all)
    }
}

/// A utilization, or 0 where there is none.
pub(super) fn value(outcome: Outcome) -> f64 {
    match outcome {
        Outcome::Utilization(value) => value,
        Outcome::NotChecked(_) | Outcome::NotApplicable => 0.0,
    }
}

fn worse(a: Governing, b: Governing) -> Governing {
    let mut worse = if b.utilization > a.utilization { b } else { a };
    worse.not_checked = a.not_checked.or(b.not_checked);
    worse
}
