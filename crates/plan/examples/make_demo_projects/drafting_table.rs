//! A plan in the making, changed by its history alone, with short ways to say what a scenario says often.

use std::error::Error;

use gantline_plan::basis::{Confirmation, DesignCode, LoadBasis, presets};
use gantline_plan::catalog::{Family, MakeUp, SlewStops};
use gantline_plan::change::{Change, EdgePatch, History, RoofPatch};
use gantline_plan::document::{
    EdgeId, FamilyId, Obstacle, ObstacleId, PartId, PlacementId, Plan, RoofId, Slab, SlabBars, Standing, Station, Tag,
    ThingId, Title,
};
use gantline_plan::geometry::frame::EdgeLine;
use glam::DVec2;
use serde_json::Value;

/// What a scenario ends in when something can't be drawn.
pub type Drawn<T> = Result<T, Box<dyn Error>>;

const HERON: &str = include_str!("../../../../assets/families/heron.json");
const TERN: &str = include_str!("../../../../assets/families/tern.json");

/// A plan in the making.
pub struct DraftingTable {
    history: History,
    /// The family of braced aluminum parts.
    pub heron: FamilyId,
    /// The family of steel parts.
    pub tern: FamilyId,
}

/// Parts of a unit by their names: family, mast, arm, brace, base.
#[derive(Clone, Copy)]
pub struct Parts(pub FamilyId, pub &'static str, pub &'static str, pub Option<&'static str>, pub &'static str);

impl Parts {
    /// The make-up of these parts, free to turn.
    pub fn make_up(self) -> MakeUp {
        MakeUp {
            family: self.0,
            mast: PartId::new(self.1),
            arm: PartId::new(self.2),
            brace: self.3.map(PartId::new),
            base: PartId::new(self.4),
            fixing: None,
            slew_stops: SlewStops::WholeTurn,
            drawn_slew_rad: 0.0,
            foot_bearing_rad: 0.0,
            foot_level_m: 0.0,
        }
    }
}

/// Corners in the order in which they are drawn.
pub fn corners(points: &[(f64, f64)]) -> Vec<DVec2> {
    points.iter().map(|&(x, y)| DVec2::new(x, y)).collect()
}

/// The first basis of the list.
pub fn first_basis() -> Drawn<LoadBasis> {
    Ok(presets()?.into_iter().next().ok_or("there is no load basis to start from")?.basis)
}

/// The same basis with someone of the scenario standing behind each of its values.
pub fn confirmed(basis: &LoadBasis) -> Drawn<LoadBasis> {
    let mut stored = serde_json::to_value(basis)?;
    let by = Confirmation::Confirmed { by: "engineer of an invented scenario".to_owned() };
    confirm(&mut stored, &serde_json::to_value(by)?);
    Ok(serde_json::from_value(stored)?)
}

/// In the file, whoever stands behind a value is named beside it.
fn confirm(stored: &mut Value, by: &Value) {
    match stored {
        Value::Object(members) => {
            for (key, member) in members {
                if key == "standing" {
                    member.clone_from(by);
                } else {
                    confirm(member, by);
                }
            }
        }
        Value::Array(items) => items.iter_mut().for_each(|item| confirm(item, by)),
        _ => {}
    }
}

impl DraftingTable {
    /// An empty plan to a basis, with both demonstration families.
    pub fn new(title: Title, basis: LoadBasis) -> Drawn<Self> {
        let mut history = History::new(Plan::empty(basis, DesignCode::eurocode()));
        history.change("title", &Change::SetTitle(title))?;
        for family in [HERON, TERN] {
            let family: Family = serde_json::from_str(family)?;
            history.change("family", &Change::AddFamily(Box::new(family)))?;
        }
        let mut families = history.plan().families.keys().copied();
        let (Some(heron), Some(tern)) = (families.next(), families.next()) else { return Err("two families".into()) };
        Ok(Self { history, heron, tern })
    }

    /// The plan as it is now.
    pub fn plan(&self) -> &Plan {
        self.history.plan()
    }

    /// Makes a change.
    pub fn change(&mut self, change: &Change) -> Drawn<Vec<ThingId>> {
        Ok(self.history.change("scenario", change)?.made)
    }

