//! Laws: judge and records agree to the bit, areas far from edges are those of one or n, and nothing nearer ever helps.

use super::super::*;
use super::samples::*;
use super::{Aci318Factors, Prepared};
use proptest::prelude::*;

fn square_of(fastener: Fastener, s: f64) -> Group {
    group(fastener, &[[0.0, 0.0], [s, 0.0], [0.0, s], [s, s]])
}

fn strength(told: &[Record], mode: Mode) -> f64 {
    told.iter().filter(|r| r.mode == mode).filter_map(|r| r.resistance_n).fold(f64::INFINITY, f64::min)
}

fn worst(told: &[Record], mode: Mode) -> f64 {
    told.iter().filter(|r| r.mode == mode).filter_map(Record::utilization).fold(0.0, f64::max)
}

const EVEN: ([f64; 4], [[f64; 2]; 4]) = ([5e3; 4], [[2e3, 0.0]; 4]);

fn told(group: &Group, edges: [f64; 4], thickness: f64) -> Vec<Record> {
    let around = member(group, edges, thickness);
    records(group, &Concrete::plain(30e6), &around, &acting(&EVEN.0, &EVEN.1))
}

fn kinds() -> [Fastener; 2] {
    [headed(0.016, 157e-6, 0.12, 4e-4, 400e6, 240e6), bonded(0.12, 6e6, 10e6)]
}

proptest! {
    #[test]
    fn judge_is_the_worst_of_the_records(
        tension in prop::array::uniform4(0.0..20e3_f64),
        shear in prop::array::uniform4(prop::array::uniform2(-5e3..5e3_f64)),
        edge in 0.08..0.5_f64,
        which in 0..2_usize,
    ) {
        let group = square_of(kinds()[which].clone(), 0.2);
        let around = member(&group, [edge + 0.2, 1.0, f64::INFINITY, 0.3], 0.22);
        let concrete = Concrete::plain(30e6);
        let actions = acting(&tension, &shear);
        let mut prepared = Prepared::new(&group, &concrete, &Aci318Factors::STANDARD, &around).unwrap();
        let verdict = prepared.judge(&actions).unwrap();
        let records = prepared.records(&actions).unwrap();
        let most = records.iter().filter_map(Record::utilization).fold(0.0, f64::max);
        prop_assert_eq!(verdict.utilization.to_bits(), most.to_bits());
        prop_assert_eq!(verdict.not_checked.is_some(), records.iter().any(|r| matches!(r.outcome, Outcome::NotChecked(_))));
        // Asked again, from what is kept, the answer is the same.
        prop_assert_eq!(prepared.judge(&actions).unwrap(), verdict);
        prop_assert_eq!(prepared.shares(&actions).unwrap().verdict().utilization.to_bits(), most.to_bits());
    }

    #[test]
    fn an_edge_that_comes_nearer_never_helps(far in 0.2..0.9_f64, nearer in 0.02..0.3_f64, which in 0..2_usize) {
        // One edge only: three make a narrow member, whose rule is not monotone.
        let group = square_of(kinds()[which].clone(), 0.2);
        let at = |edge: f64| told(&group, [edge + 0.2, f64::INFINITY, f64::INFINITY, f64::INFINITY], 2.0);
        let (before, after) = (at(far), at((far - nearer).max(0.06)));
        for mode in [Mode::ConcreteCone, Mode::Bond, Mode::PryOut, Mode::ConcreteEdge, Mode::BlowOut] {
            prop_assert!(strength(&after, mode) <= strength(&before, mode) * (1.0 + 1e-12), "{:?}", mode);
        }
    }

    #[test]
    fn a_corner_that_comes_nearer_never_helps(far in 0.2..0.9_f64, nearer in 0.02..0.3_f64) {
        let group = square_of(kinds()[0].clone(), 0.2);
        let at = |corner: f64| told(&group, [0.35, f64::INFINITY, corner + 0.2, f64::INFINITY], 2.0);
        let (before, after) = (at(far), at((far - nearer).max(0.06)));
        prop_assert!(worst(&after, Mode::ConcreteEdge) >= worst(&before, Mode::ConcreteEdge) * (1.0 - 1e-12));
    }

    #[test]
    fn a_thinner_slab_never_helps(thick in 0.2..0.5_f64, thinner in 0.01..0.1_f64) {
        let group = square_of(kinds()[0].clone(), 0.2);
        let at = |h: f64| strength(&told(&group, [0.5, f64::INFINITY, f64::INFINITY, f64::INFINITY], h), Mode::ConcreteEdge);
        prop_assert!(at(thick - thinner) <= at(thick) * (1.0 + 1e-12));
    }

    #[test]
    fn fasteners_that_move_together_never_bear_more(far in 0.1..0.5_f64, nearer in 0.01..0.09_f64, which in 0..2_usize) {
        // The weakest share: of the group while it is one, of each alone beyond.
        let at = |s: f64| {
            let found = told(&square_of(kinds()[which].clone(), s), FAR, 2.0);
            [Mode::ConcreteCone, Mode::Bond, Mode::PryOut].map(|mode| worst(&found, mode))
        };
        let (before, after) = (at(far), at((far - nearer).max(0.05)));
        for (a, b) in after.into_iter().zip(before) {
            prop_assert!(a >= b * (1.0 - 1e-12));
        }
    }

    #[test]
    fn more_load_never_uses_less(factor in 1.0..4.0_f64, shear in -3e3..3e3_f64) {
        let group = square_of(kinds()[0].clone(), 0.2);
        let around = member(&group, [0.4, f64::INFINITY, 0.4, f64::INFINITY], 0.25);
        let concrete = Concrete::plain(30e6);
        let mut prepared = Prepared::new(&group, &concrete, &Aci318Factors::STANDARD, &around).unwrap();
        let mut at = |k: f64| {
            let tension = [4e3, 3e3, 2e3, 1e3].map(|n: f64| n * k);
            let shears = [[shear, 1e3], [1e3, shear], [shear, -1e3], [0.0, 500.0]].map(|v| v.map(|part: f64| part * k));
            prepared.judge(&acting(&tension, &shears)).unwrap().utilization
        };
        prop_assert!(at(factor) >= at(1.0) * (1.0 - 1e-12));
    }
}

#[test]
fn far_from_edges_the_area_ratio_is_n_or_1() {
    let h = 0.12;
    for (s, ratio) in [(1e-3, 1.0), (3.0 * h - 1e-9, 4.0)] {
        let group = square_of(kinds()[0].clone(), s);
        let found = told(&group, FAR, 2.0);
        let cone = only(&found, Mode::ConcreteCone);
        close(symbol(cone, "ANc") / symbol(cone, "ANco"), ratio, 6e-3);
    }
    let apart = told(&square_of(kinds()[0].clone(), 3.0 * h), FAR, 2.0);
    assert_eq!(apart.iter().filter(|r| r.mode == Mode::ConcreteCone).count(), 4);
}
