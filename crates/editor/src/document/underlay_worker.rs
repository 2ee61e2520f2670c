//! A thread of its own that reads files for underlays and makes pictures of their pages: it may take its time with a heavy
//! page while plans are saved, and the window never waits for it.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;

use egui::ColorImage;
use gantline_exchange::disk::read_within;
use gantline_exchange::underlay::{Extent, Lines, Source, Wanted, attach};
use gantline_plan::document::attachment::LARGEST_ATTACHMENT_BYTES;
use gantline_plan::document::{Attachment, AttachmentKind, ContentHash};

/// A page of an attachment.
pub type PageOf = (ContentHash, u32);

/// Something to be done.
#[derive(Debug)]
pub enum UnderlayJob {
    /// Reads a file.
    Read {
        /// The file.
        path: PathBuf,
        /// Tells it from others asked for.
        serial: u64,
    },
    /// Makes a picture of a part of a page.
    Show {
        /// The attachment.
        attachment: Attachment,
        /// Which page, from 1.
        page: u32,
        /// Which part, how finely; none: the whole page coarsely.
        wanted: Option<Wanted>,
        /// On which ground it is shown.
        ground: Ground,
    },
}

/// The ground that a picture is shown on.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Ground {
    /// Paper.
    #[default]
    Light,
    /// Slate: pages of ink on paper are shown as chalk on slate. Images stay as they are: they may be photographs.
    Dark,
}

/// What came of it.
#[derive(Debug)]
pub enum UnderlayDone {
    /// A file was read, or why not.
    Read {
        /// Which.
        serial: u64,
        /// What it is.
        outcome: Result<Brought, String>,
    },
    /// A picture was made, or why not.
    Shown {
        /// Of which page.
        of: PageOf,
        /// Whether it is the coarse one of the whole page.
        is_coarse: bool,
        /// On which ground it is shown.
        ground: Ground,
        /// The picture.
        outcome: Result<Shown, String>,
    },
}

/// A file that can lie under the plan.
#[derive(Debug, Clone)]
pub struct Brought {
    /// The file itself.
    pub attachment: Attachment,
    /// Where each of its pages lies in its own coordinates.
    pub extents: Vec<Extent>,
    /// Meters in one of its units, where it says so.
    pub stated_m_per_unit: Option<f64>,
}

/// What a page shows.
#[derive(Debug, Clone)]
pub struct Shown {
    /// How many pages the file has.
    pub pages: u32,
    /// Where the page lies in its own coordinates.
    pub extent: Extent,
    /// Its lines, if it is a drawing of lines.
    pub lines: Option<Arc<Lines>>,
    /// The picture; none when the part lies beside the page.
    pub picture: Option<Picture>,
}

/// A picture ready for the screen.
#[derive(Debug, Clone)]
pub struct Picture {
    /// The part that it shows.
    pub part: Extent,
    /// Pixels for one unit of the page.
    pub px_per_unit: f64,
    /// Its pixels.
    pub image: Arc<ColorImage>,
}

/// The longer side of a coarse picture, pixels.
pub const COARSE_PX: f64 = 1024.0;

/// How many files are kept open.
const KEPT_OPEN: usize = 4;

/// The thread, and how much it still has to do.
pub struct UnderlayWorker {
    jobs: Sender<UnderlayJob>,
    done: Receiver<UnderlayDone>,
    pending: usize,
}

impl UnderlayWorker {
    /// Starts the thread. `wake` is called after each job. The thread ends by itself after the window is gone; nothing that
    /// it does must be finished.
    pub fn start(wake: impl Fn() + Send + 'static) -> Self {
        let (jobs, asked) = channel();
        let (tell, done) = channel();
        thread::spawn(move || {
            let mut open = Open::default();
            while let Ok(job) = asked.recv() {
                if tell.send(carry_out(job, &mut open)).is_err() {
                    break;
                }
                wake();
            }
        });
        Self { jobs, done, pending: 0 }
    }

