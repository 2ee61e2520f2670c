//! One load on a unit, as what it does to any cut and as the work it does on the fields that matter.

use glam::DVec3;

use super::brace_line::{BraceLine, Lower};
use super::describe::{Place, RopePoint, Unit};
use super::station::{Part, Station};
use crate::envelope::WindOnUnit;
use crate::wrench::Wrench;

/// A force (and moment) at a place of mast or arm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Applied {
    pub part: Part,
    pub at_m: f64,
    /// About the axis point of the part at `at_m`, arm axes.
    pub wrench: Wrench,
}

/// Forces on mast and arm that act together, in arm axes.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Forces {
    pub points: Vec<Applied>,
    /// Over the whole mast, N/m.
    pub mast_n_per_m: DVec3,
    /// Over the whole arm with its tail, N/m.
    pub arm_n_per_m: DVec3,
    /// Straight on the base, about the origin.
    pub on_base: Wrench,
    /// Straight on the foot, N.
    pub on_foot: DVec3,
}

/// Forces with all that is needed to answer for them at any slew.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Column {
    pub forces: Forces,
    /// Everything on mast, arm and base, about the origin.
    pub total: Wrench,
    /// Everything on the arm, about the head.
    pub arm: Wrench,
    /// Displacement of the brace's upper pin less that of its lower one, in the tree, m.
    pub pin_gap: DVec3,
    /// Displacements of the rope points in the tree, m.
    pub points: Vec<DVec3>,
}

impl Forces {
    /// A force at a rope point.
    pub fn pull(point: &RopePoint, force_n: DVec3) -> Self {
        let offset = DVec3::new(0.0, point.sideways_m, -point.drop_m);
        Self {
            points: vec![Applied {
                part: Part::Arm,
                at_m: point.x_m,
                wrench: Wrench::of_force(force_n, offset, DVec3::ZERO),
            }],
            ..Self::default()
        }
    }

    /// A force on the axis of mast or arm.
    pub fn on_axis(place: Place, force_n: DVec3) -> Applied {
        let (part, at_m) = match place {
            Place::Mast { at_m } => (Part::Mast, at_m),
            Place::Arm { at_m } => (Part::Arm, at_m),
        };
        Applied { part, at_m, wrench: Wrench { force_n, moment_nm: DVec3::ZERO } }
    }

    /// The weight of the unit without its brace.
    pub fn weight(unit: &Unit) -> Self {
        let lumps = unit.lumps.iter();
        Self {
            points: lumps.map(|lump| Self::on_axis(lump.on, DVec3::Z * -lump.weight_n)).collect(),
            mast_n_per_m: DVec3::Z * -unit.mast.weight_n_per_m,
            arm_n_per_m: DVec3::Z * -unit.arm.weight_n_per_m,
            ..Self::default()
        }
    }

    /// The full wind along a horizontal axis of the arm axes.
    pub fn wind(unit: &Unit, brace: Option<&BraceLine>, wind: &WindOnUnit, axis: DVec3) -> Self {
        let across = DVec3::Y * axis.y;
        let tip = Place::Arm { at_m: unit.outreach_m };
        let lumps = wind.lumps.iter().map(|l| Self::on_axis(l.on, axis * l.force_n));
        let end = Self::on_axis(tip, DVec3::X * (axis.x * wind.arm_end_n));
        let mut forces = Self {
            points: lumps.chain([end]).collect(),
            mast_n_per_m: axis * wind.mast_n_per_m,
            arm_n_per_m: across * wind.arm_n_per_m,
            ..Self::default()
        };
        if let Some(line) = brace {
            forces.on_brace(unit, line, axis * wind.brace_n);
        }
        forces
    }

    /// A force spread along the brace, half of which goes to each end.
    pub fn on_brace(&mut self, unit: &Unit, line: &BraceLine, force_n: DVec3) {
        let half = force_n / 2.0;
        self.points.push(at_upper_pin(unit, line, half));
        match line.lower {
            Lower::Mast(at_m) => self.points.push(Applied {
                part: Part::Mast,
                at_m,
                wrench: Wrench::of_force(half, unit.pins.lower_m, DVec3::ZERO),
            }),
            Lower::Base => {
                if let Ok(at) = line.at(0.0) {
                    self.on_base += Wrench::of_force(half, at.lower_pin, DVec3::ZERO);
                }
            }
            Lower::Foot => self.on_foot += half,
        }
    }

