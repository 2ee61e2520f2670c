//! The preview: outlines as they would be taken, with pan, zoom, and a click that chooses one.

use std::sync::{Arc, Mutex};

use egui::{Align2, Button, FontId, Rect, RichText, Sense, Ui, pos2, vec2};
use gantline_exchange::outline::{Outlines, Role};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::rings::{distance_to_ring, ring_contains};
use gantline_plan::quantity::{area, length};
use glam::DVec2;

use crate::canvas::paint::{Painted, scale_of};
use crate::intent::Intent;
use crate::session::outline::{Answer, Choosing, OutlineWish};
use crate::session::{Camera, SheetRect};
use crate::sight::Look;
use crate::theme::type_scale;
use crate::views::outline_sheet::outline_sheet;

/// A line is taken from this near, points.
const NEAR_PT: f64 = 7.0;

/// What is painted, kept until something of it is another: kept as long as the program runs, saved nowhere.
struct Kept {
    key: Key,
    painted: Painted,
}

/// What a preview is made from.
struct Key {
    found: Arc<Outlines>,
    roles: Vec<Role>,
    selected: Option<usize>,
    trouble: Option<DVec2>,
    is_dark: bool,
}

impl PartialEq for Key {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.found, &other.found)
            && self.roles == other.roles
            && self.selected == other.selected
            && self.trouble == other.trouble
            && self.is_dark == other.is_dark
    }
}

fn kept_id() -> egui::Id {
    egui::Id::unique("preview of outlines")
}

/// Shows it in a rectangle.
pub fn show(ui: &mut Ui, look: Look<'_>, rect: Rect, choosing: &Choosing, intents: &mut Vec<Intent>) {
    let palette = look.palette;
    let response = ui.allocate_rect(rect, Sense::click_and_drag());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, "Preview"));
    let painter = ui.painter_at(rect);
    painter.rect_filled(rect, 3, palette.sheet);
    painter.rect_stroke(rect, 3, (1.0, palette.hairline), egui::StrokeKind::Inside);
    let Some(found) = choosing.outlines() else {
        let font = FontId::proportional(type_scale::HEADING);
        painter.text(rect.center(), Align2::CENTER_CENTER, waits_for(choosing), font, palette.ink_soft);
        return;
    };
    let Some(bounds) = found.bounds else {
        let font = FontId::proportional(type_scale::HEADING);
        let words = "The chosen layers hold no lines.";
        painter.text(rect.center(), Align2::CENTER_CENTER, words, font, palette.ink_soft);
        return;
    };
    let sheet = SheetRect {
        min: DVec2::new(f64::from(rect.min.x), f64::from(rect.min.y)),
        max: DVec2::new(f64::from(rect.max.x), f64::from(rect.max.y)),
    };
    let camera = choosing.camera.unwrap_or_else(|| fitted(&bounds, sheet));
    let trouble = choosing.trouble.as_ref().and_then(|trouble| trouble.at);
    let key = Key {
        found: Arc::clone(found),
        roles: choosing.roles.clone(),
        selected: choosing.selected,
        trouble,
        is_dark: palette.dark,
    };
    let kept = ui.data_mut(|data| data.get_temp_mut_or_default::<Arc<Mutex<Option<Kept>>>>(kept_id()).clone());
    if let Ok(mut kept) = kept.lock() {
        let pixels = painter.ctx().pixels_per_point();
        let serves = kept.as_ref().is_some_and(|one| one.key == key && one.painted.serves(&camera, sheet, pixels));
        if !serves {
            let drawing = outline_sheet(found, &key.roles, key.selected, key.trouble, scale_of(&camera));
            *kept = Some(Kept { painted: Painted::of(&drawing, &camera, sheet, palette, &painter), key });
        }
        if let Some(kept) = kept.as_mut() {
            kept.painted.paint(&camera, sheet, &painter);
        }
    }
    nodes(ui, look, found, choosing, &camera, sheet);
    size_told(ui, look, rect, &bounds);
    if choosing.camera.is_some() {
        let at = Rect::from_min_size(rect.right_top() + vec2(-86.0, 10.0), vec2(76.0, 26.0));
        if ui.put(at, Button::new("Show all")).clicked() {
            intents.push(Intent::Outline(OutlineWish::Look(None)));
        }
    }
    if let Some(moved) = moved(ui, &response, &camera, sheet) {
        intents.push(Intent::Outline(OutlineWish::Look(Some(moved))));
    }
    if response.clicked()
        && let Some(at) = response.interact_pointer_pos()
    {
        let point = camera.drawing_from_screen(sheet, DVec2::new(f64::from(at.x), f64::from(at.y)));
        intents.push(Intent::Outline(OutlineWish::Select(hit(found, point, camera.m_per_pt * NEAR_PT))));
    }
}

