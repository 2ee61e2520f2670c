//! A thread that puts plans on the disk, so that a slow disk never stops the window, and another that reads drawings, so that
//! a large drawing never stops a save.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex};
use std::thread::{self, JoinHandle};

use gantline_exchange::disk::{Autosave, SaveFault, Stamp, plan_file, read_within};
use gantline_exchange::outline::limits::LARGEST_FILE_BYTES;
use gantline_exchange::outline::{self, Asked as Wanted, LineWork, OutlineFault, Outlines};
use gantline_plan::document::Plan;

/// Something to be done.
#[derive(Debug)]
pub enum Job {
    /// Saves a plan.
    Save {
        /// The plan.
        plan: Arc<Plan>,
        /// Its file.
        path: PathBuf,
        /// The file as last seen; none overwrites whatever is there.
        seen: Option<Stamp>,
    },
    /// Writes a copy for recovery.
    Copy {
        /// The plan.
        plan: Arc<Plan>,
        /// Its file.
        of: Option<PathBuf>,
        /// Tells plans never saved apart.
        untitled: u64,
    },
    /// Reads a drawing.
    ReadDrawing {
        /// Its file.
        path: PathBuf,
        /// Tells it from others asked for.
        serial: u64,
    },
    /// Puts the lines of a drawing together.
    Outlines {
        /// The drawing.
        work: Arc<LineWork>,
        /// Layers, unit, tolerance.
        asked: Wanted,
        /// Tells it from others asked for.
        serial: u64,
    },
    /// Removes a copy for recovery.
    RemoveCopy {
        /// Its file.
        of: Option<PathBuf>,
        /// Tells plans never saved apart.
        untitled: u64,
    },
}

/// What came of it.
#[derive(Debug)]
pub enum Done {
    /// A save.
    Saved {
        /// The plan.
        plan: Arc<Plan>,
        /// Its file.
        path: PathBuf,
        /// The file as written, or why not.
        outcome: Result<Stamp, SaveFault>,
    },
    /// A copy that could not be written or removed; why.
    CopyTrouble(String),
    /// A copy was written or removed.
    CopyDone,
    /// A drawing was read, or why not.
    DrawingRead {
        /// Which.
        serial: u64,
        /// What it holds.
        outcome: Result<Arc<LineWork>, String>,
    },
    /// Lines were put together, or why not.
    Outlined {
        /// Which.
        serial: u64,
        /// The outlines.
        outcome: Result<Arc<Outlines>, OutlineFault>,
    },
}

/// Two threads, and what they still have to do: a save never waits for a drawing.
pub struct Worker {
    /// None once the thread is to end.
    saving: Option<Sender<Asked>>,
    /// None once the thread is to end.
    drawings: Option<Sender<Asked>>,
    done: Receiver<Done>,
    pending: usize,
    thread: Option<JoinHandle<()>>,
    /// Set when nobody waits any more for the drawing that was asked for last.
    stop: Arc<AtomicBool>,
}

/// A job, and whether anybody still waits for it.
type Asked = (Job, Arc<AtomicBool>);

impl Drop for Worker {
    /// What was asked for is saved before the program ends, and the lock on recovery copies is given back. Nobody waits for
    /// drawings any more.
    fn drop(&mut self) {
        self.stop_drawing();
        (self.saving, self.drawings) = (None, None);
        if let Some(thread) = self.thread.take() {
            // A thread that came to grief has nothing more to do.
            drop(thread.join());
        }
    }
}

impl Worker {
    /// Starts the threads. `wake` is called after each job, so that the window looks for the outcome.
    pub fn start(copies: Option<Arc<Autosave>>, wake: impl Fn() + Send + 'static) -> Self {
        let wake = Arc::new(Mutex::new(wake));
        let (tell, done) = channel();
        let begin = |copies: Option<Arc<Autosave>>| {
            let (jobs, asked) = channel::<Asked>();
            let (tell, wake) = (tell.clone(), Arc::clone(&wake));
            let thread = thread::spawn(move || {
                while let Ok((job, stop)) = asked.recv() {
                    if tell.send(carry_out(job, copies.as_deref(), &stop)).is_err() {
                        break;
                    }
                    if let Ok(wake) = wake.lock() {
                        wake();
                    }
                }
            });
            (Some(jobs), thread)
        };
        // Drawings are not waited for at the end, so their thread holds no lock on copies.
        let (drawings, _) = begin(None);
        let (saving, thread) = begin(copies);
        Self { saving, drawings, done, pending: 0, thread: Some(thread), stop: Arc::default() }
    }

