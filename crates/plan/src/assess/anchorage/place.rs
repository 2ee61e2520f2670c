//! The concrete that a base's anchors stand in: a slab with its zones and holes, a plinth, or a wall, with the anchors of
//! other bases in it.

use gantline_mechanics::anchorage::{Concrete, Cracking, EdgeBars as BarsAtEdge, Fastener, SplittingBars, SurfaceBars};
use glam::DVec2;

use super::bars::CountedBars;
use crate::assess::clear_zones::Neighbor;
use crate::assess::surroundings::Surroundings;
use crate::catalog::{Base, BaseKind, BraceKind, PedestalBody, ResolvedUnit, WallSide};
use crate::document::{EdgeBars, EdgeId, Plan, Roof, Slab, WallConcrete};
use crate::geometry::concrete_around::{PlateFrame, Setting, ThicknessZone};
use crate::geometry::frame::{EdgeLine, Frame};
use crate::geometry::polygons::Polygon;

/// The concrete round one base, in its own plane: the plan's for slab and plinth, the wall's face for a wall.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Place {
    pub outline: Polygon,
    pub thickness_m: f64,
    pub zones: Vec<ThicknessZone>,
    /// Other bases' anchors.
    pub foreign: Vec<DVec2>,
    pub plate: PlateFrame,
    pub concrete: Concrete,
    /// Bars for anchors that are placed in it and that the code counts.
    pub bars: CountedBars,
    /// Whether its plane is the plan, so that edges can be shown there.
    pub is_in_plan: bool,
}

/// A unit at its place among what is near it.
#[derive(Clone, Copy)]
pub(in crate::assess) struct Stands<'a> {
    pub plan: &'a Plan,
    pub surroundings: &'a Surroundings,
    pub unit: &'a ResolvedUnit,
    pub frame: &'a Frame,
    /// The edge it is anchored to.
    pub edge: Option<EdgeId>,
    pub neighbors: &'a [Neighbor],
}

impl Place {
    /// The measured setting of these anchors.
    pub fn setting<'a>(&'a self, anchors_m: &'a [[f64; 2]], fastener: &Fastener) -> Setting<'a> {
        let (embedment_m, diameter_m) = (fastener.embedment_m, fastener.diameter_m);
        let en = &fastener.product.en;
        let splitting_m = (2.0 * en.splitting_edge_m.unwrap_or(0.0)).max(en.splitting_spacing_m.unwrap_or(0.0));
        Setting {
            outline: &self.outline,
            thickness_m: self.thickness_m,
            zones: &self.zones,
            foreign_m: &self.foreign,
            plate: self.plate,
            anchors_m,
            influence_m: CONE_REACH * embedment_m,
            reach_m: (EDGE_EMBEDMENTS * embedment_m).max(EDGE_DIAMETERS * diameter_m).max(splitting_m),
        }
    }

    /// A point of the plate in the plane of the outline.
    pub fn plane_from_plate(&self, at: DVec2) -> DVec2 {
        self.plate.plane_from_plate(at)
    }
}

/// A cone reaches 1.5 times the embedment (EN 1992-4 7.2.1.4, ACI 318-19 17.6.2.1).
const CONE_REACH: f64 = 1.5;
/// An edge is looked at up to 10 embedments and 60 diameters: beyond both its failure need not be shown (EN 1992-4 7.2.2.5(2),
/// from memory). Nor may squares about two anchors that split the concrete meet beyond it.
const EDGE_EMBEDMENTS: f64 = 10.0;
const EDGE_DIAMETERS: f64 = 60.0;

/// The concrete round the base that the mast stands in; or what is missing.
pub(super) fn of_base(stands: &Stands<'_>) -> Result<Place, String> {
    match &stands.unit.base.kind {
        BaseKind::WallSocket { side, plate_middle_m, .. } => on_wall(stands, *side, *plate_middle_m),
        BaseKind::Pedestal { height_m, body: PedestalBody::Plinth { corners_m } } => {
            let roof = roof_of(stands)?;
            let outline = corners_m.iter().map(|&corner| stands.frame.plan_from_local(corner)).collect();
            Ok(Place {
                outline: Polygon::simple(outline),
                thickness_m: *height_m,
                zones: Vec::new(),
                foreign: Vec::new(),
                plate: plate_frame(stands.frame, DVec2::ZERO, 0.0),
                concrete: concrete_of_slab(&roof.slab),
                bars: CountedBars::NONE,
                is_in_plan: true,
            })
        }
        _ => on_slab(stands, plate_frame(stands.frame, DVec2::ZERO, 0.0), foot_anchors(stands.unit, stands.frame)),
    }
}