/// How large everything is: a drawing in another unit than it says is seen by that.
fn size_told(ui: &mut Ui, look: Look<'_>, rect: Rect, bounds: &Bounds) {
    let [width, depth] = bounds.size_m().to_array().map(|size| length(size, look.units));
    let words = format!("All of it: {width} wide, {depth} deep");
    let at = Rect::from_min_max(rect.left_bottom() + vec2(12.0, -30.0), rect.right_bottom() - vec2(12.0, 6.0));
    let text = RichText::new(words).size(type_scale::SMALL).color(look.palette.ink_soft);
    ui.scope_builder(egui::UiBuilder::new().max_rect(at), |ui| ui.add(egui::Label::new(text).truncate()));
}

fn waits_for(choosing: &Choosing) -> &'static str {
    match &choosing.answer {
        Answer::Computing => "Putting lines together…",
        Answer::Fault(_) => "Nothing to show: the reason is told beside.",
        Answer::Waiting if choosing.asked.unit.is_none() => "Say first in which unit the drawing is.",
        Answer::Waiting | Answer::Found(_) => "Choose the layers that hold the outlines.",
    }
}

/// The camera that shows everything with a margin.
fn fitted(bounds: &Bounds, sheet: SheetRect) -> Camera {
    const FILL: f64 = 0.9;
    let size = bounds.size_m().max(DVec2::splat(1e-3));
    let m_per_pt = (size / (sheet.size() * FILL).max(DVec2::ONE)).max_element();
    Camera { center: bounds.min_m.midpoint(bounds.max_m), m_per_pt, ..Camera::default() }
}

/// The camera after pan and zoom; none when it stays.
fn moved(ui: &Ui, response: &egui::Response, camera: &Camera, sheet: SheetRect) -> Option<Camera> {
    let by = response.drag_delta();
    if by != egui::Vec2::ZERO {
        return Some(camera.panned(DVec2::new(f64::from(by.x), f64::from(by.y))));
    }
    if !response.contains_pointer() {
        return None;
    }
    let (scroll, zoom, at) =
        ui.input(|input| (input.smooth_scroll_delta(), input.zoom_delta(), input.pointer.latest_pos()));
    let about = at.map_or(sheet.middle(), |at| DVec2::new(f64::from(at.x), f64::from(at.y)));
    if zoom != 1.0 {
        return Some(camera.zoomed(f64::from(zoom), about, sheet));
    }
    (scroll.y != 0.0).then(|| camera.zoomed(f64::from(scroll.y / 220.0).exp(), about, sheet))
}

/// The outline whose line is near, else the smallest around a point.
fn hit(found: &Outlines, point: DVec2, near_m: f64) -> Option<usize> {
    let distances = found.loops.iter().map(|one| distance_to_ring(&one.corners, point)).enumerate();
    let nearest = distances.filter(|(_, distance)| *distance <= near_m).min_by(|a, b| a.1.total_cmp(&b.1));
    // Larger ones come first: the last around the point is the smallest.
    nearest.map(|(index, _)| index).or_else(|| found.loops.iter().rposition(|one| ring_contains(&one.corners, point)))
}

/// A node for each outline in sight, with its area and role.
fn nodes(ui: &Ui, look: Look<'_>, found: &Outlines, choosing: &Choosing, camera: &Camera, sheet: SheetRect) {
    const MOST: usize = 200;
    for (index, one) in found.loops.iter().enumerate().take(MOST) {
        let Some(bounds) = Bounds::of(one.corners.iter().copied()) else { continue };
        let place = |at: DVec2| {
            let at = camera.screen_from_drawing(sheet, at);
            pos2(at.x as f32, at.y as f32)
        };
        let rect = Rect::from_two_pos(place(bounds.min_m), place(bounds.max_m));
        let response = ui.interact(rect, egui::Id::unique(("outline", index)), Sense::hover());
        response.widget_info(|| {
            let mut info =
                egui::WidgetInfo::labeled(egui::Role::GraphicsObject, true, format!("Outline {}", index + 1));
            let role = choosing.roles.get(index).map_or("", |role| role.name());
            info.current_text_value = Some(format!("{role}, {}", area(one.area_m2, look.units)));
            info
        });
    }
}
