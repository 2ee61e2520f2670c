//! States in which an anchor just begins to be pulled: there a group of anchors may jump, and its worst often lies there.

use glam::DVec2;

use super::ascend::most_of;
use super::search::{Candidate, Judge, Search, apart, judged};
use super::slope::Slope;
use super::solution::PlateSolution;
use crate::envelope::{EnvelopeFault, StateOnBase};
use crate::wrench::Wrench;

/// How far from its limit an anchor is left, as a share of the greatest settlement or lift of any.
const BESIDE: f64 = 1e-4;
/// Tension of an anchor that is just pulled, as a share of the greatest.
const HARDLY: f64 = 1e-6;
/// Anchors whose settlement or lift is a greater share of that are not near their limit.
const NEAR_LIMIT: f64 = 0.4;
/// How far the slew may go, rad.
const NEAR_RAD: f64 = 0.35;
/// Enlargements of the bracket of a condition's multiplier, and its narrowings.
const ENLARGED: usize = 6;
const NARROWED: usize = 7;
/// How near that must come to what is aimed at, first and later, in parts of how far from its limit the anchor is left.
const ROUGHLY: f64 = 20.0;
const CLOSELY: f64 = 0.5;
/// Landings, each with what the last ones were off taken into account, and how much more than that at most.
const LANDINGS: usize = 4;
const MOST_RATE: f64 = 4.0;
/// Solutions that going to a limit takes about, the slope included.
pub(super) const MOST_SOLUTIONS: usize = 5;

/// On which side of its limit an anchor is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// Just pulled.
    Pulled,
    /// Just not.
    NotPulled,
}

/// The settlement of an anchor under a candidate's solution, Pa; negative while it is pulled.
pub(super) fn settlement_pa(candidate: &Candidate, at: DVec2) -> Option<f64> {
    let [level, along_x, along_y] = candidate.solution.as_ref().ok()?.plane;
    Some(level + along_x * at.x + along_y * at.y)
}

/// A candidate with an anchor near its limit, read as if it stood on the other side of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reading {
    /// Index of the candidate.
    pub here: usize,
    /// Index of the anchor.
    pub anchor: usize,
    /// The side as which it is read.
    pub side: Side,
    /// What the judge makes of that.
    pub value: f64,
}

impl Reading {
    /// Whether two of them lead to the same place.
    fn is_like(&self, other: &Self, candidates: &[Candidate]) -> bool {
        self.anchor == other.anchor
            && self.side == other.side
            && (candidates[self.here].slew_rad - candidates[other.here].slew_rad).cos() >= NEAR_RAD.cos()
            && !apart(&candidates[self.here], &candidates[other.here])
    }
}

/// A judge that reads one anchor as just pulled, or as not, whatever it is.
struct ReadAs<'j> {
    judge: &'j Judge<'j>,
    anchor: usize,
    side: Side,
}

impl ReadAs<'_> {
    /// The judge's number for a candidate, which is left as it was.
    fn of(&self, candidate: &mut Candidate) -> f64 {
        let put = |candidate: &mut Candidate, tension_n: f64| {
            let solution = candidate.solution.as_mut().ok();
            let own = solution.and_then(|solution| solution.tension_n.get_mut(self.anchor));
            own.map(|own| std::mem::replace(own, tension_n))
        };
        let most = candidate.solution.as_ref().map_or(0.0, PlateSolution::greatest_tension_n);
        let before = put(candidate, if self.side == Side::Pulled { HARDLY * most } else { 0.0 });
        let value = judged(self.judge, candidate);
        if let Some(before) = before {
            put(candidate, before);
        }
        value
    }
}

/// Readings of all candidates with anchors near their limits, worst first, those that lead to the same place left out.
pub(super) fn readings(search: &Search<'_>, judge: &Judge<'_>, (least, most): (f64, usize)) -> Vec<Reading> {
    let mut all = Vec::new();
    for (here, candidate) in search.candidates.iter().enumerate() {
        let Ok(solution) = &candidate.solution else { continue };
        let mut read = candidate.clone();
        let near_pa = NEAR_LIMIT * greatest_pa(search, here);
        let anchors = search.plate.plate().anchors.iter().zip(&solution.tension_n).enumerate();
        for (anchor, (place, tension)) in anchors {
            if settlement_pa(candidate, place.at).is_none_or(|settlement| settlement.abs() > near_pa) {
                continue;
            }
            let side = if *tension > 0.0 { Side::NotPulled } else { Side::Pulled };
            let value = ReadAs { judge, anchor, side }.of(&mut read);
            if value.is_finite() && value > least {
                all.push(Reading { here, anchor, side, value });
            }
        }
    }
    all.sort_by(|a, b| b.value.total_cmp(&a.value));
    let mut kept: Vec<Reading> = Vec::new();
    for reading in all {
        if kept.len() == most {
            break;
        }
        if !kept.iter().any(|other| reading.is_like(other, &search.candidates)) {
            kept.push(reading);
        }
    }
    kept
}

