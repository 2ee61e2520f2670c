//! A building in the shape of an L around a courtyard, with high and low parapets, a plant room and a lower roof. It is
//! drawn with mistakes on purpose: every rule of the program finds something in it.

use gantline_plan::basis::{
    CaseId, CaseLoad, Combined, LoadBasis, LoadCase, LoadLevel, MemberCode, NeighborRule, Sourced, Tension, Term,
};
use gantline_plan::catalog::SlewStops;
use gantline_plan::change::{Change, EdgePatch, PlacementPatch, RoofPatch};
use gantline_plan::document::{
    FacadeFoot, FamilyId, NoDrillZone, Plan, RoofId, Slab, SlabBars, SlabZone, Standing, Tag, Title,
};
use glam::DVec2;

use super::drafting_table::{DraftingTable, Drawn, Parts, corners, first_basis};
use super::mistaken_family::mistaken;

/// The usual setback of the scenario, m.
const SETBACK_M: f64 = 0.7;

/// The plan.
pub fn plan() -> Drawn<Plan> {
    let title = Title {
        job: "House around a courtyard (invented scenario)".to_owned(),
        address: "Nowhere Lane 2".to_owned(),
        author: "Gantline demonstration".to_owned(),
        revision: "draft".to_owned(),
        date: String::new(),
        remark: "Invented scenario with invented families and mistakes made on purpose: not a plan of any building."
            .to_owned(),
    };
    let mut table = DraftingTable::new(title, basis()?)?;
    let (main, low) = building(&mut table)?;
    let heron = table.plan().families.get(&table.heron).ok_or("the first family")?.as_ref().clone();
    table.change(&Change::AddFamily(Box::new(mistaken(&heron)?)))?;
    let magpie = *table.plan().families.keys().next_back().ok_or("the third family")?;
    units_as_they_should_be(&mut table, main)?;
    places_gone_wrong(&mut table, main, low)?;
    parts_gone_wrong(&mut table, main, magpie)?;
    Ok(table.plan().clone())
}

/// The first basis of the list, with settings that go wrong on purpose.
fn basis() -> Drawn<LoadBasis> {
    let setting = "invented for this scenario";
    let mut basis = first_basis()?;
    basis.cone.half_angle_rad = Sourced::default_from(15.0_f64.to_radians(), setting);
    basis.goes_with = Some(MemberCode::Aisc360);
    basis.rules.neighbors = NeighborRule::Any;
    basis.rules.longest_drop_m = Some(Sourced::default_from(22.5, setting));
    let case = CaseId("four_times".to_owned());
    let tension = Tension::MultipleOfRated { times: Sourced::default_from(4.0, setting) };
    let load = CaseLoad::Rope { persons: 1, tension };
    let name = "Four times the rated load".to_owned();
    basis.cases.insert(case.clone(), LoadCase { name: name.clone(), load });
    let terms = vec![Term { case, factor: 1.0 }];
    basis.combinations.push(Combined { name, level: LoadLevel::MultipleOfRated, terms });
    Ok(basis)
}

/// The main roof with its courtyard, and the lower one in the corner of the L.
fn building(table: &mut DraftingTable) -> Drawn<(RoofId, RoofId)> {
    let outline =
        [(0.0, 0.0), (40.0, 0.0), (40.0, 16.0), (32.0, 16.0), (18.0, 16.0), (18.0, 26.0), (18.0, 34.0), (0.0, 34.0)];
    let main = table.roof("Main roof", 21.0, 0.12, &outline)?;
    table.hole(main, &[(5.0, 20.0), (13.0, 20.0), (13.0, 28.0), (5.0, 28.0)])?;
    let low = table.roof("Low roof", 12.0, 0.12, &[(18.0, 16.0), (32.0, 16.0), (32.0, 26.0), (18.0, 26.0)])?;
    let height = |height_m| EdgePatch { parapet_height_m: Some(height_m), ..EdgePatch::default() };
    let west = table.edge_at(main, (0.0, 17.0))?;
    table.set_edges(&[west], height(1.75))?;
    let south = table.edge_at(main, (20.0, 0.0))?;
    table.set_edges(&[south], height(0.45))?;
    let on_low = EdgePatch { ends_at: Some(FacadeFoot::Roof(low)), ..EdgePatch::default() };
    let over_low = [table.edge_at(main, (25.0, 16.0))?, table.edge_at(main, (18.0, 20.0))?];
    table.set_edges(&over_low, on_low)?;
    let at_walls = [table.edge_at(low, (25.0, 16.0))?, table.edge_at(low, (18.0, 20.0))?];
    table.set_edges(&at_walls, EdgePatch { needs_access: Some(false), ..height(0.0) })?;
    let step = table.edge_at(main, (36.0, 16.0))?;
    let above_itself = EdgePatch { ends_at: Some(FacadeFoot::LevelM(30.0)), ..EdgePatch::default() };
    table.set_edges(&[step], above_itself)?;
    table.obstacle(main, "Plant room", &[(23.0, 5.5), (31.0, 5.5), (31.0, 11.5), (23.0, 11.5)], 0.0, 3.4)?;
    Ok((main, low))
}

