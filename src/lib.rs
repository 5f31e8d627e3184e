//! Seamwise reads a guidebook of breakdown procedures, checks that it is sound, and makes a site of it.
//!
//! The phases, each a room of its own: `source` reads texts into documents with places; `model` says what
//! they mean; `analysis` computes; `checks` find what is wrong and alone make a `Checked` guidebook;
//! `figures` make tables and drawings of it; `site` makes pages; `cli` alone meets disk, terminal and clock.

pub mod analysis;
pub mod finding;
pub mod model;
pub mod source;
