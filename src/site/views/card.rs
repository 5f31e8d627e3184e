//! The wall card of a guide: its steps laid out on sheets of paper.

use super::card_measure::{Measure, Set};
use super::card_steps::{Placed, Work};
use super::frame::{About, paints};
use super::{Views, gone};
use crate::analysis::cold_limits;
use crate::figures::scan_code::ScanCode;
use crate::figures::sheets::{Packed, Room, fit, packed};
use crate::figures::{duration, numbers};
use crate::model::Procedure;
use crate::model::quantity::Range;
use crate::model::words::{Signal, State};
use crate::site::context::card::{Card, CardPage, CardSheet, Code, OverviewStep};
use crate::site::escape::keep_units;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;
use crate::site::{markdown, paths};

/// Text on more sheets than this is set closer, where that saves one.
const WANTED_SHEETS: usize = 2;

/// Ways to fill a sheet, the most legible first: whether each step stands in one column, and how text is set. A line
/// for each sentence is worth more than a step that stands in one column.
const BY_LEGIBILITY: [(bool, Set); 6] =
    [(true, Set::Wide), (true, Set::Lines), (false, Set::Wide), (false, Set::Lines), (true, Set::Close), (false, Set::Close)];

impl Views<'_> {
    /// What `card.html` gets.
    pub(super) fn card_page(&self, path: &str, at: usize) -> Result<CardPage, ThemeError> {
        let procedure = self.book.procedures.get(at).ok_or_else(|| gone("procedure"))?;
        let mut work = self.card_work(path, at, procedure)?;
        let mut card = self.card_head(path, at, procedure, &work)?;
        let mut sheets = self.fewest_sheets(&card, &work)?;
        // Nobody reads five sheets on a wall: a long card holds each step in short, the guide every sentence.
        for short in [Work::without_sentences, Work::without_hold] {
            if sheets.len() <= WANTED_SHEETS {
                break;
            }
            let (short_work, short_card) = (short(&work), Card { short: true, ..card.clone() });
            let other = self.fewest_sheets(&short_card, &short_work)?;
            if other.len() < sheets.len() {
                (work, card, sheets) = (short_work, short_card, other);
            }
        }
        let page = self.frame(About {
            path,
            title: self.engine.words.with("wall-card-title", &[("title", card.title.as_str().into())])?,
            trail: self.trail_behind(path, at),
            procedure: Some(procedure),
            paints: paints(self.yields(path, at).as_ref().map(|(yields, _)| &yields.table)),
            look: Look::Card,
            scripts: &["print.js"],
            data: None,
            anchor: "main",
        })?;
        let overview = self.overview(&card, &work, &sheets)?;
        Ok(CardPage { page, card, sheets, overview })
    }

    /// The most legible way of those that take the fewest sheets; two are few enough.
    fn fewest_sheets(&self, card: &Card, work: &Work) -> Result<Vec<CardSheet>, ThemeError> {
        let mut sheets: Vec<CardSheet> = Vec::new();
        for set in Set::ALL {
            let other = self.card_sheets(card, work, set)?;
            if sheets.is_empty() || sheets.len() > WANTED_SHEETS && other.len() < sheets.len() {
                sheets = other;
            }
        }
        Ok(sheets)
    }

    /// What stands on a card only once.
    fn card_head(&self, path: &str, at: usize, procedure: &Procedure, work: &Work) -> Result<Card, ThemeError> {
        let analysis = self.analysis.procedures.get(at).ok_or_else(|| gone("analysis"))?;
        let number = procedure.revision.number.value().copied().unwrap_or(0);
        let start = self.start(path, procedure);
        let start = [start.name, start.weight, start.temperature].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>();
        let hold = cold_limits::hold(self.book, procedure).map(|limit| self.scale.temperatures(Range::single(limit.at_most)));
        let time_out = cold_limits::time_out(self.book).map(|limit| duration::minutes(Range::single(limit.at_most)));
        Ok(Card {
            title: keep_units(&markdown::first_line(&self.title(at))),
            short: false,
            guide_href: paths::link(path, &paths::guide(&procedure.id)),
            ways: self.ways(path, at, "wall-card")?,
            strip: self.sheet_strip(procedure)?,
            mark: self.mark(procedure),
            number,
            start: start.join(", "),
            minutes: analysis.minutes.bench.map_or_else(String::new, duration::minutes),
            hold: hold.unwrap_or_default(),
            time_out: time_out.unwrap_or_default(),
            tools: work.tools.clone(),
            wear: work.wear.clone(),
            weaker: super::cautions::grouped(work.every.iter().filter(|(signal, _)| !strong(*signal)).cloned().collect()),
            code: self.code(path, procedure, number),
        })
    }

    /// The code that opens the guide with the revision of the card in its fragment: it works on any host and without
    /// one, and a kept copy of the guide is found by the same address.
    fn code(&self, path: &str, procedure: &Procedure, number: u32) -> Option<Code> {
        let guide = paths::guide(&procedure.id);
        let fragment = format!("card-{number}");
        let address = paths::anchored(self.absolute(&guide)?, &fragment);
        let code = ScanCode::of(&address)?;
        Some(Code {
            address,
            href: paths::anchored(paths::link(path, &guide), &fragment),
            side: code.side,
            path: code.path,
            width: format!("{}mm", numbers::short(code.millimetres, 1)),
        })
    }

    /// The sheets, as few as can be with the text set so. On a sheet with room to spare cautions stand whole again, and
    /// text is set wider.
    fn card_sheets(&self, card: &Card, work: &Work, set: Set) -> Result<Vec<CardSheet>, ThemeError> {
        let sets = Set::ALL.map(|set| Ok((set, Measure::new(&self.engine.words, card, set)?)));
        let sets = sets.into_iter().collect::<Result<Vec<_>, ThemeError>>()?;
        let Some((_, measure)) = sets.iter().find(|(known, _)| *known == set) else { return Ok(Vec::new()) };
        let every: Vec<_> = work.every.iter().filter(|(signal, _)| strong(*signal)).cloned().collect();
        let steps = work.parts(&|step| measure.holds(&Placed::of(std::slice::from_ref(step), (true, 0, 1), &every)));
        let sheets = packed(steps.len(), &|ask| measure.room(ask.0, &Placed::of(&steps, ask, &every)));
        let sheets = (1..).zip(sheets).map(|(number, Packed { from, to, split })| {
            let first = number == 1;
            let short = Placed::of(&steps, (first, from, to), &every);
            let fits = |placed: &Placed, (in_columns, set): (bool, Set)| {
                let measure = sets.iter().find(|(known, _)| *known == set).map(|(_, measure)| measure)?;
                fit(&measure.room(first, placed)).filter(|split| split.is_some() == in_columns).map(|split| (set, split))
            };
            let best = |placed: Placed| BY_LEGIBILITY.into_iter().find_map(|way| fits(&placed, way)).map(|way| (placed, way));
            let (mut placed, (set, split)) = best(short.whole()).or_else(|| best(short.clone())).unwrap_or((short, (set, split)));
            let second = split.map(|split| placed.steps.split_off(split.min(placed.steps.len())));
            let columns = [Some(placed.steps), second].into_iter().flatten();
            CardSheet {
                number,
                cautions: placed.cautions,
                again: placed.again,
                set: set.name(),
                runs: split.is_none(),
                columns: columns.filter(|column| !column.is_empty()).collect(),
            }
        });
        Ok(sheets.collect())
    }

    /// The steps by name for a first sheet that holds none of them, if it has room.
    fn overview(&self, card: &Card, work: &Work, sheets: &[CardSheet]) -> Result<Vec<OverviewStep>, ThemeError> {
        let Some(first) = sheets.first().filter(|first| first.columns.is_empty()) else { return Ok(Vec::new()) };
        let steps = sheets.iter().flat_map(|sheet| sheet.columns.iter().flatten().map(move |step| (sheet.number, step)));
        let steps = steps.filter(|(_, step)| !step.continued).map(|(sheet, step)| OverviewStep {
            number: step.number,
            name: step.name.clone(),
            minutes: step.minutes.clone(),
            sheet,
        });
        let steps: Vec<OverviewStep> = steps.collect();
        let measure = Measure::new(&self.engine.words, card, Set::Wide)?;
        let every: Vec<_> = work.every.iter().filter(|(signal, _)| strong(*signal)).cloned().collect();
        let blocks = steps.iter().map(|step| measure.overview(step)).collect();
        let fits =
            first.set == Set::Wide.name() && fit(&Room { blocks, ..measure.room(true, &Placed::of(&[], (true, 0, 0), &every)) }).is_some();
        Ok(if fits { steps } else { Vec::new() })
    }

    /// Id, revision and date, as each sheet of a card or a class sheet carries them.
    pub(super) fn sheet_strip(&self, procedure: &Procedure) -> Result<String, ThemeError> {
        let revision = &procedure.revision;
        let date = revision.date.value().map_or_else(|| Ok(String::new()), |date| self.date(*date))?;
        let number = i64::from(revision.number.value().copied().unwrap_or(0));
        let arguments = [("id", procedure.id.as_str().into()), ("number", number.into()), ("date", date.into())];
        let word = if self.mark(procedure).is_empty() { "strip-sheet" } else { "strip-sheet-other" };
        self.engine.words.with(word, &arguments)
    }

    /// What stands large on every sheet of a guide that is not in force.
    pub(super) fn mark(&self, procedure: &Procedure) -> &'static str {
        match procedure.revision.state() {
            State::Draft => "draft",
            State::Withdrawn => "withdrawn",
            State::InForce => "",
        }
    }
}

/// Dangers and warnings stand on every sheet whose steps they cover.
const fn strong(signal: Signal) -> bool {
    matches!(signal, Signal::Danger | Signal::Warning)
}
