//! Drawings of the sheets and their painted shapes, kept until plan, selection, scale or theme differ.

use std::collections::BTreeMap;
use std::sync::Arc;

use egui::Painter;
use gantline_drawing::{Drawing, Scale};
use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, RoofId, ThingId};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity::UnitSystem;

use super::views;
use crate::canvas::paint::{Painted, scale_of};
use crate::session::{Camera, OverlaySet, Selection, Sheet, SheetRect};
use crate::theme::Palette;

/// What a drawing is made from.
#[derive(Debug, Clone)]
pub struct View<'a> {
    /// The plan, with the ghost if there is one.
    pub plan: &'a Arc<Plan>,
    /// Its assessment.
    pub assessment: &'a Arc<Assessment>,
    /// What is selected.
    pub selection: &'a Selection,
    /// Overlays.
    pub overlays: OverlaySet,
    /// The sheet beside the inspector: it is small and carries only what matters most.
    pub beside: Option<Sheet>,
    /// The roof worked on.
    pub level: Option<RoofId>,
    /// Units of measure.
    pub units: UnitSystem,
    /// Colors.
    pub palette: &'a Palette,
    /// Whether a gesture is under way: fitted cameras then stay.
    pub in_gesture: bool,
}

/// Drawings of sheets.
#[derive(Debug, Default)]
pub struct Drawn {
    slots: BTreeMap<Sheet, Slot>,
}

#[derive(Debug)]
struct Slot {
    key: Key,
    drawing: Arc<Drawing>,
    memory: views::Memory,
    painted: Option<(bool, Painted)>,
    fitted: Option<(Fit, Camera)>,
}

/// What a fitted camera depends on.
#[derive(Debug, Clone, PartialEq)]
struct Fit {
    sheet: SheetRect,
    plan: PlanKey,
}

/// A plan known by its place in memory: the history never changes a plan in place.
#[derive(Debug, Clone)]
struct PlanKey(Arc<Plan>);

impl PartialEq for PlanKey {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

#[derive(Debug, Clone, PartialEq)]
struct Key {
    plan: PlanKey,
    scale: Scale,
    selection: Selection,
    overlays: OverlaySet,
    is_beside: bool,
    level: Option<RoofId>,
    units: UnitSystem,
}

impl Drawn {
    /// The drawing of a sheet at a scale; none when what it draws is not there.
    pub fn drawing(&mut self, sheet: Sheet, view: &View<'_>, scale: Scale) -> Option<Arc<Drawing>> {
        let key = Key {
            plan: PlanKey(Arc::clone(view.plan)),
            scale,
            selection: view.selection.clone(),
            overlays: view.overlays,
            is_beside: view.beside == Some(sheet),
            level: view.level,
            units: view.units,
        };
        if let Some(slot) = self.slots.get(&sheet)
            && slot.key == key
        {
            return Some(Arc::clone(&slot.drawing));
        }
        let old = self.slots.remove(&sheet);
        let (mut memory, fitted) = old.map_or_else(Default::default, |slot| (slot.memory, slot.fitted));
        let drawing = Arc::new(views::draw(sheet, view, scale, &mut memory)?);
        let slot = Slot { key, drawing: Arc::clone(&drawing), memory, painted: None, fitted };
        self.slots.insert(sheet, slot);
        Some(drawing)
    }

    /// The camera that fits the drawing of a sheet. It stays while a gesture is under way.
    pub fn fitted(&mut self, sheet: Sheet, view: &View<'_>, rect: SheetRect) -> Option<Camera> {
        let fit = Fit { sheet: rect, plan: PlanKey(Arc::clone(view.plan)) };
        if let Some((known, camera)) = self.slots.get(&sheet).and_then(|slot| slot.fitted.as_ref())
            && (*known == fit || view.in_gesture && known.sheet == rect)
        {
            return Some(*camera);
        }
        let camera = views::fitted(sheet, view, rect)?;
        self.drawing(sheet, view, scale_of(&camera))?;
        if let Some(slot) = self.slots.get_mut(&sheet) {
            slot.fitted = Some((fit, camera));
        }
        Some(camera)
    }

    /// Paints the drawing of a sheet, which must have been asked for before.
    pub fn paint(&mut self, sheet: Sheet, camera: &Camera, rect: SheetRect, palette: &Palette, painter: &Painter) {
        let Some(slot) = self.slots.get_mut(&sheet) else {
            return;
        };
        let serves = slot
            .painted
            .as_ref()
            .is_some_and(|(dark, p)| *dark == palette.dark && p.serves(camera, rect, painter.ctx().pixels_per_point()));
        if !serves {
            let painted = Painted::of(&slot.drawing, camera, rect, palette, painter);
            slot.painted = Some((palette.dark, painted));
        }
        if let Some((_, painted)) = &mut slot.painted {
            painted.paint(camera, rect, painter);
        }
    }

    /// Drops drawings of things that are no longer looked at.
    pub fn keep(&mut self, shown: &[Sheet]) {
        self.slots.retain(|sheet, _| shown.contains(sheet));
    }
}

/// Bounds of things in the plan; none when they have no place.
pub fn bounds_of(plan: &Plan, things: impl Iterator<Item = ThingId>) -> Option<Bounds> {
    Bounds::of(things.flat_map(|thing| views::corners_of(plan, thing)))
}
