//! Cautions that nobody knows.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::meant;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "caution-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "A caution is neither built in nor in the `cautions.yaml` of the guidebook.",
        why: "A caution is shown by its text. Without one, nothing stands before the cut that can hurt.",
        example: "cautions: [keep-cool]       # refused\ncautions: [keep-cold]",
        mend: "Write the id of a built-in caution, or add the caution to `cautions.yaml`.",
        source: "Guidebook format, version 1, \"Built-in ids\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    if known::is_broken(book, "cautions.yaml") {
        return;
    }
    for caution in known::named_cautions(book) {
        if book.builtin.cautions.contains_key(&caution.value) || book.cautions.contains_key(&caution.value) {
            continue;
        }
        let all = book.builtin.cautions.keys().chain(book.cautions.keys()).map(String::as_str);
        let help = meant(&caution.value, all).map_or_else(
            || format!("Write a built-in caution, or add `{}:` to `cautions.yaml`.", caution.value),
            |near| format!("Write {near}."),
        );
        report.add(CHECK.info.at(caution.place, format!("`{}` is neither built in nor in `cautions.yaml`", caution.value)).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    #[test]
    fn a_misspelt_caution() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    cautions: [keep-cool]
#              ^^^^^^^^^ fault[caution-unknown] `keep-cool` is neither built in
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_tool_of_the_shop() {
        files(&[(
            "tools.yaml",
            "tub:
  name: Tub
  cautions: [heavy-tub]
#            ^^^^^^^^^ fault[caution-unknown] `heavy-tub`
",
        )]);
    }

    #[test]
    fn a_caution_of_the_shop() {
        files(&[
            ("cautions.yaml", "heavy-tub: { signal: caution, hazard: A full tub is heavy., consequence: A strained back., avoid: Lift it with two., harm: healing }
"),
            ("chicken/whole.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, cautions: [heavy-tub], do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }
}
