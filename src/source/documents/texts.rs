//! The kinds of text that a guidebook holds. Reading keeps the text as it stands; the model parses it.
//!
//! The decoder is told the name of the kind: it says what is expected where no text stands, and in free text
//! (`Line`, `Markdown`) it looks for a ` #` that cuts the text short.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::Deserialize;

use crate::source::schema::spelling;

/// A kind of text, and how it is spelled for programs that hold a file against its schema.
macro_rules! kinds {
    ($($(#[doc = $doc:literal])* $name:ident: $spelling:ident;)*) => { $(
        $(#[doc = $doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
        pub struct $name(pub String);

        impl std::ops::Deref for $name {
            type Target = str;

            fn deref(&self) -> &str {
                &self.0
            }
        }

        impl JsonSchema for $name {
            fn schema_name() -> Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                let mut schema = spelling::$spelling();
                schema.insert("description".to_owned(), concat!($($doc),*).trim().into());
                schema
            }
        }
    )* };
}

kinds! {
    /// A text of one line: a title, a name, a label.
    Line: line;
    /// Free text in Markdown.
    Markdown: markdown;
    /// The id of a piece, step, tool, caution, anatomical part: lower-case words joined by hyphens.
    Id: id;
    /// The id of a procedure: its path without the ending, `pork/loin-boneless`.
    ProcedureId: procedure_id;
    /// A share of what a step takes: `5–7 %`, `0.05–0.07`, `12 %`, or `rest`.
    ShareText: share_or_rest;
    /// A weight or a range of weights: `6.5–8.0 kg`, `18 lb 10 oz`.
    MassText: mass;
    /// A temperature or a range of temperatures: `2–4 °C`, `38 °F`.
    TemperatureText: temperature;
    /// A length or a range of lengths: `20–25 mm`, `1 in`.
    LengthText: length;
    /// Minutes or a range of minutes, without a unit: `3–5`.
    MinutesText: minutes;
    /// A whole number: `2`.
    WholeText: whole;
    /// A whole number, a range of whole numbers, or `rest`: `13–17`.
    CountText: count_or_rest;
    /// A date: `2026-10-12`.
    DateText: date;
    /// One word of a fixed list, such as a use or a state.
    Word: word;
    /// The age of the animal: `under 12 months`, `12–30 months`, `over 30 months`, `unknown`.
    AgeText: age;
    /// An amount of money for a unit: `3.40 / kg`, `24.00 / h`.
    PriceText: price;
    /// A path inside the guidebook, with forward slashes.
    PathText: path;
    /// A limit as its source prints it: a temperature, minutes or hours.
    LimitText: limit;
}
