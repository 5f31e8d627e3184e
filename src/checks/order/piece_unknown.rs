//! A step that takes a piece which is neither the start nor given by any step.

use crate::analysis::network::{Network, Taking};
use crate::analysis::order::OrderFault;
use crate::checks::left_out::left_out;
use crate::checks::nearest::nearest;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "piece-unknown",
        group: Group::Order,
        level: Level::Fault,
        what: "The name in `take` is not the start piece, and no step of the procedure gives a piece of that name.",
        why: "The cutter looks for a piece that never lies on the bench. Most often one of the two names is misspelt.",
        example: "- give: { chicken-body: rest }\n- take: chicken-bdy",
        mend: "Write the name under which a step gives the piece.",
        source: "Guidebook format, \"Where a finding points\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        let left_out = left_out(procedure, analysis);
        for fault in &analysis.network.faults {
            let OrderFault::UnknownTake { at } = fault else { continue };
            if left_out.iter().any(|(_, known)| known == at) {
                continue;
            }
            let Some(name) = procedure.steps.get(at.step).and_then(|step| step.take.get(at.take)) else { continue };
            let message = format!("no step gives `{}`, and the work does not start from it", name.value);
            let help = match meant(&analysis.network, *at, &name.value) {
                Some(meant) => format!("Write `{meant}`."),
                None => "Let an earlier step give it, or take a piece that one gives.".to_owned(),
            };
            report.add(CHECK.info.at(name.place, message).help(help));
        }
    }
}

/// The nearest piece that nothing takes, else the nearest of all, else the only one that lies open at this step.
fn meant<'a>(network: &'a Network, at: Taking, name: &str) -> Option<&'a str> {
    let own = |piece: usize| network.steps.get(at.step).is_some_and(|step| step.gives.contains(&piece));
    let others = || network.pieces.iter().enumerate().filter(|(piece, _)| !own(*piece)).map(|(_, piece)| piece);
    let open = || others().filter(|piece| piece.taken_by.is_none());
    let near = nearest(name, open().map(|piece| piece.id.as_str())).or_else(|| nearest(name, others().map(|piece| piece.id.as_str())));
    near.or_else(|| {
        let mut before = open().filter(|piece| piece.is_start || piece.given_by.first().is_some_and(|giving| giving.step < at.step));
        let only = before.next()?;
        before.next().is_none().then_some(only.id.as_str())
    })
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// The piece that is left over has no use, but that is no second mistake.
    #[test]
    fn misspelt_where_it_is_taken() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    take: chicken-bdy
#         ^^^^^^^^^^^ fault[piece-unknown] no step gives `chicken-bdy`
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    #[test]
    fn misspelt_where_it_is_given() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-boddy: rest
    loss: 0
  - name: Take off the wings
    take: chicken-body
#         ^^^^^^^^^^^^ fault[piece-unknown]
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    /// Where a step could not be read, it may have given the piece.
    #[test]
    fn silent_where_something_could_not_be_read() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give: chicken-body
#         ^^^^^^^^^^^^ fault[wrong-kind]
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }
}
