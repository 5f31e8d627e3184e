//! One place for a value: what stands there, under which key, and the serde decoder over it.

use serde::de::value::StrDeserializer;
use serde::de::{Deserializer, Visitor};
use serde::forward_to_deserialize_any;

use super::access::{EntryAccess, FieldAccess, ItemAccess, KindAccess};
use super::keys;
use super::words::{self, kind_of};
use super::{Mistake, Sink};
use crate::finding::{Finding, Span};
use crate::source::field::{ENTRIES, OPTIONAL, REQUIRED};
use crate::source::traps;
use crate::source::yaml::{Comment, Kind, Node};

/// What stands in a slot.
#[derive(Clone, Copy)]
pub(super) enum Content<'de> {
    /// This.
    Node(&'de Node),
    /// Nothing: the mapping that stands at this place lacks the key.
    Absent(Span),
    /// Something that a finding has told about already.
    Broken(Span),
}

/// A place for a value.
#[derive(Clone, Copy)]
pub(super) struct Slot<'de, 's> {
    pub(super) content: Content<'de>,
    /// The key; `None` for an item of a list and for the document itself.
    pub(super) key: Option<Span>,
    /// The key as a word; of an item, that of its list; empty for the document itself.
    pub(super) name: &'de str,
    /// What the mapping is that holds the slot: `a step`.
    pub(super) parent: &'static str,
    pub(super) sink: &'s Sink,
}

impl<'de> Slot<'de, '_> {
    /// The node, unless nothing readable stands here.
    pub(super) fn node(&self) -> Result<&'de Node, Mistake> {
        match self.content {
            Content::Node(node) if matches!(node.kind, Kind::Broken) => Err(Mistake::Told),
            Content::Node(node) => Ok(node),
            Content::Absent(span) => Err(self.missing(span)),
            Content::Broken(_) => Err(Mistake::Told),
        }
    }

    /// The node, unless nothing stands here: an empty value is a mistake of its own.
    pub(super) fn filled(&self) -> Result<&'de Node, Mistake> {
        let node = self.node()?;
        match &node.kind {
            Kind::Text { text, .. } if text.trim().is_empty() => Err(self.empty(node)),
            _ => Ok(node),
        }
    }

    pub(super) fn missing(&self, span: Span) -> Mistake {
        let message = format!("`{}` is missing from {}", self.name, self.parent);
        Finding::fault("missing-key", self.sink.place(span), message).help(format!("add `{}:` here", self.name)).into()
    }

    fn empty(&self, node: &Node) -> Mistake {
        // Where nothing at all stands, the key is what can be shown.
        let span = if node.is_nothing() { self.key.unwrap_or(node.span) } else { node.span };
        let (message, help) = match (self.name, self.key) {
            ("", _) => ("nothing stands in this file".to_owned(), "write it, or delete the file"),
            (list, None) => (format!("an item of `{list}` is empty"), "write it, or take its dash away"),
            (key, Some(_)) => (format!("nothing stands after `{}`", words::shown(key)), "write its value, or take the key away"),
        };
        Finding::fault("empty-value", self.sink.place(span), message).help(help).into()
    }

    /// The finding for a value of another kind than expected.
    pub(super) fn wrong_kind(&self, node: &Node, expected: &str) -> Finding {
        let subject = match (self.name.is_empty(), self.key.is_some()) {
            (true, _) => "this file".to_owned(),
            (false, true) => format!("`{}`", self.name),
            (false, false) => format!("an item of `{}`", self.name),
        };
        let span = words::first_line(node);
        let message = format!("{subject} takes {expected}, and here stands {}", kind_of(node));
        Finding::fault("wrong-kind", self.sink.place(span), message)
    }

    /// The text that stands here, for a value of the named kind.
    fn text(&self, kind: &'static str) -> Result<&'de str, Mistake> {
        let node = self.filled()?;
        match &node.kind {
            Kind::Text { text, comment, .. } => {
                if let Some(comment) = comment.filter(|_| words::is_free(kind)) {
                    self.look_for_cut(node, comment);
                }
                // A block text ends with a line break, which is no part of a title or a figure.
                Ok(if kind == "Markdown" { text } else { text.trim_end_matches(['\n', '\r']) })
            }
            Kind::Mapping(pairs) if self.key.is_none() && words::is_split_text(node, pairs) => {
                Err(traps::colon_in_text(self.sink.place(node.span)).into())
            }
            _ => Err(self.wrong_kind(node, words::expected_text(kind)).into()),
        }
    }

    /// A comment after a free text may be the rest of the text, which is lost. One blank before the `#` is how a text
    /// goes on; two or more are how a comment is set apart, unless a number follows as in `#3`.
    fn look_for_cut(&self, node: &Node, comment: Comment) {
        let place = self.sink.place(Span::new(node.span.start, comment.end));
        match (comment.blanks, comment.numbered) {
            (1, _) => self.sink.push(traps::hash_cuts_text(place)),
            (_, true) => self.sink.push(
                Finding::advice("hash-after-text", place, "the number after `#` is read as a comment, and may be the rest of the text")
                    .help("put the whole text in quotes, or put a space after the `#` of a comment"),
            ),
            (_, false) => {}
        }
    }
}

