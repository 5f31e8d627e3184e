//! `seamwise tally`: yields, times and chains of every procedure that is sound, as tables or for programs.

mod text;

use std::path::Path;

use super::args::TallyFormat;
use super::failure::Failure;
use super::terminal::Terminal;
use super::{inspect, layout};
use crate::Inspection;
use crate::analysis::Analysis;
use crate::analysis::chain::Chain;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::figures::answer;
use crate::finding::Level;
use crate::model::{Guidebook, Procedure};

/// What is tallied: procedures with figures and the chains over them.
struct Tally<'a> {
    book: &'a Guidebook,
    procedures: Vec<(&'a Procedure, &'a ProcedureAnalysis)>,
    chains: Vec<&'a Chain>,
}

/// Prints the tables of the guidebook, or of one procedure; gives the exit status.
pub(super) fn run(named: Option<&Path>, procedure: Option<&str>, format: TallyFormat, terminal: Terminal) -> Result<u8, Failure> {
    let (_, inspection) = inspect::inspect(named)?;
    let (book, analysis) = (inspection.verdict.book(), inspection.verdict.analysis());
    if let Some(id) = procedure {
        known(id, book)?;
    }
    let tally = Tally::of(book, analysis, procedure);
    let printed = match format {
        TallyFormat::Text => text::render(&tally, terminal.columns),
        TallyFormat::Json => answer::json(&tally.figures(), &tally.chains),
        TallyFormat::Csv => answer::csv(&tally.figures(), &tally.chains).map_err(Failure::new)?,
    };
    terminal.print(&printed)?;
    let unsound = unsound(&inspection, analysis, procedure);
    if !unsound.is_empty() {
        terminal.tell(&left_out(&unsound));
    }
    Ok(u8::from(!unsound.is_empty() || (procedure.is_none() && inspect::status(&inspection.findings) == 1)))
}

impl<'a> Tally<'a> {
    fn of(book: &'a Guidebook, analysis: &'a Analysis, only: Option<&str>) -> Self {
        let wanted = |id: &str| only.is_none_or(|only| only == id);
        let procedures = book.procedures.iter().zip(&analysis.procedures);
        let procedures = procedures.filter(|(procedure, figures)| wanted(&procedure.id) && figures.is_sound());
        let chains = analysis.chains.iter().filter(|chain| chain.procedures.first().is_some_and(|id| wanted(id)) && chain.shares.is_some());
        Self { book, procedures: procedures.collect(), chains: chains.collect() }
    }

    /// The figures of the procedures.
    fn figures(&self) -> Vec<&'a ProcedureAnalysis> {
        self.procedures.iter().map(|(_, figures)| *figures).collect()
    }
}

/// Procedures that were asked for and have no figures, or a fault in their file; sorted.
fn unsound(inspection: &Inspection, analysis: &Analysis, only: Option<&str>) -> Vec<String> {
    let book = inspection.verdict.book();
    let without = analysis.procedures.iter().filter(|figures| !figures.is_sound()).map(|figures| figures.id.clone());
    let mut ids: Vec<String> = without.chain(book.broken_procedures.iter().cloned()).collect();
    if let Some(only) = only {
        let faulty = book.procedure(only).is_some_and(|procedure| {
            inspection.findings.iter().any(|finding| finding.level == Level::Fault && finding.place.file == procedure.file)
        });
        ids.retain(|id| id == only);
        if faulty && ids.is_empty() {
            ids.push(only.to_owned());
        }
    }
    ids.sort();
    ids.dedup();
    ids
}

fn left_out(ids: &[String]) -> String {
    const SHOWN: usize = 3;
    let mut names = ids.iter().take(SHOWN).map(String::as_str).collect::<Vec<_>>().join(", ");
    if ids.len() > SHOWN {
        names.push_str(&format!(" and {} more", layout::count(ids.len() - SHOWN)));
    }
    let are = if ids.len() == 1 { "is" } else { "are" };
    format!("{} {are} not sound: {names}. `seamwise inspect` says why.", layout::counted(ids.len(), "procedure", "procedures"))
}

fn known(id: &str, book: &Guidebook) -> Result<(), Failure> {
    if book.procedure(id).is_some() || book.broken_procedures.contains(id) {
        return Ok(());
    }
    let all: Vec<&str> =
        book.procedures.iter().map(|procedure| procedure.id.as_str()).chain(book.broken_procedures.iter().map(String::as_str)).collect();
    let failure = Failure::new(format!("there is no procedure `{id}` in this guidebook"));
    let near = all.iter().map(|known| (strsim::damerau_levenshtein(id, known), *known)).min();
    let ending = all.iter().find(|known| known.rsplit('/').next() == Some(id));
    Err(match (ending, near) {
        (Some(known), _) => failure.help(format!("an id has its species before it: `{known}`")),
        (None, Some((wrong, known))) if wrong <= 1 + id.len() / 4 => failure.help(format!("did you mean `{known}`?")),
        _ => failure.help("an id is the path of the procedure's file without its ending: `pork/loin-boneless`"),
    })
}
