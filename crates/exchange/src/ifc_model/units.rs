//! Portable units: mast, arm and brace as tubes, together one assembly, as drawn.

use gantline_plan::assess::Part;
use gantline_plan::assess::parts_swept::{Profile, profiles};
use gantline_plan::catalog::{ResolvedUnit, SectionShape};
use gantline_plan::document::{Placement, PlacementId};
use gantline_plan::geometry::frame::Frame;
use glam::{DVec2, DVec3};

use super::bases::unit_placement;
use super::file::Writing;
use super::look::Look;
use super::project::{Storey, aggregates};
use super::step::{NONE, Ref, label};

/// Writes a unit; returns its assembly.
pub fn unit(
    writing: &mut Writing<'_>,
    (id, placement): (PlacementId, &Placement),
    unit: &ResolvedUnit,
    frame: &Frame,
    storey: Storey,
) -> Ref {
    let at = unit_placement(writing, frame, storey);
    let slew_rad = placement.make_up.drawn_slew_rad;
    let (along, side) = directions(slew_rad);
    let height = DVec3::Z * unit.mast.height_m;
    let foot = DVec3::Z * (unit.base.socket_top_m - unit.base.engaged_m).max(0.0);
    let arm = (height - along * unit.arm.tail_m, height + along * unit.arm.outreach_m);
    let mut parts = vec![
        Bar {
            word: "mast",
            kind: "POST",
            name: &unit.mast.name,
            section: unit.mast.tube.section,
            ends: (foot, height),
            side,
        },
        Bar { word: "arm", kind: "MEMBER", name: &unit.arm.name, section: unit.arm.tube.section, ends: arm, side },
    ];
    let profile = profiles(unit).into_iter().find(|profile| profile.part != Part::Arm);
    if let Some((brace, profile)) = unit.brace.as_ref().zip(profile) {
        let ends = brace_ends(&profile, slew_rad, unit.foot_bearing_rad);
        parts.push(Bar { word: "brace", kind: "BRACE", name: &brace.name, section: brace.tube.section, ends, side });
    }
    let members: Vec<Ref> = parts.iter().filter_map(|bar| bar.write(writing, id, placement, at)).collect();
    let assembly = writing.step.add(
        "IFCELEMENTASSEMBLY",
        &format!(
            "{},{NONE},{},{},'Portable unit',{at},{NONE},{},.SITE.,.USERDEFINED.",
            writing.ids.of_thing(&format!("assembly of {id}")),
            label(&format!("Unit {}", placement.tag)),
            label(&unit.family),
            label(&placement.tag.0)
        ),
    );
    aggregates(writing.step, writing.ids, &format!("parts of {id}"), assembly, &members);
    assembly
}

/// A straight part.
struct Bar<'a> {
    word: &'static str,
    kind: &'static str,
    name: &'a str,
    section: SectionShape,
    ends: (DVec3, DVec3),
    side: DVec3,
}

impl Bar<'_> {
    fn write(&self, writing: &mut Writing<'_>, id: PlacementId, placement: &Placement, at: Ref) -> Option<Ref> {
        let mut scene = writing.scene();
        let solid = scene.tube(self.section, self.ends, self.side, Look::Portable)?;
        let shape = scene.swept_shape(&[solid]);
        let values = format!(
            "{},{NONE},{},{},{NONE},{at},{shape},{},.{}.",
            writing.ids.of_thing(&format!("{} of {id}", self.word)),
            label(&format!("{}, {}", placement.tag, self.word)),
            label(self.name),
            label(&placement.tag.0),
            self.kind
        );
        Some(writing.step.add("IFCMEMBER", &values))
    }
}

/// Along the arm and across it, in the base's axes.
fn directions(slew_rad: f64) -> (DVec3, DVec3) {
    let along = DVec2::from_angle(slew_rad);
    (along.extend(0.0), along.perp().extend(0.0))
}

/// Ends of the brace in the base's axes; a foot of its own stays where it is while the arm turns.
fn brace_ends(profile: &Profile, slew_rad: f64, foot_bearing_rad: f64) -> (DVec3, DVec3) {
    let point = |out_m: f64, up_m: f64, turn_rad: f64| directions(turn_rad).0 * out_m + DVec3::Z * up_m;
    let to_turn_rad = if profile.turns { slew_rad } else { foot_bearing_rad };
    (point(profile.from_out_m, profile.from_up_m, slew_rad), point(profile.to_out_m, profile.to_up_m, to_turn_rad))
}
