//! The keys of a mapping: which are known, doubled, unknown or missing, and which word was likely meant.

use std::collections::BTreeMap;

use super::Sink;
use super::commas;
use super::slot::{Content, Slot};
use super::words;
use crate::finding::{Finding, Span};
use crate::source::traps;
use crate::source::yaml::{Kind, Node};

/// The slots of a mapping whose keys are fixed: those that stand there, then one for each that does not.
pub(super) fn fields<'de, 's>(
    pairs: &'de [(Node, Node)],
    mapping: &Node,
    noun: &'static str,
    fields: &'static [&'static str],
    sink: &'s Sink,
) -> Vec<Slot<'de, 's>> {
    let present: Vec<&str> = pairs.iter().filter_map(|(key, _)| plain_word(key)).collect();
    let absent: Vec<&'static str> = fields.iter().copied().filter(|field| !present.contains(field)).collect();
    let mut slots: Vec<Slot<'de, 's>> = Vec::with_capacity(fields.len());
    // Absent keys that an unknown key was meant for, where that key stands, and what is read for it.
    let mut meant: Vec<(&'static str, Span, Content<'de>)> = Vec::new();
    // A merge key brings keys in that can't be seen; it has been refused, and what it brings is not missing.
    let mut merged = false;
    let mut before: Option<&Node> = None;
    for (key, value, content) in whole_numbers(pairs, sink) {
        let Some(word) = key_word(key, value, sink) else { continue };
        let slot = Slot { content, key: Some(key.span), name: word, parent: noun, sink };
        if word == "<<" && matches!(value.kind, Kind::Broken) {
            merged = true;
        } else if let Some(first) = slots.iter().find(|slot| slot.name == word) {
            doubled(word, key.span, first.key, sink);
        } else if fields.contains(&word) {
            slots.push(slot);
        } else {
            let guess = words::meant_key(word, fields, &absent);
            if let Some(field) = guess.filter(|field| absent.contains(field)) {
                // The same word in another dress leaves no doubt, so that its value is read all the same.
                let content = if words::plain_dress(word) == field { slot.content } else { Content::Broken(value.span) };
                meant.push((field, key.span, content));
            }
            sink.push(unknown(&slot, value, before, guess, fields));
        }
        before = Some(value);
    }
    let place = first_line(pairs, mapping);
    for field in absent {
        let found = meant.iter().find(|(name, ..)| *name == field);
        let (content, key) = match found {
            Some((_, key, content)) => (*content, *key),
            None if merged => (Content::Broken(place), place),
            None => (Content::Absent(place), place),
        };
        slots.push(Slot { content, key: Some(key), name: field, parent: noun, sink });
    }
    slots
}

/// The slots of a mapping whose keys the author chooses.
pub(super) fn entries<'de, 's>(pairs: &'de [(Node, Node)], of: Slot<'de, 's>) -> Vec<Slot<'de, 's>> {
    let mut slots: Vec<Slot<'de, 's>> = Vec::with_capacity(pairs.len());
    let mut seen: BTreeMap<&str, Span> = BTreeMap::new();
    for (key, value, content) in whole_numbers(pairs, of.sink) {
        let Some(word) = key_word(key, value, of.sink) else { continue };
        if word == "<<" && matches!(value.kind, Kind::Broken) {
            continue;
        }
        if let Some(first) = seen.get(word) {
            doubled(word, key.span, Some(*first), of.sink);
            continue;
        }
        seen.insert(word, key.span);
        slots.push(Slot { content, key: Some(key.span), name: word, parent: of.parent, sink: of.sink });
    }
    slots
}

/// The pairs of a mapping; a number that commas have cut into several is reported and handed over once, as broken.
fn whole_numbers<'de>(pairs: &'de [(Node, Node)], sink: &Sink) -> Vec<(&'de Node, &'de Node, Content<'de>)> {
    let mut whole = Vec::with_capacity(pairs.len());
    let mut parts = 0;
    for (at, (key, value)) in pairs.iter().enumerate() {
        if parts > 0 {
            parts -= 1;
            continue;
        }
        parts = commas::rest_of_number(pairs, at);
        if parts > 0 {
            commas::tell(pairs, at, parts, sink);
        }
        whole.push((key, value, if parts > 0 { Content::Broken(value.span) } else { Content::Node(value) }));
    }
    whole
}

fn plain_word(key: &Node) -> Option<&str> {
    match &key.kind {
        Kind::Text { text, .. } => Some(text),
        _ => None,
    }
}

/// The key as a word; what is no word is reported.
fn key_word<'de>(key: &'de Node, value: &Node, sink: &Sink) -> Option<&'de str> {
    if matches!(key.kind, Kind::Broken) {
        return None;
    }
    match plain_word(key) {
        Some(word) if !word.trim().is_empty() => Some(word),
        Some(_) => {
            let place = sink.place(if key.is_nothing() { value.span } else { key.span });
            sink.push(Finding::fault("wrong-kind", place, "a key is missing before the colon").help("write the key before its colon"));
            None
        }
        None => {
            let message = format!("a key is a word, and here stands {}", words::kind_of(key));
            let help = "write a word as the key; a text that begins with a bracket is quoted";
            sink.push(Finding::fault("wrong-kind", sink.place(words::first_line(key)), message).help(help));
            None
        }
    }
}

fn doubled(word: &str, second: Span, first: Option<Span>, sink: &Sink) {
    let finding = Finding::fault("doubled-key", sink.place(second), format!("`{}` stands here twice", words::shown(word)))
        .help("keep one of the two, or give one another name");
    sink.push(match first {
        Some(first) => finding.also(sink.place(first), "it stands here first"),
        None => finding,
    });
}

fn unknown(slot: &Slot<'_, '_>, value: &Node, before: Option<&Node>, guess: Option<&str>, fields: &'static [&'static str]) -> Finding {
    let place = slot.sink.place(slot.key.unwrap_or(value.span));
    let word = slot.name;
    if let Some((key, rest)) = word.split_once(':').filter(|(key, rest)| fields.contains(key) && !rest.is_empty()) {
        return traps::space_missing(place, ":", &format!("{key}:{rest}"));
    }
    // In a flow mapping, `{ alt: Leg folded, joint open }` makes a key of what stands after the comma.
    let cut = before.filter(|before| word.contains(' ') && matches!(before.kind, Kind::Text { plain: true, .. }));
    if let Some(text) = cut.filter(|_| value.is_nothing()) {
        return Finding::fault("comma-in-text", place, "a comma between braces ends a text, and this is read as a key")
            .also(slot.sink.place(text.span), "the text ends here")
            .help("put the whole text in quotes");
    }
    let message = format!("{} has no key `{}`", slot.parent, words::shown(word));
    let help = guess.map_or_else(|| format!("keys that go here: {}", words::nearest_keys(word, fields)), |key| format!("write `{key}`"));
    Finding::fault("unknown-key", place, message).help(help)
}

/// The first line of a mapping: its first key; for a flow mapping, its brace.
fn first_line(pairs: &[(Node, Node)], mapping: &Node) -> Span {
    match pairs.first() {
        Some((key, _)) if key.span.start == mapping.span.start => key.span,
        _ => Span::new(mapping.span.start, (mapping.span.start + 1).min(mapping.span.end.max(mapping.span.start))),
    }
}
