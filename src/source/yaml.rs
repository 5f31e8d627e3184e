//! YAML text to a tree of nodes, each with the bytes at which it stands.
//!
//! Values stay texts: `no`, `0415` and `3–5` are what was typed. Anchors, aliases, tags and a second
//! document are refused; depth and size are bounded, so that no text can make this slow. This file
//! does not know what keys there are, and does not put the parser's complaints into words (`traps`).

use granit_parser::{Event, Options, Parser, ScalarStyle, Span as ParserSpan, StructureStyle};

use super::traps;
use crate::finding::{FileId, Finding, Place, Span};

/// How deep lists and mappings may stand in one another.
pub const DEPTH_LIMIT: usize = 64;
/// How many nodes a file may hold.
pub const NODE_LIMIT: usize = 100_000;
/// How many bytes a text may hold.
pub const BYTE_LIMIT: usize = 2 * 1024 * 1024;
/// After so many refused anchors, aliases and tags the rest of the file is not looked at.
const REFUSAL_LIMIT: usize = 20;

/// A text, a list or a mapping, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Node {
    /// From its first to past its last byte. A block mapping starts at its first key, a flow mapping at its `{`, a
    /// block text at its `|` or `>`. Where nothing stands, it is empty; an empty item of a list stands at its dash.
    pub span: Span,
    /// What it is.
    pub kind: Kind,
}

/// What a node is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Kind {
    /// A text.
    Text {
        /// The text after quotes, escapes and folding are resolved.
        text: String,
        /// True when it stands without quotes, on one or more lines, and is no block text.
        plain: bool,
        /// The comment that follows a plain text on its last line.
        comment: Option<Comment>,
    },
    /// A list.
    List(Vec<Node>),
    /// A mapping, in the order in which it stands, doubled keys included.
    Mapping(Vec<(Node, Node)>),
    /// Something that a finding has refused.
    Broken,
}

/// A comment after a text: perhaps the rest of that text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Comment {
    /// How many blanks stand before its `#`.
    pub blanks: usize,
    /// True when a number follows the `#`: `#3`, `# 3`.
    pub numbered: bool,
    /// Past its last letter.
    pub end: u32,
}

impl Node {
    /// True when nothing at all stands here.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        matches!(&self.kind, Kind::Text { text, plain: true, .. } if text.is_empty())
    }
}

/// What was being read when the parser stopped, so that `traps` can say it in plain words.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Trail {
    /// The last scalar.
    pub(super) last_scalar: Option<Span>,
    /// True when that scalar stands without quotes.
    pub(super) last_plain: bool,
    /// The end of the last event.
    pub(super) last_end: usize,
    /// Where the outermost and the innermost open `[` or `{` stand.
    pub(super) open_brackets: Option<(usize, usize)>,
}

enum Open {
    List { start: u32, flow: bool, items: Vec<Node> },
    Mapping { start: u32, flow: bool, pairs: Vec<(Node, Node)>, key: Option<Node> },
}

/// Reads one document. The node is `None` when the file as a whole can't be read; then there is a finding that says why.
#[must_use]
pub fn parse(text: &str, file: FileId) -> (Option<Node>, Vec<Finding>) {
    if text.len() > BYTE_LIMIT {
        let message = format!("this file holds {} bytes, more than the {BYTE_LIMIT} that are read", text.len());
        return (None, vec![too_large(file, message)]);
    }
    let mut builder = Builder { text, file, open: Vec::new(), root: None, findings: Vec::new(), trail: Trail::default() };
    match builder.run() {
        Ok(()) => {}
        Err(finding) => {
            builder.findings.extend(finding.map(|finding| *finding));
            return (None, builder.findings);
        }
    }
    if builder.root.is_none() && builder.findings.is_empty() {
        let place = Place::new(file, Span::new(0, 0));
        builder.findings.push(Finding::fault("empty-file", place, "nothing is written in this file").help("write it, or delete the file"));
    }
    (builder.root, builder.findings)
}