    /// Asks for something. Who asks for another drawing no longer waits for the one before.
    pub fn ask(&mut self, job: Job) {
        let jobs = match job {
            Job::ReadDrawing { .. } | Job::Outlines { .. } => {
                self.stop_drawing();
                self.stop = Arc::default();
                &self.drawings
            }
            Job::Save { .. } | Job::Copy { .. } | Job::RemoveCopy { .. } => &self.saving,
        };
        if jobs.as_ref().is_some_and(|jobs| jobs.send((job, Arc::clone(&self.stop))).is_ok()) {
            self.pending += 1;
        }
    }

    /// Nobody waits any more for the drawing that was asked for.
    pub fn stop_drawing(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// An outcome, if there is one.
    pub fn outcome(&mut self) -> Option<Done> {
        let done = self.done.try_recv().ok()?;
        self.pending = self.pending.saturating_sub(1);
        Some(done)
    }

    /// Whether something is still to be done.
    pub fn is_at_work(&self) -> bool {
        self.pending > 0
    }

    /// Waits for the next outcome; none when nothing is asked for.
    pub fn wait(&mut self) -> Option<Done> {
        if self.pending == 0 {
            return None;
        }
        let done = self.done.recv().ok()?;
        self.pending -= 1;
        Some(done)
    }
}

fn drawing(path: &Path, stop: &AtomicBool) -> Result<LineWork, String> {
    let bytes = read_within(path, LARGEST_FILE_BYTES).map_err(|fault| fault.to_string())?;
    outline::read_until(&bytes, stop).map_err(|fault| fault.to_string())
}

fn carry_out(job: Job, copies: Option<&Autosave>, stop: &AtomicBool) -> Done {
    match job {
        Job::Save { plan, path, seen } => {
            let outcome = plan_file::save(&path, &plan, seen.as_ref());
            Done::Saved { plan, path, outcome }
        }
        Job::Copy { plan, of, untitled } => {
            let Some(copies) = copies else {
                return Done::CopyDone;
            };
            let text = gantline_plan::file::write(&plan).map_err(|fault| fault.to_string());
            let written = text.and_then(|text| copies.write(of.as_deref(), untitled, &text).map_err(|f| f.to_string()));
            written.map_or_else(Done::CopyTrouble, |_| Done::CopyDone)
        }
        Job::ReadDrawing { path, serial } => Done::DrawingRead { serial, outcome: drawing(&path, stop).map(Arc::new) },
        Job::Outlines { serial, .. } if stop.load(Ordering::Relaxed) => {
            Done::Outlined { serial, outcome: Err(OutlineFault::Stopped) }
        }
        Job::Outlines { work, asked, serial } => {
            Done::Outlined { serial, outcome: work.outlines(&asked).map(Arc::new) }
        }
        Job::RemoveCopy { of, untitled } => {
            let removed = copies.map_or(Ok(()), |copies| copies.remove(of.as_deref(), untitled));
            removed.map_or_else(|fault| Done::CopyTrouble(fault.to_string()), |()| Done::CopyDone)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_plan::basis::{DesignCode, presets};

    /// A pipe that nobody writes into is a drawing whose reading never ends.
    #[cfg_attr(not(unix), ignore = "pipes that stand in a folder are Unix's")]
    #[test]
    fn a_save_never_waits_for_a_drawing() {
        let folder = tempfile::tempdir().unwrap();
        let pipe = folder.path().join("drawing.dxf");
        assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
        let mut worker = Worker::start(None, || {});
        worker.ask(Job::ReadDrawing { path: pipe, serial: 1 });
        let plan = Arc::new(Plan::empty(presets().unwrap().remove(0).basis, DesignCode::eurocode()));
        let path = folder.path().join("plan.json");
        worker.ask(Job::Save { plan, path: path.clone(), seen: None });
        assert!(matches!(worker.wait(), Some(Done::Saved { outcome: Ok(_), .. })));
        assert!(path.exists() && worker.is_at_work(), "the drawing is still being read");
    }
}
