//! What a load does to a unit at one slew: base, foot, brace, joints, cuts, rope points, all linear.

use glam::{DMat3, DVec3};

use super::brace_line::{BraceAt, BraceLine, Lower};
use super::column::Column;
use super::fault::UnitFault;
use super::joint::Joint;
use super::model::{UnitModel, between_pins};
use super::station::{Part, Station};
use crate::wrench::Wrench;

/// A lever of the brace about the arm's pin, as a share of its distance, below which it holds nothing.
const LEAST_LEVER: f64 = 1e-6;

/// What unit forces between the brace's pins, and a unit rotation of the arm on its pin, do.
#[derive(Debug, Clone, Default)]
pub(super) struct BraceWork {
    /// Displacement of the upper against the lower pin; a column for each unit force, m/N.
    pub gap: DMat3,
    /// Displacement of each rope point; a column for each unit force, m/N.
    pub points: Vec<DMat3>,
    /// Displacement of the upper pin as the arm turns by one radian about +y; `None` if it can't.
    pub swing_gap: Option<DVec3>,
    /// Displacement of each rope point as the arm turns by one radian about +y, m.
    pub swing_points: Vec<DVec3>,
}

/// The linear answers of a unit at one slew, in arm axes. A row is to be multiplied with a pull
/// vector in arm axes.
#[derive(Debug, Clone)]
pub struct Influence<'a> {
    model: &'a UnitModel,
    slew_rad: f64,
    brace: Option<Bracing>,
}

/// The brace at this slew: N of a load is `by_gap`·D0 or `by_moment`·M_y.
#[derive(Debug, Clone)]
struct Bracing {
    line: BraceLine,
    at: BraceAt,
    by_gap: DVec3,
    by_moment: f64,
    /// f + n·F·n, m/N.
    give_m_per_n: f64,
    /// n·G, m; 0 if the head is rigid.
    lever_m: f64,
}

impl<'a> Influence<'a> {
    pub(super) fn new(model: &'a UnitModel, slew_rad: f64) -> Result<Self, UnitFault> {
        if !slew_rad.is_finite() {
            return Err(UnitFault::NotFinite { field: "slew_rad".to_owned(), value: slew_rad });
        }
        let brace = match model.line {
            Some(line) => Some(Bracing::new(model, line, slew_rad)?),
            None => None,
        };
        Ok(Self { model, slew_rad, brace })
    }

    pub(super) fn without_brace(model: &'a UnitModel, slew_rad: f64) -> Self {
        Self { model, slew_rad, brace: None }
    }

    /// The slew at which these answers hold, rad.
    #[must_use]
    pub const fn slew_rad(&self) -> f64 {
        self.slew_rad
    }

    /// Brace axial force (tension positive) for a pull at a rope point.
    pub fn brace_of_pull(&self, point: usize) -> Result<DVec3, UnitFault> {
        let [x, y, z] = self.pull(point)?;
        Ok(DVec3::new(self.brace(x), self.brace(y), self.brace(z)))
    }

    /// Brace axial force under self-weight (factor 1), N.
    pub fn brace_of_weight(&self) -> Result<f64, UnitFault> {
        Ok(self.of_weight(|c| [self.brace(c)])?[0])
    }

    /// Action on the structure at the base, about its reference point, for a pull at a rope point.
    pub fn base_of_pull(&self, point: usize) -> Result<[DVec3; 6], UnitFault> {
        Ok(rows(self.pull(point)?, |c| self.base(c).six()))
    }

    /// The same under self-weight (factor 1), N and N·m.
    pub fn base_of_weight(&self) -> Result<[f64; 6], UnitFault> {
        self.of_weight(|c| self.base(c).six())
    }

    /// Force on the structure at the brace's own foot, for a pull at a rope point; zero rows if it
    /// has none.
    pub fn foot_of_pull(&self, point: usize) -> Result<[DVec3; 3], UnitFault> {
        Ok(rows(self.pull(point)?, |c| self.foot(c).to_array()))
    }