    /// A roof with its build-up.
    pub fn roof(&mut self, name: &str, level_m: f64, build_up_m: f64, outline: &[(f64, f64)]) -> Drawn<RoofId> {
        let made = self.change(&Change::AddRoof { name: name.to_owned(), level_m, outline: corners(outline) })?;
        let Some(&ThingId::Roof(roof)) = made.first() else { return Err("a roof was to be made".into()) };
        self.change(&Change::SetRoof(roof, RoofPatch { build_up_m: Some(build_up_m), ..RoofPatch::default() }))?;
        Ok(roof)
    }

    /// A slab of one thickness and strength that someone stands behind, with bars 45 mm under its faces.
    pub fn slab(&mut self, roof: RoofId, thickness_m: f64, strength_pa: f64) -> Drawn<()> {
        let slab = Slab {
            thickness_m,
            cylinder_strength_pa: Some(strength_pa),
            specified_strength_pa: Some(strength_pa),
            bars: SlabBars { axis_depth_m: Some(0.045), ratio: Some(0.004), ..SlabBars::default() },
            confirmed: true,
            ..Slab::default()
        };
        self.change(&Change::SetRoof(roof, RoofPatch { slab: Some(slab), ..RoofPatch::default() }))?;
        Ok(())
    }

    /// A courtyard.
    pub fn hole(&mut self, roof: RoofId, outline: &[(f64, f64)]) -> Drawn<()> {
        self.change(&Change::AddHole { roof, outline: corners(outline) })?;
        Ok(())
    }

    /// The edges of a roof in order: outline first, then holes.
    pub fn edges(&self, roof: RoofId) -> Vec<EdgeId> {
        self.plan().edges().filter(|place| place.roof_id == roof).map(|place| place.edge().id).collect()
    }

    /// The edge of a roof on which a point lies.
    pub fn edge_at(&self, roof: RoofId, at: (f64, f64)) -> Drawn<EdgeId> {
        let at = DVec2::new(at.0, at.1);
        let near = |edge: &EdgeId| {
            EdgeLine::of(self.plan(), *edge).is_some_and(|line| {
                let along = line.along_m(at);
                line.behind_m(at).abs() < 1e-6 && along > 0.0 && along < line.length_m
            })
        };
        self.edges(roof).into_iter().find(near).ok_or_else(|| format!("no edge at {at}").into())
    }

    /// Sets data of edges.
    pub fn set_edges(&mut self, edges: &[EdgeId], patch: EdgePatch) -> Drawn<()> {
        self.change(&Change::SetEdges(edges.to_vec(), patch))?;
        Ok(())
    }

    /// An obstacle on a roof.
    pub fn obstacle(
        &mut self,
        roof: RoofId,
        name: &str,
        outline: &[(f64, f64)],
        from_m: f64,
        to_m: f64,
    ) -> Drawn<ObstacleId> {
        let outline = corners(outline);
        let made =
            self.change(&Change::AddObstacle(Obstacle { name: name.to_owned(), roof, outline, from_m, to_m }))?;
        let Some(&ThingId::Obstacle(id)) = made.first() else { return Err("an obstacle was to be made".into()) };
        Ok(id)
    }

    /// A unit on an edge.
    pub fn unit(&mut self, edge: EdgeId, along_m: f64, setback_m: f64, make_up: MakeUp) -> Drawn<PlacementId> {
        let length_m = EdgeLine::of(self.plan(), edge).ok_or("the edge is not there")?.length_m;
        let station = Station::nearest(along_m, length_m);
        self.place(make_up, Standing::OnEdge { edge, station, setback_m, turn_rad: 0.0 }, None)
    }

    /// A unit anywhere.
    pub fn place(&mut self, make_up: MakeUp, stands: Standing, tag: Option<&str>) -> Drawn<PlacementId> {
        let made = self.change(&Change::Place { make_up, stands, tag: tag.map(|tag| Tag(tag.to_owned())) })?;
        let Some(&ThingId::Placement(id)) = made.first() else { return Err("a unit was to be placed".into()) };
        Ok(id)
    }
}
