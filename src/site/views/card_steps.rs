//! The steps of a wall card: short texts of each, and which cautions stand where on a sheet.

use super::control::text;
use super::{Views, gone};
use crate::figures::outputs::step_figures;
use crate::figures::sheets::Ask;
use crate::figures::{Kind, Output, Worked, duration};
use crate::model::procedure::BackToCold;
use crate::model::words::Signal;
use crate::model::{Procedure, Stated, Step};
use crate::site::context::card::{CardOutput, CardStep, NamedCautions};
use crate::site::context::caution::{Caution, CautionGroup};
use crate::site::escape::keep_units;
use crate::site::markdown;
use crate::site::theme_error::ThemeError;

use super::cautions::grouped;

/// Longer sentences are broken between words, so that even a text without an end fills sheets one after another.
const LONGEST_LINE: usize = 400;

/// A caution with its signal word.
pub(super) type Known = (Signal, Caution);

/// A step with its own cautions, wherever they will stand.
#[derive(Debug, Clone)]
pub(super) struct Material {
    step: CardStep,
    own: Vec<Known>,
}

/// All that a card tells about the work.
#[derive(Debug, Clone)]
pub(super) struct Work {
    steps: Vec<Material>,
    /// Cautions that cover every step.
    pub(super) every: Vec<Known>,
    /// Every tool once.
    pub(super) tools: Vec<Vec<String>>,
    /// What is worn in most steps.
    pub(super) wear: Vec<String>,
}

/// What stands on a sheet: cautions at its head, then steps.
#[derive(Debug, Clone)]
pub(super) struct Placed {
    /// Whole, at the head of the sheet.
    pub(super) cautions: Vec<CautionGroup>,
    /// Cautions that stand whole on an earlier sheet, at the head of this one.
    pub(super) again: Vec<CautionGroup>,
    /// The steps with the rest of their cautions.
    pub(super) steps: Vec<CardStep>,
    /// All cautions of its head.
    head: Vec<Known>,
}

impl Placed {
    /// Cautions that cover every step, and those of the steps of the sheet, stand at its head, and each step names its
    /// own, those of all steps of the sheet together: both before the act. On the sheet where a caution comes first it stands whole, on later ones without hazard
    /// and consequence. `first` is true for the first sheet.
    pub(super) fn of(all: &[Material], (first, from, to): Ask, every: &[Known]) -> Self {
        let mut head: Vec<Known> = every.to_vec();
        let here = all.get(from..to).unwrap_or_default();
        let of_all = |id: &str| here.len() > 1 && here.iter().all(|step| step.own.iter().any(|(_, own)| own.id == id));
        let steps = here.iter().map(|material| {
            for known in &material.own {
                if !head.iter().any(|(_, caution)| caution.id == known.1.id) {
                    head.push(known.clone());
                }
            }
            let named = grouped(material.own.clone()).into_iter().map(|group| NamedCautions {
                signal: group.signal,
                every: group.items.iter().any(|caution| of_all(&caution.id)),
                names: group.items.into_iter().filter(|caution| !of_all(&caution.id)).map(|caution| caution.name).collect(),
            });
            CardStep { named: named.collect(), ..material.step.clone() }
        });
        let steps = steps.collect();
        let earlier = all.get(..from).unwrap_or_default();
        let seen = |(_, known): &Known| {
            let covers = every.iter().any(|(_, caution)| caution.id == known.id);
            (!first && covers) || earlier.iter().any(|step| step.own.iter().any(|(_, own)| own.id == known.id))
        };
        let (again, whole): (Vec<Known>, Vec<Known>) = head.iter().cloned().partition(seen);
        Self { cautions: grouped(whole), again: grouped(again), steps, head }
    }

    /// The same with every caution whole, for a sheet that has room for it.
    pub(super) fn whole(&self) -> Self {
        Self { cautions: grouped(self.head.clone()), again: Vec::new(), ..self.clone() }
    }
}

impl Work {
    /// The same without the sentences of each instruction: cautions, protection, holding hand, landmark and what comes
    /// off remain.
    pub(super) fn without_sentences(&self) -> Self {
        let mut short = self.clone();
        short.steps.iter_mut().for_each(|material| material.step.lines.clear());
        short
    }

    /// Without them and without the place of the holding hand, which the cautions of a knife speak of too.
    pub(super) fn without_hold(&self) -> Self {
        let mut short = self.without_sentences();
        short.steps.iter_mut().for_each(|material| material.step.hold.clear());
        short
    }

    /// The steps, those that no sheet `holds` whole in parts that one does: the cautions of a step stand before each.
    pub(super) fn parts(&self, holds: &dyn Fn(&Material) -> bool) -> Vec<Material> {
        let mut parts = Vec::new();
        let mut waiting: Vec<Material> = self.steps.iter().rev().cloned().collect();
        while let Some(mut material) = waiting.pop() {
            if material.step.lines.len() > 1 && !holds(&material) {
                let mut second = material.clone();
                second.step.lines = material.step.lines.split_off(material.step.lines.len().div_ceil(2));
                second.step.continued = true;
                let first = &mut material.step;
                (first.landmark, first.back_to_cold) = (String::new(), "");
                first.outputs.clear();
                second.step.hold.clear();
                waiting.extend([second, material]);
            } else {
                parts.push(material);
            }
        }
        parts
    }
}

