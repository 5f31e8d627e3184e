//! Sentences of generated guides, put together from words of the trade and the names of the parts that a step meets.
//!
//! They read like instructions, with one act a sentence, and differ enough that search and pages get no easy work.

use crate::corpus::Random;

const STROKES: &[&str] = &[
    "Cut along the {part} with the edge flat on it.",
    "Follow the {part} with the tip of the knife.",
    "Feel for the {part} with two fingers.",
    "Score a shallow line beside the {part}.",
    "Lift the edge of the {name} and look for the {part}.",
    "Draw the knife toward the {side} end in one long stroke.",
    "Open the seam between the {part} and the {other}.",
    "Turn the {name} so that the {part} lies on top.",
    "Free the {other} from the {part} with short strokes.",
    "Stop where the {part} meets the {other}.",
    "Lay the {name} on the board, {side} end left.",
    "Press the {other} aside until the seam shows.",
    "Count {count} fingers from the {part} and mark the line.",
    "Keep the point below the {other} all the way.",
    "Part the last fibres close to the {part}.",
    "Trim the {part} down to {count} mm of cover.",
    "Set the edge a hair to the {side} side of the {part}.",
    "Peel the {part} back with the flat of the knife.",
    "Check the face of the cut for a window.",
    "Wipe the board before the next stroke.",
    "Steel the knife after the {part}.",
    "Slide what came off to the {side} edge of the board.",
    "Weigh the {name} on the tray.",
    "Put the trimmings straight into their tub.",
];
const SIDES: &[&str] = &["thick", "thin", "front", "rear", "upper", "lower"];
const HOLDS: &[&str] = &[
    "The other hand pulls the {part} up and away, above the edge.",
    "The other hand lies flat on the {name}, a hand's breadth from the line.",
    "The other hand grips the {side} end and never passes in front of the blade.",
    "The fingers of the other hand are drawn back behind the {part}.",
];
const LANDMARKS: &[&str] = &[
    "The {part} shows as a pale line beside the {other}.",
    "The tip ticks over the {part} and then runs free.",
    "The {other} feels firm under the thumb where the {part} ends.",
    "A finger finds the hollow between {part} and {other}.",
];
const NOTES: &[&str] = &[
    "The {part} lies along the {other} over its whole length.",
    "The {other} ends {count} cm short of the {side} end.",
    "Fat fills the gap between {part} and {other} in well-fed animals.",
    "In a young animal the {part} is soft and shows pink.",
];
const GOODS: &[&str] = &[
    "The face is smooth, the {part} is whole and no score is deeper than {count} mm.",
    "The {part} is bare and the {name} has no window in it.",
    "The cover is even, {count} mm at the {side} end and the same in the middle.",
];
const MISTAKES: &[&str] = &[
    "Cutting into the {part}, because the edge left the {other}.",
    "Stopping at the {other} and tearing the rest off by hand.",
    "Taking the line {count} mm too far to the {side} side, which leaves lean on the {part}.",
    "Working on with a blunt edge, which turns strokes into pushes.",
];
const QUESTIONS: &[(&str, &str)] = &[
    ("What tells you that the {part} is free?", "It moves by itself when the {other} is pressed."),
    ("Where does the {part} end?", "At the {side} end, {count} cm behind the {other}."),
    ("The edge meets the {part}. What do you do?", "Lift the edge, and follow the {part} on its {side} side."),
    ("Which piece does the {other} go with?", "With the {name}, because it hangs on the {part}."),
];
const VERBS: &[&str] = &["Lift off", "Part off", "Seam out", "Take off", "Free", "Cut off"];

/// What the sentences of one step are about.
pub(crate) struct Words<'a> {
    /// The part of the animal at which the knife works.
    pub(crate) part: &'a str,
    /// A part beside it.
    pub(crate) other: &'a str,
    /// The piece in hand.
    pub(crate) name: &'a str,
}

impl Words<'_> {
    /// One of these sentences with its gaps filled.
    fn one(&self, sentences: &[&str], random: &mut Random) -> String {
        let sentence = random.pick(sentences);
        self.filled(sentence, random)
    }

    fn filled(&self, sentence: &str, random: &mut Random) -> String {
        let count = (2 + random.below(7)).to_string();
        sentence
            .replace("{part}", self.part)
            .replace("{other}", self.other)
            .replace("{name}", self.name)
            .replace("{side}", random.pick(SIDES))
            .replace("{count}", &count)
    }

    /// What to do: four to eleven sentences, none twice.
    pub(crate) fn acts(&self, random: &mut Random) -> Vec<String> {
        let mut left: Vec<&str> = STROKES.to_vec();
        let count = 4 + random.below(8);
        let mut filled = || {
            let one = left.swap_remove(random.below(left.len()));
            self.filled(one, random)
        };
        (0..count).map(|_| filled()).collect()
    }

    /// Where the other hand is.
    pub(crate) fn hold(&self, random: &mut Random) -> String {
        self.one(HOLDS, random)
    }

    /// How to find the line.
    pub(crate) fn landmark(&self, random: &mut Random) -> String {
        self.one(LANDMARKS, random)
    }

    /// What lies there.
    pub(crate) fn notes(&self, random: &mut Random) -> [String; 2] {
        [self.one(NOTES, random), self.one(NOTES, random)]
    }

    /// How good work looks.
    pub(crate) fn good(&self, random: &mut Random) -> String {
        self.one(GOODS, random)
    }

    /// What goes wrong.
    pub(crate) fn mistakes(&self, random: &mut Random) -> [String; 2] {
        [self.one(MISTAKES, random), self.one(MISTAKES, random)]
    }

    /// A question with its answer.
    pub(crate) fn question(&self, random: &mut Random) -> [String; 2] {
        let (question, answer) = QUESTIONS[random.below(QUESTIONS.len())];
        [self.filled(question, random), self.filled(answer, random)]
    }

    /// The name of a step.
    pub(crate) fn step_name(&self, random: &mut Random) -> String {
        format!("{} the {}", random.pick(VERBS), self.part)
    }
}
