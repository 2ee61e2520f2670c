//! editor
