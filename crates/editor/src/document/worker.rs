//! A thread that puts plans on the disk, so that a slow disk never stops the window.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::{self, JoinHandle};

use gantline_exchange::disk::{Autosave, SaveFault, Stamp, plan_file, read_within};
use gantline_exchange::outline::limits::LARGEST_FILE_BYTES;
use gantline_exchange::outline::{self, Asked, LineWork, OutlineFault, Outlines};
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
        asked: Asked,
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

/// The thread, and what it still has to do.
pub struct Worker {
    /// None once the thread is to end.
    jobs: Option<Sender<Job>>,
    done: Receiver<Done>,
    pending: usize,
    thread: Option<JoinHandle<()>>,
}

impl Drop for Worker {
    /// What was asked for is done before the program ends, and the lock on recovery copies is given back.
    fn drop(&mut self) {
        self.jobs = None;
        if let Some(thread) = self.thread.take() {
            // A thread that came to grief has nothing more to do.
            drop(thread.join());
        }
    }
}

impl Worker {
    /// Starts the thread. `wake` is called after each job, so that the window looks for the outcome.
    pub fn start(copies: Option<Arc<Autosave>>, wake: impl Fn() + Send + 'static) -> Self {
        let (jobs, asked) = channel();
        let (tell, done) = channel();
        let thread = thread::spawn(move || {
            while let Ok(job) = asked.recv() {
                if tell.send(carry_out(job, copies.as_deref())).is_err() {
                    break;
                }
                wake();
            }
        });
        Self { jobs: Some(jobs), done, pending: 0, thread: Some(thread) }
    }

    /// Asks for something.
    pub fn ask(&mut self, job: Job) {
        if self.jobs.as_ref().is_some_and(|jobs| jobs.send(job).is_ok()) {
            self.pending += 1;
        }
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

fn drawing(path: &Path) -> Result<LineWork, String> {
    let bytes = read_within(path, LARGEST_FILE_BYTES).map_err(|fault| fault.to_string())?;
    outline::read(&bytes).map_err(|fault| fault.to_string())
}

fn carry_out(job: Job, copies: Option<&Autosave>) -> Done {
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
        Job::ReadDrawing { path, serial } => Done::DrawingRead { serial, outcome: drawing(&path).map(Arc::new) },
        Job::Outlines { work, asked, serial } => {
            Done::Outlined { serial, outcome: work.outlines(&asked).map(Arc::new) }
        }
        Job::RemoveCopy { of, untitled } => {
            let removed = copies.map_or(Ok(()), |copies| copies.remove(of.as_deref(), untitled));
            removed.map_or_else(|fault| Done::CopyTrouble(fault.to_string()), |()| Done::CopyDone)
        }
    }
}
