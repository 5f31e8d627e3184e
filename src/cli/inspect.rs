//! `seamwise inspect`: reads and checks a guidebook, and prints every finding.

use std::path::{Component, Path, PathBuf};

use super::args::InspectFormat;
use super::failure::Failure;
use super::terminal::Terminal;
use super::{current_folder, folder, read};
use crate::Inspection;
use crate::finding::sarif::{self, Rule};
use crate::finding::text::Style;
use crate::finding::{Finding, Level, json, order, text};
use crate::{checks, site};

/// Prints the findings of the guidebook; gives the exit status.
pub(super) fn run(named: Option<&Path>, format: InspectFormat, terminal: Terminal) -> Result<u8, Failure> {
    let (folder, inspection) = inspect(named)?;
    let printed = match format {
        InspectFormat::Text => text::render(&inspection.findings, inspection.accepted.len(), &inspection.sources, style(terminal)),
        InspectFormat::Json => json::render(&inspection.findings, &inspection.sources),
        InspectFormat::Sarif => sarif::render(&inspection.findings, &inspection.sources, &rules(), below(&folder).as_deref()),
    };
    terminal.print(&printed)?;
    Ok(status(&inspection.findings))
}

/// Finds, reads and checks the guidebook; gives its folder too.
pub(super) fn inspect(named: Option<&Path>) -> Result<(PathBuf, Inspection), Failure> {
    let current = current_folder()?;
    let folder = folder::find(named, &current)?;
    let files = read::read(&folder)?;
    Ok((folder, with_theme(crate::inspect(files))))
}

/// Adds what is wrong with the guidebook's own theme: for that its pages are made, which checks cannot do.
pub(super) fn with_theme(inspection: Inspection) -> Inspection {
    let Some(checked) = inspection.verdict.checked() else { return inspection };
    let (found, turned_off) = checks::accept(site::theme_findings(checked), checked.value());
    let Inspection { sources, mut findings, mut accepted, verdict } = inspection;
    findings.extend(found);
    order::sort(&mut findings, &sources);
    accepted.extend(turned_off);
    Inspection { sources, findings, accepted, verdict }
}

/// All checks, for a log.
fn rules() -> Vec<Rule<'static>> {
    let rule = |check: &&'static checks::Check| {
        let info = &check.info;
        Rule { id: info.id, level: info.level, what: info.what, why: info.why, mend: info.mend, source: info.source }
    };
    checks::all().iter().map(rule).collect()
}

/// The guidebook's folder with forward slashes, when it lies below the current one: nothing else may say where on this
/// machine it is.
fn below(folder: &Path) -> Option<String> {
    let mut names = Vec::new();
    for part in folder.components() {
        match part {
            Component::Normal(name) => names.push(name.to_str()?),
            Component::CurDir => {}
            Component::ParentDir | Component::RootDir | Component::Prefix(_) => return None,
        }
    }
    (!names.is_empty()).then(|| names.join("/"))
}

/// How findings are drawn on this terminal.
pub(super) fn style(terminal: Terminal) -> Style {
    Style { color: terminal.color, width: terminal.columns }
}

/// 1 when there is a fault.
pub(super) fn status(findings: &[Finding]) -> u8 {
    u8::from(findings.iter().any(|finding| finding.level == Level::Fault))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_is_named_only_from_here_down() {
        let named = |path: &str| below(Path::new(path));
        assert_eq!(named("procedures"), Some("procedures".to_owned()));
        assert_eq!(named("./shop//procedures/"), Some("shop/procedures".to_owned()));
        for elsewhere in [".", "..", "../shop", "/shop/procedures", "shop/../procedures"] {
            assert_eq!(named(elsewhere), None, "{elsewhere}");
        }
    }
}