impl<'de> Deserializer<'de> for Slot<'de, '_> {
    type Error = Mistake;

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, Mistake> {
        match name {
            REQUIRED | OPTIONAL => visitor.visit_seq(FieldAccess::new(self, name == REQUIRED)),
            ENTRIES => {
                let node = self.filled()?;
                let Kind::Mapping(pairs) = &node.kind else {
                    let help = "write `name: value` lines below the key, indented";
                    return Err(self.wrong_kind(node, "a mapping").help(help).into());
                };
                visitor.visit_map(EntryAccess::new(keys::entries(pairs, self)))
            }
            _ => visitor.visit_newtype_struct(StrDeserializer::new(self.text(name)?)),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Mistake> {
        let node = self.filled()?;
        let Kind::Mapping(pairs) = &node.kind else {
            let help = format!("write its keys below, indented: {}", words::first_keys(fields));
            return Err(self.wrong_kind(node, "a mapping").help(help).into());
        };
        visitor.visit_map(EntryAccess::new(keys::fields(pairs, node, words::noun(name), fields, self.sink)))
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Mistake> {
        let node = self.filled()?;
        let Kind::List(items) = &node.kind else {
            return Err(words::list_wanted(&self, node).into());
        };
        visitor.visit_seq(ItemAccess::new(items.iter(), self))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Mistake> {
        let node = self.filled()?;
        let kind = match &node.kind {
            Kind::List(_) => "list",
            Kind::Mapping(_) => "mapping",
            _ => "text",
        };
        if variants.contains(&kind) {
            visitor.visit_enum(KindAccess { kind, slot: self })
        } else {
            Err(self.wrong_kind(node, &words::either(name, variants)).into())
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Mistake> {
        let node = self.filled()?;
        match &node.kind {
            Kind::Text { text, .. } => match text.trim() {
                "true" => visitor.visit_bool(true),
                "false" => visitor.visit_bool(false),
                other => {
                    let message = format!("`{}` takes `true` or `false`, and here stands `{}`", self.name, words::shown(other));
                    let help = words::true_or_false(other);
                    Err(Finding::fault("not-true-or-false", self.sink.place(node.span), message).help(help).into())
                }
            },
            _ => Err(self.wrong_kind(node, "`true` or `false`").into()),
        }
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Mistake> {
        visitor.visit_borrowed_str(self.text("")?)
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Mistake> {
        self.deserialize_str(visitor)
    }

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Mistake> {
        self.deserialize_str(visitor)
    }

    forward_to_deserialize_any! {
        i8 i16 i32 i64 u8 u16 u32 u64 f32 f64 char bytes byte_buf option unit unit_struct tuple tuple_struct map identifier ignored_any
    }
}
