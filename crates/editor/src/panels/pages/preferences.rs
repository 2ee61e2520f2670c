//! Preferences: units of measure, theme, wheel.

use egui::{Button, RichText, Ui};
use gantline_plan::quantity::UnitSystem;

use crate::intent::Intent;
use crate::preferences::{Preferences, ThemeChoice, WheelDoes};
use crate::sight::Look;

/// Shows the page.
pub fn show(ui: &mut Ui, look: Look<'_>, preferences: &Preferences, intents: &mut Vec<Intent>) {
    ui.add_space(8.0);
    let units = [("Meters, kilonewtons", UnitSystem::Si), ("Feet and inches, pounds", UnitSystem::UsCustomary)];
    choice(ui, look, "Units of measure", &units, preferences.units, |units| intents.push(Intent::Units(units)));
    let themes = [("As the system", ThemeChoice::System), ("Light", ThemeChoice::Light), ("Dark", ThemeChoice::Dark)];
    choice(ui, look, "Theme", &themes, preferences.theme, |theme| intents.push(Intent::Theme(theme)));
    let wheel = [("Zooms", WheelDoes::Zooms), ("Pans", WheelDoes::Pans)];
    choice(ui, look, "Wheel over a sheet", &wheel, preferences.wheel, |wheel| intents.push(Intent::Wheel(wheel)));
    ui.add_space(8.0);
    let words = "Units of measure change what is shown and how bare numbers are read; the plan itself stays the same.";
    ui.label(RichText::new(words).color(look.palette.ink_soft));
}

fn choice<T: Copy + PartialEq>(
    ui: &mut Ui,
    look: Look<'_>,
    name: &str,
    choices: &[(&str, T)],
    now: T,
    mut chosen: impl FnMut(T),
) {
    ui.label(RichText::new(name).color(look.palette.ink_soft));
    ui.horizontal(|ui| {
        for &(text, value) in choices {
            if ui.add(Button::selectable(value == now, text)).clicked() {
                chosen(value);
            }
        }
    });
    ui.add_space(8.0);
}
