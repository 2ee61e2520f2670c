//! A checked unit with its frame factored once: everything linear about it, ready for any slew.

use glam::{DMat3, DVec3};
use nalgebra::{DMatrix, DVector};

use super::brace_line::{BraceLine, Lower};
use super::build_frame::{FrameOfUnit, Pieces};
use super::check::{check, on_unit};
use super::column::{Column, Forces, at_upper_pin};
use super::describe::{Brace, HeadJoint, RopePoint, Unit};
use super::fault::UnitFault;
use super::influence::{BraceWork, Influence};
use super::station::{Part, Side, Station};
use crate::envelope::WindOnUnit;
use crate::frame::{FactoredFrame, LoadCase};
use crate::wrench::Wrench;

/// A unit whose answers to loads can be asked for.
///
/// Mast and arm alone are a tree on one support; the brace adds one unknown, its axial force N, and
/// a pin at the head adds one condition. With D the displacement of the upper against the lower pin,
/// n the brace's axis and f its give, for loads alone in the tree (0), for unit forces between the
/// pins (F), and for a unit rotation of the arm on its pin (G):
///
/// - rigid head: extension N·f = n·D0 − N·n·F·n, so N = n·D0 / (f + n·F·n);
/// - pinned head: no moment about the pin, so N = M_y / (n·G) with M_y that of the loads on the arm.
///
/// D0 and F come from the space frame of the tree. The whole frame, brace and pin included, solved
/// directly, gives the same and is what tests hold this against.
#[derive(Debug, Clone)]
pub struct UnitModel {
    pub(super) unit: Unit,
    pub(super) line: Option<BraceLine>,
    tree: FrameOfUnit,
    factored: FactoredFrame,
    /// Columns: displacement of all nodes under unit forces between the pins along x, y, z, then
    /// under unit forces at each rope point.
    fields: DMatrix<f64>,
    /// Three columns for each rope point.
    pub(super) pulls: Vec<[Column; 3]>,
    /// Weight without the brace.
    weight: Column,
    /// Weight of a brace of 1 N, half at each end.
    brace_weight: Column,
    pub(super) work: BraceWork,
}

impl UnitModel {
    /// Checks the unit, names the first field at fault, and prepares its answers.
    pub fn new(unit: &Unit) -> Result<Self, UnitFault> {
        check(unit)?;
        let line = BraceLine::new(unit);
        let tree = FrameOfUnit::new(unit, Pieces::Tree, f64::INFINITY, 0.0)?;
        let factored = tree.frame.factor()?;
        let fields = fields(unit, line.as_ref(), &tree, &factored)?;
        let mut model = Self {
            unit: unit.clone(),
            line,
            tree,
            factored,
            fields,
            pulls: Vec::new(),
            weight: Column::nothing(unit.points.len()),
            brace_weight: Column::nothing(unit.points.len()),
            work: BraceWork::default(),
        };
        let mut pulls = Vec::with_capacity(unit.points.len());
        for point in &unit.points {
            let [x, y, z] = DVec3::AXES.map(|axis| model.column(Forces::pull(point, axis)));
            pulls.push([x?, y?, z?]);
        }
        model.pulls = pulls;
        model.work = model.brace_work()?;
        model.weight = model.column(Forces::weight(unit))?;
        if let Some(line) = &model.line {
            let mut forces = Forces::default();
            forces.on_brace(unit, line, -DVec3::Z);
            model.brace_weight = model.column(forces)?;
        }
        // A brace that is no good at its own bearing is no good at all.
        model.influence(model.bearing_rad())?;
        Ok(model)
    }

    /// The unit as it was described.
    #[must_use]
    pub const fn unit(&self) -> &Unit {
        &self.unit
    }

