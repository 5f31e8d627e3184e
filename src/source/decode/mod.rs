//! From nodes to documents: a serde decoder that reports every mistake of a file at once and keeps what is sound.
//!
//! The document shapes say what keys there are; this room says what is wrong with what stands there. Each field
//! (`Required`, `Optional`) catches the mistake in its own value, so that one wrong value does not hide the next.
//! It does not parse quantities, dates or ids: that is the model's.

mod access;
mod commas;
mod keys;
mod slot;
mod words;

use std::cell::RefCell;
use std::fmt;

use serde::de;

use self::slot::{Content, Slot};
use super::yaml::Node;
use crate::finding::{FileId, Finding, Place, Span};

/// Reads a document of the shape `T`. The value is `None` when the document as a whole is not of that kind; then a
/// finding says so. Findings come in the order in which they stand in the file.
#[must_use]
pub fn decode<'de, T: de::Deserialize<'de>>(node: &'de Node, file: FileId) -> (Option<T>, Vec<Finding>) {
    let sink = Sink { file, findings: RefCell::new(Vec::new()) };
    let root = Slot { content: Content::Node(node), key: None, name: "", parent: "", sink: &sink };
    let value = match T::deserialize(root) {
        Ok(value) => Some(value),
        Err(mistake) => {
            sink.report(mistake, node.span);
            None
        }
    };
    let mut findings = sink.findings.into_inner();
    findings.sort_by_key(|finding| finding.place.span.start);
    (value, findings)
}

/// Where the findings of one file gather.
struct Sink {
    file: FileId,
    findings: RefCell<Vec<Finding>>,
}

impl Sink {
    fn push(&self, finding: Finding) {
        self.findings.borrow_mut().push(finding);
    }

    const fn place(&self, span: Span) -> Place {
        Place::new(self.file, span)
    }

    /// Reports a mistake; one that serde made has no place of its own and takes `span`.
    fn report(&self, mistake: Mistake, span: Span) {
        match mistake {
            Mistake::Told => {}
            Mistake::Found(finding) => self.push(*finding),
            Mistake::Said(message) => self.push(Finding::fault("wrong-kind", self.place(span), message)),
        }
    }
}

/// Why a value could not be read.
#[derive(Debug)]
enum Mistake {
    /// A finding has said so already.
    Told,
    /// This finding says so.
    Found(Box<Finding>),
    /// Words of serde, without a place.
    Said(String),
}

impl fmt::Display for Mistake {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Told => out.write_str("told already"),
            Self::Found(finding) => out.write_str(&finding.message),
            Self::Said(message) => out.write_str(message),
        }
    }
}

impl std::error::Error for Mistake {}

impl de::Error for Mistake {
    fn custom<T: fmt::Display>(message: T) -> Self {
        Self::Said(message.to_string())
    }
}

impl From<Finding> for Mistake {
    fn from(finding: Finding) -> Self {
        Self::Found(Box::new(finding))
    }
}

#[cfg(test)]
mod tests;
