//! Tools that nobody knows.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::meant;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "tool-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "A tool is neither built in nor in the `tools.yaml` of the guidebook.",
        why: "A tool brings its cautions and its protection with it. A misspelt band saw would stand in the guide without a word of warning.",
        example: "tools: [bonning-knife]      # refused\ntools: [boning-knife]",
        mend: "Write the id of a built-in tool, or add the tool to `tools.yaml`.",
        source: "Guidebook format, version 1, \"Built-in ids\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    if known::is_broken(book, "tools.yaml") {
        return;
    }
    for tool in known::named_tools(book) {
        if book.builtin.tools.contains_key(&tool.value) || book.tools.contains_key(&tool.value) {
            continue;
        }
        let all = book.builtin.tools.keys().chain(book.tools.keys()).map(String::as_str);
        let help = meant(&tool.value, all)
            .map_or_else(|| format!("Write a built-in tool, or add `{}:` to `tools.yaml`.", tool.value), |near| format!("Write {near}."));
        report.add(CHECK.info.at(tool.place, format!("`{}` is neither built in nor in `tools.yaml`", tool.value)).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, STEPS, files, steps};

    #[test]
    fn a_misspelt_tool() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    tools: [boning-knife, traye]
#                         ^^^^^ fault[tool-unknown] `traye` is neither built in
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn one_of_a_choice() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    tools: [boning-knife, { any-of: [tray, tub] }]
#                                          ^^^ fault[tool-unknown] `tub`
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_tool_of_the_shop() {
        files(&[
            ("tools.yaml", "tub: { name: Tub }
"),
            ("chicken/whole.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, tools: [tub], do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }

    /// The id that can't be one is told where it stands, and nothing where it is named.
    #[test]
    fn silent_where_the_id_of_the_tool_is_malformed() {
        files(&[
            (
                "chicken/whole.yaml",
                &format!("{HEAD}{}", STEPS.replace("    minutes: 1–2\n", "    minutes: 1–2\n    tools: [boning-knife, rib-puller]\n")),
            ),
            ("tools.yaml", "rib puller: { name: Rib puller }\n#^1:1 fault[id-malformed]\n"),
        ]);
    }

    #[test]
    fn silent_while_the_tools_of_the_shop_can_not_be_read() {
        files(&[
            ("tools.yaml", "tub: \"Tub
#    ^ fault[unclosed-quote]
"),
            ("chicken/whole.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, tools: [tub], do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }
}
