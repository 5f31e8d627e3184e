//! One generated guide: its steps, what each gives, and what goes on to the next guide.
//!
//! The shares of every step add up by construction: the piece in hand keeps the rest. It writes no disk.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use seamwise::model::builtin::Builtin;

use crate::corpus::Random;
use crate::generate::{Cut, Place, Start, capitalised, weights};
use crate::texts::Words;

/// A guide as files, and what it hands on.
pub(crate) struct Guide {
    pub(crate) path: String,
    pub(crate) text: String,
    /// Path and bytes of its drawing, where it has one.
    pub(crate) drawing: Option<(String, Vec<u8>)>,
    pub(crate) cuts: Vec<Cut>,
    /// Starts of further guides.
    pub(crate) onward: Vec<Start>,
}

/// A piece that lies on the bench, with the least and greatest share of the start that it can be.
struct Held {
    id: String,
    name: String,
    low: f64,
    high: f64,
}

/// What one step gives: the rest first, then others by their shares in tenths of a percent.
struct Gives {
    rest: String,
    others: Vec<Given>,
}

struct Given {
    id: String,
    low: usize,
    high: usize,
    /// What stands behind the share: a use, portions, glands.
    more: String,
}

const STAGES: &[&str] =
    &["opened", "faced", "trimmed", "squared", "cleared", "turned", "seamed", "bared", "parted", "shaped", "dressed", "halved", "ready"];
const FORMS: &[&str] = &["joint", "steak", "roll", "fillet", "slice", "heart", "cap", "block", "strip", "escalope"];
/// Tubs that all guides of a species share, and what they are used as.
const TUBS: &[(&str, &str)] = &[("lean-trim", "lean-trim"), ("fat-trim", "fat-trim"), ("bone", "bone")];
/// What is lost in a step, in tenths of a percent.
const LOSS: (usize, usize) = (1, 5);
/// Guides of one family lie at most so deep behind its first.
const DEEPEST: usize = 2;
/// A piece lighter than this, in grams, has no guide of its own.
const LIGHTEST_START: f64 = 400.0;
/// A piece heavier than this, in grams, is cut into portions for the counter.
const PORTIONED: f64 = 1_500.0;

/// Writes a guide from `start`; at most `room` further guides can follow from it.
pub(crate) fn written(start: &Start, place: &Place, room: usize, random: &mut Random) -> Guide {
    let mut writer = Writer {
        start,
        place,
        room,
        used: BTreeSet::new(),
        text: String::new(),
        cuts: Vec::new(),
        onward: Vec::new(),
        random,
        picture: (start.depth == 0).then(|| format!("pictures/{}.svg", start.piece)),
    };
    writer.head();
    writer.steps();
    let Writer { text, cuts, onward, picture, .. } = writer;
    let drawing = picture.map(|path| (path, drawing(start, place)));
    Guide { path: format!("{}/{}.yaml", place.species, guide_name(start)), text, drawing, cuts, onward }
}

/// The name of the guide: its starting piece without the species.
fn guide_name(start: &Start) -> &str {
    start.piece.split_once('-').map_or(start.piece.as_str(), |(_, name)| name)
}

struct Writer<'a> {
    start: &'a Start,
    place: &'a Place,
    room: usize,
    /// Ids of pieces in this guide.
    used: BTreeSet<String>,
    text: String,
    cuts: Vec<Cut>,
    onward: Vec<Start>,
    random: &'a mut Random,
    picture: Option<String>,
}

