//! The open plan: its history, its file, the worker that puts it on the disk, and what leaves for others.

pub mod new_plan;
pub mod open_document;
pub mod outgoing;
pub mod picker;
pub mod underlay_worker;
pub mod worker;

pub use new_plan::new_plan;
pub use open_document::OpenDocument;
pub use outgoing::{Leaving, Outgoing};
pub use picker::{Picked, Picker, Wanted};
pub use underlay_worker::{UnderlayDone, UnderlayJob, UnderlayWorker};
pub use worker::{Done, Job, Worker};
