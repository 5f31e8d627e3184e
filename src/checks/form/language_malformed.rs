//! Languages that are no codes.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "language-malformed",
        group: Group::Form,
        level: Level::Fault,
        what: "`language` or `also-in` holds something else than the code of a language.",
        why: "The code tells a browser how to read the page aloud and where to break words. A name in its place tells it nothing.",
        example: "language: english      # refused\nlanguage: en",
        mend: "Write the code of the language, perhaps with a region: `en`, `pt-BR`.",
        source: "RFC 5646, Tags for Identifying Languages, 2009, section 2.1; ISO 639.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for language in subject.book.language.given().into_iter().chain(&subject.book.also_in) {
        let written = language.value.as_str();
        let dressed = dressed(written);
        if dressed.as_deref() == Some(written) {
            continue;
        }
        let help = match (dressed, NAMES.iter().find(|(name, _)| written.eq_ignore_ascii_case(name))) {
            (Some(code), _) => format!("Write `{code}`."),
            (None, Some((_, code))) => format!("Write `{code}`."),
            (None, None) => "Write its code, as in `en` or `pt-BR`.".to_owned(),
        };
        report.add(CHECK.info.at(language.place, format!("`{written}` is not the code of a language")).help(help));
    }
}

/// Names that are likely written in place of a code (ISO 639).
const NAMES: &[(&str, &str)] = &[
    ("english", "en"),
    ("spanish", "es"),
    ("french", "fr"),
    ("german", "de"),
    ("italian", "it"),
    ("portuguese", "pt"),
    ("polish", "pl"),
    ("romanian", "ro"),
    ("dutch", "nl"),
];

/// The code in its usual dress: language in lower case, script with a capital, region in capitals; `None` for no code.
fn dressed(text: &str) -> Option<String> {
    let text = text.replace('_', "-");
    let mut parts = text.split('-');
    let language = parts.next().filter(|part| (2..=3).contains(&part.len()) && part.chars().all(|letter| letter.is_ascii_alphabetic()))?;
    let mut code = language.to_ascii_lowercase();
    let mut parts = parts.peekable();
    if let Some(script) = parts.next_if(|part| part.len() == 4 && part.chars().all(|letter| letter.is_ascii_alphabetic())) {
        let (first, rest) = script.split_at(1);
        code.push_str(&format!("-{}{}", first.to_ascii_uppercase(), rest.to_ascii_lowercase()));
    }
    let is_region = |part: &&str| match part.len() {
        2 => part.chars().all(|letter| letter.is_ascii_alphabetic()),
        3 => part.chars().all(|letter| letter.is_ascii_digit()),
        _ => false,
    };
    if let Some(region) = parts.next_if(is_region) {
        code.push_str(&format!("-{}", region.to_ascii_uppercase()));
    }
    parts.next().is_none().then_some(code)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_name_and_a_wrong_dress() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: eu-853
language: english
#         ^^^^^^^ fault[language-malformed] `english` is not the code of a language
also-in: [es, pt_br]
#             ^^^^^ fault[language-malformed] `pt_br`
",
        )]);
    }

    #[test]
    fn codes() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: eu-853
language: en-GB
also-in: [es, zh-Hant-TW, es-419]
",
        )]);
    }
}
