//! What is missing is said: no code stays silent, and nothing passes for want of data.

use gantline_plan::assess::{Assessment, Code, Memo, Outcome, Severity, assess};
use gantline_plan::basis::{CaseLoad, DesignCode, LoadLevel, Tension};
use gantline_plan::catalog::{Base, Eye, FixingKind, Rating};
use gantline_plan::change::{Change, RoofPatch};
use gantline_plan::document::{NoDrillZone, PartId, Slab};

use crate::site::{Site, add_case, alone, pulling, rigid_arm, set};

/// Codes that have nothing to look at without the unit's parts.
const OF_PARTS: [Code; 39] = [
    Code::CombinationIsListed,
    Code::BaseTakesMast,
    Code::FrontBraceMastHeight,
    Code::BaseOnRoof,
    Code::BaseClearOfObstacles,
    Code::ServesFacade,
    Code::ArmClearsParapet,
    Code::ArmClearsObstacle,
    Code::ArmClearsHigherRoof,
    Code::ArmClearsUnit,
    Code::BraceClearsParapet,
    Code::BraceClearsObstacle,
    Code::BraceClearsHigherRoof,
    Code::BraceClearsUnit,
    Code::WayOutFromInboard,
    Code::StandingPlaceFree,
    Code::ErectionStripInboard,
    Code::GuardNearEdge,
    Code::DropLength,
    Code::CombinationComputed,
    Code::MemberUtilization,
    Code::RatingCoversLoad,
    Code::RatingSupported,
    Code::BraceStaysPulled,
    Code::JointRetention,
    Code::SlewHold,
    Code::EyeHoldsTether,
    Code::SecondOrder,
    Code::TipDeflection,
    Code::MastInSocket,
    Code::PartMass,
    Code::BaseFitsBuildUp,
    Code::SlabThickEnough,
    Code::DrillingAllowed,
    Code::SleeveKeepsWaterOut,
    Code::WallTakesBase,
    Code::HoldDownPins,
    Code::ProofLoad,
    Code::SlabDataConfirmed,
];

fn silent(assessment: &Assessment) -> Vec<&'static str> {
    let spoken = |code: Code| assessment.checks().any(|check| check.code == code);
    Code::ALL.into_iter().filter(|&code| !spoken(code)).map(Code::name).collect()
}

fn assert_not_checked(assessment: &Assessment, codes: &[Code]) {
    for &code in codes {
        let open = |outcome: &Outcome| matches!(outcome, Outcome::NotChecked(_));
        let mut here = assessment.checks().filter(|check| check.code == code);
        assert!(here.all(|check| open(&check.outcome)), "{} is not left open", code.name());
    }
}

#[test]
fn no_code_is_silent_about_a_whole_plan() {
    let assessment = assess(&Site::with_rear_tie().plan(), &mut Memo::new());
    assert_eq!(silent(&assessment), Vec::<&str>::new());
}

#[test]
fn without_a_part_every_rule_about_the_unit_says_what_is_missing() {
    let mut site = Site::with_rear_tie();
    site.family.masts.remove(&PartId::new("mast-190"));
    let assessment = assess(&site.plan(), &mut Memo::new());
    assert_eq!(silent(&assessment), Vec::<&str>::new());
    assert_not_checked(&assessment, &OF_PARTS);
}

#[test]
fn without_a_combination_nothing_of_strength_passes() {
    let mut site = Site::with_rear_tie();
    site.basis.combinations.clear();
    let assessment = assess(&site.plan(), &mut Memo::new());
    assert_eq!(silent(&assessment), Vec::<&str>::new());
    let of_strength = [
        Code::CombinationComputed,
        Code::MemberUtilization,
        Code::JointRetention,
        Code::SlewHold,
        Code::SecondOrder,
        Code::TipDeflection,
        Code::MastInSocket,
    ];
    assert_not_checked(&assessment, &of_strength);
}

#[test]
fn without_usable_clearances_no_clear_zone_passes() {
    for (height_m, around_m) in [(-0.1, 0.1), (0.1, f64::NAN)] {
        let mut site = Site::with_rear_tie();
        site.basis.rules.clear.height_m = set(height_m);
        site.basis.rules.clear.around_m = set(around_m);
        let assessment = assess(&site.plan(), &mut Memo::new());
        assert_not_checked(&assessment, &OF_PARTS[6..15]);
    }
}

#[test]
fn a_rating_for_one_person_says_nothing_about_two() {
    let mut family = rigid_arm();
    family.combinations[0].rating = Some(Rating { rated_n: 5e3, persons: 1, declared_by: "this test".into() });
    let service = |mass_kg: f64| Tension::Service { mass_kg: set(mass_kg), dynamic: set(1.0), load_factor: set(1.0) };
    let mut site = Site::weightless(family, 0.0);
    site.basis = pulling(service(130.0), LoadLevel::Ultimate);
    add_case(&mut site.basis, "rescue", CaseLoad::Rope { persons: 2, tension: service(230.0) });
    let assessment = assess(&site.plan(), &mut Memo::new());
    let outcomes: Vec<&Outcome> =
        assessment.checks().filter(|check| check.code == Code::RatingCoversLoad).map(|check| &check.outcome).collect();
    assert!(matches!(outcomes[..], [Outcome::Meets, Outcome::NotChecked(_)]), "{outcomes:?}");
}

