//! A field for a figure: takes any unit and sums, shows the result at once, refuses in place and gives back with Esc.

use egui::{Align, Id, Key, Layout, Response, RichText, Stroke, TextEdit, Ui, vec2};
use gantline_plan::change::{Change, apply};
use gantline_plan::document::Plan;
use gantline_plan::quantity::{self, Kind, ParseFault, UnitSystem};

use crate::intent::Intent;
use crate::theme::{Palette, type_scale};

/// A field.
#[derive(Debug, Clone, Copy)]
pub struct Field<'a> {
    /// Its label.
    pub label: &'a str,
    /// What is asked for; text for names.
    pub asked: Asked<'a>,
    /// What stands beside it.
    pub aside: &'a str,
    /// The hint on hovering.
    pub hint: &'a str,
    /// Width of its label.
    pub label_width: f32,
}

/// What a field asks for, with what it is now. None: several things differ.
#[derive(Debug, Clone, Copy)]
pub enum Asked<'a> {
    /// A figure, SI.
    Figure(Kind, Option<f64>),
    /// A text.
    Text(Option<&'a str>),
}

/// What was entered.
#[derive(Debug, Clone, PartialEq)]
pub enum Entered {
    /// A figure, SI.
    Figure(f64),
    /// A text.
    Text(String),
}

/// What is typed into a field while it has the focus.
#[derive(Debug, Clone, Default)]
struct Typing {
    text: String,
    fault: Option<String>,
    at_work: bool,
}

const LABEL_WIDTH: f32 = 148.0;
const FIELD_WIDTH: f32 = 118.0;

impl<'a> Field<'a> {
    /// A field for a figure.
    pub const fn figure(label: &'a str, kind: Kind, value: Option<f64>) -> Self {
        Self { label, asked: Asked::Figure(kind, value), aside: "", hint: "", label_width: LABEL_WIDTH }
    }

    /// A field for a text.
    pub const fn text(label: &'a str, text: Option<&'a str>) -> Self {
        Self { label, asked: Asked::Text(text), aside: "", hint: "", label_width: LABEL_WIDTH }
    }

    /// With words beside it.
    #[must_use]
    pub const fn aside(mut self, aside: &'a str) -> Self {
        self.aside = aside;
        self
    }

    /// With a label of another width than those in the inspector.
    #[must_use]
    pub const fn label_width(mut self, width: f32) -> Self {
        self.label_width = width;
        self
    }

    /// With a hint.
    #[must_use]
    pub const fn hint(mut self, hint: &'a str) -> Self {
        self.hint = hint;
        self
    }