/// The slab under a base that stands on a plinth.
pub(super) fn of_slab(stands: &Stands<'_>) -> Result<Place, String> {
    on_slab(stands, plate_frame(stands.frame, DVec2::ZERO, 0.0), Vec::new())
}

/// The concrete round a foot of its own.
pub(super) fn of_foot(stands: &Stands<'_>) -> Result<Place, String> {
    let own = anchors_in_slab(&stands.unit.base, stands.frame);
    on_slab(stands, foot_frame(stands.unit, stands.frame).ok_or("a foot of its own")?, own)
}

/// Where a rear foot's plate lies in the plan; its x axis points to the mast.
pub(super) fn foot_frame(unit: &ResolvedUnit, frame: &Frame) -> Option<PlateFrame> {
    let BraceKind::RearFoot { distance_m, .. } = unit.brace.as_ref()?.kind else { return None };
    let bearing = unit.foot_bearing_rad;
    Some(plate_frame(frame, DVec2::from_angle(bearing).rotate(DVec2::new(-distance_m, 0.0)), bearing))
}

pub(super) fn plate_frame(frame: &Frame, local: DVec2, turn_rad: f64) -> PlateFrame {
    PlateFrame { origin_m: frame.plan_from_local(local), turn_rad: frame.outward_rad + turn_rad }
}

fn roof_of<'a>(stands: &Stands<'a>) -> Result<&'a Roof, String> {
    stands.plan.roofs.get(&stands.frame.roof).ok_or_else(|| "its roof".to_owned())
}

fn on_slab(stands: &Stands<'_>, plate: PlateFrame, mut foreign: Vec<DVec2>) -> Result<Place, String> {
    let roof = roof_of(stands)?;
    let known = stands.surroundings.roofs.get(&stands.frame.roof).ok_or("its roof")?;
    for neighbor in stands.neighbors.iter().filter(|neighbor| neighbor.frame.roof == stands.frame.roof) {
        foreign.extend(anchors_in_slab(&neighbor.unit.base, &neighbor.frame));
        foreign.extend(foot_anchors(&neighbor.unit, &neighbor.frame));
    }
    let zones = roof.slab.zones.iter();
    Ok(Place {
        outline: known.polygon.clone(),
        thickness_m: roof.slab.thickness_m,
        zones: zones
            .map(|zone| ThicknessZone { area: Polygon::simple(zone.outline.clone()), thickness_m: zone.thickness_m })
            .collect(),
        foreign,
        plate,
        concrete: concrete_of_slab(&roof.slab),
        bars: CountedBars::of(&roof.slab.bars, &stands.plan.code),
        is_in_plan: true,
    })
}

/// Places in the plan of a base's anchors, where they stand in the slab.
fn anchors_in_slab(base: &Base, frame: &Frame) -> Vec<DVec2> {
    let in_slab = !matches!(
        base.kind,
        BaseKind::WallSocket { .. }
            | BaseKind::OnSteel
            | BaseKind::CastInSleeve { .. }
            | BaseKind::Pedestal { body: PedestalBody::Plinth { .. }, .. }
    );
    let anchors = base.anchors.iter().filter(|_| in_slab).flat_map(|anchors| &anchors.at_m);
    anchors.map(|&at| frame.plan_from_local(at)).collect()
}

fn foot_anchors(unit: &ResolvedUnit, frame: &Frame) -> Vec<DVec2> {
    let (Some(foot), Some(plate)) = (&unit.foot, foot_frame(unit, frame)) else { return Vec::new() };
    let anchors = foot.base.anchors.iter().flat_map(|anchors| &anchors.at_m);
    anchors.map(|&at| plate.plane_from_plate(at)).collect()
}