#[test]
fn a_tether_as_a_multiple_of_a_rating_that_nobody_declared_is_left_open() {
    let mut family = rigid_arm();
    family.bases.values_mut().next().unwrap().eye = Some(Eye { height_m: 0.3, person_n: Some(6e3) });
    let mut site = Site::weightless(family, 1e3);
    let tension = Tension::MultipleOfRated { times: set(2.0) };
    add_case(&mut site.basis, "tether", CaseLoad::Tether { tension });
    site.basis.combinations.push(alone("tether", LoadLevel::MultipleOfRated));
    assert_not_checked(&assess(&site.plan(), &mut Memo::new()), &[Code::EyeHoldsTether]);
}

/// AISC 360 says nothing of aluminum: mast, arm and tie of the demonstration family are judged by nobody.
#[test]
fn members_that_the_code_does_not_cover_are_left_open() {
    let assessment = assess(&Site { code: DesignCode::aisc(), ..Site::with_rear_tie() }.plan(), &mut Memo::new());
    assert_not_checked(&assessment, &[Code::MemberUtilization, Code::RatingSupported]);
    let mut here = assessment.checks().filter(|check| check.code == Code::MemberUtilization);
    assert!(here.all(|check| check.measured.is_none()));
}

/// Data of a base that can't be are named with their field; the plan opens and the rest of it is assessed.
#[test]
fn a_base_that_cannot_be_computed_blocks_and_names_the_field() {
    type Edit = fn(&mut Base);
    let wrong: [(&str, Edit); 4] = [
        ("base.plate_m is no outline: edges", |base| base.plate_m.swap(1, 2)),
        ("base.anchors.at_m: anchor 2", |base| base.anchors.as_mut().unwrap().at_m[1].x = 0.2),
        ("base.anchors.embedment_m = 0", |base| base.anchors.as_mut().unwrap().embedment_m = 0.0),
        ("base.least_slab_m = -0.1", |base| base.least_slab_m = Some(-0.1)),
    ];
    for (said, edit) in wrong {
        let mut site = Site::with_rear_tie();
        edit(site.family.bases.get_mut(&PartId::new("floor-socket")).unwrap());
        let assessment = assess(&site.plan(), &mut Memo::new());
        let found = assessment.findings().into_iter().find(|check| check.code == Code::MakeUpIsComplete).unwrap();
        assert_eq!(found.outcome, Outcome::Fails(Severity::Blocking));
        assert!(found.detail.contains(said), "{} does not say {said}", found.detail);
    }
}

/// What is known of the slab says nothing about a base whose needs nobody stated.
#[test]
fn a_base_without_data_of_its_fixing_is_left_open() {
    let mut site = Site::with_rear_tie();
    let base = site.family.bases.get_mut(&PartId::new("floor-socket")).unwrap();
    base.anchors = None;
    base.least_slab_m = None;
    let of_fixing = [Code::SlabThickEnough, Code::DrillingAllowed, Code::ProofLoad];
    assert_not_checked(&assess(&site.plan(), &mut Memo::new()), &of_fixing);
}

/// Cast-in bolts need no drill.
#[test]
fn a_zone_without_drilling_forbids_nothing_that_is_cast_in() {
    let mut site = Site::with_rear_tie();
    site.family.fixings.get_mut(&PartId::new("bonded-20")).unwrap().kind = FixingKind::CastInBolt;
    let mut built = site.build();
    let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 5.0), (0.0, 5.0)].map(glam::DVec2::from).to_vec();
    let zone = NoDrillZone { outline, reason: "post-tensioned".into() };
    let slab = Slab { no_drill: vec![zone], ..Slab::default() };
    let roof = built.roof;
    built.change(&Change::SetRoof(roof, RoofPatch { slab: Some(slab), ..RoofPatch::default() }));
    let assessment = assess(&built.plan(), &mut Memo::new());
    let mut here = assessment.checks().filter(|check| check.code == Code::DrillingAllowed);
    assert!(here.all(|check| matches!(check.outcome, Outcome::NotApplicable(_))));
}

/// The file is the witness: every value with a source has a field that tells who stands behind it.
#[test]
fn every_value_that_the_file_gives_a_source_is_counted_as_unconfirmed() {
    for preset in gantline_plan::basis::presets().unwrap() {
        let text = serde_json::to_string(&preset.basis).unwrap();
        let defaults = text.matches("\"standing\":\"default\"").count();
        assert_eq!(preset.basis.unconfirmed(), defaults, "{}", preset.key);
    }
}
