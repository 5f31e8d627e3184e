//! Quantities as types: a share, a weight, a temperature, a length, minutes, and ranges of them.
//!
//! `parse` turns the spellings of the trade into them; nothing here knows where a value stands.

pub mod mass;
pub mod measures;
pub mod parse;
pub mod range;
pub mod share;

pub use mass::{Mass, MassUnit};
pub use measures::{Length, LengthUnit, Minutes, Temperature, TemperatureUnit};
pub use range::{Range, Written};
pub use share::Share;
