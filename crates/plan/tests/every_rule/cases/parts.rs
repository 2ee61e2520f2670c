//! Make-up, and who lifts what.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::catalog::{BraceKind, Family};
use gantline_plan::document::{PartId, Plan};

use crate::case::{Case, Wanted};
use crate::site::Site;

const BLOCKING: Wanted = Wanted::Fails(Severity::Blocking);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = complete();
    all.extend(listed());
    all.extend(front_brace());
    all.extend(masses());
    all
}

fn with(edit: impl FnOnce(&mut Family)) -> Plan {
    let mut site = Site::with_rear_tie();
    edit(&mut site.family);
    site.plan()
}

/// The tail is 0.75 m long: the brace's pin must be on it.
fn complete() -> Vec<Case> {
    let pin_at = |at: f64| {
        with(|family| {
            let brace = family.braces.get_mut(&PartId::new("rear-tie-long")).unwrap();
            brace.kind = BraceKind::RearToMast { tail_at_m: at, below_arm_m: 0.95 };
        })
    };
    vec![
        Case::new(Code::MakeUpIsComplete, "pin 1 mm past the tail", pin_at(0.751), BLOCKING),
        Case::new(Code::MakeUpIsComplete, "pin 1 mm before the tail's end", pin_at(0.749), Wanted::Meets),
    ]
}

/// Yes or no: the short tie is not listed with this arm; the base names the masts it takes.
fn listed() -> Vec<Case> {
    let braced = |brace| Site { parts: ["mast-190", "arm-115-rear", brace, "floor-socket"], ..Site::with_rear_tie() };
    let taking = |mast: &str| {
        with(|family| family.bases.get_mut(&PartId::new("floor-socket")).unwrap().takes = vec![PartId::new(mast)])
    };
    vec![
        Case::new(Code::CombinationIsListed, "short tie", braced("rear-tie").plan(), BLOCKING),
        Case::new(Code::CombinationIsListed, "long tie", braced("rear-tie-long").plan(), Wanted::Meets),
        Case::new(Code::BaseTakesMast, "takes another mast", taking("mast-145"), BLOCKING),
        Case::new(Code::BaseTakesMast, "takes this mast", taking("mast-190"), Wanted::Meets),
    ]
}

/// The mast is 1.45 m.
fn front_brace() -> Vec<Case> {
    let up_to = |limit: f64| {
        let mut site = Site::with_front_strut();
        site.family.front_brace_tallest_mast_m = Some(limit);
        site.plan()
    };
    let code = Code::FrontBraceMastHeight;
    vec![
        Case::new(code, "mast 1 mm too tall", up_to(1.449), BLOCKING).measures(1.45),
        Case::new(code, "mast 1 mm lower than allowed", up_to(1.451), Wanted::Meets).measures(1.45),
    ]
}

/// One person lifts 25 kg, two lift 42.5 kg (first basis); arm and tie weigh less.
fn masses() -> Vec<Case> {
    let mast = |mass_kg: f64| with(|family| family.masts.get_mut(&PartId::new("mast-190")).unwrap().mass_kg = mass_kg);
    let code = Code::PartMass;
    vec![
        Case::new(code, "too heavy for one", mast(25.025), Wanted::Fails(Severity::Note)).measures(25.025),
        Case::new(code, "light enough for one", mast(24.975), Wanted::Meets).measures(24.975),
        Case::new(code, "too heavy for two", mast(42.5425), Wanted::Fails(Severity::Caution)).measures(42.5425),
        Case::new(code, "light enough for two", mast(42.4575), Wanted::Fails(Severity::Note)).measures(42.4575),
    ]
}
