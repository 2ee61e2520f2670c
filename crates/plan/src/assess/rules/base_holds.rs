//! Whether base and foot hold: anchors, plate, slab, sleeve, fixing to steel; each by its worst, and what was not checked.

use super::strength::{full_use, share};
use super::{PLACE_OR_PARTS, UnitContext, meets_or};
use crate::assess::anchorage::{BaseAssessment, BaseUse, Fixed, Look, Used};
use crate::assess::check::{Check, Outcome, Severity};
use crate::assess::code::Code;

/// The codes of these checks, each with how bad its failure is, why it may not apply, and the way out.
const ASKED: [Asked; 5] = [
    Asked {
        code: Code::AnchorsHold,
        severity: Severity::Blocking,
        none: "no anchors in concrete",
        way_out: "Move the base away from the edge or from other bases, or choose more, stronger or deeper anchors, a wider \
                  plate or a shorter arm.",
    },
    Asked {
        code: Code::PlateHolds,
        severity: Severity::Blocking,
        none: "no plate on anchors",
        way_out: "Choose a base with a thicker plate, or with anchors nearer to its tube.",
    },
    Asked {
        code: Code::SlabPunching,
        severity: Severity::Caution,
        none: "the base does not stand on a slab",
        way_out: "Ask the structural engineer, move the base from the edge, or choose a wider plate or a thicker slab.",
    },
    Asked {
        code: Code::SleeveHolds,
        severity: Severity::Blocking,
        none: "no sleeve",
        way_out: "Choose a longer or wider sleeve, or a shorter arm.",
    },
    Asked {
        code: Code::SteelFixingHolds,
        severity: Severity::Blocking,
        none: "not fixed to structural steel",
        way_out: "Choose more or stronger bolts, a wider plate or a stronger weld.",
    },
];

struct Asked {
    code: Code,
    severity: Severity,
    none: &'static str,
    way_out: &'static str,
}

/// Checks of base and foot.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let Some(base) = &context.unit.base else {
        let codes: Vec<Code> = ASKED.iter().map(|asked| asked.code).collect();
        return context.not_checked(&codes, PLACE_OR_PARTS);
    };
    ASKED.iter().flat_map(|asked| of_code(context, base, asked)).collect()
}

/// Which check a look belongs to.
const fn code_of(look: Look) -> Code {
    match look {
        Look::Anchors(_) => Code::AnchorsHold,
        Look::PlateBends | Look::PlateIsStiff | Look::PlatePresses => Code::PlateHolds,
        Look::PunchesDown | Look::PunchesUp => Code::SlabPunching,
        Look::SleevePresses | Look::SleeveBreaksOut => Code::SleeveHolds,
        Look::SteelBolts | Look::Weld => Code::SteelFixingHolds,
    }
}

fn of_code(context: &UnitContext<'_>, base: &BaseAssessment, asked: &Asked) -> Vec<Check> {
    let uses: Vec<&BaseUse> = base.uses.iter().filter(|used| code_of(used.look) == asked.code).collect();
    let mut checks = Vec::new();
    for of in [Fixed::Base, Fixed::Foot] {
        let here = || uses.iter().copied().filter(|used| used.of == of);
        let shares = here().filter_map(|used| Some((used, used.share()?)));
        let shares = shares.filter(|(used, share)| *share > 1.0 || !used.look.is_distance());
        if let Some((worst, used)) = shares.reduce(|a, b| if b.1 > a.1 { b } else { a }) {
            checks.push(by_share(context, asked, worst, used));
        }
        checks.extend(what_is_missing(context, asked, here()));
    }
    if checks.is_empty() {
        checks.push(context.check(asked.code, Outcome::NotApplicable(asked.none.to_owned())));
    }
    checks
}

fn by_share(context: &UnitContext<'_>, asked: &Asked, worst: &BaseUse, used: f64) -> Check {
    let mut check = context.check(asked.code, meets_or(used <= 1.0, asked.severity));
    check.detail = format!("{}: {}{}", worst.of.word(), worst.look.words(), cause(context, worst));
    check.measured = Some(share(used));
    let clause = worst.record.as_ref().map_or("", |record| record.clause.as_str());
    check.limit = Some(full_use(clause));
    if check.is_finding() {
        asked.way_out.clone_into(&mut check.way_out);
    }
    check
}

/// The combination and slew that bring it, in words.
fn cause(context: &UnitContext<'_>, used: &BaseUse) -> String {
    let Some(state) = &used.state else { return String::new() };
    let name = context.plan.basis.combination_name(state.combination);
    format!(", {name}, slew {:.0}°", crate::geometry::frame::within_half_turn(state.slew_rad).to_degrees())
}

/// One check for each thing that is missing, with all that it leaves unchecked.
fn what_is_missing<'a>(
    context: &UnitContext<'_>,
    asked: &Asked,
    uses: impl Iterator<Item = &'a BaseUse>,
) -> Vec<Check> {
    let mut missing: Vec<(&str, Vec<&BaseUse>)> = Vec::new();
    for used in uses {
        let Used::NotChecked(what) = &used.outcome else { continue };
        match missing.iter_mut().find(|(known, _)| known == what) {
            Some((_, all)) => all.push(used),
            None => missing.push((what, vec![used])),
        }
    }
    let told = missing.into_iter().map(|(what, all)| {
        let mut check = context.check(asked.code, Outcome::NotChecked(what.to_owned()));
        let words: Vec<&str> = all.iter().map(|used| used.look.words()).collect();
        let of = all.first().map_or("", |used| used.of.word());
        check.detail = format!("{of}: {}", words.join(", "));
        check
    });
    told.collect()
}
