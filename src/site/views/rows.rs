//! A guide as a row of a list.

use std::collections::BTreeSet;

use super::Views;
use crate::figures::duration;
use crate::figures::share::Percent;
use crate::model::words::Use;
use crate::site::context::home::GuideRow;
use crate::site::paths;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// The row of a procedure.
    pub(super) fn row(&self, page: &str, at: usize) -> Result<Option<GuideRow>, ThemeError> {
        let (Some(procedure), Some(analysis)) = (self.book.procedures.get(at), self.analysis.procedures.get(at)) else {
            return Ok(None);
        };
        let uses = analysis.shares.as_ref().map_or(&[][..], |shares| shares.uses.as_slice());
        let main = uses.iter().filter(|entry| matches!(entry.purpose, Use::Retail | Use::ForCutting));
        let main = main.max_by(|one, other| one.share.typical.total_cmp(&other.share.typical));
        let revision = &procedure.revision;
        Ok(Some(GuideRow {
            title: self.title(at),
            href: paths::link(page, &paths::guide(&procedure.id)),
            start: procedure.start.piece.value().map_or_else(String::new, |piece| self.piece(piece)),
            weight: procedure.start.weight.value().map_or_else(String::new, |weight| self.scale.masses(*weight)),
            minutes: analysis.minutes.bench.map_or_else(String::new, duration::minutes),
            main_use: main.map_or("", |main| main.purpose.word()),
            main: main.map(|main| Percent::of(main.share)),
            revision: revision.number.value().copied().unwrap_or(0),
            state: revision.state().word(),
            date: revision.date.value().map_or_else(|| Ok(String::new()), |date| self.date(*date))?,
            house_cut: procedure.house_cut.value() == Some(&true),
        }))
    }

    /// The rows of many procedures.
    pub(super) fn rows(&self, page: &str, all: impl IntoIterator<Item = usize>) -> Result<Vec<GuideRow>, ThemeError> {
        all.into_iter().filter_map(|at| self.row(page, at).transpose()).collect()
    }
}

/// The kinds of pieces that rows show.
pub(super) fn main_paints(rows: &[GuideRow]) -> Vec<&'static str> {
    let kinds: BTreeSet<&'static str> = rows.iter().map(|row| row.main_use).filter(|kind| !kind.is_empty()).collect();
    kinds.into_iter().collect()
}
