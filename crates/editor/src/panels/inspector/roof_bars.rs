//! Bars for anchors in a roof's slab: given or not, and their numbers as the structural engineer details them.

use egui::{CollapsingHeader, Id, RichText, Ui};
use gantline_plan::change::{Change, RoofPatch};
use gantline_plan::document::{AnchorBars, EdgeAnchorBars, RoofId, Slab, SlabBars};
use gantline_plan::quantity::Kind;

use super::of_selection::soft;
use crate::intent::Intent;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::field::{Entered, refuse};
use crate::widgets::{Field, ask, switch_row};

/// What the bars are for, who details them, and where they hold.
const WHAT_FOR: &str = "Bars beside the anchors take the load where the concrete alone would break out. They are what the \
                        structural engineer details, and hold only where such bars are placed at every base in this slab. \
                        Counted to EN 1992-4; ACI 318 checks the concrete without them.";
const TENSION: &str = "Bars beside each anchor, crossing the cone that would be pulled out.";
const SHEAR: &str = "Bars toward the edge that is nearest to the anchors. Where two edges are as near, none count.";
/// What stands in the fields of bars just given.
const UNSAID: &str = "Every value begins at the end that helps least: type those of the structural engineer.";

/// A folded group with both kinds of bars.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: RoofId, slab: &Slab, intents: &mut Vec<Intent>) {
    let heading = RichText::new("Bars for anchors").size(type_scale::SMALL).family(type_scale::semibold());
    CollapsingHeader::new(heading).id_salt("bars for anchors").default_open(false).show_unindented(ui, |ui| {
        soft(ui, sight, WHAT_FOR);
        let bars = slab.bars;
        let patch = |bars: SlabBars| {
            let slab = Some(Slab { bars, ..slab.clone() });
            Change::SetRoof(id, RoofPatch { slab, ..RoofPatch::default() })
        };
        let tension = "bars for tension";
        if let Some(given) = switch_row(ui, sight.look.palette, tension, Some(bars.tension.is_some()), TENSION) {
            let tension = given.then_some(AnchorBars::UNSAID);
            intents.push(Intent::change("bars for anchors", patch(SlabBars { tension, ..bars })));
        }
        let beside =
            |ui: &mut Ui, given| ui.push_id("tension", |ui| of_set(ui, sight, given, "bars at each anchor")).inner;
        if let Some(given) = bars.tension
            && let Some((field, tension)) = beside(ui, &given)
        {
            let change = patch(SlabBars { tension: Some(tension), ..bars });
            ask(ui, field, sight.plan, "bars for anchors", change, intents);
        }
        let shear = "bars for shear to an edge";
        if let Some(given) = switch_row(ui, sight.look.palette, shear, Some(bars.shear.is_some()), SHEAR) {
            let shear = given.then_some(EdgeAnchorBars::UNSAID);
            intents.push(Intent::change("bars for anchors", patch(SlabBars { shear, ..bars })));
        }
        if let Some(given) = bars.shear
            && let Some((field, shear)) = ui.push_id("shear", |ui| toward_edge(ui, sight, &given)).inner
        {
            let change = patch(SlabBars { shear: Some(shear), ..bars });
            ask(ui, field, sight.plan, "bars for anchors", change, intents);
        }
    });
}

/// The fields of a set of bars; gives what was entered, with its field.
fn of_set(ui: &mut Ui, sight: &Sight<'_>, bars: &AnchorBars, count: &str) -> Option<(Id, AnchorBars)> {
    let now = *bars;
    let mut changed = how_many(ui, sight, now.count, count).map(|(id, count)| (id, AnchorBars { count, ..now }));
    let mut figure = |ui: &mut Ui, field: Field<'_>, with: fn(AnchorBars, f64) -> AnchorBars| {
        if let Some((id, value)) = entered(ui, sight, field) {
            changed = Some((id, with(now, value)));
        }
    };
    let field = Field::figure("diameter", Kind::Length, Some(now.diameter_m));
    figure(ui, field, |bars, diameter_m| AnchorBars { diameter_m, ..bars });
    let field = Field::figure("yield strength", Kind::Stress, Some(now.yield_pa)).hint("Characteristic, f_yk.");
    figure(ui, field, |bars, yield_pa| AnchorBars { yield_pa, ..bars });
    let field = Field::figure("length in the body", Kind::Length, Some(now.anchored_m));
    let field = field.hint("l_1: how much of each bar lies inside the concrete that would break out.");
    figure(ui, field, |bars, anchored_m| AnchorBars { anchored_m, ..bars });
    let field = Field::figure("bond strength", Kind::Stress, Some(now.bond_pa));
    figure(ui, field.hint("Design value f_bd, EN 1992-1-1 8.4.2."), |bars, bond_pa| AnchorBars { bond_pa, ..bars });
    let field = Field::figure("alpha 1 by alpha 2", Kind::Number, Some(now.alpha));
    figure(ui, field.hint("For shape and cover, EN 1992-1-1 8.4.4."), |bars, alpha| AnchorBars { alpha, ..bars });
    let field = Field::figure("farthest bar", Kind::Length, Some(now.distance_m));
    let field = field.hint("Distance of the farthest counted bar from its anchor.");
    figure(ui, field, |bars, distance_m| AnchorBars { distance_m, ..bars });
    let hint = "Whether the bars end in a hook, a bend or a loop there; straight otherwise.";
    if let Some(hooked) = switch_row(ui, sight.look.palette, "hooked", Some(now.hooked), hint) {
        changed = Some((ui.make_persistent_id("hooked"), AnchorBars { hooked, ..now }));
    }
    if now == AnchorBars::UNSAID {
        soft(ui, sight, UNSAID);
    }
    changed
}

fn toward_edge(ui: &mut Ui, sight: &Sight<'_>, bars: &EdgeAnchorBars) -> Option<(Id, EdgeAnchorBars)> {
    let now = *bars;
    let set = of_set(ui, sight, &now.bars, "bars at each base");
    let field = Field::figure("offset", Kind::Length, Some(now.offset_m));
    let offset = entered(ui, sight, field.hint("e_s: from the bars to the line of the shear."));
    let field = Field::figure("lever arm", Kind::Length, Some(now.lever_m));
    let lever = entered(ui, sight, field.hint("z: between the bars and what presses against them."));
    set.map(|(id, bars)| (id, EdgeAnchorBars { bars, ..now }))
        .or(offset.map(|(id, offset_m)| (id, EdgeAnchorBars { offset_m, ..now })))
        .or(lever.map(|(id, lever_m)| (id, EdgeAnchorBars { lever_m, ..now })))
}

/// A figure that was entered, with its field.
fn entered(ui: &mut Ui, sight: &Sight<'_>, field: Field<'_>) -> Option<(Id, f64)> {
    match field.show(ui, sight.look.palette, sight.look.units) {
        (id, Some(Entered::Figure(value))) => Some((id, value)),
        (_, Some(Entered::Text(_)) | None) => None,
    }
}

/// A count is typed as a whole number.
fn how_many(ui: &mut Ui, sight: &Sight<'_>, now: u32, label: &str) -> Option<(Id, u32)> {
    let shown = now.to_string();
    let (field, entered) = Field::text(label, Some(&shown)).show(ui, sight.look.palette, sight.look.units);
    let Some(Entered::Text(text)) = entered else { return None };
    let Ok(count) = text.parse() else {
        refuse(ui, field, "a whole number, such as 2".to_owned());
        return None;
    };
    Some((field, count))
}
