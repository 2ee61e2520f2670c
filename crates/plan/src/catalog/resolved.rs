//! A resolved unit: the parts of a make-up looked up and their numbers checked once.

use serde::Serialize;

use super::{
    Arm, Base, BaseKind, Brace, BraceKind, Family, Fixing, FixingKind, MakeUp, MakeUpFault, Mast, Material,
    PedestalBody, Rating, SectionShape, SlewStops, Tube, base_sound,
};
use crate::document::PartId;

/// All data of one make-up. Equal make-ups of equal families resolve to equal values.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ResolvedUnit {
    /// The family's name.
    pub family: String,
    /// Whether the family is an invented one.
    pub invented: bool,
    /// The mast.
    pub mast: Mast,
    /// Its material.
    pub mast_material: Material,
    /// The arm.
    pub arm: Arm,
    /// Its material.
    pub arm_material: Material,
    /// The brace.
    pub brace: Option<Brace>,
    /// Its material.
    pub brace_material: Option<Material>,
    /// The base.
    pub base: Base,
    /// The material of its plate, if stated.
    pub plate_material: Option<Material>,
    /// The fixing product of its anchors, if known.
    pub fixing: Option<Fixing>,
    /// What a rear foot stands on, if known.
    pub foot: Option<Foot>,
    /// Whether the family lists this combination.
    pub listed: bool,
    /// Whether the base takes this mast.
    pub base_takes_mast: bool,
    /// What is declared for the combination.
    pub rating: Option<Rating>,
    /// The family's limit of mast height under a front brace.
    pub front_brace_tallest_mast_m: Option<f64>,
    /// Slew at which a person may hang.
    pub slew_stops: SlewStops,
    /// Bearing of a rear foot.
    pub foot_bearing_rad: f64,
    /// Level of a rear foot over the structural slab.
    pub foot_level_m: f64,
}

/// What a rear foot stands on.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Foot {
    /// The base.
    pub base: Base,
    /// The material of its plate, if stated.
    pub plate_material: Option<Material>,
    /// The fixing product of its anchors, if known.
    pub fixing: Option<Fixing>,
}

impl ResolvedUnit {
    /// How the base is fixed, if known.
    pub fn fixing_kind(&self) -> Option<FixingKind> {
        self.base.kind.own_fixing().or(self.fixing.as_ref().map(|fixing| fixing.kind))
    }

    /// Height of the underside of the base's plate over the structural slab, m: a plinth raises the whole unit.
    pub fn over_slab_m(&self) -> f64 {
        match &self.base.kind {
            BaseKind::Pedestal { height_m, body: PedestalBody::Plinth { .. } } => *height_m,
            _ => 0.0,
        }
    }

    /// Mass of all that is carried to the base: mast, arm and brace, kg.
    pub fn portable_mass_kg(&self) -> f64 {
        self.mast.mass_kg + self.arm.mass_kg + self.brace.as_ref().map_or(0.0, |brace| brace.mass_kg)
    }

    /// Height of the arm's underside over the underside of the base, m.
    pub fn clear_height_m(&self) -> f64 {
        self.mast.height_m - self.arm.tube.section.depth_m() / 2.0
    }
}

/// Looks the parts up and checks their numbers.
pub(super) fn resolve(make_up: &MakeUp, family: &Family) -> Result<ResolvedUnit, MakeUpFault> {
    let no_part = |what, part: &PartId| MakeUpFault::NoPart { family: family.name.clone(), what, part: part.clone() };
    let mast = family.masts.get(&make_up.mast).ok_or_else(|| no_part("mast", &make_up.mast))?;
    let arm = family.arms.get(&make_up.arm).ok_or_else(|| no_part("arm", &make_up.arm))?;
    let base = family.bases.get(&make_up.base).ok_or_else(|| no_part("base", &make_up.base))?;
    let brace = match &make_up.brace {
        None => None,
        Some(id) => Some(family.braces.get(id).ok_or_else(|| no_part("brace", id))?),
    };
    let named = |name: &String| {
        let missing = || MakeUpFault::NoMaterial { family: family.name.clone(), material: name.clone() };
        family.materials.get(name).cloned().ok_or_else(missing)
    };
    let material = |tube: &Tube| named(&tube.material);
    let plate_material = |base: &Base| base.plate_material.as_ref().map(named).transpose();
    let fixing = |base: &Base, other: Option<&PartId>| match base
        .anchors
        .as_ref()
        .map(|anchors| other.unwrap_or(&anchors.fixing))
    {
        None => Ok(None),
        Some(id) => family.fixings.get(id).cloned().map(Some).ok_or_else(|| no_part("fixing", id)),
    };
    let foot = match brace.and_then(|brace| brace.foot.as_ref()) {
        None => None,
        Some(id) => {
            let base = family.bases.get(id).ok_or_else(|| no_part("brace foot", id))?;
            Some(Foot { base: base.clone(), plate_material: plate_material(base)?, fixing: fixing(base, None)? })
        }
    };
    let combination = family.combination(&make_up.mast, &make_up.arm, make_up.brace.as_ref());
    let unit = ResolvedUnit {
        family: family.name.clone(),
        invented: family.origin == super::Origin::Invented,
        mast_material: material(&mast.tube)?,
        mast: mast.clone(),
        arm_material: material(&arm.tube)?,
        arm: arm.clone(),
        brace_material: brace.map(|brace| material(&brace.tube)).transpose()?,
        brace: brace.cloned(),
        base: base.clone(),
        plate_material: plate_material(base)?,
        fixing: fixing(base, make_up.fixing.as_ref())?,
        foot,
        listed: combination.is_some(),
        base_takes_mast: base.takes.is_empty() || base.takes.contains(&make_up.mast),
        rating: combination.and_then(|c| c.rating.clone()),
        front_brace_tallest_mast_m: family.front_brace_tallest_mast_m,
        slew_stops: make_up.slew_stops,
        foot_bearing_rad: make_up.foot_bearing_rad,
        foot_level_m: make_up.foot_level_m,
    };
    check(&unit)?;
    Ok(unit)
}