impl Writer<'_> {
    fn head(&mut self) {
        let Start { piece, name, low, high, .. } = self.start;
        let Place { species, region, .. } = self.place;
        let (number, month, day) = (1 + self.random.below(6), 1 + self.random.below(9), 1 + self.random.below(28));
        let known = Builtin::get().species.get(*species);
        let mut cautions = vec!["keep-cold", "separate-species", "wet-floor", "protect-holding-hand", "blade-away-from-body"];
        if known.is_some_and(|species| species.histamine) {
            cautions.push("histamine-cold");
        }
        let allergens = known.and_then(|species| species.allergen.as_ref()).map_or_else(String::new, |one| format!("allergens: [{one}]\n"));
        let age =
            known.filter(|species| species.group != "round-fish" && species.group != "flat-fish").map_or("", |_| "age: under 12 months\n");
        let change =
            if number > 1 { "  change: The order of the first two steps is new, and the trim goes into tubs by kind.\n" } else { "" };
        let knife = if *region == "body" { "fillet-knife" } else { "boning-knife" };
        write!(
            self.text,
            "title: {name} of {species}, cut for the counter
species: {species}
{age}house-cut: true
revision:
  number: {number}
  date: 2026-{month:02}-{day:02}
  author: course lead
  approved-by: head butcher
  review-by: 2027-{month:02}-{day:02}
{change}purpose: |
  The {region} of one animal, parted for counter and tubs.

  Local food law, local safety law and the rules of your own shop come before this guide.
level: month {}, watched until signed off
set-up-minutes: 10
clean-minutes: 15
cautions: [{}]
tools: [{knife}, steel, cutting-board, tray, weighing-scale]
wear: [mesh-gauntlet, non-slip-boots]
{allergens}
start:
  piece: {piece}
  weight: {}
  as: trimmed of loose ends, drained, unwrapped
  temperature: 0–2 °C

steps:
",
            1 + self.random.below(9),
            cautions.join(", "),
            weights(*low, *high),
        )
        .unwrap();
    }

    fn steps(&mut self) {
        let count = 4 + self.random.below(9);
        let mut hand = Held { id: self.start.piece.clone(), name: self.start.name.clone(), low: 1.0, high: 1.0 };
        let mut aside: Vec<Held> = Vec::new();
        for at in 0..count {
            // Each piece that was laid aside needs a step, and the piece in hand the last one.
            if aside.len() + 1 >= count - at && !aside.is_empty() || self.random.below(4) == 0 && !aside.is_empty() {
                let piece = aside.swap_remove(0);
                self.divide(at, &piece);
            } else if at + 1 == count {
                self.divide(at, &hand);
            } else {
                let spare = count - at > aside.len() + 2;
                hand = self.work(at, &hand, spare, &mut aside);
            }
        }
    }

    /// A step that takes something off the piece in hand. Gives the piece as it is afterwards.
    fn work(&mut self, at: usize, hand: &Held, spare: bool, aside: &mut Vec<Held>) -> Held {
        let stage = STAGES[at % STAGES.len()];
        let rest = format!("{}-{stage}", self.start.piece);
        let mut others = Vec::new();
        if at == 0 && !self.place.glands.is_empty() {
            let holds = self.place.glands.join(", ");
            let id = format!("{}-glands", self.place.species);
            others.push(Given { id, low: 2, high: 6, more: format!(", holds: [{holds}], use: inedible") });
        }
        if self.random.below(2) == 0 {
            let (tub, use_of) = TUBS[self.random.below(TUBS.len())];
            let low = 15 + self.random.below(30);
            let id = format!("{}-{tub}", self.place.species);
            others.push(Given { id, low, high: low + 25, more: format!(", use: {use_of}") });
        }
        if others.is_empty() || self.random.below(3) == 0 {
            let low = 80 + self.random.below(120);
            let high = low + 20 + self.random.below(30);
            let given = self.taken_off(hand, low, high, spare, aside);
            others.push(given);
        }
        let least = 1_000 - LOSS.1 - others.iter().map(|given| given.high).sum::<usize>();
        let most = 1_000 - LOSS.0 - others.iter().map(|given| given.low).sum::<usize>();
        self.step(at, hand, &Gives { rest: rest.clone(), others });
        let name = format!("{stage} {}", self.start.name.to_lowercase());
        Held { id: rest, name, low: hand.low * least as f64 / 1_000.0, high: hand.high * most as f64 / 1_000.0 }
    }

    /// A piece that comes off: for the counter, for a later step, or for a guide of its own.
    fn taken_off(&mut self, hand: &Held, low: usize, high: usize, spare: bool, aside: &mut Vec<Held>) -> Given {
        let (id, name) = self.fresh();
        let held = Held { id: id.clone(), name, low: hand.low * low as f64 / 1_000.0, high: hand.high * high as f64 / 1_000.0 };
        let lightest = self.start.low * held.low;
        if self.onward.len() < self.room && self.start.depth < DEEPEST && lightest > LIGHTEST_START && self.random.below(2) == 0 {
            let cut = self.cut(&held);
            self.onward.push(Start {
                place: self.start.place,
                series: self.start.series.clone(),
                piece: id.clone(),
                name: cut.name.clone(),
                low: cut.low,
                high: cut.high,
                depth: self.start.depth + 1,
            });
            self.cuts.push(cut);
            return Given { id, low, high, more: ", use: for-cutting".to_owned() };
        }
        if spare && self.random.below(2) == 0 {
            aside.push(held);
            return Given { id, low, high, more: String::new() };
        }
        let more = self.sold(&held);
        Given { id, low, high, more }
    }

    /// The last step of a piece: all of it becomes pieces for the counter.
    fn divide(&mut self, at: usize, piece: &Held) {
        let pieces = 2 + self.random.below(2);
        let (mut others, mut rest) = (Vec::new(), (1_000 - LOSS.1, 1_000 - LOSS.0));
        for _ in 1..pieces {
            let low = 200 + self.random.below(100);
            let high = low + 20 + self.random.below(40);
            rest = (rest.0 - high, rest.1 - low);
            let given = self.counter(piece, (low, high));
            others.push(given);
        }
        let last = self.counter(piece, rest);
        others.push(last);
        self.step(at, piece, &Gives { rest: String::new(), others });
    }

    fn counter(&mut self, piece: &Held, (low, high): (usize, usize)) -> Given {
        let (id, name) = self.fresh();
        let held = Held { id: id.clone(), name, low: piece.low * low as f64 / 1_000.0, high: piece.high * high as f64 / 1_000.0 };
        let more = self.sold(&held);
        Given { id, low, high, more }
    }

    /// A piece for the counter, in portions where it is large; some have their place in the cut list, as in a shop.
    fn sold(&mut self, held: &Held) -> String {
        let cut = self.cut(held);
        let portions = if cut.low > PORTIONED { ", portions: { weight: 140–200 g }" } else { "" };
        if self.random.below(3) == 0 {
            self.cuts.push(cut);
        }
        format!(", use: retail{portions}")
    }

    fn cut(&mut self, held: &Held) -> Cut {
        let (_, part) = self.place.parts[self.random.below(self.place.parts.len())];
        Cut {
            id: held.id.clone(),
            name: held.name.clone(),
            region: self.place.region,
            lies: format!("Beside the {}, in the {}.", part.to_lowercase(), self.place.region),
            low: self.start.low * held.low,
            high: self.start.high * held.high,
        }
    }

    /// An id for a piece that this family does not have yet, and its name.
    fn fresh(&mut self) -> (String, String) {
        let Place { species, parts, .. } = self.place;
        let stem = if self.start.depth == 0 { format!("{species}-{}", self.start.series) } else { self.start.piece.clone() };
        loop {
            let (part, name) = parts[self.random.below(parts.len())];
            let form = FORMS[self.random.below(FORMS.len())];
            let id = format!("{stem}-{part}-{form}");
            if self.used.insert(id.clone()) {
                return (id, format!("{} {} {form}", capitalised(&self.start.series), name.to_lowercase()));
            }
        }
    }

    fn step(&mut self, at: usize, takes: &Held, gives: &Gives) {
        let parts = &self.place.parts;
        let first = self.random.below(parts.len());
        let second = (first + 1 + self.random.below(parts.len() - 1)) % parts.len();
        let ((part_id, part), (other_id, other)) = (parts[first], parts[second]);
        let (part, other, name) = (part.to_lowercase(), other.to_lowercase(), takes.name.to_lowercase());
        let words = Words { part: &part, other: &other, name: &name };
        let random = &mut *self.random;
        let list = |sentences: &[String]| sentences.iter().map(|one| format!("      {one}\n")).collect::<String>();
        let glands = if at == 0 { self.place.glands.iter().map(|gland| format!(", {gland}")).collect() } else { String::new() };
        let back = if at == 5 { "    back-to-cold: all\n" } else { "" };
        let minutes = 1 + random.below(3);
        let [question, answer] = words.question(random);
        let text = &mut self.text;
        write!(
            text,
            "  - name: {} ({})
    id: step-{at}
    take: {}
    do: |
{}    hold: {}
    minutes: {minutes}–{}
    landmark: {}
    anatomy: [{part_id}, {other_id}{glands}]
    anatomy-note: |
{}    good: {}
    mistakes: |
{}    ask:
      - question: {question}
        answer: {answer}
{back}",
            words.step_name(random),
            at + 1,
            takes.id,
            list(&words.acts(random)),
            words.hold(random),
            minutes + 2 + random.below(3),
            words.landmark(random),
            list(&words.notes(random)),
            words.good(random),
            list(&words.mistakes(random)),
        )
        .unwrap();
        if let Some(picture) = self.picture.as_ref().filter(|_| at == 0) {
            let alt = format!("The {name} from above, with the {part} and two dashed lines that the knife follows.");
            write!(text, "    pictures:\n      - file: {picture}\n        alt: {alt}\n        caption: Line 1 first, then line 2.\n")
                .unwrap();
        }
        text.push_str("    give:\n");
        if !gives.rest.is_empty() {
            writeln!(text, "      {}: rest", gives.rest).unwrap();
        }
        for Given { id, low, high, more } in &gives.others {
            writeln!(text, "      {id}: {{ share: {}–{} %{more} }}", tenths(*low), tenths(*high)).unwrap();
        }
        writeln!(text, "    loss: {}–{} %", tenths(LOSS.0), tenths(LOSS.1)).unwrap();
    }
}

/// Tenths of a percent as a percentage.
fn tenths(value: usize) -> String {
    format!("{}.{}", value / 10, value % 10)
}

/// A drawing of the starting piece: its outline and the lines that the knife follows.
fn drawing(start: &Start, place: &Place) -> Vec<u8> {
    let mut svg = format!("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 640 360\"><title>{}</title>\n", start.name);
    svg.push_str("<path d=\"M60 180C60 80 200 40 330 50S590 110 590 190 480 320 320 320 60 280 60 180Z\" fill=\"#eadfd5\" stroke=\"#333\" stroke-width=\"3\"/>\n");
    for (at, (_, name)) in place.parts.iter().enumerate() {
        let y = 70 + at * 220 / place.parts.len();
        let x = 120 + at * 90 % 380;
        write!(svg, "<path d=\"M{x} {y}q60 -30 120 0t120 0\" fill=\"none\" stroke=\"#555\" stroke-dasharray=\"8 6\" stroke-width=\"3\"/>\n<text x=\"{x}\" y=\"{y}\" font-size=\"16\">{name}</text>\n").unwrap();
    }
    svg.push_str("</svg>\n");
    svg.into_bytes()
}
