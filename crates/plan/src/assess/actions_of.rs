//! Turns a combination of the basis into the actions that mechanics knows, with the factors inside told in words.

use gantline_mechanics::cone::{Lean, LoadCone as Cone};
use gantline_mechanics::envelope::{Actions, FootCase, Pull, SlewHold as Hold, SlewRange, Tether, WindOnUnit};
use gantline_mechanics::section::Section;
use gantline_mechanics::wind::{WindAlong, WindPressure};

use crate::basis::{CaseLoad, Combined, LoadBasis, LoadLevel, Sourced, Tension};
use crate::catalog::{ResolvedUnit, SlewHold, SlewStops, to_mechanics};

/// Density of air, kg/m³ (EN 1991-1-4 4.5, recommended value).
const AIR_KG_M3: f64 = 1.25;
/// Surface roughness of tubes, m (EN 1991-1-4 Table 7.13, galvanized steel; rougher than drawn aluminum).
const ROUGHNESS_M: f64 = 0.2e-3;

/// What acts in a combination.
#[derive(Debug, Clone, PartialEq)]
pub struct CombinationActions {
    /// Once for each weight factor to be looked at.
    pub with_weight: Vec<Actions>,
    /// Loads and factors inside, in words and figures.
    pub inside: String,
    /// All rope pulls added up, N.
    pub pull_n: f64,
}

/// Why a combination gives no actions for a unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoActions {
    /// Something is missing.
    Missing(String),
    /// The combination does not concern this unit.
    DoesNotApply(String),
}

/// The actions of a combination on a unit.
pub fn actions_of(
    combined: &Combined,
    basis: &LoadBasis,
    unit: &ResolvedUnit,
) -> Result<CombinationActions, NoActions> {
    let mut found =
        Gathered { level: combined.level, unit, basis, pulls: Vec::new(), tether: None, wind: None, words: Vec::new() };
    for term in &combined.terms {
        let case =
            basis.cases.get(&term.case).ok_or_else(|| NoActions::Missing(format!("case \"{}\"", term.case.0)))?;
        found.add(&case.load, term.factor)?;
    }
    Ok(found.finish())
}

struct Gathered<'a> {
    level: LoadLevel,
    unit: &'a ResolvedUnit,
    basis: &'a LoadBasis,
    pulls: Vec<Pull>,
    tether: Option<Tether>,
    wind: Option<WindOnUnit>,
    words: Vec<String>,
}

