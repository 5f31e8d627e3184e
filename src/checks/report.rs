//! What a check gets, and where it reports.

use super::info::CheckInfo;
use crate::analysis::Analysis;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::finding::{Finding, Level, Place, SourceMap};
use crate::model::{Guidebook, Procedure};

/// What is checked.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// The guidebook.
    pub book: &'a Guidebook,
    /// What was computed of it.
    pub analysis: &'a Analysis,
    /// The authored texts, to point at exact places inside a value.
    pub sources: &'a SourceMap,
}

impl<'a> Subject<'a> {
    /// Each procedure with its position and what was computed of it.
    pub fn procedures(&self) -> impl Iterator<Item = (usize, &'a Procedure, &'a ProcedureAnalysis)> {
        let pairs = self.book.procedures.iter().zip(&self.analysis.procedures).enumerate();
        pairs.map(|(at, (procedure, analysis))| (at, procedure, analysis))
    }
}

/// Collects findings.
#[derive(Debug, Default)]
pub struct Report {
    findings: Vec<Finding>,
}

impl Report {
    pub(super) const fn new(findings: Vec<Finding>) -> Self {
        Self { findings }
    }

    pub(super) fn into_findings(self) -> Vec<Finding> {
        self.findings
    }

    /// Adds a finding.
    pub fn add(&mut self, finding: Finding) {
        self.findings.push(finding);
    }
}

impl CheckInfo {
    /// A finding of this check at its own level.
    #[must_use]
    pub fn at(&self, place: Place, message: impl Into<String>) -> Finding {
        match self.level {
            Level::Fault => Finding::fault(self.id, place, message),
            Level::Advice => Finding::advice(self.id, place, message),
        }
    }

    /// Advice of a check that also makes faults.
    #[must_use]
    pub fn advice_at(&self, place: Place, message: impl Into<String>) -> Finding {
        Finding::advice(self.id, place, message)
    }
}
