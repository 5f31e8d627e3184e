//! What texts a value may be: patterns that take every spelling of a quantity that the program reads.
//!
//! A value is the text that stands there, quoted or not, but a reader of YAML that tells numbers and truths from
//! texts hands `3` and `true` over as such; so each schema takes those too where they are a sound value. Patterns
//! keep to what every dialect of regular expressions knows. They are a little narrower than the program in what no
//! one writes: a zero with a minus sign (`-0 kg`), a range from a value to itself where one value belongs
//! (`2–2`), a range behind the slash of a price, blanks inside the quotes around a word or a date, and the bare
//! word `null` as a text, which no reader of typed YAML can tell from nothing.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use serde_json::{Value, json};

use super::words;

/// A number of 0 or more.
const NUMBER: &str = r"\+?[0-9]+(?:\.[0-9]+)?";
/// A number with or without a sign; three dashes are read as a minus.
const SIGNED: &str = r"(?:\+|[-−–]\s*)?[0-9]+(?:\.[0-9]+)?";
/// A whole number of 0 or more.
const WHOLE: &str = r"\+?[0-9]+";
/// What parts the two numbers of a range.
const TO: &str = r"\s*(?:[-–—−]| to )\s*";
/// From 0 to 100, in whole billionths of all.
const PERCENT: &str = r"\+?0*(?:[0-9]{1,2}(?:\.[0-9]{1,7}0*)?|100(?:\.0+)?)";
/// From 0 to below 1, in whole billionths.
const DECIMAL: &str = r"\+?0+(?:\.[0-9]{1,9}0*)?";
/// One time; without a unit it is minutes.
const TIME: &str = r"\+?[0-9]+(?:\.[0-9]+)?\s*(?:s|min|minutes?|h|hours?|days?)?";
/// One temperature.
const TEMPERATURE: &str = r"(?:\+|[-−–]\s*)?[0-9]+(?:\.[0-9]+)?\s*°?[CF]";
/// What an id is made of: letters and digits of any script, hyphens, underscores; no blank and no other ASCII sign.
const ID: &str = r"[^\s!-,./:-@\[-\^`{-~]+";

/// The pattern of a whole text, blanks around it allowed.
fn whole_text(inner: &str) -> String {
    format!(r"^\s*(?:{inner})\s*$")
}

/// One value or a range, the unit once or at both ends.
fn range(number: &str, unit: &str) -> String {
    format!(r"(?:{number}(?:\s*{unit})?{TO})?{number}\s*{unit}")
}

/// A range of numbers without a unit.
fn bare_range(number: &str) -> String {
    format!("(?:{number}{TO})?{number}")
}

/// Units of weight, pounds perhaps with ounces behind them.
fn mass_unit() -> String {
    format!(r"(?:kg|g|oz|lb(?:\s*{NUMBER}\s*oz)?)")
}

fn share_range() -> String {
    format!(r"(?:{PERCENT}\s*%?{TO})?{PERCENT}\s*%|{}", bare_range(DECIMAL))
}

pub(in crate::source) fn line() -> Schema {
    json_schema!({ "type": ["string", "number", "boolean"], "pattern": r"\S" })
}

pub(in crate::source) fn markdown() -> Schema {
    line()
}

pub(in crate::source) fn path() -> Schema {
    line()
}

pub(in crate::source) fn word() -> Schema {
    json_schema!({ "type": ["string", "number", "boolean"], "pattern": r"\S" })
}

pub(in crate::source) fn id() -> Schema {
    json_schema!({ "type": ["string", "integer", "boolean"], "pattern": whole_text(ID) })
}

/// An id, with those that an editor offers.
fn offered(ids: &[&str]) -> Schema {
    let mut schema = id();
    schema.insert("examples".to_owned(), ids.into());
    schema
}

/// The pattern of a key that is an id; the program trims no key.
pub(super) fn id_key() -> String {
    format!("^{ID}$")
}

pub(in crate::source) fn procedure_id() -> Schema {
    json_schema!({ "type": "string", "pattern": whole_text("[^/]+/[^/.]+"), "examples": ["pork/loin-boneless"] })
}

pub(in crate::source) fn share_or_rest() -> Schema {
    json_schema!({
        "type": ["string", "number"],
        "pattern": whole_text(&format!("rest|{}", share_range())),
        "minimum": 0,
        "exclusiveMaximum": 1,
        "examples": ["5–7 %", "0.05–0.07", "12 %", "rest"],
    })
}

pub(in crate::source) fn mass() -> Schema {
    json_schema!({
        "type": "string",
        "pattern": whole_text(&range(NUMBER, &mass_unit())),
        "examples": ["6.5–8.0 kg", "280 g", "14–18 lb", "18 lb 10 oz"],
    })
}

pub(in crate::source) fn temperature() -> Schema {
    json_schema!({
        "type": "string",
        "pattern": whole_text(&range(SIGNED, "°?[CF]")),
        "examples": ["2–4 °C", "38 °F", "-20 to -18 °C"],
    })
}

pub(in crate::source) fn length() -> Schema {
    json_schema!({
        "type": "string",
        "pattern": whole_text(&range(NUMBER, "(?:mm|cm|in)")),
        "examples": ["20–25 mm", "1 in"],
    })
}

pub(in crate::source) fn minutes() -> Schema {
    json_schema!({ "type": ["string", "number"], "pattern": whole_text(&bare_range(NUMBER)), "minimum": 0, "examples": ["1–3", 2] })
}

pub(in crate::source) fn whole() -> Schema {
    json_schema!({ "type": ["integer", "string"], "pattern": whole_text(r"\+?0*[1-9][0-9]*"), "minimum": 1 })
}

