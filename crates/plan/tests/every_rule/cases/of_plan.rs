//! The plan as a whole: cone, basis, code, tags, and what is left to others.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::basis::{DesignCode, LeanLimits, LoadBasis, MemberCode};
use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{Plan, Tag};

use crate::case::{Case, Wanted};
use crate::site::{Site, set};

const CAUTION: Wanted = Wanted::Fails(Severity::Caution);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = cone();
    all.extend(basis());
    all.extend(code());
    all.extend(tags());
    let open = Site::with_rear_tie().plan();
    all.push(Case::new(Code::LeftOpen, "on every plan", open, Wanted::NotChecked));
    all
}

/// Work at 0.30 rad to the side and the rope leaning outward by 0.20 rad and inward by 0.10 rad: 0.50 rad.
fn cone() -> Vec<Case> {
    let half_angle = |angle_rad: f64| {
        let mut site = Site::with_rear_tie();
        site.basis.rules.reach.angle_rad = set(0.30);
        site.basis.cone.half_angle_rad = set(angle_rad);
        site.basis.cone.lean = Some(LeanLimits { inward_rad: set(0.10), outward_rad: set(0.20) });
        site.plan()
    };
    let code = Code::LoadConeHoldsReach;
    vec![
        Case::new(code, "too narrow", half_angle(0.4995), Wanted::Fails(Severity::Blocking)).measures(0.4995),
        Case::new(code, "wide enough", half_angle(0.5005), Wanted::Meets).measures(0.5005),
    ]
}

/// Yes or no, for every single value.
fn basis() -> Vec<Case> {
    let all_confirmed = confirmed(&Site::with_rear_tie().basis);
    let mut one_left = all_confirmed.clone();
    one_left.rules.reach.arm_m.standing = gantline_plan::basis::Confirmation::Default;
    let plan = |basis: LoadBasis| -> Plan { Site { basis, ..Site::with_rear_tie() }.plan() };
    vec![
        Case::new(Code::BasisConfirmed, "one value is left", plan(one_left), CAUTION),
        Case::new(Code::BasisConfirmed, "all are confirmed", plan(all_confirmed), Wanted::Meets),
    ]
}

/// The same basis with someone behind every value.
fn confirmed(basis: &LoadBasis) -> LoadBasis {
    let text = serde_json::to_string(basis).unwrap();
    serde_json::from_str(
        &text.replace("\"standing\":\"default\"", "\"standing\":{\"confirmed\":{\"by\":\"A. Reader\"}}"),
    )
    .unwrap()
}

/// Yes or no.
fn code() -> Vec<Case> {
    let judged_by = |code: DesignCode| {
        let mut site = Site { code, ..Site::with_rear_tie() };
        site.basis.goes_with = Some(MemberCode::Eurocode);
        site.plan()
    };
    vec![
        Case::new(Code::CodeMatchesBasis, "another family", judged_by(DesignCode::aisc()), CAUTION),
        Case::new(Code::CodeMatchesBasis, "the same family", judged_by(DesignCode::eurocode()), Wanted::Meets),
    ]
}

/// Yes or no.
fn tags() -> Vec<Case> {
    let tagged = |tag: &str| {
        let mut built = Site::with_rear_tie().build();
        let other = built.place(20.0, 0.7);
        let patch = |tag: &str| PlacementPatch { tag: Some(Tag(tag.into())), ..PlacementPatch::default() };
        built.change(&Change::SetPlacements(vec![built.unit], patch("B-07")));
        built.change(&Change::SetPlacements(vec![other], patch(tag)));
        built.plan()
    };
    vec![
        Case::new(Code::TagIsUnique, "one tag twice", tagged("B-07"), CAUTION),
        Case::new(Code::TagIsUnique, "two tags", tagged("B-08"), Wanted::Meets),
    ]
}
