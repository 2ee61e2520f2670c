//! Puts lines together at their ends: runs that come back to where they began are loops, others stay open.
//!
//! Ends in one place belong together. Where exactly two lines meet, a run goes on; where three or more meet, it stops, since
//! nothing says which way the outline goes. Then ends that are still alone are joined to the nearest other one within the
//! tolerance, nearest pairs first, and each gap so closed is told.

use std::collections::HashMap;

use glam::DVec2;

/// Ends nearer than this are in one place, m: coordinates of drawings are rounded to that or finer.
const ONE_PLACE_M: f64 = 1e-5;

/// A line from end to end, m.
pub type Strand = Vec<DVec2>;

/// A gap that was closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClosedGap {
    /// Its middle, m: where both ends are now.
    pub at: DVec2,
    /// How wide it was, m.
    pub width_m: f64,
}

/// A run of lines.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Run {
    /// Its corners; of a closed one the first is not repeated.
    pub corners: Vec<DVec2>,
    /// Whether it comes back to its start.
    pub closed: bool,
    /// Gaps closed in it.
    pub gaps: Vec<ClosedGap>,
    /// Whether it stops where three or more lines meet.
    pub branches: bool,
}

/// What became of the lines of a layer.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Chained {
    /// Closed and open runs.
    pub runs: Vec<Run>,
    /// Lines that lay on an equal one and were counted once.
    pub doubled: usize,
}

/// Puts open lines together; every strand has two points or more.
pub fn chain(strands: Vec<Strand>, tolerance_m: f64) -> Chained {
    let mut knots = Knots::of(&strands);
    let before = strands.len();
    let strands = without_doubles(strands, &mut knots);
    let doubled = before - strands.len();
    let gaps = knots.join_loose_ends(&strands, tolerance_m);
    let runs = runs(&strands, &knots, &gaps);
    Chained { runs, doubled }
}

/// Which ends are in one place: the number of the place of each strand's start and end.
struct Knots {
    ends: Vec<[usize; 2]>,
    places: Vec<DVec2>,
}

impl Knots {
    fn of(strands: &[Strand]) -> Self {
        let mut known = Places::new(ONE_PLACE_M);
        let ends = strands.iter().map(|strand| ends_of(strand).map(|end| known.number_of(end))).collect();
        Self { ends, places: known.known }
    }

    /// How many ends are at each place.
    fn degrees(&self) -> Vec<usize> {
        let mut degrees = vec![0; self.places.len()];
        for &place in self.ends.iter().flatten() {
            degrees[place] += 1;
        }
        degrees
    }

    /// Joins ends that are alone to the nearest other within the tolerance; gives the gap at each place joined to another.
    fn join_loose_ends(&mut self, strands: &[Strand], tolerance_m: f64) -> HashMap<usize, ClosedGap> {
        let degrees = self.degrees();
        let loose: Vec<usize> = (0..self.places.len()).filter(|&place| degrees[place] == 1).collect();
        let mut pairs = near_pairs(&loose, &self.places, tolerance_m);
        pairs.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)).then(a.2.cmp(&b.2)));
        // A line as short as the tolerance is not bent round to its own start.
        let mut lengths = HashMap::new();
        for (strand, ends) in strands.iter().zip(&self.ends) {
            lengths.insert(*ends, strand.windows(2).map(|pair| pair[0].distance(pair[1])).sum::<f64>());
        }
        let is_speck = |a: usize, b: usize| {
            [[a, b], [b, a]].iter().filter_map(|ends| lengths.get(ends)).any(|length| *length <= 2.0 * tolerance_m)
        };
        let mut joined: HashMap<usize, usize> = HashMap::new();
        let mut gaps = HashMap::new();
        for (width_m, a, b) in pairs {
            if joined.contains_key(&a) || joined.contains_key(&b) || is_speck(a, b) {
                continue;
            }
            joined.insert(a, b);
            joined.insert(b, b);
            gaps.insert(b, ClosedGap { at: self.places[a].midpoint(self.places[b]), width_m });
        }
        for place in self.ends.iter_mut().flatten() {
            *place = joined.get(place).copied().unwrap_or(*place);
        }
        gaps
    }
}

fn ends_of(strand: &Strand) -> [DVec2; 2] {
    let at = |end: Option<&DVec2>| end.copied().unwrap_or_default();
    [at(strand.first()), at(strand.last())]
}

/// Places in a grid of cells as wide as the reach, so that only nine cells are looked at.
struct Places {
    reach: f64,
    cells: HashMap<(i64, i64), Vec<usize>>,
    known: Vec<DVec2>,
}

impl Places {
    fn new(reach: f64) -> Self {
        Self { reach, cells: HashMap::new(), known: Vec::new() }
    }

