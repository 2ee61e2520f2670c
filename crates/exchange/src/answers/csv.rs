//! Reaction sets as a table: one line an extreme, with everything that acts at the same time.

use super::ReactionsAnswer;
use super::combination::{CombinationAnswer, SenseName, SixAnswer, UnavailableAnswer};
use super::figure::{Amount, Figure};
use super::unit_reactions::UnitReactions;

/// Headings, each with its unit.
const HEADINGS: [&str; 25] = [
    "unit",
    "tag",
    "x_m",
    "y_m",
    "level_m",
    "outward_rad",
    "combination",
    "load_level",
    "inside",
    "pull_n",
    "where",
    "component",
    "sense",
    "value",
    "value_unit",
    "fx_n",
    "fy_n",
    "fz_n",
    "mx_nm",
    "my_nm",
    "mz_nm",
    "pull_x",
    "pull_y",
    "pull_z",
    "slew_rad",
];

/// The last heading.
const WITHOUT_FIGURES: &str = "why_there_are_no_figures";

/// All sets of all units as CSV text; what people typed is never taken for a formula. A combination without figures is a line that says why.
pub fn sets_as_csv(answer: &ReactionsAnswer) -> Result<String, ::csv::Error> {
    let mut table = ::csv::Writer::from_writer(Vec::new());
    table.write_record(HEADINGS.iter().chain([&WITHOUT_FIGURES]))?;
    for unit in &answer.units {
        if let Some(fault) = &unit.make_up_fault {
            table.write_record(line(&place_cells(unit), &[], fault))?;
        }
        for combination in &unit.combinations {
            for line in combination_lines(unit, combination) {
                table.write_record(line)?;
            }
        }
    }
    let bytes = table.into_inner().map_err(|fault| ::csv::Error::from(fault.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

fn text(figure: Figure) -> String {
    if figure.value().is_finite() { figure.value().to_string() } else { String::new() }
}

fn place_cells(unit: &UnitReactions) -> Vec<String> {
    let mut cells = vec![unit.id.to_string(), harmless(&unit.tag)];
    match &unit.place {
        Some(place) => cells.extend([place.at_m[0], place.at_m[1], place.level_m, place.outward_rad].map(text)),
        None => cells.extend(std::iter::repeat_n(String::new(), 4)),
    }
    cells
}

/// Cells up to the last heading, empty where there is nothing to say.
fn line(before: &[String], figures: &[String], why: &str) -> Vec<String> {
    let mut cells: Vec<String> = before.iter().chain(figures).cloned().collect();
    cells.resize(HEADINGS.len(), String::new());
    cells.push(harmless(why));
    cells
}

fn combination_lines(unit: &UnitReactions, combination: &CombinationAnswer) -> Vec<Vec<String>> {
    let mut before = place_cells(unit);
    before.extend([
        harmless(&combination.name),
        combination.level.name().to_owned(),
        harmless(&combination.inside),
        text(combination.pull_n),
    ]);
    if let Some(why) = &combination.unavailable {
        let why = match why {
            UnavailableAnswer::NotChecked(what) => format!("not checked: {what}"),
            UnavailableAnswer::NotApplicable(why) => format!("not applicable: {why}"),
        };
        return vec![line(&before, &[], &why)];
    }
    let base = combination.sets.iter().map(|set| {
        let named = named("base", &set.component, set.sense, set.value);
        figures(named, six(&set.concurrent), set.pull_direction, set.slew_rad)
    });
    let brace = combination.brace_axial.iter().flat_map(|brace| {
        [(SenseName::Maximum, &brace.maximum), (SenseName::Minimum, &brace.minimum)].map(|(sense, one)| {
            let named = named("brace", "N", sense, Amount::Force(one.axial_n));
            figures(named, Default::default(), one.pull_direction, one.slew_rad)
        })
    });
    let foot = combination.foot.iter().map(|one| {
        let named = named("foot", &one.component, one.sense, Amount::Force(one.value_n));
        let forces = [text(one.fx_n), text(one.fy_n), text(one.fz_n), String::new(), String::new(), String::new()];
        figures(named, forces, one.pull_direction, one.slew_rad)
    });
    base.chain(brace).chain(foot).map(|figures| line(&before, &figures, "")).collect()
}

/// Where, component, sense, value and its unit.
fn named(place: &str, component: &str, sense: SenseName, value: Amount) -> [String; 5] {
    let sense = match sense {
        SenseName::Maximum => "maximum",
        SenseName::Minimum => "minimum",
    };
    let (value, unit) = value.figure_and_unit();
    [place.to_owned(), component.to_owned(), sense.to_owned(), text(value), unit.to_owned()]
}

fn six(six: &SixAnswer) -> [String; 6] {
    [six.fx_n, six.fy_n, six.fz_n, six.mx_nm, six.my_nm, six.mz_nm].map(text)
}

fn figures(named: [String; 5], six: [String; 6], pull: Option<[Figure; 3]>, slew_rad: Figure) -> Vec<String> {
    let pull = pull.map_or_else(Default::default, |pull| pull.map(text));
    named.into_iter().chain(six).chain(pull).chain([text(slew_rad)]).collect()
}

/// Words that a spreadsheet would take for a formula get an apostrophe before them, as when they are typed there.
pub(crate) fn harmless(words: &(impl AsRef<str> + ?Sized)) -> String {
    let words = words.as_ref();
    if words.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{words}") } else { words.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_that_look_like_a_formula_stay_words() {
        assert_eq!(harmless("=1+1"), "'=1+1");
        assert_eq!(harmless("@B-07"), "'@B-07");
        assert_eq!(harmless("B-07"), "B-07");
    }
}
