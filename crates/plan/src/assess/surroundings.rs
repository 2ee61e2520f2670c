//! What stands still while units move: facades, roofs and the building's volumes, filed by where they are.

use std::collections::BTreeMap;

use crate::document::{Plan, Ring, RoofId};
use crate::geometry::bounds::Bounds;
use crate::geometry::facade::{Facade, facades};
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
                (id, RoofPlate { level_m: roof.level_m, build_up_m: roof.build_up_m, polygon })
            })
            .collect();
        Self { facades, roofs, solids, facade_grid, solid_grid }
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
