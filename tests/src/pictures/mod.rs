//! Pictures of the main screens, light and dark, compared with those kept in `tests/pictures`.
//!
//! `GANTLINE_PICTURES=strict UPDATE_SNAPSHOTS=1 cargo test -p gantline-tests pictures` takes those anew that differ in a
//! single bit. They are compared to the last bit where `GANTLINE_PICTURES=strict` says that they were made here; elsewhere
//! a renderer may round otherwise.

mod camera;
mod outline;
mod pages;
mod sheets;
mod underlays;
mod units;
