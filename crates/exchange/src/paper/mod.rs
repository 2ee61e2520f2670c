//! Documents on paper: [`page`] says what lies where on each page, for whoever prints; [`block`] is a text that flows over pages,
//! with its formulas ([`formula`]).

pub mod block;
pub mod formula;
pub mod page;

pub use block::{Block, Cell, Column, Look, Row, Table};
pub use formula::Formula;
pub use page::{OnPage, Page, Paper, Printer, Words, words_alone};
