//! Proof, as a type, that a guidebook has no fault.

use crate::analysis::Analysis;
use crate::finding::Finding;

/// A value in which no check found a fault; only `checks::run` makes one.
#[derive(Debug)]
pub struct Checked<T> {
    value: T,
    analysis: Analysis,
    advice: Vec<Finding>,
}

impl<T> Checked<T> {
    pub(super) const fn new(value: T, analysis: Analysis, advice: Vec<Finding>) -> Self {
        Self { value, analysis, advice }
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
}
