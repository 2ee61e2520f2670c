//! Inner forces along mast, arm and brace where the governing combination turns the base most, as small plots side by side.

use std::sync::Arc;

use gantline_drawing::pencil::Pencil;
use gantline_drawing::text::{Across, Up};
use gantline_drawing::{Anchor, Drawing, Layer, Pen, Scale, Text, TextStyle};
use gantline_plan::assess::{Component, Cut, DiagramSlew, Diagrams, Member, MemberDiagram, Reactions, Sense, diagrams};
use gantline_plan::document::PlacementId;
use gantline_plan::quantity::{self, Kind, UnitSystem};
use glam::DVec2;

use super::blocks::{paragraph, part, picture};
use super::figures::level;
use super::given::Given;
use crate::paper::Block;

/// A curve along a member: what it is, its pen, and where it is read.
type Read = (&'static str, Pen, fn(&Cut) -> f64);

/// A plot along a member: its name, what is counted, its curves.
const PLOTS: [(&str, Kind, &[Read]); 3] = [
    ("N", Kind::Force, &[("pull positive", Pen::Outline, |cut| cut.axial_n)]),
    (
        "V",
        Kind::Force,
        &[
            ("in the arm's plane", Pen::Outline, |cut| cut.shear_z_n),
            ("across, dashed", Pen::Hidden, |cut| cut.shear_y_n),
        ],
    ),
    (
        "M",
        Kind::Moment,
        &[
            ("in the arm's plane", Pen::Outline, |cut| cut.moment_y_nm),
            ("across, dashed", Pen::Hidden, |cut| cut.moment_z_nm),
        ],
    ),
];

/// Size of one plot, and the room from one to the next, paper mm.
const PLOT_MM: DVec2 = DVec2::new(40.0, 24.0);
const STEP_MM: f64 = 56.0;
/// What a force in N or a moment in N·m must reach to be more than what is left of rounding.
const NOTHING: f64 = 0.1;

/// The part of the section.
pub fn blocks(given: &Given<'_>, id: PlacementId, found: &Reactions) -> Vec<Block> {
    let mut blocks = vec![part("Inner forces")];
    let governing = found.governing().and_then(|one| found.combinations.iter().position(|result| result == one));
    let Some(combination) = governing else { return vec![] };
    let wanted = (Component::M, Sense::Max);
    let worst = DiagramSlew::Worst;
    match diagrams(given.plan, given.assessment, id, combination, wanted, worst) {
        Ok(made) => {
            blocks.push(paragraph(&said(given, &made)));
            blocks.extend(made.members.iter().map(|member| of_member(member, given.units)));
        }
        Err(why) => blocks.push(paragraph(&format!("No diagrams: {why}."))),
    }
    blocks
}

/// What brings these forces, and what is not in them.
fn said(given: &Given<'_>, made: &Diagrams) -> String {
    let pulls: Vec<String> = made.pulls_n.iter().map(|pull| quantity::force(pull.length(), given.units)).collect();
    let rope = if pulls.is_empty() { "no rope".to_owned() } else { format!("rope {}", pulls.join(" and ")) };
    let mut said = format!(
        "{}, {}, where the moment at the base is largest: {rope}, slew {}, self-weight × {}",
        given.combination(made.combination),
        level(made.level),
        quantity::angle(made.slew_rad),
        super::figures::number(made.weight_factor)
    );
    if made.brace_is_out {
        said.push_str("; the brace carries nothing here");
    }
    for left_out in &made.left_out {
        said.push_str("; without the ");
        said.push_str(left_out);
        said.push_str(" of this combination");
    }
    said.push('.');
    said
}

fn of_member(member: &MemberDiagram, units: UnitSystem) -> Block {
    // A brace between two pins has one force all along.
    if let [only] = &member.cuts[..] {
        let force = super::figures::force(only.axial_n, units);
        return paragraph(&format!("N {force} all along the {} (pull positive).", member.member.word()));
    }
    // One meter of this drawing is one millimeter of paper: it shows forces, not lengths.
    let mut pencil = Pencil::new(Scale::one_to(1000.0));
    let mut ranges = Vec::new();
    for (index, (name, kind, reads)) in PLOTS.into_iter().enumerate() {
        let corner = DVec2::X * (STEP_MM * index as f64);
        plot(&mut pencil, corner, member, (name, kind, reads), units);
        ranges.extend(reads.iter().map(|(words, _, read)| range(name, words, kind, member, *read, units)));
    }
    let drawing = Arc::new(Drawing::of(pencil.scale, pencil.done()));
    let from = member.cuts.first().map_or(0.0, |cut| cut.at_m);
    let to = member.cuts.last().map_or(0.0, |cut| cut.at_m);
    let along = format!("from {} to {}", super::figures::length(from, units), super::figures::length(to, units));
    picture(&drawing, &format!("Along the {}, {along}. {}.", member.member.word(), ranges.join("; ")))
}

/// What lies at both ends of a plot.
const fn ends(member: Member) -> [&'static str; 2] {
    match member {
        Member::Mast => ["base", "arm"],
        Member::Arm => ["end of the tail", "tip"],
        Member::Brace => ["lower pin", "upper pin"],
    }
}

fn range(
    name: &str,
    words: &str,
    kind: Kind,
    member: &MemberDiagram,
    read: fn(&Cut) -> f64,
    units: UnitSystem,
) -> String {
    let values = || member.cuts.iter().map(read);
    let number =
        |value: Option<f64>| value.map_or_else(|| "none".to_owned(), |value| quantity::number(kind, value, units));
    let (least, most) = (values().reduce(f64::min), values().reduce(f64::max));
    format!("{name} {words} {} to {}", number(least), number(most))
}

/// One plot with its zero line, its curves and the largest value of each.
fn plot(
    pencil: &mut Pencil,
    corner: DVec2,
    member: &MemberDiagram,
    (name, kind, reads): (&str, Kind, &[Read]),
    units: UnitSystem,
) {
    let values = || member.cuts.iter().flat_map(|cut| reads.iter().map(|(_, _, read)| read(cut)));
    let (low, high) = (values().fold(0.0, f64::min), values().fold(0.0, f64::max));
    let (first, last) =
        (member.cuts.first().map_or(0.0, |cut| cut.at_m), member.cuts.last().map_or(0.0, |cut| cut.at_m));
    let size = high - low;
    let is_nothing = size < NOTHING;
    let y = |value: f64| if is_nothing { PLOT_MM.y / 2.0 } else { (value - low) / size * PLOT_MM.y };
    let x = |at_m: f64| if last > first { (at_m - first) / (last - first) * PLOT_MM.x } else { 0.0 };
    let zero = corner + DVec2::Y * y(0.0);
    pencil.line(Layer::Dimension, Pen::Dimension, [zero, zero + DVec2::X * PLOT_MM.x]);
    let [start, end] = ends(member.member);
    let below = corner - DVec2::Y * 8.0;
    let right = Text::new(
        end,
        below + DVec2::X * PLOT_MM.x,
        Anchor { across: Across::End, up: Up::Baseline },
        TextStyle::Note,
        Pen::Lettering,
    );
    pencil.text(Layer::Lettering, start, below, Anchor::START, TextStyle::Note);
    pencil.lettering(Layer::Lettering, right);
    let title = format!("{name}, {}", kind.unit(units));
    let over = corner + DVec2::Y * (PLOT_MM.y + 5.5);
    pencil.text(Layer::Lettering, title, over, Anchor::START, TextStyle::Name);
    for (_, pen, read) in reads {
        let point = |cut: &Cut| corner + DVec2::new(x(cut.at_m), if is_nothing { y(0.0) } else { y(read(cut)) });
        let points: Vec<DVec2> = member.cuts.iter().map(point).collect();
        pencil.line(Layer::Load, *pen, points);
        let largest = member.cuts.iter().max_by(|a, b| read(a).abs().total_cmp(&read(b).abs()));
        let Some(cut) = largest.filter(|cut| read(cut).abs() >= NOTHING) else { continue };
        let side = if read(cut) < 0.0 { -1.0 } else { 1.0 };
        let style = TextStyle::Dimension;
        let shift = if side > 0.0 { 0.8 } else { -0.8 - style.cap_mm() };
        let at = corner + DVec2::new(x(cut.at_m).clamp(6.0, PLOT_MM.x - 6.0), y(read(cut)) + shift);
        let words = quantity::digits(kind, read(cut), units);
        pencil.text_on_paper(Layer::Reading, Text::new(words, at, Anchor::OVER, style, Pen::Lettering));
    }
}