impl Views<'_> {
    /// All that a card tells about the work.
    pub(super) fn card_work(&self, page: &str, at: usize, procedure: &Procedure) -> Result<Work, ThemeError> {
        let analysis = self.analysis.procedures.get(at).ok_or_else(|| gone("analysis"))?;
        let rounded = self.yields(page, at).map(|(_, rounded)| rounded).unwrap_or_default();
        let figures = Worked::of(procedure, self.scale).and_then(|worked| step_figures(analysis, worked, &rounded));
        let worn: Vec<Vec<String>> = procedure.steps.iter().map(|step| self.wear(procedure, step)).collect();
        let often = |wear: &Vec<String>| worn.iter().filter(|other| *other == wear).count();
        let mut usual: Vec<String> = Vec::new();
        for wear in worn.iter().filter(|wear| !wear.is_empty()) {
            if usual.is_empty() || often(wear) > often(&usual) {
                usual.clone_from(wear);
            }
        }
        let steps = (1..).zip(procedure.steps.iter().zip(worn)).map(|(number, (step, wear))| {
            let outputs = figures.as_ref().and_then(|all| all.get(number - 1)).map_or(&[][..], |figures| figures.outputs.as_slice());
            let stays = stays_on_the_board(outputs);
            let off = outputs.iter().enumerate().filter(|(at, output)| output.kind != Kind::Loss && Some(*at) != stays);
            let off = off.filter_map(|(_, output)| {
                let stated = output.give.and_then(|give| step.give.get(give))?;
                let name = self.piece(&stated.piece.value);
                // A tub that is called what it is for is not named twice.
                let word = self.engine.words.plain(&format!("use-{}", output.kind.id())).unwrap_or_default();
                Some(CardOutput {
                    name: if says_the_same(&name, word) { String::new() } else { name },
                    kind: output.kind,
                    to_step: output.to_step,
                    typical: output.of_start.typical.clone(),
                })
            });
            Material {
                own: step.cautions.iter().map(|id| self.caution(&id.value)).collect(),
                step: CardStep {
                    outputs: off.collect(),
                    also: on_top(&usual, &wear).is_some(),
                    wear: on_top(&usual, &wear).unwrap_or(wear),
                    ..self.card_step(procedure, step, number)
                },
            }
        });
        let mut tools: Vec<Vec<String>> = Vec::new();
        for choice in procedure.steps.iter().flat_map(|step| self.tools(procedure, step)) {
            if !tools.contains(&choice) {
                tools.push(choice);
            }
        }
        let every = procedure.cautions.iter().map(|id| self.caution(&id.value)).collect();
        Ok(Work { steps: steps.collect(), every, tools, wear: usual })
    }

    fn card_step(&self, procedure: &Procedure, step: &Step, number: usize) -> CardStep {
        let short = |stated: &Stated<String>| stated.value().map_or_else(String::new, |text| keep_units(&markdown::plain(text)));
        let (back_to_cold, back_pieces) = match step.back_to_cold.value() {
            None => ("", Vec::new()),
            Some(BackToCold::All) => ("all", Vec::new()),
            Some(BackToCold::Pieces(pieces)) => ("pieces", pieces.iter().map(|piece| self.piece(&piece.value)).collect()),
        };
        CardStep {
            number,
            name: keep_units(&markdown::first_line(&text(&step.name))),
            continued: false,
            minutes: step.minutes.value().map_or_else(String::new, |minutes| duration::minutes(*minutes)),
            named: Vec::new(),
            wear: Vec::new(),
            also: false,
            take_off: self.never_wear(procedure, step),
            lines: step
                .instruction
                .value()
                .map_or_else(Vec::new, |text| markdown::plain_lines(text))
                .iter()
                .flat_map(|line| broken(line))
                .collect(),
            hold: short(&step.hold),
            landmark: short(&step.landmark),
            outputs: Vec::new(),
            back_to_cold,
            back_pieces,
        }
    }
}

/// What a step wears beyond the usual; `None` where it leaves some of the usual away.
fn on_top(usual: &[String], wear: &[String]) -> Option<Vec<String>> {
    let all_usual = usual.iter().all(|part| wear.contains(part));
    all_usual.then(|| wear.iter().filter(|part| !usual.contains(part)).cloned().collect())
}

/// What goes on to a later step and is not taken off but taken from: the heaviest of what goes on, beside something else.
fn stays_on_the_board(outputs: &[Output]) -> Option<usize> {
    let onward = outputs.iter().enumerate().filter(|(_, output)| output.kind == Kind::Onward);
    let heaviest = onward.max_by(|(_, one), (_, other)| one.typical.total_cmp(&other.typical)).map(|(at, _)| at);
    heaviest.filter(|_| outputs.iter().filter(|output| output.kind != Kind::Loss).count() > 1)
}

/// True for a piece that is called what it is for: `Bones` for bone.
pub(super) fn says_the_same(name: &str, word: &str) -> bool {
    let name = name.to_lowercase();
    name == word || name.strip_suffix('s') == Some(word)
}

/// A line in pieces that are short enough.
fn broken(line: &str) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in line.split(' ') {
        if let Some(last) = lines.last_mut() {
            if last.is_empty() {
                last.push_str(word);
            } else if last.len() + word.len() < LONGEST_LINE {
                last.push(' ');
                last.push_str(word);
            } else {
                lines.push(word.to_owned());
            }
        }
    }
    lines
}
