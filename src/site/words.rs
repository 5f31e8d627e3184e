//! The words of the interface, from Fluent files of the theme, one over the other.
//!
//! A word that is missing or cannot be formed is an error, and so is one of a theme's own that asks for a value which it is
//! never given; a file of words over another needs only the words that it changes.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

use super::theme::WordFile;
use super::theme_error::ThemeError;

/// The words of one language.
pub(super) struct Words {
    file: String,
    bundle: FluentBundle<FluentResource>,
    /// Words without arguments, formed once.
    fixed: BTreeMap<String, String>,
}

impl Words {
    /// Reads files of words, a later one over the earlier ones; the last is named in errors and gives the language.
    pub(super) fn read(files: &[WordFile<'_>]) -> Result<Self, Vec<ThemeError>> {
        let last = files.last().ok_or_else(|| vec![ThemeError::new("the theme has no `words/en.ftl`")])?;
        let language: LanguageIdentifier = last.language.parse().map_err(|_| {
            vec![ThemeError::new(format!("`{}` is no language; write it as in `en` or `es`", last.language)).at_file(&last.path)]
        })?;
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        // Marks of direction around each value would stand in the text of the page; all values here run with it.
        bundle.set_use_isolating(false);
        let mut errors = Vec::new();
        for file in files {
            match FluentResource::try_new(file.text.to_owned()) {
                Ok(resource) => bundle.add_resource_overriding(resource),
                Err((_, wrong)) => errors.extend(wrong.iter().map(|error| unreadable(file, error.pos.start, &error.kind.to_string()))),
            }
            errors.extend(twice(file));
        }
        if !errors.is_empty() {
            return Err(errors);
        }
        let mut words = Self { file: last.path.clone(), bundle, fixed: BTreeMap::new() };
        for file in files {
            for (id, _) in messages(file.text) {
                if let Ok(text) = words.form(id, None) {
                    words.fixed.insert(id.to_owned(), text);
                }
            }
        }
        let errors = words.without_their_values(files);
        if errors.is_empty() { Ok(words) } else { Err(errors) }
    }

    /// Words of a theme's own that cannot be formed with the values that the same word of `paper` gets.
    fn without_their_values(&self, files: &[WordFile<'_>]) -> Vec<ThemeError> {
        let mut errors = Vec::new();
        for file in files.iter().filter(|file| file.own) {
            for (id, at) in messages(file.text) {
                let Some(known) = files.iter().find(|other| !other.own && messages(other.text).any(|(known, _)| known == id)) else {
                    continue;
                };
                let given = values(known.text, id);
                let mut arguments = FluentArgs::new();
                for value in &given {
                    arguments.set(*value, FluentValue::from(1));
                }
                let alone: Vec<&str> = values(file.text, id).difference(&given).copied().collect();
                let message = match (alone.first(), self.form(id, Some(&arguments))) {
                    (Some(value), _) => format!("the word `{id}` asks for `${value}`, which it is not given"),
                    (None, Err(error)) => error.message,
                    (None, Ok(_)) => continue,
                };
                let gets: Vec<String> = given.iter().map(|value| format!("`${value}`")).collect();
                let help = if gets.is_empty() { "It gets no values.".to_owned() } else { format!("It gets {}.", gets.join(", ")) };
                errors.push(ThemeError::at(&file.path, file.text, at, message).wide(id).help(help));
            }
        }
        errors
    }

    /// True when there is such a word, with or without arguments.
    pub(super) fn has(&self, id: &str) -> bool {
        self.bundle.get_message(id).is_some_and(|message| message.value().is_some())
    }

    /// A word without arguments.
    pub(super) fn plain(&self, id: &str) -> Result<&str, ThemeError> {
        self.fixed.get(id).map(String::as_str).ok_or_else(|| self.form(id, None).err().unwrap_or_else(|| self.missing(id)))
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
            Some(error) => {
                let error = error.to_string();
                let why = match error.split_once("Unknown variable: ") {
                    Some((_, value)) => format!("it asks for `{value}`"),
                    None => error.trim_start_matches("Resolver error: ").to_lowercase(),
                };
                Err(ThemeError::new(format!("{}: the word `{id}` cannot be formed: {why}", self.file)))
            }
        }
    }

    /// The file that gives the language.
    pub(super) fn file(&self) -> &str {
        &self.file
    }

    /// The words that need no values.
    pub(super) fn ids(&self) -> impl Iterator<Item = &str> {
        self.fixed.keys().map(String::as_str)
    }

    fn missing(&self, id: &str) -> ThemeError {
        ThemeError::new(format!("{}: the word `{id}` is missing; add a line `{id} = …`", self.file))
    }
}

/// What Fluent cannot read, in words of somebody who writes such a file.
fn unreadable(file: &WordFile<'_>, at: usize, kind: &str) -> ThemeError {
    let what = match kind {
        "Expected a token starting with \"=\"" => "`=` is missing after the name of the word".to_owned(),
        "Expected a token starting with \"}\"" => "`}` is missing".to_owned(),
        "Unbalanced closing brace" => "this `}` closes nothing".to_owned(),
        "The select expression must have a default variant" => "one of the choices must begin with `*`".to_owned(),
        other => other.chars().next().map_or_else(String::new, |first| first.to_lowercase().chain(other.chars().skip(1)).collect()),
    };
    let help = "A word is written `name = Text`, with values in braces: `{ $n } steps`. Lines that go on are indented.";
    ThemeError::at(&file.path, file.text, at, format!("this word cannot be read: {what}")).help(help)
}

/// Words that stand twice in one file.
fn twice(file: &WordFile<'_>) -> Vec<ThemeError> {
    let mut seen = BTreeSet::new();
    let again = messages(file.text).filter(|(id, _)| !seen.insert(*id));
    let told = |(id, at): (&str, usize)| ThemeError::at(&file.path, file.text, at, format!("the word `{id}` stands twice")).wide(id);
    again.map(|word| told(word).help("Take out one of the two.")).collect()
}

/// The ids of the messages of a file, each with the byte at which it stands.
pub(super) fn messages(text: &str) -> impl Iterator<Item = (&str, usize)> {
    let mut at = 0;
    text.split_inclusive('\n').filter_map(move |line| {
        let start = at;
        at += line.len();
        Some((message_id(line)?, start))
    })
}

/// The values that a message asks for: `n` of `{ $n } pieces`.
fn values<'a>(text: &'a str, id: &str) -> BTreeSet<&'a str> {
    let Some((_, at)) = messages(text).find(|(known, _)| *known == id) else { return BTreeSet::new() };
    let rest = text.get(at..).unwrap_or("");
    // A message ends where the next line begins without a space; a brace that closes a choice belongs to it.
    let ends = |(at, _): &(usize, &str)| {
        rest.get(at + 1..).and_then(|after| after.chars().next()).is_none_or(|first| !(first.is_whitespace() || first == '}'))
    };
    let end = rest.match_indices('\n').find(ends).map_or(rest.len(), |(at, _)| at);
    let message = rest.get(..end).unwrap_or("");
    message
        .split('$')
        .skip(1)
        .map(|part| part.split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '_')).next().unwrap_or(""))
        .collect()
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

    fn file<'a>(path: &str, text: &'a str, own: bool) -> WordFile<'a> {
        let language = path.trim_start_matches("words/").trim_end_matches(".ftl").to_owned();
        WordFile { path: path.to_owned(), language, text, own }
    }

    fn read(own: &str) -> Result<Words, String> {
        let files = [file("words/en.ftl", TEXT, false), file("words/en.ftl", own, true)];
        Words::read(&files).map_err(|errors| errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))
    }

    #[test]
    fn words_know_one_and_many() {
        let words = read("").unwrap();
        assert_eq!(words.plain("steps").unwrap(), "Steps");
        assert_eq!(words.with("pieces", &[("n", 1.into())]).unwrap(), "1 piece");
        assert_eq!(words.with("pieces", &[("n", 3.into())]).unwrap(), "3 pieces");
    }

    #[test]
    fn a_file_over_another_needs_only_what_it_changes() {
        let words = read("steps = Cuts\nmore = More\n").unwrap();
        assert_eq!((words.plain("steps").unwrap(), words.plain("more").unwrap()), ("Cuts", "More"));
        assert_eq!(words.with("pieces", &[("n", 3.into())]).unwrap(), "3 pieces");
    }

    #[test]
    fn a_missing_word_says_which_and_where() {
        let words = read("").unwrap();
        assert_eq!(words.plain("stepps").unwrap_err().to_string(), "words/en.ftl: the word `stepps` is missing; add a line `stepps = …`");
        assert!(words.with("pieces", &[]).unwrap_err().to_string().contains("`pieces` cannot be formed"));
    }

    #[test]
    fn a_broken_file_says_where() {
        assert!(read("good = fine\nbad = { $n ->\n").err().unwrap().starts_with("words/en.ftl:3:1: this word cannot be read: "));
        assert_eq!(read("steps = A\nsteps = B\n").err().unwrap(), "words/en.ftl:2:1: the word `steps` stands twice");
    }

    #[test]
    fn a_word_that_asks_for_what_it_is_not_given_is_told() {
        let told = |text: &str| read(text).err().unwrap();
        assert_eq!(told("pieces = { $m } bits\n"), "words/en.ftl:1:1: the word `pieces` asks for `$m`, which it is not given");
        assert_eq!(told("\nsteps = { $n } steps\n"), "words/en.ftl:2:1: the word `steps` asks for `$n`, which it is not given");
        assert!(told("steps = { other }\n").contains("`steps` cannot be formed"));
        assert!(read("pieces = { $n ->\n    [one] bit\n   *[other] { $n } bits\n}\nown = { $any }\n").is_ok());
    }
}
