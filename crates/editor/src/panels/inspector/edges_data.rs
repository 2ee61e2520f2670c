//! Parapet and facade fields of edges.

use egui::{Id, Ui};
use gantline_plan::change::{Change, EdgePatch};
use gantline_plan::document::edge::Edge;
use gantline_plan::document::plan::EdgePlace;
use gantline_plan::document::{EdgeId, FacadeFoot, RoofId};
use gantline_plan::quantity::{self, Kind};

use super::inset_picture::inset_picture;
use super::of_selection::soft;
use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::choice_row::Entry;
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, choice_row, section, switch_row};

/// Which edges a field asks a change for.
#[derive(Debug, Clone, Copy)]
pub struct Asking<'a> {
    /// What panels see.
    pub sight: &'a Sight<'a>,
    /// The edges.
    pub ids: &'a [EdgeId],
}

impl Asking<'_> {
    /// Asks for a change of these edges' data. Whoever sets a value stands behind it no more than before.
    pub fn set(&self, ui: &Ui, field: Id, patch: EdgePatch, intents: &mut Vec<Intent>) {
        ask(ui, field, self.sight.plan, "set edges", Change::SetEdges(self.ids.to_vec(), patch), intents);
    }

    /// A field for a length.
    fn length(&self, ui: &mut Ui, field: Field<'_>, intents: &mut Vec<Intent>, patch: impl FnOnce(f64) -> EdgePatch) {
        let (id, entered) = field.show(ui, self.sight.look.palette, self.sight.look.units);
        if let Some(Entered::Figure(value)) = entered {
            self.set(ui, id, patch(value), intents);
        }
    }
}

/// The value that all share; none where they differ.
pub fn shared<T: PartialEq>(values: impl IntoIterator<Item = T>) -> Option<T> {
    let mut values = values.into_iter();
    let first = values.next()?;
    values.all(|value| value == first).then_some(first)
}

/// The parapet.
pub fn parapet(ui: &mut Ui, asking: Asking<'_>, edges: &[&Edge], places: &[EdgePlace<'_>], intents: &mut Vec<Intent>) {
    let sight = asking.sight;
    section(ui, sight.look.palette, "Parapet", |ui| {
        let height = shared(edges.iter().map(|edge| edge.parapet.height_m));
        let field = Field::figure("over structural slab", Kind::Length, height);
        let field = field.hint("From the top of the structural slab to the top of the coping; 0 for no parapet.");
        asking.length(ui, field, intents, |value| EdgePatch { parapet_height_m: Some(value), ..EdgePatch::default() });
        let over_finish = shared(places.iter().map(|place| place.edge().parapet.height_m - place.roof.build_up_m))
            .map_or_else(
                || "over finish: mixed".to_owned(),
                |height_m| format!("= {} over finish", quantity::length(height_m, sight.look.units)),
            );
        soft(ui, sight, over_finish);
        let thickness = shared(edges.iter().map(|edge| edge.parapet.thickness_m));
        asking.length(ui, Field::figure("thickness", Kind::Length, thickness), intents, |value| EdgePatch {
            parapet_thickness_m: Some(value),
            ..EdgePatch::default()
        });
        let inset = shared(edges.iter().map(|edge| edge.parapet.inset_m));
        let field = Field::figure("inset", Kind::Length, inset).hint("Outer face of the parapet behind the outline.");
        asking.length(ui, field, intents, |value| EdgePatch { parapet_inset_m: Some(value), ..EdgePatch::default() });
        inset_picture(ui, sight.look.palette);
    });
}

/// The facade below the edges.
pub fn facade(ui: &mut Ui, asking: Asking<'_>, edges: &[&Edge], intents: &mut Vec<Intent>) {
    let sight = asking.sight;
    section(ui, sight.look.palette, "Facade", |ui| {
        let needs = shared(edges.iter().map(|edge| edge.facade.needs_access));
        let hint = "Whether technicians must reach it.";
        if let Some(needs_access) = switch_row(ui, sight.look.palette, "needs access", needs, hint) {
            let patch = EdgePatch { needs_access: Some(needs_access), ..EdgePatch::default() };
            intents.push(Intent::change("set edges", Change::SetEdges(asking.ids.to_vec(), patch)));
        }
        if needs == Some(false) {
            soft(ui, sight, "This facade is marked as not needing access.");
        }
        ends_at(ui, asking, edges, intents);
    });
}

fn ends_at(ui: &mut Ui, asking: Asking<'_>, edges: &[&Edge], intents: &mut Vec<Intent>) {
    let sight = asking.sight;
    let now = shared(edges.iter().map(|edge| edge.facade.ends_at));
    let feet = feet(asking);
    let name = |foot: FacadeFoot| match foot {
        FacadeFoot::Ground => "ground, level 0".to_owned(),
        FacadeFoot::Roof(id) => sight.plan.roofs.get(&id).map_or_else(|| id.to_string(), |roof| roof.name.clone()),
        FacadeFoot::LevelM(_) => "a level of its own".to_owned(),
    };
    let shown = now.map_or_else(|| "mixed".to_owned(), name);
    let chosen = choice_row(ui, sight.look.palette, "ends at", &shown, |_| {
        let is_now = |foot: FacadeFoot| match (now, foot) {
            (Some(FacadeFoot::LevelM(_)), FacadeFoot::LevelM(_)) => true,
            (now, foot) => now == Some(foot),
        };
        feet.iter().map(|&foot| Entry::open(name(foot), is_now(foot))).collect()
    });
    if let Some(&foot) = chosen.and_then(|index| feet.get(index)) {
        let patch = EdgePatch { ends_at: Some(foot), ..EdgePatch::default() };
        intents.push(Intent::change("set edges", Change::SetEdges(asking.ids.to_vec(), patch)));
    }
    let levels: Vec<Option<f64>> = edges
        .iter()
        .map(|edge| if let FacadeFoot::LevelM(level_m) = edge.facade.ends_at { Some(level_m) } else { None })
        .collect();
    if levels.iter().all(Option::is_some) {
        let field = Field::figure("level of its foot", Kind::Length, shared(levels).flatten()).aside("Ground is 0");
        asking.length(ui, field, intents, |value| EdgePatch {
            ends_at: Some(FacadeFoot::LevelM(value)),
            ..EdgePatch::default()
        });
    }
}

/// Where facades can end: ground, any roof that is not their own, a level of their own.
fn feet(asking: Asking<'_>) -> Vec<FacadeFoot> {
    let plan = asking.sight.plan;
    let own: Vec<RoofId> = asking.ids.iter().filter_map(|&id| plan.find_edge(id)).map(|place| place.roof_id).collect();
    let roofs = plan.roofs.keys().filter(|id| !own.contains(id)).map(|&id| FacadeFoot::Roof(id));
    std::iter::once(FacadeFoot::Ground).chain(roofs).chain([FacadeFoot::LevelM(0.0)]).collect()
}
