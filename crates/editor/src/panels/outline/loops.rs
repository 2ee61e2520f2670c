//! The outlines found: what each is taken for, levels and heights, and what was closed, left open or refused.

use egui::{Button, RichText, Ui, vec2};
use gantline_exchange::outline::{Heights, Outlines, Role};
use gantline_plan::quantity::{Kind, area, length};
use glam::DVec2;

use crate::intent::Intent;
use crate::session::Camera;
use crate::session::outline::{Choosing, OutlineWish};
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::field::Entered;
use crate::widgets::{Field, section};

/// So many outlines and faults are listed; all are drawn.
const LISTED: usize = 60;

/// Shows it.
pub fn show(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, intents: &mut Vec<Intent>) {
    let Some(found) = choosing.outlines() else { return };
    outlines(ui, look, found, choosing, intents);
    heights(ui, look, choosing, intents);
    told(ui, look, found, choosing, intents);
}

fn outlines(ui: &mut Ui, look: Look<'_>, found: &Outlines, choosing: &Choosing, intents: &mut Vec<Intent>) {
    section(ui, look.palette, "Outlines", |ui| {
        if found.loops.is_empty() {
            ui.label(RichText::new("No closed outline on these layers.").color(look.palette.caution));
        }
        if let Some(index) = choosing.selected
            && let Some(one) = found.loops.get(index)
        {
            roles(ui, look, choosing, index, one.layer, intents);
        } else if !found.loops.is_empty() {
            let words = "Click an outline, here or in the preview, to say what it is.";
            ui.label(RichText::new(words).size(type_scale::SMALL).color(look.palette.ink_soft));
        }
        for (index, (one, role)) in found.loops.iter().zip(&choosing.roles).enumerate().take(LISTED) {
            let on = choosing.selected == Some(index);
            let layer = choosing.work.layers.get(one.layer).map_or("", |layer| layer.name.as_str());
            let words = format!("{} {}: {} · {layer}", index + 1, role.name(), area(one.area_m2, look.units));
            let row = Button::selectable(on, (RichText::new(words), egui::Atom::grow()));
            let row = row.min_size(vec2(ui.available_width(), 24.0)).truncate();
            if ui.add(row).clicked() {
                intents.push(Intent::Outline(OutlineWish::Select((!on).then_some(index))));
            }
        }
        more(ui, look, found.loops.len());
    });
}

fn more(ui: &mut Ui, look: Look<'_>, count: usize) {
    if count > LISTED {
        let words = format!("and {} more, as drawn", count - LISTED);
        ui.label(RichText::new(words).size(type_scale::SMALL).color(look.palette.ink_soft));
    }
}

fn roles(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, index: usize, layer: usize, intents: &mut Vec<Intent>) {
    let now = choosing.roles.get(index).copied();
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 3.0;
        for role in Role::EACH {
            let on = now == Some(role);
            let response = ui.add(Button::selectable(on, role.name()));
            let name = format!("Mark as {}", role.name().to_lowercase());
            response.widget_info(|| egui::WidgetInfo::selected(egui::Role::Button, true, on, name.as_str()));
            if response.clicked() {
                intents.push(Intent::Outline(OutlineWish::Role(index, role)));
            }
        }
    });
    let name = choosing.work.layers.get(layer).map_or("", |layer| layer.name.as_str());
    if let Some(role) = now
        && ui.button(format!("The same for all of {name}")).clicked()
    {
        intents.push(Intent::Outline(OutlineWish::RoleOfLayer(layer, role)));
    }
    let ink = look.palette.hairline;
    ui.painter().hline(ui.available_rect_before_wrap().x_range(), ui.cursor().min.y, (1.0, ink));
    ui.add_space(4.0);
}

/// A field for each level and height that something marked has.
fn heights(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, intents: &mut Vec<Intent>) {
    type Of = fn(&mut Heights) -> &mut f64;
    const ROOF: &str = "Top of the structural slab over level zero.";
    const OBSTACLE: &str = "Over the structural slab of its roof.";
    let rows: [(Role, &str, &str, Of); 4] = [
        (Role::Roof, "roofs: slab at level", ROOF, |heights| &mut heights.roof_level_m),
        (Role::LowerRoof, "lower roofs: level", ROOF, |heights| &mut heights.lower_roof_level_m),
        (Role::Obstacle, "obstacles: from", OBSTACLE, |heights| &mut heights.obstacle_from_m),
        (Role::Obstacle, "obstacles: to", OBSTACLE, |heights| &mut heights.obstacle_to_m),
    ];
    if rows.iter().all(|(role, ..)| choosing.count(*role) == 0) {
        return;
    }
    section(ui, look.palette, "Levels", |ui| {
        for (_, label, hint, of) in rows.into_iter().filter(|(role, ..)| choosing.count(*role) > 0) {
            let mut heights = choosing.heights;
            let field = Field::figure(label, Kind::Length, Some(*of(&mut heights))).hint(hint);
            if let (_, Some(Entered::Figure(value_m))) = field.show(ui, look.palette, look.units) {
                *of(&mut heights) = value_m;
                intents.push(Intent::Outline(OutlineWish::Heights(heights)));
            }
        }
    });
}

