//! One obstacle: name, from, to.

use egui::Ui;
use gantline_plan::change::Change;
use gantline_plan::document::{Obstacle, ObstacleId, ThingId};
use gantline_plan::geometry::rings;
use gantline_plan::quantity::{self, Kind};

use super::of_selection::{findings, heading};
use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, figure_row, section};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: ObstacleId, intents: &mut Vec<Intent>) {
    let Some(obstacle) = sight.plan.obstacles.get(&id) else { return };
    let (palette, units) = (sight.look.palette, sight.look.units);
    heading(ui, &obstacle.name);
    let set = |ui: &Ui, field, obstacle: Obstacle, intents: &mut Vec<Intent>| {
        ask(ui, field, sight.plan, "set obstacle", Change::SetObstacle(id, obstacle), intents);
    };
    let (field, entered) = Field::text("name", Some(&obstacle.name)).show(ui, palette, units);
    if let Some(Entered::Text(name)) = entered {
        set(ui, field, Obstacle { name, ..obstacle.clone() }, intents);
    }
    section(ui, palette, "Heights over the structural slab", |ui| {
        let from = Field::figure("from", Kind::Length, Some(obstacle.from_m)).aside("its underside");
        let (field, entered) = from.hint("0: it stands on the slab. More: it hangs over it.").show(ui, palette, units);
        if let Some(Entered::Figure(from_m)) = entered {
            set(ui, field, Obstacle { from_m, ..obstacle.clone() }, intents);
        }
        let (field, entered) =
            Field::figure("to", Kind::Length, Some(obstacle.to_m)).aside("its top").show(ui, palette, units);
        if let Some(Entered::Figure(to_m)) = entered {
            set(ui, field, Obstacle { to_m, ..obstacle.clone() }, intents);
        }
    });
    section(ui, palette, "Outline", |ui| {
        figure_row(ui, palette, "on", &words::name(sight.plan, ThingId::Roof(obstacle.roof)), "");
        let area = rings::signed_area_m2(&obstacle.outline).abs();
        figure_row(ui, palette, "area", &quantity::area(area, units), "");
        figure_row(ui, palette, "corners", &obstacle.outline.len().to_string(), "");
    });
    let about = sight.assessment.checks().filter(|check| check.about.contains(&ThingId::Obstacle(id)));
    findings(ui, sight, about, intents);
}
