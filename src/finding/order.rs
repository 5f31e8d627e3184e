//! The total order of findings, so that the same guidebook gives the same list in any reading order.

use std::cmp::Ordering;

use super::{Finding, SourceMap};

/// Sorts by path, place, level, check and message, and drops exact repetitions.
pub fn sort(findings: &mut Vec<Finding>, sources: &SourceMap) {
    findings.sort_by(|a, b| compare(a, b, sources));
    findings.dedup();
}

/// Which of two findings comes first.
#[must_use]
pub fn compare(a: &Finding, b: &Finding, sources: &SourceMap) -> Ordering {
    sources
        .path(a.place.file)
        .cmp(sources.path(b.place.file))
        .then(a.place.span.start.cmp(&b.place.span.start))
        .then(a.level.cmp(&b.level))
        .then(a.check.cmp(b.check))
        .then(a.message.cmp(&b.message))
        .then(a.place.span.end.cmp(&b.place.span.end))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::{Place, Span};

    #[test]
    fn order_does_not_depend_on_the_order_of_reading() {
        let mut sources = SourceMap::default();
        let late = sources.add("z.yaml", "abcdef");
        let early = sources.add("a.yaml", "abcdef");
        let at = |file, start| Place::new(file, Span::new(start, start + 1));
        let list = vec![
            Finding::advice("b", at(late, 1), "x"),
            Finding::fault("c", at(late, 1), "x"),
            Finding::fault("a", at(early, 3), "x"),
            Finding::fault("a", at(early, 3), "x"),
            Finding::fault("a", at(early, 1), "x"),
        ];
        let mut forward = list.clone();
        let mut backward: Vec<_> = list.into_iter().rev().collect();
        sort(&mut forward, &sources);
        sort(&mut backward, &sources);
        assert_eq!(forward, backward);
        assert_eq!(forward.iter().map(|f| f.check).collect::<Vec<_>>(), ["a", "a", "c", "b"]);
    }
}
