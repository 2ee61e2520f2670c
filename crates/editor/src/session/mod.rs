//! The work in hand: selection, tool, cameras, what is shown. Neither saved nor undone.

pub mod camera;
pub mod hand;
pub mod outline;
pub mod page;
pub mod selection;
#[allow(clippy::module_inception, reason = "the session is the idea of this folder")]
pub mod session;
pub mod shown;
pub mod slots;
pub mod underlay;

pub use camera::{Camera, SheetRect};
pub use hand::Hand;
pub use outline::OutlineDialog;
pub use page::{Drawer, Next, Page, Question};
pub use selection::{Selected, Selection};
pub use session::{Ghost, RefusedAt, Session};
pub use shown::OverlaySet;
pub use slots::{Sheet, Slots};
pub use underlay::{UnderlayDialog, UnderlayStage, UnderlayWish};
