//! Authored Markdown to HTML that cannot harm: an own writer over the parser's events.
//!
//! Raw HTML is shown as text. Links lead only to the web, to mail, to telephones, or to something of the guidebook
//! that the caller knows. Authors set no ids, classes or styles. What is written is limited in size.

use pulldown_cmark::{Alignment, CodeBlockKind, Event, HeadingLevel, Options, Parser, Tag, TagEnd};

use super::escape::{html, keep_units};

/// No text of a guidebook makes more HTML than this, in bytes; a longer one is shown as plain text.
const MOST_OUTPUT: usize = 200_000;
/// Text beyond this many bytes is left out; nobody reads that at a bench.
const MOST_INPUT: usize = 100_000;

/// A picture of the guidebook: its link, width and height in pixels.
pub(super) type Found = (String, u32, u32);

/// What links and pictures inside a text lead to.
pub(super) trait Targets {
    /// The link from this page to something of the guidebook, or `None` when there is no such thing.
    fn link(&self, target: &str) -> Option<String>;

    /// The picture at a path of the guidebook.
    fn picture(&self, path: &str) -> Option<Found>;
}

/// How a text is laid out.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layout {
    /// The level of an author's first-level heading: 3 makes `#` an `h3`.
    pub(super) top_heading: u8,
    /// True where each line is an instruction of its own.
    pub(super) lines: bool,
}

/// The text as HTML blocks.
pub(super) fn blocks(text: &str, layout: Layout, targets: &dyn Targets) -> String {
    below(text, layout, layout.top_heading.saturating_sub(1), targets)
}

/// A text as a page of its own: its title, where it begins with a heading, and the rest as blocks below that title.
pub(super) fn page(text: &str, targets: &dyn Targets) -> (Option<String>, String) {
    let mut events = Parser::new_ext(text, options()).into_offset_iter();
    let title = match events.next() {
        Some((Event::Start(Tag::Heading { level: HeadingLevel::H1, .. }), range)) => Some(range),
        _ => None,
    };
    let (title, rest) = title.map_or((None, text), |range| (text.get(range.clone()), text.get(range.end..).unwrap_or("")));
    let levels = Parser::new_ext(rest, options()).filter_map(|event| match event {
        Event::Start(Tag::Heading { level, .. }) => Some(level as u8),
        _ => None,
    });
    // The highest heading of the rest stands right below the title, whatever level its author gave it.
    let top_heading = 3_u8.saturating_sub(levels.min().unwrap_or(1));
    let title = title.map(first_line).filter(|title| !title.is_empty());
    (title, below(rest, Layout { top_heading, lines: false }, 1, targets))
}

/// The text as HTML blocks below a heading of level `above`; no level is skipped.
fn below(text: &str, layout: Layout, above: u8, targets: &dyn Targets) -> String {
    let text = clipped(text);
    let mut writer = Writer {
        out: String::with_capacity(text.len() * 2),
        layout,
        targets,
        alignments: Vec::new(),
        cell: 0,
        header: false,
        picture: None,
        inside: 0,
        links: Vec::new(),
        above,
        last_heading: above,
    };
    for event in Parser::new_ext(text, options()) {
        writer.event(event);
        if writer.out.len() > MOST_OUTPUT {
            let mut out = String::from("<p>");
            html(text, &mut out);
            out.push_str("</p>");
            return out;
        }
    }
    writer.out
}

/// Likewise, without the element around a single paragraph, for places that are one already.
pub(super) fn inline(text: &str, layout: Layout, targets: &dyn Targets) -> String {
    let blocks = blocks(text, layout, targets);
    let single = blocks
        .strip_prefix("<p>")
        .and_then(|rest| rest.strip_suffix("</p>"))
        .filter(|inside| !inside.contains("<p>") && !inside.contains("</p>"));
    single.map_or_else(|| blocks.clone(), str::to_owned)
}

/// The first paragraph as plain text on one line, for places that hold no more.
pub(super) fn first_line(text: &str) -> String {
    let mut line = String::new();
    for event in Parser::new_ext(clipped(text), options()) {
        match event {
            Event::Text(part) | Event::Code(part) | Event::InlineHtml(part) | Event::Html(part) => line.push_str(&part),
            Event::SoftBreak | Event::HardBreak => line.push(' '),
            Event::End(TagEnd::Paragraph | TagEnd::Heading(_) | TagEnd::Item | TagEnd::HtmlBlock | TagEnd::CodeBlock)
                if !line.trim().is_empty() =>
            {
                break;
            }
            _ => {}
        }
    }
    keep_units(&line.split_whitespace().collect::<Vec<_>>().join(" "))
}

