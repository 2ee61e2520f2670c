//! Opens the window and runs the application in it.

use std::path::PathBuf;
use std::time::Instant;

use gantline_exchange::paper::Printer;

use super::before_start::{self, StartFault};
use super::desktop_picker::DesktopPicker;
use super::first_frame::FirstFrame;
use crate::app::{App, Start};
use crate::preferences::Store;

/// Opens the window, with a plan if one is given, and returns when it is closed. `begun` is when the program began.
pub fn run(plan: Option<PathBuf>, begun: Instant, printer: Printer) -> Result<(), StartFault> {
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
    let made = eframe::run_native(
        "Gantline",
        options,
        Box::new(move |creation| Ok(Box::new(Window::new(creation, plan, printer, FirstFrame::asked_for(begun))))),
    );
    made.map_err(|fault| StartFault::NoWindow(fault.to_string()))
}

struct Window {
    app: App,
    first_frame: Option<FirstFrame>,
}

impl Window {
    fn new(
        creation: &eframe::CreationContext<'_>,
        open: Option<PathBuf>,
        printer: Printer,
        first_frame: Option<FirstFrame>,
    ) -> Self {
        let waker = || {
            let context = creation.egui_ctx.clone();
            move || context.request_repaint()
        };
        let start = Start {
            store: Store::of_user(),
            picker: Box::new(DesktopPicker::new(waker())),
            printer,
            wake: Box::new(waker()),
            open,
        };
        let mut app = App::new(start);
        app.dress(&creation.egui_ctx);
        Self { app, first_frame }
    }
}

impl eframe::App for Window {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        if let Some(first_frame) = &mut self.first_frame {
            first_frame.frame_begins(ui.ctx());
        }
        self.app.show(ui);
    }
}
