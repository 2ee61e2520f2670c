//! Reads the line work of a GeoJSON file: polygons and lines, in degrees or in lengths.
//!
//! RFC 7946 knows degrees of WGS 84 only; older files name another system in a member `crs`, and many programs write
//! projected lengths without one. So degrees are taken to be degrees where no other system is named and all of them could
//! be, on one site.

use std::collections::BTreeMap;

use gantline_plan::document::GeoPlace;
use geojson::{Feature, GeoJson, Geometry, GeometryValue, JsonObject, Position};
use glam::DVec2;

use super::curve::{Piece, Trace};
use super::fault::OutlineFault;
use super::layer_list::LayerList;
use super::limits::{DEEPEST_BLOCK, LARGEST_GEOJSON_BYTES, MOST_LAYERS, MOST_PIECES};
use super::line_work::{LineWork, Measure};

/// Reads a GeoJSON file.
pub fn read(bytes: &[u8]) -> Result<LineWork, OutlineFault> {
    if bytes.len() > LARGEST_GEOJSON_BYTES {
        return Err(OutlineFault::TooLarge { has: bytes.len(), most: LARGEST_GEOJSON_BYTES });
    }
    let text = std::str::from_utf8(bytes).map_err(|fault| OutlineFault::NotGeoJson { what: fault.to_string() })?;
    let text = text.trim_start_matches('\u{feff}');
    // Read once as plain JSON: its reader names the line where the text breaks off.
    serde_json::from_str::<serde::de::IgnoredAny>(text)
        .map_err(|fault| OutlineFault::NotGeoJson { what: fault.to_string() })?;
    let geo: GeoJson =
        text.parse().map_err(|fault: geojson::Error| OutlineFault::NotGeoJson { what: fault.to_string() })?;
    let mut found = Found::default();
    let system = match &geo {
        GeoJson::FeatureCollection(all) => {
            for (index, feature) in all.features.iter().enumerate() {
                found.feature(feature, &format!("feature {}", index + 1))?;
            }
            named_system(all.foreign_members.as_ref())
        }
        GeoJson::Feature(feature) => {
            found.feature(feature, "the feature")?;
            named_system(feature.foreign_members.as_ref())
        }
        GeoJson::Geometry(geometry) => {
            found.geometry(geometry, WITHOUT_LAYER, "the geometry", 1)?;
            named_system(geometry.foreign_members.as_ref())
        }
    };
    found.measured(system)
}

/// The layer of things that name none.
const WITHOUT_LAYER: &str = "outline";

#[derive(Default)]
struct Found {
    layers: LayerList,
    traces: Vec<Trace>,
    pieces: usize,
    passed_over: BTreeMap<String, usize>,
    /// Rings of polygons that do not end where they begin, as the format asks: in which part the first is, and how many.
    left_open: Option<(String, usize)>,
}

impl Found {
    fn layer(&mut self, name: &str, inside: &str) -> Result<usize, OutlineFault> {
        let fault = || OutlineFault::TooManyLayers { inside: inside.to_owned(), most: MOST_LAYERS };
        self.layers.place_of(name).ok_or_else(fault)
    }

    fn feature(&mut self, feature: &Feature, inside: &str) -> Result<(), OutlineFault> {
        let named = feature.properties.as_ref().and_then(|properties| properties.get("layer")?.as_str());
        let layer = named.filter(|name| !name.trim().is_empty()).unwrap_or(WITHOUT_LAYER);
        match &feature.geometry {
            Some(geometry) => self.geometry(geometry, layer, inside, 1),
            None => Ok(()),
        }
    }

    fn geometry(&mut self, geometry: &Geometry, layer: &str, inside: &str, depth: usize) -> Result<(), OutlineFault> {
        match &geometry.value {
            GeometryValue::Polygon { coordinates } => self.rings(coordinates, layer, inside),
            GeometryValue::MultiPolygon { coordinates } => {
                coordinates.iter().try_for_each(|rings| self.rings(rings, layer, inside))
            }
            GeometryValue::LineString { coordinates } => self.line(coordinates, false, layer, inside),
            GeometryValue::MultiLineString { coordinates } => {
                coordinates.iter().try_for_each(|line| self.line(line, false, layer, inside))
            }
            GeometryValue::GeometryCollection { geometries } if depth < DEEPEST_BLOCK => {
                geometries.iter().try_for_each(|one| self.geometry(one, layer, inside, depth + 1))
            }
            other => {
                let place = self.layer(layer, inside)?;
                self.layers.count_other(place);
                *self.passed_over.entry(other.type_name().to_owned()).or_default() += 1;
                Ok(())
            }
        }
    }

