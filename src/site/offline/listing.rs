//! All files of the site that can be kept, with what each came to; and the sums that a reader is told.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::made::{Mark, json};
use super::{AT_ONCE, Made, Part, Parts};
use crate::model::Guidebook;

use super::super::page::Page;
use super::super::paths;

/// How many files, and how many bytes they are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(in crate::site) struct Sum {
    /// Files.
    pub(in crate::site) files: usize,
    /// Bytes.
    pub(in crate::site) bytes: u64,
}

impl Sum {
    fn of<'a>(files: impl Iterator<Item = &'a Made>) -> Self {
        files.fold(Self::default(), |sum, made| Self { files: sum.files + 1, bytes: sum.bytes + made.bytes })
    }
}

/// Files with their pages, sorted by path.
pub(in crate::site) struct Listing<'a> {
    files: BTreeMap<&'a str, (&'a Made, &'a Page)>,
    book: &'a Guidebook,
    parts: &'a Parts,
}

impl<'a> Listing<'a> {
    /// What is made of these pages, before the pages that are made last; `but` leaves out those that stand after it.
    pub(in crate::site) fn before(
        but: &Page,
        made: &'a [Made],
        pages: &'a BTreeMap<String, Page>,
        book: &'a Guidebook,
        parts: &'a Parts,
    ) -> Self {
        let turn = but.turn();
        let known = made.iter().filter_map(|made| Some((made.path.as_str(), (made, pages.get(&made.path)?))));
        Self { files: known.filter(|(_, (_, page))| page.turn() < turn).collect(), book, parts }
    }

    /// The files of a part, sorted by path.
    fn of_part(&self, part: &Part) -> impl Iterator<Item = &'a Made> {
        self.files.values().filter(|(_, page)| self.parts.holds(part, page)).map(|(made, _)| *made)
    }

    /// The files that every reader keeps. Lists of parts are kept with their parts.
    fn shell(&self) -> impl Iterator<Item = &'a Made> {
        let own = |page: &Page| self.parts.is_shell(page) && !matches!(page, Page::PartFiles(_));
        self.files.values().filter(move |(_, page)| own(page)).map(|(made, _)| *made)
    }

    /// All files but those that are made last, so that every page which tells the sum tells the same.
    pub(in crate::site) fn whole(&self) -> Sum {
        Sum::of(self.files.values().filter(|(_, page)| page.turn() == 0).map(|(made, _)| *made))
    }

    /// Whether the whole site is kept at once.
    pub(in crate::site) fn is_kept_at_once(&self) -> bool {
        self.whole().bytes <= AT_ONCE
    }

    /// What a part comes to.
    pub(in crate::site) fn sum_of(&self, part: &Part) -> Sum {
        Sum::of(self.of_part(part))
    }

    /// What every reader keeps.
    pub(in crate::site) fn sum_of_shell(&self) -> Sum {
        Sum::of(self.shell())
    }

    /// The list of a part: a JSON array, an entry a line.
    pub(in crate::site) fn part_text(&self, part: &Part) -> String {
        let mut out = String::new();
        entries(self.of_part(part), &mut out);
        out.push('\n');
        out
    }

    /// What the service worker begins with: the edition, what is kept at once, and the parts with the marks of their
    /// lists. The edition is the mark of all files, so that it changes with any of them and with nothing else.
    pub(in crate::site) fn worker_head(&self, all_parts: &[Part]) -> String {
        let mut all = String::new();
        for (made, _) in self.files.values() {
            made.entry(&mut all);
        }
        let mut out = format!(
            "const site = {{ edition: \"{}\", all: {}, revisions: \"{}\", offline: \"{}\", shell: ",
            Mark::of(all.as_bytes()),
            self.is_kept_at_once(),
            paths::REVISIONS,
            paths::OFFLINE
        );
        entries(self.shell(), &mut out);
        out.push_str(", parts: [");
        let mut first = true;
        for part in all_parts {
            let id = part.id(self.book);
            let path = paths::part_files(&id);
            let Some((made, _)) = self.files.get(path.as_str()) else { continue };
            out.push_str(if first { "\n{ id: " } else { ",\n{ id: " });
            first = false;
            json(&id, &mut out);
            out.push_str(", list: ");
            made.entry(&mut out);
            let _ = write!(out, ", bytes: {} }}", self.sum_of(part).bytes);
        }
        out.push_str("\n] };\n");
        out
    }
}

fn entries<'a>(files: impl Iterator<Item = &'a Made>, out: &mut String) {
    out.push('[');
    for (at, made) in files.enumerate() {
        out.push_str(if at == 0 { "\n" } else { ",\n" });
        made.entry(out);
    }
    out.push_str("\n]");
}