/// The inner face of the parapet of the unit's edge: u along the edge to the right as seen from the roof, v up from the slab.
fn on_wall(stands: &Stands<'_>, side: WallSide, plate_middle_m: f64) -> Result<Place, String> {
    let unknown = || "the wall that carries the base: only a parapet of its own edge is known".to_owned();
    let (Some(edge), WallSide::WallInFront) = (stands.edge, side) else { return Err(unknown()) };
    let line = stands.surroundings.edges.get(&edge).ok_or_else(unknown)?.line;
    let parapet = stands.plan.find_edge(edge).ok_or_else(unknown)?.edge().parapet;
    let concrete = parapet.concrete.ok_or("concrete of the parapet")?;
    if parapet.height_m <= 0.0 {
        return Err("a parapet on its edge".to_owned());
    }
    let to_right_m = |line: &EdgeLine, frame: &Frame| line.length_m - line.along_m(frame.at);
    let same_wall = stands.neighbors.iter().filter(|neighbor| {
        matches!(neighbor.unit.base.kind, BaseKind::WallSocket { .. })
            && line.behind_m(neighbor.frame.at).abs() < NEAR_WALL_M
    });
    let foreign = same_wall.flat_map(|neighbor| {
        let middle_m = match neighbor.unit.base.kind {
            BaseKind::WallSocket { plate_middle_m, .. } => plate_middle_m,
            _ => 0.0,
        };
        let origin = DVec2::new(to_right_m(&line, &neighbor.frame), middle_m);
        neighbor.unit.base.anchors.iter().flat_map(move |anchors| anchors.at_m.iter().map(move |&at| origin + at))
    });
    Ok(Place {
        outline: Polygon::rectangle(DVec2::ZERO, DVec2::new(line.length_m, parapet.height_m)),
        thickness_m: parapet.thickness_m,
        zones: Vec::new(),
        foreign: foreign.collect(),
        plate: PlateFrame { origin_m: DVec2::new(to_right_m(&line, stands.frame), plate_middle_m), turn_rad: 0.0 },
        concrete: concrete_of_wall(&concrete),
        bars: CountedBars::NONE,
        is_in_plan: false,
    })
}

/// Wall sockets whose mast stands nearer to the line of an edge than this hang on its parapet, m.
const NEAR_WALL_M: f64 = 1.5;

/// Concrete of a slab without the bars for anchors, which hang on the anchors' embedment and edges (see [`CountedBars`]).
pub(super) fn concrete_of_slab(slab: &Slab) -> Concrete {
    let bars = &slab.bars;
    Concrete {
        fck_pa: slab.cylinder_strength_pa,
        specified_pa: slab.specified_strength_pa,
        cracking: cracking(slab.cracked),
        lightweight: 1.0,
        surface_bars: if bars.wide_apart == Some(true) { SurfaceBars::Wide } else { SurfaceBars::Dense },
        edge_bars: match bars.along_edges {
            EdgeBars::NoneKnown => BarsAtEdge::None,
            EdgeBars::Straight => BarsAtEdge::Straight,
            EdgeBars::WithStirrups => BarsAtEdge::WithStirrups,
        },
        splitting_bars: if bars.limit_splitting == Some(true) {
            SplittingBars::LimitsCracks
        } else {
            SplittingBars::None
        },
        tension_bars: None,
        shear_bars: None,
    }
}

fn concrete_of_wall(wall: &WallConcrete) -> Concrete {
    Concrete {
        fck_pa: wall.cylinder_strength_pa,
        specified_pa: wall.specified_strength_pa,
        cracking: cracking(wall.cracked),
        lightweight: 1.0,
        surface_bars: SurfaceBars::Dense,
        edge_bars: BarsAtEdge::None,
        splitting_bars: SplittingBars::None,
        tension_bars: None,
        shear_bars: None,
    }
}

const fn cracking(cracked: bool) -> Cracking {
    if cracked { Cracking::Cracked } else { Cracking::Uncracked }
}
