//! The document shapes, one file a kind: what keys there are, and which must be there.
//!
//! Texts stay as they were written; what they mean is the model's business.

pub mod builtin;
pub mod guidebook;
pub mod others;
pub mod procedure;
pub mod shared;
pub mod texts;
