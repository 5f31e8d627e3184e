//! Where the figures of a final piece come from: weighed runs, else the nearest source, else own judgement.

use std::collections::BTreeMap;

use crate::model::{Guidebook, Procedure, Spanned};

use super::facts::output_at;
use super::network::NetworkPiece;

/// So many weighed runs make a figure a tested one.
pub const RUNS_FOR_TESTED: usize = 5;

/// What a figure rests on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Evidence {
    /// So many weighed runs, five at least.
    Tested(usize),
    /// These texts, from the nearest place that states any: the outputs, the steps, the procedure.
    Source(Vec<String>),
    /// Nobody else's figure.
    OwnJudgement,
}

/// Weighed runs by procedure and piece, counted once for a whole guidebook.
#[derive(Debug, Clone, Default)]
pub struct TestRuns {
    runs: BTreeMap<String, BTreeMap<String, usize>>,
}

impl TestRuns {
    /// Counts the runs in which the start and the piece were both weighed.
    #[must_use]
    pub fn of(guidebook: &Guidebook) -> Self {
        let mut counted = Self::default();
        for test in &guidebook.cutting_tests {
            let pieces = counted.runs.entry(test.procedure.clone()).or_default();
            for run in test.runs.iter().filter(|run| run.start.value().is_some()) {
                for (column, weight) in test.columns.iter().zip(&run.weights) {
                    if weight.value().is_some() {
                        *pieces.entry(column.value.clone()).or_default() += 1;
                    }
                }
            }
        }
        counted
    }

    /// How many weighed runs of a procedure weighed this piece.
    #[must_use]
    pub fn count(&self, procedure: &str, piece: &str) -> usize {
        self.runs.get(procedure).and_then(|pieces| pieces.get(piece)).copied().unwrap_or(0)
    }
}

/// What the figures of a final piece rest on.
#[must_use]
pub fn evidence_of(procedure: &Procedure, piece: &NetworkPiece, runs: &TestRuns) -> Evidence {
    let tested = runs.count(&procedure.id, &piece.id);
    if tested >= RUNS_FOR_TESTED {
        return Evidence::Tested(tested);
    }
    let outputs = piece.given_by.iter().filter_map(|giving| output_at(procedure, *giving));
    let on_outputs = texts(outputs.flat_map(|output| &output.sources));
    let steps = piece.given_by.iter().filter_map(|giving| procedure.steps.get(giving.step));
    let levels = [on_outputs, texts(steps.flat_map(|step| &step.sources)), texts(&procedure.sources)];
    levels.into_iter().find(|level| !level.is_empty()).map_or(Evidence::OwnJudgement, Evidence::Source)
}

/// The texts, each once, in the order in which they stand.
fn texts<'a>(sources: impl IntoIterator<Item = &'a Spanned<String>>) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for source in sources {
        if !found.contains(&source.value) {
            found.push(source.value.clone());
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::network::Network;
    use crate::analysis::testing::{given, guidebook, kilograms, procedure, spanned};
    use crate::finding::{FileId, Place, Span};
    use crate::model::Stated;
    use crate::model::guidebook::{CuttingTest, Run};

    fn run(weighed: bool) -> Run {
        let place = Place::new(FileId(0), Span::default());
        let mass = || given(kilograms("1").low);
        Run {
            place,
            date: Stated::Absent,
            cutter: String::new(),
            lot: String::new(),
            start: mass(),
            weights: vec![if weighed { mass() } else { Stated::Absent }],
        }
    }

    #[test]
    fn runs_then_the_nearest_source_then_own_judgement() {
        let mut leg = procedure("a/leg", "leg", &["leg -> topside 50 | flank 50"]);
        let evidence = |procedure: &Procedure, weighed: usize| {
            let mut book = guidebook(vec![procedure.clone()]);
            let runs = (0..6).map(|at| run(at < weighed)).collect();
            let (file, place) = (FileId(0), Place::new(FileId(0), Span::default()));
            book.cutting_tests.push(CuttingTest {
                procedure: "a/leg".to_owned(),
                file,
                place,
                columns: vec![spanned("topside".to_owned())],
                runs,
            });
            let network = Network::of(procedure);
            evidence_of(procedure, &network.pieces[1], &TestRuns::of(&book))
        };
        assert_eq!(evidence(&leg, 5), Evidence::Tested(5));
        assert_eq!(evidence(&leg, 4), Evidence::OwnJudgement);
        leg.sources = vec![spanned("A handbook".to_owned())];
        assert_eq!(evidence(&leg, 4), Evidence::Source(vec!["A handbook".to_owned()]));
        leg.steps[0].give[0].sources = vec![spanned("A table".to_owned())];
        assert_eq!(evidence(&leg, 4), Evidence::Source(vec!["A table".to_owned()]));
    }
}