    /// The linear answers at a slew, with the brace in place.
    pub fn influence(&self, slew_rad: f64) -> Result<Influence<'_>, UnitFault> {
        Influence::new(self, slew_rad)
    }

    /// The same without the brace: slack, or its foot lost. `None` if the unit doesn't stand so.
    #[must_use]
    pub fn influence_without_brace(&self, slew_rad: f64) -> Option<Influence<'_>> {
        (self.unit.head == HeadJoint::Rigid).then(|| Influence::without_brace(self, slew_rad))
    }

    /// Whether the answers in arm axes depend on the slew: only with a foot that doesn't slew.
    #[must_use]
    pub fn depends_on_slew(&self) -> bool {
        matches!(self.line, Some(BraceLine { lower: Lower::Foot, .. }))
    }

    /// The frame of the unit at a slew, in arm axes, for whoever needs displacements everywhere; no
    /// member longer than `longest_m` (infinite: as few members as there are stretches).
    pub fn frame(&self, pieces: Pieces, longest_m: f64, slew_rad: f64) -> Result<FrameOfUnit, UnitFault> {
        FrameOfUnit::new(&self.unit, pieces, longest_m, slew_rad)
    }

    /// Cuts at both sides of every place where something happens on mast and arm, and `between`
    /// further cuts in each stretch, in order of part and coordinate; then one of the brace.
    #[must_use]
    pub fn stations(&self, between: usize) -> Vec<Station> {
        let mut all = Vec::new();
        for (part, places) in [(Part::Mast, self.mast_places()), (Part::Arm, self.arm_places())] {
            for (i, &place) in places.iter().enumerate() {
                for side in [Side::Before, Side::After] {
                    let outside = (i == 0 && side == Side::Before) || (i + 1 == places.len() && side == Side::After);
                    if !outside {
                        all.push(Station { part, at_m: place, side });
                    }
                }
                if let Some(&next) = places.get(i + 1) {
                    all.extend((1..=between).map(|k| Station {
                        part,
                        at_m: place + (next - place) * k as f64 / (between + 1) as f64,
                        side: Side::After,
                    }));
                }
            }
        }
        if self.line.is_some() {
            all.push(Station { part: Part::Brace, at_m: 0.0, side: Side::After });
        }
        all
    }

    /// A rope point by its index.
    pub fn rope_point(&self, index: usize) -> Result<&RopePoint, UnitFault> {
        self.unit.points.get(index).ok_or(UnitFault::UnknownPoint { index, count: self.unit.points.len() })
    }

    /// The full wind along x and along y of the arm axes.
    pub(crate) fn wind_columns(&self, wind: &WindOnUnit) -> Result<[Column; 2], UnitFault> {
        for (i, lump) in wind.lumps.iter().enumerate() {
            on_unit(&format!("wind.lumps[{i}].on.at_m"), lump.on, &self.unit)?;
        }
        let [x, y] =
            [DVec3::X, DVec3::Y].map(|axis| self.column(Forces::wind(&self.unit, self.line.as_ref(), wind, axis)));
        Ok([x?, y?])
    }

    /// The slew of the brace's own bearing; 0 where it turns with the arm.
    pub(super) fn bearing_rad(&self) -> f64 {
        match self.unit.brace {
            Brace::RearFoot { bearing_rad, .. } => bearing_rad,
            _ => 0.0,
        }
    }

    /// Prepares any forces on the unit.
    pub(crate) fn column(&self, forces: Forces) -> Result<Column, UnitFault> {
        let loads = self.factored.equivalent_loads(&self.tree.load_case(&forces))?;
        let along = |first: usize| {
            let work = |i: usize| self.fields.column(first + i).dot(&loads);
            DVec3::new(work(0), work(1), work(2))
        };
        Ok(Column {
            total: forces.total(&self.unit),
            arm: forces.on_arm(&self.unit),
            pin_gap: along(0),
            points: (0..self.unit.points.len()).map(|i| along(3 + 3 * i)).collect(),
            forces,
        })
    }

    /// The weight at a slew, as factors on two columns: all but the brace, and a brace of 1 N. A brace
    /// from the arm's tail to a foot changes its length with the slew.
    pub(super) fn weight_parts(&self, slew_rad: f64) -> Result<[(f64, &Column); 2], UnitFault> {
        let brace_n = match &self.line {
            Some(line) => line.weight_n_per_m * line.at(slew_rad)?.length_m,
            None => 0.0,
        };
        Ok([(1.0, &self.weight), (brace_n, &self.brace_weight)])
    }

    /// What unit forces between the pins and a unit rotation about the head's pin do.
    fn brace_work(&self) -> Result<BraceWork, UnitFault> {
        let Some(line) = &self.line else {
            return Ok(BraceWork::default());
        };
        let mut gap = [DVec3::ZERO; 3];
        let mut points = vec![[DVec3::ZERO; 3]; self.unit.points.len()];
        for (i, axis) in DVec3::AXES.into_iter().enumerate() {
            let column = self.column(between_pins(&self.unit, line, axis))?;
            gap[i] = column.pin_gap;
            for (point, moved) in points.iter_mut().zip(&column.points) {
                point[i] = *moved;
            }
        }
        let head = DVec3::Z * self.unit.mast_height_m;
        let swing = |at: DVec3| DVec3::Y.cross(at - head);
        let pinned = self.unit.head == HeadJoint::Pinned && line.upper_part == Part::Arm;
        Ok(BraceWork {
            gap: DMat3::from_cols(gap[0], gap[1], gap[2]),
            points: points.into_iter().map(|p| DMat3::from_cols(p[0], p[1], p[2])).collect(),
            swing_gap: pinned.then(|| swing(line.upper)),
            swing_points: self
                .unit
                .points
                .iter()
                .map(|p| swing(head + DVec3::new(p.x_m, p.sideways_m, -p.drop_m)))
                .collect(),
        })
    }

    fn mast_places(&self) -> Vec<f64> {
        let mut places = vec![0.0, self.unit.mast_height_m];
        if let Some(Lower::Mast(height)) = self.line.map(|l| l.lower) {
            places.push(height);
        }
        places.extend(self.unit.lumps.iter().filter_map(|l| match l.on {
            super::describe::Place::Mast { at_m } => Some(at_m),
            super::describe::Place::Arm { .. } => None,
        }));
        in_order(places)
    }

    fn arm_places(&self) -> Vec<f64> {
        let mut places = vec![-self.unit.tail_m, 0.0, self.unit.outreach_m];
        places.extend(self.unit.points.iter().map(|p| p.x_m));
        places.extend(self.line.filter(|l| l.upper_part == Part::Arm).map(|l| l.upper_at_m));
        places.extend(self.unit.lumps.iter().filter_map(|l| match l.on {
            super::describe::Place::Arm { at_m } => Some(at_m),
            super::describe::Place::Mast { .. } => None,
        }));
        in_order(places)
    }
}