/// All of the text as plain words on one line, blocks parted by a blank.
pub(super) fn plain(text: &str) -> String {
    let mut line = String::new();
    for event in Parser::new_ext(clipped(text), options()) {
        match event {
            Event::Text(part) | Event::Code(part) | Event::InlineHtml(part) | Event::Html(part) => line.push_str(&part),
            Event::SoftBreak | Event::HardBreak | Event::End(TagEnd::Paragraph | TagEnd::Heading(_) | TagEnd::Item | TagEnd::TableCell) => {
                line.push(' ')
            }
            _ => {}
        }
    }
    line.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Likewise line by line, as the author broke them, without empty ones.
pub(super) fn plain_lines(text: &str) -> Vec<String> {
    let mut lines = vec![String::new()];
    for event in Parser::new_ext(clipped(text), options()) {
        match event {
            Event::Text(part) | Event::Code(part) | Event::InlineHtml(part) | Event::Html(part) => {
                if let Some(line) = lines.last_mut() {
                    line.push_str(&part);
                }
            }
            Event::SoftBreak | Event::HardBreak | Event::End(TagEnd::Paragraph | TagEnd::Heading(_) | TagEnd::Item | TagEnd::TableRow) => {
                lines.push(String::new());
            }
            Event::End(TagEnd::TableCell) => {
                if let Some(line) = lines.last_mut() {
                    line.push(' ');
                }
            }
            _ => {}
        }
    }
    let words = lines.iter().map(|line| keep_units(&line.split_whitespace().collect::<Vec<_>>().join(" ")));
    words.filter(|line| !line.is_empty()).collect()
}

fn options() -> Options {
    Options::ENABLE_TABLES | Options::ENABLE_STRIKETHROUGH
}

fn clipped(text: &str) -> &str {
    let mut end = text.len().min(MOST_INPUT);
    while !text.is_char_boundary(end) {
        end -= 1;
    }
    text.get(..end).unwrap_or("")
}

/// A link to the web, to mail or to a telephone, exactly as browsers read it: they drop control characters and
/// read `\` as `/`.
fn outside(target: &str) -> Option<String> {
    let clean: String = target.chars().filter(|c| !c.is_control() && !c.is_whitespace()).collect();
    let scheme = clean.split_once(':')?.0.to_ascii_lowercase();
    matches!(scheme.as_str(), "http" | "https" | "mailto" | "tel").then_some(clean)
}

struct Writer<'a> {
    out: String,
    layout: Layout,
    targets: &'a dyn Targets,
    alignments: Vec<Alignment>,
    cell: usize,
    header: bool,
    /// The picture whose alternative text is being read, and that text.
    picture: Option<(Option<Found>, String)>,
    /// How many elements are open that a new paragraph must not cut: lists, emphasis, links.
    inside: usize,
    /// For each link that is open, whether it leads anywhere; of one that does not, only the words are left.
    links: Vec<bool>,
    /// The level of the heading above the text; none inside it is as high.
    above: u8,
    /// The level of the last heading, so that none is skipped.
    last_heading: u8,
}

