//! `seamwise publish`: inspects, then writes the site.
//!
//! With a fault nothing is written. What was done goes to standard output, the time it took and what else is worth
//! knowing to standard error.

use std::path::Path;
use std::time::Instant;

use super::failure::Failure;
use super::layout::{count, counted};
use super::progress::Progress;
use super::terminal::Terminal;
use super::write::{self, Outcome, Pages, Target};
use super::{current_folder, folder, inspect, read};
use crate::finding::text;
use crate::site::{Made, Site, Theme};

/// How many names a note lists.
const NAMED: usize = 5;

/// Publishes the guidebook into `to`; gives the exit status.
pub(super) fn run(named: Option<&Path>, to: &Path, terminal: Terminal) -> Result<u8, Failure> {
    let begun = Instant::now();
    let current = current_folder()?;
    let folder = folder::find(named, &current)?;
    let target = Target::resolve(to, &current, &folder)?;
    let inspection = inspect::with_theme(crate::inspect(read::read(&folder)?));
    let Some(checked) = inspection.verdict.checked().filter(|_| inspect::status(&inspection.findings) == 0) else {
        terminal.print(&text::render(&inspection.findings, inspection.accepted.len(), &inspection.sources, inspect::style(terminal)))?;
        let earlier = if to.exists() { format!("; {} is as it was", to.display()) } else { String::new() };
        terminal.tell(&format!("nothing is published{earlier}"));
        return Ok(1);
    };
    // A theme of the guidebook's own was tried with the findings; what is left is a mistake of ours.
    let site =
        Site::new(checked, &Theme::of(checked.value())).map_err(|error| Failure::new(format!("the theme cannot be used: {error}")))?;
    let pages = SitePages(&site);
    let paths = pages.paths();
    let progress = Progress::new(terminal, paths.len());
    let outcome = write::publish(&pages, &target, &|| progress.step());
    progress.end();
    let outcome = outcome?;
    if !inspection.findings.is_empty() {
        terminal.print(&format!("{}; `seamwise inspect` shows it\n", text::summary(&inspection.findings, inspection.accepted.len())))?;
    }
    let screens = paths.iter().filter(|path| path.ends_with(".html")).count();
    terminal.print(&told(&outcome, screens, to))?;
    for note in notes(&outcome, to) {
        terminal.tell(&note);
    }
    terminal.tell(&format!("done in {:.1} s", begun.elapsed().as_secs_f64()));
    Ok(0)
}

/// A site as pages to write.
struct SitePages<'a>(&'a Site<'a>);

impl Pages for SitePages<'_> {
    fn paths(&self) -> Vec<String> {
        self.0.pages()
    }

    fn closing(&self) -> Vec<String> {
        self.0.closing()
    }

    fn render(&self, path: &str) -> Result<Vec<u8>, String> {
        self.0.render(path).map_err(|error| error.to_string())
    }

    fn close(&self, path: &str, made: &[Made]) -> Result<Vec<u8>, String> {
        self.0.close(path, made).map_err(|error| error.to_string())
    }
}

/// What was done, and where to look at it; `screens` are the files that a person opens.
fn told(outcome: &Outcome, screens: usize, to: &Path) -> String {
    let pages = format!("{}, {}", counted(screens, "page", "pages"), counted(outcome.pages, "file", "files"));
    let place = to.display();
    let done = if outcome.is_same() {
        format!("{pages} in {place}: nothing changed")
    } else {
        let parts = [(outcome.new, "new"), (outcome.changed, "changed"), (outcome.removed.len(), "removed")];
        let parts: Vec<String> =
            parts.iter().filter(|(number, _)| *number > 0).map(|(number, word)| format!("{} {word}", count(*number))).collect();
        format!("{pages} in {place}: {}", parts.join(", "))
    };
    format!("{done}\nOpen {}\n", to.join("index.html").display())
}

/// What a person should know of the folder, on standard error.
fn notes(outcome: &Outcome, to: &Path) -> Vec<String> {
    let mut notes = Vec::new();
    if !outcome.edited.is_empty() {
        let pages = named(outcome.edited.iter().map(|page| to.join(page).display().to_string()));
        notes.push(format!("note: edited in the site by hand, and as published again: {pages}\n      edit the guidebook instead"));
    }
    if !outcome.stranded.is_empty() {
        let files = named(outcome.stranded.iter().map(|path| path.display().to_string()));
        notes.push(format!(
            "note: not from here, and could not be put back when a run was cut off: {files}\n      look at it, and move it where it belongs"
        ));
    }
    if let Some((place, why)) = &outcome.leftover {
        notes.push(format!(
            "note: the earlier site could not be cleared away: {why}\n  at: {}\n      the next run tries again",
            place.display()
        ));
    }
    notes
}

fn named(names: impl ExactSizeIterator<Item = String>) -> String {
    let all = names.len();
    let mut text = names.take(NAMED).collect::<Vec<_>>().join(", ");
    if all > NAMED {
        text.push_str(&format!(" and {} more", count(all - NAMED)));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tells_what_was_done() {
        let outcome = Outcome { pages: 1_280, new: 3, changed: 1, removed: vec!["a.html".into()], ..Outcome::default() };
        assert_eq!(
            told(&outcome, 640, Path::new("site")),
            "640 pages, 1,280 files in site: 3 new, 1 changed, 1 removed\nOpen site/index.html\n"
        );
        let same = Outcome { pages: 1, ..Outcome::default() };
        assert_eq!(told(&same, 1, Path::new("a/b")), "1 page, 1 file in a/b: nothing changed\nOpen a/b/index.html\n");
        assert_eq!(notes(&same, Path::new("site")), [""; 0]);
    }

    #[test]
    fn names_a_few_of_many() {
        let edited = (0..8).map(|n| format!("{n}.html")).collect();
        let notes = notes(&Outcome { edited, ..Outcome::default() }, Path::new("site"));
        assert!(notes[0].contains("site/0.html, site/1.html, site/2.html, site/3.html, site/4.html and 3 more\n"), "{notes:?}");
    }
}
