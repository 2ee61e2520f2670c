//! A unit as a space frame in arm axes: the tree of mast and arm alone, or the whole with its brace.

use glam::DVec3;

use super::brace_line::{BraceLine, Lower};
use super::column::Forces;
use super::describe::{BaseFixity, Brace, HeadJoint, Unit};
use super::fault::UnitFault;
use super::station::Part;
use crate::frame::{Bar, BarId, Frame, Hold, LoadCase, Member, MemberId, MemberLoad, NodeId, Releases, Support};
use crate::stiffness::BarStiffness;
use crate::wrench::Wrench;

/// Places nearer than this share a node, the later one by a rigid link, m. Shorter members would be
/// so stiff beside the others that a solution loses its digits; what bends in 5 mm is nothing.
pub(super) const LEAST_STRETCH_M: f64 = 0.005;

/// Members of one stretch at most, so that odd proportions don't make a frame that no memory holds.
const MOST_MEMBERS: f64 = 64.0;

/// What of the unit goes into the frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pieces {
    /// Mast and arm as one rigid tree, without brace and without the pin at the head.
    Tree,
    /// Mast and arm with the pin at the head if there is one, without brace.
    WithoutBrace,
    /// Everything.
    Whole,
}

/// A unit's frame and where its parts are in it.
#[derive(Debug, Clone)]
pub struct FrameOfUnit {
    /// The slew at which a foot of its own is where it is, rad.
    pub slew_rad: f64,
    /// The frame, in arm axes.
    pub frame: Frame,
    /// Nodes of the mast by height, from the base to the head.
    pub mast_nodes: Vec<(f64, NodeId)>,
    /// Nodes of the arm by distance from the mast axis, from tail to tip.
    pub arm_nodes: Vec<(f64, NodeId)>,
    /// Members of the mast, from below.
    pub mast_members: Vec<MemberId>,
    /// Members of the arm, from the tail.
    pub arm_members: Vec<MemberId>,
    /// The brace.
    pub brace: Option<BarId>,
    /// The node of the brace's foot, or of its lug on the base.
    pub foot: Option<NodeId>,
}

impl FrameOfUnit {
    /// Builds the frame at a slew. Every stretch between two places where something happens becomes
    /// as many equal members as keep them at or below `longest_m`.
    pub(crate) fn new(unit: &Unit, pieces: Pieces, longest_m: f64, slew_rad: f64) -> Result<Self, UnitFault> {
        let mut frame = Frame::new();
        let line = BraceLine::new(unit);
        let (mast_nodes, mast_members) = mast(&mut frame, unit, line.as_ref(), pieces, longest_m);
        let head = mast_nodes[mast_nodes.len() - 1].1;
        let (arm_nodes, arm_members) = arm(&mut frame, unit, line.as_ref(), head, longest_m);
        frame.hold(mast_nodes[0].1, base_support(unit.base));
        let mut built =
            Self { slew_rad, frame, mast_nodes, arm_nodes, mast_members, arm_members, brace: None, foot: None };
        if let (Pieces::Whole, Some(line)) = (pieces, line) {
            built.add_brace(unit, &line, slew_rad)?;
        }
        Ok(built)
    }

    /// The node at a place of mast or arm, or the one to which it is rigidly linked, with the node's
    /// own place; `None` if the place is along a member.
    #[must_use]
    pub fn node(&self, part: Part, at_m: f64) -> Option<(f64, NodeId)> {
        let nodes = match part {
            Part::Mast => &self.mast_nodes,
            Part::Arm => &self.arm_nodes,
            Part::Brace => return None,
        };
        let gap = |node: &(f64, NodeId)| (node.0 - at_m).abs();
        let nearest = nodes.iter().min_by(|a, b| gap(a).total_cmp(&gap(b)))?;
        (gap(nearest) < LEAST_STRETCH_M).then_some(*nearest)
    }

    /// Forces on mast and arm as a load case of this frame. What goes straight to base or foot
    /// bends nothing and is left out.
    pub(crate) fn load_case(&self, forces: &Forces) -> LoadCase {
        let mut case = LoadCase::default();
        for (members, per_m) in [(&self.mast_members, forces.mast_n_per_m), (&self.arm_members, forces.arm_n_per_m)] {
            if per_m != DVec3::ZERO {
                let load = MemberLoad::Uniform(per_m);
                case.members.extend(members.iter().map(|&m| (m, load)));
            }
        }
        for load in &forces.points {
            self.put(&mut case, load.part, load.at_m, load.wrench);
        }
        case
    }

    fn put(&self, case: &mut LoadCase, part: Part, at_m: f64, wrench: Wrench) {
        if let Some((place, node)) = self.node(part, at_m) {
            let link = along(part) * (at_m - place);
            case.nodal.push((node, wrench.moved(link, DVec3::ZERO)));
            return;
        }
        let (nodes, members) = match part {
            Part::Mast => (&self.mast_nodes, &self.mast_members),
            Part::Arm | Part::Brace => (&self.arm_nodes, &self.arm_members),
        };
        let stretch = nodes.windows(2).zip(members);
        for (ends, &member) in stretch.filter(|(ends, _)| ends[0].0 < at_m && at_m < ends[1].0) {
            let load = MemberLoad::Point { at_m: at_m - ends[0].0, force_n: wrench.force_n };
            case.members.push((member, load));
        }
    }

