//! How a judge's number, and the settlement of each anchor, change with the action on the plate.

use glam::DVec2;

use super::search::{Candidate, Judge, Search, judged, pulled};
use crate::wrench::Wrench;

/// A step as a share of the action.
const STEP_SHARE: f64 = 1e-4;
/// Which of the six components settle and tilt the plate.
const SETTLING: std::ops::RangeInclusive<usize> = 2..=4;

/// Slopes at one candidate.
pub(super) struct Slope {
    /// Of the judge's number, per N and N·m.
    pub value: Wrench,
    /// Of the settlement's three terms.
    plane: [Wrench; 3],
}

impl Slope {
    /// The slopes at a candidate; none where it has no solution or the judge no number.
    ///
    /// Solves the plate three to six times. Where a step pulls other anchors, the step the other way is taken.
    pub fn at(search: &mut Search<'_>, at: usize, judge: &Judge<'_>) -> Option<Self> {
        let mut candidate: Candidate = search.candidates.get(at)?.clone();
        let solution = candidate.solution.clone().ok()?;
        let (here, value, set) = (candidate.action, judged(judge, &candidate), pulled(&solution));
        let size_m = search.plate.size_m();
        let force_n = here.force_n.length().max(here.moment_nm.length() / size_m);
        let (mut slope, mut plane) = ([0.0; 6], [[0.0; 6]; 3]);
        for component in 0..6 {
            let step = STEP_SHARE * if component < 3 { force_n } else { force_n * size_m };
            if step == 0.0 {
                return None;
            }
            for by in [step, -step] {
                let mut six = here.six();
                six[component] += by;
                candidate.action = Wrench::from_six(six);
                if SETTLING.contains(&component) {
                    search.solutions += 1;
                    candidate.solution = search.plate.solve_near(&solution, [six[2], six[3], six[4]]);
                }
                let same = candidate.solution.as_ref().is_ok_and(|near| pulled(near) == set);
                slope[component] = (judged(judge, &candidate) - value) / by;
                if let Ok(near) = &candidate.solution {
                    for (row, (new, old)) in plane.iter_mut().zip(near.plane.iter().zip(solution.plane)) {
                        row[component] = (new - old) / by;
                    }
                }
                if same {
                    break;
                }
            }
            candidate.solution = Ok(solution.clone());
        }
        let value = Wrench::from_six(slope);
        slope.iter().all(|part| part.is_finite()).then(|| Self { value, plane: plane.map(Wrench::from_six) })
    }

    /// Of the settlement at a place of the plate. As settlement grows in step with the action, its sum of products with an
    /// action under which the same parts carry is the settlement itself.
    pub fn settlement(&self, at: DVec2) -> Wrench {
        let [level, along_x, along_y] = self.plane;
        level + along_x * at.x + along_y * at.y
    }
}
