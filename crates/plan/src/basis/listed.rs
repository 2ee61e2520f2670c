//! Every figure of a basis and of a design code that has a source, in one list: to be read, confirmed or overridden.

use super::{CaseLoad, Confirmation, DesignCode, FactorName, LoadBasis, LoadCase, Sourced, Tension, TestDuty};
use crate::quantity::Kind;

/// A figure with its source, and what it is.
#[derive(Debug, Clone, PartialEq)]
pub struct ListedFigure {
    /// The group it stands in: a case by its name, or the rules it belongs to.
    pub group: String,
    /// What it is.
    pub name: &'static str,
    /// What is counted.
    pub kind: Kind,
    /// The figure.
    pub sourced: Sourced<f64>,
}

/// Where a figure of a list is found again: its place in the list.
pub type FigureIndex = usize;

impl LoadBasis {
    /// All figures, group by group.
    pub fn figures(&self) -> Vec<ListedFigure> {
        let mut all = Vec::new();
        each(&mut self.clone(), &mut |group, name, kind, sourced| {
            all.push(ListedFigure { group: group.to_owned(), name, kind, sourced: sourced.clone() });
        });
        all
    }

    /// The basis with one figure in another state; the same basis when there is no such figure.
    #[must_use]
    pub fn with_figure(&self, index: FigureIndex, new: &Sourced<f64>) -> Self {
        let mut basis = self.clone();
        let mut at = 0;
        each(&mut basis, &mut |_, _, _, sourced| {
            if at == index {
                sourced.clone_from(new);
            }
            at += 1;
        });
        basis
    }

    /// The basis with everything that nobody stands behind yet confirmed by someone.
    #[must_use]
    pub fn confirmed_by(&self, by: &str) -> Self {
        let mut basis = self.clone();
        confirm(&mut basis.regime, by);
        confirm(&mut basis.resistance_factors, by);
        basis.tests.values_mut().for_each(|duty| confirm(duty, by));
        each(&mut basis, &mut |_, _, _, sourced| confirm(sourced, by));
        basis
    }

    /// How many values nobody stands behind yet.
    pub fn unconfirmed(&self) -> usize {
        let figures = self.figures().iter().filter(|figure| figure.sourced.is_unconfirmed()).count();
        let duties = self.tests.values().filter(|duty| duty.is_unconfirmed()).count();
        figures
            + duties
            + usize::from(self.regime.is_unconfirmed())
            + usize::from(self.resistance_factors.is_unconfirmed())
    }
}

impl DesignCode {
    /// How many factors nobody stands behind yet.
    pub fn unconfirmed(&self) -> usize {
        self.factors.values().filter(|factor| factor.is_unconfirmed()).count()
    }

    /// The code with every factor that nobody stands behind yet confirmed by someone.
    #[must_use]
    pub fn confirmed_by(&self, by: &str) -> Self {
        let mut code = self.clone();
        code.factors.values_mut().for_each(|factor| confirm(factor, by));
        code
    }
}

impl<T> Sourced<T> {
    /// The same value, confirmed.
    #[must_use]
    pub fn confirmed(self, by: &str) -> Self {
        Self { standing: Confirmation::Confirmed { by: by.to_owned() }, ..self }
    }

    /// Another value in its place, with the reason.
    #[must_use]
    pub fn overridden(self, value: T, reason: &str) -> Self {
        Self { value, standing: Confirmation::Overridden { reason: reason.to_owned() }, ..self }
    }
}

impl FactorName {
    /// Its symbol and what it is for.
    pub const fn words(self) -> &'static str {
        match self {
            Self::SteelGammaM0 => "γ M0, steel cross-sections",
            Self::SteelGammaM1 => "γ M1, steel members",
            Self::SteelGammaM2 => "γ M2, steel net sections and pins",
            Self::AluminumGammaM1 => "γ M1, aluminum",
            Self::AluminumGammaM2 => "γ M2, aluminum",
            Self::AiscPhi => "φ, yielding and buckling",
            Self::AiscPhiRupture => "φ, rupture",
            Self::AnchorGammaConcrete => "γ Mc, anchors in concrete",
            Self::AnchorGammaBars => "γ Ms,re, reinforcement of anchors",
            Self::ModularRatioShort => "modular ratio under plates, short-term",
            Self::ModularRatioLong => "modular ratio under plates, long-term",
        }
    }
}

fn confirm<T: Clone>(sourced: &mut Sourced<T>, by: &str) {
    if sourced.is_unconfirmed() {
        *sourced = sourced.clone().confirmed(by);
    }
}

type Visit<'a> = dyn FnMut(&str, &'static str, Kind, &mut Sourced<f64>) + 'a;

fn each(basis: &mut LoadBasis, visit: &mut Visit<'_>) {
    for case in basis.cases.values_mut() {
        each_of_case(case, visit);
    }
    cone(basis, visit);
    let weight = &mut basis.weight;
    visit("Self-weight", "factor where it makes things worse", Kind::Number, &mut weight.unfavorable);
    visit("Self-weight", "factor where it helps", Kind::Number, &mut weight.favorable);
    rules(basis, visit);
    tests(basis, visit);
}

fn tests(basis: &mut LoadBasis, visit: &mut Visit<'_>) {
    for (kind, duty) in &mut basis.tests {
        let group = format!("Test of {}", kind.words());
        if let TestDuty::Proof(proof) = &mut duty.value {
            visit(&group, "proof load on one", Kind::Force, &mut proof.load_n);
            visit(&group, "share tested", Kind::Share, &mut proof.share);
            visit(&group, "held, s", Kind::Number, &mut proof.hold_s);
        }
    }
}