    fn add_brace(&mut self, unit: &Unit, line: &BraceLine, slew_rad: f64) -> Result<(), UnitFault> {
        let at = line.at(slew_rad)?;
        let (lower, lower_offset_m) = match line.lower {
            Lower::Mast(height) => self.pin(Part::Mast, height, unit.pins.lower_m),
            Lower::Base | Lower::Foot => {
                let node = self.frame.add_node(at.lower_pin);
                self.frame.hold(node, foot_support(unit));
                self.foot = Some(node);
                (Some(node), DVec3::ZERO)
            }
        };
        let (upper, upper_offset_m) = self.pin(line.upper_part, line.upper_at_m, unit.pins.upper_m);
        if let (Some(start), Some(end)) = (lower, upper) {
            self.brace = Some(self.frame.add_bar(Bar {
                start,
                end,
                ea_n: line.ea_n(),
                start_offset_m: lower_offset_m,
                end_offset_m: upper_offset_m,
            }));
        }
        Ok(())
    }

    /// The node of a pin and the rigid link from it.
    fn pin(&self, part: Part, at_m: f64, offset_m: DVec3) -> (Option<NodeId>, DVec3) {
        match self.node(part, at_m) {
            Some((place, node)) => (Some(node), offset_m + along(part) * (at_m - place)),
            None => (None, offset_m),
        }
    }
}

const fn along(part: Part) -> DVec3 {
    match part {
        Part::Mast | Part::Brace => DVec3::Z,
        Part::Arm => DVec3::X,
    }
}

fn base_support(base: BaseFixity) -> Support {
    let mut support = Support::FIXED;
    if let BaseFixity::TiltSpring(k) = base {
        support.0[3] = Hold::Spring(k);
        support.0[4] = Hold::Spring(k);
    }
    support
}

fn foot_support(unit: &Unit) -> Support {
    let mut support = Support::PINNED;
    if let Brace::RearFoot { foot_spring_n_per_m: Some(k), .. } = unit.brace {
        support.0[..3].fill(Hold::Spring(k));
    }
    support
}

fn mast(
    frame: &mut Frame,
    unit: &Unit,
    line: Option<&BraceLine>,
    pieces: Pieces,
    longest_m: f64,
) -> (Vec<(f64, NodeId)>, Vec<MemberId>) {
    let mut places = vec![0.0, unit.mast_height_m];
    if let Some(Lower::Mast(height)) = line.map(|l| l.lower) {
        places.push(height);
    }
    let nodes: Vec<(f64, NodeId)> =
        divided(&places, longest_m).into_iter().map(|z| (z, frame.add_node(DVec3::Z * z))).collect();
    let pinned = pieces != Pieces::Tree && unit.head == HeadJoint::Pinned;
    let last = nodes.len().saturating_sub(2);
    let members = chain(frame, &nodes, unit.mast, -DVec3::X, |i| Releases {
        start: [false; 3],
        end: [false, pinned && i == last, false],
    });
    (nodes, members)
}

fn arm(
    frame: &mut Frame,
    unit: &Unit,
    line: Option<&BraceLine>,
    head: NodeId,
    longest_m: f64,
) -> (Vec<(f64, NodeId)>, Vec<MemberId>) {
    let mut places = vec![0.0, -unit.tail_m, unit.outreach_m];
    places.extend(line.filter(|l| l.upper_part == Part::Arm).map(|l| l.upper_at_m));
    places.extend(unit.points.iter().map(|p| p.x_m));
    let nodes: Vec<(f64, NodeId)> = divided(&places, longest_m)
        .into_iter()
        .map(|x| {
            let at = DVec3::new(x, 0.0, unit.mast_height_m);
            let is_head = x == 0.0;
            (x, if is_head { head } else { frame.add_node(at) })
        })
        .collect();
    let members = chain(frame, &nodes, unit.arm, DVec3::Z, |_| Releases::default());
    (nodes, members)
}

fn chain(
    frame: &mut Frame,
    nodes: &[(f64, NodeId)],
    stiffness: BarStiffness,
    up: DVec3,
    releases: impl Fn(usize) -> Releases,
) -> Vec<MemberId> {
    let pairs = nodes.windows(2).enumerate();
    pairs
        .map(|(i, ends)| {
            frame.add_member(Member { start: ends[0].1, end: ends[1].1, stiffness, up, releases: releases(i) })
        })
        .collect()
}

/// The places in rising order, earlier ones before later ones that lie too near, and every stretch
/// cut into equal members.
fn divided(places: &[f64], longest_m: f64) -> Vec<f64> {
    let mut kept: Vec<f64> = Vec::with_capacity(places.len());
    for &place in places {
        if kept.iter().all(|k| (k - place).abs() >= LEAST_STRETCH_M) {
            kept.push(place);
        }
    }
    kept.sort_by(f64::total_cmp);
    let mut all = Vec::with_capacity(kept.len());
    for ends in kept.windows(2) {
        let span = ends[1] - ends[0];
        let count = (span / longest_m).ceil().clamp(1.0, MOST_MEMBERS) as usize;
        all.extend((0..count).map(|i| ends[0] + span * i as f64 / count as f64));
    }
    all.extend(kept.last());
    all
}
