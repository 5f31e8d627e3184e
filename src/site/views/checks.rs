//! Every check with its text: the manual of whoever writes a guidebook.

use std::collections::BTreeMap;

use super::Views;
use super::frame::About;
use crate::checks::{self, CheckInfo, Group};
use crate::figures::yield_table::capitalised;
use crate::site::context::checks::{CheckGroup, CheckText, ChecksPage};
use crate::site::escape::{html, keep_units};
use crate::site::markdown;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `checks.html` gets.
    pub(super) fn checks(&self, path: &str) -> Result<ChecksPage, ThemeError> {
        let page = self.frame(About {
            path,
            title: self.engine.words.plain("checks-title")?.to_owned(),
            trail: vec![self.home_link(path)],
            procedure: None,
            paints: Vec::new(),
            look: Look::Text,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        let mut groups: BTreeMap<Group, Vec<CheckText>> = BTreeMap::new();
        for check in checks::all() {
            let off = self.book.off.iter().find(|off| off.check.value().is_some_and(|id| id == check.info.id));
            let off =
                off.map_or_else(String::new, |off| off.reason.value().map_or_else(String::new, |reason| markdown::first_line(reason)));
            groups.entry(check.info.group).or_default().push(text_of(&check.info, off));
        }
        let groups = groups.into_iter().map(|(group, mut checks)| {
            checks.sort_by_key(|check| check.id);
            let word = self.engine.words.plain(&format!("checks-{}", group.word()));
            CheckGroup { id: group.word(), name: word.map_or_else(|_| capitalised(group.word()), str::to_owned), checks }
        });
        Ok(ChecksPage { page, count: checks::all().len(), groups: groups.collect() })
    }
}

fn text_of(info: &CheckInfo, off: String) -> CheckText {
    CheckText {
        id: info.id,
        level: info.level.word(),
        off,
        what_html: paragraphs(info.what),
        why_html: paragraphs(info.why),
        example: info.example.trim_matches('\n'),
        mend_html: paragraphs(info.mend),
        source_html: paragraphs(info.source),
    }
}

/// The link to the text of a check.
pub(super) fn link_to_check(page: &str, check: &str) -> String {
    paths::anchored(paths::link(page, paths::CHECKS), check)
}

/// Plain text as paragraphs, what stands between backticks as code.
fn paragraphs(text: &str) -> String {
    let mut out = String::new();
    for paragraph in text.trim().split("\n\n") {
        out.push_str("<p>");
        coded(paragraph, &mut out);
        out.push_str("</p>");
    }
    out
}

/// Adds plain text as HTML, what stands between backticks as code.
pub(super) fn coded(text: &str, out: &mut String) {
    let mut parts = text.split('`').peekable();
    let mut code = false;
    while let Some(part) = parts.next() {
        // A last backtick without its partner is a sign like any other.
        let alone = code && parts.peek().is_none();
        if alone {
            out.push('`');
        }
        if code && !alone {
            out.push_str("<code>");
            html(part, out);
            out.push_str("</code>");
        } else {
            html(&keep_units(part), out);
        }
        code = !code;
    }
}

#[cfg(test)]
mod tests {
    use super::paragraphs;

    #[test]
    fn backticks_make_code_and_nothing_makes_markup() {
        assert_eq!(
            paragraphs("Write `<b>`, not <i>.\n\nAlone: ` <"),
            "<p>Write <code>&lt;b&gt;</code>, not &lt;i&gt;.</p><p>Alone: ` &lt;</p>"
        );
        assert_eq!(paragraphs("`loss`"), "<p><code>loss</code></p>");
    }
}
