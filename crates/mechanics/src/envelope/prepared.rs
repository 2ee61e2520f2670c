//! Actions checked against a unit, and the support function of their sum.

use std::f64::consts::FRAC_PI_2;

use glam::{DVec2, DVec3};

use super::actions::{Actions, FixedForce, ForceAxes, ForceOn, Pull, SlewHold};
use super::fault::EnvelopeFault;
use super::observed::Observed;
use super::rows::{Rows, sum1, sum2, sum3};
use super::state::State;
use crate::cone::Cap;
use crate::unit::{Column, Influence, RopePoint, UnitModel, turned};
use crate::wrench::Wrench;

/// Checked actions on a unit.
pub(super) struct Prepared<'a> {
    pub model: &'a UnitModel,
    actions: &'a Actions,
    ropes: Vec<Rope>,
    wind: Option<[Column; 2]>,
}

/// A rope pull with its point, cap, and the plane it is kept in when nothing holds the slew.
struct Rope {
    pull: Pull,
    point: RopePoint,
    cap: Cap,
    plane: Option<DVec2>,
}

impl<'a> Prepared<'a> {
    pub fn new(model: &'a UnitModel, actions: &'a Actions) -> Result<Self, EnvelopeFault> {
        Self::of_pulls(model, actions, &actions.pulls)
    }

    /// The same with other pulls in place of those of the actions.
    pub fn of_pulls(model: &'a UnitModel, actions: &'a Actions, pulls: &[Pull]) -> Result<Self, EnvelopeFault> {
        check(actions)?;
        let ropes = pulls.iter().enumerate();
        let ropes = ropes.map(|(i, pull)| Rope::new(model, actions, i, *pull)).collect::<Result<_, _>>()?;
        for force in &actions.fixed {
            if let ForceOn::Point(point) = force.on {
                model.rope_point(point)?;
            }
        }
        let wind = match &actions.wind {
            Some(wind) => Some(model.wind_columns(wind)?),
            None => None,
        };
        Ok(Self { model, actions, ropes, wind })
    }

    /// Whether all answers, in arm axes, are the same at every slew.
    pub fn turns_with_the_arm(&self) -> bool {
        !self.model.depends_on_slew() && self.loads_turn_with_the_arm()
    }

    /// Whether all loads, but for limits of lean, are the same at every slew, seen from the arm.
    pub fn loads_turn_with_the_arm(&self) -> bool {
        let keeps_direction = |f: &FixedForce| f.axes == ForceAxes::Structure;
        !self.actions.fixed.iter().any(keeps_direction) && self.ropes.iter().all(|r| r.pull.second_leg.is_none())
    }

    /// Whether some cone has limits of lean.
    pub fn is_cut(&self) -> bool {
        self.ropes.iter().any(|r| r.cap.is_cut())
    }

    /// Slews at which the freely slewing plane of a rope runs along the facade: just there limits of lean
    /// don't cut it, and a few degrees on they cut it short.
    pub fn sharp_slews(&self) -> Vec<f64> {
        let planes = self.ropes.iter().filter(|r| r.cap.is_cut()).filter_map(|r| r.plane);
        planes.flat_map(|p| [FRAC_PI_2 - p.to_angle(), -FRAC_PI_2 - p.to_angle()]).collect()
    }

