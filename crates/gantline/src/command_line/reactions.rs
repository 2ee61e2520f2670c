//! `gantline reactions`: what every unit brings to the structure.

use std::fmt::Write as _;

use gantline_exchange::answers::plan_named::CAUTION;
use gantline_exchange::answers::{ReactionsAnswer, sets_as_csv};
use gantline_exchange::disk::plan_file::open;
use gantline_plan::assess::{Assessment, CombinationResult, Component, Memo, Sense, Unavailable, assess};
use gantline_plan::document::Plan;
use gantline_plan::quantity::{UnitSystem, force, moment};

use super::args::ReactionsArgs;
use super::ending::{Ending, NoAnswer};
use super::tally::tally_line;
use super::told::{tell, tell_beside};

/// Tells the reactions of a plan.
pub fn reactions(args: &ReactionsArgs) -> Result<Ending, NoAnswer> {
    let plan = open(&args.plan)?.plan;
    let assessment = assess(&plan, &mut Memo::new());
    if args.json {
        tell(&(serde_json::to_string_pretty(&ReactionsAnswer::of(&plan, &assessment))? + "\n"))?;
    } else if args.csv {
        let table = sets_as_csv(&ReactionsAnswer::of(&plan, &assessment));
        tell(&table.map_err(|fault| NoAnswer::Csv(fault.to_string()))?)?;
    } else {
        tell(&words(&plan, &assessment, args.units.system()))?;
    }
    tell_beside(&tally_line(assessment.tally()))?;
    Ok(Ending::Clear)
}

/// The answer for people to read: the largest of each kind; all sets are in the JSON and CSV answers.
fn words(plan: &Plan, assessment: &Assessment, units: UnitSystem) -> String {
    let mut text = format!(
        "{}\n{CAUTION}\n\nAction of the unit on the structure at the underside of its base plate; V of Fx and Fy, M of Mx and \
         My. All sets with what acts at the same time: --json or --csv.\n",
        plan.title.job
    );
    for (id, unit) in &assessment.units {
        let Some(placement) = plan.placements.get(id) else { continue };
        let _ = writeln!(text, "\n{} ({id})", placement.tag);
        let resolved = match &unit.resolved {
            Ok(resolved) => resolved,
            Err(fault) => {
                let _ = writeln!(text, "  not checked: {fault}");
                continue;
            }
        };
        let brace = resolved.brace.as_ref().map_or("no brace", |brace| brace.name.as_str());
        let _ = writeln!(
            text,
            "  {}: {}, {}, {brace}, {}",
            resolved.family, resolved.mast.name, resolved.arm.name, resolved.base.name
        );
        for result in unit.reactions.iter().flat_map(|reactions| &reactions.combinations) {
            combination_words(&mut text, result, units);
        }
    }
    text
}

fn combination_words(text: &mut String, result: &CombinationResult, units: UnitSystem) {
    let _ = writeln!(text, "  {} ({})", result.name, result.level.name());
    match &result.unavailable {
        Some(Unavailable::Missing(what)) => {
            let _ = writeln!(text, "    not checked: {what}");
            return;
        }
        Some(Unavailable::DoesNotApply(why)) => {
            let _ = writeln!(text, "    not applicable: {why}");
            return;
        }
        None => {}
    }
    let _ = writeln!(text, "    {}", result.inside);
    let value = |component, sense| result.extreme(component, sense).map(|set| set.value);
    let figures = [
        ("Fz", value(Component::Fz, Sense::Min), value(Component::Fz, Sense::Max)),
        ("V", None, value(Component::V, Sense::Max)),
        ("M", None, value(Component::M, Sense::Max)),
        ("Mz", value(Component::Mz, Sense::Min), value(Component::Mz, Sense::Max)),
    ];
    let shown = figures.into_iter().map(|(symbol, least, most)| {
        let figure = |value: f64| {
            if symbol.starts_with('M') { moment(value, units) } else { force(value, units) }
        };
        let ends: Vec<String> = [least, most].into_iter().flatten().map(figure).collect();
        format!("{symbol} {}", ends.join(" to "))
    });
    let _ = writeln!(text, "    {}", shown.collect::<Vec<_>>().join(", "));
}