fn each_of_case(case: &mut LoadCase, visit: &mut Visit<'_>) {
    let group = case.name.clone();
    match &mut case.load {
        CaseLoad::Rope { tension, .. } | CaseLoad::Tether { tension } => match tension {
            Tension::Service { mass_kg, dynamic, load_factor } => {
                visit(&group, "mass on the rope", Kind::Mass, mass_kg);
                visit(&group, "dynamic factor", Kind::Number, dynamic);
                visit(&group, "load factor", Kind::Number, load_factor);
            }
            Tension::Ultimate { anchor_load_n } => visit(&group, "anchor load", Kind::Force, anchor_load_n),
            Tension::MultipleOfRated { times } => visit(&group, "times the rated load", Kind::Number, times),
        },
        CaseLoad::Wind { speed_m_s, load_factor, .. } => {
            visit(&group, "wind speed, m/s", Kind::Number, speed_m_s);
            visit(&group, "load factor", Kind::Number, load_factor);
        }
    }
}

fn cone(basis: &mut LoadBasis, visit: &mut Visit<'_>) {
    let cone = &mut basis.cone;
    visit("Load cone", "half-angle about straight down", Kind::Angle, &mut cone.half_angle_rad);
    if let Some(lean) = &mut cone.lean {
        visit("Load cone", "lean toward the building", Kind::Angle, &mut lean.inward_rad);
        visit("Load cone", "lean away from it", Kind::Angle, &mut lean.outward_rad);
    }
}

fn rules(basis: &mut LoadBasis, visit: &mut Visit<'_>) {
    let rules = &mut basis.rules;
    let reach = &mut rules.reach;
    visit("Reach", "angle of work from straight down", Kind::Angle, &mut reach.angle_rad);
    visit("Reach", "arm's reach of a technician", Kind::Length, &mut reach.arm_m);
    visit("Reach", "largest swing to the side", Kind::Length, &mut reach.swing_m);
    if let Some(limit) = &mut reach.from_plumb_m {
        visit("Reach", "limit from the plumb line", Kind::Length, limit);
    }
    visit("Reach", "harness below the last support", Kind::Length, &mut reach.least_depth_m);
    visit("Reach", "past the ends of a facade", Kind::Length, &mut reach.past_ends_m);
    visit("Stand-off", "least", Kind::Length, &mut rules.stand_off.least_m);
    visit("Stand-off", "most", Kind::Length, &mut rules.stand_off.most_m);
    visit("Clear zones", "room in height", Kind::Length, &mut rules.clear.height_m);
    visit("Clear zones", "room around", Kind::Length, &mut rules.clear.around_m);
    let people = &mut rules.people;
    visit("People", "least guard over the finish", Kind::Length, &mut people.guard_height_m);
    visit("People", "guarded when nearer to an edge than", Kind::Length, &mut people.near_edge_m);
    visit("People", "side of the standing place", Kind::Length, &mut people.standing_side_m);
    visit("People", "headroom over it", Kind::Length, &mut people.headroom_m);
    visit("People", "width of the erection strip", Kind::Length, &mut people.erection_width_m);
    visit("Handling", "one person lifts up to", Kind::Mass, &mut rules.handling.one_person_kg);
    visit("Handling", "two persons lift up to", Kind::Mass, &mut rules.handling.two_persons_kg);
    visit("Service", "tip deflection by outreach", Kind::Share, &mut rules.deflection_share);
    if let Some(drop) = &mut rules.longest_drop_m {
        visit("Service", "longest drop", Kind::Length, drop);
    }
}

#[cfg(test)]
mod tests {

    use crate::basis::presets;

    /// Counts `"source"` in the stored form: every sourced value has one, so that a figure which the list forgets shows.
    #[test]
    fn no_sourced_value_of_a_preset_is_forgotten() {
        for preset in presets().unwrap() {
            let stored = serde_json::to_string(&preset.basis).unwrap();
            let sources = stored.matches("\"source\":").count();
            // Regime, the question of resistance factors and the kinds of test are no figures.
            assert_eq!(preset.basis.figures().len() + preset.basis.tests.len() + 2, sources, "{}", preset.key);
        }
    }

    #[test]
    fn an_overridden_figure_is_found_in_its_place_and_nothing_else_differs() {
        let basis = presets().unwrap().remove(0).basis;
        let before = basis.figures();
        for index in 0..before.len() {
            let new = before[index].sourced.clone().overridden(before[index].sourced.value + 1.0, "measured");
            let after = basis.with_figure(index, &new).figures();
            assert_eq!(after[index].sourced, new);
            let differing = before.iter().zip(&after).filter(|(a, b)| a != b).count();
            assert_eq!(differing, 1);
        }
    }

    #[test]
    fn confirming_all_leaves_no_default_and_overrides_nothing() {
        let basis = presets().unwrap().remove(0).basis;
        let figure = basis.figures()[0].sourced.clone().overridden(1.0, "test");
        let confirmed = basis.with_figure(0, &figure).confirmed_by("A. Reader");
        assert_eq!(confirmed.unconfirmed(), 0);
        assert_eq!(confirmed.figures()[0].sourced, figure);
    }
}
