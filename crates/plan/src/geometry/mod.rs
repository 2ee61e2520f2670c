//! Plane geometry of roofs, facades and clear zones, as pure functions of points in meters.

pub mod facade;
pub mod frame;
pub mod outline;
