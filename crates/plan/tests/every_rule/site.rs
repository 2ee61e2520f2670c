//! A roof with one unit on its south edge, made by changes only; each case alters what it is about.

use gantline_plan::basis::{CaseId, CaseLoad, Combined, LoadBasis, LoadCase, LoadLevel, Sourced, Tension, Term};
use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::catalog::{
    Arm, Base, BaseKind, Bearing, Brace, BraceAction, BraceKind, Combination, Family, Head, MakeUp, Mast, Retention,
    SectionShape, SlewHold, SlewStops, Tube,
};
use gantline_plan::change::{Change, EdgePatch, History, RoofPatch};
use gantline_plan::document::{EdgeEnd, EdgeId, PartId, PlacementId, Plan, RoofId, Standing, Station, ThingId};
use glam::DVec2;

/// What a plan is made from.
pub struct Site {
    /// The family in use.
    pub family: Family,
    /// The basis.
    pub basis: LoadBasis,
    /// The design code.
    pub code: DesignCode,
    /// Length of the south edge and depth of the roof.
    pub size_m: (f64, f64),
    /// Parapets all around.
    pub parapet_m: f64,
    /// Finish over the slab.
    pub build_up_m: f64,
    /// Mast, arm, brace, base.
    pub parts: [&'static str; 4],
    /// The unit's place along the south edge.
    pub along_m: f64,
    /// Its setback.
    pub setback_m: f64,
    /// Its slew stops.
    pub slew_stops: SlewStops,
}

/// A plan under way, with the things made so far.
pub struct Built {
    /// Its history.
    pub history: History,
    /// The roof.
    pub roof: RoofId,
    /// South, east, north, west.
    pub edges: Vec<EdgeId>,
    /// The unit's parts.
    pub make_up: MakeUp,
    /// The unit.
    pub unit: PlacementId,
}

/// Level of the roof.
pub const LEVEL_M: f64 = 24.0;

impl Site {
    /// Parts of the demonstration family: mast 1.90 m, arm 1.15 m with its axis 1.90 m up and 160 mm deep, rear tie. The tip
    /// hangs 0.45 m outside the facade.
    pub fn with_rear_tie() -> Self {
        Self {
            family: heron(),
            basis: vertical(1000.0),
            code: DesignCode::eurocode(),
            size_m: (30.0, 20.0),
            parapet_m: 1.10,
            build_up_m: 0.0,
            parts: ["mast-190", "arm-115-rear", "rear-tie-long", "floor-socket"],
            along_m: 15.0,
            setback_m: 0.7,
            slew_stops: SlewStops::WholeTurn,
        }
    }

    /// Mast 1.45 m with the front strut of the demonstration family.
    pub fn with_front_strut() -> Self {
        let parts = ["mast-145", "arm-115-front", "front-strut", "floor-socket"];
        Self { parts, setback_m: 0.75, ..Self::with_rear_tie() }
    }

    /// Weightless parts whose answers are closed forms, and a rope that only hangs straight down.
    pub fn weightless(family: Family, pull_n: f64) -> Self {
        let brace = if family.braces.is_empty() { "" } else { "brace" };
        let parts = ["mast", "arm", brace, "base"];
        Self { family, basis: vertical(pull_n), parts, ..Self::with_rear_tie() }
    }

