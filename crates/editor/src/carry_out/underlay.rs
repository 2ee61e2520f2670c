//! Underlays: a file is read behind the window's back, laid under the plan in one step, and pictured for what is looked at.

use std::path::{Path, PathBuf};

use gantline_exchange::outline::{LengthUnit, place_to_keep};
use gantline_exchange::underlay::Extent;
use gantline_plan::change::Change;
use gantline_plan::document::{AttachmentKind, Datum, Plan, Underlay};
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use super::{edit, gesture};
use crate::app::{App, Picking};
use crate::derived::underlays::Looked;
use crate::document::underlay_worker::{Brought, Ground};
use crate::document::{UnderlayDone, UnderlayJob, Wanted};
use crate::intent::Then;
use crate::session::{Camera, Sheet, UnderlayDialog, UnderlayStage, UnderlayWish};
use crate::theme::style;
use crate::tools::ToolKind;

/// How much of what lies below it a new underlay covers: lines of the plan are read over it.
const USUAL_OPACITY: f64 = 0.5;

/// The scale that a page is laid at until someone says another.
const USUAL_PAPER_SCALE: f64 = 100.0;

/// The share of what is seen that an image fills until someone says its scale.
const USUAL_SHARE: f64 = 0.6;

/// Drawings whose coordinates are beyond this have an origin of their own set off from them, m, on round figures.
const NEAR_ORIGIN_M: f64 = 1000.0;
const ROUND_M: f64 = 10.0;

/// A drawing that lies farther than this from the plan's origin belongs to another grid, m.
const SAME_SITE_M: f64 = 20_000.0;

/// Asks for a file.
pub fn ask_for_file(app: &mut App) {
    if app.document.is_some() {
        app.picking = Some(Picking::Underlay);
        app.picker.ask(&Wanted::Underlay);
    }
}

/// Takes a tool for underlays in hand, if there is an underlay.
pub fn take_tool(app: &mut App, kind: ToolKind) {
    match &app.document {
        Some(document) if document.plan().underlays.is_empty() => {
            "There is no underlay yet: Underlay… in the menu lays one.".clone_into(&mut app.session.said);
        }
        Some(_) => gesture::take_tool(app, kind),
        None => {}
    }
}

/// Reads a file.
pub fn read(app: &mut App, path: PathBuf) {
    if app.document.is_none() {
        return;
    }
    app.underlays_asked += 1;
    let serial = app.underlays_asked;
    app.underlay_worker.ask(UnderlayJob::Read { path: path.clone(), serial });
    app.session.underlay = Some(UnderlayDialog { path, stage: UnderlayStage::Reading, serial });
}

/// Takes in what the thread says.
pub fn told(app: &mut App, ctx: &egui::Context, done: UnderlayDone) {
    match done {
        UnderlayDone::Read { serial, outcome } => was_read(app, serial, outcome),
        shown @ UnderlayDone::Shown { .. } => {
            app.underlays.take(ctx, shown);
            app.session.lines = app.underlays.lines();
        }
    }
}

/// A file was read, or not: with one page it is laid at once, with several the page is chosen.
fn was_read(app: &mut App, serial: u64, outcome: Result<Brought, String>) {
    let Some(dialog) = app.session.underlay.as_mut().filter(|dialog| dialog.serial == serial) else { return };
    match outcome {
        Err(why) => dialog.stage = UnderlayStage::Refused(edit::sentence(&why)),
        Ok(brought) if brought.extents.len() == 1 => {
            let path = dialog.path.clone();
            app.session.underlay = None;
            lay(app, &path, &brought, 1);
        }
        Ok(brought) => dialog.stage = UnderlayStage::Choosing(Box::new(brought)),
    }
}

/// Carries out what the dialog asks for.
pub fn wish(app: &mut App, wish: UnderlayWish) {
    let Some(dialog) = app.session.underlay.take() else { return };
    if let (UnderlayWish::Lay(page), UnderlayStage::Choosing(brought)) = (wish, dialog.stage) {
        lay(app, &dialog.path, &brought, page);
    }
}

/// Where an underlay is laid until someone says otherwise, and what is to be known about that.
struct Place {
    m_per_unit: f64,
    origin_m: DVec2,
    grid_origin_m: Option<DVec2>,
    said: String,
}