    /// Shows it; gives what was entered, once, when the field is left or Enter is pressed.
    pub fn show(self, ui: &mut Ui, palette: &Palette, units: UnitSystem) -> (Id, Option<Entered>) {
        let id = ui.make_persistent_id(("field", self.label));
        let mut typing = ui.data(|data| data.get_temp::<Typing>(id)).unwrap_or_default();
        let shown = self.shown(units);
        if !typing.at_work && typing.fault.is_none() {
            typing.text.clone_from(&shown);
        }
        let size = vec2(ui.available_width(), type_scale::ROW);
        let response = ui
            .allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
                ui.set_min_width(size.x);
                self.row(ui, palette, units, id, &mut typing)
            })
            .inner;
        let entered = self.outcome(ui, units, &response, &mut typing, &shown);
        if let Some(fault) = &typing.fault {
            ui.label(RichText::new(fault).size(type_scale::SMALL).color(palette.blocking));
        }
        ui.data_mut(|data| data.insert_temp(id, typing));
        (id, entered)
    }

    fn row(&self, ui: &mut Ui, palette: &Palette, units: UnitSystem, id: Id, typing: &mut Typing) -> Response {
        let label = label_of(ui, palette, self.label, self.label_width);
        let is_text = matches!(self.asked, Asked::Text(_));
        let width = if is_text { ui.available_width() } else { FIELD_WIDTH };
        let align = if is_text { Align::LEFT } else { Align::RIGHT };
        let mut edit = TextEdit::singleline(&mut typing.text)
            .id(id)
            .desired_width(width - 12.0)
            .align(egui::Align2([align, Align::Center]));
        if self.is_mixed() {
            edit = edit.hint_text("mixed");
        }
        let mut response = ui.add(edit).labelled_by(label.id);
        if typing.fault.is_some() {
            ui.painter().rect_stroke(response.rect, 3, Stroke::new(1.6, palette.blocking), egui::StrokeKind::Inside);
        }
        if !self.hint.is_empty() {
            response = response.on_hover_text(self.hint);
        }
        let aside = self.reading(units, typing, &response).unwrap_or_else(|| self.aside.to_owned());
        if !is_text && !aside.is_empty() {
            let text = RichText::new(aside).size(type_scale::SMALL).color(palette.ink_soft);
            ui.add(egui::Label::new(text).truncate());
        }
        response
    }

    fn outcome(
        &self,
        ui: &Ui,
        units: UnitSystem,
        response: &Response,
        typing: &mut Typing,
        shown: &str,
    ) -> Option<Entered> {
        if response.gained_focus() {
            typing.at_work = true;
            select_all(ui, response.id, &typing.text);
        }
        if response.changed() {
            typing.fault = None;
        }
        if !response.lost_focus() {
            return None;
        }
        typing.at_work = false;
        if ui.input(|input| input.key_pressed(Key::Escape)) || typing.text == *shown {
            typing.fault = None;
            shown.clone_into(&mut typing.text);
            return None;
        }
        match self.read(&typing.text, units) {
            Ok(entered) => {
                typing.fault = None;
                Some(entered)
            }
            Err(fault) => {
                typing.fault = Some(fault.to_string());
                None
            }
        }
    }

    fn is_mixed(&self) -> bool {
        matches!(self.asked, Asked::Figure(_, None) | Asked::Text(None))
    }

    fn shown(&self, units: UnitSystem) -> String {
        match self.asked {
            Asked::Figure(kind, Some(value)) => quantity::number(kind, value, units),
            Asked::Text(Some(text)) => text.to_owned(),
            Asked::Figure(_, None) | Asked::Text(None) => String::new(),
        }
    }

    fn read(&self, text: &str, units: UnitSystem) -> Result<Entered, ParseFault> {
        match self.asked {
            Asked::Figure(kind, _) => quantity::parse(kind, text, units).map(Entered::Figure),
            Asked::Text(_) => Ok(Entered::Text(text.trim().to_owned())),
        }
    }

    /// What the text is read as, while it is typed and reads otherwise.
    fn reading(&self, units: UnitSystem, typing: &Typing, response: &Response) -> Option<String> {
        let Asked::Figure(kind, _) = self.asked else {
            return None;
        };
        if !response.has_focus() {
            return None;
        }
        let Ok(Entered::Figure(value)) = self.read(&typing.text, units) else {
            return None;
        };
        let read = quantity::number(kind, value, units);
        (read != typing.text).then(|| format!("= {read}"))
    }
}

/// The label before a field, in the width that all labels of the inspector have.
pub(super) fn label(ui: &mut Ui, palette: &Palette, words: &str) -> Response {
    label_of(ui, palette, words, LABEL_WIDTH)
}

fn label_of(ui: &mut Ui, palette: &Palette, words: &str, width: f32) -> Response {
    let size = vec2(width, type_scale::ROW);
    ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_min_width(width);
        ui.label(RichText::new(words).color(palette.ink_soft))
    })
    .inner
}

/// Selects the whole text, so that typing replaces it.
fn select_all(ui: &Ui, id: Id, text: &str) {
    let mut state = TextEdit::load_state(ui.ctx(), id).unwrap_or_default();
    let whole =
        egui::text::CCursorRange::two(egui::text::CCursor::new(0), egui::text::CCursor::new(text.chars().count()));
    state.cursor.set_char_range(Some(whole));
    TextEdit::store_state(ui.ctx(), id, state);
}

/// Asks for a change that a field wants; one that would be refused is said at the field and changes nothing.
pub fn ask(ui: &Ui, id: Id, plan: &Plan, name: &'static str, change: Change, intents: &mut Vec<Intent>) {
    match apply(plan, &change) {
        Ok(_) => intents.push(Intent::change(name, change)),
        Err(refused) => refuse(ui, id, refused.to_string()),
    }
}

/// Says at a field why what was entered can't be; what was typed stays until Esc or another entry.
pub fn refuse(ui: &Ui, id: Id, why: String) {
    ui.data_mut(|data| {
        let mut typing = data.get_temp::<Typing>(id).unwrap_or_default();
        typing.fault = Some(why);
        data.insert_temp(id, typing);
    });
}