/// Why no tree comes of a file: the finding, or nothing where one was made already.
type Refusal = Option<Box<Finding>>;

struct Builder<'t> {
    text: &'t str,
    file: FileId,
    open: Vec<Open>,
    root: Option<Node>,
    findings: Vec<Finding>,
    trail: Trail,
}

impl Builder<'_> {
    /// Runs to the end of the text.
    fn run(&mut self) -> Result<(), Refusal> {
        let mut options = Options::default();
        options.set_emit_comments(false);
        options.emit_anchor_events = true;
        options.emit_unresolved_aliases = true;
        options.flow_nesting_limit = DEPTH_LIMIT;
        options.block_nesting_limit = DEPTH_LIMIT;
        let (mut events, mut documents) = (0_usize, 0_usize);
        for next in Parser::new_from_str_with_options(self.text, options) {
            let (event, at) = match next {
                Ok(pair) => pair,
                Err(error) => return Err(self.refusal_of(&error)),
            };
            events += 1;
            if events > NODE_LIMIT {
                return Err(Some(Box::new(too_large(self.file, format!("this file holds more than {NODE_LIMIT} values")))));
            }
            if self.findings.len() >= REFUSAL_LIMIT {
                return Err(None);
            }
            if matches!(event, Event::DocumentStart(..)) {
                documents += 1;
                if documents > 1 {
                    return Err(Some(Box::new(self.second_document(&at))));
                }
            }
            self.take(event, &at)?;
        }
        Ok(())
    }

    fn take(&mut self, event: Event<'_>, at: &ParserSpan) -> Result<(), Refusal> {
        let span = bytes_of(at);
        if event.tag().is_some() {
            self.refuse_tag(at);
        }
        match event {
            Event::Scalar(text, style, ..) => {
                let node = self.scalar(text.into_owned(), style, span);
                self.trail.last_scalar = Some(node.span);
                self.trail.last_plain = style == ScalarStyle::Plain;
                self.put(node);
            }
            Event::Alias(_) | Event::UnresolvedAlias(_) => {
                self.refuse_alias(span);
                self.put(Node { span, kind: Kind::Broken });
            }
            Event::Anchor(..) => self.refuse_anchor(span),
            Event::SequenceStart(style, ..) => {
                self.deeper(span)?;
                self.spaces_only(span, style)?;
                let flow = style == StructureStyle::Flow;
                // The parser tells the first item where a list stands no deeper than its key.
                let start = match self.open.last() {
                    Some(Open::Mapping { key: Some(key), .. }) if !flow => next_dash(self.text, key.span.end),
                    _ => span.start,
                };
                self.open.push(Open::List { start, flow, items: Vec::new() });
            }
            Event::MappingStart(style, ..) => {
                self.deeper(span)?;
                self.spaces_only(span, style)?;
                let flow = style == StructureStyle::Flow;
                self.open.push(Open::Mapping { start: span.start, flow, pairs: Vec::new(), key: None });
            }
            Event::SequenceEnd | Event::MappingEnd => {
                if let Some(node) = self.open.pop().map(|open| closed(open, span)) {
                    self.put(node);
                }
            }
            _ => {}
        }
        self.trail.last_end = self.trail.last_end.max(span.end as usize);
        Ok(())
    }

    fn put(&mut self, node: Node) {
        match self.open.last_mut() {
            None => self.root = Some(node),
            Some(Open::List { start, items, flow: false }) if node.is_nothing() => {
                let dash = items.last().map_or(*start, |item| next_dash(self.text, item.span.end));
                items.push(Node { span: Span::new(dash, dash + 1), ..node });
            }
            Some(Open::List { items, .. }) => items.push(node),
            Some(Open::Mapping { pairs, key, .. }) => match key.take() {
                None => *key = Some(node),
                Some(key) => pairs.push((key, node)),
            },
        }
    }

    fn scalar(&self, text: String, style: ScalarStyle, span: Span) -> Node {
        let kind = |text, plain, comment| Kind::Text { text, plain, comment };
        match style {
            // The parser gives `~` for what is not there; a `~` that was typed has a length.
            ScalarStyle::Plain if span.start == span.end => Node { span, kind: kind(String::new(), true, None) },
            ScalarStyle::Plain => Node { span, kind: kind(text, true, comment_after(self.text, span.end)) },
            ScalarStyle::Literal | ScalarStyle::Folded => Node { span: block_span(self.text, span), kind: kind(text, false, None) },
            _ => Node { span, kind: kind(text, false, None) },
        }
    }

    fn deeper(&self, span: Span) -> Result<(), Refusal> {
        if self.open.len() < DEPTH_LIMIT { Ok(()) } else { Err(Some(Box::new(traps::too_deep(Place::new(self.file, span))))) }
    }

    /// The parser takes a tab before the first key of a document; we don't.
    fn spaces_only(&self, span: Span, style: StructureStyle) -> Result<(), Refusal> {
        if style == StructureStyle::Flow {
            return Ok(());
        }
        let start = line_start(self.text, span.start);
        let head = self.text.get(start..span.start as usize).unwrap_or("");
        match head.find('\t').filter(|_| head.trim().is_empty()) {
            Some(tab) => {
                let at = u32::try_from(start + tab).unwrap_or(span.start);
                Err(Some(Box::new(traps::tab_indent(Place::new(self.file, Span::new(at, span.start))))))
            }
            None => Ok(()),
        }
    }

    fn refusal_of(&self, error: &granit_parser::ScanError) -> Refusal {
        let bracket = |open: &Open| match open {
            Open::List { start, flow: true, .. } | Open::Mapping { start, flow: true, .. } => Some(*start as usize),
            _ => None,
        };
        let mut brackets = self.open.iter().filter_map(bracket);
        let outer = brackets.next();
        let trail = Trail { open_brackets: outer.map(|outer| (outer, brackets.next_back().unwrap_or(outer))), ..self.trail };
        let finding = traps::explain(self.text, self.file, error, trail);
        // An alias that was no alias but a text with a star leaves words behind that the parser can't place.
        let same_line = |other: &Finding| line_start(self.text, other.place.span.start) == line_start(self.text, finding.place.span.start);
        if self.findings.iter().any(same_line) { None } else { Some(Box::new(finding)) }
    }

    fn second_document(&self, at: &ParserSpan) -> Finding {
        Finding::fault("several-documents", Place::new(self.file, bytes_of(at)), "a second document starts here, and a file holds one")
            .help("move what follows to a file of its own, or delete this `---`")
    }

    fn refuse_alias(&mut self, span: Span) {
        let written = self.text.get(span.range()).unwrap_or("*");
        let message = format!("`{written}` reads as an alias of YAML, and aliases are refused");
        let help = if written.chars().skip(1).any(|letter| letter == '*') || !self.text.contains(&written.replacen('*', "&", 1)) {
            "put the whole text in quotes, for it begins with a star"
        } else {
            "write the value out where it is needed"
        };
        self.findings.push(Finding::fault("anchor-or-alias", Place::new(self.file, span), message).help(help));
    }

    fn refuse_anchor(&mut self, span: Span) {
        let written = self.text.get(span.range()).unwrap_or("&");
        let message = format!("`{written}` reads as an anchor of YAML, and anchors are refused");
        let help = "take it away, and write the value out where it is needed; a text that begins with `&` is quoted";
        self.findings.push(Finding::fault("anchor-or-alias", Place::new(self.file, span), message).help(help));
    }

    fn refuse_tag(&mut self, at: &ParserSpan) {
        let span = at.tag_span().map_or_else(|| bytes_of(at), |tag| bytes_of(&tag));
        let written = self.text.get(span.range()).unwrap_or("!");
        let message = format!("`{written}` reads as a tag of YAML, and every value here is the text that stands there");
        let help = "take it away; a text that begins with `!` is quoted";
        self.findings.push(Finding::fault("yaml-tag", Place::new(self.file, span), message).help(help));
    }
}

