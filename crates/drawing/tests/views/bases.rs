//! Each kind of base in section and plan, held against the data of its family.

use gantline_drawing::legend::entries;
use gantline_drawing::{
    Drawing, Fill, Hatch, Layer, PlanViewOptions, Scale, SectionOptions, Shape, plan_view, section,
};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::change::{Change, RoofPatch, apply};
use gantline_plan::document::{NoDrillZone, Plan, Slab, SlabZone, ThingId};
use glam::DVec2;

use crate::read_back::{dimensions_mm, overlapping_texts};
use crate::sample::{assessed, edge, empty_plan, make_up, place, sound_house};

/// A roof of 12 × 8 m with a unit on this base in the middle of its south edge; its section and its plan.
fn drawn(family: &str, parts: [&str; 4]) -> (Drawing, Drawing) {
    let mut plan = empty_plan();
    let outline = [(0.0, 0.0), (12.0, 0.0), (12.0, 8.0), (0.0, 8.0)].map(DVec2::from).to_vec();
    let change = Change::AddRoof { name: "Roof".to_owned(), level_m: 10.0, outline };
    let applied = apply(&plan, &change).unwrap();
    plan = applied.plan;
    let roof = *plan.roofs.keys().next().unwrap();
    let chosen = make_up(&plan, family, parts);
    let south = edge(&plan, roof, 0, 0);
    let id = place(&mut plan, chosen, south, 6.0, 1.2, "B-01");
    let assessment = assess(&plan, &mut Memo::new());
    let scale = Scale::one_to(20.0);
    let cut = section(&plan, &assessment, id, &SectionOptions::at(scale)).unwrap();
    (cut, plan_view(&plan, &assessment, &PlanViewOptions::at(scale)))
}

const HERON: [&str; 3] = ["mast-190", "arm-115-rear", "rear-tie-long"];
const TERN: [&str; 3] = ["mast-170", "arm-100", ""];

