//! What one key of a mapping demands of another, and what the keys of free mappings may be.
//!
//! Each rule stands in the guidebook format; here it is only said in the words of JSON Schema.

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde_json::{Value, json};

use super::{spelling, words};
use crate::source::documents::others::{AnatomyEntry, AnatomyPart, TradeName};
use crate::source::documents::procedure::{LongOutput, Output};
use crate::source::documents::shared::{AnyOf, OneOrMany, ToolChoice};
use crate::source::documents::texts::{Id, Line, ShareText};
use crate::source::field::{Entries, Required};

/// Keys that are ids.
pub(in crate::source) fn names() -> Value {
    json!({ "pattern": spelling::id_key() })
}

/// Keys that are ids of pieces.
pub(in crate::source) fn piece_names() -> Value {
    json!({ "pattern": spelling::id_key(), "not": reserved() })
}

/// Keys that are ids of pieces, or `loss`.
pub(in crate::source) fn piece_names_and_loss() -> Value {
    let reserved: Vec<&str> = words::RESERVED.iter().copied().filter(|name| *name != "loss").collect();
    json!({ "pattern": spelling::id_key(), "not": { "enum": reserved } })
}

/// Values that no piece can be called by.
pub(in crate::source) fn reserved() -> Value {
    json!({ "enum": words::RESERVED })
}

/// `steps` or `yields`, or both; beside steps no yield is `rest`, and without them some yield is a piece's.
pub(in crate::source) fn procedure(schema: &mut Schema) {
    schema.insert("anyOf".to_owned(), json!([{ "required": ["steps"] }, { "required": ["yields"] }]));
    let rest = json!({ "type": "string", "pattern": r"^\s*rest\s*$" });
    let rules = json!({
        "if": { "required": ["steps"] },
        "then": { "properties": { "yields": { "additionalProperties": { "not": rest } } } },
        "else": { "properties": { "yields": { "minProperties": 1, "not": { "required": ["loss"], "maxProperties": 1 } } } },
    });
    if let Value::Object(rules) = rules {
        schema.ensure_object().extend(rules);
    }
}

/// A revision in force names who approved it and when it is looked at again; from number 2 on one says what changed.
pub(in crate::source) fn revision(schema: &mut Schema) {
    let later = json!({ "anyOf": [
        { "type": "integer", "minimum": 2 },
        { "type": "string", "pattern": r"^\s*\+?0*(?:[2-9][0-9]*|1[0-9]+)\s*$" },
    ] });
    let rules = json!([
        {
            "if": { "required": ["state"], "properties": { "state": { "enum": ["draft", "withdrawn"] } } },
            "else": { "required": ["approved-by", "review-by"] },
        },
        {
            "if": { "required": ["number"], "properties": { "number": later } },
            "then": { "required": ["change"] },
        },
    ]);
    schema.insert("allOf".to_owned(), rules);
}

/// A limit of time takes a time, the others a temperature.
pub(in crate::source) fn stricter(schema: &mut Schema) {
    let (time, temperature) = spelling::limit_values();
    let (times, temperatures): (Vec<&str>, Vec<&str>) = words::LIMIT.iter().partition(|limit| words::LIMIT_OF_TIME.contains(limit));
    let of = |limits: Vec<&str>, value: Value| {
        json!({
            "if": { "required": ["limit"], "properties": { "limit": { "enum": limits } } },
            "then": { "properties": { "at-most": value } },
        })
    };
    schema.insert("allOf".to_owned(), json!([of(times, time), of(temperatures, temperature)]));
}

/// The signal word goes with the harm.
pub(in crate::source) fn caution(schema: &mut Schema) {
    let rule = |(harm, signals): &(&str, &[&str])| {
        json!({
            "if": { "required": ["harm"], "properties": { "harm": { "const": harm } } },
            "then": { "properties": { "signal": { "enum": signals } } },
        })
    };
    schema.insert("allOf".to_owned(), words::SIGNALS_FOR.iter().map(rule).collect::<Vec<_>>().into());
}

/// Portions are cut to a weight or to a thickness.
pub(in crate::source) fn portions(schema: &mut Schema) {
    schema.insert("oneOf".to_owned(), json!([{ "required": ["weight"] }, { "required": ["thickness"] }]));
}

/// A value of one kind or another: each is told by how it stands there.
macro_rules! either {
    ($($(#[doc = $doc:literal])* $name:ident: $($kind:ty),+;)*) => { $(
        impl JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(generator: &mut SchemaGenerator) -> Schema {
                let kinds = [$(generator.subschema_for::<$kind>()),+];
                schemars::json_schema!({ "description": concat!($($doc),*).trim(), "anyOf": kinds })
            }
        }
    )* };
}

either! {
    /// An id, or a list of ids.
    OneOrMany: Id, Vec<Required<Id>>;
    /// A tool, or a choice of tools: `{ any-of: [ids] }`.
    ToolChoice: spelling::ToolId, AnyOf;
    /// A share such as `5–7 %`, or the long form.
    Output: ShareText, LongOutput;
    /// A name, or `{ name: region }`.
    TradeName: Line, Entries<Line>;
}

impl JsonSchema for AnatomyEntry {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        AnatomyPart::schema_name()
    }

    /// A part; `like`, which is no part, has its own schema beside them.
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        generator.subschema_for::<AnatomyPart>()
    }
}
