//! Texts to documents with places.
pub mod bytes;
pub mod decode;
pub mod documents;
pub mod field;
mod traps;
pub mod yaml;