    /// Answers of what is observed, at the slew of `at`.
    pub fn rows<const N: usize>(
        &self,
        at: &Influence<'_>,
        observed: &impl Observed<N>,
    ) -> Result<Rows<N>, EnvelopeFault> {
        let slew = at.slew_rad();
        let mut pulls = Vec::with_capacity(self.ropes.len());
        let mut legs = Vec::with_capacity(self.ropes.len());
        for (i, rope) in self.ropes.iter().enumerate() {
            let columns = at.pull(rope.pull.point)?;
            let answers = columns.each_ref().map(|c| observed.of(at, c));
            let row: [DVec3; N] = std::array::from_fn(|k| DVec3::new(answers[0][k], answers[1][k], answers[2][k]));
            let leg = self.leg_direction(i, rope, slew)?;
            legs.push(leg.map_or([0.0; N], |d| row.map(|r| r.dot(d))));
            pulls.push(row);
        }
        let weight = at.of_weight(|c| observed.of(at, c))?;
        let mut constant = weight.map(|w| w * self.actions.weight_factor);
        for force in &self.actions.fixed {
            let part = fixed(at, observed, force)?;
            for (sum, more) in constant.iter_mut().zip(part) {
                *sum += more;
            }
        }
        Ok(Rows { pulls, legs, wind: self.wind_rows(at, observed), tether: self.tether_rows(observed), constant })
    }

    /// The greatest value of the weighted sum over everything that may act.
    pub fn support<const N: usize>(&self, rows: &Rows<N>, w: &[f64; N], slew: f64) -> f64 {
        let mut sum = sum1(&rows.constant, w);
        for (i, rope) in self.ropes.iter().enumerate() {
            sum += rope.greatest(sum3(&rows.pulls[i], w), sum1(&rows.legs[i], w), slew);
        }
        sum + sum2(&rows.wind, w).length() + sum2(&rows.tether, w).length()
    }

    /// The same of the weighted sum plus `factor` times a condition, and how fast it rises with the factor: the condition
    /// in the state that attains it.
    pub fn support_with<const N: usize>(
        &self,
        rows: &Rows<N>,
        w: &[f64; N],
        (condition, factor): (&Rows<1>, f64),
        slew: f64,
    ) -> (f64, f64) {
        let mut sum = sum1(&rows.constant, w) + condition.constant[0] * factor;
        let mut rise = condition.constant[0];
        for (i, rope) in self.ropes.iter().enumerate() {
            let c = sum3(&rows.pulls[i], w) + condition.pulls[i][0] * factor;
            let (ratio, leg) = rope.leg(sum1(&rows.legs[i], w) + condition.legs[i][0] * factor);
            let direction = rope.maximizer(c, slew);
            let unit = direction.dot(c) + leg;
            let tension = rope.tension(unit);
            sum += tension * unit;
            rise += tension * (direction.dot(condition.pulls[i][0]) + ratio * condition.legs[i][0]);
        }
        let wind = sum2(&rows.wind, w) + condition.wind[0] * factor;
        let tether = sum2(&rows.tether, w) + condition.tether[0] * factor;
        sum += wind.length() + tether.length();
        rise += wind.normalize_or_zero().dot(condition.wind[0]) + tether.normalize_or_zero().dot(condition.tether[0]);
        (sum, rise)
    }

    /// A state in which the weighted sum takes that value.
    pub fn state<const N: usize>(&self, rows: &Rows<N>, w: &[f64; N], slew: f64) -> State {
        let mut pulls_n = Vec::with_capacity(self.ropes.len());
        let mut legs_n = Vec::with_capacity(self.ropes.len());
        for (i, rope) in self.ropes.iter().enumerate() {
            let c = sum3(&rows.pulls[i], w);
            let direction = rope.maximizer(c, slew);
            let (ratio, leg) = rope.leg(sum1(&rows.legs[i], w));
            let tension = rope.tension(direction.dot(c) + leg);
            pulls_n.push(direction * tension);
            legs_n.push(ratio * tension);
        }
        State {
            pulls_n,
            legs_n,
            wind: sum2(&rows.wind, w).normalize_or_zero(),
            tether: sum2(&rows.tether, w).normalize_or_zero(),
        }
    }

    /// A state with every rope pulling the least that it may.
    pub fn slackened(&self, mut state: State) -> State {
        for ((rope, pull), leg) in self.ropes.iter().zip(&mut state.pulls_n).zip(&mut state.legs_n) {
            let tension = pull.length();
            let share = if tension > 0.0 { rope.pull.least_n / tension } else { 1.0 };
            *pull *= share;
            *leg *= share;
        }
        state
    }

