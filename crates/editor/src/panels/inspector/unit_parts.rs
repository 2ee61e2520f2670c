//! What a unit is made of: mast, arm, brace, base; what can't stand here is listed with the reason.

use std::collections::BTreeMap;
use std::sync::Arc;

use egui::{Id, Ui};
use gantline_plan::assess::{Check, Outcome, Severity, try_make_ups};
use gantline_plan::catalog::{Choice, Family, MakeUp, PartKind, choices, part_name};
use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{FamilyId, Placement, PlacementId};
use gantline_plan::quantity::UnitSystem;

use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::choice_row::{Entry, Stands};
use crate::widgets::{choice_row, finding_row, section};

/// Shows the choices.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, placement: &Placement, intents: &mut Vec<Intent>) {
    let palette = sight.look.palette;
    let now = &placement.make_up;
    section(ui, palette, "Make-up", |ui| {
        family_row(ui, sight, id, now, intents);
        let Some(family) = sight.plan.families.get(&now.family) else { return };
        for kind in PartKind::ALL {
            let offered = choices(family, now, kind);
            let shown = part_name(family, now, kind);
            let chosen = choice_row(ui, palette, kind.word(), &shown, |ui| {
                let tried = tried(ui, sight, id, kind, &offered);
                offered.iter().zip(tried.iter()).map(|(choice, why)| entry(choice, why.as_deref(), now)).collect()
            });
            if let Some(choice) = chosen.and_then(|index| offered.get(index)) {
                set(id, &choice.make_up, intents);
            }
        }
    });
}

fn set(id: PlacementId, make_up: &MakeUp, intents: &mut Vec<Intent>) {
    let patch = PlacementPatch { make_up: Some(make_up.clone()), ..PlacementPatch::default() };
    intents.push(Intent::change("change part", Change::SetPlacements(vec![id], patch)));
}

fn entry(choice: &Choice, blocks: Option<&str>, now: &MakeUp) -> Entry {
    let chosen = choice.make_up == *now;
    let stands = match (&choice.refused, blocks) {
        (Some(why), _) if !chosen => Stands::Refused(why.to_string()),
        (Some(why), _) => Stands::Blocks(why.to_string()),
        (None, Some(why)) => Stands::Blocks(why.to_owned()),
        (None, None) => Stands::Open,
    };
    let text = match choice.brings.as_slice() {
        [] => choice.name.clone(),
        brings => format!("{}, with {}", choice.name, brings.join(", ")),
    };
    Entry { text, chosen, stands }
}

/// A family is changed as a whole: its first make-up that it lists.
fn family_row(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, now: &MakeUp, intents: &mut Vec<Intent>) {
    let families: Vec<(FamilyId, &Arc<Family>)> =
        sight.plan.families.iter().map(|(&id, family)| (id, family)).collect();
    let shown = families.iter().find(|(id, _)| *id == now.family).map_or("not in the plan", |(_, f)| f.name.as_str());
    let chosen = choice_row(ui, sight.look.palette, "family", shown, |_| {
        families.iter().map(|(id, family)| Entry::open(family.name.clone(), *id == now.family)).collect()
    });
    if let Some((family_id, family)) = chosen.and_then(|index| families.get(index))
        && *family_id != now.family
        && let Some(first) = family.make_ups(*family_id).into_iter().next()
    {
        set(id, &MakeUp { slew_stops: now.slew_stops, drawn_slew_rad: now.drawn_slew_rad, ..first }, intents);
    }
}

/// Why each choice would block here, if it would. Kept while the list is open and the unit as it is, since each is a
/// whole assessment of the unit.
fn tried(ui: &Ui, sight: &Sight<'_>, id: PlacementId, kind: PartKind, offered: &[Choice]) -> Arc<Vec<Option<String>>> {
    let at = Id::unique(("tried", id, kind));
    let key: Key = Arc::new((sight.plan.placements.clone(), sight.look.units));
    let known = ui.data(|data| data.get_temp::<(Key, Arc<Vec<Option<String>>>)>(at));
    if let Some((of, tried)) = known
        && *of == *key
    {
        return tried;
    }
    let listed: Vec<MakeUp> =
        offered.iter().filter(|choice| choice.refused.is_none()).map(|choice| choice.make_up.clone()).collect();
    let mut checks = try_make_ups(sight.plan, id, &listed).into_iter();
    let why = |choice: &Choice| match choice.refused {
        Some(_) => None,
        None => checks.next().and_then(|checks| blocks(&checks, sight.look.units)),
    };
    let tried = Arc::new(offered.iter().map(why).collect::<Vec<_>>());
    ui.data_mut(|data| data.insert_temp(at, (key, Arc::clone(&tried))));
    tried
}

type Key = Arc<(BTreeMap<PlacementId, Placement>, UnitSystem)>;

/// The first blocking finding as words.
fn blocks(checks: &[Check], units: UnitSystem) -> Option<String> {
    let blocking = checks.iter().filter(|check| check.outcome == Outcome::Fails(Severity::Blocking));
    let first = blocking.min_by_key(|check| check.code)?;
    Some(finding_row::sentence(first, units))
}