/// Goes to where a reading holds: its index once it is solved.
pub(super) fn go(
    search: &mut Search<'_>,
    reading: &Reading,
    judge: &Judge<'_>,
) -> Result<Option<usize>, EnvelopeFault> {
    let Some((set, _)) = search.answers_of(reading.here) else { return Ok(None) };
    let read_as = ReadAs { judge, anchor: reading.anchor, side: reading.side };
    let as_read = |candidate: &Candidate| read_as.of(&mut candidate.clone());
    let Some(slope) = Slope::at(search, reading.here, &as_read) else { return Ok(None) };
    let at = search.plate.plate().anchors[reading.anchor].at;
    beside(search, (reading.here, set), judge, &slope, (at, reading.side))
}

/// The anchors of a candidate that are near their limits.
pub(super) fn near(search: &Search<'_>, here: usize) -> Vec<DVec2> {
    let anchors = &search.plate.plate().anchors;
    let of = |at: DVec2| settlement_pa(&search.candidates[here], at).unwrap_or(0.0).abs();
    let most = greatest_pa(search, here);
    anchors.iter().map(|anchor| anchor.at).filter(|at| of(*at) <= NEAR_LIMIT * most).collect()
}

fn greatest_pa(search: &Search<'_>, here: usize) -> f64 {
    let anchors = search.plate.plate().anchors.iter();
    anchors.filter_map(|anchor| settlement_pa(&search.candidates[here], anchor.at)).map(f64::abs).fold(0.0, f64::max)
}

/// The state, beside an anchor's limit, that makes most of a candidate's slope; its index once it is solved.
pub(super) fn beside(
    search: &mut Search<'_>,
    (here, set): (usize, usize),
    judge: &Judge<'_>,
    slope: &Slope,
    (at, side): (DVec2, Side),
) -> Result<Option<usize>, EnvelopeFault> {
    let off = BESIDE * greatest_pa(search, here);
    let wanted = if side == Side::Pulled { -off } else { off };
    let mut aim = wanted;
    let mut before = None;
    let mut best = None;
    for round in 0..LANDINGS {
        let within = if round == 0 { ROUGHLY * off } else { CLOSELY * off };
        let condition = (slope.settlement(at), aim, within);
        let Some(state) = landing(search, (here, set), slope, condition)? else { break };
        let index = search.solve(set, state);
        let value = search.value(judge, index);
        if best.is_none_or(|known: (usize, f64)| value > known.1) {
            best = Some((index, value));
        }
        let Some(found) = settlement_pa(&search.candidates[index], at) else { break };
        if found * wanted > 0.0 && found.abs() <= 5.0 * off {
            break;
        }
        // Settlement does not quite go in step with what the slope says: from the second landing on, as the last two tell.
        let rate = before.map_or(1.0, |(aim_then, found_then): (f64, f64)| (aim - aim_then) / (found - found_then));
        before = Some((aim, found));
        aim += (wanted - found) * if rate.is_finite() && rate > 0.0 { rate.min(MOST_RATE) } else { 1.0 };
    }
    Ok(best.map(|best| best.0))
}

/// The state that makes most of a slope while the settlement is what it is to be, by the multiplier of that condition.
fn landing(
    search: &Search<'_>,
    (here, set): (usize, usize),
    slope: &Slope,
    (settlement, aim, within): (Wrench, f64, f64),
) -> Result<Option<StateOnBase>, EnvelopeFault> {
    let size = |w: &Wrench| w.force_n.length().max(w.moment_nm.length() / search.plate.size_m());
    let scale = size(&slope.value) / size(&settlement).max(f64::MIN_POSITIVE);
    let at = |factor: f64| -> Result<Option<(f64, StateOnBase)>, EnvelopeFault> {
        let found = most_of(search, (here, set), slope.value + settlement * factor, Some(NEAR_RAD))?;
        Ok(found.map(|state| (settlement.dot(&search.unit.on_plate(&state)) - aim, state)))
    };
    let Some(free) = at(0.0)? else { return Ok(None) };
    // The greater the multiplier, the greater the settlement.
    let toward = if free.0 < 0.0 { 1.0 } else { -1.0 };
    let (mut low, mut high) = ((0.0, free), (0.0, None));
    let mut factor = 0.3 * scale * toward;
    for _ in 0..ENLARGED {
        let Some(found) = at(factor)? else { return Ok(None) };
        if found.0 * toward >= 0.0 {
            high = (factor, Some(found));
            break;
        }
        low = (factor, found);
        factor *= 3.0;
    }
    let (mut far, Some(mut beyond)) = high else { return Ok(None) };
    for round in 0..NARROWED {
        if beyond.0.abs() <= within {
            break;
        }
        let straight = low.0 + (far - low.0) * low.1.0 / (low.1.0 - beyond.0);
        let middle = f64::midpoint(low.0, far);
        let factor = if round % 2 == 0 && straight.is_finite() { straight } else { middle };
        let Some(found) = at(factor)? else { break };
        if found.0 * toward >= 0.0 {
            (far, beyond) = (factor, found);
        } else {
            low = (factor, found);
        }
    }
    let nearer = if low.1.0.abs() < beyond.0.abs() { low.1 } else { beyond };
    Ok(Some(nearer.1))
}
