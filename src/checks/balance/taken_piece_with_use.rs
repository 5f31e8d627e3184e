//! A use on a piece that goes on to a later step.

use crate::analysis::facts::output_at;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "taken-piece-with-use",
        group: Group::Balance,
        level: Level::Fault,
        what: "A piece has a `use`, and a later step takes it. Only what leaves the bench has a use.",
        why: "A piece cannot be sold and cut up. Counted in both places it makes the yield of its use too high.",
        example: "give:\n  chicken-body: { share: 65–69 %, use: retail }   # and a later step takes it",
        mend: "Take the use out, or take another piece in the later step.",
        source: "Guidebook format, \"Outputs\": a use on a piece that is taken is a fault.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for piece in &analysis.network.pieces {
            let Some(taking) = piece.taken_by else { continue };
            let outputs = piece.given_by.iter().filter_map(|giving| output_at(procedure, *giving));
            let mut stated = outputs.filter_map(|output| output.purpose.given());
            let Some(first) = stated.next() else { continue };
            let message = format!("`{}` has a use, but step {} takes it", piece.id, taking.step + 1);
            let mut finding = CHECK.info.at(first.place, message);
            for other in stated {
                finding = finding.also(other.place, "stated here too");
            }
            report.add(finding.help(format!("Take out `use: {}`.", first.value.word())));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn once_for_a_piece() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: rest, use: for-cutting }
#                                       ^^^^^^^^^^^ fault[taken-piece-with-use] `chicken-body` has a use, but step 2 takes it
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
",
        );
    }

    /// Two uses of a tub that is taken are one mistake: it should have none.
    #[test]
    fn silent_neighbour_for_a_tub_that_is_taken() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: { share: 1 %, use: lean-trim }
#                                      ^^^^^^^^^ fault[taken-piece-with-use]
      chicken-body: rest
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: { share: 1 %, use: fat-trim }
      chicken-crown: { share: rest, use: retail }
  - name: Sort the bits
    take: chicken-bits
    do: Sort.
    minutes: 1–2
    give:
      chicken-mince: { share: rest, use: retail }
",
        );
    }
}
