//! Where a unit stands on its edge: distances to both ends and to the nearest units of the same edge.

use std::collections::BTreeMap;

use super::assessment::SettingOut;
use crate::document::{EdgeId, PlacementId, Plan, Standing};
use crate::geometry::frame::EdgeLine;

/// Setting-out of every unit that stands on an edge.
pub fn setting_out(plan: &Plan) -> BTreeMap<PlacementId, SettingOut> {
    let mut by_edge: BTreeMap<EdgeId, Vec<(f64, PlacementId, f64)>> = BTreeMap::new();
    let mut lines: BTreeMap<EdgeId, EdgeLine> = BTreeMap::new();
    for place in plan.edges() {
        let (start, end) = place.ring.ends(place.index);
        lines.insert(place.edge().id, EdgeLine::between(start, end));
    }
    for (&id, placement) in &plan.placements {
        if let Standing::OnEdge { edge, station, setback_m, .. } = &placement.stands
            && let Some(line) = lines.get(edge)
        {
            by_edge.entry(*edge).or_default().push((station.along_m(line.length_m), id, *setback_m));
        }
    }
    let mut all = BTreeMap::new();
    for (edge, mut stations) in by_edge {
        stations.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let length = lines[&edge].length_m;
        for (index, &(along, id, setback_m)) in stations.iter().enumerate() {
            let gap_to = |other: usize| stations.get(other).map(|&(at, id, _)| (id, (at - along).abs()));
            all.insert(
                id,
                SettingOut {
                    edge,
                    edge_length_m: length,
                    from_start_m: along,
                    to_end_m: length - along,
                    setback_m,
                    before: index.checked_sub(1).and_then(gap_to),
                    after: gap_to(index + 1),
                },
            );
        }
    }
    all
}
