//! Two instructions in one sentence.

use crate::checks::sentences::{Sentence, Word, exact, instructions, sentences};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "two-instructions",
        group: Group::Language,
        level: Level::Advice,
        what: "A sentence in a step's `do` joins a second instruction with `and then`, `, then` or `; then` and a verb of the work. What is \
               less plain stays unsaid: `down and then along the bone` is one cut, and a sentence that begins with `if` or `when`, `never` or \
               `do not` is one instruction. Only guidebooks in English are looked at.",
        why: "Who reads with the knife in the hand does the first half, looks again, and may take up the sentence at the wrong place.",
        example: "do: Cut to the bone, then turn the leg over.    # told\ndo: |\n  Cut to the bone.\n  Turn the leg over.",
        mend: "Write each instruction as a sentence of its own, on a line of its own.",
        source: "ASD-STE100 Simplified Technical English: one instruction a sentence. Read second hand (tcworld.info, H. Kaiser, excerpt of \
                 the rules). The list of verbs is own judgement.",
    },
    run: Run::Check(run),
};

/// Verbs of the work in the form that tells one to do it. Words that are as often something else stay out.
const VERBS: &[&str] = &[
    "bend",
    "bone",
    "break",
    "check",
    "chill",
    "chine",
    "circle",
    "clean",
    "clear",
    "cover",
    "cut",
    "detach",
    "disinfect",
    "divide",
    "draw",
    "drain",
    "expose",
    "feel",
    "fillet",
    "find",
    "fold",
    "follow",
    "free",
    "grip",
    "halve",
    "hang",
    "hold",
    "insert",
    "lay",
    "lift",
    "loosen",
    "move",
    "open",
    "pack",
    "peel",
    "place",
    "press",
    "pull",
    "push",
    "put",
    "raise",
    "release",
    "remove",
    "repeat",
    "rinse",
    "roll",
    "rotate",
    "saw",
    "scale",
    "score",
    "scrape",
    "separate",
    "set",
    "skin",
    "slice",
    "slide",
    "slit",
    "split",
    "square",
    "start",
    "stop",
    "take",
    "tie",
    "tilt",
    "trim",
    "truss",
    "turn",
    "twist",
    "wash",
    "weigh",
    "wipe",
    "work",
    "wrap",
];

/// Words with which a condition begins: its `then` belongs to it.
const CONDITIONS: &[&str] = &["if", "when", "where", "once", "as", "after", "until", "while", "unless", "should"];

fn run(subject: &Subject<'_>, report: &mut Report) {
    for instruction in instructions(subject) {
        for sentence in sentences(&instruction.value) {
            let Some(second) = second(&sentence) else { continue };
            let place = exact(subject.sources, instruction, &second.range);
            let message = format!("a second instruction begins in this sentence: `{}`", second.plain());
            report.add(CHECK.info.at(place, message).help("Write it as a sentence of its own."));
        }
    }
}

/// The verb with which a second instruction begins.
fn second(sentence: &Sentence) -> Option<&Word> {
    let plain: Vec<String> = sentence.words.iter().map(Word::plain).collect();
    let first: Vec<&str> = plain.iter().map(String::as_str).take(2).collect();
    let forbids = matches!(first.as_slice(), ["never" | "don't" | "don’t", ..] | ["do", "not"]);
    let condition = first.first().is_some_and(|word| CONDITIONS.contains(word));
    if forbids {
        return None;
    }
    for ((words, plain), at) in sentence.words.windows(3).zip(plain.windows(3)).zip(0..) {
        let ([before, then, verb], [joins, is_then, does]) = (words, plain) else { continue };
        if is_then != "then" || then.ends_a_phrase() || !VERBS.contains(&does.as_str()) {
            continue;
        }
        // `cut and then` has nothing before it that could be an instruction of its own at position 0.
        let joined = joins == "and" && at > 0;
        let after_sign = before.is_before(';') || (before.is_before(',') && !condition);
        if joined || after_sign {
            return Some(verb);
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::testing::steps;

    fn found(text: &str) -> Vec<String> {
        sentences(text).iter().filter_map(second).map(Word::plain).collect()
    }

    #[test]
    fn the_second_verb_is_pointed_at() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Lay the bird on its back and then cut along the keel.
#                                         ^^^ advice[two-instructions] `cut`
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn joined_by_a_sign() {
        assert_eq!(found("Cut to the bone, then turn the leg over."), ["turn"]);
        assert_eq!(found("Cut to the bone; then turn it over. Saw through it, and then wipe it."), ["turn", "wipe"]);
    }

    #[test]
    fn one_instruction_stays_silent() {
        for sound in [
            "Cut down and then along the bone.",
            "If the joint sticks, then turn the leg.",
            "When the ball shows, then cut.",
            "Never pull and then cut toward the hand.",
            "Do not lift and then turn it.",
            "Cut along the keel. Then turn the bird over.",
            "The blade meets bone first, then air.",
            "Fold the leg back until the joint opens.",
        ] {
            assert_eq!(found(sound), [""; 0], "{sound}");
        }
    }

    #[test]
    fn two_sentences_are_silent() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Lay the bird on its back. Then cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
