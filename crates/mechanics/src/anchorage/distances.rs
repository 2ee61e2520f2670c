//! Least spacing, edge distance and thickness against what is planned, for any code.

use super::around::Around;
use super::group::Group;
use super::line::{Line, Of, Sink, meters};
use super::links::nearest_edge;
use super::record::{Mode, NotChecked, Outcome, Symbol};

/// A least distance that a code or a product asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Least {
    /// The clause.
    pub clause: &'static str,
    /// The demand as a formula.
    pub formula: &'static str,
    /// The field that is missing where there is no value.
    pub field: &'static str,
    /// The value, m.
    pub value_m: Option<f64>,
}

/// Least distances with what is planned, worked out once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Distances {
    rows: [(Mode, Least, f64, Outcome); 3],
}

impl Distances {
    /// Spacing, edge distance and thickness of a group.
    pub(super) fn of(group: &Group, around: &dyn Around, [spacing, edge, thickness]: [Least; 3]) -> Self {
        let all: Vec<usize> = (0..group.anchors_m.len()).collect();
        let row = |mode, asked: Least, has_m: f64, none| {
            let outcome = match asked.value_m {
                _ if has_m.is_infinite() => Outcome::NotApplicable(none),
                _ if group.fastener.is_steel_only() => Outcome::NotChecked(NotChecked::StructuralEngineer {
                    what: "distances of through bolts and sleeves",
                }),
                // A last bit of a difference of coordinates is no fault of setting.
                Some(least) if least <= has_m + 1e-9 => Outcome::Utilization((least / has_m).min(1.0)),
                Some(least) => Outcome::Utilization(least / has_m),
                None => Outcome::NotChecked(NotChecked::MissingData { field: asked.field }),
            };
            (mode, asked, has_m, outcome)
        };
        Self {
            rows: [
                row(Mode::LeastSpacing, spacing, group.least_spacing_m(), "one fastener"),
                row(Mode::LeastEdgeDistance, edge, nearest_edge(around, &all), "no edge within reach"),
                row(Mode::LeastThickness, thickness, around.thickness_m(), "no underside within reach"),
            ],
        }
    }

    pub(super) fn tell(&self, sink: &mut impl Sink) {
        for (mode, asked, has_m, outcome) in &self.rows {
            let symbols: [Symbol; 2] = [meters("has", *has_m), meters("needs", asked.value_m.unwrap_or(f64::NAN))];
            sink.take(&Line {
                mode: *mode,
                of: Of::Group,
                clause: asked.clause,
                formula: asked.formula,
                symbols: if asked.value_m.is_some() { &symbols } else { &symbols[..1] },
                resistance_n: None,
                action_n: None,
                outcome: *outcome,
            });
        }
    }
}
