//! The table of reactions: every extreme of every combination with all that acts at the same time, a row each.

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::Kind;
use gantline_plan::quantity::Kind::{Angle, Force, Moment, Number};

use super::table::{Cell, Column, Table};
use crate::answers::Figure;
use crate::answers::combination::{
    AxialAnswer, CombinationAnswer, FootAnswer, SenseName, SetAnswer, UnavailableAnswer,
};
use crate::answers::figure::Amount;
use crate::answers::reactions_answer::AXES;
use crate::answers::unit_reactions::UnitReactions;

/// A row.
struct Row<'a> {
    unit: &'a UnitReactions,
    combination: Option<&'a CombinationAnswer>,
    extreme: Extreme<'a>,
}

/// What is extreme.
enum Extreme<'a> {
    AtBase(&'a SetAnswer),
    InBrace(SenseName, &'a AxialAnswer),
    AtFoot(&'a FootAnswer),
    None(String),
}

/// The table.
pub fn reactions(plan: &Plan, assessment: &Assessment) -> Table {
    let units = UnitReactions::all(plan, assessment);
    Table::of("Reactions", AXES.to_owned(), 1, &columns(), units.iter().flat_map(rows_of))
}

fn rows_of(unit: &UnitReactions) -> Vec<Row<'_>> {
    let fault = unit.make_up_fault.iter();
    let without_parts =
        fault.map(|fault| Row { unit, combination: None, extreme: Extreme::None(format!("not checked: {fault}")) });
    without_parts
        .chain(unit.combinations.iter().flat_map(|combination| rows_of_combination(unit, combination)))
        .collect()
}

fn rows_of_combination<'a>(unit: &'a UnitReactions, combination: &'a CombinationAnswer) -> Vec<Row<'a>> {
    let row = |extreme| Row { unit, combination: Some(combination), extreme };
    if let Some(why) = &combination.unavailable {
        let why = match why {
            UnavailableAnswer::NotChecked(what) => format!("not checked: {what}"),
            UnavailableAnswer::NotApplicable(why) => format!("not applicable: {why}"),
        };
        return vec![row(Extreme::None(why))];
    }
    let brace = combination.brace_axial.iter().flat_map(|brace| {
        [(SenseName::Maximum, &brace.maximum), (SenseName::Minimum, &brace.minimum)]
            .map(|(sense, axial)| Extreme::InBrace(sense, axial))
    });
    let base = combination.sets.iter().map(Extreme::AtBase);
    base.chain(brace).chain(combination.foot.iter().map(Extreme::AtFoot)).map(row).collect()
}

fn columns<'a>() -> Vec<Column<Row<'a>>> {
    let words = Column::of_anything;
    vec![
        words("Tag", "tag", 8.0, |row| Cell::text(row.unit.tag.clone())),
        words("Id", "unit", 8.0, |row| Cell::text(row.unit.id.to_string())),
        words("Combination", "combination", 24.0, |row| {
            Cell::text_if(row.combination.map(|combination| combination.name.clone()))
        }),
        words("Level", "load_level", 11.0, |row| {
            Cell::text_if(row.combination.map(|combination| combination.level.name()))
        }),
        words("Loads and factors inside", "inside", 72.0, |row| {
            Cell::text_if(row.combination.map(|combination| combination.inside.clone()))
        }),
        Column::of(Force, "Pull of the rope", "pull", |row| match row.combination {
            Some(combination) => Cell::figure(Force, combination.pull_n),
            None => Cell::Empty,
        }),
        words("Where", "where", 7.0, |row| Cell::text(row.place())),
        words("Extreme", "component", 8.0, |row| Cell::text(row.component())),
        words("Sense", "sense", 10.0, |row| Cell::text(row.sense())),
        words("Value", "value", 10.0, |row| {
            row.value().map_or(Cell::Empty, |(kind, figure)| Cell::figure(kind, figure))
        }),
        words("Unit", "value_unit", 6.0, |row| row.value().map_or(Cell::Empty, |(kind, _)| Cell::UnitOf(kind))),
        Column::of(Force, "Fx", "fx", |row| row.force(|set| set.concurrent.fx_n, |foot| foot.fx_n)),
        Column::of(Force, "Fy", "fy", |row| row.force(|set| set.concurrent.fy_n, |foot| foot.fy_n)),
        Column::of(Force, "Fz", "fz", |row| row.force(|set| set.concurrent.fz_n, |foot| foot.fz_n)),
        Column::of(Moment, "Mx", "mx", |row| row.moment(|set| set.concurrent.mx_nm)),
        Column::of(Moment, "My", "my", |row| row.moment(|set| set.concurrent.my_nm)),
        Column::of(Moment, "Mz", "mz", |row| row.moment(|set| set.concurrent.mz_nm)),
        words("Pull, x", "pull_x", 8.0, |row| row.pull(0)),
        words("Pull, y", "pull_y", 8.0, |row| row.pull(1)),
        words("Pull, z", "pull_z", 8.0, |row| row.pull(2)),
        Column::of(Angle, "Slew", "slew", |row| row.slew().map_or(Cell::Empty, |slew| Cell::figure(Angle, slew))),
        words("Factor on self-weight", "weight_factor", 8.0, |row| match &row.extreme {
            Extreme::AtBase(set) => Cell::figure(Number, set.weight_factor),
            _ => Cell::Empty,
        }),
        words("Why there are no figures", "why_there_are_no_figures", 40.0, |row| match &row.extreme {
            Extreme::None(why) => Cell::text(why.clone()),
            _ => Cell::Empty,
        }),
    ]
}

impl Row<'_> {
    fn place(&self) -> &'static str {
        match &self.extreme {
            Extreme::AtBase(_) => "base",
            Extreme::InBrace(..) => "brace",
            Extreme::AtFoot(_) => "foot",
            Extreme::None(_) => "",
        }
    }

    fn component(&self) -> &str {
        match &self.extreme {
            Extreme::AtBase(set) => &set.component,
            Extreme::InBrace(..) => "N",
            Extreme::AtFoot(foot) => &foot.component,
            Extreme::None(_) => "",
        }
    }

    fn sense(&self) -> &'static str {
        let sense = match &self.extreme {
            Extreme::AtBase(set) => set.sense,
            Extreme::InBrace(sense, _) => *sense,
            Extreme::AtFoot(foot) => foot.sense,
            Extreme::None(_) => return "",
        };
        match sense {
            SenseName::Maximum => "maximum",
            SenseName::Minimum => "minimum",
        }
    }

    fn value(&self) -> Option<(Kind, Figure)> {
        match &self.extreme {
            Extreme::AtBase(set) => match set.value {
                Amount::Moment(figure) => Some((Moment, figure)),
                other => Some((Force, other.figure_and_unit().0)),
            },
            Extreme::InBrace(_, axial) => Some((Force, axial.axial_n)),
            Extreme::AtFoot(foot) => Some((Force, foot.value_n)),
            Extreme::None(_) => None,
        }
    }

    fn force(&self, of_set: fn(&SetAnswer) -> Figure, of_foot: fn(&FootAnswer) -> Figure) -> Cell {
        match &self.extreme {
            Extreme::AtBase(set) => Cell::figure(Force, of_set(set)),
            Extreme::AtFoot(foot) => Cell::figure(Force, of_foot(foot)),
            Extreme::InBrace(..) | Extreme::None(_) => Cell::Empty,
        }
    }

    fn moment(&self, of_set: fn(&SetAnswer) -> Figure) -> Cell {
        match &self.extreme {
            Extreme::AtBase(set) => Cell::figure(Moment, of_set(set)),
            _ => Cell::Empty,
        }
    }

    fn pull(&self, axis: usize) -> Cell {
        let direction = match &self.extreme {
            Extreme::AtBase(set) => set.pull_direction,
            Extreme::InBrace(_, axial) => axial.pull_direction,
            Extreme::AtFoot(foot) => foot.pull_direction,
            Extreme::None(_) => None,
        };
        let part = direction.and_then(|parts| parts.get(axis).copied());
        part.map_or(Cell::Empty, |part| Cell::figure(Number, part))
    }

    fn slew(&self) -> Option<Figure> {
        match &self.extreme {
            Extreme::AtBase(set) => Some(set.slew_rad),
            Extreme::InBrace(_, axial) => Some(axial.slew_rad),
            Extreme::AtFoot(foot) => Some(foot.slew_rad),
            Extreme::None(_) => None,
        }
    }
}