/// Lays a page under the plan, in one step.
fn lay(app: &mut App, path: &Path, brought: &Brought, page: u32) {
    let Some(document) = &app.document else { return };
    let plan = document.plan();
    let Some(&extent) = brought.extents.get((page as usize).saturating_sub(1)) else { return };
    let seen = match (app.session.cameras.get(&Sheet::Plan), app.session.main_rect) {
        (camera, Some(rect)) => camera.copied().unwrap_or_default().seen(rect),
        (camera, None) => {
            let center = camera.copied().unwrap_or_default().center;
            Bounds { min_m: center - DVec2::splat(ROUND_M), max_m: center + DVec2::splat(ROUND_M) }
        }
    };
    let place = placed(plan, brought, extent, &seen);
    let stem = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    let name = if brought.extents.len() > 1 { format!("{stem}, page {page}") } else { stem };
    let underlay = Underlay {
        name,
        attachment: brought.attachment.hash(),
        page,
        roof: None,
        origin_m: place.origin_m,
        m_per_unit: place.m_per_unit,
        turn_rad: 0.0,
        opacity: USUAL_OPACITY,
        locked: false,
        shown: true,
    };
    let corners = [extent.min, extent.max].map(|corner| underlay.in_plan(corner));
    let mut changes = Vec::new();
    if let Some(grid_origin_m) = place.grid_origin_m {
        changes.push(Change::SetDatum(Datum { grid_origin_m, ..plan.datum.clone() }));
    }
    changes.push(Change::AddUnderlay { underlay, attachment: brought.attachment.clone() });
    let is_first = plan.roofs.is_empty();
    let before = plan.underlays.len();
    edit::change(app, "lay underlay", &Change::All(changes), Then::SelectMade);
    let is_laid = app.document.as_ref().is_some_and(|document| document.plan().underlays.len() > before);
    if !is_laid {
        return;
    }
    app.session.said = place.said;
    if let (true, Some(rect), Some(bounds)) = (is_first, app.session.main_rect, Bounds::of(corners)) {
        app.session.cameras.insert(Sheet::Plan, Camera::fitted(&bounds, rect));
    }
}

fn placed(plan: &Plan, brought: &Brought, extent: Extent, seen: &Bounds) -> Place {
    let kind = brought.attachment.kind();
    let middle = (seen.min_m + seen.max_m) / 2.0;
    let in_middle = |m_per_unit: f64, said: String| Place {
        m_per_unit,
        origin_m: middle - (extent.min + extent.max) / 2.0 * m_per_unit,
        grid_origin_m: None,
        said,
    };
    if let Some(on_paper_m) = kind.on_paper_m() {
        let said =
            format!("Laid as if the page were 1:{USUAL_PAPER_SCALE:.0}. Set its scale: Scale underlay, or its field.");
        return in_middle(on_paper_m * USUAL_PAPER_SCALE, said);
    }
    if kind != AttachmentKind::Dxf {
        let m_per_unit = (seen.size_m() * USUAL_SHARE / extent.size()).min_element();
        return in_middle(m_per_unit, "Laid without a scale. Set it: Scale underlay, or its field.".to_owned());
    }
    let (unit_m, unit) = match brought.stated_m_per_unit {
        Some(unit_m) => (unit_m, "Laid in the unit that the drawing states"),
        None => (LengthUnit::Millimeter.in_m(), "The drawing states no unit: laid as if in millimeters, set its scale"),
    };
    let min_m = extent.min * unit_m;
    let (grid_m, is_blank) = match place_to_keep(plan).map(|kept| kept.origin_m) {
        Some(grid_m) => (grid_m, false),
        None if extent.max.abs().max(extent.min.abs()).max_element() * unit_m <= NEAR_ORIGIN_M => (DVec2::ZERO, true),
        None => ((min_m / ROUND_M).floor() * ROUND_M, true),
    };
    if (min_m - grid_m).abs().max_element() > SAME_SITE_M {
        return in_middle(unit_m, format!("{unit}; its grid is not the plan's: laid in the middle."));
    }
    let grid_origin_m = (is_blank && plan.datum.grid_origin_m != grid_m).then_some(grid_m);
    Place { m_per_unit: unit_m, origin_m: -grid_m, grid_origin_m, said: format!("{unit}, at its own place.") }
}

/// Asks for the pictures that what is looked at needs.
pub fn see_to_pictures(app: &mut App, ctx: &egui::Context) {
    let Some(document) = &app.document else { return };
    let plan = document.plan();
    let session = &app.session;
    let (main, _) = session.slots.placed(plan, &session.selection, session.drawing_pressed());
    let pixels_per_point = f64::from(ctx.pixels_per_point());
    let looked = match (session.cameras.get(&Sheet::Plan), session.main_rect) {
        (Some(camera), Some(rect)) if main == Sheet::Plan => Some(Looked {
            seen: camera.seen(rect),
            m_per_px: camera.m_per_pt / pixels_per_point,
            ground: if style::shown(ctx).dark { Ground::Dark } else { Ground::Light },
            longest_px: ctx.input(|input| input.max_texture_side) as f64,
        }),
        _ => None,
    };
    for job in app.underlays.needed(plan, session.level, looked.as_ref()) {
        app.underlay_worker.ask(job);
    }
    if !plan.underlays.is_empty() || !session.lines.is_empty() {
        app.session.lines = app.underlays.lines();
    }
}
