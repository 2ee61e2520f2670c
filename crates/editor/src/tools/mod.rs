//! Tools: pure state machines. They are told what pointer and keys do on the plan, and answer with intents.
//!
//! Nothing here knows a window, a color or a widget toolkit, so that every gesture can be tested as a table of events.

pub mod before;
pub mod copies;
pub mod fit_underlay;
pub mod framing;
pub mod gesture;
pub mod handles;
pub mod hit;
mod hold;
pub mod measure;
pub mod move_outline;
pub mod move_underlay;
pub mod move_units;
pub mod outline;
pub mod scene;
pub mod select;
pub mod sketch;
pub mod snap;
pub mod standing;
pub mod tool;
pub mod turn_unit;
pub mod typed_entry;
pub mod unit;
#[cfg(test)]
pub mod witness;

pub use hit::{Handle, Hit};
pub use scene::Scene;
pub use tool::{Tool, ToolKind};
pub use typed_entry::{Asked, Typed, TypedEntry};
