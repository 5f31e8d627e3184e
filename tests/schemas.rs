//! The JSON Schemas of the documents: those that are kept in `schemas/` are those that the types make.
#![allow(clippy::disallowed_methods, reason = "a test reads the files of the project")]

use std::fs;
use std::path::PathBuf;

use seamwise::source::schema::{Kind, render};

fn kept(kind: Kind) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("schemas").join(kind.file_name())
}

#[test]
fn kept_schemas_are_those_that_the_types_make() {
    let mut complaints = Vec::new();
    for kind in Kind::ALL {
        let name = kind.file_name();
        if fs::read_to_string(kept(*kind)).ok() != Some(render(*kind)) {
            complaints.push(format!("schemas/{name} is not what the types in src/source/documents make"));
        }
    }
    assert!(complaints.is_empty(), "\n{}\nto rewrite: cargo test --test schemas -- --ignored rewrite\n", complaints.join("\n"));
}

/// Not a test: writes the schemas that the types make.
#[test]
#[ignore = "writes files: run it after a change of the documents, and look at the difference"]
fn rewrite() {
    for kind in Kind::ALL {
        fs::write(kept(*kind), render(*kind)).unwrap();
    }
}
