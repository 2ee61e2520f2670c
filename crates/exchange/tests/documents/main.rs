//! Documents of the demonstration plans: read back by other programs, the same bytes from the same plan, all or none.

mod anchorage;
mod dxf_drawing;
mod grid;
mod ifc_model;
mod schedule;
mod sheets;
mod together;
mod worked;
