//! Where a unit stands: tag, along, setback, turn, slew, stops.

use egui::{Id, Ui};
use gantline_plan::catalog::{BraceKind, SlewStops};
use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{Placement, PlacementId, Standing, Tag, ThingId};
use gantline_plan::geometry::frame::{Frame, within_half_turn};
use gantline_plan::quantity::{self, Kind};
use glam::DVec2;

use super::of_selection::soft;
use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::choice_row::Entry;
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, choice_row, figure_row, section};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, placement: &Placement, intents: &mut Vec<Intent>) {
    let asking = Asking { sight, id };
    let (palette, units) = (sight.look.palette, sight.look.units);
    let (field, entered) = Field::text("tag", Some(&placement.tag.0)).show(ui, palette, units);
    if let Some(Entered::Text(tag)) = entered {
        asking.set(ui, field, PlacementPatch { tag: Some(Tag(tag)), ..PlacementPatch::default() }, intents);
    }
    section(ui, palette, "Where it stands", |ui| {
        match &placement.stands {
            Standing::OnEdge { edge, setback_m, turn_rad, .. } => {
                figure_row(ui, palette, "on", &words::name(sight.plan, ThingId::Edge(*edge)), "");
                looks_toward(ui, sight, &placement.stands);
                on_edge(ui, asking, *setback_m, *turn_rad, intents);
            }
            Standing::Free { .. } => free(ui, asking, &placement.stands, intents),
        }
        let slew = Field::figure("drawn slew", Kind::Angle, Some(placement.make_up.drawn_slew_rad));
        let slew = slew.hint("The slew at which the unit is drawn; it changes no result.");
        asking.figure(ui, slew, intents, |value| PlacementPatch {
            drawn_slew_rad: Some(value),
            ..PlacementPatch::default()
        });
        stops(ui, asking, placement.make_up.slew_stops, intents);
        foot(ui, asking, placement, intents);
    });
}

fn looks_toward(ui: &mut Ui, sight: &Sight<'_>, stands: &Standing) {
    let Some(frame) = Frame::of(sight.plan, stands) else { return };
    let hint = "Direction of the arm at slew 0, counter-clockwise from the plan's x axis.";
    let toward = quantity::angle(within_half_turn(frame.outward_rad));
    figure_row(ui, sight.look.palette, "looks toward", &toward, hint);
}

#[derive(Clone, Copy)]
struct Asking<'a> {
    sight: &'a Sight<'a>,
    id: PlacementId,
}

impl Asking<'_> {
    fn set(&self, ui: &Ui, field: Id, patch: PlacementPatch, intents: &mut Vec<Intent>) {
        ask(ui, field, self.sight.plan, "set unit", Change::SetPlacements(vec![self.id], patch), intents);
    }

    fn figure(
        &self,
        ui: &mut Ui,
        field: Field<'_>,
        intents: &mut Vec<Intent>,
        patch: impl FnOnce(f64) -> PlacementPatch,
    ) {
        let (id, entered) = field.show(ui, self.sight.look.palette, self.sight.look.units);
        if let Some(Entered::Figure(value)) = entered {
            self.set(ui, id, patch(value), intents);
        }
    }
}

fn on_edge(ui: &mut Ui, asking: Asking<'_>, setback_m: f64, turn_rad: f64, intents: &mut Vec<Intent>) {
    let (palette, units) = (asking.sight.look.palette, asking.sight.look.units);
    let unit = asking.sight.assessment.units.get(&asking.id);
    let set_out = unit.and_then(|unit| unit.setting_out);
    let along = Field::figure("along", Kind::Length, set_out.map(|set_out| set_out.from_start_m));
    let to_end = set_out.map(|set_out| quantity::length(set_out.to_end_m, units)).unwrap_or_default();
    asking.figure(ui, along.hint("From the start of the edge."), intents, |value| PlacementPatch {
        along_m: Some(value),
        ..PlacementPatch::default()
    });
    figure_row(ui, palette, "to the end of the edge", &to_end, "");
    let setback = Field::figure("setback", Kind::Length, Some(setback_m)).hint("Mast axis behind the outline.");
    asking.figure(ui, setback, intents, |value| PlacementPatch { setback_m: Some(value), ..PlacementPatch::default() });
    let turn = Field::figure("turn", Kind::Angle, Some(turn_rad)).hint("Of the base from square to the edge.");
    asking.figure(ui, turn, intents, |value| PlacementPatch { turn_rad: Some(value), ..PlacementPatch::default() });
    let Some(set_out) = set_out else { return };
    for (name, neighbor) in [("unit before", set_out.before), ("unit after", set_out.after)] {
        let text = neighbor.map_or_else(
            || "none".to_owned(),
            |(id, distance_m)| {
                let tag = words::name(asking.sight.plan, ThingId::Placement(id));
                format!("{tag}, {}", quantity::length(distance_m, units))
            },
        );
        figure_row(ui, palette, name, &text, "Distance along the edge.");
    }
}