    /// The direction of a rope nearest to another, both in arm axes.
    pub fn nearest(&self, rope: usize, to: DVec3, slew: f64) -> DVec3 {
        self.ropes.get(rope).map_or(to, |rope| rope.maximizer(to, slew))
    }

    fn leg_direction(&self, index: usize, rope: &Rope, slew_rad: f64) -> Result<Option<DVec3>, EnvelopeFault> {
        let Some(leg) = rope.pull.second_leg else {
            return Ok(None);
        };
        let p = rope.point;
        let height = self.model.unit().mast_height_m - p.drop_m;
        let at = DVec3::new(p.x_m, p.sideways_m, height);
        let toward = (turned(leg.anchor_m, -slew_rad) - at).try_normalize();
        toward.map(Some).ok_or(EnvelopeFault::AnchorAtPoint { pull: index, slew_rad })
    }

    fn wind_rows<const N: usize>(&self, at: &Influence<'_>, observed: &impl Observed<N>) -> [DVec2; N] {
        let Some(columns) = &self.wind else {
            return [DVec2::ZERO; N];
        };
        let [x, y] = columns.each_ref().map(|c| observed.of(at, c));
        std::array::from_fn(|k| DVec2::new(x[k], y[k]))
    }

    fn tether_rows<const N: usize>(&self, observed: &impl Observed<N>) -> [DVec2; N] {
        let Some(tether) = self.actions.tether else {
            return [DVec2::ZERO; N];
        };
        let place = DVec3::Z * tether.height_m;
        let [x, y] = [DVec3::X, DVec3::Y]
            .map(|axis| observed.of_base(Wrench::of_force(axis * tether.force_n, place, DVec3::ZERO)));
        std::array::from_fn(|k| DVec2::new(x[k], y[k]))
    }
}

impl Rope {
    fn new(model: &UnitModel, actions: &Actions, index: usize, pull: Pull) -> Result<Self, EnvelopeFault> {
        let cap = pull.cone.cap().map_err(|fault| EnvelopeFault::Cone { pull: index, fault })?;
        let point = *model.rope_point(pull.point)?;
        let plane = match actions.slew_hold {
            SlewHold::Held => None,
            SlewHold::Free => DVec2::new(point.x_m, point.sideways_m).try_normalize(),
        };
        Ok(Self { pull, point, cap, plane })
    }

    /// The greatest of tension · (c·d + ratio · leg) over directions, tension and ratio.
    fn greatest(&self, c: DVec3, leg: f64, slew: f64) -> f64 {
        let unit = self.support(c, slew) + self.leg(leg).1;
        self.tension(unit) * unit
    }

    /// max c·d over the rope's directions; c in arm axes.
    fn support(&self, c: DVec3, slew: f64) -> f64 {
        match (self.plane, self.cap.is_cut()) {
            (None, false) => self.cap.support(c),
            (Some(plane), false) => self.cap.support_in_plane(c, plane),
            (_, true) => self.maximizer(c, slew).dot(c),
        }
    }

    /// A maximizer in arm axes. Limits of lean are in structure axes.
    fn maximizer(&self, c: DVec3, slew: f64) -> DVec3 {
        match (self.plane, self.cap.is_cut()) {
            (None, false) => self.cap.maximizer(c),
            (Some(plane), false) => self.cap.maximizer_in_plane(c, plane),
            (None, true) => turned(self.cap.maximizer(turned(c, slew)), -slew),
            (Some(plane), true) => {
                let plane = DVec2::from_angle(slew).rotate(plane);
                let d = self.cap.maximizer_in_plane(turned(c, slew), plane);
                turned(d, -slew)
            }
        }
    }

    /// The tension that makes most of an answer for a unit tension.
    fn tension(&self, answer: f64) -> f64 {
        if answer > 0.0 { self.pull.tension_n } else { self.pull.least_n }
    }

