//! Least spacing, edge distance and thickness, ACI 318-19 17.9, against what is planned.

use super::super::around::Around;
use super::super::fastener::FastenerKind;
use super::super::group::Group;
use super::super::record::{Mode, NotChecked, Outcome, Symbol};
use super::cluster::nearest_edge;
use super::line::{Line, Of, Sink, meters};

/// Least distances with what is planned, worked out once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Distances {
    rows: [Row; 3],
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Row {
    mode: Mode,
    clause: &'static str,
    formula: &'static str,
    least_m: Option<f64>,
    has_m: f64,
    outcome: Outcome,
}

impl Distances {
    /// Where the product says nothing: spacing and edge distance 6·d_a of torqued cast-in and of post-installed anchors (table
    /// 17.9.2; the edge distance of adhesive and undercut anchors is from memory, to be confirmed). Thickness: the embedment
    /// of a cast-in anchor lies within it; of an undercut anchor at most max(⅔·h_a; h_a − 100 mm) (17.9.4); of an adhesive
    /// anchor the product says.
    pub(super) fn new(group: &Group, around: &dyn Around) -> Self {
        let fastener = &group.fastener;
        let least = fastener.product.least;
        let six = 6.0 * fastener.outside_diameter_m;
        let all: Vec<usize> = (0..group.anchors_m.len()).collect();
        let h = fastener.embedment_m;
        let thickness = match fastener.kind {
            _ if least.thickness_m.is_some() => least.thickness_m,
            FastenerKind::CastIn(_) => Some(h),
            FastenerKind::Undercut => Some((1.5 * h).min(h + 0.1)),
            FastenerKind::Bonded | FastenerKind::ThroughBolt | FastenerKind::Sleeve => None,
        };
        let spacing = Some(least.spacing_m.unwrap_or(six));
        let edge = Some(least.edge_m.unwrap_or(six));
        let row = |mode, clause, formula, least_m: Option<f64>, has_m: f64, none| {
            let outcome = match least_m {
                _ if has_m.is_infinite() => Outcome::NotApplicable(none),
                _ if fastener.is_steel_only() => Outcome::NotChecked(NotChecked::StructuralEngineer {
                    what: "distances of through bolts and sleeves",
                }),
                // A last bit of a difference of coordinates is no fault of setting.
                Some(least) if least <= has_m + 1e-9 => Outcome::Utilization((least / has_m).min(1.0)),
                Some(least) => Outcome::Utilization(least / has_m),
                None => Outcome::NotChecked(NotChecked::MissingData { field: "least thickness_m" }),
            };
            Row { mode, clause, formula, least_m, has_m, outcome }
        };
        let (spacing_has, edge_has) = (group.least_spacing_m(), nearest_edge(around, &all));
        Self {
            rows: [
                row(Mode::LeastSpacing, "ACI 318-19 17.9.2(a)", "s >= smin", spacing, spacing_has, "one fastener"),
                row(
                    Mode::LeastEdgeDistance,
                    "ACI 318-19 17.9.2(a), (b)",
                    "ca >= cmin",
                    edge,
                    edge_has,
                    "no edge within reach",
                ),
                row(
                    Mode::LeastThickness,
                    "ACI 318-19 17.9.4, product assessment",
                    "ha >= hmin",
                    thickness,
                    around.thickness_m(),
                    "no underside within reach",
                ),
            ],
        }
    }

    pub(super) fn tell(&self, sink: &mut impl Sink) {
        for row in &self.rows {
            let symbols: [Symbol; 2] = [meters("has", row.has_m), meters("needs", row.least_m.unwrap_or(f64::NAN))];
            sink.take(&Line {
                mode: row.mode,
                of: Of::Group,
                clause: row.clause,
                formula: row.formula,
                symbols: if row.least_m.is_some() { &symbols } else { &symbols[..1] },
                resistance_n: None,
                action_n: None,
                outcome: row.outcome,
            });
        }
    }
}
