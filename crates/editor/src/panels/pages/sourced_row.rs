//! A row of the basis sheet: a figure, its source, who stands behind it. Another value asks for its reason first.

use egui::{Button, Id, Key, RichText, TextEdit, Ui};
use gantline_plan::basis::{Confirmation, Sourced};
use gantline_plan::quantity::{self, Kind};

use super::basis::exactly;
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::Field;
use crate::widgets::field::Entered;

/// What a row is about.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// What the figure is.
    pub name: &'a str,
    /// The group it stands in.
    pub group: &'a str,
    /// What is counted.
    pub kind: Kind,
    /// Who confirms; empty: nobody yet.
    pub by: &'a str,
}

/// A value that waits for its reason.
#[derive(Debug, Clone, Default)]
struct Pending {
    value: f64,
    reason: String,
    /// Whether the field of the reason had the focus once.
    begun: bool,
}

/// Width of the names.
const NAMES: f32 = 250.0;

/// Shows a row; gives the figure in its new state.
pub fn sourced_row(ui: &mut Ui, look: Look<'_>, asked: Asked<'_>, now: &Sourced<f64>) -> Option<Sourced<f64>> {
    let at = ui.scope_id().with(("pending", asked.group, asked.name));
    let aside = exactly(asked.kind, now.value, look);
    let field = Field::figure(asked.name, asked.kind, Some(now.value)).label_width(NAMES).aside(&aside);
    let (_, entered) = field.show(ui, look.palette, look.units);
    if let Some(Entered::Figure(value)) = entered {
        ui.data_mut(|data| data.insert_temp(at, Pending { value, ..Pending::default() }));
    }
    if let Some(pending) = ui.data(|data| data.get_temp::<Pending>(at)) {
        return reason(ui, look, asked, now, at, pending);
    }
    standing(ui, look, asked, now)
}

/// Source, standing, and the button that confirms.
fn standing(ui: &mut Ui, look: Look<'_>, asked: Asked<'_>, now: &Sourced<f64>) -> Option<Sourced<f64>> {
    let open = now.is_unconfirmed();
    let ink = if open { look.palette.unchecked } else { look.palette.meets };
    let mut confirmed = None;
    ui.horizontal_wrapped(|ui| {
        let small = |text: &str| RichText::new(text).size(type_scale::SMALL);
        ui.label(small(&standing_words(&now.standing)).color(ink));
        if open {
            let button = ui.add_enabled(!asked.by.is_empty(), Button::new(small("Confirm")).small());
            let name = format!("Confirm {}, {}", asked.name, asked.group);
            button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
            if button.clicked() {
                confirmed = Some(now.clone().confirmed(asked.by));
            }
        }
        ui.label(small(&now.source).color(look.palette.ink_soft));
    });
    ui.add_space(4.0);
    confirmed
}

/// Another value takes its place only with a reason.
fn reason(
    ui: &mut Ui,
    look: Look<'_>,
    asked: Asked<'_>,
    now: &Sourced<f64>,
    at: Id,
    mut pending: Pending,
) -> Option<Sourced<f64>> {
    let units = look.units;
    let words = format!(
        "Why {} in place of {}?",
        quantity::number(asked.kind, pending.value, units),
        quantity::number(asked.kind, now.value, units)
    );
    let mut done = None;
    let mut kept = true;
    ui.horizontal(|ui| {
        let label = ui.label(RichText::new(words).color(look.palette.ink));
        let response = ui.add(TextEdit::singleline(&mut pending.reason).desired_width(240.0)).labelled_by(label.id);
        if !pending.begun {
            response.request_focus();
            pending.begun = true;
        }
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        let may = !pending.reason.trim().is_empty();
        let pressed = ui.add_enabled(may, Button::new("Override")).clicked();
        if may && (entered || pressed) {
            done = Some(now.clone().overridden(pending.value, pending.reason.trim()));
        }
        kept = done.is_none() && !ui.button("Keep").clicked();
    });
    ui.data_mut(|data| {
        if kept {
            data.insert_temp(at, pending);
        } else {
            data.remove_temp::<Pending>(at);
        }
    });
    done
}

/// Who stands behind a value, in words.
pub fn standing_words(standing: &Confirmation) -> String {
    match standing {
        Confirmation::Default => "default, not confirmed".to_owned(),
        Confirmation::Confirmed { by } => format!("confirmed by {by}"),
        Confirmation::Overridden { reason } => format!("overridden: {reason}"),
    }
}
