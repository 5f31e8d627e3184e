//! A piece that no later step takes and of which nobody knows what becomes.

use std::collections::BTreeSet;

use crate::analysis::facts::output_at;
use crate::analysis::network::{Network, NetworkPiece, Taking};
use crate::analysis::order::OrderFault;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::analysis::uses::FinalUse;
use crate::checks::nearest::slip;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::Use;
use crate::model::{Procedure, ShareSpec};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "final-piece-without-use",
        group: Group::Balance,
        level: Level::Fault,
        what: "No step takes the piece, and it has no `use`. It may be left out only where another procedure starts from the piece.",
        why: "What has no use lies on the bench until it is warm, or goes into the wrong tub. Stock, sale and bin are told apart here.",
        example: "give:\n  chicken-wings: 15–18.5 %   # no step takes them, and no use",
        mend: "Add a use, or take the piece in a later step.",
        source: "Guidebook format, \"Outputs\": a final piece without a use is a fault.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let elsewhere = Elsewhere::of(subject);
    for (_, procedure, analysis) in subject.procedures() {
        if procedure.steps_from_yields || !analysis.network.finals_are_certain() || elsewhere.unread.contains(species(&procedure.id)) {
            continue;
        }
        for ((_, piece), usage) in analysis.network.pieces.iter().enumerate().zip(&analysis.uses) {
            if *usage != Some(FinalUse::Missing) || elsewhere.sought.contains(piece.id.as_str()) || may_be_meant(&analysis.network, piece) {
                continue;
            }
            tell(procedure, &analysis.network, piece, report);
        }
    }
}

fn tell(procedure: &Procedure, network: &Network, piece: &NetworkPiece, report: &mut Report) {
    let Some(output) = piece.given_by.first().and_then(|giving| output_at(procedure, *giving)) else { return };
    // A short form whose text could not be read may hold anything.
    if !output.long && output.share.is_broken() {
        return;
    }
    let words: Vec<&str> = Use::ALL.iter().map(|usage| usage.word()).collect();
    let mut finding = CHECK.info.at(output.place, format!("no step takes `{}`, and it has no use", piece.id));
    let share = match output.share.value() {
        Some(ShareSpec::Between(range)) => format!("{range} %"),
        _ => "rest".to_owned(),
    };
    let meant = slip(&piece.id, network.pieces.iter().map(|piece| piece.id.as_str()));
    finding = finding.help(if let Some(meant) = meant {
        format!("Write `{meant}` if that piece is meant, or give `{}` a use.", piece.id)
    } else if output.long {
        format!("Add `use:` with one of {}.", words.join(", "))
    } else {
        format!("Write `{{ share: {share}, use: retail }}`, or another use.")
    });
    report.add(finding);
}

/// A step that takes the wrong piece leaves another one over: that step has its finding already.
fn may_be_meant(network: &Network, piece: &NetworkPiece) -> bool {
    let given = piece.given_by.first().map_or(0, |giving| giving.step);
    let takes_wrong = |fault: &OrderFault| match fault {
        OrderFault::TakenTwice { at: Taking { step, .. }, .. } | OrderFault::TakenBeforeMade { at: Taking { step, .. }, .. } => {
            given < *step
        }
        _ => false,
    };
    network.faults.iter().any(takes_wrong)
}

/// What other procedures may start from or look for in vain.
struct Elsewhere<'a> {
    /// Species of which some procedure, or its start, could not be read.
    unread: BTreeSet<&'a str>,
    /// Names that a step takes and no step of its procedure gives: the start may be misspelt there.
    sought: BTreeSet<&'a str>,
}

impl<'a> Elsewhere<'a> {
    fn of(subject: &Subject<'a>) -> Self {
        let broken = subject.book.broken_procedures.iter().map(|path| species(path));
        let startless = subject
            .procedures()
            .filter(|(_, procedure, _)| procedure.start.piece.is_broken())
            .map(|(_, procedure, _)| species(&procedure.id));
        let sought = subject.procedures().flat_map(|(_, procedure, analysis)| unknown_takes(procedure, analysis)).collect();
        Self { unread: broken.chain(startless).collect(), sought }
    }
}

fn unknown_takes<'a>(procedure: &'a Procedure, analysis: &'a ProcedureAnalysis) -> impl Iterator<Item = &'a str> {
    analysis.network.faults.iter().filter_map(|fault| match fault {
        OrderFault::UnknownTake { at } => Some(procedure.steps.get(at.step)?.take.get(at.take)?.value.as_str()),
        _ => None,
    })
}

/// The folder of a procedure.
fn species(id: &str) -> &str {
    id.split('/').next().unwrap_or(id)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, files, steps};

    #[test]
    fn short_form_and_long_form() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: 31–35 %
#                   ^^^^^^^ fault[final-piece-without-use] no step takes `chicken-legs`
      chicken-wings: { share: 10–12 %, pieces: 2 }
#                    ^ fault[final-piece-without-use] no step takes `chicken-wings`
      chicken-body:
        share: rest
#       ^^^^^ fault[final-piece-without-use] no step takes `chicken-body`
    loss: 0
",
        );
    }

    /// Once for a tub, and not where a use is stated by any step that gives it.
    #[test]
    fn a_tub_once() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-fat: 1–2 %
#                  ^^^^^ fault[final-piece-without-use]
      chicken-bits: 1 %
      chicken-body: rest
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-fat: 1–2 %
      chicken-bits: { share: 1 %, use: lean-trim }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    /// A misspelt take, a piece taken in the place of another, and yields alone.
    #[test]
    fn silent_where_another_mistake_leaves_the_piece_over() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
  - name: Take off the wings
    take: chicken-whole
#         ^^^^^^^^^^^^^ fault[piece-used-twice]
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
",
        );
        steps("yields: { chicken-legs: 31–35 %, chicken-body: 65–69 % }\n");
    }

    /// The loin goes on to another guide; the belly does not.
    #[test]
    fn silent_where_another_procedure_starts_from_it() {
        let pork = HEAD.replace("chicken", "pork").replace("Whole pork", "Pork");
        files(&[
            (
                "pork/whole.yaml",
                &format!(
                    "{pork}steps:
  - name: Part it
    take: pork-whole
    do: Cut.
    minutes: 1–2
    give:
      pork-loin: 50–60 %
      pork-belly: rest
#                 ^^^^ fault[final-piece-without-use]
"
                ),
            ),
            (
                "pork/loin.yaml",
                &format!(
                    "{}yields: {{ pork-eye: 50–60 %, pork-bone: 40–50 % }}\n",
                    pork.replace("pork-whole", "pork-loin").replace("1.6–2.0 kg, typical: 1.8 kg", "0.7–1.3 kg")
                ),
            ),
        ]);
    }
}
