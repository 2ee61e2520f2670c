//! What a plan, a section, an elevation look like: marks in meters with pens, hatches, layers and texts named by meaning.
//!
//! By theme: [`drawing`], [`mark`], [`text`], [`pen`], [`hatch`], [`layer`] and [`scale`] are what a drawing is made of;
//! [`mod@plan_view`], [`mod@section`], [`mod@plate`], [`mod@elevation`] and [`mod@building`] are the views; [`shown`] says which overlays they carry;
//! [`dimension`], [`label`], [`legend`], [`sheet`] are shared by them; [`fit`] finds a scale.
//!
//! Nothing here knows a color, a pixel or a file; figures come from the plan and its assessment and are only written down.
#![warn(missing_docs)]

pub mod building;
pub mod compass;
pub mod dimension;
pub mod drawing;
pub mod elevation;
pub mod fit;
pub mod hatch;
pub mod label;
pub mod layer;
pub mod legend;
pub mod letter_width;
pub mod level_mark;
pub mod mark;
pub mod north_arrow;
pub mod pen;
pub mod pencil;
pub mod plan_view;
pub mod plate;
mod roomiest;
pub mod scale;
pub mod scale_bar;
pub mod section;
pub mod sheet;
pub mod shown;
pub mod taken;
pub mod text;

pub use building::{BuildingOptions, building};
pub use drawing::Drawing;
pub use elevation::{ElevationOptions, elevation};
pub use fit::fit_scale;
pub use hatch::Hatch;
pub use layer::Layer;
pub use mark::{Area, Fill, Line, Mark, Polygon, Shape, Stress};
pub use pen::Pen;
pub use plan_view::{PlanView, PlanViewOptions, plan_view};
pub use plate::{PlateOptions, plate};
pub use scale::Scale;
pub use section::{SectionOptions, section};
pub use shown::{Overlay, OverlaySet, Shown};
pub use text::{Anchor, Text, TextStyle};
