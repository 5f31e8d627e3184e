//! YAML made easier to read: comments, keys and numbers in spans of one class each, everything else as it stands.
//!
//! Spans of one kind are joined and carry a class alone, so that a page stays small and its strict policy holds.

mod outline;

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::LazyLock;

use syntect::parsing::{ParseState, Scope, ScopeStack, ScopeStackOp, SyntaxSet};

use super::escape::html;
use outline::Outline;

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

/// So many looks of lines are remembered; a guidebook has some hundreds.
const MOST_KNOWN: usize = 4_000;

thread_local! {
    static KNOWN: RefCell<BTreeMap<String, Known>> = const { RefCell::new(BTreeMap::new()) };
}

/// The lines of a YAML text as HTML, without their line ends.
pub(super) fn yaml(text: &str) -> Vec<String> {
    let Some(syntax) = SYNTAXES.find_syntax_by_extension("yaml") else { return text.lines().map(plain).collect() };
    let mut lines = Lines { state: ParseState::new(syntax), stack: ScopeStack::new(), block: None };
    text.split_inclusive('\n').map(|line| lines.shown(line)).collect()
}

/// The parser between two lines.
///
/// It tries some thirty patterns at every sign, and makes a new one for every line of a text over several lines. A
/// guide is mostly such texts, in which there is nothing to tell apart, and its other lines differ in names and
/// sentences alone; so it is asked about each outline of a line, and once.
struct Lines {
    state: ParseState,
    stack: ScopeStack,
    block: Option<Block>,
}

/// How an outline looks, where each stretch of it ends, and whether a text over several lines begins behind it.
#[derive(Clone)]
struct Known {
    /// The parser met the outline in this state, and was left in it.
    state: ParseState,
    stretches: Vec<(usize, &'static str)>,
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
    /// The next line as HTML.
    fn shown(&mut self, line: &str) -> String {
        if line.len() > LONGEST_LINE || self.block.as_mut().is_some_and(|block| block.takes(line)) {
            return plain(line);
        }
        self.block = None;
        let outline = Outline::of(line);
        let known = KNOWN.with_borrow(|known| known.get(&outline.text).filter(|known| known.state == self.state).cloned());
        // What cannot be told apart is shown plain.
        let Some(known) = known.or_else(|| self.ask(&outline.text)) else { return plain(line) };
        if known.opens_block {
            self.block = Some(Block { above: indent_of(line), own: None });
        }
        let shown = line.trim_end_matches(['\n', '\r']).len();
        let mut spans = Spans::default();
        let mut from = 0;
        for (end, class) in known.stretches {
            let end = outline.in_line(end).min(shown);
            spans.add(class, line.get(from..end).unwrap_or(""));
            from = end;
        }
        spans.end()
    }

    /// Asks the parser about an outline.
    fn ask(&mut self, outline: &str) -> Option<Known> {
        let before = (self.state.clone(), self.stack.clone());
        let changes = self.state.parse_line(outline, &SYNTAXES).ok()?;
        let stretches = stretches(outline, &changes, &mut self.stack)?;
        let opens_block = BLOCK_SIGN.is_some_and(|sign| changes.iter().any(|(_, change)| is_push_of(change, sign)));
        if opens_block {
            // Behind the text everything is as before.
            (self.state, self.stack) = before.clone();
        }
        let known = Known { state: before.0, stretches, opens_block };
        if self.state == known.state {
            KNOWN.with_borrow_mut(|all| {
                if all.len() >= MOST_KNOWN {
                    all.clear();
                }
                all.insert(outline.to_owned(), known.clone());
            });
        }
        Some(known)
    }
}

/// How many blanks a line begins with.
fn indent_of(line: &str) -> usize {
    line.len() - line.trim_start_matches(' ').len()
}

fn is_push_of(change: &ScopeStackOp, sign: Scope) -> bool {
    matches!(change, ScopeStackOp::Push(scope) if sign.is_prefix_of(*scope))
}

/// Where each stretch of one class ends in a line, blanks on their own; the scopes are brought to its end.
fn stretches(line: &str, changes: &[(usize, ScopeStackOp)], stack: &mut ScopeStack) -> Option<Vec<(usize, &'static str)>> {
    let mut all = Vec::new();
    for (at, change) in changes {
        all.push((*at, class(stack)));
        stack.apply(change).ok()?;
    }
    all.push((line.len(), class(stack)));
    Some(all)
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
        let mut state = ParseState::new(SYNTAXES.find_syntax_by_extension("yaml").unwrap());
        let mut stack = ScopeStack::new();
        let slow = |line: &str| {
            let changes = state.parse_line(line, &SYNTAXES).unwrap();
            let (mut spans, mut from) = (Spans::default(), 0);
            for (end, class) in stretches(line, &changes, &mut stack).unwrap() {
                spans.add(class, line[from..end].trim_end_matches('\n'));
                from = end;
            }
            spans.end()
        };
        text.split_inclusive('\n').map(slow).collect()
    }

    #[test]
    fn the_demonstration_looks_as_if_the_parser_had_been_asked_of_every_line() {
        for text in [include_str!("../../procedures/pork/side-primals.yaml"), include_str!("../../procedures/salmon/portions-raw.yaml")] {
            assert_eq!(yaml(text), slowly(text));
        }
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
      hind-foot: { share: 3.5–4.25 %, typical: 3.75 %, pieces: 2, use: fat-trim }
      ? hind-foot
    take: [hind-foot, 3-b, b-3, 12, 2–3, \"a-b\", a-b.c, a_b-c, no-1, no]
    more: { a-b: 1-2, c-d: -1, no: -e-f, \"g-h\": 2026-01-02 } # i-j: 1–2
    - a-b
    - a-b c-d: 4
    a-b: c-d
    weight: 1.5–2.5 kg
    from: -2–3 °C
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
