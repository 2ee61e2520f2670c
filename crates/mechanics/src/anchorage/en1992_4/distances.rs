//! Least spacing, edge distance and thickness of the product.

use super::super::around::Around;
use super::super::distances::{Distances, Least};
use super::super::group::Group;

const CLAUSE: &str = "EN 1992-4 3.2, 7.2.1.7(1), product assessment";

/// Only the product says them.
pub(super) fn distances(group: &Group, around: &dyn Around) -> Distances {
    let least = group.fastener.product.least;
    let asked = |formula, field, value_m| Least { clause: CLAUSE, formula, field, value_m };
    Distances::of(
        group,
        around,
        [
            asked("s >= smin", "least spacing_m", least.spacing_m),
            asked("c >= cmin", "least edge_m", least.edge_m),
            asked("h >= hmin", "least thickness_m", least.thickness_m),
        ],
    )
}