    fn cell(&self, at: DVec2) -> (i64, i64) {
        ((at.x / self.reach).floor() as i64, (at.y / self.reach).floor() as i64)
    }

    fn around(&self, at: DVec2) -> impl Iterator<Item = usize> + '_ {
        let (x, y) = self.cell(at);
        let cells = (-1..=1).flat_map(move |dx| (-1..=1).map(move |dy| (x.saturating_add(dx), y.saturating_add(dy))));
        cells.filter_map(|cell| self.cells.get(&cell)).flatten().copied()
    }

    fn add(&mut self, at: DVec2) -> usize {
        let number = self.known.len();
        self.known.push(at);
        self.cells.entry(self.cell(at)).or_default().push(number);
        number
    }

    /// The number of the known place within reach, else of a new one. Known places are farther apart than the reach, so a
    /// cell holds few of them however many ends a file puts there.
    fn number_of(&mut self, at: DVec2) -> usize {
        let found = self.around(at).find(|&number| self.known[number].distance(at) <= self.reach);
        found.unwrap_or_else(|| self.add(at))
    }
}

/// Pairs of loose places within the tolerance, with their distance.
fn near_pairs(loose: &[usize], places: &[DVec2], tolerance_m: f64) -> Vec<(f64, usize, usize)> {
    /// No end is offered to more than so many others: a heap of loose ends is no outline.
    const MOST_OFFERED: usize = 32;
    let mut grid = Places::new(tolerance_m);
    let mut pairs = Vec::new();
    for &place in loose {
        let at = places[place];
        let near = grid.around(at).take(MOST_OFFERED).filter(|&other| grid.known[other].distance(at) <= tolerance_m);
        pairs.extend(near.map(|other| (grid.known[other].distance(at), loose[other], place)));
        grid.add(at);
    }
    pairs
}

/// The strands without those that lie on an equal one.
fn without_doubles(strands: Vec<Strand>, knots: &mut Knots) -> Vec<Strand> {
    /// So many lines between the same two places are compared, no more.
    const MOST_COMPARED: usize = 16;
    let mut between: HashMap<(usize, usize), Vec<usize>> = HashMap::new();
    let mut kept: Vec<Strand> = Vec::with_capacity(strands.len());
    let mut ends = Vec::with_capacity(strands.len());
    for (strand, own) in strands.into_iter().zip(&knots.ends) {
        let key = (own[0].min(own[1]), own[0].max(own[1]));
        let known = between.entry(key).or_default();
        if known.iter().take(MOST_COMPARED).any(|&other| is_same(&kept[other], &strand)) {
            continue;
        }
        known.push(kept.len());
        kept.push(strand);
        ends.push(*own);
    }
    knots.ends = ends;
    kept
}

/// Whether two lines go through the same points, either way round.
fn is_same(one: &Strand, other: &Strand) -> bool {
    let near = |(a, b): (&DVec2, &DVec2)| a.distance(*b) <= ONE_PLACE_M;
    one.len() == other.len() && (one.iter().zip(other).all(near) || one.iter().zip(other.iter().rev()).all(near))
}

/// Follows lines from place to place.
fn runs(strands: &[Strand], knots: &Knots, gaps: &HashMap<usize, ClosedGap>) -> Vec<Run> {
    let mut at_place: Vec<Vec<usize>> = vec![Vec::new(); knots.places.len()];
    for (index, ends) in knots.ends.iter().enumerate() {
        at_place[ends[0]].push(index);
        if ends[1] != ends[0] {
            at_place[ends[1]].push(index);
        }
    }
    let degrees = knots.degrees();
    let goes_on = |place: usize| degrees[place] == 2;
    let mut used = vec![false; strands.len()];
    let mut runs = Vec::new();
    // Runs with ends first, from their ends; what is left are rings.
    let starts_run = |index: usize| !(goes_on(knots.ends[index][0]) && goes_on(knots.ends[index][1]));
    let order = (0..strands.len()).filter(|&index| starts_run(index)).chain(0..strands.len());
    for first in order {
        if used[first] {
            continue;
        }
        let start = if goes_on(knots.ends[first][0]) && !goes_on(knots.ends[first][1]) {
            knots.ends[first][1]
        } else {
            knots.ends[first][0]
        };
        let mut walk = Walk { run: Run::default(), gaps };
        let (mut strand, mut from) = (first, start);
        let end = loop {
            used[strand] = true;
            let [a, b] = knots.ends[strand];
            let forward = from == a;
            walk.go(&strands[strand], forward, from);
            let to = if forward { b } else { a };
            let next = at_place[to].iter().copied().find(|&next| !used[next]).filter(|_| goes_on(to));
            match next {
                Some(next) => (strand, from) = (next, to),
                None => break to,
            }
        };
        runs.push(walk.ended(start, end, degrees[start] > 2 || degrees[end] > 2));
    }
    runs
}

