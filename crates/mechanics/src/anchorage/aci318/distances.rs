//! Least spacing, edge distance and thickness, ACI 318-19 17.9.

use super::super::around::Around;
use super::super::distances::{Distances, Least};
use super::super::fastener::FastenerKind;
use super::super::group::Group;

/// Where the product says nothing: spacing and edge distance 6·d_a of torqued cast-in and of post-installed anchors (table
/// 17.9.2; the edge distance of adhesive and undercut anchors is from memory, to be confirmed). Thickness: the embedment of a
/// cast-in anchor lies within it; of an undercut anchor at most max(⅔·h_a; h_a − 100 mm) (17.9.4); of an adhesive anchor the
/// product says.
pub(super) fn distances(group: &Group, around: &dyn Around) -> Distances {
    let fastener = &group.fastener;
    let least = fastener.product.least;
    let six = 6.0 * fastener.outside_diameter_m;
    let h = fastener.embedment_m;
    let thickness_m = match fastener.kind {
        _ if least.thickness_m.is_some() => least.thickness_m,
        FastenerKind::CastIn(_) => Some(h),
        FastenerKind::Undercut => Some((1.5 * h).min(h + 0.1)),
        FastenerKind::Bonded | FastenerKind::ThroughBolt | FastenerKind::Sleeve => None,
    };
    let spacing = Least {
        clause: "ACI 318-19 17.9.2(a)",
        formula: "s >= smin",
        field: "least spacing_m",
        value_m: Some(least.spacing_m.unwrap_or(six)),
    };
    let edge = Least {
        clause: "ACI 318-19 17.9.2(a), (b)",
        formula: "ca >= cmin",
        field: "least edge_m",
        value_m: Some(least.edge_m.unwrap_or(six)),
    };
    let thickness = Least {
        clause: "ACI 318-19 17.9.4, product assessment",
        formula: "ha >= hmin",
        field: "least thickness_m",
        value_m: thickness_m,
    };
    Distances::of(group, around, [spacing, edge, thickness])
}