    /// The plan with its unit.
    pub fn build(&self) -> Built {
        let mut history = History::new(Plan::empty(presets().unwrap().remove(0).basis, DesignCode::aisc()));
        let mut change = |change: Change| history.change("build", &change).unwrap();
        change(Change::SetBasis(Box::new(self.basis.clone())));
        change(Change::SetCode(self.code.clone()));
        change(Change::AddFamily(Box::new(self.family.clone())));
        let made = change(Change::AddRoof {
            name: "Roof".into(),
            level_m: LEVEL_M,
            outline: rectangle(0.0, 0.0, self.size_m.0, self.size_m.1),
        });
        let ThingId::Roof(roof) = made.made[0] else { panic!("a roof was made") };
        let patch = RoofPatch { build_up_m: Some(self.build_up_m), ..RoofPatch::default() };
        change(Change::SetRoof(roof, patch));
        let edges: Vec<EdgeId> = history.plan().edges().map(|place| place.edge().id).collect();
        let patch = EdgePatch { parapet_height_m: Some(self.parapet_m), ..EdgePatch::default() };
        history.change("parapets", &Change::SetEdges(edges.clone(), patch)).unwrap();
        let family = *history.plan().families.keys().next().unwrap();
        let [mast, arm, brace, base] = self.parts;
        let make_up = MakeUp {
            family,
            mast: PartId::new(mast),
            arm: PartId::new(arm),
            brace: (!brace.is_empty()).then(|| PartId::new(brace)),
            base: PartId::new(base),
            fixing: None,
            slew_stops: self.slew_stops,
            drawn_slew_rad: 0.0,
            foot_bearing_rad: 0.0,
            foot_level_m: 0.0,
        };
        let mut built = Built { history, roof, edges, make_up, unit: PlacementId::from_number(0) };
        built.unit = built.place(self.along_m, self.setback_m);
        built
    }

    /// The plan with its unit and nothing more.
    pub fn plan(&self) -> Plan {
        self.build().plan()
    }
}

impl Built {
    /// Makes a change.
    pub fn change(&mut self, change: &Change) -> Vec<ThingId> {
        self.history.change("case", change).unwrap().made
    }

    /// Places a unit of the same parts on the south edge.
    pub fn place(&mut self, along_m: f64, setback_m: f64) -> PlacementId {
        let station = Station { from: EdgeEnd::Start, distance_m: along_m };
        let stands = Standing::OnEdge { edge: self.edges[0], station, setback_m, turn_rad: 0.0 };
        let made = self.change(&Change::Place { make_up: self.make_up.clone(), stands, tag: None });
        let ThingId::Placement(id) = made[0] else { panic!("a unit was placed") };
        id
    }

    /// Alters the south edge, or all four.
    pub fn patch(&mut self, edges: &[usize], patch: EdgePatch) {
        let edges = edges.iter().map(|&index| self.edges[index]).collect();
        self.change(&Change::SetEdges(edges, patch));
    }

    /// Another roof.
    pub fn add_roof(&mut self, level_m: f64, outline: Vec<DVec2>) -> RoofId {
        let made = self.change(&Change::AddRoof { name: "Other".into(), level_m, outline });
        let ThingId::Roof(roof) = made[0] else { panic!("a roof was made") };
        let edges: Vec<EdgeId> =
            self.history.plan().edges().filter(|place| place.roof_id == roof).map(|place| place.edge().id).collect();
        let patch = EdgePatch { parapet_height_m: Some(0.0), needs_access: Some(false), ..EdgePatch::default() };
        self.change(&Change::SetEdges(edges, patch));
        roof
    }

    /// The plan.
    pub fn plan(&self) -> Plan {
        Plan::clone(self.history.plan())
    }
}

/// Corners of a rectangle.
pub fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<DVec2> {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|(x, y)| DVec2::new(x, y)).to_vec()
}

/// The demonstration family, with a smaller floor socket for the hand values of the cases.
pub fn heron() -> Family {
    let mut family: Family = serde_json::from_str(include_str!("../../../../assets/families/heron.json")).unwrap();
    let base = family.bases.get_mut(&PartId::new("floor-socket")).unwrap();
    base.plate_m = Base::square_plate(0.36);
    base.least_slab_m = Some(0.24);
    let anchors = base.anchors.as_mut().unwrap();
    anchors.at_m = [(0.14, -0.14), (0.14, 0.14), (-0.14, 0.14), (-0.14, -0.14)].map(DVec2::from).to_vec();
    anchors.embedment_m = 0.2;
    family
}

/// A value that someone set for this test.
pub fn set<T>(value: T) -> Sourced<T> {
    Sourced::default_from(value, "this test")
}

