//! What stands still while units move: facades, roofs and the building's volumes, filed by where they are.

use std::collections::BTreeMap;

use crate::document::{EdgeId, Plan, Ring, RoofId, Standing};
use crate::geometry::bounds::Bounds;
use crate::geometry::facade::{Facade, facades};
use crate::geometry::frame::{EdgeLine, Frame};
use crate::geometry::mass::{Volume, volumes};
use crate::geometry::neighbors::Neighbors;
use crate::geometry::polygons::Polygon;
use crate::geometry::prism::{PlanShape, Prism};

/// Facades, roofs and volumes of a plan.
#[derive(Debug, Clone)]
pub struct Surroundings {
    /// All facades in order.
    pub facades: Vec<Facade>,
    /// Roofs by id: level of the structural slab, build-up, outline with holes.
    pub roofs: BTreeMap<RoofId, RoofPlate>,
    /// Volumes with their prisms, in order.
    pub solids: Vec<Solid>,
    /// Edges by id.
    pub edges: BTreeMap<EdgeId, EdgeOnRoof>,
    facade_grid: Neighbors,
    solid_grid: Neighbors,
}

/// A roof as a surface to stand on.
#[derive(Debug, Clone)]
pub struct RoofPlate {
    /// Level of the structural slab.
    pub level_m: f64,
    /// Height of the finish over it.
    pub build_up_m: f64,
    /// Outline with holes.
    pub polygon: Polygon,
    /// The box around the outline; none without corners.
    pub bounds: Option<Bounds>,
}

/// An edge as a line to stand on.
#[derive(Debug, Clone, Copy)]
pub struct EdgeOnRoof {
    /// From its corner to the next.
    pub line: EdgeLine,
    /// Direction away from the building, counter-clockwise from the plan's x axis.
    pub outward_rad: f64,
    /// Its roof.
    pub roof: RoofId,
    /// Level of that roof's structural slab.
    pub level_m: f64,
}

/// A volume and its prism.
#[derive(Debug, Clone)]
pub struct Solid {
    /// What it is.
    pub volume: Volume,
    /// The same as a prism.
    pub prism: Prism,
}

impl Surroundings {
    /// The surroundings of a plan's units.
    pub fn of(plan: &Plan) -> Self {
        let facades = facades(plan);
        let solids: Vec<Solid> = volumes(plan)
            .into_iter()
            .filter_map(|volume| {
                let shape = PlanShape::Polygon(volume.polygon.clone());
                let prism = Prism::new(shape, volume.from_level_m, volume.to_level_m).ok()?;
                Some(Solid { volume, prism })
            })
            .collect();
        let facade_box = |facade: &Facade| {
            Bounds::of([facade.line.start, facade.line.end]).unwrap_or(Bounds::around(facade.line.start, 0.0))
        };
        let facade_grid = Neighbors::of(facades.iter().map(facade_box).collect());
        let solid_grid = Neighbors::of(solids.iter().map(|solid| solid.prism.bounds()).collect());
        let roofs = plan
            .roofs
            .iter()
            .map(|(&id, roof)| {
                let holes = roof.holes.iter().map(Ring::points).collect();
                let polygon = Polygon { outer: roof.outer.points(), holes };
                let bounds = polygon.bounds();
                (id, RoofPlate { level_m: roof.level_m, build_up_m: roof.build_up_m, polygon, bounds })
            })
            .collect();
        Self { facades, roofs, solids, edges: edges(plan), facade_grid, solid_grid }
    }

    /// The axes of a standing, as [`Frame::of`] finds them.
    pub fn frame_of(&self, standing: &Standing) -> Option<Frame> {
        match standing {
            Standing::OnEdge { edge, station, setback_m, turn_rad } => {
                let EdgeOnRoof { line, outward_rad, roof, level_m } = *self.edges.get(edge)?;
                let at = line.point(station.along_m(line.length_m), *setback_m);
                Some(Frame { at, outward_rad: outward_rad + turn_rad, roof, level_m })
            }
            Standing::Free { roof, at, outward_rad, .. } => {
                let level_m = self.roofs.get(roof)?.level_m;
                Some(Frame { at: *at, outward_rad: *outward_rad, roof: *roof, level_m })
            }
        }
    }

    /// Facades whose line comes near a box, in order.
    pub fn facades_near(&self, near: &Bounds) -> impl Iterator<Item = &Facade> {
        self.facade_grid.near(near).into_iter().map(|index| &self.facades[index])
    }

    /// Volumes near a box, in order.
    pub fn solids_near(&self, near: &Bounds) -> impl Iterator<Item = &Solid> {
        self.solid_grid.near(near).into_iter().map(|index| &self.solids[index])
    }
}

fn edges(plan: &Plan) -> BTreeMap<EdgeId, EdgeOnRoof> {
    let on_roof = plan.edges().map(|place| {
        let (start, end) = place.ring.ends(place.index);
        let line = EdgeLine::between(start, end);
        let (outward_rad, level_m) = (line.outward_rad(), place.roof.level_m);
        (place.edge().id, EdgeOnRoof { line, outward_rad, roof: place.roof_id, level_m })
    });
    on_roof.collect()
}
