//! The words of the interface, from Fluent files of the theme.
//!
//! A word that is missing or cannot be formed is an error; `check` finds all that are missing when a theme is loaded.

use std::collections::BTreeMap;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

use super::theme_error::ThemeError;

/// The words of one language.
pub(super) struct Words {
    file: String,
    bundle: FluentBundle<FluentResource>,
    /// Words without arguments, formed once.
    fixed: BTreeMap<String, String>,
}

impl Words {
    /// Reads a file of words. `file` is named in errors.
    pub(super) fn read(file: &str, language: &str, text: &str) -> Result<Self, ThemeError> {
        let resource = FluentResource::try_new(text.to_owned()).map_err(|(_, errors)| {
            let error = errors.first();
            let at = error.map_or(0, |error| error.pos.start);
            let what = error.map_or_else(String::new, |error| error.kind.to_string());
            ThemeError::at(file, text, at, format!("words that cannot be read: {what}"))
        })?;
        let language: LanguageIdentifier =
            language.parse().map_err(|_| ThemeError::new(format!("`{language}` is no language; write it as in `en` or `es`")))?;
        let ids: Vec<&str> = text.lines().filter_map(message_id).collect();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        // Marks of direction around each value would stand in the text of the page; all values here run with it.
        bundle.set_use_isolating(false);
        bundle
            .add_resource(resource)
            .map_err(|errors| ThemeError::new(format!("{file}: {}", errors.first().map_or_else(String::new, ToString::to_string))))?;
        let mut words = Self { file: file.to_owned(), bundle, fixed: BTreeMap::new() };
        for id in ids {
            if let Ok(text) = words.form(id, None) {
                words.fixed.insert(id.to_owned(), text);
            }
        }
        Ok(words)
    }

    /// True when there is such a word, with or without arguments.
    pub(super) fn has(&self, id: &str) -> bool {
        self.bundle.get_message(id).is_some_and(|message| message.value().is_some())
    }

    /// A word without arguments.
    pub(super) fn plain(&self, id: &str) -> Result<&str, ThemeError> {
        self.fixed.get(id).map(String::as_str).ok_or_else(|| self.missing(id))
    }

    /// A word with arguments.
    pub(super) fn with(&self, id: &str, arguments: &[(&str, FluentValue<'_>)]) -> Result<String, ThemeError> {
        let mut all = FluentArgs::with_capacity(arguments.len());
        for (name, value) in arguments {
            all.set(*name, value.clone());
        }
        self.form(id, Some(&all))
    }

    fn form(&self, id: &str, arguments: Option<&FluentArgs<'_>>) -> Result<String, ThemeError> {
        let pattern = self.bundle.get_message(id).and_then(|message| message.value()).ok_or_else(|| self.missing(id))?;
        let mut errors = Vec::new();
        let text = self.bundle.format_pattern(pattern, arguments, &mut errors).into_owned();
        match errors.first() {
            None => Ok(text),
            Some(error) => Err(ThemeError::new(format!("{}: the word `{id}` cannot be formed: {error}", self.file))),
        }
    }

    fn missing(&self, id: &str) -> ThemeError {
        ThemeError::new(format!("{}: the word `{id}` is missing; add a line `{id} = …`", self.file))
    }
}

/// The id of a message that begins on this line.
fn message_id(line: &str) -> Option<&str> {
    let id = line.split_once('=')?.0.trim_end();
    let sound = id.starts_with(|c: char| c.is_ascii_alphabetic()) && id.chars().all(|c| c.is_ascii_alphanumeric() || c == '-' || c == '_');
    sound.then_some(id)
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "steps = Steps\npieces = { $n ->\n    [one] { $n } piece\n   *[other] { $n } pieces\n}\n";

    #[test]
    fn words_know_one_and_many() {
        let words = Words::read("en.ftl", "en", TEXT).unwrap();
        assert_eq!(words.plain("steps").unwrap(), "Steps");
        assert_eq!(words.with("pieces", &[("n", 1.into())]).unwrap(), "1 piece");
        assert_eq!(words.with("pieces", &[("n", 3.into())]).unwrap(), "3 pieces");
    }

    #[test]
    fn a_missing_word_says_which_and_where() {
        let words = Words::read("words/en.ftl", "en", TEXT).unwrap();
        assert_eq!(words.plain("stepps").unwrap_err().to_string(), "words/en.ftl: the word `stepps` is missing; add a line `stepps = …`");
        assert!(words.with("pieces", &[]).unwrap_err().to_string().contains("`pieces` cannot be formed"));
    }

    #[test]
    fn a_broken_file_says_where() {
        let error = Words::read("words/en.ftl", "en", "good = fine\nbad = { $n ->\n").err().unwrap().to_string();
        assert!(error.starts_with("words/en.ftl:"), "{error}");
    }
}