impl Column {
    fn nothing(points: usize) -> Self {
        Self {
            forces: Forces::default(),
            total: Wrench::default(),
            arm: Wrench::default(),
            pin_gap: DVec3::ZERO,
            points: vec![DVec3::ZERO; points],
        }
    }
}

fn in_order(mut places: Vec<f64>) -> Vec<f64> {
    places.sort_by(f64::total_cmp);
    places.dedup();
    places
}

/// +axis on the upper pin, −axis on the lower one where that is on the mast.
pub(super) fn between_pins(unit: &Unit, line: &BraceLine, axis: DVec3) -> Forces {
    let mut points = vec![at_upper_pin(unit, line, axis)];
    if let Lower::Mast(at_m) = line.lower {
        points.push(super::column::Applied {
            part: Part::Mast,
            at_m,
            wrench: Wrench::of_force(-axis, unit.pins.lower_m, DVec3::ZERO),
        });
    }
    Forces { points, ..Forces::default() }
}

/// Displacement fields of the tree whose work with a load is the displacement that the load causes
/// (Maxwell and Betti).
fn fields(
    unit: &Unit,
    line: Option<&BraceLine>,
    tree: &FrameOfUnit,
    factored: &FactoredFrame,
) -> Result<DMatrix<f64>, UnitFault> {
    let rows = 6 * factored.node_count();
    let mut loads = Vec::with_capacity(3 + 3 * unit.points.len());
    for axis in DVec3::AXES {
        let case = match line {
            Some(line) => tree.load_case(&between_pins(unit, line, axis)),
            None => LoadCase::default(),
        };
        loads.push(factored.equivalent_loads(&case)?);
    }
    for point in &unit.points {
        for axis in DVec3::AXES {
            let case = tree.load_case(&Forces::pull(point, axis));
            loads.push(factored.equivalent_loads(&case)?);
        }
    }
    debug_assert!(loads.iter().all(|l: &DVector<f64>| l.len() == rows));
    Ok(factored.displacements(&DMatrix::from_columns(&loads)))
}
