//! Search, without a server and without a fetch: records, their index, and the scripts that carry it.
//!
//! `records` gathers what search can lead to, `Index::of` indexes it, and `Index::scripts` writes it as classic scripts
//! for the theme's `search.js`, which works over http and from a folder. What a query finds, and in which order, is
//! decided there; the tests hold a second, plain reading of the same rules against it.

mod bits;
mod front;
mod gather;
mod index;
mod plain;
mod posting;
mod record;
mod script;
mod stop_words;
mod token;

pub use gather::{UrlMaker, records};
pub use index::Index;
pub use record::{Kind, OtherName, Record};
pub use script::{Script, Sizes};
pub use token::{fold, words, words_and_compounds};