/// The working rules of the first basis, with one rope that hangs straight down and pulls this hard at the design level.
pub fn vertical(pull_n: f64) -> LoadBasis {
    pulling(Tension::Ultimate { anchor_load_n: set(pull_n) }, LoadLevel::Ultimate)
}

/// The same with any tension.
pub fn pulling(tension: Tension, level: LoadLevel) -> LoadBasis {
    let mut basis = presets().unwrap().remove(0).basis;
    basis.cone.half_angle_rad = set(0.0);
    basis.cases.clear();
    add_case(&mut basis, "pull", CaseLoad::Rope { persons: 1, tension });
    basis.combinations = vec![alone("pull", level)];
    basis
}

/// Adds a case to a basis.
pub fn add_case(basis: &mut LoadBasis, name: &str, load: CaseLoad) {
    basis.cases.insert(CaseId(name.into()), LoadCase { name: name.into(), load });
}

/// A combination of one case.
pub fn alone(case: &str, level: LoadLevel) -> Combined {
    Combined { name: case.into(), level, terms: vec![Term { case: CaseId(case.into()), factor: 1.0 }] }
}

/// Weightless steel tubes: a mast of 300 × 20 mm so stiff that nothing buckles, an arm of 100 × 5 mm rigid on it, outreach 1 m.
pub fn rigid_arm() -> Family {
    let tube = |diameter_m: f64, wall_m: f64| Tube {
        section: SectionShape::RoundTube { diameter_m, wall_m },
        material: "steel".into(),
        welds: Vec::new(),
        pin_holes: None,
    };
    let pin = Retention::Pin { resistance_n: Some(1.0e6) };
    let arm = Arm {
        name: "Arm".into(),
        outreach_m: 1.0,
        tail_m: 0.0,
        tube: tube(0.1, 0.005),
        mass_kg: 0.0,
        head: Head::Rigid,
        retention: pin,
        points: Vec::new(),
    };
    let mast = Mast { name: "Mast".into(), height_m: 1.9, tube: tube(0.3, 0.02), mass_kg: 0.0, retention: pin };
    let base = Base {
        name: "Base".into(),
        kind: BaseKind::SurfaceSocket,
        plate_m: Base::square_plate(0.36),
        plate_thickness_m: 0.025,
        plate_material: None,
        anchors: None,
        bearing: Bearing::OnConcrete,
        least_slab_m: None,
        socket_top_m: 0.42,
        engaged_m: 0.38,
        socket_diameter_m: 0.34,
        collar_m: None,
        play_m: 0.0,
        plumb_tolerance_rad: 0.0,
        mass_kg: 0.0,
        slew_hold: SlewHold::Clamp { rated_torque_nm: 1.0e6 },
        eye: None,
        takes: Vec::new(),
    };
    let id = PartId::new;
    let heron = heron();
    Family {
        masts: [(id("mast"), mast)].into(),
        arms: [(id("arm"), arm)].into(),
        braces: [].into(),
        bases: [(id("base"), base)].into(),
        combinations: vec![Combination { mast: id("mast"), arm: id("arm"), brace: None, rating: None }],
        front_brace_tallest_mast_m: None,
        ..heron
    }
}

/// The same with an arm of 1.15 m pinned on the mast and a weightless brace.
pub fn pinned_arm(kind: BraceKind, action: BraceAction) -> Family {
    let mut family = rigid_arm();
    let arm = family.arms.values_mut().next().unwrap();
    arm.head = Head::Pinned;
    arm.outreach_m = 1.15;
    arm.tail_m = if matches!(kind, BraceKind::Front { .. }) { 0.0 } else { 0.75 };
    let brace = Brace {
        name: "Brace".into(),
        kind,
        tube: Tube { section: SectionShape::RoundTube { diameter_m: 0.07, wall_m: 0.005 }, ..arm.tube.clone() },
        mass_kg: 0.0,
        action,
        retention: Retention::Pin { resistance_n: Some(1.0e6) },
        foot: None,
    };
    family.braces = [(PartId::new("brace"), brace)].into();
    family.combinations[0].brace = Some(PartId::new("brace"));
    family
}
