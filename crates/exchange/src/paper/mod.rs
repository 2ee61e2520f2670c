//! Documents on paper: [`page`] says what lies where on each page, for whoever prints; [`block`] is a text that flows over pages,
//! with its formulas ([`formula`]), and [`flow`] lays it out on pages.

pub mod block;
pub mod flow;
pub mod formula;
mod ink;
mod measure;
pub mod page;

pub use block::{Block, Cell, Column, Look, Row, Table};
pub use flow::{Format, Sheet, lay_out};
pub use formula::Formula;
pub use page::{OnPage, Page, Paper, Printer, Words, words_alone};