fn units_as_they_should_be(table: &mut DraftingTable, main: RoofId) -> Drawn<()> {
    let rear = Parts(table.heron, "mast-190", "arm-115-rear", Some("rear-tie-long"), "floor-socket").make_up();
    let north = table.edge_at(main, (9.0, 34.0))?;
    for along_m in [2.2, 5.1, 7.9] {
        table.unit(north, along_m, SETBACK_M, rear.clone())?;
    }
    let tall = Parts(table.heron, "mast-235", "arm-085-rear", Some("rear-tie"), "flush-plate").make_up();
    let court_south = table.edge_at(main, (9.0, 20.0))?;
    for along_m in [1.8, 6.2] {
        table.unit(court_south, along_m, 0.55, tall.clone())?;
    }
    let steel = Parts(table.tern, "mast-170", "arm-100", None, "cage-socket").make_up();
    let court_east = table.edge_at(main, (13.0, 24.0))?;
    table.unit(court_east, 2.4, 0.65, steel)?;
    let tied = Parts(table.tern, "mast-170", "arm-125-pinned", Some("base-tie"), "cage-socket").make_up();
    table.unit(court_east, 5.9, 0.75, tied)?;
    Ok(())
}

fn places_gone_wrong(table: &mut DraftingTable, main: RoofId, low: RoofId) -> Drawn<()> {
    let rear = Parts(table.heron, "mast-190", "arm-115-rear", Some("rear-tie-long"), "floor-socket").make_up();
    let south = table.edge_at(main, (20.0, 0.0))?;
    let east = table.edge_at(main, (40.0, 8.0))?;
    let north = table.edge_at(main, (9.0, 34.0))?;
    let west = table.edge_at(main, (0.0, 17.0))?;
    // Behind a low parapet; over the edge; too far back; past the end of its edge.
    table.unit(south, 6.0, SETBACK_M, rear.clone())?;
    table.unit(south, 11.0, 0.1, rear.clone())?;
    table.unit(south, 15.0, 3.0, rear.clone())?;
    table.unit(east, 16.4, SETBACK_M, rear.clone())?;
    // In a cooling unit, and in front of another.
    table.obstacle(main, "Cooling unit", &[(19.4, 0.4), (20.6, 0.4), (20.6, 1.2), (19.4, 1.2)], 0.0, 1.1)?;
    table.unit(south, 20.0, SETBACK_M, rear.clone())?;
    table.obstacle(main, "Tall cooling unit", &[(27.3, 1.2), (28.7, 1.2), (28.7, 2.4), (27.3, 2.4)], 0.0, 2.2)?;
    table.unit(south, 28.0, SETBACK_M, rear.clone())?;
    // Between ducts, without room to stand or to lay the mast down.
    for outline in [
        [(37.9, 6.0), (38.6, 6.0), (38.6, 10.0), (37.9, 10.0)],
        [(38.6, 6.6), (39.7, 6.6), (39.7, 7.4), (38.6, 7.4)],
        [(38.6, 8.6), (39.7, 8.6), (39.7, 9.4), (38.6, 9.4)],
    ] {
        table.obstacle(main, "Duct", &outline, 0.0, 0.9)?;
    }
    table.unit(east, 8.0, SETBACK_M, rear.clone())?;
    // Under a high parapet with a front strut.
    let front = Parts(table.heron, "mast-145", "arm-115-front", Some("front-strut"), "floor-socket").make_up();
    table.unit(west, 8.0, 0.75, front)?;
    // On the low roof, beside the wall of the high one.
    let low_north = table.edge_at(low, (25.0, 26.0))?;
    table.unit(low_north, 13.4, SETBACK_M, rear.clone())?;
    // Too near to each other: the strut of one comes down where the other stands.
    let strutted = Parts(table.tern, "mast-170", "arm-125", Some("foot-strut"), "cast-in-sleeve").make_up();
    table.unit(west, 26.0, 0.75, strutted)?;
    let stands =
        Standing::Free { roof: main, at: DVec2::new(1.85, 8.0), outward_rad: std::f64::consts::PI, serves: vec![] };
    table.place(rear.clone(), stands, None)?;
    // Stops that leave no way from inboard.
    let mut stopped = rear;
    stopped.slew_stops = SlewStops::Between { from_rad: -0.6, to_rad: 0.6 };
    table.unit(north, 15.8, SETBACK_M, stopped)?;
    Ok(())
}