fn free(ui: &mut Ui, asking: Asking<'_>, stands: &Standing, intents: &mut Vec<Intent>) {
    let Standing::Free { roof, at, outward_rad, serves } = stands else { return };
    let sight = asking.sight;
    figure_row(ui, sight.look.palette, "free on", &words::name(sight.plan, ThingId::Roof(*roof)), "");
    let put = |ui: &Ui, field, at: DVec2, outward_rad: f64, intents: &mut Vec<Intent>| {
        let stands = Standing::Free { roof: *roof, at, outward_rad, serves: serves.clone() };
        ask(ui, field, sight.plan, "set unit", Change::SetStanding(asking.id, stands), intents);
    };
    let fields = [("x", Kind::Length, at.x), ("y", Kind::Length, at.y), ("outward", Kind::Angle, *outward_rad)];
    for (name, kind, value) in fields {
        let (field, entered) = Field::figure(name, kind, Some(value)).show(ui, sight.look.palette, sight.look.units);
        if let Some(Entered::Figure(value)) = entered {
            match name {
                "x" => put(ui, field, DVec2::new(value, at.y), *outward_rad, intents),
                "y" => put(ui, field, DVec2::new(at.x, value), *outward_rad, intents),
                _ => put(ui, field, *at, value, intents),
            }
        }
    }
    if serves.is_empty() {
        soft(ui, sight, "It is anchored to no edge; facades near it are found by its reach.");
    }
}

fn stops(ui: &mut Ui, asking: Asking<'_>, now: SlewStops, intents: &mut Vec<Intent>) {
    /// Stops to begin with, until someone types others: half a turn to either side.
    const FIRST: SlewStops =
        SlewStops::Between { from_rad: -std::f64::consts::FRAC_PI_2, to_rad: std::f64::consts::FRAC_PI_2 };
    let palette = asking.sight.look.palette;
    let kinds = [("whole turn", SlewStops::WholeTurn), ("between stops", FIRST)];
    let whole = now == SlewStops::WholeTurn;
    let shown = if whole { kinds[0].0 } else { kinds[1].0 };
    let chosen = choice_row(ui, palette, "loaded slew", shown, |_| {
        vec![Entry::open(kinds[0].0, whole), Entry::open(kinds[1].0, !whole)]
    });
    if let Some((_, stops)) = chosen.and_then(|index| kinds.get(index))
        && shown != kinds[chosen.unwrap_or(0)].0
    {
        let patch = PlacementPatch { slew_stops: Some(*stops), ..PlacementPatch::default() };
        intents.push(Intent::change("set unit", Change::SetPlacements(vec![asking.id], patch)));
    }
    let SlewStops::Between { from_rad, to_rad } = now else { return };
    let stops = |from_rad, to_rad| PlacementPatch {
        slew_stops: Some(SlewStops::Between { from_rad, to_rad }),
        ..PlacementPatch::default()
    };
    asking.figure(ui, Field::figure("from slew", Kind::Angle, Some(from_rad)), intents, |value| stops(value, to_rad));
    asking.figure(ui, Field::figure("to slew", Kind::Angle, Some(to_rad)), intents, |value| stops(from_rad, value));
}

/// A rear foot has a bearing and a level of its own.
fn foot(ui: &mut Ui, asking: Asking<'_>, placement: &Placement, intents: &mut Vec<Intent>) {
    let unit = asking.sight.assessment.units.get(&asking.id);
    let resolved = unit.and_then(|unit| unit.resolved.as_ref().ok());
    let kind = resolved.and_then(|resolved| resolved.brace.as_ref()).map(|brace| brace.kind);
    if !matches!(kind, Some(BraceKind::RearFoot { .. })) {
        return;
    }
    let bearing = Field::figure("foot bearing", Kind::Angle, Some(placement.make_up.foot_bearing_rad));
    asking.figure(ui, bearing.hint("From straight behind the base."), intents, |value| PlacementPatch {
        foot_bearing_rad: Some(value),
        ..PlacementPatch::default()
    });
    let level = Field::figure("foot level", Kind::Length, Some(placement.make_up.foot_level_m));
    asking.figure(ui, level.aside("over the slab"), intents, |value| PlacementPatch {
        foot_level_m: Some(value),
        ..PlacementPatch::default()
    });
}