pub(in crate::source) fn count_or_rest() -> Schema {
    json_schema!({
        "type": ["integer", "string"],
        "pattern": whole_text(&format!("rest|{}", bare_range(WHOLE))),
        "minimum": 0,
        "examples": [11, "13–17", "rest"],
    })
}

pub(in crate::source) fn date() -> Schema {
    json_schema!({
        "type": "string",
        "format": "date",
        "pattern": "^[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])$",
        "examples": ["2026-10-12"],
    })
}

pub(in crate::source) fn age() -> Schema {
    json_schema!({
        "type": "string",
        "pattern": whole_text(&format!(r"unknown|(?:(?:under|over) \s*{WHOLE}|{})\s*months?", bare_range(WHOLE))),
        "examples": ["under 12 months", "12–30 months", "over 30 months", "unknown"],
    })
}

pub(in crate::source) fn price() -> Schema {
    let per = format!(r"(?:[0-9]+(?:\.[0-9]+)?\s*)?{}", mass_unit());
    json_schema!({
        "type": "string",
        "pattern": whole_text(&format!(r"{NUMBER}\s*/\s*{per}")),
        "examples": ["3.40 / kg", "1.20 / 100 g", "4.50 / lb"],
    })
}

pub(in crate::source) fn limit() -> Schema {
    json_schema!({
        "type": ["string", "number"],
        "pattern": whole_text(&format!("{TIME}|{TEMPERATURE}")),
        "minimum": 0,
        "examples": ["4 °C", "38 °F", "90 minutes", "2 h"],
    })
}

/// What a limit of a time may be, and what one of a temperature may be; a bare number is minutes.
pub(super) fn limit_values() -> (Value, Value) {
    let time = json!({ "type": ["string", "number"], "pattern": whole_text(TIME), "minimum": 0 });
    (time, json!({ "type": "string", "pattern": whole_text(TEMPERATURE) }))
}

/// Spellings that only some fields of a kind take: for `#[schemars(with = "…")]`, and never read.
macro_rules! narrower {
    ($($(#[doc = $doc:literal])* $name:ident = $schema:expr;)*) => { $(
        $(#[doc = $doc])*
        #[derive(Debug, Clone, Copy)]
        pub(in crate::source) enum $name {}

        impl JsonSchema for $name {
            fn schema_name() -> Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                let mut schema: Schema = $schema;
                schema.insert("description".to_owned(), concat!($($doc),*).trim().into());
                schema
            }
        }
    )* };
}

narrower! {
    /// True or false, quoted or not.
    Truth = json_schema!({ "type": ["boolean", "string"], "pattern": whole_text("true|false") });
    /// A share of the whole, never `rest`: `5–7 %`, `0.05–0.07`, `12 %`.
    ShareOfWhole = json_schema!({
        "type": ["string", "number"],
        "pattern": whole_text(&share_range()),
        "minimum": 0,
        "exclusiveMaximum": 1,
        "examples": ["5–7 %", "0.05–0.07", "12 %"],
    });
    /// One share, not a range: `6 %`, `0.06`.
    OneShare = json_schema!({
        "type": ["string", "number"],
        "pattern": whole_text(&format!(r"{PERCENT}\s*%|{DECIMAL}")),
        "minimum": 0,
        "exclusiveMaximum": 1,
        "examples": ["6 %", 0.06],
    });
    /// One weight, not a range: `1.8 kg`, `18 lb 10 oz`.
    OneWeight = json_schema!({
        "type": "string",
        "pattern": whole_text(&format!(r"{NUMBER}\s*{}", mass_unit())),
        "examples": ["1.8 kg", "18 lb 10 oz"],
    });
    /// A whole number or a range of whole numbers: `11`, `13–17`.
    Count = json_schema!({
        "type": ["integer", "string"],
        "pattern": whole_text(&bare_range(WHOLE)),
        "minimum": 0,
        "examples": [11, "13–17"],
    });
    /// An amount of money for an hour of work: `24.00 / h`.
    PriceOfWork = json_schema!({
        "type": "string",
        "pattern": whole_text(&format!(r"{NUMBER}\s*/\s*h")),
        "examples": ["24.00 / h"],
    });
    /// The id of a species: a built-in one, or one of the guidebook.
    SpeciesId = offered(words::SPECIES);
    /// The id of a tool: a built-in one, or one of `tools.yaml`.
    ToolId = offered(words::TOOLS);
    /// The id of a caution: a built-in one, or one of `cautions.yaml`.
    CautionId = offered(words::CAUTIONS);
    /// The id of a built-in protection.
    WearId = json_schema!({ "type": "string", "enum": words::WEAR });
    /// A code of a language, perhaps with a script or a region: `en`, `pt-BR`.
    LanguageCode = json_schema!({
        "type": "string",
        "pattern": "^[a-z]{2,3}(?:-[A-Z][a-z]{3})?(?:-(?:[A-Z]{2}|[0-9]{3}))?$",
        "examples": ["en", "es", "pt-BR"],
    });
    /// A path inside the guidebook, with forward slashes: `pictures/loin.svg`.
    InnerPath = json_schema!({
        "type": "string",
        "pattern": r"^\s*[^/\\:\s][^\\:]*$",
        "not": { "pattern": r"^\s*(?:\./)*\.\.(?:/|\s*$)" },
        "examples": ["pictures/loin.svg"],
    });
    /// A point on a picture: parts of its width and of its height, each from 0 to 1.
    Point = json_schema!({
        "type": "array",
        "items": {
            "type": ["number", "string"],
            "pattern": whole_text(r"\+?(?:0*1(?:\.0*)?|0+(?:\.[0-9]*)?|\.[0-9]+)"),
            "minimum": 0,
            "maximum": 1,
        },
        "minItems": 2,
        "maxItems": 2,
        "examples": [[0.12, 0.40]],
    });
}
