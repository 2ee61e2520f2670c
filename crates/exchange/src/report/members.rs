//! Members, joints, socket and movements of a unit: what each uses, by which clause, and how that comes about.

use gantline_plan::assess::{JointUse, MemberUse, Reactions};
use gantline_plan::catalog::Retention;
use gantline_plan::document::PlacementId;
use gantline_plan::explain::FigureId;
use gantline_plan::quantity::{self, UnitSystem};

use super::blocks::{caution, counted, part, row, strong, table, told, words};
use super::figures::{force, length, number};
use super::given::Given;
use super::traced;
use crate::paper::{Block, Row};

/// The parts of the section.
pub fn blocks(given: &Given<'_>, id: PlacementId, found: &Reactions) -> Vec<Block> {
    let mut blocks = members(given, id, found);
    blocks.extend(socket(given, id, found));
    blocks.extend(joints(given, id, found));
    if let Some(slack) = &found.slack {
        blocks.push(caution(&slack.said));
    }
    blocks.push(part("Twist, movements, stability"));
    blocks.extend(table(vec![told("", 2.0), told("", 1.0)], overall(found, given.units)));
    let single = [
        found.twist_nm.map(|_| FigureId::Twist(id)),
        found.tip_deflection_m.map(|_| FigureId::TipDeflection(id)),
        found.alpha_cr.map(|_| FigureId::CriticalFactor(id)),
        found.at_rating.as_ref().filter(|at| at.utilization > 0.0).map(|_| FigureId::UseAtRating(id)),
    ];
    blocks.extend(explained(given, single.into_iter().flatten()));
    blocks
}

fn members(given: &Given<'_>, id: PlacementId, found: &Reactions) -> Vec<Block> {
    let columns = vec![
        told("Member", 0.6),
        told("Looked at", 1.2),
        counted("Use", 0.7),
        told("Combination", 1.5),
        told("Clause, or what is missing", 2.0),
        counted("At", 0.7),
    ];
    let rows = found.members.iter().map(|member| of_member(given, member));
    let worst = worst_rows(&found.members).into_iter().map(|row| FigureId::MemberUse { unit: id, row });
    under("Members", table(columns, rows.collect()), explained(given, worst))
}

fn socket(given: &Given<'_>, id: PlacementId, found: &Reactions) -> Vec<Block> {
    let rows = found
        .socket
        .iter()
        .map(|socket| row(vec![words(&socket.what), words(&used(socket.utilization)), words(&socket.clause)]));
    let columns = vec![told("Looked at", 1.4), counted("Use", 0.8), told("Clause, or what is missing", 3.0)];
    let known = found.socket.iter().enumerate().filter(|(_, socket)| socket.utilization.is_some());
    let figures = known.map(|(row, _)| FigureId::SocketUse { unit: id, row });
    under("Mast in its socket", table(columns, rows.collect()), explained(given, figures))
}

fn joints(given: &Given<'_>, id: PlacementId, found: &Reactions) -> Vec<Block> {
    let columns =
        vec![told("Joint", 1.2), told("Held by", 1.6), counted("Largest uplift", 0.9), told("Combination", 1.6)];
    let rows = found.joints.iter().map(|joint| of_joint(given, joint));
    let lifted = found.joints.iter().enumerate().filter(|(_, joint)| joint.uplift_n > 0.0);
    let figures = lifted.map(|(row, _)| FigureId::JointUplift { unit: id, row });
    under("Joints", table(columns, rows.collect()), explained(given, figures))
}

/// A heading with its table and what explains it; nothing where there is no table.
fn under(head: &str, table: Option<Block>, explained: Vec<Block>) -> Vec<Block> {
    table.map_or_else(Vec::new, |table| [part(head), table].into_iter().chain(explained).collect())
}

fn explained(given: &Given<'_>, figures: impl Iterator<Item = FigureId>) -> Vec<Block> {
    let traces = figures.filter_map(|figure| given.explain(&figure));
    traces.flat_map(|trace| traced::whole(&trace, given.units)).collect()
}

/// Of each member the row with the largest use.
fn worst_rows(members: &[MemberUse]) -> Vec<usize> {
    let mut worst: Vec<(usize, &MemberUse, f64)> = Vec::new();
    for (row, member) in members.iter().enumerate() {
        let Some(used) = member.utilization else { continue };
        match worst.iter_mut().find(|(_, known, _)| known.member == member.member) {
            Some(known) if used > known.2 => *known = (row, member, used),
            Some(_) => {}
            None => worst.push((row, member, used)),
        }
    }
    worst.into_iter().map(|(row, _, _)| row).collect()
}

/// A use; what could not be computed is never a pass.
fn used(utilization: Option<f64>) -> String {
    utilization.map_or_else(|| "not checked".to_owned(), quantity::utilization)
}

fn of_member(given: &Given<'_>, member: &MemberUse) -> Row {
    let cells = vec![
        words(member.member),
        words(&member.mode),
        words(&used(member.utilization)),
        words(&given.combination(member.combination)),
        words(&member.clause),
        words(&length(member.station_m, given.units)),
    ];
    if member.utilization.is_none_or(|share| share > 1.0) { strong(cells) } else { row(cells) }
}

fn of_joint(given: &Given<'_>, joint: &JointUse) -> Row {
    let units = given.units;
    let known = |name: &str, resistance_n: Option<f64>| match resistance_n {
        Some(resistance_n) => format!("{name}, resistance {}", force(resistance_n, units)),
        None => format!("{name}, resistance not known"),
    };
    let held = match joint.held_by {
        Retention::Nothing => "nothing".to_owned(),
        Retention::Gravity => "its own weight".to_owned(),
        Retention::Pin { resistance_n } => known("a pin", resistance_n),
        Retention::Locked { resistance_n } => known("a lock", resistance_n),
    };
    let uplift = if joint.uplift_n > 0.0 { force(joint.uplift_n, units) } else { "nothing parts it".to_owned() };
    row(vec![words(joint.joint), words(&held), words(&uplift), words(&given.combination(joint.combination))])
}

fn overall(found: &Reactions, units: UnitSystem) -> Vec<Row> {
    let or_not = |value: Option<String>| words(&value.unwrap_or_else(|| "not computed".to_owned()));
    let rating = found.at_rating.as_ref().map(|at| {
        let all = if at.all_checked { "" } else { ", not all modes checked" };
        format!("{}{all}: {}", quantity::utilization(at.utilization), at.inside)
    });
    let moment = |value_nm| super::figures::moment(value_nm, units);
    vec![
        row(vec![words("Largest twist about the mast at the design level"), or_not(found.twist_nm.map(moment))]),
        row(vec![
            words("Largest tip deflection in service"),
            or_not(found.tip_deflection_m.map(|value_m| length(value_m, units))),
        ]),
        row(vec![words("Smallest critical over acting load"), or_not(found.alpha_cr.map(number))]),
        row(vec![words("Members at the declared rating"), or_not(rating)]),
    ]
}
