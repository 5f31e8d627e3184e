//! How high each part of a wall card stands on paper, in points. The numbers are those of `styles/card.css` for paper; a
//! browser test holds the two together.
//!
//! Sheets are made for what A4 and US Letter have in common: 194 mm of width and 263 mm of height between the margins.

use std::collections::BTreeMap;

use super::card_steps::Placed;
use crate::figures::Kind;
use crate::figures::sheets::{Room, fit};
use crate::figures::type_measure::{Face, Setting, lines, width};
use crate::site::context::card::{Card, CardOutput, CardStep, OverviewStep};
use crate::site::context::caution::CautionGroup;
use crate::site::theme_error::ThemeError;
use crate::site::words::Words;

/// One millimetre.
const MILLIMETRE: f64 = 72.0 / 25.4;
/// The width of a sheet between its margins.
const SHEET: f64 = 194.0 * MILLIMETRE;
/// Its height.
const HEIGHT: f64 = 263.0 * MILLIMETRE;
/// Between the two columns.
const GAP: f64 = 15.0;
/// The size of all text.
const SIZE: f64 = 14.0;
/// A column.
const COLUMN: f64 = (SHEET - GAP) / 2.0;
/// The triangle of a signal word and the room behind it.
const SIGN: f64 = 20.0;
/// The height of the numeral of a step.
const NUMERAL: f64 = 33.0;
/// The hatch of a use and the room behind it.
const SWATCH: f64 = 17.0;

/// How text is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Set {
    /// A line for each sentence.
    Wide,
    /// Likewise, the lines closer.
    Lines,
    /// The lines close, and sentences run on.
    Close,
}

impl Set {
    /// The most legible first.
    pub(super) const ALL: [Self; 3] = [Self::Wide, Self::Lines, Self::Close];

    /// Its name in styles.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Wide => "wide",
            Self::Lines => "lines",
            Self::Close => "close",
        }
    }

    /// The height of a line in parts of the size.
    const fn line(self) -> f64 {
        match self {
            Self::Wide => 1.25,
            Self::Lines | Self::Close => 1.15,
        }
    }
}

/// Words that stand on a card.
const LABELS: &[&str] = &[
    "signal-danger",
    "signal-warning",
    "signal-caution",
    "signal-notice",
    "wear",
    "also-wear",
    "take-off",
    "landmark",
    "all-back-to-cold",
    "start",
    "time",
    "trained-to-learner",
    "cold",
    "tools",
    "or",
    "card-law",
    "card-shares",
    "card-scan",
    "card-short",
    "card-continued",
    "of-every-step",
];

/// Measures the parts of one card.
pub(super) struct Measure<'a> {
    words: &'a Words,
    card: &'a Card,
    set: Set,
    labels: BTreeMap<&'static str, &'a str>,
    ask: String,
    cold: String,
}

impl<'a> Measure<'a> {
    /// For this card, with its text set so.
    pub(super) fn new(words: &'a Words, card: &'a Card, set: Set) -> Result<Self, ThemeError> {
        let labels = LABELS.iter().map(|id| Ok((*id, words.plain(id)?))).collect::<Result<_, ThemeError>>()?;
        let ask = words.with("card-ask", &[("n", i64::from(card.number).into())])?;
        let hold = words.with("card-hold", &[("most", card.hold.as_str().into())])?;
        let time = words.with("card-time-out", &[("time", card.time_out.as_str().into())])?;
        Ok(Self { words, card, set, labels, ask, cold: format!("{hold} {time}") })
    }

    /// True when a sheet holds this and nothing else.
    pub(super) fn holds(&self, placed: &Placed) -> bool {
        fit(&self.room(false, placed)).is_some()
    }

    /// The steps of a sheet in a column, and the height of its columns.
    pub(super) fn room(&self, first: bool, placed: &Placed) -> Room {
        let mut above = self.strip();
        let mut cautions = vec![(&placed.cautions, true), (&placed.again, false)];
        if first {
            above += self.head();
            cautions.push((&self.card.weaker, true));
        }
        let cautions = self.cautions(&cautions, SHEET - 13.0);
        if cautions > 0.0 {
            above += cautions + 12.0;
        }
        Room { blocks: placed.steps.iter().map(|step| self.step(step)).collect(), height: HEIGHT - above }
    }

    fn close(&self) -> bool {
        self.set == Set::Close
    }

    fn label(&self, id: &str) -> &str {
        self.labels.get(id).copied().unwrap_or_default()
    }

    /// So many lines of text.
    fn height(&self, lines: usize) -> f64 {
        lines as f64 * SIZE * self.set.line()
    }

