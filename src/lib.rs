//! Seamwise reads a guidebook of breakdown procedures, checks that it is sound, and makes a site of it.
//!
//! The phases, each a room of its own: `source` reads texts into documents with places; `model` says what
//! they mean; `analysis` computes; `checks` find what is wrong and alone make a `Checked` guidebook;
//! `figures` make tables and drawings of it; `site` makes pages; `cli` alone meets disk, terminal and clock.

pub mod analysis;
pub mod checks;
pub mod cli;
pub mod figures;
pub mod finding;
pub mod model;
pub mod site;
pub mod source;

use analysis::Analysis;
use checks::{Accepted, Verdict};
use finding::{Finding, SourceMap};

/// What reading and checking a guidebook came to.
#[derive(Debug)]
pub struct Inspection {
    /// All files that were read, to turn places into lines.
    pub sources: SourceMap,
    /// All findings in their total order.
    pub findings: Vec<Finding>,
    /// Advice that was waived or turned off; not among the findings.
    pub accepted: Vec<Accepted>,
    /// The guidebook, with proof where there is no fault.
    pub verdict: Verdict,
}

/// Reads and checks a guidebook: files to documents, documents to the model, then every check.
#[must_use]
pub fn inspect(files: source::Files) -> Inspection {
    let (mut documents, mut findings) = source::load(files);
    let (book, lowered) = model::lower::lower(&mut documents);
    findings.extend(lowered);
    let analysis = Analysis::of(&book);
    let outcome = checks::run(book, analysis, findings, &documents.sources);
    Inspection { sources: documents.sources, findings: outcome.findings, accepted: outcome.accepted, verdict: outcome.verdict }
}