impl Writer<'_> {
    fn event(&mut self, event: Event<'_>) {
        if let Some((_, alt)) = &mut self.picture {
            match event {
                Event::Text(text) | Event::Code(text) | Event::InlineHtml(text) => alt.push_str(&text),
                Event::SoftBreak | Event::HardBreak => alt.push(' '),
                Event::End(TagEnd::Image) => self.end_picture(),
                _ => {}
            }
            return;
        }
        match event {
            Event::Start(tag) => self.start(tag),
            Event::End(tag) => self.end(tag),
            Event::Text(text) => html(&keep_units(&text), &mut self.out),
            Event::Html(text) | Event::InlineHtml(text) => html(&text, &mut self.out),
            Event::Code(text) => {
                self.out.push_str("<code>");
                html(&text, &mut self.out);
                self.out.push_str("</code>");
            }
            Event::SoftBreak if self.layout.lines && self.inside == 0 => self.out.push_str("</p><p>"),
            Event::SoftBreak => self.out.push('\n'),
            Event::HardBreak => self.out.push_str("<br>"),
            Event::Rule => self.out.push_str("<hr>"),
            // Not switched on in `options`.
            Event::FootnoteReference(_) | Event::TaskListMarker(_) | Event::InlineMath(_) | Event::DisplayMath(_) => {}
        }
    }

    fn start(&mut self, tag: Tag<'_>) {
        if !matches!(tag, Tag::Paragraph) {
            self.inside += 1;
        }
        match tag {
            Tag::Paragraph | Tag::HtmlBlock => self.out.push_str("<p>"),
            Tag::Heading { level, .. } => {
                self.last_heading = self.level(level);
                let level = self.last_heading;
                self.out.push_str(&format!("<h{level}>"));
            }
            Tag::BlockQuote(_) => self.out.push_str("<blockquote>"),
            Tag::CodeBlock(CodeBlockKind::Indented | CodeBlockKind::Fenced(_)) => self.out.push_str("<pre><code>"),
            Tag::List(Some(1)) => self.out.push_str("<ol>"),
            Tag::List(Some(first)) => self.out.push_str(&format!("<ol start=\"{first}\">")),
            Tag::List(None) => self.out.push_str("<ul>"),
            Tag::Item => self.out.push_str("<li>"),
            Tag::Table(alignments) => {
                self.alignments = alignments;
                self.out.push_str("<div class=\"scroll\" tabindex=\"0\"><table>");
            }
            Tag::TableHead => {
                self.header = true;
                self.cell = 0;
                self.out.push_str("<thead><tr>");
            }
            Tag::TableRow => {
                self.cell = 0;
                self.out.push_str("<tr>");
            }
            Tag::TableCell => self.start_cell(),
            Tag::Emphasis => self.out.push_str("<em>"),
            Tag::Strong => self.out.push_str("<strong>"),
            Tag::Strikethrough => self.out.push_str("<del>"),
            Tag::Link { dest_url, .. } => {
                let link = outside(&dest_url).or_else(|| self.targets.link(&dest_url));
                self.links.push(link.is_some());
                if let Some(link) = link {
                    self.out.push_str("<a href=\"");
                    html(&link, &mut self.out);
                    self.out.push_str("\">");
                }
            }
            Tag::Image { dest_url, .. } => self.picture = Some((self.targets.picture(&dest_url), String::new())),
            _ => {}
        }
    }

    fn end(&mut self, tag: TagEnd) {
        if tag != TagEnd::Paragraph {
            self.inside = self.inside.saturating_sub(1);
        }
        let text = match tag {
            TagEnd::Paragraph | TagEnd::HtmlBlock => "</p>",
            TagEnd::Heading(_) => return self.out.push_str(&format!("</h{}>", self.last_heading)),
            TagEnd::BlockQuote(_) => "</blockquote>",
            TagEnd::CodeBlock => "</code></pre>",
            TagEnd::List(true) => "</ol>",
            TagEnd::List(false) => "</ul>",
            TagEnd::Item => "</li>",
            TagEnd::Table => "</tbody></table></div>",
            TagEnd::TableHead => {
                self.header = false;
                "</tr></thead><tbody>"
            }
            TagEnd::TableRow => "</tr>",
            TagEnd::TableCell => {
                self.cell += 1;
                if self.header { "</th>" } else { "</td>" }
            }
            TagEnd::Emphasis => "</em>",
            TagEnd::Strong => "</strong>",
            TagEnd::Strikethrough => "</del>",
            TagEnd::Link if self.links.pop() == Some(true) => "</a>",
            _ => "",
        };
        self.out.push_str(text);
    }

    /// A cell, aligned by class: the policy of the page allows no inline style.
    fn start_cell(&mut self) {
        let name = if self.header { "th scope=\"col\"" } else { "td" };
        let class = match self.alignments.get(self.cell) {
            Some(Alignment::Right) => " class=\"right\"",
            Some(Alignment::Center) => " class=\"middle\"",
            _ => " class=\"left\"",
        };
        self.out.push_str(&format!("<{name}{class}>"));
    }

    /// A picture of the guidebook; of any other only the text is left.
    fn end_picture(&mut self) {
        self.inside = self.inside.saturating_sub(1);
        let Some((picture, alt)) = self.picture.take() else { return };
        let Some((link, width, height)) = picture else { return html(&alt, &mut self.out) };
        self.out.push_str("<img src=\"");
        html(&link, &mut self.out);
        self.out.push_str("\" alt=\"");
        html(&alt, &mut self.out);
        self.out.push_str(&format!("\" width=\"{width}\" height=\"{height}\" loading=\"lazy\">"));
    }

    fn level(&self, level: HeadingLevel) -> u8 {
        let level = (level as u8).saturating_add(self.layout.top_heading).saturating_sub(1);
        level.max(self.above + 1).min(self.last_heading + 1).min(6)
    }
}

#[cfg(test)]
#[path = "markdown_tests.rs"]
mod tests;