struct Walk<'a> {
    run: Run,
    gaps: &'a HashMap<usize, ClosedGap>,
}

impl Walk<'_> {
    /// Goes along a strand that is entered at a place.
    fn go(&mut self, strand: &Strand, forward: bool, entered_at: usize) {
        let mut points: Vec<DVec2> = if forward { strand.clone() } else { strand.iter().rev().copied().collect() };
        if let Some(last) = self.run.corners.last_mut() {
            if let Some(gap) = self.gaps.get(&entered_at) {
                *last = gap.at;
                self.run.gaps.push(*gap);
            }
            points.remove(0);
        }
        self.run.corners.extend(points);
    }

    fn ended(self, start: usize, end: usize, branches: bool) -> Run {
        let mut run = self.run;
        run.closed = start == end && run.corners.len() > 2;
        if run.closed {
            run.corners.pop();
            if let (Some(gap), Some(first)) = (self.gaps.get(&start), run.corners.first_mut()) {
                *first = gap.at;
                run.gaps.push(*gap);
            }
        } else {
            run.branches = branches;
        }
        run
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(ends: &[[f64; 4]]) -> Vec<Strand> {
        ends.iter().map(|&[a, b, c, d]| vec![DVec2::new(a, b), DVec2::new(c, d)]).collect()
    }

    #[test]
    fn four_lines_in_any_order_and_sense_are_one_loop() {
        let strands = lines(&[[0., 0., 4., 0.], [4., 3., 4., 0.], [0., 3., 0., 0.], [0., 3., 4., 3.]]);
        let chained = chain(strands, 0.005);
        assert_eq!(chained.runs.len(), 1);
        assert!(chained.runs[0].closed && chained.runs[0].gaps.is_empty());
        assert_eq!(chained.runs[0].corners.len(), 4);
    }

    #[test]
    fn a_gap_within_the_tolerance_is_closed_in_its_middle_and_told_and_a_wider_one_is_not() {
        for (gap, closes) in [(0.004, true), (0.006, false)] {
            let strands = lines(&[[0., 0., 4., 0.], [4., gap, 4., 3.], [4., 3., 0., 3.], [0., 3., 0., 0.]]);
            let chained = chain(strands, 0.005);
            assert_eq!((chained.runs.len(), chained.runs[0].closed), (1, closes));
            if closes {
                let told = chained.runs[0].gaps[0];
                assert!((told.width_m - 0.004).abs() < 1e-12 && told.at.distance(DVec2::new(4.0, 0.002)) < 1e-12);
                assert!(chained.runs[0].corners.contains(&told.at));
            }
        }
    }

    #[test]
    fn exact_ends_stay_together_though_a_stranger_ends_nearby() {
        let mut ends = vec![[4., 0.003, 9., 9.]];
        ends.extend([[0., 0., 4., 0.], [4., 0., 4., 3.], [4., 3., 0., 3.], [0., 3., 0., 0.]]);
        let chained = chain(lines(&ends), 0.005);
        assert_eq!(chained.runs.iter().filter(|run| run.closed).count(), 1);
        assert_eq!(chained.runs.iter().filter(|run| !run.closed && !run.branches).count(), 1);
    }

    #[test]
    fn lines_drawn_twice_count_once() {
        let strands = lines(&[[0., 0., 4., 0.], [4., 0., 0., 0.], [4., 0., 4., 3.], [4., 3., 0., 0.]]);
        let chained = chain(strands, 0.005);
        assert_eq!((chained.doubled, chained.runs.len(), chained.runs[0].closed), (1, 1, true));
    }

    #[test]
    fn where_three_lines_meet_a_run_stops_and_says_so() {
        let strands = lines(&[[0., 0., 4., 0.], [4., 0., 4., 3.], [4., 0., 8., 0.]]);
        let chained = chain(strands, 0.005);
        assert_eq!(chained.runs.len(), 3);
        assert!(chained.runs.iter().all(|run| run.branches && !run.closed));
    }

    #[test]
    fn a_polyline_that_all_but_comes_back_is_closed_and_a_speck_is_not() {
        let almost: Strand = [(0., 0.), (4., 0.), (4., 3.), (0., 0.003)].map(|(x, y)| DVec2::new(x, y)).to_vec();
        let speck: Strand = vec![DVec2::new(20.0, 0.0), DVec2::new(20.001, 0.0), DVec2::new(20.001, 0.001)];
        let chained = chain(vec![almost, speck], 0.005);
        let (closed, open): (Vec<Run>, Vec<Run>) = chained.runs.into_iter().partition(|run| run.closed);
        assert_eq!((closed.len(), open.len(), closed[0].corners.len()), (1, 1, 3));
    }
}