fn closed(open: Open, end: Span) -> Node {
    match open {
        Open::List { start, flow, items } => {
            // The end of a block list is told only where the next thing starts, so the last item tells it.
            let last = if flow { end.end } else { items.last().map_or(start, |item| item.span.end) };
            Node { span: Span::new(start, last.max(start)), kind: Kind::List(items) }
        }
        Open::Mapping { start, flow, pairs, .. } => {
            let last = if flow { end.end } else { pairs.last().map_or(start, |(key, value)| value.span.end.max(key.span.end)) };
            Node { span: Span::new(start, last.max(start)), kind: Kind::Mapping(pairs) }
        }
    }
}

fn bytes_of(span: &ParserSpan) -> Span {
    let range = span.byte_range().unwrap_or(0..0);
    Span::new(u32::try_from(range.start).unwrap_or(u32::MAX), u32::try_from(range.end).unwrap_or(u32::MAX))
}

fn too_large(file: FileId, message: String) -> Finding {
    Finding::fault("too-large", Place::new(file, Span::new(0, 0)), message).help("split it into several files")
}

/// Where the line of a byte begins.
pub(super) fn line_start(text: &str, at: u32) -> usize {
    text.get(..at as usize).and_then(|head| head.rfind('\n')).map_or(0, |newline| newline + 1)
}

