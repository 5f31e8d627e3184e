//! Tests of search: scenarios of the bench, properties of the index, and answers for the theme's script to agree with.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads and leaves files"
)]

#[path = "search/common.rs"]
mod common;
#[path = "../benches/search/corpus.rs"]
mod corpus;
#[path = "search/golden.rs"]
mod golden;
#[path = "search/in_a_page.rs"]
mod in_a_page;
#[path = "search/properties.rs"]
mod properties;
#[path = "search/query.rs"]
mod query;
#[path = "search/reader.rs"]
mod reader;
#[path = "search/scenarios.rs"]
mod scenarios;
