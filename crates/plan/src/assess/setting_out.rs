//! Where a unit stands on its edge: distances to both ends and to the nearest units of the same edge.

use std::collections::BTreeMap;

use super::assessment::SettingOut;
use super::surroundings::Surroundings;
use crate::document::{EdgeId, PlacementId, Plan, Standing};

/// Where along its edge a unit stands, and its setback, m.
type Stood = (f64, PlacementId, f64);

/// Setting-out of every unit that stands on an edge.
pub fn setting_out(plan: &Plan, surroundings: &Surroundings) -> BTreeMap<PlacementId, SettingOut> {
    let mut by_edge: BTreeMap<EdgeId, (f64, Vec<Stood>)> = BTreeMap::new();
    for (&id, placement) in &plan.placements {
        if let Standing::OnEdge { edge, station, setback_m, .. } = &placement.stands
            && let Some(on_roof) = surroundings.edges.get(edge)
        {
            let length_m = on_roof.line.length_m;
            let (_, stations) = by_edge.entry(*edge).or_insert((length_m, Vec::new()));
            stations.push((station.along_m(length_m), id, *setback_m));
        }
    }
    let mut all = Vec::with_capacity(plan.placements.len());
    for (edge, (length_m, mut stations)) in by_edge {
        stations.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        for (index, &(along, id, setback_m)) in stations.iter().enumerate() {
            let gap_to = |other: usize| stations.get(other).map(|&(at, id, _)| (id, (at - along).abs()));
            let out = SettingOut {
                edge,
                edge_length_m: length_m,
                from_start_m: along,
                to_end_m: length_m - along,
                setback_m,
                before: index.checked_sub(1).and_then(gap_to),
                after: gap_to(index + 1),
            };
            all.push((id, out));
        }
    }
    all.into_iter().collect()
}
