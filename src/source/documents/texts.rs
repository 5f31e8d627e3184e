//! The kinds of text that a guidebook holds. Reading keeps the text as it stands; the model parses it.
//!
//! The decoder is told the name of the kind: it says what is expected where no text stands, and in free text
//! (`Line`, `Markdown`) it looks for a ` #` that cuts the text short.

use serde::Deserialize;

macro_rules! kinds {
    ($($(#[$doc:meta])* $name:ident;)*) => { $(
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
        pub struct $name(pub String);

        impl std::ops::Deref for $name {
            type Target = str;

            fn deref(&self) -> &str {
                &self.0
            }
        }
    )* };
}

kinds! {
    /// A text of one line: a title, a name, a label.
    Line;
    /// Free text in Markdown.
    Markdown;
    /// The id of a piece, step, tool, caution, anatomical part: lower-case words joined by hyphens.
    Id;
    /// The id of a procedure: its path without the ending, `pork/loin-boneless`.
    ProcedureId;
    /// A share of what a step takes: `5–7 %`, `0.05–0.07`, `12 %`, or `rest`.
    ShareText;
    /// A weight or a range of weights: `6.5–8.0 kg`, `18 lb 10 oz`.
    MassText;
    /// A temperature or a range of temperatures: `2–4 °C`, `38 °F`.
    TemperatureText;
    /// A length or a range of lengths: `20–25 mm`, `1 in`.
    LengthText;
    /// Minutes or a range of minutes, without a unit: `3–5`.
    MinutesText;
    /// A whole number: `2`.
    WholeText;
    /// A whole number, a range of whole numbers, or `rest`: `13–17`.
    CountText;
    /// A date: `2026-10-12`.
    DateText;
    /// One word of a fixed list, such as a use or a state.
    Word;
    /// The age of the animal: `under 12 months`, `12–30 months`, `over 30 months`, `unknown`.
    AgeText;
    /// An amount of money for a unit: `3.40 / kg`, `24.00 / h`.
    PriceText;
    /// A path inside the guidebook, with forward slashes.
    PathText;
    /// A limit as its source prints it: a temperature, minutes or hours.
    LimitText;
}
