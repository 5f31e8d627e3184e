//! An instruction in one sentence of more than twenty words.

use crate::checks::sentences::{exact, instructions, sentences};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

/// The most words in a sentence that tells what to do.
const MOST: usize = 20;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "sentence-too-long",
        group: Group::Language,
        level: Level::Advice,
        what: "A sentence in a step's `do` has more than 20 words. A hyphenated word is one word, and so is a number with its unit. Each \
               line that begins with a capital is a sentence of its own, stop or not. Only guidebooks in English are looked at.",
        why: "At the bench one reads a sentence, looks away and does it. What is longer than twenty words is read twice, with the knife in the hand.",
        example: "do: Fold the leg back until the ball of the joint shows, then cut round behind the oyster and through the open joint to the tail end.",
        mend: "Make two sentences of it, or a list. What explains goes to `anatomy-note`, `landmark` or `good`.",
        source: "ASD-STE100 Simplified Technical English: a procedural sentence has at most 20 words. Read second hand (tcworld.info, \
                 H. Kaiser, excerpt of the rules); the way of counting is from memory.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for instruction in instructions(subject) {
        for sentence in sentences(&instruction.value) {
            let words = sentence.count();
            if words > MOST {
                let over = words - MOST;
                let place = exact(subject.sources, instruction, &sentence.range());
                let message = format!("a sentence of {words} words, {over} over the {MOST} that are read at a glance");
                report.add(CHECK.info.at(place, message).help("Make two sentences of it."));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, STEPS, files, steps};

    const LONG: &str =
        "Cut down along the left side of the keel from the neck end to the tail end until the blade reaches the wishbone joint.";

    fn with(instruction: &str, told: &str) -> String {
        format!(
            "steps:
  - name: Halve
    take: chicken-whole
    do: {instruction}
{told}    minutes: 1–2
    give:
      chicken-half: {{ share: 98–100 %, pieces: 2, use: retail }}
    loss: 0–2 %
"
        )
    }

    #[test]
    fn the_sentence_itself_is_pointed_at() {
        let told = "#^13:7 advice[sentence-too-long] a sentence of 24 words, 4 over the 20\n";
        steps(&with(&format!("|\n      Lay the bird on its back.\n      {LONG}"), told));
        let told = "#               ^^^ advice[sentence-too-long] 24 words\n";
        steps(&with(&format!("Lay it. {LONG}"), told));
    }

    #[test]
    fn twenty_words_with_a_quantity_and_a_hyphen() {
        steps(&with("Cut down along the left-hand side of the keel, 2 cm deep, from the neck end to the tail end only.", ""));
        let told = "#       ^^^ advice[sentence-too-long] 21 words, 1 over\n";
        steps(&with("Cut down along the left hand side of the keel, 2 cm deep, from the neck end to the tail end only.", told));
    }

    #[test]
    fn another_language_has_other_rules() {
        let text = format!("{HEAD}{STEPS}").replace("Cut along the keel.", LONG);
        files(&[("guidebook.yaml", "title: Laden\nlanguage: de\nlimits: eu-853\n"), ("chicken/whole.yaml", &text)]);
    }
}
