//! Opens the window and runs the application in it.

use std::path::PathBuf;

use super::before_start::{self, StartFault};
use super::desktop_picker::DesktopPicker;
use crate::app::{App, Start};
use crate::preferences::Store;

/// Opens the window, with a plan if one is given, and returns when it is closed.
pub fn run(plan: Option<PathBuf>) -> Result<(), StartFault> {
    before_start::look()?;
    let options = eframe::NativeOptions {
        viewport: egui::ViewportBuilder::default()
            .with_title("Gantline")
            .with_app_id("gantline")
            .with_inner_size([1280.0, 800.0])
            .with_min_inner_size([960.0, 620.0]),
        renderer: eframe::Renderer::Glow,
        ..Default::default()
    };
    let made =
        eframe::run_native("Gantline", options, Box::new(move |creation| Ok(Box::new(Window::new(creation, plan)))));
    made.map_err(|fault| StartFault::NoWindow(fault.to_string()))
}

struct Window {
    app: App,
}

impl Window {
    fn new(creation: &eframe::CreationContext<'_>, open: Option<PathBuf>) -> Self {
        let waker = || {
            let context = creation.egui_ctx.clone();
            move || context.request_repaint()
        };
        let start = Start {
            store: Store::of_user(),
            picker: Box::new(DesktopPicker::new(waker())),
            wake: Box::new(waker()),
            open,
        };
        let mut app = App::new(start);
        app.dress(&creation.egui_ctx);
        Self { app }
    }
}

impl eframe::App for Window {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        self.app.show(ui);
    }
}