    /// The ratio of the second leg that makes most of its answer for a unit tension, and that.
    fn leg(&self, answer: f64) -> (f64, f64) {
        let Some(leg) = self.pull.second_leg else {
            return (0.0, 0.0);
        };
        let ratio = if answer > 0.0 { leg.ratio[1] } else { leg.ratio[0] };
        (ratio, ratio * answer)
    }
}

fn fixed<const N: usize>(
    at: &Influence<'_>,
    observed: &impl Observed<N>,
    force: &FixedForce,
) -> Result<[f64; N], EnvelopeFault> {
    let in_arm_axes = match force.axes {
        ForceAxes::Arm => force.force_n,
        ForceAxes::Structure => turned(force.force_n, -at.slew_rad()),
    };
    match force.on {
        ForceOn::Base { height_m } => {
            let place = DVec3::Z * height_m;
            Ok(observed.of_base(Wrench::of_force(in_arm_axes, place, DVec3::ZERO)))
        }
        ForceOn::Point(point) => {
            let columns = at.pull(point)?.each_ref().map(|c| observed.of(at, c));
            let f = in_arm_axes.to_array();
            Ok(std::array::from_fn(|k| (0..3).map(|axis| columns[axis][k] * f[axis]).sum()))
        }
    }
}

fn check(actions: &Actions) -> Result<(), EnvelopeFault> {
    number("weight_factor", actions.weight_factor)?;
    for (i, pull) in actions.pulls.iter().enumerate() {
        number(&format!("pulls[{i}].tension_n"), pull.tension_n)?;
        number(&format!("pulls[{i}].least_n"), pull.least_n)?;
        if pull.least_n > pull.tension_n {
            return Err(EnvelopeFault::TensionOrder { pull: i, least_n: pull.least_n, most_n: pull.tension_n });
        }
        if let Some(leg) = pull.second_leg {
            let [least, most] = leg.ratio;
            number(&format!("pulls[{i}].second_leg.ratio"), least)?;
            number(&format!("pulls[{i}].second_leg.ratio"), most)?;
            finite(&format!("pulls[{i}].second_leg.anchor_m"), leg.anchor_m)?;
            if least > most {
                return Err(EnvelopeFault::RatioOrder { pull: i, least, most });
            }
        }
    }
    if let Some(tether) = actions.tether {
        number("tether.force_n", tether.force_n)?;
        finite("tether.height_m", DVec3::splat(tether.height_m))?;
    }
    for (i, force) in actions.fixed.iter().enumerate() {
        finite(&format!("fixed[{i}].force_n"), force.force_n)?;
        if let ForceOn::Base { height_m } = force.on {
            finite(&format!("fixed[{i}].on.height_m"), DVec3::splat(height_m))?;
        }
    }
    match &actions.wind {
        Some(wind) => check_wind(wind),
        None => Ok(()),
    }
}

fn check_wind(wind: &super::actions::WindOnUnit) -> Result<(), EnvelopeFault> {
    number("wind.mast_n_per_m", wind.mast_n_per_m)?;
    number("wind.arm_n_per_m", wind.arm_n_per_m)?;
    number("wind.arm_end_n", wind.arm_end_n)?;
    number("wind.brace_n", wind.brace_n)?;
    for (i, lump) in wind.lumps.iter().enumerate() {
        number(&format!("wind.lumps[{i}].force_n"), lump.force_n)?;
    }
    Ok(())
}

fn number(field: &str, value: f64) -> Result<(), EnvelopeFault> {
    if value.is_finite() && value >= 0.0 {
        Ok(())
    } else {
        Err(EnvelopeFault::Number { field: field.to_owned(), value })
    }
}

pub(super) fn finite(field: &str, v: DVec3) -> Result<(), EnvelopeFault> {
    match v.to_array().into_iter().find(|x| !x.is_finite()) {
        None => Ok(()),
        Some(value) => Err(EnvelopeFault::Number { field: field.to_owned(), value }),
    }
}
