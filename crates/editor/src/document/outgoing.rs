//! What leaves the plan for others is made and written on a thread of its own, with its progress, until someone stops it.

use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::{self, JoinHandle};

use gantline_drawing::Drawing;
use gantline_exchange::disk::replace;
use gantline_exchange::documents::{DocumentFault, Progress, Wanted, make, write};
use gantline_exchange::paper::Printer;
use gantline_exchange::png::png;
use gantline_exchange::svg::svg;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::document::Plan;

/// Pixels for a paper millimeter: 203 dots an inch.
const PX_PER_MM: f64 = 8.0;

/// What leaves.
#[derive(Debug)]
pub enum Leaving {
    /// The documents of a plan.
    Documents {
        /// The plan.
        plan: Arc<Plan>,
        /// Which ones, and how.
        wanted: Wanted,
        /// Who prints those on paper.
        printer: Printer,
        /// Where to.
        folder: PathBuf,
    },
    /// A drawing as a picture; its file's ending tells of which kind.
    Picture {
        /// The drawing.
        drawing: Box<Drawing>,
        /// Its file.
        path: PathBuf,
    },
}

/// What is told on the way.
enum Told {
    Progress(Progress),
    /// What was written, or why nothing was; in words.
    Ended(Result<String, String>),
}

/// Something that is leaving.
#[derive(Debug)]
pub struct Outgoing {
    told: Receiver<Told>,
    stop: Arc<AtomicBool>,
    progress: Option<Progress>,
    thread: Option<JoinHandle<()>>,
}

impl Drop for Outgoing {
    /// Nothing goes on behind a window that is gone.
    fn drop(&mut self) {
        self.stop();
        if let Some(thread) = self.thread.take() {
            // A thread that came to grief has nothing more to do.
            drop(thread.join());
        }
    }
}

impl Outgoing {
    /// Begins.
    pub fn begin(leaving: Leaving) -> Self {
        let (tell, told) = channel();
        let stop = Arc::new(AtomicBool::new(false));
        let asked = Arc::clone(&stop);
        let thread = thread::spawn(move || {
            let ended = leave(leaving, &tell, &asked);
            // The window may be gone by then.
            drop(tell.send(Told::Ended(ended)));
        });
        Self { told, stop, progress: None, thread: Some(thread) }
    }

    /// Asks it to stop; what has not been written by then is left as it was.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// How far it is; none before it begins and for pictures.
    pub const fn progress(&self) -> Option<Progress> {
        self.progress
    }

    /// What came of it, once it has ended: words for the status line.
    pub fn outcome(&mut self) -> Option<Result<String, String>> {
        while let Ok(told) = self.told.try_recv() {
            match told {
                Told::Progress(progress) => self.progress = Some(progress),
                Told::Ended(ended) => return Some(ended),
            }
        }
        None
    }

    /// Waits for its end.
    pub fn wait(&mut self) -> Result<String, String> {
        loop {
            match self.told.recv() {
                Ok(Told::Progress(progress)) => self.progress = Some(progress),
                Ok(Told::Ended(ended)) => return ended,
                Err(_) => return Err("the work ended without a word".to_owned()),
            }
        }
    }
}

fn leave(leaving: Leaving, tell: &Sender<Told>, stop: &AtomicBool) -> Result<String, String> {
    match leaving {
        Leaving::Documents { plan, wanted, printer, folder } => {
            let mut watch = |progress| {
                let heard = tell.send(Told::Progress(progress)).is_ok();
                if heard && !stop.load(Ordering::Relaxed) { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
            };
            let assessment = assess(&plan, &mut Memo::new());
            let made = make(&plan, &assessment, &wanted, printer, &mut watch).map_err(|fault| fault.to_string())?;
            if stop.load(Ordering::Relaxed) {
                return Err(DocumentFault::Stopped.to_string());
            }
            let written = write(&folder, &made).map_err(|fault| fault.to_string())?;
            let name = |path: &PathBuf| path.file_name().map(|name| name.to_string_lossy().into_owned());
            let names: Vec<String> = written.iter().filter_map(name).collect();
            Ok(format!("Written to {}: {}", folder.display(), names.join(", ")))
        }
        Leaving::Picture { drawing, path } => {
            let bytes = picture(&drawing, &path)?;
            replace(&path, &bytes).map_err(|fault| fault.to_string())?;
            Ok(format!("Written: {}", path.display()))
        }
    }
}

fn picture(drawing: &Drawing, path: &Path) -> Result<Vec<u8>, String> {
    let is_png = path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("png"));
    if is_png { png(drawing, PX_PER_MM).map_err(|fault| fault.to_string()) } else { Ok(svg(drawing).into_bytes()) }
}

#[cfg(test)]
mod tests {
    use gantline_exchange::paper::words_alone;
    use gantline_plan::quantity::UnitSystem;

    use super::*;

    const SMALL: &str = include_str!("../../../../demo-projects/small-roof.json");

    fn documents_to(folder: &Path) -> Leaving {
        let plan = Arc::new(gantline_plan::file::read(SMALL.as_bytes()).unwrap());
        let wanted = Wanted::all(UnitSystem::Si);
        Leaving::Documents { plan, wanted, printer: words_alone, folder: folder.to_owned() }
    }

    #[test]
    fn documents_are_written_and_told_by_name() {
        let folder = tempfile::tempdir().unwrap();
        let mut outgoing = Outgoing::begin(documents_to(folder.path()));
        let said = outgoing.wait().unwrap();
        assert!(said.contains("gantline-schedule.xlsx") && said.contains("gantline-model.ifc"), "{said}");
        assert!(outgoing.progress().is_some_and(|progress| progress.made + 1 == progress.wanted));
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), said.matches("gantline-").count());
    }

    #[test]
    fn what_is_stopped_before_its_first_document_writes_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let (tell, _told) = channel();
        let stopped = leave(documents_to(folder.path()), &tell, &AtomicBool::new(true));
        assert_eq!(stopped.unwrap_err(), "stopped; no document was written");
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
    }

    #[test]
    fn a_folder_that_is_gone_is_named() {
        let folder = tempfile::tempdir().unwrap();
        let gone = folder.path().join("gone");
        let fault = Outgoing::begin(documents_to(&gone)).wait().unwrap_err();
        assert!(fault.contains("gone") && fault.contains("is not there"), "{fault}");
    }
}
