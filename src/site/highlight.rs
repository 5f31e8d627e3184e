//! YAML made easier to read: comments, keys and numbers in spans of one class each, everything else as it stands.
//!
//! Spans of one kind are joined and carry a class alone, so that a page stays small and its strict policy holds.

use std::sync::LazyLock;

use syntect::parsing::{ParseState, Scope, ScopeStack, SyntaxSet};

use super::escape::html;

/// Longer lines are shown plain: reading them would take long, and nobody wrote them by hand.
const LONGEST_LINE: usize = 2_000;

/// Read when the first page asks for it.
static SYNTAXES: LazyLock<SyntaxSet> = LazyLock::new(SyntaxSet::load_defaults_newlines);

/// Beginnings of the scopes that are told apart, the stronger first, with their class.
static KINDS: LazyLock<Vec<(Scope, &'static str)>> = LazyLock::new(|| {
    let kinds = [("comment", "c"), ("entity.name.tag", "k"), ("constant", "n")];
    kinds.iter().filter_map(|(scope, class)| Some((Scope::new(scope).ok()?, *class))).collect()
});

/// The lines of a YAML text as HTML, without their line ends.
pub(super) fn yaml(text: &str) -> Vec<String> {
    let Some(syntax) = SYNTAXES.find_syntax_by_extension("yaml") else { return text.lines().map(plain).collect() };
    let mut state = ParseState::new(syntax);
    let mut stack = ScopeStack::new();
    text.split_inclusive('\n').map(|line| highlighted(line, &mut state, &mut stack).unwrap_or_else(|| plain(line))).collect()
}

/// One line; `None` when it cannot be told apart, and then it is shown plain.
fn highlighted(line: &str, state: &mut ParseState, stack: &mut ScopeStack) -> Option<String> {
    if line.len() > LONGEST_LINE {
        return None;
    }
    let changes = state.parse_line(line, &SYNTAXES).ok()?;
    let shown = line.trim_end_matches(['\n', '\r']).len();
    let mut spans = Spans::default();
    let mut from = 0;
    for (at, change) in &changes {
        spans.add(class(stack), line.get(from..(*at).min(shown)).unwrap_or(""));
        from = *at;
        stack.apply(change).ok()?;
    }
    spans.add(class(stack), line.get(from..shown).unwrap_or(""));
    Some(spans.end())
}

/// The class of what stands under these scopes; empty for plain text.
fn class(stack: &ScopeStack) -> &'static str {
    let is_under = |kind: Scope| stack.as_slice().iter().any(|scope| kind.is_prefix_of(*scope));
    KINDS.iter().find(|(kind, _)| is_under(*kind)).map_or("", |(_, class)| class)
}

fn plain(line: &str) -> String {
    let mut out = String::new();
    html(line.trim_end_matches(['\n', '\r']), &mut out);
    out
}

/// Text with spans; neighbours of one class share one.
#[derive(Default)]
struct Spans {
    out: String,
    open: &'static str,
}

impl Spans {
    fn add(&mut self, class: &'static str, text: &str) {
        if text.is_empty() {
            return;
        }
        // Blanks look alike in every class.
        if class != self.open && !text.trim().is_empty() {
            self.close();
            if !class.is_empty() {
                self.out.push_str(&format!("<span class=\"{class}\">"));
            }
            self.open = class;
        }
        html(text, &mut self.out);
    }

    fn close(&mut self) {
        if !self.open.is_empty() {
            self.out.push_str("</span>");
            self.open = "";
        }
    }

    fn end(mut self) -> String {
        self.close();
        self.out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_keys_and_numbers_are_told_apart() {
        assert_eq!(
            yaml("# a <b>\nminutes: 12   # long\ngive:\n  legs: { share: 31–35 %, pieces: 2 }\n"),
            [
                "<span class=\"c\"># a &lt;b&gt;</span>",
                "<span class=\"k\">minutes</span>: <span class=\"n\">12   </span><span class=\"c\"># long</span>",
                "<span class=\"k\">give</span>:",
                "  <span class=\"k\">legs</span>: { <span class=\"k\">share</span>: 31–35 %, <span class=\"k\">pieces</span>: <span class=\"n\">2 </span>}",
            ]
        );
    }

    #[test]
    fn text_over_several_lines_stays_plain() {
        assert_eq!(
            yaml("do: |\n  Cut: here # no comment\r\n\nx: lean meat"),
            ["<span class=\"k\">do</span>: |", "  Cut: here # no comment", "", "<span class=\"k\">x</span>: lean meat"]
        );
    }

    #[test]
    fn nothing_is_lost_and_nothing_becomes_markup() {
        let long = "x".repeat(LONGEST_LINE + 1);
        for text in ["\t- [\n  '<script>' & \"b\"\n", "a: {b: \u{1F600}}\n%bad\n...", long.as_str(), ""] {
            let shown: String = yaml(text).join("\n");
            let mut rest = shown.replace("</span>", "");
            for class in ["c", "k", "n"] {
                rest = rest.replace(&format!("<span class=\"{class}\">"), "");
            }
            let mut expected = String::new();
            html(text.trim_end_matches('\n'), &mut expected);
            assert_eq!(rest, expected);
        }
    }
}
