//! Judges mast, arm and brace over every combination at the design level, at the declared rating, and in the socket.

use gantline_mechanics::envelope::{
    Actions, Mark, MemberAbove, MemberPart, MemberUse as Worst, SecondOrder, SlewRange, member_above, member_envelope,
};
use gantline_mechanics::member::{
    Aisc360Factors, At, En1993Factors, En1999Factors, MemberCode as Code, MemberResistance, MomentShape,
};
use gantline_mechanics::socket::{Contact, MouthActions, Socket, WallCrushing};
use gantline_mechanics::unit::{Part, UnitModel};

use super::in_parts::in_parts;
use super::reactions::{AtRating, Component, MemberUse, Reactions, SocketUse};
use crate::basis::{CaseLoad, DesignCode, FactorName, LoadBasis, LoadLevel, MemberCode, Tension};
use crate::catalog::{Material, MaterialKind, ResolvedUnit, Tube, to_mechanics};

/// Least buckling length of a mast as a multiple of its height: a cantilever (EN 1993-1-1 BB.1 leaves it to the engineer).
const MAST_BUCKLING_LENGTHS: f64 = 2.0;

/// A member to be judged, or why it can't be.
pub(crate) struct Judged {
    pub(crate) name: &'static str,
    part: Part,
    marks: Vec<Mark>,
    pub(crate) resistance: Result<MemberResistance, String>,
}

/// Judges the members of a unit, dealt out over threads.
pub fn members(
    threads: usize,
    unit: &ResolvedUnit,
    (basis, code): (&LoadBasis, &DesignCode),
    model: &UnitModel,
    range: &SlewRange,
    searched: &[(usize, Actions)],
    found: &mut Reactions,
) {
    let judged = judged_members(unit, code);
    let second_order = second_order_of(found.alpha_cr);
    let uses = in_parts(threads, 1, &judged, |member| uses_of(member, model, range, searched, &second_order));
    found.members.extend(uses.into_iter().flatten());
    found.at_rating = at_rating(unit, basis, model, range, &judged, &second_order);
    found.socket = socket(unit, code, found);
}

/// The worst use of one member, and the first that could not be checked.
fn uses_of(
    member: &Judged,
    model: &UnitModel,
    range: &SlewRange,
    searched: &[(usize, Actions)],
    second_order: &Result<SecondOrder, String>,
) -> Vec<MemberUse> {
    let resistance = match &member.resistance {
        Ok(resistance) => resistance,
        Err(what) => return vec![not_checked(member.name, 0, what.clone())],
    };
    let part = MemberPart { part: member.part, resistance, marks: &member.marks };
    let mut worst: Option<MemberUse> = None;
    let mut open: Option<MemberUse> = None;
    for (index, actions) in searched {
        let known = worst.as_ref().and_then(|worst| worst.utilization).unwrap_or(0.0);
        let above = match above(model, actions, range, &part, second_order, known) {
            Ok(above) => above,
            Err(what) => {
                open.get_or_insert(not_checked(member.name, *index, what));
                continue;
            }
        };
        if let Some((mode, why)) = above.not_checked {
            open.get_or_insert(not_checked(member.name, *index, format!("{}: {why}", mode_word(mode))));
        }
        let Some(used) = above.worse else { continue };
        // Without any mode that was checked there is no utilization: 0 would read as a pass.
        let any_checked = used.governing.not_checked.is_none() || used.governing.utilization > 0.0;
        if any_checked && worst.as_ref().is_none_or(|known| Some(used.governing.utilization) > known.utilization) {
            worst = Some(member_use(member.name, *index, &used, resistance));
        }
    }
    worst.into_iter().chain(open).collect()
}

/// Amplification of moments at a critical load factor.
pub(crate) fn second_order_of(alpha_cr: Option<f64>) -> Result<SecondOrder, String> {
    let alpha_cr = alpha_cr.ok_or_else(|| "the critical load factor".to_owned())?;
    SecondOrder::of_alpha_cr(alpha_cr).map_err(|fault| fault.to_string())
}

fn above(
    model: &UnitModel,
    actions: &Actions,
    range: &SlewRange,
    part: &MemberPart<'_>,
    second_order: &Result<SecondOrder, String>,
    known: f64,
) -> Result<MemberAbove, String> {
    member_above(model, actions, range, part, second_order.clone()?, known).map_err(|fault| fault.to_string())
}