impl Gathered<'_> {
    fn add(&mut self, load: &CaseLoad, factor: f64) -> Result<(), NoActions> {
        match load {
            CaseLoad::Rope { persons, tension } => {
                let (force_n, words) = self.force(tension, factor)?;
                let who = if *persons == 1 { "one person".to_owned() } else { format!("{persons} persons") };
                self.words.push(format!("rope, {who}: {words}"));
                let cone = self.cone(tension);
                self.pulls.push(Pull::new(0, force_n, cone));
            }
            CaseLoad::Tether { tension } => {
                let Some(eye) = self.unit.base.eye else {
                    return Err(NoActions::DoesNotApply("the base has no eye".to_owned()));
                };
                if eye.person_n.is_none() {
                    return Err(NoActions::DoesNotApply("nobody may be tied to the base's eye".to_owned()));
                }
                let (force_n, words) = self.force(tension, factor)?;
                self.words.push(format!("tether at {:.3} m: {words}", eye.height_m));
                self.tether = Some(Tether { force_n, height_m: eye.height_m });
            }
            CaseLoad::Wind { speed_m_s, load_factor, .. } => self.add_wind(speed_m_s, load_factor, factor)?,
        }
        Ok(())
    }

    /// Force of a tension at this level, and how it came about.
    fn force(&self, tension: &Tension, factor: f64) -> Result<(f64, String), NoActions> {
        let combined = if factor == 1.0 { String::new() } else { format!(" × {factor}") };
        match (tension, self.level) {
            (Tension::Service { mass_kg, dynamic, load_factor }, level) => {
                let service_n = tension.service_n().unwrap_or(0.0);
                let applied = if level == LoadLevel::Service { 1.0 } else { load_factor.value };
                let words = format!(
                    "{} kg × g × dynamic {} × load factor {applied}{combined} = {:.3} kN",
                    mass_kg.value,
                    dynamic.value,
                    service_n * applied * factor / 1e3
                );
                Ok((service_n * applied * factor, words))
            }
            (Tension::Ultimate { anchor_load_n }, _) => {
                let words = format!("{:.3} kN with its factors inside", anchor_load_n.value / 1e3);
                Ok((anchor_load_n.value, words))
            }
            (Tension::MultipleOfRated { times }, _) => {
                let rating = self.unit.rating.as_ref().ok_or_else(|| {
                    NoActions::Missing("a declared rating of this combination of mast, arm and brace".to_owned())
                })?;
                let force_n = times.value * rating.rated_n * factor;
                let words = format!(
                    "{} × rated {:.3} kN{combined} = {:.3} kN",
                    times.value,
                    rating.rated_n / 1e3,
                    force_n / 1e3
                );
                Ok((force_n, words))
            }
        }
    }

    /// Limits of lean hold for loads as they are and not for anchor loads.
    fn cone(&self, tension: &Tension) -> Cone {
        let stored = &self.basis.cone;
        let lean = match (tension, &stored.lean) {
            (Tension::Service { .. }, Some(lean)) => {
                Some(Lean { inward_rad: lean.inward_rad.value, outward_rad: lean.outward_rad.value })
            }
            _ => None,
        };
        Cone { half_angle_rad: stored.half_angle_rad.value, lean }
    }

    fn add_wind(&mut self, speed: &Sourced<f64>, load_factor: &Sourced<f64>, factor: f64) -> Result<(), NoActions> {
        let applied = if self.level == LoadLevel::Service { 1.0 } else { load_factor.value };
        let wind = wind_on(self.unit, speed.value, applied * factor).map_err(NoActions::Missing)?;
        self.words.push(format!("wind {} m/s × load factor {applied} × {factor}", speed.value));
        self.wind = Some(wind);
        Ok(())
    }

    fn finish(mut self) -> CombinationActions {
        let weight = &self.basis.weight;
        let factors = match self.level {
            LoadLevel::Ultimate => vec![weight.unfavorable.value, weight.favorable.value],
            LoadLevel::Service | LoadLevel::MultipleOfRated => vec![1.0],
        };
        let shown: Vec<String> = factors.iter().map(ToString::to_string).collect();
        self.words.push(format!("self-weight × {}", shown.join(" or ")));
        let slew_hold = match self.unit.base.slew_hold {
            SlewHold::Free => Hold::Free,
            SlewHold::Detents { .. } | SlewHold::Clamp { .. } => Hold::Held,
        };
        let with_weight = factors
            .into_iter()
            .map(|weight_factor| Actions {
                pulls: self.pulls.clone(),
                weight_factor,
                tether: self.tether,
                wind: self.wind.clone(),
                fixed: Vec::new(),
                slew_hold,
                foot: FootCase::HoldsOrLost,
            })
            .collect();
        let pull_n = self.pulls.iter().map(|pull| pull.tension_n).sum();
        CombinationActions { with_weight, inside: self.words.join("; "), pull_n }
    }
}

/// Wind forces on a unit's parts with the wind square to each.
fn wind_on(unit: &ResolvedUnit, speed_m_s: f64, factor: f64) -> Result<WindOnUnit, String> {
    let pressure = WindPressure::of_speed(AIR_KG_M3, speed_m_s).map_err(|fault| fault.to_string())?;
    let drag = |section: &Section, length_m: f64, along: WindAlong| {
        pressure.drag(section, length_m, along, ROUGHNESS_M).map(|d| d.force_n_per_m).map_err(|f| f.to_string())
    };
    let worse = |section: &Section, length_m: f64| -> Result<f64, String> {
        Ok(drag(section, length_m, WindAlong::Y)?.max(drag(section, length_m, WindAlong::Z)?))
    };
    let mast = to_mechanics::section(unit.mast.tube.section);
    let arm = to_mechanics::section(unit.arm.tube.section);
    let arm_length = unit.arm.outreach_m + unit.arm.tail_m;
    let mut wind = WindOnUnit {
        mast_n_per_m: worse(&mast, unit.mast.height_m)? * factor,
        arm_n_per_m: drag(&arm, arm_length, WindAlong::Y)? * factor,
        // The end face of the arm as a flat plate: c_f = 2.0, the largest of EN 1991-1-4 Figure 7.23.
        arm_end_n: 2.0
            * pressure.pressure_pa
            * unit.arm.tube.section.depth_m()
            * unit.arm.tube.section.width_m()
            * factor,
        ..WindOnUnit::default()
    };
    if let Some(brace) = &unit.brace {
        let length = to_mechanics::brace_length_m(unit, brace.kind);
        wind.brace_n = worse(&to_mechanics::section(brace.tube.section), length)? * length * factor;
    }
    Ok(wind)
}

/// The slews at which a person may hang, as mechanics takes them; a rear foot's limits are known there.
pub fn slew_range(stops: SlewStops) -> SlewRange {
    match stops {
        SlewStops::WholeTurn => SlewRange::WholeTurn,
        SlewStops::Between { from_rad, to_rad } => {
            let turn = std::f64::consts::TAU;
            if to_rad - from_rad >= turn {
                return SlewRange::WholeTurn;
            }
            SlewRange::Between { from_rad, to_rad: from_rad + (to_rad - from_rad).rem_euclid(turn) }
        }
    }
}
