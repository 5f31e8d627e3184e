//! What a guidebook means: quantities as types, procedures, pieces, cut lists, and the rest.
//!
//! Total and without surprises: what could not be understood is `Stated::Broken`, and a finding has told.
//! Only `lower` sees documents; it turns them into this model.

pub mod age;
pub mod builtin;
pub mod guidebook;
pub mod links;
pub mod lower;
pub mod names;
pub mod own_theme;
pub mod picture_safety;
pub mod procedure;
pub mod quantity;
pub mod stated;
pub mod words;

pub use guidebook::Guidebook;
pub use procedure::{Output, Procedure, ShareSpec, Step, ToolChoice};
pub use stated::{Spanned, Stated};