fn used(
    model: &UnitModel,
    actions: &Actions,
    range: &SlewRange,
    parts: &[MemberPart<'_>],
    second_order: &Result<SecondOrder, String>,
) -> Result<Worst, String> {
    let mut envelope =
        member_envelope(model, actions, range, parts, second_order.clone()?).map_err(|fault| fault.to_string())?;
    envelope.uses.pop().ok_or_else(|| "no cut of the member".to_owned())
}

/// The worst of one member under some actions, with the inner forces there.
pub(crate) fn worst_of(
    model: &UnitModel,
    actions: &Actions,
    range: &SlewRange,
    member: &Judged,
    second_order: &Result<SecondOrder, String>,
) -> Option<Worst> {
    let resistance = member.resistance.as_ref().ok()?;
    let parts = [MemberPart { part: member.part, resistance, marks: &member.marks }];
    used(model, actions, range, &parts, second_order).ok()
}

/// The rope pull of a combination's declared rating: rating × dynamic factor × load factor of the first rope case as it is.
pub(crate) struct RatedPull {
    /// Dynamic factor.
    pub(crate) dynamic: f64,
    /// Load factor.
    pub(crate) load_factor: f64,
    /// What the pull does, with self-weight.
    pub(crate) actions: Actions,
    /// Its force, N.
    pub(crate) force_n: f64,
}

/// The pull at the declared rating; none without a rating or a rope case as it is.
pub(crate) fn rated_pull(unit: &ResolvedUnit, basis: &LoadBasis) -> Option<RatedPull> {
    let rating = unit.rating.as_ref()?;
    let (dynamic, load_factor) = basis.cases.values().find_map(|case| match &case.load {
        CaseLoad::Rope { tension: Tension::Service { dynamic, load_factor, .. }, .. } => {
            Some((dynamic.value, load_factor.value))
        }
        _ => None,
    })?;
    let force_n = rating.rated_n * dynamic * load_factor;
    let cone = gantline_mechanics::cone::LoadCone::whole(basis.cone.half_angle_rad.value);
    let pull = gantline_mechanics::envelope::Pull::new(0, force_n, cone);
    let actions = Actions::of_pull(pull, basis.weight.unfavorable.value);
    Some(RatedPull { dynamic, load_factor, actions, force_n })
}

fn not_checked(member: &'static str, combination: usize, what: String) -> MemberUse {
    MemberUse {
        member,
        combination,
        mode: "not checked".to_owned(),
        utilization: None,
        clause: what,
        station_m: 0.0,
        pull: None,
    }
}

fn member_use(member: &'static str, combination: usize, used: &Worst, resistance: &MemberResistance) -> MemberUse {
    let clause = resistance
        .checks(&used.actions)
        .into_iter()
        .find(|check| check.mode == used.governing.mode)
        .map_or("", |check| check.clause);
    MemberUse {
        member,
        combination,
        mode: mode_word(used.governing.mode).to_owned(),
        utilization: Some(used.governing.utilization),
        clause: clause.to_owned(),
        station_m: used.station.at_m,
        pull: used.pull_direction,
    }
}

const fn mode_word(mode: gantline_mechanics::member::Mode) -> &'static str {
    use gantline_mechanics::member::Mode;
    match mode {
        Mode::Section => "section",
        Mode::NetSection => "net section at a pin hole",
        Mode::Shear => "shear",
        Mode::Torsion => "torsion",
        Mode::Stability => "buckling",
    }
}

/// Mast, arm and brace with their resistances.
pub(crate) fn judged_members(unit: &ResolvedUnit, code: &DesignCode) -> Vec<Judged> {
    let mut all = vec![
        judge(
            "mast",
            Part::Mast,
            &unit.mast.tube,
            &unit.mast_material,
            code,
            MAST_BUCKLING_LENGTHS * unit.mast.height_m,
            MomentShape::Sway,
        ),
        judge(
            "arm",
            Part::Arm,
            &unit.arm.tube,
            &unit.arm_material,
            code,
            2.0 * unit.arm.outreach_m.max(unit.arm.tail_m),
            MomentShape::Uniform,
        ),
    ];
    if let (Some(brace), Some(material)) = (&unit.brace, &unit.brace_material) {
        let length = to_mechanics::brace_length_m(unit, brace.kind);
        all.push(judge("brace", Part::Brace, &brace.tube, material, code, length, MomentShape::Uniform));
    }
    all
}

fn judge(
    name: &'static str,
    part: Part,
    tube: &Tube,
    material: &Material,
    code: &DesignCode,
    buckling_length_m: f64,
    shape: MomentShape,
) -> Judged {
    let weld = |at: f64| tube.welds.iter().any(|weld| (weld.from_m..=weld.to_m).contains(&at));
    let mut marks: Vec<Mark> =
        tube.welds.iter().map(|weld| Mark { from_m: weld.from_m, to_m: weld.to_m, at: At::Weld }).collect();
    if let Some(holes) = &tube.pin_holes {
        marks.extend(holes.at_m.iter().map(|&at_m| Mark {
            from_m: at_m,
            to_m: at_m,
            at: if weld(at_m) { At::WeldedPinHole } else { At::PinHole },
        }));
    }
    let unknown_softening =
        !tube.welds.is_empty() && matches!(material.kind, MaterialKind::Aluminum { weld_softening: None, .. });
    let resistance = if unknown_softening {
        Err(format!("what welding leaves of the strength of {}", material.name))
    } else {
        member_code(material, code).and_then(|member_code| {
            to_mechanics::member(tube, material, buckling_length_m, shape)
                .resistance(&member_code)
                .map_err(|fault| fault.to_string())
        })
    };
    Judged { name, part, marks, resistance }
}

