//! Counts the values of a load basis that are still defaults: nobody has confirmed or overridden them.

use crate::basis::{CaseLoad, LoadBasis, Rules, Sourced, Tension};

/// Values of a basis with a source of their own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Values {
    /// Those that nobody stands behind.
    pub unconfirmed: usize,
    /// All of them.
    pub all: usize,
}

impl Values {
    fn add<T>(&mut self, value: &Sourced<T>) {
        self.all += 1;
        self.unconfirmed += usize::from(value.is_unconfirmed());
    }
}

/// Counts regime, loads, factors, cone and working rules of a basis.
pub fn count(basis: &LoadBasis) -> Values {
    let mut values = Values::default();
    values.add(&basis.regime);
    for case in basis.cases.values() {
        count_load(&mut values, &case.load);
    }
    values.add(&basis.cone.half_angle_rad);
    if let Some(lean) = &basis.cone.lean {
        values.add(&lean.inward_rad);
        values.add(&lean.outward_rad);
    }
    values.add(&basis.weight.unfavorable);
    values.add(&basis.weight.favorable);
    values.add(&basis.resistance_factors);
    count_rules(&mut values, &basis.rules);
    values
}

fn count_load(values: &mut Values, load: &CaseLoad) {
    match load {
        CaseLoad::Rope { tension, .. } | CaseLoad::Tether { tension } => match tension {
            Tension::Service { mass_kg, dynamic, load_factor } => {
                for value in [mass_kg, dynamic, load_factor] {
                    values.add(value);
                }
            }
            Tension::Ultimate { anchor_load_n } => values.add(anchor_load_n),
            Tension::MultipleOfRated { times } => values.add(times),
        },
        CaseLoad::Wind { speed_m_s, load_factor, .. } => {
            values.add(speed_m_s);
            values.add(load_factor);
        }
    }
}

fn count_rules(values: &mut Values, rules: &Rules) {
    let Rules { reach, stand_off, clear, people, neighbors: _, handling, deflection_share, longest_drop_m } = rules;
    let always = [
        &reach.angle_rad,
        &reach.arm_m,
        &reach.swing_m,
        &reach.least_depth_m,
        &reach.past_ends_m,
        &stand_off.least_m,
        &stand_off.most_m,
        &clear.height_m,
        &clear.around_m,
        &people.guard_height_m,
        &people.near_edge_m,
        &people.standing_side_m,
        &people.headroom_m,
        &people.erection_width_m,
        &handling.one_person_kg,
        &handling.two_persons_kg,
        deflection_share,
    ];
    let sometimes = [reach.from_plumb_m.as_ref(), longest_drop_m.as_ref()];
    for value in always.into_iter().chain(sometimes.into_iter().flatten()) {
        values.add(value);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::basis::presets;

    /// The file format is the witness: every value with a source has a field that tells who stands behind it.
    #[test]
    fn every_value_that_the_file_gives_a_source_is_counted() {
        for preset in presets().unwrap() {
            let text = serde_json::to_string(&preset.basis).unwrap();
            assert_eq!(count(&preset.basis).all, text.matches("\"standing\":").count(), "{}", preset.key);
        }
    }
}
