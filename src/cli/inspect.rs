//! `seamwise inspect`: reads and checks a guidebook, and prints every finding.

use std::path::{Path, PathBuf};

use super::args::InspectFormat;
use super::failure::Failure;
use super::terminal::Terminal;
use super::{current_folder, folder, read};
use crate::Inspection;
use crate::finding::text::Style;
use crate::finding::{Finding, Level, json, text};

/// Prints the findings of the guidebook; gives the exit status.
pub(super) fn run(named: Option<&Path>, format: InspectFormat, terminal: Terminal) -> Result<u8, Failure> {
    let (_, inspection) = inspect(named)?;
    let printed = match format {
        InspectFormat::Text => text::render(&inspection.findings, &inspection.sources, style(terminal)),
        InspectFormat::Json => json::render(&inspection.findings, &inspection.sources),
    };
    terminal.print(&printed)?;
    Ok(status(&inspection.findings))
}

/// Finds, reads and checks the guidebook; gives its folder too.
pub(super) fn inspect(named: Option<&Path>) -> Result<(PathBuf, Inspection), Failure> {
    let current = current_folder()?;
    let folder = folder::find(named, &current)?;
    let files = read::read(&folder)?;
    Ok((folder, crate::inspect(files)))
}

/// How findings are drawn on this terminal.
pub(super) fn style(terminal: Terminal) -> Style {
    Style { color: terminal.color, width: terminal.columns }
}

/// 1 when there is a fault.
pub(super) fn status(findings: &[Finding]) -> u8 {
    u8::from(findings.iter().any(|finding| finding.level == Level::Fault))
}
