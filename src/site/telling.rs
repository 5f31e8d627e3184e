//! What the template engine says, in words of somebody who writes a theme: what is wrong, and what to type.

use super::theme_error::ThemeError;
use crate::model::names::meant;

/// Blocks of a template that have an end of their own.
const BLOCKS: &[&str] = &["if", "for", "block", "component", "filter", "raw"];

/// The same mistake in words of the house; what is not known passes with a small first letter.
pub(super) fn told(error: ThemeError) -> ThemeError {
    let (message, help) = translated(&error.message);
    let help = if error.help.is_empty() { help } else { error.help };
    ThemeError { message, help, ..error }
}

fn translated(message: &str) -> (String, String) {
    let quoted = message.split('`').nth(1).unwrap_or("");
    let listed = |after: &str| message.split_once(after).map(|(_, list)| list.split(", ").map(str::to_owned).collect::<Vec<_>>());
    if message.starts_with("Variable `") || message.starts_with("Field `") {
        let names = listed("Available variables: ").or_else(|| listed("Available fields: "));
        return match names {
            Some(names) => (format!("`{quoted}` is nothing that this template gets"), one_of(quoted, &names)),
            None => (
                format!("`{quoted}` is nothing that this template gets"),
                format!("Look at what it belongs to, or ask first: `{{% if … %}}`; what each template gets stands in {REFERENCE}."),
            ),
        };
    }
    for kind in ["component", "filter", "test", "function", "template"] {
        if message.starts_with(&format!("Unknown {kind} `")) {
            return (format!("no {kind} is called `{quoted}`"), String::new());
        }
    }
    if message.starts_with("Block `") {
        return (
            format!("the template below has no block `{quoted}`, so this would be shown nowhere"),
            "`base.html` has the block `main`.".to_owned(),
        );
    }
    if message.starts_with("Unexpected end of input") {
        return ("the template ends inside of something".to_owned(), String::new());
    }
    if let Some((_, value)) = message.rsplit_once("it asks for `$") {
        return (message.to_owned(), format!("Give it the value: `| word({}=…)`.", value.trim_end_matches('`')));
    }
    if message.starts_with("Component `") && message.contains("is defined in both") {
        let help = "Give it another name, or put it into the other file, in place of that of `paper`.";
        return (message.replacen("Component", "the component", 1), help.to_owned());
    }
    let plain = message.trim_end_matches('.');
    let help = "`{{ … }}` prints a value, `{% … %}` steers; both close on the line or later.".to_owned();
    (plain.chars().next().map_or_else(String::new, |first| first.to_lowercase().chain(plain.chars().skip(1)).collect()), help)
}

/// Where what templates get is written down.
pub(super) const REFERENCE: &str = "`themes/README.md`";

/// What was likely meant, else all that there is.
pub(super) fn one_of(named: &str, known: &[String]) -> String {
    let mut known: Vec<&str> = known.iter().map(String::as_str).collect();
    known.sort_unstable();
    match meant(named, known.iter().copied()) {
        Some(meant) => format!("Write {meant}."),
        None if known.is_empty() => String::new(),
        None => format!("There is {}.", known.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")),
    }
}

/// Where a template that ends too early opened what it never closes: the byte, and the word.
pub(super) fn unclosed(template: &str) -> Option<(usize, &str)> {
    let mut open: Vec<(usize, &str)> = Vec::new();
    for (at, _) in template.match_indices("{%") {
        let inside = template.get(at + 2..)?.trim_start_matches('-').trim_start();
        let word = inside.split(|c: char| !c.is_ascii_alphabetic()).next().unwrap_or("");
        if BLOCKS.contains(&word) {
            open.push((at, word));
        } else if word.strip_prefix("end").is_some_and(|ended| open.last().is_some_and(|(_, opened)| *opened == ended)) {
            open.pop();
        }
    }
    open.pop()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn say(message: &str) -> (String, String) {
        translated(message)
    }

    #[test]
    fn an_unknown_name_is_told_with_the_nearest() {
        let (message, help) = say("Field `tittle` is not defined. Available fields: language, site, title");
        assert_eq!((message.as_str(), help.as_str()), ("`tittle` is nothing that this template gets", "Write `title`."));
        assert_eq!(say("Variable `x` is not defined. Available variables: guide, page").1, "There is `guide`, `page`.");
        assert_eq!(say("Unknown filter `shout`").0, "no filter is called `shout`");
        assert_eq!(say("Found ident but expected `}}`.").0, "found ident but expected `}}`");
    }

    #[test]
    fn what_is_never_closed_is_found() {
        assert_eq!(unclosed("{% for a in b %}{% if a %}x{% endfor %}"), Some((16, "if")));
        assert_eq!(unclosed("a{%- block main -%}b{% if c %}{% elif d %}{% endif %}"), Some((1, "block")));
        assert_eq!(unclosed("{% set a = 1 %}{{ a }}"), None);
    }
}
