//! JSON Schemas (draft 2020-12) of the documents, for editors and other programs: made of the same types that read them.
//!
//! The types say what keys there are and which must be there; `spelling` says what texts a value may be, `rules`
//! what one key demands of another. A schema sees one file and no sum, so it knows only part of what `inspect`
//! finds; but what it refuses, `inspect` refuses too. This file reads no document.

mod field;
pub(super) mod rules;
pub(super) mod spelling;
pub mod words;

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde_json::{Map, Value, json};

use super::documents::guidebook::Guidebook;
use super::documents::others::{AnatomyEntry, Caution, Course, Cut, Prices, Tool};
use super::documents::procedure::Procedure;
use super::field::Entries;

/// A kind of document that has a schema.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// `guidebook.yaml`.
    Guidebook,
    /// `<species>/<name>.yaml`.
    Procedure,
    /// `cuts/<species>.yaml`.
    Cuts,
    /// `anatomy/<species>.yaml`.
    Anatomy,
    /// `cautions.yaml`.
    Cautions,
    /// `tools.yaml`.
    Tools,
    /// `courses/<name>.yaml`.
    Course,
    /// `prices.yaml`.
    Prices,
}

impl Kind {
    /// All kinds, in the order of the format.
    pub const ALL: &'static [Self] =
        &[Self::Guidebook, Self::Procedure, Self::Cuts, Self::Anatomy, Self::Cautions, Self::Tools, Self::Course, Self::Prices];

    /// The kind as a word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Guidebook => "guidebook",
            Self::Procedure => "procedure",
            Self::Cuts => "cuts",
            Self::Anatomy => "anatomy",
            Self::Cautions => "cautions",
            Self::Tools => "tools",
            Self::Course => "course",
            Self::Prices => "prices",
        }
    }

    /// The kind of the document at a path of the guidebook; `None` where no schema is for it.
    #[must_use]
    pub fn of_path(path: &str) -> Option<Self> {
        use super::layout::{Role, role};
        match role(path, None) {
            Role::Guidebook => Some(Self::Guidebook),
            Role::Procedure => Some(Self::Procedure),
            Role::Cuts => Some(Self::Cuts),
            Role::Anatomy => Some(Self::Anatomy),
            Role::Cautions => Some(Self::Cautions),
            Role::Tools => Some(Self::Tools),
            Role::Course => Some(Self::Course),
            Role::Prices => Some(Self::Prices),
            _ => None,
        }
    }

    /// The name of the schema's file, which is also its `$id`.
    #[must_use]
    pub fn file_name(self) -> String {
        format!("{}.schema.json", self.word())
    }

    const fn about(self) -> (&'static str, &'static str) {
        match self {
            Self::Guidebook => ("Guidebook", "`guidebook.yaml`: what the whole guidebook states of itself."),
            Self::Procedure => ("Procedure", "`<species>/<name>.yaml`: how one piece is cut into others."),
            Self::Cuts => ("Cut list", "`cuts/<species>.yaml`: the pieces of a species by their ids, with their trade names."),
            Self::Anatomy => {
                ("Anatomy", "`anatomy/<species>.yaml`: bones, muscles, tissues and glands beyond the built-in ones, by their ids.")
            }
            Self::Cautions => ("Cautions", "`cautions.yaml`: the shop's own cautions, by their ids."),
            Self::Tools => ("Tools", "`tools.yaml`: the shop's own tools, by their ids, and what they demand beyond the built-in demands."),
            Self::Course => ("Course", "`courses/<name>.yaml`: lessons in order."),
            Self::Prices => ("Prices", "`prices.yaml`: what pieces cost, are credited at and sell for."),
        }
    }
}

/// The schema of a kind of document, indented, with a line break at the end. The same for every guidebook.
#[must_use]
pub fn render(kind: Kind) -> String {
    // A tree of texts, numbers and lists always makes sound JSON; nothing is left to fail.
    let mut text = serde_json::to_string_pretty(&schema(kind)).unwrap_or_default();
    text.push('\n');
    text
}

/// The schema of a kind of document.
#[must_use]
pub fn schema(kind: Kind) -> Value {
    let mut root = match kind {
        Kind::Guidebook => generated::<Guidebook>(),
        Kind::Procedure => generated::<Procedure>(),
        Kind::Cuts => list(generated::<Entries<Cut>>(), rules::piece_names()),
        Kind::Anatomy => anatomy(),
        Kind::Cautions => list(generated::<Entries<Caution>>(), rules::names()),
        Kind::Tools => list(generated::<Entries<Tool>>(), rules::names()),
        Kind::Course => generated::<Course>(),
        Kind::Prices => generated::<Prices>(),
    };
    let (title, about) = kind.about();
    root.insert("$id".to_owned(), json!(kind.file_name()));
    root.insert("title".to_owned(), json!(title));
    root.insert("description".to_owned(), json!(about));
    Value::Object(root)
}

fn generated<T: JsonSchema>() -> Map<String, Value> {
    let schema = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<T>();
    match schema.to_value() {
        Value::Object(mut root) => {
            field::settle(&mut root);
            root
        }
        // A schema that is no mapping is `true` or `false`, and none of the documents takes anything or nothing.
        _ => Map::new(),
    }
}

/// A list by ids. One may keep it with nothing in it yet.
fn list(mut root: Map<String, Value>, names: Value) -> Map<String, Value> {
    root.insert("type".to_owned(), json!(["object", "null"]));
    root.insert("propertyNames".to_owned(), names);
    root
}

/// Parts by their ids, and under `like` the group whose anatomy holds here too.
fn anatomy() -> Map<String, Value> {
    let mut root = list(generated::<Entries<AnatomyEntry>>(), rules::names());
    let about = "The built-in group whose anatomy this species shares.";
    root.insert("properties".to_owned(), json!({ "like": { "description": about, "enum": words::GROUPS } }));
    root
}