fn parts_gone_wrong(table: &mut DraftingTable, main: RoofId, magpie: FamilyId) -> Drawn<()> {
    let court_west = table.edge_at(main, (5.0, 24.0))?;
    let court_north = table.edge_at(main, (9.0, 28.0))?;
    let east = table.edge_at(main, (40.0, 8.0))?;
    // A mast that the family does not have; a combination that it does not list, with too tall a mast for its strut.
    table.unit(east, 2.0, SETBACK_M, Parts(magpie, "mast-300", "arm-085-rear", None, "floor-socket").make_up())?;
    let too_tall = Parts(table.heron, "mast-190", "arm-115-front", Some("front-strut"), "floor-socket").make_up();
    table.unit(east, 4.5, SETBACK_M, too_tall)?;
    // A base that does not take the mast, with a weak eye and a rating below one person's weight.
    let shy = Parts(magpie, "mast-190", "arm-085-rear", Some("rear-tie"), "floor-socket").make_up();
    table.unit(court_west, 2.0, 0.55, shy)?;
    // A rating that the parts don't hold, and an arm too long for its mast.
    let boastful = Parts(magpie, "mast-145", "arm-115-rear", Some("rear-tie-long"), "flush-plate").make_up();
    table.unit(court_west, 5.8, SETBACK_M, boastful)?;
    let long = Parts(table.heron, "mast-235", "arm-145-rear", Some("rear-tie-long"), "floor-socket").make_up();
    let limp = table.unit(court_north, 2.0, 0.9, long)?;
    // A strut that only pulls under an arm that nothing holds down.
    let slack = Parts(magpie, "mast-145", "arm-115-front", Some("front-strut"), "floor-socket").make_up();
    table.unit(court_north, 6.0, 0.75, slack)?;
    // A sleeve that water stays in; a wall base whose plate does not touch its parapet.
    let north = table.edge_at(main, (9.0, 34.0))?;
    let wet = Parts(magpie, "mast-190", "arm-085-rear", Some("rear-tie"), "wet-sleeve").make_up();
    table.unit(north, 11.0, 0.6, wet)?;
    // Bolts in steel too thin for what pulls them.
    let on_steel = Parts(magpie, "mast-190", "arm-085-rear", Some("rear-tie"), "steel-thin").make_up();
    table.unit(north, 8.6, 0.6, on_steel)?;
    let on_wall = Parts(table.heron, "mast-145", "arm-085-rear", Some("rear-tie"), "wall-socket").make_up();
    table.unit(north, 13.2, 0.42, on_wall)?;
    // Tendons under a unit on post-installed anchors, and a thin strip of slab.
    let outline = corners(&[(34.0, 3.0), (40.0, 3.0), (40.0, 6.0), (34.0, 6.0)]);
    let zones = vec![SlabZone { outline, thickness_m: 0.16 }];
    let outline = corners(&[(34.0, 7.0), (40.0, 7.0), (40.0, 9.0), (34.0, 9.0)]);
    let no_drill = vec![NoDrillZone { outline, reason: "post-tensioned".to_owned() }];
    let bars = SlabBars { axis_depth_m: Some(0.04), ..SlabBars::default() };
    let slab = Slab { zones, no_drill, bars, cylinder_strength_pa: Some(25e6), ..Slab::default() };
    table.change(&Change::SetRoof(main, RoofPatch { slab: Some(slab), ..RoofPatch::default() }))?;
    // A tag that another unit has already.
    let again = PlacementPatch { tag: Some(Tag("B-01".to_owned())), ..PlacementPatch::default() };
    table.change(&Change::SetPlacements(vec![limp], again))?;
    Ok(())
}
