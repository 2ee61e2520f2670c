//! The tool in hand: a pure state machine that is told events and answers with intents.

use gantline_plan::document::PlacementId;

use super::fit_underlay::{Fit, FitUnderlay};
use super::gesture::GestureEvent;
use super::measure::MeasureTool;
use super::outline::{OutlineTool, Purpose};
use super::select::SelectTool;
use super::sketch::Sketch;
use super::unit::UnitTool;
use super::{Asked, Scene};
use crate::intent::Intent;

/// Kinds of tools.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToolKind {
    /// Selects and drags.
    Select,
    /// Draws a roof.
    Roof,
    /// Draws a hole.
    Hole,
    /// Draws an obstacle.
    Obstacle,
    /// Places units.
    Unit,
    /// Measures.
    Measure,
    /// Sets the scale of an underlay.
    ScaleUnderlay,
    /// Sets the turn of an underlay.
    TurnUnderlay,
}

/// The tool in hand.
#[derive(Debug, Clone)]
pub enum Tool {
    /// Selects and drags.
    Select(SelectTool),
    /// Draws outlines.
    Outline(OutlineTool),
    /// Places units.
    Unit(UnitTool),
    /// Measures.
    Measure(MeasureTool),
    /// Sets scale or turn of an underlay.
    Underlay(FitUnderlay),
}

impl Default for Tool {
    fn default() -> Self {
        Self::Select(SelectTool::default())
    }
}

impl Tool {
    /// A fresh tool.
    pub fn of(kind: ToolKind) -> Self {
        match kind {
            ToolKind::Select => Self::Select(SelectTool::default()),
            ToolKind::Roof => Self::Outline(OutlineTool::new(Purpose::Roof)),
            ToolKind::Hole => Self::Outline(OutlineTool::new(Purpose::Hole)),
            ToolKind::Obstacle => Self::Outline(OutlineTool::new(Purpose::Obstacle)),
            ToolKind::Unit => Self::Unit(UnitTool::default()),
            ToolKind::Measure => Self::Measure(MeasureTool::default()),
            ToolKind::ScaleUnderlay => Self::Underlay(FitUnderlay::new(Fit::Scale)),
            ToolKind::TurnUnderlay => Self::Underlay(FitUnderlay::new(Fit::Turn)),
        }
    }

    /// Its kind.
    pub const fn kind(&self) -> ToolKind {
        match self {
            Self::Select(_) => ToolKind::Select,
            Self::Outline(outline) => match outline.purpose() {
                Purpose::Roof => ToolKind::Roof,
                Purpose::Hole => ToolKind::Hole,
                Purpose::Obstacle => ToolKind::Obstacle,
            },
            Self::Unit(_) => ToolKind::Unit,
            Self::Measure(_) => ToolKind::Measure,
            Self::Underlay(fitting) => match fitting.fit() {
                Fit::Scale => ToolKind::ScaleUnderlay,
                Fit::Turn => ToolKind::TurnUnderlay,
            },
        }
    }

    /// One event.
    pub fn step(&mut self, event: &GestureEvent, scene: &Scene<'_>) -> Vec<Intent> {
        match self {
            Self::Select(tool) => tool.step(event, scene),
            Self::Outline(tool) => tool.step(event, scene),
            Self::Unit(tool) => tool.step(event, scene),
            Self::Measure(tool) => tool.step(event, scene),
            Self::Underlay(tool) => tool.step(event, scene),
        }
    }

    /// Takes a new look after something was typed or another make-up was taken in hand.
    pub fn renew(&mut self, scene: &Scene<'_>) -> Vec<Intent> {
        match self {
            Self::Select(tool) => tool.renew(scene),
            Self::Unit(tool) => tool.renew(scene),
            Self::Outline(_) | Self::Measure(_) | Self::Underlay(_) => Vec::new(),
        }
    }

    /// What can be typed now.
    pub fn asks(&self) -> Vec<Asked> {
        match self {
            Self::Select(tool) => tool.asks(),
            Self::Outline(tool) => tool.asks(),
            Self::Unit(tool) => tool.asks(),
            Self::Measure(_) => Vec::new(),
            Self::Underlay(tool) => tool.asks(),
        }
    }

    /// Whether Esc has something to drop here before it drops the tool.
    pub fn is_busy(&self) -> bool {
        match self {
            Self::Select(tool) => tool.is_busy(),
            Self::Outline(tool) => tool.is_busy(),
            Self::Unit(tool) => tool.is_busy(),
            Self::Measure(tool) => tool.is_busy(),
            Self::Underlay(tool) => tool.is_busy(),
        }
    }

    /// The unit that is being dragged.
    pub fn dragged_unit(&self) -> Option<PlacementId> {
        match self {
            Self::Select(tool) => tool.dragged_unit(),
            Self::Outline(_) | Self::Unit(_) | Self::Measure(_) | Self::Underlay(_) => None,
        }
    }

    /// What it waits for.
    pub fn waits_for(&self) -> String {
        match self {
            Self::Select(tool) => tool.waits_for(),
            Self::Outline(tool) => tool.waits_for(),
            Self::Unit(tool) => tool.waits_for(),
            Self::Measure(tool) => tool.waits_for(),
            Self::Underlay(tool) => tool.waits_for(),
        }
    }

    /// What is drawn over the sheet.
    pub fn sketch(&self, scene: &Scene<'_>) -> Sketch {
        match self {
            Self::Select(tool) => tool.sketch(scene),
            Self::Outline(tool) => tool.sketch(scene),
            Self::Unit(tool) => tool.sketch(scene),
            Self::Measure(tool) => tool.sketch(),
            Self::Underlay(tool) => tool.sketch(),
        }
    }
}
