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

/// So many outlines and faults are listed at once; the others are folded.
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
        let count = found.loops.len();
        for index in 0..count.min(LISTED) {
            outline(ui, look, found, choosing, index, intents);
        }
        folded(ui, look, "outlines", count.saturating_sub(LISTED), |ui, index| {
            outline(ui, look, found, choosing, LISTED + index, intents);
        });
    });
}

fn outline(
    ui: &mut Ui,
    look: Look<'_>,
    found: &Outlines,
    choosing: &Choosing,
    index: usize,
    intents: &mut Vec<Intent>,
) {
    let (Some(one), Some(role)) = (found.loops.get(index), choosing.roles.get(index)) else { return };
    let on = choosing.selected == Some(index);
    let layer = choosing.work.layers.get(one.layer).map_or("", |layer| layer.name.as_str());
    let words = format!("{} {}: {} · {layer}", index + 1, role.name(), area(one.area_m2, look.units));
    let row = Button::selectable(on, (RichText::new(words), egui::Atom::grow()));
    let row = row.min_size(vec2(ui.available_width(), 24.0)).truncate();
    if ui.add(row).clicked() {
        intents.push(Intent::Outline(OutlineWish::Select((!on).then_some(index))));
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
        let refused = found.faulty.iter().map(|one| (format!("Refused: {}", one.why), one.place()));
        let gaps = found.loops.iter().flat_map(|one| &one.gaps);
        let gaps = gaps.map(|gap| (format!("Closed: a gap of {}", length(gap.width_m, look.units)), gap.at));
        let meetings = found
            .meetings
            .iter()
            .map(|meeting| (format!("Outlines {} and {} meet", meeting.first + 1, meeting.second + 1), meeting.at));
        let open = found.open.iter().map(|run| {
            let why = if run.branches { "Open where three lines meet" } else { "Open at its ends" };
            (why.to_owned(), run.ends()[0])
        });
        rows(ui, look, ("refused", refused.collect()), palette.blocking, intents);
        rows(ui, look, ("that meet", meetings.collect()), palette.caution, intents);
        rows(ui, look, ("gaps that were closed", gaps.collect()), palette.ink, intents);
        rows(ui, look, ("open", open.collect()), palette.ink_soft, intents);
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
                soft(ui, look, format!("Degrees became meters on the plane that touches WGS 84 at {plane}."));
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

/// Rows of a kind: the first ones, and the others folded, so that each can be read and gone to.
fn rows(
    ui: &mut Ui,
    look: Look<'_>,
    (kind, all): (&str, Vec<(String, DVec2)>),
    ink: egui::Color32,
    intents: &mut Vec<Intent>,
) {
    let (first, others) = all.split_at(all.len().min(LISTED));
    for (why, at) in first {
        place_row(ui, look, why, Some(*at), ink, intents);
    }
    folded(ui, look, kind, others.len(), |ui, index| {
        if let Some((why, at)) = others.get(index) {
            place_row(ui, look, why, Some(*at), ink, intents);
        }
    });
}

/// What is left of a list, to be opened: a part of it at a time, since a list of thousands would stop the window.
fn folded(ui: &mut Ui, look: Look<'_>, kind: &str, count: usize, mut row: impl FnMut(&mut Ui, usize)) {
    for begin in (0..count).step_by(LISTED) {
        let end = count.min(begin + LISTED);
        let words = format!("{} to {} of {} {kind}", LISTED + begin + 1, LISTED + end, LISTED + count);
        let text = RichText::new(words).size(type_scale::SMALL).color(look.palette.ink_soft);
        egui::CollapsingHeader::new(text)
            .id_salt((kind, begin))
            .show_unindented(ui, |ui| (begin..end).for_each(|index| row(ui, index)));
    }
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
