//! What changed, as an Atom feed (RFC 4287, IETF, 2005): the newest revisions of the guides. Only where the guidebook
//! states an address, for an entry is known by its own.

use jiff::civil::Date;

use super::control::text;
use super::{Views, gone};
use crate::model::Procedure;
use crate::site::theme_error::ThemeError;
use crate::site::{escape, markdown, paths};

/// So many of the newest revisions; a reader who looks once in a while misses none of a usual guidebook.
const NEWEST: usize = 50;

impl Views<'_> {
    /// The feed. Its times are those of the revisions at midnight UTC, so that the same guidebook gives the same bytes.
    pub(super) fn feed(&self, path: &str) -> Result<Vec<u8>, ThemeError> {
        let (own, home) = self.absolute(path).zip(self.absolute(paths::HOME)).ok_or_else(|| gone("address"))?;
        let dated = self.newest_revisions();
        // A feed has a time of its own even when nothing in it has one.
        let updated = dated.first().map_or(Date::new(1970, 1, 1).unwrap_or_default(), |(date, _)| *date);
        let publisher = text(&self.book.publisher);
        let title = text(&self.book.title);
        let mut out = String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<feed xmlns=\"http://www.w3.org/2005/Atom\"");
        if let Some(language) = self.book.language.value() {
            attribute("xml:lang", language, &mut out);
        }
        out.push_str(">\n");
        element("id", &home, &mut out);
        element("title", &title, &mut out);
        element("updated", &time(updated), &mut out);
        link("self", &own, &mut out);
        link("alternate", &home, &mut out);
        person(if publisher.is_empty() { &title } else { &publisher }, &mut out);
        for (date, at) in dated.into_iter().take(NEWEST) {
            if let Some(procedure) = self.book.procedures.get(at) {
                self.entry(procedure, at, date, &mut out)?;
            }
        }
        out.push_str("</feed>\n");
        Ok(out.into_bytes())
    }

    /// Procedures with the date of their revision, the newest first; of one day in the order of ids.
    pub(super) fn newest_revisions(&self) -> Vec<(Date, usize)> {
        let all = self.book.procedures.iter().enumerate();
        let mut dated: Vec<(Date, usize)> = all.filter_map(|(at, procedure)| Some((*procedure.revision.date.value()?, at))).collect();
        dated.sort_by(|one, other| other.0.cmp(&one.0).then(one.1.cmp(&other.1)));
        dated
    }

    fn entry(&self, procedure: &Procedure, at: usize, date: Date, out: &mut String) -> Result<(), ThemeError> {
        let address = self.absolute(&paths::guide(&procedure.id)).ok_or_else(|| gone("address"))?;
        let revision = &procedure.revision;
        let number = revision.number.value().copied().unwrap_or(0);
        let values = [("title", self.title(at).into()), ("number", i64::from(number).into())];
        out.push_str("<entry>\n");
        // The address of a guide stays when it is revised, so the number is what tells its entries apart.
        element("id", &format!("{address}#revision-{number}"), out);
        element("title", &self.engine.words.with("news-other", &values)?, out);
        element("updated", &time(date), out);
        link("alternate", &address, out);
        let author = text(&revision.author);
        if !author.is_empty() {
            person(&author, out);
        }
        out.push_str("<category");
        attribute("term", revision.state().word(), out);
        out.push_str("/>\n");
        let change = revision.change.value().map_or_else(String::new, |change| markdown::first_line(change));
        let summary = if change.is_empty() { self.strip(procedure)? } else { change };
        element("summary", &summary, out);
        out.push_str("</entry>\n");
        Ok(())
    }
}

/// A day as a time (RFC 3339).
fn time(date: Date) -> String {
    format!("{date}T00:00:00Z")
}

fn element(name: &str, content: &str, out: &mut String) {
    out.push_str(&format!("<{name}>"));
    escape::html(content, out);
    out.push_str(&format!("</{name}>\n"));
}

fn attribute(name: &str, value: &str, out: &mut String) {
    out.push_str(&format!(" {name}=\""));
    escape::html(value, out);
    out.push('"');
}

fn link(relation: &str, address: &str, out: &mut String) {
    out.push_str("<link");
    attribute("rel", relation, out);
    attribute("href", address, out);
    out.push_str("/>\n");
}

fn person(name: &str, out: &mut String) {
    out.push_str("<author><name>");
    escape::html(name, out);
    out.push_str("</name></author>\n");
}