fn with(parts: [&'static str; 3], base: &'static str) -> [&'static str; 4] {
    let [mast, arm, brace] = parts;
    [mast, arm, brace, base]
}

fn rings(drawing: &Drawing, layer: Layer) -> impl Iterator<Item = (&Vec<DVec2>, Fill)> {
    drawing.marks.iter().filter(move |mark| mark.layer == layer).filter_map(|mark| match &mark.shape {
        Shape::Area(area) => Some((&area.polygon.outer, area.fill)),
        Shape::Line(_) | Shape::Text(_) => None,
    })
}

/// Lowest point of all parts of the unit, m.
fn lowest_m(drawing: &Drawing) -> f64 {
    rings(drawing, Layer::Unit).flat_map(|(ring, _)| ring).map(|corner| corner.y).fold(f64::INFINITY, f64::min)
}

#[test]
fn anchors_reach_as_deep_as_their_embedment() {
    // Embedment, and below it the head of a cast-in bolt, 20 mm.
    let wanted = [
        ("Heron", with(HERON, "floor-socket"), 0.23),
        ("Heron", with(HERON, "flush-plate"), 0.19),
        ("Heron", with(HERON, "pedestal-socket"), 0.22 + 0.02),
        ("Tern", with(TERN, "cage-socket"), 0.22 + 0.02),
        ("Tern", with(TERN, "cast-in-sleeve"), 0.22),
        ("Tern", with(TERN, "plinth-socket"), 0.22 + 0.02),
    ];
    for (family, parts, depth_m) in wanted {
        let (cut, _) = drawn(family, parts);
        assert!((lowest_m(&cut) + depth_m).abs() < 1e-9, "{parts:?}: {}", lowest_m(&cut));
        assert_eq!(overlapping_texts(&cut), [], "{parts:?}");
    }
}

#[test]
fn a_plinth_stands_on_the_slab_and_raises_the_unit() {
    let (cut, _) = drawn("Tern", with(TERN, "plinth-socket"));
    let concrete = |top_m: f64| {
        let found = rings(&cut, Layer::Ground).filter(|(_, fill)| *fill == Fill::Hatch(Hatch::Concrete));
        found.map(|(ring, _)| ring.clone()).find(|ring| ring.iter().any(|corner| (corner.y - top_m).abs() < 1e-9))
    };
    // 1.10 m wide and 0.35 m high, its top at the underside of the plate; the slab begins where it ends.
    let plinth = concrete(0.0).unwrap();
    let width = |ring: &[DVec2]| {
        let x = ring.iter().map(|corner| corner.x);
        x.clone().fold(f64::NEG_INFINITY, f64::max) - x.fold(f64::INFINITY, f64::min)
    };
    assert!((width(&plinth) - 1.1).abs() < 1e-9, "{plinth:?}");
    assert!(plinth.iter().any(|corner| (corner.y + 0.35).abs() < 1e-9), "{plinth:?}");
    assert!(concrete(-0.35).is_some());
    assert!(dimensions_mm(&cut).contains(&350));
}

#[test]
fn a_wall_socket_hangs_on_the_face_before_it() {
    let (cut, _) = drawn("Heron", ["mast-145", "arm-085-rear", "rear-tie", "wall-socket"]);
    // Plate 25 mm thick whose face lies 0.15 m before the mast, 0.20 to 0.70 m over the slab.
    let plate = [(0.125, 0.2), (0.15, 0.2), (0.15, 0.7), (0.125, 0.7)].map(DVec2::from);
    let is_plate = |ring: &Vec<DVec2>| ring.iter().zip(&plate).all(|(corner, at)| corner.distance(*at) < 1e-9);
    assert!(rings(&cut, Layer::Unit).any(|(ring, _)| is_plate(ring)));
    // Nothing of it is set into the slab.
    assert!(lowest_m(&cut) > -0.1, "{}", lowest_m(&cut));
}

#[test]
fn a_foot_stands_on_its_own_anchors() {
    let (cut, plan) = drawn("Tern", ["mast-170", "arm-125", "foot-strut", "cage-socket"]);
    // Foot 1.35 m behind the mast; its anchors 0.11 m before and behind it, embedded 0.16 m.
    for x in [-1.46, -1.24] {
        let rod = rings(&cut, Layer::Unit).any(|(ring, _)| {
            let middle = ring.iter().sum::<DVec2>() / ring.len() as f64;
            (middle.x - x).abs() < 1e-9 && ring.iter().any(|corner| (corner.y + 0.16).abs() < 1e-9)
        });
        assert!(rod, "an anchor at {x}");
    }
    // In plan a square of 0.30 m behind the unit at (6, 1.2): 1.35 m farther in.
    let plate = rings(&plan, Layer::Unit).any(|(ring, _)| {
        ring.len() == 4
            && ring.iter().all(|corner| (*corner - DVec2::new(6.0, 2.55)).abs().distance(DVec2::splat(0.15)) < 1e-9)
    });
    assert!(plate);
}

#[test]
fn every_kind_of_base_looks_different() {
    let mut seen: Vec<(Drawing, Drawing)> = Vec::new();
    let heron =
        ["floor-socket", "flush-plate", "pedestal-socket", "wall-socket"].map(|base| ("Heron", with(HERON, base)));
    let tern =
        ["cast-in-sleeve", "cage-socket", "plinth-socket", "steel-socket"].map(|base| ("Tern", with(TERN, base)));
    for (family, parts) in heron.into_iter().chain(tern) {
        let pair = drawn(family, parts);
        for known in &seen {
            assert_ne!(known.0, pair.0, "{parts:?} in section");
            assert_ne!(known.1, pair.1, "{parts:?} in plan");
        }
        seen.push(pair);
    }
}

/// Fills of the grounds of bases in plan.
fn has(drawing: &Drawing, hatch: Hatch) -> bool {
    rings(drawing, Layer::Unit).any(|(_, fill)| fill == Fill::Hatch(hatch))
}

#[test]
fn a_base_used_too_much_is_hatched_and_its_tag_says_how_much() {
    // The sound house in concrete too weak for it.
    let (mut sample, _) = sound_house();
    for (roof, found) in sample.plan.roofs.clone() {
        let slab = Slab { cylinder_strength_pa: Some(12e6), thickness_m: 0.24, ..found.slab };
        let patch = RoofPatch { slab: Some(slab), ..RoofPatch::default() };
        sample.plan = apply(&sample.plan, &Change::SetRoof(roof, patch)).unwrap().plan;
    }
    let assessment = assess(&sample.plan, &mut Memo::new());
    let options = PlanViewOptions::at(Scale::one_to(50.0));
    let over = assessment.units.iter().filter_map(|(id, unit)| Some((*id, unit.base.as_ref()?)));
    let over: Vec<_> = over.filter(|(_, base)| base.utilization().is_some_and(|share| share > 1.0)).collect();
    let drawing = plan_view(&sample.plan, &assessment, &options);
    assert!(!over.is_empty() && has(&drawing, Hatch::BaseOver));
    for (id, base) in over {
        let words = base.used_words();
        let says = drawing.marks.iter().any(|mark| {
            mark.about == Some(ThingId::Placement(id))
                && matches!(&mark.shape, Shape::Text(text) if text.words == words)
        });
        assert!(says, "{id}: {words}");
    }
}

#[test]
fn a_base_that_could_not_be_checked_is_never_plain() {
    // Nothing is known of the concrete of the sample's slab.
    let (sample, assessment) = assessed();
    assert!(assessment.units.values().all(|unit| unit.base.as_ref().is_none_or(|base| !base.holds())));
    let drawing = plan_view(&sample.plan, assessment, &PlanViewOptions::at(Scale::one_to(50.0)));
    assert!(has(&drawing, Hatch::BaseUnchecked));
}

fn zoned(mut plan: Plan) -> Plan {
    let roof = *plan.roofs.keys().next().unwrap();
    let mut slab = plan.roofs[&roof].slab.clone();
    let outline = |x: f64| [(x, 20.0), (x + 4.0, 20.0), (x + 4.0, 24.0), (x, 24.0)].map(DVec2::from).to_vec();
    slab.zones = vec![SlabZone { outline: outline(7.0), thickness_m: 0.16 }];
    slab.no_drill = vec![NoDrillZone { outline: outline(14.0), reason: "post-tensioned".to_owned() }];
    plan = apply(&plan, &Change::SetRoof(roof, RoofPatch { slab: Some(slab), ..RoofPatch::default() })).unwrap().plan;
    plan
}

#[test]
fn zones_of_the_slab_are_hatched_named_and_in_the_legend() {
    let (sample, _) = assessed();
    let plan = zoned(sample.plan.clone());
    let drawing = plan_view(&plan, &assess(&plan, &mut Memo::new()), &PlanViewOptions::at(Scale::one_to(100.0)));
    for words in ["slab 0.160 m", "no drilling: post-tensioned"] {
        assert!(drawing.words().any(|found| found == words), "{words}");
    }
    let legend = entries(&drawing);
    assert!(legend.contains(&Hatch::SlabZone) && legend.contains(&Hatch::NoDrill), "{legend:?}");
}

#[test]
fn a_thinner_part_of_the_slab_is_cut_as_thin_as_it_is() {
    let (sample, _) = assessed();
    let mut plan = sample.plan.clone();
    let roof = *plan.roofs.keys().next().unwrap();
    let mut slab = plan.roofs[&roof].slab.clone();
    // Along the south edge round the first unit at (4.5, 0.85), from the edge to 1.3 m behind it: 0.45 m behind the mast.
    let outline = [(3.0, 0.0), (6.0, 0.0), (6.0, 1.3), (3.0, 1.3)].map(DVec2::from).to_vec();
    slab.zones = vec![SlabZone { outline, thickness_m: 0.16 }];
    plan = apply(&plan, &Change::SetRoof(roof, RoofPatch { slab: Some(slab), ..RoofPatch::default() })).unwrap().plan;
    let assessment = assess(&plan, &mut Memo::new());
    let cut = section(&plan, &assessment, sample.placed[0], &SectionOptions::at(Scale::one_to(25.0))).unwrap();
    let concrete = rings(&cut, Layer::Ground).find(|(_, fill)| *fill == Fill::Hatch(Hatch::Concrete)).unwrap().0;
    let steps = |x: f64, y: f64| concrete.iter().any(|corner| corner.distance(DVec2::new(x, y)) < 1e-9);
    assert!(steps(-0.45, -0.3) && steps(-0.45, -0.16) && steps(0.85, -0.16), "{concrete:?}");
    assert!(dimensions_mm(&cut).contains(&160) && !dimensions_mm(&cut).contains(&300));
}
