//! The yields of a guide: its table with the evidence of each row, and the drawing of where the weight goes.

use super::{Views, gone};
use crate::analysis::evidence::Evidence;
use crate::figures::flow_drawing::FlowDrawing;
use crate::figures::yield_table::{RoundedFinals, YieldTable};
use crate::figures::{Kind, Worked};
use crate::model::words::Use;
use crate::site::context::guide::{Drawing, EvidenceRow, Yields};
use crate::site::paths;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// The yields of a procedure, and what its table prints for each piece.
    pub(super) fn yields(&self, page: &str, at: usize) -> Option<(Yields, RoundedFinals)> {
        let (procedure, analysis) = (self.book.procedures.get(at)?, self.analysis.procedures.get(at)?);
        let worked = Worked::of(procedure, self.scale)?;
        let (table, rounded) = YieldTable::of_procedure(self.book, analysis, worked)?;
        let rows = table.rows().map(|row| {
            let position = analysis.network.pieces.iter().position(|piece| piece.id == row.piece);
            let evidence = position.and_then(|position| analysis.evidence.get(position)?.as_ref());
            let (rests_on, runs) = match evidence {
                Some(Evidence::Tested(runs)) => ("tested", *runs),
                Some(Evidence::Source(_)) => ("source", 0),
                Some(Evidence::OwnJudgement) => ("own", 0),
                None => ("", 0),
            };
            let href = self.cut_further(page, &row.piece, &procedure.id).map_or_else(String::new, |link| link.href);
            EvidenceRow { row: row.clone(), href, rests_on, runs }
        });
        let rows: Vec<EvidenceRow> = rows.collect();
        let mut grounds = rows.iter().filter(|row| !row.rests_on.is_empty()).map(|row| row.rests_on);
        let first = grounds.next().unwrap_or("");
        // Tested rows differ in the number of their runs.
        let alike = first != "tested" && grounds.all(|other| other == first);
        let count = |purpose: Use| table.rows().filter(|row| row.kind == Kind::Final(purpose)).count();
        let drawing = FlowDrawing::of(self.book, procedure, analysis, worked)?;
        let (width, height) = drawing.size();
        let yields = Yields {
            mixed: !alike,
            rests_on: if alike { first } else { "" },
            retail: count(Use::Retail),
            for_cutting: count(Use::ForCutting),
            rows,
            drawing: Drawing { src: paths::link(page, &paths::flow_drawing(&procedure.id)), width, height },
            table_href: paths::link(page, &paths::guide_table(&procedure.id)),
            table,
        };
        Some((yields, rounded))
    }

    /// The bytes of the drawing.
    pub(super) fn flow_drawing(&self, at: usize) -> Result<Vec<u8>, ThemeError> {
        let drawing = (|| {
            let (procedure, analysis) = (self.book.procedures.get(at)?, self.analysis.procedures.get(at)?);
            FlowDrawing::of(self.book, procedure, analysis, Worked::of(procedure, self.scale)?)
        })();
        let lost = self.engine.words.plain("use-loss")?;
        Ok(drawing.ok_or_else(|| gone("procedure"))?.svg(lost).into_bytes())
    }
}
