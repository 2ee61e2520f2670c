//! Least spacing, edge distance and thickness of the product, against what is planned.

use super::super::around::Around;
use super::super::group::Group;
use super::super::record::{Mode, NotChecked, Outcome, Symbol};
use super::cluster::nearest_edge;
use super::line::{Line, Of, Sink, meters};

const CLAUSE: &str = "EN 1992-4 3.2, 7.2.1.7(1), product assessment";

/// Least distances with what is planned, worked out once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Distances {
    rows: [Row; 3],
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Row {
    mode: Mode,
    formula: &'static str,
    least: Option<f64>,
    has: f64,
    outcome: Outcome,
}

impl Distances {
    pub(super) fn new(group: &Group, around: &dyn Around) -> Self {
        let least = group.fastener.product.least;
        let all: Vec<usize> = (0..group.anchors_m.len()).collect();
        let steel_only = group.fastener.is_steel_only();
        let row = |mode, formula, least: Option<f64>, has: f64, (missing, none): (&'static str, &'static str)| Row {
            mode,
            formula,
            least,
            has,
            outcome: match least {
                _ if has.is_infinite() => Outcome::NotApplicable(none),
                _ if steel_only => Outcome::NotChecked(NotChecked::StructuralEngineer {
                    what: "distances of through bolts and sleeves",
                }),
                // A last bit of a difference of coordinates is no fault of spacing.
                Some(least) if least <= has + 1e-9 => Outcome::Utilization((least / has).min(1.0)),
                Some(least) => Outcome::Utilization(least / has),
                None => Outcome::NotChecked(NotChecked::MissingData { field: missing }),
            },
        };
        Self {
            rows: [
                row(
                    Mode::LeastSpacing,
                    "s >= smin",
                    least.spacing_m,
                    group.least_spacing_m(),
                    ("least spacing_m", "one fastener"),
                ),
                row(
                    Mode::LeastEdgeDistance,
                    "c >= cmin",
                    least.edge_m,
                    nearest_edge(around, &all),
                    ("least edge_m", "no edge within reach"),
                ),
                row(
                    Mode::LeastThickness,
                    "h >= hmin",
                    least.thickness_m,
                    around.thickness_m(),
                    ("least thickness_m", "no underside within reach"),
                ),
            ],
        }
    }

    pub(super) fn tell(&self, sink: &mut impl Sink) {
        for row in &self.rows {
            let symbols: [Symbol; 2] = [meters("has", row.has), meters("needs", row.least.unwrap_or(f64::NAN))];
            sink.take(&Line {
                mode: row.mode,
                of: Of::Group,
                clause: CLAUSE,
                formula: row.formula,
                symbols: if row.least.is_some() { &symbols } else { &symbols[..1] },
                resistance_n: None,
                action_n: None,
                outcome: row.outcome,
            });
        }
    }
}
