//! Outside formats and the disk: what the plan's assessment says and what the drawings show, in files of other kinds.
//!
//! [`answers`] is the documented JSON and CSV of the command line; [`disk`] puts files on a disk whole or not at all and
//! keeps recovery copies; [`svg`] and [`png`] print drawings; [`schedule`] is the tables of bases, reactions, parts and findings;
//! [`dxf_drawing`] the plan for CAD, [`ifc_model`] as a building model; [`documents`] puts together what leaves the plan for others.
//! [`outline`] reads roofs from drawings that others made, [`underlay`] shows such drawings and scans under the plan.
//! [`paper`] is what documents on paper are made of; [`drawing_set`] and [`load_plan`] are sheets of it, [`mod@report`] is the
//! calculation report as a text that flows over pages.
#![warn(missing_docs)]

pub mod answers;
pub mod disk;
pub mod documents;
pub mod drawing_set;
pub mod dxf_drawing;
pub mod ifc_model;
pub mod load_plan;
pub mod outline;
pub mod palette;
pub mod paper;
pub mod png;
pub mod report;
pub mod schedule;
pub mod svg;
pub mod underlay;