    /// All forces times a factor.
    pub fn scale(&mut self, factor: f64) {
        for load in &mut self.points {
            load.wrench = load.wrench * factor;
        }
        self.mast_n_per_m *= factor;
        self.arm_n_per_m *= factor;
        self.on_base = self.on_base * factor;
        self.on_foot *= factor;
    }

    /// Everything on mast, arm and base, about the origin.
    pub fn total(&self, unit: &Unit) -> Wrench {
        self.beyond(unit, &Station::mast(0.0, super::station::Side::Before)) + self.on_base
    }

    /// Everything on the arm, about the head.
    pub fn on_arm(&self, unit: &Unit) -> Wrench {
        let head = head(unit);
        let mut sum = Wrench::default();
        for load in self.points.iter().filter(|l| l.part == Part::Arm) {
            sum += load.wrench.moved(axis_point(unit, load), head);
        }
        let span = unit.outreach_m + unit.tail_m;
        let middle = head + DVec3::X * ((unit.outreach_m - unit.tail_m) / 2.0);
        sum + Wrench::of_force(self.arm_n_per_m * span, middle, head)
    }

    /// What the part beyond a cut of mast or arm does to the part before it, about the cut, arm axes,
    /// as far as these forces are the only ones.
    pub fn beyond(&self, unit: &Unit, cut: &Station) -> Wrench {
        match cut.part {
            Part::Mast => self.above(unit, cut),
            Part::Arm if is_tail(cut) => -self.behind(unit, cut),
            Part::Arm => self.before(unit, cut),
            Part::Brace => Wrench::default(),
        }
    }

    fn above(&self, unit: &Unit, cut: &Station) -> Wrench {
        let here = DVec3::Z * cut.at_m;
        let mut sum = self.on_arm(unit).moved(head(unit), here);
        for load in &self.points {
            if load.part == Part::Mast && cut.is_before(load.at_m) {
                sum += load.wrench.moved(DVec3::Z * load.at_m, here);
            }
        }
        let left = unit.mast_height_m - cut.at_m;
        let middle = here + DVec3::Z * (left / 2.0);
        sum + Wrench::of_force(self.mast_n_per_m * left, middle, here)
    }

    fn before(&self, unit: &Unit, cut: &Station) -> Wrench {
        self.of_arm_piece(unit, cut, unit.outreach_m, |load| cut.is_before(load))
    }

    fn behind(&self, unit: &Unit, cut: &Station) -> Wrench {
        self.of_arm_piece(unit, cut, -unit.tail_m, |load| !cut.is_before(load))
    }

    /// Everything on the piece of the arm from the cut to `end_m`, about the cut.
    fn of_arm_piece(&self, unit: &Unit, cut: &Station, end_m: f64, belongs: impl Fn(f64) -> bool) -> Wrench {
        let here = head(unit) + DVec3::X * cut.at_m;
        let mut sum = Wrench::default();
        for load in &self.points {
            if load.part == Part::Arm && belongs(load.at_m) {
                sum += load.wrench.moved(axis_point(unit, load), here);
            }
        }
        let left = end_m - cut.at_m;
        let middle = here + DVec3::X * (left / 2.0);
        sum + Wrench::of_force(self.arm_n_per_m * left.abs(), middle, here)
    }
}

/// A force at the brace's upper pin.
pub(super) fn at_upper_pin(unit: &Unit, line: &BraceLine, force_n: DVec3) -> Applied {
    Applied {
        part: line.upper_part,
        at_m: line.upper_at_m,
        wrench: Wrench::of_force(force_n, unit.pins.upper_m, DVec3::ZERO),
    }
}

/// A cut of the arm behind the mast axis; at the axis itself the side decides.
fn is_tail(cut: &Station) -> bool {
    cut.at_m < 0.0 || (cut.at_m == 0.0 && cut.side == super::station::Side::Before)
}

fn head(unit: &Unit) -> DVec3 {
    DVec3::Z * unit.mast_height_m
}

fn axis_point(unit: &Unit, load: &Applied) -> DVec3 {
    match load.part {
        Part::Arm => head(unit) + DVec3::X * load.at_m,
        Part::Mast | Part::Brace => DVec3::Z * load.at_m,
    }
}