/// The code that judges a material, with the plan's factors; a factor that is missing is named.
fn member_code(material: &Material, code: &DesignCode) -> Result<Code, String> {
    let factor = |name: FactorName| {
        code.factors.get(&name).map(|factor| factor.value).ok_or_else(|| format!("factor {name:?} of the design code"))
    };
    Ok(match (code.members, material.kind) {
        (MemberCode::Eurocode, MaterialKind::Steel { .. }) => Code::En1993(En1993Factors {
            gamma_m0: factor(FactorName::SteelGammaM0)?,
            gamma_m1: factor(FactorName::SteelGammaM1)?,
            gamma_m2: factor(FactorName::SteelGammaM2)?,
        }),
        (MemberCode::Eurocode, MaterialKind::Aluminum { .. }) => Code::En1999(En1999Factors {
            gamma_m1: factor(FactorName::AluminumGammaM1)?,
            gamma_m2: factor(FactorName::AluminumGammaM2)?,
        }),
        (MemberCode::Aisc360, _) => {
            let phi = factor(FactorName::AiscPhi)?;
            Code::Aisc360(Aisc360Factors {
                compression: phi,
                bending: phi,
                shear: phi,
                torsion: phi,
                tension_yield: phi,
                tension_rupture: factor(FactorName::AiscPhiRupture)?,
                second_order: 1.0,
            })
        }
    })
}

/// Members under the declared rating.
fn at_rating(
    unit: &ResolvedUnit,
    basis: &LoadBasis,
    model: &UnitModel,
    range: &SlewRange,
    judged: &[Judged],
    second_order: &Result<SecondOrder, String>,
) -> Option<AtRating> {
    let rating = unit.rating.as_ref()?;
    let RatedPull { dynamic, load_factor, actions, force_n } = rated_pull(unit, basis)?;
    let mut result = AtRating {
        utilization: 0.0,
        all_checked: true,
        inside: format!(
            "rated {:.3} kN × dynamic {dynamic} × load factor {load_factor} = {:.3} kN",
            rating.rated_n / 1e3,
            force_n / 1e3
        ),
    };
    for member in judged {
        let Ok(resistance) = &member.resistance else {
            result.all_checked = false;
            continue;
        };
        let part = MemberPart { part: member.part, resistance, marks: &member.marks };
        match above(model, &actions, range, &part, second_order, result.utilization) {
            Ok(found) => {
                let utilization = found.worse.map_or(0.0, |used| used.governing.utilization);
                result.utilization = result.utilization.max(utilization);
                result.all_checked &= found.not_checked.is_none();
            }
            Err(_) => result.all_checked = false,
        }
    }
    Some(result)
}

/// The largest resultants at the base at the design level.
pub(crate) fn mouth_actions(found: &Reactions) -> Option<MouthActions> {
    let design = || found.combinations.iter().filter(|result| result.level != LoadLevel::Service);
    let largest = |component| design().map(|result| result.largest(component)).reduce(f64::max);
    Some(MouthActions { shear_n: largest(Component::V)?, moment_nm: largest(Component::M)? })
}

/// The mast's wall in its socket, under the largest resultants at the base at the design level. They are taken at the
/// underside of the base, which is on the safe side of the socket's mouth.
fn socket(unit: &ResolvedUnit, code: &DesignCode, found: &Reactions) -> Vec<SocketUse> {
    let Some(actions) = mouth_actions(found) else { return Vec::new() };
    let socket = Socket {
        engaged_m: unit.base.engaged_m,
        contact: Contact::WholeDepth,
        play_m: unit.base.play_m,
        plumb_tolerance_rad: unit.base.plumb_tolerance_rad,
    };
    let factor = match unit.mast_material.kind {
        MaterialKind::Steel { .. } => FactorName::SteelGammaM0,
        MaterialKind::Aluminum { .. } => FactorName::AluminumGammaM1,
    };
    let what = "wall of the mast in its socket".to_owned();
    let missing = |clause: String| vec![SocketUse { what: what.clone(), utilization: None, clause }];
    let Some(factor) = code.factors.get(&factor) else {
        return missing("partial factor of the mast's material in the design code".to_owned());
    };
    let strength_pa = unit.mast_material.yield_pa / factor.value;
    let section = to_mechanics::section(unit.mast.tube.section);
    match socket.wall_crushing(&section, strength_pa, HALF_CONTACT_RAD, &actions) {
        // The method gives a lower bound of the resistance: beyond it the wall has not failed, it is not shown to hold.
        Ok(WallCrushing::Utilization(utilization)) if utilization > 1.0 => missing(format!(
            "elastic bound of the wall exceeded ({utilization:.2}): to be shown by whoever makes the mast and base"
        )),
        Ok(WallCrushing::Utilization(utilization)) => vec![SocketUse {
            what,
            utilization: Some(utilization),
            clause: "elastic ring under the couple of the socket, a lower bound of resistance".to_owned(),
        }],
        Ok(WallCrushing::NotChecked(why)) => missing(why.to_owned()),
        Err(fault) => missing(fault.to_string()),
    }
}

/// Half the angle over which a mast lies against its socket: a close fit bears over some 60° to each side (assumed).
pub(crate) const HALF_CONTACT_RAD: f64 = std::f64::consts::PI / 3.0;