    fn rings(&mut self, rings: &[Vec<Position>], layer: &str, inside: &str) -> Result<(), OutlineFault> {
        rings.iter().try_for_each(|ring| self.line(ring, true, layer, inside))
    }

    fn line(&mut self, line: &[Position], closed: bool, layer: &str, inside: &str) -> Result<(), OutlineFault> {
        self.pieces += line.len();
        if self.pieces > MOST_PIECES {
            return Err(OutlineFault::TooMany { most: MOST_PIECES });
        }
        let points = line.iter().map(|position| point(position.as_slice(), inside)).collect::<Result<Vec<_>, _>>()?;
        let layer = self.layer(layer, inside)?;
        let [start, rest @ ..] = points.as_slice() else { return Ok(()) };
        if closed && rest.last().is_some_and(|last| last != start) {
            self.left_open.get_or_insert_with(|| (inside.to_owned(), 0)).1 += 1;
        }
        if !rest.is_empty() {
            let pieces = rest.iter().map(|&to| Piece::straight(to)).collect();
            let closed = closed || rest.len() > 2 && rest.last() == Some(start);
            self.traces.push(Trace { layer, start: *start, pieces, closed });
        }
        Ok(())
    }

    /// The line work, with what its coordinates are.
    fn measured(self, system: Option<String>) -> Result<LineWork, OutlineFault> {
        let Self { layers, traces, passed_over, left_open, .. } = self;
        let all = traces
            .iter()
            .flat_map(|trace| std::iter::once(trace.start).chain(trace.pieces.iter().map(|piece| piece.to)));
        let bounds = gantline_plan::geometry::bounds::Bounds::of(all);
        let mut said = Vec::new();
        if let Some((first, count)) = left_open {
            said.push(format!(
                "{count} rings of polygons do not end where they begin, the first in {first}: a straight side was added to each"
            ));
        }
        let mut measure = Measure::NotStated;
        if let (Some(bounds), Some(is_named)) = (bounds, in_degrees(system.as_deref())) {
            let (low, high) = (bounds.min_m, bounds.max_m);
            let on_earth = low.x >= -180.0 && high.x <= 180.0 && low.y >= -90.0 && high.y <= 90.0;
            let one_site = (high - low).max_element() <= WIDEST_DEG;
            if on_earth && one_site {
                let middle = low.midpoint(high);
                let middle = GeoPlace { lon_deg: middle.x, lat_deg: middle.y };
                measure = Measure::Degrees { middle };
                said.push(format!("coordinates are degrees of WGS 84, about {middle}"));
            } else if is_named {
                let text = |degrees: f64| format!("{degrees:.4}");
                return Err(OutlineFault::NoSite {
                    least_lon: text(low.x),
                    least_lat: text(low.y),
                    most_lon: text(high.x),
                    most_lat: text(high.y),
                });
            }
        }
        if let (Measure::NotStated, Some(system)) = (measure, system) {
            said.push(format!("coordinates are in the system {system}, whose unit the file does not state"));
        }
        let (layers, traces) = layers.sorted(traces);
        Ok(LineWork { measure, layers, traces, passed_over, said })
    }
}

/// A site wider than this, degrees, is none: at the equator some 22 km.
const WIDEST_DEG: f64 = 0.2;

fn point(position: &[f64], inside: &str) -> Result<DVec2, OutlineFault> {
    match position {
        [x, y, ..] if x.is_finite() && y.is_finite() => Ok(DVec2::new(*x, *y)),
        _ => Err(OutlineFault::NoPosition { inside: inside.to_owned() }),
    }
}

/// The name of the coordinate system in a member `crs`, as files before RFC 7946 have it.
fn named_system(members: Option<&JsonObject>) -> Option<String> {
    members?.get("crs")?.get("properties")?.get("name")?.as_str().map(str::to_owned)
}