    /// The same under self-weight (factor 1), N.
    pub fn foot_of_weight(&self) -> Result<DVec3, UnitFault> {
        Ok(DVec3::from_array(self.of_weight(|c| self.foot(c).to_array())?))
    }

    /// Action at a joint (see [`Joint`]), about the joint, for a pull at a rope point.
    pub fn joint_of_pull(&self, joint: Joint, point: usize) -> Result<[DVec3; 6], UnitFault> {
        Ok(rows(self.pull(point)?, |c| self.joint(joint, c).six()))
    }

    /// The same under self-weight (factor 1), N and N·m.
    pub fn joint_of_weight(&self, joint: Joint) -> Result<[f64; 6], UnitFault> {
        self.of_weight(|c| self.joint(joint, c).six())
    }

    /// Inner forces N, V_y, V_z, T, M_y, M_z at a cut (see [`Station`]), for a pull at a rope point.
    pub fn section_of_pull(&self, station: Station, point: usize) -> Result<[DVec3; 6], UnitFault> {
        Ok(rows(self.pull(point)?, |c| self.section(station, c).six()))
    }

    /// The same under self-weight (factor 1), N and N·m.
    pub fn section_of_weight(&self, station: Station) -> Result<[f64; 6], UnitFault> {
        self.of_weight(|c| self.section(station, c).six())
    }

    /// Displacement of one rope point for a pull at another (or the same), m/N.
    pub fn displacement_of_pull(&self, at: usize, pulled: usize) -> Result<[DVec3; 3], UnitFault> {
        self.pull(at)?;
        Ok(rows(self.pull(pulled)?, |c| self.displacement(at, c).to_array()))
    }

    /// Displacement of a rope point under self-weight (factor 1), m.
    pub fn displacement_of_weight(&self, at: usize) -> Result<DVec3, UnitFault> {
        self.pull(at)?;
        Ok(DVec3::from_array(self.of_weight(|c| self.displacement(at, c).to_array())?))
    }

