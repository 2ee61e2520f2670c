//! Clear zones in section: the room that must stay free under arm and brace; and, dashed, what swings round from behind.

use gantline_plan::assess::Part;
use gantline_plan::assess::parts_swept::{Profile, profiles};
use gantline_plan::assess::swept::SweptBand;
use glam::DVec2;

use super::scene::Scene;
use super::unit::bar;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;

/// Draws the clear zones.
pub(super) fn draw_zones(pencil: &mut Pencil, scene: &Scene) {
    let clear_m = scene.plan.basis.rules.clear.height_m.value;
    let forward_rad = scene.plane.along.to_angle();
    for profile in profiles(scene.unit) {
        if !profile.turns {
            continue;
        }
        let hatch = if profile.part == Part::Arm { Hatch::ClearZoneArm } else { Hatch::ClearZoneBrace };
        let zone = under(&profile, clear_m);
        pencil.area(Layer::ClearZone, Fill::Hatch(hatch), Some(Pen::ClearZone), zone);
        let is_behind = profile.from_out_m.min(profile.to_out_m) < 0.0;
        if is_behind && swings_through(scene, profile.part, forward_rad) {
            let mirrored = |point: DVec2| DVec2::new(-point.x, point.y);
            pencil.ring(Layer::ClearZone, Pen::Ghost, outline(&profile).map(mirrored));
            pencil.ring(Layer::ClearZone, Pen::ClearZone, zone.map(mirrored));
        }
    }
}

/// Whether a part that lies behind the mast comes round to a direction in the plan.
fn swings_through(scene: &Scene, part: Part, direction_rad: f64) -> bool {
    let behind = scene.result.swept.iter().filter(|swept| swept.part == part);
    behind.into_iter().any(|swept| {
        let comes_round = |band: &SweptBand| band.sweep().contains(direction_rad);
        // The arm in front lies in this direction anyway.
        let lies_behind = swept.turned_rad.is_some_and(|turned| (turned - scene.frame.outward_rad).abs() > 1.0);
        lies_behind && (comes_round(&swept.serving) || comes_round(&swept.rest))
    })
}

fn outline(profile: &Profile) -> [DVec2; 4] {
    let (from, to) = ends(profile);
    bar(from, to, profile.depth_m)
}

fn ends(profile: &Profile) -> (DVec2, DVec2) {
    (DVec2::new(profile.from_out_m, profile.from_up_m), DVec2::new(profile.to_out_m, profile.to_up_m))
}

/// The band of a height under a part's lower side.
fn under(profile: &Profile, clear_m: f64) -> [DVec2; 4] {
    let (from, to) = ends(profile);
    let side = (to - from).normalize_or_zero().perp() * (profile.depth_m / 2.0);
    let below = if side.y > 0.0 { -side } else { side };
    let (a, b) = (from + below, to + below);
    let drop = DVec2::Y * clear_m;
    [a, b, b - drop, a - drop]
}
