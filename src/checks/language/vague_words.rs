//! Words in an instruction that leave open how much, or how.

use std::ops::Range;

use crate::checks::sentences::{Sentence, Word, exact, instructions, sentences};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "vague-words",
        group: Group::Language,
        level: Level::Advice,
        what: "A step's `do` says `some`, `carefully`, `a bit`, `proper`, `properly` or `as needed`. `In some birds` and `the loin proper.` \
               are no instructions of how much, and stay. Only guidebooks in English are looked at.",
        why: "Who knows the work does not need the word, and who learns it cannot follow it: how much fat is some?",
        example: "do: Trim some fat off, carefully.    # told\ndo: Trim the fat to 5 mm.",
        mend: "Write the figure, or what is seen or felt when it is right. A danger goes to `cautions`.",
        source: "Common practice of standard operating procedures, which replace such words by what can be measured or seen.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for instruction in instructions(subject) {
        for (words, range) in sentences(&instruction.value).iter().flat_map(vague) {
            let place = exact(subject.sources, instruction, &range);
            report.add(CHECK.info.at(place, format!("`{words}` leaves open how much, or how")).help(mend(&words)));
        }
    }
}

fn mend(words: &str) -> &'static str {
    match words {
        "some" | "a bit" => "Write how much.",
        "as needed" => "Write when it is needed, and how much.",
        _ => "Write what is seen or felt when it is right.",
    }
}

/// The vague words of a sentence, with their bytes in the text.
fn vague(sentence: &Sentence) -> Vec<(String, Range<usize>)> {
    let words = &sentence.words;
    let mut found = Vec::new();
    for (at, word) in words.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|before| words.get(before));
        let after = words.get(at + 1).filter(|_| !word.ends_a_phrase());
        let plain = word.plain();
        match (plain.as_str(), after.map(Word::plain).as_deref()) {
            ("carefully" | "properly", _) => found.push((plain, word.range.clone())),
            ("proper", Some(_)) => found.push((plain, word.range.clone())),
            ("some", _) if !before.is_some_and(is_about_the_animal) => found.push((plain, word.range.clone())),
            ("a", Some("bit")) | ("as", Some("needed")) => {
                let end = after.map_or(word.range.end, |after| after.range.end);
                found.push((format!("{plain} {}", after.map(Word::plain).unwrap_or_default()), word.range.start..end));
            }
            _ => {}
        }
    }
    found
}

/// `in some birds`, `on some sides`: what is so, not how much to take.
fn is_about_the_animal(before: &Word) -> bool {
    matches!(before.plain().as_str(), "in" | "on" | "for")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::testing::steps;

    fn found(text: &str) -> Vec<String> {
        sentences(text).iter().flat_map(vague).map(|(words, _)| words).collect()
    }

    #[test]
    fn each_word_is_pointed_at() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Take some fat off, carefully.
#            ^^^^ advice[vague-words] `some` leaves open how much
#                          ^^^^^^^^^ advice[vague-words] `carefully`
    good: The fat is trimmed carefully, with some left.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn words_of_two_words() {
        assert_eq!(found("Lift it a bit. Trim as needed. Use the proper board, properly."), ["a bit", "as needed", "proper", "properly"]);
    }

    #[test]
    fn figures_and_facts_stay_silent() {
        let sound = "Trim the fat to 5 mm. In some birds the joint lies deeper. Cut it from the loin proper. As the joint opens, cut. Take a bite-sized cube.";
        assert_eq!(found(sound), [""; 0]);
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Trim the fat to 5 mm. In some birds the keel is soft.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
