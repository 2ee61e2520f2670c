//! Reactions of a base as properties: of each level the governing sets, with the combination, the loads and factors inside,
//! and all six components that act together.

use gantline_plan::assess::{Component, GOVERNING, ReactionSet, Reactions, Unavailable};
use gantline_plan::basis::LoadLevel;
use gantline_plan::quantity::Kind;

use super::properties::{Property, figure, words};
use crate::answers::combination;

const LEVELS: [LoadLevel; 3] = [LoadLevel::Service, LoadLevel::Ultimate, LoadLevel::MultipleOfRated];

/// Components in the order of a set's concurrent figures.
const SIX: [Component; 6] = [Component::Fx, Component::Fy, Component::Fz, Component::Mx, Component::My, Component::Mz];

/// A set of properties for each level that has figures: the set's name and its properties.
pub fn sets_of_levels(reactions: &Reactions) -> Vec<(String, Vec<Property>)> {
    let of_level = |level: LoadLevel| {
        let name = format!("Gantline_Reactions_{}", level.name().replace(' ', "_"));
        let governing = GOVERNING
            .iter()
            .filter_map(|&(component, sense)| reactions.worst(level, component, sense))
            .flat_map(|set| properties(reactions, set));
        (name, governing.collect::<Vec<_>>())
    };
    LEVELS.into_iter().map(of_level).filter(|(_, properties)| !properties.is_empty()).collect()
}

/// Combinations that have no figures because something is missing: what governs was found without them.
pub fn not_computed(reactions: &Reactions) -> Option<Property> {
    let missing = reactions.combinations.iter().filter_map(|one| match &one.unavailable {
        Some(Unavailable::Missing(what)) => Some(format!("{}: {what}", one.name)),
        Some(Unavailable::DoesNotApply(_)) | None => None,
    });
    words("Combinations that could not be computed", missing.collect::<Vec<_>>().join("; "))
}

fn properties(reactions: &Reactions, set: &ReactionSet) -> Vec<Property> {
    let extreme = format!("{} {}", set.component.symbol(), set.sense.word());
    let kind = |component: Component| if component.is_moment() { Kind::Moment } else { Kind::Force };
    let combination = reactions.combinations.get(set.combination);
    // The figures are those of the answers, rounded beside the largest.
    let said = combination::set(set);
    let mut all = vec![
        figure(&extreme, kind(set.component), said.value.figure_and_unit().0.value()),
        words(&format!("{extreme}: combination"), combination.map_or("", |found| &found.name)),
        words(&format!("{extreme}: level"), set.level.name()),
        words(&format!("{extreme}: loads and factors inside"), combination.map_or("", |found| &found.inside)),
    ];
    let six = said.concurrent;
    let acting = [six.fx_n, six.fy_n, six.fz_n, six.mx_nm, six.my_nm, six.mz_nm];
    all.extend(SIX.iter().zip(acting).map(|(&component, acting)| {
        figure(format!("{extreme}: {}", component.symbol()), kind(component), acting.value())
    }));
    all.push(figure(format!("{extreme}: slew"), Kind::Angle, said.slew_rad.value()));
    all.into_iter().flatten().collect()
}
