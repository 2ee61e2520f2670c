//! A plan for tests and pictures, made through changes only: an L-shaped roof with a courtyard and a plant room, a lower
//! roof beside it, and eight units of every brace kind. The scenario is invented.

use std::sync::OnceLock;

use gantline_plan::assess::{Assessment, Memo, assess};
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::catalog::{Family, MakeUp, SlewStops};
use gantline_plan::change::{Change, EdgePatch, PlacementPatch, RoofPatch, apply};
use gantline_plan::document::{
    EdgeEnd, EdgeId, FacadeFoot, FacadeStep, FamilyId, Obstacle, PartId, PlacementId, Plan, RoofId, Slab, SlabBars,
    Standing, Station, Tag, ThingId, Title,
};
use glam::DVec2;

const HERON: &str = include_str!("../../../../assets/families/heron.json");
const TERN: &str = include_str!("../../../../assets/families/tern.json");

/// The plan being made.
#[derive(Clone)]
pub struct Sample {
    /// The plan.
    pub plan: Plan,
    /// Units in the order in which they were placed.
    pub placed: Vec<PlacementId>,
}

fn points(corners: &[(f64, f64)]) -> Vec<DVec2> {
    corners.iter().map(|&(x, y)| DVec2::new(x, y)).collect()
}

fn change(plan: &mut Plan, change: &Change) -> Vec<ThingId> {
    let applied = apply(plan, change).unwrap();
    *plan = applied.plan;
    applied.made
}

fn add_roof(plan: &mut Plan, name: &str, level_m: f64, corners: &[(f64, f64)]) -> RoofId {
    let made = change(plan, &Change::AddRoof { name: name.to_owned(), level_m, outline: points(corners) });
    let Some(ThingId::Roof(id)) = made.first() else { unreachable!("a roof was asked for") };
    let patch = RoofPatch { build_up_m: Some(0.18), ..RoofPatch::default() };
    change(plan, &Change::SetRoof(*id, patch));
    *id
}

/// The edge that leaves this corner of a ring of the roof: ring 0 is the outline, then the holes.
pub fn edge(plan: &Plan, roof: RoofId, ring: usize, corner: usize) -> EdgeId {
    plan.roofs[&roof].rings().nth(ring).unwrap().edge(corner).id
}

fn family_named(plan: &Plan, word: &str) -> FamilyId {
    *plan.families.iter().find(|(_, family)| family.name.contains(word)).unwrap().0
}

/// A make-up of the sample's families.
pub fn make_up(plan: &Plan, family: &str, parts: [&str; 4]) -> MakeUp {
    let [mast, arm, brace, base] = parts;
    MakeUp {
        family: family_named(plan, family),
        mast: PartId::new(mast),
        arm: PartId::new(arm),
        brace: (!brace.is_empty()).then(|| PartId::new(brace)),
        base: PartId::new(base),
        fixing: None,
        slew_stops: SlewStops::WholeTurn,
        drawn_slew_rad: 0.0,
        foot_bearing_rad: 0.0,
        foot_level_m: 0.0,
    }
}

/// Places a unit on an edge.
pub fn place(plan: &mut Plan, make_up: MakeUp, edge: EdgeId, along_m: f64, setback_m: f64, tag: &str) -> PlacementId {
    let station = Station { from: EdgeEnd::Start, distance_m: along_m };
    let stands = Standing::OnEdge { edge, station, setback_m, turn_rad: 0.0 };
    let made = change(plan, &Change::Place { make_up, stands, tag: Some(Tag(tag.to_owned())) });
    let Some(ThingId::Placement(id)) = made.first() else { unreachable!("a unit was asked for") };
    *id
}

/// A plan with the families and a basis and nothing else.
pub fn empty_plan() -> Plan {
    let basis = presets().unwrap().remove(0).basis;
    let mut plan = Plan::empty(basis, DesignCode::eurocode());
    for stored in [HERON, TERN] {
        let family: Family = serde_json::from_str(stored).unwrap();
        change(&mut plan, &Change::AddFamily(Box::new(family)));
    }
    let job = "Courtyard house".to_owned();
    let remark = "invented scenario".to_owned();
    change(&mut plan, &Change::SetTitle(Title { job, remark, revision: "A".to_owned(), ..Title::default() }));
    plan
}

/// The whole sample with its assessment, made once for all tests.
pub fn assessed() -> &'static (Sample, Assessment) {
    static MADE: OnceLock<(Sample, Assessment)> = OnceLock::new();
    MADE.get_or_init(|| {
        let sample = courtyard_house();
        let assessment = assess(&sample.plan, &mut Memo::new());
        (sample, assessment)
    })
}

