//! What is kept on a device so that the site opens without a network: every file with its size and a mark of its
//! content, in parts that a reader can choose where all of it would be too much.
//!
//! Nothing here reads a page: the lists are made from what the pages came to, so that they are never all in memory.

mod listing;
mod made;
mod parts;

pub(super) use listing::Listing;
pub use made::Made;
pub use parts::Part;
pub(super) use parts::{Parts, all as all_parts};

/// Up to so many bytes the whole site is kept at once; above, a reader chooses (10 MB, decimal as in IEC 80000-13).
pub const AT_ONCE: u64 = 10_000_000;