    /// Asks for something.
    pub fn ask(&mut self, job: UnderlayJob) {
        if self.jobs.send(job).is_ok() {
            self.pending += 1;
        }
    }

    /// An outcome, if there is one.
    pub fn outcome(&mut self) -> Option<UnderlayDone> {
        let done = self.done.try_recv().ok()?;
        self.pending = self.pending.saturating_sub(1);
        Some(done)
    }

    /// Whether something is still to be done.
    pub fn is_at_work(&self) -> bool {
        self.pending > 0
    }

    /// Waits for the next outcome; none when nothing is asked for.
    pub fn wait(&mut self) -> Option<UnderlayDone> {
        if self.pending == 0 {
            return None;
        }
        let done = self.done.recv().ok()?;
        self.pending -= 1;
        Some(done)
    }
}

/// Files opened last, the latest at the end.
#[derive(Default)]
struct Open(Vec<(ContentHash, Source)>);

impl Open {
    fn keep(&mut self, hash: ContentHash, source: Source) {
        self.0.retain(|(known, _)| *known != hash);
        if self.0.len() >= KEPT_OPEN {
            self.0.remove(0);
        }
        self.0.push((hash, source));
    }

    fn source(&mut self, attachment: &Attachment) -> Result<&Source, String> {
        let hash = attachment.hash();
        if !self.0.iter().any(|(known, _)| *known == hash) {
            let source = Source::open(attachment).map_err(|fault| fault.to_string())?;
            self.keep(hash, source);
        }
        let found = self.0.iter().find(|(known, _)| *known == hash);
        found.map(|(_, source)| source).ok_or_else(|| "the file is not open".to_owned())
    }
}

fn carry_out(job: UnderlayJob, open: &mut Open) -> UnderlayDone {
    match job {
        UnderlayJob::Read { path, serial } => UnderlayDone::Read { serial, outcome: read(&path, open) },
        UnderlayJob::Show { attachment, page, wanted, ground } => {
            let source = open.source(&attachment);
            let turns = ground == Ground::Dark && attachment.kind() == AttachmentKind::Pdf;
            let outcome = source.and_then(|source| show(source, page, wanted, turns));
            UnderlayDone::Shown { of: (attachment.hash(), page), is_coarse: wanted.is_none(), ground, outcome }
        }
    }
}

/// Reads a file and shows its first page once: what can't be shown is not laid under a plan.
fn read(path: &Path, open: &mut Open) -> Result<Brought, String> {
    let bytes = read_within(path, LARGEST_ATTACHMENT_BYTES).map_err(|fault| fault.to_string())?;
    let (attachment, source) = attach(bytes).map_err(|fault| fault.to_string())?;
    show(&source, 1, None, false)?;
    let stated_m_per_unit = source.lines().and_then(|lines| lines.stated_m_per_unit);
    let brought = Brought { attachment: attachment.clone(), extents: source.extents().to_vec(), stated_m_per_unit };
    open.keep(attachment.hash(), source);
    Ok(brought)
}

/// A picture of a part of a page, with its lightness turned where it is asked for.
fn show(source: &Source, page: u32, wanted: Option<Wanted>, turns: bool) -> Result<Shown, String> {
    let extent = source.extent(page).map_err(|fault| fault.to_string())?;
    let coarsely = || Wanted { part: extent, px_per_unit: COARSE_PX / extent.size().max_element().max(1e-9) };
    let pixels = source.pixels(page, &wanted.unwrap_or_else(coarsely)).map_err(|fault| fault.to_string())?;
    let pixels = pixels.map(|pixels| if turns { pixels.with_lightness_turned() } else { pixels });
    let picture = pixels.map(|pixels| Picture {
        part: pixels.part,
        px_per_unit: pixels.px_per_unit,
        image: Arc::new(ColorImage::from_rgba_premultiplied([pixels.width, pixels.height], &pixels.rgba)),
    });
    let pages = u32::try_from(source.extents().len()).unwrap_or(u32::MAX);
    Ok(Shown { pages, extent, lines: source.lines().cloned(), picture })
}