/// Whether coordinates may be degrees of longitude and latitude; inside, whether the file says so itself.
fn in_degrees(system: Option<&str>) -> Option<bool> {
    match system {
        None => Some(false),
        Some(name) => (name.contains("CRS84") || name.ends_with(":4326")).then_some(true),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn polygon(corners: &str, more: &str) -> Result<LineWork, OutlineFault> {
        read(format!(r#"{{"type":"Polygon","coordinates":[[{corners}]]{more}}}"#).as_bytes())
    }

    #[test]
    fn degrees_on_one_site_become_meters_and_say_so() {
        use super::super::outlines::Asked;
        let work = polygon("[10,60],[10.001,60],[10.001,60.001],[10,60.001],[10,60]", "").unwrap();
        assert!(matches!(work.measure, Measure::Degrees { middle } if (middle.lon_deg - 10.0005).abs() < 1e-9));
        assert!(work.said[0].contains("degrees of WGS 84"), "{:?}", work.said);
        let asked = Asked { layers: [0].into(), unit: None, tolerance_m: 0.005, chord_m: 0.005, place: None };
        let found = work.outlines(&asked).unwrap();
        assert!(found.plane.is_some_and(|plane| (plane.lat_deg - 60.0005).abs() < 1e-9));
        // 0.001° of latitude at 60° north are 111.4 m (M = 6383.5 km).
        let height = found.bounds.unwrap().size_m().y;
        assert!((height - 111.412).abs() < 0.01, "{height}");
    }

    #[test]
    fn lengths_without_a_system_are_asked_for_their_unit() {
        let work = polygon("[0,0],[30,0],[30,20],[0,20],[0,0]", "").unwrap();
        assert_eq!((work.measure, work.stated_unit()), (Measure::NotStated, None));
        let crs = r#","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::25832"}}"#;
        let named = polygon("[0,0],[0.1,0],[0.1,0.1],[0,0]", crs).unwrap();
        assert_eq!(named.measure, Measure::NotStated);
        assert!(named.said[0].contains("EPSG::25832"));
    }

    #[test]
    fn degrees_over_half_a_continent_are_no_site() {
        let crs = r#","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}}"#;
        let fault = polygon("[0,0],[30,0],[30,20],[0,20],[0,0]", crs).unwrap_err();
        assert!(matches!(fault, OutlineFault::NoSite { .. }), "{fault}");
    }

    #[test]
    fn broken_text_is_named_with_its_line_and_positions_without_numbers_with_their_feature() {
        let fault = read(b"{\n\"type\": \"Polygon\",\n").unwrap_err();
        assert!(fault.to_string().contains("line"), "{fault}");
        assert!(matches!(read(br#"{"type":"Roof"}"#), Err(OutlineFault::NotGeoJson { .. })));
        let feature = r#"{"type":"Feature","properties":{"layer":"A"},"geometry":{"type":"LineString","coordinates":[[1],[2,3]]}}"#;
        assert!(read(feature.as_bytes()).is_err());
    }

    #[test]
    fn layers_come_from_the_property_of_that_name_and_points_are_passed_over() {
        let text = r#"{"type":"FeatureCollection","features":[
            {"type":"Feature","properties":{"layer":"roof"},"geometry":{"type":"LineString","coordinates":[[0,0],[9,0],[9,9],[0,0]]}},
            {"type":"Feature","properties":null,"geometry":{"type":"Point","coordinates":[1,1]}}]}"#;
        let work = read(text.as_bytes()).unwrap();
        assert_eq!(work.layers.iter().map(|layer| layer.name.as_str()).collect::<Vec<_>>(), ["outline", "roof"]);
        assert!(work.traces[0].closed);
        assert_eq!(work.passed_over.get("Point"), Some(&1));
    }
    #[test]
    fn a_ring_that_does_not_end_where_it_begins_is_told() {
        let work = polygon("[0,0],[30,0],[30,20],[0,20]", "").unwrap();
        assert!(work.traces[0].closed && work.said[0].starts_with("1 rings of polygons do not end"), "{:?}", work.said);
        let work = polygon("[0,0],[30,0],[30,20],[0,20],[0,0]", "").unwrap();
        assert!(work.said.is_empty());
    }

    #[test]
    fn a_file_too_large_to_be_held_is_refused_by_its_size() {
        let large = [b"{".to_vec(), vec![b' '; LARGEST_GEOJSON_BYTES]].concat();
        let fault = read(&large).unwrap_err();
        assert_eq!(fault, OutlineFault::TooLarge { has: LARGEST_GEOJSON_BYTES + 1, most: LARGEST_GEOJSON_BYTES });
    }
}
