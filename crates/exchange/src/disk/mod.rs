//! Putting plans on a disk: never half-written, the last version kept, nothing of someone else's overwritten unasked.
//!
//! [`replace()`] writes any file whole or not at all; [`plan_file`] reads and saves plans with it; a [`Stamp`] tells
//! whether someone else changed a file since; [`autosave`] keeps recovery copies and finds those that a crash left.

pub mod autosave;
pub mod fault;
pub mod leftover;
pub mod plan_file;
pub mod previous;
pub mod recovery_copy;
pub mod replace;
pub mod replace_all;
pub mod stamp;
pub mod within;

pub use autosave::{Autosave, Found};
pub use fault::{Deed, DiskFault};
pub use plan_file::{OpenFault, Opened, SaveFault};
pub use recovery_copy::RecoveryCopy;
pub use replace::replace;
pub use replace_all::replace_all;
pub use stamp::{Since, Stamp};
pub use within::read_within;
