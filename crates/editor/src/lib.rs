//! The editor: the egui application, its window, and nothing of engineering.
//!
//! [`app`] is one frame: panels, the sheet ([`canvas`]) and keys read and push [`intent`]s; [`carry_out`] carries them
//! out at its end. [`tools`] are pure state machines; [`session`] is the work in hand, [`preferences`] are the user's,
//! [`derived`] follows the plan, [`document`] is the open plan and its file. [`shell`] is the window around it.

pub mod app;
pub mod canvas;
pub mod carry_out;
pub mod command;
pub mod demonstration;
pub mod derived;
pub mod document;
pub mod intent;
pub mod keys;
pub mod panels;
pub mod preferences;
pub mod session;
pub mod shell;
pub mod sight;
pub mod theme;
pub mod tools;
pub mod views;
pub mod widgets;
pub mod words;

pub use app::{App, Start};
