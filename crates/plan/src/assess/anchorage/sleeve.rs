//! A sleeve cast into the slab: the bearing couple under every extreme of the base.

use gantline_mechanics::sleeve::{Sleeve, SleeveForces};

use super::code::{bearing, strength_pa};
use super::found::{BaseUse, Fixed, HandedOn, Look, Record, RecordSymbol, Used};
use super::place::concrete_of_slab;
use crate::assess::reactions::{Component, ReactionSet, Reactions};
use crate::basis::{DesignCode, LoadLevel};
use crate::document::Slab;

/// What a sleeve does to the concrete round it.
pub(super) fn uses(
    (diameter_m, depth_m): (f64, f64),
    reactions: &Reactions,
    slab: &Slab,
    code: &DesignCode,
) -> (Vec<BaseUse>, Option<HandedOn>) {
    let of = Fixed::Base;
    let breaks_out = BaseUse::not_checked(
        of,
        Look::SleeveBreaksOut,
        "break-out of the concrete round a sleeve lies outside the anchorage codes: structural engineer",
    );
    let sleeve = Sleeve { diameter_m, depth_m };
    let mut worst: Option<(&ReactionSet, SleeveForces)> = None;
    for set in design_sets(reactions) {
        let [x, y, _, about_x, about_y, _] = set.concurrent;
        match sleeve.forces(x.hypot(y), about_x.hypot(about_y)) {
            Ok(forces) if worst.is_none_or(|known| forces.top_pa > known.1.top_pa) => worst = Some((set, forces)),
            Ok(_) => {}
            Err(fault) => {
                return (vec![BaseUse::not_checked(of, Look::SleevePresses, fault.to_string()), breaks_out], None);
            }
        }
    }
    let Some((set, forces)) = worst else {
        let missing = "a combination at the design level that could be computed";
        return (vec![BaseUse::not_checked(of, Look::SleevePresses, missing), breaks_out], None);
    };
    let handed_on = HandedOn {
        at: format!(
            "slab at the sleeve: {:.2} kN near the top, {:.2} kN the other way {:.3} m lower",
            forces.upper_n / 1e3,
            forces.lower_n / 1e3,
            forces.lower_at_m - forces.upper_at_m
        ),
        action: set.concurrent,
        combination: set.combination,
    };
    let rule = bearing(code);
    let borne = strength_pa(code, &concrete_of_slab(slab)).and_then(|concrete_pa| {
        rule.strength_pa(concrete_pa).map(|borne| (concrete_pa, borne)).map_err(|fault| fault.to_string())
    });
    let presses = match borne {
        Err(what) => BaseUse::not_checked(of, Look::SleevePresses, what),
        Ok((concrete_pa, borne_pa)) => BaseUse {
            record: Some(Record {
                clause: rule.clause().to_owned(),
                formula: "sigma = V/(d*L) + 6*(M + V*L/2)/(d*L^2), pressure straight from top to foot".to_owned(),
                symbols: vec![
                    RecordSymbol::new("V", set.concurrent[0].hypot(set.concurrent[1]), "N"),
                    RecordSymbol::new("M", set.concurrent[3].hypot(set.concurrent[4]), "N*m"),
                    RecordSymbol::new("d", diameter_m, "m"),
                    RecordSymbol::new("L", depth_m, "m"),
                    RecordSymbol::new("sigma", forces.top_pa, "Pa"),
                    RecordSymbol::new("F upper", forces.upper_n, "N"),
                    RecordSymbol::new("z upper", forces.upper_at_m, "m"),
                    RecordSymbol::new("F lower", forces.lower_n, "N"),
                    RecordSymbol::new("z lower", forces.lower_at_m, "m"),
                    RecordSymbol::new("strength", concrete_pa, "Pa"),
                    RecordSymbol::new("borne", borne_pa, "Pa"),
                ],
                resistance_n: None,
                action_n: None,
                caution: "bars that take the couple are for the structural engineer".to_owned(),
            }),
            ..BaseUse::plain(of, Look::SleevePresses, Used::Share(forces.top_pa / borne_pa))
        },
    };
    (vec![presses, breaks_out], Some(handed_on))
}

/// Extremes of the base at the design level.
pub(super) fn design_sets(reactions: &Reactions) -> impl Iterator<Item = &ReactionSet> {
    let designed = reactions.combinations.iter().filter(|result| result.level != LoadLevel::Service);
    designed.flat_map(|result| &result.sets)
}

/// The set with the largest moment at the design level.
pub(super) fn largest_moment(reactions: &Reactions) -> Option<&ReactionSet> {
    let moments = design_sets(reactions).filter(|set| set.component == Component::M);
    moments.max_by(|a, b| a.value.total_cmp(&b.value))
}
