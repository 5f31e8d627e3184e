//! Proof, as a type, that a guidebook has no fault.

use super::waived::Accepted;
use crate::analysis::Analysis;
use crate::finding::{Finding, SourceMap};

/// A value in which no check found a fault; only `checks::run` makes one.
#[derive(Debug)]
pub struct Checked<T> {
    value: T,
    analysis: Analysis,
    advice: Vec<Finding>,
    accepted: Vec<Accepted>,
    sources: SourceMap,
}

impl<T> Checked<T> {
    pub(super) const fn new(value: T, analysis: Analysis, advice: Vec<Finding>, accepted: Vec<Accepted>, sources: SourceMap) -> Self {
        Self { value, analysis, advice, accepted, sources }
    }

    /// The value.
    pub const fn value(&self) -> &T {
        &self.value
    }

    /// What was computed of it.
    pub const fn analysis(&self) -> &Analysis {
        &self.analysis
    }

    /// The advice that was given and not followed.
    pub fn advice(&self) -> &[Finding] {
        &self.advice
    }

    /// The advice that was waived or turned off, each with its reason.
    pub fn accepted(&self) -> &[Accepted] {
        &self.accepted
    }

    /// The files that it was read from.
    pub const fn sources(&self) -> &SourceMap {
        &self.sources
    }
}