    /// A paragraph of one face.
    fn plain(&self, text: &str, face: Face, line: f64) -> f64 {
        self.height(lines(text, face, SIZE, line))
    }

    /// A paragraph that begins with its label.
    fn said(&self, label: &str, text: &str, line: f64) -> f64 {
        self.height(Setting::new(line, SIZE).run(label, Face::Bold).run(text, Face::Regular).lines())
    }

    /// The line that every sheet carries, and the mark of a guide that is not in force.
    fn strip(&self) -> f64 {
        let used = width("page 10 of 10 ", Face::Bold, SIZE);
        let strip = self.plain(&self.card.strip, Face::Bold, SHEET - used) + 7.0;
        if self.card.mark.is_empty() { strip } else { strip + 42.0 }
    }

    /// What stands once, at the head of the first sheet.
    fn head(&self) -> f64 {
        let card = self.card;
        let code = if card.code.is_some() { 28.0 * MILLIMETRE } else { 0.0 };
        let line = if card.code.is_some() { SHEET - code - 12.0 } else { SHEET };
        // The face of titles is wider than that of text.
        let title = lines(&card.title, Face::Bold, 20.0 * 1.1, line) as f64 * 23.0 + 3.0;
        let tools = card.tools.iter().map(|choice| choice.join(&format!(" {} ", self.label("or")))).collect::<Vec<_>>().join(", ");
        let minutes =
            if card.minutes.is_empty() { String::new() } else { format!("{} {}", card.minutes, self.label("trained-to-learner")) };
        let check = if card.code.is_some() { self.label("card-scan") } else { self.ask.as_str() };
        let short = if card.short { self.label("card-short") } else { "" };
        let last = [self.label("card-shares"), check, short, self.label("card-law")].join(" ");
        let tools_and_wear = [("tools", tools), ("wear", card.wear.join(", "))];
        let known = [("start", card.start.clone()), ("time", minutes), ("cold", self.cold.clone())].into_iter().chain(tools_and_wear);
        let mut set = Setting::new(line, SIZE);
        let mut facts = 0.0;
        for (label, text) in known.filter(|(_, text)| !text.is_empty()) {
            let text = format!("{text}.");
            facts += self.said(self.label(label), &text, line);
            set = set.run(self.label(label), Face::Bold).run(&text, Face::Regular);
        }
        let facts =
            if self.close() { self.height(set.run(&last, Face::Regular).lines()) } else { facts + self.plain(&last, Face::Regular, line) };
        f64::max(title + facts, code) + 8.0
    }

    /// Cautions, each a paragraph of its own, or one after the other where text is set close; those that are not whole
    /// are without hazard and consequence.
    fn cautions(&self, all: &[(&Vec<CautionGroup>, bool)], line: f64) -> f64 {
        let items = all.iter().flat_map(|(groups, whole)| groups.iter().map(move |group| (group, *whole)));
        let items = items.flat_map(|(group, whole)| group.items.iter().map(move |item| (group.signal, item, whole)));
        let (mut sum, mut set) = (0.0, Setting::new(line, SIZE));
        let mut none = true;
        for (signal, item, whole) in items {
            none = false;
            if !self.close() {
                set = Setting::new(line, SIZE);
            }
            set = set.mark(SIGN + width(self.label(&format!("signal-{signal}")), Face::Bold, SIZE) + 4.0);
            set = set.run(&format!("{}.", item.name), Face::Bold);
            if whole {
                set = set.run(&item.hazard, Face::Regular).run(&item.consequence, Face::Regular);
            }
            set = set.run(&item.avoid, if whole { Face::Bold } else { Face::Regular });
            if !self.close() {
                sum += self.height(set.lines()) + 4.0;
            }
        }
        if self.close() && !none { self.height(set.lines()) } else { sum }
    }

    /// A step in a column, in parts that are not cut in two: numeral and name with what follows, then line by line.
    fn step(&self, step: &CardStep) -> Vec<f64> {
        let line = self.height(1);
        let mut top = if self.close() { 4.0 } else { 6.0 } + self.top(step) + 1.0;
        let worn = [(if step.also { "also-wear" } else { "wear" }, &step.wear), ("take-off", &step.take_off)]
            .into_iter()
            .filter(|(_, worn)| !worn.is_empty());
        let worn: Vec<String> = worn.map(|(label, worn)| format!("{} {}.", self.label(label), worn.join(", "))).collect();
        if !worn.is_empty() {
            top += self.plain(&worn.join(" "), Face::Bold, COLUMN) + 1.0;
        }
        let (act, between) = self.act(step);
        let last = between + self.back(step) + if self.close() { 3.0 } else { 6.0 };
        // What is worn stays with the name; without it the first line of the instruction does.
        let beside = if worn.is_empty() { line.min(act) } else { 0.0 };
        let mut parts = vec![top + beside];
        let rest = ((act - beside).max(0.0) / line).round() as usize + (self.outputs(step) / line).round() as usize;
        parts.extend(vec![line; rest]);
        if let Some(part) = parts.last_mut() {
            *part += last;
        }
        parts
    }