/// What was closed, joined, left open, refused; each place can be gone to.
fn told(ui: &mut Ui, look: Look<'_>, found: &Outlines, choosing: &Choosing, intents: &mut Vec<Intent>) {
    let palette = look.palette;
    section(ui, palette, "What was found on the way", |ui| {
        if let Some(trouble) = &choosing.trouble {
            place_row(ui, look, &trouble.why, trouble.at, palette.blocking, intents);
        }
        for one in found.faulty.iter().take(LISTED) {
            let why = format!("Refused: {}", one.why);
            place_row(ui, look, &why, Some(one.place()), palette.blocking, intents);
        }
        for meeting in found.meetings.iter().take(LISTED) {
            let why = format!("Outlines {} and {} meet", meeting.first + 1, meeting.second + 1);
            place_row(ui, look, &why, Some(meeting.at), palette.caution, intents);
        }
        for gap in found.loops.iter().flat_map(|one| &one.gaps).take(LISTED) {
            let why = format!("Closed: a gap of {}", length(gap.width_m, look.units));
            place_row(ui, look, &why, Some(gap.at), palette.ink, intents);
        }
        let open = found.open.iter().take(LISTED);
        for run in open {
            let why = if run.branches { "Open where three lines meet" } else { "Open at its ends" };
            place_row(ui, look, why, Some(run.ends()[0]), palette.ink_soft, intents);
        }
        more(ui, look, found.open.len());
        let counts = [
            (found.curves, "curves became chords within the tolerance."),
            (found.doubled, "lines or outlines lay on equal ones and count once."),
            (
                found.loops.iter().map(|one| one.corners_joined).sum(),
                "corners were joined to the next, nearer than a millimeter.",
            ),
        ];
        for (count, what) in counts.into_iter().filter(|(count, _)| *count > 0) {
            soft(ui, look, format!("{count} {what}"));
        }
        match (found.plane, choosing.asked.place.and_then(|place| place.plane)) {
            (Some(plane), _) => {
                soft(ui, look, format!("Degrees became meters on the plane that touches WGS 84 at {plane}."))
            }
            (None, Some(plane)) => {
                soft(
                    ui,
                    look,
                    format!("The plan lies on the plane at {plane}: figures are taken as meters on that plane."),
                );
            }
            (None, None) => {}
        }
        if found.origin_m != DVec2::ZERO {
            let [x, y] = found.origin_m.to_array().map(|at| length(at, look.units));
            soft(ui, look, format!("The plan's origin is ({x}, {y}) in the drawing's grid, and the plan keeps that."));
        }
    });
}

fn soft(ui: &mut Ui, look: Look<'_>, words: String) {
    ui.label(RichText::new(words).size(type_scale::SMALL).color(look.palette.ink_soft));
}

/// A row that goes to its place.
fn place_row(ui: &mut Ui, look: Look<'_>, why: &str, at: Option<DVec2>, ink: egui::Color32, intents: &mut Vec<Intent>) {
    /// Width of the stretch that is shown around a place, m in a point.
    const NEAR_M_PER_PT: f64 = 0.005;
    let Some(at) = at else {
        ui.label(RichText::new(why).color(ink));
        return;
    };
    let [x, y] = at.to_array().map(|at| length(at, look.units));
    let text = RichText::new(format!("{why}, at ({x}, {y})")).size(type_scale::SMALL).color(ink);
    let row = Button::new((text, egui::Atom::grow())).frame_when_inactive(false);
    let response = ui.add(row.min_size(vec2(ui.available_width(), 20.0)).wrap());
    if response.on_hover_text("Shows the place in the preview.").clicked() {
        let camera = Camera { center: at, m_per_pt: NEAR_M_PER_PT, ..Camera::default() };
        intents.push(Intent::Outline(OutlineWish::Look(Some(camera))));
    }
}
