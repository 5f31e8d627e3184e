//! Words of the interface inside scripts: where a script of a theme holds the string `"word:steps"`, the word `steps` of
//! the language stands in the script that is published. Values that only the script knows stand in square brackets there:
//! `{ $date }` comes out as `[date]`.

use fluent_bundle::FluentValue;

use super::theme_error::ThemeError;
use super::words::Words;

/// Values that scripts fill in.
const VALUES: [&str; 3] = ["n", "date", "change"];

/// The script with its words; `file` is named in errors.
pub(super) fn filled(file: &str, script: &str, words: &Words) -> Result<String, ThemeError> {
    let values = VALUES.map(|name| (name, FluentValue::from(format!("[{name}]"))));
    let mut out = String::with_capacity(script.len());
    let mut rest = script;
    while let Some((before, after)) = rest.split_once("\"word:") {
        let Some((id, behind)) = after.split_once('"') else { break };
        if !words.has(id) {
            let at = script.len() - after.len();
            return Err(ThemeError::at(file, script, at, format!("the word `{id}` is missing; add a line `{id} = …` to the words")));
        }
        out.push_str(before);
        out.push_str(&serde_json::to_string(&words.with(id, &values)?).unwrap_or_default());
        rest = behind;
    }
    out.push_str(rest);
    Ok(out)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::theme::WordFile;

    fn words() -> Words {
        let text = "plain = Say \"yes\"\nold = Out since { $date }: { $change }\n";
        Words::read(&[WordFile { path: "words/en.ftl".to_owned(), language: "en".to_owned(), text, own: false }]).ok().unwrap()
    }

    #[test]
    fn a_script_gets_its_words_as_strings() {
        let script = "var a = \"word:plain\", b = [\"word:old\"], c = 'word:plain';";
        let expected = "var a = \"Say \\\"yes\\\"\", b = [\"Out since [date]: [change]\"], c = 'word:plain';";
        assert_eq!(filled("a.js", script, &words()).unwrap(), expected);
        assert_eq!(filled("a.js", "var a = \"b\";", &words()).unwrap(), "var a = \"b\";");
    }

    #[test]
    fn a_missing_word_is_told_with_its_place() {
        let error = filled("assets/a.js", "var a =\n  \"word:olld\";", &words()).unwrap_err();
        assert!(error.to_string().starts_with("assets/a.js:2:"), "{error}");
        assert!(error.to_string().contains("`olld`"), "{error}");
    }
}
