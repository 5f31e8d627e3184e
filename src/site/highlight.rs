//! YAML made easier to read: comments, keys and numbers in spans of one class each, everything else as it stands.
//!
//! Spans of one kind are joined and carry a class alone, so that a page stays small and its strict policy holds.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use syntect::parsing::{ParseState, Scope, ScopeStack, ScopeStackOp, SyntaxSet};

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

/// The sign after which text over several lines begins.
static BLOCK_SIGN: LazyLock<Option<Scope>> = LazyLock::new(|| Scope::new("keyword.control.flow.block-scalar").ok());

/// Stands for a plain text of several words.
const WORDS: &str = "some words";

/// The lines of a YAML text as HTML, without their line ends.
pub(super) fn yaml(text: &str) -> Vec<String> {
    let Some(mut lines) = Lines::begin() else { return text.lines().map(plain).collect() };
    text.split_inclusive('\n').map(|line| lines.shown(line)).collect()
}

/// The parser between two lines.
///
/// It tries some thirty patterns at every sign, and makes a new one for every line of a text over several lines. A
/// guide is mostly such texts and plain sentences, in which there is nothing to tell apart, and its other lines are
/// often the same; so it is asked about the rest only, and once.
struct Lines {
    state: ParseState,
    stack: ScopeStack,
    /// How lines look that left the parser in this state, in which they met it.
    calm: Option<ParseState>,
    known: BTreeMap<String, Known>,
    block: Option<Block>,
}

/// How a line looks, and whether a text over several lines begins behind it.
#[derive(Clone)]
struct Known {
    html: String,
    opens_block: bool,
}

/// A text over several lines.
struct Block {
    /// How far the line is indented at whose end it begins.
    above: usize,
    /// How far its own first line is indented; `None` before that.
    own: Option<usize>,
}

impl Block {
    /// Whether a line belongs to it: a blank one does, and one that is indented as far as the first.
    fn takes(&mut self, line: &str) -> bool {
        if line.trim().is_empty() {
            return true;
        }
        let indent = indent_of(line);
        match self.own {
            Some(own) => indent >= own,
            None if indent > self.above => {
                self.own = Some(indent);
                true
            }
            None => false,
        }
    }
}

impl Lines {
    fn begin() -> Option<Self> {
        let syntax = SYNTAXES.find_syntax_by_extension("yaml")?;
        Some(Self { state: ParseState::new(syntax), stack: ScopeStack::new(), calm: None, known: BTreeMap::new(), block: None })
    }

    /// The next line as HTML.
    fn shown(&mut self, line: &str) -> String {
        if line.len() > LONGEST_LINE || self.block.as_mut().is_some_and(|block| block.takes(line)) {
            return plain(line);
        }
        self.block = None;
        let (head, words) = plain_words(line).unwrap_or((line, ""));
        let known = if self.calm.as_ref() == Some(&self.state) { self.known.get(head).cloned() } else { None };
        // What cannot be told apart is shown plain.
        let Some(mut known) = known.or_else(|| self.ask(head, !words.is_empty())) else { return plain(line) };
        if known.opens_block {
            self.block = Some(Block { above: indent_of(line), own: None });
        }
        known.html.push_str(&plain(words));
        known.html
    }

    /// Asks the parser about a line, which goes on with plain words or not.
    fn ask(&mut self, head: &str, with_words: bool) -> Option<Known> {
        let before = (self.state.clone(), self.stack.clone());
        let line = if with_words { format!("{head}{WORDS}\n") } else { head.to_owned() };
        let changes = self.state.parse_line(&line, &SYNTAXES).ok()?;
        let html = told_apart(head, &changes, &mut self.stack)?;
        let opens_block = BLOCK_SIGN.is_some_and(|sign| changes.iter().any(|(_, change)| is_push_of(change, sign)));
        if opens_block {
            // Behind the text everything is as before.
            (self.state, self.stack) = before.clone();
        }
        let known = Known { html, opens_block };
        if self.state == before.0 {
            if self.calm.as_ref() != Some(&self.state) {
                self.calm = Some(before.0);
                self.known.clear();
            }
            self.known.insert(head.to_owned(), known.clone());
        }
        Some(known)
    }
}

/// How many blanks a line begins with.
fn indent_of(line: &str) -> usize {
    line.len() - line.trim_start_matches(' ').len()
}

/// A line with a key and plain words of its value, parted before the words; the value has two words or more, so that
/// it is no number, date or truth value. `None` for any line that could be read in another way.
fn plain_words(line: &str) -> Option<(&str, &str)> {
    let (key, words) = line.split_once(": ")?;
    let name = key.trim_start_matches([' ', '-']);
    let is_key = name.starts_with(|first: char| first.is_ascii_lowercase())
        && name.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-');
    let text = words.trim_end();
    let is_plain = text.starts_with(|first: char| first.is_ascii_alphabetic())
        && text.contains(' ')
        && !text.ends_with(':')
        && ![": ", " #", "\t", ":\t"].iter().any(|sign| text.contains(sign));
    (is_key && is_plain).then(|| line.split_at(key.len() + 2))
}

fn is_push_of(change: &ScopeStackOp, sign: Scope) -> bool {
    matches!(change, ScopeStackOp::Push(scope) if sign.is_prefix_of(*scope))
}

/// The beginning of a line with its kinds told apart; the scopes are brought to the end of the line.
fn told_apart(head: &str, changes: &[(usize, ScopeStackOp)], stack: &mut ScopeStack) -> Option<String> {
    let shown = head.trim_end_matches(['\n', '\r']).len();
    let mut spans = Spans::default();
    let mut from = 0;
    for (at, change) in changes {
        spans.add(class(stack), head.get(from..(*at).min(shown)).unwrap_or(""));
        from = *at;
        stack.apply(change).ok()?;
    }
    spans.add(class(stack), head.get(from..shown).unwrap_or(""));
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

    /// Every line through the parser, none remembered and none left out.
    fn slowly(text: &str) -> Vec<String> {
        let mut lines = Lines::begin().unwrap();
        let slow = |line: &str| {
            let changes = lines.state.parse_line(line, &SYNTAXES).unwrap();
            told_apart(line, &changes, &mut lines.stack).unwrap()
        };
        text.split_inclusive('\n').map(slow).collect()
    }

    #[test]
    fn what_the_parser_is_spared_looks_as_if_it_had_been_asked() {
        let text = "# head: x
title: Boned leg, with 2 ends  # why: so
truth: yes or no
yes: yes
date: 2026-01-02
when: 2026-01-02 or so
quoted: \"a: b\" # c
steps:
  - name: Part the 'leg' [at the] \"knee\" {joint}
    do: |
      Cut: here. # no comment
        - deeper: 3

      minutes: 4
    hold: The other hand
      goes on: here
    ends-with: a colon:
    mistakes: >-
      One 1.
    ask:
      - question: Is 5 > 4: really?
        answer: |
          Yes.
      - question: What now?
        answer: Nothing
    give:
      leg-2: rest
      foot: { share: 3–4 %, holds: [a, b], use: bone }
    give:
      leg-2: rest
";
        assert_eq!(yaml(text), slowly(text));
    }

    #[test]
    fn a_text_without_lines_takes_none_of_those_behind_it() {
        assert_eq!(yaml("do: |\nx: 7"), ["<span class=\"k\">do</span>: |", "<span class=\"k\">x</span>: <span class=\"n\">7</span>"]);
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
