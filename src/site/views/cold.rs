//! The cold clock of a procedure: its drawing, and the table of the same numbers.

use super::frame::About;
use super::{Views, gone};
use crate::analysis::cold_limits::{SetBy, hold, time_out};
use crate::figures::cold_clock::{ColdTable, Lane};
use crate::figures::cold_drawing::{ColdDrawing, ColdWords};
use crate::figures::numbers::{NO_BREAK, short};
use crate::model::Procedure;
use crate::site::context::cold::{ColdPage, Limit, Row, Step};
use crate::site::context::frame::Link;
use crate::site::context::guide::Drawing;
use crate::site::escape::keep_units;
use crate::site::page::cold_clock;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `cold.html` gets.
    pub(super) fn cold(&self, path: &str, at: usize) -> Result<ColdPage, ThemeError> {
        let procedure = self.book.procedures.get(at).ok_or_else(|| gone("procedure"))?;
        let table = self.cold_table(at).ok_or_else(|| gone("cold clock"))?;
        let title = self.engine.words.with("cold-clock-title", &[("title", self.title(at).into())])?;
        let page = self.frame(About {
            path,
            title,
            trail: self.trail_behind(path, at),
            procedure: Some(procedure),
            data: None,
            look: Look::Cold,
            paints: Vec::new(),
            scripts: &[],
            anchor: "main",
        })?;
        let drawing = self.drawing_words(&table)?.map(|words| {
            let (width, height) = ColdDrawing::of(&table, &words).size();
            Drawing { src: paths::link(path, &paths::cold_drawing(&procedure.id)), width, height }
        });
        let limit = time_out(self.book);
        let own = limit.filter(|limit| matches!(limit.set_by, SetBy::Guidebook(_)));
        let own = own.and_then(|_| self.limits().stricter.into_iter().find(|stricter| stricter.limit == "time-out"));
        let step = |number: usize| self.step_of(path, procedure, number);
        let rows = table.rows.iter().map(|row| Row {
            piece: Link { name: row.name.clone(), href: self.piece_href(path, &row.piece) },
            from: row.from,
            to: row.to,
            shortest: row.shortest.clone(),
            longest: row.longest.clone(),
            shortest_in_all: row.shortest_in_all.clone(),
            longest_in_all: row.longest_in_all.clone(),
            limit: row.limit.clone(),
            left: row.left.clone(),
        });
        Ok(ColdPage {
            page,
            id: procedure.id.clone(),
            title: self.title(at),
            guide_href: paths::link(path, &paths::guide(&procedure.id)),
            temperature: procedure.start.temperature.value().map_or_else(String::new, |range| self.scale.temperatures(*range)),
            hold: hold(self.book, procedure).map(|hold| self.limit(path, hold.set_by, "hold", keep_units(&hold.at_most.to_string()))),
            limit: limit.map(|limit| {
                let figure = format!("{}{NO_BREAK}min", short(limit.at_most.number(), 1));
                self.limit(path, limit.set_by, "time-out", figure)
            }),
            cumulative: table.cumulative,
            own,
            drawing,
            unknown: table.unknown.iter().map(|number| step(*number)).collect(),
            rows: rows.collect(),
            control: self.control(path, procedure)?,
        })
    }

    /// The bytes of the drawing.
    pub(super) fn cold_drawing(&self, at: usize) -> Result<Vec<u8>, ThemeError> {
        let table = self.cold_table(at).ok_or_else(|| gone("cold clock"))?;
        let words = self.drawing_words(&table)?.ok_or_else(|| gone("longest time out of the cold"))?;
        Ok(ColdDrawing::of(&table, &words).svg().into_bytes())
    }

    /// The link to the cold clock of a procedure; empty when it has none.
    pub(super) fn cold_href(&self, page: &str, at: usize) -> String {
        let procedure = self.book.procedures.get(at).filter(|_| self.cold_table(at).is_some());
        procedure.map_or_else(String::new, |procedure| paths::link(page, &paths::cold_clock(&procedure.id)))
    }

    fn cold_table(&self, at: usize) -> Option<ColdTable> {
        let (procedure, analysis) = (self.book.procedures.get(at)?, self.analysis.procedures.get(at)?);
        cold_clock(procedure, analysis)?;
        ColdTable::of(self.book, procedure, analysis)
    }

    /// The words of the drawing; `None` when a step has no minutes, so that there is none.
    fn drawing_words(&self, table: &ColdTable) -> Result<Option<ColdWords>, ThemeError> {
        if !table.unknown.is_empty() {
            return Ok(None);
        }
        let words = &self.engine.words;
        let plain = |id: &str| words.plain(id).map(str::to_owned);
        let limit = |id: &str| match table.limit {
            None => Ok(String::new()),
            Some(limit) => {
                let minutes = short(limit.at_most.number(), 1);
                let who = plain(if limit.own { "limit-of-shop" } else { "limit-of-profile" })?;
                words.with(id, &[("minutes", minutes.into()), ("who", who.into())]).map(|text| keep_units(&text))
            }
        };
        Ok(Some(ColdWords {
            axis: plain(if table.cumulative { "cold-axis-in-all" } else { "cold-axis" })?,
            limit: limit("cold-limit-line")?,
            limit_far: limit("cold-limit-far")?,
            shortest: plain("cold-shortest")?,
            longest: plain("cold-longest")?,
            back: plain("cold-back")?,
            before: plain("cold-before")?,
            lanes: table.lanes.iter().map(|lane| self.lane(lane)).collect::<Result<_, _>>()?,
            notes: table.lanes.iter().map(|lane| self.lane_note(lane)).collect::<Result<_, _>>()?,
            more: plain("cold-more")?,
        }))
    }

    fn lane(&self, lane: &Lane) -> Result<String, ThemeError> {
        if lane.from == lane.to {
            return self.engine.words.with("stretch-step", &[("n", lane.from.into())]);
        }
        self.engine.words.with("stretch-steps", &[("from", lane.from.into()), ("to", lane.to.into())])
    }

    /// Steps in which several are worked one after another.
    fn lane_note(&self, lane: &Lane) -> Result<String, ThemeError> {
        let several = lane.steps.iter().filter(|step| step.at_once > 1);
        let notes = several
            .map(|step| self.engine.words.with("cold-at-once", &[("step", step.number.into()), ("n", i64::from(step.at_once).into())]));
        Ok(notes.collect::<Result<Vec<_>, _>>()?.join(" "))
    }

    fn step_of(&self, page: &str, procedure: &Procedure, number: usize) -> Step {
        let id = procedure.steps.get(number.saturating_sub(1)).map_or("", |step| step.id.as_str());
        Step { number, href: paths::anchored(paths::link(page, &paths::guide(&procedure.id)), &format!("step-{id}")) }
    }

    /// A limit with the place where its source stands.
    fn limit(&self, page: &str, set_by: SetBy<'_>, stage: &str, figure: String) -> Limit {
        let (own, anchor, note) = match set_by {
            SetBy::Profile(_, limit) => (false, format!("limit-{}", limit.id), keep_units(limit.note.as_deref().unwrap_or_default())),
            SetBy::Guidebook(_) => (true, format!("own-{stage}"), String::new()),
        };
        Limit { figure, own, href: paths::anchored(paths::link(page, paths::LIMITS), &anchor), note }
    }
}