/// The comment that follows on the same line. Looks no further than the next letter where there is none.
fn comment_after(text: &str, end: u32) -> Option<Comment> {
    let rest = text.get(end as usize..)?;
    let blanks = rest.len() - rest.trim_start_matches([' ', '\t']).len();
    let comment = rest.get(blanks..)?.strip_prefix('#').filter(|_| blanks > 0)?.split('\n').next().unwrap_or("").trim_end();
    let numbered = comment.trim_start().starts_with(|letter: char| letter.is_ascii_digit());
    Some(Comment { blanks, numbered, end: end + u32::try_from(blanks + 1 + comment.len()).unwrap_or(0) })
}

/// The dash of the item after the one that ends at `from`: it begins a line, and only comments stand between.
fn next_dash(text: &str, from: u32) -> u32 {
    let mut at = from as usize;
    for line in text.get(at..).unwrap_or("").split_inclusive('\n') {
        let blanks = line.len() - line.trim_start().len();
        if at > from as usize && line.get(blanks..).is_some_and(|rest| rest.starts_with('-')) {
            return u32::try_from(at + blanks).unwrap_or(from);
        }
        at += line.len();
    }
    from
}

/// A block text from its `|` or `>` to past its last letter; the parser tells only where its first line begins.
fn block_span(text: &str, span: Span) -> Span {
    let head = text.get(..span.start as usize).unwrap_or("").trim_end();
    let line_at = head.rfind('\n').map_or(0, |newline| newline + 1);
    let line = head.get(line_at..).unwrap_or("");
    let is_header = |rest: &str| {
        let rest = rest.trim_start_matches(|letter: char| letter.is_ascii_digit() || letter == '+' || letter == '-');
        rest.is_empty() || (rest.starts_with([' ', '\t']) && (rest.trim().is_empty() || rest.trim_start().starts_with('#')))
    };
    let sign = line.char_indices().find(|(at, letter)| matches!(letter, '|' | '>') && is_header(line.get(at + 1..).unwrap_or("")));
    let start = sign.map_or(span.start, |(at, _)| u32::try_from(line_at + at).unwrap_or(span.start));
    let body = text.get(start as usize..span.end as usize).unwrap_or("").trim_end();
    Span::new(start, start + u32::try_from(body.len()).unwrap_or(0))
}

#[cfg(test)]
mod tests;
