//! Readings in plan: the tightest clearances at their places, and reactions beside the base.

use std::f64::consts::FRAC_PI_4;

use gantline_plan::assess::reactions::Unavailable;
use gantline_plan::assess::{Against, CombinationResult, Component, PairClearance, Sense, UnitAssessment, Way};
use gantline_plan::document::{PlacementId, Plan, ThingId};
use gantline_plan::quantity;
use glam::DVec2;

use super::options::PlanViewOptions;
use crate::label::{Label, LabelKind, Row};
use crate::layer::Layer;
use crate::mark::{Mark, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::TextStyle;

/// Most clearances shown of one unit.
const MOST_SHOWN: usize = 2;
/// Half the size of the cross at a place, paper mm.
const CROSS_MM: f64 = 1.4;

/// The clearances of a unit worth showing: those that are too small, and of a selected unit the tightest others too.
fn shown(id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Vec<PairClearance> {
    let selected = options.is_in_focus(ThingId::Placement(id));
    let mut seen = Vec::new();
    for pair in unit.tightest() {
        let known = |other: &PairClearance| (other.part, other.against) == (pair.part, pair.against);
        if (pair.conflict || selected) && !seen.iter().any(known) && seen.len() < MOST_SHOWN {
            seen.push(pair.clone());
        }
    }
    seen
}

/// A cross at each place where something is too near.
pub fn conflict_marks(id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Vec<Mark> {
    let mut pencil = Pencil::about(options.scale, ThingId::Placement(id), Stress::Plain);
    let half = options.scale.m(CROSS_MM);
    for pair in shown(id, unit, options) {
        let pen = pen_of(&pair);
        for angle in [FRAC_PI_4, 3.0 * FRAC_PI_4] {
            let reach = DVec2::from_angle(angle) * half;
            pencil.line(Layer::Conflict, pen, [pair.at - reach, pair.at + reach]);
        }
    }
    pencil.done()
}

const fn pen_of(pair: &PairClearance) -> Pen {
    if pair.conflict { Pen::Conflict } else { Pen::Dimension }
}

/// The figure of each clearance shown, to be placed beside its cross.
pub fn clearance_labels(plan: &Plan, id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Vec<Label> {
    let outward = unit.frame.map_or(DVec2::Y, |frame| frame.direction(0.0));
    (0..)
        .zip(shown(id, unit, options))
        .map(|(number, pair)| {
            Label {
                key: (ThingId::Placement(id), LabelKind::Clearance(number)),
                point: pair.at,
                // Inboard and beside the tag, so that the band of reach stays in sight.
                prefers: (outward.perp() - outward * 0.7).normalize(),
                away_mm: CROSS_MM + 1.5,
                rows: clearance_rows(plan, &pair, options),
                pen: pen_of(&pair),
                stress: Stress::Plain,
                // In a crowd the cross stays and the figure is in findings and inspector.
                optional: !pair.conflict || !options.is_in_focus(ThingId::Placement(id)),
            }
        })
        .collect()
}

fn clearance_rows(plan: &Plan, pair: &PairClearance, options: &PlanViewOptions) -> Vec<Row> {
    let way = match pair.way {
        Way::Height => "over",
        Way::Around => "beside",
    };
    let what = format!("{} {way} {}", pair.part.word(), against_word(plan, pair.against));
    let (clear, limit) = (quantity::length(pair.clear_m, options.units), quantity::length(pair.limit_m, options.units));
    vec![Row::words(what, TextStyle::Note), Row::words(format!("{clear} of {limit}"), TextStyle::Reading)]
}

/// What a part passes, as named on the drawing.
pub(crate) fn against_word(plan: &Plan, against: Against) -> String {
    let tag = |id| plan.placements.get(&id).map_or_else(|| "unit".to_owned(), |placement| placement.tag.to_string());
    match against {
        Against::Parapet(_) => "parapet".to_owned(),
        Against::Obstacle(id) => plan.obstacles.get(&id).map_or_else(|| "obstacle".to_owned(), |o| o.name.clone()),
        Against::HigherRoof(id) => plan.roofs.get(&id).map_or_else(|| "higher roof".to_owned(), |r| r.name.clone()),
        Against::Base(id) => format!("base of {}", tag(id)),
        Against::StandingUnit(id) => tag(id),
    }
}

/// The reactions of the governing combination, to be placed beside the base.
pub fn reaction_label(id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Option<Label> {
    let frame = unit.frame?;
    let resolved = unit.resolved.as_ref().ok()?;
    let reactions = unit.reactions.as_ref()?;
    let governing = reactions.governing()?;
    let thing = ThingId::Placement(id);
    Some(Label {
        key: (thing, LabelKind::Reactions),
        point: frame.at,
        prefers: (-frame.direction(0.0) + frame.direction(0.0).perp() * 0.6).normalize(),
        away_mm: options.scale.mm(resolved.base.plate_half_m()) + 3.0,
        rows: reaction_rows(governing, options),
        pen: Pen::TagFrame,
        stress: Stress::Plain,
        optional: !options.is_in_focus(thing),
    })
}

/// Largest down, up, sideways, moment, twist of a combination, with its level.
fn reaction_rows(governing: &CombinationResult, options: &PlanViewOptions) -> Vec<Row> {
    let mut rows = vec![Row::words(format!("{} ({})", governing.name, governing.level.name()), TextStyle::Note)];
    match &governing.unavailable {
        None => {}
        Some(Unavailable::Missing(_)) => {
            rows.push(Row::words("not computed: something is missing", TextStyle::Note));
            return rows;
        }
        Some(Unavailable::DoesNotApply(_)) => {
            rows.push(Row::words("does not apply to this unit", TextStyle::Note));
            return rows;
        }
    }
    let value = |component, sense| governing.extreme(component, sense).map(|set| set.value);
    let force = |newtons: f64| quantity::force(newtons, options.units);
    let moment = |newton_meters: f64| quantity::moment(newton_meters, options.units);
    // The action on the structure: down is a negative Fz.
    if let Some(least) = value(Component::Fz, Sense::Min) {
        rows.push(Row::figure("down", force((-least).max(0.0))));
    }
    if let Some(most) = value(Component::Fz, Sense::Max) {
        rows.push(Row::figure("up", force(most.max(0.0))));
    }
    rows.push(Row::figure("sideways", force(governing.largest(Component::V))));
    rows.push(Row::figure("moment", moment(governing.largest(Component::M))));
    rows.push(Row::figure("twist", moment(governing.largest(Component::Mz))));
    rows
}
