//! Tables of the load plan: bases with their places, plates with their anchors, sets of reactions that act together.

use gantline_plan::assess::{CombinationResult, GOVERNING, ReactionSet, Unavailable};
use gantline_plan::catalog::{Base, Fixing, ResolvedUnit};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity::{self, Kind};

use super::groups::Group;
use crate::drawing_set::Given;
use crate::drawing_set::table::{Column, Row, Table};

/// Every base with its group, place and direction.
pub fn bases(given: &Given<'_>, groups: &[Group<'_>]) -> Table {
    let columns = vec![
        Column::words("Tag", 18.0),
        Column::words("Group", 14.0),
        Column::figures("x", 25.0),
        Column::figures("y", 25.0),
        Column::figures("Level", 25.0),
        Column::figures("x axis toward", 28.0),
    ];
    let mut rows = Vec::new();
    for (&id, placement) in &given.plan.placements {
        let Some(unit) = given.assessment.units.get(&id) else { continue };
        let number = groups.iter().position(|group| group.members.iter().any(|(member, _)| *member == id));
        let mut cells = vec![placement.tag.0.clone(), number.map_or_else(String::new, |index| (index + 1).to_string())];
        match unit.frame {
            Some(frame) => {
                let at = given.plan.datum.in_grid(frame.at);
                cells.extend(at.to_array().map(|part| quantity::length(part, given.units)));
                cells.push(quantity::level(frame.level_m, given.units));
                cells.push(quantity::angle(frame.outward_rad));
            }
            None => cells.push("gone".to_owned()),
        }
        rows.push(Row::Cells(cells));
    }
    Table { title: "Bases".to_owned(), columns, rows }
}

/// What each group is made of and stands on.
pub fn plates(given: &Given<'_>, groups: &[Group<'_>]) -> Table {
    let columns = vec![Column::words("Group", 14.0), Column::words("What", 20.0), Column::words("", 101.0)];
    let mut rows = Vec::new();
    for (index, group) in groups.iter().enumerate() {
        let mut label = (index + 1).to_string();
        let mut row = |what: &str, words: String| {
            rows.push(Row::Cells(vec![std::mem::take(&mut label), what.to_owned(), words]));
        };
        row("bases", group.tags());
        match &group.unit.resolved {
            Ok(unit) => {
                row("parts", parts(unit));
                row("base", plate(given, &unit.base, unit.fixing.as_ref()));
                if let Some(foot) = &unit.foot {
                    row("foot", plate(given, &foot.base, foot.fixing.as_ref()));
                }
            }
            Err(fault) => row("not known", fault.to_string()),
        }
    }
    Table { title: "Parts, plates and anchors".to_owned(), columns, rows }
}

fn parts(unit: &ResolvedUnit) -> String {
    let brace = unit.brace.as_ref().map_or("no brace", |brace| brace.name.as_str());
    let invented = if unit.invented { " (invented for demonstration)" } else { "" };
    format!("{}{invented}: {}, {}, {brace}", unit.family, unit.mast.name, unit.arm.name)
}

fn plate(given: &Given<'_>, base: &Base, fixing: Option<&Fixing>) -> String {
    let length = |meters: f64| quantity::length(meters, given.units);
    let size = Bounds::of(base.plate_m.iter().copied()).map(|bounds| bounds.size_m());
    let plate = size.map_or_else(String::new, |size| {
        format!("; plate {} by {}, {} thick", length(size.x), length(size.y), length(base.plate_thickness_m))
    });
    let fixed = match (&base.anchors, fixing) {
        (Some(anchors), Some(fixing)) => format!(
            "; {} of {}, diameter {}, embedment {}",
            anchors.at_m.len(),
            fixing.name,
            length(fixing.diameter_m),
            length(anchors.embedment_m)
        ),
        (Some(anchors), None) => format!("; {} anchors of a kind not known", anchors.at_m.len()),
        (None, _) => "; no anchors of its own are known".to_owned(),
    };
    format!("{}, {}{plate}{fixed}", base.name, base.kind.words())
}

/// Sets that act together, of every combination of every group.
pub fn reactions(given: &Given<'_>, groups: &[Group<'_>]) -> Table {
    let unit = |kind: Kind| kind.unit(given.units);
    let (force, moment) = (unit(Kind::Force), unit(Kind::Moment));
    let mut columns = vec![Column::words("Extreme", 20.0)];
    columns.extend(["Fx", "Fy", "Fz"].map(|head| Column::figures(format!("{head} {force}"), 16.0)));
    columns.extend(["Mx", "My", "Mz"].map(|head| Column::figures(format!("{head} {moment}"), 17.0)));
    columns.push(Column::figures("Slew", 16.0));
    let rows = groups.iter().enumerate().flat_map(|(index, group)| of_group(given, index + 1, group));
    Table { title: "Reactions that act together".to_owned(), columns, rows: rows.collect() }
}

fn of_group(given: &Given<'_>, number: usize, group: &Group<'_>) -> Vec<Row> {
    let Some(reactions) = &group.unit.reactions else {
        let why = match &group.unit.resolved {
            Ok(_) => "no reactions could be computed".to_owned(),
            Err(fault) => fault.to_string(),
        };
        return vec![Row::Group(format!("Group {number}: not checked: {why}"))];
    };
    reactions.combinations.iter().flat_map(|result| of_combination(given, number, result)).collect()
}

fn of_combination(given: &Given<'_>, number: usize, result: &CombinationResult) -> Vec<Row> {
    let inside = if result.inside.is_empty() { String::new() } else { format!(": {}", result.inside) };
    let head = format!("Group {number}, {}, {} level{inside}", result.name, result.level.name());
    match &result.unavailable {
        Some(Unavailable::Missing(what)) => return vec![Row::Group(format!("{head}; not checked: {what}"))],
        Some(Unavailable::DoesNotApply(why)) => return vec![Row::Group(format!("{head}; not applicable: {why}"))],
        None if result.sets.is_empty() => {
            return vec![Row::Group(format!("{head}; not checked: no state was found in which it could be computed"))];
        }
        None => {}
    }
    let mut rows = vec![Row::Group(head)];
    let sets = GOVERNING.iter().filter_map(|&(component, sense)| result.extreme(component, sense));
    rows.extend(sets.map(|set| Row::Cells(of_set(given, set))));
    for foot in &result.foot {
        let mut cells = vec![format!("foot {} {}", foot.component.symbol(), foot.sense.word())];
        cells.extend(foot.concurrent.to_array().map(|part| quantity::digits(Kind::Force, part, given.units)));
        cells.extend(["–"; 3].map(str::to_owned));
        cells.push(quantity::angle(foot.slew_rad));
        rows.push(Row::Cells(cells));
    }
    rows
}

fn of_set(given: &Given<'_>, set: &ReactionSet) -> Vec<String> {
    let [fx, fy, fz, mx, my, mz] = set.concurrent;
    let mut cells = vec![format!("{} {}", set.component.symbol(), set.sense.word())];
    cells.extend([fx, fy, fz].map(|part| quantity::digits(Kind::Force, part, given.units)));
    cells.extend([mx, my, mz].map(|part| quantity::digits(Kind::Moment, part, given.units)));
    cells.push(quantity::angle(set.slew_rad));
    cells
}
