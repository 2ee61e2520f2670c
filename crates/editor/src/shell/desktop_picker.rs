//! The desktop's file dialog, asked on a thread of its own so that the window never waits.
//!
//! Where neither a portal nor a helper program can show one, the answer comes at once and says nothing: no one closes a
//! dialog that quickly, so that is taken as "no dialog", and the window asks for a path itself.

use std::sync::Arc;
use std::sync::mpsc::{Receiver, channel};
use std::thread;
use std::time::{Duration, Instant};

use crate::document::{Picked, Picker, Wanted};

/// Nobody reads, decides and closes a dialog within this time.
const QUICKER_THAN_ANYONE: Duration = Duration::from_millis(350);

/// Asks the desktop.
pub struct DesktopPicker {
    wake: Arc<dyn Fn() + Send + Sync>,
    answer: Option<Receiver<Picked>>,
}

impl DesktopPicker {
    /// A picker that wakes the window when the answer is there.
    pub fn new(wake: impl Fn() + Send + Sync + 'static) -> Self {
        Self { wake: Arc::new(wake), answer: None }
    }
}

impl Picker for DesktopPicker {
    fn ask(&mut self, wanted: &Wanted) {
        let (tell, answer) = channel();
        self.answer = Some(answer);
        let (wake, wanted) = (Arc::clone(&self.wake), wanted.clone());
        thread::spawn(move || {
            // The window may be gone by then.
            drop(tell.send(ask_desktop(&wanted)));
            wake();
        });
    }

    fn answer(&mut self) -> Option<Picked> {
        let picked = self.answer.as_ref()?.try_recv().ok()?;
        self.answer = None;
        Some(picked)
    }
}

fn ask_desktop(wanted: &Wanted) -> Picked {
    let asked_at = Instant::now();
    let plain = rfd::FileDialog::new();
    let dialog = plain.clone().add_filter("Gantline plan", &["json"]).add_filter("All files", &["*"]);
    let placed = |dialog: rfd::FileDialog, folder: &Option<std::path::PathBuf>| match folder {
        Some(folder) => dialog.set_directory(folder),
        None => dialog,
    };
    let drawings =
        plain.clone().add_filter("Drawing", &["dxf", "DXF", "geojson", "json"]).add_filter("All files", &["*"]);
    let picked = match wanted {
        Wanted::Open => dialog.set_title("Open a plan").pick_file(),
        Wanted::Drawing => drawings.set_title("Outline from a drawing").pick_file(),
        Wanted::Underlay => {
            let kinds = ["pdf", "PDF", "png", "PNG", "jpg", "jpeg", "JPG", "dxf", "DXF"];
            let underlays =
                rfd::FileDialog::new().add_filter("Drawing or scan", &kinds).add_filter("All files", &["*"]);
            underlays.set_title("Underlay").pick_file()
        }
        Wanted::Save { name, folder } => {
            placed(dialog.set_title("Save the plan").set_file_name(name), folder).save_file()
        }
        Wanted::Folder(folder) => placed(plain.set_title("Write documents into a folder"), folder).pick_folder(),
        Wanted::Picture { name, folder } => {
            let pictures = plain.add_filter("SVG", &["svg"]).add_filter("PNG", &["png"]);
            placed(pictures.set_title("Write the drawing as a picture").set_file_name(name), folder).save_file()
        }
    };
    match picked {
        Some(path) => Picked::File(path),
        None if asked_at.elapsed() < QUICKER_THAN_ANYONE => {
            Picked::NoDialog("neither a desktop portal nor zenity answers".to_owned())
        }
        None => Picked::Nothing,
    }
}