/// The whole sample.
pub fn courtyard_house() -> Sample {
    let mut plan = empty_plan();
    let main = add_roof(
        &mut plan,
        "Main roof",
        18.4,
        &[(0.0, 0.0), (34.0, 0.0), (34.0, 14.0), (20.0, 14.0), (20.0, 26.0), (0.0, 26.0)],
    );
    let low = add_roof(&mut plan, "Low roof", 9.2, &[(34.0, 0.0), (46.0, 0.0), (46.0, 10.0), (34.0, 10.0)]);
    change(
        &mut plan,
        &Change::AddHole { roof: main, outline: points(&[(6.5, 10.0), (14.5, 10.0), (14.5, 18.0), (6.5, 18.0)]) },
    );
    let parapet = |height: f64| EdgePatch {
        parapet_height_m: Some(height),
        parapet_thickness_m: Some(0.24),
        ..EdgePatch::default()
    };
    let all: Vec<EdgeId> = plan.edges().map(|place| place.edge().id).collect();
    change(&mut plan, &Change::SetEdges(all, parapet(0.9)));
    let west = edge(&plan, main, 0, 5);
    change(&mut plan, &Change::SetEdges(vec![west], parapet(1.25)));
    let east = edge(&plan, main, 0, 1);
    let on_low = EdgePatch { ends_at: Some(FacadeFoot::Roof(low)), ..EdgePatch::default() };
    change(&mut plan, &Change::SetEdges(vec![east], on_low));
    let south = edge(&plan, main, 0, 0);
    let stepped =
        vec![FacadeStep { from_depth_m: 0.0, offset_m: 0.12 }, FacadeStep { from_depth_m: 4.0, offset_m: 0.20 }];
    change(&mut plan, &Change::SetEdges(vec![south], EdgePatch { profile: Some(stepped), ..EdgePatch::default() }));
    let no_access = EdgePatch { needs_access: Some(false), ..EdgePatch::default() };
    let quiet = vec![edge(&plan, low, 0, 2), edge(&plan, low, 0, 3)];
    change(&mut plan, &Change::SetEdges(quiet, no_access));
    let obstacle = |name: &str, roof, corners: &[(f64, f64)], from_m, to_m| {
        let outline = points(corners);
        Change::AddObstacle(Obstacle { name: name.to_owned(), roof, outline, from_m, to_m })
    };
    change(&mut plan, &obstacle("Plant room", main, &[(22.0, 4.5), (30.0, 4.5), (30.0, 9.5), (22.0, 9.5)], 0.0, 2.8));
    change(&mut plan, &obstacle("Duct", main, &[(2.2, 19.6), (5.4, 19.6), (5.4, 20.6), (2.2, 20.6)], 0.4, 1.7));
    let placed = units(&mut plan, main);
    Sample { plan, placed }
}

fn units(plan: &mut Plan, main: RoofId) -> Vec<PlacementId> {
    let rear = ["mast-190", "arm-115-rear", "rear-tie-long", "floor-socket"];
    let long = ["mast-190", "arm-145-rear", "rear-tie-long", "flush-plate"];
    let front = ["mast-145", "arm-115-front", "front-strut", "floor-socket"];
    let rigid = ["mast-170", "arm-100", "", "cage-socket"];
    let tied = ["mast-170", "arm-125-pinned", "base-tie", "cage-socket"];
    let footed = ["mast-215", "arm-125", "foot-strut", "cast-in-sleeve"];
    let (south, south_m) = (edge(plan, main, 0, 0), 0.85);
    let (west, north, court) = (edge(plan, main, 0, 5), edge(plan, main, 0, 4), edge(plan, main, 1, 0));
    let inner = edge(plan, main, 0, 2);
    let wanted = [
        ("Heron", rear, south, 4.5, south_m, "B-01"),
        ("Heron", long, south, 11.0, 1.0, "B-02"),
        ("Tern", rigid, south, 17.2, 0.7, "B-03"),
        ("Heron", rear, south, 26.0, south_m, "B-04"),
        ("Tern", tied, inner, 5.0, 0.85, "B-05"),
        ("Tern", footed, north, 9.0, 0.8, "B-06"),
        ("Heron", front, west, 8.0, 0.8, "B-07"),
        ("Heron", rear, court, 4.0, 0.7, "B-08"),
    ];
    let placed: Vec<PlacementId> = wanted
        .into_iter()
        .map(|(family, parts, edge, along_m, setback_m, tag)| {
            let chosen = make_up(plan, family, parts);
            place(plan, chosen, edge, along_m, setback_m, tag)
        })
        .collect();
    let slewed = PlacementPatch { drawn_slew_rad: Some(35.0_f64.to_radians()), ..PlacementPatch::default() };
    change(plan, &Change::SetPlacements(vec![placed[1]], slewed));
    placed
}

/// The same house on slabs whose concrete and bars are known, with its assessment.
pub fn sound_house() -> (Sample, Assessment) {
    let mut sample = courtyard_house();
    for roof in sample.plan.roofs.keys().copied().collect::<Vec<_>>() {
        let slab = Slab {
            thickness_m: 0.3,
            cylinder_strength_pa: Some(30e6),
            bars: SlabBars { axis_depth_m: Some(0.045), ratio: Some(0.004), ..SlabBars::default() },
            confirmed: true,
            ..Slab::default()
        };
        change(&mut sample.plan, &Change::SetRoof(roof, RoofPatch { slab: Some(slab), ..RoofPatch::default() }));
    }
    let assessment = assess(&sample.plan, &mut Memo::new());
    (sample, assessment)
}
