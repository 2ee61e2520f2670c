//! The layers of a file while it is read: each name once, whatever its capitals, with a count of what it holds.

use std::collections::HashMap;

use super::curve::Trace;
use super::limits::MOST_LAYERS;
use super::line_work::Layer;

/// Layers in the order in which they were met.
#[derive(Debug)]
pub struct LayerList {
    layers: Vec<Layer>,
    by_name: HashMap<String, usize>,
}

/// The layer whose things, in a block, lie on the layer of the insert.
const OF_INSERT: &str = "0";

impl Default for LayerList {
    fn default() -> Self {
        let mut list = Self { layers: Vec::new(), by_name: HashMap::new() };
        list.place_of(OF_INSERT);
        list
    }
}

impl LayerList {
    /// The place of layer "0", whose things in a block lie on the layer of the insert.
    pub const OF_INSERT: usize = 0;

    /// The place of a layer in the list; a name never met before is added. None when the list is full.
    pub fn place_of(&mut self, name: &str) -> Option<usize> {
        if let Some(&known) = self.by_name.get(name) {
            return Some(known);
        }
        let lower = name.to_lowercase();
        let next = self.layers.len();
        let place = match self.by_name.get(&lower) {
            Some(&known) => known,
            None if next >= MOST_LAYERS => return None,
            None => {
                self.layers.push(Layer { name: name.to_owned(), traces: 0, closed: 0, others: 0, shown: true });
                self.by_name.insert(lower, next);
                next
            }
        };
        // Another way of capitals is found quicker the next time; there may be more of them than of layers.
        if self.by_name.len() < 2 * MOST_LAYERS {
            self.by_name.insert(name.to_owned(), place);
        }
        Some(place)
    }

    /// The file does not show this layer.
    pub fn hide(&mut self, place: usize) {
        if let Some(layer) = self.layers.get_mut(place) {
            layer.shown = false;
        }
    }

    /// Something on a layer that is no line or curve.
    pub fn count_other(&mut self, place: usize) {
        if let Some(layer) = self.layers.get_mut(place) {
            layer.others += 1;
        }
    }

    /// The layers that hold anything in order of their names, and the traces with their places in that order.
    pub fn sorted(mut self, mut traces: Vec<Trace>) -> (Vec<Layer>, Vec<Trace>) {
        for trace in &traces {
            if let Some(layer) = self.layers.get_mut(trace.layer) {
                layer.traces += 1;
                layer.closed += usize::from(trace.closed);
            }
        }
        let mut order: Vec<usize> =
            (0..self.layers.len()).filter(|&at| self.layers[at].traces + self.layers[at].others > 0).collect();
        order.sort_by(|&a, &b| self.layers[a].name.cmp(&self.layers[b].name));
        let mut places = vec![0; self.layers.len()];
        for (place, &before) in order.iter().enumerate() {
            places[before] = place;
        }
        for trace in &mut traces {
            trace.layer = places.get(trace.layer).copied().unwrap_or_default();
        }
        (order.into_iter().map(|before| self.layers[before].clone()).collect(), traces)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::DVec2;

    #[test]
    fn names_that_differ_in_capitals_are_one_layer_and_empty_ones_are_left_out() {
        let mut list = LayerList::default();
        let [roof, other, again] = ["Roof", "A", "ROOF"].map(|name| list.place_of(name).unwrap());
        list.place_of("unused");
        assert_eq!(roof, again);
        list.count_other(other);
        let trace = Trace { layer: roof, start: DVec2::ZERO, pieces: Vec::new(), closed: true };
        let (layers, traces) = list.sorted(vec![trace]);
        assert_eq!(layers.iter().map(|layer| layer.name.as_str()).collect::<Vec<_>>(), ["A", "Roof"]);
        assert_eq!((traces[0].layer, layers[1].closed, layers[0].others), (1, 1, 1));
    }
    #[test]
    fn a_list_that_is_full_takes_known_names_only() {
        let mut list = LayerList::default();
        for index in 1..MOST_LAYERS {
            assert!(list.place_of(&format!("layer {index}")).is_some());
        }
        assert_eq!(list.place_of("one more"), None);
        assert_eq!((list.place_of("Layer 1"), list.place_of("LAYER 1")), (Some(1), Some(1)));
    }
}
