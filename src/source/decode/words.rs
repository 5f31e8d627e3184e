//! Words for people: what a mapping is called, what is expected where, which key was likely meant.

use strsim::damerau_levenshtein;

use super::slot::Slot;
use crate::finding::{Finding, Span};
use crate::source::traps;
use crate::source::yaml::{Kind, Node};

/// How many keys are listed where none is near.
const SHOWN_KEYS: usize = 8;

/// Wrong words that are likely written for a key, where spelling alone does not lead to it.
const LIKELY: &[(&str, &[&str])] = &[
    ("after", &["then", "order", "depends-on", "following"]),
    ("also", &["synonyms", "aliases", "other-names", "names", "aka"]),
    ("alt", &["description", "text", "alternative"]),
    ("anatomy", &["bones", "muscles", "structures", "parts"]),
    ("anatomy-note", &["note", "notes", "why"]),
    ("approved-by", &["approver", "approved", "approval", "signed-by"]),
    ("as", &["basis", "state", "condition", "trim"]),
    ("ask", &["questions", "quiz", "question"]),
    ("at-most", &["max", "maximum", "limit-value", "value"]),
    ("author", &["by", "written-by", "authors"]),
    ("avoid", &["action", "prevention", "control"]),
    ("back-to-cold", &["chill", "refrigerate", "cold", "back-to-chill"]),
    ("caption", &["title", "label", "legend"]),
    ("cautions", &["warning", "warnings", "hazard", "hazards", "danger", "dangers", "safety", "risks"]),
    ("change", &["changes", "changed", "reason", "summary"]),
    ("counts", &["bones", "ribs"]),
    ("do", &["instruction", "instructions", "text", "action", "description", "how", "method"]),
    ("file", &["src", "path", "image", "source"]),
    ("give", &["output", "outputs", "gives", "into", "pieces-out", "result", "results", "makes", "shares", "produces"]),
    ("good", &["good-result", "quality", "check", "standard"]),
    ("landmark", &["landmarks", "seam", "guide"]),
    ("loss", &["waste", "drip", "shrink", "shrinkage", "losses", "saw-dust"]),
    ("minutes", &["time", "duration", "mins", "min"]),
    ("mistakes", &["errors", "faults", "common-mistakes", "pitfalls"]),
    ("name", &["title", "label", "heading"]),
    ("number", &["version", "no", "rev"]),
    ("pictures", &["image", "images", "photo", "photos", "figure", "figures", "drawings"]),
    ("piece", &["cut", "item", "from", "input", "primal"]),
    ("pieces", &["quantity", "qty", "number", "count"]),
    ("procedures", &["guides", "guide", "procedure"]),
    ("review-by", &["review", "review-date", "next-review", "expires"]),
    ("revision", &["version", "control", "document-control"]),
    ("share", &["yield", "percent", "percentage", "fraction"]),
    ("sources", &["reference", "references", "source", "citations"]),
    ("species", &["animal"]),
    ("start", &["input", "from", "start-piece", "raw-material"]),
    ("step", &["id", "name"]),
    ("steps", &["procedure", "method", "work", "instructions"]),
    ("take", &["input", "inputs", "from", "takes", "uses", "piece"]),
    ("temperature", &["temp", "core-temperature"]),
    ("title", &["name", "heading"]),
    ("tools", &["knife", "knives", "equipment", "tool", "saw"]),
    ("use", &["purpose", "destination", "fate"]),
    ("wear", &["ppe", "protection", "gloves", "glove", "protective-equipment"]),
    ("weight", &["mass", "kg"]),
    ("why", &["reason", "because"]),
    ("yields", &["yield", "shares"]),
];

/// The word in small letters, with hyphens.
pub(super) fn plain_dress(word: &str) -> String {
    word.trim().chars().map(|letter| if matches!(letter, '_' | ' ') { '-' } else { letter }).collect::<String>().to_lowercase()
}

/// The key that an unknown one was likely meant to be: the same word in another dress, a likely wrong word, or the
/// nearest by spelling. Keys that are absent come before keys that stand there already.
pub(super) fn meant_key(word: &str, fields: &'static [&'static str], absent: &[&'static str]) -> Option<&'static str> {
    let dressed: String =
        word.trim().chars().map(|letter| if matches!(letter, '_' | ' ') { '-' } else { letter }).collect::<String>().to_lowercase();
    if let Some(field) = fields.iter().find(|field| **field == dressed) {
        return Some(field);
    }
    let likely = |field: &&'static str| LIKELY.iter().any(|(key, wrong)| key == field && wrong.contains(&dressed.as_str()));
    if let Some(field) = absent.iter().copied().find(likely) {
        return Some(field);
    }
    let near = |field: &'static str| {
        let distance = damerau_levenshtein(field, &dressed);
        (distance <= 1 + field.len() / 4).then_some((distance, !absent.contains(&field), field))
    };
    fields.iter().filter_map(|field| near(field)).min().map(|(.., field)| field).or_else(|| fields.iter().copied().find(likely))
}

/// What a mapping of this shape is called.
pub(super) fn noun(shape: &str) -> &'static str {
    match shape {
        "Guidebook" => "the guidebook",
        "Stricter" => "a stricter limit",
        "Off" => "an entry of `off`",
        "Procedure" => "a procedure",
        "Revision" => "the revision",
        "Start" => "the start",
        "Step" => "a step",
        "After" => "an entry of `after`",
        "LongOutput" => "an output",
        "Portions" => "the portions",
        "Waiver" => "a waiver",
        "Cut" => "a piece of the cut list",
        "AnatomyPart" => "an anatomical part",
        "Caution" => "a caution",
        "Tool" => "a tool",
        "AnyOf" => "a choice of tools",
        "Course" => "a course",
        "Lesson" => "a lesson",
        "Prices" => "the price list",
        "Picture" => "a picture",
        "PictureLine" => "a line of a picture",
        "Question" => "a question",
        _ => "this mapping",
    }
}

