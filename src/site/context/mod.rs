//! What each template gets: one type a template, documented. Together they are the public interface of a theme.
//!
//! Every text is plain and is escaped by the template, but fields whose name ends in `_html`: those are made safe
//! by `markdown` and are the only ones that a template may pass through `safe`.

pub mod anatomy;
pub mod card;
pub mod caution;
pub mod chain;
pub mod checks;
pub mod class_sheet;
pub mod cold;
pub mod course;
pub mod cut_map;
pub mod downloads;
pub mod frame;
pub mod free_page;
pub mod guide;
pub mod home;
pub mod kept;
pub mod limits;
pub mod pieces;
pub mod source;
pub mod species;
pub mod step;
pub mod tables;
pub mod work;