    /// A step by its name alone.
    pub(super) fn overview(&self, step: &OverviewStep) -> Vec<f64> {
        let set =
            Setting::new(COLUMN - 45.0, SIZE).run(&step.name, Face::Bold).run(&step.minutes, Face::Regular).run("page 10", Face::Regular);
        vec![f64::max(self.height(set.lines()), 34.0) + 6.0]
    }

    /// Numeral, name and named cautions: what does not stand beside the numeral stands below it.
    fn top(&self, step: &CardStep) -> f64 {
        let numeral = 19.0 * step.number.to_string().len() as f64 + 6.0;
        let name = format!("{} {} {}", step.name, step.minutes, if step.continued { self.label("card-continued") } else { "" });
        let size = if self.close() { SIZE } else { 16.0 };
        let mut top = lines(&name, Face::Bold, size, COLUMN - numeral) as f64 * size * 1.1;
        for group in &step.named {
            let beside = ((NUMERAL - top).max(0.0) / self.height(1)).ceil() as usize;
            let signal = width(self.label(&format!("signal-{}", group.signal)), Face::Bold, SIZE);
            let set = Setting::new(COLUMN, SIZE).beside(beside, numeral).mark(SIGN + signal + 4.0);
            let set = set.run(if group.every { self.label("of-every-step") } else { "" }, Face::Regular);
            top += self.height(set.run(&group.names.join("; "), Face::Regular).lines());
        }
        top.max(NUMERAL)
    }

    /// Instruction, other hand and landmark, a paragraph each or all in one: the height of their lines, and what stands
    /// between paragraphs.
    fn act(&self, step: &CardStep) -> (f64, f64) {
        let label = self.label("landmark");
        if self.close() {
            let set = step.lines.iter().chain([&step.hold]).fold(Setting::new(COLUMN, SIZE), |set, line| set.run(line, Face::Regular));
            let set = if step.landmark.is_empty() { set } else { set.run(label, Face::Bold).run(&step.landmark, Face::Regular) };
            return (self.height(set.lines()), 1.0);
        }
        let said: Vec<&String> = step.lines.iter().chain([&step.hold]).filter(|line| !line.is_empty()).collect();
        let mut sum: f64 = said.iter().map(|line| self.plain(line, Face::Regular, COLUMN)).sum();
        let mut between = said.len() as f64 * 2.0;
        if !step.landmark.is_empty() {
            sum += self.said(label, &step.landmark, COLUMN);
            between += 2.0;
        }
        (sum, between)
    }

    /// What comes off: a line each, or one after the other.
    fn outputs(&self, step: &CardStep) -> f64 {
        let to_step = self.words.with("to-step", &[("n", 10.into())]).unwrap_or_default();
        let width = |output: &CardOutput| {
            let kind = match output.kind {
                Kind::Onward => to_step.as_str(),
                other => self.words.plain(&format!("use-{}", other.id())).unwrap_or_default(),
            };
            let bold = format!("{} {}\u{a0}%", output.name, output.typical);
            SWATCH + width(&bold, Face::Bold, SIZE) + width(&format!("{kind} "), Face::Regular, SIZE)
        };
        if self.close() && !step.outputs.is_empty() {
            // They follow one another, each with room behind it that belongs to it. One that is broken has its lines alone.
            let set = step.outputs.iter().fold(Setting::new(COLUMN, SIZE), |set, output| match width(output) / (COLUMN - 8.0) {
                lines if lines > 1.0 => (0..lines.ceil() as usize).fold(set, |set, _| set.mark(COLUMN)),
                _ => set.mark(width(output) + 8.0).mark(4.0),
            });
            return self.height(set.lines());
        }
        step.outputs.iter().map(|output| self.height(Setting::new(COLUMN, SIZE).mark(width(output)).lines())).sum()
    }

    fn back(&self, step: &CardStep) -> f64 {
        let text = match step.back_to_cold {
            "" => return 0.0,
            "all" => self.label("all-back-to-cold").to_owned(),
            _ => self.words.with("back-to-cold", &[("pieces", step.back_pieces.join(", ").into())]).unwrap_or_default(),
        };
        self.plain(&text, Face::Bold, COLUMN - 14.0) + if self.close() { 4.0 } else { 9.0 }
    }
}