pub(super) fn field(name: &str, value: f64, holds: bool, needs: &'static str) -> Result<(), MakeUpFault> {
    if value.is_finite() && holds {
        return Ok(());
    }
    Err(MakeUpFault::Field { field: name.to_owned(), value, needs })
}

pub(super) fn positive(name: &str, value: f64) -> Result<(), MakeUpFault> {
    field(name, value, value > 0.0, "a positive number")
}

pub(super) fn not_negative(name: &str, value: f64) -> Result<(), MakeUpFault> {
    field(name, value, value >= 0.0, "zero or a positive number")
}

fn check(unit: &ResolvedUnit) -> Result<(), MakeUpFault> {
    positive("mast.height_m", unit.mast.height_m)?;
    not_negative("mast.mass_kg", unit.mast.mass_kg)?;
    check_section("mast", unit.mast.tube.section)?;
    check_material("mast", &unit.mast_material)?;
    positive("arm.outreach_m", unit.arm.outreach_m)?;
    not_negative("arm.tail_m", unit.arm.tail_m)?;
    not_negative("arm.mass_kg", unit.arm.mass_kg)?;
    check_section("arm", unit.arm.tube.section)?;
    check_material("arm", &unit.arm_material)?;
    for point in &unit.arm.points {
        field("arm.points.out_m", point.out_m, point.out_m <= unit.arm.outreach_m, "at most the arm's outreach")?;
        field("arm.points.sideways_m", point.sideways_m, true, "a number")?;
        not_negative("arm.points.drop_m", point.drop_m)?;
    }
    if let (Some(brace), Some(material)) = (&unit.brace, &unit.brace_material) {
        not_negative("brace.mass_kg", brace.mass_kg)?;
        check_section("brace", brace.tube.section)?;
        check_material("brace", material)?;
        check_brace(unit, brace.kind)?;
    }
    let base = &unit.base;
    base_sound::check(base, unit.fixing.as_ref())?;
    let below_head = base.socket_top_m > 0.0 && base.socket_top_m < unit.mast.height_m;
    field("base.socket_top_m", base.socket_top_m, below_head, "above the plate and below the arm")?;
    unit.foot.as_ref().map_or(Ok(()), |foot| base_sound::check(&foot.base, foot.fixing.as_ref()))
}

fn check_section(part: &str, section: SectionShape) -> Result<(), MakeUpFault> {
    let (smaller, wall) = match section {
        SectionShape::RoundTube { diameter_m, wall_m } => (diameter_m, wall_m),
        SectionShape::RectTube { depth_m, width_m, wall_m, .. } => (depth_m.min(width_m), wall_m),
    };
    positive(&format!("{part}.section"), smaller)?;
    field(&format!("{part}.wall_m"), wall, wall > 0.0 && 2.0 * wall < smaller, "positive and below half the section")
}

fn check_material(part: &str, material: &Material) -> Result<(), MakeUpFault> {
    positive(&format!("{part}.material.elastic_pa"), material.elastic_pa)?;
    positive(&format!("{part}.material.shear_pa"), material.shear_pa)?;
    positive(&format!("{part}.material.yield_pa"), material.yield_pa)?;
    positive(&format!("{part}.material.ultimate_pa"), material.ultimate_pa)
}

fn check_brace(unit: &ResolvedUnit, kind: BraceKind) -> Result<(), MakeUpFault> {
    let clear_of_socket = unit.mast.height_m - unit.base.socket_top_m;
    let below = |below_arm_m: f64| {
        let holds = below_arm_m > 0.0 && below_arm_m < clear_of_socket;
        field("brace.below_arm_m", below_arm_m, holds, "below the arm and above the socket's mouth")
    };
    let on_tail = |at: f64| field("brace.tail_at_m", at, at > 0.0 && at <= unit.arm.tail_m, "on the arm's tail");
    match kind {
        BraceKind::RearToMast { tail_at_m, below_arm_m } => {
            on_tail(tail_at_m)?;
            below(below_arm_m)
        }
        BraceKind::RearToBase { tail_at_m, base_at_m } => {
            on_tail(tail_at_m)?;
            positive("brace.base_at_m", base_at_m)
        }
        BraceKind::Front { arm_at_m, below_arm_m } => {
            let holds = arm_at_m > 0.0 && arm_at_m <= unit.arm.outreach_m;
            field("brace.arm_at_m", arm_at_m, holds, "on the arm in front of the mast")?;
            below(below_arm_m)
        }
        BraceKind::RearFoot { distance_m, allowed_turn_rad, .. } => {
            positive("brace.distance_m", distance_m)?;
            not_negative("brace.allowed_turn_rad", allowed_turn_rad)?;
            let level = unit.foot_level_m;
            field("foot_level_m", level, level < unit.mast.height_m, "below the arm")
        }
    }
}