/// True for kinds of text that are written for people.
pub(super) fn is_free(kind: &str) -> bool {
    matches!(kind, "Line" | "Markdown")
}

/// What is expected where a text of the named kind belongs.
pub(super) fn expected_text(kind: &str) -> &'static str {
    match kind {
        "Id" => "an id such as `boning-knife`",
        "ProcedureId" => "the id of a procedure, such as `pork/loin-boneless`",
        "ShareText" => "a share such as `5–7 %`",
        "MassText" => "a weight such as `6.5–8.0 kg`",
        "TemperatureText" => "a temperature such as `2–4 °C`",
        "LengthText" => "a length such as `20–25 mm`",
        "MinutesText" => "minutes such as `3–5`",
        "WholeText" => "a whole number",
        "CountText" => "a number such as `11` or `13–17`",
        "DateText" => "a date such as `2026-10-12`",
        "AgeText" => "an age such as `12–30 months`",
        "PriceText" => "a price such as `3.40 / kg`",
        "PathText" => "the path of a file",
        "LimitText" => "a limit such as `4 °C`",
        "Word" => "one word",
        _ => "a text",
    }
}

/// What stands there, in a word.
pub(super) fn kind_of(node: &Node) -> &'static str {
    match &node.kind {
        Kind::Text { text, .. } if text.is_empty() => "nothing",
        Kind::Text { .. } => "a text",
        Kind::List(_) => "a list",
        Kind::Mapping(_) => "a mapping",
        Kind::Broken => "something that can't be read",
    }
}

/// What a value that may be of several kinds takes: the name of its type says so after `$either`, else its kinds do.
pub(super) fn either(name: &'static str, variants: &[&str]) -> String {
    if let Some(words) = name.strip_prefix("$either ") {
        return words.to_owned();
    }
    let kind = |variant: &&str| match *variant {
        "list" => "a list",
        "mapping" => "a mapping",
        _ => "a text",
    };
    variants.iter().map(kind).collect::<Vec<_>>().join(" or ")
}

/// The keys that a mapping takes, for one who wrote none of them: the first few.
pub(super) fn first_keys(fields: &[&str]) -> String {
    let shown = list_of(fields.get(..fields.len().min(5)).unwrap_or(fields));
    if fields.len() > 5 { format!("{shown}, …") } else { shown }
}

/// The keys that a mapping takes, for one who wrote another: those nearest by spelling first.
pub(super) fn nearest_keys(word: &str, fields: &[&str]) -> String {
    let mut near = fields.to_vec();
    near.sort_by_key(|field| damerau_levenshtein(field, word));
    let shown = list_of(near.get(..near.len().min(SHOWN_KEYS)).unwrap_or(&near));
    match near.len().saturating_sub(SHOWN_KEYS) {
        0 => shown,
        more => format!("{shown} and {more} more"),
    }
}

/// Keys in backquotes, joined by commas.
pub(super) fn list_of(fields: &[&str]) -> String {
    fields.iter().map(|field| format!("`{field}`")).collect::<Vec<_>>().join(", ")
}

/// An authored text, short enough for a headline.
pub(super) fn shown(text: &str) -> String {
    let line = text.lines().next().unwrap_or("");
    if line.chars().count() > 40 { format!("{}…", line.chars().take(39).collect::<String>()) } else { line.to_owned() }
}

/// The part of a node that can be shown: of a list or a mapping only where it begins.
pub(super) fn first_line(node: &Node) -> Span {
    match &node.kind {
        Kind::Mapping(pairs) => match pairs.first() {
            Some((key, _)) if key.span.start == node.span.start => key.span,
            _ => Span::new(node.span.start, node.span.start.saturating_add(1).min(node.span.end)),
        },
        // A block list starts at its first dash, a flow list at its bracket.
        Kind::List(_) => Span::new(node.span.start, node.span.start.saturating_add(1).min(node.span.end)),
        Kind::Text { .. } | Kind::Broken => node.span,
    }
}

/// True for a text in a list that a colon has made a mapping of one line: `- Handbook: chapter 3`.
pub(super) fn is_split_text(node: &Node, pairs: &[(Node, Node)]) -> bool {
    let [(key, value)] = pairs else { return false };
    let texts = matches!((&key.kind, &value.kind), (Kind::Text { plain: true, .. }, Kind::Text { plain: true, .. }));
    texts && key.span.start == node.span.start && !value.is_nothing()
}

/// The finding where a list is expected and something else stands, with the list to write where that is clear.
pub(super) fn list_wanted(slot: &Slot<'_, '_>, node: &Node) -> Finding {
    if let Kind::Text { text, plain: true, .. } = &node.kind {
        if let Some(item) = text.strip_prefix('-').filter(|item| !item.starts_with([' ', '-'])) {
            return traps::space_missing(slot.sink.place(node.span), "-", &format!("-{item}"));
        }
        let line = text.lines().next().unwrap_or("");
        if line.chars().count() <= 50 {
            return slot.wrong_kind(node, "a list").help(format!("write `[{line}]`"));
        }
    }
    slot.wrong_kind(node, "a list").help("put each item on a line of its own, after a dash and a space")
}

/// What to write instead of a word that is neither `true` nor `false`.
pub(super) fn true_or_false(word: &str) -> &'static str {
    match word.to_lowercase().as_str() {
        "yes" | "y" | "on" | "1" | "t" | "true" => "write `true`",
        "no" | "n" | "off" | "0" | "f" | "false" => "write `false`",
        _ => "write `true` or `false`",
    }
}