    pub(crate) fn pull(&self, point: usize) -> Result<&'a [Column; 3], UnitFault> {
        self.model.pulls.get(point).ok_or(UnitFault::UnknownPoint { index: point, count: self.model.pulls.len() })
    }

    /// What self-weight (factor 1) does to N observed numbers.
    pub(crate) fn of_weight<const N: usize>(
        &self,
        observe: impl Fn(&Column) -> [f64; N],
    ) -> Result<[f64; N], UnitFault> {
        let [(a, rest), (b, brace)] = self.model.weight_parts(self.slew_rad)?;
        let mut sum = observe(rest).map(|v| v * a);
        if b != 0.0 {
            for (total, part) in sum.iter_mut().zip(observe(brace)) {
                *total += part * b;
            }
        }
        Ok(sum)
    }

    /// Axial force of the brace, N, tension positive.
    pub(crate) fn brace(&self, column: &Column) -> f64 {
        self.brace.as_ref().map_or(0.0, |b| b.axial(column))
    }

    /// Action on the structure at the base: all loads, less what a foot of its own takes.
    pub(crate) fn base(&self, column: &Column) -> Wrench {
        match &self.brace {
            Some(b) if b.line.lower == Lower::Foot => column.total - b.pull_at_upper(b.axial(column)),
            _ => column.total,
        }
    }

    /// Force on the structure at the brace's own foot.
    pub(crate) fn foot(&self, column: &Column) -> DVec3 {
        match &self.brace {
            Some(b) if b.line.lower == Lower::Foot => b.at.axis * b.axial(column) + column.forces.on_foot,
            _ => DVec3::ZERO,
        }
    }

    pub(crate) fn joint(&self, joint: Joint, column: &Column) -> Wrench {
        let Some(b) = &self.brace else {
            return match joint {
                Joint::ArmOnMast => column.arm,
                Joint::MastOnBase => column.total - column.forces.on_base,
                Joint::BraceUpper | Joint::BraceLower => Wrench::default(),
            };
        };
        let axial = b.axial(column);
        let force = |force_n| Wrench { force_n, moment_nm: DVec3::ZERO };
        match joint {
            Joint::ArmOnMast if b.line.upper_part == Part::Arm => {
                let head = DVec3::Z * self.model.unit.mast_height_m;
                column.arm - b.pull_at_upper(axial).moved(DVec3::ZERO, head)
            }
            Joint::ArmOnMast => column.arm,
            Joint::MastOnBase => {
                let all = column.total - column.forces.on_base;
                match b.line.lower {
                    Lower::Mast(_) => all,
                    Lower::Base | Lower::Foot => all - b.pull_at_upper(axial),
                }
            }
            Joint::BraceUpper => force(b.at.axis * -axial),
            Joint::BraceLower => force(b.at.axis * axial),
        }
    }

    /// Inner forces at a cut, in the part's local axes.
    pub(crate) fn section(&self, station: Station, column: &Column) -> Wrench {
        let unit = &self.model.unit;
        if station.part == Part::Brace {
            return Wrench { force_n: DVec3::X * self.brace(column), moment_nm: DVec3::ZERO };
        }
        let mut here = column.forces.beyond(unit, &station);
        if let Some(b) = &self.brace {
            let unit_pull = between_pins(unit, &b.line, -b.at.axis);
            here += unit_pull.beyond(unit, &station) * b.axial(column);
        }
        match station.part {
            Part::Mast => here.in_axes(DVec3::Z, DVec3::Y, -DVec3::X),
            Part::Arm | Part::Brace => here,
        }
    }

    /// Displacement of a rope point.
    pub(crate) fn displacement(&self, at: usize, column: &Column) -> DVec3 {
        let alone = column.points.get(at).copied().unwrap_or_default();
        let Some(b) = &self.brace else { return alone };
        let work = &self.model.work;
        let axial = b.axial(column);
        let by_brace = work.points[at] * b.at.axis * axial;
        alone - by_brace + work.swing_points[at] * b.swing(axial, column)
    }
}

impl Bracing {
    fn new(model: &UnitModel, line: BraceLine, slew_rad: f64) -> Result<Self, UnitFault> {
        let at = line.at(slew_rad)?;
        let give_m_per_n = at.give_m_per_n + at.axis.dot(model.work.gap * at.axis);
        let lever_m = model.work.swing_gap.map_or(0.0, |g| at.axis.dot(g));
        let (by_gap, by_moment) = match model.work.swing_gap {
            None => (at.axis / give_m_per_n, 0.0),
            Some(g) if lever_m.abs() <= LEAST_LEVER * g.length() => {
                return Err(UnitFault::BraceWithoutLever { slew_rad });
            }
            Some(_) => (DVec3::ZERO, 1.0 / lever_m),
        };
        Ok(Self { line, at, by_gap, by_moment, give_m_per_n, lever_m })
    }

    fn axial(&self, column: &Column) -> f64 {
        self.by_gap.dot(column.pin_gap) + self.by_moment * column.arm.moment_nm.y
    }

    /// The force with which the upper pin pulls the brace, about the origin.
    fn pull_at_upper(&self, axial: f64) -> Wrench {
        Wrench::of_force(self.at.axis * axial, self.line.upper, DVec3::ZERO)
    }

    /// Rotation of the arm on its pin about +y, rad.
    fn swing(&self, axial: f64, column: &Column) -> f64 {
        if self.lever_m == 0.0 {
            0.0
        } else {
            (axial * self.give_m_per_n - self.at.axis.dot(column.pin_gap)) / self.lever_m
        }
    }
}

fn rows<const N: usize>(columns: &[Column; 3], of: impl Fn(&Column) -> [f64; N]) -> [DVec3; N] {
    let [x, y, z] = [of(&columns[0]), of(&columns[1]), of(&columns[2])];
    std::array::from_fn(|i| DVec3::new(x[i], y[i], z[i]))
}
